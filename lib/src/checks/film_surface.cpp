// SPDX-License-Identifier: BSD-3-Clause
#include "film_surface.hpp"

#include <algorithm>

#include "common.hpp"

namespace coverframe::checks_detail {
namespace {

constexpr double edge = 1e-9;  // [m] and [-]: how far past an edge a point still belongs to it

double between(double a, double b, double t) { return a + t * (b - a); }

}  // namespace

FilmSurface::FilmSurface(const CheckInput& input) {
    const Frame& frame = input.cover.layout.frame;
    for (const Side side : {Side::port, Side::starboard}) {
        for (const int i : strips_of(input.cover, side)) {
            const CoverStrip& strip = input.cover.strips[at(i)];
            const std::array<double, 3>& drawn = frame.nodes[at(strip.node)].at;
            sides_[side == Side::port ? 0 : 1].push_back({drawn[0], drawn,
                                                          place_of(frame, input.state.frame, strip.node), strip.rail,
                                                          &input.state.strips[at(i)]});
        }
    }
}

std::optional<double> FilmSurface::height(double x, double y, bool loaded) const {
    for (const std::vector<Line>& side : sides_) {
        if (side.empty() || x < side.front().x - edge || x > side.back().x + edge) continue;
        const auto after = std::ranges::lower_bound(side, x, {}, &Line::x);
        const Line& b = after == side.end() ? side.back() : *after;
        const Line& a = after == side.begin() || after == side.end() ? b : *(after - 1);
        const double t = b.x > a.x ? (x - a.x) / (b.x - a.x) : 0.0;
        const auto upper = [&](const Line& line) -> const std::array<double, 3>& {
            return loaded ? line.loaded : line.drawn;
        };
        const double ridge = between(upper(a)[1], upper(b)[1], t);
        const double rail = between(a.rail[1], b.rail[1], t);
        const double s = (y - ridge) / (rail - ridge);
        if (!(s >= -edge && s <= 1.0 + edge)) continue;
        const auto z = [&](const Line& line) {
            return upper(line)[2] + (loaded ? line.state->height(s) : s * (line.rail[2] - line.drawn[2]));
        };
        return between(z(a), z(b), t);
    }
    return std::nullopt;
}

std::optional<FilmHeight> FilmSurface::over(double x, double y) const {
    const std::optional<double> drawn = height(x, y, false);
    const std::optional<double> loaded = height(x, y, true);
    if (!drawn || !loaded) return std::nullopt;
    return FilmHeight{*drawn, *loaded};
}

}  // namespace coverframe::checks_detail
