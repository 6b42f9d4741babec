//! How the loads on a plate share out over its anchors, and what pull and shove use together.
//!
//! A stiff plate turns about where it presses on the concrete, in each direction for itself; on leveling nuts the anchors
//! alone carry it, and bend. The plate has to be thick enough to count as stiff. A pull that somebody worked out has to be
//! no less than what comes out here.

use super::described::{described, seat};
use super::hardest::hardest;
use super::on_plate::{Case, cases};
use super::thin_plate::thin_plate;
use crate::asking::Asking;
use crate::check::{BOTH, Check, Round};
use crate::figure::Print;
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::capitalized;
use formula::standing::anchor_group::{AnchorAnswer, AnchorSet, Quietly, answer};
use quantity::{Force, Quantity as _, Ratio};
use site::{Anchor, Foundation, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "anchor-plate-forces",
    codes: BOTH,
    leaves_open: "the weld between post and plate, the bending of a plate under anything but a post, and stretching steel as earthquake rules ask for it",
    concerns: "each set of anchors",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    round.ask_anchors(site, |asking, foundation, anchor| {
        shared(asking, site, foundation, anchor)
    });
}

fn shared<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
) -> Answer {
    let (set, cases) = loaded_set(asking, site, foundation, anchor)?;
    let share = |set: &AnchorSet| answer(set, &mut Quietly).map(|answer| answer.share());
    let Some((set, with)) = hardest(&set, &cases, share) else {
        return asking.refuse("nothing is known to move this plate");
    };
    let found = answer(&set, asking)?;
    let thickness = thin_plate(asking, site, anchor, &set, &found.pulls);
    let worked_out = asking.read_if_there(&anchor.origin, "pull", anchor.pull.as_ref());
    let thickness = thickness?;
    asking.say(|print| {
        sentence(
            print,
            (foundation, anchor),
            with,
            &found,
            thickness.as_ref(),
        )
    });
    let used = Comparison::at_most(
        Labeled::new(
            "share of the anchors that pull and shove use together",
            Ratio::from_base(found.share()),
        ),
        Labeled::new("all of it", Ratio::from_base(1.0)),
    );
    let stated = worked_out.map(|pull| {
        Comparison::at_most(
            Labeled::new(
                "greatest pull on one anchor as shared out",
                found.pulls.greatest,
            ),
            Labeled::new("pull on the worst anchor as stated", pull),
        )
    });
    Outcome::worst([Some(used), thickness, stated].into_iter().flatten()).ok_or(Halt)
}

/// The set on its plate, and the cases of loads on it.
pub(crate) fn loaded_set<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    foundation: &'s Foundation,
    anchor: &'s Anchor,
) -> Result<(AnchorSet, Vec<Case>), Halt> {
    let set = described(asking, site, foundation, anchor);
    let seat = seat(asking, anchor);
    let cases = cases(asking, site, foundation, anchor)?;
    let (plate, seat) = seat?;
    let set = AnchorSet {
        plate,
        seat,
        ..set?
    };
    Ok((set, cases))
}

fn sentence(
    print: Print,
    (foundation, anchor): (&Foundation, &Anchor),
    with: &str,
    found: &AnchorAnswer,
    thickness: Option<&Comparison>,
) -> String {
    let pulls = &found.pulls;
    let pulled = if pulls.greatest > Force::default() {
        format!(
            "the worst anchor is pulled with {} and all together with {}",
            print.q(pulls.greatest),
            print.q(pulls.total)
        )
    } else {
        "no anchor is pulled".to_owned()
    };
    let shoved = if pulls.shove > Force::default() {
        format!(", and each is shoved with {}", print.q(pulls.shove_each))
    } else {
        String::new()
    };
    let thin = match thickness {
        Some(needed) if !needed.holds() => {
            "; the plate is too thin to count as stiff: it pries, and the anchors pull more than this"
        }
        _ => "",
    };
    format!(
        "{} ({}): with {with} {pulled}{shoved}; {} of what holds is used{thin}.",
        capitalized(foundation.id.as_str()),
        anchor.holds,
        print.percent(Ratio::from_base(found.share()))
    )
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::anchor::testing::PLATE;
    use crate::check::testing::only;

    #[test]
    fn holds_on_a_wide_plate() {
        let finding = only(&CHECK, PLATE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(
            finding.sentence.contains("the worst anchor is pulled"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_with_ten_times_the_moment() {
        let hard = PLATE.replace("\"3000 lbf·ft\"", "\"30000 lbf·ft\"");
        assert_eq!(only(&CHECK, &hard).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_where_a_smaller_pull_was_stated() {
        let less = PLATE.replace("kind =", "pull = \"300 lbf\"\nkind =");
        let finding = only(&CHECK, &less);
        assert_eq!(finding.verdict, Verdict::Fails);
        assert!(finding.capacity.unwrap().label.contains("as stated"));
    }

    #[test]
    fn unknown_without_plate_and_loads() {
        let bare = PLATE
            .replace("plate_length = \"12 in\"", "")
            .replace("moment_along = \"3000 lbf·ft\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }

    #[test]
    fn a_bump_on_a_pedestal_is_worked_out() {
        let bumped = PLATE
            .replace("moment_along = \"3000 lbf·ft\"", "")
            .replace("moment_across = \"0 lbf·ft\"", "")
            .replace("shear_along = \"500 lbf\"", "")
            .replace("shear_across = \"0 lbf\"", "")
            + "\n[[foundation.push]]\nwhat = \"car\"\nforce = \"500 lbf\"\nheight = \"3 ft\"\n";
        let finding = only(&CHECK, &bumped);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
        assert!(finding.sentence.contains("bump"), "{}", finding.sentence);
    }

    #[test]
    fn leveling_nuts_bend_the_anchors() {
        let free = PLATE.replace(
            "under_plate = \"nothing\"",
            "under_plate = \"leveling nuts\"\nstand_off = \"3 in\"\nplate_thickness = \"3/4 in\"",
        );
        let finding = only(&CHECK, &free);
        assert!(
            finding
                .working
                .iter()
                .any(|step| format!("{step:?}").contains("stand-off")),
            "{:?}",
            finding.working
        );
    }

    #[test]
    fn in_europe_it_warns_and_does_not_pass() {
        assert_eq!(
            only(&CHECK, &PLATE.replace("\"us\"", "\"eu\"")).verdict,
            Verdict::UnknownUntil
        );
    }
}
