"""Two thousand vehicles at gates drawn at random: stopping places that nothing watches, looked for place by place.

Everything here is areas in plan by another library: the leaf is the area that it sweeps, a part of a vehicle a rectangle, a
detector sees what covers or overlaps its field. No intervals are joined; each place is tried for itself, and the ends of
the longest stretch are halved down.
"""

import json
import os
import subprocess

import pytest
from conftest import ROOT
from shapely import LineString, Polygon, affinity, box, union_all

EXAMPLE = os.environ.get("GATEWRIGHT_VEHICLE", str(ROOT / "target/release/examples/vehicle"))
WORLDS = 2000
STEP = 0.1
# The leaf is taken to reach 1 mm farther, and fields 1 mm less far.
SLACK = 0.004
FAR = 60.0


def worlds() -> list[dict]:
    if not os.path.exists(EXAMPLE):
        pytest.skip("cargo build --release --package sim --example vehicle makes the program for this")
    done = subprocess.run([EXAMPLE, "from=0", f"count={WORLDS}"], capture_output=True, encoding="utf-8")
    assert done.returncode == 0, done.stderr
    return [json.loads(line) for line in done.stdout.splitlines()]


def lies(part: dict, front: float, facing: int) -> tuple[float, float]:
    """Where a part lies in y."""
    if facing > 0:
        return front - part["to"], front - part["from"]
    return front + part["from"], front + part["to"]


def area(part: dict, middle: float, front: float, facing: int) -> Polygon:
    low, high = lies(part, front, facing)
    return box(middle - part["width"] / 2, low, middle + part["width"] / 2, high)


def swept(leaf: dict):
    """The area that the leaf comes over in plan."""
    half = leaf["thickness"] / 2
    if leaf["kind"] == "slide":
        return box(leaf["closed"], -half, leaf["open"], half)
    if leaf["kind"] == "arm":
        ends = sorted([leaf["pivot"], leaf["pivot"] + leaf["toward"] * leaf["length"]])
        return box(ends[0], -half, ends[1], half)
    pieces = []
    for hinged in leaf["leaves"]:
        closed = box(0, -half, hinged["length"], half)
        for step in range(181):
            turned = affinity.rotate(closed, hinged["open"] * step / 180, origin=(0, 0), use_radians=True)
            turned = affinity.scale(turned, hinged["toward"], leaf["side"], origin=(0, 0))
            pieces.append(affinity.translate(turned, hinged["pivot"], 0))
    return union_all(pieces)


def at_height(leaf: dict, part: dict) -> bool:
    if leaf["kind"] == "arm":
        return part["top"] > leaf["bottom"]
    return part["top"] > leaf["bottom"] and part["bottom"] < leaf["top"]


def touched(world: dict, over, place: tuple, closing: bool) -> bool:
    middle, front, facing = place
    leaf = world["leaf"]
    met = [part for part in world["parts"] if at_height(leaf, part) and over.intersects(area({**part, "from": -FAR, "to": FAR}, middle, 0.0, 1))]
    if not met:
        return False
    if not closing:
        half = leaf["thickness"] / 2
        beyond = [lies(part, front, facing) for part in world["parts"]]
        if leaf["side"] > 0 and min(low for low, _ in beyond) < half:
            return False
        if leaf["side"] < 0 and max(high for _, high in beyond) > -half:
            return False
    if leaf["kind"] != "swing":
        whole = {**met[0], "from": min(part["from"] for part in met), "to": max(part["to"] for part in met)}
        low, high = lies(whole, front, facing)
        return over.bounds[1] <= high and over.bounds[3] >= low
    return any(over.intersects(area(part, middle, front, facing)) for part in met)


def stretches(parts: list[dict], front: float, facing: int):
    """The parts as lines along the lane, joined where they touch."""
    return union_all([LineString([(0, low), (0, high)]) for low, high in (lies(part, front, facing) for part in parts)])


def seen(world: dict, place: tuple) -> bool:
    return any(sees(world, detector, place) for detector in world["detectors"])


def sees(world: dict, detector: dict, place: tuple) -> bool:
    middle, front, facing = place
    least, height, parts = detector["least"], detector["height"], world["parts"]
    if detector["kind"] == "loop":
        (left, near), (right, far) = detector["spots"]
        over = []
        for part in parts:
            x = min(right, middle + part["width"] / 2) - max(left, middle - part["width"] / 2)
            if part["metal"] and part["bottom"] <= height and x >= min(part["width"], right - left) / 2:
                over.append(part)
        if not over:
            return False
        metal = stretches(over, front, facing).intersection(LineString([(0, near), (0, far)]))
        return metal.length >= min(least, far - near) - 1e-9
    level = [part for part in parts if part["bottom"] <= height - least / 2 and part["top"] >= height + least / 2]
    if not level:
        return False
    lane = stretches(level, front, facing)
    if detector["kind"] == "beam":
        crossing = LineString(detector["spots"]).intersection(LineString([(middle, -FAR), (middle, FAR)]))
        return not crossing.is_empty and lane.buffer(1e-9).covers(LineString([(0, crossing.y - least / 2), (0, crossing.y + least / 2)]))
    half = min(part["width"] for part in parts) / 2
    field = Polygon(detector["spots"]).intersection(box(middle - half, -FAR, middle + half, FAR))
    if field.is_empty:
        return False
    depth = LineString([(0, field.bounds[1]), (0, field.bounds[3])])
    lines = getattr(lane, "geoms", [lane])
    return any(line.intersection(depth).length >= least - 1e-9 for line in lines)


def longest(bad) -> tuple[float, float, float]:
    """The longest stretch of fronts for which `bad` holds, its ends halved down: length, from, to."""
    best, run = (0.0, 0.0, 0.0), None
    count = int(2 * 30 / STEP)
    for at in range(count + 1):
        front = -30.0 + at * STEP
        if bad(front):
            run = front if run is None else run
            last = front
        elif run is not None:
            low, high = edge(bad, run - STEP, run), edge(bad, last + STEP, last)
            best, run = max(best, (high - low, low, high)), None
    return best


def edge(bad, outside: float, inside: float) -> float:
    for _ in range(14):
        half = (outside + inside) / 2
        outside, inside = (outside, half) if bad(half) else (half, inside)
    return inside


def test_the_stretches_that_nothing_watches_are_those_found_place_by_place():
    open_ones = 0
    for seed, world in enumerate(worlds()):
        over = swept(world["leaf"])
        worst = world["worst"]
        middles = [world["middle"], world["middle"] - world["play"], world["middle"] + world["play"]]
        tried = {(middles[seed % 3], 1 if seed % 2 else -1, world["leaf"]["kind"] != "swing" or seed % 5 > 1)}
        if worst:
            open_ones += 1
            reported = (worst["middle"], worst["facing"], worst["closing"])
            tried.add(reported)
        for middle, facing, closing in tried:
            found, low, high = longest(lambda front: touched(world, over, (middle, front, facing), closing) and not seen(world, (middle, front, facing)))
            # A turning leaf is taken to sweep a little more than its corners do: never less.
            extra = SLACK if world["leaf"]["kind"] != "swing" else 0.12
            if found > 2 * SLACK:
                assert worst, (seed, found, low, high)
                assert worst["to"] - worst["from"] >= found - SLACK, (seed, found, low, high, worst)
            if worst and (middle, facing, closing) == reported and worst["to"] - worst["from"] > extra + STEP + SLACK:
                assert worst["to"] - worst["from"] <= found + extra, (seed, found, low, high, worst)
    assert 300 < open_ones < WORLDS - 100, open_ones
