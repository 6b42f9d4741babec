//! Conductors as they are and as chosen, what they cost, and the voltages that follow.

use super::{columns, width, wrapped};
use crate::tint::{fails, paint, quiet, strong, touchable};
use design::{Change, ConductorChoice, ConductorRun, Finding};

/// The conductors of a site.
pub(crate) fn sized(choice: &ConductorChoice) -> String {
    let mut lines = vec![
        paint(head(choice), strong()),
        String::new(),
        wrapped(&told(choice), 2, width()),
        wrapped(&choice.proof, 2, width()),
        String::new(),
    ];
    for change in [Change::Thicker, Change::Thinner, Change::Same] {
        let runs: Vec<&ConductorRun> = choice
            .cables
            .iter()
            .filter(|run| run.change == change)
            .collect();
        if !runs.is_empty() {
            lines.push(format!("  {}", section(change)));
            lines.extend(table(&runs));
            lines.push(String::new());
        }
    }
    lines.extend(listed("No conductor mends", &choice.unmended));
    let sentence = |finding: &Finding| format!("{} {}", finding.sentence, finding.question);
    let failing: Vec<String> = choice.failing.iter().map(sentence).collect();
    lines.extend(listed("Fails with these, and did not before", &failing));
    lines.extend(listed(
        "Left out, for the cable would fail something else",
        &choice.left_out,
    ));
    let missing = if choice.by_price {
        "Missing, or out of reach"
    } else {
        "Missing, or out of reach: without every price, costs are the metal in the cables"
    };
    lines.extend(listed(missing, &choice.missing));
    lines.push(paint(wrapped(FOOTER, 0, width()), quiet()));
    lines.join("\n")
}

const FOOTER: &str = "Voltages with every value at the bad end of its tolerance, in the worst hour. A thinner conductor needs a smaller fuse: the fuse \
of a cable must be no larger than its conductor carries. Cables between battery and supply stay as they are. Results support a competent \
person; local codes and the authority having jurisdiction prevail.";

fn head(choice: &ConductorChoice) -> String {
    match choice.cables.len() {
        1 => "One cable at low voltage".to_owned(),
        count => format!("{count} cables at low voltage"),
    }
}

fn told(choice: &ConductorChoice) -> String {
    let count = |change| {
        let runs = choice.cables.iter();
        runs.filter(|run| run.change == change).count()
    };
    let what = if choice.by_price {
        "Price"
    } else {
        "Metal in them"
    };
    format!(
        "{what} today {}, as chosen {}: {} thicker, {} thinner, {} as they are.",
        choice.today,
        choice.chosen,
        count(Change::Thicker),
        count(Change::Thinner),
        count(Change::Same),
    )
}

fn section(change: Change) -> String {
    match change {
        Change::Thicker => paint("▲ thicker", touchable()),
        Change::Thinner => paint("▽ thinner", touchable()),
        Change::Same => paint("= as they are", quiet()),
    }
}

fn table(runs: &[&ConductorRun]) -> Vec<String> {
    let rows: Vec<[String; 5]> = runs.iter().map(|run| row(run)).collect();
    columns(&rows, 4, width(), None)
}

fn row(run: &ConductorRun) -> [String; 5] {
    let changed = run.today != run.chosen;
    let either = |today: &str, chosen: &str| {
        if changed && today != chosen {
            format!("{today} → {chosen}")
        } else {
            chosen.to_owned()
        }
    };
    let voltage = run.voltage.as_ref().map(|voltage| {
        let (volts, short) = (
            either(&voltage.today, &voltage.chosen),
            voltage.in_hand < 0.0,
        );
        let mark = if short {
            paint("✗ ", fails())
        } else {
            String::new()
        };
        format!("{mark}{volts}, needs {}, {}", voltage.least, voltage.when)
    });
    [
        run.cable.clone(),
        run.to.clone(),
        either(&run.today, &run.chosen),
        either(&run.cost_today, &run.cost_chosen),
        voltage.unwrap_or_default(),
    ]
}

fn listed(head: &str, lines: &[String]) -> Vec<String> {
    if lines.is_empty() {
        return Vec::new();
    }
    let mut all = vec![format!("  {head}")];
    all.extend(lines.iter().map(|line| wrapped(line, 7, width())));
    all.push(String::new());
    all
}
