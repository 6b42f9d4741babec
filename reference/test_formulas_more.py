"""More calculations worked another way: conductors, head-on approach, wind near the ground, groups of anchors, a whole route."""

import numpy
import pytest
from scipy.integrate import quad, solve_ivp

G = 9.80665
FOOT = 0.3048
SQUARE_INCH = 0.0254**2

# Ohm for each thousand feet at 75 °C, uncoated copper: NFPA 70 chapter 9 table 8 (memory; the public reprints agree).
TABLE_8 = {("18 AWG", "solid"): 7.77, ("18 AWG", "stranded"): 7.95, ("14 AWG", "solid"): 3.07, ("14 AWG", "stranded"): 3.14,
           ("12 AWG", "stranded"): 1.98, ("10 AWG", "stranded"): 1.24, ("8 AWG", "stranded"): 0.778, ("2 AWG", "stranded"): 0.194}


@pytest.mark.parametrize("size,stranding", TABLE_8)
def test_voltage_drop_by_the_table_of_the_code(calc, size, stranding):
    ohms = TABLE_8[size, stranding] / (1000 * FOOT) * (1 + 0.00323 * (50 - 75))
    ours = calc("nec-table-8-resistance", size=size, stranding=stranding, coating="uncoated", temperature="50 °C")
    assert ours["resistance"] == pytest.approx(ohms, rel=1e-9)
    drop = calc("voltage-drop", source="24 V", current="1.4 A", length="126 ft", resistance=f"{ours['resistance']} Ω/m")
    # Each foot of the run loses its share, there and back.
    lost, _ = quad(lambda s: 2 * 1.4 * ohms, 0, 126 * FOOT)
    assert drop["drop"] == pytest.approx(lost, rel=1e-9)
    assert drop["far_end"] == pytest.approx(24 - lost, rel=1e-9)


@pytest.mark.parametrize("gauge", [8, 12, 18, 23])
def test_resistance_from_the_gauge_and_the_metal(calc, gauge):
    diameter = 0.127e-3 * 92 ** ((36 - gauge) / 39)
    # Annealed copper: 1/58 ohm for a meter of a square millimeter at 20 °C, 0.393 % more for each kelvin.
    ohms = 1 / 58e6 / (numpy.pi / 4 * diameter**2) * (1 + 0.00393 * 30)
    ours = calc("conductor-resistance", size=f"{gauge} AWG", metal="copper", stranding="solid", temperature="50 °C")
    assert ours["resistance"] == pytest.approx(ohms, rel=1e-3)


@pytest.mark.parametrize("milliseconds,capability", [(50, 14), (100, 30), (233, 14), (262, 20), (400, 40), (233, 70), (20, 14)])
def test_distance_of_a_head_on_curtain_in_two_steps(calc, milliseconds, capability):
    if capability <= 40:
        reach = max(8 * (capability - 14), 0)
        wanted = max(2.0 * milliseconds + reach, 100)
        if wanted > 500:
            wanted = max(1.6 * milliseconds + reach, 500)
    else:
        wanted = 1.6 * milliseconds + 850
    ours = calc("iso13855-2010-minimum-distance", stopping_time=f"{milliseconds} ms", capability=f"{capability} mm")
    assert ours["distance"] * 1000 == pytest.approx(wanted, rel=1e-9)


@pytest.mark.parametrize("terrain,roughness,least,height", [("0", 0.003, 1, 0.8), ("I", 0.01, 1, 2.2), ("II", 0.05, 2, 1.5), ("III", 0.3, 5, 1.8), ("IV", 1.0, 10, 25)])
def test_european_wind_below_and_above_the_least_height(calc, terrain, roughness, least, height):
    z = max(height, least)
    mean = 0.19 * (roughness / 0.05) ** 0.07 * numpy.log(z / roughness) * 27.0 * 1.1
    pressure = (1 + 7 / (1.1 * numpy.log(z / roughness))) * 0.625 * mean**2
    ours = calc(
        "en1991-peak-velocity-pressure", fundamental_speed="27 m/s", direction_factor="1", season_factor="1",
        probability_factor="1", terrain=terrain, orography_factor="1.1", height=f"{height} m",
    )
    assert ours["pressure"] == pytest.approx(pressure, rel=1e-9)


@pytest.mark.parametrize("across,along,spacing,edges", [(2, 1, 0.35, (0.25, 0.25, 0.25, 0.25)), (2, 2, 0.2, (0.15, 1.0, 0.3, 0.2)), (3, 2, 0.1, (0.1, 0.4, 0.22, 2.0))])
def test_cones_of_a_group_of_anchors_by_counting_squares(calc, across, along, spacing, edges):
    depth, (left, right, front, back) = 0.1524, edges
    reach, step = 1.5 * depth, 0.0005
    xs = numpy.arange(-left, (across - 1) * spacing + right, step) + step / 2
    ys = numpy.arange(-front, (along - 1) * spacing + back, step) + step / 2
    # A square counts where some anchor is near in both directions: cones of a group merge.
    columns = numpy.min(numpy.abs(xs[:, None] - spacing * numpy.arange(across)), axis=1) <= reach
    lines = numpy.min(numpy.abs(ys[:, None] - spacing * numpy.arange(along)), axis=1) <= reach
    counted = columns.sum() * lines.sum() * step**2
    ours = calc(
        "anchor-group-breakout-tension", anchor="post-installed", embedment=f"{depth} m", concrete_strength="4000 psi", coefficient="17",
        cracking_factor="1", lightweight_factor="1", count_across=across, spacing_across=f"{spacing} m", count_along=along,
        spacing_along=f"{spacing if along > 1 else 0} m", edge_left=f"{left} m", edge_right=f"{right} m", edge_front=f"{front} m", edge_back=f"{back} m",
        eccentricity_across="0 m", eccentricity_along="0 m", critical_edge="0 m", reduction="0.65",
    )
    assert ours["effective_embedment"] == pytest.approx(depth)
    assert ours["projected_area"] == pytest.approx(counted, rel=6e-3)
    nearest = min(edges)
    basic = 17 * numpy.sqrt(4000) * (depth / 0.0254) ** 1.5 * 4.4482216152605
    edge = min(0.7 + 0.3 * nearest / reach, 1)
    assert ours["nominal"] == pytest.approx(counted / (9 * depth**2) * edge * basic, rel=6e-3)


def test_a_whole_route_by_one_integration(calc):
    """Level run, bend, climb: the calculations chained against one equation along the whole way, integrated piece by piece."""
    mass, friction, wedge = 0.4688, 0.35, 1.4
    pieces = [("straight", 16.5, 0.01), ("bend", numpy.pi / 2, None), ("straight", 8.0, 0.25), ("bend", numpy.pi / 6, None)]
    ours = theirs = 20.0
    for kind, size, rise in pieces:
        if kind == "straight":
            angle = numpy.arcsin(rise)
            slope = mass * G * (wedge * friction * numpy.cos(angle) + numpy.sin(angle))
            way = solve_ivp(lambda s, t: [slope], (0, size), [theirs], rtol=1e-10)
            after = calc("pull-straight", tension=f"{ours} N", length=f"{size} m", mass_per_length=f"{mass} kg/m", friction=friction, weight_correction=wedge, rise=rise)
        else:
            way = solve_ivp(lambda phi, t: wedge * friction * t, (0, size), [theirs], rtol=1e-11, atol=1e-12)
            after = calc("pull-bend", tension=f"{ours} N", angle=f"{numpy.degrees(size)}°", friction=friction, weight_correction=wedge)
        ours, theirs = after["tension_after"], way.y[0, -1]
        assert ours == pytest.approx(theirs, rel=1e-7), kind


def test_how_much_the_weight_in_a_bend_would_add(calc):
    """The bend leaves the cable's own weight out, and says so: with real tension before it that is small, with none it is not."""
    mass, friction, radius = 0.4688, 0.35, 0.254

    def with_weight(before):
        # A level bend: the cable lies on the floor of the conduit and against its inner wall at once.
        way = solve_ivp(lambda phi, t: friction * numpy.hypot(t, mass * G * radius), (0, numpy.pi / 2), [before], rtol=1e-11, atol=1e-12)
        return way.y[0, -1]

    loaded = calc("pull-bend", tension="40 N", angle="90°", friction=friction, weight_correction="1")["tension_after"]
    assert loaded <= with_weight(40.0)
    assert loaded == pytest.approx(with_weight(40.0), rel=2e-3)
    assert calc("pull-bend", tension="0 N", angle="90°", friction=friction, weight_correction="1")["tension_after"] == 0
    assert 0 < with_weight(0.0) < 1.0


@pytest.mark.parametrize("current", ["0.5", "2.75", "10"])
def test_peukert_by_draining_step_by_step(calc, current):
    amperes = float(current)
    # Charge is taken from the plate faster than it is delivered, by the current over the rated current to the exponent less one.
    rated = 55 / 20
    way = solve_ivp(lambda t, q: [-amperes * (amperes / rated) ** 0.15], (0, 200), [55.0], events=_empty(), rtol=1e-11)
    ours = calc("peukert-discharge-time", capacity="55 Ah", rated_time="20 h", exponent="1.15", current=f"{current} A")
    assert ours["time"] / 3600 == pytest.approx(way.t_events[0][0], rel=1e-7)


def _empty():
    def event(_, charge):
        return charge[0]

    event.terminal = True
    return event
