"""Loops in the ground by Neumann's integral in scipy, and fields on the ground by shapely, against what the program says."""

import json
import math

import numpy as np
import pytest
from conftest import run
from scipy.integrate import quad
from shapely import Point, Polygon, affinity

NEUMANN = 1e-7
STRIP = 0.1016


def side(one, other, apart):
    """Two parallel pieces: the inner integral in closed form, the outer by quadrature."""

    def inner(x):
        return math.asinh((other[1] - x) / apart) - math.asinh((other[0] - x) / apart)

    inside = [end for end in other if one[0] < end < one[1]]
    return NEUMANN * quad(inner, *one, points=inside or None, limit=400, epsabs=1e-13, epsrel=1e-11)[0]


def mutual(one, other, above):
    """Two level rectangles around one point: length and width of each."""
    total = 0.0
    for along, across in ((0, 1), (1, 0)):
        a, b = one[along] / 2, other[along] / 2
        p, q = one[across] / 2, other[across] / 2
        total += 2 * side((-a, a), (-b, b), math.hypot(p - q, above))
        total -= 2 * side((-a, a), (-b, b), math.hypot(p + q, above))
    return total


def coil(loop, turns, wire, spacing):
    own = mutual(loop, loop, wire / 2 * math.exp(-0.25))
    return turns * own + 2 * sum((turns - k) * mutual(loop, loop, k * spacing) for k in range(1, turns))


def drawn(count, seed):
    dice = np.random.default_rng(seed)
    for _ in range(count):
        loop = (dice.uniform(0.6, 8.0), dice.uniform(0.6, 3.0))
        wire = dice.uniform(0.9e-3, 2.1e-3)
        yield loop, int(dice.integers(1, 8)), wire, wire + dice.uniform(0.8e-3, 2.5e-3), dice


def test_many_loops_by_quadrature(calc):
    for loop, turns, wire, spacing, _ in drawn(40, 7):
        said = calc(
            "loop-inductance", length=f"{loop[0]} m", width=f"{loop[1]} m", turns=turns, wire=f"{wire} m", spacing=f"{spacing} m"
        )
        assert said["inductance"] == pytest.approx(coil(loop, turns, wire, spacing), rel=1e-6)


def test_the_guide_is_near_the_sum_for_loops_of_the_trade(calc):
    for length, width, turns in ((8, 4, 3), (10, 4, 3), (12, 4, 3), (6, 4, 4), (20, 4, 3), (30, 4, 2)):
        loop = (length * 0.3048, width * 0.3048)
        guide = calc("loop-guide-inductance", length=f"{length} ft", width=f"{width} ft", turns=turns)["inductance"]
        assert guide == pytest.approx(coil(loop, turns, 1.628e-3, 3.8e-3), rel=0.15)


def test_lead_ins_by_quadrature(calc):
    for length, wire, spacing in ((5, 1.3e-3, 2.6e-3), (20, 1.0e-3, 3.0e-3), (60, 1.6e-3, 4.0e-3)):
        run_of = (0.0, length)
        own, other = wire / 2 * math.exp(-0.25), spacing
        there_and_back = 2 * (side(run_of, run_of, own) - side(run_of, run_of, other))
        said = calc("loop-lead-in", length=f"{length} m", wire=f"{wire} m", spacing=f"{spacing} m")["inductance"]
        assert said == pytest.approx(there_and_back, rel=2e-3)


def test_vehicles_and_steel_by_quadrature(calc):
    for loop, turns, wire, spacing, dice in drawn(12, 11):
        own = coil(loop, turns, wire, spacing)
        metal = (dice.uniform(0.4, 5.0), dice.uniform(0.4, 2.5))
        height, steel = dice.uniform(0.2, 1.4), dice.uniform(0.05, 0.4)
        base = {"length": f"{loop[0]} m", "width": f"{loop[1]} m", "turns": turns, "inductance": f"{own} H"}
        said = calc(
            "loop-vehicle-share", **base, metal_length=f"{metal[0]} m", metal_width=f"{metal[1]} m", height=f"{height} m"
        )
        between = turns * mutual(loop, metal, height)
        ring = mutual(metal, metal, STRIP * math.exp(-1.5))
        assert said["mutual"] == pytest.approx(between, rel=1e-6)
        assert said["share"] == pytest.approx(between**2 / own / ring, rel=1e-6)
        if own > turns**2 * mutual(loop, loop, 2 * steel):
            over = calc("loop-over-steel", **base, steel=f"{steel} m", height=f"{height} m")
            assert over["left"] == pytest.approx(own - turns**2 * mutual(loop, loop, 2 * steel), rel=1e-6)
            left = 1 - mutual(loop, loop, height + 2 * steel) / mutual(loop, loop, height)
            assert over["field"] == pytest.approx(left, rel=1e-6)


SITE = """
[site]
name = "Field"
code_basis = "eu"
[[gate]]
id = "arm"
kind = "barrier-arm"
travel_angle = "89°"
[[gate.leaf]]
id = "boom"
length = "3.8 m"
closed_end = "-0.15 m"
height = "100 mm"
thickness = "45 mm"
ground_clearance = "850 mm"
"""


def scanner(number, dice):
    """A scanner somewhere, its field as set, and a chalked one that may lie on the other side."""
    x, y, facing = dice.uniform(-2, 6), dice.uniform(-3, 3), dice.uniform(-180, 180)
    begins, ends = dice.uniform(0, 1), dice.uniform(3, 6)
    left, right = dice.uniform(0.1, 4), dice.uniform(0.1, 4)
    upside_down, mirrored = bool(dice.integers(2)), bool(dice.integers(2))
    chalked = [(dice.uniform(-3, 7), dice.uniform(-5, 5)) for _ in range(3)]
    really = (left, right) if upside_down == mirrored else (right, left)
    field = Polygon([(begins, -really[1]), (ends, -really[1]), (ends, really[0]), (begins, really[0])])
    field = affinity.translate(affinity.rotate(field, facing, origin=(0, 0)), x, y)
    corners = ", ".join(f'["{a} m", "{b} m", "0.3 m"]' for a, b in chalked)
    text = f"""
[[device]]
id = "scanner-{number}"
kind = "area scanner"
at = ["{x} m", "{y} m", "0.3 m"]
facing = "{facing}°"
detection_capability = "1 mm"
field = [{corners}]
[device.field_mount]
principle = "laser"
tilt = "0°"
begins = "{begins} m"
ends = "{ends} m"
left = "{left} m"
right = "{right} m"
upside_down = {str(upside_down).lower()}
mirrored = {str(mirrored).lower()}
weather_filter = true
"""
    return text, max(field.distance(Point(corner)) for corner in chalked)


def test_fields_lie_where_another_library_puts_them(tmp_path):
    dice = np.random.default_rng(5)
    made = [scanner(number, dice) for number in range(60)]
    (tmp_path / "site.toml").write_text(SITE + "".join(text for text, _ in made), encoding="utf-8")
    done = run("check", str(tmp_path), "--json")
    assert done.returncode in (0, 1), done.stderr
    found = {
        finding["subject"]["name"]: finding
        for finding in json.loads(done.stdout)["findings"]
        if finding["question"] == "vehicle-field-side"
    }
    for number, (_, outside) in enumerate(made):
        demand = found[f"scanner-{number}"]["demand"]
        assert demand["value"] == pytest.approx(outside, abs=1e-6)
