# SPDX-License-Identifier: BSD-3-Clause
"""Any frame of poles, uprights, straps and bars, from arrays: its equilibrium, its member forces, its reactions.

The model, its axes and what it leaves out are explained in frame/frame.hpp; the method in frame/solve.hpp. Axes: x aft,
y to starboard, z up. Tension is positive. Directions of a node: ux uy uz rx ry rz.

>>> import coverframe as cf
>>> pole = cf.frame.Frame(
...     nodes_m=[[0, 0, 1], [1, 0, 1], [2, 0, 1]],
...     held=["ux uy uz rx", "", "uy uz"],
...     members=[[0, 1], [1, 2]],
...     axial_stiffness_n=30e6,
...     ei_vertical_n_m2=20e3,
...     ei_level_n_m2=4e3,
...     gj_n_m2=1e3,
... )
>>> state = cf.frame.solve(pole, forces_n=[[0, 0, 0], [0, 0, -100], [0, 0, 0]])
>>> state.status, round(float(state.moment_vertical_to_n_m[0]), 2)
('converged', 50.0)
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import fields
from typing import Any

import numpy as np
from numpy.typing import NDArray

from . import _core
from ._frame_loads import Loads, count_cases, read_loads
from ._frame_model import Foot, Frame, NodeSpring, Passing, Spring, StrapRun, TighteningStep, arrays_of
from ._frame_reader import is_whole
from ._frame_imperfection import bowed, leaning, out_of_plumb, shaped
from ._frame_outcome import (
    Buckling,
    BucklingMode,
    FrictionBounds,
    Slipped,
    SlippedBounds,
    Tensioned,
    Tightened,
    UprightStability,
)
from ._frame_state import Balance, Equilibrium, Solution, Solutions, require_usable
from ._values import Floats, named, number, numbers
from .errors import refuse

__all__ = [
    "Balance",
    "Buckling",
    "BucklingMode",
    "Equilibrium",
    "Foot",
    "Frame",
    "FrictionBounds",
    "NodeSpring",
    "Passing",
    "Slipped",
    "SlippedBounds",
    "Solution",
    "Solutions",
    "Spring",
    "StrapRun",
    "Tensioned",
    "Tightened",
    "TighteningStep",
    "UprightStability",
    "bowed",
    "buckling",
    "leaning",
    "out_of_plumb",
    "self_weight",
    "shaped",
    "slip_over_tops",
    "slip_over_tops_bounds",
    "solve",
    "solve_friction_bounds",
    "solve_many",
    "tension_straps",
    "tighten_in_order",
    "upright_stability",
]


def solve(
    frame: Frame,
    *,
    forces_n: Any = None,
    couples_n_m: Any = None,
    member_loads_n_per_m: Any = None,
    temperatures_k: Any = None,
    settlements: Any = None,
    springs: Sequence[Spring] = (),
    start: Any = None,
    max_iterations: int = 200,
    force_tolerance: float = 1e-9,
    rotation_limit_rad: float = 0.175,
) -> Solution:
    """Equilibrium of a frame: the minimum of its potential energy.

    A frame that cannot stand is a status with a sentence, never an exception.

    Parameters
    ----------
    frame
        See `Frame`.
    forces_n
        Loads at the nodes, n by 3 [N]; None: none.
    couples_n_m
        Couples at the nodes, along their rotation vectors, n by 3 [N m].
    member_loads_n_per_m
        Even loads along the members, m by 3 [N/m] of drawn length, in global axes. A strap
        hangs under its own.
    temperatures_k
        Rise over the temperature at which the free lengths hold, one for all or one a member [K].
    settlements
        Given displacements of held directions, n by 6 [m, rad].
    springs
        Elastic supports.
    start
        Displacements to begin from, n by 6 [m, rad]; None: from the drawn places.
    max_iterations
        Greatest number of Newton steps.
    force_tolerance
        Largest unbalanced force, relative to the largest force in the frame [-].
    rotation_limit_rad
        Largest bend of a pole member, from the line between its nodes to the direction of its end, and lean of a
        pressed upright [rad]; beyond it the status is "large rotation".

    Raises
    ------
    InputError
        Loads, springs or options that do not fit the frame.
    """
    loads = read_loads(frame, None, forces_n, couples_n_m, member_loads_n_per_m, temperatures_k, settlements)
    options = _options(max_iterations, force_tolerance, rotation_limit_rad)
    return _solve(frame, loads, springs, start, options, 1)[0]


def solve_many(
    frame: Frame,
    *,
    forces_n: Any,
    couples_n_m: Any = None,
    member_loads_n_per_m: Any = None,
    temperatures_k: Any = None,
    settlements: Any = None,
    springs: Sequence[Spring] = (),
    start: Any = None,
    max_iterations: int = 200,
    force_tolerance: float = 1e-9,
    rotation_limit_rad: float = 0.175,
    threads: int = 1,
) -> Solutions:
    """Equilibrium of a frame under each of many sets of loads. Other Python threads go on while it computes.

    Parameters
    ----------
    forces_n
        Loads at the nodes, k by n by 3 [N].
    couples_n_m, member_loads_n_per_m, temperatures_k, settlements
        As in `solve`, for all cases, or k of them.
    threads
        How many cases are worked on at a time. The results are the same to the last bit.

    The other parameters are those of `solve`, and serve every case.
    """
    cases = count_cases(frame, forces_n)
    loads = read_loads(frame, cases, forces_n, couples_n_m, member_loads_n_per_m, temperatures_k, settlements)
    if not (is_whole(threads) and 1 <= threads <= 1024):
        raise refuse("argument.number", "/threads", repr(threads), "threads must be a whole number from 1 to 1024")
    options = _options(max_iterations, force_tolerance, rotation_limit_rad)
    return _solve(frame, loads, springs, start, options, int(threads))


def buckling(solution: Solution, *, count: int = 3, loads_only: bool = False) -> Buckling:
    """How many times the load until the frame buckles, lowest first, and in which shape.

    Linear buckling at the loaded state: its straps and uprights stay as taut or slack as they are there; each mode
    tells how far it may grow before one lets go. Factors count from the loads as they are.

    Parameters
    ----------
    solution
        A usable state.
    count
        Most modes to give.
    loads_only
        False: all forces grow with the load, pretension as well. True: pretension stays, only what the loads have added
        grows; the state without loads has to stand.

    Raises
    ------
    StateError
        frame.solution.unusable
    """
    require_usable(solution)
    if not (is_whole(count) and 1 <= count <= 1000):
        raise refuse("argument.number", "/count", repr(count), "count must be a whole number from 1 to 1000")
    frame, loads, springs, options, displacement = _arrays_of(solution)
    found, message = _core.buckle_frame(frame, loads, springs, options, displacement, int(count), bool(loads_only))
    modes = (
        BucklingMode(factor, shape, place, reach, tuple(lets_go), tuple(takes_up))
        for factor, shape, place, reach, lets_go, takes_up in found
    )
    return Buckling(tuple(modes), message)


def upright_stability(solution: Solution) -> tuple[UprightStability, ...]:
    """Every upright that pushes: its push, and the push at which its straps, as they are under load, let it go over.

    Raises
    ------
    StateError
        frame.solution.unusable
    """
    require_usable(solution)
    return tuple(UprightStability(*row) for row in _core.frame_uprights(*_arrays_of(solution)))


def _arrays_of(solution: Solution) -> tuple[Any, ...]:
    loads = read_loads(
        solution.frame,
        None,
        solution.forces_n,
        solution.couples_n_m,
        solution.member_loads_n_per_m,
        solution.temperatures_k,
        solution.settlements,
    )
    springs = _spring_arrays(solution.frame, solution.springs)
    options = _options(200, 1e-9, 0.175)
    return arrays_of(solution.frame), loads.arrays(), springs, options, solution.displacement.ravel()


def solve_friction_bounds(frame: Frame, **given: Any) -> FrictionBounds:
    """Equilibrium without friction at the feet, and with that of each foot taken as the greatest it may be.

    What a friction between gives need not lie between. The other arguments are those of `solve`.
    """
    feet = [Foot(node=f.node, stiffness_n_per_m=f.stiffness_n_per_m, gap_m=f.gap_m) for f in frame.feet]
    kept = {f.name: getattr(frame, f.name) for f in fields(frame)}
    return FrictionBounds(solve(Frame(**kept | {"feet": feet}), **given), solve(frame, **given))


def self_weight(frame: Frame, *, factor: float = 1.0) -> Floats:
    """Half of each member's weight to each of its ends, as loads at the nodes, n by 3 [N].

    `factor` is a load factor [-].
    """
    factor = number("factor", factor)
    return _core.frame_self_weight(arrays_of(frame), factor).reshape(-1, 3)


def tension_straps(
    frame: Frame,
    *,
    runs: Sequence[StrapRun],
    forces_n: Any = None,
    couples_n_m: Any = None,
    member_loads_n_per_m: Any = None,
    temperatures_k: Any = None,
    settlements: Any = None,
    springs: Sequence[Spring] = (),
    max_iterations: int = 200,
    force_tolerance: float = 1e-9,
    rotation_limit_rad: float = 0.175,
) -> Tensioned:
    """Finds the free lengths of all runs together, so that in equilibrium each run carries its tension.

    Tensions that cannot be reached together are a status of the solution, not an exception. The loads are those that
    act while the straps are set; the other parameters are those of `solve`.
    """
    loads = read_loads(frame, None, forces_n, couples_n_m, member_loads_n_per_m, temperatures_k, settlements)
    options = _options(max_iterations, force_tolerance, rotation_limit_rad)
    straps = _runs(frame, runs)
    with named("tension_n"):
        arrays, lengths, rounds = _core.tension_frame_straps(
            arrays_of(frame), loads.arrays(), _spring_arrays(frame, springs), options, straps
        )
    tensioned = _with_lengths(frame, lengths)
    return Tensioned(tensioned, _solutions(tensioned, loads, springs, arrays)[0], rounds)


def tighten_in_order(
    frame: Frame,
    *,
    runs: Sequence[StrapRun],
    steps: Sequence[TighteningStep],
    held_by_hand: Sequence[int] = (),
    hand_stiffness_n_per_m: float = 1e5,
    forces_n: Any = None,
    couples_n_m: Any = None,
    member_loads_n_per_m: Any = None,
    temperatures_k: Any = None,
    settlements: Any = None,
    springs: Sequence[Spring] = (),
    max_iterations: int = 200,
    force_tolerance: float = 1e-9,
    rotation_limit_rad: float = 0.175,
) -> Tightened:
    """Straps pulled on one after the other, as a crew does it: a later strap changes the tension of the earlier ones.

    A strap not pulled yet hangs slack. A step that cannot be done is a message, not an exception.

    Parameters
    ----------
    runs
        The straps; their own `tension_n` plays no part.
    steps
        The pulls in their order; a run may be pulled more than once.
    held_by_hand
        Nodes held level while the straps are pulled, and let go at the end.
    hand_stiffness_n_per_m
        Of that hold [N/m].

    The other parameters are those of `tension_straps`.
    """
    loads = read_loads(frame, None, forces_n, couples_n_m, member_loads_n_per_m, temperatures_k, settlements)
    options = _options(max_iterations, force_tolerance, rotation_limit_rad)
    pulls = []
    for s, step in enumerate(steps):
        if not (is_whole(step.run) and 0 <= step.run < len(runs)):
            raise refuse("frame.step", f"/steps/{s}/run", repr(step.run), "a step pulls a run, by its index")
        tension = number(f"steps/{s}/tension_n", step.tension_n)
        pulls.append((int(step.run), tension, number(f"steps/{s}/give_m", step.give_m)))
    if not all(is_whole(node) and 0 <= node < len(frame.nodes_m) for node in held_by_hand):
        raise refuse("frame.step", "/held_by_hand", repr(held_by_hand), "hands hold nodes, by their index")
    hands = [int(node) for node in held_by_hand]
    stiffness = number("hand_stiffness_n_per_m", hand_stiffness_n_per_m)
    straps, held = _runs(frame, runs), _spring_arrays(frame, springs)
    with named("tension_n", "give_m", "hand_stiffness_n_per_m"):
        arrays, lengths, tensions, message = _core.tighten_frame_straps(
            arrays_of(frame), loads.arrays(), held, options, straps, pulls, hands, stiffness
        )
    tightened = _with_lengths(frame, lengths)
    tensions.setflags(write=False)
    return Tightened(tightened, _solutions(tightened, loads, springs, arrays)[0], tensions, message)


def slip_over_tops(
    frame: Frame,
    *,
    passings: Sequence[Passing],
    friction: float,
    forces_n: Any = None,
    couples_n_m: Any = None,
    member_loads_n_per_m: Any = None,
    temperatures_k: Any = None,
    settlements: Any = None,
    springs: Sequence[Spring] = (),
    max_iterations: int = 200,
    force_tolerance: float = 1e-9,
    rotation_limit_rad: float = 0.175,
) -> Slipped:
    """Equilibrium with straps that slip over the nodes they pass, where friction does not hold them.

    Tensions on the two sides stay within exp(-mu theta) and exp(mu theta) of one another, theta the angle by which the
    strap turns (Euler and Eytelwein). `friction` is mu, 0 to 2 [-]; the other parameters are those of `solve`.
    """
    loads = read_loads(frame, None, forces_n, couples_n_m, member_loads_n_per_m, temperatures_k, settlements)
    options = _options(max_iterations, force_tolerance, rotation_limit_rad)
    over = []
    for p, passing in enumerate(passings):
        if not all(is_whole(m) and 0 <= m < len(frame.members) for m in (passing.first, passing.second)):
            advice = f"{passing.name} must be two straps with a node in common, by their index"
            raise refuse("frame.passing", f"/passings/{p}", passing.name, advice)
        over.append((str(passing.name), int(passing.first), int(passing.second)))
    arrays, lengths, states, rounds = _core.slip_frame_straps(
        arrays_of(frame), loads.arrays(), _spring_arrays(frame, springs), options, over, number("friction", friction)
    )
    slipped = _with_lengths(frame, lengths)
    states.setflags(write=False)
    solution = _solutions(slipped, loads, springs, arrays)[0]
    first, second, turn, moved = states.T
    return Slipped(slipped, solution, tuple(passings), first, second, turn, moved, rounds)


def slip_over_tops_bounds(
    frame: Frame, *, passings: Sequence[Passing], greatest: float, **given: Any
) -> SlippedBounds:
    """Both ends of what an unknown friction may do: `slip_over_tops` with mu = 0 and with mu = `greatest` [-].

    With one passing the tensions of every mu between lie between these; with several, look at values between as well.
    """
    smooth = slip_over_tops(frame, passings=passings, friction=0.0, **given)
    return SlippedBounds(smooth, slip_over_tops(frame, passings=passings, friction=greatest, **given))


def _runs(frame: Frame, runs: Sequence[StrapRun]) -> list[tuple[str, list[int], float]]:
    rows = []
    for r, run in enumerate(runs):
        if not all(is_whole(m) and 0 <= m < len(frame.members) for m in run.members):
            advice = f"strap {run.name} must be made of members of the frame, by their index"
            raise refuse("frame.run", f"/runs/{r}", run.name, advice)
        rows.append((str(run.name), [int(m) for m in run.members], number(f"runs/{r}/tension_n", run.tension_n)))
    return rows


def _with_lengths(frame: Frame, lengths: Floats) -> Frame:
    kept = {f.name: getattr(frame, f.name) for f in fields(frame)}
    return Frame(**kept | {"free_length_m": lengths})


def _solve(
    frame: Frame, loads: Loads, springs: Sequence[Spring], start: Any, options: tuple[int, float, float], threads: int
) -> Solutions:
    begin = np.empty(0)
    if start is not None:
        displacement: NDArray[Any] = numbers("start", start)
        if displacement.shape != (len(frame.nodes_m), 6) or not np.isfinite(displacement).all():
            advice = "start must be 6 finite numbers a node, n by 6"
            raise refuse("frame.start.size", "/start", displacement.shape, advice)
        begin = displacement.ravel()
    arrays = _core.solve_frame(
        arrays_of(frame), loads.arrays(), len(loads.forces_n), _spring_arrays(frame, springs), options, begin, threads
    )
    return _solutions(frame, loads, springs, arrays)


def _solutions(frame: Frame, loads: Loads, springs: Sequence[Spring], arrays: tuple[Any, ...]) -> Solutions:
    status, message, caution, displacement, forces, reaction, state, iterations, feet, loose = arrays
    for array in (displacement, forces, reaction, state, iterations, feet, loose):
        array.setflags(write=False)
    return Solutions(
        frame=frame,
        forces_n=loads.forces_n,
        couples_n_m=loads.couples_n_m,
        member_loads_n_per_m=loads.member_loads_n_per_m,
        temperatures_k=loads.temperatures_k,
        settlements=loads.settlements,
        springs=tuple(springs),
        status=tuple(status),
        message=tuple(message),
        displacement=displacement,
        member_forces=forces,
        reaction=reaction,
        caution=tuple(caution),
        state=state,
        iterations=iterations,
        foot_forces=feet,
        loose=loose,
    )


def _spring_arrays(frame: Frame, springs: Sequence[Spring]) -> _core._SpringArrays:
    for i, spring in enumerate(springs):
        if not 0 <= spring.node < len(frame.nodes_m):
            raise refuse("frame.loads.finite", f"/springs/{i}", spring.node, "a spring must be at a node that exists")
    return (
        np.array([s.node for s in springs], dtype=np.int64),
        np.array([s.stiffness_n_per_m for s in springs], dtype=np.float64).reshape(-1, 9),
        np.array([s.u0_m for s in springs], dtype=np.float64).reshape(-1, 3),
        np.array([s.force0_n for s in springs], dtype=np.float64).reshape(-1, 3),
    )


def _options(max_iterations: Any, force_tolerance: Any, rotation_limit_rad: Any) -> tuple[int, float, float]:
    if not (is_whole(max_iterations) and 0 <= max_iterations <= 1_000_000):
        advice = "max_iterations must be a whole number from 0 to 1000000"
        raise refuse("argument.number", "/max_iterations", repr(max_iterations), advice)
    tolerance = number("force_tolerance", force_tolerance)
    limit = number("rotation_limit_rad", rotation_limit_rad)
    if not (0 < tolerance < 1):
        raise refuse("argument.number", "/force_tolerance", tolerance, "force_tolerance must lie between 0 and 1")
    if not limit > 0:
        raise refuse("argument.number", "/rotation_limit_rad", limit, "rotation_limit_rad must be over 0")
    return int(max_iterations), tolerance, limit
