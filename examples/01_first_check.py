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
# # A first check
#
# A cuddy runabout stands in a yard for the winter under a timber ridge, three uprights, cross straps and shrunk film.
# What does its cover carry under snow, and what gives way first? **Boat, yard, snow and cover are invented**; the plan
# says so itself.
#
# Steps: 1. read the plan; 2. read the cautions; 3. assess; 4. look at the findings; 5. look at the pictures; 6. redo
# one number by hand.
#
# Simplifications: no wind, a rigid boat, strips of film that share load along the boat only over cross straps. They
# are listed in `assessment.assumptions`.

# %%
import coverframe as cf
import matplotlib.pyplot as plt
import numpy as np

plan = cf.read_plan("plans/motor_boat.json")
plan

# %% [markdown]
# ## 2. Before anything else

# %%
for sentence in cf.cautions():
    print("-", sentence)

# %% [markdown]
# ## 3. Assess
#
# One call looks at every situation: no snow, snow balanced, heavy to one side, on a part of the ridge, swept from one
# side; factored for strength and as it is for sag; film loose and tight; straps soft and stiff.

# %%
assessment = cf.assess(plan)
print(assessment.verdict)
print(len(assessment.situations), "situations,", len(assessment.findings), "findings")

# %% [markdown]
# ## 4. Findings, worst first

# %%
findings = assessment.to_frame()
shown = ["check", "part", "clause", "demand", "capacity", "unit", "utilisation", "verdict"]
findings.loc[:11, shown].round(2)

# %% [markdown]
# What the crew is told about the worst of them:

# %%
print(assessment.governing.sentence)

# %% [markdown]
# ## 5. Pictures
#
# Left, the worst part of every check against its limit. Right, how far the ridge comes down.

# %%
figure, (left, right) = plt.subplots(1, 2, figsize=(12, 4.6), layout="constrained")
cf.plot.utilisation(assessment, ax=left)
_ = cf.plot.ridge_line(assessment, ax=right)

# %% [markdown]
# ## 6. One number by hand
#
# The balanced snow load comes from two rules of ASCE 7-22: the flat load of 7.3 and the slope factor of 7.4. The slope
# changes along the boat, so there is a load for every station.

# %%
slope = assessment.stations["slope_deg"]
flat = cf.asce7_22.flat_load(ground_snow_kpa="7 psf", exposure_factor=1.0, thermal_factor=1.2)
factor = cf.asce7_22.slope_factor(slope_deg=slope, thermal_factor=1.2, surface="other")
load = cf.asce7_22.sloped_load(flat_load_kpa=flat, slope_factor=factor)
print(f"slopes {slope.min():.1f} to {slope.max():.1f} deg, flat load {flat:.4f} kPa")
print(f"on the slopes {load.min():.4f} to {load.max():.4f} kPa")

assert np.allclose(load, assessment.arrangements[0].port_kpa, rtol=1e-12)
assert abs(flat - 0.28153) < 1e-5  # 0.7 times 1.0 times 1.2 times 7 psf
