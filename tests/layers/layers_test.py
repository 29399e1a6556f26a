# SPDX-License-Identifier: BSD-3-Clause
"""layers.py has to notice each fault it is there for, and nothing else."""

import tempfile
import unittest
from pathlib import Path

import layers

PLAN = "lib/include/coverframe/plan/plan.hpp"
FRAME = "lib/include/coverframe/frame/frame.hpp"


class Layers(unittest.TestCase):
    def faults(self, files):
        with tempfile.TemporaryDirectory() as folder:
            root = Path(folder).resolve()
            for name, text in {PLAN: "", FRAME: "", **files}.items():
                path = root / name
                path.parent.mkdir(parents=True, exist_ok=True)
                path.write_text(text, encoding="utf-8")
            return list(layers.Project(root).faults())

    def test_own_and_lower_layers_may_be_included(self):
        text = '#include <vector>\n#include "coverframe/plan/plan.hpp"\n'
        self.assertEqual(self.faults({FRAME: text, "lib/src/frame/solve.cpp": text}), [])

    def test_an_upward_include_is_a_fault(self):
        found = self.faults({PLAN: '\n#include "coverframe/frame/frame.hpp"\n'})
        self.assertEqual(found, [f"{PLAN}:2: plan includes coverframe/frame/frame.hpp, which lies above it"])

    def test_an_upward_include_of_a_private_header_is_a_fault(self):
        files = {"lib/src/frame/kernel/beam.hpp": ""}
        for name in ("frame/kernel/beam.hpp", "../frame/kernel/beam.hpp"):
            found = self.faults({**files, "lib/src/plan/read.cpp": f'#include "{name}"\n'})
            self.assertEqual(len(found), 1)
            self.assertIn("lies above it", found[0])

    def test_a_file_that_is_not_there_is_a_fault(self):
        self.assertIn("not found", self.faults({PLAN: '#include "coverframe/base/none.hpp"\n'})[0])
        self.assertIn("not found", self.faults({PLAN: '#include "none.hpp"\n'})[0])

    def test_an_unknown_folder_is_a_fault(self):
        self.assertIn("no layer", self.faults({"lib/src/misc/x.cpp": ""})[0])

    def test_public_headers_hide_eigen_json_and_filesystem(self):
        for name in ("Eigen/Core", "nlohmann/json.hpp", "nlohmann/json_fwd.hpp", "filesystem"):
            self.assertIn("public header", self.faults({FRAME: f"  # include <{name}>\n"})[0])
            self.assertEqual(self.faults({"lib/src/frame/solve.cpp": f"#include <{name}>\n"}), [])

    def test_public_headers_do_not_reach_into_the_sources(self):
        found = self.faults({"lib/src/frame/beam.hpp": "", FRAME: '#include "frame/beam.hpp"\n'})
        self.assertIn("public header includes frame/beam.hpp", found[0])

    def check_value(self, text, expected):
        found = self.faults({"lib/src/frame/solve.cpp": text})
        self.assertEqual(len(found), expected, (text, found))

    def test_value_of_a_quantity_is_a_fault(self):
        for text in (
            "double f(Length height) { return height.value(); }",
            "double f(const Length& height) { return height . value ( ); }",
            "double f(const Plan& plan) { return plan.boat.length.value(); }",
            "double f(const Plan* plan) { return plan->length.value(); }",
            "auto x = span(i).value();",
            "auto x = spans[i].value();",
            "auto x = (a + b).value();",
            "std::optional<Length> h; auto x = h.value().value();",
            "std::optional<Length> a; double f(Length a) { return a.value(); }",
        ):
            self.check_value(text, 1)

    def test_value_of_an_optional_is_none(self):
        for text in (
            "std::optional<Length> height; auto x = height.value();",
            "void f(const std::optional<Cited<Length>>& height) { use(height.value()); }",
            "std::optional<Length> find(int i); auto x = find(g(2)).value();",
            "std::vector<int> v; std::optional<std::pair<int, std::vector<int>>> found; auto x = found.value();",
        ):
            self.check_value(text, 0)

    def test_an_optional_of_a_public_header_is_known_everywhere(self):
        files = {PLAN: "struct Plan { std::optional<Length> rise; Length length; };"}
        for text, expected in (("p.rise.value();", 0), ("p.length.value();", 1)):
            self.assertEqual(len(self.faults({**files, "lib/src/frame/solve.cpp": text})), expected)

    def test_cited_values_comments_and_texts_are_none(self):
        for text in (
            "double x = cited.value;",
            "double x = f(cited.value, 2);",
            "double x = height.value_or(2);",
            "// never height.value()\n/* height.value() */",
            'auto s = "height.value()";',
            'auto s = R"(a " height.value())";',
        ):
            self.check_value(text, 0)

    def test_units_and_kernels_may_take_the_value(self):
        text = "double f(Length height) { return height.value(); }"
        for name in ("lib/src/frame/kernel/beam.cpp", "lib/src/film/kernel_strip.cpp", "lib/src/units/text.cpp"):
            self.assertEqual(self.faults({name: text}), [])


if __name__ == "__main__":
    unittest.main()
