//! Days of the calendar.

use crate::problem::Code;
use crate::reader::{Node, Reader};
use crate::record::Field;
use crate::schema::Definitions;
use crate::stated::Statement;
use quantity::Known;
use toml::de::DeValue;

/// A day of the Gregorian calendar, written `2026-11-25`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Date {
    year: u16,
    month: u8,
    day: u8,
}

impl Date {
    /// The day, if the calendar has it.
    pub fn new(year: u16, month: u8, day: u8) -> Option<Self> {
        if (1..=days_in(year, month)).contains(&day) {
            Some(Self { year, month, day })
        } else {
            None
        }
    }

    /// Reads `2026-11-25`.
    pub fn read(text: &str) -> Option<Self> {
        let digits = |part: &str, count: usize| {
            part.len() == count && part.bytes().all(|b| b.is_ascii_digit())
        };
        let mut parts = text.split('-');
        let (year, month, day) = (parts.next()?, parts.next()?, parts.next()?);
        if parts.next().is_some() || !digits(year, 4) || !digits(month, 2) || !digits(day, 2) {
            return None;
        }
        Self::new(year.parse().ok()?, month.parse().ok()?, day.parse().ok()?)
    }

    /// The year.
    pub fn year(self) -> u16 {
        self.year
    }

    /// The month, January being 1.
    pub fn month(self) -> u8 {
        self.month
    }

    /// The day of the month.
    pub fn day(self) -> u8 {
        self.day
    }
}

impl Date {
    /// Days from an earlier day to this one; below zero where that one is the later.
    pub fn days_after(self, earlier: Self) -> i32 {
        self.number() - earlier.number()
    }

    /// The day after this one; nothing after the last one that can be written.
    pub fn next(self) -> Option<Self> {
        Self::new(self.year, self.month, self.day + 1)
            .or_else(|| Self::new(self.year, self.month + 1, 1))
            .or_else(|| Self::new(self.year.checked_add(1).filter(|year| *year <= 9999)?, 1, 1))
    }

    /// Its place in the week: 0 is Monday, 6 is Sunday.
    pub fn in_week(self) -> usize {
        // 1 March of the year 0 was a Wednesday, and that day's number is 1.
        usize::try_from((self.number() + 1).rem_euclid(7)).unwrap_or_default()
    }

    /// Days since a day long ago: years begin in March, so that a leap day ends one.
    fn number(self) -> i32 {
        let (month, day) = (i32::from(self.month), i32::from(self.day));
        let year = i32::from(self.year) - i32::from(month < 3);
        let since_march = (month + 9) % 12;
        365 * year + year / 4 - year / 100 + year / 400 + (153 * since_march + 2) / 5 + day
    }
}

/// Days of a month; none when there is no such month.
fn days_in(year: u16, month: u8) -> u8 {
    let leap = year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
    match month {
        1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
        4 | 6 | 9 | 11 => 30,
        2 if leap => 29,
        2 => 28,
        _ => 0,
    }
}

impl std::fmt::Display for Date {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{:04}-{:02}-{:02}", self.year, self.month, self.day)
    }
}

impl Field for Date {
    fn read(reader: &mut Reader<'_>, node: &Node<'_>) -> Option<Self> {
        let day = match node.value.get_ref() {
            DeValue::Datetime(toml) if toml.time.is_none() => toml
                .date
                .and_then(|date| Self::new(date.year, date.month, date.day)),
            DeValue::String(text) => Self::read(text),
            _ => None,
        };
        if day.is_none() {
            let problem = reader
                .problem(
                    node,
                    Code::NotADay,
                    format!("{} is not a day of the calendar", node.key_in_words()),
                )
                .expected("year, month and day, such as `2026-11-25`")
                .write(format!("{} = 2026-11-25", node.key));
            reader.report(problem);
        }
        day
    }

    fn state(&self, key: &str, statement: &mut Statement) {
        statement.add(key, self, Known::Stated);
    }

    fn is_same_but_for(&self, later: &Self, _: &mut crate::Changed) -> bool {
        self == later
    }

    fn schema(_: &mut Definitions) -> serde_json::Value {
        serde_json::json!({ "type": "string", "format": "date", "examples": ["2026-11-25"] })
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;

    #[test]
    fn days_are_counted_over_months_and_leap_years() {
        let day = |text| Date::read(text).unwrap();
        for (earlier, later, days) in [
            ("2026-03-02", "2026-04-01", 30),
            ("2024-02-28", "2024-03-01", 2),
            ("2026-02-28", "2026-03-01", 1),
            ("2025-12-31", "2026-01-01", 1),
            ("2000-01-01", "2026-01-01", 9497),
            ("2026-01-02", "2026-01-01", -1),
        ] {
            assert_eq!(
                day(later).days_after(day(earlier)),
                days,
                "{earlier} {later}"
            );
        }
    }

    #[test]
    fn only_days_of_the_calendar_are_read() {
        assert_eq!(
            Date::read("2024-02-29").map(|d| d.to_string()),
            Some("2024-02-29".to_owned())
        );
        for wrong in [
            "2026-02-29",
            "1900-02-29",
            "2026-13-01",
            "2026-00-10",
            "2026-04-31",
            "26-04-01",
            "2026-4-1",
            "",
            "2026-04-01-01",
        ] {
            assert_eq!(Date::read(wrong), None, "{wrong}");
        }
    }

    #[test]
    fn the_days_of_the_week_go_round() {
        let mut day = Date::read("2026-11-26").unwrap();
        assert_eq!(day.in_week(), 3);
        for _ in 0..40 {
            let next = day.next().unwrap();
            assert_eq!(next.days_after(day), 1);
            assert_eq!(next.in_week(), (day.in_week() + 1) % 7);
            day = next;
        }
        assert_eq!(Date::read("9999-12-31").unwrap().next(), None);
    }
}
