"""Cameras worked by other means: projection by OpenCV, hidden ground by rays against boxes, a year of low sun by pvlib."""

import os
import subprocess

import cv2
import numpy as np
import pandas
import pvlib
import pytest
from conftest import ROOT

EXAMPLE = os.environ.get("GATEWRIGHT_EYE", str(ROOT / "target/release/examples/eye"))
DISC = 0.26667


def asked(what: str) -> list[dict]:
    if not os.path.exists(EXAMPLE):
        pytest.skip("cargo build --release --package sim --example eye makes the program for this")
    done = subprocess.run([EXAMPLE, what], capture_output=True, encoding="utf-8")
    assert done.returncode == 0, done.stderr
    first, *lines = done.stdout.splitlines()
    names = first.split(",")
    return [
        {name: value if name == "boxes" else float(value) for name, value in zip(names, line.split(","))}
        for line in lines
    ]


def turned(row: dict) -> np.ndarray:
    """The rotation from the site to a camera of the other library: x right, y down, z ahead."""
    to_camera = np.array([[0.0, -1.0, 0.0], [0.0, 0.0, -1.0], [1.0, 0.0, 0.0]])
    pan, tilt, roll = np.radians([row["pan"], row["tilt"], row["roll"]])
    about_up = cv2.Rodrigues(np.array([0.0, 0.0, -pan]))[0]
    about_right = cv2.Rodrigues(np.array([tilt, 0.0, 0.0]))[0]
    about_ahead = cv2.Rodrigues(np.array([0.0, 0.0, -roll]))[0]
    return about_ahead @ about_right @ to_camera @ about_up


def matrix(row: dict) -> np.ndarray:
    scale = row["focal"] / row["sensor"] * row["across"]
    return np.array([[scale, 0, row["across"] / 2], [0, scale, row["down"] / 2], [0, 0, 1]])


def test_points_land_where_opencv_puts_them():
    rows = asked("camera")
    assert len(rows) > 1000
    for row in rows:
        rotation = turned(row)
        place = np.array([row["x"], row["y"], row["z"]])
        point = np.array([[row["px"], row["py"], row["pz"]]])
        found, _ = cv2.projectPoints(point, cv2.Rodrigues(rotation)[0], -rotation @ place, matrix(row), None)
        depth = (rotation @ (point[0] - place))[2]
        assert depth == pytest.approx(row["depth"], abs=1e-6)
        # To a thousandth of a pixel, and to a millionth of what lies far outside the picture.
        assert found[0][0] == pytest.approx([row["u"], row["v"]], rel=1e-6, abs=1e-3)


def cut(eye: np.ndarray, ground: np.ndarray, box: np.ndarray) -> np.ndarray:
    """Which straight lines from the eye to the ground go through a box, slab by slab."""
    way = ground - eye
    with np.errstate(divide="ignore", invalid="ignore"):
        one, other = (box[:3] - eye) / way, (box[3:] - eye) / way
    enters = np.minimum(one, other).max(axis=1)
    leaves = np.maximum(one, other).min(axis=1)
    return (leaves > np.maximum(enters, 0)) & (enters < 1)


def test_hidden_ground_by_rays_against_boxes():
    rows = asked("seen")
    assert len(rows) == 40
    for row in rows:
        share = (np.arange(200) + 0.5) / 200
        x, y = np.meshgrid(row["west"] + share * (row["east"] - row["west"]), row["south"] + share * (row["north"] - row["south"]))
        ground = np.column_stack([x.ravel(), y.ravel(), np.zeros(x.size)])
        eye = np.array([row["x"], row["y"], row["z"]])
        seen = (ground - eye) @ turned(row).T
        with np.errstate(divide="ignore", invalid="ignore"):
            pixel = seen @ matrix(row).T
            pixel = pixel[:, :2] / pixel[:, 2:]
        framed = (seen[:, 2] > 0) & (pixel >= 0).all(axis=1)
        framed &= (pixel[:, 0] <= row["across"]) & (pixel[:, 1] <= row["down"])
        hidden = np.zeros(len(ground), dtype=bool)
        for text in row["boxes"].split(";"):
            west, south, east, north, bottom, top = map(float, text.split())
            if west <= eye[0] <= east and south <= eye[1] <= north:
                continue
            hidden |= cut(eye, ground, np.array([west, south, bottom, east, north, top]))
        assert framed.mean() == pytest.approx(1 - row["outside"], abs=0.01)
        assert (framed & ~hidden).mean() == pytest.approx(row["seen"], abs=0.01)


def suns(latitude: float, longitude: float, zone: float) -> pandas.DataFrame:
    """Each five minutes of the local year, with the refraction that the algorithm itself has."""
    times = pandas.date_range("2026-01-01", periods=365 * 288, freq="5min", tz="UTC") - pandas.Timedelta(hours=zone)
    return pvlib.solarposition.spa_python(
        times, latitude, longitude, altitude=0, pressure=101000, temperature=10, delta_t=69.0
    )


def directions(azimuth, elevation) -> np.ndarray:
    azimuth, elevation = np.radians(azimuth), np.radians(elevation)
    flat = np.cos(elevation)
    return np.column_stack([flat * np.sin(azimuth), flat * np.cos(azimuth), np.sin(elevation) * np.ones_like(azimuth)])


def inside(row: dict, sun: np.ndarray) -> np.ndarray:
    """Whether the sun stands in what looks."""
    azimuth, elevation = np.array([row["azimuth"]]), np.array([row["elevation"]])
    ahead = directions(azimuth, elevation)[0]
    right = directions(azimuth + 90, np.zeros(1))[0]
    up = np.cross(right, ahead)
    z, x, y = sun @ ahead, sun @ right, sun @ up
    below = np.degrees(np.arctan2(y, z)) - DISC <= row["hood"]
    if row["kind"] == 0:
        return below & (np.degrees(np.arccos(np.clip(z, -1, 1))) <= row["first"] + DISC)
    if row["kind"] == 1:
        aside = np.abs(np.degrees(np.arctan2(x, z)))
        return below & (np.abs(np.degrees(np.arcsin(y))) <= row["second"] + DISC) & (aside <= row["first"] + DISC)
    roll = np.radians(row["roll"])
    # The picture turns with the camera: right of it goes down as it rolls clockwise.
    across = x * np.cos(roll) - y * np.sin(roll)
    upward = x * np.sin(roll) + y * np.cos(roll)
    aside = np.abs(np.degrees(np.arctan2(across, z)))
    above = np.abs(np.degrees(np.arctan2(upward, z)))
    return below & (z > 0) & (aside <= row["first"] + DISC) & (above <= row["second"] + DISC)


def test_a_year_of_low_sun_as_pvlib_has_it():
    rows = asked("glare")
    assert len(rows) == 48
    known = {}
    for row in rows:
        place = (row["latitude"], row["longitude"], row["zone"])
        if place not in known:
            known[place] = suns(*place)
        year = known[place]
        high = year["apparent_elevation"].to_numpy()
        sun = directions(year["azimuth"].to_numpy(), high)
        found = inside(row, sun) & (high + DISC > row["ridge"])
        hours = found.sum() / 12
        # Steps at the very rim may fall to either side.
        assert row["hours"] == pytest.approx(hours, rel=0.002, abs=0.35), row
        if hours == 0:
            assert row["worst_day"] == -1
            continue
        step = int(row["worst_day"] * 288 + round(row["worst_second"] / 300))
        assert found[max(step - 1, 0) : step + 2].any(), row
