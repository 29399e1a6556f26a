// SPDX-License-Identifier: BSD-3-Clause
#include "coverframe/units/text.hpp"

#include <algorithm>
#include <bit>
#include <clocale>
#include <cmath>
#include <functional>
#include <limits>
#include <numeric>
#include <random>
#include <regex>
#include <string>
#include <vector>

#include <doctest/doctest.h>

#include "close.hpp"
#include "coverframe/base/error.hpp"
#include "coverframe/units/crossing.hpp"
#include "units/unit_tables.hpp"

using namespace coverframe;
using namespace coverframe::literals;

namespace {

template <class Quantity>
Problem problem_of(std::string_view text) {
    try {
        (void)read<Quantity>(text);
    } catch (const InputError& error) {
        REQUIRE(error.problems().size() == 1);
        return error.problems().front();
    }
    return {"accepted", "", "", ""};
}

template <class Quantity>
std::string code_of(std::string_view text) {
    return problem_of<Quantity>(text).code;
}

bool holds(std::string_view text, std::string_view part) { return text.find(part) != std::string_view::npos; }

template <class Quantity>
void check_every_unit() {
    const auto units = units_of<Quantity>();
    REQUIRE_FALSE(units.empty());
    CHECK(units.front().to_si == 1.0);
    for (const UnitName& unit : units) {
        CAPTURE(unit.name);
        CHECK(read<Quantity>("1 " + std::string(unit.name)).value() == unit.to_si);
        CHECK(read<Quantity>("-2.5" + std::string(unit.name)).value() == -2.5 * unit.to_si);
        CHECK(write(read<Quantity>("2.5 " + std::string(unit.name)), unit.name) == "2.5 " + std::string(unit.name));
    }
}

}  // namespace

// ---- values --------------------------------------------------------------------------------------------------------

TEST_CASE("read: the texts of a plan give the bits of the literals") {
    CHECK(read<Length>("1.68 m") == 1.68_m);
    CHECK(read<Length>("54 in") == 54_in);
    CHECK(read<Length>("7 mil") == 7_mil);
    CHECK(read<Length>("0.18 mm") == 0.18_mm);
    CHECK(read<Area>("0.75 m2") == 0.75_m2);
    CHECK(read<Pressure>("30 psf") == 30_psf);
    CHECK(read<Pressure>("1.5 kPa") == 1.5_kPa);
    CHECK(read<Pressure>("9 N/mm2") == 9_N_per_mm2);
    CHECK(read<LineLoad>("0.15 kN/m") == 0.15_kN_per_m);
    CHECK(read<LineLoad>("40 plf") == 40_plf);
    CHECK(read<Force>("135 lbf") == 135_lbf);
    CHECK(read<Moment>("1200 lbf ft") == from_lbf_ft(1200));
    CHECK(read<Moment>("1.2 kN m") == 1.2_kN_m);
    CHECK(read<UnitWeight>("17.9 pcf") == 17.9_pcf);
    CHECK(read<UnitWeight>("9.02 kN/m3") == 9.02_kN_per_m3);
    CHECK(read<Angle>("18 deg") == 18_deg);
    CHECK(read<TemperatureDifference>("-12 degC") == -12.0_degC);
}

TEST_CASE("read: feet and inches, with the minus before the whole") {
    CHECK(read<Length>("5 ft 6 in") == 66_in);
    CHECK(read<Length>("-5 ft 6 in") == -66_in);
    CHECK(read<Length>("-0 ft 6 in") == -6_in);
    CHECK(read<Length>("+5 ft 6.25 in") == 66.25_in);
    CHECK(read<Length>("24 ft 11.5 in") == 299.5_in);
    CHECK(read<Length>("5ft 6in") == 66_in);
    CHECK(read<Length>("5 ft 0 in") == 60_in);
}

TEST_CASE("read: spaces and the ways of writing a decimal number") {
    for (const char* text : {"1.5 m", "1.5m", "  1.5 m\t", "+1.5 m", "1.50 m", "15e-1 m", "0.15E1 m", "01.5   m"}) {
        CAPTURE(std::string(text));
        CHECK(read<Length>(text) == 1.5_m);
    }
    CHECK(read<Length>(".5 m") == 0.5_m);
    CHECK(read<Length>("5. m") == 5_m);
}

TEST_CASE("read: US units against printed conversion factors") {
    // NIST SP 811 (2008), appendix B.8, printed to seven digits, hence half a unit of the seventh; from memory.
    constexpr double printed = 5e-7;
    CHECK(close(in_m(read<Length>("1 ft")), 0.3048, 1e-15));
    CHECK(close(in_mm(read<Length>("1 in")), 25.4, 1e-15));
    CHECK(close(in_N(read<Force>("1 lbf")), 4.448222, printed));
    CHECK(close(in_kN(read<Force>("1 kip")), 4.448222, printed));
    CHECK(close(in_Pa(read<Pressure>("1 psf")), 47.88026, printed));
    CHECK(close(in_Pa(read<Pressure>("1 psi")), 6894.757, printed));
    CHECK(close(in_MPa(read<Pressure>("1 ksi")), 6.894757, printed));
    CHECK(close(in_N_per_m(read<LineLoad>("1 plf")), 14.59390, printed));
    CHECK(close(in_N_per_m(read<LineLoad>("1 lbf/in")), 175.1268, printed));
    CHECK(close(in_N_m(read<Moment>("1 lbf ft")), 1.355818, printed));
    CHECK(close(in_N_m(read<Moment>("1 lbf in")), 0.1129848, printed));
    CHECK(close(in_m2(read<Area>("1 ft2")), 0.09290304, 1e-15));
    CHECK(close(in_rad(read<Angle>("1 deg")), 0.01745329, printed));
    // The same appendix gives the pound per cubic foot as a density, 16.01846 kg/m3; times 9.80665 m/s2.
    CHECK(close(in_N_per_m3(read<UnitWeight>("1 pcf")), 16.01846 * 9.80665, printed));
    CHECK(close(in_degC(read<TemperatureDifference>("18 degF")), 10.0, 1e-15));
}

TEST_CASE("units_of: every published unit is read, is written, and has the SI unit first") {
    check_every_unit<Length>();
    check_every_unit<Area>();
    check_every_unit<Force>();
    check_every_unit<Moment>();
    check_every_unit<LineLoad>();
    check_every_unit<Pressure>();
    check_every_unit<UnitWeight>();
    check_every_unit<Angle>();
    check_every_unit<TemperatureDifference>();
}

TEST_CASE("examples_of: every example is read") {
    const auto check_examples = []<class Quantity>(Quantity) {
        const std::string examples(examples_of<Quantity>());
        int found = 0;
        for (std::size_t open = examples.find('"'); open != std::string::npos; open = examples.find('"', open + 1)) {
            const std::size_t close_quote = examples.find('"', open + 1);
            CHECK(code_of<Quantity>(examples.substr(open + 1, close_quote - open - 1)) == "accepted");
            open = close_quote;
            ++found;
        }
        CHECK(found >= 2);
        CHECK_FALSE(kind_of<Quantity>().empty());
    };
    check_examples(Length{});
    check_examples(Area{});
    check_examples(Force{});
    check_examples(Moment{});
    check_examples(LineLoad{});
    check_examples(Pressure{});
    check_examples(UnitWeight{});
    check_examples(Angle{});
    check_examples(TemperatureDifference{});
}

TEST_CASE("no name is a unit of two quantities, and no wrong spelling is a unit") {
    for (const text::Table* table : text::all_tables) {
        for (const UnitName& unit : table->units) {
            CAPTURE(unit.name);
            const auto holds_it = [&](const text::Table* other) {
                return std::ranges::count(other->units, unit.name, &UnitName::name);
            };
            CHECK(std::transform_reduce(text::all_tables.begin(), text::all_tables.end(), std::ptrdiff_t{0},
                                        std::plus<>{}, holds_it) == 1);
        }
    }
    const auto is_unit = [](std::string_view name) {
        return std::ranges::any_of(text::all_tables, [&](const text::Table* table) {
            return std::ranges::count(table->units, name, &UnitName::name) > 0;
        });
    };
    for (const text::Spelling& spelling : text::spellings) {
        CAPTURE(spelling.written);
        CHECK(is_unit(spelling.meant));
        CHECK_FALSE(is_unit(spelling.written));
    }
}

TEST_CASE("write: the shortest number, in the unit asked for") {
    CHECK(write(54_in, "in") == "54 in");
    CHECK(write(7_mil, "mil") == "7 mil");
    CHECK(write(1.68_m, "m") == "1.68 m");
    CHECK(write(1.68_m, "mm") == "1680 mm");
    CHECK(write(30_psf, "psf") == "30 psf");
    CHECK(write(0.3_kPa, "kPa") == "0.3 kPa");
    CHECK(write(-12.0_degC, "degC") == "-12 degC");
    CHECK(write(210_GPa, "N/mm2") == "210000 N/mm2");
    CHECK(write(0.0_m, "ft") == "0 ft");
    CHECK(write(1200_lbf, "lbf") == "1200 lbf");
    CHECK(write(from_lbf_ft(900), "lbf ft") == "900 lbf ft");
}

// ---- limits --------------------------------------------------------------------------------------------------------

TEST_CASE("read: the largest and smallest doubles pass, what lies beyond is refused") {
    CHECK(in_m(read<Length>("1.7976931348623157e308 m")) == std::numeric_limits<double>::max());
    CHECK(in_m(read<Length>("4.9e-324 m")) == std::numeric_limits<double>::denorm_min());
    CHECK(in_m(read<Length>("0e5 m")) == 0.0);
    CHECK(code_of<Length>("1e309 m") == "quantity.range");
    CHECK(code_of<Length>("-1e309 m") == "quantity.range");
    CHECK(code_of<Length>("1e-400 m") == "quantity.range");
    CHECK(code_of<Pressure>("1e300 GPa") == "quantity.range");
    CHECK(code_of<Length>("1e-323 um") == "quantity.range");
    CHECK(code_of<Length>(std::string(400, '9') + " ft 6 in") == "quantity.range");
    CHECK(code_of<Length>(std::string(308, '9') + " ft 6 in") == "quantity.range");
}

TEST_CASE("read: inches beside feet stay below a foot") {
    CHECK(read<Length>("5 ft 11.999 in") < 72_in);
    CHECK(code_of<Length>("5 ft 12 in") == "quantity.number");
    CHECK(code_of<Length>("5 ft 14 in") == "quantity.number");
    CHECK(code_of<Length>("5.5 ft 6 in") == "quantity.number");
    CHECK(code_of<Length>("5 ft -6 in") == "quantity.number");
}

TEST_CASE("write: where no number of the unit gives the double, the SI unit does") {
    // Neighbours of 1.9 m: one of them in mm or ft has no double of its own, all of them have in m.
    double value = 1.9;
    int in_other_unit = 0;
    for (int i = 0; i < 200; ++i, value = std::nextafter(value, 2.0)) {
        const std::string text = write(from_m(value), "ft");
        CHECK(in_m(read<Length>(text)) == value);
        if (!text.ends_with(" ft")) ++in_other_unit;
        CHECK((text.ends_with(" ft") || text.ends_with(" m")));
    }
    CHECK(in_other_unit > 0);
    CHECK(write(from_m(std::numeric_limits<double>::max()), "um").ends_with("e+308 m"));
}

// ---- invariants ----------------------------------------------------------------------------------------------------

TEST_CASE("read and write: any double comes back bit for bit, in any unit") {
    std::mt19937_64 random(20240117);
    int tried = 0;
    while (tried < 4000) {
        const double value = std::bit_cast<double>(random());
        if (!std::isfinite(value)) continue;
        ++tried;
        const auto lengths = units_of<Length>();
        const auto pressures = units_of<Pressure>();
        const auto& length = lengths[random() % lengths.size()];
        const auto& pressure = pressures[random() % pressures.size()];
        CHECK(read<Length>(write(from_m(value), length.name)) == from_m(value));
        CHECK(read<Pressure>(write(from_Pa(value), pressure.name)) == from_Pa(value));
    }
}

TEST_CASE("read and write: numbers as people write them come back as they were") {
    for (int thousandths = 1; thousandths < 3000; thousandths += 7) {
        std::string number = std::to_string(1000 + thousandths % 1000).substr(1);
        while (number.ends_with('0')) number.pop_back();
        number = std::to_string(thousandths / 1000) + '.' + number;
        if (number.ends_with('.')) number.pop_back();
        for (const UnitName& unit : units_of<Length>()) {
            const std::string text = number + ' ' + std::string(unit.name);
            CHECK(write(read<Length>(text), unit.name) == text);
        }
    }
}

TEST_CASE("read: the locale of the program does not matter") {
    const std::string before = std::setlocale(LC_ALL, nullptr);
    // Whichever of these the machine has; without any, the check below still has to hold.
    for (const char* name : {"de_DE.UTF-8", "fr_FR.UTF-8", "nb_NO.UTF-8"})
        if (std::setlocale(LC_ALL, name) != nullptr) break;
    CHECK(read<Length>("1.5 m") == 1.5_m);
    CHECK(code_of<Length>("1,5 m") == "quantity.number");
    CHECK(write(1.5_m, "m") == "1.5 m");
    std::setlocale(LC_ALL, before.c_str());
}

TEST_CASE("pattern_of: matches exactly what read accepts") {
    const std::vector<std::string> texts{
        "1.68 m",       "1.68m",       " 1 m ",      "+1 m",       "-1 m",        "--1 m",
        ".5 m",         "5. m",        ". m",        "1e3 m",      "1e m",        "1e+3m",
        "1.2.3 m",      "1,5 m",       "m",          "",           " ",           "1",
        "1 M",          "1 mm2",       "5 ft 6 in",  "-5 ft 6 in", "5 ft -6 in",  "5 ft 12 in",
        "5 ft 11.9 in", "5 ft 012 in", "5 ft 06 in", "5ft 6in",    "5ft6in",      "5.0 ft 6 in",
        "5 ft 6",       "5 ft 6 ft",   "6 in 5 ft",  "5 ft .5 in", "5 ft 6e0 in", "0x10 m",
        "nan m",        "inf m",       "1 m 2 m",    "1 kPa",      "1.5 kN m",    "1.5 kNm",
        "1 N/mm2",      "30 psf",      "7 mil"};
    const std::regex length(pattern_of<Length>());
    const std::regex pressure(pattern_of<Pressure>());
    const std::regex moment(pattern_of<Moment>());
    for (const std::string& text : texts) {
        CAPTURE(text);
        CHECK(std::regex_search(text, length) == (code_of<Length>(text) == "accepted"));
        CHECK(std::regex_search(text, pressure) == (code_of<Pressure>(text) == "accepted"));
        CHECK(std::regex_search(text, moment) == (code_of<Moment>(text) == "accepted"));
    }
}

// ---- errors --------------------------------------------------------------------------------------------------------

TEST_CASE("read: what is no number") {
    for (const char* text :
         {"abc m",   "",          "   ",      "m",      "-",         "- 5 m",     "--5 m",    "+-5 m",
          "1.2.3 m", "1..5 m",    "nan m",    "inf m",  "-inf m",    "0x1p3 m",   "0X10 m",   "1 000 m",
          "1_000 m", "2 m 30 cm", "6 1/2 in", "5-6 in", "\u22125 m", "\u00bd in", "6 in 5 ft"}) {
        CAPTURE(text);
        CHECK(code_of<Length>(text) == "quantity.number");
    }
    CHECK(holds(problem_of<Length>("1,5 m").advice, "use a point"));
    CHECK(code_of<Length>("1,234.5 m") == "quantity.number");
    CHECK(holds(problem_of<Length>("0x10 m").advice, "decimal"));
}

TEST_CASE("read: a number without a unit") {
    for (const char* text : {"1.5", "-3", "1e3", " 7 ", "5 ft 6"}) {
        CAPTURE(text);
        CHECK(code_of<Length>(text) == "quantity.unit.missing");
    }
}

TEST_CASE("read: an unknown unit, and the one that was meant") {
    struct Slip {
        const char* text;
        const char* meant;
    };
    for (const Slip& slip : {Slip{"1.5 kpa", "kPa"}, Slip{"30 PSF", "psf"}, Slip{"30 pst", "psf"},
                             Slip{"9 N/mm\u00b2", "N/mm2"}, Slip{"30 lb/ft2", "psf"}, Slip{"1.5 kN/m^2", "kN/m2"}}) {
        CAPTURE(std::string(slip.text));
        const Problem problem = problem_of<Pressure>(slip.text);
        CHECK(problem.code == "quantity.unit.unknown");
        CHECK(holds(problem.advice, "did you mean \"" + std::string(slip.meant) + '"'));
    }
    CHECK(holds(problem_of<Length>("5 feet").advice, "did you mean \"ft\""));
    CHECK(holds(problem_of<Length>("54\"").advice, "did you mean \"in\""));
    CHECK(holds(problem_of<Length>("180 \u00b5m").advice, "did you mean \"um\""));
    CHECK(holds(problem_of<Force>("135 lb").advice, "did you mean \"lbf\""));
    CHECK(holds(problem_of<Moment>("1.2 kNm").advice, "did you mean \"kN m\""));
    CHECK(holds(problem_of<Angle>("18 degrees").advice, "did you mean \"deg\""));
    CHECK(holds(problem_of<TemperatureDifference>("-12 C").advice, "did you mean \"degC\""));
    CHECK_FALSE(holds(problem_of<Length>("3 furlongs").advice, "did you mean"));
    CHECK(holds(problem_of<Force>("60 kg").advice, "a mass is not a force"));
}

TEST_CASE("read: a unit of another quantity") {
    const Problem problem = problem_of<Pressure>("1.5 kN");
    CHECK(problem.code == "quantity.dimension");
    CHECK(holds(problem.advice, "a unit of a force"));
    CHECK(holds(problem.advice, "an area load or stress is expected"));
    CHECK(holds(problem.advice, "1.5 kPa"));
    CHECK(code_of<Force>("5 ft 6 in") == "quantity.dimension");
    CHECK(code_of<Length>("5 ft2") == "quantity.dimension");
    CHECK(code_of<Moment>("1.2 kN/m") == "quantity.dimension");
    CHECK(code_of<LineLoad>("1.2 kN m") == "quantity.dimension");
    CHECK(code_of<Angle>("18 K") == "quantity.dimension");
    CHECK(code_of<UnitWeight>("9 N/mm2") == "quantity.dimension");
}

TEST_CASE("read: the error carries place and text, and always says what was expected") {
    try {
        (void)read<Length>("abc m", "/boat/length");
        FAIL("accepted");
    } catch (const InputError& error) {
        CHECK(error.where() == "/boat/length");
        CHECK(error.problems().front().value == "abc m");
    }
    for (const char* text : {"", "abc", "1", "1 furlong", "1 kN", "1e999 m", "1,5 m", "5 ft 13 in"}) {
        CAPTURE(text);
        CHECK(holds(problem_of<Length>(text).advice, "a length is expected, such as \"1.68 m\""));
    }
}

TEST_CASE("read: a long or broken text gives a short message") {
    const Problem problem = problem_of<Length>("1 " + std::string(100000, 'x'));
    CHECK(problem.code == "quantity.unit.unknown");
    CHECK(problem.advice.size() < 300);
    CHECK(problem.value.size() < 50);
    std::string accents = "1 ";
    for (int i = 0; i < 100; ++i) accents += "\u00e9";
    const std::string cut = problem_of<Length>(accents).value;
    CHECK(cut.ends_with("\u00e9..."));
}

TEST_CASE("write: an unknown unit, one of another quantity, and a value that is not finite") {
    const auto code = [](Length length, std::string_view unit) {
        try {
            return write(length, unit);
        } catch (const InputError& error) {
            return error.code();
        }
    };
    CHECK(code(1_m, "furlong") == "quantity.unit.unknown");
    CHECK(code(1_m, "") == "quantity.unit.unknown");
    CHECK(code(1_m, "kPa") == "quantity.dimension");
    CHECK(code(from_m(std::numeric_limits<double>::infinity()), "m") == "quantity.range");
    CHECK(code(from_m(std::numeric_limits<double>::quiet_NaN()), "m") == "quantity.range");
}
