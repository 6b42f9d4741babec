"""Ten thousand people past a sliding leaf, stepped half a millisecond at a time, against the exact evaluator.

Everything here is a state machine of its own: the leaf follows its controller by its place and speed, distances come from
clamping, devices count how long they are blocked. Classes are equal but in a band about a limit or a graze; how far the
leaf goes on is equal to a millimeter.
"""

import json
import os
import subprocess
from copy import copy

import numpy as np
import pytest
from conftest import ROOT

EXAMPLE = os.environ.get("GATEWRIGHT_WALK", str(ROOT / "target/release/examples/walk"))
STEP = 0.0005
# A body of 5 m/s goes so far in one step and a little: a graze that one sees and the other does not.
GRAZE = 0.004
COLUMNS = "pass body way behavior depth x slant speed arrives class time part travel force limit gap room lasts rests".split()
HARMLESS = ("untouched", "met the side")


def asked(world: str, count: int) -> tuple[dict, list[dict]]:
    """The world, and scenarios with what the exact evaluator says of them."""
    if not os.path.exists(EXAMPLE):
        pytest.skip("cargo build --release --package sim --example walk makes the program for this")
    done = subprocess.run([EXAMPLE, f"world={world}", f"count={count}"], capture_output=True, encoding="utf-8")
    assert done.returncode == 0, done.stderr
    first, *lines = done.stdout.splitlines()
    rows = []
    for line in lines:
        row = dict(zip(COLUMNS, line.split(",")))
        rows.append({name: value if name in ("behavior", "class") else float(value) for name, value in row.items()})
    return json.loads(first), rows


class Leaves:
    """Many leaves side by side, each with its own plan and command."""

    def __init__(self, plans: list[dict], controller: dict):
        names = ("travel", "cruise", "acceleration", "deceleration", "set_point", "creep")
        self.plan = {name: np.array([plan[name] for plan in plans]) for name in names}
        self.controller, count = controller, len(plans)
        self.place, self.speed = np.zeros(count), np.zeros(count)
        self.phase = np.zeros(count, dtype=int)  # on its plan, braking, pausing, running back, done
        self.until, self.goal = np.full(count, np.inf), np.zeros(count)
        self.last = self.plan["travel"] - self.plan["creep"] ** 2 / (2 * self.plan["deceleration"])

    STATE = ("place", "speed", "phase", "until", "goal")

    def rest(self) -> np.ndarray:
        """Which of them stand for good: at the end of their way, stopped, or back where they should be."""
        ends = ((self.phase == 0) & (self.place >= self.last)) | ((self.phase == 3) & (self.place <= self.goal)) | (self.phase == 4)
        return ends & (self.speed == 0)

    def taken(self, which: np.ndarray) -> "Leaves":
        """Some of them, to be stepped by themselves."""
        some = copy(self)
        some.plan = {name: value[which] for name, value in self.plan.items()}
        for name in (*self.STATE, "last"):
            setattr(some, name, getattr(self, name)[which])
        return some

    def put(self, which: np.ndarray, some: "Leaves") -> None:
        """Puts them back."""
        for name in self.STATE:
            getattr(self, name)[which] = getattr(some, name)

    def step(self, time: float, command: np.ndarray) -> None:
        plan, back, down = self.plan, self.controller["back"], self.controller["stopping"]
        self.phase[(self.phase == 0) & (time >= command)] = 1
        wanted = np.where(plan["travel"] - self.place > plan["set_point"], plan["cruise"], plan["creep"])
        wanted = np.where(self.place >= self.last, 0.0, wanted)
        rate = np.where(wanted > self.speed, plan["acceleration"], plan["deceleration"])
        if back:
            ends = (self.phase == 2) & (time >= self.until)
            self.goal[ends] = np.maximum(self.place[ends] - back[2], 0.0)
            self.phase[ends] = 3
            homing = -np.minimum(back[1], np.sqrt(2 * down * np.maximum(self.place - self.goal, 0.0)))
            wanted = np.where(self.phase == 3, homing, wanted)
            rate = np.where(self.phase == 3, np.where(self.speed < homing, 1e3, plan["acceleration"]), rate)
        stops = (self.phase == 1) | (self.phase == 2) | (self.phase == 4)
        wanted, rate = np.where(stops, 0.0, wanted), np.where(stops, down, rate)
        change = np.clip(wanted - self.speed, -rate * STEP, rate * STEP)
        self.place += (self.speed + 0.5 * change) * STEP
        self.speed += change
        stands = (self.phase == 1) & (self.speed <= 0)
        self.phase[stands] = 2 if back else 4
        self.until[stands] = time + STEP + (back[0] if back else 0)


def sees(device: dict, part: list[float]) -> float:
    """Radius with which a device sees a cylinder; below zero where it does not."""
    _, _, radius, bottom, top = part
    if device["kind"] == "beam":
        half = device["diameter"] / 2
        covered = bottom <= max(device["height"] - half, 0) and top >= device["height"] + half
        return radius - half if covered else -1
    shared = min(top, device["top"]) - max(bottom, device["bottom"])
    return radius - device["smallest"] if shared >= min(device["smallest"], device["top"] - device["bottom"]) else -1


def off_field(corners: np.ndarray, x: np.ndarray, y: np.ndarray) -> np.ndarray:
    """Distance of points from a field without dents; zero inside."""
    side = (..., *[None] * x.ndim)
    (ax, ay), (bx, by) = corners.T[side], np.roll(corners, -1, axis=0).T[side]
    ex, ey, dx, dy = bx - ax, by - ay, x - ax, y - ay
    along = np.clip((dx * ex + dy * ey) / (ex * ex + ey * ey), 0, 1)
    off = np.hypot(dx - along * ex, dy - along * ey).min(axis=0)
    if len(corners) > 2:
        turns = ex * dy - ey * dx
        off[np.all(turns >= 0, axis=0) | np.all(turns <= 0, axis=0)] = 0
    return off


def pressed_at(spring: tuple, force: float) -> float:
    soft, way, hard = spring
    return force / soft if force <= soft * way else way + (force - soft * way) / hard


def feels(world: dict, direction: str, part: list[float]) -> tuple[tuple, list[tuple]]:
    """Spring of the leaf at a cylinder, and travel and delay of what feels it there."""
    edges = [e for e in world["edges"] if direction in e["guards"] and part[4] > e["bottom"] and part[3] < e["top"]]
    spring = (edges[0]["stiffness"], edges[0]["actuation"] + edges[0]["soft"], edges[0]["hard"]) if edges else (world["bare"], 0.0, world["bare"])
    after = [(e["actuation"], e["response"]) for e in edges]
    if world["drive"] and direction in world["drive"]["guards"]:
        after.append((pressed_at(spring, world["drive"]["force"]), world["drive"]["response"]))
    return spring, after + [(np.inf, 0.0)] * (3 - len(after))


class People:
    """Where the cylinders of many bodies are: one entry for each body and cylinder that is asked about."""

    def __init__(self, rows: list[dict], entries: list[tuple]):
        self.of = np.array([entry[0] for entry in entries], dtype=int)
        self.part = np.array([entry[1] for entry in entries], dtype=int)
        self.radius = np.array([entry[2] for entry in entries])
        get = {name: np.array([row[name] for row in rows])[self.of] for name in ("way", "x", "slant")}
        stretch = np.hypot(1, get["slant"])
        ahead, aside = (np.array([entry[at][side] for entry in entries]) for at, side in ((3, 0), (3, 1)))
        # Forward is (slant, way), to the right of it is (way, −slant), each over its length.
        self.x0 = get["x"] + (ahead * get["slant"] + aside * get["way"]) / stretch
        self.y0 = (ahead * get["way"] - aside * get["slant"]) / stretch
        self.slant, self.way = get["slant"], get["way"]

    def at(self, which: np.ndarray, depth: np.ndarray) -> tuple:
        return self.so_deep(which, depth[self.of[which]])

    def so_deep(self, which: np.ndarray, deep: np.ndarray) -> tuple:
        """The same, with the depth of each entry."""
        return self.x0[which] + deep * self.slant[which], self.y0[which] + deep * self.way[which]

    def comes_to(self, which: np.ndarray, depths: np.ndarray, corners: np.ndarray, beyond: float = 0.0) -> np.ndarray:
        """Whose cylinder may come within a box on its straight way between two depths."""
        across = zip(self.so_deep(which, depths[0][self.of[which]]), self.so_deep(which, depths[1][self.of[which]]))
        reach = self.radius[which] + beyond + 1e-6
        each = [(np.minimum(a, b) <= corners[:, at].max() + reach) & (np.maximum(a, b) >= corners[:, at].min() - reach) for at, (a, b) in enumerate(across)]
        return each[0] & each[1]


# Steps after which it is looked at anew who is there.
WINDOW = 200
# Farther off than this nobody grazes anything.
FAR = 0.05


def stepped(world: dict, rows: list[dict]) -> list[dict]:
    """Works the scenarios side by side: of them those who may be seen or touched now, and their leaves."""
    count, leaf = len(rows), world["leaf"]
    paths = [world["passes"][int(row["pass"])] for row in rows]
    bodies = [world["bodies"][int(row["body"])] for row in rows]
    direction = [path["direction"][0] for path in paths]
    sign = np.array([1.0 if word == "closing" else -1.0 for word in direction])
    # After the leaves of all come leaves that nobody meets: who comes later finds the leaf where one of these is.
    leaves = Leaves(paths + world["passes"], world["controller"])
    own = np.array([int(row["pass"]) for row in rows])
    free_leaves = np.arange(count, count + len(world["passes"]))
    travel = leaves.plan["travel"][:count]
    last = np.array([path["edge"] for path in paths]) - sign * travel
    touchable = [(i, k, p[2], p) for i in range(count) for k, p in enumerate(bodies[i]) if p[4] > leaf[1] and p[3] < leaf[2]]
    ends_of = People(rows, touchable)
    devices = world["beams"] + world["scanners"]
    seen = []
    for device in devices:
        entries = [(i, k, sees(device, p), p) for i in range(count) if direction[i] in device["guards"] for k, p in enumerate(bodies[i])]
        seen.append(People(rows, [entry for entry in entries if entry[2] > 0]))
    corners = [np.array(device["corners"]) for device in devices]
    response = np.array([device["response"] for device in devices])
    stands = np.array([row["behavior"] == "stand" for row in rows])
    get = {name: np.array([row[name] for row in rows]) for name in ("depth", "slant", "speed", "arrives")}
    stays = np.where([row["behavior"] == "cross" for row in rows], np.inf, get["depth"])
    pace = np.where(stands, 0.0, get["speed"] / np.hypot(1, get["slant"]))
    reach = np.array([max(np.hypot(p[0], p[1]) + p[2] for p in body) for body in bodies])
    with np.errstate(divide="ignore", invalid="ignore"):
        begins = np.where(stands, -np.inf, get["arrives"] - (reach + 1.5) / pace)
        leaves_at = np.where(np.isinf(stays), get["arrives"] + (reach + leaf[0]) / pace, np.inf)
    springs = [feels(world, direction[i], p) for i, _, _, p in touchable]
    beyond = np.array([beyond_end(path) for path in paths])
    never = lambda *shape: np.full((*shape, count), np.inf)
    full = {name: never() for name in ("touch", "nearest", "p150", "p25")}
    full |= {name: np.zeros(count) for name in ("at_place", "at_x", "at_speed", "at_before", "most", "lasts", "rests")}
    full |= {name: np.zeros(count, dtype=bool) for name in ("shut", "met", "done", "freed", "wide")}
    full |= {"hit": np.full(count, -1), "since": never(len(devices)), "said": never(len(devices))}
    full |= {"felt": never(3), "ways": never(3), "delays": np.zeros((3, count))}
    full |= {"arrives": get["arrives"], "pace": pace, "stays": stays, "stands": stands, "leaves_at": leaves_at}
    full |= {"travel": travel, "sign": sign, "last": last, "beyond": beyond}
    slot, here, now, there = np.full(count, -1), np.array([], dtype=int), {name: value[..., :0] for name, value in full.items()}, None
    across = np.array([[-np.inf, -leaf[0] / 2], [np.inf, leaf[0] / 2]])
    walks = {name: full[name] for name in ("stands", "stays", "pace", "arrives")}
    deep = lambda time, of: np.where(of["stands"], of["stays"], np.minimum(of["pace"] * (time - of["arrives"]), of["stays"]))
    spots = lambda people, which: people.so_deep(which, deep(times[:, None], {name: value[people.of[which]] for name, value in walks.items()}))
    at, time = 0, -0.25
    while time < 30:
        if at % WINDOW == 0:
            for name, value in now.items():
                full[name][..., here] = value
            if there is not None:
                leaves.put(np.append(here, free_leaves), there)
            # Who is not told, not touched and near nothing is left out: the leaf is on its plan, and nobody knows of the body.
            times = -0.25 + (at + np.arange(WINDOW)) * STEP
            depths = np.array([deep(moment, walks) for moment in (times[0], times[-1])])
            idle = np.isinf(full["said"].min(axis=0)) & np.isinf(full["felt"].min(axis=0)) & np.isinf(full["touch"])
            begun = (begins < times[-1] + 2 * STEP) & ~full["done"]
            # Nothing moves any more, and what has been seen for so long has been reported.
            stayed = stands | (pace * (times[0] - 1 - get["arrives"]) >= stays)
            rests = leaves.rest()[free_leaves][own] & (times[0] > 1)
            passed = begun & idle & ((leaves_at < times[0]) | (times[0] > 21) | (stayed & rests))
            full["done"] |= passed
            if full["done"].all():
                break
            begun &= ~passed
            # What reports after the first report changes nothing; who stands still is seen or not until then.
            asked_of = begun & np.isinf(full["said"].min(axis=0)) & (leaves_at > times[0] - STEP)
            looked = []
            for people, box in zip(seen, corners):
                which = np.flatnonzero(asked_of[people.of])
                looked.append(which[people.comes_to(which, depths, box)])
            near = np.flatnonzero((begun & (leaves_at > times[0] - STEP) & (np.isinf(full["touch"]) | (times[0] <= 0)))[ends_of.of])
            near = near[ends_of.comes_to(near, depths, across, FAR)]
            busy = ~idle | np.isfinite(full["since"]).any(axis=0)
            for of in (ends_of.of[near], *(people.of[which] for people, which in zip(seen, looked))):
                busy[of] = True
            last_here, here = here, np.flatnonzero(begun & busy)
            new = np.setdiff1d(here, last_here)
            for state in (leaves.place, leaves.speed):
                state[new] = state[count + own[new]]
            now, there = {name: value[..., here] for name, value in full.items()}, leaves.taken(np.append(here, free_leaves))
            slot[:] = -1
            slot[here] = np.arange(len(here))
            of, near_at = slot[ends_of.of[near]], spots(ends_of, near)
            sights = np.zeros((WINDOW, len(devices), len(here)), dtype=bool)
            for d, (people, which) in enumerate(zip(seen, looked)):
                x, y = spots(people, which)
                moments, those = np.nonzero(off_field(corners[d], x, y) <= people.radius[which])
                sights[moments, d, slot[people.of[which[those]]]] = True
            touch, nearest, shut, met, done, felt, since, said = (now[name] for name in ("touch", "nearest", "shut", "met", "done", "felt", "since", "said"))
        at, time = at + 1, -0.25 + at * STEP
        free, sight = np.isinf(touch) | (time <= 0), sights[(at - 1) % WINDOW]
        since[...] = np.where(sight, np.where(free, np.minimum(since, time), since), np.inf)
        reports = time - since >= response[:, None] - 1e-9
        if time <= 0:
            if time > -STEP:
                shut[:] = np.any(reports, axis=0)
        else:
            said[reports] = np.minimum(said[reports], time)
        command = np.minimum(said.min(axis=0), felt.min(axis=0)) + world["controller"]["reaction"]
        if time > 0:
            there.step(time - STEP, np.append(np.where(shut, np.inf, command), np.full(len(free_leaves), np.inf)))
        place, speed = there.place[: len(here)], there.speed[: len(here)]
        x, y = (side[(at - 1) % WINDOW] for side in near_at)
        before = now["travel"][of] - place[of] - now["sign"][of] * (x - now["last"][of])
        apart = np.hypot(np.maximum(before, 0), np.maximum(np.abs(y) - leaf[0] / 2, 0)) - ends_of.radius[near]
        if time > 0:
            np.minimum.at(nearest, of, np.where(free[of], apart, np.inf))
        for j in np.flatnonzero((apart <= 0) & free[of] & ~done[of] & ~shut[of]):
            i = of[j]
            if np.isinf(touch[i]):
                touch[i], now["hit"][i], now["at_place"][i], now["at_speed"][i] = time, near[j], place[i], speed[i]
                now["at_x"][i], now["at_before"][i] = now["sign"][i] * (x[j] - now["last"][i]), before[j]
                met[i] = before[j] <= 0 or time <= 0 or speed[i] <= 1e-9
                spring, after = springs[near[j]]
                now["ways"][:, i], now["delays"][:, i] = zip(*after)
                now["wide"][i] = now["travel"][i] - place[i] + now["beyond"][i] > world["limits"]["gap"]
                now["p150"][i], now["p25"][i] = (pressed_at(spring, world["limits"][name]) for name in ("lasting", "rest"))
        struck = np.isfinite(touch) & ~met
        if struck.any():
            pressed = np.where(struck, place - now["at_place"], 0.0)
            feels_it = struck & (pressed >= now["ways"] - 1e-9) & np.isinf(felt)
            felt[feels_it] = (time + now["delays"])[feels_it]
            # In a gap that does not crush nobody is held once the leaf stands.
            now["freed"] |= struck & now["wide"] & (speed <= 1e-9)
            held = struck & ~now["freed"]
            for name, limit in (("lasts", "p150"), ("rests", "p25")):
                longer = held & (pressed > now[limit])
                now[name][longer] = time - touch[longer]
            np.maximum(now["most"], pressed, out=now["most"])
        done |= ((shut | met) & (time > 0)) | (struck & (time > touch + 6))
        done |= ~struck & ((time > now["leaves_at"]) | (time > 21))
        if at % 20 == 0 and time > 1:
            # Nothing moves any more, and what has been seen for so long has been reported.
            stayed = now["stands"] | (now["pace"] * (time - 1 - now["arrives"]) >= now["stays"])
            done |= np.isinf(touch) & stayed & there.rest()[: len(here)]
    names = ("touch", "hit", "nearest", "shut", "met", "at_place", "at_x", "at_speed", "at_before", "most", "lasts", "rests")
    arrays = {name: full[name].tolist() for name in names}
    return [verdict(world, paths[i], springs, ends_of, {name: value[i] for name, value in arrays.items()}) for i in range(count)]


def beyond_end(path: dict) -> float:
    """Room between the leaf's end and what stands opposite."""
    end = path["edge"] - (1.0 if path["direction"] == ["closing"] else -1.0) * path["travel"]
    return np.inf if path["opposing"] is None else abs(end - path["opposing"])


def verdict(world: dict, path: dict, springs: list, people: People, of: dict) -> dict:
    known = {"nearest": of["nearest"], "before": of["at_before"], "edge_speed": of["at_speed"], "time": of["touch"]}
    if of["shut"] or np.isinf(of["touch"]) or of["met"]:
        return {"class": "met the side" if of["met"] and not of["shut"] else "untouched", **known}
    limits, (soft, way, hard), travel = world["limits"], springs[of["hit"]][0], of["most"]
    force = soft * min(travel, way) + hard * max(travel - way, 0)
    beyond = beyond_end(path)
    gap = path["travel"] - of["at_place"] + beyond
    room = of["at_x"] - people.radius[of["hit"]] + beyond
    limit = limits["crushing"] if gap <= limits["gap"] else limits["open"]
    if room < 0:
        return {"class": "untouched", "room": room, **known}
    word = "touched within limits"
    if travel - room > limits["squeeze"]:
        word = "trapped"
    elif force > limit or of["lasts"] > limits["lasting_after"] or of["rests"] > limits["rest_after"]:
        word = "touched beyond limits"
    # How near a limit it is, each in its own measure: what two steps of the leaf change.
    close = min(
        abs(force - limit) / (hard * 0.001), abs(of["lasts"] - limits["lasting_after"]) / 0.01, abs(of["rests"] - limits["rest_after"]) / 0.05,
        abs(travel - room - limits["squeeze"]) / 0.005, abs(gap - limits["gap"]) / 0.005,
    )
    return {"class": word, "travel": travel, "close": close, "force": force, "gap": gap, "room": room, **known}


def excused(ours: dict, theirs: dict) -> bool:
    """Whether two classes differ only because something is at its very limit."""
    words = {ours["class"], theirs["class"]}
    if words == set(HARMLESS):
        return theirs["nearest"] < GRAZE or ours["class"] == "met the side"
    if words & set(HARMLESS):
        grazes = abs(theirs["nearest"]) < GRAZE or abs(theirs["before"]) < GRAZE
        return grazes or theirs["edge_speed"] < 0.002 or abs(theirs.get("room", 1)) < 0.003
    return theirs["close"] < 1


def compare(world: str, count: int) -> dict:
    """How often each class came out, what differs without an excuse, and the largest difference of the travel."""
    known, rows = asked(world, count)
    counts, odd, far, excuses = {}, [], 0.0, 0
    for ours, theirs in zip(rows, stepped(known, rows)):
        counts[ours["class"]] = counts.get(ours["class"], 0) + 1
        if "travel" in theirs and "travel" in ours:
            off = abs(ours["travel"] - theirs["travel"])
            far = max(far, off)
            if off > 0.001:
                odd.append((ours, theirs))
                continue
        if ours["class"] != theirs["class"]:
            excuses += 1
            if not excused(ours, theirs):
                odd.append((ours, theirs))
    return {"counts": counts, "odd": odd, "far": far, "excuses": excuses}


@pytest.mark.parametrize(("world", "count"), [("trial", 2000), ("full", 8000)])
def test_walk_stepped(world, count):
    done = compare(world, count)
    assert done["counts"]["touched within limits"] > 20
    assert done["excuses"] < 0.02 * count, done["excuses"]
    # A device whose report falls into the very step of the touch or of the start: a few in ten thousand.
    assert len(done["odd"]) <= 0.0005 * count + 1, done["odd"][:10]
