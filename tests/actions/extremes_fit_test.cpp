// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/actions/extremes_fit.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <random>
#include <vector>

#include <doctest/doctest.h>
#include <boost/math/distributions/non_central_t.hpp>

#include "actions/refusal.hpp"
#include "close.hpp"

using namespace coverframe;
using namespace coverframe::literals;
using namespace coverframe::extremes;

namespace {

using Maxima = std::vector<Pressure>;

/// 11 values of the tests of Hosking's L-moment routines, as the package lmoments3 carries them on
/// (lmoments3/tests/test_lmoments.py, read on the page).
constexpr std::array hosking{2.0, 3.0, 4.0, 2.4, 5.5, 1.2, 5.4, 2.2, 7.1, 1.3, 1.5};

/// Yearly greatest rain of 24 hours at Charlottetown, 32 years from 1967 to 2016 [mm]: Environment and Climate Change
/// Canada, short-duration rainfall data, station 8300301, 2021-03-26, table 1, read on the page. Rain, but the same
/// question, and the service prints its Gumbel law by moments.
constexpr std::array charlottetown{100.8, 72.6, 46.7, 58.7, 61.2,  61.0, 40.4, 40.1, 27.9, 43.4, 59.9,
                                   52.0,  66.2, 35.8, 60.0, 41.9,  65.0, 57.5, 61.0, 63.0, 80.3, 65.2,
                                   34.4,  87.8, 46.4, 89.0, 106.8, 94.9, 78.4, 92.6, 82.9, 70.9};

constexpr double mm_of_water = 0.00980665;  // [kPa]

template <class Values, class Turn>
Maxima maxima_of(const Values& values, Turn turn) {
    Maxima maxima;
    for (const double value : values) maxima.push_back(from_kPa(turn(value)));
    return maxima;
}

template <class Values>
Maxima maxima_of(const Values& values, double unit = 1.0) {
    return maxima_of(values, [&](double value) { return value * unit; });
}

const GumbelLaw& gumbel(const Fit& fit) { return std::get<GumbelLaw>(fit.law); }
const LognormalLaw& lognormal(const Fit& fit) { return std::get<LognormalLaw>(fit.law); }

/// The same winters with bare ones between the second and the third.
Maxima with_bare(const Maxima& maxima, std::size_t bare) {
    Maxima all;
    for (std::size_t i = 0; i < maxima.size(); ++i) {
        for (std::size_t k = 0; i == 2 && k < bare; ++k) all.push_back(0_kPa);
        all.push_back(maxima[i]);
    }
    return all;
}

/// Draws winters without the library: the generator and the transformation are the standard library's.
class Weather {
public:
    Weather(Family family, double variation, double bare, unsigned seed)
        : family_(family), variation_(variation), bare_(bare), engine_(seed) {}

    Maxima winters(std::size_t count) {
        Maxima maxima;
        while (maxima.size() < count) maxima.push_back(from_kPa(draw()));
        return maxima;
    }

private:
    double draw() {
        if (std::uniform_real_distribution<double>(0, 1)(engine_) < bare_) return 0;
        if (family_ == Family::gumbel) {
            const double scale = variation_ * std::sqrt(6.0) / std::numbers::pi;
            const double x = std::extreme_value_distribution<double>(1 - 0.5772156649 * scale, scale)(engine_);
            return x < 0.001 ? draw() : x;  // a Gumbel law of little scatter hardly ever gets here
        }
        const double s = std::sqrt(std::log(1 + variation_ * variation_));
        return std::lognormal_distribution<double>(-s * s / 2, s)(engine_);
    }

    Family family_;
    double variation_;
    double bare_;
    std::mt19937 engine_;
};

}  // namespace

TEST_CASE("extremes: L-moments against Hosking's routines") {
    // TestGum and TestNor of the file named above, printed with six decimals
    const Fit fit = fit_gumbel(maxima_of(hosking));
    CHECK(close_abs(in_kPa(gumbel(fit).mode), 2.285519, 1e-6));
    CHECK(close_abs(in_kPa(gumbel(fit).scale), 1.647295, 1e-6));
    CHECK(close_abs(in_kPa(load(fit, 2)), 2.889274, 1e-6));
    CHECK(close_abs(in_kPa(load(fit, 5)), 4.756363, 1e-6));
    CHECK(fit.winters == 11);
    CHECK(fit.winters_without_snow == 0);
    CHECK(fit.caution.starts_with("Only 11 winters with snow"));

    const double unit = 0.05;
    const Fit logs = fit_lognormal(maxima_of(hosking, [&](double x) { return unit * std::exp(x); }));
    CHECK(close_abs(std::log(in_kPa(lognormal(logs).median) / unit), 3.236364, 1e-6));
    CHECK(close_abs(lognormal(logs).log_deviation, 2.023820, 1e-6));
    CHECK(close_abs(std::log(in_kPa(load(logs, 5)) / unit), 4.939654, 2e-6));
}

TEST_CASE("extremes: a Gumbel law by moments against a weather service") {
    const Fit fit = fit_gumbel(maxima_of(charlottetown, mm_of_water), Method::moments);
    CHECK(fit.caution.empty());
    // table 1: mean 63.9, standard deviation 20.5; table 2a: rain of six return periods
    CHECK(close_abs(in_kPa(fit.mean) / mm_of_water, 63.9, 0.05));
    CHECK(close_abs(fit.variation * in_kPa(fit.mean) / mm_of_water, 20.5, 0.05));
    constexpr std::array<std::array<double, 2>, 6> printed{
        {{2, 60.5}, {5, 78.6}, {10, 90.6}, {25, 105.8}, {50, 117.0}, {100, 128.1}}};
    for (const auto& [years, rain] : printed) CHECK(close_abs(in_kPa(load(fit, years)) / mm_of_water, rain, 0.0501));
    // table 2b: asymptotic 95 % limits of the 50-year rain, +- 1.0 mm/h in 24 h. Ours is about as wide and reaches
    // further up than down.
    const Interval wide = interval(fit, 50, 0.95);
    const double width = in_kPa(wide.high - wide.low) / mm_of_water;
    CHECK(width > 2 * 0.95 * 24);
    CHECK(width < 2 * 1.05 * 24 * 1.25);
    CHECK(wide.high - load(fit, 50) > load(fit, 50) - wide.low);
}

TEST_CASE("extremes: moments of the lognormal law are those of the logarithms") {
    const std::array loads{0.5, 1.0, 2.0, 4.0, 8.0};
    const Fit fit = fit_lognormal(maxima_of(loads), Method::moments);
    CHECK(close(lognormal(fit).median, 2_kPa, 1e-14));
    CHECK(close(lognormal(fit).log_deviation, std::log(2.0) * std::sqrt(2.5), 1e-14));  // by hand: deviations 2,1,0,1,2
    // by hand: l_2 of -2 -1 0 1 2 is sum of (2 i - 6) x over 20 = (8 + 2 + 0 + 2 + 8)/20 = 1
    const Fit l_moments = fit_lognormal(maxima_of(loads), Method::l_moments);
    CHECK(close(lognormal(l_moments).log_deviation, std::log(2.0) * std::sqrt(std::numbers::pi), 1e-14));
}

TEST_CASE("extremes: order, unit and size of the maxima") {
    Maxima maxima = maxima_of(charlottetown, mm_of_water);
    for (const Method method : {Method::moments, Method::l_moments}) {
        const Fit before = fit_gumbel(maxima, method);
        Maxima turned(maxima.rbegin(), maxima.rend());
        CHECK(close(load(fit_gumbel(turned, method), 50), load(before, 50), 1e-13));
        for (Pressure& load : turned) load *= 10.0;
        CHECK(close(load(fit_gumbel(turned, method), 50), 10.0 * load(before, 50), 1e-13));
        CHECK(close(load(fit_lognormal(turned, method), 50), 10.0 * load(fit_lognormal(maxima, method), 50), 1e-13));
        for (const double years : {2.0, 10.0, 50.0, 9e5}) CHECK(load(before, years) < load(before, 1.01 * years));
    }
}

TEST_CASE("extremes: winters without snow") {
    const Maxima snowy = maxima_of(charlottetown, mm_of_water);
    const Maxima mixed = with_bare(snowy, 32);  // every second winter is bare
    for (const auto fit_law : {fit_gumbel, fit_lognormal}) {
        const Fit all = fit_law(snowy, Method::l_moments);
        const Fit half = fit_law(mixed, Method::l_moments);
        CHECK(half.winters == 64);
        CHECK(half.winters_without_snow == 32);
        CHECK(dry_share(half) == 0.5);
        CHECK(dry_share(all) == 0.0);
        CHECK(half.mean == all.mean);
        CHECK(load(half, 100) == load(all, 50));
        CHECK(load(half, 2) == 0_kPa);  // exceeded in every second winter: none
        CHECK(load(half, 2.1) < load(all, 2));
    }
    // the chance of exceeding the load is 1/T again: (1 - p_0)(1 - F_+(x_T))
    const Fit fit = fit_gumbel(mixed);
    const double y = (load(fit, 30) - gumbel(fit).mode) / gumbel(fit).scale;
    CHECK(close(0.5 * (1 - std::exp(-std::exp(-y))), 1.0 / 30, 1e-12));
    // 5 of 50 winters have snow: the 5-year load is 0, and the 10-year load is the end of the law
    const Fit rare = fit_lognormal(with_bare(maxima_of(std::array{0.2, 0.3, 0.4, 0.5, 0.9}), 45));
    CHECK(load(rare, 5) == 0_kPa);
    CHECK(load(rare, 10) == 0_kPa);
    CHECK(load(rare, 10.01) > 0_kPa);
    CHECK(load(rare, 20) == lognormal(rare).median);
    CHECK(code_of([&] { return interval(rare, 5); }) == "extremes.return_period.dry");
    CHECK(code_of([&] { return interval(fit_gumbel(mixed), 2.5); }) == "extremes.return_period.dry");
    CHECK(code_of([&] { return interval(rare, 50); }) == "none");
}

TEST_CASE("extremes: the low tail of a Gumbel law is refused") {
    const Fit fit = fit_gumbel(with_bare(maxima_of(std::array{0.1, 0.2, 0.3, 0.5, 2.0, 6.0}), 5));
    CHECK(code_of([&] { return load(fit, 2); }) == "extremes.return_period.low_tail");
    CHECK(code_of([&] { return interval(fit, 2); }) == "extremes.return_period.low_tail");
    CHECK(load(fit, 10) > 0_kPa);
    const Interval mild = interval(fit, 4, 0.95);
    CHECK(mild.low == 0_kPa);
    CHECK(mild.high > load(fit, 4));
}

TEST_CASE("extremes: series that are no series of yearly maxima") {
    Maxima maxima = maxima_of(hosking);
    for (const auto fit_law : {fit_gumbel, fit_lognormal}) {
        for (const double bad : {not_finite[0], not_finite[1], not_finite[2], -0.5, 1e-5, 100.1}) {
            Maxima wrong = maxima;
            wrong[3] = from_kPa(bad);
            try {
                static_cast<void>(fit_law(wrong, Method::moments));
                FAIL("not refused");
            } catch (const InputError& error) {
                CHECK(error.code() == "extremes.maxima.range");
                CHECK(error.where() == "/3");
            }
        }
        const auto code = [&](const Maxima& series) {
            return code_of([&] { return fit_law(series, Method::l_moments); });
        };
        CHECK(code({}) == "extremes.maxima.few");
        CHECK(code(Maxima(30, 0_kPa)) == "extremes.maxima.no_snow");
        CHECK(code(Maxima(30, 1.1_kPa)) == "extremes.maxima.equal");
        CHECK(code(with_bare(Maxima(30, 1.1_kPa), 3)) == "extremes.maxima.equal");
        CHECK(code(with_bare(Maxima(maxima.begin(), maxima.begin() + 4), 20)) == "extremes.maxima.few");
        CHECK(code(Maxima(maxima.begin(), maxima.begin() + 5)) == "none");
        CHECK(code_of([&] { return fit_law(maxima, static_cast<Method>(2)); }) == "extremes.method.unknown");
        CHECK_FALSE(fit_law(with_bare(maxima, 40), Method::moments).caution.empty());
        const Maxima rain = maxima_of(charlottetown, mm_of_water);
        CHECK_FALSE(fit_law(Maxima(rain.begin(), rain.begin() + 19), Method::moments).caution.empty());
        CHECK(fit_law(Maxima(rain.begin(), rain.begin() + 20), Method::moments).caution.empty());
    }
}

TEST_CASE("extremes: fits filled in by hand, and arguments out of range") {
    const Fit good{.law = GumbelLaw{1_kPa, 0.4_kPa}, .winters = 40};
    CHECK(close(load(good, 50), from_kPa(1 + 0.4 * 3.9019386579358333), 1e-13));  // -ln(-ln 0.98)
    const auto code = [](const Fit& fit) { return code_of([&] { return load(fit, 50); }); };
    CHECK(code({}) == "extremes.fit.range");
    for (const double bad : {not_finite[0], not_finite[1], 0.0, -1.0}) {
        CHECK(code({.law = GumbelLaw{1_kPa, from_kPa(bad)}, .winters = 40}) == "extremes.fit.range");
        CHECK(code({.law = LognormalLaw{from_kPa(bad), 0.5}, .winters = 40}) == "extremes.fit.range");
        CHECK(code({.law = LognormalLaw{1_kPa, bad}, .winters = 40}) == "extremes.fit.range");
    }
    CHECK(code({.law = GumbelLaw{from_kPa(not_finite[0]), 1_kPa}, .winters = 40}) == "extremes.fit.range");
    CHECK(code({.law = GumbelLaw{1_kPa, 1_kPa}, .winters = 40, .winters_without_snow = 36}) == "extremes.fit.range");
    CHECK(code({.law = GumbelLaw{1_kPa, 1_kPa}, .winters = 40, .winters_without_snow = -1}) == "extremes.fit.range");
    CHECK(code_of([] { return dry_share({}); }) == "extremes.fit.range");
    for (const double bad : {not_finite[0], not_finite[1], not_finite[2], -2.0, 0.0, 1.9, 1.1e6}) {
        CHECK(code_of([&] { return load(good, bad); }) == "extremes.return_period.range");
        CHECK(code_of([&] { return interval(good, bad); }) == "extremes.return_period.range");
        CHECK(code_of([&] { return interval(good, 50, bad); }) == "extremes.level.range");
    }
    CHECK(code_of([&] { return interval(good, 50, 0.9, {.number = 999}); }) == "extremes.draws.range");
    CHECK(code_of([&] { return interval(good, 50, 0.9, {.number = 1000001}); }) == "extremes.draws.range");
}

TEST_CASE("extremes: the interval of a lognormal law by moments is the tolerance limit of a normal sample") {
    // k = t'(1 - alpha/2; n - 1, sqrt(n) u)/sqrt(n), Boost.Math's noncentral t. One of them is in every book of tables
    // of tolerance factors: n = 10, 95 % of the sample with confidence 95 %, k = 2.911 (from memory).
    CHECK(close_abs(boost::math::quantile(boost::math::non_central_t(9, std::sqrt(10.0) * 1.6448536269514722), 0.95) /
                        std::sqrt(10.0),
                    2.911, 0.0005));
    for (const int winters : {5, 10, 43}) {
        CAPTURE(winters);
        const Fit fit{.law = LognormalLaw{1_kPa, 1.0}, .method = Method::moments, .winters = winters};
        const Interval found = interval(fit, 20, 0.9, {.number = 200000});
        const boost::math::non_central_t t(winters - 1, std::sqrt(winters) * 1.6448536269514722);
        const double high = boost::math::quantile(t, 0.95) / std::sqrt(winters);
        const double low = boost::math::quantile(t, 0.05) / std::sqrt(winters);
        CHECK(close(std::log(in_kPa(found.high)), high, 0.01));
        CHECK(close(std::log(in_kPa(found.low)), low, 0.01));
    }
}

TEST_CASE("extremes: the interval is the same for the same seed, holds the load, and widens with the level") {
    for (const auto fit_law : {fit_gumbel, fit_lognormal}) {
        for (const Maxima& maxima : {maxima_of(hosking), with_bare(maxima_of(hosking), 6)}) {
            const Fit fit = fit_law(maxima, Method::l_moments);
            const Interval first = interval(fit, 50);
            const Interval again = interval(fit, 50);
            CHECK(first.low == again.low);
            CHECK(first.high == again.high);
            const Interval other = interval(fit, 50, 0.9, {.seed = 2});
            CHECK(first.high != other.high);
            CHECK(close(first.high, other.high, 0.1));
            const Interval wider = interval(fit, 50, 0.95);
            CHECK(wider.low < first.low);
            CHECK(first.low < load(fit, 50));
            CHECK(load(fit, 50) < first.high);
            CHECK(first.high < wider.high);
            CHECK(interval(fit, 100).high > first.high);
            CHECK(std::isfinite(in_kPa(interval(fit, 1e6, 0.99, {.number = 1000}).high)));
        }
    }
}

TEST_CASE("extremes: the random numbers of the interval are those the header describes") {
    const Fit fit{.law = GumbelLaw{1_kPa, 0.25_kPa}, .method = Method::moments, .winters = 6};
    std::mt19937_64 engine(42);
    const double truth = -std::log(-std::log(0.9));
    std::vector<double> distances;
    while (distances.size() < 1001) {  // ranks 250.5 and 751.5 of 1002
        std::array<double, 6> y{};
        for (double& value : y) {
            value = -std::log(-std::log1p(-(static_cast<double>(engine() >> 11) + 0.5) * 0x1p-53));
        }
        double mean = 0;
        for (const double value : y) mean += value / 6;
        double squares = 0;
        for (const double value : y) squares += (value - mean) * (value - mean);
        const double scale = std::sqrt(squares / 5 * 6) / std::numbers::pi;
        distances.push_back((mean - std::numbers::egamma * scale + scale * truth - truth) / scale);
    }
    std::ranges::sort(distances);
    const Interval found = interval(fit, 10, 0.5, {.number = 1001, .seed = 42});
    const double estimate = 1 + 0.25 * truth;
    CHECK(close(in_kPa(found.high), estimate - 0.25 * 0.5 * (distances[249] + distances[250]), 1e-10));
    CHECK(close(in_kPa(found.low), estimate - 0.25 * 0.5 * (distances[750] + distances[751]), 1e-10));
}

TEST_CASE("extremes: simulated places find the truth inside the interval as often as it says") {
    // 400 places of 20 winters; each end of their intervals of 90 % should miss the true 50-year load in 20 of them,
    // with a standard error of 4.4. An interval from the asymptotic variance would miss it in some 40 at the upper end.
    struct Case {
        Family family;
        double variation, bare;
        Method method;
    };
    constexpr std::array<Case, 4> cases{{{Family::gumbel, 0.3, 0.0, Method::l_moments},
                                         {Family::gumbel, 0.3, 0.3, Method::moments},
                                         {Family::lognormal, 0.8, 0.0, Method::l_moments},
                                         {Family::lognormal, 0.8, 0.3, Method::l_moments}}};
    unsigned seed = 7;
    for (const Case& c : cases) {
        CAPTURE(static_cast<int>(c.family));
        CAPTURE(c.bare);
        const double truth = load_over_mean(c.family, c.variation, 50 * (1 - c.bare));
        Weather weather(c.family, c.variation, c.bare, seed++);
        int below = 0;
        int above = 0;
        for (int place = 0; place < 400; ++place) {
            const Maxima maxima = weather.winters(20);
            const Fit fit = c.family == Family::gumbel ? fit_gumbel(maxima, c.method) : fit_lognormal(maxima, c.method);
            const Interval found = interval(fit, 50, 0.9, {.number = 1000});
            below += in_kPa(found.high) < truth ? 1 : 0;
            above += in_kPa(found.low) > truth ? 1 : 0;
        }
        CHECK(close_abs(below, 20, 12));
        CHECK(close_abs(above, 20, 12));
    }
}
