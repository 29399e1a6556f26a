// SPDX-License-Identifier: BSD-3-Clause
#include "film/kernel/front_factor.hpp"

#include <Eigen/OrderingMethods>
#include <algorithm>
#include <limits>
#include <numeric>

#include "film/kernel/dense_front.hpp"

namespace coverframe::kernel {

namespace {

using Eigen::Index;
using Sparse = Eigen::SparseMatrix<double>;

std::size_t at(Index i) { return static_cast<std::size_t>(i); }

/// Lower triangle with unknown i in place order[i]; the values are those of no matrix.
Sparse reordered(const Sparse& lower, const std::vector<int>& order) {
    Eigen::PermutationMatrix<Eigen::Dynamic, Eigen::Dynamic, int> permutation(lower.cols());
    for (Index i = 0; i < lower.cols(); ++i) permutation.indices()(i) = order[at(i)];
    Sparse result(lower.rows(), lower.cols());
    result.selfadjointView<Eigen::Lower>() = lower.selfadjointView<Eigen::Lower>().twistedBy(permutation);
    return result;
}

/// Columns of the entries left of the diagonal, row by row.
std::vector<std::vector<int>> rows_of(const Sparse& lower) {
    std::vector<std::vector<int>> rows(at(lower.rows()));
    for (int column = 0; column < lower.outerSize(); ++column) {
        for (Sparse::InnerIterator entry(lower, column); entry; ++entry) {
            if (entry.row() > column) rows[at(entry.row())].push_back(column);
        }
    }
    return rows;
}

/// The column that each one is eliminated into: the first row it holds in L (Liu's algorithm); -1: none.
std::vector<int> parents_of(const std::vector<std::vector<int>>& rows) {
    std::vector<int> parent(rows.size(), -1), top(rows.size(), -1);
    for (std::size_t row = 0; row < rows.size(); ++row) {
        for (int column : rows[row]) {
            while (column >= 0 && column < static_cast<int>(row)) {
                const int next = top[at(column)];
                top[at(column)] = static_cast<int>(row);
                if (next < 0) parent[at(column)] = static_cast<int>(row);
                column = next;
            }
        }
    }
    return parent;
}

/// Place of each column in an order in which all that is eliminated into a column comes right before it.
std::vector<int> postorder(const std::vector<int>& parent) {
    const std::size_t size = parent.size();
    std::vector<int> child(size, -1), sibling(size, -1), place(size, -1), path;
    for (std::size_t i = size; i-- > 0;) {
        if (parent[i] < 0) continue;
        sibling[i] = child[at(parent[i])];
        child[at(parent[i])] = static_cast<int>(i);
    }
    int next = 0;
    for (std::size_t root = 0; root < size; ++root) {
        if (parent[root] >= 0) continue;
        path.push_back(static_cast<int>(root));
        while (!path.empty()) {
            const int here = path.back();
            if (child[at(here)] >= 0) {
                path.push_back(child[at(here)]);
                child[at(here)] = sibling[at(path.back())];
                continue;
            }
            place[at(here)] = next++;
            path.pop_back();
        }
    }
    return place;
}

/// Number of entries in each column of L, the diagonal included.
std::vector<int> counts_of(const std::vector<std::vector<int>>& rows, const std::vector<int>& parent) {
    std::vector<int> count(rows.size(), 1), seen(rows.size(), -1);
    for (std::size_t row = 0; row < rows.size(); ++row) {
        seen[row] = static_cast<int>(row);
        for (int column : rows[row]) {
            for (; seen[at(column)] != static_cast<int>(row); column = parent[at(column)]) {
                seen[at(column)] = static_cast<int>(row);
                ++count[at(column)];
            }
        }
    }
    return count;
}

/// Whether a group of so many columns, of whose entries such a share would be zero, is better than two.
bool worth_joining(Index columns, double zeros) {
    return columns <= 4 || (columns <= 16 && zeros < 0.8) || (columns <= 48 && zeros < 0.1) || zeros < 0.05;
}

double entries_of(double columns, double height) { return columns * height - 0.5 * columns * (columns - 1); }

/// First columns of the groups, and the number of columns at the end.
std::vector<Index> group_columns(const std::vector<int>& parent, const std::vector<int>& count) {
    struct Open {
        Index begin;
        double entries;  // that are not zero
    };
    std::vector<Open> open;
    const auto size = static_cast<Index>(parent.size());
    for (Index j = 0; j < size;) {
        Index end = j + 1;
        while (end < size && parent[at(end - 1)] == end && count[at(end)] == count[at(end - 1)] - 1) ++end;
        Open now{j, entries_of(static_cast<double>(end - j), count[at(j)])};
        while (!open.empty()) {
            // The group before goes in here if it is eliminated into this one.
            const int into = parent[at(now.begin - 1)];
            if (into < now.begin || into >= end) break;
            const double columns = static_cast<double>(end - open.back().begin);
            const double height = static_cast<double>(end - open.back().begin - 1 + count[at(end - 1)]);
            const double held = now.entries + open.back().entries;
            if (!worth_joining(end - open.back().begin, 1 - held / entries_of(columns, height))) break;
            now = {open.back().begin, held};
            open.pop_back();
        }
        open.push_back(now);
        j = end;
    }
    std::vector<Index> begins;
    for (const Open& group : open) begins.push_back(group.begin);
    begins.push_back(size);
    return begins;
}

}  // namespace

void FrontFactor::analyse(const Sparse& lower) {
    groups_.clear();
    if (lower.cols() == 0) return;
    Eigen::PermutationMatrix<Eigen::Dynamic, Eigen::Dynamic, int> least_fill;
    Eigen::AMDOrdering<int>()(lower.selfadjointView<Eigen::Lower>(), least_fill);
    place_.resize(at(lower.cols()));
    for (Index i = 0; i < lower.cols(); ++i) place_[at(least_fill.indices()(i))] = static_cast<int>(i);
    const std::vector<int> after = postorder(parents_of(rows_of(reordered(lower, place_))));
    for (int& place : place_) place = after[at(place)];
    const Sparse ordered = reordered(lower, place_);
    const std::vector<std::vector<int>> rows = rows_of(ordered);
    const std::vector<int> parent = parents_of(rows);
    const std::vector<Index> begins = group_columns(parent, counts_of(rows, parent));
    for (std::size_t g = 0; g + 1 < begins.size(); ++g) {
        Group& group = groups_.emplace_back();
        group.begin = begins[g];
        group.columns = begins[g + 1] - begins[g];
    }
    find_rows(ordered);
    place_entries(lower);
}

/// Rows of each group: those of its columns in the matrix and those that the groups below it hold.
void FrontFactor::find_rows(const Sparse& ordered) {
    std::vector<int> group_of(at(ordered.cols())), seen(at(ordered.cols()), -1);
    for (std::size_t g = 0; g < groups_.size(); ++g) {
        std::fill_n(group_of.begin() + groups_[g].begin, groups_[g].columns, static_cast<int>(g));
    }
    std::size_t numbers = 0, rest = 0;
    for (std::size_t g = 0; g < groups_.size(); ++g) {
        Group& group = groups_[g];
        const Index end = group.begin + group.columns;
        const auto hold = [&](int row) {
            if (row < end || seen[at(row)] == static_cast<int>(g)) return;
            seen[at(row)] = static_cast<int>(g);
            group.rows.push_back(row);
        };
        for (Index column = group.begin; column < end; ++column) {
            for (Sparse::InnerIterator entry(ordered, column); entry; ++entry) hold(static_cast<int>(entry.row()));
        }
        for (const int child : group.children) {
            for (const int row : groups_[at(child)].rows) hold(row);
        }
        std::sort(group.rows.begin(), group.rows.end());
        for (const int child : group.children) {
            for (const int row : groups_[at(child)].rows) {
                const auto below = std::lower_bound(group.rows.begin(), group.rows.end(), row) - group.rows.begin();
                groups_[at(child)].place.push_back(static_cast<int>(row < end ? row - group.begin
                                                                              : group.columns + below));
            }
        }
        group.numbers = numbers;
        numbers += at(group.height() * group.columns);
        rest = std::max(rest, group.rows.size() * group.rows.size());
        if (group.rows.empty()) continue;
        group.parent = group_of[at(group.rows.front())];
        groups_[at(group.parent)].children.push_back(static_cast<int>(g));
    }
    numbers_.resize(numbers);
    rest_.resize(rest);
    std::size_t stack = 0, most = 0;
    for (const Group& group : groups_) {
        for (const int child : group.children) stack -= groups_[at(child)].rows.size() * groups_[at(child)].rows.size();
        stack += group.rows.size() * group.rows.size();
        most = std::max(most, stack);
    }
    stack_.resize(most);
}

void FrontFactor::place_entries(const Sparse& lower) {
    entries_.clear();
    std::vector<int> group_of(at(lower.cols()));
    diagonal_.resize(at(lower.cols()));
    for (std::size_t g = 0; g < groups_.size(); ++g) {
        const Group& group = groups_[g];
        std::fill_n(group_of.begin() + group.begin, group.columns, static_cast<int>(g));
        for (Index k = 0; k < group.columns; ++k) {
            diagonal_[at(group.begin + k)] = group.numbers + at(k * (group.height() + 1));
        }
    }
    std::size_t from = 0;
    for (Index column = 0; column < lower.outerSize(); ++column) {
        for (Sparse::InnerIterator entry(lower, column); entry; ++entry, ++from) {
            const auto [j, i] = std::minmax(place_[at(entry.col())], place_[at(entry.row())]);
            const Group& group = groups_[at(group_of[at(j)])];
            const Index end = group.begin + group.columns;
            const auto below = std::lower_bound(group.rows.begin(), group.rows.end(), i) - group.rows.begin();
            const Index row = i < end ? i - group.begin : group.columns + below;
            entries_.push_back({from, group.numbers + at((j - group.begin) * group.height() + row)});
        }
    }
}

bool FrontFactor::factorise(const Sparse& lower, double shift) {
    std::fill(numbers_.begin(), numbers_.end(), 0.0);
    for (const Entry& entry : entries_) numbers_[entry.to] = lower.valuePtr()[entry.from];
    for (const std::size_t diagonal : diagonal_) numbers_[diagonal] += shift;
    least_pivot_ = std::numeric_limits<double>::infinity();
    greatest_pivot_ = 0;
    std::size_t top = 0;  // of the stack
    for (const Group& group : groups_) {
        const std::size_t below = group.rows.size();
        std::fill_n(rest_.begin(), below * below, 0.0);
        for (auto child = group.children.rbegin(); child != group.children.rend(); ++child) {
            const Group& under = groups_[at(*child)];
            top -= under.rows.size() * under.rows.size();
            add_child(group, under, stack_.data() + top);
        }
        if (!eliminate(group)) return false;
        std::copy_n(rest_.begin(), below * below, stack_.begin() + static_cast<std::ptrdiff_t>(top));
        top += below * below;
    }
    return true;
}

/// Adds what a group below left over, its lower triangle, to the front of a group.
void FrontFactor::add_child(const Group& group, const Group& child, const double* left_over) {
    const Index height = group.height();
    const auto below = static_cast<Index>(group.rows.size());
    const std::size_t size = child.rows.size();
    for (std::size_t j = 0; j < size; ++j, left_over += size) {
        const int column = child.place[j];
        double* to = column < group.columns ? numbers_.data() + group.numbers + at(column * height)
                                            : rest_.data() + at((column - group.columns) * below) - group.columns;
        for (std::size_t i = j; i < size; ++i) to[child.place[i]] += left_over[i];
    }
}

bool FrontFactor::eliminate(const Group& group) {
    const FrontPivots pivots =
        eliminate_front(numbers_.data() + group.numbers, group.height(), group.columns, rest_.data());
    if (!pivots.positive) return false;
    least_pivot_ = std::min(least_pivot_, pivots.least);
    greatest_pivot_ = std::max(greatest_pivot_, pivots.greatest);
    return true;
}

Eigen::VectorXd FrontFactor::solve(const Eigen::VectorXd& right) const {
    Eigen::VectorXd x(right.size()), part;
    for (Index i = 0; i < right.size(); ++i) x(place_[at(i)]) = right(i);
    const auto columns_of = [&](const Group& group) {
        return Eigen::Map<const Eigen::MatrixXd>(numbers_.data() + group.numbers, group.height(), group.columns);
    };
    for (const Group& group : groups_) {
        const auto columns = columns_of(group);
        auto own = x.segment(group.begin, group.columns);
        columns.topRows(group.columns).triangularView<Eigen::Lower>().solveInPlace(own);
        part.noalias() = columns.bottomRows(static_cast<Index>(group.rows.size())) * own;
        for (std::size_t i = 0; i < group.rows.size(); ++i) x(group.rows[i]) -= part(static_cast<Index>(i));
    }
    for (auto group = groups_.rbegin(); group != groups_.rend(); ++group) {
        const auto columns = columns_of(*group);
        auto own = x.segment(group->begin, group->columns);
        part.resize(static_cast<Index>(group->rows.size()));
        for (std::size_t i = 0; i < group->rows.size(); ++i) part(static_cast<Index>(i)) = x(group->rows[i]);
        own.noalias() -= columns.bottomRows(part.size()).transpose() * part;
        columns.topRows(group->columns).triangularView<Eigen::Lower>().transpose().solveInPlace(own);
    }
    Eigen::VectorXd result(right.size());
    for (Index i = 0; i < right.size(); ++i) result(i) = x(place_[at(i)]);
    return result;
}

}  // namespace coverframe::kernel
