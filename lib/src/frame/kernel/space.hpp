// SPDX-License-Identifier: BSD-3-Clause
// Vectors and 3 by 3 matrices of the kernels (numbers.hpp): plain sums and products, nothing looped, nothing allocated.
#pragma once

#include "frame/kernel/numbers.hpp"

namespace coverframe::kernel {

template <class N>
struct Vec {
    N x, y, z;
};

template <class N>
COVERFRAME_INLINE Vec<N> operator+(const Vec<N>& a, const Vec<N>& b) {
    return {a.x + b.x, a.y + b.y, a.z + b.z};
}
template <class N>
COVERFRAME_INLINE Vec<N> operator-(const Vec<N>& a, const Vec<N>& b) {
    return {a.x - b.x, a.y - b.y, a.z - b.z};
}
template <class N>
COVERFRAME_INLINE Vec<N> operator-(const Vec<N>& a) {
    return {-a.x, -a.y, -a.z};
}
template <class N, class M>
COVERFRAME_INLINE Vec<N> operator*(const M& a, const Vec<N>& b) {
    return {a * b.x, a * b.y, a * b.z};
}
template <class N>
COVERFRAME_INLINE N dot(const Vec<N>& a, const Vec<N>& b) {
    return a.x * b.x + a.y * b.y + a.z * b.z;
}
template <class N>
COVERFRAME_INLINE Vec<N> cross(const Vec<N>& a, const Vec<N>& b) {
    return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}

/// By columns.
template <class N>
struct Mat {
    Vec<N> c0, c1, c2;
};

template <class N>
COVERFRAME_INLINE Mat<N> operator+(const Mat<N>& a, const Mat<N>& b) {
    return {a.c0 + b.c0, a.c1 + b.c1, a.c2 + b.c2};
}
template <class N>
COVERFRAME_INLINE Vec<N> operator*(const Mat<N>& a, const Vec<N>& v) {
    return v.x * a.c0 + v.y * a.c1 + v.z * a.c2;
}
template <class N>
COVERFRAME_INLINE Mat<N> operator*(const Mat<N>& a, const Mat<N>& b) {
    return {a * b.c0, a * b.c1, a * b.c2};
}
/// a^T v
template <class N>
COVERFRAME_INLINE Vec<N> back(const Mat<N>& a, const Vec<N>& v) {
    return {dot(a.c0, v), dot(a.c1, v), dot(a.c2, v)};
}
/// a b^T
template <class N>
COVERFRAME_INLINE Mat<N> outer(const Vec<N>& a, const Vec<N>& b) {
    return {b.x * a, b.y * a, b.z * a};
}
template <class N>
COVERFRAME_INLINE void add_outer(const Vec<N>& a, const Vec<N>& b, Mat<N>& sum) {
    sum = sum + outer(a, b);
}

/// A symmetric matrix by its lower triangle.
template <class N>
struct Sym {
    N xx, yx, yy, zx, zy, zz;
};

/// Adds a b^T, of which only the lower triangle is looked at: for terms that are symmetric, or that others make so.
template <class N>
COVERFRAME_INLINE void add_outer(const Vec<N>& a, const Vec<N>& b, Sym<N>& sum) {
    sum.xx += a.x * b.x;
    sum.yx += a.y * b.x;
    sum.yy += a.y * b.y;
    sum.zx += a.z * b.x;
    sum.zy += a.z * b.y;
    sum.zz += a.z * b.z;
}
/// Adds a b^T + b a^T.
template <class N>
COVERFRAME_INLINE void add_both(const Vec<N>& a, const Vec<N>& b, Sym<N>& sum) {
    sum.xx += 2 * (a.x * b.x);
    sum.yx += a.y * b.x + a.x * b.y;
    sum.yy += 2 * (a.y * b.y);
    sum.zx += a.z * b.x + a.x * b.z;
    sum.zy += a.z * b.y + a.y * b.z;
    sum.zz += 2 * (a.z * b.z);
}
/// Adds a times the identity.
template <class N>
COVERFRAME_INLINE void add_diagonal(const N& a, Sym<N>& sum) {
    sum.xx += a;
    sum.yy += a;
    sum.zz += a;
}

}  // namespace coverframe::kernel
