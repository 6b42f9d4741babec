"""A rectangular group of anchors by the text of ACI 318-19 chapter 17, its areas cut out as polygons; inches, pounds, psi."""

import math

import numpy
from shapely.geometry import box
from shapely.ops import unary_union


def influence(anchors, reach, outline):
    """Area that squares around the anchors cover together, as far as there is concrete."""
    squares = [box(x - reach, y - reach, x + reach, y + reach) for x, y in anchors]
    return unary_union(squares).intersection(box(*outline)).area


def grid(count_across, spacing_across, count_along, spacing_along):
    return [(i * spacing_across, j * spacing_along) for i in range(count_across) for j in range(count_along)]


def outline(anchors, edges):
    """The concrete around the anchors: left, front, right, back."""
    left, right, front, back = edges
    xs, ys = zip(*anchors)
    return min(xs) - left, min(ys) - front, max(xs) + right, max(ys) + back


def eccentric(eccentricities, reach):
    return math.prod(1 / (1 + e / reach) for e in eccentricities)


def breakout(cast, hef, strength, kc, cracking, light, anchors, spacings, edges, eccentricities, critical):
    """17.6.2: the cone of the group."""
    near = [edge for edge in edges if edge < 1.5 * hef]
    counted = max(max(near) / 1.5, max(spacings) / 3) if len(near) >= 3 else hef
    reach = 1.5 * counted
    area = influence(anchors, reach, outline(anchors, edges))
    nearest = min(edges)
    edge = min(0.7 + 0.3 * nearest / reach, 1)
    # The limit of 17.6.2.1.2 is taken here as well; by its words it stops short of the splitting factor.
    splitting = min(max(nearest, reach) / critical, 1) if critical > nearest else 1
    basic = kc * light * math.sqrt(strength) * counted**1.5
    if cast and 11 <= counted <= 25:
        basic = max(basic, 16 * light * math.sqrt(strength) * counted ** (5 / 3))
    off = eccentric(eccentricities, reach)
    return {
        "effective_embedment": counted, "reference_area": (2 * reach) ** 2, "projected_area": area, "eccentricity_factor": off,
        "edge_factor": edge, "splitting_factor": splitting, "basic": basic,
        "nominal": area / (2 * reach) ** 2 * off * edge * cracking * splitting * basic,
    }


def shear(toward, diameter, bearing, ca1, corners, thickness, count, spacing, eccentricity, strength, cracking, light):
    """17.7.2: what a row of anchors breaks out of the face before it; its half pyramids seen from that face."""
    counted = ca1
    if max(corners) < 1.5 * ca1 and thickness < 1.5 * ca1:
        counted = max(max(corners) / 1.5, thickness / 1.5, spacing / 3)
    reach = 1.5 * counted
    places = [i * spacing for i in range(count)]
    face = box(-corners[0], -thickness, places[-1] + corners[1], 0)
    area = unary_union([box(x - reach, -reach, x + reach, 0) for x in places]).intersection(face).area
    edge = min(0.7 + 0.3 * min(corners) / reach, 1) if toward else 1
    thin = max(math.sqrt(reach / thickness), 1)
    stiff = 7 * (min(bearing, 8 * diameter) / diameter) ** 0.2 * math.sqrt(diameter)
    basic = min(stiff, 9) * light * math.sqrt(strength) * counted**1.5
    off = eccentric([eccentricity], reach)
    reference = 4.5 * counted**2
    return {
        "counted_edge": counted, "reference_area": reference, "projected_area": area, "eccentricity_factor": off, "edge_factor": edge,
        "thickness_factor": thin, "basic": basic,
        "nominal": (1 if toward else 2) * area / reference * off * edge * cracking * thin * basic,
    }


def bond(diameter, hef, stress, uncracked, light, anchors, edges, eccentricities, critical):
    """17.6.5: the bond of the group."""
    reach = 10 * diameter * math.sqrt(uncracked / 1100)
    area = influence(anchors, reach, outline(anchors, edges))
    nearest = min(edges)
    edge = min(0.7 + 0.3 * nearest / reach, 1)
    splitting = min(max(nearest, reach) / critical, 1) if critical > nearest else 1
    off = eccentric(eccentricities, reach)
    basic = light * stress * math.pi * diameter * hef
    return {
        "reach": reach, "reference_area": 4 * reach**2, "projected_area": area, "eccentricity_factor": off, "edge_factor": edge,
        "splitting_factor": splitting, "basic": basic, "nominal": area / (4 * reach**2) * off * edge * splitting * basic,
    }


def blowout(ca1, corner, area, strength, light, count, spacing):
    """17.6.4: the side of the concrete beside deep heads."""
    basic = 160 * ca1 * math.sqrt(area) * light * math.sqrt(strength)
    if count > 1:
        factor = 1 + (count - 1) * spacing / (6 * ca1)
    elif corner < 3 * ca1:
        factor = (1 + max(corner / ca1, 1)) / 4
    else:
        factor = 1.0
    return {"basic": basic, "factor": factor, "nominal": factor * basic}


def interaction(pull, tension, shove, strength):
    """17.8 and the power of its commentary."""
    n, v = pull / tension, shove / strength
    # A small share leaves the other strength whole; where both are small, each is held against its own.
    straight = (n + v) / 1.2 if min(n, v) > 0.2 else max(n, v)
    return {"tension_share": n, "shear_share": v, "sum": n + v, "straight": straight, "power": n ** (5 / 3) + v ** (5 / 3)}


def plate(length, width, rows, row_spacing, in_row, anchor_area, modular_ratio, weight, uplift, moment, shear):
    """A stiff plate on springs that only press and bolts that only pull, settled by Newton's method from several starts.

    The plate lies at the depth a + b·y under the level of the unloaded concrete, y from its middle toward the pressed edge.
    """
    ys = (numpy.arange(rows) - (rows - 1) / 2) * row_spacing
    stiff = modular_ratio * anchor_area * in_row
    wanted = numpy.array([weight - uplift, moment])

    def state(a, b):
        low, high = -length / 2, length / 2
        zero = -a / b if b else math.inf
        if b > 0:
            low = min(max(zero, low), high)
        elif b < 0:
            high = max(min(zero, high), low)
        elif a <= 0:
            high = low

        def power(k):
            return (high**k - low**k) / k

        press = width * numpy.array([[power(1), power(2)], [power(2), power(3)]])
        depth = a + b * ys
        pulled = depth < 0
        bolts = stiff * numpy.array([[(pulled * ys**k).sum() for k in (i, i + 1)] for i in (0, 1)])
        return press, bolts, depth, pulled, high - low

    scale = (abs(wanted[0]) + moment / length) / (width * length)
    best = None
    for a, b in [(scale, 0), (scale, 4 * scale / length), (0, 2 * scale / length), (-scale, 4 * scale / length), (-scale, 0)]:
        place = numpy.array([a, b], dtype=float)
        for _ in range(200):
            press, bolts, *_ = state(*place)
            tangent = press + bolts
            off = tangent @ place - wanted
            if abs(off[0]) + abs(off[1]) / length < 1e-13 * scale * width * length:
                best = place
                break
            step = numpy.linalg.lstsq(tangent, off, rcond=None)[0]
            place = place - step
        if best is not None:
            break
    press, bolts, depth, pulled, contact = state(*best)
    pulls = numpy.where(pulled, -depth * stiff, 0.0)
    total = pulls.sum()
    middle = ys[pulled].mean() if pulled.any() else 0.0
    return {
        "greatest_tension": pulls.max() / in_row, "total_tension": total, "in_tension": in_row * int(pulled.sum()),
        "eccentricity": abs((pulls * ys).sum() / total - middle) if total else 0.0, "contact": contact,
        "bearing": max(best[0] + best[1] * length / 2, 0.0), "shear_each": shear / (rows * in_row),
    }
