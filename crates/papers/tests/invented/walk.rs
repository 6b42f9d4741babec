//! The walk test of the invented pack.

use papers::view::{AssumedRow, MarginRow, OpenRow, ShareRow, Verdict, WalkFinding, WalkView};

/// A gate whose walks were proved and kept.
pub(crate) fn part() -> WalkView {
    let row = |what: &str, value: &str| AssumedRow {
        what: what.to_owned(),
        value: value.to_owned(),
        known: "measured; sandpiper.toml:12".to_owned(),
    };
    let found = |verdict, sentence: &str| WalkFinding {
        verdict,
        sentence: sentence.to_owned(),
    };
    WalkView {
        gate: "gate main".to_owned(),
        answer: Some(found(Verdict::Unknown, "Nobody is hit beyond the limits.")),
        standing: "Worked for this very leaf: 4,000,000 walks sampled.".to_owned(),
        shares: vec![ShareRow {
            ends: "untouched".to_owned(),
            share: "41.1800 %".to_owned(),
            error: "± 0.4000 %".to_owned(),
        }],
        families: "Of 92 kinds of walk 91 are proved safe, 0 end badly, 1 are left open."
            .to_owned(),
        open: vec![OpenRow {
            family: "adult, goes in, leaf closing".to_owned(),
            how: "Left open.".to_owned(),
        }],
        worst: "A wheelchair user comes in at 1.3 ft/s.".to_owned(),
        margins: vec![MarginRow {
            what: "slowest reaction of the controller".to_owned(),
            written: "80 ms ± 10 ms, data sheet".to_owned(),
            taken: "90 ms".to_owned(),
            holds: "proved up to 137 ms".to_owned(),
            not_at: "at 153 ms".to_owned(),
        }],
        responses: vec![found(
            Verdict::Holds,
            "From the trip of edge-leading to standstill the worst of 10 readings is 190 ms.",
        )],
        people: vec![row("adult", "4 upright cylinders, 0.3 m/s to 1.6 m/s")],
        granted: vec![row("paths", "straight, at one speed")],
        of_the_site: vec![row("gate main, travel", "20 ft 8 in")],
        cautions: vec!["A simulation is no force test and no test on site.".to_owned()],
    }
}
