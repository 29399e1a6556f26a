// SPDX-License-Identifier: BSD-3-Clause
// Short-lived structures: EN 1991-1-6 and EN 13782.
#include "actions/catalogue/entry.hpp"
#include "coverframe/actions/en13782.hpp"
#include "coverframe/actions/en1991_1_6.hpp"

namespace coverframe::catalogue {

void add_en1991_1_6(std::vector<Rule>& rules) {
    using namespace en1991_1_6;
    add(rules, {"en1991_1_6", "return_period", clause_3_1, "Return period of snow for a structure that stands once.",
                Read::sure, "Table 3.1; that what is set up again is refused a short duration: EN 1990, Table 2.1"},
        {{"duration", "duration", "how long it stands", "longer"},
         {"erection", "erection", "whether it is set up again", "again"}},
        {{"return_period_years", "n", "2 up to 3 days, 5 up to 3 months, 10 up to 1 year, 50 longer"}},
        [](Duration duration, Erection erection) { return return_period_3_1(duration, erection); });
    add(rules, {"en13782", "reduced_snow_load", en13782::clause_snow,
                "Reduced snow load of a tent that somebody keeps cleared; never a default.", Read::fair,
                "the text could not be read"},
        {{"clearing", "clearing", "what somebody answers for", "none"}},
        {{"roof_load_kpa", "s", "0.2 if the depth is kept to 8 cm; refused otherwise"}},
        [](en13782::Clearing clearing) { return en13782::reduced_snow_load(clearing); });
    add(rules, {"en13782", "simplified_factors", en13782::clause_factors, "Simplified partial factors of tents.",
                Read::fair, "the text could not be read; the same set in the former ENV 1993"},
        {{"variable_actions", "variable actions", "how many act at once", "one"}},
        {{"permanent_factor", "gamma_G", "1.35"},
         {"variable_factor", "gamma_Q", "1.5 on one variable action, 1.35 on each of several"}},
        [](en13782::VariableActions actions) {
            const auto [permanent, variable] = en13782::simplified_factors(actions);
            return std::tuple(permanent, variable);
        });
}

}  // namespace coverframe::catalogue
