// SPDX-License-Identifier: BSD-3-Clause
// Film that lies on a leg of a cross strap.
#include "coverframe/film/film_on_strap.hpp"
#include "model.hpp"

namespace coverframe::validation {
namespace {

/// Input: "chord", "initial" (a text of a negative force: slack), "EA", "Et", "nu", "shrunk" and "beside", two objects
/// with "bay", "load", and "strain", "falls", "curves" [1/m] as numbers.
StrapUnderFilm read_leg(const Input& input) {
    StrapUnderFilm leg;
    leg.chord = input.si<Length>("chord");
    leg.initial = input.si<Force>("initial");
    leg.stiffness = input.si<Force>("EA");
    leg.film_stiffness = input.si<LineLoad>("Et");
    leg.poisson = input.number("nu");
    leg.shrunk = input.si<LineLoad>("shrunk");
    const std::vector<Input> sides = input.list("beside");
    if (sides.size() != 2) throw CaseError("/beside must hold two sides");
    for (std::size_t i = 0; i < sides.size(); ++i) {
        leg.beside[i] = {sides[i].si<Length>("bay"), sides[i].si<Pressure>("load"), sides[i].number("strain"),
                         sides[i].number("falls"), sides[i].number("curves")};
    }
    return leg;
}

Answers film_on_strap_model(const Input& input) {
    const std::string rule = "film_on_strap";
    const FilmOnStrap state = film_on_strap(read_leg(input));
    const FilmLift& first = state.beside.front();
    return {{"tension", {state.tension, Dimension::force, rule}},
            {"sag", {state.sag, Dimension::length, rule}},
            {"load", {state.load, Dimension::line_load, rule}},
            {"along", {first.along, Dimension::line_load, rule}},
            {"free_sag", {first.free_sag, Dimension::length, rule}}};
}

}  // namespace

void add_film_on_strap_models(std::map<std::string, Model>& all) { all["film_on_strap"] = film_on_strap_model; }

}  // namespace coverframe::validation
