// SPDX-License-Identifier: BSD-3-Clause
#include "actions/catalogue/entry.hpp"
#include "coverframe/actions/en1990.hpp"

namespace coverframe::catalogue {

using namespace en1990;

namespace {

const std::string space = "en1990";
const std::string table_b = "Table A1.2(B): 1.5 (University of Siegen lecture script) and 1.35 (eurocode.us) on pages, "
                            "the rest from memory, sure";
constexpr const char* lead_or_psi_0_snow = "1.5 leading, else 1.5 psi_0,S";
constexpr const char* lead_or_psi_0_wind = "1.5 leading, else 1.5 psi_0,W";

const Text leading{"leading", "leading", "the variable action that counts in full", "snow"};
const Text self_weight{"self_weight", "self-weight", "what it does to the effect looked at", "worsens"};
const Text snow_psi_0{"snow_psi_0", "psi_0,S", "combination factor of snow, 0 to 1"};
const Text wind_psi_0{"wind_psi_0", "psi_0,W", "combination factor of wind, 0 to 1; 0.6 recommended"};

using Factors = std::tuple<double, double, double>;
Factors factors_of(const Combination& combination) {
    return {combination.permanent, combination.snow, combination.wind};
}

std::vector<Text> results(const char* permanent, const char* snow, const char* wind) {
    return {{"permanent_factor", "on G", permanent}, {"snow_factor", "on S", snow}, {"wind_factor", "on W", wind}};
}

void add_psi(std::vector<Rule>& rules) {
    add(rules, {space, "snow_psi", clause_A1_2_2, "Combination factors of snow on buildings.", Read::page,
                "Table A1.1 (scribd document 627038731)"},
        {{"country", "country", "nordic: Finland, Iceland, Norway, Sweden", "nordic"},
         {"altitude_m", "A", "above sea level, -500 to 1500"}},
        {{"psi_0", "psi_0", "0.7 nordic or above 1000 m, else 0.5"},
         {"psi_1", "psi_1", "0.5 nordic or above 1000 m, else 0.2"},
         {"psi_2", "psi_2", "0.2 nordic or above 1000 m, else 0"}},
        [](CountryGroup group, Length altitude) {
            const Psi psi = snow_psi_A1_2_2(group, altitude);
            return Factors(psi.combination, psi.frequent, psi.quasi_permanent);
        });
}

void add_strength(std::vector<Rule>& rules) {
    add(rules, {space, "strength", clause_6_4_3_2, "Strength of members, Eq. 6.10.", Read::part, table_b},
        {leading, self_weight, snow_psi_0, wind_psi_0},
        results("1.35 if it worsens, 1.0 if it helps", lead_or_psi_0_snow, lead_or_psi_0_wind),
        [](Leading lead, SelfWeight weight, double snow, double wind) {
            return factors_of(strength_6_10(lead, weight, {.combination = snow}, {.combination = wind}));
        });
    add(rules, {space, "strength_a", clause_6_4_3_2,
                "Strength of members, Eq. 6.10a; the worse of 6.10a and 6.10b counts.", Read::part, table_b},
        {self_weight, snow_psi_0, wind_psi_0},
        results("1.35 if it worsens, 1.0 if it helps", "1.5 psi_0,S", "1.5 psi_0,W"),
        [](SelfWeight weight, double snow, double wind) {
            return factors_of(strength_a_6_10(weight, {.combination = snow}, {.combination = wind}));
        });
    add(rules, {space, "strength_b", clause_6_4_3_2,
                "Strength of members, Eq. 6.10b; the worse of 6.10a and 6.10b counts.", Read::part, table_b},
        {leading, self_weight, snow_psi_0, wind_psi_0},
        results("0.85 x 1.35 if it worsens, 1.0 if it helps", lead_or_psi_0_snow, lead_or_psi_0_wind),
        [](Leading lead, SelfWeight weight, double snow, double wind) {
            return factors_of(strength_b_6_10(lead, weight, {.combination = snow}, {.combination = wind}));
        });
    add(rules, {space, "equilibrium", clause_6_4_3_2,
                "Balance of the whole, Eq. 6.10 with the factors of Table A1.2(A).", Read::sure, "Table A1.2(A)"},
        {leading, self_weight, snow_psi_0, wind_psi_0},
        results("1.1 if it worsens, 0.9 if it helps", lead_or_psi_0_snow, lead_or_psi_0_wind),
        [](Leading lead, SelfWeight weight, double snow, double wind) {
            return factors_of(equilibrium_6_10(lead, weight, {.combination = snow}, {.combination = wind}));
        });
    add(rules, {space, "exceptional_snow", clause_6_4_3_3, "Exceptional snow as an accidental action, Eq. 6.11b.",
                Read::sure, "Table A1.3"},
        {{"accompanying", "accompanying", "which value of wind accompanies, by the National Annex", "frequent"},
         {"wind_psi_1", "psi_1,W", "frequent share of wind, 0 to 1; 0.2 recommended"},
         {"wind_psi_2", "psi_2,W", "quasi-permanent share of wind, 0 to 1; 0 recommended"}},
        results("1.0", "1.0 on s_Ad", "psi_1,W frequent, psi_2,W quasi permanent"),
        [](Accompanying accompanying, double psi_1, double psi_2) {
            return factors_of(
                exceptional_snow_6_11(accompanying, {.frequent = psi_1, .quasi_permanent = psi_2}));
        });
}

void add_serviceability(std::vector<Rule>& rules) {
    const Text snow_psi_1{"snow_psi_1", "psi_1,S", "frequent share of snow, 0 to 1"},
        snow_psi_2{"snow_psi_2", "psi_2,S", "quasi-permanent share of snow, 0 to 1"};
    const Text wind_psi_1{"wind_psi_1", "psi_1,W", "frequent share of wind, 0 to 1; 0.2 recommended"};
    const Text wind_psi_2{"wind_psi_2", "psi_2,W", "quasi-permanent share of wind, 0 to 1; 0 recommended"};
    add(rules, {space, "characteristic", clause_6_5_3, "Serviceability, what must not happen once.", Read::sure,
                "Eq. 6.14b"},
        {leading, snow_psi_0, wind_psi_0}, results("1", "1 leading, else psi_0,S", "1 leading, else psi_0,W"),
        [](Leading lead, double snow, double wind) {
            return factors_of(characteristic_6_14(lead, {.combination = snow}, {.combination = wind}));
        });
    add(rules, {space, "frequent", clause_6_5_3, "Serviceability, what must not happen often.", Read::sure,
                "Eq. 6.15b"},
        {leading, snow_psi_1, snow_psi_2, wind_psi_1, wind_psi_2},
        results("1", "psi_1,S leading, else psi_2,S", "psi_1,W leading, else psi_2,W"),
        [](Leading lead, double snow_1, double snow_2, double wind_1, double wind_2) {
            return factors_of(frequent_6_15(lead, {.frequent = snow_1, .quasi_permanent = snow_2},
                                            {.frequent = wind_1, .quasi_permanent = wind_2}));
        });
    add(rules, {space, "quasi_permanent", clause_6_5_3, "Serviceability, what lasts.", Read::sure, "Eq. 6.16b"},
        {snow_psi_2, wind_psi_2}, results("1", "psi_2,S", "psi_2,W"), [](double snow, double wind) {
            return factors_of(quasi_permanent_6_16({.quasi_permanent = snow}, {.quasi_permanent = wind}));
        });
}

}  // namespace

void add_en1990(std::vector<Rule>& rules) {
    add_psi(rules);
    add_strength(rules);
    add_serviceability(rules);
}

}  // namespace coverframe::catalogue
