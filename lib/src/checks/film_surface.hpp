// SPDX-License-Identifier: BSD-3-Clause
// The film between its strips: drawn and loaded height over any point of the plan.
//
// Along the boat the film is straight between neighbouring strips of one side; across it follows the strip. A point
// between two strips lies at the fraction s of the way from ridge to rail, both interpolated at its x.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "coverframe/checks/check.hpp"

namespace coverframe::checks_detail {

/// Heights of the film over one point [m].
struct FilmHeight {
    double drawn = 0;
    double loaded = 0;
};

class FilmSurface {
public:
    explicit FilmSurface(const CheckInput& input);

    /// Empty where there is no film over the point: before the first or behind the last strip, or outside the rail.
    [[nodiscard]] std::optional<FilmHeight> over(double x, double y) const;

private:
    /// A strip, drawn and loaded.
    struct Line {
        double x = 0;
        std::array<double, 3> drawn{};   ///< its upper end
        std::array<double, 3> loaded{};  ///< its upper end
        std::array<double, 3> rail{};
        const StripState* state = nullptr;
    };

    [[nodiscard]] std::optional<double> height(double x, double y, bool loaded) const;

    std::array<std::vector<Line>, 2> sides_;  ///< port, starboard; from bow to stern
};

}  // namespace coverframe::checks_detail
