//! A set of anchors as the site describes it, without its loads.
//!
//! Where no grade is given the steel is the weakest in common use, with a thread that is coarse for its size; steel of a
//! given strength counts as brittle until the site says that it stretches. A foundation is of normal-weight concrete
//! unless the site says otherwise.

use super::edges::edges;
use super::product::product;
use crate::asking::{Asking, pick, read};
use crate::outcome::Halt;
use formula::standing::anchor_group::{
    AnchorCode, AnchorMake, AnchorSet, ConcreteAround, Pattern, PlateLoads, Rod, Seat,
};
use formula::standing::{AnchorLoading, Cracking, SteelKind};
use formula::{Evidence, Source};
use quantity::{Force, Length, Pressure, Quantity as _, Ratio, Torque, Word as _};
use site::{Anchor, CodeBasis, Foundation, Site, UnderPlate};

static STEEL: Source = Source {
    work: "ASTM F1554 grade 36: 58 ksi tensile, 36 ksi yield, the weakest anchor steel in common use; pitch at most a fifth of the diameter",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "taken for want of a grade on the site; any named grade is stronger",
};

static EUROPE: Source = Source {
    work: "EN 1992-4",
    clause: "7.2.1 and 7.2.2",
    evidence: Evidence::Memory,
    seen: "recalled; where no calculation by it is here, ACI 318-19 stands in",
};

static LIGHTWEIGHT: Source = Source {
    work: "ACI 318-19",
    clause: "17.2.4.1 and table 19.2.4.1: 0.75 for lightweight concrete of any make, 0.6 of that for bond, 0.8 for drilled anchors",
    evidence: Evidence::Memory,
    seen: "recalled",
};

/// Tensile and yield strength of the weakest common anchor steel, 58 ksi and 36 ksi, in pascals.
const WEAKEST: (f64, f64) = (399.896e6, 248.211e6);
/// Largest pitch of a coarse thread over its diameter, from 1/4 in up.
const COARSEST: f64 = 0.2;
/// Factor of lightweight concrete whose make is not known, drilled and glued anchors included.
const LIGHT: f64 = 0.5;

/// The set without loads; the plate and what is under it are left for [`seat`].
pub(crate) fn described<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
) -> Result<AnchorSet, Halt> {
    let rod = rod(asking, anchor);
    let product = product(asking, anchor);
    let pattern = pattern(asking, anchor);
    let concrete = concrete(asking, foundation, anchor, pattern.ok());
    let (rod, product, pattern, concrete) = (rod?, product?, pattern?, concrete?);
    let code = match site.site.code_basis {
        CodeBasis::Us => AnchorCode::Aci318,
        CodeBasis::Eu => {
            asking.rest_on(&EUROPE);
            AnchorCode::En1992
        }
    };
    let lasting =
        asking.read_if_there(&anchor.origin, "lasting_pull", anchor.lasting_pull.as_ref());
    Ok(AnchorSet {
        code,
        rod,
        product,
        pattern,
        concrete,
        plate: [Length::default(); 2],
        seat: Seat::Bare,
        loads: PlateLoads {
            lasting_pull: lasting.unwrap_or_default(),
            ..unloaded()
        },
        loading: match anchor.earthquake {
            Some(true) => AnchorLoading::Earthquake,
            _ => AnchorLoading::Static,
        },
    })
}

/// No load at all.
pub(super) fn unloaded() -> PlateLoads {
    PlateLoads {
        moment_along: Torque::default(),
        moment_across: Torque::default(),
        shear_along: Force::default(),
        shear_across: Force::default(),
        weight: Force::default(),
        uplift: Force::default(),
        lasting_pull: Force::default(),
        stated_pull: None,
    }
}

/// The plate and what is under it.
pub(super) fn seat<'s>(
    asking: &mut Asking<'s>,
    anchor: &'s Anchor,
) -> Result<([Length; 2], Seat), Halt> {
    let under = pick!(asking, anchor.under_plate);
    let nuts = matches!(under, Ok(UnderPlate::LevelingNuts));
    let sizes = if anchor.bolt_circle.is_some() || nuts {
        Ok([Length::default(); 2])
    } else {
        let length = read!(asking, anchor.plate_length);
        let width = read!(asking, anchor.plate_width);
        length.and_then(|length| Ok([length, width?]))
    };
    let seat = match under? {
        UnderPlate::Nothing => Seat::Bare,
        UnderPlate::Grout => Seat::Grout,
        UnderPlate::LevelingNuts => {
            let below = read!(asking, anchor.stand_off);
            let thickness = read!(asking, anchor.plate_thickness);
            Seat::Nuts {
                stand_off: below? + thickness? / 2.0,
            }
        }
    };
    Ok((sizes?, seat))
}

/// How they stand.
pub(super) fn pattern<'s>(asking: &mut Asking<'s>, anchor: &'s Anchor) -> Result<Pattern, Halt> {
    let count = pick!(asking, anchor.count);
    let circle = asking.read_if_there(&anchor.origin, "bolt_circle", anchor.bolt_circle.as_ref());
    if let Some(diameter) = circle {
        return Ok(Pattern::Circle {
            count: count?,
            diameter,
        });
    }
    let rows = anchor.rows.unwrap_or(1).max(1);
    let in_row = count.map(|count| count / rows);
    let spacing = if matches!(in_row, Ok(1)) {
        Ok(Length::default())
    } else {
        read!(asking, anchor.spacing)
    };
    let row_spacing = if rows == 1 {
        Ok(Length::default())
    } else {
        read!(asking, anchor.row_spacing)
    };
    let in_row = in_row?;
    if in_row == 0 || count? != in_row * rows {
        return asking.refuse("the anchors do not share out evenly over their rows");
    }
    Ok(Pattern::Rows {
        in_row,
        spacing: spacing?,
        rows,
        row_spacing: row_spacing?,
    })
}

fn rod<'s>(asking: &mut Asking<'s>, anchor: &'s Anchor) -> Result<Rod, Halt> {
    let kind = pick!(asking, anchor.kind);
    let diameter = read!(asking, anchor.diameter);
    let embedment = read!(asking, anchor.embedment);
    let (kind, diameter) = (kind?, diameter?);
    let Some(make) = AnchorMake::from_word(kind.word()) else {
        return asking.refuse("this tool has no strengths for anchors of this kind");
    };
    let origin = &anchor.origin;
    let pitch = asking.read_if_there(origin, "pitch", anchor.pitch.as_ref());
    let tensile =
        asking.read_if_there(origin, "tensile_strength", anchor.tensile_strength.as_ref());
    let first_yield =
        asking.read_if_there(origin, "yield_strength", anchor.yield_strength.as_ref());
    if pitch.is_none() || tensile.is_none() || first_yield.is_none() {
        asking.rest_on(&STEEL);
    }
    let stretches = anchor.ductile.unwrap_or(tensile.is_none());
    Ok(Rod {
        make,
        diameter,
        pitch: pitch.unwrap_or(diameter * COARSEST),
        embedment: embedment?,
        tensile_strength: tensile.unwrap_or(Pressure::from_base(WEAKEST.0)),
        yield_strength: first_yield.unwrap_or(Pressure::from_base(WEAKEST.1)),
        steel: if stretches {
            SteelKind::Ductile
        } else {
            SteelKind::Brittle
        },
    })
}

fn concrete<'s>(
    asking: &mut Asking<'s>,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
    pattern: Option<Pattern>,
) -> Result<ConcreteAround, Halt> {
    let strength = read!(asking, foundation.strength);
    let state = pick!(asking, foundation.concrete);
    let thickness = read!(asking, foundation.depth);
    let edges = match pattern {
        Some(pattern) => edges(asking, foundation, anchor, &pattern),
        None => Err(Halt),
    };
    let Some(cracking) = Cracking::from_word(state?.word()) else {
        return asking.refuse("no figures are printed for this state of concrete");
    };
    let light = foundation.lightweight == Some(true);
    if light {
        asking.rest_on(&LIGHTWEIGHT);
    }
    Ok(ConcreteAround {
        strength: strength?,
        cracking,
        lightweight_factor: Ratio::from_base(if light { LIGHT } else { 1.0 }),
        thickness: thickness?,
        edges: edges?,
        edge_bar: foundation.edge_bar == Some(true),
    })
}
