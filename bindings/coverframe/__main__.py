# SPDX-License-Identifier: BSD-3-Clause
"""Judges a plan file and prints the report: ``python -m coverframe plan.json --sheet sheet.html``.

Exit code: 0 every check is satisfied; 1 something is exceeded; 2 the plan was refused, or a file could not be read or
written; 3 the cover cannot stand.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

from . import __version__, assess, survey
from .errors import InputError


def _arguments(argv: Sequence[str] | None) -> argparse.Namespace:
    parser = argparse.ArgumentParser(
        prog="python -m coverframe",
        description="Judges a winter cover under snow.",
        epilog="Exit code: 0 satisfied, 1 exceeded, 2 plan refused or file trouble, 3 no equilibrium.",
    )
    parser.add_argument("plan", help="plan file (JSON)")
    parser.add_argument("--sheet", metavar="FILE", help="write the job sheet (HTML) here")
    parser.add_argument("--json", metavar="FILE", help="write the assessment (JSON) here")
    parser.add_argument("--film", action="store_true", help="judge by the film as a surface too (some seconds)")
    parser.add_argument("--quiet", action="store_true", help="print the verdict only")
    parser.add_argument("--version", action="version", version=f"coverframe {__version__}")
    return parser.parse_args(argv)


def main(argv: Sequence[str] | None = None) -> int:
    """The exit code."""
    arguments = _arguments(argv)
    try:
        assessment = assess(arguments.plan)
        judged = survey(assessment) if arguments.film else assessment
    except InputError as error:
        for problem in error.problems:
            place = " ".join(word for word in (problem.code, problem.where) if word)
            line = problem.advice if problem.code == "plan.file" else f"{place}: {problem.advice}"
            print(" ".join(line.split()), file=sys.stderr)
        return 2
    try:
        if arguments.sheet:
            Path(arguments.sheet).write_text(judged.job_sheet(), encoding="utf-8")
        if arguments.json:
            Path(arguments.json).write_text(judged.json(), encoding="utf-8")
    except OSError as error:
        print(f"cannot write {error.filename}: {error.strerror}", file=sys.stderr)
        return 2
    print(judged.verdict if arguments.quiet else judged.text().rstrip("\n"))
    return judged.exit_code


if __name__ == "__main__":
    sys.exit(main())
