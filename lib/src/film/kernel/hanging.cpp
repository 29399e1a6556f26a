// SPDX-License-Identifier: BSD-3-Clause
#include "film/kernel/hanging.hpp"

#include <array>
#include <cmath>

#include "frame/kernel/numbers.hpp"

namespace coverframe::kernel {

namespace {

/// Points and weights of Gauss-Legendre quadrature on -1/2 to 1/2: those of the positive half, then their mirror
/// images. Source: Abramowitz and Stegun, table 25.4, from memory; checked by the tests on polynomials of the highest
/// degree.
template <int points>
struct Quadrature {
    std::array<double, points> place{};
    std::array<double, points> weight{};

    constexpr Quadrature(const std::array<double, points / 2>& abscissa, const std::array<double, points / 2>& share) {
        for (std::size_t i = 0; i < points / 2; ++i) {
            place[i] = 0.5 * abscissa[i];
            place[i + points / 2] = -0.5 * abscissa[i];
            weight[i] = weight[i + points / 2] = 0.5 * share[i];
        }
    }
};

constexpr Quadrature<8> eight({0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363},
                              {0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763});
constexpr Quadrature<12> twelve({0.1252334085114689, 0.3678314989981802, 0.5873179542866175, 0.7699026741943047,
                                 0.9041172563704749, 0.9815606342467193},
                                {0.2491470458134028, 0.2334925365383548, 0.2031674267230659, 0.1600783285433462,
                                 0.1069393259953184, 0.0471753363865118});
constexpr Quadrature<20> twenty({0.0765265211334973, 0.2277858511416451, 0.3737060887154195, 0.5108670019508271,
                                 0.6360536807265150, 0.7463319064601508, 0.8391169718222188, 0.9122344282513259,
                                 0.9639719272779138, 0.9931285991850949},
                                {0.1527533871307258, 0.1491729864726037, 0.1420961093183820, 0.1316886384491766,
                                 0.1181945319615184, 0.1019301198172404, 0.0832767415767048, 0.0626720483341091,
                                 0.0406014298003869, 0.0176140071391521});

/// What the integrals are of: rho/stretch and the parts of its derivatives, stretch = 1 + c rho.
struct Integrand {
    double L, h, bow, c;
};

/// Integrals of rho/stretch, (Z/rho)/stretch^2 (s - 1/2), (Z/rho)/stretch^2, 1/(rho stretch^2), (rho/stretch)^2.
struct Integrals {
    double length, lever, slope, inverse, square;
};

COVERFRAME_INLINE double total(const Four& a) { return (a[0] + a[2]) + (a[1] + a[3]); }

template <int points>
COVERFRAME_INLINE void integrate(const Quadrature<points>& q, const Integrand& f, Integrals& out) {
    static_assert(points % lanes == 0);
    Four length{}, lever{}, slope{}, inverse{}, square{};
    for (std::size_t i = 0; i < points; i += lanes) {
        const Four away = load<Four>(&q.place[i]);  // s - 1/2
        const Four weight = load<Four>(&q.weight[i]);
        const Four Z = f.h + f.bow * away;
        const Four rho = square_root(f.L * f.L + Z * Z);
        const Four free = 1 / (1 + f.c * rho);
        const Four part = rho * free;
        const Four w_rho = weight * free * free / rho;
        const Four w_slope = w_rho * Z;
        length += weight * part;
        lever += w_slope * away;
        slope += w_slope;
        inverse += w_rho;
        square += weight * part * part;
    }
    out = {total(length), total(lever), total(slope), total(inverse), total(square)};
}

COVERFRAME_INLINE void integrate_all(const Integrand& f, Integrals& out) {
    if (f.bow <= 0.4 * f.L && f.bow >= -0.4 * f.L) {
        integrate(eight, f, out);
    } else if (f.bow <= 0.8 * f.L && f.bow >= -0.8 * f.L) {
        integrate(twelve, f, out);
    } else {
        integrate(twenty, f, out);
    }
}

void integrate_anywhere(const Integrand& f, Integrals& out) { integrate_all(f, out); }
#ifdef COVERFRAME_AVX2
COVERFRAME_AVX2 void integrate_avx2(const Integrand& f, Integrals& out) { integrate_all(f, out); }
#endif

Integrals integrals(const Integrand& f) {
    Integrals out;
#ifdef COVERFRAME_AVX2
    if (has_avx2()) {
        integrate_avx2(f, out);
        return out;
    }
#endif
    integrate_anywhere(f, out);
    return out;
}

}  // namespace

FittingLength fitting_length(double H, double L, double h, double W, double EA) {
    const double bow = W * L / H;  // Z = h + bow (s - 1/2)
    const double c = H / (L * EA);
    const Integrals sum = integrals({L, h, bow, c});
    // d[rho/stretch] = d rho/stretch^2 - rho^2/stretch^2 dc
    FittingLength fit;
    fit.value = sum.length;
    fit.by_H = -(sum.lever * (bow / H) + sum.square / (L * EA));
    fit.by_h = sum.slope;
    fit.by_L = L * sum.inverse + (W / H) * sum.lever + sum.square * (c / L);
    return fit;
}

}  // namespace coverframe::kernel
