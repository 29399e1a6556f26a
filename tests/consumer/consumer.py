# SPDX-License-Identifier: BSD-3-Clause
"""Installs coverframe, moves what was installed, and uses it from a project of its own.

Also: a version and a component that cannot be had are refused, and a project that takes coverframe in as a folder gets
no install rule and no test from it.
"""

import argparse
import shutil
import subprocess
import sys
from pathlib import Path

EXPECTED = ["0.1.0", "1676.4 mm", "quantity.dimension"]
REFUSED = {
    "0.2": "version",
    "0.0": "version",
    "1.0": "version",
    "0.1 COMPONENTS ponding": 'no component "ponding"',
}
HERE = Path(__file__).resolve().parent


class Failure(Exception):
    pass


def run(*command, fails_with: "str | None" = None) -> str:
    done = subprocess.run([str(word) for word in command], capture_output=True, text=True)
    said = done.stdout + done.stderr
    if fails_with is None and done.returncode != 0:
        raise Failure(f"{' '.join(map(str, command))}\n{said}")
    if fails_with is not None and (done.returncode == 0 or fails_with not in " ".join(said.split())):
        raise Failure(f"should have failed with {fails_with!r}: {' '.join(map(str, command))}\n{said}")
    return done.stdout


def fresh(folder: Path) -> Path:
    shutil.rmtree(folder, ignore_errors=True)
    return folder


def expect(program: Path) -> None:
    said = run(program).split("\n")[:-1]
    if said != EXPECTED:
        raise Failure(f"{program} says {said}, expected is {EXPECTED}")


def install_and_move(options, work: Path) -> Path:
    first, moved = fresh(work / "first"), fresh(work / "moved")
    run(options.cmake, "--install", options.build, "--prefix", first, "--config", options.config)
    first.rename(moved)
    headers = {path.relative_to(moved / "include") for path in moved.rglob("*.hpp")}
    public = options.source / "lib" / "include"
    if headers != {path.relative_to(public) for path in public.rglob("*.hpp")}:
        raise Failure("the installed headers are not the public headers")
    for path in moved.rglob("*.cmake"):
        for place in (options.build, options.source, first):
            if str(place) in path.read_text(encoding="utf-8"):
                raise Failure(f"{path} names {place}: the installed folder cannot be moved")
    return moved


def use_installed(options, work: Path, prefix: Path) -> None:
    build = fresh(work / "installed")
    configure = [options.cmake, "-S", HERE / "installed", "-B", build, f"-DCMAKE_PREFIX_PATH={prefix}", *options.common]
    run(*configure)
    run(options.cmake, "--build", build, "--config", options.config)
    expect(build / "consumer")
    for wanted, reason in REFUSED.items():
        run(options.cmake, build, f"-DWANTED={wanted.replace(' ', ';')}", fails_with=reason)
    run(options.cmake, build, "-DWANTED=0.1;OPTIONAL_COMPONENTS;ponding")


def use_example(options, work: Path, prefix: Path) -> None:
    """The example program as a project of its own judges a plan: no trace of the build folder, and a whole report."""
    build = fresh(work / "check_plan")
    source = options.source / "examples" / "check_plan"
    run(options.cmake, "-S", source, "-B", build, f"-DCMAKE_PREFIX_PATH={prefix}", *options.common)
    run(options.cmake, "--build", build, "--config", options.config)
    plan = options.source / "examples" / "plans" / "open_boat.json"
    sheet = work / "sheet.html"
    done = subprocess.run([build / "check_plan", plan, "--sheet", sheet], capture_output=True, text=True)
    if done.returncode not in (0, 1, 3) or len(done.stdout.splitlines()) < 20:
        raise Failure(f"check_plan ends with {done.returncode}\n{done.stdout}{done.stderr}")
    if not sheet.read_text(encoding="utf-8").rstrip().endswith("</html>"):
        raise Failure("check_plan writes half a job sheet")
    refused = subprocess.run([build / "check_plan", source / "main.cpp"], capture_output=True, text=True)
    if refused.returncode != 2 or "plan.json" not in refused.stderr:
        raise Failure(f"check_plan takes its own source for a plan\n{refused.stdout}{refused.stderr}")


def use_embedded(options, work: Path) -> None:
    build, prefix = fresh(work / "embedded"), fresh(work / "nothing")
    run(options.cmake, "-S", HERE / "embedded", "-B", build, f"-DCOVERFRAME_FOLDER={options.source}", *options.common)
    run(options.cmake, "--install", build, "--prefix", prefix, "--config", options.config)
    if prefix.exists():
        raise Failure(f"a project that takes coverframe in installs {sorted(prefix.rglob('*'))}")


def main() -> int:
    parser = argparse.ArgumentParser()
    for name in ("cmake", "config", "generator", "compiler"):
        parser.add_argument(f"--{name}", required=True)
    for name in ("build", "source"):
        parser.add_argument(f"--{name}", required=True, type=Path)
    options = parser.parse_args()
    options.common = [
        f"-G{options.generator}",
        f"-DCMAKE_CXX_COMPILER={options.compiler}",
        f"-DCMAKE_BUILD_TYPE={options.config}",
    ]
    work = options.build / "tests" / "consumer"
    work.mkdir(parents=True, exist_ok=True)
    try:
        prefix = install_and_move(options, work)
        use_installed(options, work, prefix)
        use_example(options, work, prefix)
        use_embedded(options, work)
    except Failure as failure:
        print(failure)
        return 1
    return 0


if __name__ == "__main__":
    sys.exit(main())
