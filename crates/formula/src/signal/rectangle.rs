//! Inductances of thin rectangular turns that lie level, in henries and meters: Neumann's integral in closed form.

/// Permeability of free space over four pi (H/m).
const NEUMANN: f64 = 1e-7;

/// A thin level rectangle: where its sides are.
#[derive(Debug, Clone, Copy)]
pub(super) struct Rectangle {
    /// Lesser and greater place along the first axis.
    along: (f64, f64),
    /// Lesser and greater place along the second axis.
    across: (f64, f64),
}

impl Rectangle {
    /// A rectangle around the origin.
    pub(super) fn centered(length: f64, width: f64) -> Self {
        Self {
            along: (-length / 2.0, length / 2.0),
            across: (-width / 2.0, width / 2.0),
        }
    }

    /// Mutual inductance of two level turns, one so high above the other and both wound the same way.
    pub(super) fn mutual(&self, other: &Self, above: f64) -> f64 {
        sides(self.along, self.across, other.along, other.across, above)
            + sides(self.across, self.along, other.across, other.along, above)
    }

    /// Inductance of one turn whose conductor has that geometric mean distance from itself.
    pub(super) fn own(&self, mean_distance: f64) -> f64 {
        self.mutual(self, mean_distance)
    }
}

/// What the sides that run one way give together: the near sides add, the far ones take away.
fn sides(
    run: (f64, f64),
    place: (f64, f64),
    other_run: (f64, f64),
    other_place: (f64, f64),
    above: f64,
) -> f64 {
    let pair = |a: f64, b: f64| parallel(run, other_run, (a - b).hypot(above));
    pair(place.0, other_place.0) + pair(place.1, other_place.1)
        - pair(place.0, other_place.1)
        - pair(place.1, other_place.0)
}

/// Two thin parallel pieces of wire, so far apart.
fn parallel(one: (f64, f64), other: (f64, f64), apart: f64) -> f64 {
    let reach = |along: f64| along * (along / apart).asinh() - along.hypot(apart);
    NEUMANN
        * (reach(one.1 - other.0) + reach(one.0 - other.1)
            - reach(one.1 - other.1)
            - reach(one.0 - other.0))
}

/// Mean distance from itself of a round wire that carries its current all over: its radius over the fourth root of e.
pub(super) fn of_round_wire(diameter: f64) -> f64 {
    diameter / 2.0 * (-0.25_f64).exp()
}

/// Mean distance from itself of a flat strip.
pub(super) fn of_strip(width: f64) -> f64 {
    width * (-1.5_f64).exp()
}
