"""A leaf moved through time, against scipy: five travels stepped by solve_ivp with its own events."""

import json
import os
import subprocess

import numpy
import pytest
from conftest import ROOT
from scipy.integrate import solve_ivp

EXAMPLE = os.environ.get("GATEWRIGHT_TRAVEL", str(ROOT / "target/release/examples/travel"))

# Name, curve of the drive (speed: force), load (against any motion: against the way out), plan.
STRONG = "0:2500,1.0:2000"
WEAK = "0:420,0.2:300,0.4:60"
CASES = {
    "even and strong": (STRONG, "90:0,90:0", {"travel": 6.3, "cruise_speed": 0.26, "set_point": 0.5}),
    "uphill at the end": (STRONG, "90:-30,80:0,140:60", {"travel": 5.0, "cruise_speed": 0.35, "set_point": 0.6}),
    "too short for its speed": (STRONG, "60:5,60:5", {"travel": 1.2, "cruise_speed": 0.8, "set_point": 0.7}),
    "weak at its start": (WEAK, "190:0,150:10,160:0", {"travel": 4.0, "cruise_speed": 0.22, "set_point": 0.6}),
    "strikes its stop": (STRONG, "70:0,70:0", {"travel": 5.0, "cruise_speed": 0.5, "set_point": 0.3}),
}
COMMON = {"mass": 290, "rotating_mass": 60, "holding": 2500, "acceleration": 0.4, "deceleration": 0.3, "creep_speed": 0.09}


def table(text: str) -> numpy.ndarray:
    return numpy.array([[float(x) for x in pair.split(":")] for pair in text.split(",")])


def ours(curve: str, load: str, plan: dict, **more) -> str:
    if not os.path.exists(EXAMPLE):
        pytest.skip("cargo build --release --package sim --example travel makes the program for this")
    values = {**COMMON, **plan, **more, "curve": curve, "load": load}
    done = subprocess.run([EXAMPLE, *(f"{name}={value}" for name, value in values.items())], capture_output=True, encoding="utf-8")
    assert done.returncode == 0, done.stderr
    return done.stdout


def scipy_travel(curve: str, load: str, plan: dict) -> dict:
    """Speed up, run, slow down, creep, stop: each a stretch of its own, force limited by the curve."""
    points, places = table(curve), table(load)
    p = {**COMMON, **plan}
    mass, end = p["mass"] + p["rotating_mass"], p["travel"]
    along = numpy.linspace(0, end, len(places))
    marks = (end - p["set_point"], end - p["creep_speed"] ** 2 / (2 * p["deceleration"]))

    def against(x):
        return numpy.interp(x, along, places[:, 0]) + numpy.interp(x, along, places[:, 1])

    def push(x, v, rate):
        return min(mass * rate + against(x), numpy.interp(v, points[:, 0], points[:, 1]))

    def stretch(state, rate, *events):
        def slope(_, y):
            force = push(y[0], y[1], rate)
            return [y[1], (force - against(y[0])) / mass, force**2]

        for event in events:
            event.terminal = True
        done = solve_ivp(slope, (0, 200), state[1:], events=events, rtol=1e-9, atol=1e-10, max_step=0.01)
        return [state[0] + done.t[-1], *done.y[:, -1]], done.y[1].max()

    at = [lambda _, y, mark=mark: y[0] - mark for mark in (*marks, end)]
    state, peak = stretch([0, 0, 0, 0], p["acceleration"], at[0], lambda _, y: y[1] - p["cruise_speed"])
    if state[1] < marks[0] - 1e-6:
        state, _ = stretch(state, 0, at[0])
    state, _ = stretch(state, -p["deceleration"], at[1], lambda _, y: y[1] - p["creep_speed"])
    if state[1] < marks[1] - 1e-6:
        state, _ = stretch(state, 0, at[1])
    passing, _ = stretch(state, -p["deceleration"], at[2], lambda _, y: y[1] - 1e-9)
    state, _ = stretch(state, -p["deceleration"], lambda _, y: y[1] - 1e-9)
    return {"total_time": state[0], "position": state[1], "peak_speed": peak, "rms_force": (state[3] / state[0]) ** 0.5, "arrival_speed": passing[2]}


@pytest.mark.parametrize("name", CASES)
def test_a_travel_in_scipys_steps(name):
    theirs = scipy_travel(*CASES[name])
    gives = json.loads(ours(*CASES[name]).splitlines()[-1])
    assert gives["total_time"] == pytest.approx(theirs["total_time"], rel=2e-4)
    assert gives["position"] == pytest.approx(theirs["position"], abs=2e-4)
    assert gives["peak_speed"] == pytest.approx(theirs["peak_speed"], rel=2e-4)
    assert gives["rms_force"] == pytest.approx(theirs["rms_force"], rel=2e-3)
    if name == "strikes its stop":
        assert gives["arrival_speed"] == pytest.approx(theirs["arrival_speed"], rel=1e-3)
