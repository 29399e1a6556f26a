# SPDX-License-Identifier: BSD-3-Clause
"""count.py has to count every kind of failure, above all the suite that is silent."""

import contextlib
import io
import tempfile
import unittest
from pathlib import Path

import count

UNIT = "[doctest] test cases: 12 | {} passed | {} failed | 0 skipped\n"
GOOD = {
    "build.code": "0\n",
    "unit.code": "0",
    "unit.log": "noise\n" + UNIT.format(12, 0),
    "ctest.code": "0",
    "ctest.xml": '<testsuite><testcase status="run"/><testcase status="run"/></testsuite>',
    "validation.code": "0",
    "validation.log": "CB-01 agrees\nvalidation: 70 passed, 0 failed\n",
    "python.code": "0",
    "python.xml": "<testsuites><testsuite><testcase/><testcase><skipped/></testcase></testsuite></testsuites>",
    "install.code": "0\n",
}
FAILED_CASE = "<testsuite><testcase/><testcase><failure/></testcase><testcase><error/></testcase></testsuite>"


class CountTest(unittest.TestCase):
    def last_line(self, **changes):
        said = io.StringIO()
        with tempfile.TemporaryDirectory() as folder:
            for name, text in {**GOOD, **{key.replace("_", "."): text for key, text in changes.items()}}.items():
                if text is not None:
                    (Path(folder) / name).write_text(text, encoding="utf-8")
            with contextlib.redirect_stdout(said):
                code = count.main(folder)
        return said.getvalue().split("\n")[-2], code

    def test_all_parts_are_added_up(self):
        self.assertEqual(self.last_line(), ("86 passed, 0 failed", 0))

    def test_failures_of_every_part(self):
        for changes, line in (
            ({"unit_code": "1", "unit_log": UNIT.format(10, 2)}, "84 passed, 2 failed"),
            ({"ctest_code": "8", "ctest_xml": FAILED_CASE}, "85 passed, 2 failed"),
            ({"ctest_code": "8", "ctest_xml": '<t><testcase status="notrun"/></t>'}, "84 passed, 1 failed"),
            ({"validation_code": "1", "validation_log": "validation: 69 passed, 1 failed\n"}, "85 passed, 1 failed"),
            ({"python_code": "1", "python_xml": FAILED_CASE}, "86 passed, 2 failed"),
            ({"install_code": "1"}, "85 passed, 1 failed"),
        ):
            self.assertEqual(self.last_line(**changes), (line, 1))

    def test_a_crash_that_reports_no_failure_is_one(self):
        self.assertEqual(self.last_line(unit_code="139"), ("86 passed, 1 failed", 1))
        self.assertEqual(self.last_line(python_code="3", python_xml=None), ("85 passed, 1 failed", 1))

    def test_a_part_that_ran_nothing_has_failed(self):
        for changes, line in (
            ({"unit_log": "[doctest] test cases: 0 | 0 passed | 0 failed | 0 skipped\n"}, "74 passed, 1 failed"),
            ({"unit_log": ""}, "74 passed, 1 failed"),
            ({"ctest_xml": None}, "84 passed, 1 failed"),
            ({"validation_log": "nothing here\n"}, "16 passed, 1 failed"),
            ({"python_xml": "<testsuites/>"}, "85 passed, 1 failed"),
        ):
            self.assertEqual(self.last_line(**changes), (line, 1))

    def test_a_failed_build_is_the_only_part(self):
        nothing_else = {key.replace(".", "_"): None for key in GOOD if not key.startswith("build")}
        self.assertEqual(self.last_line(build_code="2", **nothing_else), ("0 passed, 1 failed", 1))


if __name__ == "__main__":
    unittest.main()
