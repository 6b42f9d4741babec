//! Anchors: how a plate is held to the concrete, what pulls on it, and how each anchor is set.

use crate::{Date, Id, Position, Price, Text};
use quantity::{Area, Force, Length, Measured, Pressure, Ratio, Temperature, Time, Torque, Volume};

site_words! {
    /// What an anchor is.
    pub enum AnchorKind {
        /// Bolt or rod with a head or a nut in the concrete, placed before it.
        HeadedBolt = "headed bolt",
        /// Stud with a head, welded to its plate, placed before the concrete.
        HeadedStud = "headed stud",
        /// Bolt bent to a hook, placed before the concrete.
        HookedBolt = "hooked bolt",
        /// Wedge, sleeve or drop-in that spreads in a drilled hole.
        Expansion = "expansion anchor",
        /// Anchor that grips behind a widened hole.
        Undercut = "undercut anchor",
        /// Screw that cuts its thread in a drilled hole.
        Screw = "screw anchor",
        /// Rod glued into a drilled hole.
        Adhesive = "adhesive anchor",
    }
}

impl AnchorKind {
    /// It is placed before the concrete; the others are set in drilled holes.
    pub fn is_cast_in(self) -> bool {
        matches!(self, Self::HeadedBolt | Self::HeadedStud | Self::HookedBolt)
    }
}

site_words! {
    /// What is between a plate and the concrete.
    pub enum UnderPlate {
        /// The plate sits on the concrete.
        Nothing = "nothing",
        /// A pad of grout.
        Grout = "grout",
        /// Leveling nuts, and air.
        LevelingNuts = "leveling nuts",
    }
}

record! {
    /// Like anchors under one plate. A row runs along the gate line; rows lie one behind another across it.
    pub struct Anchor {
        /// Name of the set, where it has one.
        id: Option<Id>,
        /// Entry of the parts file that the anchors are bought as.
        part: Option<Id>,
        /// What they hold, in words.
        holds: Text,
        /// What stands on the plate, by its name: a post, an operator, a bollard, a device, a box.
        carries: Option<Id>,
        /// Middle of the anchors; missing where it is the middle of the foundation.
        at: Option<Position>,
        /// How many there are.
        count: Option<u32>,
        /// Rows across the gate line; one where missing.
        rows: Option<u32>,
        /// What they are.
        kind: Option<AnchorKind>,
        /// Diameter.
        diameter: Option<Measured<Length>>,
        /// Distance from thread to thread.
        pitch: Option<Measured<Length>>,
        /// Effective embedment.
        embedment: Option<Measured<Length>>,
        /// Distance from the outermost one to the nearest edge.
        edge_distance: Option<Measured<Length>>,
        /// Distance between neighbors in a row.
        spacing: Option<Measured<Length>>,
        /// Distance between rows.
        row_spacing: Option<Measured<Length>>,
        /// Diameter of the circle on which they stand, where they stand on one.
        bolt_circle: Option<Measured<Length>>,
        /// Factored pull on the worst one, where somebody has worked it out.
        pull: Option<Measured<Force>>,
        /// Factored moment that tips the plate along the gate line.
        moment_along: Option<Measured<Torque>>,
        /// Factored moment that tips the plate across the gate line.
        moment_across: Option<Measured<Torque>>,
        /// Factored shove along the gate line.
        shear_along: Option<Measured<Force>>,
        /// Factored shove across the gate line.
        shear_across: Option<Measured<Force>>,
        /// Weight that presses the plate down.
        weight: Option<Measured<Force>>,
        /// Factored force that lifts the plate.
        uplift: Option<Measured<Force>>,
        /// Pull that hangs on the worst anchor all the time.
        lasting_pull: Option<Measured<Force>>,
        /// Earthquake counts for them.
        earthquake: Option<bool>,
        /// Length of the plate along the gate line.
        plate_length: Option<Measured<Length>>,
        /// Width of the plate across the gate line.
        plate_width: Option<Measured<Length>>,
        /// Thickness of the plate.
        plate_thickness: Option<Measured<Length>>,
        /// Yield strength of the plate.
        plate_strength: Option<Measured<Pressure>>,
        /// What is between plate and concrete.
        under_plate: Option<UnderPlate>,
        /// Distance from the concrete to the underside of the plate.
        stand_off: Option<Measured<Length>>,
        /// Distance between neighbors in a row, taped on the plate in hand.
        plate_spacing: Option<Measured<Length>>,
        /// Distance between rows, taped on the plate in hand.
        plate_row_spacing: Option<Measured<Length>>,
        /// Diameter of the holes in the plate.
        plate_hole: Option<Measured<Length>>,
        /// Tensile strength of the steel.
        tensile_strength: Option<Measured<Pressure>>,
        /// Yield strength of the steel.
        yield_strength: Option<Measured<Pressure>>,
        /// The steel stretches before it tears.
        ductile: Option<bool>,
        /// They are tightened against the plate.
        tightened: Option<bool>,
        /// Category of the product's report: 1, 2 or 3.
        category: Option<u32>,
        /// Area with which a head or a nut bears on the concrete.
        bearing_area: Option<Measured<Area>>,
        /// Length of the hook, from its bend to its end.
        hook_length: Option<Measured<Length>>,
        /// Bond stress in cracked concrete, by the product's report.
        bond_cracked: Option<Measured<Pressure>>,
        /// Bond stress in uncracked concrete, by the product's report.
        bond_uncracked: Option<Measured<Pressure>>,
        /// Pull-out strength of one in concrete of 2,500 psi, by the product's report.
        pull_out: Option<Measured<Force>>,
        /// Power to which stronger concrete raises it, by the product's report.
        pull_out_exponent: Option<Measured<Ratio>>,
        /// Coefficient of breakout, by the product's report, in inch-pound units.
        breakout_coefficient: Option<Measured<Ratio>>,
        /// Least edge distance, by the product's report.
        least_edge: Option<Measured<Length>>,
        /// Least spacing, by the product's report.
        least_spacing: Option<Measured<Length>>,
        /// Least thickness of the concrete, by the product's report.
        least_thickness: Option<Measured<Length>>,
        /// Critical edge distance, by the product's report.
        critical_edge: Option<Measured<Length>>,
        /// Diameter of the drilled hole.
        hole_diameter: Option<Measured<Length>>,
        /// Depth of the drilled hole.
        hole_depth: Option<Measured<Length>>,
        /// Depth that the installation sheet asks for.
        sheet_depth: Option<Measured<Length>>,
        /// Diameter that the installation sheet asks for.
        sheet_diameter: Option<Measured<Length>>,
        /// Steps of cleaning that the sheet asks for, one after another.
        cleaning: Vec<Text>,
        /// Every step of cleaning was done on every hole.
        cleaned: Option<bool>,
        /// Torque that the sheet asks for.
        torque: Option<Measured<Torque>>,
        /// Torque that was reached.
        torque_reached: Option<Measured<Torque>>,
        /// Times to harden by the temperature of the concrete, by the sheet.
        cure: Vec<Cure>,
        /// Temperature of the concrete when they were set.
        concrete_temperature: Option<Measured<Temperature>>,
        /// Time from setting to the first load.
        loaded_after: Option<Measured<Time>>,
        /// Day on which they were set.
        set: Option<Date>,
        /// Day after which the adhesive is not to be used.
        use_by: Option<Date>,
        /// Age that the sheet asks of new concrete.
        least_age: Option<Measured<Time>>,
        /// Adhesive in one cartridge.
        cartridge: Option<Measured<Volume>>,
        /// Adhesive lost with each mixing nozzle.
        nozzle_loss: Option<Measured<Volume>>,
        /// What one cartridge costs.
        cartridge_price: Option<Price>,
        /// Load to which one was pulled to prove it.
        proof_pull: Option<Measured<Force>>,
        /// What one costs.
        price: Option<Price>,
    }
}

record! {
    /// A line of the sheet's table of times to harden.
    pub struct Cure {
        /// Temperature of the concrete from which the line counts.
        from: Option<Measured<Temperature>>,
        /// Time to insert the rod.
        work_time: Option<Measured<Time>>,
        /// Time before any load.
        cure_time: Option<Measured<Time>>,
    }
}
