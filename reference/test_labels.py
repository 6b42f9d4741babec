"""Labels and wiring, re-read: each code by a decoder, each core and each terminal against the site file."""

import re
import shutil

import ezdxf
import numpy
import openpyxl
import pikepdf
import pypdf
import pytest
import zxingcpp
from conftest import ROOT, SITES, run, site_of

GOOD = ["boatyard", "vineyard", "quarry", "clinic"]
MM = 72 / 25.4


def subpaths(page) -> list[list[tuple[float, float]]]:
    """The beginnings of the parts of each filled path of a page, in points from its lower left corner."""
    found, now, saved, matrix = [], [], [], pikepdf.Matrix()
    for operands, operator in pikepdf.parse_content_stream(page):
        match str(operator):
            case "q":
                saved.append(matrix)
            case "Q":
                matrix = saved.pop()
            case "cm":
                matrix = pikepdf.Matrix(*(float(value) for value in operands)) @ matrix
            case "m":
                now.append(matrix.transform((float(operands[0]), float(operands[1]))))
            case "f" | "f*":
                found.append(now)
                now = []
            case "n" | "S" | "W" | "B" | "b":
                now = []
    return found


def picture(corners) -> numpy.ndarray:
    """The dark squares of a drawn code, eight dots to the module, with a light border."""
    xs, ys = (numpy.array(values) for values in zip(*corners))
    module = min(step for step in numpy.diff(numpy.unique(numpy.round(xs, 2))) if step > 0.1)
    columns = numpy.round((xs - xs.min()) / module).astype(int)
    rows = numpy.round((ys.max() - ys) / module).astype(int)
    side = max(columns.max(), rows.max()) + 9
    dots = numpy.full((side, side), 255, dtype=numpy.uint8)
    dots[rows + 4, columns + 4] = 0
    return numpy.kron(dots, numpy.ones((8, 8), dtype=numpy.uint8))


def codes(file) -> list[str]:
    """What every code of a document says."""
    said = []
    with pikepdf.open(file) as pdf:
        for page in pdf.pages:
            for corners in subpaths(page):
                if len(corners) < 100:
                    continue
                read = zxingcpp.read_barcodes(picture(corners))
                assert len(read) == 1, "a code that no reader reads"
                said.append(read[0].text)
    return said


@pytest.mark.parametrize("name", GOOD)
def test_every_code_reads_back_and_names_its_end(pack, name):
    site = site_of(name)
    said = codes(pack(name) / "labels.pdf")
    for cable in site["cable"]:
        for end, here, there in ((1, cable["from"], cable["to"]), (2, cable["to"], cable["from"])):
            assert f"{site['site']['name']}; cable {cable['id']} end {end} of 2; at {here}, to {there}" in said
    for device in site["device"] + site["operator"]:
        assert any(f"; {device['id']}; " in text for text in said), device["id"]
    for fuse in site["fuse"]:
        assert any(f"; fuse {fuse['id']}" in text for text in said), fuse["id"]


@pytest.mark.parametrize("name", SITES)
def test_both_ends_of_every_cable_have_a_label(pack, name):
    text = " ".join(page.extract_text() for page in pypdf.PdfReader(pack(name) / "labels.pdf").pages)
    words = text.split()
    for cable in site_of(name)["cable"]:
        assert words.count(cable["id"]) >= 2, cable["id"]


@pytest.mark.parametrize("name", GOOD)
def test_pages_are_as_large_as_the_sheet_and_the_strip(pack, name):
    us = site_of(name)["site"]["code_basis"] == "us"
    sheet, strip = ((215.9, 279.4), (76.2, 25.4)) if us else ((210.0, 297.0), (75.0, 24.0))
    for file, wanted in (("labels.pdf", sheet), ("labels-strip.pdf", strip)):
        for page in pypdf.PdfReader(pack(name) / file).pages:
            size = (float(page.mediabox.width) / MM, float(page.mediabox.height) / MM)
            assert size == pytest.approx(wanted, abs=0.05), file


@pytest.mark.parametrize("name", GOOD)
def test_every_core_of_the_site_file_is_scheduled(pack, name):
    book = openpyxl.load_workbook(pack(name) / "schedules.xlsx")
    sheet = book["Core schedule"]
    heads = [cell.value for cell in sheet[1]]
    rows = [[cell.value for cell in row] for row in sheet.iter_rows(min_row=2)]
    at = {head: heads.index(head) for head in ("Cable", "Color", "Wire", "Carries")}
    wires = []
    for wiring in site_of(name)["wiring"]:
        own = [row for row in rows if row[at["Cable"]] == wiring["cable"]]
        if "pattern" in wiring:
            assert len(own) == (2 if wiring["pattern"].startswith("fiber") else 8)
            continue
        assert len(own) == len(wiring["core"])
        for row, core in zip(own, wiring["core"]):
            assert row[at["Color"]] == core["color"]
            assert (row[at["Wire"]] or "") == str(core.get("wire", ""))
            wires += [core["wire"]] if "wire" in core else []
    assert len(wires) == len(set(wires))
    assert max(wires) < site_of(name)["labels"]["next_wire"]


@pytest.mark.parametrize("name", GOOD)
def test_each_terminal_of_a_strip_is_planned_once_for_each_core(pack, name):
    book = openpyxl.load_workbook(pack(name) / "schedules.xlsx")
    rows = [[cell.value for cell in row] for row in book["Terminal plan"].iter_rows(min_row=2)]
    site = site_of(name)
    strip = next(strip for strip in site["terminals"] if strip["id"] == "x1")
    planned = [row[2] for row in rows if row[1] == "x1"]
    assert planned == [str(number) for number in range(1, strip["count"] + 1)]
    landed = [core["from"] for wiring in site["wiring"] for core in wiring.get("core", []) if core.get("from", "").startswith("x1:")]
    used = [f"x1:{row[2]}" for row in rows if row[1] == "x1" and row[3]]
    assert sorted(used) == sorted(landed)


def test_what_changed_is_clouded_marked_and_listed(tmp_path):
    old = tmp_path / "old"
    shutil.copytree(ROOT / "examples/clinic", old)
    file = old / "site.toml"
    text = file.read_text(encoding="utf-8")
    place = 'at = ["4.10 m", "-1.20 m", "1.10 m"]\nfacing = "-120°"'
    assert text.count(place) == 1
    changed = text.replace(place, place.replace("-1.20 m", "-1.60 m"))
    file.write_text(changed.replace('revision = "A"', 'revision = "0"', 1), encoding="utf-8")
    done = run("pack", "examples/clinic", "-o", str(tmp_path / "new"), "--date", "2026-11-25", "--since", str(old))
    assert done.returncode in (0, 1), done.stderr
    clouded = 0
    for drawing in sorted((tmp_path / "new").glob("*.dxf")):
        document = ezdxf.readfile(drawing)
        audit = document.audit()
        assert not audit.errors and not audit.fixes, drawing.name
        clouded += any(layer.dxf.name == "changed since revision 0" for layer in document.layers)
    assert clouded
    book = openpyxl.load_workbook(tmp_path / "new" / "schedules.xlsx")
    listed = [row[0].value for row in book["Changes"].iter_rows(min_row=2)]
    assert any("device camera-entry · at" in what for what in listed), listed
    marked = [row[0].value for row in book["Device schedule"].iter_rows(min_row=2) if str(row[0].value).startswith("△")]
    assert marked == ["△ camera-entry"]
