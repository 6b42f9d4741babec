//! An invented pack, as rich as a real one: a slide gate that nobody owns.
#![allow(clippy::expect_used, reason = "a test that cannot go on says so")]

mod day_sheet;
mod drawing;
mod findings;
mod questions;
mod schedules;
mod structure;
mod walk;

use papers::view::{
    Attachment, CAUTION_LINE, Day, DocumentView, Fact, PackView, Paper, VerdictCounts,
    standing_cautions,
};

/// The whole pack.
pub(crate) fn pack() -> PackView {
    let findings = findings::all();
    let verdicts = findings.iter().map(|finding| finding.verdict);
    PackView {
        document: document(),
        facts: facts(),
        counts: VerdictCounts::of(verdicts, 61),
        summary:
            "Two findings fail and two wait for a measurement. The gate is not to go into service."
                .to_owned(),
        cautions: standing_cautions(),
        findings,
        questions: questions::all(),
        walks: vec![walk::part()],
        structure: Some(structure::part()),
        day_sheet: Some(day_sheet::part()),
        schedules: schedules::all(),
        drawings: vec![drawing::plan()],
        attachments: vec![Attachment {
            name: "sandpiper.toml".to_owned(),
            media_type: "application/toml".to_owned(),
            description: "The site file from which this pack was made".to_owned(),
            bytes: b"name = \"Sandpiper Yard\"\n".to_vec(),
        }],
    }
}

/// What the invented document says of itself.
pub(crate) fn document() -> DocumentView {
    DocumentView {
        title: "Design pack".to_owned(),
        site_name: "Sandpiper Yard".to_owned(),
        place: "Windy coast, exposure D, 3 m above the sea".to_owned(),
        installation: "Track slide gate, 20 ft 0 in clear opening".to_owned(),
        designer: "The designer of this test".to_owned(),
        paper: Paper::Letter,
        day: Day::new(2026, 11, 25).expect("a day that exists"),
        date: "25 November 2026".to_owned(),
        revision: "B".to_owned(),
        maker: "Gatewright 0.1.0".to_owned(),
        fingerprint: "7f3a 09c2 51de".to_owned(),
        caution_line: CAUTION_LINE.to_owned(),
    }
}

fn facts() -> Vec<Fact> {
    [
        ("Code basis", "US"),
        ("Usage class", "II, commercial, open to the public"),
        ("Leaf", "22 ft 6 in long, 6 ft 0 in high, 640 lb ± 5 %"),
        ("Speed", "1 ft/s"),
        ("Operator", "24 V DC, 3/4 hp, duty 60 %"),
        ("Supply", "120 V, 20 A circuit, 210 ft away"),
        ("Basic wind speed", "140 mph, exposure D"),
        ("Operating wind", "40 mph"),
        ("Temperatures", "14 °F to 104 °F"),
        ("Cycles a day", "120 expected"),
    ]
    .map(|(label, value)| Fact::new(label, value))
    .into()
}

/// Keeps a document where `PAPERS_KEEP` says, so that a person can look at it.
pub(crate) fn keep(document: &[u8], name: &str) {
    if let Some(folder) = std::env::var_os("PAPERS_KEEP") {
        let path = std::path::Path::new(&folder).join(name);
        std::fs::write(path, document).expect("the folder can be written");
    }
}
