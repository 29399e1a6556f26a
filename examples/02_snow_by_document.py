# ---
# jupyter:
#   jupytext:
#     text_representation:
#       extension: .py
#       format_name: percent
#   kernelspec:
#     display_name: Python 3
#     language: python
#     name: python3
# ---

# %% [markdown]
# # How much snow, by which document
#
# The same cover stands in three yards: one in the north-east of the United States, one in Ontario, one in southern
# Germany. How much snow does each document put on it, where, and how far apart do they lie? **Boat, yards and ground
# loads are invented**; none of the numbers below is one to build by.
#
# Steps: 1. ground loads that know their document; 2. side by side; 3. load against slope; 4. one number by hand;
# 5. snow as found on the cover; 6. how often.
#
# Simplifications: the documents are compared by the load on the plan of the cover, not by what it does to the frame.
# What a document does not say about a boat cover is read on the safe side; the notes say how.

# %%
import coverframe as cf
import matplotlib.pyplot as plt
import numpy as np
import pandas as pd
from coverframe.compare import plot_load_by_slope

plan = cf.read_plan("plans/motor_boat.json")

# %% [markdown]
# ## 1. Ground loads that know their document
#
# A ground load of ASCE 7-22 is at strength level; the others are 50-year values, in Canada with the rain beside the
# snow. They are different things, and a rule of one document refuses a load of another.

# %%
yards = [
    cf.GroundSnow("30 psf", "ASCE 7-16", source="invented", risk_category="II"),
    cf.GroundSnow("50 psf", "ASCE 7-22", source="invented", risk_category="II"),
    cf.GroundSnow("1.8 kPa", "NBC 2020", source="invented", rain="0.4 kPa"),
    cf.GroundSnow(
        cf.na_de.ground_load(zone="2", altitude_m=500.0), "EN 1991-1-3:2003", source="invented yard, zone 2, 500 m"
    ),
]
try:
    cf.asce7_22.flat_load(ground_snow_kpa=yards[0], exposure_factor=1.0, thermal_factor=1.2)
except cf.InputError as refused:
    print(refused)
try:
    yards[1].factored(1.0, 1.6)
except cf.InputError as refused:
    print(refused)

# %% [markdown]
# ## 2. Side by side
#
# Every arrangement of snow each document asks for, over the whole cover; and the greatest of them with the document's
# own factor on snow. The first row is the plan's own ground load, which is small.

# %%
comparison = cf.compare_snow(plan, yards)
comparison.table().round(2)

# %%
rows = comparison.arrangements()
rows[rows["document"].isin(["NBC 2020", "EN 1991-1-3:2003"])].round(2)

# %% [markdown]
# What was read into the European text:

# %%
for note in comparison.documents[-1].notes:
    print("-", note)

# %% [markdown]
# The heaviest snow times its factor [kPa] on each of the demo boats:

# %%
boats = {}
for name in ("motor_boat", "sloop", "open_boat", "as_found"):
    documents = cf.compare_snow(f"plans/{name}.json", yards).documents[1:]
    boats[name] = [round(document.factored_kpa, 2) for document in documents]
pd.DataFrame(boats, index=[f"{g.document}, {g.load:.2f} kPa" for g in yards])

# %% [markdown]
# ## 3. Load against slope
#
# Left, snow as the document has it; right, times its factor for strength. The window of the unbalanced case of ASCE 7
# ends at 7 on 12; it is carried on here.

# %%
fig, (left, right) = plt.subplots(1, 2, figsize=(11.0, 4.4), layout="constrained")
plot_load_by_slope(plan, yards, half_breadth_m=1.2, ax=left)
plot_load_by_slope(plan, yards, half_breadth_m=1.2, factored=True, ax=right)
right.get_legend().remove();

# %% [markdown]
# ## 4. One number by hand
#
# Any rule lists its symbols, values, units, formulas and clause, in the units of its document.

# %%
for term in cf.rules.workings(
    cf.asce7_16.unbalanced_gable,
    sloped_load_kpa=cf.asce7_16.flat_load(
        ground_snow_kpa=yards[0], exposure_factor=1.0, thermal_factor=1.2, importance_factor=1.0
    ),
    ground_snow_kpa=yards[0],
    slope_deg=20.0,
    eave_to_ridge_m=1.2,
    importance_factor=1.0,
):
    print(f"{term.symbol:10} = {term.value:8.4g} {term.unit:4} {term.formula}")

# %% [markdown]
# The drift height again, with a pocket calculator: the fetch is 20 ft at least, and I_s = 1.

# %%
by_hand = 0.43 * 20.0 ** (1 / 3) * (30.0 + 10.0) ** 0.25 - 1.5
assert abs(by_hand - 1.436) < 0.001
print(f"h_d = {by_hand:.3f} ft")

# %% [markdown]
# ## 5. Snow as found
#
# In January 12 cm of wet snow lie under 25 cm of fresh snow. The published densities spread; a weighed column does not.

# %%
found = cf.snowpack.three_layers_load(
    top_kind="fresh", top_depth_m=0.25, middle_kind="wet", middle_depth_m=0.12, bottom_kind="ice", bottom_depth_m=0.0
)
for name, value in zip(found._fields, found, strict=True):
    print(f"{name:12} {value:.2f}")
weighed = cf.snowpack.column_load(mass_kg=0.71, width_m=0.10, breadth_m=0.10)
print(f"a column of 10 x 10 cm weighs 0.71 kg: {weighed:.2f} kPa")

# %% [markdown]
# ## 6. How often
#
# Twenty invented winters with three that brought no snow, the law that fits them, and what the 50-year load may be.

# %%
winters = np.array(
    [0.41, 0.0, 0.77, 0.52, 1.21, 0.35, 0.0, 0.64, 0.93, 0.48]
    + [0.29, 1.56, 0.71, 0.0, 0.38, 0.85, 0.57, 1.02, 0.44, 0.69]
)
for fit in (cf.yearly_maxima.fit_gumbel(maxima_kpa=winters), cf.yearly_maxima.fit_lognormal(maxima_kpa=winters)):
    load = cf.yearly_maxima.load(fit=fit, return_period_years=50.0)
    sure = cf.yearly_maxima.interval(fit=fit, return_period_years=50.0, level=0.9)
    print(f"{type(fit).__name__}: 50-year load {load:.2f} kPa, with 90 % confidence", end=" ")
    print(f"{sure.low_kpa:.2f} to {sure.high_kpa:.2f}")
chance = cf.extremes.exceedance_in_winters(return_period_years=50.0, winters=10.0)
print(f"chance that the 50-year load is exceeded in ten winters: {chance:.0%}")
