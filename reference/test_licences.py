"""Every library comes from the public index, unchanged, under a license that allows this use; every font brings its license."""

import json
import re
import subprocess
import tomllib

import pytest
from conftest import ROOT

ALLOWED = {
    "MIT", "MIT-0", "Apache-2.0", "Apache-2.0 WITH LLVM-exception", "BSD-2-Clause", "BSD-3-Clause", "ISC", "Zlib", "Unicode-3.0",
    "0BSD", "CC0-1.0", "BSL-1.0", "Unlicense",
}
WORD = re.compile(r"\(|\)|[\w.+-]+(?:\s+WITH\s+[\w.+-]+)?")
# Licenses outside the list, by package, each with the reason why it may stay. None so far.
EXCEPTIONS: dict[str, str] = {}


def allowed(expression: str) -> bool:
    """Some choice that the expression leaves asks for allowed licenses only. An old-style slash means OR."""
    words = WORD.findall(expression.replace("/", " OR "))

    def either() -> bool:
        found = both()
        while words and words[0] == "OR":
            words.pop(0)
            found = both() or found
        return found

    def both() -> bool:
        found = one()
        while words and words[0] == "AND":
            words.pop(0)
            found = one() and found
        return found

    def one() -> bool:
        word = words.pop(0) if words else ""
        if word == "(":
            found = either()
            assert words.pop(0) == ")", expression
            return found
        return " ".join(word.split()) in ALLOWED

    found = either()
    assert not words, expression
    return found


@pytest.mark.parametrize(
    "expression,wanted",
    [("MIT", True), ("GPL-3.0-only", False), ("", False), ("MIT OR GPL-3.0-only", True), ("MIT AND GPL-3.0-only", False), ("GPL-2.0/MIT", True),
     ("(MIT OR Apache-2.0) AND Unicode-3.0", True), ("(MIT OR Apache-2.0) AND MPL-2.0", False), ("Apache-2.0 WITH LLVM-exception", True)],
)
def test_the_reader_of_expressions(expression, wanted):
    assert allowed(expression) is wanted


@pytest.fixture(scope="session")
def packages():
    done = subprocess.run(["cargo", "metadata", "--format-version", "1", "--locked"], capture_output=True, encoding="utf-8", cwd=ROOT, check=True)
    found = json.loads(done.stdout)["packages"]
    assert len(found) > 100
    return found


def test_every_license_is_allowed(packages):
    refused = {package["name"]: package["license"] for package in packages if not allowed(package["license"] or "")}
    assert set(refused) == set(EXCEPTIONS), refused


def test_every_library_comes_from_the_public_index_or_from_here(packages):
    for package in packages:
        ours = package["source"] is None and package["manifest_path"].startswith(str(ROOT))
        assert ours or package["source"].startswith("registry+"), (package["name"], package["source"])


def test_every_library_is_pinned_by_its_checksum():
    locked = tomllib.loads((ROOT / "Cargo.lock").read_text(encoding="utf-8"))["package"]
    assert all(re.fullmatch(r"[0-9a-f]{64}", package["checksum"]) for package in locked if "source" in package)


def test_every_font_brings_its_license():
    folder = ROOT / "crates/papers/fonts"
    texts = {file.name.split("-")[0]: file.read_text(encoding="utf-8", errors="replace") for file in folder.glob("*.txt")}
    fonts = [file for file in folder.iterdir() if file.suffix in (".ttf", ".otf")]
    assert fonts
    for font in fonts:
        assert any(font.name.startswith(family) and len(text) > 1000 for family, text in texts.items()), font.name
