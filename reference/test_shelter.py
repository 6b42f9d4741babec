"""The sun, boxes through a day, and moist air, worked by other libraries: pvlib, scipy's solver of equations, psychrolib."""

import os
import subprocess

import numpy as np
import pandas
import psychrolib
import pvlib
import pytest
from conftest import ROOT
from scipy.integrate import solve_ivp
from scipy.optimize import fsolve

EXAMPLE = os.environ.get("GATEWRIGHT_SHELTER", str(ROOT / "target/release/examples/shelter"))
HOUR = 3600.0


def asked(what: str) -> list[dict]:
    if not os.path.exists(EXAMPLE):
        pytest.skip("cargo build --release --package sim --example shelter makes the program for this")
    done = subprocess.run([EXAMPLE, what], capture_output=True, encoding="utf-8")
    assert done.returncode == 0, done.stderr
    first, *lines = done.stdout.splitlines()
    return [dict(zip(first.split(","), map(float, line.split(",")))) for line in lines]


def test_a_thousand_suns_to_a_thousandth_of_a_degree():
    rows = asked("sun")
    assert len(rows) == 1000
    for row in rows:
        time = pandas.DatetimeIndex([pandas.Timestamp("2026-01-01", tz="UTC") + pandas.Timedelta(seconds=row["seconds"])])
        sun = pvlib.solarposition.spa_python(time, row["latitude"], row["longitude"], altitude=0, delta_t=69.0)
        assert sun["elevation"].iloc[0] == pytest.approx(row["elevation"], abs=0.001)
        turned = (sun["azimuth"].iloc[0] - row["azimuth"] + 180) % 360 - 180
        assert abs(turned) * np.cos(np.radians(row["elevation"])) < 0.001


def test_sky_and_faces_as_the_library_has_them():
    for row in asked("sun"):
        zenith = 90 - row["elevation"]
        if zenith > 86:  # the two tell sun and sky apart in their own ways when the sun is that low
            continue
        split = pvlib.irradiance.erbs(row["global"], zenith, 172, min_cos_zenith=0.065)
        # The library follows the distance of the sun through the year; ours takes its mean.
        ours = pvlib.irradiance.clearness_index(row["global"], zenith, 1366.1)
        share = (
            1 - 0.09 * ours if ours <= 0.22
            else 0.9511 - 0.1604 * ours + 4.388 * ours**2 - 16.638 * ours**3 + 12.336 * ours**4 if ours <= 0.8
            else 0.165
        )
        assert row["diffuse"] == pytest.approx(row["global"] * share, rel=1e-6)
        assert row["diffuse"] == pytest.approx(split["dhi"], abs=0.06 * row["global"])
        beam = (row["global"] - row["diffuse"]) / np.cos(np.radians(zenith))
        total = pvlib.irradiance.get_total_irradiance(
            row["tilt"], row["facing"], zenith, row["azimuth"], beam, row["global"], row["diffuse"], albedo=0.2, model="isotropic"
        )
        assert row["face"] == pytest.approx(total["poa_global"], abs=1e-3)


def stepped(row: dict) -> dict:
    """One box by a solver that looks for each switching; the day before is worked nine times."""
    hours = np.arange(25)
    middle, half = (row["cold"] + row["hot"]) / 2, (row["hot"] - row["cold"]) / 2
    air = middle + half * np.cos(2 * np.pi * (hours - 15) / 24)
    sun = np.where(((hours % 24) >= 7) & ((hours % 24) < 18), row["sun"], 0.0)
    at = lambda table, t: np.interp(t / HOUR, hours, table)  # noqa: E731
    state = {"called": False, "open": False, "vented": False}
    temperature = air[0] + (row["inside"] + sun[0]) / row["through"]
    for _ in range(10):
        seen, mean, on, time = [temperature], 0.0, 0.0, 0.0
        ends = list(hours[1:] * HOUR)
        while ends:
            heats = (row["stuck"] or state["called"]) and not state["open"]

            def slope(t, y, heats=heats):
                through = row["through"] + (row["vent"] if state["vented"] else 0.0)
                given = row["inside"] + (row["power"] if heats else 0.0) + at(sun, t)
                return [(given - through * (y[0] - at(air, t))) / row["stores"], y[0]]

            waiting = [("open", row["closes"] if state["open"] else row["opens"], state["open"])]
            waiting.append(("vented", 30.0 if state["vented"] else 38.0, state["vented"]))
            if not row["stuck"]:
                waiting.append(("called", row["off"] if state["called"] else row["on"], not state["called"]))
            events = []
            for _, level, falling in waiting:
                event = lambda t, y, level=level: y[0] - level  # noqa: E731
                event.terminal, event.direction = True, -1 if falling else 1
                events.append(event)
            beyond = [name for name, level, falling in waiting if (temperature < level if falling else temperature > level)]
            if beyond:
                state[beyond[0]] = not state[beyond[0]]
                continue
            found = solve_ivp(slope, (time, ends[0]), [temperature, 0.0], events=events, rtol=1e-9, atol=1e-9, max_step=300)
            mean += found.y[1][-1]
            seen += list(found.y[0])
            on += (found.t[-1] - time) if heats else 0.0
            time, temperature = found.t[-1], found.y[0][-1]
            if found.status == 1:
                name = next(name for (name, _, _), hits in zip(waiting, found.t_events) if len(hits))
                level = next(level for other, level, _ in waiting if other == name)
                state[name] = not state[name]
                temperature = level
            if time >= ends[0] - 1e-9:
                ends.pop(0)
    return {"hottest": max(seen), "coldest": min(seen), "mean": mean / (24 * HOUR), "heater": on / (24 * HOUR)}


def test_boxes_through_a_day_by_another_solver():
    rows = asked("enclosure")
    assert len(rows) == 40
    for row in rows:
        wanted = stepped(row)
        assert row["hottest"] == pytest.approx(wanted["hottest"], abs=0.02)
        assert row["coldest"] == pytest.approx(wanted["coldest"], abs=0.02)
        assert row["mean"] == pytest.approx(wanted["mean"], abs=0.02)
        assert row["heater"] == pytest.approx(wanted["heater"], abs=0.004)


@pytest.mark.parametrize("air", [-20, -5, 0, 8, 20, 35, 45])
@pytest.mark.parametrize("humidity", [0.2, 0.6, 0.97])
def test_dew_points_as_the_library_has_them(calc, air, humidity):
    psychrolib.SetUnitSystem(psychrolib.SI)
    ours = calc("dew-point", air=f"{air} °C", humidity=f"{100 * humidity} %")
    assert ours["dew_point"] - 273.15 == pytest.approx(psychrolib.GetTDewPointFromRelHum(air, humidity), abs=0.003)
    assert ours["vapor"] == pytest.approx(psychrolib.GetVapPresFromRelHum(air, humidity), rel=1e-6)


@pytest.mark.parametrize("heat,sky,transfer", [(30, 70, 5.5), (2, 0, 1.2), (5, 70, 6.5)])
def test_walls_at_dawn_as_resistances_in_series(calc, heat, sky, transfer):
    flow = heat - 0.3 * sky
    inside, wall = fsolve(
        lambda x: [(x[0] - x[1]) / 0.13 * 1.5 - flow, (x[1] - 10) / (1 / transfer - 0.13) * 1.5 - flow], [12, 11]
    )
    ours = calc(
        "enclosure-dawn", heat=f"{heat} W", sky=f"{sky} W/m²", sky_area="0.3 m²", area="1.5 m²", transfer=f"{transfer} W/(m²·K)",
        outside="10 °C",
    )
    assert ours["inside"] - 273.15 == pytest.approx(inside, abs=1e-6)
    assert ours["wall"] - 273.15 == pytest.approx(wall, abs=1e-6)
