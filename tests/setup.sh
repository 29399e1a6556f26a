# SPDX-License-Identifier: BSD-3-Clause
# shellcheck shell=bash
# Sourced by tests/run and examples/run: whatever a build needs is there afterwards, or one sentence says what is not.
#   root      the project folder
#   build     where tests/run and examples/run build
#   python    the interpreter of the virtual environment in build/venv
#   jobs      how many things to do at once
# On Debian and Ubuntu missing packages are installed with apt-get; elsewhere they are named. A second run finds
# everything in place and does nothing.

root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
build=$root/build/run
venv=$root/build/venv
python=$venv/bin/python
jobs=$(nproc)

stop() {
    printf '%s\n' "$*" >&2
    exit 1
}

as_root() {
    if [ "$(id -u)" -eq 0 ]; then
        "$@"
    else
        sudo "$@"
    fi
}

# Names of packages that are missing, of those given as package or package:command. A command that is there already
# serves as well as its package.
missing_packages() {
    local entry package command
    for entry in "$@"; do
        package=${entry%%:*}
        command=
        if [ "$package" != "$entry" ]; then command=${entry#*:}; fi
        if [ -n "$command" ] && command -v "$command" >/dev/null; then continue; fi
        if dpkg-query -W -f '${db:Status-Status}\n' "$package" 2>/dev/null | grep -qx installed; then continue; fi
        printf '%s ' "$package"
    done
}

install_packages() {
    local missing log=$root/build/apt.log
    missing=$(missing_packages "$@")
    if [ -z "$missing" ]; then return; fi
    if [ "$(id -u)" -ne 0 ] && ! command -v sudo >/dev/null; then
        stop "This system lacks ${missing% }, and neither root nor sudo is there to install it:" \
            "install it, then run this again."
    fi
    printf 'Installing %s\n' "$missing"
    # shellcheck disable=SC2086  # $missing is one word a package
    # A package list that cannot be refreshed is no matter if the packages can be had all the same.
    if ! { as_root apt-get update || printf 'apt-get update failed\n'
           as_root env DEBIAN_FRONTEND=noninteractive \
               apt-get -o DPkg::Lock::Timeout=120 install -y --no-install-recommends $missing; } >"$log" 2>&1 </dev/null
    then
        tail -n 5 "$log" >&2
        stop "apt-get could not install ${missing}(see $log): check the network, or install them by hand."
    fi
}

# Names of tools and headers that are missing on a system without dpkg.
missing_by_probe() {
    local tool header
    for tool in "${CXX:-g++}" cmake ninja python3; do
        command -v "$tool" >/dev/null || printf '%s ' "$tool"
    done
    for header in boost/units/quantity.hpp eigen3/Eigen/Core doctest/doctest.h nlohmann/json.hpp; do
        [ -e "/usr/include/$header" ] || [ -e "/usr/local/include/$header" ] ||
            [ -e "/opt/homebrew/include/$header" ] || [ -n "${CMAKE_PREFIX_PATH:-}" ] || printf '%s ' "$header"
    done
}

# 0 if version $1 is at least $2.
at_least() { [ "$(printf '%s\n%s\n' "$2" "$1" | sort -V | head -n 1)" = "$2" ]; }

check_versions() {
    local found
    found=$(cmake --version | sed -n '1s/[^0-9]*//p')
    at_least "$found" 3.25 || stop "cmake $found is too old: coverframe needs 3.25 or later."
    if [ "${CXX:-g++}" = g++ ]; then
        found=$(g++ -dumpfullversion)
        at_least "$found" 12 ||
            stop "g++ $found is too old: coverframe needs 12 or later (or set CXX to another compiler)."
    fi
}

# The interpreter for the virtual environment: one with venv and with the headers to compile a module against.
find_python() {
    local candidate
    for candidate in /usr/bin/python3 python3; do
        if "$candidate" - >/dev/null 2>&1 <<'PYTHON'
import ensurepip, os, sys, sysconfig, venv
sys.exit(sys.version_info < (3, 10) or not os.path.exists(os.path.join(sysconfig.get_paths()["include"], "Python.h")))
PYTHON
        then
            printf '%s\n' "$candidate"
            return
        fi
    done
    stop "No python3 of 3.10 or later with venv and its development headers was found:" \
        "install python3-venv and python3-dev."
}

# The environment is made once, and again whenever the requirements, this place or the interpreter change.
make_environment() {
    local base wanted log=$root/build/pip.log requirements=$root/tests/requirements.txt
    base=$(find_python)
    wanted=$({ cat "$requirements"; printf '%s\n' "$venv"; "$base" --version; } | sha256sum)
    if [ -x "$python" ] && [ "$(cat "$venv/satisfied" 2>/dev/null)" = "$wanted" ]; then return; fi
    printf 'Setting up Python in %s\n' "$venv"
    rm -rf "$venv"
    if ! { "$base" -m venv "$venv" && "$python" -m pip install --disable-pip-version-check -r "$requirements"; } \
            >"$log" 2>&1 </dev/null; then
        tail -n 5 "$log" >&2
        stop "The Python packages of tests/requirements.txt could not be installed (see $log): check the network."
    fi
    printf '%s\n' "$wanted" >"$venv/satisfied"
}

# Configures build/run and builds the targets given, or all of them.
build_release() {
    local fresh=() targets=() home
    if [ -e "$build/CMakeCache.txt" ]; then
        home=$(sed -n 's/^CMAKE_HOME_DIRECTORY:INTERNAL=//p' "$build/CMakeCache.txt")
        if [ "$home" != "$root" ]; then fresh=(--fresh); fi
    fi
    cmake "${fresh[@]}" -S "$root" -B "$build" -G Ninja -DCMAKE_BUILD_TYPE=Release -DCOVERFRAME_WERROR=ON \
        -DCOVERFRAME_PYTHON=ON "-DPython_EXECUTABLE=$python" >"$build.configure.log" 2>&1 </dev/null ||
        { cat "$build.configure.log" >&2; return 1; }
    if [ $# -gt 0 ]; then targets=(--target "$@"); fi
    cmake --build "$build" -j "$jobs" "${targets[@]}" </dev/null
}

mkdir -p "$root/build"
if command -v dpkg-query >/dev/null && command -v apt-get >/dev/null; then
    install_packages g++:"${CXX:-g++}" cmake:cmake ninja-build:ninja libeigen3-dev libboost-dev doctest-dev \
        nlohmann-json3-dev python3-dev python3-venv
else
    missing=$(missing_by_probe)
    if [ -n "$missing" ]; then stop "This system lacks ${missing% }: install it, then run this again."; fi
fi
check_versions
make_environment
