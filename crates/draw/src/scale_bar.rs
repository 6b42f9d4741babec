//! The scale bar: a round length of the site, drawn as long as the scale makes it.

use crate::Scale;
use quantity::{Length, Quantity, UnitSystem};

/// The longest bar (mm).
const LONGEST: f64 = 62.0;

/// A scale bar as it is drawn.
#[derive(Debug, Clone, PartialEq)]
pub struct ScaleBar {
    /// The length on the site that the bar stands for.
    pub stated: Length,
    /// The bar's length on paper.
    pub on_paper: Length,
    /// How the stated length is printed at the bar's end: `10 ft`.
    pub words: String,
    /// How many equal parts it is divided into.
    pub(crate) parts: u32,
}

impl ScaleBar {
    /// The longest round bar with room on the sheet.
    pub(crate) fn new(scale: &Scale, units: UnitSystem) -> Self {
        let lengths = match units {
            UnitSystem::UsCustomary => feet(),
            UnitSystem::Si => meters(),
        };
        let fits = |bar: &&(f64, String, u32)| bar.0 * scale.per_meter() <= LONGEST;
        let bar = lengths.iter().rev().find(fits).or(lengths.first()).cloned();
        let (stated, words, parts) = bar.unwrap_or((1.0, "1 m".to_owned(), 4));
        Self {
            stated: Length::from_base(stated),
            on_paper: Length::from_base(stated * scale.per_meter() / 1000.0),
            words,
            parts,
        }
    }
}

/// Round lengths of the US system, shortest first: meters, words, parts.
fn feet() -> Vec<(f64, String, u32)> {
    let inch = 0.0254;
    let mut lengths: Vec<_> = [(1.0, 4), (3.0, 3), (6.0, 6)]
        .iter()
        .map(|(inches, parts)| (inches * inch, format!("{inches} in"), *parts))
        .collect();
    for (feet, parts) in [(1_u32, 4), (2, 4), (4, 4)] {
        lengths.push((f64::from(feet) * 12.0 * inch, format!("{feet} ft"), parts));
    }
    for power in 0..8 {
        for (lead, parts) in [(5_u32, 5), (10, 5), (20, 4)] {
            let feet = lead * 10_u32.pow(power);
            lengths.push((f64::from(feet) * 12.0 * inch, format!("{feet} ft"), parts));
        }
    }
    lengths
}

/// Round metric lengths, shortest first: meters, words, parts.
fn meters() -> Vec<(f64, String, u32)> {
    let mut lengths = vec![
        (0.05, "50 mm".to_owned(), 5),
        (0.1, "100 mm".to_owned(), 5),
        (0.2, "200 mm".to_owned(), 4),
        (0.5, "500 mm".to_owned(), 5),
    ];
    for power in 0..8 {
        for (lead, parts) in [(1_u32, 5), (2, 4), (5, 5)] {
            let meters = lead * 10_u32.pow(power);
            lengths.push((f64::from(meters), format!("{meters} m"), parts));
        }
    }
    lengths
}
