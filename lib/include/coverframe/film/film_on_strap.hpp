// SPDX-License-Identifier: BSD-3-Clause
// Film that lies on a strap which gives way: what it brings to the strap.
//
// A leg of a cross strap runs from the ridge down to the rail, and so does the film beside it, on the same chord. Far
// from the leg the film hangs like strips of one metre's width (strip.hpp) with the sag f_m. Over the leg it can sink
// no further than the leg does, by f_s. In between, film pulled along the boat climbs up onto the leg, and its pull
// times its slope there is what the leg carries. Where the leg sinks as far as the film would without it, it carries
// nothing.
//
// Both sags are parabolas square to the chord of length l; f(x) is the film's at the distance x from the leg, e the
// strain of its chord since it was shrunk, p the load square to the chord on its area, T_0 the tension it was shrunk
// to. E t is its stiffness and nu its contraction. Pull along the boat T_x is even between one support and the next;
// pull across is
//   T(f) = T_0 + nu (T_x - T_0) + E t (e + 8/3 (f/l)^2)
// One way to sag (Galerkin, weight 4 s (1 - s), s from ridge to rail) makes of the balance of a bay
//   4/5 T_x f'' = 8 T(f) f/l^2 - p,       so 2/5 T_x f'^2 = G(f_m) - G(f)
//   G(f) = p f - 4 (T_0 + nu (T_x - T_0) + E t e) (f/l)^2 - 16/3 E t (f/l)^4,     f_m: G' = 0
// and at the leg each side brings, as evenly spread load square to the chord,
//   r = min{ 4/5 T_x f'(0), p a/2 } + T_x k = min{ sqrt[8/5 T_x (G(f_m) - G(f_s))], p a/2 } + T_x k,   together >= 0
// a the length of the bay, k how much the chord of the film falls away from the leg's along the boat (mean of ridge and
// rail, per length), as where the ridge has a knee over an upright. Where the chords curve along the boat, by c per
// length, T_x c goes with p: a rounded rail makes the film hang in, a ridge that hangs down holds it up. T_x: the bay
// as a whole keeps its length,
//   T_x = T_0 + E t/(1 - nu^2) [nu (e + 8/3 (f_m/l)^2) + 16/21 (2/a) integral from f_s to f_m of f'/2 df]
// The leg itself, T_s0 its tension without film on it (negative: slack), EA its stiffness:
//   r_fore + r_aft = 8 f_s/l^2 [T_s0 + 8/3 EA (f_s/l)^2]
// Its one root f_s >= 0 is the answer. The load is vertical, W = r l/cos, cos of the slope of the chord.
//
// Limits that it keeps: a leg that cannot give carries 2 sqrt[8/5 T_x G(f_m)]; one that hangs lower than film of its
// own accord carries nothing; legs close together carry the whole load, p a/2 from each side; film without pull of its
// own or contraction brings the less, the longer the bay.
//
// Simplifications: film does not shear; each bay is taken where the bay is long (the film comes to f_m in the middle of
// it) and then limited to the bay's whole load: both bring more to the leg than there is; each bay keeps its length by
// itself; no friction along the leg.
//
// Against film as a surface (surface.hpp), a level ridge, legs of 1.5 m, bays of 1 to 6 m, 300 to 1000 Pa, straps of 60
// to 20,000 kN slack to tight, film of 60 to 250 MPa shrunk to 20 to 500 N/m: the leg pulls up to 3 % harder (and never
// 1 % less) than on columns 0.1 m apart, in bays of 1 m 3 to 8 %, of 0.5 m 13 to 18 %. An elastic sheet over a cable,
// solved outside the library, says the same (validation cases FS-01 to FS-08); FS-11 to FS-15 solve the equation above
// in bays that end, without its first integral.
//
// Sources: derived here; parabolic cable and shallow strains as in strip.hpp (Irvine, from memory).
#pragma once

#include <array>

namespace coverframe {

/// Film on one side of a leg, up to the next support along the boat. SI numbers: a kernel type.
struct FilmBeside {
    double bay = 0;     ///< a, to the next support [m]; 0: there is no film on this side
    double load = 0;    ///< p, square to the chord, per area of chord [Pa]
    double strain = 0;  ///< e, of the chord since the film was shrunk; negative where it has come shorter [-]
    double falls = 0;   ///< k, square to the chord per length along the boat, at the leg; negative where it rises [-]
    double curves = 0;  ///< c, how much k grows per length along the boat; negative where the ridge hangs down [1/m]
};

struct StrapUnderFilm {
    double chord = 0;           ///< l [m]
    double initial = 0;         ///< T_s0 [N]
    double stiffness = 0;       ///< EA [N]
    double film_stiffness = 0;  ///< E t [N/m]
    double poisson = 0;         ///< nu
    double shrunk = 0;          ///< T_0 [N/m]
    std::array<FilmBeside, 2> beside{};
};

/// What one side does.
struct FilmLift {
    double along = 0;     ///< T_x [N/m]
    double free_sag = 0;  ///< f_m [m]
    double brings = 0;    ///< r, negative where the chords rise [N/m]
    double relieves = 0;  ///< of r what the film hands over of its load, the rest is its knee over the leg [N/m]
    double reach = 0;     ///< (f_m - f_s)/f', the length of film that hands it over; 0 where none does [m]
};

struct FilmOnStrap {
    double sag = 0;      ///< f_s [m]
    double load = 0;     ///< r of both sides, square to the chord, per length of it [N/m]
    double tension = 0;  ///< along the chord [N]
    std::array<FilmLift, 2> beside{};
};

/// \throws InputError "film.on_strap" for a number that is not finite, a chord or stiffness of zero or less, a load,
///   bay or shrunk tension under zero, a contraction outside 0 to 0.5
[[nodiscard]] FilmOnStrap film_on_strap(const StrapUnderFilm& strap);

}  // namespace coverframe
