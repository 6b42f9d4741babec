"""The work plan against every order tried one by one, against the critical path of a graph library, and sun times against pvlib."""

import datetime
import itertools
import json
import random

import networkx
import pandas
import pvlib
import pytest
from conftest import ROOT, run, site_of

OPEN, HOURS, DAY = 7 * 60, 8 * 60, 24 * 60

HEAD = """[site]
name = "Test yard"
code_basis = "us"
[place]
latitude = "43.7°"
longitude = "-70.2°"
[[gate]]
id = "main"
kind = "track-slide"
[work]
begins = 2026-06-01
weekdays = ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"]
first_hour = 7
hours_a_day = "8 h"
clock = "-4 h"
"""


def written(tasks) -> str:
    """Tasks as (hours, after, [(loaded, wait)])."""
    text = HEAD
    cured = {before: wait for _, _, loads in tasks for before, wait in loads}
    for at, (hours, after, loads) in enumerate(tasks):
        text += f'[[task]]\nid = "task-{at}"\nwhat = "task {at}"\nhours = "{hours} h"\nlimits = {{ light = "any" }}\n'
        if after:
            text += "after = [" + ", ".join(f'"task-{before}"' for before in after) + "]\n"
        if loads:
            text += "loads = [" + ", ".join(f'"task-{before}"' for before, _ in loads) + "]\n"
        if at in cured:
            text += f'curing = {{ of = "adhesive", temperature = "60 °F", sheet = [{{ from = "50 °F", cure_time = "{cured[at]} h" }}] }}\n'
    return text


def invented(seed: int, count: int):
    chance = random.Random(seed)
    wait = {at: chance.randint(1, 60) for at in range(count)}
    tasks = []
    for at in range(count):
        before = [other for other in range(at) if chance.random() < 0.3]
        loads = [(other, wait[other]) for other in before if chance.random() < 0.5]
        after = [other for other in before if other not in dict(loads)]
        tasks.append((chance.randint(1, 11), after, loads))
    return tasks


def planned(folder, tasks, *more) -> dict:
    path = folder / "site.toml"
    path.write_text(written(tasks), encoding="utf-8")
    done = run("plan", str(path), "--json", *more)
    assert done.returncode == 0, done.stdout + done.stderr
    return json.loads(done.stdout)["plan"]


def end_of(work: int, earliest: int) -> int:
    """End of so much work in days from 7 to 15 h; less than half an hour before the evening is not begun with."""
    day, left = earliest // DAY, work
    while True:
        begin = max(day * DAY + OPEN, earliest)
        room = day * DAY + OPEN + HOURS - begin
        if room >= min(left, 30):
            took = min(room, left)
            left -= took
            if left == 0:
                return begin + took
        day += 1


def in_order(tasks, order):
    """End of the job in this order; nothing where it breaks a need."""
    ends, now = {}, 0
    for at in order:
        hours, after, loads = tasks[at]
        needs = [(before, 0) for before in after] + [(before, wait * 60) for before, wait in loads]
        if any(before not in ends for before, _ in needs):
            return None
        ready = max((ends[before] + wait for before, wait in needs), default=0)
        ends[at] = now = end_of(hours * 60, max(now, ready))
    return now


@pytest.mark.parametrize("seed", range(20))
def test_no_order_tried_by_hand_ends_sooner(tmp_path, seed):
    tasks = invented(seed, 6)
    found = planned(tmp_path, tasks)
    ends = (in_order(tasks, order) for order in itertools.permutations(range(len(tasks))))
    assert found["proved"]
    assert found["end_minute"] == min(end for end in ends if end is not None)


@pytest.mark.parametrize("seed", range(20))
def test_never_sooner_than_the_critical_path(tmp_path, seed):
    tasks = invented(100 + seed, 14)
    found = planned(tmp_path, tasks)
    graph = networkx.DiGraph()
    for at, (hours, after, loads) in enumerate(tasks):
        graph.add_edge(at, ("end", at), weight=hours * 60)
        for before, wait in [(before, 0) for before in after] + loads:
            graph.add_edge(("end", before), at, weight=wait * 60)
    assert found["end_minute"] >= OPEN + networkx.dag_longest_path_length(graph)
    assert found["end_minute"] >= end_of(sum(hours for hours, _, _ in tasks) * 60, 0)
    assert found["bound_minute"] <= found["end_minute"]
    by_id = {task["id"]: task for task in found["tasks"]}
    for at, (_, after, loads) in enumerate(tasks):
        for before, wait in [(before, 0) for before in after] + loads:
            assert by_id[f"task-{at}"]["from_minute"] >= by_id[f"task-{before}"]["to_minute"] + wait * 60
    spans = sorted((task["from_minute"], task["to_minute"]) for task in found["tasks"])
    assert all(one[1] <= other[0] for one, other in itertools.pairwise(spans))


def test_a_chain_is_as_long_as_its_critical_path(tmp_path):
    """One chain without evenings between: all in one day."""
    tasks = [(1, [], []), (2, [0], []), (1, [], [(1, 2)])]
    found = planned(tmp_path, tasks)
    assert found["end_minute"] == OPEN + (1 + 2 + 2 + 1) * 60


def test_a_lost_day_and_another_beginning_move_the_plan(tmp_path):
    tasks = [(8, [], []), (8, [0], [])]
    assert planned(tmp_path, tasks)["ends"] == "2026-06-02"
    assert planned(tmp_path, tasks, "--lost", "2026-06-02")["ends"] == "2026-06-03"
    assert planned(tmp_path, tasks, "--from", "2026-07-01")["ends"] == "2026-07-02"


@pytest.mark.parametrize("name", ["boatyard", "vineyard", "quarry", "clinic"])
def test_sunrise_and_sunset_are_those_of_another_program(name):
    site = site_of(name)
    place = {key: float(site["place"][key].rstrip("°")) for key in ("latitude", "longitude")}
    plan = json.loads(run("plan", str(ROOT / "examples" / name), "--json").stdout)["plan"]
    for day in plan["days"]:
        work = site["work"]
        date = datetime.date.fromisoformat(day["date"])
        ahead = float(work["clock"].removesuffix(" h"))
        if "clock_changes" in work and date >= work["clock_changes"]:
            ahead = float(work["clock_then"].removesuffix(" h"))
        midnight = pandas.Timestamp(date).tz_localize(f"Etc/GMT{-round(ahead):+d}")
        # Its own function for sunset takes the day before where the sun sets past midnight universal time: so the height of
        # the sun half a minute before what is printed, and half a minute after, lies on either side of the horizon.
        for which, rises in (("rise", True), ("set", False)):
            hours, minutes = map(int, day[which].split(":"))
            at = midnight + pandas.Timedelta(hours=hours, minutes=minutes)
            times = pandas.DatetimeIndex([at + pandas.Timedelta(seconds=off) for off in (-30, 30)])
            heights = pvlib.solarposition.get_solarposition(times, **place, method="nrel_numpy")["elevation"].to_numpy()
            low, high = heights if rises else heights[::-1]
            assert low - 0.02 < -0.833 < high + 0.02, (day, which, heights)
