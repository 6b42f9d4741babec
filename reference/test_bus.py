"""Reader buses, supervised loops, locks and speech, worked again by other routes and held against the findings of the sites."""

import math
import random

import pytest
from bus_by_numpy import bands, idle, message, seconds
from conftest import finding, site_of, with_part
from measure import si

GOOD = ("boatyard", "vineyard", "quarry", "clinic")
LIGHT = 299_792_458.0
FOOT = 0.3048


def tolerance(text: str) -> float:
    if "±" not in text:
        return 0.0
    after = text.split("±")[1].split(",")[0].strip()
    return si(text) * float(after.split()[0]) / 100 if "%" in after else si(after)


def both(text: str) -> tuple[float, float]:
    return si(text) - tolerance(text), si(text) + tolerance(text)


def device(site: str, name: str) -> dict:
    entry = next(each for each in site_of(site)["device"] if each["id"] == name)
    return with_part("device", entry, site)


def test_frames_close_with_the_printed_check_and_count_as_ours(calc):
    poll, ident = message(0x65, 4, 0x60, b"", False), message(0x65, 5, 0x61, b"\0", False)
    assert poll[-2:].hex() == "6090" and ident[-2:].hex() == "e94d"
    for data in (0, 1, 12, 15, 16, 40):
        for secure in (False, True):
            frame = message(1, 4, 0x50, bytes(data), secure)
            ours = calc("osdp-frame", data=data, channel="secure" if secure else "clear")
            assert ours["characters"] == len(frame) == int.from_bytes(frame[2:4], "little")


def test_idle_voltage_is_that_of_the_whole_network(calc):
    chance = random.Random(485)
    for _ in range(12):
        bias, length, loads = chance.uniform(300, 1500), chance.uniform(1, 1200), chance.choice([1, 4, 16])
        per_meter = 0.0216
        lumped = [{"along": 0.0, "loads": 0, "end": 120.0, "biased": True}, {"along": length, "loads": loads, "end": 120.0}]
        ours = calc("bus-idle", supply="5 V", pull_up=f"{bias} ohm", pull_down=f"{bias} ohm", near="120 ohm", far="120 ohm",
                    line=f"{2 * per_meter * length} ohm", unit_loads=loads)
        near, far = idle(5.0, bias, lumped, per_meter)
        assert ours["near_voltage"] == pytest.approx(near, rel=1e-9)
        assert ours["far_voltage"] == pytest.approx(far, rel=1e-9)
        spread = [{"along": length * at / 8, "loads": loads / 9, "end": 120.0 if at in (0, 8) else None, "biased": at == 0} for at in range(9)]
        assert ours["far_voltage"] == pytest.approx(idle(5.0, bias, spread, per_meter)[-1], rel=0.01)


def test_bands_are_those_of_every_corner(calc):
    chance = random.Random(8)
    for _ in range(12):
        share, wire, contact = chance.uniform(0, 0.1), chance.uniform(0, 60), chance.uniform(0, 20)
        insulation, series, parallel = chance.uniform(5e3, 1e6), chance.choice([1000, 2200]), chance.choice([1000, 8200])
        ends = {"series": (series * (1 - share), series * (1 + share)), "parallel": (parallel * (1 - share), parallel * (1 + share))}
        ours = calc("supervised-loop", series_least=f"{ends['series'][0]} ohm", series_greatest=f"{ends['series'][1]} ohm",
                    parallel_least=f"{ends['parallel'][0]} ohm", parallel_greatest=f"{ends['parallel'][1]} ohm",
                    wire=f"{wire} ohm", contact=f"{contact} ohm", insulation=f"{insulation} ohm")
        theirs = bands(ends["series"], ends["parallel"], wire, contact, insulation)
        assert ours["short_greatest"] == pytest.approx(theirs["short"][1], rel=1e-9, abs=1e-9)
        for state in ("closed", "open"):
            assert ours[f"{state}_least"] == pytest.approx(theirs[state][0], rel=1e-9)
            assert ours[f"{state}_greatest"] == pytest.approx(theirs[state][1], rel=1e-6)
        assert ours["cut_least"] == pytest.approx(theirs["cut"][0], rel=1e-6)


@pytest.mark.parametrize("site", GOOD)
def test_the_line_of_each_site(answers, site):
    bus = site_of(site)["bus"][0]
    nodes = [(node, device(site, node["device"])["data_port"]) for node in bus["node"]]
    rise = min(si(port["rise_time"]) for _, port in nodes)
    thrown = [abs(si(node["termination"]) - si(bus["impedance"])) / (si(node["termination"]) + si(bus["impedance"]))
              for node, _ in nodes if "termination" in node]
    figures = {
        "length of the line": (si(bus["node"][-1]["along"]), min(1200.0, 1e8 / bus["bit_rate"])),
        "longest stub on the line": (max(si(node["stub"]) for node, _ in nodes), rise / 10 * float(bus["velocity"].split(",")[0]) * LIGHT),
        "unit loads on the line": (sum(float(port["unit_load"]) for _, port in nodes), 32.0),
        "share of the wave that a terminator throws back": (max(thrown), 0.2),
    }
    ours = finding(answers, site, f"bus-line/{bus['id']}")
    worst = max(figures.items(), key=lambda item: item[1][0] / item[1][1])
    assert ours["demand"]["label"] == worst[0]
    assert ours["demand"]["value"] == pytest.approx(worst[1][0], rel=1e-9)
    assert ours["capacity"]["value"] == pytest.approx(worst[1][1], rel=1e-9)
    assert ours["verdict"] == "holds"


@pytest.mark.parametrize("site", GOOD)
def test_from_card_to_click_on_each_site(answers, site):
    bus = site_of(site)["bus"][0]
    asked = [device(site, node["device"]) for node in bus["node"][1:]]
    assert len({each["data_line"]["address"] for each in asked}) == len(asked)
    reply = max(si(each["data_port"]["reply_time"]) for each in asked)
    card = b"\0\0\x40\0" + bytes(8)
    turn = seconds([message(0, 4, 0x60, b"", True), message(0x80, 4, 0x50, card, True)], bus["bit_rate"], reply)
    wait = max(len(asked) * turn, si(bus["poll_period"]) + turn) + si(bus["decision_time"])
    ours = finding(answers, site, f"bus-address-and-time/{bus['id']}")
    assert ours["demand"]["value"] == pytest.approx(wait, rel=1e-9)


@pytest.mark.parametrize("site", GOOD)
def test_loops_of_each_site(answers, site):
    for entry in site_of(site)["device"]:
        wired = entry.get("supervised_loop")
        if wired is None:
            continue
        run = with_part("cable", next(each for each in site_of(site)["cable"] if each["to"] == entry["id"]), site)
        ours = finding(answers, site, f"bus-supervised-loop/{entry['id']}")
        if ours["verdict"] != "holds":
            assert ours["missing"]
            continue
        # Any copper conductor of these sites has less than 40 ohm a kilometer when hot.
        wire = 2 * 0.04 * both(run["length"])[1]
        theirs = bands(both(wired["series"]), both(wired["parallel"]), wire, both(wired["contact_resistance"])[1], both(wired["insulation"])[0])
        limits = [both(wired[key]) for key in ("short_below", "closed_below", "open_below")]
        for limit, below, above in zip(limits, ("short", "closed", "open"), ("closed", "open", "cut"), strict=True):
            assert theirs[below][1] < limit[0] and limit[1] < theirs[above][0]
        worst = max(limits[0][1] / theirs["closed"][0], theirs["closed"][1] / limits[1][0], limits[1][1] / theirs["open"][0], theirs["open"][1] / limits[2][0])
        assert ours["ratio"] == pytest.approx(worst, rel=5e-3)


@pytest.mark.parametrize("site", GOOD)
def test_locks_of_each_site(answers, site):
    for entry in site_of(site)["device"]:
        if "lock" not in entry:
            continue
        times = {key: si(value) for key, value in entry["lock"].items() if isinstance(value, str)}
        pairs = [(times["release_time"] + 0.1, times["drive_delay"]), (times["rests_after"], times["locks_after"])]
        demand, capacity = max(pairs, key=lambda pair: pair[0] / pair[1])
        ours = finding(answers, site, f"release-unlocks-first/{entry['id']}")
        assert (ours["demand"]["value"], ours["capacity"]["value"]) == (pytest.approx(demand), pytest.approx(capacity))


@pytest.mark.parametrize("site", GOOD)
def test_speech_at_each_site(answers, site):
    speech = device(site, "intercom-entry")["speech"]
    away = 20 * math.log10(si(speech["distance"]))
    heard, hears = round(speech["speaker_decibels"] - away), round(speech["voice_decibels"] - away)
    assert heard >= speech["noise_decibels"] + 6 and hears >= speech["microphone_noise_decibels"] + 6
    pairs = [(speech["noise_decibels"] + 6, heard), (speech["microphone_noise_decibels"] + 6, hears), (si(speech["delay"]), 0.15)]
    demand, capacity = max(pairs, key=lambda pair: pair[0] / pair[1])
    ours = finding(answers, site, "intercom-heard/intercom-entry")
    assert (ours["demand"]["value"], ours["capacity"]["value"]) == (pytest.approx(demand), pytest.approx(capacity))
