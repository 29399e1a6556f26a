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
# # A frame by hand
#
# No plan file: a ridge pole over two uprights, built from arrays, with a strap to each side of every top. What do its
# members carry when snow lies evenly, and what happens when it lies to port only? **Everything here is invented.** Read
# `01_first_check` first if you want a whole cover judged.
#
# Steps: 1. the frame; 2. set the straps; 3. snow on both sides; 4. diagrams; 5. more and more snow to port; 6. one
# number by hand.
#
# Simplifications: loads act at nodes, feet and rails do not give, straps do not slip over the tops; there is no film,
# so the snow is put on the ridge directly.
#
#                 U1              U2
#       bow ------+---------------+------ stern      ridge, z up
#                /|\             /|\
#               / | \           / | \                straps to the rails
#                 |               |                  uprights on the sole

# %%
import dataclasses

import coverframe as cf
import matplotlib.pyplot as plt
import numpy as np

# %% [markdown]
# ## 1. The frame
#
# A softwood pole of 70 mm by 70 mm, 6 m long in twelve pieces, over uprights at 1.5 m and 4.5 m. Each end is held up
# and sideways; the bow end also fore and aft and against twist.

# %%
width, elasticity = 0.07, 9e9  # m, Pa
area, inertia = width**2, width**4 / 12
x = np.linspace(0.0, 6.0, 13)
ridge = [[at, 0.0, 1.5] for at in x]
feet = [[1.5, 0.0, 0.3], [4.5, 0.0, 0.3]]
rails = [[at, side, 1.0] for at in (1.5, 4.5) for side in (-1.2, 1.2)]
tops = [3, 9]
frame = cf.frame.Frame(
    nodes_m=ridge + feet + rails,
    held=["ux uy uz rx", *[""] * 11, "uy uz", *["ux uy uz"] * 6],
    members=[[i, i + 1] for i in range(12)] + [[13, 3], [14, 9]] + [[3, 15], [3, 16], [9, 17], [9, 18]],
    member_names=[f"ridge {i}" for i in range(12)] + ["U1", "U2", "C1 port", "C1 starboard", "C2 port", "C2 starboard"],
    kind=["pole"] * 12 + ["upright"] * 2 + ["strap"] * 4,
    axial_stiffness_n=[elasticity * area] * 14 + [60e3] * 4,
    ei_vertical_n_m2=elasticity * inertia,
    ei_level_n_m2=elasticity * inertia,
    ga_vertical_n=5 / 6 * elasticity / 16 * area,
    ga_level_n=5 / 6 * elasticity / 16 * area,
    gj_n_m2=elasticity / 16 * 0.141 * width**4,
    weight_n_per_m=[20.0] * 14 + [0.5] * 4,
)
frame

# %% [markdown]
# ## 2. Set the straps
#
# Each cross strap is pulled to 250 N. The free lengths are found with all of them on.

# %%
own_weight = cf.frame.self_weight(frame)
runs = [cf.frame.StrapRun("C1", (14, 15), 250.0), cf.frame.StrapRun("C2", (16, 17), 250.0)]
tensioned = cf.frame.tension_straps(frame, runs=runs, forces_n=own_weight)
print(tensioned.solution.status, tensioned.solution.axial_n[12:].round(1))
set_up = tensioned.frame

# %% [markdown]
# ## 3. Snow on both sides
#
# 300 N on every metre of the ridge.

# %%
snow = np.zeros((19, 3))
snow[:13, 2] = -300.0 * 0.5
snow[[0, 12], 2] /= 2
even = cf.frame.solve(set_up, forces_n=own_weight + snow)
print(even.status)
even.members().loc[12:, ["member", "kind", "axial_n", "active"]].round(1)

# %% [markdown]
# What acts from outside adds up to nothing:

# %%
sums = even.equilibrium
assert sums.force_share < 1e-9
print("load and reactions balance:", np.round(even.reaction[:, 2].sum() + even.forces_n[:, 2].sum(), 6) == 0)

# %% [markdown]
# ## 4. Diagrams

# %%
fig, ((shape, pushes), (bending, across)) = plt.subplots(2, 2, figsize=(12, 6.4), layout="constrained")
cf.plot_frame.deflected(even, ax=shape)
cf.plot_frame.axial(even, ax=pushes)
cf.plot_frame.moment(even, ax=bending)
_ = cf.plot_frame.shear(even, ax=across)

# %% [markdown]
# ## 5. More and more snow to port
#
# Snow on one side pulls the ridge to that side: here with 0.4 N for every newton down. Twenty loads are solved in one
# call. From some load on the straps on the snow's side are slack, and the ridge moves faster.

# %%
shares = np.linspace(0.1, 2.0, 20)
to_port = snow + np.column_stack([np.zeros(19), 0.4 * snow[:, 2], np.zeros(19)])
many = cf.frame.solve_many(set_up, forces_n=own_weight + shares[:, None, None] * to_port, threads=2)
table = many.table()[["status", "largest_move_m", "largest_tension_n", "inactive_members"]].round(3)
table.insert(0, "share", shares.round(1))
table.iloc[[0, 4, 9, 13, 14, 19]]

# %%
slack = next(i for i, state in enumerate(many) if state.usable and not state.active.all())
print(f"at {shares[slack]:.1f} of the snow:", [n for n, on in zip(set_up.member_names, many[slack].active) if not on])
fig, (left, right) = plt.subplots(1, 2, figsize=(12, 4.2), layout="constrained")
cf.plot_frame.axial(many[slack], view="section", ax=left)
_ = cf.plot_frame.deflected(many[slack], view="plan", ax=right)

# %% [markdown]
# The same pole, spliced over both tops and with the straps left 20 mm too long: what cannot stand is a status with a
# sentence, not an error.

# %%
spliced = np.where(np.isin(np.arange(18), [2, 8]), 0.0, np.inf)
loose = np.where(np.array(frame.kind) == "strap", frame.drawn_length_m + 0.02, frame.drawn_length_m)
cannot = cf.frame.solve(
    dataclasses.replace(frame, spring_to_n_m_per_rad=spliced, free_length_m=loose), forces_n=own_weight + snow
)
print(cannot.status, "-", cannot.message)

# %% [markdown]
# ## 6. One number by hand
#
# A pole over four supports with spans a, 2a, a under an even load w has the same moment M over both inner supports. The
# theorem of three moments, written at one of them:
#
#     2 M (a + 2a) + M 2a = -w (a^3 + (2a)^3)/4,   so M = -9 w a^2/32
#
# for supports that do not give, without shear. Loads that act at nodes a length h apart count less: L^3 - L h^2 stands
# in for L^3 of each span.

# %%
a, w, piece = 1.5, 320.0, 0.5
by_hand = -w * (a**3 - a * piece**2 + (2 * a) ** 3 - 2 * a * piece**2) / 4 / (8 * a)
found = even.moment_vertical_to_n_m[2]
print(f"over U1: by hand {by_hand:.1f} N m, found {found:.1f} N m")
assert abs(found / by_hand - 1) < 0.03  # uprights shorten, straps pull down, shear gives
