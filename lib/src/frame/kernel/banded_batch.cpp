// SPDX-License-Identifier: BSD-3-Clause
#include "banded_batch.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace coverframe::kernel {

namespace {

using Rows = Four::Vector;

/// Rows worked on together while the columns before are taken off: with two registers a row, half of what there is.
constexpr int block = 4;

COVERFRAME_INLINE void load(Rows& rows, const double* from) { std::memcpy(&rows, from, sizeof(Rows)); }
COVERFRAME_INLINE void store(const Rows& rows, double* to) { std::memcpy(to, &rows, sizeof(Rows)); }

/// One number of every matrix.
struct Eight {
    Rows low, high;
};
COVERFRAME_INLINE void load(Eight& eight, const double* from) {
    load(eight.low, from);
    load(eight.high, from + lanes);
}
COVERFRAME_INLINE void store(const Eight& eight, double* to) {
    store(eight.low, to);
    store(eight.high, to + lanes);
}

struct Work {
    const Band& band;
    double* factor;
    double* pivot;
    double* inverse;

    [[nodiscard]] double* column(int t) const { return factor + batch * (band.diagonal(t) - t); }
};

/// Takes the columns before `t` off `count` rows from `top` of column `t`.
template <int count>
COVERFRAME_INLINE void take_columns(const Work& w, int t, int top) {
    Rows low[count], high[count];
    double* own = w.column(t);
    for (int i = 0; i < count; ++i) {
        load(low[i], own + batch * (top + i));
        load(high[i], own + batch * (top + i) + lanes);
    }
    for (int k = std::max(w.band.first(t), w.band.first(top)); k < t; ++k) {
        const double* column = w.column(k);
        Eight l, d;
        load(l, column + batch * t);
        load(d, w.pivot + batch * k);
        const Rows factor_low = l.low * d.low;
        const Rows factor_high = l.high * d.high;
        // Rows past the reach of the column: the padding, or the column that follows, must not be taken.
        const int reached = std::min(count, w.band.reach(k) - top + 1);
        for (int i = 0; i < count; ++i) {
            if (i >= reached) break;
            Eight part;
            load(part, column + batch * (top + i));
            low[i] -= factor_low * part.low;
            high[i] -= factor_high * part.high;
        }
    }
    for (int i = 0; i < count; ++i) {
        store(low[i], own + batch * (top + i));
        store(high[i], own + batch * (top + i) + lanes);
    }
}

COVERFRAME_INLINE void eliminate_column(const Work& w, int t) {
    int top = t;
    const int end = w.band.reach(t) + 1;
    for (; top + block <= end; top += block) take_columns<block>(w, t, top);
    if (end - top == 3) take_columns<3>(w, t, top);
    if (end - top == 2) take_columns<2>(w, t, top);
    if (end - top == 1) take_columns<1>(w, t, top);
}

COVERFRAME_INLINE void factorise_all(const Work& w) {
    for (int t = 0; t < w.band.size(); ++t) {
        eliminate_column(w, t);
        double* own = w.column(t);
        Eight pivot;
        load(pivot, own + batch * t);
        const Eight inverse{1 / pivot.low, 1 / pivot.high};
        store(pivot, w.pivot + batch * t);
        store(inverse, w.inverse + batch * t);
        for (int i = t + 1; i <= w.band.reach(t); ++i) {
            Eight entry;
            load(entry, own + batch * i);
            store(Eight{entry.low * inverse.low, entry.high * inverse.high}, own + batch * i);
        }
    }
}

COVERFRAME_INLINE void solve_all(const Work& w, double* b) {
    const Band& band = w.band;
    const int n = band.size();
    for (int t = 0; t < n; ++t) {
        const double* own = w.column(t);
        Eight known;
        load(known, b + batch * t);
        for (int i = t + 1; i <= band.reach(t); ++i) {
            Eight row, part;
            load(row, b + batch * i);
            load(part, own + batch * i);
            store(Eight{row.low - known.low * part.low, row.high - known.high * part.high}, b + batch * i);
        }
    }
    for (int t = n - 1; t >= 0; --t) {
        const double* own = w.column(t);
        // Summed up as BandedLDLT does: every fourth entry together, then the four.
        Rows low[lanes] = {}, high[lanes] = {};
        for (int i = t + 1; i <= band.reach(t); i += lanes) {
            const int together = std::min(lanes, band.reach(t) - i + 1);
            for (int s = 0; s < lanes; ++s) {
                if (s >= together) break;
                Eight known, part;
                load(known, b + batch * (i + s));
                load(part, own + batch * (i + s));
                low[s] += part.low * known.low;
                high[s] += part.high * known.high;
            }
        }
        Eight side, inverse;
        load(side, b + batch * t);
        load(inverse, w.inverse + batch * t);
        side.low = side.low * inverse.low - ((low[0] + low[2]) + (low[1] + low[3]));
        side.high = side.high * inverse.high - ((high[0] + high[2]) + (high[1] + high[3]));
        store(side, b + batch * t);
    }
}

void factorise_anywhere(const Work& w) { factorise_all(w); }
void solve_anywhere(const Work& w, double* b) { solve_all(w, b); }
#ifdef COVERFRAME_AVX2
COVERFRAME_AVX2 void factorise_avx2(const Work& w) { factorise_all(w); }
COVERFRAME_AVX2 void solve_avx2(const Work& w, double* b) { solve_all(w, b); }
#else
void factorise_avx2(const Work& w) { factorise_all(w); }
void solve_avx2(const Work& w, double* b) { solve_all(w, b); }
#endif

std::size_t numbers(Eigen::Index count) { return static_cast<std::size_t>(batch * count); }

}  // namespace

BatchLDLT::BatchLDLT(Band band)
    : band_(std::move(band)),
      factor_(numbers(band_.length())),
      pivot_(numbers(band_.size())),
      inverse_(numbers(band_.size())) {}

void BatchLDLT::factorise(const double* values, const double* scale) {
    std::copy_n(values, factor_.size(), factor_.begin());
    const Work work{band_, factor_.data(), pivot_.data(), inverse_.data()};
    (has_avx2() ? factorise_avx2 : factorise_anywhere)(work);
    smallest_ratio_.fill(std::numeric_limits<double>::infinity());
    for (std::size_t i = 0; i < pivot_.size(); ++i) {
        double& smallest = smallest_ratio_[i % batch];
        const bool good = pivot_[i] > 0 && std::isfinite(pivot_[i]);
        smallest = good ? std::min(smallest, pivot_[i] / scale[i]) : 0;
    }
}

void BatchLDLT::solve(double* b) {
    (has_avx2() ? solve_avx2 : solve_anywhere)({band_, factor_.data(), pivot_.data(), inverse_.data()}, b);
}

}  // namespace coverframe::kernel
