"""Every library comes from the public index under a license that allows this use."""

import json
import re
import subprocess

from conftest import ROOT

ALLOWED = {
    "MIT", "Apache-2.0", "Apache-2.0 WITH LLVM-exception", "BSD-2-Clause", "BSD-3-Clause", "ISC", "Zlib", "Unicode-3.0",
    "0BSD", "CC0-1.0", "BSL-1.0", "Unlicense", "MIT-0",
}


def allowed(expression: str) -> bool:
    """Some alternative of the expression asks for allowed licenses only."""
    expression = expression.replace("/", " OR ").replace("(", " ( ").replace(")", " ) ")
    words = re.sub(r"(\S+) WITH (\S+)", lambda match: f"{match[1]}_WITH_{match[2]}", expression).split()
    known = {name.replace(" ", "_") for name in ALLOWED}
    code = " ".join({"OR": "or", "AND": "and", "(": "(", ")": ")"}.get(word, str(word in known)) for word in words)
    return bool(eval(code))  # made of True, False, and, or and parentheses only


def test_licenses_and_sources():
    done = subprocess.run(["cargo", "metadata", "--format-version", "1", "--locked"], capture_output=True, text=True, cwd=ROOT, check=True)
    packages = json.loads(done.stdout)["packages"]
    assert len(packages) > 100
    for package in packages:
        ours = package["source"] is None
        assert ours or package["source"].startswith("registry+"), package["name"]
        assert allowed(package["license"] or ""), (package["name"], package["license"])
