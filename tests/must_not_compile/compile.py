# SPDX-License-Identifier: BSD-3-Clause
"""compile.py accepted|refused <program> <compiler> <include folder>...

accepted: the program compiles. refused: with SHOULD_FAIL defined it does not, and the compiler names a line of the
branch that should fail, so that a missing header is not taken for success.
"""

import re
import subprocess
import sys
from pathlib import Path


def lines_that_should_fail(program: Path) -> range:
    lines = program.read_text(encoding="utf-8").splitlines()
    start = lines.index("#ifdef SHOULD_FAIL")
    return range(start + 2, lines.index("#else", start) + 1)


def main(way: str, program: str, compiler: str, *folders: str) -> int:
    flags = ["-std=c++20", "-fsyntax-only", *(f"-I{folder}" for folder in folders if folder)]
    if way == "refused":
        flags.append("-DSHOULD_FAIL")
    run = subprocess.run([compiler, *flags, program], capture_output=True, text=True)
    if way == "accepted":
        print(run.stderr)
        return run.returncode
    if run.returncode == 0:
        print(f"{program} compiles with SHOULD_FAIL, and must not")
        return 1
    named = {int(line) for line in re.findall(re.escape(Path(program).name) + r":(\d+)", run.stderr)}
    if named.isdisjoint(lines_that_should_fail(Path(program))):
        print(f"{program} is refused, but for another line than the one that should fail:\n{run.stderr}")
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
