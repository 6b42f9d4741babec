"""The worlds with leaves that swing, written again apart from the program's own."""

import numpy as np


def leaf(pivot: float, length: float, toward: str, heel: float = 0.05, offset: float = 0.0) -> dict:
    place = {"pivot": [pivot, 0.0], "toward": toward, "opens": "inward", "heel": heel, "length": length, "offset": offset}
    return {**place, "thickness": 0.06, "bottom": 0.05, "top": 1.8}


def turn(length: float, delay: float) -> dict:
    plan = {"cruise": 0.45, "acceleration": 0.5, "deceleration": 0.3, "set_point": 0.75, "creep": 0.1}
    return {"delay": delay, "travel": length * np.pi / 2, **plan}


def edge(leaf: int, begins: float, ends: float, guards: str) -> dict:
    soft = {"actuation": 0.01, "response": 0.02, "stiffness": 8000.0, "soft": 0.05, "hard": 75000.0}
    return {"leaf": leaf, "from": begins, "to": ends, "guards": guards, "bottom": 0.05, "top": 2.0, **soft}


def beam(guards: list, begins: list, ends: list, height: float) -> dict:
    return {"kind": "beam", "guards": guards, "corners": [begins, ends], "height": height, "diameter": 0.0, "response": 0.02}


def field(corners: list) -> dict:
    return {"kind": "field", "guards": BOTH, "corners": corners, "bottom": 0.2, "top": 0.2, "smallest": 0.05, "response": 0.12}


BOTH = ["opening", "closing"]


def written(world: str, of: dict) -> dict:
    """The worlds of the program, written again; controller, limits and people are those of the sliding leaf."""
    known = {"bare": 75000.0, "controller": of["controller"], "limits": of["limits"]}
    if world == "single":
        return {
            **known, "leaves": [leaf(3.0, 3.0, "smaller")], "faces": [], "scanners": [], "drive": None,
            "passes": [{"direction": word, "turns": [turn(3.0, 0.0)]} for word in ("closing", "opening")],
            "beams": [beam(["closing"], [0.0, -0.12], [3.0, -0.12], 0.6)],
            "edges": [edge(0, 1.5, 3.0, word) for word in BOTH],
            "bodies": [[[0.0, 0.0, 0.2, 0.0, 1.75]]],
        }
    return {
        **known, "leaves": [leaf(0.0, 1.95, "greater", -0.08, 0.07), leaf(4.0, 1.95, "smaller", 0.05, -0.05)],
        "passes": [
            {"direction": "closing", "turns": [turn(1.95, 2.0), turn(1.95, 0.0)]},
            {"direction": "opening", "turns": [turn(1.95, 0.0), turn(1.95, 2.0)]},
        ],
        "faces": [[[-0.2, -0.3], [-0.2, 0.0]], [[4.15, -0.3], [4.15, 0.0]], [[-0.45, 0.6], [-0.45, 3.0]], [[4.3, 1.9], [4.9, 1.2]]],
        "beams": [beam(BOTH, [0.0, -0.25], [4.0, -0.25], 0.5), beam(["closing"], [0.0, 2.2], [4.0, 2.2], 0.5)],
        "scanners": [
            field([[0.2, 0.3], [1.9, 0.3], [1.7, 1.6], [0.3, 1.9]]),
            field([[2.1, 0.3], [3.8, 0.3], [3.7, 1.9], [2.3, 1.6]]),
        ],
        "edges": [edge(at, 1.0, 1.95, word) for at in (0, 1) for word in BOTH],
        "drive": {"guards": BOTH, "force": 200.0, "response": 0.15}, "bodies": of["bodies"],
    }
