"""The plans, re-read by independent readers: layers, units, measured dimensions, positions, true scale on the page."""

import re
import xml.etree.ElementTree as ElementTree

import ezdxf
import pytest
from conftest import SITES, site_of, with_part
from measure import si

METERS = {1: 0.0254, 4: 0.001}
SVG = "{http://www.w3.org/2000/svg}"
SHEET = {"boatyard": (431.8, 279.4), "vineyard": (420.0, 297.0)}
# An SVG is written to a thousandth of a millimeter on paper.
PAPER = 0.001


def plans(folder, ending: str) -> list:
    files = sorted(folder.glob(f"*plan*.{ending}"))
    assert files
    return files


def meters_of(document) -> float:
    return METERS[document.header["$INSUNITS"]]


@pytest.mark.parametrize("name", SITES)
def test_every_dxf_is_sound_and_in_the_units_of_its_site(pack, name):
    for file in plans(pack(name), "dxf"):
        document = ezdxf.readfile(file)
        audit = document.audit()
        assert not audit.errors and not audit.fixes, file.name
        assert document.header["$INSUNITS"] == (1 if site_of(name)["site"]["units"] == "us" else 4)
        layers = {layer.dxf.name for layer in document.layers}
        assert {"foundations", "leaf closed", "posts and stops", "loops", "contact edges", "dimensions"} <= layers
        assert all(thing.dxf.layer in layers - {"0", "Defpoints"} for thing in document.modelspace())


@pytest.mark.parametrize("name", SITES)
def test_the_gate_plan_measures_the_clear_opening(pack, name):
    opening = si(site_of(name)["gate"][0]["clear_opening"])
    measured = []
    for file in plans(pack(name), "dxf"):
        document = ezdxf.readfile(file)
        measured += [dimension.get_measurement() * meters_of(document) for dimension in document.modelspace().query("DIMENSION")]
    assert any(abs(value - opening) < 1e-6 for value in measured), (opening, measured)


@pytest.mark.parametrize("name", ["boatyard", "vineyard"])
def test_posts_stand_where_the_site_file_says_and_are_as_wide(pack, name):
    found = []
    for file in plans(pack(name), "dxf"):
        document = ezdxf.readfile(file)
        for line in document.modelspace().query('LWPOLYLINE[layer=="posts and stops"]'):
            xs, ys = zip(*((x * meters_of(document), y * meters_of(document)) for x, y, *_ in line.get_points()))
            found.append(((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2, max(xs) - min(xs)))
    for post in (with_part("post", post, name) for post in site_of(name)["gate"][0]["post"]):
        x, y = (si(value) for value in post["at"][:2])
        wanted = (x, y, si(post["width"]))
        assert any(place == pytest.approx(wanted, abs=1e-4) for place in found), post["id"]


@pytest.mark.parametrize("name", ["boatyard", "vineyard"])
def test_loops_lie_where_the_site_file_says(pack, name):
    found = []
    for file in plans(pack(name), "dxf"):
        # The sheet of vehicles has the gate once for each of them, side by side.
        if file.name.startswith("vehicles"):
            continue
        document = ezdxf.readfile(file)
        for line in document.modelspace().query('LWPOLYLINE[layer=="loops"]'):
            xs, ys = zip(*((x * meters_of(document), y * meters_of(document)) for x, y, *_ in line.get_points()))
            found.append((min(xs), min(ys), max(xs), max(ys)))
    loops = [device for device in site_of(name)["device"] if device.get("kind") == "loop"]
    wanted = [tuple(si(value) for value in (*loop["at"][:2], *loop["to"][:2])) for loop in loops]
    # Each drawn loop is one of the file, and the plan of the gate shows at least one; the rest may stand as symbols on the site plan.
    assert found
    assert all(any(box == pytest.approx(loop, abs=1e-4) for loop in wanted) for box in found)


def numbers(text: str) -> list[float]:
    return [float(number) for number in re.findall(r"-?\d+\.?\d*", text)]


def scale_of(root) -> int:
    """The number n of the scale 1:n in the title block."""
    block = root.find(f".//{SVG}g[@class='title-block']")
    words = " ".join(text.text or "" for text in block.iter(f"{SVG}text"))
    return int(re.search(r"1\s*:\s*(\d+)", words)[1])


@pytest.mark.parametrize("name", ["boatyard", "vineyard"])
def test_the_svg_is_a_page_of_true_size(pack, name):
    for file in plans(pack(name), "svg"):
        root = ElementTree.parse(file).getroot()
        width, height = (float(re.fullmatch(r"([\d.]+)mm", root.get(side))[1]) for side in ("width", "height"))
        assert (width, height) == pytest.approx(SHEET[name])
        assert numbers(root.get("viewBox")) == pytest.approx([0, 0, *SHEET[name]])
        assert root.find(f"{SVG}title") is not None


@pytest.mark.parametrize("name", ["boatyard", "vineyard"])
def test_the_scale_bar_is_true(pack, name):
    for file in plans(pack(name), "svg"):
        root = ElementTree.parse(file).getroot()
        bar = root.find(f".//{SVG}g[@class='scale-bar']")
        xs = [x for path in bar.iter(f"{SVG}path") for x in numbers(path.get("d"))[0::2]]
        label = max((text.text for text in bar.iter(f"{SVG}text") if re.fullmatch(r"\d+ (ft|m)", text.text)), key=si)
        assert (max(xs) - min(xs)) / 1000 * scale_of(root) == pytest.approx(si(label), abs=2 * PAPER / 1000 * scale_of(root)), file.name


@pytest.mark.parametrize("name", ["boatyard", "vineyard"])
def test_distances_on_the_page_are_those_of_the_site_at_the_scale(pack, name):
    gate = site_of(name)["gate"][0]
    root = ElementTree.parse(pack(name) / "gate-plan.svg").getroot()
    middle = {}
    for figure in root.iter(f"{SVG}g"):
        title = figure.find(f"{SVG}title")
        words = (title.text if title is not None else "").split()
        outline = figure.find(f"{SVG}path")
        if figure.get("class") == "figure" and outline is not None and words[-2:-1] == ["post"]:
            corners = numbers(outline.get("d"))
            middle[words[-1]] = (sum(corners[0::2]) / len(corners[0::2]), sum(corners[1::2]) / len(corners[1::2]))
    posts = gate["post"]
    assert set(middle) == {post["id"] for post in posts}
    first, scale = posts[0], scale_of(root)
    for post in posts[1:]:
        for axis, sign in ((0, 1), (1, -1)):
            on_paper = sign * (middle[post["id"]][axis] - middle[first["id"]][axis]) / 1000 * scale
            on_site = si(post["at"][axis]) - si(first["at"][axis])
            assert on_paper == pytest.approx(on_site, abs=2 * PAPER / 1000 * scale), (post["id"], axis)


@pytest.mark.parametrize("name", ["boatyard", "vineyard"])
def test_a_drawing_that_travels_alone_bears_the_caution(pack, name):
    for file in plans(pack(name), "svg"):
        root = ElementTree.parse(file).getroot()
        caution = root.find(f".//{SVG}g[@class='caution']")
        assert "competent person" in " ".join(text.text or "" for text in caution.iter(f"{SVG}text")), file.name
