// SPDX-License-Identifier: BSD-3-Clause
#include "report/sheet.hpp"

namespace coverframe::reporting {

std::string_view sheet_style() {
    return R"css(
@page { size: A4 portrait; margin: 15mm 14mm 17mm 14mm;
  @bottom-left { content: string(sheet); font-family: "Noto Sans", "DejaVu Sans", Verdana, sans-serif; font-size: 8pt; }
  @bottom-right { content: "page " counter(page) " of " counter(pages);
    font-family: "Noto Sans", "DejaVu Sans", Verdana, sans-serif; font-size: 8pt; } }
body { font-family: "Noto Sans", "DejaVu Sans", Verdana, sans-serif; font-size: 9.5pt; line-height: 1.38;
  color: #000; background: #fff; max-width: 182mm; margin: 0 auto; }
h1 { font-size: 19pt; line-height: 1.15; margin: 0 0 1mm 0; string-set: sheet content(); }
h2 { font-size: 12.5pt; margin: 6mm 0 1.5mm 0; break-after: avoid; }
h3 { font-size: 9pt; margin: 2.5mm 0 0.5mm 0; break-after: avoid; }
p { margin: 0 0 1.5mm 0; }
.under { font-size: 11pt; margin-bottom: 2.5mm; }
.cautions { border: 1.6pt solid #000; padding: 2mm 4mm 1mm 4mm; margin: 3mm 0; break-inside: avoid; }
.cautions h2 { margin: 0 0 1mm 0; }
.cautions ul { margin: 0; padding-left: 5mm; font-size: 9pt; line-height: 1.3; }
.cautions li { margin-bottom: 0.8mm; }
.verdict { border-left: 4mm solid #000; padding: 1mm 0 1mm 4mm; margin: 4mm 0; break-inside: avoid; }
.verdict.satisfied { border-left-color: #b5b5b5; }
.verdict h2 { margin: 0 0 1mm 0; }
.verdict p { font-size: 12pt; line-height: 1.3; }
.verdict li { font-weight: bold; margin-bottom: 1mm; }
.verdict ul { padding-left: 5mm; }
.verdict p.worst { font-size: 10.5pt; }
table { border-collapse: collapse; width: 100%; margin: 1mm 0 2mm 0; }
thead { display: table-header-group; }
th { text-align: left; vertical-align: bottom; font-size: 8pt; border-bottom: 1pt solid #000;
  padding: 0.6mm 2.5mm 0.6mm 0; }
td { vertical-align: top; border-bottom: 0.4pt solid #999; padding: 0.7mm 2.5mm 0.7mm 0; }
tr { break-inside: avoid; }
td p { margin: 0; }
.n { white-space: nowrap; }
.o, .small { font-size: 8pt; color: #333; }
.strong { font-weight: bold; }
.fail { border-bottom: 0.8pt solid #000; padding: 1.2mm 0; break-inside: avoid; }
.fail table { table-layout: fixed; margin: 0; }
.fail td { border: none; padding: 0 2.5mm 0.6mm 0; }
.fail td:nth-child(1) { width: 26%; }
.fail td:nth-child(4) { width: 13%; }
.fail p { margin: 0 0 0.4mm 0; }
.compact td, .compact th { font-size: 8pt; padding-top: 0.4mm; padding-bottom: 0.4mm; }
.holding { table-layout: fixed; }
.holding th:nth-child(1) { width: 40%; }
.holding th:nth-child(4) { width: 6%; }
.holding th:nth-child(5) { width: 16%; }
.holding th:nth-child(6) { width: 3.5%; }
figure { margin: 2mm 0 4mm 0; break-inside: avoid; text-align: center; }
figure svg { max-width: 100%; height: auto; }
figcaption { text-align: left; font-size: 10.5pt; font-weight: bold; margin-bottom: 1mm; }
.record td { height: 7.5mm; }
.appendix { break-before: page; }
.notes { font-size: 7.5pt; margin: 0 0 2mm 0; padding-left: 6mm; }
.workings { columns: 2; column-gap: 7mm; }
.workings table { table-layout: fixed; }
.workings td, .workings th { font-size: 7pt; line-height: 1.25; padding: 0.2mm 1.5mm 0.2mm 0; overflow-wrap: anywhere; }
.workings .o { font-size: 7pt; }
.workings th:nth-child(1) { width: 19%; }
.workings th:nth-child(2) { width: 36%; }
footer { margin-top: 6mm; border-top: 0.4pt solid #000; padding-top: 1mm; font-size: 8pt; }
@media screen { body { padding: 6mm; } }
)css";
}

}  // namespace coverframe::reporting
