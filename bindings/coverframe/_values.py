# SPDX-License-Identifier: BSD-3-Clause
"""How keyword arguments become arrays of numbers.

A number or array is taken to be in the unit its keyword names. Text ("30 psf", "5 ft 6 in") and quantities of the pint
library are converted to it. Everything broadcasts as in NumPy.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import replace
from typing import Any

import numpy as np
from numpy.typing import NDArray

from . import _core
from .errors import InputError, refuse

Floats = NDArray[np.float64]
#: What a rule gives back: a float if every argument was a single value, an array otherwise.
Numbers = float | Floats

#: Unit of a keyword by its ending. Longer endings first; no ending is a pure number.
_UNITS = (
    ("_kn_per_m3", "kN/m3"),
    ("_kn_per_m", "kN/m"),
    ("_n_per_m", "N/m"),
    ("_n_m", ""),  # a moment: numbers only
    ("_kpa", "kPa"),
    ("_deg", "deg"),
    ("_kn", "kN"),
    ("_n", "N"),
    ("_m", "m"),
)


def unit_of(keyword: str) -> str:
    """The unit a keyword names, "" for a pure number."""
    return next((unit for ending, unit in _UNITS if keyword.endswith(ending)), "")


def numbers(keyword: str, value: Any) -> Floats:
    """`value` as float64, counted in the unit of `keyword`."""
    unit = unit_of(keyword)
    where = "/" + keyword
    if hasattr(value, "magnitude") and hasattr(value, "to"):
        try:
            value = value.to(unit or "dimensionless").magnitude
        except TypeError as error:
            advice = f"{keyword} is counted in {unit or 'no unit'}: {error}"
            raise refuse("argument.dimension", where, value, advice) from error
    if np.ma.isMaskedArray(value):
        value = np.ma.filled(value.astype(np.float64), np.nan)
    array = np.asarray(value)
    if array.dtype.kind == "U" and unit:
        texts = [_core.read_quantity(str(text), unit, where) for text in array.ravel()]
        return np.array(texts, dtype=np.float64).reshape(array.shape)
    if array.dtype.kind not in "iuf":
        or_text = f" or text such as {_EXAMPLES[unit]}" if unit else ""
        raise refuse("argument.number", where, repr(value), f"{keyword} must be a number, an array of numbers{or_text}")
    return np.ascontiguousarray(array, dtype=np.float64).reshape(array.shape)


def number(keyword: str, value: Any) -> float:
    """`value` as one finite number, counted in the unit of `keyword`."""
    array = numbers(keyword, value)
    if array.ndim or not np.isfinite(array):
        raise refuse("argument.number", "/" + keyword, repr(value), f"{keyword} must be one finite number")
    return float(array)


def whole(keyword: str, value: Any) -> int:
    """`value` as a whole number that fits the compiled part."""
    if isinstance(value, (int, np.integer)) and not isinstance(value, bool) and abs(int(value)) < 2**31:
        return int(value)
    raise refuse("argument.number", "/" + keyword, repr(value), f"{keyword} must be a whole number")


@contextmanager
def named(*keywords: str) -> Iterator[None]:
    """Lets refusals of the compiled part name our keywords.

    What it calls "/film_tension" or "/options/spacing" is "/film_tension_n_per_m" or "/spacing_m" to our caller.
    """
    try:
        yield
    except InputError as error:
        problems = [replace(problem, where=_renamed(problem.where, keywords)) for problem in error.problems]
        raise InputError(problems) from None


def _renamed(where: str, keywords: Sequence[str]) -> str:
    names = where.removeprefix("/options").split("/")
    return "/".join(next((k for k in keywords if k == n or (n and k.startswith(n + "_"))), n) for n in names)


_EXAMPLES = {
    "kPa": '"30 psf"',
    "deg": '"45 deg"',
    "m": '"5 ft 6 in"',
    "N/m": '"500 N/m"',
    "kN/m": '"500 N/m"',
    "kN": '"200 lbf"',
    "N": '"200 lbf"',
    "kN/m3": '"20 pcf"',
}


def broadcast(arrays: Mapping[str, Floats]) -> tuple[tuple[int, ...], list[Floats]]:
    """Shape of the result and one column an array: as many items as the result, or a single one that serves all."""
    try:
        shape = np.broadcast_shapes(*(array.shape for array in arrays.values()))
    except ValueError as error:
        shapes = ", ".join(f"{keyword} {array.shape}" for keyword, array in arrays.items())
        advice = f"the arguments have shapes that do not broadcast: {shapes}"
        raise refuse("argument.shape", "", shapes, advice) from error
    spread = [a if a.size == 1 else np.ascontiguousarray(np.broadcast_to(a, shape)) for a in arrays.values()]
    return shape, [array.reshape(-1) for array in spread]


def columns(**keywords: Any) -> tuple[tuple[int, ...], list[Floats]]:
    """`broadcast` of keyword arguments that are numbers."""
    return broadcast({keyword: numbers(keyword, value) for keyword, value in keywords.items()})


def result(values: Floats) -> Numbers:
    """A float for a single value, the array itself otherwise."""
    return float(values) if values.ndim == 0 else values


def choices(keyword: str, value: Any, words: Sequence[str]) -> Floats:
    """Numbers of the chosen words; `value` is one word or an array of them."""
    array = np.asarray(value)
    known = {word: float(number) for number, word in enumerate(words)}
    items = array.ravel().tolist()
    chosen = np.array([known.get(item, -1.0) if isinstance(item, str) else -1.0 for item in items]).reshape(array.shape)
    if (chosen < 0.0).any():
        index = tuple(np.argwhere(chosen < 0.0)[0])
        word = array[index]
        names = ", ".join(repr(name) for name in words)
        where = "/".join(["", keyword, *(str(i) for i in index)])
        shown = str(word) if isinstance(word, str) else word
        raise refuse("argument.choice", where, repr(shown), f"{keyword} must be one of {names}, not {shown!r}")
    return chosen


def truths(keyword: str, value: Any) -> Floats:
    """1 for True and 0 for False, one or an array of them."""
    array = np.asarray(value)
    if array.dtype.kind != "b":
        raise refuse("argument.truth", "/" + keyword, repr(value), f"{keyword} must be True or False")
    return array.astype(np.float64)


def choice(keyword: str, value: Any, words: Sequence[str]) -> int:
    """Number of the word."""
    if isinstance(value, str):
        return int(choices(keyword, value, words))
    raise refuse("argument.choice", "/" + keyword, repr(value), f"{keyword} must be a word, not {value!r}")
