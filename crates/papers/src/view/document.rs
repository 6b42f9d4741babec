//! What every document says of itself and of its site.

use serde::Serialize;

/// The size of the paper, by the site's code basis.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Paper {
    /// 8 1/2 × 11 in, for a US code basis.
    Letter,
    /// 210 × 297 mm, for an EU code basis.
    A4,
}

/// A day of the calendar, as told by the caller: the papers have no clock.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct Day {
    year: u16,
    month: u8,
    #[serde(rename = "day")]
    of_month: u8,
}

impl Day {
    /// A day of the common calendar from 1900 to 9999; nothing if there is no such day.
    pub fn new(year: u16, month: u8, day: u8) -> Option<Self> {
        let exists = (1900..=9999).contains(&year) && (1..=days_in(year, month)).contains(&day);
        exists.then_some(Self {
            year,
            month,
            of_month: day,
        })
    }

    /// The year, 1900 to 9999.
    pub const fn year(self) -> u16 {
        self.year
    }

    /// The month, 1 to 12.
    pub const fn month(self) -> u8 {
        self.month
    }

    /// The day of the month, from 1.
    pub const fn day(self) -> u8 {
        self.of_month
    }
}

/// Days in a month; none if there is no such month.
fn days_in(year: u16, month: u8) -> u8 {
    let is_leap = year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
    match month {
        1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
        4 | 6 | 9 | 11 => 30,
        2 if is_leap => 29,
        2 => 28,
        _ => 0,
    }
}

/// One labeled fact of the site: `Code basis`, `US`.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Fact {
    /// What it is.
    pub label: String,
    /// Its value, printed with unit and tolerance.
    pub value: String,
}

impl Fact {
    /// A fact of these words.
    pub fn new(label: &str, value: &str) -> Self {
        Self {
            label: label.to_owned(),
            value: value.to_owned(),
        }
    }
}

/// What every document says of itself: it fills the cover, and the head and foot of each sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct DocumentView {
    /// What the document is: `Design pack`.
    pub title: String,
    /// The site's name.
    pub site_name: String,
    /// Where the site is, in one line.
    pub place: String,
    /// What stands there, in one line: `Track slide gate, 20 ft clear opening`.
    pub installation: String,
    /// Who made the design, in one line; empty where the site does not say.
    pub designer: String,
    /// Size of the paper.
    pub paper: Paper,
    /// Day of issue; it is also the date inside the file.
    pub day: Day,
    /// Day of issue as printed: `25 November 2026`.
    pub date: String,
    /// Revision as printed: `B`, or `draft`.
    pub revision: String,
    /// The program that made it, with its version.
    pub maker: String,
    /// What tells this state of the site file from every other, shortened for print; empty where there is none.
    pub fingerprint: String,
    /// The caution at the foot of every sheet.
    pub caution_line: String,
}

#[cfg(test)]
mod tests {
    use super::Day;

    #[test]
    fn only_days_that_exist_are_days() {
        assert!(Day::new(2028, 2, 29).is_some());
        assert!(Day::new(2100, 2, 29).is_none());
        assert!(Day::new(2026, 4, 31).is_none());
        assert!(Day::new(2026, 13, 1).is_none());
        assert!(Day::new(2026, 1, 0).is_none());
    }
}
