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


def last_match(log: Path, pattern: str) -> Count:
    """The two numbers of the last line that matches."""
    found = re.findall(pattern, log.read_text("utf-8", "replace"), re.MULTILINE) if log.exists() else []
    return (int(found[-1][0]), int(found[-1][1])) if found else (0, 0)


def unit(folder: Path) -> Count:
    return last_match(folder / "unit.log", r"test cases:\s*\d+ \|\s*(\d+) passed \|\s*(\d+) failed")


def validation(folder: Path) -> Count:
    return last_match(folder / "validation.log", r"^validation: (\d+) passed, (\d+) failed")


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


def install(folder: Path) -> Count:
    """One check, of which the exit code says all."""
    return int((folder / "install.code").read_text() == "0\n"), 0


PARTS = {
    "build": lambda _: (0, 0),
    "unit": unit,
    "ctest": lambda folder: junit(folder / "ctest.xml"),
    "validation": validation,
    "python": lambda folder: junit(folder / "python.xml"),
    "install": install,
}


def count_of(part: str, folder: Path) -> Count:
    code = int((folder / f"{part}.code").read_text())
    passed, failed = PARTS[part](folder)
    if code != 0:
        return passed, max(failed, 1)
    if passed + failed == 0 and part != "build":
        print(f"{part}: nothing was run")
        return 0, 1
    return passed, failed


def main(results: str) -> int:
    folder = Path(results)
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
    sys.exit(main(sys.argv[1]))
