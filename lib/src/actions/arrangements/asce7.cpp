// SPDX-License-Identifier: BSD-3-Clause
// The rules of ASCE 7, chapter 7, applied to a cover; one class for the three editions, which differ in the importance
// factor, the minimum load, the drift height and the rain.
#include <algorithm>
#include <cmath>

#include "actions/arrangements/common.hpp"
#include "coverframe/actions/asce7_10.hpp"
#include "coverframe/actions/asce7_16.hpp"
#include "coverframe/actions/asce7_22.hpp"
#include "coverframe/base/error.hpp"

namespace coverframe::arranging {
namespace {

asce7::RiskCategory risk_category_of(const std::string& text) {
    if (text == "I") return asce7::RiskCategory::I;
    if (text == "II") return asce7::RiskCategory::II;
    if (text == "III") return asce7::RiskCategory::III;
    if (text == "IV") return asce7::RiskCategory::IV;
    throw InputError("plan.choice", "/site/ground_snow/risk_category", text,
                     "the risk category must be I, II, III or IV; ASCE 7 needs it");
}

double winter_wind_of(const SnowBasis& basis) {
    if (basis.document != SnowDocument::asce7_22) return 0.0;
    if (!basis.winter_wind) {
        throw InputError("plan.key.missing", "/basis/snow/winter_wind", "",
                         "ASCE 7-22 needs the winter wind parameter W_2 of the site; give it with its source");
    }
    return basis.winter_wind->value;
}

/// A drift with the height that made it.
struct SurfaceDrift {
    Pressure peak{};
    Length length{};
};

class Asce7Snow final : public DocumentSnow {
public:
    explicit Asce7Snow(const Plan& plan)
        : basis_(plan.basis.snow),
          ground_(plan.site.ground_snow),
          document_(name_of(basis_.document)),
          edition_(basis_.document),
          category_(risk_category_of(ground_.risk_category)),
          wind_(winter_wind_of(basis_)),
          thermal_(basis_.thermal_factor.value),
          exposure_(basis_.exposure_factor.value),
          surface_(basis_.surface.value == Surface::slippery ? asce7::Surface::unobstructed_slippery
                                                             : asce7::Surface::other),
          importance_(edition_ == SnowDocument::asce7_22 ? 1.0 : asce7::fifty_year::importance_factor_1_5(category_)),
          flat_(edition_ == SnowDocument::asce7_22
                    ? asce7_22::flat_load_7_3(ground_.load, exposure_, thermal_)
                    : asce7::fifty_year::flat_load_7_3(ground_.load, exposure_, thermal_, importance_)) {}

    Pressure balanced(const CoverStation& s) const override {
        return asce7::sloped_load_7_4(flat_, slope_factor(s.slope));
    }
    Pressure unshed(const CoverStation&) const override { return flat_; }
    Clause slope_clause() const override { return clause("7.4"); }
    Heading balanced_heading() const override { return {"balanced", clause("7.4"), ""}; }

    std::vector<Term> balanced_workings(const CoverStation& s) const override {
        std::vector<Term> terms{{"x", in_ft(s.x), "ft", "station with the heaviest load", {}}};
        std::vector<double> flat{in_kPa(ground_.load), exposure_, thermal_};
        if (edition_ != SnowDocument::asce7_22) {
            append(terms, rule("importance_factor"), {static_cast<double>(category_)});
            flat.push_back(importance_);
        }
        append(terms, rule("flat_load"), flat, sources());
        append(terms, rule("slope_factor"), {in_deg(s.slope), thermal_, static_cast<double>(surface_)}, sources());
        append(terms, rule("sloped_load"), {in_kPa(flat_), slope_factor(s.slope)});
        return terms;
    }

    std::vector<Arrangement> own(Stations stations, bool workings) const override {
        std::vector<Arrangement> all;
        add_minimum(all, stations, workings);
        add_rain(all, stations, workings);
        add_unbalanced(all, stations, workings);
        return all;
    }

    Clause partial_clause(Stations) const override { return clause("7.5"); }

    std::vector<EdgeLoad> beside(const NeighbourStep& step) const override {
        std::vector<EdgeLoad> all;
        add_drift(all, step);
        add_slid(all, step);
        return all;
    }

private:
    Clause clause(const std::string& number) const { return {document_, number}; }
    std::string space() const {
        return edition_ == SnowDocument::asce7_10   ? "asce7_10"
               : edition_ == SnowDocument::asce7_16 ? "asce7_16"
                                                    : "asce7_22";
    }
    std::string rule(const std::string& name) const { return space() + "." + name; }

    std::vector<ArgumentSource> sources() const {
        return {{"p_g", ground_.source},
                {"C_e", basis_.exposure_factor.source},
                {"C_t", basis_.thermal_factor.source},
                {"surface", basis_.surface.source},
                {"slope", "drawn, ridge to rail"},
                {"W", "half breadth at the rail"},
                {"W_2", basis_.winter_wind ? basis_.winter_wind->source : ""}};
    }

    double slope_factor(Angle slope) const {
        return edition_ == SnowDocument::asce7_22 ? asce7_22::slope_factor_7_4(slope, thermal_, surface_)
                                                  : asce7::fifty_year::slope_factor_7_4(slope, thermal_, surface_);
    }

    // ------------------------------------------------------------------------------------------------ minimum, rain
    Pressure minimum() const {
        return edition_ == SnowDocument::asce7_22 ? asce7_22::minimum_load_7_3_3(ground_.load, category_)
                                                  : asce7::fifty_year::minimum_load_7_3_4(ground_.load, importance_);
    }

    void add_minimum(std::vector<Arrangement>& all, Stations stations, bool workings) const {
        const bool low = std::ranges::any_of(stations, [](const CoverStation& s) {
            return carries(s) && asce7::low_slope_7_3(s.slope, asce7::RoofShape::hip_or_gable);
        });
        if (!low) return;
        const bool newest = edition_ == SnowDocument::asce7_22;
        const auto terms = [&](const CoverStation&) {
            std::vector<Term> lines;
            append(lines, rule("minimum_load"),
                   {in_kPa(ground_.load), newest ? static_cast<double>(category_) : importance_}, sources());
            return lines;
        };
        all.push_back(over_stations(
            {"minimum", clause(newest ? "7.3.3" : "7.3.4"),
             "The cover is flatter than 15 degrees in places; the minimum load is put on all "
             "of it."},
            stations, [&](const CoverStation&) { return both(minimum()); }, workings ? WorkingsRule(terms) : nullptr));
    }

    Pressure rain(const CoverStation& s) const {
        return edition_ == SnowDocument::asce7_22
                   ? asce7_22::rain_on_snow_7_10(ground_.load, s.slope, s.half_breadth, category_)
                   : asce7::fifty_year::rain_on_snow_7_10(ground_.load, s.slope, s.half_breadth);
    }

    void add_rain(std::vector<Arrangement>& all, Stations stations, bool workings) const {
        const bool any =
            std::ranges::any_of(stations, [&](const CoverStation& s) { return carries(s) && rain(s) > Pressure{}; });
        if (!any) return;
        const auto field = [&](const CoverStation& s) { return both(balanced(s) + rain(s)); };
        const auto terms = [&](const CoverStation& s) {
            std::vector<Term> lines = balanced_workings(s);
            std::vector<double> arguments{in_kPa(ground_.load), in_deg(s.slope), in_m(s.half_breadth)};
            if (edition_ == SnowDocument::asce7_22) arguments.push_back(static_cast<double>(category_));
            append(lines, rule("rain_on_snow"), arguments, sources());
            return lines;
        };
        all.push_back(over_stations({"rain on snow", clause("7.10"), "Rain falls on the balanced snow."}, stations,
                                    field, workings ? WorkingsRule(terms) : nullptr));
    }

    // --------------------------------------------------------------------------------------------------- unbalanced
    asce7::UnbalancedGable gable(const CoverStation& s, Angle slope) const {
        const Pressure load = balanced(s);
        switch (edition_) {
            case SnowDocument::asce7_10:
                return asce7_10::unbalanced_gable_7_6_1({load, ground_.load, slope, s.half_breadth});
            case SnowDocument::asce7_16:
                return asce7_16::unbalanced_gable_7_6_1({load, ground_.load, slope, s.half_breadth}, importance_);
            default: return asce7_22::unbalanced_gable_7_6_1({load, ground_.load, slope, s.half_breadth, wind_});
        }
    }

    bool carried_on() const { return unbalanced_window_of(basis_).value == UnbalancedWindow::carried_on; }
    static bool in_window(const CoverStation& s) { return asce7::unbalanced_applies_7_6_1(s.slope); }
    static Angle into_window(Angle slope) {
        return std::clamp(slope, asce7::unbalanced_from_7_6_1, asce7::unbalanced_to_7_6_1);
    }

    /// What a station outside the window gets of the surcharge worked out for the end of the window; 1 inside it.
    double carried(const CoverStation& s) const {
        const Angle end = into_window(s.slope);
        if (s.slope < end) return std::sqrt(std::tan(in_rad(s.slope)) / std::tan(in_rad(end)));
        if (s.slope > end) return slope_factor(s.slope) / slope_factor(end);
        return 1.0;
    }

    StationField unbalanced(const CoverStation& s, bool port) const {
        if (!carried_on() && !in_window(s)) return both(balanced(s));
        const asce7::UnbalancedGable at = gable(s, into_window(s.slope));
        const Pressure drifted = balanced(s) + carried(s) * at.leeward_surcharge;
        const double width = std::min(in_m(at.surcharge_width) / in_m(s.half_breadth), 1.0);
        LoadProfile lee{{0.0, {drifted}}, {width, {drifted}}};
        if (width < 1.0) {
            lee.push_back({width, {balanced(s)}});
            lee.push_back({1.0, {balanced(s)}});
        }
        return heavy_side(port, std::move(lee), even(at.windward));
    }

    std::vector<Term> unbalanced_workings(const CoverStation& s) const {
        std::vector<Term> terms = balanced_workings(s);
        if (!carried_on() && !in_window(s)) return terms;
        const Angle slope = into_window(s.slope);
        if (slope != s.slope) {
            terms.push_back({"slope_w", in_deg(slope), "deg", "nearest slope inside the window; taken as slope below",
                             clause("7.6.1")});
        }
        std::vector<double> arguments{in_kPa(balanced(s)), in_kPa(ground_.load), in_deg(slope), in_m(s.half_breadth)};
        if (edition_ == SnowDocument::asce7_16) arguments.push_back(importance_);
        if (edition_ == SnowDocument::asce7_22) arguments.push_back(wind_);
        append(terms, rule("unbalanced_gable"), arguments, sources());
        const Pressure surcharge = gable(s, slope).leeward_surcharge;
        const char* why = s.slope < slope   ? "sqrt[tan(slope)/tan(slope_w)], station flatter than the window"
                          : s.slope > slope ? "C_s(slope)/C_s(slope_w), station steeper than the window"
                                            : "station inside the window";
        terms.push_back({"k", carried(s), "-", why, {}});
        terms.push_back(
            {"p_leeward", in_psf(balanced(s) + carried(s) * surcharge), "psf", "p_s + k p_drift", clause("7.6.1")});
        return terms;
    }

    bool unbalanced_asked(Stations stations) const {
        bool up = false;  // somewhere not flatter than the window
        bool inside = false;
        for (const CoverStation& s : stations) {
            if (!carries(s)) continue;
            inside = inside || in_window(s);
            up = up || s.slope >= asce7::unbalanced_from_7_6_1;
        }
        return carried_on() ? up : inside;
    }

    void add_unbalanced(std::vector<Arrangement>& all, Stations stations, bool workings) const {
        if (!unbalanced_asked(stations)) return;
        const std::string note =
            carried_on() ? "Unbalanced snow is looked at on every station, also where the slope is outside the window "
                           "of " +
                               document_ +
                               ", 7.6.1 (2.38 degrees to 7 on 12). The fetch is taken as 20 ft where "
                               "the half breadth is less."
                         : "Unbalanced snow is looked at only where the slope is inside the window of " + document_ +
                               ", 7.6.1, as the plan chooses (" + unbalanced_window_of(basis_).source + ").";
        for (const bool port : {true, false}) {
            const auto field = [&](const CoverStation& s) { return unbalanced(s, port); };
            const auto terms = [&](const CoverStation& s) { return unbalanced_workings(s); };
            all.push_back(over_stations({std::string("unbalanced, heavy to ") + side_name(port), clause("7.6.1"), note},
                                        stations, field, workings ? WorkingsRule(terms) : nullptr));
        }
        if (gable_framing_of(basis_).value == GableFraming::simple_rafters) add_rafters(all, stations, workings);
    }

    bool narrow(const CoverStation& s) const { return in_window(s) && s.half_breadth <= asce7::shortest_fetch_7_6_1; }
    Pressure rafter_load(const CoverStation& s) const {
        const auto framing = asce7::Framing::simple_rafters;
        return edition_ == SnowDocument::asce7_22
                   ? asce7_22::narrow_gable_7_6_1(ground_.load, s.slope, s.half_breadth, framing)
                   : asce7::fifty_year::narrow_gable_7_6_1(ground_.load, s.slope, s.half_breadth, framing, importance_);
    }

    void add_rafters(std::vector<Arrangement>& all, Stations stations, bool workings) const {
        for (const bool port : {true, false}) {
            const auto field = [&](const CoverStation& s) {
                return narrow(s) ? heavy_side(port, even(rafter_load(s)), even(Pressure{})) : both(balanced(s));
            };
            const auto terms = [&](const CoverStation& s) {
                std::vector<Term> lines = balanced_workings(s);
                lines.push_back({"p_rafter", in_psf(rafter_load(s)), "psf",
                                 "I_s p_g (7-22: p_g) on the lee side, 0 on the other", clause("7.6.1")});
                return lines;
            };
            all.push_back(over_stations({std::string("simple rafters, heavy to ") + side_name(port), clause("7.6.1"),
                                         "The plan claims members that run simply from ridge to eave (" +
                                             gable_framing_of(basis_).source + ")."},
                                        stations, field, workings ? WorkingsRule(terms) : nullptr));
        }
    }

    // --------------------------------------------------------------------------------------------------- neighbours
    asce7::LowerRoof lower_roof(const NeighbourStep& step) const {
        return {.ground_load = ground_.load,
                .balanced_load = asce7::sloped_load_7_4(flat_, slope_factor(step.slope)),
                .step = step.step,
                .length = step.lower_length};
    }

    /// Drift heights of snow from the neighbour and of the cover's own snow blown against it; the deeper one is used.
    SurfaceDrift drift_of(const NeighbourStep& step) const {
        const asce7::LowerRoof roof = lower_roof(step);
        const Length fetch = step.neighbour->fetch;
        asce7::Drift drift;
        switch (edition_) {
            case SnowDocument::asce7_10: drift = asce7_10::step_drift_7_7_1(roof, fetch).drift; break;
            case SnowDocument::asce7_16: drift = asce7_16::step_drift_7_7_1(roof, fetch, importance_).drift; break;
            default: {
                drift = asce7_22::leeward_drift_7_7_1(roof, fetch, wind_);
                const asce7::Drift windward = asce7::drift_on_roof_7_7_1(
                    roof, asce7_22::windward_drift_height_7_7_1(ground_.load, roof.length, wind_));
                if (windward.peak > drift.peak) drift = windward;
            }
        }
        return {drift.peak, drift.width};
    }

    /// Whether 7.7.2 still asks for a drift across the gap.
    bool within_reach(const NeighbourStep& step) const {
        const Length gap = step.neighbour->gap;
        return gap < from_ft(20.0) && gap < 6.0 * step.step;
    }

    void add_drift(std::vector<EdgeLoad>& all, const NeighbourStep& step) const {
        const SurfaceDrift drift = drift_of(step);
        if (!(drift.peak > Pressure{}) || !within_reach(step)) return;
        EdgeLoad load;
        load.heading = {"drift beside " + step.neighbour->name,
                        clause(step.neighbour->gap > Length{} ? "7.7.2" : "7.7.1"),
                        "The drift lies against the rail as if " + step.neighbour->name +
                            " stood there; its fetch is the larger of the roofs on either side of the step."};
        load.extent = drift.length;
        load.beyond = [this](const CoverStation& s) { return balanced(s); };
        load.at = [this, drift](const CoverStation& s, Length distance) {
            return balanced(s) + asce7::drift_load_at_7_7_1(drift.peak, drift.length, distance);
        };
        load.workings = {{"h",
                          in_ft(step.step),
                          "ft",
                          "eave of " + step.neighbour->name + " above the lowest rail: " + step.neighbour->source,
                          {}},
                         {"l_u", in_ft(step.neighbour->fetch), "ft", "roof or cover of " + step.neighbour->name, {}}};
        append_drift(load.workings, step);
        load.workings.push_back(
            {"p_d", in_psf(drift.peak), "psf", "at the rail, falling to nothing at w", clause("7.7.1")});
        load.workings.push_back({"w", in_ft(drift.length), "ft", "from the rail", clause("7.7.1")});
        all.push_back(std::move(load));
    }

    void append_drift(std::vector<Term>& terms, const NeighbourStep& step) const {
        const asce7::LowerRoof roof = lower_roof(step);
        std::vector<double> arguments{in_kPa(roof.ground_load), in_kPa(roof.balanced_load), in_m(roof.step),
                                      in_m(step.neighbour->fetch), in_m(roof.length)};
        if (edition_ == SnowDocument::asce7_16) arguments.push_back(importance_);
        if (edition_ == SnowDocument::asce7_22) arguments.push_back(wind_);
        append(terms, rule(edition_ == SnowDocument::asce7_22 ? "leeward_drift" : "step_drift"), arguments, sources());
    }

    void add_slid(std::vector<EdgeLoad>& all, const NeighbourStep& step) const {
        const Neighbour& neighbour = *step.neighbour;
        if (!neighbour.roof) return;
        const bool slippery = neighbour.roof->surface == Surface::slippery;
        const asce7::Surface surface = slippery ? asce7::Surface::unobstructed_slippery : asce7::Surface::other;
        if (!asce7::sliding_applies_7_9(neighbour.roof->slope, surface)) return;
        const asce7::SlidingSnow slid =
            neighbour.gap > Length{} ? asce7::sliding_load_over_gap_7_9(flat_, neighbour.roof->run, step.lower_length,
                                                                        neighbour.gap, step.step)
                                     : asce7::sliding_load_7_9(flat_, neighbour.roof->run, step.lower_length);
        if (!slid.needed) return;
        EdgeLoad load;
        load.heading = {"slid from the roof of " + neighbour.name, clause("7.9"),
                        "Snow slides from the roof on the balanced snow of the cover; the blow of what falls is not in "
                        "the rule: do not park a cover under a roof that sheds. The roof is taken to carry the flat "
                        "load of the cover."};
        load.extent = slid.extent;
        load.beyond = [this](const CoverStation& s) { return balanced(s); };
        load.at = [this, slid](const CoverStation& s, Length) { return balanced(s) + slid.intensity; };
        load.workings = {{"W", in_ft(neighbour.roof->run), "ft", "eave to ridge of " + neighbour.name, {}},
                         {"p_f", in_psf(flat_), "psf", "flat load", clause("7.3")},
                         {"p_slid", in_psf(slid.intensity), "psf",
                          "0.4 p_f W over 15 ft; over a gap s: 0.4 p_f W (15 - s)/15 over 15 - s", clause("7.9")},
                         {"b_slid", in_ft(slid.extent), "ft", "loaded strip from the rail", clause("7.9")}};
        all.push_back(std::move(load));
    }

    SnowBasis basis_;
    GroundSnow ground_;
    std::string document_;
    SnowDocument edition_;
    asce7::RiskCategory category_;
    double wind_;      // W_2
    double thermal_;   // C_t
    double exposure_;  // C_e
    asce7::Surface surface_;
    double importance_;  // I_s
    Pressure flat_;      // p_f
};

}  // namespace

std::unique_ptr<DocumentSnow> asce7_snow(const Plan& plan) { return std::make_unique<Asce7Snow>(plan); }

}  // namespace coverframe::arranging
