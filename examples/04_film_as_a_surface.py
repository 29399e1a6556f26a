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
# # Film as a surface
#
# The checks take the film as strips from ridge to rail. A surface carries along the boat too, lies on straps and
# obstacles, and shows where water stands. It takes a second instead of a millisecond, so it is asked for by itself.
# **The boat is invented.** Read `01_first_check` first.
#
# Steps: 1. shrink the film; 2. snow on it; 3. look at it; 4. with how much snow it first touches something; 5. every
# arrangement of the document, and what that does to the findings; 6. the strip behind it all.
#
# Simplifications: pleats, welds and doors are left out, snow keeps its place, water lies still. The work can hurt
# people: a competent person judges the result, and local codes and licensed practice rule.

# %%
import coverframe as cf
import matplotlib.pyplot as plt
import numpy as np

# %% [markdown]
# ## 1. Shrink the film
#
# The straps of the plan are tensioned on the bare frame, then the film is shrunk until it pulls with 150 N on every
# metre in all directions, while the frame gives way under it.

# %%
cover = cf.surface.rig("plans/sloop.json", film_tension_n_per_m=150)
print(cover.state.status, len(cover.state.places_m), "nodes")

# %% [markdown]
# ## 2. Snow on it
#
# 0.6 kPa all over, and every hollow filled to where it runs over.

# %%
loaded = cover.load(snow_kpa=0.6, rain="to the brim")
assert loaded.usable
print(f"it comes down by up to {1000 * np.max(loaded.drop_m):.0f} mm")
print(f"water on it: {1000 * loaded.water_m3:.0f} litres")
for obstacle in loaded.obstacles:
    if obstacle.force_n > 0:
        print(f"it rests on the {obstacle.name} with {obstacle.force_n:.0f} N")

# %% [markdown]
# What presses down is held up:

# %%
assert abs(loaded.vertical_load_n - loaded.vertical_reaction_n) < 1e-4 * loaded.vertical_load_n

# %% [markdown]
# ## 3. Look at it

# %%
fig, axes = plt.subplots(3, 1, figsize=(9, 9.5), layout="constrained")
cf.plot_surface.sag(cover, loaded, ax=axes[0])
cf.plot_surface.slopes(cover, loaded, ax=axes[1])
_ = cf.plot_surface.tension(cover, loaded, ax=axes[2])

# %% [markdown]
# ## 4. When does it first touch something?
#
# With more and more of 0.6 kPa, to one per cent of it. Clear the cover before that.

# %%
for touch in cover.first_touches(snow_kpa=0.6):
    when = "not touched" if touch.share is None else f"touched from {0.6 * touch.share:.2f} kPa on"
    print(f"{touch.obstacle}: {when}")

# %% [markdown]
# ## 5. Every arrangement of the document
#
# The survey looks at the cover without snow and under every arrangement of its document, film and straps at their
# softest, hollows full, and puts what it finds among the findings of the assessment.

# %%
assessment = cf.assess("plans/sloop.json")
seen = cf.survey(assessment)
for look in seen.looks:
    print(f"{look.arrangement:28} {look.holds:4.0%} holds snow, flattest film {look.least_slope_deg:.0f} deg")

# %%
for finding in seen.findings:
    if finding.check.startswith("surface."):
        print(f"{finding.verdict:10} {finding.check}, {finding.part}")

# %% [markdown]
# Film that shears, and lies on the straps, brings more to some parts than strips do. Their checks are raised by that:

# %%
for force in seen.forces:
    if force.carried == "push":
        print(f"{force.part}: {force.surface / force.strips:.2f} of the push that strips give")

# %% [markdown]
# The worst look:

# %%
fig = plt.figure(figsize=(9, 5))
_ = cf.plot_surface.in_space(cover, seen.state, ax=fig.add_subplot(projection="3d"))

# %% [markdown]
# ## 6. The strip behind it all
#
# A strip from the ridge to the rail of that boat, flat and broad: does it drain, and what would help?

# %%
flat = cf.film.ponding(span_m=1.6, fall_m=0.6, load_kpa=0.6, tension_n_per_m=150, stiffness_n_per_m=45e3)
print("drains" if flat.drains else "holds water")
print(f"it pulls {flat.tension_n_per_m:.0f} N/m level", end="; ")
print(f"water stops sinking it from {flat.settling_tension_n_per_m:.0f} on")
print(f"it would drain with a fall of {flat.fall_needed_m:.2f} m")

# %% [markdown]
# What of the film's pull reaches the band, with a rail of which nothing is known: all of it, or less.

# %%
turn = cf.film.turn_over_rail(tension_n_per_m=flat.tension_n_per_m, arrives_deg=10, friction=[0.0, 0.4])
print("pull on the band, N/m:", np.round(turn.band_pull_n_per_m[0]))

# %% [markdown]
# "Even the thinnest film holds 256 lb per square foot" is often said (common practice, no source). A load per area says
# nothing about film without its span: film of 0.15 mm with a yield stress of 9 MPa is at it over

# %%
stiffness = 250e6 * 0.15e-3 / (1 - 0.42**2)
span = cf.film.span_at_limit(
    stiffness_n_per_m=stiffness, tension_n_per_m=150, limit_n_per_m=9e6 * 0.15e-3, load_kpa="256 psf"
)
print(f"{span:.2f} m; under 1 kPa over", end=" ")
span = cf.film.span_at_limit(stiffness_n_per_m=stiffness, tension_n_per_m=150, limit_n_per_m=1350, load_kpa=1)
print(f"{span:.1f} m")
