//! Protection of people: distances of devices, numbers of means, openings and places that catch.

mod ada_closing_time;
mod ada_gate_dimension;
mod ada_operating_force;
mod ada_reach;
mod adult_dimension;
mod adult_walking_speed;
mod ansi_b11_19_distance;
mod approach;
mod barrier_arm_recalled;
mod beam_crosstalk_spacing;
mod beam_excess_gain;
mod bhma_power_fail_force;
mod body_stiffness;
mod child_height;
mod child_walking_speed;
mod contact_sensor_place;
mod control_distance;
mod cpsc_entrapment_opening;
mod customary;
mod design_vehicle;
mod edge_impact_force;
mod edge_peak_force;
mod en12453_closing_test_points;
mod en12453_force_meter;
mod en12453_force_trace;
mod en12453_minimum_level;
mod en12453_opening_test_point;
mod en12453_peak_force;
mod en12453_test_body;
mod entrapment_alarm;
mod entrapment_protection_count;
mod entrapment_protection_recalled;
mod f2200_construction;
mod f2200_fall;
mod f2200_opening;
mod f2200_protrusion;
mod finger_gap;
mod fire_clear_way;
mod force_measurement_mean;
mod front_axle_turning_radius;
mod gate_beyond_lanes;
mod gate_kind;
mod hold_to_run_overtravel;
mod iso13854_gap;
mod iso13855_2010_beam_distance;
mod iso13855_2010_minimum_distance;
mod iso13855_2010_parallel_distance;
mod iso13855_2024_parallel_distance;
mod iso13855_crawl_under;
mod iso13857_around;
mod iso13857_reach;
mod iso13857_reach_over;
mod iso13857_upward;
mod iso13857_whole_body;
mod item_limit;
mod limit;
mod loop_detection_height;
mod loop_gate_clearance;
mod loop_turns;
mod loop_wire;
mod low_energy_swing_time;
mod means_type;
mod osha_1910_217_distance;
mod reflective_surface_distance;
mod scanner_point_spacing;
mod sign_letter_height;
mod slide_entrapment_zone;
mod slide_gate_gap;
mod soft_edge;
mod swing_entrapment_zone;
mod swing_leaf_sweep;
mod swing_pivot_entrapment_zone;
mod swing_side_entrapment_zone;
mod turning_ring;
mod ul325_means_pair;
mod ul325_reversal;
mod ul325_speed_limit;
mod ul325_types_before_2016;
mod ul325_usage_class;
mod unnoticed_failure;
mod vehicle_clearance_time;
mod vehicle_gap_in_beam;
mod walking_clearance_time;
mod warning_placards;

pub use ada_closing_time::{AdaClosing, AdaClosingTime};
pub use ada_gate_dimension::{AdaDimension, AdaGateDimension, WalkGateItem};
pub use ada_operating_force::{AdaForce, AdaOperatingForce, HandWorked};
pub use ada_reach::{AdaReach, AdaReachRange, ReachApproach};
pub use adult_dimension::{AdultDimension, AdultMeasure, BodyDimension, MeasuredSex, Percentile};
pub use adult_walking_speed::{AdultSpeed, AdultWalker, AdultWalkingSpeed};
pub use ansi_b11_19_distance::{AnsiB1119Distance, AnsiDistance};
pub use barrier_arm_recalled::{BARRIER_ARM_RECALLED, barrier_arm_stays_clear_recalled};
pub use beam_crosstalk_spacing::{BeamCrosstalkSpacing, CrosstalkSpacing};
pub use beam_excess_gain::{
    Air, BEAM_GAIN_IN_DIRTY_AIR_RECALLED, BeamExcessGain, ExcessGain, beam_gain_in_air_recalled,
    beam_range_for_gain,
};
pub use bhma_power_fail_force::{BhmaPowerFailForce, HandMove, PowerFailForce};
pub use body_stiffness::{BodyStiffness, PartStiffness, StruckPart};
pub use child_height::{Child, ChildHeight, ChildPercentile, ChildStature};
pub use child_walking_speed::{ChildSpeed, ChildWalkingSpeed};
pub use contact_sensor_place::{ContactSensorPlace, SensorAtPlace, SensorDemand, SensorPlace};
pub use control_distance::{ControlDistance, ControlRule};
pub use cpsc_entrapment_opening::{CaughtPart, CpscEntrapmentOpening, EntrapmentOpening};
pub use design_vehicle::{DesignVehicle, DesignVehicleKind, VehicleSize};
pub use edge_impact_force::{EdgeImpact, EdgeImpactForce};
pub use edge_peak_force::{EdgeForce, EdgePeakForce};
pub use en12453_closing_test_points::{ClosingTestPoints, En12453ClosingTestPoints};
pub use en12453_force_meter::{En12453ForceMeter, ForceMeter, MeterVerdict};
pub use en12453_force_trace::{En12453ForceTrace, ForceTraceVerdict, TraceVerdict};
pub use en12453_minimum_level::{
    EN12453_MINIMUM_LEVEL_RECALLED, En12453MinimumLevel, GateControl, MinimumLevel,
    ProtectionLevel, UseType, en12453_minimum_level_recalled,
};
pub use en12453_opening_test_point::{En12453OpeningTestPoint, OpeningTestPoint};
pub use en12453_peak_force::{
    EN12453_PEAK_FORCE_RECALLED, En12453PeakForce, PeakForceLimit, en12453_peak_force_recalled,
};
pub use en12453_test_body::{BoxPosture, En12453TestBody, Sight, TestBodySight};
pub use entrapment_alarm::{AlarmRule, AlarmVerdict, EntrapmentAlarm};
pub use entrapment_protection_count::{EntrapmentProtectionCount, ProtectionCount};
pub use entrapment_protection_recalled::{EntrapmentProtectionRecalled, RecalledCount};
pub use f2200_construction::{ConstructionRule, F2200Construction, GateItem};
pub use f2200_fall::{F2200Fall, FallRule};
pub use f2200_opening::{F2200Edition, F2200Opening, OpeningRule, OpeningVerdict};
pub use f2200_protrusion::{F2200Protrusion, Protrusion, ProtrusionVerdict};
pub use finger_gap::{FINGER_GAP_RECALLED, finger_gap_recalled};
pub use fire_clear_way::{FireClearWay, FireWay, FireWayVerdict};
pub use force_measurement_mean::{ForceMeasurementMean, MeanForce, MeanVerdict};
pub use front_axle_turning_radius::{FrontAxleCircle, FrontAxleTurningRadius};
pub use gate_beyond_lanes::{GateBeyondLanes, LaneGate, LaneGateVerdict};
pub use gate_kind::{Entrapment, GateKind, TravelDirection};
pub use hold_to_run_overtravel::{
    HOLD_TO_RUN_OVERTRAVEL_RECALLED, HoldToRunOvertravel, Overtravel,
    hold_to_run_overtravel_recalled,
};
pub use iso13854_gap::{BodyPart, CrushingGap, Iso13854Gap};
pub use iso13855_2010_beam_distance::{
    Iso138552010BeamDistance, Iso138552010Beams, iso13855_2010_beam_heights,
};
pub use iso13855_2010_minimum_distance::{Iso138552010Distance, Iso138552010MinimumDistance};
pub use iso13855_2010_parallel_distance::{Iso138552010Parallel, Iso138552010ParallelDistance};
pub use iso13855_2024_parallel_distance::{Iso138552024Parallel, Iso138552024ParallelDistance};
pub use iso13855_crawl_under::{
    CrawlUnder, CrawlVerdict, Iso13855CrawlUnder, Iso13855Edition, PeopleNear,
};
pub use iso13857_around::{AroundReach, Iso13857Around};
pub use iso13857_reach::{Iso13857Reach, OpeningShape, ReachDistance, reach_from_three_years};
pub use iso13857_reach_over::{ISO13857_REACH_OVER_RECALLED, iso13857_reach_over_recalled};
pub use iso13857_upward::{Iso13857Upward, RiskLevel, UpwardReach};
pub use iso13857_whole_body::{BodyPassage, Iso13857WholeBody, Passage};
pub use limit::LimitVerdict;
pub use loop_detection_height::{LoopDetectionHeight, LoopHeight};
pub use loop_gate_clearance::{LoopClearance, LoopGateClearance};
pub use loop_turns::{LoopTurns, TurnsOfLoop};
pub use loop_wire::{LoopWire, WireOfLoop};
pub use low_energy_swing_time::{LowEnergySwingTime, LowEnergyTime};
pub use means_type::MeansType;
pub use osha_1910_217_distance::{Osha1910217Distance, OshaDistance};
pub use reflective_surface_distance::{EspeType, ReflectiveRule, ReflectiveSurfaceDistance};
pub use scanner_point_spacing::{PointSpacing, ScannerPointSpacing};
pub use sign_letter_height::{LetterRule, SignLetterHeight};
pub use slide_entrapment_zone::{SlideEntrapmentZone, SlideZone, ZoneVerdict};
pub use slide_gate_gap::{SlideGapRule, SlideGateGap};
pub use swing_entrapment_zone::{SwingEntrapmentZone, SwingZone};
pub use swing_leaf_sweep::{LeafSweep, SwingLeafSweep};
pub use swing_pivot_entrapment_zone::{SwingPivotEntrapmentZone, SwingPivotZone};
pub use swing_side_entrapment_zone::{SwingSideEntrapmentZone, SwingSideZone};
pub use turning_ring::{SweptRing, TurningRing};
pub use ul325_means_pair::{MeansPair, PairVerdict, Ul325MeansPair};
pub use ul325_reversal::{ReversalRule, ReversalVerdict, Ul325Reversal};
pub use ul325_speed_limit::{SpeedRule, Ul325SpeedLimit};
pub use ul325_types_before_2016::{TypeRoles, TypeVerdict, Ul325TypesBefore2016};
pub use ul325_usage_class::{GatePlace, GateUsage, Ul325UsageClass, UsageClass};
pub use unnoticed_failure::{FailureChance, UnnoticedFailure};
pub use vehicle_clearance_time::{VehicleClearanceTime, VehicleTime};
pub use vehicle_gap_in_beam::{GapTime, VehicleGapInBeam};
pub use walking_clearance_time::{Walker, WalkingClearanceTime, WalkingTime};
pub use warning_placards::{PlacardRule, PlacardVerdict, WarningPlacards};

use crate::Calculation;

/// The calculations of this discipline.
pub(crate) const CALCULATIONS: &[Calculation] = &[
    Calculation::of::<AdaClosingTime>(),
    Calculation::of::<AdaGateDimension>(),
    Calculation::of::<AdaOperatingForce>(),
    Calculation::of::<AdaReach>(),
    Calculation::of::<AdultDimension>(),
    Calculation::of::<AdultWalkingSpeed>(),
    Calculation::of::<AnsiB1119Distance>(),
    Calculation::of::<BeamCrosstalkSpacing>(),
    Calculation::of::<BeamExcessGain>(),
    Calculation::of::<BhmaPowerFailForce>(),
    Calculation::of::<BodyStiffness>(),
    Calculation::of::<ChildHeight>(),
    Calculation::of::<ChildWalkingSpeed>(),
    Calculation::of::<ContactSensorPlace>(),
    Calculation::of::<ControlDistance>(),
    Calculation::of::<CpscEntrapmentOpening>(),
    Calculation::of::<DesignVehicle>(),
    Calculation::of::<EdgeImpactForce>(),
    Calculation::of::<EdgePeakForce>(),
    Calculation::of::<En12453ClosingTestPoints>(),
    Calculation::of::<En12453ForceMeter>(),
    Calculation::of::<En12453ForceTrace>(),
    Calculation::of::<En12453MinimumLevel>(),
    Calculation::of::<En12453OpeningTestPoint>(),
    Calculation::of::<En12453PeakForce>(),
    Calculation::of::<En12453TestBody>(),
    Calculation::of::<EntrapmentAlarm>(),
    Calculation::of::<EntrapmentProtectionCount>(),
    Calculation::of::<EntrapmentProtectionRecalled>(),
    Calculation::of::<F2200Construction>(),
    Calculation::of::<F2200Fall>(),
    Calculation::of::<F2200Opening>(),
    Calculation::of::<F2200Protrusion>(),
    Calculation::of::<FireClearWay>(),
    Calculation::of::<ForceMeasurementMean>(),
    Calculation::of::<FrontAxleTurningRadius>(),
    Calculation::of::<GateBeyondLanes>(),
    Calculation::of::<HoldToRunOvertravel>(),
    Calculation::of::<Iso13854Gap>(),
    Calculation::of::<Iso138552010BeamDistance>(),
    Calculation::of::<Iso138552010MinimumDistance>(),
    Calculation::of::<Iso138552010ParallelDistance>(),
    Calculation::of::<Iso138552024ParallelDistance>(),
    Calculation::of::<Iso13855CrawlUnder>(),
    Calculation::of::<Iso13857Around>(),
    Calculation::of::<Iso13857Reach>(),
    Calculation::of::<Iso13857Upward>(),
    Calculation::of::<Iso13857WholeBody>(),
    Calculation::of::<LoopDetectionHeight>(),
    Calculation::of::<LoopGateClearance>(),
    Calculation::of::<LoopTurns>(),
    Calculation::of::<LoopWire>(),
    Calculation::of::<LowEnergySwingTime>(),
    Calculation::of::<Osha1910217Distance>(),
    Calculation::of::<ReflectiveSurfaceDistance>(),
    Calculation::of::<ScannerPointSpacing>(),
    Calculation::of::<SignLetterHeight>(),
    Calculation::of::<SlideEntrapmentZone>(),
    Calculation::of::<SlideGateGap>(),
    Calculation::of::<SwingEntrapmentZone>(),
    Calculation::of::<SwingLeafSweep>(),
    Calculation::of::<SwingPivotEntrapmentZone>(),
    Calculation::of::<SwingSideEntrapmentZone>(),
    Calculation::of::<TurningRing>(),
    Calculation::of::<Ul325MeansPair>(),
    Calculation::of::<Ul325Reversal>(),
    Calculation::of::<Ul325SpeedLimit>(),
    Calculation::of::<Ul325TypesBefore2016>(),
    Calculation::of::<Ul325UsageClass>(),
    Calculation::of::<UnnoticedFailure>(),
    Calculation::of::<VehicleClearanceTime>(),
    Calculation::of::<VehicleGapInBeam>(),
    Calculation::of::<WalkingClearanceTime>(),
    Calculation::of::<WarningPlacards>(),
];

/// The case files of this discipline: name and text.
pub(crate) const CASES: &[(&str, &str)] = cases![
    "protection":
    "ada_closing_time",
    "ada_gate_dimension",
    "ada_operating_force",
    "ada_reach",
    "adult_dimension",
    "adult_walking_speed",
    "ansi_b11_19_distance",
    "beam_crosstalk_spacing",
    "beam_excess_gain",
    "bhma_power_fail_force",
    "body_stiffness",
    "child_height",
    "child_walking_speed",
    "contact_sensor_place",
    "control_distance",
    "cpsc_entrapment_opening",
    "design_vehicle",
    "edge_impact_force",
    "edge_peak_force",
    "en12453_closing_test_points",
    "en12453_force_meter",
    "en12453_force_trace",
    "en12453_minimum_level",
    "en12453_opening_test_point",
    "en12453_peak_force",
    "en12453_test_body",
    "entrapment_alarm",
    "entrapment_protection_count",
    "entrapment_protection_recalled",
    "f2200_construction",
    "f2200_fall",
    "f2200_opening",
    "f2200_protrusion",
    "fire_clear_way",
    "force_measurement_mean",
    "front_axle_turning_radius",
    "gate_beyond_lanes",
    "hold_to_run_overtravel",
    "iso13854_gap",
    "iso13855_2010_beam_distance",
    "iso13855_2010_minimum_distance",
    "iso13855_2010_parallel_distance",
    "iso13855_2024_parallel_distance",
    "iso13855_crawl_under",
    "iso13857_around",
    "iso13857_reach",
    "iso13857_upward",
    "iso13857_whole_body",
    "loop_detection_height",
    "loop_gate_clearance",
    "loop_turns",
    "loop_wire",
    "low_energy_swing_time",
    "osha_1910_217_distance",
    "reflective_surface_distance",
    "scanner_point_spacing",
    "sign_letter_height",
    "slide_entrapment_zone",
    "slide_gate_gap",
    "swing_entrapment_zone",
    "swing_leaf_sweep",
    "swing_pivot_entrapment_zone",
    "swing_side_entrapment_zone",
    "turning_ring",
    "ul325_means_pair",
    "ul325_reversal",
    "ul325_speed_limit",
    "ul325_types_before_2016",
    "ul325_usage_class",
    "unnoticed_failure",
    "vehicle_clearance_time",
    "vehicle_gap_in_beam",
    "walking_clearance_time",
    "warning_placards",
];
