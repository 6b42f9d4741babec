//! Whether the track of each slide or lift is level and straight enough for its wheels, and its rack clear of the pinion.

use crate::asking::{Asking, pick, read};
use crate::check::drive::operator_of;
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use quantity::Length;
use site::{DriveKind, Gate, GateKind, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "motion-track-true",
    codes: BOTH,
    leaves_open: "the joints of rack and track, guides out of line with the track, and a track that settles; levels and play are read again at each visit",
    concerns: "each slide or lifting gate",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    use GateKind::{CantileverSlide, TrackSlide, VerticalLift};
    let runs = |gate: &&Gate| matches!(gate.kind, TrackSlide | CantileverSlide | VerticalLift);
    for gate in site.gate.iter().filter(runs) {
        round.ask(About::new(&gate.origin, &gate.id), |asking| {
            track(asking, site, gate)
        });
    }
}

fn track<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Answer {
    asking.rest_on(&DATA_SHEET);
    let level = read!(asking, gate.track?.level_error);
    let line = read!(asking, gate.track?.line_error);
    let allowed = read!(asking, gate.track?.allowed_error);
    let play = play(asking, site, gate);
    let (level, line, allowed, play) = (level?, line?, allowed?, play?);
    asking.say(|print| {
        let rack = play.map_or_else(String::new, |play| {
            format!(
                "; rack and pinion have {} to {} of play where {} to {} is asked",
                print.q(play.least),
                print.q(play.greatest),
                print.q(play.least_asked),
                print.q(play.greatest_asked)
            )
        });
        format!(
            "The track of gate {} is {} off level and {} off a straight line at the worst; its wheels take {}{rack}.",
            gate.id,
            print.q(level),
            print.q(line),
            print.q(allowed)
        )
    });
    let takes = ("departure that the wheels take", allowed);
    let mut all = vec![
        compared(("departure from level", level), takes),
        compared(("departure from a straight line", line), takes),
    ];
    if let Some(play) = play {
        all.push(compared(
            ("least play on the data sheet", play.least_asked),
            ("least play of the rack", play.least),
        ));
        all.push(compared(
            ("greatest play of the rack", play.greatest),
            ("greatest play on the data sheet", play.greatest_asked),
        ));
    }
    Outcome::worst(all).ok_or(Halt)
}

/// Play of rack and pinion: as measured, and as the data sheet asks.
#[derive(Clone, Copy)]
struct Play {
    least: Length,
    greatest: Length,
    least_asked: Length,
    greatest_asked: Length,
}

fn play<'s>(asking: &mut Asking<'s>, site: &'s Site, gate: &'s Gate) -> Result<Option<Play>, Halt> {
    let operator = operator_of(asking, site, gate)?;
    if pick!(asking, operator.drive)? != DriveKind::Rack {
        return Ok(None);
    }
    let least = read!(asking, gate.track?.least_rack_play);
    let greatest = read!(asking, gate.track?.greatest_rack_play);
    let least_asked = read!(asking, operator.least_rack_play);
    let greatest_asked = read!(asking, operator.greatest_rack_play);
    Ok(Some(Play {
        least: least?,
        greatest: greatest?,
        least_asked: least_asked?,
        greatest_asked: greatest_asked?,
    }))
}

fn compared(demand: (&'static str, Length), capacity: (&'static str, Length)) -> Comparison {
    Comparison::at_most(
        Labeled::new(demand.0, demand.1),
        Labeled::new(capacity.0, capacity.1),
    )
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [gate.track]
        level_error = "1/8 in"
        line_error = "1/16 in"
        allowed_error = "1/4 in"
        least_rack_play = "1.2 mm"
        greatest_rack_play = "1.9 mm"
        [[operator]]
        id = "drive"
        gate = "main"
        drive = "rack"
        least_rack_play = "1 mm"
        greatest_rack_play = "2 mm"
    "#;

    #[test]
    fn holds_when_true() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_out_of_level_or_with_a_rack_that_lies_on_its_pinion() {
        for (was, is) in [
            ("1/8 in", "3/8 in"),
            ("1.2 mm", "0.4 mm"),
            ("1.9 mm", "2.6 mm"),
        ] {
            assert_eq!(only(&CHECK, &SITE.replace(was, is)).verdict, Verdict::Fails);
        }
    }

    #[test]
    fn a_chain_has_no_play_to_ask_for() {
        let chain = SITE
            .replace("\"rack\"", "\"chain\"")
            .replace("1.2 mm", "0.2 mm");
        assert_eq!(only(&CHECK, &chain).verdict, Verdict::Holds);
    }

    #[test]
    fn unknown_without_levels() {
        let bare = SITE.replace("level_error = \"1/8 in\"", "");
        assert_eq!(only(&CHECK, &bare).verdict, Verdict::UnknownUntil);
    }
}
