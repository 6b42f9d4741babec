//! The smallest pair of panel and battery that is never empty.

use super::{Bank, DayLoad, PanelHours};
use formula::OutOfReach;
use quantity::{Quantity as _, Ratio};

/// A pair of panel and battery, each over the one that was given.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pair {
    /// Panels over the given ones.
    pub panel: Ratio,
    /// Battery over the given one.
    pub battery: Ratio,
}

/// The pairs of a grid that are never empty and than which none is smaller in both: for each battery the smallest panel
/// that will do, the smallest panel first. Larger of either is never worse, so each battery halves its way to its panel.
pub fn least(
    sun: &PanelHours,
    bank: &Bank,
    load: &DayLoad,
    (panels, batteries): (&[Ratio], &[Ratio]),
) -> Result<Vec<Pair>, OutOfReach> {
    let mut found: Vec<Pair> = Vec::new();
    for battery in batteries {
        let sized = Bank {
            usable: bank.usable * battery.base(),
            ..*bank
        };
        let (mut low, mut high) = (0, panels.len());
        while low < high {
            let middle = low.midpoint(high);
            let Some(panel) = panels.get(middle) else {
                break;
            };
            if holds(sun, &sized, load, *panel)? {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        if let Some(panel) = panels.get(low) {
            found.push(Pair {
                panel: *panel,
                battery: *battery,
            });
        }
    }
    found.sort_by(|one, other| {
        let (one, other) = (
            (one.panel.base(), one.battery.base()),
            (other.panel.base(), other.battery.base()),
        );
        one.0.total_cmp(&other.0).then(one.1.total_cmp(&other.1))
    });
    let mut least: Vec<Pair> = Vec::new();
    for pair in found {
        if least.last().is_none_or(|last| pair.battery < last.battery) {
            least.push(pair);
        }
    }
    Ok(least)
}

/// This much of the panels keeps the battery from ever being empty.
fn holds(sun: &PanelHours, bank: &Bank, load: &DayLoad, panel: Ratio) -> Result<bool, OutOfReach> {
    let scaled = PanelHours(sun.0.iter().map(|hour| hour * panel.base()).collect());
    Ok(bank.through(&scaled, load)?.hours_without == 0)
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::sun_year::HOURS;
    use quantity::{Energy, Power};

    #[test]
    fn the_grid_is_searched_as_if_every_pair_were_tried() {
        let sun = PanelHours(
            (0..HOURS)
                .map(|hour| {
                    let day = hour / 24;
                    let bright = if day % 7 < 2 { 5.0 } else { 120.0 };
                    if (7..17).contains(&(hour % 24)) {
                        bright
                    } else {
                        0.0
                    }
                })
                .collect(),
        );
        let bank = Bank {
            usable: Energy::from_base(1200.0 * 3600.0),
            efficiency: Ratio::from_base(0.9),
            greatest_charge: Power::from_base(500.0),
        };
        let load = [Power::from_base(25.0); 24];
        let steps: Vec<Ratio> = (1..=10)
            .map(|step| Ratio::from_base(f64::from(step) * 0.3))
            .collect();
        let found = least(&sun, &bank, &load, (&steps, &steps)).unwrap();
        let mut tried = Vec::new();
        for panel in &steps {
            let first = steps.iter().find(|battery| {
                let sized = Bank {
                    usable: bank.usable * battery.base(),
                    ..bank
                };
                holds(&sun, &sized, &load, *panel).unwrap()
            });
            if let Some(battery) = first
                && tried
                    .last()
                    .is_none_or(|last: &Pair| *battery < last.battery)
            {
                tried.push(Pair {
                    panel: *panel,
                    battery: *battery,
                });
            }
        }
        assert_eq!(found, tried);
        assert!(!found.is_empty());
    }
}
