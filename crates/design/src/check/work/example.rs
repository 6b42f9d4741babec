//! A small job for the tests of its checks.

/// A yard whose gate is dug for, poured, hung and tested.
pub(crate) const SITE: &str = r#"
[site]
name = "Test yard"
code_basis = "us"
[place]
latitude = "43.7°"
longitude = "-70.2°"
[[gate]]
id = "main"
kind = "track-slide"
[[lane]]
id = "lane-in"
gate = "main"
[[vehicle]]
id = "van"
what = "van"
width = "8 ft"
[[people]]
who = "adults"
gate = "main"
[work]
begins = 2026-05-04
first_hour = 7
hours_a_day = "8 h"
clock = "-4 h"
usual = { coldest = "46 °F", hottest = "66 °F", wind = "14 mph", wet_days = "30 %" }
check_in = { person = "the office", no_call = "rings the owner, then the rescue service", means = "phone", tried = 2026-05-04, address = "end of the quay road", way_in = "keypad" }
overnight = { way_in_and_out = "walk gate", agreed_with = "owner", told = "owner, by phone", photographs = true }
[[work_zone]]
id = "zone-gate"
lane = "lane-in"
way = "past it"
agreed_with = "owner"
agreed = 2026-04-30
clear_width = "10 ft"
foot_way = "along the fence"
guard = ["parked vehicle", "cones"]
fire_access = true
locked_out = true
on_public_way = false
[[task]]
id = "task-dig"
what = "dig the pad and the trench"
kind = "dig"
hours = "6 h ± 2 h"
risk = ["in a hole"]
check_in = "1 h"
zone = "zone-gate"
leaves = [{ what = "open hole or trench", until = "task-fill", secured_by = ["boards screwed down"] }]
[[task]]
id = "task-lay"
what = "lay the conduit"
kind = "lay conduit"
after = ["task-dig"]
hours = "4 h"
inspection = { by = "county inspector", wait = "24 h", photograph = true }
[[task]]
id = "task-pour"
what = "pour the pad"
kind = "pour"
loads = []
hours = "3 h"
in_one_go = true
curing = { of = "concrete", temperature = "54 °F", cement = "normal", wanted = "75 %" }
limits = { coldest = "40 °F", hottest = "95 °F", dry = true }
[[task]]
id = "task-fill"
what = "fill the trench"
kind = "cover"
covers = ["task-lay"]
hours = "3 h"
[[task]]
id = "task-hang"
what = "hang the leaf"
kind = "hang"
loads = ["task-pour"]
hours = "5 h"
helper = "forklift driver"
risk = ["heavy", "in the travel"]
check_in = "30 min"
zone = "zone-gate"
limits = { wind = "20 mph", dry = false }
leaves = [{ what = "leaf not held by its gear", until = "task-test", secured_by = ["chain and lock", "stop bolted down"] }]
[[task]]
id = "task-test"
what = "test the forces"
kind = "test forces"
after = ["task-hang", "task-fill"]
hours = "6 h"
risk = ["in the travel"]
check_in = "30 min"
zone = "zone-gate"
limits = { light = "daylight" }
"#;
