# SPDX-License-Identifier: BSD-3-Clause
"""The package under test is the one on the path: the build folder's (PYTHONPATH) or an installed one."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import coverframe as cf
import pytest

REPOSITORY = Path(__file__).resolve().parents[2]


@pytest.fixture(scope="session")
def repository() -> Path:
    return REPOSITORY


@pytest.fixture(scope="session")
def motor_boat_file(repository: Path) -> Path:
    return repository / "examples" / "plans" / "motor_boat.json"


@pytest.fixture
def document(motor_boat_file: Path) -> dict[str, Any]:
    """The demo plan as a dictionary a test may change."""
    loaded: dict[str, Any] = json.loads(motor_boat_file.read_text(encoding="utf-8"))
    return loaded


@pytest.fixture(scope="session")
def assessment(motor_boat_file: Path) -> cf.Assessment:
    return cf.assess(motor_boat_file)
