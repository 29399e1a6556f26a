# SPDX-License-Identifier: BSD-3-Clause
"""What every rule of the catalogue has to do in Python: arrays like single values, errors that name the item."""

from __future__ import annotations

import importlib
import random
from typing import Any

import coverframe as cf
import numpy as np
import pytest
from coverframe.rules import Rule, Value

RULES = cf.rules.all_rules()

_BENDS = {
    "kPa": (0.0, 0.5, 1.0, 2.0),
    "m": (0.3, 1.0, 2.0, 5.0, 15.0, 200.0),
    "deg": (0.0, 2.38, 15.0, 20.0, 30.0, 60.0, 90.0),
    "kN/m3": (1.0, 2.0, 4.0),
    "kN/m": (0.0, 1.0, 5.0),
    "kN": (0.0, 1.0, 5.0),
    "": (0.1, 0.5, 0.8, 1.0, 1.2, 2.0, 3.0, 10.0, 50.0),
}


def _drawn(value: Value, source: random.Random) -> Any:
    if value.kind == "choice":
        return source.choice(value.choices)
    if value.kind == "truth":
        return source.random() < 0.5
    if value.keyword.endswith("_years"):
        return source.choice((1.0, 2.0, 5.0, 10.0, 50.0, 100.0, 1000.0))
    return source.choice((source.choice(_BENDS[value.unit]), source.uniform(0.0, 2.0), source.uniform(0.0, 20.0)))


def _accepted(rule: Rule, count: int) -> list[dict[str, Any]]:
    """Sets of arguments the rule accepts, drawn with a fixed seed."""
    source = random.Random(rule.name)
    found: list[dict[str, Any]] = []
    for _ in range(20_000):
        arguments = {value.keyword: _drawn(value, source) for value in rule.arguments}
        try:
            cf.rules.call(rule, **arguments)
        except cf.InputError:
            continue
        found.append(arguments)
        if len(found) == count:
            break
    assert found, "nothing was accepted"
    return found


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.name)
def test_arrays_give_what_single_values_give(rule: Rule) -> None:
    sets = _accepted(rule, 6)
    single = [cf.rules.call(rule, **arguments) for arguments in sets]
    columns = {value.keyword: np.array([arguments[value.keyword] for arguments in sets]) for value in rule.arguments}
    together = cf.rules.call(rule, **columns)
    for k, value in enumerate(rule.results):
        expected = np.array([results[k] for results in single])
        if rule.arguments:
            np.testing.assert_array_equal(together[k], expected)
        if value.kind == "number":
            assert np.isfinite(expected).all()


WITH_NUMBERS = [r for r in RULES if any(v.kind == "number" for v in r.arguments)]


@pytest.mark.parametrize("rule", WITH_NUMBERS, ids=lambda r: r.name)
def test_an_item_that_is_no_number_is_named(rule: Rule) -> None:
    arguments = _accepted(rule, 1)[0]
    for value in rule.arguments:
        if value.kind == "number":
            column = np.array([arguments[value.keyword], np.nan, arguments[value.keyword]])
            with pytest.raises(cf.InputError) as refused:
                cf.rules.call(rule, **(arguments | {value.keyword: column}))
            assert refused.value.where == "/1"


def test_every_function_is_the_rule_of_its_name() -> None:
    for rule in RULES:
        space, _, name = rule.name.partition(".")
        function = getattr(importlib.import_module(f"coverframe.{space}"), name)
        assert cf.rules.rule(function) is rule
        assert rule.clause in function.__doc__.replace("\n    ", " ")
        results = function(**_accepted(rule, 1)[0])
        if len(rule.results) > 1:
            assert results._fields == tuple(value.keyword for value in rule.results)


def test_workings_are_in_the_units_of_the_document() -> None:
    # O'Rourke, Snow Loads: Guide to ASCE 7-10 (2010), Example 4-3: 30 psf, C_e 1.0, C_t 1.2, I_s 1.0, printed 25.2 psf.
    terms = cf.rules.workings(
        cf.asce7_10.flat_load, ground_snow_kpa="30 psf", exposure_factor=1.0, thermal_factor=1.2, importance_factor=1.0
    )
    wanted = [("p_g", "psf"), ("C_e", "-"), ("C_t", "-"), ("I_s", "-"), ("p_f", "psf")]
    assert [(t.symbol, t.unit) for t in terms] == wanted
    assert terms[0].value == pytest.approx(30.0, rel=1e-12)
    assert terms[-1].value == pytest.approx(25.2, rel=1e-12)
    assert terms[-1].clause.startswith("ASCE 7-10")


@pytest.mark.parametrize(
    ("call", "code"),
    [
        (lambda: cf.rules.rule("asce7_16.no_such"), "rule.unknown"),
        (lambda: cf.rules.rule(cf.assess), "rule.unknown"),
        (
            lambda: cf.rules.workings("en1991_1_3.shape_coefficient", slope_deg=[1.0, 2.0]),
            "argument.shape",
        ),
    ],
)
def test_what_the_catalogue_refuses(call: Any, code: str) -> None:
    with pytest.raises(cf.InputError) as refused:
        call()
    assert refused.value.code == code


def test_arguments_are_those_of_the_rule() -> None:
    with pytest.raises(TypeError, match="no argument 'slope'"):
        cf.rules.call("en1991_1_3.shape_coefficient", slope=1.0)
    with pytest.raises(TypeError, match="lacks the argument 'slope_deg'"):
        cf.rules.call("en1991_1_3.shape_coefficient")


def test_words_of_a_choice_may_be_an_array() -> None:
    factors = cf.en1991_1_3.shape_coefficient(slope_deg=45.0, sliding=["free", "prevented"])
    np.testing.assert_allclose(factors, [0.4, 0.8], rtol=1e-12)


def test_the_table_of_rules_has_a_row_a_rule() -> None:
    table = cf.rules.table()
    assert len(table) == len(RULES)
    assert table["how read"].isin(
        ["read on a page", "read in part", "from memory, sure", "from memory", "from memory, doubtful", "derived here"]
    ).all()
