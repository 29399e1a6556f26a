// SPDX-License-Identifier: BSD-3-Clause
// The rules of the National Building Code of Canada, 4.1.6, applied to a cover.
#include <algorithm>

#include "actions/arrangements/common.hpp"
#include "coverframe/actions/nbc2015.hpp"
#include "coverframe/actions/nbc2020.hpp"
#include "coverframe/base/error.hpp"

namespace coverframe::arranging {
namespace {

nbc::Importance importance_of(const SnowBasis& basis) {
    if (!basis.importance_category) {
        throw InputError(
            "plan.key.missing", "/basis/snow/importance_category", "",
            std::string(name_of(basis.document)) + " needs the importance category; give it with its source");
    }
    switch (basis.importance_category->value) {
        case ImportanceCategory::low: return nbc::Importance::low;
        case ImportanceCategory::normal: return nbc::Importance::normal;
        case ImportanceCategory::high: return nbc::Importance::high;
        case ImportanceCategory::post_disaster: return nbc::Importance::post_disaster;
    }
    throw InputError("plan.choice", "/basis/snow/importance_category", "", "this importance category is unknown");
}

Pressure rain_of(const GroundSnow& ground) {
    if (!ground.rain) {
        throw InputError("plan.key.missing", "/site/ground_snow/rain", "",
                         std::string(name_of(ground.document)) + " needs the rain S_r that goes with the ground snow");
    }
    return *ground.rain;
}

class NbcSnow final : public DocumentSnow {
public:
    explicit NbcSnow(const Plan& plan)
        : basis_(plan.basis.snow),
          ground_(plan.site.ground_snow),
          document_(name_of(basis_.document)),
          space_(basis_.document == SnowDocument::nbc2015 ? "nbc2015" : "nbc2020"),
          rain_(rain_of(ground_)),
          category_(importance_of(basis_)),
          importance_(nbc::importance_factor_4_1_6_2(category_, nbc::LimitState::ultimate)),
          surface_(basis_.surface.value == Surface::slippery ? nbc::Surface::unobstructed_slippery
                                                             : nbc::Surface::other) {}

    Pressure balanced(const CoverStation& s) const override { return load(slope_factor(s), 1.0); }
    Pressure unshed(const CoverStation&) const override { return load(1.0, 1.0); }
    Clause slope_clause() const override { return clause("4.1.6.2"); }
    Heading balanced_heading() const override {
        return {"balanced", clause("4.1.6.2"),
                "Strength and sag are both judged with the importance factor of ultimate limit states. The load may "
                "not be lowered because somebody will remove snow."};
    }

    std::vector<Term> balanced_workings(const CoverStation& s) const override {
        return workings_of(s, slope_factor(s), 1.0);
    }

    std::vector<Arrangement> own(Stations stations, bool workings) const override {
        std::vector<Arrangement> all;
        const bool asked = std::ranges::any_of(stations, [&](const CoverStation& s) {
            return carries(s) && (carried_on() || nbc::unbalanced_applies_4_1_6_9(s.slope));
        });
        if (!asked) return all;
        for (const bool port : {true, false}) {
            const auto field = [&](const CoverStation& s) { return unbalanced(s, port); };
            const auto terms = [&](const CoverStation& s) { return workings_of(s, slope_factor(s), accumulation(s)); };
            all.push_back(over_stations(
                {std::string("unbalanced, heavy to ") + side_name(port), clause("4.1.6.9"),
                 carried_on()
                     ? "Unbalanced snow is looked at also where the slope is 15 degrees or less, with C_a = 1 on the "
                       "heavy side."
                     : "Unbalanced snow is looked at only where the slope is over 15 degrees, as the plan "
                       "chooses (" +
                           unbalanced_window_of(basis_).source + ")."},
                stations, field, workings ? WorkingsRule(terms) : nullptr));
        }
        return all;
    }

    /// Gables up to 15 degrees.
    Clause partial_clause(Stations stations) const override {
        const bool asked = std::ranges::any_of(
            stations, [](const CoverStation& s) { return carries(s) && nbc::partial_applies_4_1_6_3(s.slope); });
        return asked ? clause("4.1.6.3") : Clause{};
    }

    std::vector<EdgeLoad> beside(const NeighbourStep& step) const override {
        std::vector<EdgeLoad> all;
        add_drift(all, step);
        add_slid(all, step);
        return all;
    }

private:
    Clause clause(const std::string& number) const { return {document_, number}; }
    bool carried_on() const { return unbalanced_window_of(basis_).value == UnbalancedWindow::carried_on; }

    std::vector<ArgumentSource> sources() const {
        return {{"S_s", ground_.source},
                {"S_r", ground_.source},
                {"C_w", basis_.exposure_factor.source},
                {"surface", basis_.surface.source},
                {"slope", "drawn, ridge to rail"}};
    }

    double slope_factor(const CoverStation& s) const {
        return nbc::slope_factor_4_1_6_2(s.slope, surface_, nbc::Accumulation::gable);
    }

    Pressure load(double slope, double accumulation, double wind) const {
        return nbc::specified_load_4_1_6_2(ground_.load, rain_, importance_,
                                           {.basic = 0.8, .wind = wind, .slope = slope, .accumulation = accumulation})
            .load;
    }
    Pressure load(double slope, double accumulation) const {
        return load(slope, accumulation, basis_.exposure_factor.value);
    }

    std::vector<Term> workings_of(const CoverStation& s, double slope, double accumulation) const {
        std::vector<Term> terms{{"x", in_m(s.x), "m", "station with the heaviest load", {}}};
        append(terms, space_ + ".importance_factor", {static_cast<double>(category_), 0.0});
        append(terms, space_ + ".slope_factor", {in_deg(s.slope), static_cast<double>(surface_), 1.0}, sources());
        append(
            terms, space_ + ".specified_load",
            {in_kPa(ground_.load), in_kPa(rain_), importance_, 0.8, basis_.exposure_factor.value, slope, accumulation},
            sources());
        return terms;
    }

    double accumulation(const CoverStation& s) const {
        const Angle begin = from_deg(15.0);  // where the ramp of the clause starts, at C_a = 1
        return nbc::downwind_accumulation_4_1_6_9(std::max(s.slope, begin));
    }

    StationField unbalanced(const CoverStation& s, bool port) const {
        if (!carried_on() && !nbc::unbalanced_applies_4_1_6_9(s.slope)) return both(balanced(s));
        return heavy_side(port, even(load(slope_factor(s), accumulation(s), 1.0)), even(Pressure{}));
    }

    /// The worst of snow from the neighbour (case I) and of the cover's own snow (cases II, III).
    nbc::StepDrift drift_of(const NeighbourStep& step) const {
        nbc::StepDrift worst;
        for (const nbc::StepCase source : {nbc::StepCase::I, nbc::StepCase::II, nbc::StepCase::III}) {
            const bool above = source == nbc::StepCase::I;
            const nbc::StepDrift drift =
                nbc::step_drift_4_1_6_5({.ground_snow = ground_.load,
                                         .unit_weight = nbc::unit_weight_4_1_6_13(ground_.load),
                                         .height = step.step,
                                         .basic = 0.8,
                                         .source = source,
                                         .source_length = above ? step.neighbour->fetch : step.lower_length,
                                         .parapet = Length{},
                                         .source_wind = 1.0});
            if (drift.drift.peak > worst.drift.peak) worst = drift;
        }
        return worst;
    }

    void add_drift(std::vector<EdgeLoad>& all, const NeighbourStep& step) const {
        if (!(ground_.load > Pressure{}) || step.neighbour->gap > nbc::widest_gap_4_1_6_6) return;
        const nbc::StepDrift drift = drift_of(step);
        if (!(drift.drift.peak > 1.0)) return;
        EdgeLoad edge;
        edge.heading = {"drift beside " + step.neighbour->name,
                        clause(step.neighbour->gap > Length{} ? "4.1.6.6" : "4.1.6.5"),
                        "The drift lies against the rail as if " + step.neighbour->name +
                            " stood there, without a parapet; slope takes nothing away (C_s = 1)."};
        edge.extent = drift.drift.length;
        edge.beyond = [this](const CoverStation&) { return load(1.0, 1.0, 1.0); };
        edge.at = [this, drift](const CoverStation&, Length distance) {
            return load(1.0, nbc::accumulation_4_1_6_5(drift.drift, distance), 1.0);
        };
        edge.workings = {
            {"h",
             in_m(step.step),
             "m",
             "eave of " + step.neighbour->name + " above the lowest rail: " + step.neighbour->source,
             {}},
            {"gamma", in_kN_per_m3(nbc::unit_weight_4_1_6_13(ground_.load)), "kN/m3", "min(4.0, 0.43 S_s + 2.2)",
             clause("4.1.6.13")},
            {"F", drift.fetch, "-", "0.35 beta sqrt(gamma l_cs/S_s) + C_b, up to 5, worst of cases I to III",
             clause("4.1.6.5")},
            {"C_a0", drift.drift.peak, "-", "min[beta gamma h/(C_b S_s), F/C_b], at the rail", clause("4.1.6.5")},
            {"x_d", in_m(drift.drift.length), "m", "5 (C_b S_s/gamma) (C_a0 - 1)", clause("4.1.6.5")}};
        all.push_back(std::move(edge));
    }

    void add_slid(std::vector<EdgeLoad>& all, const NeighbourStep& step) const {
        const Neighbour& neighbour = *step.neighbour;
        if (!neighbour.roof || neighbour.gap > nbc::widest_gap_4_1_6_6) return;
        const LineLoad total = nbc::sliding_total_4_1_6_11(unshed({}), neighbour.roof->run);
        const bool sideways = neighbour.side == NeighbourSide::port || neighbour.side == NeighbourSide::starboard;
        const Length width = sideways ? step.widest.half_breadth : 0.5 * step.lower_length;
        const Pressure spread = total / width;
        EdgeLoad edge;
        edge.heading = {
            "slid from the roof of " + neighbour.name, clause("4.1.6.11"),
            "Half the snow of the roof lies evenly on a strip along the rail, half the cover's greatest breadth "
            "wide: how it tapers is not known here. The blow of what falls is not in the rule: do not park a "
            "cover under a roof that sheds."};
        edge.extent = width;
        edge.beyond = [this](const CoverStation&) { return unshed({}); };
        edge.at = [this, spread](const CoverStation&, Length) { return unshed({}) + spread; };
        edge.workings = {{"b", in_m(neighbour.roof->run), "m", "eave to ridge of " + neighbour.name, {}},
                         {"T", in_kN_per_m(total), "kN/m", "0.5 S b, S with C_s = 1", clause("4.1.6.11")},
                         {"p_slid", in_kPa(spread), "kPa", "T over a strip half the greatest breadth wide", {}}};
        all.push_back(std::move(edge));
    }

    SnowBasis basis_;
    GroundSnow ground_;
    std::string document_;
    std::string space_;
    Pressure rain_;  // S_r
    nbc::Importance category_;
    double importance_;  // I_s
    nbc::Surface surface_;
};

}  // namespace

std::unique_ptr<DocumentSnow> nbc_snow(const Plan& plan) { return std::make_unique<NbcSnow>(plan); }

}  // namespace coverframe::arranging
