// SPDX-License-Identifier: BSD-3-Clause
// A survey of film as a surface, with the assessment it belongs to. The interpreter lock is released while it is made.
#include <pybind11/stl.h>

#include <memory>

#include "coverframe/assess/surface.hpp"
#include "coverframe/report/report.hpp"
#include "surface_told.hpp"

namespace coverframe::binding {
namespace {

/// The assessment has the survey's findings among its own; the survey points into the assessment's plan.
struct Surveyed {
    explicit Surveyed(Assessment of) : assessment(std::move(of)) {}
    Assessment assessment;
    SurfaceSurvey survey;
};

std::unique_ptr<Surveyed> survey_of(const Assessment& assessment, double spacing, int rows) {
    auto made = std::make_unique<Surveyed>(assessment);
    const py::gil_scoped_release unlocked;
    made->survey = survey_surface(made->assessment, {.spacing = spacing, .rows = rows});
    add_surface_findings(made->assessment, made->survey);
    return made;
}

/// arrangement, status, message, water, ponds, touches, shares that shed, partly shed and hold, least slope, where,
/// dips, lifts, what snaps.
py::list looks_of(const Surveyed& of) {
    py::list rows;
    for (const SurfaceLook& look : of.survey.looks) {
        py::list ponds, touches, dips, lifts;
        for (const PondFlag& pond : look.ponds) ponds.append(pond_of(pond));
        for (const SurfaceTouch& t : look.touches) {
            touches.append(py::make_tuple(t.obstacle, t.least_gap, t.needed, t.force, t.greatest_force));
        }
        for (const RidgeDip& dip : look.dips) dips.append(py::make_tuple(dip.bay, dip.x, dip.depth));
        for (const RidgeLift& lift : look.lifts) lifts.append(py::make_tuple(lift.x, lift.gap));
        rows.append(py::make_tuple(look.arrangement, name_of(look.status), look.message, look.water, ponds, touches,
                                   look.slopes.sheds, look.slopes.partly, look.slopes.holds, look.slopes.least,
                                   look.slopes.least_at, dips, lifts, look.snaps));
    }
    return rows;
}

py::list supports_of(const Surveyed& of) {
    py::list rows;
    for (const SupportOverStrap& s : of.survey.supports) rows.append(py::make_tuple(s.obstacle, s.upright, s.height));
    return rows;
}

py::list forces_of(const Surveyed& of) {
    py::list rows;
    for (const PartForce& f : of.survey.forces) {
        rows.append(py::make_tuple(f.part, name_of(f.carried), f.strips, f.surface, f.arrangement, f.without_ends));
    }
    return rows;
}

/// obstacle, share, place, arrangement, load.
py::list touched_of(const Surveyed& of) {
    py::list rows;
    for (const TouchLoad& t : of.survey.touched) {
        rows.append(py::make_tuple(t.touch.obstacle, t.touch.share, t.touch.place, t.arrangement, t.load / 1000));
    }
    return rows;
}

}  // namespace

void bind_survey(py::module_& module) {
    py::class_<Surveyed>(module, "Surveyed")
        .def(py::init(&survey_of))
        .def_property_readonly(
            "assessment", [](const Surveyed& of) -> const Assessment& { return of.assessment; },
            py::return_value_policy::reference_internal)
        .def_property_readonly("looks", &looks_of)
        .def_property_readonly("supports", &supports_of)
        .def_property_readonly("forces", &forces_of)
        .def_property_readonly("touched", &touched_of)
        .def_property_readonly("worst", [](const Surveyed& of) { return of.survey.worst; })
        .def_property_readonly("shedding", [](const Surveyed& of) { return of.survey.shedding; })
        .def_property_readonly("triangles", [](const Surveyed& of) { return corners_of(of.survey.surface.cover.mesh); })
        .def_property_readonly("shrunk",
                               [](const Surveyed& of) { return told(of.survey.surface, of.survey.surface.state); })
        .def_property_readonly("pictured",
                               [](const Surveyed& of) { return told(of.survey.surface, of.survey.pictured); })
        .def(
            "job_sheet", [](const Surveyed& of) { return job_sheet(of.assessment, &of.survey); },
            py::call_guard<py::gil_scoped_release>());
}

}  // namespace coverframe::binding
