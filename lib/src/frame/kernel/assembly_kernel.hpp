// SPDX-License-Identifier: BSD-3-Clause
// One member, force or spring after another added to energy, gradient and tangent, for N = double and N = Four
// (numbers.hpp). Plain SI doubles: m, N, rad.
//
// Arrays. Displacements and gradient have six numbers a node, the tangent is laid out by its band (banded.hpp), with
// one more number at its end: where a row or column of a member is held, its numbers go there and are not looked at.
// With N = Four every number is `batch` numbers side by side, one a frame, and a kernel works on four of them.
//
// Whether a strap pulls or hangs slack, an upright pushes or is lifted, is chosen lane by lane; what is not active
// adds zeros.
#pragma once

#include <cstddef>

#include "frame/kernel/pole_kernel.hpp"

namespace coverframe::kernel {

/// Frames that are worked on together.
constexpr int batch = 2 * lanes;

template <class N>
constexpr std::ptrdiff_t stride = sizeof(N) == sizeof(double) ? 1 : batch;

template <class N>
COVERFRAME_INLINE Vec<N> vec_at(const double* all, int i) {
    const double* at = all + stride<N> * i;
    return {load<N>(at), load<N>(at + stride<N>), load<N>(at + 2 * stride<N>)};
}
template <class N>
COVERFRAME_INLINE void add_at(double* all, int i, const N& n) {
    double* at = all + stride<N> * i;
    store(load<N>(at) + n, at);
}
template <class N>
COVERFRAME_INLINE void add_at(double* all, int i, const Vec<N>& v) {
    add_at(all, i, v.x);
    add_at(all, i + 1, v.y);
    add_at(all, i + 2, v.z);
}

/// What is worked out.
enum class Terms {
    energy,   ///< and largest force
    elastic,  ///< gradient and tangent too, the tangent without the terms that come from the present forces
    tangent,
};

template <class N>
struct Sums {
    double* gradient;
    double* K;
    N energy = number<N>(0);
    N largest_force = number<N>(0);
    N rounding = number<N>(0);  ///< unbalanced force below which nothing can be told
    N least_fold = number<N>(2);
};

template <class N>
COVERFRAME_INLINE N largest_of(const Vec<N>& v) {
    return larger(larger(magnitude(v.x), magnitude(v.y)), magnitude(v.z));
}

/// Rows and columns d at `from`, t at `from`, d at `to`, t at `to`: the lower triangle, row after row.
template <class N>
COVERFRAME_INLINE void add_blocks(const PoleBlocks<N>& b, const int* places, double* K) {
    const Sym<N>& dd = b.dd;
    const Mat<N>& ad = b.td[0];
    const Mat<N>& bd = b.td[1];
    // clang-format off
    const N rows[78] = {
        dd.xx,
        dd.yx, dd.yy,
        dd.zx, dd.zy, dd.zz,
        -ad.c0.x, -ad.c1.x, -ad.c2.x, b.tt[0].xx,
        -ad.c0.y, -ad.c1.y, -ad.c2.y, b.tt[0].yx, b.tt[0].yy,
        -ad.c0.z, -ad.c1.z, -ad.c2.z, b.tt[0].zx, b.tt[0].zy, b.tt[0].zz,
        -dd.xx, -dd.yx, -dd.zx, ad.c0.x, ad.c0.y, ad.c0.z, dd.xx,
        -dd.yx, -dd.yy, -dd.zy, ad.c1.x, ad.c1.y, ad.c1.z, dd.yx, dd.yy,
        -dd.zx, -dd.zy, -dd.zz, ad.c2.x, ad.c2.y, ad.c2.z, dd.zx, dd.zy, dd.zz,
        -bd.c0.x, -bd.c1.x, -bd.c2.x, b.ba.c0.x, b.ba.c1.x, b.ba.c2.x, bd.c0.x, bd.c1.x, bd.c2.x, b.tt[1].xx,
        -bd.c0.y, -bd.c1.y, -bd.c2.y, b.ba.c0.y, b.ba.c1.y, b.ba.c2.y, bd.c0.y, bd.c1.y, bd.c2.y, b.tt[1].yx,
        b.tt[1].yy,
        -bd.c0.z, -bd.c1.z, -bd.c2.z, b.ba.c0.z, b.ba.c1.z, b.ba.c2.z, bd.c0.z, bd.c1.z, bd.c2.z, b.tt[1].zx,
        b.tt[1].zy, b.tt[1].zz};
    // clang-format on
    for (int i = 0; i < 78; ++i) add_at(K, places[i], rows[i]);
}

template <class N>
COVERFRAME_INLINE N largest_diagonal(const Sym<N>& s) {
    return larger(larger(s.xx, s.yy), s.zz);
}

/// \param from,to  6 times the node
/// \param turns    one a node
template <class N, class P>
COVERFRAME_INLINE void add_pole(const PolePropertiesOf<P>& pole, int from, int to, const int* places, const double* u,
                                const Turned<N>* turns, Terms terms, Sums<N>& sums) {
    const Turned<N>& turn_a = turns[from / 6];
    const Turned<N>& turn_b = turns[to / 6];
    const Vec<N> u_a = vec_at<N>(u, from);
    const Vec<N> u_b = vec_at<N>(u, to);
    const PoleMeasures<N> m = measure(pole, u_b - u_a, turn_a, turn_b);
    const PoleCarries<N> f = carried(pole, m);
    const N fold = least_fold(m);
    sums.least_fold = select(sums.least_fold < fold, sums.least_fold, fold);
    sums.energy += energy_of(m, f);
    sums.largest_force = larger(sums.largest_force, magnitude(f.axial));
    if (terms == Terms::energy) return;
    PoleBlocks<N> blocks;
    derive(pole, m, f, turn_a, turn_b, terms == Terms::tangent, blocks);
    add_at(sums.gradient, from, -blocks.d);
    add_at(sums.gradient, from + 3, blocks.t[0]);
    add_at(sums.gradient, to, blocks.d);
    add_at(sums.gradient, to + 3, blocks.t[1]);
    add_blocks(blocks, places, sums.K);
    const N reach =
        larger(larger(largest_of(u_a), largest_of(u_b)), larger(largest_of(turn_a.t), largest_of(turn_b.t)));
    const N stiffest =
        larger(larger(largest_diagonal(blocks.tt[0]), largest_diagonal(blocks.tt[1])), largest_diagonal(blocks.dd));
    sums.rounding = larger(sums.rounding, 1e-15 * stiffest * reach);
}

/// A strap pulls, an upright pushes, a bar does both. P as in PolePropertiesOf.
template <class P>
struct TiePropertiesOf {
    Vec<P> drawn;
    P drawn_length;
    bool pulls, pushes;
    P free_length;
    P stiffness;  ///< EA/L0
    P longer;     ///< lengthening by warmth
};
using TieProperties = TiePropertiesOf<double>;

template <class N>
struct TieState {
    Vec<N> chord;
    Vec<N> direction;  ///< zero where the ends meet
    N inverse;         ///< 1/length, 0 where the ends meet
    N stiffness;       ///< 0 while slack or lifted
    N stretch;         ///< beyond the free length, warm as it is
    N force;
};

template <class N, class P>
COVERFRAME_INLINE TieState<N> state_of(const TiePropertiesOf<P>& tie, const Vec<N>& moved) {
    const Vec<N> drawn = wide<N>(tie.drawn);
    const N zero = number<N>(0);
    TieState<N> state;
    state.chord = drawn + moved;
    const N length = square_root(dot(state.chord, state.chord));
    state.inverse = select(length > zero, 1 / length, zero);
    state.direction = state.inverse * state.chord;
    // l - L0 by what the ends moved, not as a difference of two long lengths: a stiff member would drown in rounding.
    state.stretch =
        (tie.drawn_length - tie.free_length) + dot(moved, 2 * drawn + moved) / (length + tie.drawn_length) - tie.longer;
    state.stiffness = zero;
    const N stiffness = number<N>(tie.stiffness);
    if (tie.pulls) state.stiffness = select(state.stretch >= zero, stiffness, state.stiffness);
    if (tie.pushes) state.stiffness = select(state.stretch <= zero, stiffness, state.stiffness);
    state.force = state.stiffness * state.stretch;
    return state;
}

template <class N, class P>
COVERFRAME_INLINE void add_tie(const TiePropertiesOf<P>& tie, int from, int to, const int* places, const double* u,
                               Terms terms, Sums<N>& sums) {
    const Vec<N> u_a = vec_at<N>(u, from);
    const Vec<N> u_b = vec_at<N>(u, to);
    const TieState<N> s = state_of(tie, u_b - u_a);
    sums.energy += 0.5 * (s.force * s.force) / tie.stiffness;
    sums.largest_force = larger(sums.largest_force, magnitude(s.force));
    if (terms == Terms::energy) return;
    const Vec<N>& n = s.direction;
    const Vec<N> pull = s.force * n;
    add_at(sums.gradient, to, pull);
    add_at(sums.gradient, from, -pull);
    sums.rounding = larger(sums.rounding, 1e-15 * s.stiffness * larger(largest_of(u_a), largest_of(u_b)));
    const N turning = terms == Terms::tangent ? s.force * s.inverse : number<N>(0);
    Sym<N> k = Sym<N>{};
    add_outer((s.stiffness - turning) * n, n, k);
    add_diagonal(turning, k);
    // clang-format off
    const N rows[21] = {k.xx,
                        k.yx,  k.yy,
                        k.zx,  k.zy,  k.zz,
                        -k.xx, -k.yx, -k.zx, k.xx,
                        -k.yx, -k.yy, -k.zy, k.yx, k.yy,
                        -k.zx, -k.zy, -k.zz, k.zx, k.zy, k.zz};
    // clang-format on
    for (int i = 0; i < 21; ++i) add_at(sums.K, places[i], rows[i]);
}

/// An elastic support of a node against a place in space: force on the node = force0 - k (u - u0).
template <class N>
struct Support {
    Sym<N> k;
    Vec<N> u0;
    Vec<N> force0;
};

/// \param places  lower triangle of the node's displacements
template <class N>
COVERFRAME_INLINE void add_support(const Support<N>& support, int at, const int* places, const double* u, Terms terms,
                                   Sums<N>& sums) {
    const Sym<N>& k = support.k;
    const Vec<N> moved = vec_at<N>(u, at) - support.u0;
    const Vec<N> pushed{k.xx * moved.x + k.yx * moved.y + k.zx * moved.z,
                        k.yx * moved.x + k.yy * moved.y + k.zy * moved.z,
                        k.zx * moved.x + k.zy * moved.y + k.zz * moved.z};
    const Vec<N> force = support.force0 - pushed;
    sums.energy += 0.5 * dot(moved, pushed) - dot(support.force0, moved);
    sums.largest_force = larger(sums.largest_force, square_root(dot(force, force)));
    if (terms == Terms::energy) return;
    add_at(sums.gradient, at, -force);
    const N rows[6] = {k.xx, k.yx, k.yy, k.zx, k.zy, k.zz};
    for (int i = 0; i < 6; ++i) add_at(sums.K, places[i], rows[i]);
}

/// A force on a node that keeps its direction.
template <class N>
COVERFRAME_INLINE void add_force(const Vec<N>& force, int at, const double* u, Terms terms, Sums<N>& sums) {
    sums.energy -= dot(force, vec_at<N>(u, at));
    sums.largest_force = larger(sums.largest_force, largest_of(force));
    if (terms != Terms::energy) add_at(sums.gradient, at, -force);
}

}  // namespace coverframe::kernel
