//! Balance of a stiff plate on concrete, held down by rows of anchors.

/// A plate with its forces, in meters and newtons.
pub(super) struct Plate {
    pub(super) length: f64,
    pub(super) width: f64,
    /// Places of the rows from the middle, away from the pressed edge.
    pub(super) rows: Vec<f64>,
    /// Modular ratio times tension area of all anchors in a row.
    pub(super) stiffness: f64,
    /// Force that presses the plate down, below zero where it lifts.
    pub(super) down: f64,
    pub(super) moment: f64,
}

/// How the forces share out.
pub(super) struct Shared {
    /// Place and pull of each row.
    pub(super) tensions: Vec<(f64, f64)>,
    /// Length of contact from the pressed edge.
    pub(super) contact: f64,
    /// Pressure at that edge.
    pub(super) pressure: f64,
}

/// Balance of the plate; none where numbers leave their range.
pub(super) fn shared(plate: &Plate) -> Option<Shared> {
    if plate.down > 0.0 && plate.moment <= plate.down * plate.length / 6.0 {
        return Some(pressed(plate));
    }
    if lifts(plate) {
        return Some(lifted(plate));
    }
    in_contact(plate)
}

/// The whole plate presses on the concrete.
fn pressed(plate: &Plate) -> Shared {
    let mean = plate.down / (plate.length * plate.width);
    let bending = 6.0 * plate.moment / (plate.width * plate.length * plate.length);
    Shared {
        tensions: plate.rows.iter().map(|row| (*row, 0.0)).collect(),
        contact: plate.length,
        pressure: mean + bending,
    }
}

/// Whether even the pressed edge lifts off the concrete.
fn lifts(plate: &Plate) -> bool {
    let squares: f64 = plate.rows.iter().map(|row| row * row).sum();
    plate.down <= 0.0
        && plate.moment * count(&plate.rows) * plate.length / 2.0 <= -plate.down * squares
}

/// The whole plate hangs on its anchors.
fn lifted(plate: &Plate) -> Shared {
    let squares: f64 = plate.rows.iter().map(|row| row * row).sum();
    let mean = -plate.down / count(&plate.rows);
    let turning = if squares > 0.0 {
        plate.moment / squares
    } else {
        0.0
    };
    Shared {
        tensions: plate
            .rows
            .iter()
            .map(|row| (*row, mean + turning * row))
            .collect(),
        contact: 0.0,
        pressure: 0.0,
    }
}

/// A part of the plate presses, the rest lifts: the depth of contact is found by halving.
fn in_contact(plate: &Plate) -> Option<Shared> {
    let half = plate.length / 2.0;
    let pull = |row: f64, contact: f64| plate.stiffness * (half + row - contact).max(0.0) / contact;
    // Force and moment for a pressure of one at the edge.
    let unit = |contact: f64| {
        let pressed = 0.5 * contact * plate.width;
        let tension: f64 = plate.rows.iter().map(|row| pull(*row, contact)).sum();
        let turning: f64 = plate.rows.iter().map(|row| row * pull(*row, contact)).sum();
        (
            pressed - tension,
            pressed * (half - contact / 3.0) + turning,
        )
    };
    let out_of_balance = |contact: f64| {
        let (down, moment) = unit(contact);
        plate.moment * down - plate.down * moment
    };
    let (mut low, mut high) = (1e-9 * plate.length, plate.length);
    for _ in 0..64 {
        let middle = f64::midpoint(low, high);
        if out_of_balance(middle) < 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    let (_, moment) = unit(high);
    let pressure = plate.moment / moment;
    (pressure.is_finite() && pressure >= 0.0).then(|| Shared {
        tensions: plate
            .rows
            .iter()
            .map(|row| (*row, pressure * pull(*row, high)))
            .collect(),
        contact: high,
        pressure,
    })
}

/// Number of rows.
fn count(rows: &[f64]) -> f64 {
    rows.iter().map(|_| 1.0).sum()
}
