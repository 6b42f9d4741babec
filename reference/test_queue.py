"""Days of the queue against two other simulators, ciw for a bare server and simpy for the whole gate, and against closed forms."""

import json
import os
import subprocess

import ciw
import numpy as np
import pytest
import queue_by_simpy
from conftest import ROOT
from scipy import special, stats

EXAMPLE = os.environ.get("GATEWRIGHT_QUEUE", str(ROOT / "target/release/examples/queue"))
GROUPS = 16


def ours(**given) -> dict:
    if not os.path.exists(EXAMPLE):
        pytest.skip("cargo build --release --package sim --example queue makes the program for this")
    words = [f"{name}={value}" for name, value in given.items()]
    done = subprocess.run([EXAMPLE, *words], capture_output=True, check=True, encoding="utf-8")
    return json.loads(done.stdout)


def interval(figures: np.ndarray) -> tuple[float, float]:
    """Mean of some groups, and half of the interval at 95 %."""
    return figures.mean(), stats.t.ppf(0.975, len(figures) - 1) * figures.std(ddof=1) / np.sqrt(len(figures))


def same(mine: list[float], theirs: tuple[float, float]) -> bool:
    """Within one and a half times both intervals together: one honest pair in some hundreds lies farther apart."""
    return abs(mine[0] - theirs[0]) <= 1.5 * np.hypot(mine[1], theirs[1]) + 1e-12


@pytest.mark.parametrize("spread", [0.0, 20.0])
def test_a_bare_server_is_the_one_of_another_simulator_and_of_the_closed_form(spread):
    rate, service = 120 / 3600, 20.0
    hours = ours(world="bare", rate=120, service=service, spread=spread, days=6400)["hours"][4:]
    exact = rate * (service**2 + spread**2) / (2 * (1 - rate * service))
    waits = []
    for seed in range(8):
        ciw.seed(seed)
        served = ciw.dists.Exponential(1 / service) if spread else ciw.dists.Deterministic(service)
        network = ciw.create_network(
            arrival_distributions=[ciw.dists.Exponential(rate)], service_distributions=[served], number_of_servers=[1]
        )
        simulation = ciw.Simulation(network)
        simulation.simulate_until_max_time(40 * 3600)
        waits.append(np.mean([record.waiting_time for record in simulation.get_all_records() if record.arrival_date > 7200]))
    for hour in hours:
        assert abs(hour["wait"][0] - exact) <= 2 * hour["wait"][1]
        assert same(hour["wait"], interval(np.array(waits)))


@pytest.mark.parametrize(("room", "one_each"), [(1, 0), (0, 0), (1, 1)])
def test_the_whole_gate_is_the_one_of_processes_that_wait_for_events(room, one_each):
    mine = ours(world="gate", room=room, one_each=one_each, days=16000)["whole"]
    days = queue_by_simpy.days(224, bool(room), bool(one_each))
    names = list(days[0])
    sums = np.array([[day[name] for name in names] for day in days]).reshape(GROUPS, -1, len(names)).sum(axis=1)
    of = dict(zip(names, sums.T))
    seconds = 224 / GROUPS * queue_by_simpy.HOUR * len(queue_by_simpy.ARRIVALS)
    for name in ("standing", "in_road"):
        assert same(mine[name], interval(of[name] / seconds)), name
    for name in ("wait", "through", "tailgated", "shared"):
        assert same(mine[name], interval(of[name] / of["vehicles"])), name
    for name in ("openings", "reversals"):
        assert same(mine[name], interval(of[name] * queue_by_simpy.HOUR / seconds)), name


@pytest.mark.parametrize(("load", "servers"), [(0.5, 1), (1.8, 3), (4.8, 6), (90.0, 100), (0.999, 1)])
def test_erlangs_formulas_are_ratios_of_poisson_shares(calc, load, servers):
    blocked = stats.poisson.pmf(servers, load) / stats.poisson.cdf(servers, load)
    assert calc("lines-blocked", load=load, servers=servers)["blocked"] == pytest.approx(blocked, rel=1e-9)
    delayed = blocked / (1 - load / servers * (1 - blocked))
    shared = calc("shared-queue", arrivals=f"{load * 60} per hour", service="60 s", servers=servers, asked="30 s")
    assert shared["delayed"] == pytest.approx(delayed, rel=1e-9)
    idle = 1 / (np.exp(load) * special.gammaincc(servers, load) + load**servers / special.factorial(servers) * servers / (servers - load))
    assert shared["idle"] == pytest.approx(idle, rel=1e-7)
    assert shared["longer"] == pytest.approx(delayed * np.exp(-(servers - load) / 2), rel=1e-9)


def test_a_full_lane_is_the_balance_of_its_states(calc):
    load, room = 1.3, 6
    states = room + 1
    rates = np.diag(np.full(room, load), 1) + np.diag(np.ones(room), -1)
    rates -= np.diag(rates.sum(axis=1))
    shares = np.linalg.lstsq(np.vstack([rates.T, np.ones(states)]), np.append(np.zeros(states), 1.0), rcond=None)[0]
    found = calc("full-lane", load=load, room=room)
    assert found["turned_away"] == pytest.approx(shares[-1], rel=1e-9)
    assert found["idle"] == pytest.approx(shares[0], rel=1e-9)


def test_the_same_seed_makes_the_same_days_on_any_number_of_threads():
    one, many = (ours(world="gate", days=160, threads=threads) for threads in (1, 4))
    assert {**one, "seconds": 0} == {**many, "seconds": 0}
    assert ours(world="gate", days=160, seed=2)["whole"] != one["whole"]
