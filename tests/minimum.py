# SPDX-License-Identifier: BSD-3-Clause
"""minimum.py <coverframe_tests> <number>: fails if the program holds fewer test cases than the number."""

import re
import subprocess
import sys

program, minimum = sys.argv[1], int(sys.argv[2])
said = subprocess.run([program, "--count", "--no-colors=true"], capture_output=True, text=True, check=True).stdout
found = re.search(r"filters: (\d+)", said)
count = int(found.group(1)) if found else 0
print(f"{count} test cases, {minimum} demanded (tests/CMakeLists.txt)")
sys.exit(count < minimum)
