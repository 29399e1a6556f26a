# SPDX-License-Identifier: BSD-3-Clause
"""An assessment looked at again with film as a surface."""

from __future__ import annotations

from pathlib import Path

import coverframe as cf
import numpy as np
import pytest


@pytest.fixture(scope="module")
def assessment(repository: Path) -> cf.Assessment:
    return cf.assess(repository / "examples" / "plans" / "sloop.json")


@pytest.fixture(scope="module")
def seen(assessment: cf.Assessment) -> cf.Survey:
    return cf.survey(assessment, spacing_m=0.35, rows=8)


def test_every_arrangement_is_looked_at(assessment: cf.Assessment, seen: cf.Survey) -> None:
    names = ["no snow"] + [arrangement.name for arrangement in assessment.arrangements]
    assert [look.arrangement for look in seen.looks] == names
    for look in seen.looks:
        assert look.usable
        assert look.sheds + look.partly + look.holds == pytest.approx(1)
        assert 0 <= look.least_slope_deg < 90
        assert {touch.obstacle for touch in look.touches} == {touch.obstacle for touch in seen.worst.touches}


def test_its_findings_join_those_of_the_assessment(assessment: cf.Assessment, seen: cf.Survey) -> None:
    before = {(f.check, f.part) for f in assessment.findings}
    after = {(f.check, f.part) for f in seen.findings}
    assert before < after
    assert {check.split(".")[0] for check, _ in after - before} == {"surface"}
    assert len(seen.to_frame()) == len(seen.findings)
    assert seen.outcome == "exceeded"
    assert seen.outcome in seen.verdict


def test_a_part_that_carries_more_is_used_more(assessment: cf.Assessment, seen: cf.Survey) -> None:
    assert [force.part for force in seen.forces if force.carried == "push"] == ["U1", "U2", "U3"]
    assert {"ridge, U1 to U2", "C1 port"} < {force.part for force in seen.forces}
    factor = 1.5  # of the plan
    for force in seen.forces:
        if force.carried != "push" or force.excess == 0:
            continue
        judged = max(
            f.utilisation
            for f in assessment.findings
            if f.part == force.part and f.check.startswith("upright.") and f.utilisation is not None
        )
        most = next(f.greatest for f in assessment.forces if f.part == force.part and f.quantity == "push")
        raised = judged * (1 + factor * force.excess / most)
        found = [f for f in seen.findings if f.check == "surface.upright" and f.part == force.part]
        if raised - judged < 0.01 * max(1.0, judged):  # nobody would see it
            assert not found
        else:
            assert found[0].utilisation == pytest.approx(raised)


def test_the_band_is_judged_by_the_surface_too(assessment: cf.Assessment, seen: cf.Survey) -> None:
    band = {force.part: force for force in seen.forces if force.carried in ("leg tension", "band tension")}
    assert set(band) == {"belly strap 1", "belly strap 2", "belly strap 3", "band"}
    force = band["band"]
    assert force.strips < force.without_ends < force.surface
    assert "; factored; " in force.arrangement
    check = next(f for f in assessment.findings if f.check == "band.tension")
    found = next(f for f in seen.findings if f.check == "surface.band" and f.part == "band")
    assert found.utilisation == pytest.approx(check.utilisation * (1 + force.excess / (1000 * check.demand)))
    assert all(force.without_ends == 0 for force in seen.forces if force.part not in band)


def test_the_worst_look_is_there_to_be_drawn(seen: cf.Survey) -> None:
    state = seen.state
    assert state.usable
    assert state.water_m3 == pytest.approx(seen.worst.water_m3)
    assert np.max(state.drop_m) > 0.02


def test_reports_tell_of_the_surface(assessment: cf.Assessment, seen: cf.Survey) -> None:
    assert "The film as a surface" in seen.job_sheet()
    assert "The film as a surface" not in assessment.job_sheet()
    assert "surface.clearance" in seen.json()
    assert "clearance to the film as a surface" in seen.text()


def test_one_spacing_only(assessment: cf.Assessment) -> None:
    with pytest.raises(cf.InputError, match="one finite number"):
        cf.survey(assessment, spacing_m=[0.2, 0.3])
    with pytest.raises(cf.InputError):
        cf.survey(assessment, spacing_m=5)


def test_when_the_film_first_touches(seen: cf.Survey) -> None:
    hatch = next(first for first in seen.touched if first.obstacle == "companionway hatch")
    assert 0 < hatch.share < 1
    assert hatch.arrangement in [look.arrangement for look in seen.looks]
    assert 0 < hatch.load_kpa < 1
