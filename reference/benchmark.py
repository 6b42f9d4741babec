"""How long an answer takes, side by side: the program against a plain Python reference, in one run on one machine.

Run with `python reference/benchmark.py` from anywhere. Nothing here passes or fails: it prints medians and their ratio.
Close other programs first: the load of the machine is printed, and it moves every figure.
The reference does far less than the program: it reads the same two files, validates them against the schemas and works
three formulas with numpy, where the program answers every question it covers for the site, in the middle and at the worst.
"""

import datetime
import json
import os
import statistics
import subprocess
import sys
import time
import tomllib
from pathlib import Path

import jsonschema
import numpy
from measure import si

ROOT = Path(__file__).resolve().parent.parent
RUNS = 20
BOATYARD = ROOT / "examples/boatyard"
AIM = 0.050
TRAVEL = {
    "travel": "20 ft 8 in", "cruise_speed": "0.85 ft/s", "acceleration": "0.8 ft/s²", "deceleration": "0.8 ft/s²",
    "creep_speed": "0.3 ft/s", "creep_distance": "12 in",
}


def median_of(work) -> float:
    """Median time of twenty runs in seconds, after one that is not counted."""
    work()
    times = []
    for _ in range(RUNS):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return statistics.median(times)


def whole(*command: str):
    """One whole process, from its start to its end, output thrown away."""

    def work():
        done = subprocess.run(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, cwd=ROOT)
        assert done.returncode in (0, 1), command

    return work


def as_json(value):
    """TOML has days; JSON has text."""
    if isinstance(value, dict):
        return {key: as_json(item) for key, item in value.items()}
    if isinstance(value, list):
        return [as_json(item) for item in value]
    return value.isoformat() if isinstance(value, datetime.date) else value


def travel_time(motion: dict, travel: str) -> float:
    way, v, a, b, vc, dc = (si(text) for text in (travel, *(motion[key] for key in list(TRAVEL)[1:])))
    lengths = numpy.array([v**2 / (2 * a), way - dc - v**2 / (2 * a) - (v**2 - vc**2) / (2 * b), (v**2 - vc**2) / (2 * b), dc - vc**2 / (2 * b)])
    means = numpy.array([v / 2, v, (v + vc) / 2, vc])
    return float(numpy.sum(lengths / means) + vc / b)


def python_reference() -> tuple[float, float, float]:
    """Reads and validates the boatyard; travel time, rolling and slope force, wind pressure by the bare formulas."""
    site = tomllib.loads((BOATYARD / "site.toml").read_text(encoding="utf-8"))
    parts = tomllib.loads((BOATYARD / "parts.toml").read_text(encoding="utf-8"))
    for value, name in ((site, "site"), (parts, "parts")):
        schema = json.loads((ROOT / f"docs/{name}.schema.json").read_text(encoding="utf-8"))
        jsonschema.Draft202012Validator(schema).validate(as_json(value))
    gate = site["gate"][0]
    weight = si(gate["leaf"][0]["mass"]) * 9.80665
    angle = numpy.arctan(float(gate["slope"].split()[0]))
    force = weight * (numpy.cos(angle) * 0.02 / 3 + numpy.sin(angle))
    wind = 0.00256 * 2.01 * (15 / 700) ** (2 / 11.5) * numpy.square(120.0) * 47.88
    return travel_time(gate["motion"], gate["travel"]), float(force), float(wind)


def line(what: str, seconds: float) -> None:
    print(f"  {what:<66}{seconds * 1000:9.2f} ms")


def main() -> None:
    ours = os.environ.get("GATEWRIGHT", str(ROOT / "target/release/gatewright"))
    here = str(Path(__file__).resolve())
    check = median_of(whole(ours, "check", "examples/boatyard"))
    calc = median_of(whole(ours, "calc", "trapezoidal-travel", *(f"{key}={value}" for key, value in TRAVEL.items())))
    bare = median_of(whole(sys.executable, "-c", "pass"))
    fresh = median_of(whole(sys.executable, here, "reference"))
    warm = median_of(python_reference)
    warm_travel = median_of(lambda: travel_time(TRAVEL, TRAVEL["travel"]))
    print(f"Medians of {RUNS} runs, {os.cpu_count()} processors, load {os.getloadavg()[0]:.1f}, Python {sys.version.split()[0]}")
    line("gatewright check boatyard, whole process", check)
    line("Python reference, whole process with its imports", fresh)
    line("Python that does nothing, whole process", bare)
    line("Python reference, its work alone in a process already running", warm)
    line("gatewright calc trapezoidal-travel, whole process", calc)
    line("the same travel time in numpy, in a process already running", warm_travel)
    print(f"  whole process against whole process: the reference takes {fresh / check:.1f} times as long as check")
    print(f"  its work alone against the whole of check: {warm / check:.1f} times")
    print(f"  check within {AIM * 1000:.0f} ms: {'yes' if check < AIM else 'no'}")


if __name__ == "__main__":
    if sys.argv[1:] == ["reference"]:
        print(python_reference())
    else:
        main()
