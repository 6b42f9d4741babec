//! Whether a plate is thick enough to count as stiff between the post on it and its anchors.

use super::edges::halves;
use crate::asking::{Asking, read};
use crate::check::structure::at_foot::post_named;
use crate::check::structure::on_post::outer;
use crate::outcome::{Comparison, Halt, Labeled};
use formula::standing::AnchorPlateThickness;
use formula::standing::anchor_group::{AnchorSet, Pattern, Pulls};
use formula::{Evidence, Source};
use quantity::{Force, Length, Pressure, Quantity as _, Ratio};
use site::{Anchor, CodeBasis, Site};

static PLATE: Source = Source {
    work: "plates of ASTM A36 (36 ksi) in the US, of S235 (235 MPa) in Europe, the weakest in common use",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "taken for want of a grade on the site; any other grade in trade is stronger",
};

/// Yield strengths of those plates, in pascals.
const WEAKEST: [f64; 2] = [248.211e6, 235e6];

/// The plate's thickness against what keeps it straight; nothing where no post stands on it or no anchor pulls.
pub(crate) fn thin_plate<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    anchor: &'s Anchor,
    set: &AnchorSet,
    pulls: &Pulls,
) -> Result<Option<Comparison>, Halt> {
    let post = anchor
        .carries
        .as_ref()
        .and_then(|name| post_named(site, name));
    let Some((_, post)) = post.filter(|_| pulls.greatest > Force::default()) else {
        return Ok(None);
    };
    let there = read!(asking, anchor.plate_thickness);
    let outer = outer(asking, post);
    let strength = asking.read_if_there(
        &anchor.origin,
        "plate_strength",
        anchor.plate_strength.as_ref(),
    );
    if strength.is_none() {
        asking.rest_on(&PLATE);
    }
    let (there, outer) = (there?, outer?);
    let (weakest, reduction) = match site.site.code_basis {
        CodeBasis::Us => (WEAKEST[0], 0.9),
        CodeBasis::Eu => (WEAKEST[1], 1.0),
    };
    let (overhang, width) = longest(set, [outer.along, outer.across]);
    let needed = asking.work(&AnchorPlateThickness {
        pull: pulls.greatest,
        overhang,
        width,
        yield_strength: strength.unwrap_or(Pressure::from_base(weakest)),
        reduction: Ratio::from_base(reduction),
    })?;
    Ok(Some(Comparison::at_most(
        Labeled::new(
            "thickness that the plate needs to stay straight",
            needed.thickness,
        ),
        Labeled::new("thickness of the plate", there),
    )))
}

/// The longer overhang from the post's face to the outermost anchors, and the width of plate beside one of them.
fn longest(set: &AnchorSet, post: [Length; 2]) -> (Length, Length) {
    let half = halves(&set.pattern);
    let over = |way: usize| Length::from_base((half[way] - post[way] / 2.0).base().max(0.0));
    let way = usize::from(over(1) > over(0));
    let beside = match set.pattern {
        Pattern::Rows { in_row, rows, .. } => [rows, in_row][way],
        Pattern::Circle { count, .. } => count.div_ceil(2),
    };
    let width = set.plate[1 - way].base() / f64::from(beside.max(1));
    let width = if width > 0.0 {
        width
    } else {
        2.0 * over(way).base() + set.rod.diameter.base()
    };
    (over(way), Length::from_base(width))
}
