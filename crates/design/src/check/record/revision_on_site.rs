//! Whether the papers at the gate are the last that were issued, and show what is really there.

use crate::asking::{Asking, Wants, need};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt};
use crate::plain::{and, counted};
use crate::subject::About;
use formula::{Evidence, Source};
use site::{Date, Papers, Redline, Revision, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "record-revision-on-site",
    codes: BOTH,
    leaves_open: "a difference that nobody has seen or marked, and copies that are in other hands",
    concerns: "the site",
    ask,
};

static ONE_REVISION: Source = Source {
    work: "one revision in file, cabinet and hand; what is marked on site comes back into the file before hand-over",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as as-built papers are kept",
};

/// How papers are written.
const PAPERS: &str = "[papers]\nissued = [{ revision = \"A\", on = 2026-05-04, what = \"first issue\" }]\nrevision_there = \"A\"\nseen = 2026-06-01\nwalked = 2026-06-01";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    if !site.gate.is_empty() {
        round.ask(About::site(&site.origin), |asking| current(asking, site));
    }
}

fn current<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Answer {
    asking.rest_on(&ONE_REVISION);
    let about = &site.site;
    let of_file = need!(asking, about.revision, "\"A\"");
    let Some(papers) = &site.papers else {
        return asking.lack(&site.origin, "papers", Wants::Table(PAPERS));
    };
    let last = last(asking, papers);
    let there = need!(asking, papers.revision_there, "\"A\"");
    let seen = need!(asking, papers.seen, "2026-06-01").copied();
    let walked = need!(asking, papers.walked, "2026-06-01").copied();
    let ((last, issued), of_file, there) = (last?, of_file?, there?);
    let (seen, walked) = (seen?, walked?);
    let mut rules = Rules::default();
    rules.keep(
        last.revision == *of_file,
        &format!("The site file is revision {of_file}, and {} was issued last: issue it, or mark the file as a draft.", last.revision),
    );
    rules.keep(
        there == of_file,
        &format!("The papers at the gate are revision {there}; the site file is revision {of_file}: change them, and take the old ones away."),
    );
    rules.keep(
        seen >= issued,
        &format!("The papers at the gate were last looked at on {seen}, before revision {} was issued on {issued}.", last.revision),
    );
    redlines(&papers.redline, &papers.issued, walked, &mut rules);
    asking.say(|_| {
        rules.says(|| {
            let marked = match papers.redline.len() {
                0 => "nothing had to be marked".to_owned(),
                1 => "the one difference that was marked came back into the file".to_owned(),
                more => format!("all {more} differences that were marked came back into the file"),
            };
            format!(
                "File and papers at the gate are revision {of_file}, issued {issued} and seen there {seen}; the site was walked with them on {walked}, and {marked}."
            )
        })
    });
    Ok(rules.outcome())
}

/// The last revision, with its day.
fn last<'s>(asking: &mut Asking<'s>, papers: &'s Papers) -> Result<(&'s Revision, Date), Halt> {
    let revision = asking.need(
        &papers.origin,
        "issued",
        papers.issued.last(),
        "[{ revision = \"A\", on = 2026-05-04, what = \"first issue\" }]",
    )?;
    let on = need!(asking, revision.on, "2026-05-04").copied()?;
    Ok((revision, on))
}

/// Each difference is in a revision that was issued, and was marked before the last walk.
fn redlines(redlines: &[Redline], issued: &[Revision], walked: Date, rules: &mut Rules) {
    let open: Vec<String> = redlines
        .iter()
        .filter(|redline| redline.revision.is_none())
        .map(|redline| redline.what.to_string())
        .collect();
    rules.keep(
        open.is_empty(),
        &format!(
            "{} marked on site {} not come back into the file: {}.",
            counted(open.len(), "difference"),
            if open.len() == 1 { "has" } else { "have" },
            and(&open)
        ),
    );
    for redline in redlines {
        if let Some(named) = &redline.revision {
            rules.keep(
                issued.iter().any(|revision| revision.revision == *named),
                &format!(
                    "“{}” is said to be in revision {named}, which was never issued.",
                    redline.what
                ),
            );
        }
        rules.keep(
            redline.on.is_none_or(|on| on <= walked),
            &format!(
                "“{}” was marked after the last walk with the papers: walk it again.",
                redline.what
            ),
        );
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        revision = "B"
        [[gate]]
        id = "main"
        kind = "track-slide"
        [papers]
        issued = [
          { revision = "A", on = 2026-03-02, what = "for the permit" },
          { revision = "B", on = 2026-05-20, what = "as built" },
        ]
        revision_there = "B"
        seen = 2026-06-01
        walked = 2026-05-18
        redline = [{ what = "conduit c-01 left of the post", on = 2026-05-10, revision = "B" }]
    "#;

    #[test]
    fn holds_with_one_revision_everywhere() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_with_old_papers_in_the_cabinet() {
        let old = SITE.replace("revision_there = \"B\"", "revision_there = \"A\"");
        let finding = only(&CHECK, &old);
        assert_eq!(finding.verdict, Verdict::Fails);
        assert!(
            finding.sentence.contains("revision A"),
            "{}",
            finding.sentence
        );
        let early = SITE.replace("seen = 2026-06-01", "seen = 2026-05-01");
        assert_eq!(only(&CHECK, &early).verdict, Verdict::Fails);
        let draft = SITE.replace(
            "        revision = \"B\"\n        [[gate",
            "        revision = \"C\"\n        [[gate",
        );
        assert_eq!(only(&CHECK, &draft).verdict, Verdict::Fails);
    }

    #[test]
    fn fails_while_a_redline_has_not_come_back() {
        let open = SITE.replace(", revision = \"B\" }]", " }]");
        let finding = only(&CHECK, &open);
        assert_eq!(finding.verdict, Verdict::Fails);
        assert!(finding.sentence.contains("c-01"), "{}", finding.sentence);
        let never = SITE.replace(", revision = \"B\" }]", ", revision = \"D\" }]");
        assert_eq!(only(&CHECK, &never).verdict, Verdict::Fails);
        let late = SITE.replace("on = 2026-05-10", "on = 2026-05-19");
        assert_eq!(only(&CHECK, &late).verdict, Verdict::Fails);
    }

    #[test]
    fn unknown_without_papers_and_without_a_look_at_the_gate() {
        let none = SITE.split("[papers]").next().unwrap();
        assert_eq!(only(&CHECK, none).verdict, Verdict::UnknownUntil);
        let unseen = SITE.replace("seen = 2026-06-01", "");
        let finding = only(&CHECK, &unseen);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
    }
}
