// SPDX-License-Identifier: BSD-3-Clause
#include "report/html.hpp"

#include "coverframe/units/crossing.hpp"
#include "report/format.hpp"
#include "report/text.hpp"

namespace coverframe::reporting {

std::string wrap(std::string_view name, std::string_view html, std::string_view css_class) {
    std::string out = '<' + std::string(name);
    if (!css_class.empty()) out += " class=\"" + std::string(css_class) + '"';
    return out + '>' + std::string(html) + "</" + std::string(name) + '>';
}

std::string tag(std::string_view name, std::string_view text, std::string_view css_class) {
    return wrap(name, escaped(text), css_class);
}

std::string value_html(double value, std::string_view unit, UnitsShown units, int digits, double beside) {
    const Shown pair = shown(value, unit, units, digits, beside);
    std::string html = tag("span", pair.first, "n");
    if (!pair.other.empty()) html += ' ' + tag("span", '(' + pair.other + ')', "n o");
    return html;
}

std::string value_html(Length length, UnitsShown units) { return value_html(in_m(length), "m", units); }
std::string value_html(Force force, UnitsShown units) { return value_html(in_N(force), "N", units); }

std::string table_html(const Table& table, std::string_view css_class) {
    if (table.rows.empty()) return {};
    std::string head;
    for (const std::string& cell : table.head) head += tag("th", cell);
    std::string body;
    for (const std::vector<std::string>& row : table.rows) {
        std::string cells;
        for (const std::string& cell : row) cells += wrap("td", cell);
        body += wrap("tr", cells) + '\n';
    }
    return wrap("table", wrap("thead", wrap("tr", head)) + "\n" + wrap("tbody", body), css_class) + '\n';
}

std::string part_html(std::string_view heading, std::string_view html, std::string_view css_class) {
    if (html.empty()) return {};
    return wrap("section", '\n' + tag("h2", heading) + '\n' + std::string(html), css_class) + '\n';
}

std::string list_html(const std::vector<std::string>& sentences, std::string_view css_class) {
    if (sentences.empty()) return {};
    std::string items;
    for (const std::string& sentence : sentences) items += tag("li", sentence) + '\n';
    return wrap("ul", '\n' + items, css_class) + '\n';
}

}  // namespace coverframe::reporting
