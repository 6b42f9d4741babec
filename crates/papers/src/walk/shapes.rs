//! What of a world is drawn: its leaves before they start and at their end, what stands around, beams and fields.

use draw::Point;
use quantity::{Length, Quantity as _};
use sim::walk::{AnyWorld, Direction, Opens, RisingLeaf, Spot, SwingLeaf, Toward, World};

/// Corners of an outline.
pub(super) type Outline = Vec<Point>;
/// Both ends of a line.
pub(super) type Line = (Point, Point);

/// Half the length of the line that stands for a face across the gate line (m).
const FACE: f64 = 0.15;

/// The leaves seen from above before they start in a direction, and at the end of their way.
pub(super) fn leaves(whole: &AnyWorld, direction: Direction) -> Option<[Vec<Outline>; 2]> {
    let mut ends = match whole {
        AnyWorld::Sliding(world) => return sliding(world, direction),
        AnyWorld::Swinging(world) => {
            let pass = world
                .passes
                .iter()
                .find(|pass| pass.direction == direction)?;
            let at = |share: f64| {
                let turns = world.leaves.iter().zip(&pass.turns);
                turns
                    .map(|(leaf, turn)| {
                        turned(leaf, share * (turn.plan.travel / leaf.length).base())
                    })
                    .collect()
            };
            [at(0.0), at(1.0)]
        }
        AnyWorld::Rising(world) => {
            let pass = world
                .passes
                .iter()
                .find(|pass| pass.direction == direction)?;
            let half = half_thickness(whole)?;
            let at = |share: f64| {
                let corners = raised(&world.leaf, pass.plan.travel * share);
                vec![laid_flat(&corners, half)]
            };
            [at(0.0), at(1.0)]
        }
    };
    if direction == Direction::Closing {
        ends.reverse();
    }
    Some(ends)
}

/// The part of a sliding leaf behind its edge, as much as tells it from its other place.
fn sliding(world: &World, direction: Direction) -> Option<[Vec<Outline>; 2]> {
    let pass = world
        .passes
        .iter()
        .find(|pass| pass.direction == direction)?;
    let half = world.leaf.thickness / 2.0;
    let sign = if direction == Direction::Closing {
        1.0
    } else {
        -1.0
    };
    let shown = pass.plan.travel * (0.25 * sign);
    let at = |edge: Length| vec![box_of((edge, edge + shown), half)];
    Some([at(pass.edge), at(pass.edge - pass.plan.travel * sign)])
}

/// A leaf that swings, opened by an angle.
fn turned(leaf: &SwingLeaf, angle: f64) -> Outline {
    let along = sign(leaf.toward);
    let across = match leaf.opens {
        Opens::Inward => 1.0,
        Opens::Outward => -1.0,
    };
    let (sin, cos) = angle.sin_cos();
    let half = leaf.thickness / 2.0;
    let (low, high) = (leaf.offset - half, leaf.offset + half);
    [
        (leaf.heel, low),
        (leaf.length, low),
        (leaf.length, high),
        (leaf.heel, high),
    ]
    .map(|(u, v)| {
        Point::new(
            leaf.pivot.x + (u * cos - v * sin) * along,
            leaf.pivot.y + (u * sin + v * cos) * across,
        )
    })
    .to_vec()
}

/// A leaf that rises, after so much of its way up, seen from the road.
pub(super) fn raised(leaf: &RisingLeaf, way: Length) -> [Spot; 4] {
    let spot = |x: Length, y: Length| Spot { x, y };
    match leaf {
        RisingLeaf::Lifting(leaf) => {
            let low = leaf.closed + way;
            let high = low + leaf.tall;
            [
                spot(leaf.from, low),
                spot(leaf.to, low),
                spot(leaf.to, high),
                spot(leaf.from, high),
            ]
        }
        RisingLeaf::Turning(leaf) => {
            let (sin, cos) = (way / leaf.length).base().sin_cos();
            [
                (leaf.heel, -leaf.below),
                (leaf.length, -leaf.below),
                (leaf.length, leaf.above),
                (leaf.heel, leaf.above),
            ]
            .map(|(u, v)| {
                let x = (u * cos - v * sin) * sign(leaf.toward);
                spot(leaf.pivot + x, leaf.height + u * sin + v * cos)
            })
        }
    }
}

/// An outline that is seen from the road, of a leaf of half such a thickness, seen from above.
pub(super) fn laid_flat(corners: &[Spot; 4], half: Length) -> Outline {
    let x = |corner: &Spot| corner.x.base();
    let (low, high) = corners
        .iter()
        .map(x)
        .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), at| {
            (low.min(at), high.max(at))
        });
    box_of((Length::from_base(low), Length::from_base(high)), half)
}

/// Half the thickness of a leaf that rises.
pub(super) fn half_thickness(world: &AnyWorld) -> Option<Length> {
    let AnyWorld::Rising(world) = world else {
        return None;
    };
    Some(match world.leaf {
        RisingLeaf::Turning(leaf) => leaf.thickness / 2.0,
        RisingLeaf::Lifting(leaf) => leaf.thickness / 2.0,
    })
}

/// Opposite corners of the housing of an arm's drive: seen from the road, seen from above.
pub(super) fn housing(world: &AnyWorld) -> Option<[(Point, Point); 2]> {
    let AnyWorld::Rising(world) = world else {
        return None;
    };
    let ((from, to), RisingLeaf::Turning(leaf)) = (world.housing?, world.leaf) else {
        return None;
    };
    let (zero, half) = (Length::from_base(0.0), (to - from) / 2.0);
    let top = leaf.height + leaf.above;
    Some([
        (Point::new(from, zero), Point::new(to, top)),
        (Point::new(from, -half), Point::new(to, half)),
    ])
}

fn sign(toward: Toward) -> f64 {
    match toward {
        Toward::Greater => 1.0,
        Toward::Smaller => -1.0,
    }
}

/// An outline about the gate line.
fn box_of((from, to): (Length, Length), half: Length) -> Outline {
    vec![
        Point::new(from, -half),
        Point::new(to, -half),
        Point::new(to, half),
        Point::new(from, half),
    ]
}

/// What stands around, seen from above.
pub(super) fn faces(world: &AnyWorld, direction: Direction) -> Vec<Line> {
    let half = Length::from_base(FACE);
    match world {
        AnyWorld::Sliding(world) => {
            let passes = world
                .passes
                .iter()
                .filter(|pass| pass.direction == direction);
            passes
                .filter_map(|pass| pass.opposing)
                .map(|face| (Point::new(face, -half), Point::new(face, half)))
                .collect()
        }
        AnyWorld::Swinging(world) => world
            .faces
            .iter()
            .map(|face| {
                (
                    Point::new(face.from.x, face.from.y),
                    Point::new(face.to.x, face.to.y),
                )
            })
            .collect(),
        AnyWorld::Rising(_) => Vec::new(),
    }
}

/// Beams that act in a direction, seen from above.
pub(super) fn beams(world: &AnyWorld, direction: Direction) -> Vec<Line> {
    let beams = world.seeing().0.iter();
    beams
        .filter(|beam| beam.guards.contains(&direction))
        .map(|beam| {
            (
                Point::new(beam.from.x, beam.from.y),
                Point::new(beam.to.x, beam.to.y),
            )
        })
        .collect()
}

/// Fields that act in a direction, seen from above.
pub(super) fn fields(world: &AnyWorld, direction: Direction) -> Vec<Outline> {
    let fields = world.seeing().1.iter();
    fields
        .filter(|field| field.guards.contains(&direction))
        .map(|field| {
            let corners = field.corners.iter();
            corners
                .map(|corner| Point::new(corner.x, corner.y))
                .collect()
        })
        .collect()
}

/// Beams and fields that act in a direction, seen from the road.
pub(super) fn seen_from_the_road(world: &AnyWorld, direction: Direction) -> Vec<Line> {
    let (beams, fields) = world.seeing();
    let acting = beams
        .iter()
        .filter(|beam| beam.guards.contains(&direction))
        .map(|beam| {
            (
                Point::new(beam.from.x, beam.height),
                Point::new(beam.to.x, beam.height),
            )
        });
    let fields = fields
        .iter()
        .filter(|field| field.guards.contains(&direction))
        .filter_map(|field| {
            let order = |one: &&sim::walk::Spot, other: &&sim::walk::Spot| {
                one.x.base().total_cmp(&other.x.base())
            };
            let (least, most) = (
                field.corners.iter().min_by(order)?,
                field.corners.iter().max_by(order)?,
            );
            Some((
                Point::new(least.x, field.bottom),
                Point::new(most.x, field.bottom),
            ))
        });
    acting.chain(fields).collect()
}
