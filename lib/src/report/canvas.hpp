// SPDX-License-Identifier: BSD-3-Clause
// A sheet to draw on: collects lines and text in picture coordinates (x right, y down, CSS px), keeps count of the
// place they take, and writes them as one SVG element. Text that is written once is never covered by other text.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace coverframe::reporting {

struct Spot {
    double x = 0;
    double y = 0;
};

struct Box {
    double left = 0;
    double top = 0;
    double right = 0;
    double bottom = 0;
};

[[nodiscard]] bool overlap(const Box& a, const Box& b);

/// Width of a line of text, on the safe side for the common sans-serif faces [px].
[[nodiscard]] double text_width(std::string_view text, double size, bool bold = false);

namespace colour {
inline constexpr std::string_view ink = "#000000";
inline constexpr std::string_view grey = "#767676";
inline constexpr std::string_view pale = "#ececec";
inline constexpr std::string_view water = "#1f4e9c";     ///< dark in grey print, always hatched
inline constexpr std::string_view obstacle = "#c2571a";  ///< middle grey in grey print, always outlined
}  // namespace colour

struct Pen {
    double width = 1;                        ///< [px]; 0: no line
    std::string_view colour = colour::ink;
    std::string_view dashes = {};            ///< "4 3"; empty: full
    std::string_view fill = "none";
};

enum class Anchor { start, middle, end };
enum class Near { right, left, above, below };

struct Words {
    std::vector<std::string> lines;
    double size = 10;
    bool bold = false;           ///< of the first line
    std::string_view colour = colour::ink;
};

/// A text that belongs to a place of the drawing.
struct Label {
    Spot at;                     ///< what it points to
    Words words;
};

class Canvas {
public:
    void line(Spot from, Spot to, const Pen& pen);
    void path(const std::vector<Spot>& spots, const Pen& pen, bool closed = false);
    void dot(Spot at, double radius, const Pen& pen);

    /// Lines below one another, the first with its top at `at`.
    void words(Spot at, const Words& text, Anchor anchor = Anchor::start);

    /// Tries the places round the spot, near ones first, on the given side before the others.
    /// \return false if the text would cover another, a place kept free, or leave `within`
    [[nodiscard]] bool words_near(const Label& label, const Box& within, Near side = Near::right);

    /// On a white plate in the middle of its spot, over lines and hatching.
    /// \return false if it would cover another text
    [[nodiscard]] bool words_on_plate(const Label& label);

    /// Labels in rows above the drawing as it is now, each on a thin line from what it names.
    void flags_above(std::vector<Label> labels);
    /// The same below it.
    void flags_below(std::vector<Label> labels);

    /// Keeps later labels of words_near() off a line.
    void keep_free(const std::vector<Spot>& line);

    [[nodiscard]] const Box& extent() const { return extent_; }

    /// \param width  of the picture [px]
    /// \param title  what it shows, for a reader who cannot see it
    [[nodiscard]] std::string svg(double width, std::string_view title) const;

private:
    void flags(std::vector<Label> labels, bool above);
    void grow(Spot spot, double by = 0);
    [[nodiscard]] bool is_free(const Box& box) const;

    std::string drawing_;
    std::string writing_;      // after the drawing, so that no line runs over text
    std::vector<Box> taken_;   // by text
    std::vector<Box> kept_;    // by lines that text stays off
    Box extent_;
    bool empty_ = true;
};

}  // namespace coverframe::reporting
