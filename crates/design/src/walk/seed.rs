//! What makes a walk again: its number among those that are sampled, or the walk itself, spelled out.

use quantity::{Length, Quantity as _, Ratio, Time, Velocity};
use serde::{Deserialize, Serialize};
use sim::walk::{Behavior, Scenario, Way};
use std::fmt;
use std::str::FromStr;

/// What makes a walk again, to the last digit.
///
/// A walk that a proof came upon has no number. It is spelled out, in meters and seconds: which way the leaf moves and
/// which body, both by their places from zero; `in` or `out`; `cross`, `stop` or `stand`, and where it stops or stands
/// past the gate line; where its path crosses the gate line; its slant, sideways over forward; its speed; and when it is on
/// the gate line: `1,2,in,stand,0.112,3.239,0,1,0`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(into = "Written", try_from = "Written")]
pub enum Seed {
    /// The number of a walk that is sampled.
    Number(u64),
    /// The walk itself.
    Spelled(Scenario),
}

/// A seed in data: a number or words.
#[derive(Serialize, Deserialize)]
#[serde(untagged)]
enum Written {
    Number(u64),
    Spelled(String),
}

/// What is said of words that are no seed.
const EXPECTED: &str =
    "A walk is a whole number, or nine values with commas between them, as `walk` prints them.";

impl From<u64> for Seed {
    fn from(number: u64) -> Self {
        Self::Number(number)
    }
}

impl From<Seed> for Written {
    fn from(seed: Seed) -> Self {
        match seed {
            Seed::Number(number) => Self::Number(number),
            Seed::Spelled(_) => Self::Spelled(seed.to_string()),
        }
    }
}

impl TryFrom<Written> for Seed {
    type Error = &'static str;

    fn try_from(written: Written) -> Result<Self, Self::Error> {
        match written {
            Written::Number(number) => Ok(Self::Number(number)),
            Written::Spelled(words) => words.parse(),
        }
    }
}

impl fmt::Display for Seed {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let scenario = match self {
            Self::Number(number) => return write!(out, "{number}"),
            Self::Spelled(scenario) => scenario,
        };
        let way = match scenario.way {
            Way::In => "in",
            Way::Out => "out",
        };
        let (does, depth) = match scenario.behavior {
            Behavior::Cross => ("cross", 0.0),
            Behavior::Stop(depth) => ("stop", depth.base()),
            Behavior::Stand(depth) => ("stand", depth.base()),
        };
        write!(
            out,
            "{},{},{way},{does},{depth},{},{},{},{}",
            scenario.pass,
            scenario.body,
            scenario.crosses_at.base(),
            scenario.slant.base(),
            scenario.speed.base(),
            scenario.arrives.base(),
        )
    }
}

impl FromStr for Seed {
    type Err = &'static str;

    fn from_str(words: &str) -> Result<Self, Self::Err> {
        if let Ok(number) = words.parse() {
            return Ok(Self::Number(number));
        }
        let parts: Vec<&str> = words.split(',').map(str::trim).collect();
        let [pass, body, way, does, depth, x, slant, speed, arrives] = parts[..] else {
            return Err(EXPECTED);
        };
        let place = |word: &str| word.parse::<usize>().map_err(|_| EXPECTED);
        let finite = |word: &str| match word.parse::<f64>() {
            Ok(value) if value.is_finite() => Ok(value),
            _ => Err(EXPECTED),
        };
        let depth = Length::from_base(finite(depth)?);
        Ok(Self::Spelled(Scenario {
            pass: place(pass)?,
            body: place(body)?,
            way: match way {
                "in" => Way::In,
                "out" => Way::Out,
                _ => return Err(EXPECTED),
            },
            behavior: match does {
                "cross" => Behavior::Cross,
                "stop" => Behavior::Stop(depth),
                "stand" => Behavior::Stand(depth),
                _ => return Err(EXPECTED),
            },
            crosses_at: Length::from_base(finite(x)?),
            slant: Ratio::from_base(finite(slant)?),
            speed: Velocity::from_base(finite(speed)?),
            arrives: Time::from_base(finite(arrives)?),
        }))
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn reads_what_it_prints_to_the_last_bit(
            (pass, body, out, does) in (0_usize..4, 0_usize..20, any::<bool>(), 0..3),
            numbers in prop::array::uniform5(-1e6..1e6_f64),
        ) {
            let [depth, x, slant, speed, arrives] = numbers;
            let depth = Length::from_base(depth);
            let seed = Seed::Spelled(Scenario {
                pass,
                body,
                way: if out { Way::Out } else { Way::In },
                behavior: match does {
                    0 => Behavior::Cross,
                    1 => Behavior::Stop(depth),
                    _ => Behavior::Stand(depth),
                },
                crosses_at: Length::from_base(x),
                slant: Ratio::from_base(slant),
                speed: Velocity::from_base(speed),
                arrives: Time::from_base(arrives),
            });
            prop_assert_eq!(seed.to_string().parse::<Seed>().unwrap(), seed);
            let data = serde_json::to_string(&seed).unwrap();
            prop_assert_eq!(serde_json::from_str::<Seed>(&data).unwrap(), seed);
        }
    }

    #[test]
    fn refuses_what_is_no_walk() {
        assert_eq!("124851".parse(), Ok(Seed::Number(124_851)));
        for words in [
            "",
            "-1",
            "1,2,in,stand",
            "1,2,up,stand,0,0,0,1,0",
            "1,2,in,fly,0,0,0,1,0",
            "1,2,in,stand,NaN,0,0,1,0",
            "1,2,in,stand,0,inf,0,1,0",
        ] {
            assert_eq!(words.parse::<Seed>(), Err(EXPECTED), "{words}");
        }
    }
}
