// SPDX-License-Identifier: BSD-3-Clause
// An assessment as something to read: plain text, JSON, and a job sheet to print.
//
// Values stand in the units the plan shows first, with the other system beside. The same assessment gives the same
// bytes.
#pragma once

#include <string>

#include "coverframe/assess/assess.hpp"
#include "coverframe/assess/surface.hpp"

namespace coverframe {

/// Plain text for a terminal: cautions, verdict, governing findings first. At most 100 columns.
[[nodiscard]] std::string text_report(const Assessment& assessment);

/// One line: "exceeded: ridge between U1 and U2, bending, 118 % (balanced snow, ...)".
[[nodiscard]] std::string verdict_line(const Assessment& assessment);

/// The whole assessment as JSON, SI numbers with the unit in the key or beside.
[[nodiscard]] std::string json_report(const Assessment& assessment);

/// A self-contained HTML page, A4, to print: cautions, verdict, drawings, setting out and a record
/// to fill in come first, then findings, forces, snow, situations, choices with their sources, and the workings.
/// \param film  of the same assessment: adds what film as a surface shows; nullptr leaves it out
[[nodiscard]] std::string job_sheet(const Assessment& assessment, const SurfaceSurvey* film = nullptr);

}  // namespace coverframe
