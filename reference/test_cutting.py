"""Cutting of random jobs against mixed-integer programming over every pattern (scipy, HiGHS): the same cost to the cent."""

import copy
import json
import random

import pytest
from conftest import run
from cutting_by_milp import cost_of, least_cost, random_job, with_off_cuts, write

JOBS = 100


@pytest.fixture(scope="module")
def jobs() -> list[dict]:
    made = []
    for seed in range(JOBS):
        chance = random.Random(seed)
        job = random_job(
            chance, kinds=3 + seed % 6, pieces=12 + seed % 30, stocks=1 + seed % 3, related=seed % 2 == 0
        )
        made.append(with_off_cuts(chance, job) if seed % 4 == 3 else job)
    return made


@pytest.fixture(scope="module")
def sheets(jobs, tmp_path_factory) -> list[dict]:
    done = run("choose", "cuts", str(write(jobs, tmp_path_factory.mktemp("cutting"))), "--json")
    assert done.returncode in (0, 1), done.stderr
    return json.loads(done.stdout)


@pytest.mark.parametrize("number", range(JOBS))
def test_the_cost_is_the_least_by_an_independent_solver(number, jobs, sheets):
    job, sheet = jobs[number], sheets[number]
    assert sheet["stock"] == f"job-{number}" and sheet["least"], sheet["proof"]
    assert cost_of(copy.deepcopy(job), sheet["cuts"]) == least_cost(job)


def test_reels_are_cut_like_bars(tmp_path):
    """Runs of 90, 80, 70, 60, 50 and 40 ft with a foot at each end, from reels of 100 and 250 ft."""
    runs = [90, 80, 70, 60, 50, 40]
    prices = {100: 4100, 250: 9900}
    job = {
        "bars": [{"length": 12 * 16 * long, "price": price} for long, price in prices.items()],
        "lengths": [12 * 16 * (run + 2) for run in runs],
        "counts": [1] * len(runs),
        "kerf": 0,
    }
    cables = "".join(
        f'[[cable]]\nid = "w-{at}"\nfrom = "source"\nto = "box"\nlength = "{long} ft"\npart = "pair"\n'
        for at, long in enumerate(runs)
    )
    text = (
        '[site]\nname = "Reels"\ncode_basis = "us"\nparts = ["parts.toml"]\n'
        '[[supply]]\nid = "source"\nkind = "power supply"\n[[enclosure]]\nid = "box"\n' + cables + "[[cable_reels]]\n"
        'id = "reels"\nof = "pair"\nspare_each_end = "1 ft"\n'
        'reel = [{ length = "100 ft", price = "41.00 USD" }, { length = "250 ft", price = "99.00 USD" }]\n'
    )
    (tmp_path / "site.toml").write_text(text, encoding="utf-8")
    (tmp_path / "parts.toml").write_text('[[cable]]\nid = "pair"\nsize = "18 AWG"\n', encoding="utf-8")
    done = run("choose", "reels", str(tmp_path), "--json")
    assert done.returncode == 0, done.stdout + done.stderr
    (sheet,) = json.loads(done.stdout)
    for cut in sheet["cuts"]:
        for piece in cut["pieces"]:
            piece["for"] = f"piece {piece['for'].split('-')[1]}"
    assert cost_of(copy.deepcopy(job), sheet["cuts"]) == least_cost(job)


def test_a_piece_that_no_bar_gives_is_said(tmp_path):
    chance = random.Random(7)
    job = random_job(chance, kinds=3, pieces=6, stocks=1)
    job["lengths"][0] = job["bars"][0]["length"] + 1
    done = run("choose", "cuts", str(write([job], tmp_path)), "--json")
    assert done.returncode == 1
    (sheet,) = json.loads(done.stdout)
    assert sheet["cuts"] == [] and "piece 0" in sheet["proof"] and "get a longer one" in sheet["proof"]
