// SPDX-License-Identifier: BSD-3-Clause
// Ground snow of National Annexes.
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

const Text zone{"zone", "zone", "snow zone of the map"};
const Text altitude{"altitude_m", "A", "above sea level, 0 to 1500"};

void add_germany(std::vector<Rule>& rules) {
    const std::string formula = "q = ((A + 140)/760)^2; zone 1 max(0.19 + 0.91 q, 0.65), "
                                "zone 2 max(0.25 + 1.91 q, 0.85), zone 3 max(0.31 + 2.91 q, 1.10), "
                                "zones 1a and 2a 1.25 times 1 and 2";
    add(rules, {"na_de", "ground_load", na_de::clause_4_1, "Characteristic ground snow load, Germany.", Read::page,
                "36 loads printed by two county offices; a teaching site prints 0.91 instead of 1.91"},
        {zone, altitude}, {{"ground_snow_kpa", "s_k", formula}},
        [](na_de::Zone z, Length a) { return na_de::ground_load_4_1(z, a); });
    add(rules, {"na_de", "exceptional_load_lowland", na_de::clause_4_3,
                "Exceptional ground snow load in the North German lowland, accidental.", Read::page,
                "din1055.de, Norddeutsches Tiefland; zones and clause number from memory"},
        {{"zone", "zone", "1 or 2"}, altitude},
        {{"ground_snow_kpa", "s_k", formula}, {"exceptional_snow_kpa", "s_Ad", "2.3 s_k"}},
        [](na_de::Zone z, Length a) {
            return std::tuple(na_de::ground_load_4_1(z, a), na_de::exceptional_load_lowland_4_3(z, a));
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
        [](Angle slope) { return na_fr::low_slope_addition_5_2(slope); });
}

void add_alps(std::vector<Rule>& rules) {
    add(rules, {"na_at", "ground_load", na_at::clause_4_1, "Characteristic ground snow load, Austria before 2022.",
                Read::part, "inferred from eight altitudes on a page (wissenwiki.de, Schneelastzonen)"},
        {zone, altitude},
        {{"ground_snow_kpa", "s_k", "(0.642 Z + 0.009)[1 + (A/728)^2], Z = 1.6 in zone 2*, 2 in 2, 3 in 3, 4.5 in 4"}},
        [](na_at::Zone z, Length a) { return na_at::ground_load_4_1(z, a); });
    add(rules, {"na_ch", "ground_load", na_ch::clause_5, "Characteristic ground snow load, Switzerland.", Read::part,
                "corrections and limit on a page (German Wikipedia), the formula from memory, sure"},
        {{"altitude_m", "h", "above sea level, 0 to 2000"},
         {"correction", "correction", "of the altitude, from the map"}},
        {{"reference_altitude_m", "h_0", "h + correction"},
         {"ground_snow_kpa", "s_k", "max(0.4 [1 + (h_0/350)^2], 0.9)"}},
        [](Length h, na_ch::Correction correction) {
            const na_ch::GroundLoad load = na_ch::ground_load_5(h, correction);
            return std::tuple(load.reference_altitude, load.load);
        });
    add(rules, {"na_it", "ground_load", na_it::clause_3_4_2, "Characteristic ground snow load, Italy.", Read::part,
                "on pages quoting the decree of 2008; that 2018 kept loads and formulas from memory, sure"},
        {zone, altitude},
        {{"ground_snow_kpa", "q_sk",
          "to 200 m 1.50 I, 1.00 II, 0.60 III; above: I alpine 1.39 [1 + (A/728)^2], I mediterranean "
          "1.35 [1 + (A/602)^2], II 0.85 [1 + (A/481)^2], III 0.51 [1 + (A/481)^2]"}},
        [](na_it::Zone z, Length a) { return na_it::ground_load_3_4_2(z, a); });
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
        [](na_pl::Zone z, Length a) { return na_pl::ground_load_4_1(z, a); });
    add(rules, {"na_se", "mean_of_zones", na_se::clause_4_1,
                "Ground snow load near the border of a higher zone, Sweden, by choice.", Read::page,
                "boverket.se, Snolast pa mark"},
        {{"site_zone_kpa", "s_site", "load of the zone of the site, to 100"},
         {"neighbour_zone_kpa", "s_beyond", "load of the zone beyond the border, not lower"}},
        {{"ground_snow_kpa", "s_k", "(s_site + s_beyond)/2"}},
        [](Pressure site, Pressure beyond) { return na_se::mean_of_zones_4_1(site, beyond); });
    add(rules, {"na_uk", "ground_load", na_uk::clause_NA_2_8, "Characteristic ground snow load, United Kingdom.",
                Read::page, "a public copy; the first print of 2005 has A + 100, corrected in June 2007"},
        {zone, altitude}, {{"ground_snow_kpa", "s_k", "0.15 + (0.1 Z + 0.05) + (A - 100)/525, Z the zone"}},
        [](na_uk::Zone z, Length a) { return na_uk::ground_load_NA_2_8(z, a); });
}

}  // namespace

void add_national(std::vector<Rule>& rules) {
    add_germany(rules);
    add_france(rules);
    add_alps(rules);
    add_others(rules);
}

}  // namespace coverframe::catalogue
