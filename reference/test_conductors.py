"""The cheapest conductors of random trees against mixed-integer programming (scipy, HiGHS): the same cost to the hundredth."""

import json
import random

import pytest
from conductors_by_milp import OHMS, VOLTS, least_cost, lost, random_tree, write
from conftest import run

TREES = 40


def hundredths(price: str) -> int:
    return round(float(price.split()[0]) * 100)


def chosen(tree: dict, folder) -> dict:
    write(tree, folder)
    done = run("choose", "conductors", str(folder), "--json")
    assert done.returncode in (0, 1), done.stderr
    return json.loads(done.stdout)


@pytest.mark.parametrize("seed", range(TREES))
def test_the_cost_is_the_least_by_an_independent_solver(seed, tmp_path):
    chance = random.Random(seed)
    tree = random_tree(chance, 3 + seed % 18)
    choice = chosen(tree, tmp_path)
    theirs = least_cost(tree)
    assert choice["proved"] and choice["by_price"] and choice["missing"] == []
    assert hundredths(choice["chosen"]) == theirs
    sizes = [float(cable["chosen"].split()[0]) for cable in choice["cables"]]
    for device, least in enumerate(tree["least"]):
        assert VOLTS - lost(tree, device, sizes) >= least - 1e-6
    assert hundredths(choice["today"]) == sum(hundredths(cable["cost_today"]) for cable in choice["cables"])


def test_what_is_written_back_needs_no_other_choice(tmp_path):
    tree = random_tree(random.Random(99), 15)
    first = chosen(tree, tmp_path)
    assert first["write"]
    assert run("choose", "conductors", str(tmp_path), "--write").returncode == 0
    again = json.loads(run("choose", "conductors", str(tmp_path), "--json").stdout)
    assert again["write"] == [] and again["today"] == again["chosen"] == first["chosen"]
    assert run("choose", "conductors", str(tmp_path), "--write").stdout.count("Nothing to write") == 1


def test_where_no_conductor_helps_it_says_so(tmp_path):
    tree = random_tree(random.Random(7), 8)
    best = VOLTS - lost(tree, 0, [max(OHMS)] * len(tree["lengths"]))
    tree["least"][0] = round(best + 0.3, 3)
    choice = chosen(tree, tmp_path)
    assert [line for line in choice["unmended"] if line.startswith("d-0: ")]
