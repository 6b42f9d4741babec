//! The price book: what things cost, where they come from, what is on the van, which tools there are, what an hour costs,
//! and how long tasks really took. It stands in a file of its own that several sites share, and no customer's paper shows it.

use crate::model::TaskKind;
use crate::{Date, Id, Percent, Price, Text};
use quantity::{ConductorSize, Length, Mass, Measured, Pressure, Time, Torque, Volume};

site_words! {
    /// What tax is paid on.
    pub enum Taxed {
        /// The price: the customer pays it on top.
        Price = "the price",
        /// What is bought for the job: it is part of its cost.
        Bought = "what is bought",
        /// Nothing.
        Nothing = "nothing",
    }
}

site_words! {
    /// What an item that has no entry of its own on the site serves as.
    pub enum ServesAs {
        /// Concrete.
        Concrete = "concrete",
        /// Steel, aluminum or wood of a section, by length.
        Section = "section",
        /// Conduit, by length.
        Conduit = "conduit",
        /// Bend of conduit.
        Bend = "conduit bend",
        /// Coupling of conduit.
        Coupling = "conduit coupling",
        /// Bushing or bell end of a conduit.
        ConduitEnd = "conduit end",
        /// Compound or plug that seals a conduit's end.
        Seal = "conduit seal",
        /// Tape that warns of a line below.
        WarningTape = "warning tape",
        /// Cord left in a conduit for the next cable.
        PullCord = "pull cord",
        /// Pulling lubricant.
        Lubricant = "pulling lubricant",
        /// Gland of a cable.
        Gland = "cable gland",
        /// Ferrule of a stranded core.
        Ferrule = "ferrule",
        /// Plug or jack of a data cable.
        DataPlug = "data plug",
        /// Label of one end of a cable.
        CableLabel = "cable label",
        /// Label of a device, an operator or a fuse.
        DeviceLabel = "device label",
        /// Adhesive of anchors, by cartridge; it fits the anchor's entry of the parts file.
        Adhesive = "adhesive",
        /// Sign.
        Sign = "sign",
    }
}

record! {
    /// What things cost, where they come from, what is on the van, and how long tasks really took.
    pub struct PriceBook {
        /// What hours and driving cost, and what is added.
        rates: Option<Rates>,
        /// What can be bought.
        item: Vec<Item>,
        /// Tools, test gear and machines.
        tool: Vec<Tool>,
        /// Tasks that were done: hours planned and hours worked.
        worked: Vec<Worked>,
        /// Remarks.
        note: Option<Text>,
    }
}

record! {
    /// What hours and driving cost, and what is added.
    pub struct Rates {
        /// What one of the owner's own hours costs.
        hour: Option<Price>,
        /// What one hour of a helper costs.
        helper_hour: Option<Price>,
        /// What driving the distance below costs, time left out.
        driving: Option<Price>,
        /// Distance that this is for.
        driving_distance: Option<Measured<Length>>,
        /// Overhead: insurance, van, office, on what the job costs.
        overhead: Option<Percent>,
        /// Risk, on what the job costs.
        risk: Option<Percent>,
        /// Profit, on all cost.
        markup: Option<Percent>,
        /// Rate of the tax.
        tax: Option<Percent>,
        /// What the tax is paid on.
        taxed: Option<Taxed>,
    }
}

record! {
    /// Something that can be bought.
    pub struct Item {
        /// Its number or name, unique in the price book.
        id: Id,
        /// What it is, as it is ordered.
        what: Text,
        /// Names of the things, or of the entries of parts files, that it is.
        of: Vec<Id>,
        /// What it serves as, where no thing of the site has it as a part.
        serves_as: Option<ServesAs>,
        /// What it fits, as the site writes it: section, or kind and trade size of a conduit.
        fits: Option<Text>,
        /// Conductor that it fits.
        conductor: Option<ConductorSize>,
        /// Least diameter that it fits.
        least_diameter: Option<Measured<Length>>,
        /// Greatest diameter that it fits.
        greatest_diameter: Option<Measured<Length>>,
        /// Pieces in one pack; one where missing.
        pack: Option<u32>,
        /// Length that one has, where it is used by length.
        length: Option<Measured<Length>>,
        /// Volume that one gives, where it is used by volume.
        volume: Option<Measured<Volume>>,
        /// What is lost of it.
        waste: Option<Percent>,
        /// Pieces that stay with the owner as spares.
        spare: Option<u32>,
        /// What one pack costs.
        price: Option<Price>,
        /// Who supplies it: electrical wholesaler, steel yard, post.
        supplier: Option<Text>,
        /// Time from the order to the day on which it is there.
        lead_time: Option<Measured<Time>>,
        /// Pieces, or pieces of its length, on the van; none where missing.
        on_van: Option<u32>,
    }
}

record! {
    /// A tool, a piece of test gear, or a machine.
    pub struct Tool {
        /// Its name, unique in the price book.
        id: Id,
        /// What it is.
        what: Text,
        /// Day up to which its calibration counts, where it measures.
        calibrated_until: Option<Date>,
        /// Diameter of the hole that it makes.
        diameter: Option<Measured<Length>>,
        /// Depth to which it reaches.
        reach: Option<Measured<Length>>,
        /// Least torque that it sets.
        least_torque: Option<Measured<Torque>>,
        /// Greatest torque that it sets.
        greatest_torque: Option<Measured<Torque>>,
        /// Width that it needs to pass, where it is driven in.
        width: Option<Measured<Length>>,
        /// Height that it needs to pass.
        height: Option<Measured<Length>>,
        /// Its mass with what it carries.
        mass: Option<Measured<Mass>>,
        /// Pressure of its tracks or tires on the ground.
        ground_pressure: Option<Measured<Pressure>>,
        /// What its hire costs for the job; none where it is owned.
        hire: Option<Price>,
    }
}

record! {
    /// A task that was done.
    pub struct Worked {
        /// What sort of work it was.
        kind: TaskKind,
        /// The job, in words.
        job: Option<Text>,
        /// Hours that were planned.
        planned: Option<Measured<Time>>,
        /// Hours that it took.
        took: Option<Measured<Time>>,
        /// Day on which it was done.
        on: Option<Date>,
    }
}
