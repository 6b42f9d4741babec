//! Standard drawing scales, as they are printed on a scale rule.

use quantity::{Quantity, Ratio, UnitSystem};

/// How the scale of a sheet is chosen.
#[derive(Debug, Clone, PartialEq)]
pub enum ScaleChoice {
    /// The largest standard scale at which the scene fits.
    LargestThatFits,
    /// This one, whatever it takes.
    Fixed(Scale),
    /// A drawing without scale, such as a circuit: one meter of the scene is as long as this share of a meter on
    /// paper; the sheet says `not to scale` and has no scale bar. The share shrinks if the scene doesn't fit.
    NotToScale(Ratio),
}

/// A drawing scale.
#[derive(Debug, Clone, PartialEq)]
pub struct Scale {
    /// How many times larger the site is than the drawing: 48 for 1/4" = 1'-0".
    denominator: f64,
    words: String,
}

/// US scales in inches (and fractions) to the foot, with their denominators.
const ARCHITECT: [(&str, f64); 12] = [
    ("6\" = 1'-0\"", 2.0),
    ("3\" = 1'-0\"", 4.0),
    ("1 1/2\" = 1'-0\"", 8.0),
    ("1\" = 1'-0\"", 12.0),
    ("3/4\" = 1'-0\"", 16.0),
    ("1/2\" = 1'-0\"", 24.0),
    ("3/8\" = 1'-0\"", 32.0),
    ("1/4\" = 1'-0\"", 48.0),
    ("3/16\" = 1'-0\"", 64.0),
    ("1/8\" = 1'-0\"", 96.0),
    ("3/32\" = 1'-0\"", 128.0),
    ("1/16\" = 1'-0\"", 192.0),
];

/// US scales in feet to the inch.
const ENGINEER: [u32; 10] = [20, 30, 40, 50, 60, 100, 200, 300, 400, 500];

/// Metric scales. Source: ISO 5455 (memory), with 1:25 and 1:250 from common practice.
const METRIC: [u32; 13] = [1, 2, 5, 10, 20, 25, 50, 100, 200, 250, 500, 1000, 2000];

impl Scale {
    /// The standard scales of a system of units, the largest drawing first, down to maps.
    pub fn standard(units: UnitSystem) -> Vec<Scale> {
        let mut scales = vec![Scale::one_to(1.0)];
        let far = match units {
            UnitSystem::Si => {
                scales = METRIC
                    .iter()
                    .map(|times| Scale::one_to(f64::from(*times)))
                    .collect();
                METRIC.last().map_or(1.0, |times| f64::from(*times))
            }
            UnitSystem::UsCustomary => {
                scales.extend(
                    ARCHITECT
                        .iter()
                        .map(|(words, times)| Scale::named(words, *times)),
                );
                scales.extend(
                    ENGINEER
                        .iter()
                        .map(|feet| Scale::feet_to_the_inch(f64::from(*feet))),
                );
                ENGINEER.last().map_or(1.0, |feet| f64::from(*feet))
            }
        };
        for power in 0..5 {
            for lead in [2.5, 5.0, 10.0] {
                let times = far * lead * 10_f64.powi(power);
                scales.push(match units {
                    UnitSystem::Si => Scale::one_to(times),
                    UnitSystem::UsCustomary => Scale::feet_to_the_inch(times),
                });
            }
        }
        scales
    }

    /// The scale printed as these words: `1/4" = 1'-0"` or `1:50`; `None` when it isn't a standard scale.
    pub fn read(words: &str) -> Option<Scale> {
        let mut all = Scale::standard(UnitSystem::UsCustomary);
        all.extend(Scale::standard(UnitSystem::Si));
        all.into_iter().find(|scale| scale.words == words)
    }

    /// Length on paper over length on site.
    pub fn ratio(&self) -> Ratio {
        Ratio::from_base(1.0 / self.denominator)
    }

    /// As printed on the sheet.
    pub fn words(&self) -> &str {
        &self.words
    }

    /// As printed with its plain ratio: `1/4" = 1'-0" (1:48)`.
    pub(crate) fn full_words(&self) -> String {
        let ratio = format!("1:{}", self.denominator);
        if self.words == ratio {
            ratio
        } else {
            format!("{} ({ratio})", self.words)
        }
    }

    /// Paper millimeters to a meter of the site.
    pub(crate) fn per_meter(&self) -> f64 {
        1000.0 / self.denominator
    }

    /// A scale that is printed as its ratio.
    pub(crate) fn one_to(denominator: f64) -> Scale {
        Scale {
            denominator,
            words: format!("1:{denominator}"),
        }
    }

    /// A scale with a name of its own.
    fn named(words: &str, denominator: f64) -> Scale {
        Scale {
            denominator,
            words: words.to_owned(),
        }
    }

    /// A scale in feet to an inch of paper.
    fn feet_to_the_inch(feet: f64) -> Scale {
        Scale {
            denominator: feet * 12.0,
            words: format!("1\" = {feet}'"),
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(
        clippy::unwrap_used,
        reason = "a scale that is missing must fail the test"
    )]
    use super::*;

    #[test]
    fn the_words_of_every_us_scale_give_its_ratio() {
        for (words, denominator) in ARCHITECT {
            let inches: f64 = words.split('"').next().unwrap().split(' ').map(part).sum();
            assert!((12.0 / inches - denominator).abs() < 1e-9, "{words}");
        }
    }

    /// A number or a fraction as words.
    fn part(words: &str) -> f64 {
        match words.split_once('/') {
            Some((above, below)) => above.parse::<f64>().unwrap() / below.parse::<f64>().unwrap(),
            None => words.parse().unwrap(),
        }
    }

    #[test]
    fn scales_only_get_smaller() {
        for units in [UnitSystem::UsCustomary, UnitSystem::Si] {
            let all = Scale::standard(units);
            assert!(
                all.windows(2)
                    .all(|two| two[0].denominator < two[1].denominator),
                "{all:?}"
            );
        }
    }

    #[test]
    fn a_scale_is_found_by_its_words() {
        assert!((Scale::read("1/4\" = 1'-0\"").unwrap().ratio().base() * 48.0 - 1.0).abs() < 1e-12);
        assert!(Scale::read("1:33").is_none());
    }
}
