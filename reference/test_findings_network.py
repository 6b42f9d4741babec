"""Findings of the data network of the four sites, worked again from their site and parts files with plain arithmetic and numpy."""

import ipaddress
import re

import numpy as np
import pytest
from conftest import finding, site_of, with_part

GOOD = ["boatyard", "vineyard", "quarry", "clinic"]
UNITS = {"ft": 0.3048, "in": 0.0254, "m": 1.0, "W": 1.0, "V": 1.0, "A": 1.0, "mA": 1e-3, "%": 0.01, "s": 1.0, "min": 60.0, "h": 3600.0,
         "days": 86400.0, "years": 365.25 * 86400.0, "Mbit/s": 1e6, "Gbit/s": 1e9, "TB": 8e12, "GB": 8e9}
# Class of IEEE 802.3 to the power that a port holds back for it (W), from the standard's public class table.
CLASS = {"1": 4.0, "2": 7.0, "3": 15.4, "4": 30.0, "5": 45.0, "6": 60.0, "7": 75.0, "8": 90.0}


def si(text: str) -> float:
    """The nominal value: `272 ft ± 4 ft, measured`."""
    value, unit = re.match(r"([\d.]+) ?(\S+)", re.split(r"±|,", text)[0].strip()).groups()
    return float(value) * UNITS[unit]


def celsius(text: str) -> float:
    value, unit = re.match(r"([\d.]+) ?(\S+)", text).groups()
    return (float(value) - 32) / 1.8 if unit.startswith("°F") else float(value)


class Net:
    """The devices and data cables of a site, parts laid under them."""

    def __init__(self, name: str):
        site = site_of(name)
        self.name, self.site = name, site
        self.device = {each["id"]: with_part("device", each, name) for each in site["device"]}
        cables = [with_part("cable", each, name) for each in site["cable"]]
        self.cable = [each for each in cables if each.get("carries") == "data"]

    def between(self, one: str, other: str) -> dict | None:
        return next((each for each in self.cable if {each["from"], each["to"]} == {one, other}), None)

    def up(self, device: str) -> str | None:
        return self.device[device].get("network", {}).get("plugged_into")

    def plugged(self, switch: str) -> list[str]:
        return [each for each in self.device if self.up(each) == switch]

    def fed(self, switch: str) -> list[str]:
        return [each for each in self.device if self.device[each].get("supply") == switch]

    def fiber(self, one: str, other: str) -> bool:
        cable = self.between(one, other)
        return cable is not None and cable.get("channel", {}).get("medium") == "fiber"


@pytest.fixture(scope="module", params=GOOD)
def net(request) -> Net:
    return Net(request.param)


def worst(pairs: list[tuple[float, float]]) -> tuple[float, float]:
    return max(pairs, key=lambda pair: pair[0] / pair[1])


def holds_at(ours: dict, pair: tuple[float, float], close: float = 1e-9) -> None:
    demand, capacity = pair
    assert ours["demand"]["value"] == pytest.approx(demand, rel=close)
    assert ours["capacity"]["value"] == pytest.approx(capacity, rel=close)


def growth(warm: float, screened: bool) -> float:
    """What warm pairs lose over what they lose at 20 °C, between the standard's corner points."""
    corners = ([20, 60], [1.0, 1.08]) if screened else ([20, 40, 60], [1.0, 1.08, 1.20])
    return float(np.interp(warm, *corners))


def test_length_of_each_copper_channel(net, answers):
    copper = [each for each in net.cable if each.get("channel", {}).get("medium") == "copper"]
    assert copper
    for cable in copper:
        run, cords = si(cable["length"]), si(cable["cords"]["length"])
        grown = growth(celsius(cable["hottest"]), cable["channel"]["screened"])
        pairs = [(run, 90 / grown), (grown * run + 1.2 * cords, 102.0), (run + cords, 100.0)]
        holds_at(finding(answers, net.name, f"network-length/{cable['id']}"), worst(pairs))


def metal(gauge: str) -> float:
    """Area of the metal of a gauge (mm²): ASTM B258."""
    return np.pi / 4 * (0.127 * 92 ** ((36 - int(gauge.split()[0])) / 39)) ** 2


def ohms(gauge: str, warm: float, stranded: float = 1.0) -> float:
    """Ohm for each meter of copper (IEC 60028), as warm as told; strands are a little longer than their wire."""
    return stranded * 1 / 58 / metal(gauge) * (1 + 0.00393 * (warm - 20))


def given(net: Net, port: str, name: str) -> float:
    """Power that a port gives: the smaller root of P₁ - (P₁ / U)² R = P, by numpy."""
    cable, device = net.between(port, name), net.device[name]
    power = si(device["power"]) + sum(given(net, name, behind) for behind in net.fed(name))
    volts, warm = si(net.device[port]["port_voltage"]), celsius(cable["hottest"])
    loop = si(cable["length"]) * ohms(cable["size"], warm)
    if si(cable["cords"]["length"]) > 0:
        loop += si(cable["cords"]["length"]) * ohms(cable["cords"]["size"], warm, 1.02)
    loop *= 2 / cable["power_pairs"]
    return float(min(np.roots([loop / volts**2, -1.0, power]).real))


def test_power_of_all_ports_together(net, answers):
    switch = net.device["net-switch"]
    total = sum(given(net, "net-switch", name) for name in net.fed("net-switch"))
    pairs = [(total, si(switch["power_budget"])), (total + si(switch["heat"]), si(switch["voltage"]) * si(switch["current"]))]
    ours = finding(answers, net.name, "network-poe-budget/net-switch")
    # Tables of real conductors allow a percent or two over the metal's own resistance, which is a few parts in a thousand of the power.
    holds_at(ours, worst(pairs), 2e-3)
    assert sum(CLASS[net.device[name]["poe_class"]] for name in net.fed("net-switch")) <= si(switch["power_budget"])


def test_ports_with_one_to_spare(net, answers):
    switch = net.device["net-switch"]
    others = net.plugged("net-switch") + [net.up("net-switch")]
    copper = [each for each in others if not net.fiber("net-switch", each)]
    assert all(si(net.device[each]["ethernet"]["speed"]) <= si(switch["ethernet"]["speed"]) for each in net.plugged("net-switch"))
    pairs = [(len(copper) + 1, switch["ports"]), (len(net.fed("net-switch")), switch["ethernet"]["powered_ports"])]
    fiber = len(others) - len(copper)
    if fiber:
        pairs.append((fiber, switch["ethernet"]["fiber_ports"]))
    ours = finding(answers, net.name, "network-ports/net-switch")
    assert ours["demand"]["value"] / ours["capacity"]["value"] == pytest.approx(max(a / b for a, b in pairs))


def ways(net: Net, name: str) -> list[tuple[str, str]]:
    links = []
    while above := net.up(name):
        links.append((name, above))
        name = above
    return links


def rate(net: Net, link: tuple[str, str]) -> float:
    if radio := net.device[link[0]]["network"].get("radio_rate"):
        return si(radio)
    port = "fiber_speed" if net.fiber(*link) else "speed"
    return min(si(net.device[end]["ethernet"][port]) for end in link)


def test_pictures_on_their_way_and_on_the_disk(net, answers):
    cameras = [each for each in net.device.values() if "stream" in each]
    recorder = next(each for each in net.device.values() if "recorder" in each)
    streams = [each["stream"] for each in cameras]
    motion = np.array([si(each["motion"]) for each in streams])
    quiet, busy, peak = (np.array([si(each[key]) for each in streams]) for key in ("quiet", "busy", "peak"))
    size = (quiet + motion * (busy - quiet)).sum() * si(recorder["recorder"]["wanted"])
    room = si(recorder["recorder"]["storage"]) - si(recorder["recorder"].get("taken", "0 TB"))
    links: dict[tuple[str, str], float] = {}
    for camera, most in zip(cameras, peak, strict=True):
        there, back = ways(net, camera["id"]), ways(net, recorder["id"])
        for link in set(there) ^ set(back):
            links[link] = links.get(link, 0.0) + most
    narrow = worst([(sum_, 0.7 * rate(net, link)) for link, sum_ in links.items()])
    holds_at(finding(answers, net.name, f"network-bandwidth-and-storage/{recorder['id']}"), worst([narrow, (size, room)]))


def test_each_address_is_alone_in_its_block(net, answers):
    segments = {each["id"]: each for each in net.site["network_segment"]}
    seen = set()
    for name, device in net.device.items():
        if "address" not in device.get("network", {}):
            continue
        own, segment = ipaddress.ip_address(device["network"]["address"]), segments[device["network"]["segment"]]
        ends = [ipaddress.ip_address(end) for end in segment["automatic"].split(" to ")] if segment["automatic"] != "none" else None
        alone = own not in seen and own in list(ipaddress.ip_network(segment["addresses"]).hosts()) and not (ends and ends[0] <= own <= ends[1])
        seen.add(own)
        ours = finding(answers, net.name, f"network-addresses-apart/{name}")
        assert (ours["verdict"] == "holds") == alone, name
    blocks = [ipaddress.ip_network(each["addresses"]) for each in segments.values()]
    assert not any(one.overlaps(other) for at, one in enumerate(blocks) for other in blocks[at + 1:])


def test_clocks_between_two_settings_and_the_source_alone(net, answers):
    keeping = net.site["time_keeping"]
    for name, device in net.device.items():
        if "clock" not in device:
            continue
        drift = si(device["clock"]["drift"])
        if name == keeping["source"]:
            cut = (si(keeping["longest_cut"]), si(device["clock"]["reserve"]))
            pair = worst([(drift * si(keeping["longest_alone"]), si(keeping["allowed_alone"])), cut])
        else:
            pair = (2 * drift * si(device["network"]["time_every"]), si(keeping["allowed"]))
        holds_at(finding(answers, net.name, f"network-clock/{name}"), pair)
