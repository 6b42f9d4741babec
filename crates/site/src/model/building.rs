//! Concrete pads and post foundations, and covers in the ground.

use crate::model::{Anchor, BaseOpening, Pit, StubEnd};
use crate::{Date, Id, Position, Text};
use quantity::{Area, Force, Length, Measured, Pressure};

site_words! {
    /// Whether concrete cracks where the anchor sits.
    pub enum ConcreteState {
        /// Cracks are to be expected.
        Cracked = "cracked",
        /// Stays uncracked under service loads.
        Uncracked = "uncracked",
    }
}

record! {
    /// A foundation.
    pub struct Foundation {
        /// Name, unique on the site.
        id: Id,
        /// Center of its top.
        at: Option<Position>,
        /// Length along the gate line.
        length: Option<Measured<Length>>,
        /// Width across the gate line.
        width: Option<Measured<Length>>,
        /// Diameter, where it is round.
        diameter: Option<Measured<Length>>,
        /// Depth.
        depth: Option<Measured<Length>>,
        /// Compressive strength of the concrete.
        strength: Option<Measured<Pressure>>,
        /// How the strength is known: cylinders, cores, rebound hammer, delivery ticket.
        strength_from: Option<Text>,
        /// Whether the concrete cracks where the anchors sit.
        concrete: Option<ConcreteState>,
        /// Lightweight concrete.
        lightweight: Option<bool>,
        /// It was there before this job.
        existing: Option<bool>,
        /// Day on which it was poured.
        poured: Option<Date>,
        /// Greatest size of its stones.
        aggregate: Option<Measured<Length>>,
        /// Concrete over its bars.
        cover: Option<Measured<Length>>,
        /// Its bars, in words.
        bars: Option<Text>,
        /// A bar of No. 4 or 12 mm and more runs along its edges.
        edge_bar: Option<bool>,
        /// Area of the bars near its bottom, across one section.
        bottom_bars: Option<Measured<Area>>,
        /// Yield strength of the bars.
        bar_strength: Option<Measured<Pressure>>,
        /// A slab or pavement that stays closes around it at the ground and holds it.
        held_at_grade: Option<bool>,
        /// Movement of 1/2 in at the ground under short loads does no harm.
        may_move: Option<bool>,
        /// Distance to a bank, a ditch, an open trench or an old footing beside it.
        bank_distance: Option<Measured<Length>>,
        /// Height of that bank or depth of that ditch or trench.
        bank_height: Option<Measured<Length>>,
        /// Water drains from what stands or runs on it.
        drained: Option<bool>,
        /// Anchors in it.
        anchor: Vec<Anchor>,
        /// Conduits that come up through it.
        stub_up: Vec<StubUp>,
        /// What pushes on things that stand on it, beside drive and wind: a bump, a person who leans.
        push: Vec<Push>,
        /// Remarks.
        note: Option<Text>,
        /// The opening in the base of what stands on it.
        opening: Option<BaseOpening>,
    }
}

record! {
    /// A conduit that comes up through a foundation.
    pub struct StubUp {
        /// The conduit.
        conduit: Option<Id>,
        /// Middle of it, at the top of the foundation.
        at: Option<Position>,
        /// Its diameter over all.
        diameter: Option<Measured<Length>>,
        /// How it ends.
        end: Option<StubEnd>,
    }
}

record! {
    /// A push on something that stands on a foundation.
    pub struct Push {
        /// What pushes: `"car backs into the pedestal"`.
        what: Text,
        /// The push, of daily use and not multiplied by load factors.
        force: Option<Measured<Force>>,
        /// Height of it above the top of the foundation.
        height: Option<Measured<Length>>,
    }
}

record! {
    /// A cover over a handhole, a pull box or a pit.
    pub struct Cover {
        /// Name, unique on the site.
        id: Id,
        /// What it covers.
        what: Option<Text>,
        /// Middle of it.
        at: Option<Position>,
        /// Wheels roll over it.
        under_wheels: Option<bool>,
        /// Wheel load that it is rated for.
        rated_load: Option<Measured<Force>>,
        /// The pit or handhole under it.
        pit: Option<Pit>,
    }
}
