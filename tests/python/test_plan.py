# SPDX-License-Identifier: BSD-3-Clause
"""Plans: reading, changing, comparing, sending."""

from __future__ import annotations

import copy
import json
import pickle
from collections.abc import Mapping
from pathlib import Path
from typing import Any

import coverframe as cf
import numpy as np
import pytest


def test_all_ways_to_a_plan_give_the_same_plan(motor_boat_file: Path, document: dict[str, Any]) -> None:
    plan = cf.read_plan(motor_boat_file)
    assert plan == cf.read_plan(str(motor_boat_file))
    assert plan == cf.Plan.from_dict(document)
    assert plan == cf.Plan.from_json(motor_boat_file.read_text(encoding="utf-8"))
    assert plan.title == document["title"] and plan.note == document["note"]


def test_a_plan_reads_back_to_itself(motor_boat_file: Path) -> None:
    plan = cf.read_plan(motor_boat_file)
    assert cf.Plan.from_dict(plan.to_dict()) == plan
    assert cf.Plan.from_json(plan.to_json()) == plan
    assert cf.Plan.from_json(plan.to_json()).to_json() == plan.to_json()


def test_plans_differ_by_a_hair(document: dict[str, Any]) -> None:
    plan = cf.Plan.from_dict(document)
    document["site"]["ground_snow"]["load"] = "1.0000001 kPa"
    other = cf.Plan.from_dict(document)
    document["site"]["ground_snow"]["load"] = "1.0000002 kPa"
    assert plan != other and other != cf.Plan.from_dict(document)
    assert plan != document and plan != "plan" and not (plan == None)  # noqa: E711
    assert len({plan, other, cf.Plan.from_dict(plan.to_dict())}) == 2


def test_the_dictionary_is_the_callers_own(motor_boat_file: Path) -> None:
    plan = cf.read_plan(motor_boat_file)
    plan.to_dict()["site"]["name"] = "elsewhere"
    assert plan == cf.read_plan(motor_boat_file)


def test_a_plan_does_not_change(motor_boat_file: Path) -> None:
    plan = cf.read_plan(motor_boat_file)
    with pytest.raises(AttributeError):
        plan.title = "another"  # type: ignore[misc]
    with pytest.raises(AttributeError):
        plan.wind = 3  # type: ignore[attr-defined]
    with pytest.raises(TypeError):
        cf.Plan()


@pytest.mark.parametrize("protocol", range(pickle.HIGHEST_PROTOCOL + 1))
def test_a_plan_can_be_pickled(motor_boat_file: Path, protocol: int) -> None:
    plan = cf.read_plan(motor_boat_file)
    assert pickle.loads(pickle.dumps(plan, protocol)) == plan
    assert copy.deepcopy(plan) == plan and copy.copy(plan) == plan


def test_a_plan_pickled_in_another_format_is_refused(motor_boat_file: Path) -> None:
    function, (number, document) = cf.read_plan(motor_boat_file).__reduce__()
    assert function(number, document) == cf.read_plan(motor_boat_file)
    with pytest.raises(cf.InputError) as refused:
        function(number + 1, document)
    assert refused.value.code == "plan.pickle"


def test_a_plan_shows_itself(document: dict[str, Any]) -> None:
    document["title"] = "<b>Boat</b> & cover"
    plan = cf.Plan.from_dict(document)
    assert repr(plan) == "<coverframe.Plan '<b>Boat</b> & cover'>"
    page = plan._repr_html_()
    assert "&lt;b&gt;Boat&lt;/b&gt; &amp; cover" in page and "<b>" not in page


def test_every_problem_is_reported(document: dict[str, Any]) -> None:
    document["site"]["ground_snow"]["load"] = 1.5
    document["colour"] = "white"
    with pytest.raises(cf.InputError) as refused:
        cf.Plan.from_dict(document)
    found = {problem.where: problem for problem in refused.value.problems}
    assert found["/site/ground_snow/load"].code == "plan.quantity.bare"
    assert found["/site/ground_snow/load"].value == "1.5"
    assert found["/colour"].code == "plan.key.unknown"
    assert all(problem.advice for problem in refused.value.problems)
    assert refused.value.code == refused.value.problems[0].code
    assert isinstance(refused.value, ValueError)


def test_a_factor_of_another_document_is_explained(document: dict[str, Any]) -> None:
    assert document["site"]["ground_snow"]["document"] == "ASCE 7-22"
    document["basis"]["combination"]["snow"]["value"] = 1.6
    why = "ASCE 7-10 and ASCE 7-16.*ASCE 7-22 and at strength level already"
    with pytest.raises(cf.InputError, match=why) as refused:
        cf.Plan.from_dict(document)
    assert (refused.value.code, refused.value.where) == ("plan.combination.mixed", "/basis/combination/snow/value")


def test_python_numbers_become_json_numbers(document: dict[str, Any]) -> None:
    plan = cf.Plan.from_dict(document)
    factor = document["basis"]["snow"]["exposure_factor"]
    factor["value"] = np.float64(factor["value"])
    document["boat"]["rail"] = tuple(document["boat"]["rail"])
    assert cf.Plan.from_dict(document) == plan


def test_pint_quantities_stand_for_text(document: dict[str, Any]) -> None:
    pint = pytest.importorskip("pint")
    units = pint.UnitRegistry()
    document["site"]["ground_snow"]["load"] = "1.5 kPa"
    plan = cf.Plan.from_dict(document)
    document["site"]["ground_snow"]["load"] = 1.5 * units.kPa
    assert cf.Plan.from_dict(document) == plan
    document["site"]["ground_snow"]["load"] = 1.5 * units.kg
    with pytest.raises(cf.InputError) as refused:
        cf.Plan.from_dict(document)
    assert (refused.value.code, refused.value.where) == ("quantity.dimension", "/site/ground_snow/load")


@pytest.mark.parametrize(
    ("value", "code"),
    [
        (float("nan"), "plan.json.number"),
        (float("-inf"), "plan.json.number"),
        (np.nan * np.float32(1), "plan.json.number"),
        ({1, 2}, "plan.type"),
        (b"1.5 kPa", "plan.type"),
        ({3: "kPa"}, "plan.type"),
        (np.array([1.0, 2.0]), "plan.type"),
    ],
)
def test_what_json_cannot_hold_is_refused_in_its_place(document: dict[str, Any], value: Any, code: str) -> None:
    document["site"]["ground_snow"]["load"] = value
    with pytest.raises(cf.InputError) as refused:
        cf.Plan.from_dict(document)
    assert (refused.value.code, refused.value.where) == (code, "/site/ground_snow/load")


def test_a_dictionary_without_end_is_refused(document: dict[str, Any]) -> None:
    document["boat"]["boat"] = document["boat"]
    with pytest.raises(cf.InputError) as refused:
        cf.Plan.from_dict(document)
    assert refused.value.code == "plan.json.depth"


@pytest.mark.parametrize("text", ["", "{", "[]", "nan", '{"title": "\ud800"}', "\x00"])
def test_what_is_no_plan_is_refused(text: str) -> None:
    with pytest.raises(cf.InputError):
        cf.Plan.from_json(text)


def test_a_missing_file_is_an_input_error(tmp_path: Path) -> None:
    for path in (tmp_path / "missing.json", tmp_path, str(tmp_path / "m\udcffssing.json")):
        with pytest.raises(cf.InputError) as refused:
            cf.read_plan(path)
        assert refused.value.code == "plan.file"


def test_json_text_instead_of_a_path_is_explained(document: dict[str, Any]) -> None:
    with pytest.raises(cf.InputError, match="from_json"):
        cf.assess(json.dumps(document))


@pytest.mark.parametrize("plan", [None, 3, ["plan.json"], b"{}"])
def test_other_things_are_no_plan(plan: Any) -> None:
    with pytest.raises(TypeError):
        cf.assess(plan)


def test_any_mapping_will_do(document: dict[str, Any]) -> None:
    class View(Mapping[str, Any]):
        def __getitem__(self, key: str) -> Any:
            return document[key]

        def __iter__(self) -> Any:
            return iter(document)

        def __len__(self) -> int:
            return len(document)

    assert cf.Plan.from_dict(View()) == cf.Plan.from_dict(document)


def test_the_schema_is_the_published_one(repository: Path) -> None:
    published = repository / "lib" / "schema" / "plan-1.schema.json"
    assert cf.schema() == json.loads(published.read_text(encoding="utf-8"))
