//! How the loads on a plate share out over its anchors.

use super::layout::{Rectangle, lines, outermost, whole};
use super::set::{AnchorSet, Pattern, Seat};
use super::steel::steel;
use super::works::Works;
use crate::standing::{
    AnchorForces, AnchorSteel, BasePlateAnchors, BoltCircleAnchors, FreePlateAnchors,
};
use quantity::{Area, Force, Length, Quantity as _, Ratio, Torque};

/// Modulus of steel over that of concrete, as is usual.
const MODULAR_RATIO: f64 = 8.0;

/// Forces on the anchors of a set.
#[derive(Debug, Clone)]
pub struct Pulls {
    /// The steel of one anchor.
    pub steel: AnchorSteel,
    /// Greatest pull on one anchor.
    pub greatest: Force,
    /// Greatest press on one anchor, where anchors carry the plate.
    pub press: Force,
    /// Pull of all anchors together.
    pub total: Force,
    /// Shove on each anchor where all share alike.
    pub shove_each: Force,
    /// Shove on all together.
    pub shove: Force,
    /// Rectangles of anchors that may break the concrete together, with their pulls.
    pub pulled: Vec<Rectangle>,
}

/// What does not hang on how the plate is tipped.
#[derive(Clone, Copy)]
struct Start {
    steel: AnchorSteel,
    shove_each: Force,
    shove: Force,
}

impl Start {
    fn with(self, greatest: Force, total: Force, pulled: Vec<Rectangle>) -> Pulls {
        Pulls {
            steel: self.steel,
            greatest,
            press: Force::default(),
            total,
            shove_each: self.shove_each,
            shove: self.shove,
            pulled,
        }
    }
}

/// Shares the loads out.
pub fn pulls<W: Works>(set: &AnchorSet, works: &mut W) -> Result<Pulls, W::Stop> {
    let steel = steel(set, works)?;
    let shove = hypotenuse(set.loads.shear_along.base(), set.loads.shear_across.base());
    let start = Start {
        steel,
        shove_each: Force::from_base(shove) / f64::from(set.pattern.count()),
        shove: Force::from_base(shove),
    };
    match (set.loads.stated_pull, set.pattern, set.seat) {
        (Some(pull), ..) => Ok(stated(set, pull, start)),
        (None, Pattern::Circle { count, diameter }, _) => {
            circle(set, count, diameter, start, works)
        }
        (None, Pattern::Rows { .. }, Seat::Nuts { .. }) => free(set, start, works),
        (None, Pattern::Rows { .. }, _) => on_concrete(set, start, works),
    }
}

fn hypotenuse(a: f64, b: f64) -> f64 {
    a.hypot(b)
}

/// Somebody has worked the pull out; every anchor is pulled as hard.
fn stated(set: &AnchorSet, pull: Force, start: Start) -> Pulls {
    let total = pull * f64::from(set.pattern.count());
    let pulled = vec![whole(set, total, [Length::default(); 2])];
    start.with(pull, total, pulled)
}

fn circle<W: Works>(
    set: &AnchorSet,
    count: u32,
    diameter: Length,
    start: Start,
    works: &mut W,
) -> Result<Pulls, W::Stop> {
    let loads = &set.loads;
    let found = works.work(&BoltCircleAnchors {
        count,
        radius: diameter / 2.0,
        moment: Torque::from_base(hypotenuse(
            loads.moment_along.base(),
            loads.moment_across.base(),
        )),
        weight: loads.weight,
        uplift: loads.uplift,
        shear: start.shove,
        twist: Torque::default(),
    })?;
    let eccentricity = [found.eccentricity, Length::default()];
    let pulled = vec![whole(set, found.total_tension, eccentricity)];
    Ok(Pulls {
        press: found.compression,
        shove_each: found.shear_each,
        ..start.with(found.tension, found.total_tension, pulled)
    })
}

/// The plate stands on leveling nuts: nothing but anchors carries it.
fn free<W: Works>(set: &AnchorSet, start: Start, works: &mut W) -> Result<Pulls, W::Stop> {
    let [along, across] = lines(set);
    let found = works.work(&FreePlateAnchors {
        count_across: along.count,
        spacing_across: along.spacing,
        count_along: across.count,
        spacing_along: across.spacing,
        weight: set.loads.weight,
        uplift: set.loads.uplift,
        moment_across: set.loads.moment_along,
        moment_along: set.loads.moment_across,
    })?;
    let [x, y] = [found.offset_across, found.offset_along];
    let mut pulled = vec![whole(set, found.total_tension, [x, y])];
    if along.count > 1 {
        pulled.push(outermost(
            set,
            0,
            1,
            found.outer_across,
            [Length::default(), y],
        ));
    }
    if across.count > 1 {
        pulled.push(outermost(
            set,
            1,
            1,
            found.outer_along,
            [x, Length::default()],
        ));
    }
    Ok(Pulls {
        press: found.greatest_compression,
        ..start.with(found.greatest_tension, found.total_tension, pulled)
    })
}

/// The plate presses on concrete or grout: each direction for itself, pulls added.
fn on_concrete<W: Works>(set: &AnchorSet, start: Start, works: &mut W) -> Result<Pulls, W::Stop> {
    let moments = [set.loads.moment_along, set.loads.moment_across];
    let tips = |way: usize| moments[way].base() / set.plate[way].base();
    let area = start.steel.area;
    let first = usize::from(tips(1) > tips(0));
    let main = Tipped::find(set, first, moments[first], area, true, works)?;
    if moments[1 - first].base() <= 0.0 {
        let pulled = main.alone(set);
        let forces = &main.forces;
        return Ok(start.with(forces.greatest_tension, forces.total_tension, pulled));
    }
    let other = Tipped::find(set, 1 - first, moments[1 - first], area, false, works)?;
    let total = main.forces.total_tension + other.forces.total_tension;
    let mut pulled = vec![main.with(&other, set, main.lines)];
    for (tipped, beside) in [(&main, &other), (&other, &main)] {
        let nested = (1..=tipped.pulled()).map(|lines| tipped.with(beside, set, lines));
        pulled.extend(nested);
    }
    let greatest = main.forces.greatest_tension + other.forces.greatest_tension;
    Ok(start.with(greatest, total, pulled))
}

/// A plate tipped in one direction.
struct Tipped {
    way: usize,
    /// Lines of anchors in that direction, their spacing, and anchors in a line.
    lines: u32,
    spacing: Length,
    in_line: u32,
    forces: AnchorForces,
}

impl Tipped {
    /// Balance of the plate; weight and uplift count in one direction only.
    fn find<W: Works>(
        set: &AnchorSet,
        way: usize,
        moment: Torque,
        area: Area,
        with_weight: bool,
        works: &mut W,
    ) -> Result<Self, W::Stop> {
        let [line, beside] = {
            let lines = lines(set);
            [lines[way], lines[1 - way]]
        };
        let counted = |force: Force| if with_weight { force } else { Force::default() };
        let shears = [set.loads.shear_along, set.loads.shear_across];
        let forces = works.work(&BasePlateAnchors {
            length: set.plate[way],
            width: set.plate[1 - way],
            rows: line.count,
            row_spacing: line.spacing,
            in_row: beside.count,
            anchor_area: area,
            modular_ratio: Ratio::from_base(MODULAR_RATIO),
            weight: counted(set.loads.weight),
            uplift: counted(set.loads.uplift),
            moment,
            shear: shears[way],
        })?;
        Ok(Self {
            way,
            lines: line.count,
            spacing: line.spacing,
            in_line: beside.count,
            forces,
        })
    }

    /// Lines that are pulled.
    fn pulled(&self) -> u32 {
        self.forces.in_tension / self.in_line.max(1)
    }

    /// The outermost lines, one and more up to all that are pulled, where the plate is tipped in this direction only.
    ///
    /// A line that barely begins to be pulled makes the cone larger than its pull: the lines outside it are looked at for
    /// themselves as well.
    fn alone(&self, set: &AnchorSet) -> Vec<Rectangle> {
        let rectangle = |lines| {
            let mut eccentricity = [Length::default(); 2];
            eccentricity[self.way] = self.offset(lines);
            outermost(set, self.way, lines, self.pull(lines), eccentricity)
        };
        (1..=self.pulled()).map(rectangle).collect()
    }

    /// By how much the pull of a line is less than that of the next one outward: it falls evenly.
    fn fall(&self) -> Force {
        let pulled = f64::from(self.pulled());
        if pulled < 2.0 {
            return Force::default();
        }
        let even = self.outer() * pulled;
        (even - self.forces.total_tension) * (2.0 / (pulled * (pulled - 1.0)))
    }

    /// Pull of the outermost line.
    fn outer(&self) -> Force {
        self.forces.greatest_tension * f64::from(self.in_line)
    }

    /// Pull of so many outermost lines.
    fn pull(&self, lines: u32) -> Force {
        if lines >= self.pulled() {
            return self.forces.total_tension;
        }
        let lines = f64::from(lines);
        self.outer() * lines - self.fall() * (lines * (lines - 1.0) / 2.0)
    }

    /// Distance of the pull from the middle of so many outermost lines.
    fn offset(&self, lines: u32) -> Length {
        if lines >= self.pulled() {
            let beyond = f64::from(lines - self.pulled()) / 2.0;
            return self.spacing * beyond + self.forces.eccentricity;
        }
        // Each pair of lines pulls more on its outer side by as many falls as it is lines apart.
        let count = f64::from(lines);
        let turns = self.fall() * (count * (count * count - 1.0) / 12.0);
        self.spacing * (turns.base() / self.pull(lines).base())
    }

    /// So many outermost lines, with what the other direction adds to them.
    fn with(&self, other: &Self, set: &AnchorSet, lines: u32) -> Rectangle {
        let own = self.pull(lines);
        let added = other.forces.total_tension * (f64::from(lines) / f64::from(self.lines));
        let pull = own + added;
        let share = |part: Force| {
            if pull.base() > 0.0 {
                part.base() / pull.base()
            } else {
                0.0
            }
        };
        let mut eccentricity = [Length::default(); 2];
        eccentricity[self.way] = self.offset(lines) * share(own);
        eccentricity[other.way] = other.offset(other.lines) * share(added);
        outermost(set, self.way, lines, pull, eccentricity)
    }
}
