"""Rigs drawn at random around a turn: headings by scipy's integrator, bodies as polygons of shapely.

The towed axles' equations are written down anew from where each coupling moves; the program's own steps, its search for
the nearest place and its rectangles are not used.
"""

import json
import math
import os
import subprocess

import numpy as np
import pytest
import shapely
from conftest import ROOT
from scipy.integrate import solve_ivp

EXAMPLE = os.environ.get("GATEWRIGHT_SWEPT", str(ROOT / "target/release/examples/swept"))
DRIVES = 48
FOOT = 0.3048


def drives() -> list[dict]:
    if not os.path.exists(EXAMPLE):
        pytest.skip("cargo build --release --package sim --example swept makes the program for this")
    done = subprocess.run([EXAMPLE, "from=0", f"count={DRIVES}"], capture_output=True, encoding="utf-8")
    assert done.returncode == 0, done.stderr
    return [json.loads(line) for line in done.stdout.splitlines()]


class Line:
    """Straight, arc, straight through one corner."""

    def __init__(self, corners, radius):
        (x0, y0), (x1, y1), (x2, y2) = corners
        self.first, self.last = math.atan2(y1 - y0, x1 - x0), math.atan2(y2 - y1, x2 - x1)
        self.turn = (self.last - self.first + math.pi) % (2 * math.pi) - math.pi
        cut = radius * math.tan(abs(self.turn) / 2)
        self.before = math.hypot(x1 - x0, y1 - y0) - cut
        self.arc = radius * abs(self.turn)
        self.length = self.before + self.arc + math.hypot(x2 - x1, y2 - y1) - cut
        self.start, self.curve = (x0, y0), math.copysign(1 / radius, self.turn)

    def heading(self, s):
        return self.first + self.curve * np.clip(s - self.before, 0, self.arc)

    def places(self, s):
        """Points along it, in closed form for each of its three parts."""
        s = np.asarray(s, dtype=float)
        x, y = self.start
        a = np.minimum(s, self.before)
        px, py = x + a * math.cos(self.first), y + a * math.sin(self.first)
        b = np.clip(s - self.before, 0, self.arc)
        h = self.first + self.curve * b
        px = px + (np.sin(h) - math.sin(self.first)) / self.curve
        py = py - (np.cos(h) - math.cos(self.first)) / self.curve
        c = np.maximum(s - self.before - self.arc, 0)
        end = self.first + self.curve * self.arc
        return np.stack([px + c * math.cos(end), py + c * math.sin(end)], axis=-1)


    def away(self, places):
        """How far places are from it, straight on before its start: from the nearest of the short pieces that it is drawn with."""
        x, y = self.start
        behind = [[x - 60 * math.cos(self.first), y - 60 * math.sin(self.first)]]
        drawn = np.concatenate([behind, self.places(np.linspace(0, self.length, 3000))])
        pieces = shapely.STRtree(shapely.linestrings(np.stack([drawn[:-1], drawn[1:]], axis=1)))
        return pieces.query_nearest(shapely.points(places), return_distance=True, all_matches=False)[1]


def headings(drive: dict, line: Line, s):
    units = drive["units"]

    def rates(at, angles):
        pull, out = np.array([math.cos(line.heading(at)), math.sin(line.heading(at))]), []
        for unit, angle in zip(units, angles):
            ahead, aside = np.array([math.cos(angle), math.sin(angle)]), np.array([-math.sin(angle), math.cos(angle)])
            rate = pull @ aside / unit["wheelbase"]
            out.append(rate)
            # The coupling is fixed to the unit: it rolls forward and swings about the axle.
            pull = (pull @ ahead) * ahead - rate * unit["hitch"] * aside
        return out

    breaks = [0, line.before, line.before + line.arc, line.length]
    angles, state = np.empty((len(units), len(s))), [line.first] * len(units)
    for low, high in zip(breaks, breaks[1:]):
        inside = (s >= low) & (s <= high)
        done = solve_ivp(rates, (low, high), state, method="DOP853", rtol=1e-10, atol=1e-11, dense_output=True)
        angles[:, inside] = done.sol(s[inside])
        state = done.y[:, -1]
    return angles


def rolled(drive: dict, line: Line, s):
    """For each unit its axle and heading at every place."""
    pulled = line.places(s)
    for unit, angle in zip(drive["units"], headings(drive, line, s)):
        ahead = np.stack([np.cos(angle), np.sin(angle)], axis=-1)
        axle = pulled - unit["wheelbase"] * ahead
        yield unit, pulled, axle, ahead
        pulled = axle - unit["hitch"] * ahead


def boxes(unit, axle, ahead):
    body, left = unit["body"], np.stack([-ahead[:, 1], ahead[:, 0]], axis=-1)
    front, rear, half = unit["wheelbase"] + body["ahead"], -body["behind"], body["width"] / 2
    corners = [axle + x * ahead + y * left for x, y in ((front, half), (front, -half), (rear, -half), (rear, half))]
    return shapely.polygons(np.stack(corners, axis=1))


def wheels(unit, index, pulled, axle, ahead):
    left = np.stack([-ahead[:, 1], ahead[:, 0]], axis=-1) * unit["over_tires"] / 2
    return [axle + left, axle - left] + ([pulled + left, pulled - left] if index == 0 else [])


def test_rooms_off_tracking_and_angles_are_those_of_other_libraries():
    over, clear = 0, 0
    for drive in drives():
        line = Line(drive["corners"], drive["radii"][0])
        # The front wheels are turned the most where the arc ends: that place is among those looked at.
        s = np.union1d(np.linspace(0, line.length, int(line.length / 0.005)), [line.before, line.before + line.arc])
        rig = list(rolled(drive, line, s))
        off = line.away(rig[-1][2][::5])
        assert abs(off.max() - drive["off_tracking"]) < 2e-3, drive["off_tracking"]
        first = [math.atan2(*reversed(v)) for v in rig[0][3]]
        steered = np.abs((line.heading(s) - np.unwrap(first) + math.pi) % (2 * math.pi) - math.pi).max()
        assert abs(steered - drive["steered"]) < 1e-4
        for pair, angle in zip(zip(rig, rig[1:]), drive["bent"]):
            cosine = np.clip((pair[0][3] * pair[1][3]).sum(axis=1), -1, 1)
            assert abs(np.arccos(cosine).max() - angle) < 1e-4
        bodies = [boxes(unit, axle, ahead) for unit, _, axle, ahead in rig if unit["body"]]
        for room in drive["rooms"]:
            if room["kind"] == "edge":
                edge = shapely.LineString(drive["edges"][room["index"]]["line"])
                (x, low), (_, high) = edge.coords
                sign = 1 if drive["edges"][room["index"]]["lane_is_left"] else -1
                least = math.inf
                for index, (unit, pulled, axle, ahead) in enumerate(rig):
                    for wheel in wheels(unit, index, pulled, axle, ahead):
                        away = shapely.distance(shapely.points(wheel), edge)
                        beside = (wheel[:, 1] > low) & (wheel[:, 1] < high)
                        signed = np.where(beside, sign * (x - wheel[:, 0]), away)
                        least = min(least, signed.min())
                # A wheel that slants off the end of the edge is seen there to within a step of 1 cm times its slant.
                assert abs(least - room["room"]) < 5e-3, (least, room)
                continue
            thing = drive["obstacles"][room["index"]]
            shape = shapely.LineString(thing["ends"])
            least = min(shapely.distance(body, shape).min() for body in bodies)
            if room["room"] > 0:
                clear += 1
                assert abs(least - thing["radius"] - room["room"]) < 4e-3, (least, thing, room)
            else:
                over += 1
                assert least <= thing["radius"] + 4e-3, (least, thing, room)
    assert over > 20 and clear > 100, (over, clear)


def test_the_published_off_tracking_comes_out_of_the_same_equations():
    """A quarter turn of SU-30 at its least circle (ft): what the Rust tests hold the program against, worked once more."""
    line = Line([(0.0, -150.0), (0.0, 0.0), (150.0, 0.0)], 38.0)
    s = np.linspace(0, line.length, 3001)
    (_, _, axle, _), = rolled({"units": [{"wheelbase": 20.0, "hitch": 0.0}]}, line, s)
    off = line.away(axle)
    assert abs(off.max() - 5.051) < 0.004


def test_off_tracking_on_a_circle_is_what_long_rolling_comes_to(calc):
    """A tractor with a semi-trailer, and a bus whose trailer hangs behind the axle, rolled until nothing changes."""
    for radius, base, hitch, trailer in ((30.48, 5.944, 0.0, 12.497), (12.0, 6.7, 1.9, 4.0)):

        def rates(s, angles):
            heading = s / radius
            one = math.sin(heading - angles[0]) / base
            forward = math.cos(heading - angles[0])
            bend = angles[0] - angles[1]
            return [one, (forward * math.sin(bend) - hitch * one * math.cos(bend)) / trailer]

        far = 60 * radius
        done = solve_ivp(rates, (0, far), [0.0, 0.0], method="LSODA", rtol=1e-9, atol=1e-10)
        one, two = done.y[:, -1]
        heading = far / radius
        x, y = radius * math.sin(heading), -radius * math.cos(heading)
        x, y = x - (base + hitch) * math.cos(one), y - (base + hitch) * math.sin(one)
        x, y = x - trailer * math.cos(two), y - trailer * math.sin(two)
        found = calc("off-tracking", radius=f"{radius} m", wheelbase=f"{base} m", hitch=f"{hitch} m", trailer=f"{trailer} m")
        assert abs(found["off_tracking"] - (radius - math.hypot(x, y))) < 1e-4
