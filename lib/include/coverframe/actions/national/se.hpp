// SPDX-License-Identifier: BSD-3-Clause
// Sweden: EKS, rules of Boverket to SS-EN 1991-1-3, ground snow load of a site near the border of two zones.
//
// The zone is the load: it is read from the map of EKS, which is of 50-year loads. The map of EN 1991-1-3, Annex C,
// must not be used. Read on a page (boverket.se, Snolast pa mark); edition of EKS as read, not stated there.
#pragma once

#include "coverframe/actions/argument.hpp"
#include "coverframe/base/finding.hpp"

namespace coverframe::na_se {

inline const Clause clause_4_1{"EKS, edition as read", "to EN 1991-1-3, 4.1(1)"};

/// Ground snow load of a site in the lower zone, near the border, for an owner who wants more than the minimum.
/// s_k = (zone of the site + zone beyond the border)/2
/// \param site_zone       load of the zone the site lies in [Pa], over 0 to 100 kPa
/// \param neighbour_zone  load of the zone beyond the border [Pa], not lower than that of the site: from the side of
///                        the higher load there is no mean, the higher load is used
/// \return s_k [Pa]
/// Limits: a free choice; the minimum is the load of the zone.
/// Source: EKS, explained on a page (boverket.se, Snolast pa mark), with 2.0 and 2.5 giving 2.25 kN/m2.
/// \throws InputError na_se.site_zone.range, na_se.neighbour_zone.range
[[nodiscard]] constexpr Pressure mean_of_zones_4_1(Pressure site_zone, Pressure neighbour_zone) {
    const double site = argument::within(in_kPa(site_zone), argument::smallest, 100.0,
                                         {"na_se.site_zone.range", "load of the zone of the site", "kPa"});
    argument::within(in_kPa(neighbour_zone), site, 100.0,
                     {"na_se.neighbour_zone.range", "load of the zone beyond the border, which counts only if it is "
                                                    "the higher one,", "kPa"});
    return 0.5 * (site_zone + neighbour_zone);
}

}  // namespace coverframe::na_se
