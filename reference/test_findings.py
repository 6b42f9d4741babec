"""What every finding owes its reader: a sentence, working, sources, and no pass on the strength of memory."""

import pytest
from conftest import SITES

EVIDENCE = ("seen", "physics", "memory", "common practice", "looked up")


@pytest.mark.parametrize("site", SITES)
def test_every_finding_has_working_and_source(answers, site):
    for each in answers(site)["findings"]:
        assert each["sentence"] and each["confirm"]
        if each["standing"] in ("fails", "holds") and not each["question"].startswith("survey-"):
            assert each["working"], each["question"]
            assert each["sources"], each["question"]
        for source in each["sources"]:
            assert source["evidence"] in EVIDENCE


@pytest.mark.parametrize("site", SITES)
def test_nothing_from_memory_passes(answers, site):
    for each in answers(site)["findings"]:
        if each["standing"] == "holds":
            assert all(source["evidence"] != "memory" for source in each["sources"]), each["question"]


@pytest.mark.parametrize("site", SITES)
def test_ratio_is_demand_over_capacity_and_the_worst_is_not_better(answers, site):
    compared = 0
    for each in answers(site)["findings"]:
        if each["demand"] and each["capacity"] and each["ratio"] is not None and each["demand"]["unit"] != "K":
            compared += 1
            assert each["ratio"] == pytest.approx(each["demand"]["value"] / each["capacity"]["value"], rel=1e-9), each["subject"]
            worst = each.get("worst")
            if worst and worst.get("ratio") is not None:
                assert worst["ratio"] >= each["ratio"] * (1 - 1e-9), each["subject"]
    assert compared > 20


@pytest.mark.parametrize("site", SITES)
def test_failing_findings_are_over_their_limit_and_holding_ones_are_not(answers, site):
    compared = [each for each in answers(site)["findings"] if each["demand"] and each["capacity"] and each["ratio"] is not None]
    holding = [each for each in compared if each["standing"] == "holds"]
    assert len(holding) > 20
    assert all(each["ratio"] <= 1 for each in holding)
    failing = [each for each in compared if each["standing"] == "fails"]
    assert bool(failing) == site.endswith("-faulty")
    for each in failing:
        assert each["ratio"] > 1, (each["question"], each["subject"]["name"])


@pytest.mark.parametrize("site", ["boatyard", "vineyard"])
def test_each_step_of_working_gives_the_same_when_worked_alone(answers, calc, site):
    """The numbers of a stopping distance, taken from the working and given to the calculation by itself."""
    steps = [step for each in answers(site)["findings"] for step in each["working"] if step["calculation"] == "stopping-distance"]
    assert steps
    for step in steps[:3]:
        si = {given["name"]: given["value"]["value"] for given in step["given"]}
        alone = calc(
            "stopping-distance", speed=f"{si['speed']} m/s", device_time=f"{si['device_time']} s", controller_time=f"{si['controller_time']} s",
            deceleration=f"{si['deceleration']} m/s²", slope=str(si["slope"]),
        )
        for gives in step["gives"]:
            assert alone[gives["name"]] == pytest.approx(gives["value"]["value"], rel=1e-9), gives["name"]


def test_a_slope_never_comes_from_an_earlier_step(answers):
    """Equal numbers are not the same number: a rise of 1 once was said to come from a weight factor of 1."""
    for each in answers("boatyard")["findings"]:
        for step in each["working"]:
            if step["calculation"] == "pull-straight":
                rise = next(given for given in step["given"] if given["name"] == "rise")
                assert not rise["from"].startswith("step"), (each["subject"]["name"], rise["value"], rise["from"])
