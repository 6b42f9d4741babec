//! How long one set of anchors takes with every way to fail.
//!
//! Run with `cargo bench -p formula --bench anchors`.

#![allow(
    clippy::unwrap_used,
    reason = "a benchmark stops at the first surprise"
)]

use divan::{Bencher, black_box};
use formula::standing::anchor_group::{
    AnchorCode, AnchorMake, AnchorSet, ConcreteAround, Pattern, PlateLoads, ProductValues, Quietly,
    Rod, Seat, answer,
};
use formula::standing::{AnchorCategory, AnchorLoading, Cracking, SteelKind};
use quantity::{Area, Force, Length, Pressure, Quantity as _, Ratio, Torque};

fn main() {
    divan::main();
}

/// Eight anchors, tipped and shoved both ways.
fn eight(make: AnchorMake) -> AnchorSet {
    let meters = Length::from_base;
    AnchorSet {
        code: AnchorCode::Aci318,
        rod: Rod {
            make,
            diameter: meters(0.019),
            pitch: meters(0.0025),
            embedment: meters(0.2),
            tensile_strength: Pressure::from_base(400e6),
            yield_strength: Pressure::from_base(248e6),
            steel: SteelKind::Ductile,
        },
        product: ProductValues {
            category: AnchorCategory::Three,
            bearing_area: Some(Area::from_base(6e-4)),
            hook_length: None,
            pull_out: None,
            pull_out_exponent: Ratio::from_base(0.5),
            bond: None,
            breakout_coefficient: None,
            critical_edge: None,
        },
        pattern: Pattern::Rows {
            in_row: 4,
            spacing: meters(0.15),
            rows: 2,
            row_spacing: meters(0.2),
        },
        concrete: ConcreteAround {
            strength: Pressure::from_base(25e6),
            cracking: Cracking::Cracked,
            lightweight_factor: Ratio::from_base(1.0),
            thickness: meters(0.9),
            edges: [meters(0.3), meters(0.35), meters(0.07), meters(0.3)],
            edge_bar: false,
        },
        plate: [meters(0.6), meters(0.3)],
        seat: Seat::Bare,
        loads: PlateLoads {
            moment_along: Torque::from_base(4e3),
            moment_across: Torque::from_base(2e3),
            shear_along: Force::from_base(3e3),
            shear_across: Force::from_base(2e3),
            weight: Force::from_base(1e3),
            uplift: Force::from_base(0.0),
            lasting_pull: Force::from_base(200.0),
            stated_pull: None,
        },
        loading: AnchorLoading::Earthquake,
    }
}

/// Headed bolts with one edge near enough to burst.
#[divan::bench]
fn headed(bencher: Bencher) {
    let set = eight(AnchorMake::HeadedBolt);
    bencher.bench(|| answer(black_box(&set), &mut Quietly).unwrap().share());
}

/// Adhesive anchors with a lasting pull.
#[divan::bench]
fn adhesive(bencher: Bencher) {
    let set = eight(AnchorMake::Adhesive);
    bencher.bench(|| answer(black_box(&set), &mut Quietly).unwrap().share());
}
