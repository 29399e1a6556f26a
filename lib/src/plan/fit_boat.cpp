// SPDX-License-Identifier: BSD-3-Clause
// Boat, straps, band and film: what cannot stand whatever the support is.
#include <algorithm>
#include <cmath>

#include "coverframe/plan/geometry.hpp"
#include "coverframe/plan/girth.hpp"
#include "coverframe/units/crossing.hpp"
#include "plan/fit.hpp"
#include "plan/json_value.hpp"
#include "plan/limits.hpp"

namespace coverframe::plan_detail {
namespace {

using namespace coverframe::literals;

void fit_rail(Fit& fit) {
    const std::vector<RailStation>& rail = fit.plan.boat.rail;
    for (std::size_t i = 1; i < rail.size(); ++i) {
        if (rail[i].x > rail[i - 1].x) continue;
        fit.add("boat.rail.order", at("/boat/rail", i, "x"), fit.say(rail[i].x),
                "rail station " + std::to_string(i + 1) + " at x = " + fit.say(rail[i].x) +
                    " does not lie aft of the one before it at " + fit.say(rail[i - 1].x) +
                    "; list the stations from stem to stern");
    }
    for (std::size_t i = 1; i + 1 < rail.size(); ++i) {
        if (rail[i].half_breadth != Length{}) continue;
        fit.add("boat.rail.breadth", at("/boat/rail", i, "half_breadth"), fit.say(rail[i].half_breadth),
                "rail station " + std::to_string(i + 1) + " at x = " + fit.say(rail[i].x) +
                    " lies on the centreline, where both rails would cross; only the stem or the stern may be pointed");
    }
    if (!rail.empty() &&
        std::all_of(rail.begin(), rail.end(), [](const auto& s) { return s.half_breadth <= Length{}; })) {
        fit.add("boat.rail.breadth", "/boat/rail", "0",
                "the rail has no breadth anywhere; measure from centreline to rail");
    }
    if (!rail_is_sound(fit.plan.boat)) return;
    const Length length = rail.back().x - rail.front().x;
    if (length >= limit::boat_length.low && length <= limit::boat_length.high) return;
    fit.add("boat.length", "/boat/rail", fit.say(length),
            "the rail line is " + fit.say(length) + " long and must be " + text_of(limit::boat_length) + " (" +
                std::string(limit::boat_length.reason) + "); check the unit of x");
}

/// Least half breadth of the rail between two x. \pre both on the rail line
Length least_half_breadth(const Boat& boat, Length from, Length to) {
    Length least = std::min(rail_at(boat, from)->half_breadth, rail_at(boat, to)->half_breadth);
    for (const RailStation& station : boat.rail) {
        if (station.x > from && station.x < to) least = std::min(least, station.half_breadth);
    }
    return least;
}

void fit_stand(Fit& fit, std::size_t i) {
    const Boat& boat = fit.plan.boat;
    const Stand& stand = boat.stands[i];
    if (!(stand.from < stand.to)) {
        fit.add("boat.stand.order", at("/boat/stands", i, "to"), fit.say(stand.to),
                "stand \"" + stand.name + "\" ends at x = " + fit.say(stand.to) + ", not aft of where it begins (" +
                    fit.say(stand.from) + "); \"from\" is its forward end");
        return;
    }
    if (!rail_is_sound(boat)) return;
    const auto [stem, stern] = rail_ends(boat);
    if (stand.from < stem || stand.to > stern) {
        fit.add("boat.stand.off_boat", at("/boat/stands", i), fit.say(stand.from) + " to " + fit.say(stand.to),
                "stand \"" + stand.name + "\" reaches from " + fit.say(stand.from) + " to " + fit.say(stand.to) +
                    ", beyond the rail line from " + fit.say(stem) + " to " + fit.say(stern) + "; shorten it");
        return;
    }
    const Length room = least_half_breadth(boat, stand.from, stand.to);
    if (stand.half_breadth <= room) return;
    fit.add("boat.stand.off_boat", at("/boat/stands", i, "half_breadth"), fit.say(stand.half_breadth),
            "stand \"" + stand.name + "\" reaches " + fit.say(stand.half_breadth) +
                " off the centreline, but the rail is only " + fit.say(room) +
                " off it at the narrowest; give a narrower or shorter stand");
}

/// Points along an outline, close enough that a straight edge cannot pass through the film unseen.
std::vector<Point> samples_of(const std::vector<Point>& outline) {
    constexpr int pieces = 16;  // of each edge
    std::vector<Point> samples;
    for (std::size_t i = 0; i < outline.size(); ++i) {
        samples.push_back(outline[i]);
        if (i + 1 == outline.size()) break;
        const Point& a = outline[i];
        const Point& b = outline[i + 1];
        for (int k = 1; k < pieces; ++k) {
            const double share = static_cast<double>(k) / pieces;
            samples.push_back({a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share, a.z + (b.z - a.z) * share});
        }
    }
    return samples;
}

void fit_obstacle(Fit& fit, std::size_t i) {
    const Obstacle& obstacle = fit.plan.boat.obstacles[i];
    for (std::size_t k = 0; k < obstacle.outline.size(); ++k) {
        const Point& point = obstacle.outline[k];
        const auto rail = rail_at(fit.plan.boat, point.x);
        const Length off = point.y < Length{} ? -point.y : point.y;
        if (rail && off <= rail->half_breadth) continue;
        fit.add("boat.obstacle.off_boat", at(at("/boat/obstacles", i, "outline"), k), fit.say(point.x),
                "\"" + obstacle.name + "\" has a point at x = " + fit.say(point.x) + ", y = " + fit.say(point.y) +
                    ", outside the rail line; the cover does not pass over it there: check the point, or move the rail "
                    "line to where the film turns over");
        return;
    }
    constexpr Length drawing_accuracy = 1.0_mm;
    Length worst = drawing_accuracy;
    Point worst_at;
    for (const Point& point : samples_of(obstacle.outline)) {
        const auto film = film_height_at(fit.plan, point.x, point.y);
        if (!film || point.z - *film <= worst) continue;
        worst = point.z - *film;
        worst_at = point;
    }
    if (worst == drawing_accuracy) return;
    fit.add("boat.obstacle.through_film", at("/boat/obstacles", i, "outline"), fit.say(worst_at.z),
            "\"" + obstacle.name + "\" stands " + fit.say(worst) +
                " above the drawn film at x = " + fit.say(worst_at.x) + ", y = " + fit.say(worst_at.y) +
                ", before any snow; raise the ridge there by more than that, or take the "
                "part off the boat");
}

/// Rounded up, but for what arithmetic leaves behind.
double whole(double number) { return std::ceil(number - 1e-6); }

/// What must be had at least, rounded up to the centimetre or a hundredth of a foot.
std::string say_at_least(const Fit& fit, Length length) {
    if (fit.plan.units_shown == UnitsShown::us) return fit.say(from_ft(whole(in_ft(length) * 100) / 100));
    return fit.say(from_m(whole(in_m(length) * 100) / 100));
}

/// By how much a sheet is short, rounded up: "18 cm", "7 in".
std::string say_short(const Fit& fit, Length length) {
    if (fit.plan.units_shown == UnitsShown::us) return number_text(whole(in_in(length))) + " in";
    return number_text(whole(in_m(length) * 100)) + " cm";
}

/// One side of a sheet of film, given or not, against what is needed.
void fit_sheet_side(Fit& fit, const std::optional<Cited<Length>>& given, Length needed, const Limit<Length>& believed,
                    const std::string& code, const std::string& key, const std::string& side, const std::string& way) {
    constexpr Length drawing_accuracy = 1.0_mm;
    if (!given || given->value < believed.low || given->value > believed.high) return;
    if (given->value >= needed - drawing_accuracy) return;
    fit.add(code, "/film/" + key, fit.say(given->value),
            "the sheet of film is " + fit.say(given->value) + ' ' + side + " as it is laid, and at least " +
                say_at_least(fit, needed) + " are needed, " + say_short(fit, needed - given->value) + " more, " + way +
                " and " + fit.say(tuck_of(fit.plan.film).value) +
                " under the band at each edge; shrinking only makes film shorter: take a larger sheet, or weld on a "
                "strip");
}

void fit_sheet(Fit& fit) {
    const Film& film = fit.plan.film;
    if (!film.sheet_width && !film.sheet_length) return;
    const auto needed = sheet_needed(fit.plan);
    if (!needed) return;  // what keeps the cover from being drawn is spoken of there
    fit_sheet_side(fit, film.sheet_width, needed->width, limit::sheet_width, "film.sheet.narrow", "sheet_width", "wide",
                   "with the widest place " + needed->place + " (x = " + fit.say(needed->widest_at) +
                       "): from band to band over rail, ridge and rail,");
    fit_sheet_side(fit, film.sheet_length, needed->length, limit::sheet_length, "film.sheet.short", "sheet_length",
                   "long", "from the band at the stem up to the ridge, along it and down to the band at the stern,");
}

}  // namespace

std::pair<Length, Length> rail_ends(const Boat& boat) { return {boat.rail.front().x, boat.rail.back().x}; }

bool rail_is_sound(const Boat& boat) {
    const bool inside_out =
        std::any_of(boat.rail.begin(), boat.rail.end(), [](const auto& s) { return s.half_breadth < Length{}; });
    return boat.rail.size() >= 2 && !inside_out &&
           std::adjacent_find(boat.rail.begin(), boat.rail.end(), [](const RailStation& a, const RailStation& b) {
               return !(a.x < b.x);
           }) == boat.rail.end();
}

void fit_boat(Fit& fit) {
    const Boat& boat = fit.plan.boat;
    fit_rail(fit);
    fit_names(fit, names_in(boat.stands), "/boat/stands", "stand", "boat.stand.duplicate");
    for (std::size_t i = 0; i < boat.stands.size(); ++i) fit_stand(fit, i);
    fit_names(fit, names_in(boat.obstacles), "/boat/obstacles", "obstacle", "boat.obstacle.duplicate");
    if (!rail_is_sound(boat)) return;
    for (std::size_t i = 0; i < boat.obstacles.size(); ++i) fit_obstacle(fit, i);
}

void fit_straps(Fit& fit) {
    const std::vector<StrapKind>& straps = fit.plan.straps;
    fit_names(fit, names_in(straps), "/straps", "kind of strap", "strap.duplicate");
    for (std::size_t i = 0; i < straps.size(); ++i) {
        if (straps[i].stiffness_low.value <= straps[i].stiffness_high.value) continue;
        fit.add("strap.stiffness.order", at("/straps", i, "stiffness_low"), write(straps[i].stiffness_low.value, "kN"),
                "strap \"" + straps[i].name + "\": the lower bound of the stiffness is above the upper one (" +
                    write(straps[i].stiffness_high.value, "kN") + "); exchange them");
    }
}

void fit_band(Fit& fit) {
    const Band& band = fit.plan.support.band;
    fit_strap_name(fit, band.strap, "/support/band/strap", "the band");
    for (std::size_t i = 0; i < band.belly_straps.size(); ++i) {
        const BellyStrap& belly = band.belly_straps[i];
        const std::string name = "belly strap " + std::to_string(i + 1);
        if (rail_is_sound(fit.plan.boat) && !rail_at(fit.plan.boat, belly.x)) {
            const auto [stem, stern] = rail_ends(fit.plan.boat);
            fit.add("support.band.belly_off_boat", at("/support/band/belly_straps", i, "x"), fit.say(belly.x),
                    name + " at x = " + fit.say(belly.x) + " does not pass under the boat, whose rail runs from " +
                        fit.say(stem) + " to " + fit.say(stern) + "; move it");
        }
        fit_strap_name(fit, belly.strap, at("/support/band/belly_straps", i, "strap"), name);
    }
}

void fit_film(Fit& fit) {
    const Film& film = fit.plan.film;
    if (film.creep_modulus && film.creep_modulus->value > film.modulus.value) {
        fit.add("film.modulus.order", "/film/creep_modulus", write(film.creep_modulus->value, "MPa"),
                "the creep modulus is above the modulus (" + write(film.modulus.value, "MPa") +
                    "); film grows softer the longer snow lies on it");
    }
    fit_sheet(fit);
    if (film.tension_low.value <= film.tension_high.value) return;
    fit.add("film.tension.order", "/film/tension_low", write(film.tension_low.value, "kN/m"),
            "the low film tension is above the high one (" + write(film.tension_high.value, "kN/m") +
                "); low is for a warm day after months, high for a cold one just after shrinking");
}

}  // namespace coverframe::plan_detail
