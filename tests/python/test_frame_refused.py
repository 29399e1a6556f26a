# SPDX-License-Identifier: BSD-3-Clause
"""Frames, loads and options that are refused, with code and place. No source is needed."""

from __future__ import annotations

from typing import Any

import coverframe as cf
import numpy as np
import pytest
from coverframe.frame import Frame, NodeSpring, Spring, StrapRun, solve, solve_many, tension_straps
from frames import TWO, beam, braced_upright


def codes(refused: pytest.ExceptionInfo[cf.InputError]) -> list[str]:
    return [problem.code for problem in refused.value.problems]


@pytest.mark.parametrize(
    ("changes", "code", "where"),
    [
        ({"nodes_m": [[0, 0, 0]] * 2, "members": [[0, 1]], "held": None}, "frame.member.length", "/frame/members/0"),
        ({"members": [[0, 1], [1, 0]], "nodes_m": TWO, "held": None}, "frame.member.doubled", "/frame/members/1"),
        ({"members": [[0, 9]], "nodes_m": TWO, "held": None}, "frame.node.unused", "/frame/nodes/1"),
        ({"nodes_m": np.full((9, 3), np.nan)}, "frame.node.finite", "/frame/nodes/0"),
        ({"members": np.empty((0, 2))}, "frame.empty", "/frame"),
        ({"axial_stiffness_n": 0.0}, "frame.member.stiffness", "/frame/members/0/axial_stiffness"),
        ({"ei_level_n_m2": 0.0}, "frame.member.stiffness", "/frame/members/0/bending/EI_level"),
        ({"free_length_m": -1.0}, "frame.member.stiffness", "/frame/members/0/free_length"),
        ({"gj_n_m2": np.inf}, "frame.member.stiffness", "/frame/members/0/bending/GJ"),
        ({"kind": "rope"}, "argument.choice", "/kind"),
        ({"kind": []}, "argument.shape", "/kind"),
        ({"gj_n_m2": []}, "argument.shape", "/gj_n_m2"),
        ({"gj_n_m2": [1e3] * 7}, "argument.shape", "/gj_n_m2"),
        ({"spring_to_n_m_per_rad": []}, "argument.shape", "/spring_to_n_m_per_rad"),
        ({"spring_to_n_m_per_rad": -1.0}, "frame.member.stiffness", "/frame/members/0/spring_to"),
        ({"expansion_per_k": np.inf}, "frame.member.stiffness", "/frame/members/0/expansion"),
        ({"arm_to_m": [0, 0]}, "argument.shape", "/arm_to_m"),
        ({"arm_to_m": [-0.25, 0, 0]}, "frame.member.length", "/frame/members/0"),
        ({"springs": [3]}, "argument.choice", "/springs"),
        ({"springs": [NodeSpring(node=9)]}, "frame.spring.node", "/frame/springs/0"),
        (
            {"springs": [NodeSpring(node=1, along_n_per_m=[0, 0, -1])]},
            "frame.spring.stiffness",
            "/frame/springs/0/stiffness/2",
        ),
        ({"node_names": 5}, "argument.choice", "/node_names"),
        ({"kind": ["pole", "strap"]}, "argument.shape", "/kind"),
        ({"held": ["ux", "sideways"] + [""] * 7}, "argument.choice", "/held/1"),
        ({"held": np.zeros((9, 3), dtype=bool)}, "argument.shape", "/held"),
        ({"held": np.zeros((9, 6))}, "argument.truth", "/held"),
        ({"held": True}, "argument.shape", "/held"),
        ({"nodes_m": [[0, 0], [1, 0]]}, "argument.shape", "/nodes_m"),
        ({"nodes_m": [[0, 0, 0], [1, 0]]}, "argument.shape", "/nodes_m"),
        ({"members": [[0.5, 1.0]]}, "argument.number", "/members"),
        ({"members": [["a", "b"]]}, "argument.number", "/members"),
        ({"spring_from_n_m_per_rad": "stiff"}, "argument.number", "/spring_from_n_m_per_rad"),
        ({"spring_from_n_m_per_rad": [0, 1]}, "argument.shape", "/spring_from_n_m_per_rad"),
        ({"node_names": ["a"]}, "argument.shape", "/node_names"),
        ({"member_names": "ridge"}, "argument.choice", "/member_names"),
        ({"axial_stiffness_n": "30 kPa"}, "quantity.dimension", "/axial_stiffness_n"),
    ],
)
def test_a_frame_that_is_not_sound_is_refused(changes: dict[str, Any], code: str, where: str) -> None:
    with pytest.raises(cf.InputError) as refused:
        beam(**changes)
    assert (code, where) in [(problem.code, problem.where) for problem in refused.value.problems]


def test_one_mistake_is_one_problem() -> None:
    with pytest.raises(cf.InputError) as refused:
        Frame(nodes_m=[[1, 1, 1], [1, 1, 1]], members=[[0, 1]], kind="strap", axial_stiffness_n=1e5)
    assert codes(refused) == ["frame.member.length"]
    with pytest.raises(cf.InputError) as refused:
        Frame(nodes_m=np.eye(2, 3), members=[[0, 1], [1, 1e300]], kind="strap", axial_stiffness_n=1e5)
    assert codes(refused) == ["frame.member.node"]


def test_all_problems_come_at_once() -> None:
    with pytest.raises(cf.InputError) as refused:
        beam(kind="rope", held=True, weight_n_per_m=[1, 2], node_names=["a"])
    assert codes(refused) == ["argument.choice", "argument.shape", "argument.shape", "argument.shape"]
    with pytest.raises(cf.InputError) as refused:
        Frame(nodes_m=[[0, 0, 0], [0, 0, 0], [5, 5, 5]], members=[[0, 1], [1, 7]], kind="strap", axial_stiffness_n=-1.0)
    assert codes(refused) == [
        "frame.node.unused",
        "frame.member.length",
        "frame.member.stiffness",
        "frame.member.node",
    ]


@pytest.mark.parametrize(
    ("arguments", "code"),
    [
        ({"forces_n": np.zeros((8, 3))}, "frame.loads.size"),
        ({"forces_n": np.zeros((2, 9, 3))}, "frame.loads.size"),
        ({"forces_n": np.full((9, 3), np.inf)}, "frame.loads.finite"),
        ({"start": np.zeros((9, 3))}, "frame.start.size"),
        ({"start": np.full((9, 6), np.nan)}, "frame.start.size"),
        ({"springs": [Spring(node=9, stiffness_n_per_m=[1, 1, 1])]}, "frame.loads.finite"),
        ({"max_iterations": -1}, "argument.number"),
        ({"max_iterations": 2.5}, "argument.number"),
        ({"force_tolerance": 0.0}, "argument.number"),
        ({"rotation_limit_rad": np.nan}, "argument.number"),
    ],
)
def test_loads_and_options_that_do_not_fit_are_refused(arguments: dict[str, Any], code: str) -> None:
    with pytest.raises(cf.InputError) as refused:
        solve(beam(), **arguments)
    assert codes(refused) == [code]


def test_other_refusals() -> None:
    with pytest.raises(cf.InputError) as refused:
        solve_many(beam(), forces_n=np.zeros((9, 3)))
    assert codes(refused) == ["frame.loads.size"] and "solve takes n by 3" in str(refused.value)
    with pytest.raises(cf.InputError) as refused:
        solve_many(beam(), forces_n=None)
    assert codes(refused) == ["argument.number"]
    forces = np.zeros((3, 9, 3))
    forces[2, 1, 0] = np.nan
    with pytest.raises(cf.InputError) as refused:
        solve_many(beam(), forces_n=forces)
    assert refused.value.where == "/forces_n/2/1/0"
    for threads in (0, 1.5, True):
        with pytest.raises(cf.InputError):
            solve_many(beam(), forces_n=np.zeros((1, 9, 3)), threads=threads)  # type: ignore[arg-type]
    for stiffness in ([[1, 2, 0], [0, 1, 0], [0, 0, 1]], [-1, 0, 0], [np.nan, 0, 0]):
        with pytest.raises(cf.InputError) as refused:
            Spring(node=0, stiffness_n_per_m=stiffness)
        assert codes(refused) == ["frame.spring.stiffness"]
    wrong = (
        ((0,), 5.0, "frame.run"),
        ((1, 99), 5.0, "frame.run"),
        ((), 5.0, "frame.run"),
        ((1,), -1.0, "frame.strap.push"),
        ((1, 1), 5.0, "frame.run.shared"),
    )
    for members, tension, code in wrong:
        with pytest.raises(cf.InputError) as refused:
            tension_straps(braced_upright(), runs=[StrapRun("a", members, tension)])
        assert codes(refused) == [code]
    with pytest.raises(cf.InputError) as refused:
        beam().node("mast")
    assert codes(refused) == ["argument.choice"]
    assert braced_upright().node("stern") == 5 and braced_upright().member("U1") == 0
