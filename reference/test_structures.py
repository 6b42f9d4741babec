"""Frames and sections by general structural libraries: anastruct for frames and beams, sectionproperties for cross-sections."""

import pytest
from anastruct import SystemElements
from sectionproperties.analysis import Section
from sectionproperties.pre.library import circular_hollow_section, rectangular_hollow_section, rectangular_section

STEEL = 200e9


@pytest.mark.parametrize("overhang,height,panels,end_load", [(3.6, 1.4, 2, 900.0), (7.2, 1.6, 5, 400.0), (9.5, 1.9, 8, 800.0)])
def test_the_sag_of_a_braced_frame(calc, overhang, height, panels, end_load):
    rail, brace, upright = 501e-6, 301e-6, 402e-6
    truss = SystemElements()
    panel = overhang / panels
    bar = lambda a, b, area: truss.add_truss_element(location=[a, b], EA=STEEL * area)
    for at in range(panels):
        left, right = at * panel, (at + 1) * panel
        bar([left, 0], [left, height], upright)
        bar([left, 0], [right, 0], rail)
        bar([left, height], [right, height], rail)
        bar([left, 0], [right, height], brace)
    free = truss.find_node_id([0, height])
    for held in ([overhang, 0], [overhang, height]):
        truss.add_support_hinged(node_id=truss.find_node_id(held))
    truss.point_load(node_id=free, Fy=-end_load)
    truss.solve()
    theirs = abs(truss.get_node_displacements(node_id=free)["uy"])
    ours = calc(
        "braced-frame-sag", overhang=f"{overhang} m", height=f"{height} m", panels=str(panels), end_load=f"{end_load} N",
        uniform_load="0 N/m", rail_area="501 mm²", brace_area="301 mm²", upright_area="402 mm²", elasticity="200000 MPa",
    )
    assert ours["sag"] == pytest.approx(theirs, rel=1e-6)


@pytest.mark.parametrize("end_load,uniform_load", [(600.0, 0.0), (0.0, 150.0), (250.0, 80.0)])
def test_a_cantilever(calc, end_load, uniform_load):
    inertia, length = 300e-8, 4.0
    beam = SystemElements(EA=1e12, EI=STEEL * inertia)
    beam.add_element(location=[[0, 0], [length, 0]])
    beam.add_support_fixed(node_id=1)
    if end_load:
        beam.point_load(node_id=2, Fy=-end_load)
    if uniform_load:
        beam.q_load(q=-uniform_load, element_id=1)
    beam.solve()
    ours = calc(
        "cantilever-beam", length="4 m", end_load=f"{end_load} N", uniform_load=f"{uniform_load} N/m",
        elasticity="200000 MPa", inertia="300 cm⁴", modulus="60 cm³",
    )
    assert ours["deflection"] == pytest.approx(abs(beam.get_node_displacements(node_id=2)["uy"]), rel=1e-6)


def analysed(geometry, mesh):
    geometry.create_mesh(mesh_sizes=[mesh])
    section = Section(geometry)
    section.calculate_geometric_properties()
    return section


@pytest.mark.parametrize("depth,width,wall", [(100.0, 60.0, 4.0), (40.0, 40.0, 3.0), (152.4, 50.8, 4.4)])
def test_a_rectangular_tube(calc, depth, width, wall):
    corner = 2 * wall
    geometry = rectangular_hollow_section(d=depth, b=width, t=wall, r_out=corner, n_r=64)
    section = analysed(geometry, 20.0)
    along, across, _ = section.get_ic()
    ours = calc("tube-section", depth=f"{depth} mm", width=f"{width} mm", wall=f"{wall} mm", corner_radius=f"{corner} mm")
    assert ours["area"] == pytest.approx(section.get_area() * 1e-6, rel=1e-4)
    assert ours["inertia"] == pytest.approx(along * 1e-12, rel=1e-4)
    assert ours["inertia_across"] == pytest.approx(across * 1e-12, rel=1e-4)


def test_a_round_tube_and_a_flat(calc):
    section = analysed(circular_hollow_section(d=88.9, t=5.0, n=256), 20.0)
    ours = calc("round-section", diameter="88.9 mm", wall="5 mm")
    assert ours["area"] == pytest.approx(section.get_area() * 1e-6, rel=5e-4)
    assert ours["inertia"] == pytest.approx(section.get_ic()[0] * 1e-12, rel=5e-4)
    section = analysed(rectangular_section(d=80.0, b=10.0), 50.0)
    ours = calc("bar-section", depth="80 mm", width="10 mm")
    assert ours["inertia"] == pytest.approx(section.get_ic()[0] * 1e-12, rel=1e-9)
