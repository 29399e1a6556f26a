# SPDX-License-Identifier: BSD-3-Clause
"""Writes one module of bindings/coverframe for each document of the catalogue.

    python bindings/tools/write_rules.py build/run/python/coverframe [--check]

The folder holds the compiled module. With --check nothing is written; the names of files that would change are printed
and the exit code is 1.
"""

from __future__ import annotations

import argparse
import importlib.util
import sys
import textwrap
from pathlib import Path
from typing import Any, NamedTuple

FOLDER = Path(__file__).resolve().parents[1] / "coverframe"
MARK = "Written by bindings/tools/write_rules.py from the catalogue of rules; do not edit."



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

from .rules import Result, call

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


def call_of(rule: Rule) -> str:
    parts = [f'"{rule.space}.{rule.name}"'] + [f"{v.keyword}={v.keyword}" for v in rule.arguments]
    line = f"call({', '.join(parts)})"
    if len(line) <= 90:
        return line
    return "call(\n" + "".join(f"        {part},\n" for part in parts) + "    )"


def function(rule: Rule) -> str:
    if len(rule.results) == 1:
        kind = type_of(rule.results[0])
        body = f"    value: {kind} = {call_of(rule)}[0]\n    return value"
        return "\n".join([signature(rule, kind), docstring(rule), body])
    name = class_name(rule)
    return "\n".join([signature(rule, name), docstring(rule), f"    return {name}(*{call_of(rule)})"])


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


def catalogue(folder: Path) -> list[Rule]:
    """The rules of the compiled module, loaded without the package around it, which may still lack what is written."""
    found = next(iter(folder.glob("_core*.so")), None) or next(iter(folder.glob("_core*.pyd")), None)
    if found is None:
        sys.exit(f"there is no compiled module in {folder}")
    spec = importlib.util.spec_from_file_location("_core", found)
    assert spec is not None and spec.loader is not None
    core: Any = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(core)

    def values(rows: list[Any]) -> list[Value]:
        return [Value(*row) for row in rows]

    return [Rule(*row[:6], values(row[6]), values(row[7])) for row in core.rules()]


def modules(rules: list[Rule]) -> dict[Path, str]:
    spaces: dict[str, list[Rule]] = {}
    for rule in rules:
        spaces.setdefault(rule.space, []).append(rule)
    return {FOLDER / f"{space}.py": module(space, members) for space, members in spaces.items()}


def main() -> int:
    parser = argparse.ArgumentParser(description="Writes one module for each document of the catalogue.")
    parser.add_argument("folder", type=Path, help="holds the compiled module")
    parser.add_argument("--check", action="store_true", help="write nothing; tell what would change")
    options = parser.parse_args()
    wanted = modules(catalogue(options.folder))
    left = [path for path in FOLDER.glob("*.py") if MARK in path.read_text(encoding="utf-8") and path not in wanted]
    changed = [path for path, text in wanted.items() if not path.exists() or path.read_text(encoding="utf-8") != text]
    for path in changed + left:
        print(path.name)
    if options.check:
        return 1 if changed or left else 0
    for path in changed:
        path.write_text(wanted[path], encoding="utf-8")
    for path in left:
        path.unlink()
    return 0


if __name__ == "__main__":
    sys.exit(main())
