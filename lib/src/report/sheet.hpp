// SPDX-License-Identifier: BSD-3-Clause
// The parts of the job sheet, as markup; empty where the assessment has nothing to show.
#pragma once

#include <string>
#include <string_view>

#include "coverframe/assess/assess.hpp"
#include "coverframe/assess/surface.hpp"

namespace coverframe::reporting {

/// Style of screen and A4 print: black on white, nothing told by colour alone.
[[nodiscard]] std::string_view sheet_style();

// sheet_findings.cpp
[[nodiscard]] std::string failing_list_html(const Assessment& assessment);   ///< the worst, a line each; more than one
[[nodiscard]] std::string failing_html(const Assessment& assessment);        ///< with demand, capacity, sentence
[[nodiscard]] std::string holding_html(const Assessment& assessment);        ///< the same, compact
[[nodiscard]] std::string not_judged_html(const Assessment& assessment);
[[nodiscard]] std::string forces_html(const Assessment& assessment);
[[nodiscard]] std::string situations_html(const Assessment& assessment);
[[nodiscard]] std::string arrangements_html(const Assessment& assessment);

// sheet_film.cpp
[[nodiscard]] std::string film_html(const Assessment& assessment, const SurfaceSurvey& survey);  ///< film as a surface

// sheet_workings.cpp
[[nodiscard]] std::string workings_html(const Assessment& assessment);       ///< every number of every finding

// sheet_setting_out.cpp
[[nodiscard]] std::string setting_out_html(const Assessment& assessment);    ///< what is built, where, how tight

// sheet_choices.cpp
[[nodiscard]] std::string choices_html(const Assessment& assessment);        ///< every chosen value with its source

}  // namespace coverframe::reporting
