# SPDX-License-Identifier: BSD-3-Clause
"""The pages of examples/ still say what they said when they were kept."""

from __future__ import annotations

import copy
import importlib.util
import re
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest

for needed in ("jupytext", "nbclient", "ipykernel", "pandas", "matplotlib"):
    pytest.importorskip(needed)
import jupytext  # noqa: E402
import nbformat  # noqa: E402


@pytest.fixture(scope="module")
def builder(repository: Path) -> Any:
    spec = importlib.util.spec_from_file_location("build_notebook", repository / "examples" / "build_notebook.py")
    assert spec is not None and spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def pages(repository: Path) -> list[Path]:
    found = sorted((repository / "examples").glob("[0-9][0-9]_*.ipynb"))
    assert found
    return found


def test_the_pages_run_and_say_the_same(repository: Path) -> None:
    command = [sys.executable, str(repository / "examples" / "build_notebook.py"), "--check"]
    done = subprocess.run(command, capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr


def test_the_pages_are_those_of_their_scripts(repository: Path) -> None:
    for page in pages(repository):
        script = jupytext.read(page.with_suffix(".py"))
        kept = nbformat.read(page, as_version=4)
        assert [cell.source for cell in script.cells] == [cell.source for cell in kept.cells]


def test_the_pages_hold_nothing_of_the_machine(repository: Path) -> None:
    for page in pages(repository):
        text = page.read_text(encoding="utf-8")
        without_pictures = re.sub(r'"image/png": "[^"]*"', "", text)
        assert "execution" not in re.sub(r'"execution_count"', "", without_pictures)
        assert not re.search(r"(/(?:home|root|tmp|usr)/|[A-Z]:\\\\)", without_pictures)
        assert str(repository) not in text and sys.prefix not in text
        assert not re.search(r"\d{4}-\d\d-\d\d", without_pictures)


def test_a_difference_is_noticed(repository: Path, builder: Any) -> None:
    kept = nbformat.read(pages(repository)[0], as_version=4)
    assert builder.difference(kept, kept) == ""
    other = copy.deepcopy(kept)
    stream = next(o for cell in other.cells for o in cell.get("outputs", []) if o.output_type == "stream")
    stream.text = stream.text.replace("a", "b", 1)
    assert builder.difference(kept, other) != ""
    other = copy.deepcopy(kept)
    del other.cells[-1]
    assert builder.difference(kept, other) != ""
