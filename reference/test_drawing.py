"""The plans, re-read by independent readers: layers, units, a measured dimension, positions, the scale bar's page."""

import re
import xml.etree.ElementTree as ElementTree

import ezdxf
import pytest
from conftest import SITES, site_of
from measure import si

METERS = {1: 0.0254, 4: 0.001}


@pytest.mark.parametrize("name", SITES)
def test_the_dxf_is_sound_and_its_dimension_is_the_clear_opening(pack, name):
    document = ezdxf.readfile(pack(name) / "gate-plan.dxf")
    audit = document.audit()
    assert not audit.errors and not audit.fixes
    meters = METERS[document.header["$INSUNITS"]]
    layers = {layer.dxf.name for layer in document.layers}
    assert {"foundations", "posts and stops", "loops", "dimensions"} <= layers
    measured = [dimension.get_measurement() * meters for dimension in document.modelspace().query("DIMENSION")]
    opening = si(site_of(name)["gate"][0]["clear_opening"])
    assert any(abs(value - opening) < 1e-6 for value in measured), (opening, measured)


@pytest.mark.parametrize("name", ["boatyard", "vineyard"])
def test_posts_stand_where_the_site_file_says(pack, name):
    document = ezdxf.readfile(pack(name) / "gate-plan.dxf")
    meters = METERS[document.header["$INSUNITS"]]
    corners = []
    for line in document.modelspace().query('LWPOLYLINE[layer=="posts and stops"]'):
        points = [(x * meters, y * meters) for x, y, *_ in line.get_points()]
        corners.append((sum(x for x, _ in points) / len(points), sum(y for _, y in points) / len(points)))
    for post in site_of(name)["gate"][0]["post"]:
        x, y = (si(value) for value in post["at"][:2])
        assert any(abs(x - cx) < 1e-4 and abs(y - cy) < 1e-4 for cx, cy in corners), post["id"]


@pytest.mark.parametrize("name", ["boatyard", "vineyard"])
def test_the_svg_is_a_page_of_true_size(pack, name):
    for file in pack(name).glob("*.svg"):
        root = ElementTree.parse(file).getroot()
        width, height = (float(re.fullmatch(r"([\d.]+)mm", root.get(side))[1]) for side in ("width", "height"))
        sheet = (431.8, 279.4) if name == "boatyard" else (420.0, 297.0)
        assert (width, height) == pytest.approx(sheet)
        box = [float(number) for number in root.get("viewBox").split()]
        assert box == pytest.approx([0, 0, *sheet])
        assert root.find("{http://www.w3.org/2000/svg}title") is not None
