// SPDX-License-Identifier: BSD-3-Clause
// Reading back what the report wrote: is it well-formed, what does it say, where does its text stand.
#pragma once

#include <algorithm>
#include <cctype>
#include <cstdlib>
#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace markup {

/// An element's start with what follows it up to the next tag.
struct Element {
    std::string name;
    std::map<std::string, std::string> attributes;
    std::string text;  ///< unescaped
    bool closes = false;
    bool empty = false;
};

inline std::string unescaped(std::string text) {
    for (const auto& [from, to] :
         {std::pair{"&lt;", "<"}, {"&gt;", ">"}, {"&quot;", "\""}, {"&#39;", "'"}, {"&amp;", "&"}}) {
        for (std::size_t at = text.find(from); at != std::string::npos; at = text.find(from, at + 1)) {
            text.replace(at, std::string_view(from).size(), to);
        }
    }
    return text;
}

/// Every tag in order. `bad` gets a sentence for anything that is no XML.
inline std::vector<Element> elements(std::string_view xml, std::string& bad) {
    std::vector<Element> all;
    std::size_t at = 0;
    if (xml.starts_with("<!DOCTYPE html>")) at = 15;
    const auto check_text = [&](std::string_view text) {
        for (std::size_t i = text.find('&'); i != std::string_view::npos; i = text.find('&', i + 1)) {
            const std::string_view rest = text.substr(i);
            const bool known = rest.starts_with("&lt;") || rest.starts_with("&gt;") || rest.starts_with("&amp;") ||
                               rest.starts_with("&quot;") || rest.starts_with("&#39;");
            if (!known) bad = "an ampersand that is not escaped";
        }
        if (text.find('>') != std::string_view::npos) bad = "a > that is not escaped";
    };
    while (at < xml.size()) {
        const std::size_t open = xml.find('<', at);
        const std::string_view text = xml.substr(at, open == std::string_view::npos ? open : open - at);
        check_text(text);
        if (!all.empty()) all.back().text = unescaped(std::string(text));
        if (open == std::string_view::npos) break;
        const std::size_t close = xml.find('>', open);
        if (close == std::string_view::npos) {
            bad = "a tag that does not end";
            break;
        }
        std::string_view inside = xml.substr(open + 1, close - open - 1);
        Element element;
        if (inside.starts_with('/')) element.closes = true, inside.remove_prefix(1);
        if (inside.ends_with('/')) element.empty = true, inside.remove_suffix(1);
        const std::size_t space = inside.find(' ');
        element.name = std::string(inside.substr(0, space));
        while (space != std::string_view::npos && !inside.empty()) {
            const std::size_t equals = inside.find("=\"");
            if (equals == std::string_view::npos) break;
            const std::size_t end = inside.find('"', equals + 2);
            if (end == std::string_view::npos) {
                bad = "an attribute that does not end";
                break;
            }
            const std::string_view head = inside.substr(0, equals);
            const std::size_t last = head.rfind(' ');
            const std::string key(head.substr(last == std::string_view::npos ? 0 : last + 1));
            if (element.attributes.count(key) != 0) bad = "an attribute twice: " + key;
            element.attributes[key] = unescaped(std::string(inside.substr(equals + 2, end - equals - 2)));
            inside = inside.substr(end + 1);
        }
        all.push_back(element);
        at = close + 1;
    }
    return all;
}

/// Empty if the text is one well-formed element (after a document type); else what is wrong.
inline std::string trouble(std::string_view xml) {
    std::string bad;
    std::vector<std::string> open;
    std::size_t roots = 0;
    for (const Element& element : elements(xml, bad)) {
        if (element.closes) {
            if (open.empty() || open.back() != element.name) return "</" + element.name + "> closes nothing";
            open.pop_back();
        } else {
            roots += open.empty() ? 1U : 0U;
            if (!element.empty) open.push_back(element.name);
        }
    }
    if (!open.empty()) return "<" + open.back() + "> stays open";
    if (roots != 1) return "not one root element";
    return bad;
}

/// All text of a page, tags taken away.
inline std::string words(std::string_view xml) {
    std::string bad;
    std::string all;
    for (const Element& element : elements(xml, bad)) {
        if (element.name != "style" || element.closes) all += element.text;
    }
    return all;
}

struct TextBox {
    std::string text;
    double left = 0;
    double top = 0;
    double right = 0;
    double bottom = 0;
};

/// Width of a text in the em of a wide sans-serif face (DejaVu Sans, advance widths in four classes, from memory).
inline double em_width(std::string_view text) {
    double width = 0;
    for (const char c : text) {
        if (std::string_view("il.,:;'|! I").find(c) != std::string_view::npos) width += 0.32;
        else if (std::string_view("tfrj()-/").find(c) != std::string_view::npos) width += 0.40;
        else if (std::string_view("mwMW%").find(c) != std::string_view::npos) width += 0.90;
        else width += c >= 'A' && c <= 'Z' ? 0.72 : 0.62;
    }
    return width;
}

/// The text of a drawing with the place it takes: 0.75 of its size over the line and 0.2 under it.
inline std::vector<TextBox> text_boxes(std::string_view svg) {
    std::string bad;
    std::vector<TextBox> boxes;
    for (const Element& element : elements(svg, bad)) {
        if (element.name != "text" || element.closes) continue;
        const auto number = [&](const char* key) { return std::atof(element.attributes.at(key).c_str()); };
        const double size = number("font-size");
        const double bold = element.attributes.count("font-weight") != 0 ? 1.1 : 1.0;
        const double width = em_width(element.text) * size * bold;
        const std::string anchor = element.attributes.at("text-anchor");
        const double left = number("x") - (anchor == "end" ? width : anchor == "middle" ? width / 2 : 0.0);
        boxes.push_back({element.text, left, number("y") - 0.75 * size, left + width, number("y") + 0.2 * size});
    }
    return boxes;
}

/// The first two texts that cover one another, as "a | b"; empty if none do.
inline std::string covered(std::string_view svg) {
    const std::vector<TextBox> boxes = text_boxes(svg);
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        for (std::size_t k = i + 1; k < boxes.size(); ++k) {
            const TextBox& a = boxes[i];
            const TextBox& b = boxes[k];
            if (a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom)
                return a.text + " | " + b.text;
        }
    }
    return {};
}

/// The first "nan", "inf" or "-0" that stands as a number of its own; empty if there is none.
inline std::string bad_number(std::string_view text) {
    const auto part_of_word = [](char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '.'; };
    for (const std::string_view bad : {"nan", "NaN", "inf", "-0"}) {
        for (std::size_t at = text.find(bad); at != std::string_view::npos; at = text.find(bad, at + 1)) {
            const bool begins = at == 0 || !part_of_word(text[at - 1]);
            const std::size_t end = at + bad.size();
            const bool ends = end == text.size() || !part_of_word(text[end]);
            if (begins && ends) return std::string(text.substr(at > 20 ? at - 20 : 0, 60));
        }
    }
    return {};
}

}  // namespace markup
