//! Peak force of a contact edge by the energy of the leaf.

use super::soft_edge::SoftEdge;
use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Force, ForcePerLength, Length, Mass, Quantity as _, Velocity};

formula! {
    /// Peak force on a body behind a contact edge, by the energy of the leaf and the push of its drive.
    ///
    /// The leaf comes to rest on the edge as if nothing switched it off: the edge takes up the energy of motion and
    /// what the drive goes on pushing. Where a switching edge stops the leaf sooner, `edge-peak-force` tells the way;
    /// the true force is no higher than either. For a swinging leaf take the mass that its inertia stands for at that
    /// radius. It is a prediction: forces are proved by measuring on the gate.
    pub struct EdgeImpactForce = "edge-impact-force" in Protection {
        /// Mass that moves, drive included.
        mass ("m"): Mass,
        /// Speed of the leaf's edge at contact.
        speed ("v"): Velocity,
        /// Force with which the drive goes on pushing.
        push ("P"): Force,
        /// Stiffness of the edge while it is soft.
        soft_stiffness ("k1"): ForcePerLength,
        /// Travel from first touch until the edge is squeezed flat.
        soft_travel ("x1"): Length,
        /// Stiffness once the edge is squeezed flat: of edge, leaf and body together.
        hard_stiffness ("k2"): ForcePerLength,
    }
    gives
    /// Peak force behind a contact edge, by energy.
    pub struct EdgeImpact {
        /// How far the edge is squeezed at the turning point.
        compression ("x"): Length,
        /// Soft travel left then; below zero where the edge is squeezed flat.
        soft_left ("x1 − x"): Length,
        /// Peak force.
        force ("F"): Force,
    }
    formula "½ · m · v² + P · x = ½ · k1 · x² where x ≤ x1\n½ · m · v² + P · x = ½ · k1 · x1² + k1 · x1 · (x − x1) + ½ · k2 · (x − x1)²  otherwise, with the force from x1 on rising by k2\nF = k1 · min(x, x1) + k2 · max(0, x − x1)"
    valid "A body that does not move away, an edge without damping: an upper value."
    source { work: "work and kinetic energy; energy of a spring", clause: "", evidence: Physics, seen: "energy balance at the turning point" }
    by edge_impact
}

fn edge_impact(leaf: &EdgeImpactForce) -> Result<EdgeImpact, OutOfReach> {
    positive("mass", leaf.mass, "640 lb")?;
    not_negative("speed", leaf.speed, "1 ft/s")?;
    not_negative("push", leaf.push, "50 lbf")?;
    let edge = SoftEdge::of(leaf.soft_stiffness, leaf.soft_travel, leaf.hard_stiffness)?;
    let energy = 0.5 * leaf.mass.base() * leaf.speed.base().powi(2);
    let compression = Length::from_base(edge.compression(energy, leaf.push.base()));
    Ok(EdgeImpact {
        compression,
        soft_left: leaf.soft_travel - compression,
        force: Force::from_base(edge.force(compression.base())),
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use crate::motion::StopImpactForce;
    use proptest::prelude::*;

    fn leaf(speed: f64, push: f64, travel: f64, hard: f64) -> EdgeImpactForce {
        EdgeImpactForce {
            mass: Mass::from_base(320.0),
            speed: Velocity::from_base(speed),
            push: Force::from_base(push),
            soft_stiffness: ForcePerLength::from_base(8e3),
            soft_travel: Length::from_base(travel),
            hard_stiffness: ForcePerLength::from_base(hard),
        }
    }

    proptest! {
        #[test]
        fn with_one_stiffness_it_is_a_stop(speed in 0.0..1.0, push in 0.0..900.0, travel in 0.0..0.3) {
            let edge = leaf(speed, push, travel, 8e3);
            let stop = StopImpactForce {
                mass: edge.mass,
                speed: edge.speed,
                push: edge.push,
                stiffness: edge.soft_stiffness,
            };
            let (edge, stop) = (edge.evaluate().unwrap(), stop.evaluate().unwrap());
            prop_assert!((edge.force - stop.force).base().abs() <= 1e-9 * stop.force.base() + 1e-9);
        }

        #[test]
        fn the_energies_balance(speed in 0.01..1.0, push in 0.0..900.0, travel in 0.0..0.1, hard in 8e3..1e6) {
            let edge = leaf(speed, push, travel, hard);
            let x = edge.evaluate().unwrap().compression.base();
            let brought = 0.5 * 320.0 * speed * speed + push * x;
            let (soft, over) = (x.min(travel), (x - travel).max(0.0));
            let taken = 4e3 * soft * soft + 8e3 * soft * over + 0.5 * hard * over * over;
            prop_assert!((taken - brought).abs() < 1e-9 * brought);
        }
    }

    #[test]
    fn a_leaf_without_mass_is_refused() {
        let mut none = leaf(0.3, 100.0, 0.06, 7.5e4);
        none.mass = Mass::from_base(0.0);
        assert_eq!(none.evaluate().unwrap_err().input, "mass");
    }
}
