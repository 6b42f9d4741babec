"""Arms that reach through a sliding leaf, stepped half a millisecond at a time, against the exact evaluator.

The leaf follows its plan and its controller as in the stepped walks. The arm is held at a place of the leaf; from there the
pressed way, the strip that reports, the drive that feels a force, and how long the force lasts are counted step by step.
"""

import os
import subprocess

import numpy as np
import pytest
from conftest import ROOT
from test_walk import STEP, Leaves, pressed_at

EXAMPLE = os.environ.get("GATEWRIGHT_WALK_REACH", str(ROOT / "target/release/examples/walk_reach"))
CRUSHING, LASTING, LASTING_AFTER, REST, REST_AFTER = 400.0, 150.0, 0.75, 25.0, 5.0


def asked(count: int) -> list[dict]:
    """Arms, and what the exact evaluator says of them."""
    if not os.path.exists(EXAMPLE):
        pytest.skip("cargo build --release --package sim --example walk_reach makes the program for this")
    done = subprocess.run([EXAMPLE, f"count={count}"], capture_output=True, encoding="utf-8")
    assert done.returncode == 0, done.stderr
    first, *lines = done.stdout.splitlines()
    rows = [dict(zip(first.split(","), line.split(","))) for line in lines]
    return [{name: value if name == "class" else float(value) for name, value in row.items()} for row in rows]


def stepped(rows: list[dict]) -> dict:
    """Works all arms side by side, each with a controller of its own."""
    get = {name: np.array([row[name] for row in rows]) for name in rows[0] if name != "class"}
    plans = [
        {"travel": 4.0, "cruise": row["cruise"], "acceleration": 0.5, "deceleration": 0.3, "set_point": 0.75, "creep": row["creep"]}
        for row in rows
    ]
    leaves = Leaves(plans, {"stopping": get["stopping"], "back": [0.2, 0.2, 0.3]})
    count = len(rows)
    spring = [(row["stiffness"], row["soft"], row["hard"]) for row in rows]
    pressed_by = lambda forces: np.array([pressed_at(one, force) for one, force in zip(spring, forces)])
    full = {name: get[name] for name in ("place", "actuation", "response", "reaction")}
    full |= {"felt_at": pressed_by(get["drive"]), "p150": pressed_by(np.full(count, LASTING)), "p25": pressed_by(np.full(count, REST))}
    full |= {name: np.full(count, np.inf) for name in ("touch", "strip", "drive")}
    full |= {name: np.zeros(count) for name in ("start", "speed", "most", "lasts", "rests")}
    here, now, some = np.array([], dtype=int), {}, None
    for at in range(int(60 / STEP)):
        time = at * STEP
        if at % 500 == 0:
            for name, value in now.items():
                full[name][here] = value
            if some is not None:
                leaves.put(here, some)
            # Nothing happens any more to one who has been held for so long, by a leaf that stands.
            here = np.flatnonzero((time <= full["touch"] + 7) | ~leaves.rest())
            if not len(here):
                break
            now, some = {name: value[here] for name, value in full.items()}, leaves.taken(here)
            some.controller = {**leaves.controller, "stopping": get["stopping"][here]}
        command = np.minimum(now["strip"] + now["response"], now["drive"] + 0.05) + now["reaction"]
        some.step(time, command)
        time += STEP
        new = np.isinf(now["touch"]) & (some.place >= now["place"])
        if new.any():
            # The touch falls within the step: back to it at the speed of its end.
            back = (some.place - now["place"]) / np.maximum(some.speed, 1e-9)
            now["touch"][new], now["start"][new], now["speed"][new] = (time - back)[new], now["place"][new], some.speed[new]
        held = np.isfinite(now["touch"])
        pressed = np.where(held, some.place - now["start"], 0.0)
        for name, felt in (("strip", "actuation"), ("drive", "felt_at")):
            now[name][held & np.isinf(now[name]) & (pressed >= now[felt] - 1e-9)] = time
        np.maximum(now["most"], pressed, out=now["most"])
        for name, limit in (("lasts", "p150"), ("rests", "p25")):
            longer = held & (pressed > now[limit])
            now[name][longer] = time - now["touch"][longer]
    touch, speed, most, lasts, rests = (full[name] for name in ("touch", "speed", "most", "lasts", "rests"))
    return {"time": touch, "speed": speed, "travel": most, "lasts": lasts, "rests": rests, "spring": spring}


def test_arms_stepped():
    rows = asked(1200)
    theirs = stepped(rows)
    counts, odd = {}, []
    for i, ours in enumerate(rows):
        counts[ours["class"]] = counts.get(ours["class"], 0) + 1
        soft, way, hard = theirs["spring"][i]
        travel, lasts, rests = (theirs[name][i] for name in ("travel", "lasts", "rests"))
        force = soft * min(travel, way) + hard * max(travel - way, 0)
        word = "touched within limits"
        if travel > ours["squeeze"]:
            word = "trapped"
        elif force > CRUSHING or lasts > LASTING_AFTER or rests > REST_AFTER:
            word = "touched beyond limits"
        assert abs(ours["time"] - theirs["time"][i]) < 0.003, ours
        assert abs(ours["travel"] - travel) < 0.001, (ours, travel)
        close = min(
            abs(force - CRUSHING) / (hard * 0.001), abs(lasts - LASTING_AFTER) / 0.01, abs(rests - REST_AFTER) / 0.05,
            abs(travel - ours["squeeze"]) / 0.001,
        )
        if word != ours["class"] and close > 1:
            odd.append((ours, word, travel, force, lasts, rests))
    assert min(counts.get(word, 0) for word in ("touched within limits", "touched beyond limits", "trapped")) > 20, counts
    assert not odd, odd[:5]
