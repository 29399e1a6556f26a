# SPDX-License-Identifier: BSD-3-Clause
"""The published schema and the reader give the same verdict on the same plans, except for what no schema can see."""

from __future__ import annotations

import copy
import json
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import coverframe as cf
import pytest
from jsonschema import Draft202012Validator
from jsonschema.exceptions import ValidationError

REPOSITORY = Path(__file__).resolve().parents[2]
SCHEMA = json.loads((REPOSITORY / "lib" / "schema" / "plan-1.schema.json").read_text(encoding="utf-8"))
CASES: list[dict[str, Any]] = json.loads(
    (REPOSITORY / "tests" / "plans" / "bad" / "cases.json").read_text(encoding="utf-8")
)["cases"]
GOOD = ("pole_ridge", "strap_ridge", "found_frame", "beside_a_shed")

# What the reader refuses and a schema cannot: the code, and why.
BEYOND_A_SCHEMA = {
    "plan.json.size": "a schema sees values, not bytes",
    "plan.json.depth": "a schema sees values; how deep the text went is the parser's business",
    "plan.json.duplicate_key": "the parser has already dropped one of the two",
    "quantity.range": "a number in a text is not computed by a pattern",
    "plan.combination.mixed": "a schema does not hold one part of the document against another",
}
# plan.range of a quantity is beyond a schema for the same reason; of a plain number it is not.
# Whether parts fit one another (codes basis., boat., film., site., strap., support., timber.) is no matter of form.
FIT = ("basis.", "boat.", "film.", "site.", "strap.", "support.", "timber.")

Document = Any
Path_ = tuple[str | int, ...]


def good(name: str) -> Document:
    return json.loads((REPOSITORY / "tests" / "plans" / "good" / f"{name}.json").read_text(encoding="utf-8"))


def keys_of(pointer: str) -> list[str]:
    return [key.replace("~1", "/").replace("~0", "~") for key in pointer.split("/")[1:]]


def step(node: Any, key: str) -> Any:
    return node[int(key)] if isinstance(node, list) else node[key]


def patched(document: Document, edits: list[dict[str, Any]]) -> Document:
    """RFC 6902 as far as the cases use it: add, remove, replace."""
    document = copy.deepcopy(document)
    for edit in edits:
        *around, last = keys_of(edit["path"])
        node = document
        for key in around:
            node = step(node, key)
        operation = edit["op"]
        if isinstance(node, list):
            index = len(node) if last == "-" else int(last)
            if operation == "add":
                node.insert(index, edit["value"])
            elif operation == "remove":
                del node[index]
            else:
                node[index] = edit["value"]
        else:
            assert operation == "add" or last in node, edit
            if operation == "remove":
                del node[last]
            else:
                node[last] = edit["value"]
    return document


def bytes_of(case: dict[str, Any]) -> bytes:
    if "base" in case:
        return json.dumps(patched(good(case["base"]), case["edits"])).encode()
    if "hex" in case:
        return bytes.fromhex(case["hex"])
    return str(case["text"]).encode() * int(case.get("times", 1))


def refuse_constant(name: str) -> float:
    raise ValueError(name)


def parsed(text: bytes) -> tuple[bool, Document]:
    """Whether a strict JSON parser takes the text, and what it makes of it."""
    try:
        return True, json.loads(text.decode("utf-8"), parse_constant=refuse_constant)
    except (ValueError, RecursionError):
        return False, None


@pytest.fixture(scope="module")
def validator() -> Draft202012Validator:
    Draft202012Validator.check_schema(SCHEMA)
    return Draft202012Validator(SCHEMA)


def value_at(document: Document, pointer: str) -> Any:
    node = document
    for key in keys_of(pointer):
        node = step(node, key)
    return node


def is_visible(problem: cf.Problem, document: Document) -> bool:
    """Whether a schema can see this problem."""
    if problem.code in BEYOND_A_SCHEMA or problem.code.startswith(FIT):
        return False
    if problem.code == "plan.range":
        return not isinstance(value_at(document, problem.where), str)
    return True


def problems_in(path: Path) -> list[cf.Problem]:
    try:
        cf.read_plan(path)
    except cf.InputError as error:
        return error.problems
    return []


def problems_of(document: Document) -> list[cf.Problem]:
    try:
        cf.Plan.from_json(json.dumps(document))
    except cf.InputError as error:
        return error.problems
    return []


def places_of(error: ValidationError) -> list[str]:
    """JSON pointers of the fields an error of the validator is about, as the reader would name them."""
    around = "".join("/" + str(key).replace("~", "~0").replace("/", "~1") for key in error.absolute_path)
    if error.validator == "required":
        missing = [key for key in error.validator_value if key not in error.instance]
        return [f"{around}/{key}" for key in missing]
    if error.validator == "additionalProperties":
        unknown = [key for key in error.instance if key not in error.schema["properties"]]
        return [around + "/" + key.replace("~", "~0").replace("/", "~1") for key in unknown]
    return [around]


def test_the_schema_is_the_one_of_the_library() -> None:
    assert cf.schema() == SCHEMA


@pytest.mark.parametrize("name", GOOD)
def test_good_plans_pass_both(name: str, validator: Draft202012Validator) -> None:
    assert problems_of(good(name)) == []
    assert [error.message for error in validator.iter_errors(good(name))] == []


@pytest.mark.parametrize("path", sorted((REPOSITORY / "examples" / "plans").glob("*.json")), ids=lambda path: path.stem)
def test_demo_plans_pass_both(path: Path, validator: Draft202012Validator) -> None:
    assert problems_in(path) == []
    assert [error.message for error in validator.iter_errors(json.loads(path.read_text(encoding="utf-8")))] == []


@pytest.mark.parametrize("case", CASES, ids=lambda case: case["name"])
def test_bad_plans(case: dict[str, Any], validator: Draft202012Validator, tmp_path: Path) -> None:
    text = bytes_of(case)
    file = tmp_path / "plan.json"
    file.write_bytes(text)
    problems = problems_in(file)
    assert [[problem.code, problem.where] for problem in problems] == case["problems"]

    is_json, document = parsed(text)
    if not is_json:
        assert problems[0].code.startswith("plan.json.")
        return
    visible = [problem for problem in problems if is_visible(problem, document)]
    errors = list(validator.iter_errors(document))
    of_form = [p for p in visible if not p.code.startswith("plan.json.") and p.code != "plan.format"]
    if len(of_form) == len(visible):  # else the reader stopped before it looked at the rest
        places = {place for error in errors for place in places_of(error)}
        assert places == {problem.where for problem in visible}
    assert bool(errors) == bool(visible)


def by_document(document: str) -> Document:
    """A good plan on the snow of that document, without anything it does not demand."""
    bases = {"ASCE": "pole_ridge", "NBC ": "beside_a_shed", "EN 1": "strap_ridge"}
    plan = good(bases[document[:4]])
    ground, basis = plan["site"]["ground_snow"], plan["basis"]["snow"]
    ground["document"] = basis["document"] = document
    ground.pop("return_period_years", None)
    plan["site"].pop("neighbours", None)
    for key in ("gable_framing", "unbalanced_window", "slid_snow"):
        basis.pop(key, None)
    if document in ("ASCE 7-10", "ASCE 7-16"):
        del basis["winter_wind"]
        plan["basis"]["combination"]["snow"]["value"] = 1.6
    return plan


# Which document knows which key: "demanded", "allowed", or not at all.
KEYS: dict[str, tuple[Any, dict[str, str]]] = {
    "/site/ground_snow/risk_category": ("III", dict.fromkeys(("ASCE 7-10", "ASCE 7-16", "ASCE 7-22"), "demanded")),
    "/site/ground_snow/rain": ("0.4 kPa", dict.fromkeys(("NBC 2015", "NBC 2020"), "demanded")),
    "/site/ground_snow/return_period_years": (
        50,
        dict.fromkeys(("ASCE 7-10", "ASCE 7-16", "NBC 2015", "NBC 2020", "EN 1991-1-3:2003"), "allowed"),
    ),
    "/basis/snow/winter_wind": ({"value": 0.4, "source": "x"}, {"ASCE 7-22": "demanded"}),
    "/basis/snow/importance_category": (
        {"value": "post-disaster", "source": "x"},
        dict.fromkeys(("NBC 2015", "NBC 2020"), "demanded"),
    ),
}
DOCUMENTS = ("ASCE 7-10", "ASCE 7-16", "ASCE 7-22", "NBC 2015", "NBC 2020", "EN 1991-1-3:2003")


@pytest.mark.parametrize("document", DOCUMENTS)
def test_every_document_with_and_without_every_key(document: str, validator: Draft202012Validator) -> None:
    plan = by_document(document)
    assert problems_of(plan) == [] and validator.is_valid(plan)
    assert cf.Plan.from_dict(cf.Plan.from_dict(plan).to_dict()) == cf.Plan.from_dict(plan)
    for pointer, (value, knows) in KEYS.items():
        *around, key = keys_of(pointer)
        with_it, without_it = copy.deepcopy(plan), copy.deepcopy(plan)
        value_at(with_it, "/" + "/".join(around))[key] = value
        value_at(without_it, "/" + "/".join(around)).pop(key, None)
        refused_with = [] if document in knows else [("plan.key.unknown", pointer)]
        refused_without = [("plan.key.missing", pointer)] if knows.get(document) == "demanded" else []
        for trial, refused in ((with_it, refused_with), (without_it, refused_without)):
            assert [(problem.code, problem.where) for problem in problems_of(trial)] == refused
            assert validator.is_valid(trial) == (not refused)


@pytest.mark.parametrize("document", DOCUMENTS)
def test_every_number_of_a_document_at_its_ends(document: str, validator: Draft202012Validator) -> None:
    plan = by_document(document)
    european, canadian = document.startswith("EN"), document.startswith("NBC")
    ends: list[tuple[str, list[Any], list[Any]]] = [
        ("/basis/snow/exposure_factor/value", [0.5, 1.0], [0.499, 1.001 if canadian else 1.501]),
        ("/basis/snow/thermal_factor/value", [1, 1.0] if canadian else [0.8, 1.4], [0.799, 1.401]),
    ]
    if document != "ASCE 7-22":
        believed = [5, 50, 50.0, 1000] if european else [50, 50.0]
        refused = [4, 1001, 50.5, "50", None, True] + ([] if european else [49, 51])
        ends.append(("/site/ground_snow/return_period_years", believed, refused))
    for pointer, believed, refused in ends:
        *around, key = keys_of(pointer)
        for value in (*believed, *refused):
            trial = copy.deepcopy(plan)
            value_at(trial, "/" + "/".join(around))[key] = value
            expected = [pointer] if value in refused and value not in believed else []
            assert [problem.where for problem in problems_of(trial)] == expected, (pointer, value)
            assert validator.is_valid(trial) == (not expected), (pointer, value)


def leaves(node: Any, path: Path_ = ()) -> Iterator[tuple[Path_, Any]]:
    yield path, node
    if isinstance(node, dict):
        for key, child in node.items():
            yield from leaves(child, (*path, key))
    elif isinstance(node, list):
        for index, child in enumerate(node):
            yield from leaves(child, (*path, index))


def replaced(document: Document, path: Path_, value: Any) -> Document:
    document = copy.deepcopy(document)
    node = document
    for key in path[:-1]:
        node = node[key]
    node[path[-1]] = value
    return document


def without(document: Document, path: Path_) -> Document:
    document = copy.deepcopy(document)
    node = document
    for key in path[:-1]:
        node = node[key]
    del node[path[-1]]
    return document


STRANGERS: list[Any] = [None, True, 0, -1, 0.3, 1e9, "", " ", "x", "1 m", "0.3 kN", "40 kPa", "1 ft 6 in", "30 deg",
                        "5 kN/m3", "2 m 3", "1e3 mm", "II", "other", "found", "strap", "both", [], {}, ["bow", "T1"],
                        {"value": "1 m", "source": "x"}]  # fmt: skip


def test_every_value_of_a_plan_replaced_by_every_stranger(validator: Draft202012Validator) -> None:
    seen: set[tuple[str, ...]] = set()
    refused = passed = 0
    for name in GOOD:
        document = good(name)
        for path, _ in leaves(document):
            generic = tuple("*" if isinstance(key, int) else key for key in path)
            if not path or generic in seen:
                continue
            seen.add(generic)
            for trial in (*(replaced(document, path, stranger) for stranger in STRANGERS), without(document, path)):
                problems = problems_of(trial)
                visible = [problem for problem in problems if is_visible(problem, trial)]
                assert validator.is_valid(trial) == (not visible), (path, value_or_gone(trial, path), problems)
                refused += bool(visible)
                passed += not visible
    assert len(seen) > 150 and refused > 3000 and passed > 150


def value_or_gone(document: Document, path: Path_) -> Any:
    node = document
    for key in path:
        try:
            node = node[key]
        except (KeyError, IndexError):
            return "gone"
    return node


def test_every_object_of_a_plan_with_a_key_too_many(validator: Draft202012Validator) -> None:
    for name in GOOD:
        document = good(name)
        for path, node in leaves(document):
            if not isinstance(node, dict):
                continue
            trial = replaced(document, (*path, "stranger"), "1 m")
            assert "plan.key.unknown" in [problem.code for problem in problems_of(trial)], path
            assert not validator.is_valid(trial), path
