//! What is cut to length: bars and tubes, reels of cable, and where lengths of track and rack are joined.

use crate::{Id, Price, Section, Signed, Text};
use quantity::{Length, Measured};

record! {
    /// Bars, rods, tubes, rails or pipes of one kind, and what is cut from them.
    pub struct BarStock {
        /// Name, unique on the site.
        id: Id,
        /// What it is: `"track rail, flat-bottomed"`.
        what: Text,
        /// Section of the leaf's members that are cut from it, as it is written there.
        section: Option<Section>,
        /// Width that one cut of the saw takes.
        kerf: Option<Measured<Length>>,
        /// What is cut off each end of a new bar to have it square, the saw cut counted in.
        end_trim: Option<Measured<Length>>,
        /// Longest length that can be brought to the site and handled there.
        longest_carried: Option<Measured<Length>>,
        /// Shortest off-cut that goes back to the van; what is shorter is scrap.
        least_kept: Option<Measured<Length>>,
        /// The lengths that it comes in, and those that are there already.
        bar: Vec<StockLength>,
        /// Pieces beside those of the leaf's members and of what is joined.
        piece: Vec<CutPiece>,
    }
}

record! {
    /// A length that is bought, or there already.
    pub struct StockLength {
        /// Its length.
        length: Option<Measured<Length>>,
        /// What a new one costs.
        price: Option<Price>,
        /// How many are there already: they cost nothing.
        on_hand: Option<u32>,
        /// How many new ones can be had, where that is limited.
        at_most: Option<u32>,
    }
}

record! {
    /// Pieces of one length.
    pub struct CutPiece {
        /// What they are for.
        what: Text,
        /// Length of one.
        length: Option<Measured<Length>>,
        /// How many.
        count: Option<u32>,
    }
}

record! {
    /// The reels that the runs of one cable are cut from, each run in one piece.
    pub struct CableReels {
        /// Name, unique on the site.
        id: Id,
        /// Entry of the parts file that the runs are bought as.
        of: Text,
        /// What is left at each end of a run beyond its length, for one new termination.
        spare_each_end: Option<Measured<Length>>,
        /// The reels that it comes on, and those that are there already.
        reel: Vec<StockLength>,
    }
}

site_words! {
    /// What is joined from lengths along the travel.
    pub enum JoinedKind {
        /// Track on the ground, under wheels that move with the leaf.
        Track = "track",
        /// Rail in a leaf that rides on trolleys, or upright rails in which a leaf rises.
        Rail = "rail",
        /// Rack on the leaf, over a pinion.
        Rack = "rack",
    }
}

record! {
    /// Track, rail or rack of several lengths. Places are along the travel with the gate closed: along x, or up of a lift.
    pub struct Joined {
        /// Name, unique on the site.
        id: Id,
        /// The gate that it belongs to.
        gate: Id,
        /// What it is.
        kind: JoinedKind,
        /// Bars that its lengths are cut from.
        bar_stock: Option<Id>,
        /// Where it begins.
        begins: Option<Signed<Length>>,
        /// Where it ends.
        ends: Option<Signed<Length>>,
        /// Where its joints are; none where it is one length.
        joint_at: Vec<Signed<Length>>,
        /// Where wheels, trolleys or the pinion bear on it with the gate closed.
        loaded_at: Vec<Signed<Length>>,
        /// Least distance of a joint from a place where they rest, and from a joint of the ground.
        least_distance: Option<Measured<Length>>,
        /// Joints of the ground or the beam below it.
        ground_joint_at: Vec<Signed<Length>>,
        /// Its joints are set with a piece of rack laid across them as a gauge.
        set_with_gauge: Option<bool>,
    }
}
