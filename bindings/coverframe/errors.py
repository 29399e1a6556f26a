# SPDX-License-Identifier: BSD-3-Clause
"""What goes wrong because of the input. An overloaded member is not an error: it is a finding."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing wrong with the input.

    Attributes
    ----------
    code
        Stable, lower case, dotted: ``"support.upright.off_boat"``. Listed in DEVELOPERS.md.
    where
        JSON pointer of the field, ``"/support/uprights/1/top"``, or of the item of an array, ``"/3"``; empty for the
        whole.
    value
        What stands there now, as text; empty if nothing does.
    advice
        One sentence: what is wrong with which part, and what to change.
    """

    code: str
    where: str
    value: str
    advice: str


class Error(Exception):
    """Base of everything the library raises on purpose."""


class InputError(Error, ValueError):
    """The input cannot be used. Carries every problem found, not only the first."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        self._problems = tuple(problems)
        if not self._problems:
            raise TypeError("an InputError needs at least one problem")
        super().__init__(self._problems)

    @property
    def problems(self) -> list[Problem]:
        """Every problem, in the order of the document."""
        return list(self._problems)

    @property
    def code(self) -> str:
        """Code of the first problem."""
        return self._problems[0].code

    @property
    def where(self) -> str:
        """Place of the first problem."""
        return self._problems[0].where

    def __str__(self) -> str:
        return "\n".join(f"{p.code}: {p.advice}" + (f" ({p.where})" if p.where else "") for p in self._problems)


class StateError(Error):
    """A result is asked for that the state of the object cannot give."""

    def __init__(self, code: str, message: str) -> None:
        super().__init__(code, message)

    @property
    def code(self) -> str:
        """Stable code: ``"checks.state.unusable"``."""
        return str(self.args[0])

    def __str__(self) -> str:
        return str(self.args[1])


def refuse(code: str, where: str, value: object, advice: str) -> InputError:
    """An `InputError` of a single problem, to be raised."""
    return InputError([Problem(code, where, str(value), advice)])
