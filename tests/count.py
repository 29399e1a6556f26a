# SPDX-License-Identifier: BSD-3-Clause
"""count.py <results folder>: adds up what the parts of tests/run said; the last line is "N passed, N failed".

Every part leaves <name>.log and <name>.code. A part fails at least once if its exit code is not 0, or if it ran
nothing: a suite that has vanished is no success.
"""

import re
import sys
import xml.etree.ElementTree as ET
from pathlib import Path

Count = "tuple[int, int]"


def unit(folder: Path) -> Count:
    found = re.findall(r"test cases:\s*\d+ \|\s*(\d+) passed \|\s*(\d+) failed", (folder / "unit.log").read_text("utf-8", "replace"))
    return (int(found[-1][0]), int(found[-1][1])) if found else (0, 0)


def validation(folder: Path) -> Count:
    found = re.findall(r"^validation: (\d+) passed, (\d+) failed", (folder / "validation.log").read_text("utf-8", "replace"), re.M)
    return (int(found[-1][0]), int(found[-1][1])) if found else (0, 0)


def junit(path: Path) -> Count:
    """Test cases of a JUnit file; a skipped one counts as neither."""
    if not path.exists():
        return 0, 0
    passed = failed = 0
    for case in ET.parse(path).iter("testcase"):
        if case.find("failure") is not None or case.find("error") is not None or case.get("status") == "notrun":
            failed += 1
        elif case.find("skipped") is None and case.get("status") != "disabled":
            passed += 1
    return passed, failed


def by_exit_code(_: Path) -> Count:
    """One check, of which the exit code says all."""
    return 1, 0


PARTS = {
    "build": lambda _: (0, 0),
    "unit": unit,
    "ctest": lambda folder: junit(folder / "ctest.xml"),
    "validation": validation,
    "python": lambda folder: junit(folder / "python.xml"),
    "install": by_exit_code,
}


def count_of(part: str, folder: Path) -> Count:
    code = int((folder / f"{part}.code").read_text())
    passed, failed = PARTS[part](folder)
    if part == "build":
        return 0, int(code != 0)
    if code != 0 and failed == 0:
        return (0, 1) if part == "install" else (passed, 1)
    if passed + failed == 0:
        print(f"{part}: nothing was run")
        return 0, 1
    return passed, failed


def main() -> int:
    folder = Path(sys.argv[1])
    total_passed = total_failed = 0
    for part in PARTS:
        if not (folder / f"{part}.code").exists():
            continue
        passed, failed = count_of(part, folder)
        print(f"{part:12s}{passed:6d} passed {failed:5d} failed")
        total_passed += passed
        total_failed += failed
    print(f"{total_passed} passed, {total_failed} failed")
    return 1 if total_failed or not total_passed else 0


if __name__ == "__main__":
    sys.exit(main())
