// SPDX-License-Identifier: BSD-3-Clause
// The fast forms of rules against the rules themselves: the same numbers but for roundings, the same refusals of the
// same items, and bits that depend on nothing but the item.
#include "actions/catalogue/fast.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstring>
#include <limits>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include "actions/catalogue/elementary.hpp"
#include "actions/catalogue/entry.hpp"
#include "actions/refusal.hpp"
#include "close.hpp"
#include "coverframe/actions/rule.hpp"

using namespace coverframe;

namespace {

using Generator = std::mt19937_64;
using Columns = std::vector<std::vector<double>>;

/// What a loop makes of its items: the results, or the refusal and its item.
struct Answer {
    std::string code = "none";
    std::size_t at = 0;
    Columns results;
};

/// A column of one item serves all.
Answer answer(const Rule& rule, RuleLoop loop, const Columns& arguments, std::size_t count) {
    std::vector<RuleColumn> columns;
    for (const auto& argument : arguments) columns.push_back({argument.data(), argument.size() == 1 ? 0U : 1U});
    Answer found{.results = Columns(rule.results.size(), std::vector<double>(count + 1))};
    std::vector<double*> to;
    for (auto& result : found.results) to.push_back(result.data());
    found.code = code_of([&] {
        loop(columns.data(), count, to.data(), found.at);
        return 0;
    });
    return found;
}

Columns single(const std::vector<double>& item) {
    Columns columns;
    for (const double number : item) columns.push_back({number});
    return columns;
}

bool accepts(const Rule& rule, const std::vector<double>& item) {
    return answer(rule, rule.by_item, single(item), 1).code == "none";
}

double uniform(Generator& bits, double low, double high) {
    return low + (high - low) * static_cast<double>(bits() >> 11) * 0x1.0p-53;
}

bool is_number(const RuleValue& value) { return value.measure != Measure::choice && value.measure != Measure::truth; }

/// Where rules bend, in the units of the catalogue, US units included.
std::vector<double> bends(const RuleValue& value) {
    switch (value.measure) {
        case Measure::angle: return {2.38, 5.0, 10.0, 15.0, 20.0, 30.0, 37.5, 45.0, 60.0, 67.5, 70.0, 90.0};
        case Measure::length:
            return {0.3048, 0.5,    0.5588, 0.6096, 1.0,    2.0,   2.5,   3.0,    4.572,  5.0,    6.096,
                    7.5,    15.0,   50.0,   70.0,   182.88, 200.0, 500.0, 800.0,  914.4,  1000.0, 1500.0};
        case Measure::area_load: return {0.9576052, 1.0, 1.197, 1.4364078, 3.0, 4.186, 4.2, 5.893};
        case Measure::choice:
        case Measure::truth: return {};
        default: return {0.2, 0.5, 0.8, 1.0, 1.1, 1.2, 2.0, 3.0, 4.0, 4.5, 5.0, 10.0, 20.0, 30.0, 50.0, 100.0};
    }
}

double drawn(Generator& bits, const RuleValue& value) {
    if (value.measure == Measure::choice) return static_cast<double>(bits() % value.choices.size());
    if (value.measure == Measure::truth) return static_cast<double>(bits() % 2);
    const std::vector<double> bend = bends(value);
    switch (bits() % 4) {
        case 0: return bend[bits() % bend.size()];
        case 1: return uniform(bits, 0.0, 1.5);
        case 2: return uniform(bits, 0.0, 10.0);
        default: break;
    }
    return value.measure == Measure::angle ? uniform(bits, 0.0, 90.0) : std::floor(uniform(bits, 1.0, 60.0));
}

/// An item the rule accepts.
std::vector<double> accepted(Generator& bits, const Rule& rule) {
    std::vector<double> item(rule.arguments.size());
    do {
        for (std::size_t k = 0; k < item.size(); ++k) item[k] = drawn(bits, rule.arguments[k]);
    } while (!accepts(rule, item));
    return item;
}

/// The last number towards `far` that the rule accepts in argument k, all others as they are.
double end_of_range(const Rule& rule, std::vector<double> item, std::size_t k, double far) {
    double good = item[k];
    double bad = far;
    const auto take = [&](double number) {
        item[k] = number;
        return accepts(rule, item);
    };
    if (take(far)) return far;
    while (std::nextafter(good, bad) != bad) {
        const double half = 0.5 * good + 0.5 * bad;
        const double middle = half != good && half != bad ? half : std::nextafter(good, bad);
        (take(middle) ? good : bad) = middle;
    }
    return good;
}

/// Items round one that is accepted: each number at both ends of its range, beside them and at bends, and all drawn.
std::vector<std::vector<double>> items_round(Generator& bits, const Rule& rule) {
    const std::vector<double> base = accepted(bits, rule);
    std::vector<std::vector<double>> items{base};
    const auto add = [&](std::size_t k, double number) {
        items.push_back(base);
        items.back()[k] = number;
    };
    for (std::size_t k = 0; k < base.size(); ++k) {
        const RuleValue& value = rule.arguments[k];
        if (!is_number(value)) continue;
        std::vector<double> places = bends(value);
        const double low = end_of_range(rule, base, k, -1e16);
        const double high = end_of_range(rule, base, k, 1e16);
        places.insert(places.end(), {low, high, 0.0, std::sqrt(std::abs(low * high))});
        for (const double place : places) {
            add(k, place);
            add(k, std::nextafter(place, -1e300));
            add(k, std::nextafter(place, 1e300));
        }
        for (int i = 0; i < 20; ++i) add(k, uniform(bits, low, high));
        for (const double number : not_finite) add(k, number);
    }
    for (int i = 0; i < 60; ++i) {
        items.push_back(base);
        for (std::size_t k = 0; k < base.size(); ++k) items.back()[k] = drawn(bits, rule.arguments[k]);
    }
    return items;
}

bool has_fast_form(const Rule& rule) { return rule.loop != rule.by_item; }

bool same_bits(double a, double b) { return std::memcmp(&a, &b, sizeof a) == 0; }

/// A few roundings of the number, or of the numbers of order one it is the difference of.
Closeness close_to_rule(double fast, double exact) { return close_abs(fast, exact, 2e-13 * std::abs(exact) + 2e-14); }

std::string text_of(const std::vector<double>& item) {
    std::string text;
    for (const double number : item) text += std::to_string(number) + " ";
    return text;
}

/// Items that differ from a base in some columns, and what each gives alone.
struct Known {
    std::vector<std::vector<double>> items;
    Columns results;
};

Known known_items(Generator& bits, const Rule& rule, const std::vector<double>& base, const std::vector<bool>& varies) {
    Known known;
    for (int i = 0; i < 60; ++i) {
        std::vector<double> item = base;
        for (std::size_t k = 0; k < item.size(); ++k) {
            if (varies[k]) item[k] = drawn(bits, rule.arguments[k]);
        }
        if (i > 0 && !accepts(rule, item)) continue;
        known.items.push_back(i == 0 ? base : item);
        const Answer alone = answer(rule, rule.loop, single(known.items.back()), 1);
        known.results.emplace_back();
        for (const auto& result : alone.results) known.results.back().push_back(result[0]);
    }
    return known;
}

/// So many of the known items in an array have the bits they have alone.
void check_bits(Generator& bits, const Rule& rule, const Known& known, const std::vector<bool>& is_array,
                std::size_t count) {
    std::vector<std::size_t> which(count);
    for (std::size_t& number : which) number = bits() % known.items.size();
    Columns columns(is_array.size());
    for (std::size_t k = 0; k < columns.size(); ++k) {
        columns[k].assign(is_array[k] && count != 1 ? count : 1, known.items[0][k]);
        for (std::size_t i = 0; i < columns[k].size() && columns[k].size() == count; ++i) {
            columns[k][i] = known.items[which[i]][k];
        }
    }
    const Answer all = answer(rule, rule.loop, columns, count);
    CHECK(all.code == "none");
    std::size_t different = 0;
    for (std::size_t r = 0; r < rule.results.size(); ++r) {
        for (std::size_t i = 0; i < count; ++i) {
            different += same_bits(all.results[r][i], known.results[which[i]][r]) ? 0 : 1;
        }
        CHECK(all.results[r][count] == 0.0);  // nothing is written behind the end
    }
    CAPTURE(count);
    CHECK(different == 0);
}

}  // namespace

TEST_CASE("fast forms: those that were written are there") {
    std::size_t count = 0;
    for (const Rule& rule : rules()) count += has_fast_form(rule) ? 1 : 0;
    CHECK(count >= 78);
}

TEST_CASE("fast forms: within, at and beyond the ends of every range as the rule") {
    for (const Rule& rule : rules()) {
        if (!has_fast_form(rule)) continue;
        CAPTURE(text_of(rule));
        Generator bits(1);
        for (int round = 0; round < 5; ++round) {
            for (const std::vector<double>& item : items_round(bits, rule)) {
                const Answer fast = answer(rule, rule.loop, single(item), 1);
                const Answer exact = answer(rule, rule.by_item, single(item), 1);
                CAPTURE(text_of(item));
                CHECK(fast.code == exact.code);
                if (exact.code != "none") continue;
                for (std::size_t r = 0; r < rule.results.size(); ++r) {
                    CAPTURE(rule.results[r].keyword);
                    CHECK(close_to_rule(fast.results[r][0], exact.results[r][0]));
                }
            }
        }
    }
}

TEST_CASE("fast forms: an item has the same bits alone, in arrays of any size and beside single values") {
    for (const Rule& rule : rules()) {
        if (!has_fast_form(rule)) continue;
        CAPTURE(text_of(rule));
        Generator bits(2);
        const std::vector<double> base = accepted(bits, rule);
        const std::size_t width = base.size();
        for (std::size_t arrays = 0; arrays <= width + 6; ++arrays) {  // one column, every column, every number, any
            std::vector<bool> is_array(width);
            for (std::size_t k = 0; k < width; ++k) {
                const bool drawn_one = bits() % 2 == 0 && (arrays % 2 == 0 || is_number(rule.arguments[k]));
                const bool of_many = arrays == width + 1 ? is_number(rule.arguments[k]) : drawn_one;
                is_array[k] = arrays < width ? arrays == k : arrays == width || of_many;
            }
            const Known known = known_items(bits, rule, base, is_array);
            for (const std::size_t count : {0U, 1U, 2U, 511U, 512U, 513U, 1023U, 1024U, 1025U, 5000U}) {
                check_bits(bits, rule, known, is_array, count);
            }
        }
    }
}

TEST_CASE("fast forms: the first item that is refused is named, wherever it stands") {
    for (const Rule& rule : rules()) {
        if (!has_fast_form(rule)) continue;
        CAPTURE(text_of(rule));
        Generator bits(3);
        const std::vector<double> base = accepted(bits, rule);
        for (std::size_t k = 0; k < base.size(); ++k) {
            if (!is_number(rule.arguments[k])) continue;
            for (const std::size_t at : {0U, 1U, 510U, 511U, 512U, 1300U}) {
                Columns columns = single(base);
                columns[k].assign(1301, base[k]);
                columns[k][at] = not_finite[at % 3];
                columns[k].back() = not_finite[0];
                const Answer fast = answer(rule, rule.loop, columns, 1301);
                const Answer exact = answer(rule, rule.by_item, columns, 1301);
                CHECK(fast.code == exact.code);
                CHECK(fast.code != "none");
                CHECK(fast.at == at);
                CHECK(exact.at == at);
            }
        }
    }
}

namespace {

enum class Way { up, down, level };
constexpr std::array<const char*, 3> choices_of(Way) { return {"up", "down", "level"}; }

/// What all fast forms are made of.
constexpr auto sample = [](double x, double y, Way way, bool whole) {
    using namespace catalogue;
    const double turned = way == Way::up ? x : way == Way::down ? -x : 0.0;
    const double power = fast_power(x + 1.0, y) + fast_sin(0.5 * x) + fast_cos(0.5 * x) + std::sqrt(x) + fast_atan(x);
    const double rest = fast_log1p(x) * fast_expm1(turned) / (1.0 + y);
    return fast(within(x, 0.0, 3.0) * within(y, 0.0, 2.0), power, whole ? std::min(rest, 0.5) : rest);
};

using Sample = catalogue::FastLoop<decltype(sample), 2, double, double, Way, bool>;

std::array<std::vector<double>, 2> on(catalogue::Machine machine, const Columns& columns, std::size_t count) {
    std::vector<RuleColumn> from;
    for (const auto& column : columns) from.push_back({column.data(), column.size() == 1 ? 0U : 1U});
    std::array<std::vector<double>, 2> results{std::vector<double>(count), std::vector<double>(count)};
    const std::array<double*, 2> to{results[0].data(), results[1].data()};
    std::size_t at = 0;
    const RuleLoop nothing_else = [](const RuleColumn*, std::size_t, double* const*, std::size_t&) { FAIL("covered"); };
    Sample::run(from.data(), count, to.data(), at, nothing_else, machine);
    return results;
}

}  // namespace

TEST_CASE("fast loops: the same bits on every machine") {
    using catalogue::Machine;
    constexpr std::size_t count = 1000;
    Generator bits(4);
    Columns columns{{}, {}, {}, {}};
    for (std::size_t i = 0; i < count; ++i) {
        columns[0].push_back(uniform(bits, 0.0, 3.0));
        columns[1].push_back(uniform(bits, 0.0, 2.0));
        columns[2].push_back(static_cast<double>(bits() % 3));
        columns[3].push_back(static_cast<double>(bits() % 2));
    }
    const auto any = on(Machine::any, columns, count);
    for (const Machine machine : {Machine::avx2, Machine::avx512}) {
        if (catalogue::this_machine() < machine) continue;
        CHECK(on(machine, columns, count) == any);
    }
    Columns mixed = columns;
    mixed[1].resize(1);
    mixed[2].resize(1);
    mixed[3].resize(1);
    const auto any_mixed = on(Machine::any, mixed, count);
    CHECK(any_mixed[0][0] == any[0][0]);
    for (const Machine machine : {Machine::avx2, Machine::avx512}) {
        if (catalogue::this_machine() < machine) continue;
        CHECK(on(machine, mixed, count) == any_mixed);
    }
}

TEST_CASE("fast loops: the same bits wherever in memory the arrays begin") {
    constexpr std::size_t most = 1100;
    Generator bits(6);
    Columns columns(4, std::vector<double>(most + 8));
    for (std::size_t i = 0; i < most + 8; ++i) {
        columns[0][i] = uniform(bits, 0.0, 3.0);
        columns[1][i] = uniform(bits, 0.0, 2.0);
        columns[2][i] = static_cast<double>(bits() % 3);
        columns[3][i] = static_cast<double>(bits() % 2);
    }
    const RuleLoop nothing_else = [](const RuleColumn*, std::size_t, double* const*, std::size_t&) { FAIL("covered"); };
    const auto run = [&](std::size_t begin, std::size_t count, double* first, double* second) {
        std::vector<RuleColumn> from;
        for (const auto& column : columns) from.push_back({column.data() + begin, 1});
        const std::array<double*, 2> to{first, second};
        std::size_t at = 0;
        Sample::run(from.data(), count, to.data(), at, nothing_else);
    };
    std::array<std::vector<double>, 2> together{std::vector<double>(most + 8), std::vector<double>(most + 8)};
    run(0, most + 8, together[0].data(), together[1].data());
    for (const std::size_t count : {2U, 7U, 505U, 506U, 511U, 512U, 513U, 520U, 1024U, 1100U}) {
        for (std::size_t past = 0; past < 8; ++past) {
            std::array<std::vector<double>, 2> apart{std::vector<double>(most + 17), std::vector<double>(most + 17)};
            run(past, count, apart[0].data() + past, apart[1].data() + (7 - past));
            CAPTURE(count);
            CAPTURE(past);
            CHECK(std::equal(&apart[0][past], &apart[0][past + count], &together[0][past]));
            CHECK(std::equal(&apart[1][7 - past], &apart[1][7 - past + count], &together[1][past]));
            CHECK(apart[0][past + count] == 0.0);
            CHECK(apart[1][7 - past + count] == 0.0);
        }
    }
}

TEST_CASE("covered: and, or, ends of a range, what is no number") {
    using namespace catalogue;
    const Covered in = within(1.0, 1.0, 2.0);
    const Covered out = within(std::nextafter(2.0, 3.0), 1.0, 2.0);
    CHECK(in.missing() == 0);
    CHECK(within(2.0, 1.0, 2.0).missing() == 0);
    CHECK(out.missing() != 0);
    CHECK(within(std::nextafter(1.0, 0.0), 1.0, 2.0).missing() != 0);
    for (const double number : not_finite) CHECK(within(number, -1e300, 1e300).missing() != 0);
    CHECK((in * in).missing() == 0);
    CHECK((in * out).missing() != 0);
    CHECK((out * out).missing() != 0);
    CHECK((in + in).missing() == 0);
    CHECK((out + in).missing() == 0);
    CHECK((out + out).missing() != 0);
    CHECK((1.0 * in).missing() == 0);
    CHECK((0.0 * in).missing() != 0);
}

TEST_CASE("fast loops: an entry whose fast form is not covered anywhere is the rule itself") {
    using namespace catalogue;
    std::vector<Rule> into;
    add(into, {"test", "load", {"test", "1"}, "A load.", Read::derived, "none"}, {{"load_kpa", "p", "a load"}},
        {{"load_kpa", "q", "2 p"}}, [](Pressure p) { return Pressure(2.0 * p); },
        [](double p) { return fast(one_if(p > 1e300), 3.0 * p); });
    const Answer found = answer(into[0], into[0].loop, {{1.0, 2.0, 3.0}}, 3);
    CHECK(found.results[0] == std::vector{2.0, 4.0, 6.0, 0.0});
    CHECK(has_fast_form(into[0]));
}

TEST_CASE("fast loops: a number that is none of the choices goes to the rule") {
    using namespace catalogue;
    std::vector<Rule> into;
    add(into, {"test", "way", {"test", "1"}, "A way.", Read::derived, "none"}, {{"way", "w", "a way"}, {"x", "x", "x"}},
        {{"number", "n", "number of the way"}}, [](Way way, double) { return static_cast<double>(way); },
        [](Way, double x) { return fast(1.0, 100.0 + 0.0 * x); });
    const Answer found = answer(into[0], into[0].loop, {{0.0, 2.0, 7.0, 2.5}, {1.0}}, 4);
    CHECK(found.results[0] == std::vector{100.0, 100.0, 7.0, 2.0, 0.0});
}

TEST_CASE("elementary functions of fast forms: as the standard library, to a few roundings") {
    using namespace catalogue;
    Generator bits(5);
    const auto hold = [&](const std::string& name, double low, double high, bool spread, auto fast, auto exact) {
        CAPTURE(name);
        for (int i = 0; i < 20000; ++i) {
            const double u = uniform(bits, 0.0, 1.0);
            const double x = spread ? std::exp(std::lerp(std::log(low), std::log(high), u)) : std::lerp(low, high, u);
            const double value = fast(x);
            const double expected = exact(x);
            if (close(value, expected, 1e-15)) continue;
            CAPTURE(x);
            CHECK(close(value, expected, 1e-15));
        }
    };
    const auto expm1 = [](double x) { return std::expm1(x); };
    hold("exp", -700.0, 700.0, false, [](double x) { return fast_exp(x); }, [](double x) { return std::exp(x); });
    hold("expm1", 1e-12, 700.0, true, [](double x) { return fast_expm1(x); }, expm1);
    hold("expm1 below", 1e-12, 700.0, true, [](double x) { return fast_expm1(-x); },
         [&](double x) { return expm1(-x); });
    hold("log", 1e-300, 1e300, true, [](double x) { return fast_log(x); }, [](double x) { return std::log(x); });
    hold("log near 1", 0.5, 2.0, false, [](double x) { return fast_log(x); }, [](double x) { return std::log(x); });
    hold("log1p", 1e-12, 1e300, true, [](double x) { return fast_log1p(x); }, [](double x) { return std::log1p(x); });
    hold("log1p below", 1e-12, 0.999, true, [](double x) { return fast_log1p(-x); },
         [](double x) { return std::log1p(-x); });
    hold("sin", 0.0, elementary::half_pi, false, [](double x) { return fast_sin(x); },
         [](double x) { return std::sin(x); });
    hold("cos", 0.0, elementary::half_pi, false, [](double x) { return fast_cos(x); },
         [](double x) { return std::cos(x); });
    hold("cos near a right angle", 1e-12, 1.0, true, [](double x) { return fast_cos(elementary::half_pi - x); },
         [](double x) { return std::cos(elementary::half_pi - x); });
    hold("atan", 1e-12, 1.0, true, [](double x) { return fast_atan(x); }, [](double x) { return std::atan(x); });
    CHECK(fast_exp(0.0) == 1.0);
    CHECK(fast_expm1(0.0) == 0.0);
    CHECK(fast_log(1.0) == 0.0);
    CHECK(fast_sin(0.0) == 0.0);
    for (const double x : {1e-200, 1e-6, 0.1, 1.0, 2.0, 393.7, 1e6}) {
        CHECK(close(fast_power(x, 1.36), std::pow(x, 1.36), 1e-13));
        CHECK(close(fast_power(x, 1.0 / 3.0), std::cbrt(x), 1e-13));
    }
}
