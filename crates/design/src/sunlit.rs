//! Batteries that live on panels, as they are drawn: what is left on each day of the year.

use crate::asking::{Asking, Lack};
use crate::check::solar::carried::{carried, panels_of};
use quantity::{Power, Ratio, Time};
use site::Site;

/// A battery that panels charge alone.
#[derive(Debug, Clone)]
pub struct SunlitBattery {
    /// Its name.
    pub id: String,
    /// Its year; or the lines that the site file lacks.
    pub year: Result<SunlitYear, Vec<String>>,
}

/// A battery through a year.
#[derive(Debug, Clone)]
pub struct SunlitYear {
    /// The least and the most that is left on each day, over what may be drawn.
    pub days: Vec<(Ratio, Ratio)>,
    /// The least that is left in the year, and when that is.
    pub least: (Time, Ratio),
    /// Days on which it is empty at some hour.
    pub days_without: u32,
    /// How long it lasts, full, without any sun.
    pub autonomy: Time,
    /// The longest run of dark days.
    pub dark_run: Time,
    /// What the panels give in each month, mean power.
    pub monthly: [Power; 12],
}

/// Every battery that panels charge alone, in the order of the site.
pub fn sunlit(site: &Site) -> Vec<SunlitBattery> {
    let batteries = site.battery.iter();
    batteries
        .filter(|battery| panels_of(site, battery).next().is_some())
        .map(|battery| {
            let mut asking = Asking::new(site.site.unit_system());
            let year = carried(&mut asking, site, battery)
                .ok()
                .and_then(|carried| {
                    let days = carried.bank.days(&carried.sun, &carried.load).ok()?;
                    let through = &carried.through;
                    Some(SunlitYear {
                        days,
                        least: (through.least_at, through.least),
                        days_without: through.days_without,
                        autonomy: through.autonomy,
                        dark_run: carried.dark_run,
                        monthly: carried.sun.monthly(),
                    })
                });
            SunlitBattery {
                id: battery.id.to_string(),
                year: year.ok_or_else(|| {
                    let lines = asking.lacks.iter().map(Lack::told);
                    let beyond = asking.beyond.iter().map(|beyond| beyond.reach.why.clone());
                    lines.chain(beyond).collect()
                }),
            }
        })
        .collect()
}
