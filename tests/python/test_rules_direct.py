# SPDX-License-Identifier: BSD-3-Clause
"""The short way of rules over plain numbers and arrays against the long way over everything: the same answers, the same
refusals, whatever is given and however it lies in memory. The short way is compiled, the long way is Python."""

from __future__ import annotations

import random
import sys
from collections.abc import Callable
from typing import Any

import coverframe as cf
import numpy as np
import pytest
from coverframe import _core
from coverframe.rules import Rule, Value, _carefully, function_of
from test_every_rule import RULES, _accepted


class Other(np.ndarray):  # type: ignore[type-arg]
    """A class of arrays of somebody else."""


def unaligned(array: Any) -> Any:
    memory = np.zeros(array.nbytes + 1, dtype=np.uint8)
    moved = memory[1:].view(array.dtype).reshape(array.shape)
    moved[...] = array
    return moved


def read_only(array: Any) -> Any:
    array = array.copy()
    array.setflags(write=False)
    return array


def strided(array: Any) -> Any:
    return np.repeat(array, 3, axis=-1)[..., ::3]


def backwards(array: Any) -> Any:
    return array[..., ::-1].copy()[..., ::-1]


#: How an array may lie in memory, with the same items.
LYING: tuple[Callable[[Any], Any], ...] = (
    np.array,
    read_only,
    strided,
    backwards,
    np.asfortranarray,
    unaligned,
    lambda a: a.astype(a.dtype.newbyteorder("S")),
    lambda a: a.view(Other),
    lambda a: a.tolist(),
    lambda a: np.ma.masked_array(a) if a.dtype.kind == "f" else a.astype(object),
)
#: Types of numbers; some round, and both ways have to round alike.
TYPES = ("f8", "f4", "f2", "i8", "i4", "i2", "u1", "u8", "longdouble")


def outcome(call: Callable[[], tuple[Any, ...]]) -> tuple[str, Any]:
    try:
        return "gives", call()
    except cf.InputError as error:
        return "refuses", [(p.code, p.where, p.value, p.advice) for p in error.problems]


def require_same(of: Rule, arguments: dict[str, Any]) -> str:
    keywords = [value.keyword for value in of.arguments]
    short_kind, short = outcome(lambda: function_of(of.name)(*(arguments[keyword] for keyword in keywords)))
    long_kind, long = outcome(lambda: _carefully(of, arguments))
    assert short_kind == long_kind, (short, long)
    if short_kind == "refuses":
        assert short == long
        return short_kind
    for one, other in zip(short, long, strict=True):
        assert type(one) is type(other)
        if isinstance(one, np.ndarray):
            assert (one.dtype, one.shape, one.tobytes()) == (other.dtype, other.shape, other.tobytes())
            assert one.flags.c_contiguous and one.flags.writeable and one.base is None
        else:
            assert one == other
    return short_kind


def drawn_single(value: Value, item: Any, source: random.Random) -> Any:
    if value.kind != "number":
        return source.choice((item, item, np.array(item), np.array([item])))
    others = (np.float64(item), np.float32(item), int(item), np.array(item), np.array([[item]]))
    return source.choice((item, item, *others))


def drawn_array(value: Value, items: list[Any], shape: tuple[int, ...], source: random.Random) -> Any:
    size = int(np.prod(shape))
    array = np.array([source.choice(items) for _ in range(size)], dtype=None if size else type(items[0])).reshape(shape)
    if value.kind == "number" and source.random() < 0.4:
        array = array.astype(source.choice(TYPES))
    return source.choice((np.array, source.choice(LYING)))(array)


@pytest.mark.parametrize("of", [rule for rule in RULES if rule.arguments], ids=lambda rule: rule.name)
def test_both_ways_agree(of: Rule) -> None:
    source = random.Random(of.name)
    sets = _accepted(of, 4)
    shapes: tuple[tuple[int, ...], ...] = ((1,), (5,), (4, 1), (4, 5), (2, 1, 5), (3, 4, 5), (0,), (4, 0), (7,))
    for _ in range(60):
        base = source.choice(sets)
        arguments: dict[str, Any] = {}
        for value in of.arguments:
            items = [one[value.keyword] for one in (sets if source.random() < 0.3 else [base])]
            if source.random() < 0.5:
                arguments[value.keyword] = drawn_single(value, items[0], source)
            else:
                arguments[value.keyword] = drawn_array(value, items, source.choice(shapes), source)
        require_same(of, arguments)


@pytest.mark.parametrize("of", [rule for rule in RULES if rule.arguments], ids=lambda rule: rule.name)
def test_both_ways_agree_over_many_items(of: Rule) -> None:
    # More items than are turned into numbers at once, and so many that the interpreter lock is released.
    source = random.Random(of.name)
    sets = _accepted(of, 5)
    which = np.array([source.randrange(len(sets)) for _ in range(9000)])
    columns = {value.keyword: np.array([one[value.keyword] for one in sets])[which] for value in of.arguments}
    assert require_same(of, columns) == "gives"
    assert require_same(of, {keyword: strided(column) for keyword, column in columns.items()}) == "gives"
    table = {keyword: column.reshape(3000, 3).T for keyword, column in columns.items()}
    assert require_same(of, table) == "gives"
    for value in of.arguments:
        if value.kind == "number":
            spoilt = columns[value.keyword].copy()
            spoilt[[7001, 8000]] = np.nan
            assert require_same(of, columns | {value.keyword: spoilt}) == "refuses"
            assert require_same(of, columns | {value.keyword: strided(spoilt)}) == "refuses"


@pytest.mark.parametrize("of", RULES, ids=lambda rule: rule.name)
def test_plain_arguments_take_the_short_way(of: Rule) -> None:
    def carefully(*values: Any) -> tuple[Any, ...]:
        raise AssertionError(f"the long way for {values}")

    function = _core.direct_rule(of.number, carefully)
    base = _accepted(of, 1)[0]
    function(*base.values())
    if not of.arguments:
        return
    arrays = [np.full((2, 3), item) for item in base.values()]
    function(*arrays)
    function(*(strided(array) for array in arrays))
    function(*(array[:, :1] for array in arrays))
    function(*(array[0] if k % 2 else array[:, :1] for k, array in enumerate(arrays)))
    function(*(np.array(item) for item in base.values()))


PLAIN = {"slope_deg": np.array([10.0, 50.0]), "thermal_factor": 1.2, "surface": "other"}


@pytest.mark.parametrize(
    "given",
    [
        {"slope_deg": "50 deg"},
        {"slope_deg": ["10 deg", "50 deg"]},
        {"slope_deg": np.array(["10 deg", "50 deg"])},
        {"slope_deg": [10, 50]},
        {"slope_deg": (10.0, 50.0)},
        {"slope_deg": 2**70},
        {"slope_deg": 2**63},
        {"slope_deg": -(2**63)},
        {"slope_deg": True},
        {"slope_deg": np.array([True, False])},
        {"slope_deg": np.bool_(True)},
        {"slope_deg": None},
        {"slope_deg": 1j},
        {"slope_deg": np.array([1j])},
        {"slope_deg": np.array([10, 50], dtype="m8[s]")},
        {"slope_deg": np.array([10.0, 50.0], dtype=object)},
        {"slope_deg": np.array([[10.0], [95.0]])},
        {"slope_deg": float("nan")},
        {"slope_deg": np.array([])},
        {"slope_deg": np.zeros((1,) * 9)},
        {"slope_deg": np.zeros((2,) + (1,) * 9)},
        {"slope_deg": np.zeros(3), "thermal_factor": np.ones(2)},
        {"surface": "icy"},
        {"surface": "othe"},
        {"surface": "others"},
        {"surface": "other\0"},
        {"surface": "\ud800"},
        {"surface": ""},
        {"surface": np.str_("other")},
        {"surface": np.array("other")},
        {"surface": np.array(["other", "slippery"])},
        {"surface": np.array(["other", "slippery", "unobstructed"])[:2]},
        {"surface": np.array(["other", "icy"])},
        {"surface": np.array(["othe", "o"])},
        {"surface": np.array(["other", "slippery"], dtype=object)},
        {"surface": np.array(["other", None], dtype=object)},
        {"surface": np.array([b"other"])},
        {"surface": ["other", "slippery"]},
        {"surface": [["other"], ["slippery"]]},
        {"surface": np.array([["other"], ["slippery"]])},
        {"surface": np.array([["other"], ["icy"]])},
        {"surface": 0},
        {"surface": None},
        {"surface": True},
    ],
)
def test_both_ways_agree_on_odd_arguments(given: dict[str, Any]) -> None:
    require_same(cf.rules.rule("asce7_22.slope_factor"), PLAIN | given)


def test_truths_are_no_numbers() -> None:
    of = next(rule for rule in RULES if any(value.kind == "truth" for value in rule.arguments))
    base = _accepted(of, 1)[0]
    keyword = next(value.keyword for value in of.arguments if value.kind == "truth")
    truths = (True, np.bool_(True), np.array([True, False]), [True, False], np.array([[True]]))
    for given in (*truths, 1, 0.0, "True", None):
        require_same(of, base | {keyword: given})
    for refused in (1, np.array([1, 0]), "True", None):
        assert require_same(of, base | {keyword: refused}) == "refuses"


def test_arguments_are_held_no_longer_than_the_call() -> None:
    function = function_of("asce7_22.slope_factor")
    slope, bad, surface = np.array([10.0, 50.0]), np.array([10.0, 95.0]), np.array(["other", "slippery"])
    before = [sys.getrefcount(held) for held in (slope, bad, surface)]
    for _ in range(50):
        result = function(slope, 1.2, surface)[0]
        assert sys.getrefcount(result) == 2
        with pytest.raises(cf.InputError):
            function(bad, 1.2, "other")
        with pytest.raises(cf.InputError):
            function(slope, 1.2, "icy")
    assert [sys.getrefcount(held) for held in (slope, bad, surface)] == before


def test_a_result_is_of_its_own() -> None:
    slope = np.array([10.0, 50.0])
    first = cf.asce7_22.slope_factor(slope_deg=slope, thermal_factor=1.2)
    second = cf.asce7_22.slope_factor(slope_deg=slope, thermal_factor=1.2)
    assert not np.shares_memory(first, second) and not np.shares_memory(first, slope)


def test_as_many_arguments_as_the_rule_takes() -> None:
    for given in ((), (1.0,), (1.0, 1.2, "other", 1.0)):
        with pytest.raises(ValueError):
            function_of("asce7_22.slope_factor")(*given)
