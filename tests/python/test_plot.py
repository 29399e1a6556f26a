# SPDX-License-Identifier: BSD-3-Clause
from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import coverframe as cf
import numpy as np
import pytest

matplotlib = pytest.importorskip("matplotlib")
matplotlib.use("Agg")
import matplotlib.pyplot as plt  # noqa: E402


@pytest.fixture(autouse=True)
def closed_figures() -> Iterator[None]:
    yield
    plt.close("all")


@pytest.mark.parametrize("draw", [cf.plot.utilisation, cf.plot.ridge_line])
def test_a_plot_goes_where_it_is_told(assessment: cf.Assessment, draw: Any) -> None:
    _, (left, right) = plt.subplots(1, 2)
    assert draw(assessment, ax=right) is right
    assert right.has_data() and not left.has_data()
    own = draw(assessment)
    assert own is not right and own.has_data()
    own.figure.canvas.draw()


def test_bars_are_the_worst_of_each_check(assessment: cf.Assessment) -> None:
    ax = cf.plot.utilisation(assessment)
    worst: dict[str, float] = {}
    for finding in assessment.findings:
        if finding.verdict != "not applicable":
            worst.setdefault(finding.check, finding.utilisation or 0.0)
    assert [bar.get_width() for bar in ax.patches] == list(worst.values())
    assert [label.get_text().partition(" (")[0] for label in ax.get_yticklabels()] == list(worst)


def test_the_ridge_line_is_drawn_and_loaded(assessment: cf.Assessment) -> None:
    ax = cf.plot.ridge_line(assessment)
    lines = {line.get_label(): line for line in ax.get_lines()}
    shape = assessment.shape
    np.testing.assert_array_equal(lines["ridge, drawn"].get_ydata(), shape["ridge_drawn_m"])
    np.testing.assert_array_equal(lines["ridge, loaded"].get_ydata(), shape["ridge_loaded_m"])
    np.testing.assert_array_equal(lines["rail"].get_xdata(), shape["x_m"])
