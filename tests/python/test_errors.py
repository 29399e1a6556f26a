# SPDX-License-Identifier: BSD-3-Clause
from __future__ import annotations

import pickle

import coverframe as cf
import pytest

FIRST = cf.Problem("site.ground_snow.load", "/site/ground_snow/load", "1.5", "give the load with its unit")
SECOND = cf.Problem("film.thickness", "/film/thickness", "", "the film has no thickness")


def test_an_input_error_carries_every_problem() -> None:
    error = cf.InputError([FIRST, SECOND])
    assert error.problems == [FIRST, SECOND]
    assert (error.code, error.where) == (FIRST.code, FIRST.where)
    assert str(error).splitlines() == [
        "site.ground_snow.load: give the load with its unit (/site/ground_snow/load)",
        "film.thickness: the film has no thickness (/film/thickness)",
    ]


def test_the_list_of_problems_is_the_callers_own() -> None:
    error = cf.InputError([FIRST])
    error.problems.append(SECOND)
    assert error.problems == [FIRST]


def test_errors_are_caught_by_their_bases() -> None:
    assert issubclass(cf.InputError, cf.Error) and issubclass(cf.InputError, ValueError)
    assert issubclass(cf.StateError, cf.Error) and not issubclass(cf.StateError, ValueError)


@pytest.mark.parametrize("protocol", range(pickle.HIGHEST_PROTOCOL + 1))
def test_errors_travel_between_processes(protocol: int) -> None:
    error = pickle.loads(pickle.dumps(cf.InputError([FIRST, SECOND]), protocol))
    assert error.problems == [FIRST, SECOND]
    state = pickle.loads(pickle.dumps(cf.StateError("frame.solution.unusable", "did not converge"), protocol))
    assert (state.code, str(state)) == ("frame.solution.unusable", "did not converge")


def test_an_input_error_needs_a_problem() -> None:
    with pytest.raises(TypeError):
        cf.InputError([])
