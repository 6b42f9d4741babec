//! What came of the walks past one gate.

use super::{mark, width, wrapped};
use crate::command::Walked;
use crate::tint::{fails, paint, quiet, strong, touchable};
use design::Finding;
use design::walk::{
    Assumption, FamilyStanding, FamilyTold, GateWalk, MarginTold, SweepTold, Told, grouped,
    told_together,
};

/// Said with every result.
const CAUTION: &str = "A simulation is no force test and no test on site: forces are measured with a meter, and each device is tried, \
before anyone walks here. Response, stopping and reversing figures that are measured at commissioning must be entered; where one \
is worse than assumed, this result is void.";

/// Everything that came of the walks past one gate.
pub(crate) fn walked(site: &str, walk: &GateWalk<'_>, found: &Walked) -> String {
    let mut lines = top(site, &format!("gate {}", walk.name()), &found.finding);
    lines.extend(shares(&found.sweep));
    lines.extend(worst(&found.sweep));
    lines.extend(families(&found.families));
    lines.extend(margins(&found.margins));
    lines.extend(assumptions(walk.assumptions()));
    lines.push(String::new());
    lines.push(paint(wrapped(CAUTION, 0, width()), quiet()));
    lines.push(String::new());
    lines.join("\n")
}

/// A gate or a lane that could not be read: `gate main`, and what is missing.
pub(crate) fn unread(site: &str, subject: &str, finding: &Finding) -> String {
    let mut lines = top(site, subject, finding);
    for missing in &finding.missing {
        lines.push(format!(
            "    write  {}   in {}:{}",
            missing.write, missing.file, missing.line
        ));
    }
    lines.push(String::new());
    lines.join("\n")
}

/// One walk with its time line.
pub(crate) fn replayed(site: &str, gate: &str, told: &Told) -> String {
    let seed = told
        .seed
        .map_or_else(String::new, |seed| format!(" · walk {seed}"));
    let mut lines = vec![
        paint(format!("{site} · gate {gate}{seed}"), strong()),
        String::new(),
    ];
    lines.push(ends(told));
    lines.push(wrapped(&told.sentence, 2, width()));
    lines.push(String::new());
    for event in &told.events {
        lines.push(format!("  {:>7.2} s  {}", event.seconds, event.what));
    }
    lines.push(String::new());
    lines.push(paint(wrapped(CAUTION, 0, width()), quiet()));
    lines.push(String::new());
    lines.join("\n")
}

fn ends(told: &Told) -> String {
    if told.bad {
        paint(format!("✗ {}", told.ends), fails())
    } else {
        paint(format!("✓ {}", told.ends), quiet())
    }
}

fn top(site: &str, subject: &str, finding: &Finding) -> Vec<String> {
    vec![
        paint(format!("{site} · {subject}"), strong()),
        String::new(),
        mark(finding.standing),
        wrapped(&finding.sentence, 2, width()),
    ]
}

fn heading(words: &str) -> [String; 2] {
    [String::new(), paint(words, strong())]
}

fn shares(sweep: &SweepTold) -> Vec<String> {
    let mut lines = heading(&format!("How {} walks end", grouped(sweep.walks))).to_vec();
    for share in &sweep.shares {
        lines.push(format!(
            "  {:<24} {:>9.4} % ± {:.4} %",
            share.ends,
            share.share * 100.0,
            share.error * 100.0
        ));
    }
    lines.push(paint(
        wrapped(
            "Each kind of person, way and habit has the same share of the walks: this is no count of what happens on a day.",
            2,
            width(),
        ),
        quiet(),
    ));
    lines
}

fn worst(sweep: &SweepTold) -> Vec<String> {
    if sweep.worst.is_empty() {
        return Vec::new();
    }
    let mut lines = heading("The worst touches").to_vec();
    for told in &sweep.worst {
        lines.push(format!("  {}", ends(told)));
        lines.push(wrapped(&told.sentence, 4, width()));
        lines.extend(again(told));
    }
    lines
}

/// What to write to see a walk again.
fn again(told: &Told) -> Option<String> {
    let seed = told.seed?;
    Some(format!(
        "    {}",
        paint(format!("--seed {seed}"), touchable())
    ))
}

fn families(families: &[FamilyTold]) -> Vec<String> {
    let mut lines = heading(&told_together(families)).to_vec();
    for family in families {
        match family.standing {
            FamilyStanding::Proved => {}
            FamilyStanding::Refuted => {
                lines.push(format!("  {} {}", paint("✗", fails()), family.family));
                if let Some(told) = &family.refuted_by {
                    lines.push(wrapped(&told.sentence, 4, width()));
                    lines.extend(again(told));
                }
            }
            FamilyStanding::Undecided => lines.push(format!(
                "  ▒ {}: {} of all ways to be touched stays open",
                family.family,
                percent(family.open)
            )),
        }
    }
    lines
}

/// A share that may be very small, in percent.
fn percent(share: f64) -> String {
    let percent = share * 100.0;
    if percent < 0.001 {
        "less than 0.001 %".to_owned()
    } else {
        format!("{percent:.3} %")
    }
}

fn margins(margins: &[MarginTold]) -> Vec<String> {
    if margins.is_empty() {
        return Vec::new();
    }
    let mut lines = heading("How far it may go").to_vec();
    for margin in margins {
        let holds = match (&margin.holds_up_to, margin.proved) {
            (Some(holds), true) => format!("proved up to {holds}"),
            (Some(holds), false) => format!("nobody found hit up to {holds}"),
            (None, _) => "somebody is hit even now".to_owned(),
        };
        let not = match (&margin.not_at, margin.proved) {
            (Some(not), true) => format!("; no longer at {not}"),
            (Some(not), false) => format!("; somebody is hit at {not}"),
            (None, _) => ", the farthest that is tried".to_owned(),
        };
        let text = format!("{}: now {}; {holds}{not}", margin.what, margin.now);
        lines.push(wrapped(&text, 2, width()));
    }
    lines
}

fn assumptions(assumptions: &[Assumption]) -> Vec<String> {
    let mut lines = heading("What this rests on").to_vec();
    for one in assumptions {
        let text = format!(
            "{}: {} ({}; {})",
            one.what, one.value, one.known, one.source
        );
        lines.push(wrapped(&text, 2, width()));
    }
    lines
}
