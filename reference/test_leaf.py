"""The leaf worked another way: frames by the stiffness method, beams by integration, sections by counting cells."""

import numpy
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

STEEL = 200e9


def frame_by_stiffness(overhang, height, panels, end_load, uniform_load, rail, brace, upright):
    """Sag of the top of the free end of a pin-jointed frame with one brace a panel, its load on the top rail."""
    panel = overhang / panels
    nodes = numpy.array([(i * panel, y) for i in range(panels + 1) for y in (0.0, height)])
    bars = [(2 * i, 2 * i + 1, upright) for i in range(panels)]
    for i in range(1, panels + 1):
        bars += [(2 * i - 2, 2 * i, rail), (2 * i - 1, 2 * i + 1, rail), (2 * i - 2, 2 * i + 1, brace)]
    stiffness = numpy.zeros((2 * len(nodes), 2 * len(nodes)))
    for p, q, area in bars:
        along = nodes[q] - nodes[p]
        length = numpy.hypot(*along)
        direction = numpy.concatenate([-along, along]) / length
        places = [2 * p, 2 * p + 1, 2 * q, 2 * q + 1]
        stiffness[numpy.ix_(places, places)] += STEEL * area / length * numpy.outer(direction, direction)
    load = numpy.zeros(2 * len(nodes))
    load[3] -= end_load
    for i in range(panels):
        load[2 * (2 * i + 1) + 1] -= uniform_load * panel * (0.5 if i == 0 else 1.0)
    free = list(range(4 * panels))
    moved = numpy.linalg.solve(stiffness[numpy.ix_(free, free)], load[free])
    return -moved[3]


@pytest.mark.parametrize(
    "overhang,height,panels,end_load,uniform_load",
    [(3.6, 1.4, 2, 900.0, 0.0), (7.2, 1.6, 5, 0.0, 350.0), (1.2, 1.4, 1, 500.0, 200.0), (9.5, 1.9, 8, 800.0, 420.0)],
)
def test_a_braced_frame_by_the_stiffness_method(calc, overhang, height, panels, end_load, uniform_load):
    ours = calc(
        "braced-frame-sag", overhang=f"{overhang} m", height=f"{height} m", panels=str(panels), end_load=f"{end_load} N",
        uniform_load=f"{uniform_load} N/m", rail_area="501 mm²", brace_area="301 mm²", upright_area="402 mm²", elasticity="200000 MPa",
    )
    theirs = frame_by_stiffness(overhang, height, panels, end_load, uniform_load, 501e-6, 301e-6, 402e-6)
    assert ours["sag"] == pytest.approx(theirs, rel=1e-9)


@pytest.mark.parametrize("end_load,uniform_load", [(600.0, 0.0), (0.0, 150.0), (250.0, 80.0)])
def test_a_cantilever_by_integrating_its_curvature(calc, end_load, uniform_load):
    length, inertia = 4.0, 300e-8

    def slope_and_curvature(x, state):
        moment = end_load * (length - x) + uniform_load * (length - x) ** 2 / 2
        return [state[1], moment / (STEEL * inertia)]

    bent = solve_ivp(slope_and_curvature, (0, length), [0.0, 0.0], rtol=1e-11, atol=1e-14)
    ours = calc(
        "cantilever-beam", length="4 m", end_load=f"{end_load} N", uniform_load=f"{uniform_load} N/m",
        elasticity="200000 MPa", inertia="300 cm⁴", modulus="60 cm³",
    )
    assert ours["deflection"] == pytest.approx(bent.y[0, -1], rel=1e-8)


def test_a_beam_on_two_supports_by_shooting(calc):
    length, inertia, middle_load, uniform_load = 3.0, 300e-8, 400.0, 120.0

    def slope_and_curvature(x, state):
        support = (middle_load + uniform_load * length) / 2
        moment = support * x - uniform_load * x**2 / 2 - middle_load * max(0.0, x - length / 2)
        return [state[1], moment / (STEEL * inertia)]

    def bent(first_slope, until=length):
        return solve_ivp(slope_and_curvature, (0, until), [0.0, first_slope], rtol=1e-11, atol=1e-14, max_step=0.01).y[0, -1]

    slope = brentq(bent, -1.0, 1.0, xtol=1e-15)
    ours = calc(
        "simple-beam", length="3 m", middle_load=f"{middle_load} N", uniform_load=f"{uniform_load} N/m",
        elasticity="200000 MPa", inertia="300 cm⁴", modulus="60 cm³",
    )
    assert ours["deflection"] == pytest.approx(-bent(slope, length / 2), rel=1e-6)


def inside_a_rounded_rectangle(x, y, width, height, radius):
    """Whether points lie in a rectangle about the origin with rounded corners."""
    beyond_x = numpy.maximum(numpy.abs(x) - (width / 2 - radius), 0.0)
    beyond_y = numpy.maximum(numpy.abs(y) - (height / 2 - radius), 0.0)
    return (numpy.abs(x) <= width / 2) & (numpy.abs(y) <= height / 2) & (beyond_x**2 + beyond_y**2 <= radius**2)


@pytest.mark.parametrize("depth,width,wall,radius", [(100.0, 60.0, 4.0, 8.0), (40.0, 40.0, 3.0, 6.0), (80.0, 40.0, 3.0, 0.001)])
def test_a_tube_by_counting_cells(calc, depth, width, wall, radius):
    step = 0.05
    across = numpy.arange(-width / 2 + step / 2, width / 2, step)
    up = numpy.arange(-depth / 2 + step / 2, depth / 2, step)
    x, y = numpy.meshgrid(across, up)
    metal = inside_a_rounded_rectangle(x, y, width, depth, radius)
    metal &= ~inside_a_rounded_rectangle(x, y, width - 2 * wall, depth - 2 * wall, max(radius - wall, 0.0))
    ours = calc("tube-section", depth=f"{depth} mm", width=f"{width} mm", wall=f"{wall} mm", corner_radius=f"{radius} mm")
    assert ours["area"] == pytest.approx(metal.sum() * step**2 * 1e-6, rel=2e-3)
    assert ours["inertia"] == pytest.approx((y[metal] ** 2).sum() * step**2 * 1e-12, rel=2e-3)
    assert ours["inertia_across"] == pytest.approx((x[metal] ** 2).sum() * step**2 * 1e-12, rel=2e-3)


def test_trolleys_by_solving_the_balance(calc):
    mass, ahead, spacing, climber, tip = 766.0, 1.9, 3.5, 980.0, 8.2
    weight = mass * 9.80665
    # Upward forces of front and rear, and their moments about the front trolley, distances counted ahead.
    front, rear = numpy.linalg.solve([[1.0, 1.0], [0.0, -spacing]], [weight + climber, weight * ahead + climber * tip])
    ours = calc(
        "cantilever-gate-rollers", mass=f"{mass} kg", center_ahead=f"{ahead} m", spacing=f"{spacing} m",
        tip_load=f"{climber} N", tip_ahead=f"{tip} m",
    )
    assert ours["front"] == pytest.approx(front, rel=1e-12)
    assert ours["rear"] == pytest.approx(rear, rel=1e-12)


def test_a_wheel_on_its_track_by_summing_the_pressure(calc):
    ours = calc(
        "wheel-contact-pressure", load="3000 N", diameter="120 mm", tread_width="20 mm", wheel_elasticity="200000 MPa",
        wheel_poisson="0.3", rail_elasticity="200000 MPa", rail_poisson="0.3",
    )
    places = numpy.linspace(-1.0, 1.0, 200_001)
    pressure = ours["pressure"] * numpy.sqrt(1.0 - places**2)
    assert numpy.trapezoid(pressure, places) * ours["half_width"] * 0.02 == pytest.approx(3000.0, rel=1e-5)
