// SPDX-License-Identifier: BSD-3-Clause
// Ground snow of National Annexes.
#include <algorithm>
#include <array>

#include "actions/catalogue/elementary.hpp"
#include "actions/catalogue/entry.hpp"
#include "coverframe/actions/national/at.hpp"
#include "coverframe/actions/national/ch.hpp"
#include "coverframe/actions/national/cz.hpp"
#include "coverframe/actions/national/de.hpp"
#include "coverframe/actions/national/fr.hpp"
#include "coverframe/actions/national/it.hpp"
#include "coverframe/actions/national/nl.hpp"
#include "coverframe/actions/national/pl.hpp"
#include "coverframe/actions/national/se.hpp"
#include "coverframe/actions/national/uk.hpp"

namespace coverframe::catalogue {
namespace {

template <class Choice>
constexpr std::size_t number_of(Choice choice) {
    return static_cast<std::size_t>(choice);
}

/// times max(constant + factor q, minimum), in the order of na_de::Zone.
struct FastGermany {
    double times;
    double constant;
    double factor;
    double minimum;
};

constexpr std::array<FastGermany, 5> fast_germany{{{1.0, 0.19, 0.91, 0.65},
                                                   {1.25, 0.19, 0.91, 0.65},
                                                   {1.0, 0.25, 1.91, 0.85},
                                                   {1.25, 0.25, 1.91, 0.85},
                                                   {1.0, 0.31, 2.91, 1.10}}};

constexpr double fast_german_load(na_de::Zone zone, double a) {
    const FastGermany& row = fast_germany[number_of(zone)];
    const double relative = (a + 140.0) / 760.0;
    return row.times * std::max(row.constant + row.factor * relative * relative, row.minimum);
}

constexpr std::array<double, 8> fast_french_base{0.45, 0.45, 0.55, 0.55, 0.65, 0.65, 0.90, 1.40};

/// What France adds for `a` [km].
constexpr double fast_french_addition(na_fr::Region region, double a) {
    const bool e = region == na_fr::Region::e;
    const double low = e ? 1.5 * a - 0.30 : a - 0.20;
    const double middle = e ? 3.5 * a - 1.30 : 1.5 * a - 0.45;
    const double high = e ? 7.0 * a - 4.80 : 3.5 * a - 2.45;
    return a <= 0.2 ? 0.0 : a <= 0.5 ? low : a <= 1.0 ? middle : high;
}

constexpr std::array<double, 4> fast_austria{1.6, 2.0, 3.0, 4.5};
constexpr std::array<double, 5> fast_switzerland{-200.0, 0.0, 200.0, 400.0, 500.0};

/// `low` up to 200 m, above factor [1 + (A/altitude)^2], in the order of na_it::Zone.
struct FastItaly {
    double low;
    double factor;
    double altitude;
};

constexpr std::array<FastItaly, 4> fast_italy{
    {{1.50, 1.39, 728.0}, {1.50, 1.35, 602.0}, {1.00, 0.85, 481.0}, {0.60, 0.51, 481.0}}};

/// max(slope A + constant, minimum), in the order of na_pl::Zone, up to the one that has another formula.
struct FastPoland {
    double slope;
    double constant;
    double minimum;
};

constexpr std::array<FastPoland, 5> fast_poland{
    {{0.007, -1.4, 0.70}, {0.0, 0.9, 0.9}, {0.006, -0.6, 1.2}, {0.0, 1.6, 1.6}, {}}};

const Text zone{"zone", "zone", "snow zone of the map"};
const Text altitude{"altitude_m", "A", "above sea level, 0 to 1500"};

void add_germany(std::vector<Rule>& rules) {
    const std::string formula = "q = ((A + 140)/760)^2; zone 1 max(0.19 + 0.91 q, 0.65), "
                                "zone 2 max(0.25 + 1.91 q, 0.85), zone 3 max(0.31 + 2.91 q, 1.10), "
                                "zones 1a and 2a 1.25 times 1 and 2";
    add(rules, {"na_de", "ground_load", na_de::clause_4_1, "Characteristic ground snow load, Germany.", Read::page,
                "36 loads printed by two county offices; a teaching site prints 0.91 instead of 1.91"},
        {zone, altitude}, {{"ground_snow_kpa", "s_k", formula}},
        [](na_de::Zone z, Length a) { return na_de::ground_load_4_1(z, a); },
        [](na_de::Zone z, double a) { return fast(within(a, 0.0, 1500.0), fast_german_load(z, a)); });
    add(rules, {"na_de", "exceptional_load_lowland", na_de::clause_4_3,
                "Exceptional ground snow load in the North German lowland, accidental.", Read::page,
                "din1055.de, Norddeutsches Tiefland; zones and clause number from memory"},
        {{"zone", "zone", "1 or 2"}, altitude},
        {{"ground_snow_kpa", "s_k", formula}, {"exceptional_snow_kpa", "s_Ad", "2.3 s_k"}},
        [](na_de::Zone z, Length a) {
            return std::tuple(na_de::ground_load_4_1(z, a), na_de::exceptional_load_lowland_4_3(z, a));
        },
        [](na_de::Zone z, double a) {
            const double load = fast_german_load(z, a);
            const double lowland = one_if(z == na_de::Zone::zone_1) + one_if(z == na_de::Zone::zone_2);
            return fast(lowland * within(a, 0.0, 1500.0), load, 2.3 * load);
        });
}

void add_france(std::vector<Rule>& rules) {
    const Text region{"region", "region", "snow region of the map"};
    add(rules, {"na_fr", "ground_load", na_fr::clause_4_1, "Characteristic ground snow load, France.", Read::part,
                "base loads in part on pages (scribd document 627038731), altitude formulas from memory, sure"},
        {region, {"altitude_m", "A", "above sea level, 0 to 2000"}},
        {{"base_load_kpa", "base", "0.45 A1 A2, 0.55 B1 B2, 0.65 C1 C2, 0.90 D, 1.40 E"},
         {"addition_kpa", "addition",
          "a = A/1000; all but E: 0 to 200 m, a - 0.20 to 500 m, 1.5 a - 0.45 to 1000 m, 3.5 a - 2.45 to 2000 m; E: 0, "
          "1.5 a - 0.30, 3.5 a - 1.30, 7 a - 4.80"},
         {"ground_snow_kpa", "s_k", "base + addition"}},
        [](na_fr::Region r, Length a) {
            const na_fr::GroundLoad load = na_fr::ground_load_4_1(r, a);
            return std::tuple(load.base, load.addition, load.load);
        },
        [](na_fr::Region r, double a) {
            const double base = fast_french_base[number_of(r)];
            const double addition = fast_french_addition(r, a / 1000.0);
            return fast(within(a, 0.0, 2000.0), base, addition, base + addition);
        });
    add(rules, {"na_fr", "exceptional_load", na_fr::clause_4_3, "Exceptional ground snow load, France, accidental.",
                Read::part,
                "regions on a page (scribd document 627038731), 1.00 in A2 with an example, the rest in part"},
        {region}, {{"exceptional_snow_kpa", "s_Ad", "1.00 A2 B1, 1.35 B2 C2, 1.80 D; A1, C1 and E refused"}},
        [](na_fr::Region r) { return na_fr::exceptional_load_4_3(r); });
    add(rules, {"na_fr", "low_slope_addition", na_fr::clause_5_2,
                "Addition to the snow load of a low slope or a valley, France.", Read::part,
                "0.2 under 3 % on a solution sheet (a school page has 0.2 under 5 %), 0.1 from memory, sure"},
        {{"slope_deg", "slope", "of the cover or the valley, 0 to 90"}},
        {{"addition_kpa", "addition", "0.2 under 3 %, 0.1 from 3 to 5 %, else 0"}},
        [](Angle slope) { return na_fr::low_slope_addition_5_2(slope); },
        [](double slope) {
            constexpr double three = 0.029991004856877921;  // atan(0.03)
            constexpr double five = 0.049958395721942765;   // atan(0.05)
            const double a = in_rad(from_deg(slope));
            return fast(within(slope, 0.0, 90.0), a < three ? 0.2 : 0.1 * one_if(a <= five));
        });
}

void add_alps(std::vector<Rule>& rules) {
    add(rules, {"na_at", "ground_load", na_at::clause_4_1, "Characteristic ground snow load, Austria before 2022.",
                Read::part, "inferred from eight altitudes on a page (wissenwiki.de, Schneelastzonen)"},
        {zone, altitude},
        {{"ground_snow_kpa", "s_k", "(0.642 Z + 0.009)[1 + (A/728)^2], Z = 1.6 in zone 2*, 2 in 2, 3 in 3, 4.5 in 4"}},
        [](na_at::Zone z, Length a) { return na_at::ground_load_4_1(z, a); },
        [](na_at::Zone z, double a) {
            const double relative = a / 728.0;
            return fast(within(a, 0.0, 1500.0),
                        (0.642 * fast_austria[number_of(z)] + 0.009) * (1.0 + relative * relative));
        });
    add(rules, {"na_ch", "ground_load", na_ch::clause_5, "Characteristic ground snow load, Switzerland.", Read::part,
                "corrections and limit on a page (German Wikipedia), the formula from memory, sure"},
        {{"altitude_m", "h", "above sea level, 0 to 2000"},
         {"correction", "correction", "of the altitude, from the map"}},
        {{"reference_altitude_m", "h_0", "h + correction"},
         {"ground_snow_kpa", "s_k", "max(0.4 [1 + (h_0/350)^2], 0.9)"}},
        [](Length h, na_ch::Correction correction) {
            const na_ch::GroundLoad load = na_ch::ground_load_5(h, correction);
            return std::tuple(load.reference_altitude, load.load);
        },
        [](double h, na_ch::Correction correction) {
            const double h_0 = h + fast_switzerland[number_of(correction)];
            const double relative = h_0 / 350.0;
            return fast(within(h, 0.0, 2000.0), h_0, std::max(0.4 * (1.0 + relative * relative), 0.9));
        });
    add(rules, {"na_it", "ground_load", na_it::clause_3_4_2, "Characteristic ground snow load, Italy.", Read::part,
                "on pages quoting the decree of 2008; that 2018 kept loads and formulas from memory, sure"},
        {zone, altitude},
        {{"ground_snow_kpa", "q_sk",
          "to 200 m 1.50 I, 1.00 II, 0.60 III; above: I alpine 1.39 [1 + (A/728)^2], I mediterranean "
          "1.35 [1 + (A/602)^2], II 0.85 [1 + (A/481)^2], III 0.51 [1 + (A/481)^2]"}},
        [](na_it::Zone z, Length a) { return na_it::ground_load_3_4_2(z, a); },
        [](na_it::Zone z, double a) {
            const FastItaly& row = fast_italy[number_of(z)];
            const double relative = a / row.altitude;
            const double above = row.factor * (1.0 + relative * relative);
            return fast(within(a, 0.0, 1500.0), one_if(a <= 200.0) * row.low + one_if(a > 200.0) * above);
        });
}

void add_others(std::vector<Rule>& rules) {
    add(rules, {"na_cz", "ground_load", na_cz::clause_4_1, "Characteristic ground snow load, Czech Republic.",
                Read::page, "snihnastrese.cz, Mapa snehovych oblasti"},
        {zone}, {{"ground_snow_kpa", "s_k", "0.7, 1.0, 1.5, 2.0, 2.5, 3.0, 4.0 in zones I to VII; VIII refused"}},
        [](na_cz::Zone z) { return na_cz::ground_load_4_1(z); });
    add(rules, {"na_nl", "ground_load", na_nl::clause_4_1, "Characteristic ground snow load, Netherlands.", Read::page,
                "beratung.bauforumstahl.de, column 197"},
        {}, {{"ground_snow_kpa", "s_k", "0.7"}}, [] { return na_nl::ground_load_4_1(); });
    add(rules, {"na_pl", "ground_load", na_pl::clause_4_1, "Characteristic ground snow load, Poland.", Read::page,
                "Silesian province office, Odsniezanie budynkow"},
        {zone, altitude},
        {{"ground_snow_kpa", "s_k",
          "zone 1 max(0.007 A - 1.4, 0.70), 2 0.9, 3 max(0.006 A - 0.6, 1.2), 4 1.6, 5 max(0.93 exp(0.00134 A), 2.0)"}},
        [](na_pl::Zone z, Length a) { return na_pl::ground_load_4_1(z, a); },
        [](na_pl::Zone z, double a) {
            const FastPoland& row = fast_poland[number_of(z)];
            const double straight = std::max(row.slope * a + row.constant, row.minimum);
            const double mountains = std::max(0.93 * fast_exp(0.00134 * a), 2.0);
            return fast(within(a, 0.0, 1500.0), z == na_pl::Zone::zone_5 ? mountains : straight);
        });
    add(rules, {"na_se", "mean_of_zones", na_se::clause_4_1,
                "Ground snow load near the border of a higher zone, Sweden, by choice.", Read::page,
                "boverket.se, Snolast pa mark"},
        {{"site_zone_kpa", "s_site", "load of the zone of the site, to 100"},
         {"neighbour_zone_kpa", "s_beyond", "load of the zone beyond the border, not lower"}},
        {{"ground_snow_kpa", "s_k", "(s_site + s_beyond)/2"}},
        [](Pressure site, Pressure beyond) { return na_se::mean_of_zones_4_1(site, beyond); },
        [](double site, double beyond) {
            return fast(within(site, above_zero, 100.0) * within(beyond, site, 100.0), 0.5 * (site + beyond));
        });
    add(rules, {"na_uk", "ground_load", na_uk::clause_NA_2_8, "Characteristic ground snow load, United Kingdom.",
                Read::page, "a public copy; the first print of 2005 has A + 100, corrected in June 2007"},
        {zone, altitude}, {{"ground_snow_kpa", "s_k", "0.15 + (0.1 Z + 0.05) + (A - 100)/525, Z the zone"}},
        [](na_uk::Zone z, Length a) { return na_uk::ground_load_NA_2_8(z, a); },
        [](na_uk::Zone z, double a) {
            const double number = static_cast<double>(z) + 1.0;
            return fast(within(a, 0.0, 1500.0), 0.15 + (0.1 * number + 0.05) + (a - 100.0) / 525.0);
        });
}

}  // namespace

void add_national(std::vector<Rule>& rules) {
    add_germany(rules);
    add_france(rules);
    add_alps(rules);
    add_others(rules);
}

}  // namespace coverframe::catalogue
