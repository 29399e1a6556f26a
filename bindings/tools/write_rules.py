# SPDX-License-Identifier: BSD-3-Clause
"""Writes one Python module for each document of the catalogue of rules; the build runs it.

    python bindings/tools/write_rules.py <compiled module> <folder to write into>
"""

from __future__ import annotations

import argparse
import importlib.util
import textwrap
from pathlib import Path
from typing import Any, NamedTuple

MARK = "Written by bindings/tools/write_rules.py from the catalogue of rules; changes here are lost."



class Value(NamedTuple):
    keyword: str
    symbol: str
    text: str
    unit: str
    kind: str
    choices: list[str]
    otherwise: str | None


class Rule(NamedTuple):
    space: str
    name: str
    clause: str
    summary: str
    read: str
    source: str
    arguments: list[Value]
    results: list[Value]


HEAD = '''# SPDX-License-Identifier: BSD-3-Clause
# {mark}
"""{title}: one function for each rule.

Every argument may be a number, an array, text with a unit or a pint quantity; arrays broadcast, words of a choice too.
The first item a rule does not cover raises `coverframe.InputError` whose ``where`` is its index ("/3"). Loads of roofs
are per horizontal area. `coverframe.rules.workings` lists how a number comes about.
"""

from __future__ import annotations

from typing import Any{named_tuple}

from .rules import Result, function_of

__all__ = [
{names}
]
'''


def class_name(rule: Rule) -> str:
    return "".join(word.capitalize() for word in rule.name.split("_"))


def wrapped(text: str, indent: int) -> str:
    return "\n".join(textwrap.wrap(text, 120 - indent, initial_indent=" " * indent, subsequent_indent=" " * indent))


def unit_text(value: Value) -> str:
    if value.kind == "choice":
        return ": one of " + ", ".join(f'"{word}"' for word in value.choices)
    return "" if value.kind == "truth" else f" [{value.unit or '-'}]"


def described(value: Value) -> str:
    return f"{value.symbol}{unit_text(value)}: {value.text}."


def type_of(value: Value) -> str:
    return "Result" if value.kind == "number" else "Any"


def result_class(rule: Rule) -> str:
    lines = [f"class {class_name(rule)}(NamedTuple):", f'    """Results of `{rule.name}`."""', ""]
    for value in rule.results:
        comment = "\n".join("    #: " + line for line in textwrap.wrap(described(value), 113))
        lines += [comment, f"    {value.keyword}: {type_of(value)}"]
    return "\n".join(lines)


def signature(rule: Rule, gives: str) -> str:
    parts = [f"{v.keyword}: Any" + (f' = "{v.otherwise}"' if v.otherwise else "") for v in rule.arguments]
    # what has no default may stand behind what has one, because all are keywords
    line = f"def {rule.name}(*, {', '.join(parts)}) -> {gives}:" if parts else f"def {rule.name}() -> {gives}:"
    if len(line) <= 120:
        return line
    inner = f"    *, {', '.join(parts)}"
    if len(inner) <= 120:
        return f"def {rule.name}(\n{inner}\n) -> {gives}:"
    return f"def {rule.name}(\n    *,\n" + "".join(f"    {part},\n" for part in parts) + f") -> {gives}:"


def docstring(rule: Rule) -> str:
    lines = [wrapped(f'"""{rule.summary} {rule.clause}.', 4), ""]
    lines.append(wrapped("; ".join(f"{value.symbol} = {value.text}" for value in rule.results) + ".", 4))
    if rule.arguments:
        lines += ["", "    Parameters", "    ----------"]
        for value in rule.arguments:
            lines += [f"    {value.keyword}", wrapped(described(value), 8)]
    lines += ["", wrapped(f"How read: {rule.read}. {rule.source}.", 4), '    """']
    return "\n".join(lines)


def called(rule: Rule) -> str:
    """A call of what stands before the function: the arguments in order."""
    parts = [value.keyword for value in rule.arguments]
    line = f"_{rule.name}({', '.join(parts)})"
    if len(line) <= 90:
        return line
    return f"_{rule.name}(\n" + "".join(f"        {part},\n" for part in parts) + "    )"


def function(rule: Rule) -> str:
    before = f'_{rule.name} = function_of("{rule.space}.{rule.name}")\n\n\n'
    if len(rule.results) == 1:
        kind = type_of(rule.results[0])
        body = f"    value: {kind} = {called(rule)}[0]\n    return value"
        return before + "\n".join([signature(rule, kind), docstring(rule), body])
    name = class_name(rule)
    return before + "\n".join([signature(rule, name), docstring(rule), f"    return {name}(*{called(rule)})"])


def module(space: str, members: list[Rule]) -> str:
    several = [rule for rule in members if len(rule.results) > 1]
    exported = sorted([class_name(r) for r in several] + [r.name for r in members])
    titles = sorted({rule.clause.partition(",")[0] for rule in members})
    text = HEAD.format(
        mark=MARK,
        title=", ".join(titles),
        named_tuple=", NamedTuple" if several else "",
        names="\n".join(f'    "{name}",' for name in exported),
    )
    for rule in members:
        if len(rule.results) > 1:
            text += "\n\n" + result_class(rule) + "\n"
        text += "\n\n" + function(rule) + "\n"
    return text


def catalogue(compiled: Path) -> list[Rule]:
    """The rules of the compiled module, loaded without the package, which still lacks what is written here."""
    spec = importlib.util.spec_from_file_location("_core", compiled)
    assert spec is not None and spec.loader is not None
    core: Any = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(core)

    def values(rows: list[Any]) -> list[Value]:
        return [Value(*row) for row in rows]

    return [Rule(*row[:6], values(row[6]), values(row[7])) for row in core.rules()]


def modules(rules: list[Rule]) -> dict[str, str]:
    """Text of each module by its name."""
    spaces: dict[str, list[Rule]] = {}
    for rule in rules:
        spaces.setdefault(rule.space, []).append(rule)
    return {space: module(space, members) for space, members in spaces.items()}


def main() -> None:
    parser = argparse.ArgumentParser(description="Writes one Python module for each document of the catalogue.")
    parser.add_argument("compiled", type=Path, help="the compiled module, _core")
    parser.add_argument("folder", type=Path, help="where the modules go")
    options = parser.parse_args()
    options.folder.mkdir(parents=True, exist_ok=True)
    for name, text in modules(catalogue(options.compiled)).items():
        (options.folder / f"{name}.py").write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
