// SPDX-License-Identifier: BSD-3-Clause
// The energy of a pole (pole.hpp) with gradient and Hessian, as sums of products of 3-vectors, for N = double and N =
// Four (numbers.hpp).
//
// Layout. The energy depends on the difference d of the two displacements and on the rotation vectors t_A, t_B of the
// ends, so the Hessian over the 12 unknowns is a Hessian over 9, in six blocks of 3 by 3. It has two parts:
//   elastic    sum over the strain measures i, j of k_ij B_i B_j^T, B_i the gradient of a measure (stretch, b2 and b3
//              of both ends, phi)
//   geometric  the measures' second derivatives times the forces that go with them; all of them come out as products of
//              two vectors as well, but for one full block an end
// Hats are moments brought to t: v^ = T^T v. Strokes are parts across r over the length: v' = (v - r (r.v))/l. With
// A = A_1 (or B_1), c = r.A, below = 1 + c and, from the expansion of psi/sin psi = g(c):
//   p = g' (r.A_3) A + g A_3,  q = -(g' (r.A_2) A + g A_2)            db2 = (p', (p x r)^), db3 likewise
//   F = m2 p + m3 q                                                   what the bending pulls r along
//   x = g'' (m2 r.A_3 - m3 r.A_2),  n = x/2 A + g' (m2 A_3 - m3 A_2)  its change with r: A n^T + n A^T
//   tau = torque/below^2, plus at A, minus at B                       twist
// the geometric blocks of one end are, with o = A x r and e = n x r,
//   d d   A' (n - tau/2 o)'^T + transposed
//   t d   o^ n'^T + (e + tau (A + r))^ A'^T + T^T ([F]x - tau below I) across/l
//   t t   o^ (e + tau/2 (A + r))^T^ + 1/2 F^ r^T^ + transposed - (r.F) T^T T + symmetric D (turn_kernel.hpp)
// and d d has the terms of the chord itself. Parts of t t that are not symmetric have been taken together: they vanish.
#pragma once

#include "frame/kernel/turn_kernel.hpp"

namespace coverframe::kernel {

/// What is known of a pole before any state. With P = double it is the same for all frames that are worked on together,
/// with P = Four each lane has its own.
template <class P>
struct PolePropertiesOf {
    Vec<P> drawn;  ///< from the one end to the other
    Mat<P> axes;   ///< columns e1 e2 e3
    P drawn_length;
    P free_length;
    P axial;             ///< EA/L0
    P near_2[2], far_2;  ///< K2: diagonal, and beside it
    P near_3[2], far_3;  ///< K3
    P twist;             ///< GJ/L
};
using PoleProperties = PolePropertiesOf<double>;

/// psi/sin psi as a function of c = cos psi, with two derivatives.
template <class N>
struct Swing {
    N value, d, dd;
};
[[nodiscard]] double swing_value(double c);
[[nodiscard]] Swing<double> swing_all(double c);
/// atan2
[[nodiscard]] double angle_of(double y, double x);

/// Series along x = 1 - c: (n!)^2 2^n x^n/(2n + 1)!, and its derivatives along c.
struct SwingSeries {
    static constexpr int terms = 20;
    static constexpr int few = 10;
    /// The next term is under 1e-17 of the sum up to these x.
    static constexpr double reach = 0.2;
    static constexpr double reach_of_few = 0.025;
    Series<terms> value{}, d{}, dd{};

    constexpr SwingSeries() {
        double factor = 1;
        for (int n = 0; n < terms; ++n) {
            value.coefficient[n] = factor;
            const double next = factor * (n + 1) / (2 * n + 3);  // of x^(n+1)
            d.coefficient[n] = -(n + 1) * next;
            dd.coefficient[n] = (n + 1) * (n + 2) * next * (n + 2) / (2 * n + 5);
            factor = next;
        }
    }
};
inline constexpr SwingSeries swing_series;

/// atan q = q - q^3/3 + ..., along q^2.
struct AngleSeries {
    static constexpr int terms = 9;
    static constexpr double reach = 0.1;
    Series<terms> series{};

    constexpr AngleSeries() {
        for (int n = 0; n < terms; ++n) series.coefficient[n] = (n % 2 == 0 ? 1.0 : -1.0) / (2 * n + 1);
    }
};
inline constexpr AngleSeries angle_series;

template <class N>
COVERFRAME_INLINE N value_of_swing(const N& c) {
    const N x = 1 - c;
    if (all(x < number<N>(SwingSeries::reach_of_few))) return sum_of<SwingSeries::few>(swing_series.value, x);
    if constexpr (sizeof(N) == sizeof(double)) {
        return swing_value(c);
    } else {
        N value;
        for (int lane = 0; lane < lanes; ++lane) value.v[lane] = swing_value(c[lane]);
        return value;
    }
}

/// The derivatives; `g.value` is there already.
template <class N>
COVERFRAME_INLINE void derive_swing(const N& c, Swing<N>& g) {
    const N x = 1 - c;
    if (all(x < number<N>(SwingSeries::reach_of_few))) {
        g.d = sum_of<SwingSeries::few>(swing_series.d, x);
        g.dd = sum_of<SwingSeries::few>(swing_series.dd, x);
        return;
    }
    if constexpr (sizeof(N) == sizeof(double)) {
        g = swing_all(c);
    } else {
        for (int lane = 0; lane < lanes; ++lane) {
            const Swing<double> one = swing_all(c[lane]);
            g.d.v[lane] = one.d;
            g.dd.v[lane] = one.dd;
        }
    }
}

template <class N>
COVERFRAME_INLINE N angle(const N& y, const N& x) {
    if (all(magnitude(y) < AngleSeries::reach * x)) {
        const N q = y / x;
        return q * sum_of<AngleSeries::terms>(angle_series.series, q * q);
    }
    if constexpr (sizeof(N) == sizeof(double)) {
        return angle_of(y, x);
    } else {
        N phi;
        for (int lane = 0; lane < lanes; ++lane) phi.v[lane] = angle_of(y[lane], x[lane]);
        return phi;
    }
}

/// What is measured at one end.
template <class N>
struct EndMeasures {
    Mat<N> axes;  ///< A_1 A_2 A_3
    Vec<N> s;     ///< r.A_k
    N swing;      ///< psi/sin psi
    N b2, b3;
};

template <class N>
struct PoleMeasures {
    Vec<N> r;
    N length;   ///< 0 where the ends meet: nothing else makes sense then
    N inverse;  ///< 1/length
    N stretch;
    EndMeasures<N> end[2];
    N phi;
};

/// An end that points against the chord, or ends that meet, are refused where this is not over the margin.
constexpr double fold_margin = 1e-9;
template <class N>
COVERFRAME_INLINE N least_fold(const PoleMeasures<N>& m) {
    const N a = 1 + m.end[0].s.x;
    const N b = 1 + m.end[1].s.x;
    return select(m.length > number<N>(0), select(a < b, a, b), number<N>(0));
}

template <class N, class P>
COVERFRAME_INLINE Vec<N> wide(const Vec<P>& v) {
    return {number<N>(v.x), number<N>(v.y), number<N>(v.z)};
}

/// What the end turned by `turn` measures against r, of which `chord_change` is the change.
template <class N>
COVERFRAME_INLINE void measure_end(const Mat<N>& drawn, const Mat<N>& change, const Vec<N>& r,
                                   const Vec<N>& chord_change, EndMeasures<N>& end) {
    end.axes = drawn + change;
    end.s = {dot(r, end.axes.c0), dot(drawn.c1, chord_change) + dot(change.c1, r),
             dot(drawn.c2, chord_change) + dot(change.c2, r)};
    end.swing = value_of_swing(end.s.x);
    end.b2 = end.swing * end.s.z;
    end.b3 = -(end.swing * end.s.y);
}

/// The angle about r between the two ends: A_j.B_2 after both were brought to r, as changes from the drawn axes.
template <class N>
COVERFRAME_INLINE N twist_of(const Mat<N>& drawn, const Mat<N> (&change)[2], const PoleMeasures<N>& m) {
    const EndMeasures<N>& a = m.end[0];
    const EndMeasures<N>& b = m.end[1];
    const N below_a = 1 / (1 + a.s.x);
    const N part_b = b.s.y / (1 + b.s.x);
    const N part_a2 = a.s.y * below_a;
    const N part_a3 = a.s.z * below_a;
    const N sum = dot(a.axes.c0, b.axes.c0) + a.s.x + b.s.x + 1;
    const N turned = dot(a.axes.c0, b.axes.c1) + b.s.y;
    const N level = dot(a.axes.c1, b.axes.c1);
    const N aside = dot(change[0].c2, b.axes.c1) + dot(drawn.c2, change[1].c1);  // A_3.B_2
    const N y = aside - part_b * (dot(a.axes.c2, b.axes.c0) + a.s.z) - part_a3 * turned + part_a3 * part_b * sum;
    const N x = level - part_b * (dot(a.axes.c1, b.axes.c0) + a.s.y) - part_a2 * turned + part_a2 * part_b * sum;
    return angle(y, x);
}

/// Every small number is made of changes from the drawn shape, never as a difference of numbers near 1: a stiff member
/// would drown in rounding.
/// \param moved  displacement of the one end minus that of the other
template <class N, class P>
COVERFRAME_INLINE PoleMeasures<N> measure(const PolePropertiesOf<P>& pole, const Vec<N>& moved, const Turned<N>& turn_a,
                                          const Turned<N>& turn_b) {
    PoleMeasures<N> m;
    const Mat<N> drawn{wide<N>(pole.axes.c0), wide<N>(pole.axes.c1), wide<N>(pole.axes.c2)};
    const Vec<N> way = wide<N>(pole.drawn);
    const Vec<N> chord = way + moved;
    m.length = square_root(dot(chord, chord));
    m.inverse = 1 / m.length;
    m.r = m.inverse * chord;
    const N longer = dot(moved, 2 * way + moved) / (m.length + pole.drawn_length);
    m.stretch = (pole.drawn_length - pole.free_length) + longer;
    const Vec<N> chord_change = m.inverse * (moved - longer * drawn.c0);
    const Mat<N> change[2] = {turn_a.change * drawn, turn_b.change * drawn};
    measure_end(drawn, change[0], m.r, chord_change, m.end[0]);
    measure_end(drawn, change[1], m.r, chord_change, m.end[1]);
    m.phi = twist_of(drawn, change, m);
    return m;
}

/// What the pole carries: EA/L0 e, K2 b2, K3 b3, GJ/L phi.
template <class N>
struct PoleCarries {
    N axial;
    N moment_2[2], moment_3[2];
    N torque;
};

template <class N, class P>
COVERFRAME_INLINE PoleCarries<N> carried(const PolePropertiesOf<P>& pole, const PoleMeasures<N>& m) {
    const EndMeasures<N>& a = m.end[0];
    const EndMeasures<N>& b = m.end[1];
    return {pole.axial * m.stretch,
            {pole.near_2[0] * a.b2 + pole.far_2 * b.b2, pole.far_2 * a.b2 + pole.near_2[1] * b.b2},
            {pole.near_3[0] * a.b3 + pole.far_3 * b.b3, pole.far_3 * a.b3 + pole.near_3[1] * b.b3},
            pole.twist * m.phi};
}

template <class N>
COVERFRAME_INLINE N energy_of(const PoleMeasures<N>& m, const PoleCarries<N>& f) {
    const EndMeasures<N>& a = m.end[0];
    const EndMeasures<N>& b = m.end[1];
    return 0.5 * (f.axial * m.stretch + (a.b2 * f.moment_2[0] + b.b2 * f.moment_2[1]) +
                  (a.b3 * f.moment_3[0] + b.b3 * f.moment_3[1]) + f.torque * m.phi);
}

/// Gradient and Hessian over (d, t_A, t_B).
template <class N>
struct PoleBlocks {
    Vec<N> d, t[2];
    Sym<N> dd, tt[2];
    Mat<N> td[2];  ///< rows t
    Mat<N> ba;     ///< rows t_B, columns t_A
};

/// One end on the way to the blocks.
template <class N>
struct EndTerms {
    Mat<N> rate;          ///< T
    Vec<N> p1, q1;        ///< p', q'
    Vec<N> p, q;          ///< (p x r)^, (q x r)^
    Vec<N> lever;         ///< (A + r)/below
    Vec<N> lever_turned;  ///< lever^
    N below_inverse;
};

/// The part across r, over the length.
template <class N>
COVERFRAME_INLINE Vec<N> across(const PoleMeasures<N>& m, const Vec<N>& v) {
    return m.inverse * (v - dot(m.r, v) * m.r);
}

template <class N>
COVERFRAME_INLINE EndTerms<N> terms_of(const PoleMeasures<N>& m, int i, const Turned<N>& turn, Swing<N>& g) {
    const EndMeasures<N>& end = m.end[i];
    EndTerms<N> terms;
    terms.rate = rate_of(turn);
    g.value = end.swing;
    derive_swing(end.s.x, g);
    const Vec<N> p = (g.d * end.s.z) * end.axes.c0 + g.value * end.axes.c2;
    const Vec<N> q = -((g.d * end.s.y) * end.axes.c0 + g.value * end.axes.c1);
    terms.p1 = across(m, p);
    terms.q1 = across(m, q);
    terms.p = back(terms.rate, cross(p, m.r));
    terms.q = back(terms.rate, cross(q, m.r));
    terms.below_inverse = 1 / (1 + end.s.x);
    terms.lever = terms.below_inverse * (end.axes.c0 + m.r);
    terms.lever_turned = back(terms.rate, terms.lever);
    return terms;
}

template <class N, class P>
COVERFRAME_INLINE void add_elastic(const PolePropertiesOf<P>& pole, const PoleMeasures<N>& m, const EndTerms<N>& a,
                                   const EndTerms<N>& b, const Vec<N>& twist_d, PoleBlocks<N>& sum) {
    add_outer(pole.axial * m.r, m.r, sum.dd);
    // Along d: forces on the one end and the other for a unit of d.
    const Vec<N> two_a = pole.near_2[0] * a.p1 + pole.far_2 * b.p1;
    const Vec<N> two_b = pole.far_2 * a.p1 + pole.near_2[1] * b.p1;
    const Vec<N> three_a = pole.near_3[0] * a.q1 + pole.far_3 * b.q1;
    const Vec<N> three_b = pole.far_3 * a.q1 + pole.near_3[1] * b.q1;
    const Vec<N> twist = pole.twist * twist_d;
    add_outer(two_a, a.p1, sum.dd);
    add_outer(two_b, b.p1, sum.dd);
    add_outer(three_a, a.q1, sum.dd);
    add_outer(three_b, b.q1, sum.dd);
    add_outer(twist, twist_d, sum.dd);
    sum.td[0] = outer(a.p, two_a) + outer(a.q, three_a) + outer(-a.lever_turned, twist);
    sum.td[1] = outer(b.p, two_b) + outer(b.q, three_b) + outer(b.lever_turned, twist);
    sum.ba = outer(b.p, pole.far_2 * a.p) + outer(b.q, pole.far_3 * a.q) +
             outer(b.lever_turned, -(pole.twist * a.lever_turned));
    add_outer(pole.near_2[0] * a.p, a.p, sum.tt[0]);
    add_outer(pole.near_3[0] * a.q, a.q, sum.tt[0]);
    add_outer(pole.twist * a.lever_turned, a.lever_turned, sum.tt[0]);
    add_outer(pole.near_2[1] * b.p, b.p, sum.tt[1]);
    add_outer(pole.near_3[1] * b.q, b.q, sum.tt[1]);
    add_outer(pole.twist * b.lever_turned, b.lever_turned, sum.tt[1]);
}

/// \param torque  plus at the first end, minus at the second
/// \param F       what the end's bending pulls r along
template <class N>
COVERFRAME_INLINE void add_geometric_end(const PoleMeasures<N>& m, int i, const EndTerms<N>& terms, const Swing<N>& g,
                                         const N& moment_2, const N& moment_3, const N& torque, const Vec<N>& F,
                                         const Turned<N>& turn, PoleBlocks<N>& sum) {
    const EndMeasures<N>& end = m.end[i];
    const Vec<N>& A = end.axes.c0;
    const N x = g.dd * (moment_2 * end.s.z - moment_3 * end.s.y);
    const Vec<N> n = (0.5 * x) * A + g.d * (moment_2 * end.axes.c2 - moment_3 * end.axes.c1);
    const Vec<N> o = cross(A, m.r);
    const Vec<N> e = cross(n, m.r);
    const N tau_below = torque * terms.below_inverse;
    const Vec<N> tau = tau_below * terms.lever;
    const Vec<N> A1 = across(m, A);
    const Vec<N> o_turned = back(terms.rate, o);
    const Vec<N> r_turned = back(terms.rate, m.r);
    const Vec<N> F_turned = back(terms.rate, F);
    add_both(A1, across(m, n - (0.5 * (tau_below * terms.below_inverse)) * o), sum.dd);

    add_outer(o_turned, across(m, n), sum.td[i]);
    add_outer(back(terms.rate, e + tau), A1, sum.td[i]);
    // T^T ([F]x - tau below I) across/l, a row of it for each column of T.
    const Vec<N> aside = back(terms.rate, cross(F, m.r)) - tau_below * r_turned;
    const Mat<N> rows{cross(terms.rate.c0, F) - tau_below * terms.rate.c0 - aside.x * m.r,
                      cross(terms.rate.c1, F) - tau_below * terms.rate.c1 - aside.y * m.r,
                      cross(terms.rate.c2, F) - tau_below * terms.rate.c2 - aside.z * m.r};
    Mat<N>& td = sum.td[i];
    td.c0 = td.c0 + m.inverse * Vec<N>{rows.c0.x, rows.c1.x, rows.c2.x};
    td.c1 = td.c1 + m.inverse * Vec<N>{rows.c0.y, rows.c1.y, rows.c2.y};
    td.c2 = td.c2 + m.inverse * Vec<N>{rows.c0.z, rows.c1.z, rows.c2.z};

    add_both(o_turned, back(terms.rate, e + 0.5 * tau), sum.tt[i]);
    add_both(0.5 * F_turned, r_turned, sum.tt[i]);
    // T^T T = (1 - k s) I + k t t^T
    const N along = dot(m.r, F);
    const N k = 2 * turn.c - turn.c * turn.c * turn.s - turn.b * turn.b;
    add_diagonal(-(along * (1 - k * turn.s)), sum.tt[i]);
    add_outer((-(along * k)) * turn.t, turn.t, sum.tt[i]);
}

/// Gradient and lower triangle of the Hessian.
/// \param geometric  false: leave out the terms that come from the present forces
template <class N, class P>
COVERFRAME_INLINE void derive(const PolePropertiesOf<P>& pole, const PoleMeasures<N>& m, const PoleCarries<N>& f,
                              const Turned<N>& turn_a, const Turned<N>& turn_b, bool geometric, PoleBlocks<N>& out) {
    Swing<N> g[2];
    const EndTerms<N> a = terms_of(m, 0, turn_a, g[0]);
    const EndTerms<N> b = terms_of(m, 1, turn_b, g[1]);
    const Vec<N> twist_r = cross(a.lever - b.lever, m.r);
    out = PoleBlocks<N>{};
    add_elastic(pole, m, a, b, m.inverse * twist_r, out);
    out.t[0] = f.moment_2[0] * a.p + f.moment_3[0] * a.q - f.torque * a.lever_turned;
    out.t[1] = f.moment_2[1] * b.p + f.moment_3[1] * b.q + f.torque * b.lever_turned;
    const Vec<N> pull = (f.moment_2[0] * a.p1 + f.moment_3[0] * a.q1) + (f.moment_2[1] * b.p1 + f.moment_3[1] * b.q1) +
                        (f.torque * m.inverse) * twist_r;
    out.d = f.axial * m.r + pull;
    if (!geometric) return;
    Vec<N> F[2];
    for (int i = 0; i < 2; ++i) {
        const EndMeasures<N>& end = m.end[i];
        F[i] = f.moment_2[i] * (g[i].d * end.s.z * end.axes.c0 + g[i].value * end.axes.c2) -
               f.moment_3[i] * (g[i].d * end.s.y * end.axes.c0 + g[i].value * end.axes.c1);
    }
    // The chord itself: (e-force - r.F)/l across, and the turning of what pulls across it.
    const N along = (f.axial - m.inverse * dot(m.r, F[0] + F[1])) * m.inverse;
    add_diagonal(along, out.dd);
    add_outer((-along) * m.r, m.r, out.dd);
    add_both((-m.inverse) * pull, m.r, out.dd);
    add_geometric_end(m, 0, a, g[0], f.moment_2[0], f.moment_3[0], f.torque, F[0], turn_a, out);
    add_geometric_end(m, 1, b, g[1], f.moment_2[1], f.moment_3[1], -f.torque, F[1], turn_b, out);
    // What the moments do along t, as moments on the nodes.
    const Vec<N> on_a = cross(F[0], m.r) - f.torque * a.lever;
    const Vec<N> on_b = cross(F[1], m.r) + f.torque * b.lever;
    add_rate_change(turn_a, on_a, out.tt[0]);
    add_rate_change(turn_b, on_b, out.tt[1]);
}

}  // namespace coverframe::kernel
