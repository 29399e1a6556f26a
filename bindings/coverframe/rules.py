# SPDX-License-Identifier: BSD-3-Clause
"""The catalogue of rules: what each one takes, gives and stands on, and its workings.

Each document has a module of its own (`coverframe.asce7_22`, `coverframe.en1991_1_3`, ...) with a function for each
rule. Here they are found by name:

>>> import coverframe as cf
>>> rule = cf.rules.rule("en1991_1_3.roof_load")
>>> rule.clause
'EN 1991-1-3:2003, 5.2(3)'
>>> for term in cf.rules.workings(
...     rule, ground_snow_kpa=2.0, shape_coefficient=0.8, exposure_coefficient=1.0, thermal_coefficient=1.0
... ):
...     print(f"{term.symbol} = {term.value:.4g} {term.unit}: {term.formula}")
s_k = 2 kPa: ground snow load
mu = 0.8 -: 0 to 4
C_e = 1 -: 0.5 to 1.5
C_t = 1 -: thermal coefficient
s = 1.6 kPa: mu C_e C_t s_k
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

import numpy as np

from . import _core
from ._values import Floats, Numbers, broadcast, choices, numbers, result, truths
from .assessment import Term
from .errors import refuse

if TYPE_CHECKING:
    import pandas as pd

__all__ = ["Rule", "Value", "all_rules", "call", "rule", "table", "workings"]


@dataclass(frozen=True, slots=True)
class Value:
    """One argument or one result of a rule."""

    #: Name of the argument, or of the field of the result. Its ending names the unit.
    keyword: str
    #: As the document writes it: "p_g".
    symbol: str
    #: Of an argument, its meaning and limits; of a result, its formula.
    text: str
    #: "" for a pure number, a truth or a choice.
    unit: str
    #: "number", "truth" or "choice".
    kind: str
    #: Words of a choice.
    choices: tuple[str, ...]
    #: The word that is taken if none is given: always the safe one. None if one has to be given.
    otherwise: str | None


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule of one edition of one document."""

    number: int
    #: "asce7_22.flat_load".
    name: str
    #: "ASCE 7-22, 7.3".
    clause: str
    #: One sentence.
    summary: str
    #: How the rule came into the library: "read on a page", "from memory, doubtful", ...
    read: str
    #: Where it was read, or what is from memory.
    source: str
    arguments: tuple[Value, ...]
    #: In the order somebody with a pocket calculator works them out.
    results: tuple[Value, ...]


def _load() -> dict[str, Rule]:
    def values(rows: list[Any]) -> tuple[Value, ...]:
        return tuple(
            Value(keyword, symbol, text, unit, kind, tuple(words), otherwise)
            for keyword, symbol, text, unit, kind, words, otherwise in rows
        )

    loaded = {}
    for number, (space, name, clause, summary, read, source, arguments, results) in enumerate(_core.rules()):
        full = f"{space}.{name}"
        loaded[full] = Rule(number, full, clause, summary, read, source, values(arguments), values(results))
    return loaded


_RULES = _load()


def all_rules() -> tuple[Rule, ...]:
    """Every rule, by name."""
    return tuple(_RULES.values())


def rule(name: str | Callable[..., Any]) -> Rule:
    """The rule of that name ("asce7_22.flat_load"), or the one behind a function of a document's module."""
    wanted = name if isinstance(name, str) else f"{name.__module__}.{name.__qualname__}".removeprefix("coverframe.")
    if wanted not in _RULES:
        raise refuse("rule.unknown", "", wanted, f"there is no rule called {wanted}")
    return _RULES[wanted]


def _arrays(of: Rule, keywords: dict[str, Any]) -> dict[str, Floats]:
    known = {value.keyword for value in of.arguments}
    for keyword in keywords:
        if keyword not in known:
            raise TypeError(f"{of.name}() has no argument {keyword!r}")
    arrays = {}
    for value in of.arguments:
        given = keywords.get(value.keyword, value.otherwise)
        if given is None and value.keyword not in keywords:
            raise TypeError(f"{of.name}() lacks the argument {value.keyword!r}")
        if value.kind == "choice":
            arrays[value.keyword] = choices(value.keyword, given, value.choices)
        elif value.kind == "truth":
            arrays[value.keyword] = truths(value.keyword, given)
        else:
            arrays[value.keyword] = numbers(value.keyword, _of_its_document(of, value.keyword, given))
    return arrays


def _of_its_document(of: Rule, keyword: str, given: Any) -> Any:
    """The load of a `GroundSnow`, refused if it belongs to another document than the rule."""
    document = getattr(given, "document", None)
    if document is None or not hasattr(given, "load"):
        return given
    own = of.clause.partition(",")[0]
    if document != own:
        advice = f"a ground load of {document} does not belong in a rule of {own}; their loads do not mean the same"
        raise refuse("ground.document.mixed", "/" + keyword, document, advice)
    return given.load


def _shown(value: Value, array: Floats) -> Any:
    if value.kind == "truth":
        return bool(array) if array.ndim == 0 else array != 0.0
    if value.kind == "choice":
        words = np.array(value.choices)[array.astype(int)]
        return str(words) if array.ndim == 0 else words
    return result(array)


def _carefully(of: Rule, keywords: dict[str, Any]) -> tuple[Any, ...]:
    """Every result of a rule, for all that is ever understood; refuses the rest."""
    shape, args = broadcast(_arrays(of, keywords))
    arrays = _core.evaluate_rule(of.number, shape, args)
    return tuple(_shown(value, array) for value, array in zip(of.results, arrays, strict=True))


def in_order(of: Rule) -> Callable[..., tuple[Any, ...]]:
    """A function of the arguments of a rule, in order. Plain numbers, bools, words and arrays take the short way."""
    keywords = tuple(value.keyword for value in of.arguments)

    def carefully(*values: Any) -> tuple[Any, ...]:
        return _carefully(of, dict(zip(keywords, values, strict=True)))

    return _core.direct_rule(of.number, carefully)


def function_of(name: str) -> Callable[..., tuple[Any, ...]]:
    """`in_order` of the rule of that name."""
    return _IN_ORDER[name][2]


def _prepared(of: Rule) -> tuple[tuple[str, ...], dict[str, Any], Callable[..., tuple[Any, ...]]]:
    """Keywords, what is taken if none is given, function."""
    otherwise = {value.keyword: value.otherwise for value in of.arguments if value.otherwise is not None}
    return tuple(value.keyword for value in of.arguments), otherwise, in_order(of)


_IN_ORDER = {of.name: _prepared(of) for of in _RULES.values()}


def call(name: str | Rule, **keywords: Any) -> tuple[Any, ...]:
    """Every result of a rule, for numbers, arrays, text with a unit or pint quantities; arrays broadcast."""
    of = name if isinstance(name, Rule) else rule(name)
    names, otherwise, function = _IN_ORDER[of.name]
    given = otherwise | keywords
    try:
        values = [given.pop(keyword) for keyword in names]
    except KeyError:
        return _carefully(of, keywords)
    return _carefully(of, keywords) if given else function(*values)


def workings(name: str | Rule | Callable[..., Any], **keywords: Any) -> list[Term]:
    """Arguments and results as lines with symbol, value, unit, formula and clause, in the units of the document.

    The arguments are single values, as for the function of the rule.
    """
    of = name if isinstance(name, Rule) else rule(name)
    arrays = _arrays(of, keywords)
    for keyword, array in arrays.items():
        if array.size != 1:
            raise refuse("argument.shape", "/" + keyword, array.shape, "workings are of single values, not of arrays")
    return [Term(*line) for line in _core.rule_workings(of.number, [float(array.item()) for array in arrays.values()])]


def table() -> pd.DataFrame:
    """Every rule with its clause, how it was read, formula of its last result."""
    import pandas as pd

    return pd.DataFrame(
        [(r.name, r.clause, r.summary, r.results[-1].text, r.read, r.source) for r in all_rules()],
        columns=["rule", "clause", "summary", "formula", "how read", "source"],
    )


#: What a rule gives for one result: a float if every argument was a single value, an array otherwise.
Result = Numbers
