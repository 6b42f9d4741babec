//! The powered drive with its controller.

use crate::model::{
    Behavior, CurrentKind, Direction, DriveBox, DrivePart, Leaf, Mounting, TorquePoint, UsageClass,
};
use crate::{Date, Id, Position, Price, Text};
use quantity::{
    ConductorSize, Current, Force, Measured, Power, Ratio, Temperature, Time, Torque, Velocity,
    Voltage,
};

site_words! {
    /// How the operator moves the leaf.
    pub enum DriveKind {
        /// Pinion on a rack along the leaf.
        Rack = "rack",
        /// Chain along the leaf.
        Chain = "chain",
        /// Linear drive that pushes like a jack.
        Linear = "linear",
        /// Articulated drive with a two-piece folding arm.
        Articulated = "articulated",
        /// Underground drive in a box below the hinge.
        Underground = "underground",
        /// Drive of a barrier arm or pivoting leaf.
        Pivot = "pivot",
        /// Hoist of a lifting leaf.
        Hoist = "hoist",
    }
}

record! {
    /// An operator.
    pub struct Operator {
        /// Name, unique on the site.
        id: Id,
        /// Entry of the parts file that it is bought as.
        part: Option<Id>,
        /// The gate it moves.
        gate: Id,
        /// The leaf it moves, where the gate has more than one.
        leaf: Option<Id>,
        /// How it moves the leaf.
        drive: Option<DriveKind>,
        /// Where it stands.
        at: Option<Position>,
        /// Foundation that it stands on.
        foundation: Option<Id>,
        /// Force against speed, from stall to no load.
        curve: Vec<CurvePoint>,
        /// Torque of the output shaft against its speed, from stall to no load.
        torque_curve: Vec<TorquePoint>,
        /// How its pins stand to the hinge line of a swing leaf.
        mounting: Option<Mounting>,
        /// The buried box of an underground drive.
        drive_box: Option<DriveBox>,
        /// What lies between motor and leaf and may break.
        drive_part: Vec<DrivePart>,
        /// Force that it may give without end at cruise speed.
        rated_force: Option<Measured<Force>>,
        /// Torque that it may give without end at cruise speed.
        rated_torque: Option<Measured<Torque>>,
        /// Greatest force at start.
        starting_force: Option<Measured<Force>>,
        /// Greatest torque at start.
        starting_torque: Option<Measured<Torque>>,
        /// Force on an obstacle, by a gauge at the leaf's edge on a calm day, at which it takes the leaf for obstructed.
        obstruction_force: Option<Measured<Force>>,
        /// The same force at the lowest setting with which the leaf still ran its whole travel, both ways.
        lowest_obstruction_force: Option<Measured<Force>>,
        /// From that force to the stop of the drive, by the recording of a force meter.
        obstruction_response: Option<Measured<Time>>,
        /// Directions in which the leaf was run against a solid object, stopped and started back.
        tried_on_solid: Vec<Direction>,
        /// Mass of its turning parts as the leaf feels it.
        rotating_mass: Option<Measured<quantity::Mass>>,
        /// The leaf cannot push it backward.
        self_locking: Option<bool>,
        /// Force that it holds standing, engaged and without power: along the travel of a leaf that slides or lifts, at the
        /// free end of one that turns; of a linear drive on a swing leaf the push of its ram.
        holding_force: Option<Measured<Force>>,
        /// Force at the handle that releases it.
        release_effort: Option<Measured<Force>>,
        /// Force on the leaf over force at the hand, where a crank or a hand chain moves the released leaf.
        hand_gear: Option<Measured<Ratio>>,
        /// Grease or oil does its work from this temperature upward.
        grease_coldest: Option<Measured<Temperature>>,
        /// Least play of rack and pinion on its data sheet.
        least_rack_play: Option<Measured<quantity::Length>>,
        /// Greatest play of rack and pinion on its data sheet.
        greatest_rack_play: Option<Measured<quantity::Length>>,
        /// Greatest mass of leaf on its data sheet.
        rated_mass: Option<Measured<quantity::Mass>>,
        /// Greatest leaf length on its data sheet.
        rated_length: Option<Measured<quantity::Length>>,
        /// Least gap between its moving arm, elbow or ram and the post, the leaf or anything fixed, over the whole travel.
        arm_gap: Option<Measured<quantity::Length>>,
        /// Greatest gap in the same place over the travel.
        arm_gap_widest: Option<Measured<quantity::Length>>,
        /// A cover closes the places where its arm moves, so that no hand gets in.
        arm_covered: Option<bool>,
        /// Mass hung on the bottom edge at which it stops or turns back while it lifts, tried.
        lifts_at_most: Option<Measured<quantity::Mass>>,
        /// Supply voltage on the nameplate.
        voltage: Option<Measured<Voltage>>,
        /// Least voltage at which it still runs.
        least_voltage: Option<Measured<Voltage>>,
        /// Current of the controller with nothing moving.
        standing_current: Option<Measured<Current>>,
        /// Current while moving.
        running_current: Option<Measured<Current>>,
        /// Current at start.
        starting_current: Option<Measured<Current>>,
        /// Greatest voltage that it stands.
        greatest_voltage: Option<Measured<Voltage>>,
        /// Greatest current of its controller in the moment in which power returns; the motor stands.
        inrush: Option<Measured<Current>>,
        /// Kind of current that it takes.
        takes: Option<CurrentKind>,
        /// Thickest conductor that its terminals take.
        largest_conductor: Option<ConductorSize>,
        /// Share of time that it may run.
        duty: Option<Measured<Ratio>>,
        /// Cycles in an hour on its data sheet.
        cycles_per_hour: Option<u32>,
        /// Cycles of the gate that the data sheet promises.
        rated_cycles: Option<u32>,
        /// Temperature up to which its duty is given in full.
        duty_hottest: Option<Measured<Temperature>>,
        /// From a device's report to the start of braking.
        reaction_time: Option<Measured<Time>>,
        /// Speed on battery as a share of the speed on mains.
        battery_speed: Option<Measured<Ratio>>,
        /// Supply that feeds it.
        supply: Option<Id>,
        /// It senses obstructions itself, in each direction (type A).
        inherent_sensing: Option<bool>,
        /// It checks its external protection devices at least once a cycle.
        monitors_devices: Option<bool>,
        /// Sensors that its maker's papers name as compatible, by the names of their entries in the parts file.
        named_sensors: Vec<Text>,
        /// What its controller does, as set and tried on site.
        behavior: Option<Behavior>,
        /// Usage classes that it is listed for.
        listed_for: Vec<UsageClass>,
        /// Lowest air temperature on its data sheet.
        coldest: Option<Measured<Temperature>>,
        /// Highest air temperature on its data sheet.
        hottest: Option<Measured<Temperature>>,
        /// Heat that it gives off standing.
        heat: Option<Measured<Power>>,
        /// Least distance of a control from the moving leaf that its manual asks for; zero where it names none.
        control_distance: Option<Measured<quantity::Length>>,
        /// Day of manufacture on its plate.
        made: Option<Date>,
        /// What it costs.
        price: Option<Price>,
        /// Remarks.
        note: Option<Text>,
    }
}

impl Operator {
    /// It drives this leaf of its gate: it names it, or names none.
    pub fn drives(&self, leaf: &Leaf) -> bool {
        self.leaf.as_ref().is_none_or(|name| *name == leaf.id)
    }
}

record! {
    /// One point of an operator's force-speed curve. Of a linear drive on a swing leaf both are those of its ram, as its
    /// data sheet gives them: the speed at which it runs in or out, and its push at that speed.
    pub struct CurvePoint {
        /// Speed of the leaf; of a linear drive, that of its ram.
        speed: Measured<Velocity>,
        /// Force on the leaf at that speed; of a linear drive, the push of its ram.
        force: Measured<Force>,
    }
}
