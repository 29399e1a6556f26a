# SPDX-License-Identifier: BSD-3-Clause
"""What is compiled for machines with AVX2 must not be taken by the linker for all: symbols.py nm object...

Of the object of wide_front.cpp, only its own function and what is in Eigen's other namespace may be seen from outside.
"""

import subprocess
import sys


def others(table: str) -> list[str]:
    """Symbols defined for others to use, of a table of `nm`, that are neither."""
    found = []
    for line in table.splitlines():
        *_, kind, name = line.rsplit(maxsplit=2)
        ours = "EigenWide" in name or "eliminate_wide_front" in name
        of_the_compiler = name.startswith(("DW.ref.", "__asan", "__odr_asan", "__ubsan", "__sanitizer"))
        if kind in "TWVuBDGRS" and not ours and not of_the_compiler:
            found.append(name)
    return found


def main() -> int:
    nm, *objects = sys.argv[1:]
    wide = [path for path in objects if "wide_front" in path]
    if len(wide) != 1:
        print(f"expected one object of wide_front.cpp, found {len(wide)}")
        return 1
    table = subprocess.run([nm, wide[0]], check=True, capture_output=True, text=True).stdout
    if "eliminate_wide_front" not in table:
        print("the object of wide_front.cpp has lost its function")
        return 1
    assert others("0 W _ZSt3minIdERKT_S2_S2_") == ["_ZSt3minIdERKT_S2_S2_"]
    found = others(table)
    for name in found:
        print(f"{name} could be given to machines without AVX2")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
