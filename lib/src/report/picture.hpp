// SPDX-License-Identifier: BSD-3-Clause
// What the three drawings share: fitting to the width, scale bar, key to the lines, names cut to a length.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "coverframe/assess/assess.hpp"
#include "coverframe/report/drawing.hpp"
#include "report/canvas.hpp"

namespace coverframe::reporting {

namespace pen {
inline constexpr Pen loaded{.width = 2.4, .colour = colour::ink};
inline constexpr Pen drawn{.width = 0.9, .colour = colour::ink, .dashes = "5 3"};
inline constexpr Pen outline{.width = 0.8, .colour = colour::grey};
inline constexpr Pen rail{.width = 1.4, .colour = colour::ink};
inline constexpr Pen band{.width = 1.6, .colour = colour::grey, .dashes = "9 3 2 3"};
inline constexpr Pen strap{.width = 1.1, .colour = colour::ink, .dashes = "1.5 2.5"};
inline constexpr Pen upright{.width = 1.1, .colour = colour::ink, .fill = "#ffffff"};
inline constexpr Pen soft_foot{.width = 1.4, .colour = colour::ink};
inline constexpr Pen stand{.width = 0.8, .colour = colour::grey, .dashes = "2 2"};
inline constexpr Pen obstacle{.width = 2.0, .colour = colour::obstacle};
inline constexpr Pen water{.width = 0.9, .colour = colour::water};
inline constexpr Pen film{.width = 0, .fill = colour::pale};
}  // namespace pen

/// A name as a label can hold it: the first 28 characters.
[[nodiscard]] std::string short_name(std::string_view name);

/// A line of the key under a drawing.
struct KeyLine {
    Pen pen;
    std::string text;
};

/// Words at the two ends of the drawing, left and right, at the height of its middle.
void name_ends(Canvas& canvas, std::string_view left, std::string_view right);

/// Scale bar, then the key, under everything drawn so far.
/// \param scale  [px/m]
void finish(Canvas& canvas, double scale, double width, UnitsShown units, const std::vector<KeyLine>& key);

/// The key's line for the loaded shape, or what to say if there is none.
[[nodiscard]] KeyLine key_of_shape(const Assessment& assessment);

/// Draws with smaller scales until the drawing is no wider than `width`; `draw` takes a scale and gives a Canvas.
template <class Draw>
[[nodiscard]] Canvas fitted(Draw draw, double scale, double width) {
    constexpr int tries = 6;
    Canvas canvas = draw(scale);
    for (int i = 0; i < tries; ++i) {
        const double across = canvas.extent().right - canvas.extent().left + 12;
        if (across <= width) break;
        scale *= 0.98 * width / across;
        canvas = draw(scale);
    }
    return canvas;
}

/// Every drawn member of a found frame, seen through `spot`, which maps a Point to the picture.
template <class ToSpot>
void draw_found(Canvas& canvas, const FoundFrame& found, ToSpot spot) {
    const auto place = [&](const std::string& name) -> const FoundNode* {
        for (const FoundNode& node : found.nodes) {
            if (node.name == name) return &node;
        }
        return nullptr;
    };
    for (const FoundMember& member : found.members) {
        const FoundNode* from = place(member.from);
        const FoundNode* to = place(member.to);
        if (from == nullptr || to == nullptr) continue;
        const Pen& pen = member.kind == FoundKind::strap  ? pen::strap
                         : member.kind == FoundKind::pole ? pen::drawn
                                                          : pen::rail;
        const std::vector<Spot> line{spot(from->at), spot(to->at)};
        canvas.path(line, pen);
        canvas.keep_free(line);
    }
}

}  // namespace coverframe::reporting
