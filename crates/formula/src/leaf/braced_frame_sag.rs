//! Sag of a braced frame that hangs out from one end.

use crate::OutOfReach;
use crate::check::{not_negative, positive};
use quantity::{Area, Force, ForcePerLength, Length, Pressure, Quantity as _};

formula! {
    /// Sag of the free end of a frame with a top rail, a bottom rail, uprights and one brace in each panel, held at its
    /// other end: a swing leaf from its hinges, a cantilever leaf from its front trolley.
    ///
    /// The frame is a truss of equal panels, its joints taken as pins and all its load on the top rail. Each panel adds
    /// the stretch of its rails, of its brace and of its upright, by the unit load method; for many panels this is the
    /// bending of two chords with I = A·h²/2 and the shear of laced columns. Welded joints stiffen a frame: it sags less
    /// than this. A frame without a brace in every panel sags far more, and is not covered.
    pub struct BracedFrameSag = "braced-frame-sag" in Leaf {
        /// Length that hangs out.
        overhang ("L"): Length,
        /// Height between the middles of the two rails.
        height ("h"): Length,
        /// Panels in that length, each with its brace.
        panels ("n"): u32,
        /// Load at the free end.
        end_load ("P"): Force,
        /// Load spread evenly over the length.
        uniform_load ("w"): ForcePerLength,
        /// Area of the lighter rail.
        rail_area ("A"): Area,
        /// Area of a brace.
        brace_area ("Ad"): Area,
        /// Area of an upright.
        upright_area ("Av"): Area,
        /// Modulus of elasticity.
        elasticity ("E"): Pressure,
    }
    gives
    /// Sag of a braced frame, and the forces in it.
    pub struct FrameSag {
        /// Sag of the free end from the rails.
        by_rails ("δA"): Length,
        /// Sag of the free end from braces and uprights.
        by_braces ("δd"): Length,
        /// Sag of the free end.
        sag ("δ"): Length,
        /// Greatest pull or push in a rail.
        rail_force ("N"): Force,
        /// Greatest pull or push in a brace.
        brace_force ("D"): Force,
    }
    formula "a = L / n, d = √(a² + h²); panel i counts from the free end\nMi = P · i·a + w · (i·a)² / 2, Vi = P + w · (i − ½) · a\nδA = a² / (h² · E · A) · Σ (i · Mi + (i − 1) · Mi₋₁)\nδd = d³ / (h² · E · Ad) · Σ Vi + h / (E · Av) · Σ Vi\nδ = δA + δd, N = Mn / h, D = Vn · d / h"
    valid "One to 200 panels, every panel braced, straight members, stress below yield."
    source { work: "unit load method for trusses; shear of laced columns after Timoshenko", clause: "", evidence: Physics, seen: "the same trusses by the stiffness method, worked apart from this project with numpy" }
    by sag
}

/// Most panels that a frame may have.
const MOST_PANELS: u32 = 200;

fn sag(frame: &BracedFrameSag) -> Result<FrameSag, OutOfReach> {
    check(frame)?;
    let count = f64::from(frame.panels);
    let (height, panel) = (frame.height.base(), frame.overhang.base() / count);
    let (load, spread) = (frame.end_load.base(), frame.uniform_load.base());
    let moment = |at: f64| load * at * panel + spread * (at * panel).powi(2) / 2.0;
    let shear = |at: f64| load + spread * (at - 0.5) * panel;
    let (mut bent, mut sheared) = (0.0, 0.0);
    for at in (1..=frame.panels).map(f64::from) {
        bent += at * moment(at) + (at - 1.0) * moment(at - 1.0);
        sheared += shear(at);
    }
    let brace = panel.hypot(height);
    let (elasticity, rail) = (frame.elasticity.base(), frame.rail_area.base());
    let by_rails = panel.powi(2) / (height.powi(2) * elasticity * rail) * bent;
    let soft_braces = brace.powi(3) / (height.powi(2) * frame.brace_area.base());
    let soft_uprights = height / frame.upright_area.base();
    let by_braces = (soft_braces + soft_uprights) / elasticity * sheared;
    Ok(FrameSag {
        by_rails: Length::from_base(by_rails),
        by_braces: Length::from_base(by_braces),
        sag: Length::from_base(by_rails + by_braces),
        rail_force: Force::from_base(moment(count) / height),
        brace_force: Force::from_base(shear(count) * brace / height),
    })
}

fn check(frame: &BracedFrameSag) -> Result<(), OutOfReach> {
    positive("overhang", frame.overhang, "12 ft")?;
    positive("height", frame.height, "5 ft")?;
    not_negative("end_load", frame.end_load, "200 lbf")?;
    not_negative("uniform_load", frame.uniform_load, "30 lbf/ft")?;
    positive("rail_area", frame.rail_area, "0.84 in²")?;
    positive("brace_area", frame.brace_area, "0.84 in²")?;
    positive("upright_area", frame.upright_area, "0.84 in²")?;
    positive("elasticity", frame.elasticity, "29000 ksi")?;
    if frame.panels == 0 || frame.panels > MOST_PANELS {
        return Err(OutOfReach::new(
            "panels",
            "a braced frame has 1 to 200 panels; one without braces is not covered",
        ));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use crate::Formula as _;
    use proptest::prelude::*;

    fn frame(overhang: f64, panels: u32, end_load: f64, uniform_load: f64) -> BracedFrameSag {
        BracedFrameSag {
            overhang: Length::from_base(overhang),
            height: Length::from_base(1.5),
            panels,
            end_load: Force::from_base(end_load),
            uniform_load: ForcePerLength::from_base(uniform_load),
            rail_area: Area::from_base(5e-4),
            brace_area: Area::from_base(4e-4),
            upright_area: Area::from_base(5e-4),
            elasticity: Pressure::from_base(200e9),
        }
    }

    proptest! {
        #[test]
        fn loads_add_up(overhang in 1.0..10.0, panels in 1u32..12, end in 0.0..2000.0, spread in 0.0..500.0) {
            let both = frame(overhang, panels, end, spread).evaluate().unwrap();
            let one = frame(overhang, panels, end, 0.0).evaluate().unwrap();
            let other = frame(overhang, panels, 0.0, spread).evaluate().unwrap();
            prop_assert!((both.sag - one.sag - other.sag).base().abs() < 1e-12);
        }

        /// With many panels the rails bend as one beam of I = A·h²/2.
        #[test]
        fn many_panels_bend_as_a_beam(overhang in 2.0..10.0, load in 10.0..2000.0) {
            let sag = frame(overhang, 100, load, 0.0).evaluate().unwrap().by_rails;
            let inertia = 5e-4 * 1.5_f64.powi(2) / 2.0;
            let beam = load * overhang.powi(3) / (3.0 * 200e9 * inertia);
            prop_assert!((sag.base() / beam - 1.0).abs() < 1e-3);
        }

        #[test]
        fn stouter_braces_sag_less(overhang in 1.0..10.0, panels in 1u32..12) {
            let thin = frame(overhang, panels, 500.0, 100.0);
            let stout = BracedFrameSag { brace_area: Area::from_base(8e-4), ..thin };
            prop_assert!(stout.evaluate().unwrap().sag < thin.evaluate().unwrap().sag);
        }
    }

    #[test]
    fn a_frame_without_braces_is_refused() {
        assert_eq!(
            frame(3.0, 0, 1.0, 1.0).evaluate().unwrap_err().input,
            "panels"
        );
    }
}
