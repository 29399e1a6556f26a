// SPDX-License-Identifier: BSD-3-Clause
// L D L^T of `batch` matrices with one band (banded.hpp), side by side: the number at one place of all of them, then
// that at the next place. Each gives the bits that BandedLDLT gives it alone: the sums have the same order, and a
// column that does not reach a row takes nothing off it.
//
// Why. Alone, a narrow band fills no more than a part of a register; side by side every operation is one of eight
// matrices. Eight numbers are two registers: a vector type wider than the register is compiled badly.
#pragma once

#include <array>
#include <vector>

#include "frame/kernel/assembly_kernel.hpp"
#include "frame/kernel/banded.hpp"

namespace coverframe::kernel {

class BatchLDLT {
public:
    explicit BatchLDLT(Band band);

    /// Factorises the matrices as they are, without shift.
    /// \param values  entries, laid out by the band
    /// \param scale   what each pivot is measured against, positive
    void factorise(const double* values, const double* scale);
    /// As BandedLDLT where that is positive; 0 where there is no factor or not all pivots are positive.
    [[nodiscard]] double smallest_ratio(int which) const { return smallest_ratio_[static_cast<std::size_t>(which)]; }
    /// Puts solutions in the place of right-hand sides; where there is no factor, anything.
    void solve(double* b);

private:
    Band band_;
    std::vector<double> factor_, pivot_, inverse_;
    std::array<double, batch> smallest_ratio_{};
};

}  // namespace coverframe::kernel
