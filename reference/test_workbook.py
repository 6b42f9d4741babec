"""The schedules, re-read with openpyxl: nothing of the site file is left out, and numbers are numbers."""

import openpyxl
import pytest
from conftest import SITES, site_of
from measure import si


def rows(book, title):
    sheet = book[title]
    heads = [cell.value for cell in sheet[1]]
    return sheet, heads, [dict(zip(heads, (cell.value for cell in row))) for row in sheet.iter_rows(min_row=2)]


@pytest.mark.parametrize("name", SITES)
def test_every_cable_and_device_is_scheduled(pack, name):
    book = openpyxl.load_workbook(pack(name) / "schedules.xlsx")
    site = site_of(name)
    cables, heads, cable_rows = rows(book, "Cable schedule")
    assert [row["Cable"] for row in cable_rows] == [cable["id"] for cable in site["cable"]]
    assert cables.freeze_panes == "A2"
    assert cables.auto_filter.ref
    _, _, device_rows = rows(book, "Device schedule")
    names = {row["Name"] for row in device_rows}
    assert names == {thing["id"] for thing in site["device"] + site["operator"]}


@pytest.mark.parametrize("name", ["boatyard", "vineyard"])
def test_lengths_are_numbers_and_those_of_the_site_file(pack, name):
    book = openpyxl.load_workbook(pack(name) / "schedules.xlsx")
    _, heads, cable_rows = rows(book, "Cable schedule")
    head = next(head for head in heads if head and head.startswith("Length"))
    unit = 0.3048 if "ft" in head else 1.0
    for row, cable in zip(cable_rows, site_of(name)["cable"]):
        if "length" in cable:
            assert isinstance(row[head], (int, float)), cable["id"]
            assert row[head] * unit == pytest.approx(si(cable["length"]), abs=0.01), cable["id"]
