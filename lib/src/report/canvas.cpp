// SPDX-License-Identifier: BSD-3-Clause
#include "report/canvas.hpp"

#include <algorithm>
#include <array>
#include <cmath>

#include "report/format.hpp"
#include "report/text.hpp"

namespace coverframe::reporting {
namespace {

constexpr double line_pitch = 1.2;  // of the letter size
constexpr double gap = 4;           // between labels [px]

std::string px(double value) {
    std::string text = fixed(value, 2);
    while (text.back() == '0') text.pop_back();
    if (text.back() == '.') text.pop_back();
    return text == "-0" || text.empty() ? "0" : text;
}

std::string pair_of(Spot spot) { return px(spot.x) + ',' + px(spot.y); }

std::string attribute(std::string_view name, std::string_view value) {
    return ' ' + std::string(name) + "=\"" + std::string(value) + '"';
}

std::string attributes_of(const Pen& pen) {
    std::string text = attribute("fill", pen.fill);
    if (pen.width <= 0) return text + attribute("stroke", "none");
    text += attribute("stroke", pen.colour) + attribute("stroke-width", px(pen.width));
    if (!pen.dashes.empty()) text += attribute("stroke-dasharray", pen.dashes);
    return text;
}

double width_of(const Words& text) {
    double width = 0;
    for (std::size_t i = 0; i < text.lines.size(); ++i) {
        width = std::max(width, text_width(text.lines[i], text.size, text.bold && i == 0));
    }
    return width;
}

double height_of(const Words& text) { return static_cast<double>(text.lines.size()) * text.size * line_pitch; }

// Letters as wide as those of the wider common faces, in the em.
double em_of(char c) {
    constexpr std::string_view thin = "il.,;:'|!()[]/";
    constexpr std::string_view narrow = "jtfrI- ";
    constexpr std::string_view wide = "mwMWOQ%@+<>=&#~";
    if (thin.find(c) != std::string_view::npos) return 0.40;
    if (narrow.find(c) != std::string_view::npos) return 0.43;
    if (wide.find(c) != std::string_view::npos) return 0.98;
    if (c >= 'A' && c <= 'Z') return 0.79;
    return 0.65;
}

}  // namespace

bool overlap(const Box& a, const Box& b) {
    return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
}

double text_width(std::string_view text, double size, bool bold) {
    double em = 0;
    for (const char c : text) {
        const unsigned char byte = static_cast<unsigned char>(c);
        if (byte < 0x80) em += em_of(c);
        else if (byte >= 0xC0) em += 1.0;  // one for each character beyond ASCII
    }
    return em * size * (bold ? 1.15 : 1.0);
}

void Canvas::grow(Spot spot, double by) {
    const Box box{spot.x - by, spot.y - by, spot.x + by, spot.y + by};
    if (empty_) extent_ = box;
    empty_ = false;
    extent_ = {std::min(extent_.left, box.left), std::min(extent_.top, box.top), std::max(extent_.right, box.right),
               std::max(extent_.bottom, box.bottom)};
}

bool Canvas::is_free(const Box& box) const {
    const auto covers = [&](const Box& other) { return overlap(box, other); };
    return std::ranges::none_of(taken_, covers) && std::ranges::none_of(kept_, covers);
}

void Canvas::line(Spot from, Spot to, const Pen& pen) {
    grow(from, pen.width / 2);
    grow(to, pen.width / 2);
    drawing_ += "<line" + attribute("x1", px(from.x)) + attribute("y1", px(from.y)) + attribute("x2", px(to.x)) +
                attribute("y2", px(to.y)) + attributes_of(pen) + "/>\n";
}

void Canvas::path(const std::vector<Spot>& spots, const Pen& pen, bool closed) {
    if (spots.size() < 2) return;
    std::string points;
    for (const Spot& spot : spots) {
        grow(spot, pen.width / 2);
        points += (points.empty() ? "" : " ") + pair_of(spot);
    }
    drawing_ += (closed ? "<polygon" : "<polyline") + attribute("points", points) + attributes_of(pen) +
                attribute("stroke-linejoin", "round") + "/>\n";
}

void Canvas::dot(Spot at, double radius, const Pen& pen) {
    grow(at, radius + pen.width / 2);
    drawing_ += "<circle" + attribute("cx", px(at.x)) + attribute("cy", px(at.y)) + attribute("r", px(radius)) +
                attributes_of(pen) + "/>\n";
}

void Canvas::words(Spot at, const Words& text, Anchor anchor) {
    constexpr std::array names{"start", "middle", "end"};
    const double width = width_of(text);
    const double left = anchor == Anchor::start ? at.x : anchor == Anchor::middle ? at.x - width / 2 : at.x - width;
    const Box box{left, at.y, left + width, at.y + height_of(text)};
    grow({box.left, box.top});
    grow({box.right, box.bottom});
    taken_.push_back(box);
    for (std::size_t i = 0; i < text.lines.size(); ++i) {
        const double base = at.y + (static_cast<double>(i) * line_pitch + 0.93) * text.size;
        writing_ += "<text" + attribute("x", px(at.x)) + attribute("y", px(base)) +
                    attribute("font-size", px(text.size)) +
                    attribute("text-anchor", names[static_cast<std::size_t>(anchor)]) +
                    (text.bold && i == 0 ? attribute("font-weight", "bold") : "") + attribute("fill", text.colour) +
                    '>' + escaped(text.lines[i]) + "</text>\n";
    }
}

void Canvas::keep_free(const std::vector<Spot>& line) {
    constexpr double step = 6;
    for (std::size_t i = 0; i + 1 < line.size(); ++i) {
        const Spot a = line[i];
        const Spot b = line[i + 1];
        const int pieces = 1 + static_cast<int>(std::hypot(b.x - a.x, b.y - a.y) / step);
        for (int k = 0; k < pieces; ++k) {
            const auto at = [&](int j) {
                const double t = static_cast<double>(j) / pieces;
                return Spot{a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)};
            };
            const Spot p = at(k);
            const Spot q = at(k + 1);
            kept_.push_back(
                {std::min(p.x, q.x) - 1, std::min(p.y, q.y) - 1, std::max(p.x, q.x) + 1, std::max(p.y, q.y) + 1});
        }
    }
}

bool Canvas::words_near(const Label& label, const Box& within, Near side) {
    const double w = width_of(label.words);
    const double h = height_of(label.words);
    const Spot at = label.at;
    for (const double away : {4.0, 8.0, 13.0, 19.0, 26.0}) {
        const std::array<Spot, 4> beside{Spot{at.x + away, at.y - h / 2}, Spot{at.x - away - w, at.y - h / 2},
                                         Spot{at.x - w / 2, at.y - away - h}, Spot{at.x - w / 2, at.y + away}};
        const std::array<Spot, 9> corners{beside[static_cast<std::size_t>(side)],
                                          beside[0], beside[1], beside[2], beside[3],
                                          Spot{at.x + away, at.y - away - h}, Spot{at.x + away, at.y + away},
                                          Spot{at.x - away - w, at.y - away - h}, Spot{at.x - away - w, at.y + away}};
        for (const Spot& corner : corners) {
            const Box box{corner.x, corner.y, corner.x + w, corner.y + h};
            const bool inside = box.left >= within.left && box.right <= within.right && box.top >= within.top &&
                                box.bottom <= within.bottom;
            if (!inside || !is_free(box)) continue;
            const Spot nearest{std::clamp(at.x, box.left, box.right), std::clamp(at.y, box.top, box.bottom)};
            if (away > 8.0) line(at, nearest, {.width = 0.6, .colour = colour::grey});
            words(corner, label.words);
            return true;
        }
    }
    return false;
}

bool Canvas::words_on_plate(const Label& label) {
    constexpr double rim = 1.5;
    const double w = width_of(label.words);
    const double h = height_of(label.words);
    const Spot corner{label.at.x - w / 2, label.at.y - h / 2};
    const Box box{corner.x, corner.y, corner.x + w, corner.y + h};
    if (std::ranges::any_of(taken_, [&](const Box& other) { return overlap(box, other); })) return false;
    writing_ += "<rect" + attribute("x", px(corner.x - rim)) + attribute("y", px(corner.y - rim)) +
                attribute("width", px(w + 2 * rim)) + attribute("height", px(h + 2 * rim)) +
                attribute("fill", "#ffffff") + "/>\n";
    words(corner, label.words);
    return true;
}

void Canvas::flags_above(std::vector<Label> labels) { flags(std::move(labels), true); }
void Canvas::flags_below(std::vector<Label> labels) { flags(std::move(labels), false); }

// Text stands to the right of its line. Taken from the right, a label goes above every label its text reaches over. So
// no text meets another, and no line meets a text: lines to the left of a text pass it, those to the right stop under
// it.
void Canvas::flags(std::vector<Label> labels, bool above) {
    if (labels.empty()) return;
    std::ranges::stable_sort(labels, [](const Label& a, const Label& b) { return a.at.x > b.at.x; });
    const double base = above ? extent_.top - 2 * gap : extent_.bottom + 2 * gap;
    struct Placed {
        double x;
        double top;  // distance from the base to its far edge
    };
    std::vector<Placed> placed;
    for (const Label& label : labels) {
        const double reach = label.at.x + width_of(label.words) + 3 * gap;
        double level = 0;
        for (const Placed& other : placed) {
            if (other.x < reach) level = std::max(level, other.top + gap);
        }
        const double height = height_of(label.words);
        placed.push_back({label.at.x, level + height});
        const double far_edge = above ? base - level - height : base + level + height;
        line(label.at, {label.at.x, far_edge}, {.width = 0.6, .colour = colour::grey});
        words({label.at.x + gap, above ? far_edge : far_edge - height}, label.words);
    }
}

std::string Canvas::svg(double width, std::string_view title) const {
    constexpr double margin = 6;
    const double across = extent_.right - extent_.left + 2 * margin;
    const double down = extent_.bottom - extent_.top + 2 * margin;
    const double shown_width = std::min(width, std::max(across, 1.0));
    std::string out = "<svg xmlns=\"http://www.w3.org/2000/svg\"" + attribute("width", px(shown_width)) +
                      attribute("height", px(down * shown_width / std::max(across, 1.0))) +
                      attribute("viewBox", px(extent_.left - margin) + ' ' + px(extent_.top - margin) + ' ' +
                                               px(across) + ' ' + px(down)) +
                      attribute("font-family", "Helvetica, Arial, sans-serif") + attribute("role", "img") + ">\n";
    out += "<title>" + escaped(one_line(title)) + "</title>\n";
    return out + drawing_ + writing_ + "</svg>\n";
}

}  // namespace coverframe::reporting
