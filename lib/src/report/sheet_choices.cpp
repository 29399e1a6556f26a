// SPDX-License-Identifier: BSD-3-Clause
#include <optional>
#include <variant>

#include "coverframe/actions/arrangement.hpp"
#include "coverframe/units/crossing.hpp"
#include "report/format.hpp"
#include "report/html.hpp"
#include "report/sheet.hpp"
#include "report/text.hpp"

namespace coverframe::reporting {
namespace {

// Rows of what was chosen, the value, and where it comes from.
struct Choices {
    UnitsShown units;
    Table table{{"what", "value", "where it comes from"}, {}};

    void row(std::string_view what, std::string value_markup, std::string_view source) {
        table.rows.push_back({tag("span", what), std::move(value_markup), tag("span", source)});
    }
    void words(std::string_view what, std::string_view value, std::string_view source) {
        row(what, tag("span", value), source);
    }
    void add(std::string_view what, const Cited<double>& value) {
        row(what, tag("span", rounded(value.value), "n"), value.source);
    }
    void add(std::string_view what, const Cited<Length>& value) {
        row(what, value_html(value.value, units), value.source);
    }
    void add(std::string_view what, const Cited<Force>& value) {
        row(what, value_html(value.value, units), value.source);
    }
    void add(std::string_view what, const Cited<LineLoad>& value) {
        row(what, value_html(in_N_per_m(value.value), "N/m", units), value.source);
    }
    void add(std::string_view what, const Cited<Angle>& value) {
        row(what, value_html(in_deg(value.value), "deg", units), value.source);
    }
    void stress(std::string_view what, const Cited<Pressure>& value) {
        row(what, value_html(in_N_per_mm2(value.value), "N/mm2", units), value.source);
    }
    void area_load(std::string_view what, const Cited<Pressure>& value) {
        row(what, value_html(in_kPa(value.value), "kPa", units), value.source);
    }
    template <class Value>
    void add(std::string_view what, const std::optional<Cited<Value>>& value) {
        if (value) add(what, *value);
    }
};

/// What the ground load means: "ASCE 7-22, at strength level for risk category II", "EN 1991-1-3:2003, 50 years".
std::string meaning_of(const GroundSnow& snow) {
    const std::string document = name_of(snow.document);
    if (level_of(snow.document) == Level::strength)
        return document + ", at strength level for risk category " + snow.risk_category;
    const std::string category = snow.risk_category.empty() ? "" : ", risk category " + snow.risk_category;
    return document + ", " + std::to_string(snow.return_period_years.value_or(50)) + " years" + category;
}

void add_ground(Choices& choices, const Site& site) {
    const GroundSnow& snow = site.ground_snow;
    choices.row("ground snow, " + meaning_of(snow), value_html(in_kPa(snow.load), "kPa", choices.units), snow.source);
    if (snow.rain)
        choices.row("rain that goes with the snow", value_html(in_kPa(*snow.rain), "kPa", choices.units), snow.source);
    for (const Neighbour& neighbour : site.neighbours) {
        choices.row("height of " + neighbour.name + " over the datum", value_html(neighbour.eave_z, choices.units),
                    neighbour.source);
        choices.row("gap between " + neighbour.name + " and the rail", value_html(neighbour.gap, choices.units),
                    neighbour.source);
    }
}

/// What was taken where the document does not say how a boat cover is to be read.
void add_readings(Choices& choices, const SnowBasis& snow) {
    if (is_asce7(snow.document) || is_nbc(snow.document)) {
        const Cited<UnbalancedWindow> window = unbalanced_window_of(snow);
        choices.words("unbalanced snow where the slope lies outside the document's window",
                      window.value == UnbalancedWindow::carried_on ? "looked at" : "not looked at", window.source);
    }
    if (is_asce7(snow.document)) {
        const Cited<GableFraming> framing = gable_framing_of(snow);
        choices.words("frame taken as simple rafters", framing.value == GableFraming::simple_rafters ? "yes" : "no",
                      framing.source);
    }
    if (snow.surface.value == Surface::slippery) {
        const Cited<SlidSnow> slid = slid_snow_of(snow);
        choices.words("snow that slides",
                      slid.value == SlidSnow::caught ? "stays on the cover above the rail" : "falls clear of the cover",
                      slid.source);
    }
}

const char* words_of(ImportanceCategory category) {
    switch (category) {
        case ImportanceCategory::low: return "low";
        case ImportanceCategory::normal: return "normal";
        case ImportanceCategory::high: return "high";
        case ImportanceCategory::post_disaster: return "post-disaster";
    }
    return "";
}

void add_site_and_basis(Choices& choices, const Plan& plan) {
    const Basis& basis = plan.basis;
    add_ground(choices, plan.site);
    choices.add(is_nbc(basis.snow.document) ? "wind factor C_w" : "exposure factor C_e", basis.snow.exposure_factor);
    if (const auto& category = basis.snow.importance_category)
        choices.words("importance category", words_of(category->value), category->source);
    choices.add("thermal factor C_t", basis.snow.thermal_factor);
    choices.words("surface",
                  basis.snow.surface.value == Surface::slippery ? "slippery, snow free to slide"
                                                                : "other, snow kept from sliding",
                  basis.snow.surface.source);
    choices.add("winter wind W_2", basis.snow.winter_wind);
    add_readings(choices, basis.snow);
    choices.add("factor on self-weight", basis.combination.permanent);
    choices.add("factor on snow", basis.combination.snow);
    choices.words("timber", name_of(basis.timber.document), "plan");
    if (const auto& wet = basis.timber.wet_service)
        choices.words("moisture over 19 % in service", wet->value ? "yes" : "no", wet->source);
    choices.add("time effect factor lambda", basis.timber.time_effect_factor);
    choices.add("modification factor k_mod", basis.timber.modification_factor);
    choices.add("material factor gamma_M", basis.timber.material_factor);
    const Cited<Angle> threshold = shedding_threshold(plan);
    choices.add("slope from which snow is counted on to leave", threshold);
}

void add_boat(Choices& choices, const Boat& boat) {
    for (const Stand& stand : boat.stands)
        choices.area_load(stand.name + ": pressure it takes under a foot", stand.bearing);
    for (const Obstacle& obstacle : boat.obstacles)
        choices.add(obstacle.name + ": clearance to the film", obstacle.clearance);
}

void add_straps_and_band(Choices& choices, const Plan& plan) {
    for (const StrapKind& strap : plan.straps) {
        const std::string name = "strap " + strap.name + ": ";
        choices.add(name + "stiffness EA, low", strap.stiffness_low);
        choices.add(name + "stiffness EA, high", strap.stiffness_high);
        choices.add(name + "break strength", strap.break_strength);
        choices.add(name + "share the buckle holds", strap.buckle_efficiency);
        choices.add(name + "share left after sun and wear", strap.ageing);
        choices.add(name + "share used for months", strap.working_share);
    }
    choices.add("upward pull the rub rail takes", plan.support.band.rub_rail_hold);
    choices.add("friction of film on the rail that is relied on", plan.support.band.rail_friction);
}

void add_foot(Choices& choices, const std::string& upright, const std::optional<SoftFoot>& foot) {
    if (!foot) return;
    const std::string name = "foot of " + upright + ": ";
    choices.add(name + "stiffness of what it stands on", foot->stiffness);
    if (!foot->friction) return;
    choices.add(name + "friction, low", foot->friction->low);
    choices.add(name + "friction, high", foot->friction->high);
    choices.add(name + "stiffness until it slides", foot->friction->side_stiffness);
}

void add_feet(Choices& choices, const Support& support) {
    if (const auto* ridge = std::get_if<RidgeSupport>(&support.structure)) {
        for (const Upright& upright : ridge->uprights) add_foot(choices, upright.name, upright.foot);
    } else {
        for (const FoundMember& member : std::get<FoundFrame>(support.structure).members)
            add_foot(choices, member.name, member.foot);
    }
}

void add_film(Choices& choices, const Film& film) {
    choices.words("film thickness", thickness(film.thickness.value, choices.units), film.thickness.source);
    choices.add("film tension, low", film.tension_low);
    choices.add("film tension, high", film.tension_high);
    choices.stress("film modulus E", film.modulus);
    if (film.creep_modulus) choices.stress("film creep modulus, with the low tension", *film.creep_modulus);
    choices.add("film Poisson's ratio", film.poisson);
    choices.stress("film strength", film.strength);
    choices.row("film unit weight", value_html(in_kN_per_m3(film.unit_weight.value), "kN/m3", choices.units),
                film.unit_weight.source);
    choices.add("width of the sheet of film", film.sheet_width);
    choices.add("length of the sheet of film", film.sheet_length);
    choices.add("film tucked under the band", tuck_of(film));
}

}  // namespace

std::string choices_html(const Assessment& assessment) {
    Choices choices{assessment.plan.units_shown};
    add_site_and_basis(choices, assessment.plan);
    add_boat(choices, assessment.plan.boat);
    add_straps_and_band(choices, assessment.plan);
    add_feet(choices, assessment.plan.support);
    add_film(choices, assessment.plan.film);
    return table_html(choices.table, "compact");
}

}  // namespace coverframe::reporting
