# SPDX-License-Identifier: BSD-3-Clause
"""How the arguments of a frame are read, with everything wrong with them at once."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np
from numpy.typing import NDArray

from ._values import Floats, choices, numbers
from .errors import InputError, Problem

Truths = NDArray[np.bool_]
Indices = NDArray[np.int64]

KINDS = ("pole", "upright", "strap", "bar")
DIRECTIONS = ("ux", "uy", "uz", "rx", "ry", "rz")


class Reader:
    """Reads arguments and remembers everything wrong with them."""

    def __init__(self) -> None:
        self.problems: list[Problem] = []

    def add(self, code: str, where: str, value: str, advice: str) -> None:
        self.problems.append(Problem(code, where, value, advice))

    def stop(self) -> None:
        """Raises if anything was wrong."""
        if self.problems:
            raise InputError(self.problems)

    def numbers(self, keyword: str, value: Any) -> Floats:
        try:
            return numbers(keyword, value)
        except InputError as error:
            self.problems += error.problems
        except ValueError as error:  # rows of unequal length
            self.add("argument.shape", "/" + keyword, "", f"{keyword} is no regular array: {error}")
        return np.empty(0)

    def shape(self, keyword: str, array: NDArray[Any], shape: tuple[int, ...]) -> None:
        """Remembers another shape as a problem, unless the argument has one already."""
        if array.shape != shape and all(problem.where != "/" + keyword for problem in self.problems):
            wanted = " by ".join(str(extent) for extent in shape) or "one value"
            advice = f"{keyword} must be {wanted}, not {array.shape}"
            self.add("argument.shape", "/" + keyword, str(array.shape), advice)

    def table(self, keyword: str, value: Any, width: int) -> Floats:
        array = self.numbers(keyword, value)
        if array.size == 0:
            return np.empty((0, width))
        if array.ndim != 2 or array.shape[1] != width:
            advice = f"{keyword} must have rows of {width}, not the shape {array.shape}"
            self.add("argument.shape", "/" + keyword, str(array.shape), advice)
        return array

    def ends(self, value: Any) -> Indices:
        array = self.table("members", value, 2)
        if array.size and not (np.isfinite(array) & (array == np.floor(array))).all():
            self.add("argument.number", "/members", "", "members must be whole numbers, the indices of two nodes each")
            return np.empty((0, 2), dtype=np.int64)
        return np.clip(array, -1, 2**31 - 1).astype(np.int64)

    def column(self, keyword: str, value: Any, size: int) -> Floats:
        array = self.numbers(keyword, value)
        if array.ndim == 0:
            return np.full(size, float(array))
        self.shape(keyword, array, (size,))
        return array

    def vectors(self, keyword: str, value: Any, size: int) -> Floats:
        """Three numbers a row; three numbers alone serve all rows."""
        array = self.numbers(keyword, value)
        if array.shape == (3,):
            return np.tile(array, (size, 1))
        self.shape(keyword, array, (size, 3))
        return array if array.shape == (size, 3) else np.zeros((size, 3))

    def truths(self, keyword: str, value: Any, shape: tuple[int, ...]) -> Truths:
        array = np.asarray(value)
        if array.dtype.kind != "b":
            self.add("argument.truth", "/" + keyword, repr(value), f"{keyword} must be True or False")
            return np.zeros(shape, dtype=bool)
        if array.ndim == 0:
            return np.full(shape, bool(array))
        self.shape(keyword, array, shape)
        return array

    def held(self, value: Any, size: int) -> Truths:
        if value is None:
            return np.zeros((size, 6), dtype=bool)
        texts = np.asarray(value)
        if texts.dtype.kind != "U":
            return self.truths("held", value, (size, 6)) if texts.ndim else self._bad_held(value)
        self.shape("held", texts, (size,))
        held = np.zeros((texts.size, 6), dtype=bool)
        for i, text in enumerate(texts.ravel()):
            for word in str(text).split():
                if word in DIRECTIONS:
                    held[i, DIRECTIONS.index(word)] = True
                else:
                    advice = f"held knows the directions {', '.join(DIRECTIONS)}, not {word!r}"
                    self.add("argument.choice", f"/held/{i}", word, advice)
        return held

    def _bad_held(self, value: Any) -> Truths:
        self.add("argument.shape", "/held", repr(value), "held must be n by 6 of True and False, or one text a node")
        return np.zeros((0, 6), dtype=bool)

    def kinds(self, value: Any, size: int) -> tuple[str, ...]:
        try:
            chosen = choices("kind", value, KINDS)
        except InputError as error:
            self.problems += error.problems
            return ()
        if chosen.ndim:
            self.shape("kind", chosen, (size,))
        return tuple(KINDS[int(i)] for i in (np.full(size, chosen) if chosen.ndim == 0 else chosen.ravel()))

    def names(self, keyword: str, value: Sequence[str] | None, letter: str, size: int) -> tuple[str, ...]:
        if value is None:
            return tuple(f"{letter}{i}" for i in range(size))
        listed = isinstance(value, (Sequence, np.ndarray)) and not isinstance(value, str)
        if not (listed and all(isinstance(name, str) for name in value)):
            self.add("argument.choice", "/" + keyword, repr(value), f"{keyword} must be a list of texts")
            return ()
        if len(value) != size:
            advice = f"{keyword} must be {size} texts, not {len(value)}"
            self.add("argument.shape", "/" + keyword, str(len(value)), advice)
        return tuple(str(name) for name in value)


def is_whole(value: Any) -> bool:
    return isinstance(value, (int, np.integer)) and not isinstance(value, bool)
