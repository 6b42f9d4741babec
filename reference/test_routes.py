"""The cheapest ways of random nets against mixed-integer programming (scipy, HiGHS): the same cost to the hundredth."""

import json
import random
import time

import pytest
from conftest import run
from routes_by_milp import cents, least_cost, random_net, write

NETS = 100


def chosen(net: dict, folder) -> dict:
    write(net, folder)
    done = run("choose", "routes", str(folder), "--json")
    assert done.returncode in (0, 1), done.stderr
    return json.loads(done.stdout)


def reaches_all(net: dict, ways: list[tuple[int, int]]) -> bool:
    seen, fresh = {net["goals"][0]}, [net["goals"][0]]
    while fresh:
        at = fresh.pop()
        for way in ways:
            for other in set(way) - {at} if at in way else ():
                if other not in seen:
                    seen.add(other), fresh.append(other)
    return set(net["goals"]) <= seen


@pytest.mark.parametrize("seed", range(NETS))
def test_the_cost_is_the_least_by_an_independent_solver(seed, tmp_path):
    chance = random.Random(seed)
    net = random_net(chance, 9 + seed % 10, 3 + seed % 5)
    choice = chosen(net, tmp_path)
    assert choice["proved"] and choice["missing"] == []
    assert choice["hundredths"] == choice["at_least"] == least_cost(net)
    ways = [tuple(int(at) for at in way["id"].split("-")[1:]) for way in choice["ways"]]
    assert choice["hundredths"] == sum(cents(net, way) for way in ways)
    assert reaches_all(net, ways)


def test_forty_devices_are_proved_in_a_second(tmp_path):
    net = random_net(random.Random(40), 80, 40)
    write(net, tmp_path)
    begun = time.monotonic()
    choice = json.loads(run("choose", "routes", str(tmp_path), "--json").stdout)
    assert choice["proved"] and choice["reached"] == 40
    assert time.monotonic() - begun < 1.0


def test_an_island_is_told(tmp_path):
    net = random_net(random.Random(1), 12, 4)
    lost = net["goals"][-1]
    net["ways"] = [way for way in net["ways"] if lost not in way]
    choice = chosen(net, tmp_path)
    assert not choice["proved"] and choice["cost"] is None
    assert any("do not join" in line for line in choice["missing"])
