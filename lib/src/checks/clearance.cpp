// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/checks/clearance.hpp"

#include <optional>

#include "common.hpp"
#include "coverframe/units/crossing.hpp"
#include "film_surface.hpp"
#include "shown.hpp"

namespace coverframe {
namespace {

using namespace checks_detail;

const Clause clause_clearance{"coverframe", "clearance"};

/// One point of an outline under the film.
struct Sample {
    Point at;
    FilmHeight film;
    double drop = 0;     ///< how far the film comes down from its drawn place [m]
    double allowed = 0;  ///< how far it may come down before the required clearance is used up [m]

    [[nodiscard]] double gap() const { return film.loaded - in_m(at.z); }
};

// A point where nothing is left to come down is worse than any other; among such, the one with the least margin.
bool worse(const Sample& a, const Sample& b) {
    const bool none_a = a.allowed <= 0.0;
    const bool none_b = b.allowed <= 0.0;
    if (none_a != none_b) return none_a;
    if (none_a) return a.allowed - a.drop < b.allowed - b.drop;
    return a.drop / a.allowed > b.drop / b.allowed;
}

/// The worst point of an outline, the one nearest to the film, and the first one without film over it.
struct Search {
    std::optional<Sample> worst;
    std::optional<Sample> nearest;
    std::optional<Point> outside;
};

Search search(const FilmSurface& film, const Obstacle& obstacle) {
    Search found;
    for (const Point& point : sampled(obstacle.outline)) {
        const std::optional<FilmHeight> height = film.over(in_m(point.x), in_m(point.y));
        if (!height) {
            if (!found.outside) found.outside = point;
            continue;
        }
        Sample sample{point, *height};
        sample.drop = height->drawn - height->loaded;
        sample.allowed = height->drawn - in_m(point.z) - in_m(obstacle.clearance.value);
        if (!found.worst || worse(sample, *found.worst)) found.worst = sample;
        if (!found.nearest || sample.gap() < found.nearest->gap()) found.nearest = sample;
    }
    return found;
}

std::string place_text(const Point& point, UnitsShown units) {
    const Length y = point.y < Length{} ? -point.y : point.y;
    const std::string side =
        in_m(y) < 0.001 ? "on the centreline" : shown(y, units) + (point.y < Length{} ? " to port" : " to starboard");
    return "at " + shown(point.x, units) + " aft of the stem, " + side;
}

std::string clearance_sentence(const CheckInput& input, const Obstacle& obstacle, const Sample& nearest,
                               Verdict verdict) {
    const UnitsShown units = input.plan.units_shown;
    const Length gap = from_m(nearest.gap());
    const std::string where = " " + place_text(nearest.at, units);
    const std::string wanted = shown(obstacle.clearance.value, units);
    if (verdict == Verdict::satisfied)
        return "The film stays " + shown(gap, units) + " over the " + obstacle.name + where + "; " + wanted +
               " must stay free.";
    const std::string mend = "; raise the ridge there, or set supports closer.";
    if (gap > Length{})
        return "The film comes down to " + shown(gap, units) + " over the " + obstacle.name + where + ", and " +
               wanted + " must stay free" + mend;
    return "The film touches the " + obstacle.name + where + ": it would come down " + shown(-gap, units) +
           " below its edge" + mend;
}

Finding worst_finding(const CheckInput& input, const Obstacle& obstacle, const Search& found) {
    const Sample& sample = *found.worst;
    Finding finding = compare("clearance", obstacle.name, clause_clearance, input, sample.drop, sample.allowed, "m");
    finding.x = in_m(sample.at.x);
    finding.sentence = clearance_sentence(input, obstacle, *found.nearest, finding.verdict);
    if (input.workings)
        finding.workings = {
            term("x", in_m(sample.at.x), "m", "of the outline, aft of the stem head"),
            term("y", in_m(sample.at.y), "m", "of the outline, to starboard"),
            term("z", in_m(sample.at.z), "m", "of the outline"),
            term("z_drawn", sample.film.drawn, "m", "of the film as drawn, straight from ridge to rail"),
            term("z_loaded", sample.film.loaded, "m", "of the film under load"),
            term("c", in_m(obstacle.clearance.value), "m", obstacle.clearance.source),
            term("drop", sample.drop, "m", "z_drawn - z_loaded", clause_clearance),
            term("allowed", sample.allowed, "m", "z_drawn - z - c", clause_clearance)};
    return finding;
}

}  // namespace

std::vector<Finding> check_clearance(const CheckInput& input) {
    require_usable(input);
    const FilmSurface film(input);
    std::vector<Finding> findings;
    for (const Obstacle& obstacle : input.plan.boat.obstacles) {
        const Search found = search(film, obstacle);
        std::optional<Finding> finding;
        if (found.worst) finding = worst_finding(input, obstacle, found);
        const bool exceeded = finding && finding->verdict == Verdict::exceeded;
        if (found.outside && !exceeded) {
            finding = not_applicable(
                "clearance", obstacle.name, clause_clearance, input,
                "The " + obstacle.name + " is not judged: its outline " +
                    place_text(*found.outside, input.plan.units_shown) +
                    " lies outside the film between the first and last strip and the rails; look there.");
            finding->x = in_m(found.outside->x);
        }
        if (finding) findings.push_back(std::move(*finding));
    }
    return findings;
}

}  // namespace coverframe
