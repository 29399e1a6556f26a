// SPDX-License-Identifier: BSD-3-Clause
#include "given.hpp"

#include <algorithm>
#include <cstdint>
#include <cstring>
#include <string_view>

namespace coverframe::binding {
namespace {

/// A type of NumPy, which lives as long as the program.
py::handle type_of_numpy(const char* name) { return py::object(py::module_::import("numpy").attr(name)).release(); }

py::handle array_type() {
    static const py::handle type = type_of_numpy("ndarray");
    return type;
}

py::handle float64_type() {
    static const py::handle type = type_of_numpy("float64");
    return type;
}

template <class Item>
bool read_numbers(const Lying&, const char* from, py::ssize_t step, std::size_t count, double* to) {
    for (std::size_t i = 0; i < count; ++i, from += step) {
        Item item;
        std::memcpy(&item, from, sizeof item);
        to[i] = static_cast<double>(item);
    }
    return true;
}

/// Shorter words are filled with zeros.
bool is_word(const char* item, std::size_t item_size, const std::u32string& word) {
    const std::size_t size = word.size() * sizeof(char32_t);
    if (size > item_size || std::memcmp(item, word.data(), size) != 0) return false;
    constexpr char32_t end = 0;
    return size == item_size || std::memcmp(item + size, &end, sizeof end) == 0;
}

bool read_words(const Lying& lying, const char* from, py::ssize_t step, std::size_t count, double* to) {
    const Letters& letters = *lying.letters;
    for (std::size_t i = 0; i < count; ++i, from += step) {
        std::size_t word = 0;
        while (word < letters.size() && !is_word(from, lying.item_size, letters[word])) ++word;
        if (word == letters.size()) return false;
        to[i] = static_cast<double>(word);
    }
    return true;
}

Lying::Read reader_of_whole(std::size_t size, bool is_signed) {
    switch (size) {
        case 1: return is_signed ? &read_numbers<std::int8_t> : &read_numbers<std::uint8_t>;
        case 2: return is_signed ? &read_numbers<std::int16_t> : &read_numbers<std::uint16_t>;
        case 4: return is_signed ? &read_numbers<std::int32_t> : &read_numbers<std::uint32_t>;
        case 8: return is_signed ? &read_numbers<std::int64_t> : &read_numbers<std::uint64_t>;
        default: return nullptr;
    }
}

Lying::Read reader_of(char kind, std::size_t size, Measure measure) {
    if (measure == Measure::choice) return kind == 'U' ? &read_words : nullptr;
    if (measure == Measure::truth) return kind == 'b' ? &read_numbers<std::uint8_t> : nullptr;
    if (kind == 'i' || kind == 'u') return reader_of_whole(size, kind == 'i');
    if (kind != 'f') return nullptr;
    return size == sizeof(double) ? &read_numbers<double> : size == sizeof(float) ? &read_numbers<float> : nullptr;
}

std::optional<Given> array_given(py::handle argument, Measure measure, const Letters& letters) {
    const auto array = py::reinterpret_borrow<py::array>(argument);
    const py::dtype type = array.dtype();
    const char order = type.byteorder();
    if (order != '=' && order != '|') return std::nullopt;
    Given found;
    found.lying = {static_cast<const char*>(array.data()), static_cast<std::size_t>(type.itemsize()),
                   reader_of(type.kind(), static_cast<std::size_t>(type.itemsize()), measure), &letters};
    found.dimensions = static_cast<int>(array.ndim());
    if (found.lying.read == nullptr || found.dimensions > Spread::most_dimensions) return std::nullopt;
    found.size = static_cast<std::size_t>(array.size());
    found.extents = array.shape();
    found.steps = array.strides();
    found.is_column = found.lying.read == &read_numbers<double> && (array.flags() & py::array::c_style) != 0 &&
                      reinterpret_cast<std::uintptr_t>(found.lying.items) % alignof(double) == 0;
    if (found.size == 1 && !found.lying.read(found.lying, found.lying.items, 0, 1, &found.single)) return std::nullopt;
    return found;
}

std::optional<double> word_given(PyObject* word, const std::vector<std::string>& choices) {
    Py_ssize_t size = 0;
    const char* text = PyUnicode_AsUTF8AndSize(word, &size);
    if (text == nullptr) throw py::error_already_set();  // half a character
    const std::string_view wanted(text, static_cast<std::size_t>(size));
    for (std::size_t k = 0; k < choices.size(); ++k) {
        if (choices[k] == wanted) return static_cast<double>(k);
    }
    return std::nullopt;
}

std::optional<double> whole_given(PyObject* number) {
    int beyond = 0;
    const long long whole = PyLong_AsLongLongAndOverflow(number, &beyond);
    if (beyond != 0) return std::nullopt;
    return static_cast<double>(whole);
}

std::optional<double> single_given(PyObject* argument, const RuleValue& value) {
    if (value.measure == Measure::choice) {
        return PyUnicode_CheckExact(argument) ? word_given(argument, value.choices) : std::nullopt;
    }
    if (value.measure == Measure::truth) {
        return PyBool_Check(argument) ? std::optional(argument == Py_True ? 1.0 : 0.0) : std::nullopt;
    }
    if (PyFloat_CheckExact(argument)) return PyFloat_AS_DOUBLE(argument);
    if (PyLong_CheckExact(argument)) return whole_given(argument);
    const bool is_float64 = reinterpret_cast<PyObject*>(Py_TYPE(argument)) == float64_type().ptr();
    return is_float64 ? std::optional(PyFloat_AS_DOUBLE(argument)) : std::nullopt;
}

}  // namespace

std::optional<Given> given(py::handle argument, const RuleValue& value, const Letters& letters) {
    if (reinterpret_cast<PyObject*>(Py_TYPE(argument.ptr())) == array_type().ptr()) {
        return array_given(argument, value.measure, letters);
    }
    const std::optional<double> single = single_given(argument.ptr(), value);
    if (!single) return std::nullopt;
    Given found;
    found.single = *single;
    return found;
}

Spread::Spread(const Given& array, const Shape& shape) : lying_(array.lying), at_(array.lying.items) {
    const int missing = static_cast<int>(shape.size()) - array.dimensions;
    for (int k = static_cast<int>(shape.size()) - 1; k >= 0; --k) {
        const auto extent = static_cast<std::size_t>(shape[static_cast<std::size_t>(k)]);
        if (extent == 1) continue;
        const bool repeated = k < missing || array.extents[k - missing] == 1;
        const py::ssize_t step = repeated ? 0 : array.steps[k - missing];
        if (count_ > 0 && step == axes_[count_ - 1].step * static_cast<py::ssize_t>(axes_[count_ - 1].extent)) {
            axes_[count_ - 1].extent *= extent;
        } else {
            axes_[count_++] = {extent, step, 0};
        }
    }
    if (count_ == 0) axes_[count_++] = {1, 0, 0};
}

bool Spread::take(std::size_t count, double* to) {
    while (count > 0) {
        const std::size_t run = std::min(count, axes_[0].extent - axes_[0].index);
        if (!lying_.read(lying_, at_, axes_[0].step, run, to)) return false;
        go_on(run);
        to += run;
        count -= run;
    }
    return true;
}

void Spread::go_on(std::size_t count) {
    axes_[0].index += count;
    at_ += axes_[0].step * static_cast<py::ssize_t>(count);
    for (std::size_t k = 0; k < count_ && axes_[k].index == axes_[k].extent; ++k) {
        at_ -= axes_[k].step * static_cast<py::ssize_t>(axes_[k].extent);
        axes_[k].index = 0;
        if (k + 1 == count_) return;
        ++axes_[k + 1].index;
        at_ += axes_[k + 1].step;
    }
}

}  // namespace coverframe::binding
