//! Whether the closed leaf covers the opening, and whether it has room when it is open.
//!
//! A slide leaf laps over both ends of the opening when closed, draws back far enough to free all of it, and fits into its
//! run-back. Swing leaves reach across, and keep their thickness from everything that stands near their arc. A leaf that
//! rises clears the tallest vehicle or the room above it.

use super::arc;
use super::room::{overhead, slide};
use crate::asking::{Asking, read};
use crate::check::{BOTH, Check, GEOMETRY, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use site::{Gate, GateKind, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "leaf-covers-and-has-room",
    codes: BOTH,
    leaves_open: "things that are not on the site file, branches and snow in the arc, and where the stops were set in the end",
    concerns: "each gate",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            room(asking, site, gate)
        });
    }
}

fn room<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    asking.rest_on(&GEOMETRY);
    let comparisons = match gate.kind {
        GateKind::TrackSlide | GateKind::CantileverSlide => slide(asking, gate)?,
        GateKind::SingleSwing | GateKind::DoubleSwing => {
            let across = across(asking, gate);
            let free = arc::nearest(asking, gate);
            let mut all = vec![across?];
            all.extend(free?);
            all
        }
        GateKind::VerticalPivot | GateKind::VerticalLift | GateKind::BarrierArm => {
            let across = across(asking, gate);
            let above = overhead(asking, site, gate);
            let mut all = vec![across?];
            all.extend(above?);
            all
        }
    };
    asking.say(|print| {
        let parts: Vec<String> = comparisons
            .iter()
            .map(|one| {
                format!(
                    "{} {}, {} {}",
                    one.demand.label,
                    print.value(&one.demand.value),
                    one.capacity.label,
                    print.value(&one.capacity.value)
                )
            })
            .collect();
        format!("At {}: {}.", gate.id, parts.join("; "))
    });
    Outcome::worst(comparisons).ok_or(Halt)
}

/// The leaves together against the opening.
fn across<'s>(asking: &mut Asking<'s>, gate: &'s Gate) -> Result<Comparison, Halt> {
    let opening = read!(asking, gate.clear_opening);
    let lengths = lengths(asking, gate)?;
    let label = match lengths.as_slice() {
        [_] => "length of the leaf",
        _ => "leaves together",
    };
    let together = lengths
        .into_iter()
        .reduce(|sum, length| sum + length)
        .ok_or(Halt)?;
    Ok(Comparison::at_most(
        Labeled::new("opening", opening?),
        Labeled::new(label, together),
    ))
}

/// Length of each leaf.
pub(super) fn lengths<'s>(
    asking: &mut Asking<'s>,
    gate: &'s Gate,
) -> Result<Vec<quantity::Length>, Halt> {
    if gate.leaf.is_empty() {
        return asking.lack(
            &gate.origin,
            "leaf",
            crate::asking::Wants::Written("[{ id = \"leaf\", length = \"20 ft\" }]"),
        );
    }
    let lengths: Vec<_> = gate
        .leaf
        .iter()
        .map(|leaf| read!(asking, leaf.length))
        .collect();
    lengths.into_iter().collect()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::check::testing::only;
    use crate::{Standing, Verdict};

    const SLIDE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        clear_opening = "20 ft ± 1/4 in"
        travel = "20 ft 8 in"
        run_back = "24 ft"
        [[gate.leaf]]
        id = "leaf"
        length = "21 ft 6 in"
        closed_end = "-3 in"
    "#;

    const SWING: &str = r#"
        [site]
        name = "Test court"
        code_basis = "eu"
        [[gate]]
        id = "court"
        kind = "double-swing"
        clear_opening = "4.2 m"
        travel_angle = "90°"
        swings = "into the property"
        [[gate.leaf]]
        id = "left"
        length = "2.13 m"
        thickness = "45 mm"
        [[gate.leaf]]
        id = "right"
        length = "2.13 m"
        thickness = "45 mm"
        [[gate.nearby]]
        id = "wall"
        what = "wall behind the open leaf"
        from = ["-0.75 m", "0.4 m", "0 m"]
        to = ["-0.75 m", "3.8 m", "0 m"]
    "#;

    const ARM: &str = r#"
        [site]
        name = "Test lot"
        code_basis = "us"
        [[gate]]
        id = "lane"
        kind = "barrier-arm"
        clear_opening = "10 ft"
        overhead_room = "15 ft"
        [[gate.leaf]]
        id = "arm"
        length = "11 ft"
        height = "4 in"
        ground_clearance = "34 in"
    "#;

    #[test]
    fn holds_where_it_laps_over_both_ends_and_fits() {
        let finding = only(&CHECK, SLIDE);
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
        assert_eq!(only(&CHECK, SWING).standing, Standing::Holds);
        assert_eq!(only(&CHECK, ARM).standing, Standing::Holds);
    }

    #[test]
    fn fails_in_a_short_run_back_and_with_a_short_travel() {
        // The open leaf reaches −3 in + 20 ft 8 in + 21 ft 6 in − 20 ft = 21 ft 11 in beyond the opening.
        for short in [("24 ft", "21 ft 10 in"), ("20 ft 8 in", "20 ft 2 in")] {
            let finding = only(&CHECK, &SLIDE.replace(short.0, short.1));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
    }

    #[test]
    fn fails_against_a_wall_in_the_arc_and_a_low_ceiling() {
        let wall = SWING.replace("-0.75 m", "0.6 m");
        let finding = only(&CHECK, &wall);
        assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        let low = only(&CHECK, &ARM.replace("15 ft", "13 ft"));
        assert_eq!(low.verdict, Verdict::Fails, "{}", low.sentence);
    }

    #[test]
    fn a_wall_on_the_other_side_is_no_matter() {
        let road = SWING
            .replace("\"0.4 m\"", "\"-0.4 m\"")
            .replace("\"3.8 m\"", "\"-3.8 m\"");
        assert_eq!(only(&CHECK, &road).verdict, Verdict::Holds);
    }

    #[test]
    fn unknown_without_travel_and_run_back() {
        let bare = SLIDE
            .replace("travel = \"20 ft 8 in\"", "")
            .replace("run_back = \"24 ft\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
