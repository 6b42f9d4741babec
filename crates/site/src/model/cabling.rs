//! Cables and the conduits they run in.

use crate::model::{
    CableScreen, Channel, Cords, FittedPlug, FlexLife, Jacket, Laid, LaidCable, MadeJoint,
    MovingCable, ProvedConduit, Spare,
};
use crate::{Id, Price, Text};
use quantity::{
    Angle, ConductorSize, Force, ForcePerLength, Length, MassPerLength, Measured, Ratio,
    Temperature,
};

site_words! {
    /// What a cable carries.
    pub enum Carries {
        /// Mains.
        Mains = "mains",
        /// Low-voltage power.
        Power = "power",
        /// Data, with or without power over it.
        Data = "data",
        /// Signals of devices and controls.
        Signal = "signal",
        /// A loop's lead-in.
        LoopLeadIn = "loop lead-in",
    }
}

site_words! {
    /// Metal of a conductor.
    pub enum Metal {
        /// Copper.
        Copper = "copper",
        /// Aluminum.
        Aluminum = "aluminum",
    }
}

site_words! {
    /// How a conductor is made up.
    pub enum Stranding {
        /// One solid wire.
        Solid = "solid",
        /// Several wires.
        Stranded = "stranded",
    }
}

site_words! {
    /// What insulation is made of.
    pub enum Insulation {
        /// It softens with heat: PVC, polyethylene.
        Thermoplastic = "thermoplastic",
        /// It does not: cross-linked polyethylene, rubber.
        Thermosetting = "thermosetting",
    }
}

record! {
    /// A cable, one run from end to end.
    pub struct Cable {
        /// Cable number: stays with the cable through every revision.
        id: Id,
        /// Entry of the parts file that it is bought as.
        part: Option<Id>,
        /// What it carries.
        carries: Option<Carries>,
        /// Device, operator, supply, battery, joint or enclosure at its first end: the source of power.
        from: Id,
        /// What is at its second end.
        to: Id,
        /// Cores, or conductors of data pairs.
        cores: Option<u32>,
        /// Conductor size.
        size: Option<ConductorSize>,
        /// Cores joined in parallel for each pole of the power circuit; one when missing.
        cores_per_pole: Option<u32>,
        /// Metal of the conductors.
        metal: Option<Metal>,
        /// Solid or stranded.
        stranding: Option<Stranding>,
        /// Pairs over which power over Ethernet flows: 2 or 4.
        power_pairs: Option<u32>,
        /// Length from end to end, slack included.
        length: Option<Measured<Length>>,
        /// Hottest that the conductor gets.
        hottest: Option<Measured<Temperature>>,
        /// Diameter over the sheath.
        diameter: Option<Measured<Length>>,
        /// Mass of each unit of length.
        mass_per_length: Option<Measured<MassPerLength>>,
        /// Greatest pulling tension.
        greatest_tension: Option<Measured<Force>>,
        /// Greatest side-wall load at a bend.
        greatest_side_load: Option<Measured<ForcePerLength>>,
        /// Conduits that it runs through, in order from its first end.
        route: Vec<Id>,
        /// Fuse at its first end; that of the device at its second end when missing.
        fuse: Option<Id>,
        /// What its insulation is made of.
        insulation: Option<Insulation>,
        /// Temperature that its insulation stands for good.
        insulation_rating: Option<Measured<Temperature>>,
        /// The poles change places between its two ends.
        crossed: Option<bool>,
        /// Price of the length below.
        price: Option<Price>,
        /// Length that the price is for.
        price_length: Option<Measured<Length>>,
        /// The channel that it is, where it is a data cable.
        channel: Option<Channel>,
        /// Its patch cords, where it is a data cable of copper.
        cords: Option<Cords>,
        /// What is there for the next line on the same way.
        spare: Option<Spare>,
        /// Why it has no surge protector, where it leaves an enclosure without one.
        no_protector: Option<Text>,
        /// Remarks.
        note: Option<Text>,
        /// What it stands, by its data sheet or the print on its jacket.
        jacket: Option<Jacket>,
        /// The plug that is on it before it is pulled.
        plug: Option<FittedPlug>,
        /// What it is made for where it moves, by its data sheet.
        flex: Option<FlexLife>,
        /// How it lies here.
        laid: Option<LaidCable>,
        /// Where its screen is earthed.
        screen: Option<CableScreen>,
        /// How its joint on the way is made; a loop's lead-in is joined to its loop.
        joined: Option<MadeJoint>,
        /// How it goes on to what moves.
        moving: Option<MovingCable>,
    }
}

site_words! {
    /// What a conduit is made of.
    pub enum ConduitKind {
        /// Electrical metallic tubing.
        Emt = "EMT",
        /// Rigid metal conduit.
        Rmc = "RMC",
        /// Rigid PVC, schedule 40.
        Pvc40 = "PVC-40",
        /// Rigid PVC, schedule 80.
        Pvc80 = "PVC-80",
    }
}

record! {
    /// A conduit between two pull points.
    pub struct Conduit {
        /// Name, unique on the site.
        id: Id,
        /// What it is made of.
        kind: Option<ConduitKind>,
        /// Trade size, such as `"1-1/4"`.
        trade_size: Option<Text>,
        /// Inside diameter, where it is not a listed trade size.
        bore: Option<Measured<Length>>,
        /// Where it begins, in words or as an id.
        from: Option<Text>,
        /// Where it ends.
        to: Option<Text>,
        /// Cover from its top to the finished surface.
        burial_depth: Option<Measured<Length>>,
        /// Friction between cable and conduit, with the lubricant used.
        friction: Option<Measured<Ratio>>,
        /// It lies under a lane.
        under_lane: Option<bool>,
        /// Straight pieces and bends, in order from its beginning.
        segment: Vec<Segment>,
        /// Remarks.
        note: Option<Text>,
        /// What was found of it before any cable went in.
        proved: Option<ProvedConduit>,
        /// How it is laid and closed.
        laid: Option<Laid>,
    }
}

record! {
    /// A straight piece of conduit, or a bend, or both: the straight piece comes first.
    pub struct Segment {
        /// Length of the straight piece.
        straight: Option<Measured<Length>>,
        /// Rise along the straight piece for each unit of its length; positive when it climbs away from the beginning.
        slope: Option<crate::Signed<Ratio>>,
        /// Angle of the bend after it.
        bend: Option<Measured<Angle>>,
        /// Radius of the bend to the center line.
        radius: Option<Measured<Length>>,
    }
}
