//! Whether the residual-current device of a circuit is the right one and keeps quiet.

use super::load::fed_by;
use crate::asking::{Asking, Wants, pick, read};
use crate::outcome::{Comparison, Halt, Labeled};
use formula::{Evidence, Source};
use quantity::Current;
use site::{Circuit, CodeBasis, ResidualKind, Site, Supply};

/// How a residual-current device is written.
const RESIDUAL: &str = "[supply.circuit.residual]\nkind = \"A\"\nrating = \"30 mA\"\ntrip_time = \"25 ms\"\nleakage = \"3 mA\"";

static LEAKAGE: Source = Source {
    work: "BS 7671:2018+A2, 531.3.2 (iii)",
    clause: "standing leakage no more than 30 % of the rating",
    evidence: Evidence::Seen,
    seen: "a retelling of the amendment on a breaker maker's page (address withheld: a maker's name is in it)",
};

/// Share of its rating that may leak all the time.
const SHARE: f64 = 0.3;

/// What was found of a residual-current device.
pub(super) struct Found {
    pub(super) rating: Current,
    pub(super) leaks: Comparison,
    /// Its kind does not see what the drive leaks.
    pub(super) blind: bool,
}

/// The device, its kind against what the drives' papers ask for, and its leakage.
pub(super) fn residual<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    supply: &'s Supply,
    circuit: &'s Circuit,
) -> Result<Found, Halt> {
    let Some(device) = &circuit.residual else {
        return asking.lack(&circuit.origin, "residual", Wants::Table(RESIDUAL));
    };
    asking.rest_on(&LEAKAGE);
    let kind = pick!(asking, device.kind);
    let rating = read!(asking, device.rating);
    let leakage = read!(asking, device.leakage);
    let asked = asked(asking, site, supply);
    let (kind, rating, leakage, asked) = (kind?, rating?, leakage?, asked?);
    let leaks = Comparison::at_most(
        Labeled::new("standing leakage", leakage),
        Labeled::new(
            "leakage that the residual-current device stands without a trip",
            rating * SHARE,
        ),
    );
    Ok(Found {
        rating,
        leaks,
        blind: asked.is_some_and(|asked| sees(kind) < sees(asked)),
    })
}

/// What a kind of device sees, in steps; those of the United States are not sorted so.
fn sees(kind: ResidualKind) -> u8 {
    match kind {
        ResidualKind::TypeAc => 1,
        ResidualKind::TypeA => 2,
        ResidualKind::TypeF => 3,
        ResidualKind::TypeB => 4,
        ResidualKind::Equipment | ResidualKind::People => 0,
    }
}

/// The most demanding kind that the papers of what hangs on the circuit ask for; none in the United States.
fn asked<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    supply: &'s Supply,
) -> Result<Option<ResidualKind>, Halt> {
    if site.site.code_basis == CodeBasis::Us {
        return Ok(None);
    }
    let mut most = Ok(None);
    for fed in fed_by(site, supply) {
        let kind = pick!(asking, fed.intake?.residual_kind);
        most = most.and_then(|known: Option<ResidualKind>| {
            let kind = kind?;
            Ok(Some(match known {
                Some(known) if sees(known) >= sees(kind) => known,
                _ => kind,
            }))
        });
    }
    most
}
