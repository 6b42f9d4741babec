"""Two thousand vehicles at gates drawn at random: stopping places that nothing watches, looked for place by place.

Everything here is areas in plan by another library: the leaf is the area that it sweeps, a part of a vehicle a rectangle, a
detector sees what covers or overlaps its field. No intervals are joined; each place is tried for itself, many in one call, and
the ends of the longest stretch are halved down. Lines along the lane are in the frame of the vehicle: what lies across
the lane goes back by as much as the vehicle's front has come.
"""

import json
import os
import subprocess

import numpy as np
import pytest
import shapely
from conftest import ROOT
from shapely import LineString, Polygon, box, union_all

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


def lies(part: dict, front: np.ndarray, facing: int) -> tuple:
    """Where a part lies in y."""
    if facing > 0:
        return front - part["to"], front - part["from"]
    return front + part["from"], front + part["to"]


def area(part: dict, middle: float, front: np.ndarray, facing: int):
    low, high = lies(part, front, facing)
    return shapely.box(middle - part["width"] / 2, low, middle + part["width"] / 2, high)


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
        u, v = np.array([(0, -half), (hinged["length"], -half), (hinged["length"], half), (0, half)]).T
        angles = hinged["open"] * np.arange(181)[:, None] / 180
        x, y = u * np.cos(angles) - v * np.sin(angles), u * np.sin(angles) + v * np.cos(angles)
        pieces.extend(shapely.polygons(np.stack([hinged["pivot"] + hinged["toward"] * x, leaf["side"] * y], axis=-1)))
    return union_all(pieces)


def at_height(leaf: dict, part: dict) -> bool:
    if leaf["kind"] == "arm":
        return part["top"] > leaf["bottom"]
    return part["top"] > leaf["bottom"] and part["bottom"] < leaf["top"]


def touches(world: dict, over, middle: float, facing: int, closing: bool):
    """At which fronts the leaf would touch a vehicle."""
    leaf = world["leaf"]
    met = [part for part in world["parts"] if at_height(leaf, part) and over.intersects(area({**part, "from": -FAR, "to": FAR}, middle, 0.0, 1))]

    def at(front: np.ndarray) -> np.ndarray:
        if not met:
            return np.zeros(front.shape, bool)
        clear = np.zeros(front.shape, bool)
        if not closing:
            half = leaf["thickness"] / 2
            beyond = [lies(part, front, facing) for part in world["parts"]]
            if leaf["side"] > 0:
                clear = np.min([low for low, _ in beyond], axis=0) < half
            if leaf["side"] < 0:
                clear = np.max([high for _, high in beyond], axis=0) > -half
        if leaf["kind"] != "swing":
            whole = {**met[0], "from": min(part["from"] for part in met), "to": max(part["to"] for part in met)}
            low, high = lies(whole, front, facing)
            return ~clear & (over.bounds[1] <= high) & (over.bounds[3] >= low)
        return ~clear & np.any([shapely.intersects(over, area(part, middle, front, facing)) for part in met], axis=0)

    return at


def stretches(parts: list[dict], facing: int):
    """The parts as lines along the lane, joined where they touch, of a vehicle whose front is at zero."""
    return union_all([LineString([(0, low), (0, high)]) for low, high in (lies(part, 0.0, facing) for part in parts)])


def lines(low: np.ndarray, high: np.ndarray) -> np.ndarray:
    """Lines along the lane."""
    return shapely.linestrings(np.stack([np.zeros((*low.shape, 2)), np.stack([low, high], axis=-1)], axis=-1))


def sees(world: dict, detector: dict, middle: float, facing: int):
    """At which fronts a detector sees a vehicle; nothing where it never does."""
    least, height, parts = detector["least"], detector["height"], world["parts"]
    if detector["kind"] == "loop":
        (left, near), (right, far) = detector["spots"]
        over = []
        for part in parts:
            x = min(right, middle + part["width"] / 2) - max(left, middle - part["width"] / 2)
            if part["metal"] and part["bottom"] <= height and x >= min(part["width"], right - left) / 2:
                over.append(part)
        if not over:
            return None
        metal = stretches(over, facing)
        return lambda front: shapely.length(shapely.intersection(metal, lines(near - front, far - front))) >= min(least, far - near) - 1e-9
    level = [part for part in parts if part["bottom"] <= height - least / 2 and part["top"] >= height + least / 2]
    if not level:
        return None
    lane = stretches(level, facing)
    if detector["kind"] == "beam":
        crossing = LineString(detector["spots"]).intersection(LineString([(middle, -FAR), (middle, FAR)]))
        if crossing.is_empty:
            return None
        around = lane.buffer(1e-9)
        shapely.prepare(around)
        return lambda front: shapely.covers(around, lines(crossing.y - least / 2 - front, crossing.y + least / 2 - front))
    half = min(part["width"] for part in parts) / 2
    field = Polygon(detector["spots"]).intersection(box(middle - half, -FAR, middle + half, FAR))
    if field.is_empty:
        return None
    _, near, _, far = field.bounds
    each = shapely.get_parts(lane)[:, None]
    return lambda front: np.any(shapely.length(shapely.intersection(each, lines(near - front, far - front))) >= least - 1e-9, axis=0)


def unwatched(world: dict, over, middle: float, facing: int, closing: bool):
    """At which fronts a vehicle would be touched and is not seen."""
    touched = touches(world, over, middle, facing, closing)
    watch = [look for detector in world["detectors"] if (look := sees(world, detector, middle, facing))]

    def at(front: np.ndarray) -> np.ndarray:
        bad = touched(front)
        for look in watch:
            bad[bad] = ~look(front[bad])
        return bad

    return at


def longest(bad) -> tuple[float, float, float]:
    """The longest stretch of fronts for which `bad` holds, its ends halved down: length, from, to."""
    fronts = -30.0 + np.arange(int(2 * 30 / STEP) + 1) * STEP
    holds = bad(fronts).astype(int)
    # A stretch that has not ended where the trying ends is none.
    begins, ends = (fronts[np.flatnonzero(np.diff(holds, prepend=0) == 1)], fronts[np.flatnonzero(np.diff(holds) == -1)])
    begins = begins[: len(ends)]
    if not len(begins):
        return 0.0, 0.0, 0.0
    low, high = edges(bad, begins - STEP, begins), edges(bad, ends + STEP, ends)
    best = np.argmax(high - low)
    return high[best] - low[best], low[best], high[best]


def edges(bad, outside: np.ndarray, inside: np.ndarray) -> np.ndarray:
    for _ in range(14):
        half = (outside + inside) / 2
        held = bad(half)
        outside, inside = np.where(held, outside, half), np.where(held, half, inside)
    return inside


def test_the_stretches_that_nothing_watches_are_those_found_place_by_place():
    open_ones = 0
    for seed, world in enumerate(worlds()):
        over = swept(world["leaf"])
        shapely.prepare(over)
        worst = world["worst"]
        middles = [world["middle"], world["middle"] - world["play"], world["middle"] + world["play"]]
        tried = {(middles[seed % 3], 1 if seed % 2 else -1, world["leaf"]["kind"] != "swing" or seed % 5 > 1)}
        if worst:
            open_ones += 1
            reported = (worst["middle"], worst["facing"], worst["closing"])
            tried.add(reported)
        for middle, facing, closing in tried:
            found, low, high = longest(unwatched(world, over, middle, facing, closing))
            # A turning leaf is taken to sweep a little more than its corners do: never less.
            extra = SLACK if world["leaf"]["kind"] != "swing" else 0.12
            if found > 2 * SLACK:
                assert worst, (seed, found, low, high)
                assert worst["to"] - worst["from"] >= found - SLACK, (seed, found, low, high, worst)
            if worst and (middle, facing, closing) == reported and worst["to"] - worst["from"] > extra + STEP + SLACK:
                assert worst["to"] - worst["from"] <= found + extra, (seed, found, low, high, worst)
    assert 300 < open_ones < WORLDS - 100, open_ones
