// SPDX-License-Identifier: BSD-3-Clause
#include "report/picture.hpp"

#include <algorithm>
#include <array>
#include <utility>

#include "coverframe/units/crossing.hpp"
#include "report/format.hpp"
#include "report/text.hpp"

namespace coverframe::reporting {
namespace {

constexpr double small_size = 9.5;

struct ScaleStep {
    double metres;
    std::string_view text;
};

// The longest bar of not more than `limit` metres.
ScaleStep scale_step(double limit, UnitsShown units) {
    constexpr std::array si{ScaleStep{0.1, "100 mm"}, ScaleStep{0.2, "200 mm"}, ScaleStep{0.5, "500 mm"},
                            ScaleStep{1, "1 m"},      ScaleStep{2, "2 m"},      ScaleStep{5, "5 m"},
                            ScaleStep{10, "10 m"}};
    constexpr std::array us{ScaleStep{4 * factor::inch, "4 in"}, ScaleStep{6 * factor::inch, "6 in"},
                            ScaleStep{factor::foot, "1 ft"},     ScaleStep{2 * factor::foot, "2 ft"},
                            ScaleStep{5 * factor::foot, "5 ft"}, ScaleStep{10 * factor::foot, "10 ft"},
                            ScaleStep{20 * factor::foot, "20 ft"}};
    const auto& steps = units == UnitsShown::us ? us : si;
    ScaleStep best = steps.front();
    for (const ScaleStep& step : steps) {
        if (step.metres <= limit) best = step;
    }
    return best;
}

// Lines no wider than `width`, broken at spaces.
std::vector<std::string> fitted_lines(std::string_view text, double width) {
    std::vector<std::string> lines;
    std::string line;
    const std::string words = one_line(text) + ' ';
    for (std::size_t at = 0; at < words.size();) {
        const std::size_t end = words.find(' ', at);
        const std::string word = words.substr(at, end - at);
        const std::string longer = line.empty() ? word : line + ' ' + word;
        if (!line.empty() && text_width(longer, small_size) > width) {
            lines.push_back(line);
            line = word;
        } else {
            line = longer;
        }
        at = end + 1;
    }
    lines.push_back(line);
    return lines;
}

}  // namespace

std::string short_name(std::string_view name) {
    constexpr std::size_t most = 28;
    const std::vector<std::string> lines = wrapped(name, most);
    return lines.size() == 1 ? lines.front() : lines.front() + " ...";
}

void name_ends(Canvas& canvas, std::string_view left, std::string_view right) {
    const Box box = canvas.extent();
    const double y = (box.top + box.bottom) / 2 - 6;
    canvas.words({box.left - 8, y}, {.lines = {std::string(left)}, .size = 11, .bold = true}, Anchor::end);
    canvas.words({box.right + 8, y}, {.lines = {std::string(right)}, .size = 11, .bold = true});
}

void finish(Canvas& canvas, double scale, double width, UnitsShown units, const std::vector<KeyLine>& key) {
    constexpr double sample = 30;
    constexpr double pitch = 1.25 * small_size;
    const Box box = canvas.extent();
    double y = box.bottom + 14;
    const ScaleStep step = scale_step(0.25 * (box.right - box.left) / scale, units);
    const double length = step.metres * scale;
    canvas.path({{box.left, y - 4},
                 {box.left, y + 4},
                 {box.left, y},
                 {box.left + length, y},
                 {box.left + length, y - 4},
                 {box.left + length, y + 4}},
                {.width = 1.2});
    canvas.words({box.left + length + 8, y - 6},
                 {.lines = {std::string(step.text) + "  (the same scale both ways)"}, .size = small_size});
    y += 14;
    for (const KeyLine& line : key) {
        const std::vector<std::string> lines = fitted_lines(line.text, std::max(100.0, width - sample - 24));
        canvas.line({box.left, y + 0.55 * small_size}, {box.left + sample - 6, y + 0.55 * small_size}, line.pen);
        canvas.words({box.left + sample, y}, {.lines = lines, .size = small_size});
        y += pitch * static_cast<double>(lines.size());
    }
}

KeyLine key_of_shape(const Assessment& assessment) {
    if (assessment.shape.empty())
        return {pen::drawn, "as drawn; no loaded shape, because no balance of forces was found"};
    return {pen::loaded, "under load, where the film comes down furthest: " + assessment.shape_of};
}

}  // namespace coverframe::reporting
