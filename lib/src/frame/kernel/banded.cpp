// SPDX-License-Identifier: BSD-3-Clause
#include "banded.hpp"

#include <algorithm>
#include <cmath>
#include <cstring>
#include <numeric>
#include <utility>

#include "frame/kernel/numbers.hpp"

namespace coverframe::kernel {

namespace {

using Eigen::Index;
using Eigen::VectorXd;

/// Zeros after each column and after a right-hand side.
constexpr int padding = lanes - 1;
/// Groups of four rows that are kept in registers while the columns before are taken off.
constexpr int groups = 4;

std::size_t index(int i) { return static_cast<std::size_t>(i); }

/// Rows rows, or four right-hand sides, side by side: the bare vector, which is kept in registers where arrays of it
/// are
using Rows = Four::Vector;

COVERFRAME_INLINE void load(Rows& rows, const double* from) { std::memcpy(&rows, from, sizeof(Rows)); }
COVERFRAME_INLINE void store(const Rows& rows, double* to) { std::memcpy(to, &rows, sizeof(Rows)); }

COVERFRAME_INLINE double sum_of(const Rows& a) { return (a[0] + a[2]) + (a[1] + a[3]); }

/// What the kernels work on.
struct Work {
    const Band& band;
    double* factor;
    double* pivot;
    double* inverse;
};

/// Takes the columns k to before `end` off `count` groups of rows that start at row `top` of column `t`.
template <int count>
COVERFRAME_INLINE void take_columns(const Work& w, int t, int top, int& k, int end, Rows* rows) {
    for (; k < end; ++k) {
        const double* column = w.factor + (w.band.diagonal(k) - k);
        const double factor = column[t] * w.pivot[k];
        for (int g = 0; g < count; ++g) {
            Rows part;
            load(part, column + top + lanes * g);
            rows[g] -= factor * part;
        }
    }
}

/// First column from k on, before t, that reaches `row`; t if there is none.
COVERFRAME_INLINE int column_reaching(const Band& band, int k, int t, int row) {
    return row < band.size() ? std::clamp(band.first(row), k, t) : t;
}

COVERFRAME_INLINE void eliminate_column(const Work& w, int t) {
    const Band& band = w.band;
    double* column = w.factor + (band.diagonal(t) - t);
    for (int top = t; top <= band.reach(t); top += lanes * groups) {
        const int used = std::min(groups, (band.reach(t) - top + lanes) / lanes);
        Rows rows[groups] = {};
        for (int g = 0; g < used; ++g) load(rows[g], column + top + lanes * g);
        // Columns further to the left reach fewer of these rows.
        int k = column_reaching(band, band.first(t), t, top);
        take_columns<1>(w, t, top, k, column_reaching(band, k, t, top + lanes), rows);
        take_columns<2>(w, t, top, k, column_reaching(band, k, t, top + 2 * lanes), rows);
        take_columns<3>(w, t, top, k, column_reaching(band, k, t, top + 3 * lanes), rows);
        take_columns<4>(w, t, top, k, t, rows);
        for (int g = 0; g < used; ++g) store(rows[g], column + top + lanes * g);
    }
}

/// The factor in place. Returns the number of pivots found before one that cannot be divided by.
COVERFRAME_INLINE int factorise_all(const Work& w) {
    for (int t = 0; t < w.band.size(); ++t) {
        eliminate_column(w, t);
        double* column = w.factor + w.band.diagonal(t);
        const double pivot = column[0];
        if (pivot == 0 || !std::isfinite(pivot)) return t;
        const double inverse = 1 / pivot;
        w.pivot[t] = pivot;
        w.inverse[t] = inverse;
        const int below = w.band.reach(t) - t;
        for (int i = 1; i <= below; ++i) column[i] *= inverse;
    }
    return w.band.size();
}

/// `b` is followed by zeros.
COVERFRAME_INLINE void solve_one(const Work& w, double* b) {
    const Band& band = w.band;
    const int n = band.size();
    for (int t = 0; t < n; ++t) {
        const double* column = w.factor + (band.diagonal(t) - t);
        const double known = b[t];
        for (int i = t + 1; i <= band.reach(t); i += lanes) {
            Rows rows;
            Rows part;
            load(rows, b + i);
            load(part, column + i);
            rows -= known * part;
            store(rows, b + i);
        }
    }
    for (int t = n - 1; t >= 0; --t) {
        const double* column = w.factor + (band.diagonal(t) - t);
        Rows sum = {};
        for (int i = t + 1; i <= band.reach(t); i += lanes) {
            Rows known;
            Rows part;
            load(known, b + i);
            load(part, column + i);
            sum += part * known;
        }
        b[t] = b[t] * w.inverse[t] - sum_of(sum);
    }
}

/// Several right-hand sides at a time, `fours` times four, `stride` numbers from row to row.
template <int fours>
COVERFRAME_INLINE void solve_several(const Work& w, double* b, Index stride) {
    const Band& band = w.band;
    const int n = band.size();
    for (int t = 0; t < n; ++t) {
        const double* column = w.factor + (band.diagonal(t) - t);
        Rows known[fours];
        for (int f = 0; f < fours; ++f) load(known[f], b + t * stride + lanes * f);
        for (int i = t + 1; i <= band.reach(t); ++i) {
            for (int f = 0; f < fours; ++f) {
                Rows row;
                load(row, b + i * stride + lanes * f);
                row -= column[i] * known[f];
                store(row, b + i * stride + lanes * f);
            }
        }
    }
    for (int t = n - 1; t >= 0; --t) {
        const double* column = w.factor + (band.diagonal(t) - t);
        // Summed up as solve_one does: every fourth entry together, then the four.
        Rows sums[lanes][fours] = {};
        for (int i = t + 1; i <= band.reach(t); i += lanes) {
            const int together = std::min(lanes, band.reach(t) - i + 1);
            for (int s = 0; s < together; ++s) {
                for (int f = 0; f < fours; ++f) {
                    Rows known;
                    load(known, b + (i + s) * stride + lanes * f);
                    sums[s][f] += column[i + s] * known;
                }
            }
        }
        for (int f = 0; f < fours; ++f) {
            Rows own;
            load(own, b + t * stride + lanes * f);
            own = own * w.inverse[t] - ((sums[0][f] + sums[2][f]) + (sums[1][f] + sums[3][f]));
            store(own, b + t * stride + lanes * f);
        }
    }
}

int factorise_anywhere(const Work& w) { return factorise_all(w); }
void solve_one_anywhere(const Work& w, double* b) { solve_one(w, b); }
void solve_four_anywhere(const Work& w, double* b, Index stride) { solve_several<1>(w, b, stride); }
void solve_eight_anywhere(const Work& w, double* b, Index stride) { solve_several<2>(w, b, stride); }

struct Kernels {
    int (*factorise)(const Work&) = factorise_anywhere;
    void (*solve_one)(const Work&, double*) = solve_one_anywhere;
    void (*solve_four)(const Work&, double*, Index) = solve_four_anywhere;
    void (*solve_eight)(const Work&, double*, Index) = solve_eight_anywhere;
};

#ifdef COVERFRAME_AVX2
COVERFRAME_AVX2 int factorise_avx2(const Work& w) { return factorise_all(w); }
COVERFRAME_AVX2 void solve_one_avx2(const Work& w, double* b) { solve_one(w, b); }
COVERFRAME_AVX2 void solve_four_avx2(const Work& w, double* b, Index stride) { solve_several<1>(w, b, stride); }
COVERFRAME_AVX2 void solve_eight_avx2(const Work& w, double* b, Index stride) { solve_several<2>(w, b, stride); }
#endif

Kernels kernels() {
#ifdef COVERFRAME_AVX2
    if (has_avx2()) return {factorise_avx2, solve_one_avx2, solve_four_avx2, solve_eight_avx2};
#endif
    return {};
}

using Graph = std::vector<std::vector<int>>;

Graph graph_of(int nodes, const std::vector<std::array<int, 2>>& links) {
    Graph graph(index(nodes));
    for (const auto& [a, b] : links) {
        if (a == b) continue;
        graph[index(a)].push_back(b);
        graph[index(b)].push_back(a);
    }
    for (std::vector<int>& near : graph) {
        std::sort(near.begin(), near.end());
        near.erase(std::unique(near.begin(), near.end()), near.end());
    }
    return graph;
}

struct Levels {
    std::vector<int> order;  ///< nodes from the root outwards, nearer ones and those of lower degree first
    std::vector<int> level;  ///< of each node; -1 where the root does not lead
};

Levels levels_from(const Graph& graph, int root) {
    Levels l{{root}, std::vector<int>(graph.size(), -1)};
    l.level[index(root)] = 0;
    for (std::size_t done = 0; done < l.order.size(); ++done) {
        const int node = l.order[done];
        const auto fresh = static_cast<std::ptrdiff_t>(l.order.size());
        for (const int next : graph[index(node)]) {
            if (l.level[index(next)] >= 0) continue;
            l.level[index(next)] = l.level[index(node)] + 1;
            l.order.push_back(next);
        }
        std::stable_sort(l.order.begin() + fresh, l.order.end(),
                         [&](int a, int b) { return graph[index(a)].size() < graph[index(b)].size(); });
    }
    return l;
}

/// Levels of a part of the graph from one of its ends.
Levels levels_from_end(const Graph& graph, int root) {
    Levels best = levels_from(graph, root);
    while (true) {
        const int depth = best.level[index(best.order.back())];
        int end = best.order.back();
        for (const int node : best.order) {
            const bool furthest = best.level[index(node)] == depth;
            if (furthest && graph[index(node)].size() < graph[index(end)].size()) end = node;
        }
        Levels next = levels_from(graph, end);
        if (next.level[index(next.order.back())] <= depth) return best;
        best = std::move(next);
    }
}

}  // namespace

std::vector<int> reverse_cuthill_mckee(int nodes, const std::vector<std::array<int, 2>>& links) {
    const Graph graph = graph_of(nodes, links);
    std::vector<int> order;
    std::vector<bool> done(index(nodes), false);
    for (int root = 0; root < nodes; ++root) {
        if (done[index(root)]) continue;
        for (const int node : levels_from_end(graph, root).order) {
            done[index(node)] = true;
            order.push_back(node);
        }
    }
    std::reverse(order.begin(), order.end());
    return order;
}

Band::Band(const std::vector<int>& last) : reach_(last), first_(last.size()), start_(last.size()) {
    int furthest = 0;
    int row = 0;
    for (int t = 0; t < size(); ++t) {
        furthest = std::max({furthest, t, last[index(t)]});
        reach_[index(t)] = furthest;
        start_[index(t)] = length_;
        length_ += furthest - t + 1 + padding;
        for (; row <= furthest; ++row) first_[index(row)] = t;
    }
}

int Band::half_width() const {
    int width = 0;
    for (int t = 0; t < size(); ++t) width = std::max(width, reach(t) - t);
    return width;
}

double Band::work() const {
    double sum = 0;
    for (int t = 0; t < size(); ++t) {
        const double below = reach(t) - t;
        sum += below * (below + 3) / 2;
    }
    return sum;
}

Eigen::MatrixXd Band::dense(const VectorXd& values) const {
    Eigen::MatrixXd full = Eigen::MatrixXd::Zero(size(), size());
    for (int t = 0; t < size(); ++t) {
        for (int i = t; i <= reach(t); ++i) full(i, t) = full(t, i) = values(at(i, t));
    }
    return full;
}

BandedLDLT::BandedLDLT(Band band)
    : band_(std::move(band)),
      factor_(band_.length()),
      pivot_(band_.size()),
      inverse_(band_.size()),
      side_(VectorXd::Zero(band_.size() + padding)) {}

bool BandedLDLT::factorise(const VectorXd& values, const VectorXd& scale, double shift) {
    factor_ = values;
    if (shift != 0) {
        for (int t = 0; t < band_.size(); ++t) factor_(band_.diagonal(t)) += shift * scale(t);
    }
    const int found = kernels().factorise({band_, factor_.data(), pivot_.data(), inverse_.data()});
    negative_ = 0;
    smallest_ratio_ = std::numeric_limits<double>::infinity();
    if (found < band_.size()) {
        smallest_ratio_ = 0;
        return false;
    }
    for (int t = 0; t < band_.size(); ++t) {
        negative_ += pivot_(t) < 0 ? 1 : 0;
        smallest_ratio_ = std::min(smallest_ratio_, pivot_(t) / scale(t));
    }
    return true;
}

void BandedLDLT::solve(VectorXd& b) {
    const Work work{band_, factor_.data(), pivot_.data(), inverse_.data()};
    side_.head(band_.size()) = b;
    kernels().solve_one(work, side_.data());
    b = side_.head(band_.size());
}

void BandedLDLT::solve(Sides& b) {
    const Work work{band_, factor_.data(), pivot_.data(), inverse_.data()};
    const Index sides = b.cols();
    Index done = 0;
    for (; done + 2 * lanes <= sides; done += 2 * lanes) kernels().solve_eight(work, b.data() + done, sides);
    for (; done + lanes <= sides; done += lanes) kernels().solve_four(work, b.data() + done, sides);
    for (; done < sides; ++done) {
        side_.head(band_.size()) = b.col(done);
        kernels().solve_one(work, side_.data());
        b.col(done) = side_.head(band_.size());
    }
}

}  // namespace coverframe::kernel
