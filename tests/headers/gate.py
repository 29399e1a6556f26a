# SPDX-License-Identifier: BSD-3-Clause
"""What a public header costs its includer.

gate.py measure <source> <gate> <compiler> <include folder>...   preprocess, note lines and foreign headers in <gate>
gate.py judge <gate>...                                          fail on what is too long or pulls in what is private
"""

import re
import subprocess
import sys
from pathlib import Path

MOST_LINES = 75_000  # the units alone take 45,000, Eigen alone over 90,000
FOREIGN = re.compile(r"(^|/)(Eigen|nlohmann)/|/filesystem$")


def measure(source: str, gate: str, compiler: str, *folders: str) -> int:
    depfile = gate + ".d"
    flags = [f"-I{folder}" for folder in folders if folder]
    command = [compiler, "-std=c++20", "-E", "-P", *flags, "-MD", "-MF", depfile, "-MT", gate, source]
    run = subprocess.run(command, capture_output=True, text=True)
    if run.returncode != 0:
        sys.stderr.write(run.stderr)
        return 1
    needed = Path(depfile).read_text().replace("\\\n", " ").split()
    foreign = sorted(path for path in needed if FOREIGN.search(path))
    Path(gate).write_text("\n".join([str(run.stdout.count("\n")), *foreign[:3]]) + "\n")
    return 0


def judge(*gates: str) -> int:
    failed = 0
    measured = []
    for gate in gates:
        name = Path(gate).stem
        lines, *foreign = Path(gate).read_text().split("\n")[:-1]
        measured.append((int(lines), name))
        if int(lines) > MOST_LINES:
            failed += 1
            print(f"{name}: {lines} lines after preprocessing, at most {MOST_LINES}: find what it includes too much")
        if foreign:
            failed += 1
            print(f"{name}: pulls in {', '.join(foreign)}: keep that in a source file")
    for lines, name in sorted(measured, reverse=True)[:3]:
        print(f"{lines:7d} {name}")
    print(f"{len(measured)} headers measured")
    return 1 if failed or not measured else 0


if __name__ == "__main__":
    sys.exit({"measure": measure, "judge": judge}[sys.argv[1]](*sys.argv[2:]))
