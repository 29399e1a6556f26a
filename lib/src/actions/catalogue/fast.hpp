// SPDX-License-Identifier: BSD-3-Clause
// How a rule of plain arithmetic runs over arrays at the speed of memory.
//
// A rule counts in quantities and refuses item by item what it does not cover; no compiler turns that into vector code.
// So an entry may carry the rule a second time, in a fast form, over numbers in the units of the catalogue, without a
// branch, a throw or a call that is not inline:
//
//     [](double s_k, double mu) { return fast(within(s_k, 0.0, 100.0) * within(mu, 0.0, 8.0), mu * s_k); }
//
// First what the form covers, as a number that is 0 if the item is not covered: ones and zeros, multiplied where all
// have to hold, added where one is enough. Then the results, in order. What it covers has to lie inside what the rule
// accepts; it may be less. A choice is taken as its enumeration, a truth as bool: the loop itself sees to it that the
// number stands for one of the choices. An item that is not covered goes to the rule, which refuses it or answers.
//
// Where a rule jumps, its form compares the same quantities as the rule does, so that both jump at the same number.
//
// Every item is computed alone, by the same operations in each variant for a kind of machine: its bits depend neither
// on the items beside it nor on their number nor on the machine. From the rule they differ by a few roundings.
#pragma once

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <type_traits>
#include <utility>

#include "coverframe/actions/rule.hpp"

namespace coverframe::catalogue {

/// 1 if it holds, else 0.
[[nodiscard]] constexpr double one_if(bool holds) { return holds ? 1.0 : 0.0; }

/// 1 if `number` lies in [low, high], else 0; 0 for NaN.
[[nodiscard]] constexpr double within(double number, double low, double high) {
    return one_if(number >= low) * one_if(number <= high);
}

/// A little over argument::smallest, so that a conversion of units that rounds down leaves it over.
inline constexpr double above_zero = 1e-11;

/// What a fast form gives. Nothing it gives counts where `covered` is 0.
template <std::size_t count>
struct Fast {
    double covered;
    std::array<double, count> results;
};

template <class... Number>
[[nodiscard]] constexpr Fast<sizeof...(Number)> fast(double covered, Number... results) {
    return {covered, {results...}};
}

/// A number of the catalogue as an argument of a fast form, and whether it is one.
template <class T>
struct FastArgument {
    static constexpr bool is_number = true;
    static double covered(double) { return 1.0; }
    static double from(double number) { return number; }
};

template <>
struct FastArgument<bool> {
    static constexpr bool is_number = false;
    static double covered(double) { return 1.0; }
    static bool from(double number) { return number != 0.0; }
};

template <class T>
    requires std::is_enum_v<T>
struct FastArgument<T> {
    static constexpr bool is_number = false;
    static constexpr double last = static_cast<double>(choices_of(T{}).size() - 1);
    static double covered(double number) { return within(number, 0.0, last); }
    /// The first choice in place of what is none: such an item is not covered, and its results are thrown away.
    static T from(double number) { return static_cast<T>(static_cast<int>(covered(number) != 0.0 ? number : 0.0)); }
};

/// Kinds of machine a loop is compiled for; each can do what those before it can.
enum class Machine { any, avx2, avx512 };

#if defined(__x86_64__) && defined(__GNUC__)
#define COVERFRAME_FOR_AVX2 [[gnu::flatten, gnu::target("avx2")]]
#define COVERFRAME_FOR_AVX512 [[gnu::flatten, gnu::target("avx512f,avx512dq,avx512vl")]]
[[nodiscard]] inline Machine this_machine() {
    if (__builtin_cpu_supports("avx512f") && __builtin_cpu_supports("avx512dq") && __builtin_cpu_supports("avx512vl")) {
        return Machine::avx512;
    }
    return __builtin_cpu_supports("avx2") ? Machine::avx2 : Machine::any;
}
#else
#define COVERFRAME_FOR_AVX2
#define COVERFRAME_FOR_AVX512
[[nodiscard]] inline Machine this_machine() { return Machine::any; }
#endif

#if defined(__GNUC__)
#define COVERFRAME_INLINE [[gnu::always_inline]] inline
#define COVERFRAME_FLATTEN [[gnu::flatten]]
#else
#define COVERFRAME_INLINE inline
#define COVERFRAME_FLATTEN
#endif

#if defined(__clang__)
#pragma clang diagnostic push
#pragma clang diagnostic ignored "-Wpass-failed"  // a loop that stays as it is, as without optimisation, is no mistake
#define COVERFRAME_VECTOR_LOOP _Pragma("clang loop vectorize(assume_safety)")
#elif defined(__GNUC__)
#define COVERFRAME_VECTOR_LOOP _Pragma("GCC ivdep")
#else
#define COVERFRAME_VECTOR_LOOP
#endif

/// The loops of one fast form over one kind of arguments.
template <class Form, std::size_t result_count, class... Argument>
class FastLoop {
public:
    /// As RuleLoop; `by_item` is asked for the items the form does not cover.
    static void run(const RuleColumn* columns, std::size_t count, double* const* results, std::size_t& at,
                    RuleLoop by_item, Machine machine = this_machine()) {
        if (count < 2) return one_by_one(columns, 0, count, results, at, by_item);
        From from{};
        To to{};
        std::copy_n(results, result_count, to.begin());
        std::array<double, argument_count * block> repeated;  // filled where it is read
        const Span span = spans(machine)[prepare(columns, count, from, repeated.data())];
        for (std::size_t done = 0; done < count; done += block) {
            const std::size_t size = std::min(block, count - done);
            if (!span(from, to, size)) one_by_one(columns, done, done + size, results, at, by_item);
            for (std::size_t k = 0; k < argument_count; ++k) from[k] += columns[k].step * size;
            for (double*& result : to) result += size;
        }
    }

private:
    static constexpr std::size_t argument_count = sizeof...(Argument);
    static constexpr std::size_t block = 512;  ///< items: what a loop works on stays in the nearest memory
    static constexpr std::array<bool, argument_count> is_number{FastArgument<Argument>::is_number...};

    // What is an array, so that the rest are constants of the loop: one column, by its number, or
    static constexpr std::size_t numbers = argument_count;         ///< every number, but no choice or truth
    static constexpr std::size_t all = argument_count + 1;         ///< every column
    static constexpr bool is_array(std::size_t arrays, std::size_t k) {
        return arrays == k || arrays == all || (arrays == numbers && is_number[k]);
    }

    using From = std::array<const double*, argument_count>;
    using To = std::array<double*, result_count>;
    using Item = std::array<double, argument_count>;
    using Span = bool (*)(const From&, const To&, std::size_t);

    /// Gives what is an array, and sets where each column is read from. A single value that is to be an array is
    /// repeated for a block.
    static std::size_t prepare(const RuleColumn* columns, std::size_t count, From& from, double* repeated) {
        std::size_t found = 0;
        std::size_t arrays = numbers;
        for (std::size_t k = 0; k < argument_count; ++k) {
            from[k] = columns[k].items;
            if (columns[k].step == 0) continue;
            ++found;
            if (!is_number[k]) arrays = all;
            if (found == 1 && is_number[k]) arrays = k;
            if (found > 1 && arrays != all) arrays = numbers;
        }
        for (std::size_t k = 0; k < argument_count; ++k) {
            if (columns[k].step != 0 || !is_array(arrays, k)) continue;
            from[k] = repeated + k * block;
            std::fill_n(repeated + k * block, std::min(block, count), *columns[k].items);
        }
        return arrays;
    }

    COVERFRAME_INLINE static Fast<result_count> value_of(const Item& item) {
        return value_of(item, std::index_sequence_for<Argument...>{});
    }

    template <std::size_t... k>
    COVERFRAME_INLINE static Fast<result_count> value_of(const Item& item, std::index_sequence<k...>) {
        Fast<result_count> value = Form{}(FastArgument<Argument>::from(item[k])...);
        value.covered = (value.covered * ... * FastArgument<Argument>::covered(item[k]));
        return value;
    }

    /// Computes `size` items. False if one of them is not covered.
    template <std::size_t arrays, std::size_t... k, std::size_t... r>
    COVERFRAME_INLINE static bool block_of(const From& from, const To& to, std::size_t size, std::index_sequence<k...>,
                                           std::index_sequence<r...>) {
        const From column{from[k]...};
        const To result{to[r]...};
        const Item single{*from[k]...};
        std::uint64_t uncovered = 0;
        COVERFRAME_VECTOR_LOOP
        for (std::size_t i = 0; i < size; ++i) {
            const Fast<result_count> value = value_of({(is_array(arrays, k) ? column[k][i] : single[k])...});
            ((result[r][i] = value.results[r]), ...);
            uncovered |= value.covered != 0.0 ? std::uint64_t{0} : ~std::uint64_t{0};
        }
        return uncovered == 0;
    }

    static constexpr std::index_sequence_for<Argument...> arguments{};
    static constexpr std::make_index_sequence<result_count> each_result{};

    // All that is called is made part of these, without which there is no vector code.
    template <std::size_t arrays>
    COVERFRAME_FLATTEN static bool on_any(const From& from, const To& to, std::size_t size) {
        return block_of<arrays>(from, to, size, arguments, each_result);
    }
    template <std::size_t arrays>
    COVERFRAME_FOR_AVX2 static bool on_avx2(const From& from, const To& to, std::size_t size) {
        return block_of<arrays>(from, to, size, arguments, each_result);
    }
    template <std::size_t arrays>
    COVERFRAME_FOR_AVX512 static bool on_avx512(const From& from, const To& to, std::size_t size) {
        return block_of<arrays>(from, to, size, arguments, each_result);
    }

    using Spans = std::array<Span, all + 1>;
    template <std::size_t arrays>
    static constexpr std::size_t kept = arrays < numbers && !is_number[arrays] ? all : arrays;  ///< a choice alone: all

    static const Spans& spans(Machine machine) { return spans(machine, std::make_index_sequence<all + 1>{}); }

    template <std::size_t... k>
    static const Spans& spans(Machine machine, std::index_sequence<k...>) {
        static constexpr Spans any{&on_any<kept<k>>...};
        static constexpr Spans avx2{&on_avx2<kept<k>>...};
        static constexpr Spans avx512{&on_avx512<kept<k>>...};
        return machine == Machine::avx512 ? avx512 : machine == Machine::avx2 ? avx2 : any;
    }

    static void one_by_one(const RuleColumn* columns, std::size_t begin, std::size_t end, double* const* results,
                           std::size_t& at, RuleLoop by_item) {
        for (std::size_t i = begin; i < end; ++i) {
            std::array<RuleColumn, argument_count> one;
            Item item;
            To to;
            for (std::size_t k = 0; k < argument_count; ++k) {
                one[k] = {columns[k].items + i * columns[k].step, 0};
                item[k] = *one[k].items;
            }
            for (std::size_t r = 0; r < result_count; ++r) to[r] = results[r] + i;
            const Fast<result_count> value = value_of(item);
            if (value.covered != 0.0) {
                for (std::size_t r = 0; r < result_count; ++r) *to[r] = value.results[r];
                continue;
            }
            at = i;
            std::size_t within_one = 0;
            by_item(one.data(), 1, to.data(), within_one);
        }
    }
};

#undef COVERFRAME_FOR_AVX2
#undef COVERFRAME_FOR_AVX512
#undef COVERFRAME_INLINE
#undef COVERFRAME_FLATTEN
#undef COVERFRAME_VECTOR_LOOP
#if defined(__clang__)
#pragma clang diagnostic pop
#endif

}  // namespace coverframe::catalogue
