// SPDX-License-Identifier: BSD-3-Clause
// What the kernels calculate with: one number, or four side by side.
//
// The kernels are templates over the number N. With N = double they work on one frame, with N = Four on four frames of
// the same members at once, one in each lane. Both run the same operations in the same order, and the library is
// compiled without contraction to fused operations, so a lane gives the bits that it would give alone.
//
// Functions that are not made of + - * / and the square root have a series for the small arguments of frames that
// stand. Where a lane of a Four is outside it, all four ask the scalar function, one after the other: slower, with the
// same bits.
//
// Everything here is inlined by force, so that it becomes part of whatever instruction set its caller is compiled for:
// where that is AVX2 a Four is one register, elsewhere the compiler splits it.
#pragma once

#include <cmath>
#include <cstring>
#ifdef __x86_64__
#include <emmintrin.h>
#endif

#define COVERFRAME_INLINE inline __attribute__((always_inline))
// For the functions that are compiled a second time and chosen when the program runs.
#ifdef __x86_64__
#define COVERFRAME_AVX2 __attribute__((target("avx2")))
#endif

namespace coverframe::kernel {

/// Whether kernels use AVX2. Only tests set it, to run what machines without AVX2 run.
[[nodiscard]] inline bool& avx2_in_use() {
#ifdef COVERFRAME_AVX2
    static bool avx2 = __builtin_cpu_supports("avx2");
#else
    static bool avx2 = false;
#endif
    return avx2;
}
/// Whether the machine that runs this has AVX2.
[[nodiscard]] inline bool has_avx2() { return avx2_in_use(); }

constexpr int lanes = 4;

/// True or false in each lane: all bits or none.
struct alignas(lanes * sizeof(double)) FourTruths {
    long long v __attribute__((vector_size(lanes * sizeof(long long))));
};

/// Aligned by hand: what a vector type is aligned to depends on the instruction set that a function is compiled for.
/// Copied by hand: else compilers copy it in halves, and reading a whole that was just written in halves is slow.
struct alignas(lanes * sizeof(double)) Four {
    using Vector = double __attribute__((vector_size(lanes * sizeof(double))));
    Vector v;

    Four() = default;
    COVERFRAME_INLINE Four(const Vector& all) : v(all) {}
    COVERFRAME_INLINE Four(const Four& other) : v(other.v) {}
    COVERFRAME_INLINE Four& operator=(const Four& other) {
        v = other.v;
        return *this;
    }

    COVERFRAME_INLINE double operator[](int lane) const { return v[lane]; }
};

COVERFRAME_INLINE Four operator+(const Four& a, const Four& b) { return {a.v + b.v}; }
COVERFRAME_INLINE Four operator-(const Four& a, const Four& b) { return {a.v - b.v}; }
COVERFRAME_INLINE Four operator*(const Four& a, const Four& b) { return {a.v * b.v}; }
COVERFRAME_INLINE Four operator/(const Four& a, const Four& b) { return {a.v / b.v}; }
COVERFRAME_INLINE Four operator+(double a, const Four& b) { return {a + b.v}; }
COVERFRAME_INLINE Four operator-(double a, const Four& b) { return {a - b.v}; }
COVERFRAME_INLINE Four operator*(double a, const Four& b) { return {a * b.v}; }
COVERFRAME_INLINE Four operator/(double a, const Four& b) { return {a / b.v}; }
COVERFRAME_INLINE Four operator+(const Four& a, double b) { return {a.v + b}; }
COVERFRAME_INLINE Four operator-(const Four& a, double b) { return {a.v - b}; }
COVERFRAME_INLINE Four operator*(const Four& a, double b) { return {a.v * b}; }
COVERFRAME_INLINE Four operator/(const Four& a, double b) { return {a.v / b}; }
COVERFRAME_INLINE Four operator-(const Four& a) { return {-a.v}; }
COVERFRAME_INLINE Four& operator+=(Four& a, const Four& b) {
    a.v += b.v;
    return a;
}
COVERFRAME_INLINE Four& operator-=(Four& a, const Four& b) {
    a.v -= b.v;
    return a;
}

COVERFRAME_INLINE FourTruths operator<(const Four& a, const Four& b) { return {a.v < b.v}; }
COVERFRAME_INLINE FourTruths operator>(const Four& a, const Four& b) { return {a.v > b.v}; }
COVERFRAME_INLINE FourTruths operator>=(const Four& a, const Four& b) { return {a.v >= b.v}; }
COVERFRAME_INLINE FourTruths operator<=(const Four& a, const Four& b) { return {a.v <= b.v}; }
COVERFRAME_INLINE FourTruths operator&(const FourTruths& a, const FourTruths& b) { return {a.v & b.v}; }

COVERFRAME_INLINE bool all(bool truth) { return truth; }
COVERFRAME_INLINE bool all(const FourTruths& t) { return (t.v[0] & t.v[1] & t.v[2] & t.v[3]) != 0; }

/// Where `which` is true the first, elsewhere the second.
COVERFRAME_INLINE double select(bool which, double a, double b) { return which ? a : b; }
COVERFRAME_INLINE Four select(const FourTruths& which, const Four& a, const Four& b) { return {which.v ? a.v : b.v}; }

COVERFRAME_INLINE double square_root(double a) { return std::sqrt(a); }
COVERFRAME_INLINE Four square_root(const Four& a) {
    Four::Vector root = a.v;
#ifdef __x86_64__
    __m128d half[2];
    std::memcpy(half, &root, sizeof half);
    half[0] = _mm_sqrt_pd(half[0]);
    half[1] = _mm_sqrt_pd(half[1]);
    std::memcpy(&root, half, sizeof half);
#else
    for (int i = 0; i < lanes; ++i) root[i] = std::sqrt(a.v[i]);
#endif
    return root;
}

/// The larger one; a if neither is.
template <class N>
COVERFRAME_INLINE N larger(const N& a, const N& b) {
    return select(b > a, b, a);
}
template <class N>
COVERFRAME_INLINE N magnitude(const N& a) {
    return select(a < 0 * a, -a, a);
}

/// `value` in every lane.
template <class N>
COVERFRAME_INLINE N number(double value) {
    if constexpr (sizeof(N) == sizeof(double)) {
        return value;
    } else {
        return {typename N::Vector{} + value};
    }
}
/// What is one number a lane already.
template <class N>
COVERFRAME_INLINE N number(const Four& value) {
    return value;
}

/// N from where its lanes stand side by side.
template <class N>
COVERFRAME_INLINE N load(const double* from) {
    if constexpr (sizeof(N) == sizeof(double)) {
        return *from;
    } else {
        typename N::Vector all;
        std::memcpy(&all, from, sizeof all);
        return all;
    }
}
COVERFRAME_INLINE void store(double n, double* to) { *to = n; }
COVERFRAME_INLINE void store(const Four& n, double* to) {
    const Four::Vector all = n.v;
    std::memcpy(to, &all, sizeof all);
}

/// Coefficients of 1, x, x^2, ...
template <int terms>
struct Series {
    double coefficient[terms];
};

/// Horner's rule on the first `used` terms.
template <int used, int terms, class N>
COVERFRAME_INLINE N sum_of(const Series<terms>& series, const N& x) {
    static_assert(2 <= used && used <= terms);
    N sum = series.coefficient[used - 2] + series.coefficient[used - 1] * x;
    for (int n = used - 3; n >= 0; --n) sum = series.coefficient[n] + sum * x;
    return sum;
}

}  // namespace coverframe::kernel
