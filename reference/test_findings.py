"""Findings of the boatyard, worked again from its site file with plain arithmetic."""

import tomllib

import pytest
from conftest import ROOT, site_of
from measure import si

POUND_FORCE = 4.4482216152605


def finding(answers, site: str, name: str) -> dict:
    question, subject = name.split("/")
    return next(f for f in answers(site)["findings"] if f["question"] == question and f["subject"]["name"] == subject)


def with_part(kind: str, entry: dict, site: str = "boatyard") -> dict:
    """The entry with what it lacks taken from its part."""
    parts = tomllib.loads((ROOT / "examples" / site / "parts.toml").read_text())
    part = next((part for part in parts.get(kind, []) if part["id"] == entry.get("part")), {})
    return {**part, **entry}


@pytest.mark.parametrize("conduit", ["c-07", "c-04", "c-10"])
def test_conduit_fill_from_diameters(answers, conduit):
    site = site_of("boatyard")
    cables = [with_part("cable", cable) for cable in site["cable"] if conduit in cable.get("route", [])]
    area = sum(3.141592653589793 / 4 * si(cable["diameter"]) ** 2 for cable in cables)
    inches = {("PVC-80", "1"): 0.688, ("PVC-80", "1-1/4"): 1.237, ("PVC-80", "1-1/2"): 1.711, ("PVC-80", "2"): 2.874, ("PVC-80", "2-1/2"): 4.119,
              ("PVC-40", "1"): 0.832, ("PVC-40", "1-1/4"): 1.453, ("PVC-40", "1-1/2"): 1.986, ("PVC-40", "2"): 3.291, ("PVC-40", "3/4"): 0.508}
    pipe = next(pipe for pipe in site["conduit"] if pipe["id"] == conduit)
    bore = inches[(pipe["kind"], pipe["trade_size"])] * 0.0254**2
    ours = finding(answers, "boatyard", f"route-fill/{conduit}")
    assert ours["demand"]["value"] == pytest.approx(area / bore, rel=5e-3)


def test_travel_at_the_cruise_speed_is_a_lower_bound(answers):
    gate = site_of("boatyard")["gate"][0]
    least = si(gate["travel"]) / si(gate["motion"]["cruise_speed"])
    ours = finding(answers, "boatyard", "motion-travel-time/main")
    assert ours["demand"]["value"] > least
    assert ours["demand"]["value"] < 1.5 * least


def test_the_pull_is_more_than_rolling_and_slope_and_less_than_the_operator(answers):
    site = site_of("boatyard")
    weight = si(site["gate"][0]["leaf"][0]["mass"]) * 9.80665
    slope = float(site["gate"][0]["slope"].split()[0])
    ours = finding(answers, "boatyard", "force-slide/drive")
    assert ours["demand"]["value"] > weight * slope
    assert ours["demand"]["value"] < ours["capacity"]["value"]


def test_every_finding_has_working_and_source(answers):
    for site in ("boatyard", "vineyard"):
        for each in answers(site)["findings"]:
            assert each["sentence"] and each["confirm"]
            if each["standing"] in ("fails", "holds") and not each["question"].startswith("survey-"):
                assert each["working"], each["question"]
            for source in each["sources"]:
                assert source["evidence"] in ("seen", "physics", "memory", "common practice")


def test_nothing_from_memory_passes(answers):
    for site in ("boatyard", "vineyard"):
        for each in answers(site)["findings"]:
            if each["standing"] == "holds":
                assert all(source["evidence"] != "memory" for source in each["sources"]), each["question"]
