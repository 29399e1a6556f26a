// SPDX-License-Identifier: BSD-3-Clause
// Text on its way to paper: escaped for markup, wrapped, measured in characters; and the plain names of checks.
#pragma once

#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "coverframe/assess/assess.hpp"

namespace coverframe::reporting {

/// `text` as it may stand in HTML, XHTML and SVG, in an element or a quoted attribute. Bytes that are no UTF-8 and
/// characters that no XML document may hold become the replacement character.
[[nodiscard]] std::string escaped(std::string_view text);

/// The same without escaping, in one line: what a terminal can be given.
[[nodiscard]] std::string one_line(std::string_view text);

/// Count of characters (code points) of a UTF-8 text.
[[nodiscard]] std::size_t characters(std::string_view text);

/// Lines of at most `width` characters, broken at spaces; a word longer than that is cut.
[[nodiscard]] std::vector<std::string> wrapped(std::string_view text, std::size_t width);

/// "ridge.bending" -> "bending"; a check that is not known is named by its own name.
[[nodiscard]] std::string plain_name(std::string_view check);

/// "ridge between U1 and U2, bending".
[[nodiscard]] std::string subject(const Finding& finding);

/// The finding's sentence with a capital letter.
[[nodiscard]] std::string sentence_of(const Finding& finding);

/// Least and greatest of a force as they are shown: one that is under a thousandth of the other is 0.
[[nodiscard]] std::pair<double, double> ends_shown(const ForceRange& force);

/// What the forces of the parts are of; empty if there are none.
[[nodiscard]] std::string forces_note(const Assessment& assessment);

/// How deep the balanced snow lies, kind by kind, as heavy as published: what a crew can measure. Empty without snow.
[[nodiscard]] std::string depth_note(const Assessment& assessment);

/// "S3" for the third situation; the name itself if the assessment has no situation of that name.
[[nodiscard]] std::string situation_number(const Assessment& assessment, std::string_view name);

/// How the verdict is said in one plain sentence, with the governing finding.
[[nodiscard]] std::string verdict_sentence(const Assessment& assessment);

/// What the cover is made of and judged by, in one paragraph.
[[nodiscard]] std::string what_this_is(const Assessment& assessment);

}  // namespace coverframe::reporting
