//! The signs at the gates: where each hangs, what it has to tell, and in which letters.

use super::cells::{position, words};
use crate::view::{Cell, Column, Table};
use design::signs::{ShownSign, shown};
use quantity::print;
use site::{CodeBasis, SignKind, Site};

/// The schedule of signs, where there are any.
pub(crate) fn tables(site: &Site) -> Vec<Table> {
    let signs = shown(site);
    if signs.is_empty() {
        return Vec::new();
    }
    vec![Table {
        title: "Signs".to_owned(),
        note: "What each sign has to tell, not its wording: where the maker of the operator sends placards with it, those hang. On each side of the gate, on something that does not move out of sight, and beside each control that is held. Look at every visit whether they are still there and whole.".to_owned(),
        columns: vec![
            Column::words("Sign", 30),
            Column::words("Kind", 26),
            Column::words("Read from", 20),
            Column::words("Hangs at: along; into; up", 42),
            Column::words("Letters", 20),
            Column::words("At least", 20),
            Column::words("Languages", 26),
            Column::words("It has to tell", 92),
            Column::words("Asked by", 44),
            Column::words("Last seen", 28),
        ],
        rows: signs.iter().map(|sign| row(site, sign)).collect(),
    }]
}

fn row(site: &Site, shown: &ShownSign<'_>) -> Vec<Cell> {
    let units = site.site.unit_system();
    let sign = shown.sign;
    let mut languages: Vec<String> = sign.languages.iter().map(ToString::to_string).collect();
    if sign.picture == Some(true) {
        languages.push("picture".to_owned());
    }
    let height = sign.letter_height.as_ref();
    vec![
        Cell::text(sign.id.to_string()),
        Cell::text(sign.what.to_string()),
        words(sign.side.as_ref()),
        position(sign.at.as_ref(), units),
        height.map_or_else(
            || Cell::unknown("measure"),
            |height| Cell::text(print(height.nominal(), units)),
        ),
        shown.least_letters.map_or_else(
            || Cell::unknown("distance"),
            |least| Cell::text(print(least, units)),
        ),
        Cell::text(languages.join(", ")),
        Cell::text(tells(sign.what)),
        Cell::text(asked_by(site, sign.what)),
        sign.seen
            .as_ref()
            .map_or_else(|| Cell::unknown("look"), |day| Cell::text(day.to_string())),
    ]
}

/// What a sign has to tell, in a few sentences.
fn tells(kind: SignKind) -> &'static str {
    match kind {
        SignKind::Warning => {
            "That this gate moves without warning and can kill. That its way is to be kept free, by hands and arms too. That children neither play here nor work it. That it is for vehicles, and where people on foot go."
        }
        SignKind::HeldControl => {
            "That the gate moves only while this is held, and stops when it is let go. That whoever holds it sees the whole gate until it stands still."
        }
        SignKind::OnFoot => "Where people on foot go, with an arrow that way.",
        SignKind::Other => "",
    }
}

fn asked_by(site: &Site, kind: SignKind) -> &'static str {
    match (kind, site.site.code_basis) {
        (SignKind::Warning | SignKind::HeldControl, CodeBasis::Us) => {
            "UL 325, installation instructions; letters: MUTCD 2009, 2A.13"
        }
        (SignKind::Warning | SignKind::HeldControl, CodeBasis::Eu) => {
            "the operator's instructions; letters: MUTCD 2009, 2A.13, as a guide"
        }
        (SignKind::OnFoot, _) => "the separate way for people on foot",
        (SignKind::Other, _) => "",
    }
}
