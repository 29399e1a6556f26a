// SPDX-License-Identifier: BSD-3-Clause
// What the files of the compiled module share.
#pragma once

#include <pybind11/numpy.h>
#include <pybind11/pybind11.h>

#include <cstddef>
#include <string>
#include <vector>

#include "coverframe/base/error.hpp"

namespace coverframe::binding {

namespace py = pybind11;

using Numbers = py::array_t<double, py::array::c_style | py::array::forcecast>;

/// What is false is a mistake of the Python layer, not of the caller.
inline void expect(bool condition, const char* what) {
    if (!condition) throw std::invalid_argument(what);
}

/// Text of one member for each row.
template <class Row, class Get>
py::list texts(const std::vector<Row>& rows, Get get) {
    py::list column(rows.size());
    for (std::size_t i = 0; i < rows.size(); ++i) column[i] = py::cast(get(rows[i]));
    return column;
}

/// Number of one member for each row, as an array of its own.
template <class Row, class Get>
py::array_t<double> numbers(const std::vector<Row>& rows, Get get) {
    py::array_t<double> column(static_cast<py::ssize_t>(rows.size()));
    double* to = column.mutable_data();
    for (const Row& row : rows) *to++ = get(row);
    return column;
}

void bind_plan(py::module_& module);
void bind_assessment(py::module_& module);
void bind_rules(py::module_& module);
void bind_direct(py::module_& module);
void bind_extremes(py::module_& module);
void bind_compare(py::module_& module);
void bind_film(py::module_& module);
void bind_surface(py::module_& module);
void bind_survey(py::module_& module);
void bind_frame(py::module_& module);

}  // namespace coverframe::binding
