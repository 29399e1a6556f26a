# SPDX-License-Identifier: BSD-3-Clause
"""Stubs agree with the compiled module; the package and a user's program pass the type checker."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import coverframe as cf
import pytest

pytest.importorskip("mypy")

PACKAGE = Path(cf.__file__).parent

PROGRAM = """
import coverframe as cf
import numpy as np

plan: cf.Plan = cf.read_plan("plan.json")
result: cf.Assessment = cf.assess(plan, workings=False)
worst: cf.Finding | None = result.governing
share: float | None = worst.utilisation if worst else None
lines: list[str] = [term.symbol for finding in result.findings for term in finding.workings]
factor = cf.asce7_22.slope_factor(slope_deg=np.array([1.0]), thermal_factor=1.2, surface="other")
heights = result.shape["ridge_loaded_m"]
pole = cf.frame.Frame(nodes_m=[[0, 0, 0], [1, 0, 0]], members=[[0, 1]], axial_stiffness_n=1e6)
state: cf.frame.Solution = cf.frame.solve(pole, forces_n=np.zeros((2, 3)))
stands: list[bool] = [one.usable for one in cf.frame.solve_many(pole, forces_n=np.zeros((4, 2, 3)), threads=2)]
try:
    cf.Plan.from_dict({})
except cf.InputError as error:
    places: list[str] = [problem.where for problem in error.problems]
"""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """One folder for all runs, so that they share what mypy remembers of NumPy."""
    return tmp_path_factory.mktemp("typing")


def run(folder: Path, *arguments: str | Path) -> subprocess.CompletedProcess[str]:
    environment = os.environ | {"MYPYPATH": str(PACKAGE.parent)}
    command = [sys.executable, "-m", *map(str, arguments)]
    return subprocess.run(command, capture_output=True, text=True, cwd=folder, env=environment)


def test_the_package_is_marked_as_typed() -> None:
    assert (PACKAGE / "py.typed").is_file() and (PACKAGE / "_core.pyi").is_file()


def test_stubs_agree_with_the_compiled_module(folder: Path) -> None:
    # The classes of the compiled module have a metaclass of pybind11's, and nobody makes them by calling them.
    allowed = folder / "allowed"
    allowed.write_text(
        "".join(f"coverframe._core.{c}\ncoverframe._core.{c}.__init__\n" for c in ("Plan", "Assessment"))
        + "coverframe._core.Surface\ncoverframe._core.Surveyed\n"
    )
    config = folder / "mypy.ini"
    config.write_text("[mypy]\nignore_missing_imports = True\n")
    options = ("--allowlist", allowed, "--mypy-config-file", config)
    done = run(folder, "mypy.stubtest", "coverframe._core", *options)
    assert done.returncode == 0, done.stdout + done.stderr


def test_the_package_is_strictly_typed(folder: Path) -> None:
    done = run(folder, "mypy", "--strict", "--ignore-missing-imports", "-p", "coverframe")
    assert done.returncode == 0, done.stdout + done.stderr


def test_a_users_program_is_checked_against_it(folder: Path) -> None:
    good, bad = folder / "good.py", folder / "bad.py"
    good.write_text(PROGRAM)
    bad.write_text("import coverframe as cf\ncf.assess('plan.json', spacing=1)\ncf.assess('p').governing.part\n")
    done = run(folder, "mypy", "--strict", "--ignore-missing-imports", good)
    assert done.returncode == 0, done.stdout + done.stderr
    done = run(folder, "mypy", "--strict", "--ignore-missing-imports", bad)
    assert "call-arg" in done.stdout and "union-attr" in done.stdout
