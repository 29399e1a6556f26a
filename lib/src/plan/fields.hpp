// SPDX-License-Identifier: BSD-3-Clause
// The plan file, format 1, described once: which keys an object has, in which order, what they mean and between which
// sizes they are believed. Reader, writer, check of values and schema are visitors of this description.
//
// A visitor offers
//   value(key, x, rule, about)         x: a quantity, number, text, choice or flag; in an optional: needed here
//   maybe_value(key, x, rule, about)   x: an optional; may be left out
//   optional_text(key, text, rule, about)
//   cited(key, x, rule, about)         x: Cited of the same; in an optional: needed here
//   maybe_cited(key, x, rule, about)   may be left out
//   part(key, x, about)                an object; in an optional: needed here
//   maybe_part(key, x, about)          may be left out
//   list(key, x, count, about)         a vector of objects or of names
//   maybe_list(key, x, count, about)   may be left out, which says that it is empty
//   kinds(key, choice, words, about, f)         f(visitor, choice) describes the keys that belong to that choice
//   alternatives(key, variant, words, about, f) f(visitor, alternative) likewise
//   absent(key, x, why)                x must be empty here, and the key must not be there
#pragma once

#include <concepts>
#include <type_traits>

#include "coverframe/plan/plan.hpp"
#include "plan/limits.hpp"
#include "plan/words.hpp"

namespace coverframe::plan_detail {

template <class Given, class Struct>
concept Like = std::same_as<std::remove_const_t<Given>, Struct>;

template <class Visitor>
void fields(Visitor& v, Like<Point> auto& p) {
    v.value("x", p.x, limit::along, "x, aft from the stem head");
    v.value("y", p.y, limit::athwart, "y, to starboard");
    v.value("z", p.z, limit::height, "z, up from the datum");
}

template <class Visitor>
void fields(Visitor& v, Like<RailStation> auto& s) {
    v.value("x", s.x, limit::along, "x, aft from the stem head");
    v.value("half_breadth", s.half_breadth, limit::half_breadth, "half breadth of the rail, 0 at a pointed stem");
    v.value("z", s.z, limit::height, "z, height of the rail over the datum");
}

template <class Visitor>
void fields(Visitor& v, Like<Stand> auto& s) {
    v.value("name", s.name, limit::name, "name of the stand");
    v.value("from", s.from, limit::along, "x of its forward end");
    v.value("to", s.to, limit::along, "x of its after end");
    v.value("half_breadth", s.half_breadth, limit::half_breadth, "half breadth of the stand");
    v.value("z", s.z, limit::height, "z, height over the datum");
    v.cited("bearing", s.bearing, limit::bearing, "pressure it takes under a foot pad at design loads");
}

template <class Visitor>
void fields(Visitor& v, Like<Obstacle> auto& o) {
    v.value("name", o.name, limit::name, "name of what the film must not touch");
    v.list("outline", o.outline, limit::at_least_one, "its upper edge as a line of points");
    v.cited("clearance", o.clearance, limit::clearance, "least vertical distance the film must keep from it");
}

template <class Visitor>
void fields(Visitor& v, Like<Boat> auto& b) {
    v.value("name", b.name, limit::name, "name of the boat");
    v.list("rail", b.rail, limit::rail, "the rail line from stem to stern, the same on both sides");
    v.list("stands", b.stands, limit::parts, "places where uprights may stand");
    v.list("obstacles", b.obstacles, limit::parts, "what the film must not touch; an empty list says there is nothing");
}

template <class Visitor>
void ground_snow_by_document(Visitor& v, Like<GroundSnow> auto& g, SnowDocument document) {
    if (is_asce7(document)) {
        v.value("risk_category", g.risk_category, words::risk_categories,
                "risk category of the cover; in ASCE 7-22 the one the load was read for");
    } else {
        v.absent("risk_category", g.risk_category, "only ASCE 7 has risk categories");
    }
    if (is_nbc(document)) {
        v.value("rain", g.rain, limit::rain, "rain load S_r that goes with the ground snow load");
    } else {
        v.absent("rain", g.rain, "only the NBC gives a rain load with the ground snow load");
    }
    constexpr const char* about = "return period of the ground load in years; 50 where nothing is said";
    constexpr const char* key = "return_period_years";
    if (document == SnowDocument::asce7_22) {
        v.absent(key, g.return_period_years,
                 "the ground loads of ASCE 7-22 are set by risk, at strength level, and have no return period");
    } else if (is_asce7(document)) {
        v.maybe_value(key, g.return_period_years, limit::return_period_asce7, about);
    } else if (is_nbc(document)) {
        v.maybe_value(key, g.return_period_years, limit::return_period_nbc, about);
    } else {
        v.maybe_value(key, g.return_period_years, limit::return_period_en, about);
    }
}

template <class Visitor>
void fields(Visitor& v, Like<GroundSnow> auto& g) {
    v.value("load", g.load, limit::ground_snow, "ground snow load, in the meaning of the document");
    v.kinds("document", g.document, words::snow_documents, "document and edition the ground load belongs to",
            [&](auto& branch, SnowDocument document) { ground_snow_by_document(branch, g, document); });
    v.value("source", g.source, limit::source, "who gave the value: authority, map, data set, yard record");
}

template <class Visitor>
void fields(Visitor& v, Like<NeighbourRoof> auto& r) {
    v.value("slope", r.slope, limit::neighbour_slope, "slope of the roof towards the boat");
    v.value("surface", r.surface, words::surfaces,
            "whether snow slides off the roof easily; slippery is the heavier choice");
    v.value("run", r.run, limit::neighbour_length, "level distance from the eave to the ridge of the roof");
}

template <class Visitor>
void fields(Visitor& v, Like<Neighbour> auto& n) {
    v.value("name", n.name, limit::name, "name of the neighbour");
    v.kinds("side", n.side, words::neighbour_sides, "side of the boat it stands on",
            [&](auto& branch, NeighbourSide side) {
                if (side == NeighbourSide::port || side == NeighbourSide::starboard) {
                    branch.maybe_value("from", n.from, limit::neighbour_along,
                                       "x of its forward end; as far as the boat where nothing is said");
                    branch.maybe_value("to", n.to, limit::neighbour_along,
                                       "x of its after end; as far as the boat where nothing is said");
                } else {
                    constexpr const char* why = "only a neighbour to port or starboard begins and ends along the boat";
                    branch.absent("from", n.from, why);
                    branch.absent("to", n.to, why);
                }
            });
    v.value("gap", n.gap, limit::neighbour_gap,
            "level distance from the rail of the cover to the face of the neighbour");
    v.value("eave_z", n.eave_z, limit::neighbour_height,
            "z of its eave or parapet, or of the rail of a covered boat; may lie below the cover");
    v.value("fetch", n.fetch, limit::neighbour_length, "length of its roof or cover across the eave");
    v.maybe_part("roof", n.roof,
                 "the roof that slopes towards the boat and can shed its snow; leave it out if none does");
    v.value("source", n.source, limit::source, "who measured or chose it");
}

template <class Visitor>
void fields(Visitor& v, Like<Site> auto& s) {
    v.value("name", s.name, limit::name, "where the boat stands for the winter");
    v.part("ground_snow", s.ground_snow, "ground snow load with its document");
    v.maybe_list("neighbours", s.neighbours, limit::parts,
                 "what stands beside the boat and may throw snow on its cover: buildings, walls, covered boats");
}

template <class Visitor>
void snow_basis_by_document(Visitor& v, Like<SnowBasis> auto& s, SnowDocument document) {
    if (document == SnowDocument::asce7_22) {
        v.cited("winter_wind", s.winter_wind, limit::winter_wind, "winter wind parameter W_2");
    } else {
        v.absent("winter_wind", s.winter_wind, "only ASCE 7-22 has a winter wind parameter");
    }
    if (is_nbc(document)) {
        v.cited("importance_category", s.importance_category, words::importance_categories,
                "importance category of the cover");
        v.cited("exposure_factor", s.exposure_factor, limit::exposure_factor_nbc, "wind exposure factor C_w");
        v.cited("thermal_factor", s.thermal_factor, limit::thermal_factor_nbc, "thermal factor");
    } else {
        v.absent("importance_category", s.importance_category, "only the NBC has importance categories of this kind");
        v.cited("exposure_factor", s.exposure_factor, limit::exposure_factor, "exposure factor C_e");
        v.cited("thermal_factor", s.thermal_factor, limit::thermal_factor, "thermal factor C_t");
    }
}

template <class Visitor>
void fields(Visitor& v, Like<SnowBasis> auto& s) {
    v.kinds("document", s.document, words::snow_documents, "document and edition of the snow rules",
            [&](auto& branch, SnowDocument document) { snow_basis_by_document(branch, s, document); });
    v.cited("surface", s.surface, words::surfaces,
            "whether snow may slide off; slippery has to be claimed with a reason");
    v.maybe_cited(
        "gable_framing", s.gable_framing, words::gable_framings,
        "what carries the snow from ridge to eave, for the narrow roofs of ASCE 7; other where nothing is said");
    v.maybe_cited("unbalanced_window", s.unbalanced_window, words::unbalanced_windows,
                  "whether unbalanced snow is looked at also on slopes outside the document's window (carried on) or "
                  "not (as written); carried on where nothing is said");
    v.maybe_cited("slid_snow", s.slid_snow, words::slid_snows,
                  "whether snow that slides off the upper part stays on the cover above the rail (caught) or leaves it "
                  "(falls clear); caught where nothing is said");
}

template <class Visitor>
void fields(Visitor& v, Like<CombinationBasis> auto& c) {
    v.cited("permanent", c.permanent, limit::action_factor, "factor on self-weight for the strength of members");
    v.cited("snow", c.snow, limit::action_factor,
            "factor on snow for the strength of members, of the document of the ground load: ASCE 7-22 1.0, ASCE 7-10 "
            "and ASCE 7-16 1.6, NBC 1.5, EN 1991-1-3 1.0 to 2");
}

template <class Visitor>
void fields(Visitor& v, Like<TimberBasis> auto& t) {
    v.kinds("document", t.document, words::timber_documents, "document and edition of the timber rules",
            [&](auto& branch, TimberDocument document) {
                constexpr const char* of_nds = "EN 1995-1-1 has no such value; its k_mod covers it";
                constexpr const char* of_en = "NDS 2018 has no such value";
                if (document == TimberDocument::nds2018) {
                    branch.cited("wet_service", t.wet_service, Flag{}, "moisture over 19 percent in service");
                    branch.cited("time_effect_factor", t.time_effect_factor, limit::time_effect_factor,
                                 "time effect factor lambda");
                    branch.absent("modification_factor", t.modification_factor, of_en);
                    branch.absent("material_factor", t.material_factor, of_en);
                } else {
                    branch.cited("modification_factor", t.modification_factor, limit::modification_factor,
                                 "modification factor k_mod");
                    branch.cited("material_factor", t.material_factor, limit::material_factor,
                                 "material factor gamma_M");
                    branch.absent("wet_service", t.wet_service, of_nds);
                    branch.absent("time_effect_factor", t.time_effect_factor, of_nds);
                }
            });
}

template <class Visitor>
void fields(Visitor& v, Like<Basis> auto& b) {
    v.part("snow", b.snow, "choices of the snow document");
    v.part("combination", b.combination, "factors on actions for the strength of members");
    v.part("timber", b.timber, "choices of the timber document");
    v.maybe_cited("shedding_slope", b.shedding_slope, limit::shedding_slope,
                  "slope under which the yard does not count on snow leaving by itself");
}

template <class Visitor>
void fields(Visitor& v, Like<StrapKind> auto& s) {
    v.value("name", s.name, limit::name, "name of this kind of strap");
    v.cited("stiffness_low", s.stiffness_low, limit::strap_stiffness, "stiffness EA, lower bound");
    v.cited("stiffness_high", s.stiffness_high, limit::strap_stiffness, "stiffness EA, upper bound");
    v.cited("break_strength", s.break_strength, limit::break_strength, "breaking force of the new strap");
    v.cited("buckle_efficiency", s.buckle_efficiency, limit::share, "share of the break strength the buckle holds");
    v.cited("ageing", s.ageing, limit::share, "share left after sun and wear");
    v.cited("working_share", s.working_share, limit::share, "share that may be used for months");
}

template <class Visitor>
void fields(Visitor& v, Like<Section> auto& s) {
    v.value("breadth", s.breadth, limit::section, "breadth of the section, level in a ridge pole");
    v.value("depth", s.depth, limit::section, "depth of the section, upright in a ridge pole");
}

template <class Visitor>
void fields(Visitor& v, Like<FootPad> auto& p) {
    v.value("length", p.length, limit::pad_side, "length of the pad, fore and aft");
    v.value("breadth", p.breadth, limit::pad_side, "breadth of the pad, athwart");
    v.value("thickness", p.thickness, limit::pad_thickness, "thickness of the pad");
}

inline constexpr std::string_view about_soft_foot =
    "a foot that gives, lifts off and may slide; leave it out for one that stands firm on the boat";

template <class Visitor>
void fields(Visitor& v, Like<FootFriction> auto& f) {
    v.cited("low", f.low, limit::foot_friction, "least friction between foot and stand that may be there");
    v.cited("high", f.high, limit::foot_friction, "greatest friction that may be there");
    v.cited("side_stiffness", f.side_stiffness, limit::foot_stiffness,
            "stiffness of pad or sole, level, until the foot slides: force per way it gives");
}

template <class Visitor>
void fields(Visitor& v, Like<SoftFoot> auto& f) {
    v.cited("stiffness", f.stiffness, limit::foot_stiffness,
            "stiffness of pad or sole, upwards: force per way it gives");
    v.maybe_value("gap", f.gap, limit::foot_gap, "how far the foot hangs over its pad before anything is loaded");
    v.maybe_part("friction", f.friction,
                 "what holds the foot level if nothing but friction does; leave it out where a step or stringer holds it");
}

template <class Visitor>
void fields(Visitor& v, Like<PoleRidge> auto& r) {
    v.part("section", r.section, "section of the pole");
    v.value("grade", r.grade, limit::name, "timber grade of the pole");
}

template <class Visitor>
void fields(Visitor& v, Like<StrapRidge> auto& r) {
    v.value("strap", r.strap, limit::name, "kind of strap");
    v.value("pretension", r.pretension, limit::pretension,
            "pretension as set with the tensioner, before the film goes on");
}

template <class Visitor>
void fields(Visitor& v, Like<RidgeEnd> auto& e) {
    v.value("x", e.x, limit::along, "x, aft from the stem head");
    v.value("z", e.z, limit::height, "z, height over the datum");
    v.value("hold", e.hold, words::holds, "how the boat holds this end");
}

template <class Visitor>
void fields(Visitor& v, Like<Ridge> auto& r) {
    v.alternatives("kind", r.member, words::ridge_kinds, "kind of ridge, timber pole or tight strap",
                   [&](auto& branch, auto& member) { fields(branch, member); });
    v.part("bow", r.bow, "forward end of the ridge");
    v.part("stern", r.stern, "after end of the ridge");
}

template <class Visitor>
void fields(Visitor& v, Like<Upright> auto& u) {
    v.value("name", u.name, limit::name, "name of the upright");
    v.value("x", u.x, limit::along, "x, aft from the stem head");
    v.value("stands_on", u.stands_on, limit::name, "name of the stand under it");
    v.value("top", u.top, limit::height, "height of the ridge line over the datum");
    v.part("section", u.section, "section of the upright");
    v.value("grade", u.grade, limit::name, "timber grade of the upright");
    v.part("pad", u.pad, "board under its foot");
    v.maybe_part("foot", u.foot, about_soft_foot);
}

template <class Visitor>
void fields(Visitor& v, Like<CrossStrap> auto& c) {
    v.value("name", c.name, limit::name, "name of the cross strap");
    v.value("over", c.over, limit::name, "name of the upright it goes over");
    v.value("strap", c.strap, limit::name, "kind of strap");
    v.value("pretension", c.pretension, limit::pretension,
            "pretension as set with the tensioner, before the film goes on");
    v.value("sides", c.sides, words::sides, "to which rail it goes");
}

template <class Visitor>
void fields(Visitor& v, Like<RidgeSupport> auto& s) {
    v.part("ridge", s.ridge, "what runs from bow to stern over the uprights");
    v.list("uprights", s.uprights, limit::parts, "from bow to stern");
    v.list("cross_straps", s.cross_straps, limit::parts, "straps from rail to rail over the tops of the uprights");
}

template <class Visitor>
void fields(Visitor& v, Like<FoundNode> auto& n) {
    v.value("name", n.name, limit::name, "name of the node");
    fields(v, n.at);
    v.value("held", n.held, Flag{}, "whether the boat holds the node in all three directions");
}

template <class Visitor>
void fields(Visitor& v, Like<FoundMember> auto& m) {
    v.value("name", m.name, limit::name, "name of the member");
    v.value("from", m.from, limit::name, "node at one end; the foot of an upright");
    v.value("to", m.to, limit::name, "node at the other end");
    v.kinds("kind", m.kind, words::found_kinds, "kind of member", [&](auto& branch, FoundKind kind) {
        if (kind == FoundKind::strap) {
            branch.value("strap", m.strap, limit::name, "kind of strap");
            branch.value("pretension", m.pretension, limit::pretension, "tension in it before snow");
            branch.absent("section", m.section, "a strap has no timber section");
            branch.absent("grade", m.grade, "a strap has no timber grade");
        } else {
            branch.part("section", m.section, "section of the timber");
            branch.value("grade", m.grade, limit::name, "timber grade");
            branch.absent("strap", m.strap, "only a member of kind strap names a strap");
            branch.absent("pretension", m.pretension, "only a strap is tensioned");
        }
        if (kind == FoundKind::upright) {
            branch.value("stands_on", m.stands_on, limit::name, "name of the stand under it");
            branch.part("pad", m.pad, "board under its foot");
            branch.maybe_part("foot", m.foot, about_soft_foot);
        } else {
            branch.absent("stands_on", m.stands_on, "only an upright stands on something");
            branch.absent("pad", m.pad, "only an upright has a foot pad");
            branch.absent("foot", m.foot, "only an upright has a foot");
        }
    });
}

template <class Visitor>
void fields(Visitor& v, Like<FoundFrame> auto& f) {
    v.list("nodes", f.nodes, limit::frame_members, "points where members meet or are held");
    v.list("members", f.members, limit::frame_members, "poles, uprights and straps between nodes");
    v.list("ridge_line", f.ridge_line, limit::line, "nodes on the centreline the film lies on, from bow to stern");
}

template <class Visitor>
void fields(Visitor& v, Like<Hangers> auto& h) {
    v.value("spacing", h.spacing, limit::hanger_spacing, "distance of the hangers along the band");
}

template <class Visitor>
void fields(Visitor& v, Like<BellyStrap> auto& b) {
    v.value("x", b.x, limit::along, "x, aft from the stem head");
    v.value("strap", b.strap, limit::name, "kind of strap");
    v.value("pretension", b.pretension, limit::pretension, "pretension as set with the tensioner");
}

template <class Visitor>
void fields(Visitor& v, Like<Band> auto& b) {
    v.value("strap", b.strap, limit::name, "kind of strap");
    v.value("pretension", b.pretension, limit::pretension,
            "pretension as set with the tensioner, before the film goes on");
    v.value("below_rail", b.below_rail, limit::below_rail, "depth of the band below the rail");
    v.part("hangers", b.hangers, "short straps that keep the band from sliding down");
    v.list("belly_straps", b.belly_straps, limit::parts, "straps under the hull from band to band");
    v.maybe_cited("rub_rail_hold", b.rub_rail_hold, limit::rub_rail_hold,
                  "upward pull per length the rub rail takes by itself");
    v.maybe_value("inset", b.inset, limit::band_inset, "level distance from the rail in to the band");
    v.maybe_cited("rail_friction", b.rail_friction, limit::rail_friction,
                  "least friction of film on the rail that can be relied on, wet and shaken");
}

template <class Visitor>
void fields(Visitor& v, Like<Support> auto& s) {
    v.alternatives("kind", s.structure, words::structures,
                   "kind of support, as the yard builds it or as somebody found it",
                   [&](auto& branch, auto& structure) { fields(branch, structure); });
    v.part("band", s.band, "the strap round the hull under which the film is tucked");
}

template <class Visitor>
void fields(Visitor& v, Like<Film> auto& f) {
    v.cited("thickness", f.thickness, limit::film_thickness, "thickness of the film");
    v.cited("tension_low", f.tension_low, limit::film_tension, "low film tension, after relaxation and on a warm day");
    v.cited("tension_high", f.tension_high, limit::film_tension,
            "high film tension, just after cooling or on a cold day");
    v.cited("modulus", f.modulus, limit::film_modulus,
            "modulus E of the film, secant, for the duration of a snow load");
    v.cited("poisson", f.poisson, limit::poisson, "Poisson's ratio nu of the film");
    v.cited("strength", f.strength, limit::film_strength, "strength of the film, stress it may carry at design loads");
    v.cited("unit_weight", f.unit_weight, limit::film_weight, "unit weight of the film");
    v.maybe_cited("creep_modulus", f.creep_modulus, limit::film_modulus,
                  "creep modulus of the film, after the snow has lain as long as it may");
    v.maybe_cited("sheet_width", f.sheet_width, limit::sheet_width,
                  "width of the sheet of film as it is laid, across the boat from edge to edge");
    v.maybe_cited("sheet_length", f.sheet_length, limit::sheet_length,
                  "length of the sheet of film as it is laid, from bow to stern");
    v.maybe_cited("tuck", f.tuck, limit::tuck,
                  "film to be tucked under the band, past it, all round; 150 mm where nothing is said");
}

template <class Visitor>
void fields(Visitor& v, Like<Plan> auto& p) {
    v.format();
    v.value("title", p.title, limit::title, "what this plan is");
    v.optional_text("note", p.note, limit::note, "free text; a demo plan says here that it is invented");
    v.value("units_shown", p.units_shown, words::units, "which units a report shows first");
    v.part("site", p.site, "where the boat stands for the winter");
    v.part("basis", p.basis, "by which documents and choices the cover is judged");
    v.part("boat", p.boat, "the boat as far as the cover needs it");
    v.list("straps", p.straps, limit::at_least_one, "kinds of strap");
    v.part("support", p.support, "what holds the film up, and what holds it down");
    v.part("film", p.film, "the film");
}

}  // namespace coverframe::plan_detail
