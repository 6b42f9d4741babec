"""Two hundred random low-voltage networks against scipy, to a millionth of a volt, and the limit of what can be carried."""

import os
import random
import subprocess

import numpy as np
import pytest
from conftest import ROOT
from network_by_scipy import NETWORKS, as_lines, random_network, solved, with_loads_at

EXAMPLE = os.environ.get("GATEWRIGHT_NETWORK", str(ROOT / "target/release/examples/network"))


def ours(networks: list[dict]) -> list[str]:
    if not os.path.exists(EXAMPLE):
        pytest.skip("cargo build --release --package sim --example network makes the program for this")
    written = "\n".join(as_lines(network) for network in networks)
    done = subprocess.run([EXAMPLE], input=written, capture_output=True, encoding="utf-8")
    assert done.returncode == 0, done.stderr
    lines = done.stdout.splitlines()[1:]
    assert len(lines) == len(networks)
    return lines


def test_voltages_are_those_of_an_independent_root_finder():
    chance = random.Random(20)
    networks = [random_network(chance) for _ in range(NETWORKS)]
    for network, line in zip(networks, ours(networks), strict=True):
        theirs = solved(network)
        assert theirs is not None
        assert np.max(np.abs(np.array([float(word) for word in line.split()]) - theirs)) < 1e-6


def test_the_limit_of_what_can_be_carried_is_where_the_root_finder_loses_its_root():
    chance = random.Random(21)
    heavy = [with_loads_at(random_network(chance), 60.0) for _ in range(40)]
    collapsed = [(network, line.split()) for network, line in zip(heavy, ours(heavy), strict=True) if "collapse" in line]
    assert len(collapsed) >= 20
    for network, (_, _, carried) in collapsed:
        assert solved(with_loads_at(network, 0.98 * float(carried))) is not None
        assert solved(with_loads_at(network, 1.02 * float(carried))) is None
