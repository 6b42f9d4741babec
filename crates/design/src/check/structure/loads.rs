//! Factors on wind, weight and live loads, by the code basis.
//!
//! Service level is held against soil, pads and allowable stresses; strength level against anchors, concrete and the
//! design strengths of Europe.

use crate::asking::Asking;
use formula::{Evidence, Source};
use site::CodeBasis;

static ASCE_SERVICE: Source = Source {
    work: "ASCE 7, allowable-stress combinations: D + L; D + 0.6 W; D + 0.75 L + 0.75 (0.6 W); 0.6 D + 0.6 W",
    clause: "2.4.1",
    evidence: Evidence::Seen,
    seen: "a summary of ASCE 7-22 2.4.1 (https://www.callout.app/codes/asce-7-22-2-4-1); the same in a city's building code, 1605.3.1 (https://nacmiaslaw.com/resources/legal-codes/21365)",
};

static ASCE_STRENGTH: Source = Source {
    work: "ASCE 7, strength combinations: 1.2 D + 1.6 L; 1.2 D + 1.0 W + L; 0.9 D + 1.0 W",
    clause: "2.3.1",
    evidence: Evidence::Seen,
    seen: "a program's manual that lists ASCE 7-16 2.3.1 (https://idecad.atlassian.net/wiki/pages/diffpages.action?originalId=2339569668&pageId=2342846559); the same in a city's building code, 1605.2 (https://nacmiaslaw.com/resources/legal-codes/21362)",
};

static EN_SERVICE: Source = Source {
    work: "EN 1990, characteristic combination, two variable loads added in full: G + Q",
    clause: "6.5.3; the reduced value of the second load is not used, which is the safe side",
    evidence: Evidence::Seen,
    seen: "Steel Buildings in Europe, part 3, combinations of actions (https://infosteel.eu/images/Steel-Buildings-in-Europe/MSB03/14)",
};

static EN_STRENGTH: Source = Source {
    work: "EN 1990, 1.35 G + 1.5 Q; 0.9 G where weight helps",
    clause: "tables A1.2(A) and A1.2(B)",
    evidence: Evidence::Seen,
    seen: "Steel Buildings in Europe, part 3, table 3.1 of recommended values (https://infosteel.eu/images/Steel-Buildings-in-Europe/MSB03/14); a national annex may give others",
};

static AISC: Source = Source {
    work: "AISC 360, allowable strength: yield over 1.67",
    clause: "chapters D and F",
    evidence: Evidence::Seen,
    seen: "Structural Steel Designer's Handbook, p. 5.29 (Ω = 1.67)",
};

static EUROCODE_STEEL: Source = Source {
    work: "EN 1993-1-1, γM0 = 1.0",
    clause: "6.1(1)",
    evidence: Evidence::Seen,
    seen: "Steel Buildings in Europe, part 10, tables of recommended values; a national annex may give another",
};

/// What the loads are to be held against.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Level {
    /// Soil, pads, allowable stresses, movements.
    Service,
    /// Anchors, concrete, design strengths.
    Strength,
}

/// Factors on the loads of one level.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Factors {
    /// On weight that does harm.
    pub(crate) dead: f64,
    /// On weight that helps.
    pub(crate) dead_that_helps: f64,
    /// On the design wind of the code.
    pub(crate) wind: f64,
    /// On drive forces, stop impact, bumps and people.
    pub(crate) live: f64,
    /// On the design wind together with a live load.
    pub(crate) wind_beside_live: f64,
    /// On a live load together with the design wind.
    pub(crate) live_beside_wind: f64,
}

impl Factors {
    /// Those of the code basis; the answer rests on their source.
    pub(crate) fn of(asking: &mut Asking<'_>, basis: CodeBasis, level: Level) -> Self {
        let (source, factors): (&'static Source, [f64; 6]) = match (basis, level) {
            (CodeBasis::Us, Level::Service) => (&ASCE_SERVICE, [1.0, 0.6, 0.6, 1.0, 0.45, 0.75]),
            (CodeBasis::Us, Level::Strength) => (&ASCE_STRENGTH, [1.2, 0.9, 1.0, 1.6, 1.0, 1.0]),
            (CodeBasis::Eu, Level::Service) => (&EN_SERVICE, [1.0, 1.0, 1.0, 1.0, 1.0, 1.0]),
            (CodeBasis::Eu, Level::Strength) => (&EN_STRENGTH, [1.35, 0.9, 1.5, 1.5, 1.5, 1.5]),
        };
        asking.rest_on(source);
        let [
            dead,
            dead_that_helps,
            wind,
            live,
            wind_beside_live,
            live_beside_wind,
        ] = factors;
        Self {
            dead,
            dead_that_helps,
            wind,
            live,
            wind_beside_live,
            live_beside_wind,
        }
    }
}

/// How steel is held against its yield strength.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Steel {
    /// Level of the loads.
    pub(crate) level: Level,
    /// Under the yield strength.
    pub(crate) yield_over: f64,
}

impl Steel {
    /// As the code basis has it; the answer rests on its source.
    pub(crate) fn of(asking: &mut Asking<'_>, basis: CodeBasis) -> Self {
        match basis {
            CodeBasis::Us => {
                asking.rest_on(&AISC);
                Self {
                    level: Level::Service,
                    yield_over: 1.67,
                }
            }
            CodeBasis::Eu => {
                asking.rest_on(&EUROCODE_STEEL);
                Self {
                    level: Level::Strength,
                    yield_over: 1.0,
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Factors, Level};
    use crate::asking::Asking;
    use quantity::UnitSystem;
    use site::CodeBasis;

    #[test]
    fn strength_never_asks_less_of_the_wind_than_service() {
        for basis in [CodeBasis::Us, CodeBasis::Eu] {
            let mut asking = Asking::new(UnitSystem::Si);
            let service = Factors::of(&mut asking, basis, Level::Service);
            let strength = Factors::of(&mut asking, basis, Level::Strength);
            assert!(strength.wind > service.wind && strength.live > service.live);
            assert!(strength.dead > service.dead && strength.dead_that_helps < 1.0);
            assert!(service.wind_beside_live <= service.wind);
            assert!(service.live_beside_wind <= service.live);
        }
    }
}
