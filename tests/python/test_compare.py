# SPDX-License-Identifier: BSD-3-Clause
"""Ground loads that know their document, and the snow of several documents side by side. All sites are invented."""

from __future__ import annotations

from pathlib import Path

import coverframe as cf
import numpy as np
import pytest

OTHERS = [
    cf.GroundSnow("30 psf", "ASCE 7-16", source="invented", risk_category="II"),
    cf.GroundSnow(2.0, "NBC 2020", source="invented", rain="0.4 kPa"),
    cf.GroundSnow(1.5, "EN 1991-1-3:2003", source="invented"),
]


def test_a_ground_load_goes_into_the_rules_of_its_own_document_only() -> None:
    load = cf.en1991_1_3.roof_load(
        ground_snow_kpa=OTHERS[2], shape_coefficient=0.8, exposure_coefficient=1.0, thermal_coefficient=1.0
    )
    assert load == pytest.approx(1.2, rel=1e-12)
    with pytest.raises(cf.InputError) as refused:
        cf.asce7_22.flat_load(ground_snow_kpa=OTHERS[0], exposure_factor=1.0, thermal_factor=1.2)
    assert refused.value.code == "ground.document.mixed"


@pytest.mark.parametrize(("document", "factor"), [("ASCE 7-22", 1.6), ("ASCE 7-16", 1.0), ("NBC 2015", 1.6)])
def test_a_factor_of_another_document_is_refused(document: str, factor: float) -> None:
    ground = cf.GroundSnow(1.0, document, source="invented", risk_category="II", rain=0.2)
    with pytest.raises(cf.InputError) as refused:
        ground.factored(1.0, factor)
    assert refused.value.code == "ground.factor.mixed"
    assert document in refused.value.problems[0].advice


def test_a_ground_load_says_its_level() -> None:
    assert cf.GroundSnow(1.0, "ASCE 7-22", source="invented", risk_category="II").level == "strength"
    assert OTHERS[2].level == "characteristic"
    np.testing.assert_allclose(OTHERS[2].factored([1.0, 2.0], 1.5), [1.5, 3.0])
    with pytest.raises(cf.InputError):
        cf.GroundSnow(1.0, "ASCE 7-98", source="invented")


def test_every_document_gets_a_row(motor_boat_file: Path) -> None:
    comparison = cf.compare_snow(motor_boat_file, OTHERS)
    table = comparison.table()
    assert list(table["document"]) == ["ASCE 7-22", "ASCE 7-16", "NBC 2020", "EN 1991-1-3:2003"]
    assert list(table["snow_factor"]) == [1.0, 1.6, 1.5, 1.5]
    assert (table["greatest_kpa"] >= table["balanced_kpa"]).all()
    np.testing.assert_allclose(table["factored_kpa"], table["greatest_kpa"] * table["snow_factor"])
    # NBC, 4.1.6.2: 1.0 (2.0 x 0.8 + 0.4) on a slope under 30 degrees
    assert table["balanced_kpa"][2] == pytest.approx(2.0, rel=1e-12)
    rows = comparison.arrangements()
    assert set(rows["document"]) == set(table["document"])
    assert not rows.duplicated(["document", "arrangement"]).any()


def test_loads_over_slope_follow_the_shape_coefficient(motor_boat_file: Path) -> None:
    slopes = np.linspace(0.0, 90.0, 91)
    loads = cf.load_by_slope(motor_boat_file, slope_deg=slopes, half_breadth_m=1.2, ground=OTHERS[2])
    expected = 1.5 * cf.en1991_1_3.shape_coefficient(slope_deg=slopes, sliding="prevented")
    np.testing.assert_allclose(loads["balanced"], expected, rtol=1e-12)
    assert "cleared to port" in loads


def test_the_plot_has_two_lines_a_document(motor_boat_file: Path) -> None:
    matplotlib = pytest.importorskip("matplotlib")
    matplotlib.use("Agg")
    from coverframe.compare import plot_load_by_slope

    ax = plot_load_by_slope(motor_boat_file, [None, *OTHERS], half_breadth_m=1.2, factored=True)
    assert len(ax.lines) == 8
    texts = [text.get_text() for text in ax.get_legend().get_texts()]
    assert texts == ["ASCE 7-22", "ASCE 7-16", "NBC 2020", "EN 1991-1-3:2003"]
