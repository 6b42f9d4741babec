"""Weather files as another library reads them: an invented year written in both formats, read by pvlib and by the program."""

import csv
import io
import os
import subprocess

import numpy as np
import pandas
import pvlib
import pytest
from conftest import ROOT

EXAMPLE = os.environ.get("GATEWRIGHT_WEATHER", str(ROOT / "target/release/examples/weather"))
STATION = {"latitude": 41.52, "longitude": -71.28, "ahead": -5.0, "altitude": 3.0}
HOURS = 8760


def invented() -> pandas.DataFrame:
    """A year that nobody measured: waves and a fixed sequence of chances, rounded as files print them."""
    hour = np.arange(HOURS)
    chance = np.random.default_rng(20260501).random(HOURS)
    season = -np.cos(2 * np.pi * (hour / 24 - 20) / 365)
    day = -np.cos(2 * np.pi * (hour % 24 - 3) / 24)
    air = (10 + 12 * season + 4 * day + 3 * chance).round(1)
    sun = np.maximum(0, np.sin(np.pi * (hour % 24 - 5) / 14)) * (hour % 24 > 5) * (hour % 24 < 19)
    level = (sun * (500 + 250 * season) * (0.4 + 0.6 * chance)).round()
    diffuse = (level * (0.3 + 0.5 * chance)).round()
    direct = ((level - diffuse) * 1.4).round()
    return pandas.DataFrame(
        {"air": air, "dew_point": (air - 1 - 9 * chance).round(1), "level": level, "direct": direct, "diffuse": diffuse}
    )


def stamps() -> list[tuple[int, int, int]]:
    days = pandas.date_range("2001-01-01", periods=365)
    return [(day.month, day.day, hour) for day in days for hour in range(1, 25)]


def as_epw(year: pandas.DataFrame) -> str:
    heads = ["DESIGN CONDITIONS,0", "TYPICAL/EXTREME PERIODS,0", "GROUND TEMPERATURES,0", "HOLIDAYS/DAYLIGHT SAVINGS,No,0,0,0"]
    heads += ["COMMENTS 1,invented", "COMMENTS 2,invented", "DATA PERIODS,1,1,Data,Sunday,1/1,12/31"]
    at = STATION
    lines = [f"LOCATION,Invented,XX,XXX,made up,000000,{at['latitude']},{at['longitude']},{at['ahead']},{at['altitude']}", *heads]
    for (month, day, hour), row in zip(stamps(), year.itertuples()):
        before = [2001, month, day, hour, 0, "?9?9", row.air, row.dew_point, 70, 101300, 0, 0, 300]
        after = [int(row.level), int(row.direct), int(row.diffuse), 0, 0, 0, 0, 180, 3.1, 5, 5, 20, 77777, 9, 999999999, 15, 0.1, 0, 88, 0.2, 0, 1]
        lines.append(",".join(map(str, before + after)))
    return "\n".join(lines) + "\n"


def as_tmy3(year: pandas.DataFrame) -> str:
    text = io.StringIO()
    text.write(f"000000,\"INVENTED PLACE\",XX,{STATION['ahead']},{STATION['latitude']},{STATION['longitude']},3\n")
    write = csv.writer(text, lineterminator="\n")
    heads = ["Date (MM/DD/YYYY)", "Time (HH:MM)", "ETR (W/m^2)", "ETRN (W/m^2)", "GHI (W/m^2)", "GHI source", "GHI uncert (%)"]
    heads += ["DNI (W/m^2)", "DNI source", "DNI uncert (%)", "DHI (W/m^2)", "DHI source", "DHI uncert (%)", "Dry-bulb (C)", "Dew-point (C)"]
    write.writerow(heads)
    for (month, day, hour), row in zip(stamps(), year.itertuples()):
        sun = [int(row.level), 1, 10, int(row.direct), 1, 10, int(row.diffuse), 1, 10]
        write.writerow([f"{month:02}/{day:02}/1990", f"{hour:02}:00", 0, 0, *sun, row.air, row.dew_point])
    return text.getvalue()


def ours(path) -> pandas.DataFrame:
    if not os.path.exists(EXAMPLE):
        pytest.skip("cargo build --release --package site --example weather makes the program for this")
    done = subprocess.run([EXAMPLE, str(path)], capture_output=True, encoding="utf-8")
    assert done.returncode == 0, done.stdout + done.stderr
    return pandas.read_csv(io.StringIO(done.stdout))


def same(read: pandas.DataFrame, library: pandas.DataFrame, columns: dict[str, str]):
    assert len(read) == len(library) == HOURS
    for name, column in columns.items():
        assert np.allclose(read[name], library[column], atol=1e-6), name
    for name in ("latitude", "longitude", "ahead"):
        assert read[name].iloc[0] == pytest.approx(STATION[name], abs=1e-6)


def test_epw_as_the_library_reads_it(tmp_path):
    path = tmp_path / "typical.epw"
    path.write_text(as_epw(invented()), encoding="utf-8")
    library, about = pvlib.iotools.read_epw(str(path), coerce_year=2001)
    assert about["latitude"] == STATION["latitude"] and about["TZ"] == STATION["ahead"]
    columns = {"air": "temp_air", "dew_point": "temp_dew", "level": "ghi", "direct": "dni", "diffuse": "dhi"}
    same(ours(path), library, columns)
    # Both know a file's hours by their ends: the library labels each with its beginning.
    assert library.index[0].hour == 0


def test_tmy3_as_the_library_reads_it(tmp_path):
    path = tmp_path / "typical.csv"
    path.write_text(as_tmy3(invented()), encoding="utf-8")
    library, about = pvlib.iotools.read_tmy3(str(path), coerce_year=1990, map_variables=True)
    assert about["latitude"] == STATION["latitude"] and about["TZ"] == STATION["ahead"]
    columns = {"air": "temp_air", "dew_point": "temp_dew", "level": "ghi", "direct": "dni", "diffuse": "dhi"}
    same(ours(path), library, columns)
    # The library labels an hour with its end.
    assert library.index[0].hour == 1


def test_both_formats_read_alike(tmp_path):
    year = invented()
    (tmp_path / "a.epw").write_text(as_epw(year), encoding="utf-8")
    (tmp_path / "a.csv").write_text(as_tmy3(year), encoding="utf-8")
    assert ours(tmp_path / "a.epw").equals(ours(tmp_path / "a.csv"))
