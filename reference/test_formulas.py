"""Calculations worked another way: by integrating, counting or solving instead of by the closed formula."""

import numpy
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

G = 9.80665
FOOT = 0.3048
POUND_FORCE = 4.4482216152605


def test_a_pull_up_a_slope_and_around_a_bend_by_integration(calc):
    mass, friction, rise, length = 0.3, 0.35, 0.2, 40.0
    cosine = numpy.sqrt(1 - rise**2)
    straight = solve_ivp(lambda s, t: [mass * G * (friction * cosine + rise)], (0, length), [50.0], rtol=1e-10)
    ours = calc("pull-straight", tension="50 N", length="40 m", mass_per_length="0.3 kg/m", friction="0.35", weight_correction="1", rise="0.2")
    assert ours["tension_after"] == pytest.approx(straight.y[0, -1], rel=1e-9)
    bend = solve_ivp(lambda angle, t: friction * t, (0, numpy.pi / 2), [ours["tension_after"]], rtol=1e-11, atol=1e-12)
    around = calc("pull-bend", tension=f"{ours['tension_after']} N", angle="90°", friction="0.35", weight_correction="1")
    assert around["tension_after"] == pytest.approx(bend.y[0, -1], rel=1e-8)


def test_travel_time_by_stepping_through_the_speed_profile(calc):
    ours = calc(
        "trapezoidal-travel", travel="6.3 m", cruise_speed="0.26 m/s", acceleration="0.25 m/s²",
        deceleration="0.2 m/s²", creep_speed="0.09 m/s", creep_distance="0.3 m",
    )
    step, position, speed, time = 1e-4, 0.0, 0.0, 0.0
    while position < 6.3 - 1e-9:
        to_creep = 6.3 - 0.3 - position
        to_stop = 6.3 - position
        braking_to_creep = (speed**2 - 0.09**2) / (2 * 0.2)
        braking_to_stop = speed**2 / (2 * 0.2)
        if braking_to_stop >= to_stop or (speed > 0.09 and braking_to_creep >= to_creep):
            rate = -0.2
        elif to_creep > 0 and speed < 0.26:
            rate = 0.25
        else:
            rate = 0.0
        limit = 0.26 if to_creep > 0 else 0.09
        change = min(speed + rate * step, limit) if rate > 0 else max(speed + rate * step, 1e-5)
        position += (speed + change) / 2 * step
        speed, time = change, time + step
    assert ours["total_time"] == pytest.approx(time, abs=0.05)


def test_stopping_distance_by_integrating_the_brake(calc):
    ours = calc("stopping-distance", speed="0.3 m/s", device_time="50 ms", controller_time="80 ms", deceleration="0.8 m/s²", slope="-0.02")
    braking = 0.8 - G * numpy.sin(numpy.arctan(0.02))
    stands = solve_ivp(lambda t, y: [y[1], -braking], (0, 10), [0.0, 0.3], events=_stands(), rtol=1e-11, atol=1e-13)
    assert ours["total_distance"] == pytest.approx(0.3 * 0.13 + stands.y_events[0][0][0], rel=1e-8)


def _stands():
    def event(_, state):
        return state[1]

    event.terminal = True
    return event


@pytest.mark.parametrize("power", [6.5, 15.4, 25.5])
def test_power_over_ethernet_by_root_finding(calc, power):
    resistance_per_meter, length, source = 0.0938, 90.0, 50.0
    loop = 2 * resistance_per_meter * length / 2
    current = brentq(lambda i: i * (source - i * loop) - power, 0, source / (2 * loop), xtol=1e-14)
    ours = calc("poe-power", source="50 V", resistance="0.0938 Ω/m", length="90 m", pairs="two", power=f"{power} W")
    assert ours["loop_resistance"] == pytest.approx(loop, rel=1e-9)
    assert ours["current"] == pytest.approx(current, rel=1e-9)
    assert ours["loss"] == pytest.approx(current**2 * loop, rel=1e-9)


@pytest.mark.parametrize("terrain,roughness,least", [("II", 0.05, 2.0), ("III", 0.3, 5.0)])
def test_european_wind_in_a_few_lines(calc, terrain, roughness, least):
    speed, height = 24.0, 13.48
    z = max(height, least)
    k = 0.19 * (roughness / 0.05) ** 0.07
    mean = k * numpy.log(z / roughness) * speed
    turbulence = 1.0 / numpy.log(z / roughness)
    pressure = (1 + 7 * turbulence) * 0.5 * 1.25 * mean**2
    ours = calc(
        "en1991-peak-velocity-pressure", fundamental_speed="24 m/s", direction_factor="1", season_factor="1",
        probability_factor="1", terrain=terrain, orography_factor="1", height="13.48 m",
    )
    assert ours["mean_speed"] == pytest.approx(mean, rel=1e-9)
    assert ours["pressure"] == pytest.approx(pressure, rel=1e-9)


def test_an_enclosure_settles_where_heat_in_is_heat_out(calc):
    heat, sun, lit, finish, area, transfer, outside = 40.6, 900.0, 0.24, 0.3, 2.0, 5.5, 35.0
    settled = brentq(lambda inside: heat + finish * sun * lit - transfer * area * (inside - outside), 0, 300)
    ours = calc(
        "enclosure-heat-balance", heat="40.6 W", sunshine="900 W/m²", sunlit_area="0.24 m²", absorptance="0.3",
        area="2 m²", transfer="5.5 W/(m²·K)", outside="35 °C",
    )
    assert ours["inside"] - 273.15 == pytest.approx(settled, abs=1e-9)


def test_the_cone_of_an_anchor_near_a_corner_by_counting_squares(calc):
    depth, left, front = 0.15, 0.12, 0.18
    reach = 1.5 * depth
    grid = (numpy.arange(2000) + 0.5) / 2000 * 2 * reach - reach
    x, y = numpy.meshgrid(grid, grid)
    counted = numpy.mean((x > -left) & (y > -front)) * (2 * reach) ** 2
    ours = calc(
        "anchor-breakout-tension", anchor="cast-in", embedment="150 mm", concrete_strength="25 MPa", coefficient="24", cracking_factor="1",
        lightweight_factor="1", edge_left="120 mm", edge_right="2 m", edge_front="180 mm", edge_back="2 m", critical_edge="0 mm", reduction="0.7",
    )
    assert ours["projected_area"] == pytest.approx(counted, rel=2e-3)
    assert ours["reference_area"] == pytest.approx((2 * reach) ** 2, rel=1e-9)


def test_the_force_on_a_sliding_leaf_from_the_laws_of_motion(calc):
    mass, slope, radius, arm, axle, bearing = 290.0, 0.004, 0.075, 0.0005, 0.01, 0.015
    angle = numpy.arctan(slope)
    normal = mass * G * numpy.cos(angle)
    work_for_a_turn = normal * (arm + bearing * axle) * 2 * numpy.pi
    rolling = work_for_a_turn / (2 * numpy.pi * radius)
    total = rolling + mass * G * numpy.sin(angle) + 44 + 0.15 * 1900 + 67 + mass * 1.2 * 0.25
    ours = calc(
        "slide-gate-force", mass="290 kg", load_factor="1", slope="0.004", wheel_radius="75 mm", lever_arm="0.5 mm", axle_radius="10 mm",
        bearing_friction="0.015", rim_factor="0", seal_force="44 N", guide_load="1900 N", guide_friction="0.15", debris_force="67 N",
        acceleration="0.25 m/s²", rotating_share="0.2",
    )
    assert ours["total"] == pytest.approx(total, rel=1e-9)


def test_reported_minimum_distance_on_a_level_field(calc):
    time, height = 0.233, 0.7
    ours = calc("iso13855-2010-parallel-distance", stopping_time="233 ms", field_height="0.7 m", capability="70 mm")
    assert ours["distance"] == pytest.approx(1.6 * time + max(1.2 - 0.4 * height, 0.85), rel=1e-9)
