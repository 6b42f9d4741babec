"""Random jobs of cutting, as site files, and the least cost by mixed-integer programming (scipy, HiGHS) over every pattern.

All lengths are whole sixteenths of an inch, all prices whole cents, so that nothing is rounded on either side.
"""

import random
from pathlib import Path

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import coo_array

INCH = 16


def random_job(chance: random.Random, *, kinds: int, pieces: int, stocks: int, related: bool = False) -> dict:
    """Pieces of so many lengths from so many stocks; related prices follow the length, others do not."""
    bars = []
    for length in chance.sample(range(10, 25), stocks):
        fair = 475 * length if related else chance.randint(300, 600) * length
        bars.append({"length": 12 * INCH * length, "price": fair})
    longest = max(bar["length"] for bar in bars)
    lengths = chance.sample(range(longest // 8, longest * 6 // 10), kinds)
    counts = [1] * kinds
    for _ in range(pieces - kinds):
        counts[chance.randrange(kinds)] += 1
    return {"bars": bars, "lengths": sorted(lengths, reverse=True), "counts": counts, "kerf": chance.choice([0, 2])}


def with_off_cuts(chance: random.Random, job: dict) -> dict:
    """A few shorter lengths lie there already; the longest stock can be had only so often."""
    longest = max(job["bars"], key=lambda bar: bar["length"])
    there = {"length": longest["length"] * 2 // 3, "price": 0, "count": chance.randint(1, 3)}
    return {**job, "bars": [*job["bars"], there]}


def inches(sixteenths: int) -> str:
    return f"{sixteenths / INCH:.10g} in"


def table(number: int, job: dict) -> str:
    """The job as a table of the site file."""
    bars = ", ".join(
        f'{{ length = "{inches(bar["length"])}", on_hand = {bar["count"]} }}'
        if bar["price"] == 0
        else f'{{ length = "{inches(bar["length"])}", price = "{bar["price"] // 100}.{bar["price"] % 100:02} USD" }}'
        for bar in job["bars"]
    )
    pieces = ", ".join(
        f'{{ what = "piece {at}", length = "{inches(length)}", count = {count} }}'
        for at, (length, count) in enumerate(zip(job["lengths"], job["counts"], strict=True))
    )
    return (
        f'[[bar_stock]]\nid = "job-{number}"\nwhat = "tube"\nkerf = "{inches(job["kerf"])}"\nend_trim = "0 in"\n'
        f"bar = [{bars}]\npiece = [{pieces}]\n"
    )


def write(jobs: list[dict], folder: Path) -> Path:
    head = '[site]\nname = "Cutting"\ncode_basis = "us"\n'
    text = head + "".join(table(number, job) for number, job in enumerate(jobs))
    (folder / "site.toml").write_text(text, encoding="utf-8")
    return folder


def patterns(room: int, lengths: list[int], kerf: int, most: list[int]) -> list[list[int]]:
    """Every way to fill a bar to which no further piece can be added."""
    found, chosen = [], [0] * len(lengths)

    def fill(at: int, left: int) -> None:
        if at == len(lengths):
            if all(length + kerf > left or chosen[i] == most[i] for i, length in enumerate(lengths)):
                found.append(chosen.copy())
            return
        step = lengths[at] + kerf
        for count in range(min(most[at], left // step), -1, -1):
            chosen[at] = count
            fill(at + 1, left - count * step)
        chosen[at] = 0

    fill(0, room + kerf)  # behind the last piece no cut is needed where it ends with the bar
    return found


def least_cost(job: dict, limit: float | None = None) -> int | None:
    """The least that all pieces cost, in cents; none where so many seconds are not enough."""
    columns = [
        (bar, pattern)
        for bar in job["bars"]
        for pattern in patterns(bar["length"], job["lengths"], job["kerf"], job["counts"])
    ]
    rows, places, values = [], [], []
    for column, (_, pattern) in enumerate(columns):
        for row, count in enumerate(pattern):
            if count:
                rows.append(row), places.append(column), values.append(count)
    demand = LinearConstraint(
        coo_array((values, (rows, places)), shape=(len(job["lengths"]), len(columns))).tocsr(), lb=job["counts"]
    )
    limits = [demand]
    for bar in job["bars"]:
        if "count" in bar:
            of_it = np.array([float(other is bar) for other, _ in columns])
            limits.append(LinearConstraint(of_it, ub=bar["count"]))
    price = np.array([bar["price"] for bar, _ in columns], dtype=float)
    options = {} if limit is None else {"time_limit": limit}
    solved = milp(
        price, constraints=limits, integrality=np.ones(len(columns)), bounds=Bounds(0, np.inf), options=options
    )
    if limit is not None and solved.status == 1:
        return None
    assert solved.status == 0, solved.message
    return round(solved.fun)


def cost_of(job: dict, cuts: list[dict]) -> int:
    """What a plan costs, in cents, once it is seen to give every piece and to overfill no bar."""
    left, cost = dict(enumerate(job["counts"])), 0
    for cut in cuts:
        length = round(cut["length"]["si"] / 0.0254 * INCH)
        bar = next(bar for bar in job["bars"] if bar["length"] == length and (bar["price"] == 0) == cut["there"])
        used = -job["kerf"]
        for piece in cut["pieces"]:
            at = int(piece["for"].split()[1])
            left[at] -= cut["times"]
            used += job["lengths"][at] + job["kerf"]
        assert used <= length, cut
        if "count" in bar:
            bar["count"] -= cut["times"]
            assert bar["count"] >= 0, cut
        cost += cut["times"] * bar["price"]
    assert all(count == 0 for count in left.values()), left
    return cost
