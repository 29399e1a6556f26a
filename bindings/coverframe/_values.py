# SPDX-License-Identifier: BSD-3-Clause
"""How keyword arguments become arrays of numbers.

A number or array is taken to be in the unit its keyword names. Text ("30 psf", "5 ft 6 in") and quantities of the pint
library are converted to it. Everything broadcasts as in NumPy.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np
from numpy.typing import NDArray

from . import _core
from .errors import refuse

Floats = NDArray[np.float64]
#: What a rule gives back: a float if every argument was a single value, an array otherwise.
Numbers = float | Floats

#: Unit of a keyword by its ending. Longer endings first; no ending is a pure number.
_UNITS = (("_kn_per_m3", "kN/m3"), ("_n_per_m", "N/m"), ("_kpa", "kPa"), ("_deg", "deg"), ("_m", "m"))


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


_EXAMPLES = {"kPa": '"30 psf"', "deg": '"45 deg"', "m": '"5 ft 6 in"', "N/m": '"500 N/m"', "kN/m3": '"20 pcf"'}


def columns(**keywords: Any) -> tuple[tuple[int, ...], list[Floats]]:
    """Shape of the result and one column a keyword: as many items as the result, or a single one that serves all."""
    arrays = {keyword: numbers(keyword, value) for keyword, value in keywords.items()}
    try:
        shape = np.broadcast_shapes(*(array.shape for array in arrays.values()))
    except ValueError as error:
        shapes = ", ".join(f"{keyword} {array.shape}" for keyword, array in arrays.items())
        advice = f"the arguments have shapes that do not broadcast: {shapes}"
        raise refuse("argument.shape", "", shapes, advice) from error
    spread = [a if a.size == 1 else np.ascontiguousarray(np.broadcast_to(a, shape)) for a in arrays.values()]
    return shape, [array.reshape(-1) for array in spread]


def result(values: Floats) -> Numbers:
    """A float for a single value, the array itself otherwise."""
    return float(values) if values.ndim == 0 else values


def choice(keyword: str, value: str, choices: Sequence[str]) -> int:
    """Number of the choice."""
    if isinstance(value, str) and value in choices:
        return choices.index(value)
    names = ", ".join(repr(name) for name in choices)
    raise refuse("argument.choice", "/" + keyword, repr(value), f"{keyword} must be one of {names}, not {value!r}")
