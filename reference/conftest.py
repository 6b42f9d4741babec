"""What the cross-checks share: the program, its papers, its answers, one calculation."""

import json
import os
import subprocess
import tomllib
from pathlib import Path

import pytest
from filelock import FileLock

ROOT = Path(__file__).resolve().parent.parent
SITES = [
    name + fault for name in ("boatyard", "vineyard", "quarry", "clinic") for fault in ("", "-faulty")
]


def program() -> str:
    return os.environ.get("GATEWRIGHT", str(ROOT / "target/release/gatewright"))


def run(*arguments: str) -> subprocess.CompletedProcess:
    return subprocess.run([program(), *arguments], capture_output=True, encoding="utf-8", cwd=ROOT)


def site_file(name: str) -> Path:
    return ROOT / "examples" / name / "site.toml"


def site_of(name: str) -> dict:
    return tomllib.loads(site_file(name).read_text(encoding="utf-8"))


def with_part(kind: str, entry: dict, site: str = "boatyard") -> dict:
    """The entry with what it lacks taken from its part."""
    parts = tomllib.loads((ROOT / "examples" / site / "parts.toml").read_text(encoding="utf-8"))
    part = next((part for part in parts.get(kind, []) if part["id"] == entry.get("part")), {})
    return {**part, **entry}


def finding(answers, site: str, name: str) -> dict:
    """The finding with the name `question/subject`."""
    question, subject = name.split("/")
    return next(f for f in answers(site)["findings"] if f["question"] == question and f["subject"]["name"] == subject)


@pytest.fixture(scope="session")
def pack(tmp_path_factory):
    """The folder with the papers of a site, made once for all who work through the tests."""
    shared = tmp_path_factory.getbasetemp().parent if "PYTEST_XDIST_WORKER" in os.environ else tmp_path_factory.getbasetemp()

    def of(name: str, again: bool = False) -> Path:
        folder = shared / f"pack-{name}{'-again' if again else ''}"
        made = folder.with_suffix(".made")
        with FileLock(folder.with_suffix(".lock")):
            if not made.exists():
                done = run("pack", f"examples/{name}", "-o", str(folder), "--date", "2026-11-25")
                assert done.returncode in (0, 1), done.stderr
                made.touch()
        return folder

    return of


@pytest.fixture(scope="session")
def answers():
    """What `check --json` says of a site."""
    made = {}

    def of(name: str) -> dict:
        if name not in made:
            done = run("check", f"examples/{name}", "--json")
            assert done.returncode in (0, 1), done.stderr
            made[name] = json.loads(done.stdout)
        return made[name]

    return of


@pytest.fixture(scope="session")
def calc():
    """Works one calculation; gives its outputs in SI units, words as text."""

    def of(calculation: str, **inputs) -> dict:
        pairs = [f"{name}={value}" for name, value in inputs.items()]
        done = run("calc", calculation, *pairs, "--json")
        assert done.returncode == 0, done.stderr
        gives = json.loads(done.stdout)["gives"]
        return {name: value["si"] if value["si"] is not None else value["text"] for name, value in gives.items()}

    return of
