//! Data, radio, cameras, vehicles and lanes.

mod bus_idle;
mod bus_poll;
mod bus_reach;
mod bus_stub;
mod camera_ground;
mod channel_length;
mod clock_drift;
mod control_signal_limit;
mod convex_mirror_image;
mod curve_widening;
mod design_vehicle_axles;
mod early_itu_foliage;
mod eirp_of_field_strength;
mod field_reach;
mod focal_length;
mod foliage;
mod free_space_loss;
mod fresnel_radius;
mod full_lane;
mod grade_break_room;
mod image_detail_2015;
mod image_detail_2025;
mod infrared_excess;
mod intersection_sight_distance;
mod knife_edge_loss;
mod lines_blocked;
mod link_budget;
mod loop_at_detector;
mod loop_frequency;
mod loop_guide_inductance;
mod loop_inductance;
mod loop_lead_in;
mod loop_over_steel;
mod loop_vehicle_share;
mod motion_blur;
mod off_tracking;
mod off_tracking_small_angle;
mod one_lane_queue;
mod osdp_frame;
mod picture_angle;
mod pixel_size;
mod plane_earth_loss;
mod plate_view;
mod poe_class;
mod poe_power;
mod queue_length;
mod radiated_power;
mod radio_band;
mod radio_range;
mod rain_loss;
mod rate;
mod receiver_sensitivity;
mod rectangle;
mod shared_queue;
mod sight_to_stop;
mod sound_level;
mod stopping_sight_distance;
mod stream_storage;
mod supervised_loop;
mod trailer_straightens;
mod turning_by_lock;
mod turning_circle;
mod uneven_queue;
mod wave;
mod weissberger_foliage;
mod woodland_loss;

pub use bus_idle::{BusIdle, BusIdles};
pub use bus_poll::{BusPoll, BusPolls};
pub use bus_reach::{BusReach, BusReached};
pub use bus_stub::{BusStub, BusStubs};
pub use camera_ground::{CameraGround, GroundSeen};
pub use channel_length::{ChannelLength, ChannelLengths, PairScreen};
pub use clock_drift::{ClockDrift, ClockError};
pub use control_signal_limit::{ControlFields, ControlSignalLimit};
pub use convex_mirror_image::{ConvexMirrorImage, MirrorImage};
pub use curve_widening::{CurveWidening, WidthInCurve};
pub use design_vehicle_axles::{AxledVehicle, DesignVehicleAxles, VehicleAxles};
pub use early_itu_foliage::{EarlyItuFoliage, FoliageLoss};
pub use eirp_of_field_strength::{EirpOfFieldStrength, Radiated};
pub use field_reach::{FieldReach, ReachOnGround};
pub use focal_length::{FocalLength, LensesThatServe};
pub use free_space_loss::{FreeSpaceLoss, PathLoss};
pub use fresnel_radius::{FresnelRadius, FresnelZone};
pub use full_lane::{FullLane, TurnedAway};
pub use grade_break_room::{GradeBreakRoom, RoomOnBreak};
pub use image_detail_2015::{DetailNeeded2015, ImageDetail2015, Purpose2015};
pub use image_detail_2025::{Detail2025, DetailNeeded2025, ImageDetail2025};
pub use infrared_excess::{InfraredExcess, UnevenLight};
pub use intersection_sight_distance::{
    GapVehicle, IntersectionSightDistance, Maneuver, RoadInView,
};
pub use knife_edge_loss::{EdgeLoss, KnifeEdgeLoss};
pub use lines_blocked::{CallsLost, LinesBlocked};
pub use link_budget::{LinkBudget, LinkMargin};
pub use loop_at_detector::{AtDetector, LoopAtDetector};
pub use loop_frequency::{LoopFrequency, TunedLoop};
pub use loop_guide_inductance::{GuideInductance, LoopGuideInductance};
pub use loop_inductance::{InductanceOfLoop, LoopInductance};
pub use loop_lead_in::{LeadIn, LoopLeadIn};
pub use loop_over_steel::{LoopOverSteel, OverSteel};
pub use loop_vehicle_share::{LoopVehicleShare, VehicleShare};
pub use motion_blur::{Blur, MotionBlur};
pub use off_tracking::{OffTracked, OffTracking};
pub use off_tracking_small_angle::{OffTrackedRoughly, OffTrackingSmallAngle};
pub use one_lane_queue::{LaneQueue, OneLaneQueue};
pub use osdp_frame::{Channel, OsdpFrame, OsdpFrameLength};
pub use picture_angle::{LensAngle, PictureAngle};
pub use pixel_size::{PixelAtDistance, PixelSize};
pub use plane_earth_loss::{GroundPath, PlaneEarthLoss};
pub use plate_view::{PlateInPicture, PlateView};
pub use poe_class::{PoeClass, poe_class};
pub use poe_power::{PoeArrival, PoePower, PoweredPairs};
pub use queue_length::{QueueLength, RareQueue};
pub use radiated_power::{RadiatedPower, RadiatedPowers};
pub use radio_band::{CountedAt, RadioBand, radio_bands};
pub use radio_range::{RadioRange, Reach};
pub use rain_loss::{Polarization, RainLoss, RainTakes};
pub use receiver_sensitivity::{ReceiverSensitivity, Sensitivity};
pub use shared_queue::{SharedQueue, SharedWait};
pub use sight_to_stop::{SightToStop, WayToStop};
pub use sound_level::{SoundLevel, SoundLevels};
pub use stopping_sight_distance::{DriverStop, StoppingSightDistance};
pub use stream_storage::{Stored, StreamStorage};
pub use supervised_loop::{LoopBands, SupervisedLoop};
pub use trailer_straightens::{StillAskew, TrailerStraightens};
pub use turning_by_lock::{CircleByLock, TurningByLock};
pub use turning_circle::{CircleNeeded, TurningCircle};
pub use uneven_queue::{UnevenQueue, UnevenWait};
pub use weissberger_foliage::{DryFoliageLoss, WeissbergerFoliage};
pub use woodland_loss::{WoodLoss, WoodlandLoss};

use crate::Calculation;

/// The calculations of this discipline.
pub(crate) const CALCULATIONS: &[Calculation] = &[
    Calculation::of::<PoePower>(),
    Calculation::of::<BusReach>(),
    Calculation::of::<BusStub>(),
    Calculation::of::<BusIdle>(),
    Calculation::of::<OsdpFrame>(),
    Calculation::of::<BusPoll>(),
    Calculation::of::<SupervisedLoop>(),
    Calculation::of::<SoundLevel>(),
    Calculation::of::<FullLane>(),
    Calculation::of::<LinesBlocked>(),
    Calculation::of::<OneLaneQueue>(),
    Calculation::of::<QueueLength>(),
    Calculation::of::<SharedQueue>(),
    Calculation::of::<SightToStop>(),
    Calculation::of::<UnevenQueue>(),
    Calculation::of::<LoopGuideInductance>(),
    Calculation::of::<LoopInductance>(),
    Calculation::of::<LoopLeadIn>(),
    Calculation::of::<LoopOverSteel>(),
    Calculation::of::<LoopVehicleShare>(),
    Calculation::of::<LoopAtDetector>(),
    Calculation::of::<LoopFrequency>(),
    Calculation::of::<FieldReach>(),
    Calculation::of::<ChannelLength>(),
    Calculation::of::<ClockDrift>(),
    Calculation::of::<StreamStorage>(),
    Calculation::of::<PictureAngle>(),
    Calculation::of::<CameraGround>(),
    Calculation::of::<PixelSize>(),
    Calculation::of::<FocalLength>(),
    Calculation::of::<ImageDetail2015>(),
    Calculation::of::<ImageDetail2025>(),
    Calculation::of::<PlateView>(),
    Calculation::of::<MotionBlur>(),
    Calculation::of::<InfraredExcess>(),
    Calculation::of::<FreeSpaceLoss>(),
    Calculation::of::<PlaneEarthLoss>(),
    Calculation::of::<RadioRange>(),
    Calculation::of::<FresnelRadius>(),
    Calculation::of::<KnifeEdgeLoss>(),
    Calculation::of::<EarlyItuFoliage>(),
    Calculation::of::<WeissbergerFoliage>(),
    Calculation::of::<WoodlandLoss>(),
    Calculation::of::<RainLoss>(),
    Calculation::of::<ReceiverSensitivity>(),
    Calculation::of::<EirpOfFieldStrength>(),
    Calculation::of::<RadiatedPower>(),
    Calculation::of::<LinkBudget>(),
    Calculation::of::<ControlSignalLimit>(),
    Calculation::of::<StoppingSightDistance>(),
    Calculation::of::<IntersectionSightDistance>(),
    Calculation::of::<ConvexMirrorImage>(),
    Calculation::of::<TurningCircle>(),
    Calculation::of::<OffTracking>(),
    Calculation::of::<OffTrackingSmallAngle>(),
    Calculation::of::<CurveWidening>(),
    Calculation::of::<TrailerStraightens>(),
    Calculation::of::<TurningByLock>(),
    Calculation::of::<GradeBreakRoom>(),
    Calculation::of::<DesignVehicleAxles>(),
];

/// The case files of this discipline: name and text.
pub(crate) const CASES: &[(&str, &str)] = cases![
    "signal":
    "bus_idle",
    "bus_poll",
    "bus_reach",
    "bus_stub",
    "camera_ground",
    "channel_length",
    "clock_drift",
    "control_signal_limit",
    "convex_mirror_image",
    "curve_widening",
    "design_vehicle_axles",
    "early_itu_foliage",
    "eirp_of_field_strength",
    "field_reach",
    "focal_length",
    "free_space_loss",
    "fresnel_radius",
    "full_lane",
    "grade_break_room",
    "image_detail_2015",
    "image_detail_2025",
    "infrared_excess",
    "intersection_sight_distance",
    "knife_edge_loss",
    "lines_blocked",
    "link_budget",
    "loop_at_detector",
    "loop_frequency",
    "loop_guide_inductance",
    "loop_inductance",
    "loop_lead_in",
    "loop_over_steel",
    "loop_vehicle_share",
    "motion_blur",
    "off_tracking",
    "off_tracking_small_angle",
    "one_lane_queue",
    "osdp_frame",
    "picture_angle",
    "pixel_size",
    "plane_earth_loss",
    "plate_view",
    "poe_power",
    "queue_length",
    "radiated_power",
    "radio_range",
    "rain_loss",
    "receiver_sensitivity",
    "shared_queue",
    "sight_to_stop",
    "sound_level",
    "stopping_sight_distance",
    "stream_storage",
    "supervised_loop",
    "trailer_straightens",
    "turning_by_lock",
    "turning_circle",
    "uneven_queue",
    "weissberger_foliage",
    "woodland_loss",
];
