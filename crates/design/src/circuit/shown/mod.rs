//! The power of a site for papers: its sources, what hangs on each by which fuse and cable, and the voltage and current of
//! every load in every case.
//!
//! Everything is worked with every value at the bad end of its tolerance. What cannot be worked is unknown, with the facts
//! that are missing.

mod along;
mod fuse;
mod load;
mod loss;
mod part;
mod source;
mod twig;

pub use along::VoltageAlong;
pub use fuse::{ShownFuse, Unfused};
pub use load::{LoadKind, LoadStanding, Moment, ShownLoad};
pub use loss::{Lost, order_of_loss};
pub use source::{Panel, ShownSource, SourceKind, Store};
pub use twig::{ShownCable, Step, Twig};

use super::{CASES, Circuits, PowerCase};
use crate::asking::{Asking, Lack};
use crate::plain::plain;
use quantity::Quantity;
use site::{DeviceKind, Disconnect, Site};

/// The power of a site.
#[derive(Debug, Clone)]
pub struct PowerShown {
    /// Heads of the columns of cases, from the lightest to the hardest.
    pub cases: Vec<&'static str>,
    /// Mains circuits, supplies, charge controllers, and batteries that feed something by themselves.
    pub sources: Vec<ShownSource>,
    /// The sources that no other one feeds, by their place among all.
    pub roots: Vec<usize>,
    /// Everything that takes power, once for each cable that brings it.
    pub loads: Vec<ShownLoad>,
    /// Every fuse, those that are only named too.
    pub fuses: Vec<ShownFuse>,
    /// Every disconnect.
    pub disconnects: Vec<ShownDisconnect>,
    /// Cables that leave a source without a fuse.
    pub unfused: Vec<Unfused>,
    /// What draws a current and names nothing that feeds it.
    pub unfed: Vec<String>,
}

/// A disconnect, and what it cuts off.
#[derive(Debug, Clone)]
pub struct ShownDisconnect {
    /// Its name.
    pub id: String,
    /// The sources that it cuts off.
    pub of: Vec<String>,
    /// A padlock holds it off; nothing where that is not written.
    pub lockable: Option<bool>,
}

impl ShownDisconnect {
    fn of(disconnect: &Disconnect) -> Self {
        Self {
            id: disconnect.id.to_string(),
            of: disconnect.of.iter().map(ToString::to_string).collect(),
            lockable: disconnect.lockable,
        }
    }
}

/// A value of one case.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Worked<Q> {
    /// Worked.
    Known(Q),
    /// Facts are missing.
    Unknown,
    /// The case does not concern this.
    Apart,
}

/// The power of a site, worked.
pub fn shown(site: &Site) -> PowerShown {
    let circuits = Circuits::of(site);
    let loads = load::all(&circuits);
    let mut fuses = fuse::all(&circuits, &loads);
    let trees = twig::trees(&circuits, &loads, &mut fuses);
    PowerShown {
        cases: CASES.iter().map(|case| case.title()).collect(),
        sources: source::all(&circuits, trees.branches),
        roots: trees.roots,
        disconnects: site.disconnect.iter().map(ShownDisconnect::of).collect(),
        unfused: fuse::unfused(&circuits),
        unfed: unfed(site),
        loads,
        fuses,
    }
}

/// For each source, the voltage on the way to the load on it that has the least to spare.
pub fn voltages_along(site: &Site) -> Vec<VoltageAlong> {
    let circuits = Circuits::of(site);
    along::all(&circuits, &load::all(&circuits))
}

/// Operators and devices with a current and without a supply.
fn unfed(site: &Site) -> Vec<String> {
    let operators = site
        .operator
        .iter()
        .filter(|operator| operator.supply.is_none() && operator.running_current.is_some());
    let devices = site.device.iter().filter(|device| {
        device.supply.is_none() && device.current.is_some() && device.kind != DeviceKind::Loop
    });
    let operators = operators.map(|operator| operator.id.to_string());
    operators
        .chain(devices.map(|device| device.id.to_string()))
        .collect()
}

/// A way of asking whose lacks are kept.
fn asking<'s>(circuits: &Circuits<'s>) -> Asking<'s> {
    Asking::new(circuits.site.site.unit_system())
}

/// What kept an answer from being worked, in words: `cable w-03: length`.
fn missing(asking: &Asking<'_>) -> Vec<String> {
    let words = |lack: &Lack<'_>| {
        let whose = plain(&lack.origin.path);
        format!("{whose}: {}", lack.words())
    };
    let mut missing: Vec<String> = asking.lacks.iter().map(words).collect();
    if missing.is_empty() {
        missing.extend(asking.beyond.iter().map(|beyond| beyond.reach.why.clone()));
    }
    missing
}

/// The place of a case among all.
fn place(case: PowerCase) -> usize {
    CASES
        .iter()
        .position(|other| *other == case)
        .unwrap_or_default()
}

/// The nominal of a measured value.
fn nominal<Q: Quantity>(value: Option<&quantity::Measured<Q>>) -> Option<Q> {
    value.map(quantity::Measured::nominal)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::check::testing::site;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[supply]]
        id = "mains"
        kind = "mains circuit"
        voltage = "120 V"
        rated_current = "15 A"
        [[supply]]
        id = "source"
        kind = "power supply"
        fed_by = "mains"
        voltage = "24 V"
        rated_current = "5 A"
        efficiency = "80 %"
        [[device]]
        id = "lock"
        kind = "lock"
        supply = "source"
        current = "500 mA"
        peak_current = "1 A"
        on_power_loss = "fail-safe"
        least_voltage = "20 V"
        [[device]]
        id = "reader"
        kind = "reader"
        supply = "source"
        current = "100 mA"
        draws = "constant current"
        least_voltage = "20 V"
        fuse = "f2"
        [[fuse]]
        id = "f1"
        rated_current = "4 A"
        [[fuse]]
        id = "f2"
        rated_current = "1 A"
        behind = "f1"
        [[cable]]
        id = "w-0"
        from = "mains"
        to = "source"
        size = "12 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "40 °C"
        length = "80 ft"
        [[cable]]
        id = "w-1"
        from = "source"
        to = "lock"
        fuse = "f1"
        size = "18 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "40 °C"
        length = "100 ft"
        [[cable]]
        id = "w-2"
        from = "source"
        to = "reader"
        size = "18 AWG"
        metal = "copper"
        stranding = "stranded"
        hottest = "40 °C"
        length = "100 ft"
    "#;

    fn amperes(worked: Worked<quantity::Current>) -> f64 {
        match worked {
            Worked::Known(current) => current.base(),
            _ => f64::NAN,
        }
    }

    #[test]
    fn sums_of_a_supply_and_of_what_feeds_it_are_those_by_hand() {
        let shown = shown(&site(SITE));
        let of = |name: &str| shown.sources.iter().find(|it| it.id == name).unwrap();
        // Idle: 500 mA and 100 mA; as the lock pulls in: 1 A and 100 mA.
        let given = &of("source").given;
        assert!((amperes(given[0]) - 0.6).abs() < 1e-9, "{given:?}");
        assert!((amperes(given[3]) - 1.1).abs() < 1e-9, "{given:?}");
        assert_eq!(given[5], Worked::Apart);
        // The mains give 24 V · 0.6 A / 0.8 at a little under 120 V.
        let mains = amperes(of("mains").given[0]);
        assert!((mains - 0.15).abs() < 0.001 && mains > 0.15, "{mains}");
    }

    #[test]
    fn a_fuse_behind_a_fuse_hangs_on_it_and_adds_to_what_it_carries() {
        let shown = shown(&site(SITE));
        let source = shown.sources.iter().find(|it| it.id == "source").unwrap();
        assert_eq!(shown.roots, [0]);
        assert_eq!(source.branches, [], "it stands in the tree of the mains");
        let Step::Cable(cable) = &shown.sources[0].branches[0].step else {
            unreachable!("a cable comes first")
        };
        assert_eq!(cable.id, "w-0");
        let supply = &shown.sources[0].branches[0].next[0];
        assert!(matches!(supply.step, Step::Source { source: 1, .. }));
        assert_eq!(supply.next.len(), 1);
        assert_eq!(supply.next[0].step, Step::Fuse(0));
        assert_eq!(supply.next[0].next[1].step, Step::Fuse(1));
        let carries = shown.fuses[0].carries.unwrap().base();
        assert!((carries - 1.1).abs() < 1e-9, "{carries}");
        assert_eq!(shown.fuses[1].feeds, ["reader by w-2"]);
        assert_eq!(shown.unfused.len(), 1, "the mains cable");
    }

    #[test]
    fn the_lowest_voltage_is_that_of_its_own_greatest_current() {
        let shown = shown(&site(SITE));
        let lock = shown.loads.iter().find(|load| load.id == "lock").unwrap();
        // By hand: 7.95 Ω/kft at 75 °C by the table, less 35 · 0.323 %: 200 ft and 1 A.
        let volts = 24.0 - 0.200 * 7.95 * (1.0 - 0.00323 * 35.0);
        let lowest = lock.lowest.unwrap().base();
        assert!((lowest - volts).abs() < 0.005, "{lowest} {volts}");
        assert_eq!(lock.standing, LoadStanding::Holds);
        let higher = SITE.replace("least_voltage = \"20 V\"", "least_voltage = \"23 V\"");
        let shown = super::shown(&site(&higher));
        assert_eq!(
            shown.loads[1].standing,
            LoadStanding::TooLow,
            "{:?}",
            shown.loads
        );
    }

    #[test]
    fn unknown_without_a_current_and_the_sum_too() {
        let shown = shown(&site(&SITE.replace("current = \"100 mA\"", "")));
        let reader = shown.loads.iter().find(|load| load.id == "reader").unwrap();
        assert_eq!(reader.standing, LoadStanding::Unknown);
        assert_eq!(reader.moments[0], Worked::Unknown);
        assert!(
            reader.missing[0].ends_with("reader: current"),
            "{:?}",
            reader.missing
        );
        let source = shown.sources.iter().find(|it| it.id == "source").unwrap();
        assert_eq!(source.greatest(), None);
        assert_eq!(shown.fuses[0].carries, None);
        let lock = shown.loads.iter().find(|load| load.id == "lock").unwrap();
        assert_eq!(lock.standing, LoadStanding::Holds);
    }

    #[test]
    fn what_has_no_cable_or_no_supply_is_there_too() {
        let bare = &SITE[..SITE.find("[[cable]]").unwrap()];
        let shown = shown(&site(&bare.replacen("supply = \"source\"", "", 1)));
        assert_eq!(shown.unfed, ["lock"]);
        assert!(shown.loads.iter().all(|load| load.without_cable));
        assert!(!shown.loads.is_empty());
    }
}
