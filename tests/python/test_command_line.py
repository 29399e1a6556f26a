# SPDX-License-Identifier: BSD-3-Clause
"""python -m coverframe, and the C++ program check_plan where the build made one (COVERFRAME_CHECK_PLAN)."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

import coverframe as cf
import pytest


def run(*arguments: str | Path) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-W", "error", "-m", "coverframe", *map(str, arguments)]
    return subprocess.run(command, capture_output=True, text=True, encoding="utf-8")


@pytest.fixture
def open_boat(repository: Path) -> dict[str, Any]:
    text = (repository / "examples" / "plans" / "open_boat.json").read_text(encoding="utf-8")
    loaded: dict[str, Any] = json.loads(text)
    return loaded


def write(path: Path, document: dict[str, Any]) -> Path:
    path.write_text(json.dumps(document), encoding="utf-8")
    return path


@pytest.fixture
def light(tmp_path: Path, open_boat: dict[str, Any]) -> Path:
    """Hardly any snow, on a sole as hard as stone."""
    open_boat["site"]["ground_snow"]["load"] = "0.01 kPa"
    for stand in open_boat["boat"]["stands"]:
        stand["bearing"]["value"] = "1 MPa"
    return write(tmp_path / "light.json", open_boat)


@pytest.fixture
def heavy(tmp_path: Path, open_boat: dict[str, Any]) -> Path:
    open_boat["site"]["ground_snow"]["load"] = "4 kPa"
    return write(tmp_path / "heavy.json", open_boat)


@pytest.fixture
def falling(tmp_path: Path, document: dict[str, Any]) -> Path:
    """Five metres of water would lie on the cover."""
    document["site"]["ground_snow"]["load"] = "50 kPa"
    return write(tmp_path / "falling.json", document)


def test_the_report_is_printed(motor_boat_file: Path, assessment: cf.Assessment) -> None:
    done = run(motor_boat_file)
    assert done.returncode == assessment.exit_code
    assert done.stdout.rstrip("\n") == assessment.text().rstrip("\n")
    assert done.stderr == ""


def test_quiet_prints_the_verdict_only(motor_boat_file: Path, assessment: cf.Assessment) -> None:
    assert run(motor_boat_file, "--quiet").stdout == assessment.verdict + "\n"


def test_files_are_written(motor_boat_file: Path, assessment: cf.Assessment, tmp_path: Path) -> None:
    sheet, numbers = tmp_path / "sheet.html", tmp_path / "numbers.json"
    done = run(motor_boat_file, "--quiet", "--sheet", sheet, "--json", numbers)
    assert done.returncode == assessment.exit_code
    assert sheet.read_text(encoding="utf-8") == assessment.job_sheet()
    assert numbers.read_text(encoding="utf-8") == assessment.json()


def test_exit_codes_tell_the_outcome(light: Path, heavy: Path, falling: Path) -> None:
    for path, code, outcome in ((light, 0, "satisfied"), (heavy, 1, "exceeded"), (falling, 3, "no equilibrium")):
        done = run(path, "--quiet")
        assert (done.returncode, done.stdout.partition(":")[0].strip()) == (code, outcome)


def test_a_refused_plan_lists_its_problems(tmp_path: Path, document: dict[str, Any]) -> None:
    document["site"]["ground_snow"]["load"] = 1.5
    document["colour"] = "white"
    done = run(write(tmp_path / "bad.json", document), "--sheet", tmp_path / "sheet.html")
    assert (done.returncode, done.stdout) == (2, "")
    lines = done.stderr.splitlines()
    with pytest.raises(cf.InputError) as refused:
        cf.Plan.from_dict(document)
    assert len(lines) == len(refused.value.problems) >= 2
    for line, problem in zip(lines, refused.value.problems, strict=True):
        assert line == f"{problem.code} {problem.where}: {problem.advice}"
    assert not (tmp_path / "sheet.html").exists()


def test_a_missing_file_is_said_in_a_sentence(tmp_path: Path) -> None:
    done = run(tmp_path / "missing.json")
    assert (done.returncode, done.stdout) == (2, "")
    assert "missing.json" in done.stderr and len(done.stderr.splitlines()) == 1 and "Traceback" not in done.stderr


def test_a_sheet_that_cannot_be_written_is_said(motor_boat_file: Path, tmp_path: Path) -> None:
    done = run(motor_boat_file, "--sheet", tmp_path / "no" / "sheet.html")
    assert done.returncode == 2 and done.stdout == ""
    assert "sheet.html" in done.stderr and "Traceback" not in done.stderr


def test_bad_usage_is_two() -> None:
    for arguments in ([], ["--loud", "plan.json"], ["a.json", "b.json"]):
        done = run(*arguments)
        assert done.returncode == 2 and "usage:" in done.stderr


def test_the_program_in_cpp_agrees(
    motor_boat_file: Path, light: Path, heavy: Path, falling: Path, tmp_path: Path, document: dict[str, Any]
) -> None:
    program = os.environ.get("COVERFRAME_CHECK_PLAN")
    if not program:
        pytest.skip("COVERFRAME_CHECK_PLAN does not name the program")
    document["colour"] = "white"
    bad = write(tmp_path / "bad.json", document)
    for path in (motor_boat_file, light, heavy, falling, bad, tmp_path / "missing.json"):
        python = run(path, "--sheet", tmp_path / "python.html")
        cpp = subprocess.run(
            [program, path, "--sheet", tmp_path / "cpp.html"], capture_output=True, text=True, encoding="utf-8"
        )
        assert cpp.returncode == python.returncode
        assert cpp.stdout.rstrip("\n") == python.stdout.rstrip("\n") and cpp.stderr == python.stderr
        if python.returncode != 2:
            assert (tmp_path / "cpp.html").read_bytes() == (tmp_path / "python.html").read_bytes()
    usage = subprocess.run([program], capture_output=True, text=True)
    assert usage.returncode == 2 and "usage" in usage.stderr


def test_the_film_as_a_surface_joins_report_and_sheet(repository: Path, tmp_path: Path) -> None:
    plan, sheet = repository / "examples" / "plans" / "open_boat.json", tmp_path / "sheet.html"
    done = run(plan, "--film", "--sheet", sheet)
    assert done.returncode == 0, done.stderr
    assert "clearance to the film as a surface" in done.stdout
    assert "The film as a surface" in sheet.read_text(encoding="utf-8")
