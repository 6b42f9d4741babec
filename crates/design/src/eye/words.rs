//! Dates and hours of low sun in words.

use quantity::{Quantity as _, Time};
use sim::glare::{GlareYear, Season, month_and_day};

/// Stretches of the year that a sentence names.
const NAMED: usize = 3;

/// The days and hours on which the sun stands there: `November 3 to February 8, 7:10 to 8:05`.
pub fn seasons(year: &GlareYear) -> Vec<String> {
    let of = |season: &Season| {
        let days = if season.first_day == season.last_day {
            date(season.first_day)
        } else {
            format!("{} to {}", date(season.first_day), date(season.last_day))
        };
        format!("{days}, {} to {}", clock(season.from), clock(season.to))
    };
    joined_over_new_year(&year.seasons).iter().map(of).collect()
}

/// Days that end on New Year's Eve and days that begin on New Year's Day are one stretch.
fn joined_over_new_year(seasons: &[Season]) -> Vec<Season> {
    let [first, .., last] = seasons else {
        return seasons.to_vec();
    };
    if first.first_day != 0 || last.last_day != 364 {
        return seasons.to_vec();
    }
    let least = |a: Time, b: Time| if a < b { a } else { b };
    let most = |a: Time, b: Time| if a > b { a } else { b };
    let whole = Season {
        first_day: last.first_day,
        last_day: first.last_day,
        from: least(first.from, last.from),
        to: most(first.to, last.to),
    };
    let between = seasons.get(1..seasons.len() - 1).unwrap_or(&[]);
    std::iter::once(whole)
        .chain(between.iter().copied())
        .collect()
}

/// The whole of it in a sentence: hours in a year, the first stretches, the worst minute, and by which clock.
pub(crate) fn worst(year: &GlareYear, zone: i32) -> String {
    let all = seasons(year);
    let named = all.get(..NAMED).unwrap_or(&all).join("; ");
    let more = if all.len() > NAMED {
        format!("; and {} more stretches", all.len() - NAMED)
    } else {
        String::new()
    };
    let worst = year.worst.map_or_else(String::new, |worst| {
        format!(
            "; nearest to the axis on {} at {}, {:.1}° off it and {:.1}° high",
            date(worst.day),
            clock(worst.time),
            worst.off.base().to_degrees(),
            worst.sun.elevation.base().to_degrees()
        )
    });
    let hours = (year.total.base() / 3600.0).ceil();
    let unit = if hours > 1.5 { "hours" } else { "hour" };
    format!(
        "for {hours:.0} {unit} a year ({named}{more}{worst}; standard time, {zone:+} h from universal time)"
    )
}

fn date(day: u32) -> String {
    const MONTHS: [&str; 12] = [
        "January",
        "February",
        "March",
        "April",
        "May",
        "June",
        "July",
        "August",
        "September",
        "October",
        "November",
        "December",
    ];
    let (month, day) = month_and_day(day);
    let index = usize::try_from(month).unwrap_or(1).saturating_sub(1);
    format!("{} {day}", MONTHS.get(index).unwrap_or(&""))
}

fn clock(time: Time) -> String {
    let minutes = (time.base() / 60.0).round();
    let hours = (minutes / 60.0).floor();
    format!("{hours:.0}:{:02.0}", minutes - 60.0 * hours)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn season(first_day: u32, last_day: u32, from: f64) -> Season {
        Season {
            first_day,
            last_day,
            from: Time::from_base(from * 3600.0),
            to: Time::from_base((from + 0.5) * 3600.0),
        }
    }

    #[test]
    fn a_winter_is_one_stretch() {
        let year = GlareYear {
            total: Time::from_base(3600.0),
            seasons: vec![season(0, 20, 8.0), season(340, 364, 7.75)],
            worst: None,
        };
        assert_eq!(seasons(&year), ["December 7 to January 21, 7:45 to 8:30"]);
        assert!(
            worst(&year, -5).starts_with("for 1 hour a year"),
            "{}",
            worst(&year, -5)
        );
    }
}
