// SPDX-License-Identifier: BSD-3-Clause
// Plans: in and out as JSON text, compared; and single quantities as people write them.
#include <string>
#include <string_view>

#include "binding.hpp"
#include "coverframe/plan/read.hpp"
#include "coverframe/units/crossing.hpp"
#include "coverframe/units/text.hpp"

namespace coverframe::binding {
namespace {

/// The number `text` stands for, counted in `unit`. The unit decides which quantity is meant.
double read_in(std::string_view text, const std::string& unit, std::string_view where) {
    if (unit == "m") return in_m(read<Length>(text, where));
    if (unit == "N") return in_N(read<Force>(text, where));
    if (unit == "kN") return in_kN(read<Force>(text, where));
    if (unit == "kN/m") return in_kN_per_m(read<LineLoad>(text, where));
    if (unit == "kN/m3") return in_kN_per_m3(read<UnitWeight>(text, where));
    if (unit == "N/m") return in_N_per_m(read<LineLoad>(text, where));
    if (unit == "kPa") return in_kPa(read<Pressure>(text, where));
    if (unit == "deg") return in_deg(read<Angle>(text, where));
    throw std::invalid_argument("no quantity is read in " + unit);
}

}  // namespace

void bind_plan(py::module_& module) {
    py::class_<Plan>(module, "Plan")
        .def_static("from_json", [](const std::string& text) { return read_plan(text); }, py::arg("text"))
        .def_static("from_file", [](const std::string& path) { return read_plan_file(path); }, py::arg("path"))
        .def("to_json", &write_plan)
        .def_property_readonly("title", [](const Plan& plan) { return plan.title; })
        .def_property_readonly("note", [](const Plan& plan) { return plan.note; })
        .def("__eq__", [](const Plan& a, const Plan& b) { return a == b; }, py::is_operator());
    module.def("plan_schema", [] { return std::string(plan_schema()); });
    module.def("read_quantity", &read_in, py::arg("text"), py::arg("unit"), py::arg("where"));
}

}  // namespace coverframe::binding
