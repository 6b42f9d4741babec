//! `gatewright choose`: the entries of the parts files in the order in which they suit a site, anchors, pads,
//! conductors, what is cut from what, and where pins go.

use super::cuts::{self, Stock};
use crate::folder::Folder;
use crate::outcome::{Complaint, Outcome, complain, say};
use crate::show::{anchored, guarded, nearest_name, pinned, poured, ranked, routed, sized};
use design::{
    AnchorChoice, Candidate, Choice, Choosable, ConductorChoice, PadChoice, ProtectionChoice,
};
use quantity::Word as _;
use site::Loaded;
use std::path::Path;

/// Where the pins of a swing drive go.
const MOUNTING: &str = "mounting";
/// Which anchors hold a plate, in which pattern, how deep.
const ANCHORS: &str = "anchors";
/// The smallest pad that holds.
const PAD: &str = "pad";
/// The fewest protective devices with which nobody is hit.
const PROTECTION: &str = "protection";
/// The cheapest conductors with which everything gets its voltage.
const CONDUCTORS: &str = "conductors";

/// The cheapest ways that reach everything.
const ROUTES: &str = "routes";
/// What is cut from which bar.
const CUTS: &str = "cuts";
/// Which runs come off which reel.
const REELS: &str = "reels";

/// Ranks the parts for every thing of that kind on the site.
pub(crate) fn run(
    what: &str,
    site: &Path,
    as_json: bool,
    write: bool,
) -> Result<Outcome, Complaint> {
    if write && ![PROTECTION, CONDUCTORS].contains(&what) {
        return Err(Complaint(format!(
            "Only {PROTECTION} and {CONDUCTORS} are written into the site file; of the others the lines to write are printed."
        )));
    }
    match what {
        MOUNTING => mounting(site, as_json),
        ANCHORS => anchors(site, as_json),
        PAD => pads(site, as_json),
        PROTECTION => protection(site, as_json, write),
        CONDUCTORS => conductors(site, as_json, write),
        ROUTES => routes(site, as_json),
        CUTS => cuts::run(Stock::Bars, site, as_json),
        REELS => cuts::run(Stock::Reels, site, as_json),
        _ => parts(what, site, as_json),
    }
}

/// Ranks the entries of the parts files.
fn parts(what: &str, site: &Path, as_json: bool) -> Result<Outcome, Complaint> {
    let what = Choosable::from_word(what).ok_or_else(|| no_such(what))?;
    let folder = Folder::read(site)?;
    let (main, parts) = folder.files();
    let Some(choices) = design::choose(main, parts, what) else {
        complain(&folder.load().problems);
        return Ok(Outcome::BadInput);
    };
    if as_json {
        say(&format_args!("{:#}", serde_json::json!(choices)));
        return Ok(outcome(&choices));
    }
    if choices.is_empty() {
        return Err(Complaint(format!(
            "There is no {what} on this site to choose a part for."
        )));
    }
    if choices.iter().any(|choice| choice.candidates.is_empty()) {
        return Err(no_entry(what));
    }
    for choice in &choices {
        say(&ranked(choice));
    }
    Ok(outcome(&choices))
}

fn no_entry(what: impl std::fmt::Display) -> Complaint {
    Complaint(format!(
        "The parts files of this site hold no {what}. Add a table [[{what}]] with its data sheet to one of them."
    ))
}

/// Finds anchors for each plate.
fn anchors(site: &Path, as_json: bool) -> Result<Outcome, Complaint> {
    let folder = Folder::read(site)?;
    let (main, parts) = folder.files();
    let Some(choices) = design::anchor_choices(main, parts) else {
        complain(&folder.load().problems);
        return Ok(Outcome::BadInput);
    };
    if choices.is_empty() {
        return Err(Complaint(
            "There are no anchors on this site to choose a part for.".to_owned(),
        ));
    }
    if site::part_names(parts, "anchor").is_empty() {
        return Err(no_entry("anchor"));
    }
    if as_json {
        say(&format_args!("{:#}", serde_json::json!(choices)));
    } else {
        for choice in &choices {
            say(&anchored(choice));
        }
    }
    let held = |choice: &AnchorChoice| choice.best.first().is_some_and(|way| sound(&way.asked));
    Ok(if choices.iter().all(held) {
        Outcome::Holds
    } else {
        Outcome::Open
    })
}

/// Finds the pins of each linear drive.
fn mounting(site: &Path, as_json: bool) -> Result<Outcome, Complaint> {
    let Loaded { site, problems } = Folder::read(site)?.load();
    let Some(site) = site else {
        complain(&problems);
        return Ok(Outcome::BadInput);
    };
    let found = design::mountings(&site);
    if found.is_empty() {
        return Err(Complaint(
            "There is no linear drive of a swing gate on this site to mount.".to_owned(),
        ));
    }
    if as_json {
        say(&format_args!("{:#}", serde_json::json!(found)));
    } else {
        for one in &found {
            say(&pinned(one));
        }
    }
    let all = found.iter().all(|one| !one.pins.is_empty());
    Ok(if all { Outcome::Holds } else { Outcome::Open })
}

/// Finds the smallest pad for each foundation that is one.
fn pads(site: &Path, as_json: bool) -> Result<Outcome, Complaint> {
    let folder = Folder::read(site)?;
    let (main, parts) = folder.files();
    let Some(choices) = design::pad_choices(main, parts) else {
        complain(&folder.load().problems);
        return Ok(Outcome::BadInput);
    };
    if choices.is_empty() {
        return Err(Complaint(
            "There is no pad on this site that is still to be poured. The footing of a post goes by its depth in the ground."
                .to_owned(),
        ));
    }
    if as_json {
        say(&format_args!("{:#}", serde_json::json!(choices)));
    } else {
        for choice in &choices {
            say(&poured(choice));
        }
    }
    let held = |choice: &PadChoice| choice.best.first().is_some_and(|pad| sound(&pad.asked));
    Ok(if choices.iter().all(held) {
        Outcome::Holds
    } else {
        Outcome::Open
    })
}

/// Finds the fewest protective devices for each gate.
fn protection(site: &Path, as_json: bool, write: bool) -> Result<Outcome, Complaint> {
    let folder = Folder::read(site)?;
    let (main, parts) = folder.files();
    let Some(choices) = design::protection_choices(main, parts) else {
        complain(&folder.load().problems);
        return Ok(Outcome::BadInput);
    };
    if choices.is_empty() {
        return Err(Complaint("This site has no gate to protect.".to_owned()));
    }
    if as_json {
        say(&format_args!("{:#}", serde_json::json!(choices)));
    } else {
        for choice in &choices {
            say(&guarded(choice));
        }
    }
    if write {
        write_back(&folder, &choices)?;
    }
    let held = |choice: &ProtectionChoice| choice.added.as_ref().is_some_and(|set| set.left == 0);
    Ok(if choices.iter().all(held) {
        Outcome::Holds
    } else {
        Outcome::Open
    })
}

/// Adds the devices that were found beside those that are there to the end of the site file.
fn write_back(folder: &Folder, choices: &[ProtectionChoice]) -> Result<(), Complaint> {
    let added = choices.iter().filter_map(|choice| choice.added.as_ref());
    let tables: Vec<&str> = added
        .flat_map(|set| set.write.iter().map(String::as_str))
        .collect();
    if tables.is_empty() {
        say(
            &"Nothing to write: no device is needed beside those that are there, or none was found.",
        );
        return Ok(());
    }
    let file = &folder.site_file;
    let text = format!("{}\n\n{}\n", folder.text().trim_end(), tables.join("\n\n"));
    std::fs::write(file, text)
        .map_err(|error| Complaint::about(file, format_args!("cannot be written ({error})")))?;
    say(&format_args!(
        "{}: {} devices added at its end. Give each its feed and cable, then run gatewright walk.",
        file.display(),
        tables.len()
    ));
    Ok(())
}

/// Finds the cheapest ways that reach everything.
fn routes(site: &Path, as_json: bool) -> Result<Outcome, Complaint> {
    let folder = Folder::read(site)?;
    let (main, parts) = folder.files();
    let Some(choice) = design::route_choice(main, parts) else {
        complain(&folder.load().problems);
        return Ok(Outcome::BadInput);
    };
    if as_json {
        say(&format_args!("{:#}", serde_json::json!(choice)));
    } else {
        say(&routed(&choice));
    }
    Ok(if choice.proved {
        Outcome::Holds
    } else {
        Outcome::Open
    })
}

/// Finds the cheapest conductors for the low-voltage circuits.
fn conductors(site: &Path, as_json: bool, write: bool) -> Result<Outcome, Complaint> {
    let folder = Folder::read(site)?;
    let (main, parts) = folder.files();
    let Some(choice) = design::conductor_choice(main, parts) else {
        complain(&folder.load().problems);
        return Ok(Outcome::BadInput);
    };
    if choice.cables.is_empty() {
        return Err(Complaint(
            "No cable of this site brings power at low voltage.".to_owned(),
        ));
    }
    if as_json {
        say(&format_args!("{:#}", serde_json::json!(choice)));
    } else {
        say(&sized(&choice));
    }
    if write {
        write_conductors(&folder, &choice)?;
    }
    let open = [&choice.unmended, &choice.missing];
    let sound = choice.kept && choice.failing.is_empty() && open.iter().all(|list| list.is_empty());
    Ok(if sound { Outcome::Holds } else { Outcome::Open })
}

/// Writes the entries of the cables that change into the site file; everything else stays as it is.
fn write_conductors(folder: &Folder, choice: &ConductorChoice) -> Result<(), Complaint> {
    if choice.write.is_empty() {
        say(&"Nothing to write: every cable stays as it is.");
        return Ok(());
    }
    let file = &folder.site_file;
    let mut text = folder.text().to_owned();
    for line in &choice.write {
        text = site::set_value(&text, &line.path, &line.value)
            .map_err(|problem| Complaint(problem.to_string()))?;
    }
    std::fs::write(file, text)
        .map_err(|error| Complaint::about(file, format_args!("cannot be written ({error})")))?;
    say(&format_args!(
        "{}: {} values written. Run gatewright check: fuses, conduits and pulls hang on cables, too.",
        file.display(),
        choice.write.len()
    ));
    Ok(())
}

fn outcome(choices: &[Choice]) -> Outcome {
    let holds = |choice: &Choice| choice.candidates.first().is_some_and(sound);
    if choices.iter().all(holds) {
        Outcome::Holds
    } else {
        Outcome::Open
    }
}

/// Every finding that hangs on it holds.
fn sound(candidate: &Candidate) -> bool {
    candidate.failing.is_empty() && candidate.open.is_empty()
}

fn no_such(what: &str) -> Complaint {
    let parts = Choosable::ALL.iter().map(ToString::to_string);
    let names: Vec<String> = parts
        .chain(
            [
                ANCHORS, PAD, PROTECTION, CONDUCTORS, ROUTES, CUTS, REELS, MOUNTING,
            ]
            .map(str::to_owned),
        )
        .collect();
    let offer = nearest_name(what, &names)
        .map(|near| format!(" Nearest: {near}."))
        .unwrap_or_default();
    Complaint(format!(
        "Nothing called {what} can be chosen.{offer} What can: {}.",
        names.join(", ")
    ))
}
