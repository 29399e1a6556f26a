// SPDX-License-Identifier: BSD-3-Clause
// Rules called straight from Python: arguments in order, no list, no shape and no copy made in Python. Numbers that
// lie one behind the other are read where they lie; all else is turned into numbers a block at a time, so that an array
// that broadcasts never stands in memory as a whole. What is not understood, and what a rule refuses, goes to a
// function in Python, which answers or says what is wrong.
#include <algorithm>
#include <array>
#include <cstddef>
#include <memory>
#include <memory_resource>
#include <utility>

#include "given.hpp"

namespace coverframe::binding {
namespace {

constexpr std::size_t block = 1024;      ///< items: what is turned into numbers stays in the nearest memory
constexpr std::size_t large = 1 << 13;  ///< items from which on other threads of Python may run meanwhile

/// A list of one call, in memory of the call.
template <class Item>
using List = std::pmr::vector<Item>;

/// A rule and the function in Python for what is not understood here.
struct Direct {
    const Rule* rule;
    py::object carefully;
    std::vector<Letters> letters;  ///< of each argument
    bool gives_words;
};

/// Nothing if the shapes do not go together.
std::optional<Shape> broadcast(const List<Given>& arguments) {
    Shape shape;
    for (const Given& array : arguments) {
        const auto dimensions = static_cast<std::size_t>(array.dimensions);
        if (dimensions > shape.size()) shape.insert(shape.begin(), dimensions - shape.size(), 1);
        const std::size_t missing = shape.size() - dimensions;
        for (std::size_t k = 0; k < dimensions; ++k) {
            py::ssize_t& extent = shape[missing + k];
            if (array.extents[k] == 1 || array.extents[k] == extent) continue;
            if (extent != 1) return std::nullopt;
            extent = array.extents[k];
        }
    }
    return shape;
}

/// One result: a float or a truth for a single value, an array otherwise.
class Result {
public:
    Result(const RuleValue& value, const Shape& shape) : is_truth_(value.measure == Measure::truth) {
        if (shape.empty()) return;
        if (is_truth_) {
            truths_ = made<bool>(shape);
        } else {
            numbers_ = made<double>(shape);
        }
    }

    bool is_truth() const { return is_truth_; }
    /// Where the item goes to, which for truths is a block that is put away afterwards.
    double* to(std::size_t item, double* of_block) const { return truths_ == nullptr ? numbers_ + item : of_block; }
    void put(std::size_t item, std::size_t count, const double* of_block) const {
        if (truths_ == nullptr) return;
        auto* const to = reinterpret_cast<unsigned char*>(truths_ + item);
        // A truth is 0 or 1. As a conversion of numbers this becomes vector code, as a comparison it does not.
        for (std::size_t i = 0; i < count; ++i) to[i] = static_cast<unsigned char>(static_cast<int>(of_block[i]));
    }
    py::object array() && { return std::move(array_); }

private:
    template <class Item>
    Item* made(const Shape& shape) {
        py::array_t<Item> array(shape);
        Item* const items = array.mutable_data();
        array_ = std::move(array);
        return items;
    }

    bool is_truth_;
    py::object array_;
    double* numbers_ = nullptr;
    bool* truths_ = nullptr;
};

/// The rule over all items. False if an item is none of the words.  \throws InputError as the rule does
class Run {
public:
    Run(const Rule& rule, const List<Given>& arguments, const Shape& shape, const List<Result>& results)
        : rule_(rule),
          results_(results),
          count_(size_of(shape)),
          columns_(arguments.size(), arguments.get_allocator()),
          to_(results.size(), arguments.get_allocator()),
          spread_(arguments.get_allocator()) {
        for (std::size_t k = 0; k < arguments.size(); ++k) {
            const Given& argument = arguments[k];
            if (argument.size == 1) {
                columns_[k] = {&argument.single, 0};
            } else if (argument.is_column && argument.size == count_) {
                columns_[k] = {reinterpret_cast<const double*>(argument.lying.items), 1};
            } else {
                spread_.emplace_back(k, Spread(argument, shape));
            }
        }
        const auto truths = std::ranges::count_if(results, &Result::is_truth);
        const std::size_t blocks = spread_.size() + static_cast<std::size_t>(truths);
        step_ = blocks == 0 ? count_ : std::min(block, count_);
        if (blocks > 0) scratch_.reset(new double[blocks * step_]);
    }

    bool all() {
        for (std::size_t begin = 0; begin < count_; begin += step_) {
            if (!some(begin, std::min(step_, count_ - begin))) return false;
        }
        return true;
    }

private:
    bool some(std::size_t begin, std::size_t count) {
        double* free = scratch_.get();
        for (auto& [k, spread] : spread_) {
            if (!spread.take(count, free)) return false;
            columns_[k] = {free, 1};
            free += step_;
        }
        double* const truths = free;
        for (std::size_t r = 0; r < results_.size(); ++r) {
            to_[r] = results_[r].to(begin, free);
            if (results_[r].is_truth()) free += step_;
        }
        std::size_t at = 0;
        rule_.loop(columns_.data(), count, to_.data(), at);
        free = truths;
        for (const Result& result : results_) {
            result.put(begin, count, free);
            if (result.is_truth()) free += step_;
        }
        for (RuleColumn& column : columns_) column.items += column.step * count;
        return true;
    }

    const Rule& rule_;
    const List<Result>& results_;
    std::size_t count_;
    std::size_t step_ = 0;
    List<RuleColumn> columns_;
    List<double*> to_;
    List<std::pair<std::size_t, Spread>> spread_;
    std::unique_ptr<double[]> scratch_;
};

py::tuple single_results(const Rule& rule, const List<Given>& arguments) {
    List<RuleColumn> columns(arguments.size(), arguments.get_allocator());
    for (std::size_t k = 0; k < arguments.size(); ++k) columns[k] = {&arguments[k].single, 0};
    List<double> numbers(rule.results.size(), arguments.get_allocator());
    List<double*> to(numbers.size(), arguments.get_allocator());
    for (std::size_t r = 0; r < numbers.size(); ++r) to[r] = &numbers[r];
    std::size_t at = 0;
    rule.loop(columns.data(), 1, to.data(), at);
    py::tuple all(numbers.size());
    for (std::size_t r = 0; r < numbers.size(); ++r) {
        const bool is_truth = rule.results[r].measure == Measure::truth;
        all[r] = is_truth ? py::object(py::bool_(numbers[r] != 0.0)) : py::object(py::float_(numbers[r]));
    }
    return all;
}

/// Every result. Nothing if an argument is not understood.  \throws InputError as the rule does
std::optional<py::tuple> results_of(const Direct& direct, PyObject* const* arguments, std::size_t count) {
    const Rule& rule = *direct.rule;
    if (direct.gives_words || count != rule.arguments.size()) return std::nullopt;
    std::array<std::byte, 4096> room;
    std::pmr::monotonic_buffer_resource memory(room.data(), room.size());
    List<Given> all(&memory);
    all.reserve(count);
    for (std::size_t k = 0; k < count; ++k) {
        const std::optional<Given> one = given(arguments[k], rule.arguments[k], direct.letters[k]);
        if (!one) return std::nullopt;
        all.push_back(*one);
    }
    const std::optional<Shape> shape = broadcast(all);
    if (!shape) return std::nullopt;
    if (shape->empty()) return single_results(rule, all);
    List<Result> results(&memory);
    results.reserve(rule.results.size());
    for (const RuleValue& value : rule.results) results.emplace_back(value, *shape);
    {
        std::optional<py::gil_scoped_release> unlocked;
        if (size_of(*shape) >= large) unlocked.emplace();
        if (!Run(rule, all, *shape, results).all()) return std::nullopt;
    }
    py::tuple arrays(results.size());
    for (std::size_t r = 0; r < results.size(); ++r) arrays[r] = std::move(results[r]).array();
    return arrays;
}

PyObject* call_direct(PyObject* self, PyObject* const* arguments, Py_ssize_t count) {
    const auto& direct = *static_cast<const Direct*>(PyCapsule_GetPointer(self, nullptr));
    try {
        if (auto results = results_of(direct, arguments, static_cast<std::size_t>(count))) {
            return results->release().ptr();
        }
    } catch (const std::exception&) {
        // said again by the function in Python, with the item and in the words of there
    }
    return PyObject_Vectorcall(direct.carefully.ptr(), arguments, static_cast<std::size_t>(count), nullptr);
}

/// A function of the arguments of a rule, in order, that gives a tuple of its results.
py::object direct_rule(std::size_t number, py::object carefully) {
    expect(number < rules().size(), "number of a rule");
    const Rule& rule = rules()[number];
    auto direct = std::make_unique<Direct>(Direct{&rule, std::move(carefully), {}, false});
    for (const RuleValue& value : rule.arguments) {
        direct->letters.emplace_back();
        for (const std::string& word : value.choices) direct->letters.back().emplace_back(word.begin(), word.end());
    }
    for (const RuleValue& value : rule.results) direct->gives_words |= value.measure == Measure::choice;
    const py::capsule self(direct.get(), [](void* held) { delete static_cast<Direct*>(held); });
    direct.release();
    static PyMethodDef method{"direct", reinterpret_cast<PyCFunction>(reinterpret_cast<void (*)()>(&call_direct)),
                              METH_FASTCALL, nullptr};
    PyObject* const function = PyCFunction_New(&method, self.ptr());
    if (function == nullptr) throw py::error_already_set();
    return py::reinterpret_steal<py::object>(function);
}

}  // namespace

void bind_direct(py::module_& module) { module.def("direct_rule", &direct_rule); }

}  // namespace coverframe::binding
