//! The words of the single-line diagram.

use super::node::Shown;
use design::power::{LoadStanding, ShownCable};
use draw::{TextHeight, text_width};
use quantity::{Current, Length, Quantity as _, UnitSystem, print};

/// Height of a load's name (mm).
pub(crate) const NAME: f64 = 2.0;
/// Height of all other words (mm).
pub(crate) const SMALL: f64 = 1.7;
/// Over a line for which no cable is written.
pub(super) const NO_CABLE: &str = "no cable is written";
/// Letters of a name before it is shortened.
const LONGEST: usize = 22;

/// Width of words (mm).
pub(crate) fn width(words: &str, height: f64) -> f64 {
    text_width(words, Length::from_base(height / 1000.0)).base() * 1000.0
}

pub(crate) fn height(millimeters: f64) -> TextHeight {
    TextHeight::Paper(Length::from_base(millimeters / 1000.0))
}

/// A name, shortened where it is long: the tables have it whole.
pub(crate) fn short(name: &str) -> String {
    if name.chars().count() <= LONGEST {
        return name.to_owned();
    }
    let kept: String = name.chars().take(LONGEST - 1).collect();
    format!("{kept}…")
}

/// Over the line of what goes on here.
pub(super) fn from(name: &str) -> String {
    format!("{name}, from elsewhere")
}

/// A cable: number, size, length.
pub(super) fn cable(cable: &ShownCable, units: UnitSystem) -> String {
    let size = cable.size.as_deref().unwrap_or("size ?");
    let length = cable
        .length
        .map_or_else(|| "length ?".to_owned(), |length| long(length, units));
    format!("{} · {size} · {length}", short(&cable.id))
}

/// A length in whole feet, or in meters.
pub(crate) fn long(length: Length, units: UnitSystem) -> String {
    match units {
        UnitSystem::UsCustomary => {
            format!("{:.0} ft", length.get::<quantity::units::length::foot>())
        }
        UnitSystem::Si => print(length, units),
    }
}

/// A fuse: mark and rating.
pub(super) fn fuse(shown: Shown<'_>, at: usize) -> String {
    let Some(fuse) = shown.power.fuses.get(at) else {
        return String::new();
    };
    format!("{} · {}", short(&fuse.id), amount(fuse.rated, shown.units))
}

fn amount(current: Option<Current>, units: UnitSystem) -> String {
    current.map_or_else(|| "? A".to_owned(), |current| print(current, units))
}

/// A line of words, and whether it says that something fails.
pub(super) struct Line {
    pub(super) words: String,
    pub(super) fails: bool,
}

fn line(words: impl Into<String>) -> Line {
    Line {
        words: words.into(),
        fails: false,
    }
}

/// What stands under a source: name, rating, what it gives, what reaches its input.
pub(super) fn source(shown: Shown<'_>, at: usize, load: Option<usize>) -> Vec<Line> {
    let Some(source) = shown.power.sources.get(at) else {
        return Vec::new();
    };
    let units = shown.units;
    let volts = source
        .voltage
        .map_or_else(|| "? V".to_owned(), |voltage| print(voltage, units));
    let mut lines = vec![
        line(short(&source.id)),
        line(format!("{volts}, rated {}", amount(source.rated, units))),
        line(format!("gives {} lasting", amount(source.lasting(), units))),
    ];
    if source.is_above_rating() {
        lines.push(Line {
            words: "× above its rating".to_owned(),
            fails: true,
        });
    }
    if let Some(load) = load.and_then(|load| shown.power.loads.get(load)) {
        let gets = load
            .lowest
            .map_or_else(|| "? V".to_owned(), |voltage| print(voltage, units));
        let fails = load.standing == LoadStanding::TooLow;
        let word = if fails { "× " } else { "" };
        let needs = load
            .least
            .map_or_else(|| "?".to_owned(), |least| print(least, units));
        lines.push(Line {
            words: format!("{word}gets {gets}, needs {needs}"),
            fails,
        });
    }
    lines.truncate(4);
    lines
}

/// The cables of the panels and batteries of a source, each with its name before it.
pub(super) fn inputs(shown: Shown<'_>, at: usize) -> Vec<String> {
    let Some(source) = shown.power.sources.get(at) else {
        return Vec::new();
    };
    let panels = source.panels.iter().map(|it| (&it.id, &it.cable, &it.fuse));
    let stores = source.stores.iter().map(|it| (&it.id, &it.cable, &it.fuse));
    panels
        .chain(stores)
        .map(|(id, by, fuse)| {
            let by = by
                .as_ref()
                .map_or_else(|| NO_CABLE.to_owned(), |by| cable(by, shown.units));
            let fuse = fuse
                .as_ref()
                .map_or_else(String::new, |fuse| format!(" · fuse {}", short(fuse)));
            format!("{}: {by}{fuse}", short(id))
        })
        .collect()
}
