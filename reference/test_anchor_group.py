"""Five hundred groups of anchors by an independent reading of ACI 318-19 chapter 17, and the plates that load them."""

import math
import re

import numpy
import pytest
from anchor_group import blowout, bond, breakout, grid, interaction, plate, shear
from conftest import run

LAYOUTS = 500
FAR = 240.0
BARE = {
    "coefficient", "cracking_factor", "lightweight_factor", "count", "count_across", "count_along", "reduction", "factor", "eccentricity_factor",
    "edge_factor", "splitting_factor", "thickness_factor", "tension_share", "shear_share", "sum", "straight", "power", "rows", "in_row",
    "modular_ratio", "in_tension",
}
FORCES = {
    "nominal", "design", "basic", "sustained", "tension", "pull", "shove", "tension_strength", "shear_strength", "weight", "uplift", "shear",
    "greatest_tension", "total_tension", "shear_each",
}
HEADER = '[source]\nwork = "ACI 318-19 chapter 17"\nseen = "worked with polygons in Python"\n'


def unit(name: str) -> str:
    if name in BARE:
        return ""
    if name in FORCES:
        return " lbf"
    if name == "moment":
        return " lbf·ft"
    if name.endswith(("strength", "stress")) or name == "bearing":
        return " psi"
    return " in²" if name.endswith("area") else " in"


def written(name: str, value) -> str:
    """The value as decimals with its unit, to thirteen places that count."""
    if isinstance(value, (str, int)):
        return f"{value}{unit(name) if isinstance(value, int) else ''}"
    if abs(value) < 1e-12:
        return f"0.000000000000{unit(name)}"
    places = 12 - math.floor(math.log10(abs(value)))
    return f"{value:.{min(max(places, 0), 17)}f}{unit(name)}"


def table(values: dict) -> str:
    return "{ " + ", ".join(f'{name} = "{written(name, value)}"' for name, value in values.items()) + " }"


def case(name: str, calculation: str, given: dict, expected: str) -> str:
    return f'[[case]]\nid = "{name}"\ncalculation = "{calculation}"\nkind = "independent"\ngiven = {table(given)}\n{expected}\n'


def gives(values: dict) -> str:
    return f'gives = {table(values)}\ntolerance = "0.0000001 %"\nbecause = "one part in a thousand million"'


def holds(folder, cases: list[str]):
    """One start of the program tries them all."""
    file = folder / "group.cases.toml"
    file.write_text(HEADER + "".join(cases), encoding="utf-8")
    done = run("verify", str(file))
    shown = "\n".join((done.stderr + done.stdout).splitlines()[:40])
    assert done.returncode == 0, shown
    assert re.search(rf"^{len(cases)} passed, 0 failed$", done.stdout, re.MULTILINE), shown


class Chance:
    """Seeded chance, rounded so that both sides read the same figures."""

    def __init__(self, seed: int):
        self.source = numpy.random.default_rng(seed)

    def between(self, low: float, high: float) -> float:
        return round(float(self.source.uniform(low, high)), 4)

    def one_of(self, *choices):
        return choices[self.source.integers(len(choices))]


def layout(chance: Chance) -> dict:
    diameter = chance.one_of(0.375, 0.5, 0.625, 0.75, 1.0, 1.25)
    hef = chance.between(4.1 * diameter, min(19.9 * diameter, 24.9))
    uncracked = chance.between(700, 2200)
    widest = min(3 * hef, 20 * diameter * math.sqrt(uncracked / 1100))
    across, along = chance.one_of(1, 2, 2, 3, 4), chance.one_of(1, 2, 2, 3)
    spacings = [chance.between(0.2 * widest, 0.999 * widest) if count > 1 else 0.0 for count in (across, along)]
    edges = [chance.one_of(FAR, chance.between(0.4 * hef, 1.9 * hef), chance.between(0.4 * hef, 1.4 * hef)) for _ in range(4)]
    return {
        "cast": chance.one_of(True, False), "diameter": diameter, "hef": hef, "uncracked": uncracked, "stress": chance.between(200, uncracked),
        "counts": (across, along), "spacings": spacings, "edges": edges,
        "off": [chance.one_of(0.0, chance.between(0, spacing / 2)) for spacing in spacings],
        "strength": chance.between(2500, 8000), "light": chance.one_of(1.0, 0.85), "cracking": chance.one_of(1.0, 1.25),
        "thickness": hef + chance.between(2, 20),
    }


def of_group(one: dict) -> dict:
    """The inputs that every calculation of a group asks for."""
    (across, along), (wide, deep), (left, right, front, back), (off_x, off_y) = one["counts"], one["spacings"], one["edges"], one["off"]
    return {
        "lightweight_factor": one["light"], "count_across": across, "spacing_across": wide, "count_along": along, "spacing_along": deep,
        "edge_left": left, "edge_right": right, "edge_front": front, "edge_back": back, "eccentricity_across": off_x, "eccentricity_along": off_y,
    }


def cone(one: dict, critical: float) -> tuple[dict, dict]:
    kc = 24.0 if one["cast"] else 17.0
    given = of_group(one) | {
        "anchor": "cast-in" if one["cast"] else "post-installed", "embedment": one["hef"], "concrete_strength": one["strength"],
        "coefficient": kc, "cracking_factor": one["cracking"], "critical_edge": critical, "reduction": 0.65,
    }
    anchors = grid(one["counts"][0], one["spacings"][0], one["counts"][1], one["spacings"][1])
    theirs = breakout(
        one["cast"], one["hef"], one["strength"], kc, one["cracking"], one["light"], anchors, one["spacings"], one["edges"], one["off"], critical
    )
    return given, theirs | {"design": 0.65 * theirs["nominal"]}


def glue(one: dict, critical: float) -> tuple[dict, dict]:
    given = of_group(one) | {
        "diameter": one["diameter"], "embedment": one["hef"], "bond_stress": one["stress"], "uncracked_stress": one["uncracked"],
        "critical_edge": critical, "reduction": 0.55,
    }
    anchors = grid(one["counts"][0], one["spacings"][0], one["counts"][1], one["spacings"][1])
    theirs = bond(one["diameter"], one["hef"], one["stress"], one["uncracked"], one["light"], anchors, one["edges"], one["off"], critical)
    return given, theirs | {"design": 0.55 * theirs["nominal"], "sustained": 0.55 * 0.55 * theirs["basic"]}


def shoved(one: dict, toward: bool) -> tuple[dict, dict]:
    (count, _), (spacing, _), (left, right, front, _) = one["counts"], one["spacings"], one["edges"]
    edge = min(front, 30.0)
    given = {
        "anchor": "cast-in" if one["cast"] else "post-installed", "direction": "toward the edge" if toward else "parallel to the edge",
        "diameter": one["diameter"], "bearing_length": one["hef"], "edge": edge, "corner_left": left, "corner_right": right,
        "thickness": one["thickness"], "count": count, "spacing": spacing, "eccentricity": one["off"][0], "concrete_strength": one["strength"],
        "cracking_factor": one["cracking"], "lightweight_factor": one["light"], "reduction": 0.7,
    }
    theirs = shear(
        toward, one["diameter"], one["hef"], edge, (left, right), one["thickness"], count, spacing, one["off"][0], one["strength"],
        one["cracking"], one["light"],
    )
    return given, theirs | {"design": 0.7 * theirs["nominal"]}


def burst(one: dict, chance: Chance) -> tuple[dict, dict]:
    edge = round(one["hef"] / chance.between(2.6, 6), 4)
    count = chance.one_of(1, 1, 2, 3)
    spacing = chance.between(edge, 5.9 * edge) if count > 1 else 0.0
    corner, head = chance.between(edge, 5 * edge), chance.between(0.3, 3)
    given = {
        "embedment": one["hef"], "edge": edge, "corner": corner, "bearing_area": head, "concrete_strength": one["strength"],
        "lightweight_factor": one["light"], "count": count, "spacing": spacing, "reduction": 0.7,
    }
    theirs = blowout(edge, corner, head, one["strength"], one["light"], count, spacing)
    return given, theirs | {"design": 0.7 * theirs["nominal"]}


def test_five_hundred_groups(tmp_path):
    chance, cases = Chance(318), []
    for number in range(LAYOUTS):
        one = layout(chance)
        critical = 0.0 if one["cast"] else chance.one_of(0.0, chance.between(one["hef"], 3 * one["hef"]))
        pulled, held, moved = cone(one, critical), glue(one, critical), shoved(one, chance.one_of(True, True, False))
        tension = min(pulled[1]["nominal"], held[1]["nominal"])
        kcp = 1 if one["hef"] < 2.5 else 2
        pried = {"embedment": one["hef"], "tension": tension, "reduction": 0.7}, {"nominal": kcp * tension, "design": 0.7 * kcp * tension}
        strengths = min(pulled[1]["design"], held[1]["design"]), min(moved[1]["design"], pried[1]["design"])
        loads = [round(strength * chance.between(0.01, 0.99), 4) for strength in strengths]
        both = {"pull": loads[0], "tension_strength": strengths[0], "shove": loads[1], "shear_strength": strengths[1]}
        for calculation, (given, theirs) in {
            "anchor-group-breakout-tension": pulled, "anchor-bond-tension": held, "anchor-breakout-shear": moved,
            "anchor-side-face-blowout": burst(one, chance), "anchor-pryout": pried,
            "anchor-interaction": (both, interaction(loads[0], strengths[0], loads[1], strengths[1])),
        }.items():
            apart = calculation == "anchor-breakout-shear" and given["count"] > 1 and given["spacing"] > 3 * given["edge"]
            expected = 'refuses = "spacing"' if apart else gives(theirs)
            cases.append(case(f"{number} {calculation}", calculation, given, expected))
    holds(tmp_path, cases)


def test_five_hundred_plates(tmp_path):
    chance, cases = Chance(1992), []
    for number in range(LAYOUTS):
        length, rows = chance.between(6, 24), chance.one_of(1, 2, 2, 3)
        given = {
            "length": length, "width": chance.between(6, 24), "rows": rows,
            "row_spacing": round(length * chance.between(0.5, 0.85) / (rows - 1), 4) if rows > 1 else 0.0, "in_row": chance.one_of(1, 2, 3),
            "anchor_area": chance.one_of(0.142, 0.226, 0.334, 0.606), "modular_ratio": chance.between(6, 10),
            "weight": chance.one_of(0.0, chance.between(100, 8000)), "uplift": chance.one_of(0.0, 0.0, chance.between(50, 3000)),
            "moment": chance.one_of(chance.between(10, 300), chance.between(200, 9000)), "shear": chance.between(0, 5000),
        }
        theirs = plate(**given | {"moment": 12 * given["moment"]})
        cases.append(case(f"{number}", "base-plate-anchors", given, gives(theirs)))
    holds(tmp_path, cases)


REFUSED = {
    "anchor-group-breakout-tension": [
        ({"embedment": 25.5, "edge_left": FAR}, "embedment"),
        ({"embedment": 0.0, "count_across": 1, "count_along": 1}, "embedment"),
        ({"concrete_strength": 900.0}, "concrete_strength"), ({"concrete_strength": 8200.0}, "concrete_strength"),
        ({"spacing_across": 19.0}, "spacing_across"), ({"spacing_along": 19.0}, "spacing_along"), ({"spacing_along": 0.0}, "spacing_along"),
        ({"count_across": 0}, "count_across"), ({"count_along": 0}, "count_along"), ({"edge_front": -1.0}, "edge_front"),
        ({"eccentricity_across": -0.5}, "eccentricity_across"), ({"lightweight_factor": 1.2}, "lightweight_factor"), ({"reduction": 1.5}, "reduction"),
    ],
    "anchor-bond-tension": [
        ({"embedment": 2.4}, "embedment"), ({"embedment": 12.6}, "embedment"), ({"spacing_across": 14.0}, "spacing_across"),
        ({"bond_stress": 0.0}, "bond_stress"), ({"bond_stress": 1400.0}, "bond_stress"), ({"edge_back": 0.0}, "edge_back"),
    ],
    "anchor-breakout-shear": [
        ({"diameter": 4.2}, "diameter"), ({"edge": 0.0}, "edge"), ({"thickness": 0.0}, "thickness"), ({"count": 0}, "count"),
        ({"concrete_strength": 8200.0}, "concrete_strength"), ({"corner_left": -1.0}, "corner_left"), ({"spacing": 0.0}, "spacing"),
    ],
    "anchor-side-face-blowout": [
        ({"embedment": 7.4}, "embedment"), ({"concrete_strength": 10100.0}, "concrete_strength"), ({"count": 2, "spacing": 18.1}, "spacing"),
        ({"count": 2, "spacing": 0.0}, "spacing"),        ({"bearing_area": 0.0}, "bearing_area"), ({"count": 0}, "count"),
    ],
    "anchor-pryout": [({"embedment": 0.0}, "embedment"), ({"tension": -1.0}, "tension"), ({"reduction": 1.1}, "reduction")],
    "anchor-interaction": [({"tension_strength": 0.0}, "tension_strength"), ({"shear_strength": 0.0}, "shear_strength"), ({"pull": -1.0}, "pull")],
    "base-plate-anchors": [
        ({"rows": 9}, "rows"), ({"in_row": 9}, "in_row"), ({"row_spacing": 13.0}, "row_spacing"), ({"length": 0.0}, "length"),
        ({"moment": -1.0}, "moment"), ({"anchor_area": 0.0}, "anchor_area"), ({"weight": -1.0}, "weight"),
    ],
}


def sound() -> dict[str, dict]:
    """One group and one plate that every calculation takes."""
    one = {
        "cast": False, "diameter": 0.625, "hef": 6.0, "uncracked": 1300.0, "stress": 600.0, "counts": (2, 2), "spacings": (6.0, 8.0),
        "edges": [5.0, FAR, FAR, FAR], "off": [1.0, 0.0], "strength": 4000.0, "light": 1.0, "cracking": 1.0, "thickness": 12.0,
    }
    return {
        "anchor-group-breakout-tension": cone(one, 0.0)[0], "anchor-bond-tension": glue(one, 0.0)[0], "anchor-breakout-shear": shoved(one, True)[0],
        "anchor-side-face-blowout": burst(one, Chance(1))[0] | {"embedment": 12.0, "edge": 3.0, "corner": 5.0, "count": 1, "spacing": 0.0},
        "anchor-pryout": {"embedment": 6.0, "tension": 9000.0, "reduction": 0.7},
        "anchor-interaction": {"pull": 500.0, "tension_strength": 1000.0, "shove": 400.0, "shear_strength": 1000.0},
        "base-plate-anchors": {
            "length": 12.0, "width": 12.0, "rows": 2, "row_spacing": 8.0, "in_row": 2, "anchor_area": 0.334, "modular_ratio": 8.0,
            "weight": 1500.0, "uplift": 0.0, "moment": 4000.0, "shear": 2000.0,
        },
    }


@pytest.mark.parametrize("calculation", REFUSED)
def test_what_lies_outside_is_refused(tmp_path, calculation):
    holds(tmp_path, [
        case(f"{number} {wrong}", calculation, sound()[calculation] | change, f'refuses = "{wrong}"')
        for number, (change, wrong) in enumerate(REFUSED[calculation])
    ])
