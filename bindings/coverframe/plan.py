# SPDX-License-Identifier: BSD-3-Clause
"""Cover plans: what somebody measured or decided about one boat for one winter."""

from __future__ import annotations

import html
import json
import math
import os
from collections.abc import Iterable, Mapping, Sequence
from typing import Any, cast

from . import _core
from .errors import InputError, Problem, refuse

_PICKLE_FORMAT = 1


class Plan:
    """A plan, validated and unchangeable.

    Made by `read_plan`, `Plan.from_dict` or `Plan.from_json`. To change one, change its dictionary:

    >>> plan = Plan.from_dict(document)                            # doctest: +SKIP
    >>> changed = plan.to_dict()                                   # doctest: +SKIP
    >>> changed["site"]["ground_snow"]["load"] = "30 psf"          # doctest: +SKIP
    >>> plan = Plan.from_dict(changed)                             # doctest: +SKIP

    Two plans are equal if every number and every word in them is. A plan can be pickled: it travels as its dictionary.
    """

    __slots__ = ("_handle",)
    _handle: _core.Plan

    def __init__(self) -> None:
        raise TypeError("a Plan is made by coverframe.read_plan, Plan.from_dict or Plan.from_json")

    @classmethod
    def _of(cls, plan: _core.Plan) -> Plan:
        made = cls.__new__(cls)
        made._handle = plan
        return made

    @classmethod
    def from_dict(cls, document: Mapping[str, Any]) -> Plan:
        """The plan in a dictionary laid out like a plan file. A pint quantity may stand where a text with a unit does.

        Raises
        ------
        InputError
            With every problem of the document.
        """
        problems: list[Problem] = []
        try:
            plain = _plain(document, "", problems)
        except RecursionError:
            raise refuse("plan.json.depth", "", "", "the document is nested without end") from None
        if problems:
            raise InputError(problems)
        return cls.from_json(json.dumps(plain))

    @classmethod
    def from_json(cls, text: str) -> Plan:
        """The plan in a JSON text.

        Raises
        ------
        InputError
            With every problem of the text.
        """
        return cls._of(_core.Plan.from_json(text.encode("utf-8", "surrogatepass")))

    def to_json(self) -> str:
        """The plan as JSON; reads back to an equal plan."""
        return self._handle.to_json()

    def to_dict(self) -> dict[str, Any]:
        """The plan as a dictionary of its own; reads back to an equal plan."""
        return cast(dict[str, Any], json.loads(self.to_json()))

    @property
    def title(self) -> str:
        """What the plan is of, as the head of its reports."""
        return self._handle.title

    @property
    def note(self) -> str:
        """Free text; a demo plan says here that it is invented."""
        return self._handle.note

    def __eq__(self, other: object) -> bool:
        if not isinstance(other, Plan):
            return NotImplemented
        return self._handle == other._handle

    def __hash__(self) -> int:
        return hash(self.to_json())

    def __reduce__(self) -> tuple[Any, ...]:
        return _unpickle, (_PICKLE_FORMAT, self.to_dict())

    def __repr__(self) -> str:
        return f"<coverframe.Plan {self.title!r}>"

    def _repr_html_(self) -> str:
        rows = [("title", self.title), ("note", self.note)]
        return table_html(("", "plan"), rows)


def read_plan(path: str | os.PathLike[str]) -> Plan:
    """The plan in a file.

    Raises
    ------
    InputError
        With every problem of the file; ``plan.file`` if it cannot be read.
    """
    name = os.fspath(path)
    if isinstance(name, str) and name.lstrip().startswith("{"):
        raise refuse("plan.file", "", "", "this is a JSON text, not the path of a file: use Plan.from_json")
    return Plan._of(_core.Plan.from_file(os.fsencode(name)))


#: What stands for a plan: a plan, a dictionary laid out like a plan file, or the path of a plan file.
PlanLike = Plan | Mapping[str, Any] | str | os.PathLike[str]


def plan_of(plan: PlanLike) -> Plan:
    """The plan that a plan, a dictionary or a path stands for."""
    if isinstance(plan, Plan):
        return plan
    if isinstance(plan, Mapping):
        return Plan.from_dict(plan)
    if isinstance(plan, (str, os.PathLike)):
        return read_plan(plan)
    raise TypeError(f"a plan is a coverframe.Plan, a dictionary or a path, not {type(plan).__name__}")


def schema() -> dict[str, Any]:
    """The JSON Schema (2020-12) of plan files."""
    return cast(dict[str, Any], json.loads(_core.plan_schema()))


def table_html(head: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """A plain table, every cell escaped."""
    line = "".join(f"<th>{html.escape(cell)}</th>" for cell in head)
    body = "".join("<tr>" + "".join(f"<td>{html.escape(cell)}</td>" for cell in row) + "</tr>" for row in rows)
    return f"<table><thead><tr>{line}</tr></thead><tbody>{body}</tbody></table>"


def _unpickle(version: int, document: dict[str, Any]) -> Plan:
    if version != _PICKLE_FORMAT:
        advice = f"a plan pickled in format {version} cannot be read, only format {_PICKLE_FORMAT}"
        raise refuse("plan.pickle", "", version, advice)
    return Plan.from_dict(document)


#: SI units that plan files know, one a dimension; pint knows them by the same names.
_SI_UNITS = ("m", "N", "Pa", "N/m", "N/m**3", "rad")


def _plain(value: Any, where: str, problems: list[Problem]) -> Any:
    """`value` as JSON can hold it. What cannot be held is added to `problems`."""
    if value is None or isinstance(value, (bool, str, int)):
        return value
    if isinstance(value, Mapping):
        if odd := [key for key in value if not isinstance(key, str)]:
            problems.append(Problem("plan.type", where, repr(odd[0]), f"a key is text, not {type(odd[0]).__name__}"))
        return {str(key): _plain(item, f"{where}/{_escaped(str(key))}", problems) for key, item in value.items()}
    if isinstance(value, (list, tuple)):
        return [_plain(item, f"{where}/{i}", problems) for i, item in enumerate(value)]
    if hasattr(value, "magnitude") and hasattr(value, "is_compatible_with"):
        return _text_of_quantity(value, where, problems)
    if hasattr(value, "item") and getattr(value, "ndim", None) == 0:
        return _plain(value.item(), where, problems)
    if isinstance(value, float):
        if math.isfinite(value):
            return value
        advice = f"{value} is not a number; give one or leave the key out"
        problems.append(Problem("plan.json.number", where, str(value), advice))
        return None
    advice = f"a plan holds text, numbers, lists and dictionaries, not {type(value).__name__}"
    problems.append(Problem("plan.type", where, repr(value), advice))
    return None


def _text_of_quantity(quantity: Any, where: str, problems: list[Problem]) -> str | None:
    for unit in _SI_UNITS:
        if quantity.is_compatible_with(unit) and math.isfinite(quantity.to(unit).magnitude):
            return f"{float(quantity.to(unit).magnitude)!r} {unit.replace('**', '')}"
    advice = 'this quantity is none a plan holds; write it as text, such as "1.5 kPa"'
    problems.append(Problem("quantity.dimension", where, str(quantity), advice))
    return None


def _escaped(key: str) -> str:
    """A key as a part of a JSON pointer."""
    return key.replace("~", "~0").replace("/", "~1")
