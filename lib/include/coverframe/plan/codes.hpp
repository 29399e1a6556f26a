// SPDX-License-Identifier: BSD-3-Clause
// Every code a problem of a plan may have, and what it means. Codes are stable: programs compare them, never the prose.
#pragma once

#include <string_view>

namespace coverframe {

/// When a code is given.
enum class ProblemStage {
    text,   ///< the file is not JSON, or not JSON a plan may be written in
    shape,  ///< keys, types, choices, units
    value,  ///< a single value that is not believed
    fit,    ///< parts that do not fit one another
};

struct ProblemCode {
    std::string_view code;
    ProblemStage stage{};
    std::string_view meaning;
};

inline constexpr ProblemCode plan_problem_codes[]{
    {"plan.file", ProblemStage::text, "the file cannot be read"},
    {"plan.json.size", ProblemStage::text, "the text is larger than 4 MiB"},
    {"plan.json.utf8", ProblemStage::text, "the text is not UTF-8"},
    {"plan.json.syntax", ProblemStage::text, "the text is not JSON"},
    {"plan.json.trailing", ProblemStage::text, "something stands after the end of the plan"},
    {"plan.json.depth", ProblemStage::text, "brackets are nested more than 32 deep"},
    {"plan.json.number", ProblemStage::text, "a number is too large for a double"},
    {"plan.json.duplicate_key", ProblemStage::text, "a key stands twice in one object"},

    {"plan.format", ProblemStage::shape, "the format number is not 1"},
    {"plan.type", ProblemStage::shape, "a JSON value of another type is due"},
    {"plan.key.missing", ProblemStage::shape, "a key that is needed is not there"},
    {"plan.key.unknown", ProblemStage::shape, "a key that does not belong there"},
    {"plan.choice", ProblemStage::shape, "not one of the words that may stand there"},
    {"plan.cited.bare", ProblemStage::shape, "a value without its source"},
    {"plan.quantity.bare", ProblemStage::shape, "a number without its unit"},
    {"quantity.number", ProblemStage::shape, "no decimal number, or more than one"},
    {"quantity.unit.missing", ProblemStage::shape, "a text with a number but no unit"},
    {"quantity.unit.unknown", ProblemStage::shape, "not a unit of anything"},
    {"quantity.dimension", ProblemStage::shape, "a unit of another quantity"},
    {"quantity.range", ProblemStage::shape, "a quantity too large or too small for a double"},

    {"plan.range", ProblemStage::value, "a size that is not believed"},
    {"plan.list.count", ProblemStage::value, "a list with too few or too many items"},
    {"plan.text.empty", ProblemStage::value, "a name or source is blank"},
    {"plan.text.long", ProblemStage::value, "a text is too long"},
    {"plan.text.control", ProblemStage::value, "a text holds a control character"},
    {"plan.text.utf8", ProblemStage::value, "a text of a plan made in code is not UTF-8"},

    {"site.neighbour.duplicate", ProblemStage::fit, "two neighbours of one name"},
    {"site.neighbour.order", ProblemStage::fit, "a neighbour ends before it begins"},
    {"site.neighbour.off_boat", ProblemStage::fit,
     "a neighbour to port or starboard ends ahead of the boat or begins astern"},
    {"site.neighbour.run", ProblemStage::fit, "a neighbour's roof slopes over more than its whole length"},

    {"basis.snow.mixed", ProblemStage::fit, "ground load and snow rules belong to different documents"},
    {"plan.combination.mixed", ProblemStage::fit, "a snow factor that does not belong to the ground load's document"},
    {"timber.grade.unknown", ProblemStage::fit, "no timber grade of that name"},
    {"timber.grade.document", ProblemStage::fit, "the grade's values belong to another timber document"},

    {"boat.length", ProblemStage::fit, "the rail line is shorter than 1 m or longer than 60 m"},
    {"boat.rail.order", ProblemStage::fit, "rail stations do not run from stem to stern"},
    {"boat.rail.breadth", ProblemStage::fit, "the rails meet between stem and stern"},
    {"boat.stand.duplicate", ProblemStage::fit, "two stands of one name"},
    {"boat.stand.order", ProblemStage::fit, "a stand ends before it begins"},
    {"boat.stand.off_boat", ProblemStage::fit, "a stand reaches beyond the rail"},
    {"boat.obstacle.duplicate", ProblemStage::fit, "two obstacles of one name"},
    {"boat.obstacle.off_boat", ProblemStage::fit, "an obstacle lies outside the rail line"},
    {"boat.obstacle.through_film", ProblemStage::fit, "an obstacle stands through the drawn film"},

    {"strap.duplicate", ProblemStage::fit, "two kinds of strap of one name"},
    {"strap.unknown", ProblemStage::fit, "no kind of strap of that name"},
    {"strap.stiffness.order", ProblemStage::fit, "the lower bound of a stiffness is above the upper one"},

    {"support.ridge.order", ProblemStage::fit, "the stern end of the ridge does not lie aft of its bow end"},
    {"support.ridge.off_boat", ProblemStage::fit, "the ridge line leaves the rail line"},
    {"support.ridge.below_rail", ProblemStage::fit, "the ridge line lies below the rail"},
    {"support.ridge.free_end", ProblemStage::fit, "a free end of a pole without an upright near it"},
    {"support.ridge.strap_end", ProblemStage::fit, "a strap ridge with an end that is not pinned"},
    {"support.upright.duplicate", ProblemStage::fit, "two uprights of one name"},
    {"support.upright.order", ProblemStage::fit, "uprights do not run from bow to stern"},
    {"support.upright.off_ridge", ProblemStage::fit, "an upright does not stand under the ridge"},
    {"support.upright.off_boat", ProblemStage::fit, "an upright stands beyond the rail line"},
    {"support.upright.stand_unknown", ProblemStage::fit, "no stand of that name"},
    {"support.upright.off_stand", ProblemStage::fit, "an upright is not on its stand"},
    {"support.upright.pad_off_stand", ProblemStage::fit, "a foot pad reaches over the edge of its stand"},
    {"support.upright.height", ProblemStage::fit, "the top of an upright is not above its foot"},
    {"support.upright.short", ProblemStage::fit, "an upright shorter than twice its section"},
    {"support.upright.slender", ProblemStage::fit, "an upright longer than 50 times its thinner side"},
    {"support.upright.friction", ProblemStage::fit, "least friction of a foot over the greatest"},
    {"support.upright.unbraced", ProblemStage::fit, "an upright without a strap to each side"},
    {"support.cross_strap.duplicate", ProblemStage::fit, "two cross straps of one name"},
    {"support.cross_strap.over_unknown", ProblemStage::fit, "a cross strap over an upright that is not there"},

    {"support.found.node_duplicate", ProblemStage::fit, "two nodes of one name"},
    {"support.found.node_coincident", ProblemStage::fit, "two nodes at one place"},
    {"support.found.node_unused", ProblemStage::fit, "a node without a member"},
    {"support.found.member_duplicate", ProblemStage::fit, "two members of one name"},
    {"support.found.end_unknown", ProblemStage::fit, "a member ends at a node that is not there"},
    {"support.found.no_length", ProblemStage::fit, "a member begins and ends at the same node"},
    {"support.found.doubled", ProblemStage::fit, "two members between the same nodes"},
    {"support.found.foot_loose", ProblemStage::fit, "the foot of an upright is not held"},
    {"support.found.foot_shared", ProblemStage::fit, "another member ends where an upright has a soft foot"},
    {"support.found.foot_off_stand", ProblemStage::fit, "the foot of an upright is not on its stand"},
    {"support.found.ridge_unknown", ProblemStage::fit, "the ridge line names a node that is not there"},
    {"support.found.ridge_order", ProblemStage::fit, "the ridge line does not run from bow to stern"},
    {"support.found.ridge_off_centre", ProblemStage::fit, "the ridge line leaves the centreline"},
    {"support.found.ridge_gap", ProblemStage::fit, "no pole or strap between neighbours of the ridge line"},
    {"support.found.nothing_held", ProblemStage::fit, "no node is held by the boat"},
    {"support.found.disconnected", ProblemStage::fit, "a part of the frame is not joined to a held node"},

    {"support.band.belly_off_boat", ProblemStage::fit, "a belly strap does not pass under the boat"},
    {"film.modulus.order", ProblemStage::fit, "the creep modulus of the film is above its modulus"},
    {"film.sheet.narrow", ProblemStage::fit, "the sheet of film is too narrow to reach under the band on both sides"},
    {"film.sheet.short", ProblemStage::fit, "the sheet of film is too short to reach under the band at bow and stern"},
    {"film.tension.order", ProblemStage::fit, "the low film tension is above the high one"},
};

}  // namespace coverframe
