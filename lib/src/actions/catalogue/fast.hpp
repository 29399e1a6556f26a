// SPDX-License-Identifier: BSD-3-Clause
// How a rule of plain arithmetic runs over arrays at the speed of memory.
//
// A rule counts in quantities and refuses item by item what it does not cover; no compiler turns that into vector code.
// So an entry may carry the rule a second time, in a fast form, over numbers in the units of the catalogue, without a
// branch, a throw or a call that is not inline:
//
//     [](double s_k, double mu) { return fast(within(s_k, 0.0, 100.0) * within(mu, 0.0, 8.0), mu * s_k); }
//
// First what the form covers, 1 if the item is covered and 0 if not: ones and zeros, multiplied where all have to
// hold, added where one is enough. Then the results, in order. What it covers has to lie inside what the rule
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
#include <bit>
#include <cstddef>
#include <cstdint>
#include <tuple>
#include <type_traits>
#include <utility>

#include "coverframe/actions/rule.hpp"

namespace coverframe::catalogue {

/// 1 if it holds, else 0.
[[nodiscard]] constexpr double one_if(bool holds) { return holds ? 1.0 : 0.0; }

/// Whether an item is covered: 1 or 0. `*` is "and", `+` is "or".
class Covered {
public:
    constexpr Covered(double one_or_zero) : bits_(std::bit_cast<std::uint64_t>(one_or_zero)) {}
    friend constexpr Covered operator*(Covered a, Covered b) { return Covered(a.bits_ & b.bits_); }
    friend constexpr Covered operator+(Covered a, Covered b) { return Covered(a.bits_ | b.bits_); }
    /// 0 if covered.
    [[nodiscard]] constexpr std::uint64_t missing() const { return bits_ ^ std::bit_cast<std::uint64_t>(1.0); }

private:
    constexpr explicit Covered(std::uint64_t bits) : bits_(bits) {}
    std::uint64_t bits_;
};

/// 1 if `number` lies in [low, high], else 0; 0 for NaN.
[[nodiscard]] constexpr Covered within(double number, double low, double high) {
    return Covered(one_if(number >= low)) * Covered(one_if(number <= high));
}

/// A little over argument::smallest, so that a conversion of units that rounds down leaves it over.
inline constexpr double above_zero = 1e-11;

/// What a fast form gives. Nothing it gives counts where `covered` is 0.
template <std::size_t count>
struct Fast {
    Covered covered;
    std::array<double, count> results;
};

template <class... Number>
[[nodiscard]] constexpr Fast<sizeof...(Number)> fast(Covered covered, Number... results) {
    return {covered, {results...}};
}

/// A number of the catalogue as an argument of a fast form, and whether it is one.
template <class T>
struct FastArgument {
    static constexpr bool is_number = true;
    static Covered covered(double) { return 1.0; }
    static double from(double number) { return number; }
};

template <>
struct FastArgument<bool> {
    static constexpr bool is_number = false;
    static Covered covered(double) { return 1.0; }
    static bool from(double number) { return number != 0.0; }
};

template <class T>
    requires std::is_enum_v<T>
struct FastArgument<T> {
    static constexpr bool is_number = false;
    static constexpr double last = static_cast<double>(choices_of(T{}).size() - 1);
    static Covered covered(double number) { return within(number, 0.0, last); }
    /// The first choice in place of what is none: such an item is not covered, and its results are thrown away.
    static T from(double number) { return static_cast<T>(static_cast<int>(covered(number).missing() == 0 ? number : 0.0)); }
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
        const std::size_t loop = loop_for(columns);
        prepare(columns, count, loops[loop], from, repeated.data());
        const Span span = spans(machine)[loop];
        std::size_t size = std::min(block - past_line(to[0]), count);
        for (std::size_t done = 0; done < count; done += size, size = std::min(block, count - done)) {
            if (!span(from, to, size)) one_by_one(columns, done, done + size, results, at, by_item);
            for (std::size_t k = 0; k < argument_count; ++k) from[k] += columns[k].step * size;
            for (double*& result : to) result += size;
        }
    }

private:
    static constexpr std::size_t argument_count = sizeof...(Argument);
    static constexpr std::size_t block = 512;  ///< items: what a loop works on stays in the nearest memory

    /// Items since the last boundary of a line of the cache. All blocks but the first begin at one, where reading and
    /// writing is fastest.
    static std::size_t past_line(const double* item) {
        return reinterpret_cast<std::uintptr_t>(item) / sizeof(double) % (64 / sizeof(double));
    }
    static constexpr std::array<bool, argument_count> is_number{FastArgument<Argument>::is_number...};

    // There is a loop for each set of columns that may be arrays, so that the rest are constants of it. A set has bit k
    // for column k.
    using Set = std::size_t;
    static constexpr Set set_of_numbers() {
        Set set = 0;
        for (std::size_t k = 0; k < argument_count; ++k) set |= Set{is_number[k]} << k;
        return set;
    }
    static constexpr Set numbers = set_of_numbers();             ///< every number, but no choice or truth
    static constexpr Set all = (Set{1} << argument_count) - 1;   ///< every column
    static constexpr bool few = std::popcount(numbers) <= 4;

    /// Every set of numbers if these are few, else each alone and all of them; behind them all columns.
    static constexpr bool has_loop(Set set) {
        return (set & ~numbers) == 0 && (set == numbers || (few ? set != 0 : std::has_single_bit(set)));
    }
    static constexpr std::size_t count_loops() {
        std::size_t count = 1;
        for (Set set = 0; set <= numbers; ++set) count += has_loop(set) ? 1 : 0;
        return count;
    }
    static constexpr std::size_t loop_count = count_loops();
    static constexpr std::array<Set, loop_count> list_loops() {
        std::array<Set, loop_count> list{};
        std::size_t count = 0;
        for (Set set = 0; set <= numbers; ++set) {
            if (has_loop(set)) list[count++] = set;
        }
        list[count] = all;
        return list;
    }
    static constexpr std::array<Set, loop_count> loops = list_loops();
    static constexpr bool is_array(Set arrays, std::size_t k) { return (arrays >> k & 1) != 0; }

    using From = std::array<const double*, argument_count>;
    using To = std::array<double*, result_count>;
    using Item = std::array<double, argument_count>;
    using Span = bool (*)(const From&, const To&, std::size_t);

    /// The number of the loop for these arrays. If none is for just these, some single values are to be arrays too.
    static std::size_t loop_for(const RuleColumn* columns) {
        Set arrays = 0;
        for (std::size_t k = 0; k < argument_count; ++k) arrays |= Set{columns[k].step != 0} << k;
        if (!has_loop(arrays)) arrays = (arrays & ~numbers) == 0 ? numbers : all;
        return static_cast<std::size_t>(std::ranges::find(loops, arrays) - loops.begin());
    }

    /// Sets where each column is read from. A single value that is to be an array is repeated for a block.
    static void prepare(const RuleColumn* columns, std::size_t count, Set arrays, From& from, double* repeated) {
        for (std::size_t k = 0; k < argument_count; ++k) {
            from[k] = columns[k].items;
            if (columns[k].step != 0 || !is_array(arrays, k)) continue;
            from[k] = repeated + k * block;
            std::fill_n(repeated + k * block, std::min(block, count), *columns[k].items);
        }
    }

    template <class... Number>
    COVERFRAME_INLINE static Fast<result_count> value_of(Number... item) {
        Fast<result_count> value = Form{}(FastArgument<Argument>::from(item)...);
        value.covered = (value.covered * ... * FastArgument<Argument>::covered(item));
        return value;
    }

    /// The number itself. Without this g++ reads a number from memory as often as it is used, and a number across two
    /// lines of the cache costs twice.
    COVERFRAME_INLINE static double once(double number, std::uint64_t nothing) {
        return std::bit_cast<double>(std::bit_cast<std::uint64_t>(number) | nothing);
    }

    /// Computes `size` items. False if one of them is not covered.
    template <Set arrays, std::size_t... k, std::size_t... r>
    COVERFRAME_INLINE static bool block_of(const From& from, const To& to, std::size_t size, std::index_sequence<k...>,
                                           std::index_sequence<r...>) {
        const From column{from[k]...};
        const To result{to[r]...};
        const Item single{*from[k]...};
        const std::uint64_t nothing = size >> 63;  // what the compiler does not know
        std::uint64_t uncovered = 0;
        COVERFRAME_VECTOR_LOOP
        for (std::size_t i = 0; i < size; ++i) {
            const Fast<result_count> value =
                value_of((is_array(arrays, k) ? once(column[k][i], nothing) : single[k])...);
            ((result[r][i] = value.results[r]), ...);
            uncovered |= value.covered.missing();
        }
        return uncovered == 0;
    }

    static constexpr std::index_sequence_for<Argument...> arguments{};
    static constexpr std::make_index_sequence<result_count> each_result{};

    // All that is called is made part of these, without which there is no vector code.
    template <Set arrays>
    COVERFRAME_FLATTEN static bool on_any(const From& from, const To& to, std::size_t size) {
        return block_of<arrays>(from, to, size, arguments, each_result);
    }
    template <Set arrays>
    COVERFRAME_FOR_AVX2 static bool on_avx2(const From& from, const To& to, std::size_t size) {
        return block_of<arrays>(from, to, size, arguments, each_result);
    }
    template <Set arrays>
    COVERFRAME_FOR_AVX512 static bool on_avx512(const From& from, const To& to, std::size_t size) {
        return block_of<arrays>(from, to, size, arguments, each_result);
    }

    using Spans = std::array<Span, loop_count>;

    static const Spans& spans(Machine machine) { return spans(machine, std::make_index_sequence<loop_count>{}); }

    template <std::size_t... k>
    static const Spans& spans(Machine machine, std::index_sequence<k...>) {
        static constexpr Spans any{&on_any<loops[k]>...};
        static constexpr Spans avx2{&on_avx2<loops[k]>...};
        static constexpr Spans avx512{&on_avx512<loops[k]>...};
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
            const Fast<result_count> value = std::apply([](auto... number) { return value_of(number...); }, item);
            if (value.covered.missing() == 0) {
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
