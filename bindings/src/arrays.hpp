// SPDX-License-Identifier: BSD-3-Clause
// Functions over whole arrays: the shape of the result, and one column for each argument, either as many items as the
// result, row after row, or a single item that serves all.
#pragma once

#include <pybind11/stl.h>

#include <string>
#include <utility>
#include <vector>

#include "binding.hpp"

namespace coverframe::binding {

using Shape = std::vector<py::ssize_t>;

inline std::size_t size_of(const Shape& shape) {
    std::size_t size = 1;
    for (const py::ssize_t extent : shape) size *= static_cast<std::size_t>(extent);
    return size;
}

/// A read-only look at one argument.
class Column {
public:
    Column(const Numbers& values, const Shape& shape) : data_(values.data()), step_(values.size() == 1 ? 0 : 1) {
        expect(values.size() == 1 || static_cast<std::size_t>(values.size()) == size_of(shape), "size of a column");
    }
    double operator[](std::size_t i) const { return data_[i * step_]; }

private:
    const double* data_;
    std::size_t step_;
};

/// "/1/2" for an item of a two-dimensional array.
inline std::string pointer_to(std::size_t item, const Shape& shape) {
    std::string pointer;
    for (auto extent = shape.rbegin(); extent != shape.rend(); ++extent) {
        const auto length = static_cast<std::size_t>(*extent);
        pointer = "/" + std::to_string(item % length) + pointer;
        item /= length;
    }
    return pointer;
}

/// The same error with the place of the item in it. A single number has no place.
inline InputError at_item(const InputError& error, std::size_t item, const Shape& shape) {
    if (shape.empty()) return error;
    std::vector<Problem> problems = error.problems();
    for (Problem& problem : problems) {
        problem.where = pointer_to(item, shape);
        problem.advice += " (item " + problem.where.substr(1) + ")";
    }
    return InputError(std::move(problems));
}

}  // namespace coverframe::binding
