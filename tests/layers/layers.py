# SPDX-License-Identifier: BSD-3-Clause
"""layers.py <project folder>: what may include what, and where a quantity may be turned into a number.

Three rules, read off the text of lib/include and lib/src:
  1. a file includes only from its own layer or from layers before it;
  2. a public header includes no Eigen, no JSON reader, no <filesystem> and nothing of lib/src;
  3. a quantity's `.value()` stands only in units/ and in private kernels (lib/src/**/kernel*); everywhere else a number
     leaves through in_kN(...) and its like. `.value()` of a std::optional is no crossing: a name counts as an optional
     if the file, or a public header, declares it as one and the file declares it as nothing else.
"""

import re
import sys
from pathlib import Path

# base stands first: it knows no quantities, and everything, units included, reports its errors through it.
LAYERS = ["base", "units", "plan", "actions", "frame", "film", "resistance", "checks", "setout", "assess", "report"]

INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]', re.MULTILINE)
PRIVATE = re.compile(r"^(Eigen|unsupported/Eigen|nlohmann)/|^filesystem$")
COMMENT_OR_TEXT = re.compile(r'R"(\w*)\(.*?\)\1"|//[^\n]*|/\*.*?\*/|"(?:\\.|[^"\\\n])*"|(?<![\w])\'(?:\\.|[^\'\\\n])\'', re.DOTALL)
# What stands before `.value()`: the last name of the expression, with a call or an index after it or not.
VALUE = re.compile(r"(?P<name>\w+)?(?P<call>\)|\])?\s*(?:\.|->)\s*value\s*\(\s*\)")
TEMPLATE_ARGUMENT = r"<(?:[^<>;(){}]|<(?:[^<>;(){}]|<[^<>;(){}]*>)*>)*>"
OPTIONAL = re.compile(r"\boptional\s*" + TEMPLATE_ARGUMENT + r"\s*(?:const\s*)?[&*]*\s*(\w+)")
QUANTITIES = "Length|Area|Volume|SecondMoment|Force|Moment|LineLoad|Pressure|UnitWeight|Angle|TemperatureDifference"
QUANTITY = re.compile(rf"(?<![<\w])(?:{QUANTITIES})\s*(?:const\s*)?[&*]*\s+[&*]*(\w+)")


def code_of(text: str) -> str:
    """The text without comments and literals, line breaks kept."""
    return COMMENT_OR_TEXT.sub(lambda found: "\n" * found.group().count("\n") or " ", text)


def line_of(text: str, at: int) -> int:
    return text.count("\n", 0, at) + 1


class Project:
    def __init__(self, folder: Path):
        self.public = folder / "lib" / "include" / "coverframe"
        self.private = folder / "lib" / "src"
        self.folder = folder
        self.files = sorted(
            path for root in (self.public, self.private) for path in root.rglob("*") if path.suffix in (".hpp", ".cpp")
        )
        self.optionals = set()
        for path in self.files:
            if self.public in path.parents:
                self.optionals.update(OPTIONAL.findall(code_of(path.read_text(encoding="utf-8"))))

    def layer(self, path: Path) -> str:
        root = self.public if self.public in path.parents else self.private
        return path.relative_to(root).parts[0]

    def included_layer(self, path: Path, bracket: str, name: str) -> "str | None":
        """Layer of an included file of ours, None for a file of others, "?" if it cannot be found."""
        if name.startswith("coverframe/"):
            return name.split("/")[1] if (self.public.parent / name).is_file() else "?"
        if bracket == "<":
            return None
        for base in (path.parent, self.private):
            target = (base / name).resolve()
            if target.is_file() and self.folder in target.parents:
                return self.layer(target)
        return "?"

    def faults(self):
        for path in self.files:
            text = path.read_text(encoding="utf-8")
            shown = path.relative_to(self.folder).as_posix()
            for line, fault in sorted([*self.include_faults(path, text), *self.value_faults(path, text)]):
                yield f"{shown}:{line}: {fault}"

    def include_faults(self, path: Path, text: str):
        own = self.layer(path)
        if own not in LAYERS:
            yield 1, f"{own} is no layer; they are {' '.join(LAYERS)}"
            return
        is_public = self.public in path.parents
        for found in INCLUDE.finditer(text):
            bracket, name = found.groups()
            line = line_of(text, found.start(1))
            if is_public and PRIVATE.search(name):
                yield line, f"public header includes {name}: keep that in lib/src"
            layer = self.included_layer(path, bracket, name)
            if layer is None:
                continue
            if layer not in LAYERS:
                yield line, f"{name} is not found in lib"
            elif LAYERS.index(layer) > LAYERS.index(own):
                yield line, f"{own} includes {name}, which lies above it"
            elif is_public and not name.startswith("coverframe/"):
                yield line, f'public header includes {name}: write "coverframe/<layer>/<name>.hpp"'

    def value_faults(self, path: Path, text: str):
        parts = path.relative_to(self.folder).parts
        if self.layer(path) == "units" or any(part.startswith("kernel") for part in parts):
            return
        code = code_of(text)
        optional_here = set(OPTIONAL.findall(code))
        quantity_here = set(QUANTITY.findall(code))
        for found in VALUE.finditer(code):
            name = found.group("name")
            if found.group("call"):
                name = name_of_call(code, found.start("call"))
            if name in optional_here and name not in quantity_here:
                continue
            if name in self.optionals and name not in quantity_here and name not in optional_here:
                continue
            yield (
                line_of(code, found.start()),
                f"{name or 'something'}.value(): let a number leave through in_kN(...) and its like, "
                "and read a std::optional with *",
            )


def name_of_call(code: str, closing: int) -> "str | None":
    """`f` of the call f(...) or the element f[...] that closes at this place."""
    pairs = {")": "(", "]": "["}
    depth = 0
    for at in range(closing, -1, -1):
        depth += (code[at] in pairs) - (code[at] in pairs.values())
        if depth == 0:
            found = re.search(r"(\w+)\s*$", code[:at])
            return found.group(1) if found else None
    return None


def main() -> int:
    project = Project(Path(sys.argv[1]).resolve())
    faults = list(project.faults())
    print("\n".join(faults) if faults else f"{len(project.files)} files, no fault")
    return 1 if faults or not project.files else 0


if __name__ == "__main__":
    sys.exit(main())
