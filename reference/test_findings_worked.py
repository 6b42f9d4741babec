"""Findings of the boatyard, worked again from its site and parts files with plain arithmetic.

Half a percent is allowed where a table printed in rounded figures stands behind a value, as with conduit areas; the rest is held closer.
"""

import math

import pytest
from conftest import finding, site_of, with_part
from measure import si
from scipy.optimize import brentq

CLOSE = 5e-3
G = 9.80665
FOOT = 0.3048
POUND_FORCE = 4.4482216152605
# Ohm for each thousand feet of stranded copper at 75 °C, and inside areas in square inches: NFPA 70 chapter 9 tables 8 and 4 (memory).
STRANDED = {"8 AWG": 0.778, "12 AWG": 1.98, "14 AWG": 3.14, "18 AWG": 7.95}
BORE = {("PVC-40", "3/4"): 0.508, ("PVC-40", "1"): 0.832, ("PVC-40", "1-1/4"): 1.453, ("PVC-40", "1-1/2"): 1.986,
        ("PVC-80", "1-1/4"): 1.237, ("PVC-80", "2"): 2.874, ("PVC-80", "2-1/2"): 4.119}
SITE = site_of("boatyard")
GATE = SITE["gate"][0]


def entry(kind: str, name: str) -> dict:
    return with_part(kind, next(each for each in SITE[kind] if each["id"] == name))


def celsius(text: str) -> float:
    return (float(text.split()[0]) - 32) / 1.8


def slope() -> float:
    return float(GATE["slope"].split()[0])


def of_conductor(run: dict) -> float:
    """Ohm for each meter: the printed table or the standard resistivity of copper (IEC 60028) over the metal of the gauge (ASTM B258), the larger."""
    warm = celsius(run["hottest"])
    table = STRANDED[run["size"]] / (1000 * FOOT) * (1 + 0.00323 * (warm - 75))
    across = math.pi / 4 * (0.127 * 92 ** ((36 - int(run["size"].split()[0])) / 39)) ** 2
    return max(table, 1.02 / 58 / across * (1 + 0.00393 * (warm - 20)))


def ohms_to(name: str, supply: str, length=None) -> float:
    """Both conductors from a supply, the longest that they may be, and the fuse at their beginning; the first cable of several."""
    run = next(entry("cable", each["id"]) for each in SITE["cable"] if each["from"] == supply and each["to"] == name)
    fuse = run.get("fuse") or next((each for each in SITE["device"] if each["id"] == name), {}).get("fuse")
    each = of_conductor(run)
    return 2 * (length or high)(run["length"]) * each + si(entry("fuse", fuse)["resistance"])


def at_power(volts: float, ohms: float, watts: float) -> float:
    """Voltage that reaches a load of constant power: the upper root of V² - U V + P R."""
    return volts / 2 + math.sqrt(volts * volts / 4 - watts * ohms)


def tolerance(text: str) -> float:
    if "±" not in text:
        return 0.0
    after = text.split("±")[1].split(",")[0]
    return si(text) * si(after) if "%" in after else si(after)


def high(text: str) -> float:
    """The upper end of a value with its tolerance."""
    return si(text) + tolerance(text)


def low(text: str) -> float:
    return si(text) - tolerance(text)


def test_voltage_at_the_reader_on_its_converter(answers):
    load, volts = entry("device", "reader-entry"), si(entry("supply", "supply-12")["voltage"])
    watts = si(load["peak_current"]) * si(load["voltage"])
    ours = finding(answers, "boatyard", "power-voltage-at-device/reader-entry")
    assert ours["capacity"]["value"] == pytest.approx(at_power(volts, ohms_to("reader-entry", "supply-12", si), watts), rel=1e-9)
    assert ours["demand"]["value"] == si(load["least_voltage"])


def loads_at_the_end() -> dict[str, tuple[str, float, float]]:
    """What hangs on the 24 V supply as the gate starts at night: how it draws, how much, and the ohms on its way."""
    simple = ("edge-leading", "edge-trailing", "edge-catch", "edge-guide-out", "edge-guide-in", "light-warning", "lock-catch")
    steady = ("beam-far-out", "beam-near-out", "beam-near-in", "beam-far-in", "keypad-entry", "receiver-remote", "controller-access", "net-switch")
    loads = {"drive": ("amperes", high(entry("operator", "drive")["starting_current"]), ohms_to("drive", "supply-24"))}
    for name in (*simple, *steady):
        device = entry("device", name)
        amperes = si(device["peak_current" if name == "lock-catch" else "current"])
        loads[name] = ("amperes", amperes, ohms_to(name, "supply-24")) if name in simple else ("watts", amperes * si(device["voltage"]), ohms_to(name, "supply-24"))
    reader, converter = entry("device", "reader-entry"), entry("supply", "supply-12")
    volts = low(converter["voltage"])
    watts = si(reader["current"]) * si(reader["voltage"])
    at_reader = at_power(volts, ohms_to("reader-entry", "supply-12", high), watts)
    loads["supply-12"] = ("watts", volts * watts / at_reader / si(converter["efficiency"]), ohms_to("supply-12", "supply-24"))
    return loads


def terminals_at_the_end(loads: dict) -> float:
    """Voltage at the supply's terminals: the battery at its end, less what all currents lose in it and in its cable."""
    battery, run = entry("battery", "battery"), entry("cable", "w-45")
    each = of_conductor(run)
    behind = si(battery["inner_resistance"]) + 2 * high(run["length"]) * each

    def left(volts: float) -> float:
        given = sum(much if how == "amperes" else much / at_power(volts, ohms, much) for how, much, ohms in loads.values())
        return si(battery["end_voltage"]) - behind * given - volts

    return brentq(left, 15.0, si(battery["end_voltage"]), xtol=1e-12)


@pytest.mark.parametrize("device", ["lock-catch", "light-warning", "keypad-entry", "net-switch"])
def test_voltage_with_the_battery_at_its_end(answers, device):
    loads = loads_at_the_end()
    volts = terminals_at_the_end(loads)
    how, much, _ = loads[device]
    nominal = ohms_to(device, "supply-24", si)
    theirs = volts - much * nominal if how == "amperes" else at_power(volts, nominal, much)
    ours = finding(answers, "boatyard", f"power-voltage-at-device/{device}")
    assert ours["capacity"]["value"] == pytest.approx(theirs, rel=1e-6)


@pytest.mark.parametrize("conduit", [each["id"] for each in SITE["conduit"]])
def test_conduit_fill(answers, conduit):
    cables = [with_part("cable", cable) for cable in SITE["cable"] if conduit in cable.get("route", [])]
    area = sum(math.pi / 4 * si(cable["diameter"]) ** 2 for cable in cables)
    pipe = next(pipe for pipe in SITE["conduit"] if pipe["id"] == conduit)
    ours = finding(answers, "boatyard", f"route-fill/{conduit}")
    assert ours["demand"]["value"] == pytest.approx(area / (BORE[pipe["kind"], pipe["trade_size"]] * 0.0254**2), rel=CLOSE)
    assert ours["capacity"]["value"] == {1: 0.53, 2: 0.31}.get(len(cables), 0.40)


def test_power_at_the_camera_of_the_yard(answers):
    run, camera, switch = entry("cable", "w-12"), entry("device", "camera-yard"), entry("device", "net-switch")
    area = math.pi / 4 * (0.127e-3 * 92 ** ((36 - 23) / 39)) ** 2
    wire = 1.7241e-8 / area * (1 + 0.00393 * (celsius(run["hottest"]) - 20)) * si(run["length"])
    power, current = si(camera["power"]), 0.0
    for _ in range(200):
        current = power / (si(switch["port_voltage"]) - current * wire)
    ours = finding(answers, "boatyard", "network-poe-at-device/camera-yard")
    step = next(step for step in ours["working"] if step["calculation"] == "poe-power")
    gives = {value["name"]: value["value"]["value"] for value in step["gives"]}
    assert gives["current"] == pytest.approx(current, rel=CLOSE)
    assert gives["source_power"] == pytest.approx(power + current**2 * wire, rel=CLOSE)
    assert (ours["demand"]["value"], ours["capacity"]["value"]) == (21.0, 25.5)


def wind_on_the_leaf(miles_per_hour: float, directionality: float) -> tuple[float, float]:
    """Largest pressure and whole force by ASCE 7-16, 29.3.1, Case C, from its printed rows for 3 and 4 (memory)."""
    leaf = GATE["leaf"][0]
    width, height = si(leaf["length"]), si(leaf["height"])
    top = height + si(leaf["ground_clearance"])
    exposure = 2.01 * (15 / 700) ** (2 / 11.5)
    elevation = math.exp(-0.0000362 * si(SITE["place"]["elevation"]) / FOOT)
    pressure = 0.00256 * exposure * directionality * elevation * miles_per_hour**2 * POUND_FORCE / FOOT**2
    share, openings = width / height - 3, 1 - (1 - float(leaf["solidity"].split()[0])) ** 1.5
    strips = [low + share * (high - low) for low, high in ((2.60, 2.90), (1.70, 1.90), (1.15, 1.30))]
    ground = 1.8 - height / top if height / top > 0.8 else 1.0
    common = pressure * 0.85 * openings * ground
    rest = width - 2 * height
    # The row for 4 alone has a fourth strip, 1.10 from three heights on.
    third = strips[2] * min(rest, height) + 1.10 * max(rest - height, 0)
    return common * strips[0], common * height * ((strips[0] + strips[1]) * height + third)


def test_wind_on_the_leaf(answers):
    ours = finding(answers, "boatyard", "wind-pressure/leaf")
    assert ours["demand"]["value"] == pytest.approx(wind_on_the_leaf(120, 0.85)[0], rel=CLOSE)


def test_force_on_the_sliding_leaf_term_by_term(answers):
    weight, angle = si(GATE["leaf"][0]["mass"]) * G, math.atan(slope())
    wheels, motion = GATE["wheels"], GATE["motion"]
    arm = 0.02 * 0.0254  # steel on steel, drive handbooks
    terms = {
        "rolling": weight * math.cos(angle) * ((arm + 0.01 * si(wheels["axle_diameter"]) / 2) / (si(wheels["diameter"]) / 2) + 0.005),
        "slope_force": weight * math.sin(angle),
        "seals": si(GATE["seal_force"]),
        "debris": si(GATE["debris_force"]),
        "inertia": weight / G * 1.2 * si(motion["acceleration"]),
    }
    ours = finding(answers, "boatyard", "force-slide/drive")
    step = next(step for step in ours["working"] if step["calculation"] == "slide-gate-force")
    gives = {value["name"]: value["value"]["value"] for value in step["gives"]}
    for name, wanted in terms.items():
        assert gives[name] == pytest.approx(wanted, rel=CLOSE), name
    wind = wind_on_the_leaf(35, 1.0)[1]
    assert gives["guides"] == pytest.approx(0.15 * wind, rel=CLOSE)
    assert ours["demand"]["value"] == pytest.approx(1.25 * (sum(terms.values()) + 0.15 * wind), rel=CLOSE)
    assert ours["capacity"]["value"] == pytest.approx(210 * POUND_FORCE, rel=CLOSE)


@pytest.mark.parametrize("device", ["beam-far-out", "beam-far-in", "edge-leading", "edge-trailing"])
def test_stopping_distance(answers, device):
    speed, brake = si(GATE["motion"]["cruise_speed"]), si(GATE["motion"]["stopping_deceleration"])
    waiting = si(entry("device", device)["response_time"]) + si(entry("operator", "drive")["reaction_time"])
    # The leaf climbs as it opens: closing runs downhill and takes longer to stop.
    downhill = brake - G * math.sin(math.atan(slope()))
    uphill = brake + G * math.sin(math.atan(slope()))
    ours = finding(answers, "boatyard", f"motion-stopping-distance/{device}")
    held = downhill if "closing" in entry("device", device)["guards"] else uphill
    assert ours["demand"]["value"] == pytest.approx(speed * waiting + speed**2 / (2 * held), rel=1e-6)


def test_travel_time_from_the_area_under_the_speed(answers):
    motion, way = GATE["motion"], si(GATE["travel"])
    v, a, b, vc, dc = (si(motion[key]) for key in ("cruise_speed", "acceleration", "deceleration", "creep_speed", "creep_distance"))
    run = way - dc - v**2 / (2 * a) - (v**2 - vc**2) / (2 * b)
    creep = (dc - vc**2 / (2 * b)) / vc
    ours = finding(answers, "boatyard", "motion-travel-time/main")
    assert ours["demand"]["value"] == pytest.approx(v / a + run / v + v / b + creep, rel=1e-6)


def test_heat_in_the_box(answers):
    box = entry("enclosure", "box")
    inside = [with_part(kind, each) for kind in ("device", "supply") for each in SITE[kind] if each.get("enclosure") == "box"]
    heat = sum(si(each["heat"]) for each in inside if "heat" in each) + sum(each["count"] * si(each["heat"]) for each in box["mounted"])
    sun = 0.3 * 900 * 1.6 * FOOT**2
    rise = (heat + sun) / (6.5 * 17.5 * FOOT**2)
    ours = finding(answers, "boatyard", "enclosure-hot/box")
    assert ours["demand"]["value"] - 273.15 == pytest.approx(celsius(SITE["climate"]["hottest"]) + rise, rel=1e-6)
