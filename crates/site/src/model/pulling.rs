//! How cables are pulled, bent, joined and moved, and what their jackets stand.

use crate::Text;
use crate::model::ScreenEarth;
use quantity::{ConductorSize, Force, Length, Measured, Temperature};

record! {
    /// What a cable stands, by its data sheet or the print on its jacket.
    pub struct Jacket {
        /// It is rated for wet places.
        wet: Option<bool>,
        /// It is rated for sunlight.
        sunlight: Option<bool>,
        /// Its core is filled with gel or swelling tape, so that water does not creep along it.
        water_blocked: Option<bool>,
        /// It has a screen around its cores.
        screened: Option<bool>,
        /// Least radius to which it may be bent while it is pulled.
        radius_pulled: Option<Measured<Length>>,
        /// Least radius to which it may be bent for good.
        radius_fixed: Option<Measured<Length>>,
        /// Coldest at which it may be unreeled, pulled and bent.
        coldest_handled: Option<Measured<Temperature>>,
        /// Coldest that it stands once it lies still.
        coldest_fixed: Option<Measured<Temperature>>,
    }
}

record! {
    /// How a cable lies here.
    pub struct LaidCable {
        /// The sun reaches its jacket somewhere.
        in_sun: Option<bool>,
        /// Radius of the tightest turn at either end, by gauge disc, where it is not that of the whole site.
        last_turn: Option<Measured<Length>>,
    }
}

site_words! {
    /// At which ends of a cable a plug is fitted before it is pulled.
    pub enum PlugOn {
        /// At none: it is cut and ended on site.
        None = "none",
        /// At the end that is pulled through, or at both.
        Pulled = "pulled end",
        /// At the end that stays at the reel.
        Trailing = "trailing end",
    }
}

record! {
    /// A plug that is on a cable before it is pulled.
    pub struct FittedPlug {
        /// At which end.
        on: Option<PlugOn>,
        /// Width of it, boot and latch included.
        width: Option<Measured<Length>>,
        /// Height of it.
        height: Option<Measured<Length>>,
        /// Length of the part that does not bend.
        length: Option<Measured<Length>>,
    }
}

record! {
    /// Where the screen of a cable is earthed, and where that was asked for.
    pub struct CableScreen {
        /// Where the papers of the devices at its ends want it earthed; `"nowhere"` where they ask for no screen.
        asked: Option<ScreenEarth>,
        /// Where it is earthed.
        earthed: Option<ScreenEarth>,
        /// It goes on unbroken through every joint and terminal: measured from end to end.
        unbroken: Option<bool>,
        /// Both ends stand on one bonded earth: measured between them.
        one_earth: Option<bool>,
    }
}

site_words! {
    /// What keeps a joint from water, by its package.
    pub enum JointRating {
        /// Dry places only.
        Dry = "dry places",
        /// Rain and damp.
        Wet = "wet places",
        /// Water that stands over it.
        UnderWater = "under water",
    }
}

site_words! {
    /// Where a joint lies.
    pub enum JointPlace {
        /// There is none: one piece from end to end.
        OnePiece = "one piece",
        /// In a closed enclosure above ground.
        Enclosure = "enclosure",
        /// In the open above ground, or in a pedestal that breathes.
        AboveGround = "above ground",
        /// In a handhole or a pit.
        Handhole = "handhole",
        /// In the ground, in a saw cut or in a conduit.
        Buried = "buried",
    }
}

record! {
    /// How a joint is made.
    pub struct MadeJoint {
        /// Where it lies.
        place: Option<JointPlace>,
        /// What it keeps out.
        rating: Option<JointRating>,
        /// Smallest conductor that its kit takes.
        smallest: Option<ConductorSize>,
        /// Largest conductor that its kit takes.
        largest: Option<ConductorSize>,
        /// Height above the floor of the handhole at which it is hung.
        above_floor: Option<Measured<Length>>,
        /// Length of cable with which it comes out to be looked at.
        spare: Option<Measured<Length>>,
        /// Why no longer piece goes without it.
        why: Option<Text>,
    }
}

record! {
    /// What a cable that moves with a leaf is made for, by its data sheet.
    pub struct FlexLife {
        /// Bendings that it lasts.
        cycles: Option<u32>,
        /// Least radius at which it lasts them.
        radius: Option<Measured<Length>>,
        /// Coldest at which it may bend.
        coldest: Option<Measured<Temperature>>,
    }
}

site_words! {
    /// How a cable gets to what moves.
    pub enum MovingWay {
        /// In a cable chain.
        Chain = "cable chain",
        /// In a loop that hangs or lies open to a turn.
        Loop = "loop",
        /// As a coiled cord.
        Coil = "coiled cord",
        /// On a reel with a spring.
        Reel = "spring reel",
    }
}

record! {
    /// How a cable goes on to what moves.
    pub struct MovingCable {
        /// In which way.
        way: Option<MovingWay>,
        /// Smallest radius to which it bends through the travel, taped.
        radius: Option<Measured<Length>>,
        /// Years for which it is to last.
        years: Option<u32>,
        /// Nothing catches, cuts or rubs it, watched through the travel.
        guarded: Option<bool>,
        /// Ice and snow do not hold it: it drains, and hangs free of the ground.
        free_of_ice: Option<bool>,
        /// Its breaking shows: the gate stops, or somebody is told; tried with its plug or terminal off.
        break_shows: Option<bool>,
    }
}

record! {
    /// What was found of a conduit before any cable went in.
    pub struct ProvedConduit {
        /// Diameter of the mandrel or ball that went all through.
        mandrel: Option<Measured<Length>>,
        /// Length from end to end by measuring tape.
        taped: Option<Measured<Length>>,
        /// No water stands in it: swabbed or blown.
        dry: Option<bool>,
        /// No old cable lies in it.
        empty: Option<bool>,
        /// No raw edge rubs the cable at either end: bushing, bell end or plastic.
        ends_smooth: Option<bool>,
    }
}

site_words! {
    /// How a cable is fed into a conduit.
    pub enum FeedBy {
        /// From a reel on a stand that turns by itself.
        Stand = "reel on a stand",
        /// Laid out loose, so that it runs off without a kink.
        Loose = "laid out loose",
        /// From a hand.
        Hand = "by hand",
    }
}

record! {
    /// How cables are pulled on this job.
    pub struct Pulling {
        /// How they are fed in.
        feed: Option<FeedBy>,
        /// Pull that it takes to turn the reel or to drag the loose cable, by a scale.
        drag: Option<Measured<Force>>,
        /// A second person is there to feed or to pull.
        helper: Option<bool>,
        /// What pulls where a hand does not do: `"rope puller on the post"`.
        gear: Option<Text>,
        /// Pull that this gear is set or rated for.
        gear_force: Option<Measured<Force>>,
        /// Coldest at which cables are unreeled, pulled and bent on this job.
        coldest: Option<Measured<Temperature>>,
        /// Radius of the gauge disc to which the last turn of every cable was held.
        last_turn: Option<Measured<Length>>,
    }
}
