//! Posts, pads, anchors, bollards and lifting: what holds the gate to the ground, and what may be lifted by hand.

mod adhesive_order;
mod anchor_adhesive_critical_edge;
mod anchor_bond_tension;
mod anchor_breakout_shear;
mod anchor_breakout_tension;
mod anchor_critical_edge;
pub mod anchor_group;
mod anchor_group_breakout_tension;
mod anchor_interaction;
mod anchor_least_distances;
mod anchor_least_edge_recalled;
mod anchor_minimum_bond;
mod anchor_plate_thickness;
mod anchor_pryout;
mod anchor_pullout_headed;
mod anchor_pullout_hooked;
mod anchor_pullout_product;
mod anchor_reduction;
mod anchor_side_face_blowout;
mod anchor_stand_off;
mod anchor_steel_shear;
mod anchor_steel_tension;
mod bag_yield;
mod base_plate_anchors;
mod beam_on_soil;
mod bollard_bending;
mod bollard_gap;
mod bolt_circle_anchors;
mod breakout;
mod concrete;
mod concrete_section_bending;
mod cone_reach;
mod en1992_cone;
mod en1992_edge;
mod en1992_pryout;
mod en1992_steel;
mod factors;
mod footing_bottom;
mod free_plate_anchors;
mod hole_concrete;
mod lifting_composite;
mod lifting_frequency;
mod lifting_limit;
mod mast_sway;
mod pad;
mod pad_bearing;
mod pad_overturning;
mod pad_sliding;
mod pad_smallest;
mod penetration_rating;
mod plate;
mod post_bending;
mod post_deflection;
mod post_embedment_free;
mod post_embedment_held;
mod post_embedment_trial;
mod post_ground;
mod presumptive_soil;
mod shear_edge;
mod vehicle_impact;
mod vehicle_test_class;
mod whole;

pub use adhesive_order::{AdhesiveNeed, AdhesiveOrder};
pub use anchor_adhesive_critical_edge::{AdhesiveCriticalEdge, AnchorAdhesiveCriticalEdge};
pub use anchor_bond_tension::{AnchorBond, AnchorBondTension};
pub use anchor_breakout_shear::{AnchorBreakoutShear, ShearBreakout, ShearDirection};
pub use anchor_breakout_tension::{AnchorBreakout, AnchorBreakoutTension};
pub use anchor_critical_edge::{AnchorCriticalEdge, MechanicalAnchor, MechanicalCriticalEdge};
pub use anchor_group_breakout_tension::{AnchorGroupBreakout, AnchorGroupBreakoutTension};
pub use anchor_interaction::{AnchorInteraction, Interaction};
pub use anchor_least_distances::{AnchorLeastDistances, AnchorSetting, LeastDistances};
pub use anchor_least_edge_recalled::{AnchorLeastEdgeRecalled, LeastEdge, PostInstalledAnchor};
pub use anchor_minimum_bond::{AnchorMinimumBond, BondEnvironment, MinimumBond, PullDuration};
pub use anchor_plate_thickness::{AnchorPlateThickness, PlateThickness};
pub use anchor_pryout::{AnchorPryout, Pryout};
pub use anchor_pullout_headed::{AnchorPulloutHeaded, HeadedPullout};
pub use anchor_pullout_hooked::{AnchorPulloutHooked, HookedPullout};
pub use anchor_pullout_product::{AnchorPulloutProduct, ProductPullout};
pub use anchor_reduction::{
    AnchorCategory, AnchorFailure, AnchorLoading, AnchorReduction, ReductionFactor, SteelKind,
    Supplementary,
};
pub use anchor_side_face_blowout::{AnchorSideFaceBlowout, SideFaceBlowout};
pub use anchor_stand_off::{AnchorStandOff, FreeEnd, StandOffStrength};
pub use anchor_steel_shear::{AnchorShear, AnchorSteelShear, ShearAnchor, UnderPlate};
pub use anchor_steel_tension::{AnchorSteel, AnchorSteelTension};
pub use bag_yield::{Bag, BagYield, YieldOfBag};
pub use base_plate_anchors::{AnchorForces, BasePlateAnchors};
pub use beam_on_soil::{BeamOnSoil, BeamOnSoilLoad};
pub use bollard_bending::{BollardBending, BollardStrength};
pub use bollard_gap::{BollardGap, Gap};
pub use bolt_circle_anchors::{BoltCircleAnchors, CircleForces};
pub use concrete::{AnchorKind, Cracking, breakout_coefficient, cracking_factor};
pub use concrete_section_bending::{ConcreteBending, ConcreteSectionBending};
pub use en1992_cone::{BarSpacing, ConeResistance, En1992Cone};
pub use en1992_edge::{EdgeResistance, En1992Edge};
pub use en1992_pryout::{En1992Pryout, PryoutResistance};
pub use en1992_steel::{En1992Steel, FastenerSteel};
pub use footing_bottom::{FootingBottom, FootingDepth};
pub use free_plate_anchors::{FreePlateAnchors, FreePlateForces};
pub use hole_concrete::{ConcreteOrder, HoleConcrete};
pub use lifting_composite::{CompositeIndex, LiftingComposite, StartHeight};
pub use lifting_frequency::{CountedFrequency, LiftingDuration, LiftingFrequency};
pub use lifting_limit::{Coupling, LiftingIndex, LiftingLimit};
pub use mast_sway::{MastSway, Sway};
pub use pad_bearing::{PadBearing, PadPressure};
pub use pad_overturning::{PadOverturning, PadTipping};
pub use pad_sliding::{PadSlide, PadSliding};
pub use pad_smallest::{PadSmallest, SmallestPad};
pub use penetration_rating::{Penetration, PenetrationRating, RatedPenetration};
pub use post_bending::{PostBending, PostStresses};
pub use post_deflection::{PostDeflection, PostMovement};
pub use post_embedment_free::{FreeEmbedment, PostEmbedmentFree};
pub use post_embedment_held::{HeldEmbedment, PostEmbedmentHeld};
pub use post_embedment_trial::{PostEmbedmentTrial, TrialEmbedment};
pub use presumptive_soil::{PresumptiveSoil, Soil, SoilValues};
pub use vehicle_impact::{Impact, VehicleImpact};
pub use vehicle_test_class::{BarrierRating, TestVehicle, VehicleTestClass};

use crate::Calculation;

/// The calculations of this discipline.
pub(crate) const CALCULATIONS: &[Calculation] = &[
    Calculation::of::<AdhesiveOrder>(),
    Calculation::of::<AnchorAdhesiveCriticalEdge>(),
    Calculation::of::<AnchorBondTension>(),
    Calculation::of::<AnchorBreakoutShear>(),
    Calculation::of::<AnchorBreakoutTension>(),
    Calculation::of::<AnchorCriticalEdge>(),
    Calculation::of::<AnchorGroupBreakoutTension>(),
    Calculation::of::<AnchorInteraction>(),
    Calculation::of::<AnchorLeastDistances>(),
    Calculation::of::<AnchorLeastEdgeRecalled>(),
    Calculation::of::<AnchorMinimumBond>(),
    Calculation::of::<AnchorPlateThickness>(),
    Calculation::of::<AnchorPryout>(),
    Calculation::of::<AnchorPulloutHeaded>(),
    Calculation::of::<AnchorPulloutHooked>(),
    Calculation::of::<AnchorPulloutProduct>(),
    Calculation::of::<AnchorReduction>(),
    Calculation::of::<AnchorSideFaceBlowout>(),
    Calculation::of::<AnchorStandOff>(),
    Calculation::of::<AnchorSteelShear>(),
    Calculation::of::<AnchorSteelTension>(),
    Calculation::of::<BagYield>(),
    Calculation::of::<BasePlateAnchors>(),
    Calculation::of::<BeamOnSoil>(),
    Calculation::of::<BollardBending>(),
    Calculation::of::<BollardGap>(),
    Calculation::of::<BoltCircleAnchors>(),
    Calculation::of::<ConcreteSectionBending>(),
    Calculation::of::<En1992Cone>(),
    Calculation::of::<En1992Edge>(),
    Calculation::of::<En1992Pryout>(),
    Calculation::of::<En1992Steel>(),
    Calculation::of::<FootingBottom>(),
    Calculation::of::<FreePlateAnchors>(),
    Calculation::of::<HoleConcrete>(),
    Calculation::of::<LiftingComposite>(),
    Calculation::of::<LiftingFrequency>(),
    Calculation::of::<LiftingLimit>(),
    Calculation::of::<MastSway>(),
    Calculation::of::<PadBearing>(),
    Calculation::of::<PadOverturning>(),
    Calculation::of::<PadSliding>(),
    Calculation::of::<PadSmallest>(),
    Calculation::of::<PenetrationRating>(),
    Calculation::of::<PostBending>(),
    Calculation::of::<PostDeflection>(),
    Calculation::of::<PostEmbedmentFree>(),
    Calculation::of::<PostEmbedmentHeld>(),
    Calculation::of::<PostEmbedmentTrial>(),
    Calculation::of::<PresumptiveSoil>(),
    Calculation::of::<VehicleImpact>(),
    Calculation::of::<VehicleTestClass>(),
];

/// The case files of this discipline: name and text.
pub(crate) const CASES: &[(&str, &str)] = cases![
    "standing":
    "adhesive_order",
    "anchor_adhesive_critical_edge",
    "anchor_bond_tension",
    "anchor_breakout_shear",
    "anchor_breakout_tension",
    "anchor_critical_edge",
    "anchor_group_breakout_tension",
    "anchor_interaction",
    "anchor_least_distances",
    "anchor_least_edge_recalled",
    "anchor_minimum_bond",
    "anchor_plate_thickness",
    "anchor_pryout",
    "anchor_pullout_headed",
    "anchor_pullout_hooked",
    "anchor_pullout_product",
    "anchor_reduction",
    "anchor_side_face_blowout",
    "anchor_stand_off",
    "anchor_steel_shear",
    "anchor_steel_tension",
    "bag_yield",
    "base_plate_anchors",
    "beam_on_soil",
    "bollard_bending",
    "bollard_gap",
    "bolt_circle_anchors",
    "concrete_section_bending",
    "en1992_cone",
    "en1992_edge",
    "en1992_pryout",
    "en1992_steel",
    "footing_bottom",
    "free_plate_anchors",
    "hole_concrete",
    "lifting_composite",
    "lifting_frequency",
    "lifting_limit",
    "mast_sway",
    "pad_bearing",
    "pad_overturning",
    "pad_sliding",
    "pad_smallest",
    "penetration_rating",
    "post_bending",
    "post_deflection",
    "post_embedment_free",
    "post_embedment_held",
    "post_embedment_trial",
    "presumptive_soil",
    "vehicle_impact",
    "vehicle_test_class",
];
