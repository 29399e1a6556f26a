# SPDX-License-Identifier: BSD-3-Clause
"""The whole job from Python."""

from __future__ import annotations

import copy
import json
import multiprocessing
import pickle
import subprocess
import sys
import threading
import time
import xml.etree.ElementTree
from concurrent.futures import ProcessPoolExecutor, ThreadPoolExecutor
from pathlib import Path
from typing import Any

import coverframe as cf
import numpy as np
import pytest

VERDICTS = {"satisfied", "exceeded", "not applicable"}


def with_snow(document: dict[str, Any], load: str) -> dict[str, Any]:
    changed = copy.deepcopy(document)
    changed["site"]["ground_snow"]["load"] = load
    return changed


# What is in it


def test_the_outcome_follows_from_the_findings(assessment: cf.Assessment) -> None:
    verdicts = [finding.verdict for finding in assessment.findings]
    assert verdicts and set(verdicts) <= VERDICTS
    if assessment.failures:
        expected = "no equilibrium"
    else:
        expected = "exceeded" if "exceeded" in verdicts else "satisfied"
    assert assessment.outcome == expected
    assert assessment.exit_code == {"satisfied": 0, "exceeded": 1, "no equilibrium": 3}[expected]


def test_a_finding_is_complete(assessment: cf.Assessment) -> None:
    names = {situation.name for situation in assessment.situations}
    for finding in assessment.findings:
        assert finding.check and finding.part and finding.clause and finding.unit and finding.sentence
        assert finding.situation in names
        assert np.isfinite([finding.demand, finding.capacity]).all()
        if finding.verdict == "satisfied":
            assert finding.utilisation is not None and finding.utilisation <= 1.0
        if finding.verdict == "exceeded":
            assert finding.utilisation is None or finding.utilisation > 1.0


def test_findings_come_worst_first(assessment: cf.Assessment) -> None:
    order = {"exceeded": 0, "satisfied": 1, "not applicable": 2}
    ranks = [order[finding.verdict] for finding in assessment.findings]
    assert ranks == sorted(ranks)
    assert assessment.governing == assessment.findings[0]
    assert assessment.governing is not None and assessment.governing.part in assessment.verdict


def test_every_finding_can_be_worked_out_again(assessment: cf.Assessment) -> None:
    for finding in assessment.findings:
        if finding.verdict != "not applicable":
            assert finding.workings
        for term in finding.workings:
            assert term.symbol and term.unit and term.formula and np.isfinite(term.value)


def test_workings_can_be_left_out(motor_boat_file: Path, assessment: cf.Assessment) -> None:
    plain = cf.assess(motor_boat_file, workings=False)
    assert all(finding.workings == () for finding in plain.findings)
    assert [f.utilisation for f in plain.findings] == [f.utilisation for f in assessment.findings]


def test_reactions_balance_the_load(assessment: cf.Assessment) -> None:
    for situation in assessment.situations:
        if situation.status == "converged":
            assert situation.vertical_reaction_n == pytest.approx(situation.vertical_load_n, rel=1e-6)
            assert situation.message == ""
        else:
            assert situation.message


def test_forces_name_their_situations(assessment: cf.Assessment) -> None:
    names = {situation.name for situation in assessment.situations}
    assert assessment.forces
    for force in assessment.forces:
        assert force.least <= force.greatest
        assert {force.least_in, force.greatest_in} <= names


def test_arrangements_have_a_load_a_station(assessment: cf.Assessment) -> None:
    stations = assessment.stations
    count = stations["x_m"].size
    assert count > 5 and np.all(np.diff(stations["x_m"]) > 0)
    assert np.all((stations["slope_deg"] > 0) & (stations["slope_deg"] < 90))
    for arrangement in assessment.arrangements:
        assert arrangement.name and arrangement.clause
        assert arrangement.port_kpa.shape == arrangement.starboard_kpa.shape == (count,)
        assert len(arrangement.port_field) == len(arrangement.starboard_field) == count
        for load, points in zip(arrangement.port_kpa, arrangement.port_field, strict=True):
            assert points[0, 0] == 0.0 and points[-1, 0] == 1.0
            assert points[:, 1].max() == load


def test_the_balanced_load_is_the_rule_of_the_document(document: dict[str, Any], assessment: cf.Assessment) -> None:
    snow = document["basis"]["snow"]
    assert snow["document"] == "ASCE 7-22"
    flat = cf.asce7_22.flat_load(
        ground_snow_kpa=document["site"]["ground_snow"]["load"],
        exposure_factor=snow["exposure_factor"]["value"],
        thermal_factor=snow["thermal_factor"]["value"],
    )
    factor = cf.asce7_22.slope_factor(
        slope_deg=assessment.stations["slope_deg"],
        thermal_factor=snow["thermal_factor"]["value"],
        surface=snow["surface"]["value"],
    )
    expected = cf.asce7_22.sloped_load(flat_load_kpa=flat, slope_factor=factor)
    np.testing.assert_allclose(assessment.arrangements[0].port_kpa, expected, rtol=1e-12)
    np.testing.assert_array_equal(assessment.arrangements[0].port_kpa, assessment.arrangements[0].starboard_kpa)


def test_the_shape_hangs_between_ridge_and_rail(assessment: cf.Assessment) -> None:
    shape = assessment.shape
    assert assessment.shape_of in {situation.name for situation in assessment.situations}
    for values in shape.values():
        assert values.shape == shape["x_m"].shape
    assert np.all(np.diff(shape["x_m"]) > 0)
    there = shape["port_span_m"] > 0
    np.testing.assert_allclose(
        shape["port_rise_m"][there], (shape["rail_z_m"] - shape["ridge_loaded_m"])[there], atol=1e-9
    )
    assert shape["port_slack"].dtype == bool
    assert np.all(shape["port_tension_upper_n"][there] >= shape["port_level_force_n"][there])


def test_more_snow_is_worse(document: dict[str, Any]) -> None:
    worst = []
    for load in ("0.2 kPa", "0.6 kPa", "1.2 kPa"):
        found = cf.assess(with_snow(document, load)).findings
        worst.append(max(f.utilisation for f in found if f.utilisation is not None and f.check.startswith("upright")))
    assert worst == sorted(worst) and worst[0] < worst[2]


# Tables


def test_columns_agree_with_findings(assessment: cf.Assessment) -> None:
    columns = assessment.columns()
    for i, finding in enumerate(assessment.findings):
        for name, column in columns.items():
            value = column[i]
            expected = getattr(finding, name)
            assert np.isnan(value) if expected is None else value == expected


def test_the_numbers_are_those_of_the_json_report(assessment: cf.Assessment) -> None:
    report = json.loads(assessment.json())

    def clause(value: dict[str, str] | None) -> str:
        return ", ".join(filter(None, value.values())) if value else ""

    def terms(lines: list[dict[str, Any]]) -> list[tuple[Any, ...]]:
        return [(t["symbol"], t["value"], t["unit"], t["formula"], clause(t["clause"])) for t in lines]

    for finding, line in zip(assessment.findings, report["findings"], strict=True):
        values = {name: getattr(finding, name) for name in finding.__slots__}
        assert terms(line.pop("workings")) == [
            tuple(getattr(t, n) for n in t.__slots__) for t in values.pop("workings")
        ]
        assert line | {"clause": clause(line["clause"])} == values
    for rows, name in ((assessment.situations, "situations"), (assessment.forces, "forces")):
        for row, line in zip(rows, report[name], strict=True):
            assert {key: value or "" if key == "arrangement" else value for key, value in line.items()} == {
                key: getattr(row, key) for key in row.__slots__
            }
    for arrangement, line in zip(assessment.arrangements, report["arrangements"], strict=True):
        assert (arrangement.name, arrangement.clause, arrangement.note) == (
            line["name"],
            clause(line["clause"]),
            line["note"],
        )
        assert arrangement.port_kpa.tolist() == line["port_kpa"]
        assert arrangement.starboard_kpa.tolist() == line["starboard_kpa"]
    for name, columns in (("stations", assessment.stations), ("shape", assessment.shape)):
        for i, line in enumerate(report[name]):
            for side in ("port", "starboard"):
                line |= {f"{side}_{key}": value for key, value in line.pop(side, {}).items()}
            assert line == {key: column[i] for key, column in columns.items()}
    assert (assessment.outcome, assessment.verdict, assessment.shape_of) == (
        report["outcome"],
        report["verdict"],
        report["shape_of"],
    )
    assert (assessment.failures, assessment.assumptions) == (report["failures"], report["assumptions"])
    assert cf.Plan.from_dict(report["plan"]) == assessment.plan


def test_the_frame_has_a_row_a_finding(assessment: cf.Assessment) -> None:
    frame = assessment.to_frame()
    assert len(frame) == len(assessment.findings)
    assert list(frame.columns) == list(assessment.columns())
    assert frame["utilisation"].dtype == np.float64
    assert frame["verdict"].tolist() == [finding.verdict for finding in assessment.findings]


def test_tables_are_the_callers_own(assessment: cf.Assessment) -> None:
    first = assessment.columns()
    np.asarray(first["demand"])[:] = -1.0
    assessment.findings.clear()
    assessment.shape["x_m"][:] = -1.0
    assert assessment.findings[0].demand != -1.0 and assessment.shape["x_m"][0] != -1.0


# Reports


def test_reports_name_the_outcome(assessment: cf.Assessment) -> None:
    assert assessment.verdict.startswith(assessment.outcome) and "\n" not in assessment.verdict
    worst = assessment.governing
    assert worst is not None
    assert worst.part in assessment.text() and worst.part in assessment.job_sheet()
    assert isinstance(json.loads(assessment.json()), dict)
    assert assessment.job_sheet().lstrip().lower().startswith("<!doctype html>")


def test_drawings_are_svg_no_wider_than_asked(assessment: cf.Assessment) -> None:
    for draw in (assessment.side_view, assessment.plan_view, assessment.section_view):
        root = xml.etree.ElementTree.fromstring(draw(width_px=500))
        assert root.tag == "{http://www.w3.org/2000/svg}svg" and 350 < float(root.attrib["width"]) <= 500
        assert draw() == draw(width_px=720)


@pytest.mark.parametrize("width", [0, -5, float("nan"), float("inf"), "720"])
def test_an_absurd_width_is_refused(assessment: cf.Assessment, width: Any) -> None:
    with pytest.raises(cf.InputError) as refused:
        assessment.side_view(width_px=width)
    assert refused.value.code == "argument.width"


def test_cautions_stand_in_the_report(assessment: cf.Assessment) -> None:
    assert len(cf.cautions()) > 3
    words = " ".join(assessment.text().split())
    for sentence in cf.cautions():
        assert " ".join(sentence.split()) in words


def test_an_assessment_shows_itself(document: dict[str, Any]) -> None:
    document["title"] = "Boat <&>"
    assessment = cf.assess(document)
    assert repr(assessment).startswith("<coverframe.Assessment of 'Boat <&>': ") and "\n" not in repr(assessment)
    page = assessment._repr_html_()
    xml.etree.ElementTree.fromstring(page)  # every cell is escaped
    assert page.count("<tr>") == 1 + len(assessment.findings)
    for finding in assessment.findings:
        assert "\n" not in repr(finding) and finding.part in repr(finding)


# Arguments


def test_the_spacing_of_stations_is_an_option(motor_boat_file: Path, assessment: cf.Assessment) -> None:
    fine = cf.assess(motor_boat_file, station_spacing_m="10 cm")
    assert fine.shape["x_m"].size > assessment.shape["x_m"].size
    assert cf.assess(motor_boat_file, station_spacing_m=0.25).json() == assessment.json()


@pytest.mark.parametrize("spacing", [0.0, -1.0, float("nan"), [0.1, 0.2], "0.25"])
def test_an_absurd_spacing_is_refused(motor_boat_file: Path, spacing: Any) -> None:
    with pytest.raises(cf.InputError):
        cf.assess(motor_boat_file, station_spacing_m=spacing)


def test_options_are_keywords(motor_boat_file: Path) -> None:
    with pytest.raises(TypeError):
        cf.assess(motor_boat_file, True)  # type: ignore[misc]
    with pytest.raises(TypeError):
        cf.Assessment()


# Between threads and processes


@pytest.mark.parametrize("protocol", range(pickle.HIGHEST_PROTOCOL + 1))
def test_an_assessment_can_be_pickled(motor_boat_file: Path, protocol: int) -> None:
    assessment = cf.assess(motor_boat_file, workings=False, station_spacing_m=0.3)
    other = pickle.loads(pickle.dumps(assessment, protocol))
    assert other.json() == assessment.json() and other.findings == assessment.findings


def test_an_assessment_of_another_version_is_refused(assessment: cf.Assessment) -> None:
    function, (number, version, *rest) = assessment.__reduce__()
    assert version == cf.__version__
    with pytest.raises(cf.StateError) as refused:
        function(number, "0.0.0", *rest)
    assert refused.value.code == "assessment.pickle"


def test_plans_are_judged_in_a_pool_of_processes(document: dict[str, Any]) -> None:
    plans = [cf.Plan.from_dict(with_snow(document, load)) for load in ("0.2 kPa", "0.9 kPa")]
    with ProcessPoolExecutor(2, mp_context=multiprocessing.get_context("spawn")) as pool:
        judged = list(pool.map(cf.assess, plans))
        with pytest.raises(cf.InputError) as refused:
            pool.submit(cf.assess, {"format": 1, "snow": 1.5}).result()
    assert [assessment.json() for assessment in judged] == [cf.assess(plan).json() for plan in plans]
    assert "plan.key.unknown" in {problem.code for problem in refused.value.problems}


def test_plans_are_judged_in_threads(document: dict[str, Any]) -> None:
    plans = [cf.Plan.from_dict(with_snow(document, f"{0.2 + 0.2 * i} kPa")) for i in range(4)]
    expected = [cf.assess(plan).json() for plan in plans]
    with ThreadPoolExecutor(4) as pool:
        assert [assessment.json() for assessment in pool.map(cf.assess, plans)] == expected


def test_the_interpreter_goes_on_while_a_plan_is_judged(motor_boat_file: Path) -> None:
    # With the interpreter locked and no switch of threads, the counter stands still until assess() is back.
    plan = cf.read_plan(motor_boat_file)
    cf.assess(plan)
    ticks, done = 0, threading.Event()
    seen: list[int] = []

    def judge() -> None:
        before = ticks
        cf.assess(plan, station_spacing_m=0.05)
        seen.append(ticks - before)
        done.set()

    interval = sys.getswitchinterval()
    sys.setswitchinterval(100.0)
    try:
        thread = threading.Thread(target=judge)
        thread.start()
        while not done.is_set():
            ticks += 1
            time.sleep(0)
    finally:
        sys.setswitchinterval(interval)
    thread.join()
    assert seen[0] > 20


def test_only_numpy_comes_with_the_package() -> None:
    code = (
        "import sys, coverframe; print(sorted({m.partition('.')[0] for m in sys.modules}"
        " & {'pandas', 'matplotlib', 'pint', 'numpy', 'scipy', 'IPython'}))"
    )
    shown = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert shown.stdout.strip() == "['numpy']"
