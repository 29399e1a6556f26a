// SPDX-License-Identifier: BSD-3-Clause
// The words a plan file has for choices.
#pragma once

#include <span>
#include <string_view>

#include "coverframe/plan/plan.hpp"

namespace coverframe::plan_detail {

template <class Choice>
struct Word {
    Choice choice;
    std::string_view text;
};

namespace words {

inline constexpr Word<UnitsShown> units[]{{UnitsShown::si, "si"}, {UnitsShown::us, "us"}};
inline constexpr Word<SnowDocument> snow_documents[]{{SnowDocument::asce7_10, name_of(SnowDocument::asce7_10)},
                                                     {SnowDocument::asce7_16, name_of(SnowDocument::asce7_16)},
                                                     {SnowDocument::asce7_22, name_of(SnowDocument::asce7_22)},
                                                     {SnowDocument::nbc2015, name_of(SnowDocument::nbc2015)},
                                                     {SnowDocument::nbc2020, name_of(SnowDocument::nbc2020)},
                                                     {SnowDocument::en1991_1_3, name_of(SnowDocument::en1991_1_3)}};
inline constexpr Word<TimberDocument> timber_documents[]{
    {TimberDocument::nds2018, name_of(TimberDocument::nds2018)},
    {TimberDocument::en1995_1_1, name_of(TimberDocument::en1995_1_1)}};
inline constexpr Word<Surface> surfaces[]{{Surface::other, "other"}, {Surface::slippery, "slippery"}};
inline constexpr Word<ImportanceCategory> importance_categories[]{{ImportanceCategory::low, "low"},
                                                                  {ImportanceCategory::normal, "normal"},
                                                                  {ImportanceCategory::high, "high"},
                                                                  {ImportanceCategory::post_disaster, "post-disaster"}};
inline constexpr Word<GableFraming> gable_framings[]{{GableFraming::other, "other"},
                                                     {GableFraming::simple_rafters, "simple rafters"}};
inline constexpr Word<UnbalancedWindow> unbalanced_windows[]{{UnbalancedWindow::carried_on, "carried on"},
                                                             {UnbalancedWindow::as_written, "as written"}};
inline constexpr Word<SlidSnow> slid_snows[]{{SlidSnow::caught, "caught"}, {SlidSnow::falls_clear, "falls clear"}};
inline constexpr Word<Hold> holds[]{{Hold::pinned, "pinned"}, {Hold::sliding, "sliding"}, {Hold::free, "free"}};
inline constexpr Word<Sides> sides[]{{Sides::both, "both"}, {Sides::port, "port"}, {Sides::starboard, "starboard"}};
inline constexpr Word<NeighbourSide> neighbour_sides[]{{NeighbourSide::port, "port"},
                                                       {NeighbourSide::starboard, "starboard"},
                                                       {NeighbourSide::bow, "bow"},
                                                       {NeighbourSide::stern, "stern"}};
inline constexpr Word<FoundKind> found_kinds[]{
    {FoundKind::pole, "pole"}, {FoundKind::upright, "upright"}, {FoundKind::strap, "strap"}};
inline constexpr std::string_view risk_categories[]{"I", "II", "III", "IV"};
inline constexpr std::string_view structures[]{"ridge", "found"};  // alternatives of Support::structure
inline constexpr std::string_view ridge_kinds[]{"pole", "strap"};  // alternatives of Ridge::member

}  // namespace words

}  // namespace coverframe::plan_detail
