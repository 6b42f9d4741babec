//! `gatewright offer`: the price of each way to do the job, the paper for the customer, and the margin sheet.

use super::pack::{issue_day, put};
use crate::arguments::OfferArguments;
use crate::folder::Folder;
use crate::outcome::{Complaint, Outcome, complain, say};
use crate::show::priced;
use design::offer::{Offered, offered};
use papers::compose::{Issue, document};
use serde_json::json;
use site::{Loaded, Offer, Site};
use std::path::Path;

/// Prices the ways of a site's offer, and writes the papers where a folder is given.
pub(crate) fn run(arguments: &OfferArguments) -> Result<Outcome, Complaint> {
    let day = issue_day(arguments.date.as_deref())?;
    let folder = Folder::read(&arguments.site)?;
    let fingerprint = folder.fingerprint();
    let Loaded { site, problems } = folder.load();
    for problem in &problems {
        complain(&format_args!("{problem}\n"));
    }
    let Some(site) = site else {
        return Ok(Outcome::BadInput);
    };
    let found = site.offer.as_ref().zip(offered(&site));
    let Some((offer, found)) = found.filter(|(_, found)| !found.ways.is_empty()) else {
        return Err(Complaint(
            "This site offers nothing yet. Write an [offer] with at least one [[offer.option]] into its site file."
                .to_owned(),
        ));
    };
    if arguments.json {
        say(&format_args!("{:#}", json!(found)));
    } else {
        say(&priced(&found));
    }
    if problems.any_wrong() {
        return Ok(Outcome::BadInput);
    }
    if let Some(output) = &arguments.output {
        let issue = Issue {
            day,
            maker: format!("gatewright {}", env!("CARGO_PKG_VERSION")),
            fingerprint,
            attachments: Vec::new(),
            walks: Vec::new(),
            since: None,
        };
        write(&site, offer, &found, &issue, output, arguments.json)?;
    }
    Ok(outcome(offer, &found))
}

/// Every way is priced, covers its cost, and is paid in full.
fn outcome(offer: &Offer, found: &Offered) -> Outcome {
    let covered =
        |way: &design::offer::Way| way.spare.is_some() && way.payments.len() == offer.payment.len();
    if found.stopped_by.is_empty() && found.ways.iter().all(covered) {
        Outcome::Holds
    } else {
        Outcome::Open
    }
}

/// Writes the margin sheet, and the paper for the customer unless something stops it.
fn write(
    site: &Site,
    offer: &Offer,
    found: &Offered,
    issue: &Issue,
    output: &Path,
    quiet: bool,
) -> Result<(), Complaint> {
    std::fs::create_dir_all(output)
        .map_err(|error| Complaint::about(output, format_args!("cannot be made ({error})")))?;
    let tables = papers::offer::tables(found);
    let margin = document(site, "Margin sheet", issue);
    let workbook = papers::workbook::workbook(&margin, &tables)
        .map_err(|error| Complaint(format!("The margin sheet cannot be written: {error}")))?;
    put(output, "margin.xlsx", &workbook)?;
    let mut written = vec![(
        "margin.xlsx",
        "the figures behind the prices, for the owner of the business only",
    )];
    if outcome(offer, found) == Outcome::Holds {
        let customer = document(site, "Offer", issue);
        let pdf = papers::offer::proposal(site, offer, found, &customer)
            .map_err(|error| Complaint(format!("The offer cannot be set: {error}")))?;
        put(output, "offer.pdf", &pdf)?;
        written.push(("offer.pdf", "the offer, for the customer"));
    }
    if !quiet {
        for (name, what) in written {
            say(&format_args!("  {}   {what}", output.join(name).display()));
        }
    }
    Ok(())
}
