# SPDX-License-Identifier: BSD-3-Clause
"""Runs the pages of this folder and keeps what they show.

    python examples/build_notebook.py           runs every NN_name.py and writes NN_name.ipynb beside it
    python examples/build_notebook.py --check   runs them and compares what they say with the pages that are kept

The pages are written as percent scripts (jupytext). Needs coverframe, jupytext, nbclient, ipykernel and what the pages
import. A kept page holds no times, no paths and no counts that change from run to run. The check compares text, not
pictures: those change with the version of the plotting library.
"""

from __future__ import annotations

import argparse
import sys
from itertools import zip_longest
from pathlib import Path
from typing import Any

import jupytext
import nbformat
from nbclient import NotebookClient

FOLDER = Path(__file__).resolve().parent


def run(script: Path) -> Any:
    """The executed page, without what is of the machine it ran on."""
    page = jupytext.read(script)
    NotebookClient(page, timeout=300, kernel_name="python3", resources={"metadata": {"path": str(FOLDER)}}).execute()
    page.metadata = nbformat.from_dict(
        {"kernelspec": {"display_name": "Python 3", "language": "python", "name": "python3"}}
    )
    for number, cell in enumerate(page.cells, start=1):
        cell.id = f"cell-{number}"
        cell.metadata = nbformat.from_dict({})
        for output in cell.get("outputs", []):
            output.get("metadata", {}).clear()
    return page


def said(page: Any) -> list[str]:
    """What each cell is and says, without pictures."""
    lines = []
    for cell in page.cells:
        texts = [cell.source]
        for output in cell.get("outputs", []):
            if output.output_type == "stream":
                texts.append(output.text)
            elif "data" in output and "image/png" not in output.data:
                texts.append(output.data.get("text/plain", ""))
        lines.append("\n".join(texts))
    return lines


def difference(kept: Any, page: Any) -> str:
    """The first cell in which two pages differ, "" if they say the same."""
    for before, now in zip_longest(said(kept), said(page), fillvalue="nothing"):
        if before != now:
            return f"The kept page says\n{before}\nbut the run says\n{now}\n"
    return ""


def main() -> int:
    parser = argparse.ArgumentParser(description="Runs the example pages.")
    parser.add_argument("--check", action="store_true", help="compare with the kept pages instead of writing them")
    check = parser.parse_args().check
    result = 0
    for script in sorted(FOLDER.glob("[0-9][0-9]_*.py")):
        kept = script.with_suffix(".ipynb")
        page = run(script)
        if not check:
            nbformat.write(page, kept)
        elif found := difference(nbformat.read(kept, as_version=4), page):
            print(f"{kept.name}: {found}")
            result = 1
    return result


if __name__ == "__main__":
    sys.exit(main())
