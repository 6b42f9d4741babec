//! Reels, and the runs of cable that are cut from them, each in one piece.

use super::job::{Job, Wanted};
use crate::asking::{Asking, End, Wants, read};
use crate::outcome::Halt;
use quantity::{Length, Quantity as _};
use site::{Cable, CableReels, Site};

/// The job of the reels of one cable. Runs are taken at the long end of their tolerance.
pub(crate) fn reels<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    reels: &'s CableReels,
) -> Result<Job, Halt> {
    let spare = read!(asking, reels.spare_each_end);
    let mut wanted = Ok(Vec::new());
    for run in runs_of(site, reels.of.as_str()) {
        let length = asking.read_at((&run.origin, "length"), run.length.as_ref(), End::High);
        wanted = wanted.and_then(|mut wanted: Vec<(String, Length)>| {
            wanted.push((run.id.to_string(), length?));
            Ok(wanted)
        });
    }
    if reels.reel.is_empty() {
        let write = Wants::Written(
            "[{ length = \"500 ft\", price = \"140.00 USD\" }, { length = \"180 ft\", on_hand = 1 }]",
        );
        return asking.lack(&reels.origin, "reel", write);
    }
    let (spare, wanted) = (spare?, wanted?);
    let wanted = wanted.into_iter().map(|(what, length)| Wanted {
        what,
        length: Length::from_base(length.base() + 2.0 * spare.base()),
        count: 1,
    });
    let mut job = Job::new(wanted.collect(), Length::from_base(0.0));
    let mut whole = Ok(());
    for reel in &reels.reel {
        whole = job.take(asking, reel, Length::from_base(0.0)).and(whole);
    }
    whole.map(|()| job)
}

/// The runs that are bought as an entry of the parts file.
pub(crate) fn runs_of<'s>(site: &'s Site, part: &'s str) -> impl Iterator<Item = &'s Cable> {
    let is_it = move |cable: &&Cable| cable.part.as_ref().is_some_and(|id| id.as_str() == part);
    site.cable.iter().filter(is_it)
}
