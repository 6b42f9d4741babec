//! A set of anchors as a whole: laws, and sums by hand.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
use super::*;
use crate::standing::{AnchorCategory, AnchorLoading, Cracking, SteelKind};
use proptest::prelude::*;
use quantity::{Area, Force, Length, Pressure, Quantity as _, Ratio, Torque};

fn inches(number: f64) -> Length {
    Length::from_base(number * 0.0254)
}

fn pounds(number: f64) -> Force {
    Force::from_base(number * 4.448_221_615_260_5)
}

fn psi(number: f64) -> Pressure {
    Pressure::from_base(number * 6_894.757_293_168)
}

/// Four headed bolts, 3/4 in, 8 in deep, 8 in apart under a plate of 12 in.
fn set() -> AnchorSet {
    AnchorSet {
        code: AnchorCode::Aci318,
        rod: Rod {
            make: AnchorMake::HeadedBolt,
            diameter: inches(0.75),
            pitch: inches(0.1),
            embedment: inches(8.0),
            tensile_strength: psi(58_000.0),
            yield_strength: psi(36_000.0),
            steel: SteelKind::Ductile,
        },
        product: ProductValues {
            category: AnchorCategory::Three,
            bearing_area: Some(Area::from_base(0.911 * 0.0254 * 0.0254)),
            hook_length: None,
            pull_out: None,
            pull_out_exponent: Ratio::from_base(0.5),
            bond: None,
            breakout_coefficient: None,
            critical_edge: None,
        },
        pattern: Pattern::Rows {
            in_row: 2,
            spacing: inches(8.0),
            rows: 2,
            row_spacing: inches(8.0),
        },
        concrete: ConcreteAround {
            strength: psi(4_000.0),
            cracking: Cracking::Cracked,
            lightweight_factor: Ratio::from_base(1.0),
            thickness: inches(36.0),
            edges: [inches(14.0); 4],
            edge_bar: false,
        },
        plate: [inches(12.0); 2],
        seat: Seat::Bare,
        loads: PlateLoads {
            moment_along: Torque::from_base(4_000.0 * 1.355_817_948),
            moment_across: Torque::from_base(0.0),
            shear_along: pounds(800.0),
            shear_across: pounds(0.0),
            weight: pounds(0.0),
            uplift: pounds(0.0),
            lasting_pull: pounds(0.0),
            stated_pull: None,
        },
        loading: AnchorLoading::Static,
    }
}

fn found(set: &AnchorSet) -> AnchorAnswer {
    answer(set, &mut Quietly).unwrap()
}

fn strength(modes: &[Mode], way: AnchorMode) -> f64 {
    let mode = modes.iter().find(|mode| mode.way == way).unwrap();
    mode.strength.base() / pounds(1.0).base()
}

/// Two of the four are pulled: their cone is 32 in by 24 in over 576 in², with 24 · √4000 · 8^1.5 · 0.7 for one.
#[test]
fn the_cone_of_the_pulled_row_by_hand() {
    let found = found(&set());
    let one = 0.7 * 24.0 * 4_000.0_f64.sqrt() * 8.0_f64.powf(1.5);
    let cone = one * (32.0 * 24.0 / 576.0);
    assert!((strength(&found.tension, AnchorMode::Breakout) - cone).abs() < 1e-6 * cone);
    let pull_out = 0.7 * 8.0 * 0.911 * 4_000.0;
    assert!((strength(&found.tension, AnchorMode::PullOut) - pull_out).abs() < 1e-6 * pull_out);
    assert_eq!(found.pulls.pulled.len(), 1);
}

/// Shoved at an edge 14 in off, the nearest row of two takes all: 42 in would reach, 36 in of concrete are there.
#[test]
fn the_edge_by_hand() {
    let found = found(&set());
    let basic = (7.0 * (6.0_f64 / 0.75).powf(0.2) * 0.75_f64.sqrt()).min(9.0);
    let basic = basic * 4_000.0_f64.sqrt() * 14.0_f64.powf(1.5);
    let area = (14.0 + 8.0 + 14.0) * 21.0 / (4.5 * 14.0 * 14.0);
    let edge = 0.7 + 0.3 * 14.0 / 21.0;
    let expected = 0.7 * basic * area * edge;
    let toward = strength(&found.shear, AnchorMode::Toward(Edge::Latch));
    assert!(
        (toward - expected).abs() < 1e-6 * expected,
        "{toward} {expected}"
    );
}

#[test]
fn a_stated_pull_is_that_of_every_anchor() {
    let mut stated = set();
    stated.loads.stated_pull = Some(pounds(1_000.0));
    let pulls = found(&stated).pulls;
    assert!((pulls.total.base() - 4.0 * pulls.greatest.base()).abs() < 1e-9);
}

#[test]
fn anchors_far_apart_act_alone() {
    let mut apart = set();
    apart.pattern = Pattern::Rows {
        in_row: 2,
        spacing: inches(8.0),
        rows: 2,
        row_spacing: inches(30.0),
    };
    apart.plate = [inches(10.0), inches(36.0)];
    let found = found(&apart);
    let cone = 0.7 * 24.0 * 4_000.0_f64.sqrt() * 8.0_f64.powf(1.5);
    let alone = strength(&found.tension, AnchorMode::Breakout);
    assert!((alone - cone).abs() < 1e-6 * cone, "{alone} {cone}");
}

#[test]
fn without_loads_there_is_nothing_to_fail() {
    let mut still = set();
    still.loads.moment_along = Torque::from_base(0.0);
    still.loads.shear_along = pounds(0.0);
    let found = found(&still);
    assert!(found.tension.is_empty() && found.shear.is_empty() && found.together.is_none());
}

#[test]
fn both_directions_grow_out_of_one() {
    let one = found(&set()).share();
    let mut both = set();
    both.loads.moment_across = Torque::from_base(1e-3);
    assert!((found(&both).share() - one).abs() < 1e-3 * one);
}

fn makes() -> impl Strategy<Value = AnchorMake> {
    (0..AnchorMake::ALL.len()).prop_map(|at| AnchorMake::ALL[at])
}

prop_compose! {
    fn sets()(
        make in makes(),
        european in any::<bool>(),
        uncracked in any::<bool>(),
        round in any::<bool>(),
        seat in 0_usize..3,
        counts in (1_u32..4, 2_u32..4),
        edge in 4.0..30.0,
        depth in 4.0..10.0,
        moments in (0.0..4e3, 1.0..4e3),
        shears in (0.0..5e3, 1.0..5e3),
        weight in 0.0..5e3,
    ) -> AnchorSet {
        let mut made = set();
        made.code = if european { AnchorCode::En1992 } else { AnchorCode::Aci318 };
        made.rod.make = make;
        made.rod.embedment = inches(depth);
        made.concrete.cracking = if uncracked { Cracking::Uncracked } else { Cracking::Cracked };
        made.concrete.edges = [inches(edge), inches(edge + 3.0), inches(edge + 1.0), inches(edge)];
        made.product.hook_length = Some(inches(3.0));
        made.product.pull_out = Some(pounds(4_000.0));
        made.seat = [Seat::Bare, Seat::Grout, Seat::Nuts { stand_off: inches(1.5) }][seat];
        made.pattern = if round {
            Pattern::Circle { count: 2 + counts.0 + counts.1, diameter: inches(10.0) }
        } else {
            Pattern::Rows {
                in_row: 1 + counts.0,
                spacing: inches(5.0),
                rows: counts.1,
                row_spacing: inches(6.0),
            }
        };
        made.plate = [inches(24.0); 2];
        made.loads.moment_along = Torque::from_base(moments.0);
        made.loads.moment_across = Torque::from_base(moments.1);
        made.loads.shear_along = Force::from_base(shears.0);
        made.loads.shear_across = Force::from_base(shears.1);
        made.loads.weight = Force::from_base(weight);
        made
    }
}

proptest! {
    /// Whatever stands there, every figure is a number, and more load never uses less.
    #[test]
    fn more_load_uses_more(set in sets()) {
        let before = answer(&set, &mut Quietly);
        prop_assume!(before.is_ok());
        let before = before.unwrap();
        prop_assert!(before.share() > 0.0 && before.share().is_finite());
        let mut more = set;
        more.loads.moment_along *= 1.1;
        more.loads.moment_across *= 1.1;
        more.loads.shear_along *= 1.1;
        more.loads.shear_across *= 1.1;
        prop_assert!(found(&more).share() >= before.share() * (1.0 - 1e-6));
    }

    /// An edge farther off never makes the concrete weaker while two edges at most are near. Between three, ACI 318-19
    /// 17.6.2.1.2 takes the embedment from the farthest near one: when that one moves out of reach the next, nearer one
    /// takes its place, and the strength by the code drops.
    #[test]
    fn a_farther_edge_is_no_weaker(set in sets(), farther in 0.0..10.0) {
        let mut start = set;
        start.concrete.thickness = inches(80.0);
        let [latch, _, outside, _] = set.concrete.edges;
        start.concrete.edges = [latch, inches(80.0), outside, inches(80.0)];
        prop_assume!(answer(&start, &mut Quietly).is_ok());
        let mut moved = start;
        moved.concrete.edges = start.concrete.edges.map(|edge| edge + inches(farther));
        prop_assert!(found(&moved).share() <= found(&start).share() * (1.0 + 1e-9));
    }
}
