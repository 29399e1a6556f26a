// SPDX-License-Identifier: BSD-3-Clause
// The rules of EN 1991-1-3:2003 applied to a cover.
#include "coverframe/actions/en1991_1_3.hpp"

#include <cmath>

#include "actions/arrangements/common.hpp"
#include "coverframe/actions/en1991_1_3_drift.hpp"
#include "coverframe/actions/extremes.hpp"

namespace coverframe::arranging {
namespace {

namespace en = en1991_1_3;

class EnSnow final : public DocumentSnow {
public:
    explicit EnSnow(const Plan& plan)
        : basis_(plan.basis.snow),
          ground_(plan.site.ground_snow),
          exposure_(basis_.exposure_factor.value),
          thermal_(basis_.thermal_factor.value),
          sliding_(basis_.surface.value == Surface::slippery ? en::Sliding::free : en::Sliding::prevented) {}

    Pressure balanced(const CoverStation& s) const override { return load(shape(s)); }
    Pressure unshed(const CoverStation&) const override { return load(en::undrifted_coefficient_5_3_6); }
    Clause slope_clause() const override { return en::clause_5_3_3; }
    Heading balanced_heading() const override {
        return {"balanced", case_clause("(i)"), sliding_note() + return_period_note()};
    }

    std::vector<Term> balanced_workings(const CoverStation& s) const override {
        std::vector<Term> terms{{"x", in_m(s.x), "m", "station with the heaviest load", {}}};
        append(terms, "en1991_1_3.shape_coefficient", {in_deg(s.slope), static_cast<double>(sliding_)},
               {{"slope", "drawn, ridge to rail"}, {"sliding", basis_.surface.source}});
        append(terms, "en1991_1_3.roof_load", {in_kPa(ground_.load), shape(s), exposure_, thermal_},
               {{"s_k", ground_text()},
                {"mu", "mu_1"},
                {"C_e", basis_.exposure_factor.source},
                {"C_t", basis_.thermal_factor.source}});
        return terms;
    }

    std::vector<Arrangement> own(Stations stations, bool workings) const override {
        std::vector<Arrangement> all;
        for (const bool port : {false, true}) {
            const auto field = [&](const CoverStation& s) {
                return heavy_side(port, even(balanced(s)), even(0.5 * balanced(s)));
            };
            const Clause clause = case_clause(port ? "(iii)" : "(ii)");
            const auto terms = [&](const CoverStation& s) {
                std::vector<Term> lines = balanced_workings(s);
                lines.push_back({"s_light", in_kPa(0.5 * balanced(s)), "kPa",
                                 std::string("0.5 mu_1 C_e C_t s_k to ") + side_name(!port), clause});
                return lines;
            };
            all.push_back(over_stations({std::string("drifted, heavy to ") + side_name(port), clause, sliding_note()},
                                        stations, field, workings ? WorkingsRule(terms) : nullptr));
        }
        return all;
    }

    Clause partial_clause(Stations) const override { return {}; }

    /// Drift and slid snow are one load here.
    std::vector<EdgeLoad> beside(const NeighbourStep& step) const override {
        if (!(ground_.load > Pressure{})) return {};
        const Neighbour& neighbour = *step.neighbour;
        const bool roof = neighbour.roof.has_value();
        const en::TallerWorks works{.ground_load = ground_.load,
                                    .upper_width = neighbour.fetch,
                                    .lower_width = step.lower_length,
                                    .height = step.step,
                                    .upper_pitch = roof ? neighbour.roof->slope : Angle{},
                                    .upper_slope = roof ? neighbour.roof->run : Length{}};
        const en::WallDrift drift = en::taller_works_5_3_6(works);
        EdgeLoad edge;
        edge.heading = {"drift beside " + neighbour.name, en::clause_5_3_6,
                        "Wind-blown snow, and snow that slid where the roof sheds, lie against the rail as if " +
                            neighbour.name +
                            " stood there; the cover is taken as level, and no gap is too wide, for "
                            "the text gives none."};
        edge.extent = drift.length;
        edge.beyond = [this](const CoverStation& s) { return unshed(s); };
        edge.at = [this, drift](const CoverStation&, Length distance) {
            return load(en::drift_coefficient_at_5_3_6(drift.wall, drift.length, distance));
        };
        append(edge.workings, "en1991_1_3.taller_works",
               {in_kPa(works.ground_load), in_m(works.upper_width), in_m(works.lower_width), in_m(works.height),
                in_deg(works.upper_pitch), in_m(works.upper_slope), works.upper_shape},
               {{"s_k", ground_text()},
                {"b_1", "roof or cover of " + neighbour.name + ": " + neighbour.source},
                {"b_2", "cover, away from it"},
                {"h", "eave of " + neighbour.name + " above the lowest rail"}});
        edge.workings.push_back(
            {"s_wall", in_kPa(load(drift.wall)), "kPa", "mu_2 C_e C_t s_k at the rail", en::clause_5_2});
        return {edge};
    }

private:
    static Clause case_clause(const std::string& number) {
        return {en::clause_5_3_3.document, "5.3.3, Figure 5.3, case " + number};
    }

    std::string sliding_note() const {
        return sliding_ == en::Sliding::free ? "Snow is taken as free to slide off, because the plan claims it."
                                             : "Snow is taken as held on the cover at every slope, because the plan "
                                               "does not claim that it may slide.";
    }

    /// What a return period other than 50 years means to somebody who sets the cover up every winter.
    std::string return_period_note() const {
        const int years = ground_.return_period_years.value_or(50);
        if (years == 50) return "";
        const double chance = extremes::exceedance_in_winters(years, 10.0);
        return " The ground load is one of " + std::to_string(years) +
               " years and is used as it is: in ten winters it is exceeded at least once with a chance of " +
               text_of_number(std::round(100.0 * chance)) + " %.";
    }

    /// The source, and the return period where it is not the usual one.
    std::string ground_text() const {
        if (!ground_.return_period_years) return ground_.source;
        return ground_.source + "; return period " + std::to_string(*ground_.return_period_years) + " years";
    }

    double shape(const CoverStation& s) const { return en::shape_coefficient_pitched_5_3_3(s.slope, sliding_); }
    Pressure load(double coefficient) const {
        return en::roof_load_5_2(ground_.load, coefficient, exposure_, thermal_);
    }

    SnowBasis basis_;
    GroundSnow ground_;
    double exposure_;
    double thermal_;
    en::Sliding sliding_;
};

}  // namespace

std::unique_ptr<DocumentSnow> en1991_1_3_snow(const Plan& plan) { return std::make_unique<EnSnow>(plan); }

}  // namespace coverframe::arranging
