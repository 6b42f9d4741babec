"""The schedules, re-read with openpyxl: nothing of the site file is left out, and numbers are numbers."""

import tomllib

import openpyxl
import pytest
from conftest import ROOT, SITES, site_of
from measure import si


def rows(book, title):
    sheet = book[title]
    heads = [cell.value for cell in sheet[1]]
    return sheet, heads, [dict(zip(heads, (cell.value for cell in row))) for row in sheet.iter_rows(min_row=2)]


@pytest.mark.parametrize("name", SITES)
def test_every_cable_and_device_is_scheduled(pack, name):
    book = openpyxl.load_workbook(pack(name) / "schedules.xlsx")
    site = site_of(name)
    _, _, cable_rows = rows(book, "Cable schedule")
    assert [row["Cable"] for row in cable_rows] == [cable["id"] for cable in site["cable"]]
    for row, cable in zip(cable_rows, site["cable"]):
        assert (row["From"], row["To"]) == (cable["from"], cable["to"])
        assert (row["Through"] or "") == ", ".join(cable.get("route", []))
    _, _, device_rows = rows(book, "Device schedule")
    names = {row["Name"] for row in device_rows}
    assert names == {thing["id"] for thing in site["device"] + site["operator"]}


@pytest.mark.parametrize("name", ["boatyard", "vineyard"])
def test_headings_stay_in_sight_and_columns_can_be_filtered(pack, name):
    book = openpyxl.load_workbook(pack(name) / "schedules.xlsx")
    for sheet in book.worksheets[1:]:
        assert sheet.freeze_panes == "A2", sheet.title
        assert sheet.auto_filter.ref, sheet.title


@pytest.mark.parametrize("name", ["boatyard", "vineyard"])
def test_lengths_are_numbers_and_those_of_the_site_file(pack, name):
    book = openpyxl.load_workbook(pack(name) / "schedules.xlsx")
    _, heads, cable_rows = rows(book, "Cable schedule")
    head = next(head for head in heads if head and head.startswith("Length"))
    unit = 0.3048 if "ft" in head else 1.0
    lengths = 0
    for row, cable in zip(cable_rows, site_of(name)["cable"]):
        if "length" in cable:
            lengths += 1
            assert isinstance(row[head], (int, float)), cable["id"]
            assert row[head] * unit == pytest.approx(si(cable["length"]), abs=1e-9), cable["id"]
    assert lengths


@pytest.mark.parametrize("name", ["boatyard", "vineyard"])
def test_conduits_have_the_length_and_the_bends_of_their_pieces(pack, name):
    book = openpyxl.load_workbook(pack(name) / "schedules.xlsx")
    site = site_of(name)
    _, heads, conduit_rows = rows(book, "Conduit schedule")
    head = next(head for head in heads if head.startswith("Straight"))
    unit = 0.3048 if "ft" in head else 1.0
    assert [row["Conduit"] for row in conduit_rows] == [conduit["id"] for conduit in site["conduit"]]
    for row, conduit in zip(conduit_rows, site["conduit"]):
        straight = sum(si(piece["straight"]) for piece in conduit["segment"] if "straight" in piece)
        bends = sum(si(piece["bend"]) for piece in conduit["segment"] if "bend" in piece)
        assert row[head] * unit == pytest.approx(straight, abs=1e-9), conduit["id"]
        assert row["Bends (°)"] == pytest.approx(bends, abs=1e-9), conduit["id"]
        through = [cable["id"] for cable in site["cable"] if conduit["id"] in cable.get("route", [])]
        assert (row["Cables"] or "") == ", ".join(through), conduit["id"]


@pytest.mark.parametrize("name", ["boatyard", "vineyard"])
def test_columns_with_a_unit_hold_numbers_only(pack, name):
    book = openpyxl.load_workbook(pack(name) / "schedules.xlsx")
    seen = 0
    for sheet in book.worksheets[1:]:
        _, heads, body = rows(book, sheet.title)
        for head in heads:
            if head.endswith(")"):
                values = [row[head] for row in body if row[head] is not None]
                seen += len(values)
                assert all(isinstance(value, (int, float)) for value in values), (sheet.title, head)
    assert seen > 20


@pytest.mark.parametrize("title,head", [("Cable schedule", "Cores"), ("Enclosure contents", "How many"), ("Foundations and anchors", "How many")])
def test_counts_are_numbers(pack, title, head):
    book = openpyxl.load_workbook(pack("boatyard") / "schedules.xlsx")
    _, _, body = rows(book, title)
    values = [row[head] for row in body if row[head] is not None]
    assert values and all(isinstance(value, int) for value in values), values


def test_currents_are_those_of_the_parts(pack):
    site = site_of("boatyard")
    parts = tomllib.loads((ROOT / "examples/boatyard/parts.toml").read_text())
    part = {each["id"]: each for each in parts["device"]}
    book = openpyxl.load_workbook(pack("boatyard") / "schedules.xlsx")
    shown = {row["Name"]: row["Current (A)"] for row in rows(book, "Device schedule")[2]}
    checked = 0
    for device in site["device"]:
        current = {**part.get(device.get("part"), {}), **device}.get("current")
        if current:
            checked += 1
            assert shown[device["id"]] == pytest.approx(si(current)), device["id"]
    assert checked > 10
