//! What a leaf turns about, what balances it, and how two leaves follow each other.

use crate::{Id, Price, Signed, Text};
use quantity::{Angle, Force, ForcePerLength, Length, Mass, Measured, Ratio, Torque};

record! {
    /// The hinges of a leaf.
    pub struct Hinges {
        /// Name, where it is an entry of a parts file.
        id: Option<Id>,
        /// Entry of the parts file that they are bought as.
        part: Option<Id>,
        /// How many.
        count: Option<u32>,
        /// Distance between the lowest and the highest.
        spacing: Option<Measured<Length>>,
        /// Diameter of the pin.
        pin_diameter: Option<Measured<Length>>,
        /// Friction coefficient at the pin.
        friction: Option<Measured<Ratio>>,
        /// How far the top of the hinge line leans toward the latching side, over its height.
        lean_along: Option<Signed<Ratio>>,
        /// How far the top of the hinge line leans toward the side to which the leaf opens, over its height.
        lean_across: Option<Signed<Ratio>>,
        /// How far the leaf rises over its whole travel on a rising hinge.
        rise: Option<Signed<Length>>,
        /// Weight that one may carry along its pin.
        rated_load: Option<Measured<Force>>,
        /// Pull or push that one may carry across its pin.
        rated_side_load: Option<Measured<Force>>,
        /// Cycles of the gate that the data sheet promises.
        rated_cycles: Option<u32>,
        /// The leaf cannot be lifted off them.
        retained: Option<bool>,
        /// Play at the pin.
        play: Option<Measured<Length>>,
        /// What a set costs.
        price: Option<Price>,
    }
}

site_words! {
    /// What balances a leaf or an arm that rises.
    pub enum BalanceKind {
        /// A mass on the other side of the pivot, or on a rope.
        Counterweight = "counterweight",
        /// A spring wound about a shaft.
        TorsionSpring = "torsion spring",
        /// A spring that is pulled longer.
        ExtensionSpring = "extension spring",
    }
}

record! {
    /// What balances a leaf or an arm that rises.
    pub struct Balance {
        /// What it is.
        kind: BalanceKind,
        /// Mass of the counterweight.
        mass: Option<Measured<Mass>>,
        /// Distance of the counterweight's center from the pivot.
        radius: Option<Measured<Length>>,
        /// By how much its line is turned upward from the arm's line drawn on beyond the pivot.
        offset_angle: Option<Signed<Angle>>,
        /// Torque that a torsion spring gains with each turn.
        torque_per_turn: Option<Measured<Torque>>,
        /// Turns that it is wound with the gate closed.
        turns_closed: Option<Measured<Ratio>>,
        /// Radius of the drum that a torsion spring of a lift turns.
        drum_radius: Option<Measured<Length>>,
        /// Stiffness of an extension spring.
        stiffness: Option<Measured<ForcePerLength>>,
        /// Pull of an extension spring with the gate closed.
        pull_closed: Option<Measured<Force>>,
        /// Distance from the pivot to the spring's hook on the leaf or arm, on the far side of the pivot.
        hook_radius: Option<Measured<Length>>,
        /// Distance from the pivot straight down to the spring's fixed end.
        anchor_depth: Option<Measured<Length>>,
        /// How many springs or ropes share the load.
        count: Option<u32>,
        /// Breaking strength of one rope or chain.
        rope_strength: Option<Measured<Force>>,
        /// A second means holds the leaf when one spring, rope or chain breaks.
        second_means: Option<bool>,
        /// How far the leaf drops before its catch holds it.
        catch_drop: Option<Measured<Length>>,
        /// Drop that the standard or the data sheet allows.
        allowed_drop: Option<Measured<Length>>,
        /// Cycles of the gate that the data sheet promises.
        rated_cycles: Option<u32>,
        /// A counterweight or the tail of an arm runs inside a box or behind a guard over its whole way.
        enclosed: Option<bool>,
    }
}

record! {
    /// In which order two leaves move.
    pub struct LeafOrder {
        /// The leaf whose edge covers the other: first to open, last to close.
        covering: Option<Id>,
        /// How long the other leaf waits while opening.
        opening_delay: Option<Measured<quantity::Time>>,
        /// How long the covering leaf waits while closing.
        closing_delay: Option<Measured<quantity::Time>>,
        /// An event on one leaf stops both.
        stops_both: Option<bool>,
        /// It does not close onto a leaf that stands ajar.
        waits_for_ajar: Option<bool>,
    }
}

record! {
    /// What keeps a leaf up when one hinge, wheel, bracket or weld lets go.
    pub struct FallProtection {
        /// No single failure lets it fall.
        holds_after_one_failure: Option<bool>,
        /// By what: the second path of the load.
        how: Option<Text>,
        /// Greatest lean from upright when it is loose from its hardware.
        greatest_lean: Option<Measured<Angle>>,
    }
}
