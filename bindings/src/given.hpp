// SPDX-License-Identifier: BSD-3-Clause
// Arguments of a rule as the caller gave them, read without a word of Python: a float, an int, a bool, a word, or an
// array of NumPy of these. Whatever else somebody may give (text with a unit, lists, quantities of other libraries) is
// not understood here; the Python layer sees to it.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "arrays.hpp"
#include "coverframe/actions/rule.hpp"

namespace coverframe::binding {

/// Words of a choice, letter by letter as NumPy keeps them.
using Letters = std::vector<std::u32string>;

/// Items of an array as it lies in memory. They stay the caller's.
struct Lying {
    /// Reads `count` items, `step` bytes from one to the next, as numbers. False if one is none of the words.
    using Read = bool (*)(const Lying& lying, const char* from, py::ssize_t step, std::size_t count, double* to);

    const char* items = nullptr;
    std::size_t item_size = 0;  ///< [bytes]
    Read read = nullptr;
    const Letters* letters = nullptr;
};

/// One argument.
struct Given {
    Lying lying;
    double single = 0.0;                 ///< the item if there is but one
    std::size_t size = 1;
    int dimensions = 0;                  ///< 0 for what is no array
    const py::ssize_t* extents = nullptr;
    const py::ssize_t* steps = nullptr;  ///< [bytes]
    bool is_column = false;              ///< float64, one behind the other
};

/// Nothing if the argument is not understood.
std::optional<Given> given(py::handle argument, const RuleValue& value, const Letters& letters);

/// Goes through an array that is spread over the shape of a result, item by item of the result.
class Spread {
public:
    static constexpr int most_dimensions = 8;

    /// \param shape  to which the array broadcasts
    Spread(const Given& array, const Shape& shape);

    /// Reads the next items. False if one is none of the words.
    [[nodiscard]] bool take(std::size_t count, double* to);

private:
    struct Axis {
        std::size_t extent;
        py::ssize_t step;
        std::size_t index;
    };

    void go_on(std::size_t count);

    Lying lying_;
    const char* at_;
    std::array<Axis, most_dimensions + 1> axes_{};  ///< the innermost first, at least one
    std::size_t count_ = 0;
};

}  // namespace coverframe::binding
