// SPDX-License-Identifier: BSD-3-Clause
// A finding: what is demanded of a part, what it can give, and how somebody can work it out again.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace coverframe {

/// Document, edition and number of the rule behind a number. `document` may be "common practice, no source".
struct Clause {
    std::string document;  ///< "ASCE 7-22", "EN 1991-1-3:2003", "NDS 2018", "coverframe"
    std::string number;    ///< "7.4", "6.3.2", or a short name where the document has no number

    bool operator==(const Clause&) const = default;
};

/// "ASCE 7-22, 7.4".
[[nodiscard]] inline std::string text_of(const Clause& clause) {
    return clause.number.empty() ? clause.document : clause.document + ", " + clause.number;
}

/// One line of a working: enough to redo the number with a pocket calculator.
struct Term {
    std::string symbol;   ///< as the document writes it: "p_f"
    double value = 0;     ///< in `unit`
    std::string unit;     ///< "kPa", "-"
    std::string formula;  ///< "0.7 C_e C_t p_g", or where the value was taken from
    Clause clause;        ///< empty document for plain arithmetic

    bool operator==(const Term&) const = default;
};

enum class Verdict {
    satisfied,       ///< demand within capacity
    exceeded,        ///< demand over capacity, or no capacity at all
    not_applicable,  ///< the rule does not cover this part; `sentence` says why
};

[[nodiscard]] constexpr const char* name_of(Verdict verdict) {
    switch (verdict) {
        case Verdict::satisfied: return "satisfied";
        case Verdict::exceeded: return "exceeded";
        case Verdict::not_applicable: return "not applicable";
    }
    return "";
}

/// The outcome of one check of one part in the situation that is worst for it.
struct Finding {
    std::string check;      ///< stable name of the check: "ridge.bending", "film.drainage"
    std::string part;       ///< "ridge between U1 and U2", "windshield"
    Clause clause;          ///< the rule that gives the capacity
    std::string situation;  ///< name of the governing situation
    double demand = 0;      ///< in `unit`
    double capacity = 0;    ///< in `unit`
    std::string unit;       ///< SI unit of demand and capacity: "kN", "N/mm2", "m", "deg", "-"
    /// demand/capacity (or the code's interaction sum); empty if there is no capacity to divide by
    std::optional<double> utilisation;
    Verdict verdict = Verdict::not_applicable;
    std::string sentence;         ///< one sentence a crew member can act on
    std::optional<double> x;      ///< where along the boat [m], if it is at a place
    std::vector<Term> workings;   ///< empty unless asked for

    bool operator==(const Finding&) const = default;
};

/// True if `a` is worse than `b`: exceeded before satisfied before not applicable, then by utilisation, where an
/// exceeded finding without a capacity counts as the worst of all. Utilisations are told apart to 0.01 %.
[[nodiscard]] bool worse(const Finding& a, const Finding& b);

/// The worst finding, or nullptr if there is none.
[[nodiscard]] const Finding* governing(std::span<const Finding> findings);

}  // namespace coverframe
