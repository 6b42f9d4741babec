//! The walk test of a site: what was found, how sure it is, where it happens, and one walk to be played.

use super::marks::Mark;
use super::player::{player, watch};
use super::problems::of_unread;
use super::shell::{Place, Shell};
use crate::serve::walked::{FirstLook, KeptTest, MOST, Test, Tests, WALKS};
use design::walk::{
    Assumption, FamilyStanding, FamilyTold, MarginTold, Seed, SweepTold, Told, grouped,
    told_together,
};
use maud::{Markup, PreEscaped, html};

/// Which walk is to be played.
#[derive(Debug, Clone, Default, serde::Deserialize)]
#[serde(default)]
pub(super) struct Which {
    /// Past which gate.
    gate: String,
    /// What makes it again.
    walk: Option<String>,
}

/// What none of this replaces.
const CAUTION: &str = "A simulation is no force test and no test on site: forces are measured with a meter, and each device is \
tried, before anyone walks here. Where a response, a stopping way or a speed that is measured on site is worse than assumed, this result is void.";

/// How many walks can be chosen, the usual number first.
const CHOICES: [u64; 3] = [WALKS, 1_000_000, MOST];

/// The page.
pub(super) fn page(
    (job, title): (&str, &str),
    revision: &str,
    tests: &Tests,
    which: &Which,
) -> Markup {
    let shell = Shell {
        title: &format!("Walk test of {title}"),
        place: Place::Walk(job, title),
        styles: &["jobs.css", "drawing.css", "pictures.css", "walk.css"],
        modules: &["walk.js"],
        class: "walks",
    };
    shell.around(&html! {
        div class="leaf-of-paper" id="walks" data-job=(job) data-revision=(revision) data-task=[tests.task] {
            h1 { "Walk test" }
            p { "People of all sizes are walked past the moving leaf, by every way and at every moment, and each kind of walk is looked at as a whole." }
            p class="void" { strong { "No force test. " } (CAUTION) }
            (begin())
            p id="word" class="soft" role="status" {}
            @if let Some(unread) = &tests.unread { div class="trouble" { (of_unread(unread)) } }
            @for test in &tests.of_gates {
                (of_gate(job, test, &tests.looks[test.at], which))
            }
            @if tests.of_gates.is_empty() { p { "The site has no gate to walk past." } }
        }
    })
}

fn begin() -> Markup {
    html! {
        form class="begin-walk" id="begin" {
            div class="field" {
                label for="count" { "Walks past each gate" }
                select id="count" name="walks" {
                    @for count in CHOICES { option value=(count) { (grouped(count)) } }
                }
            }
            label class="choice" { input type="checkbox" name="keep" id="keep"; "Keep it beside the site, for the papers" }
            div class="pressing" {
                button type="submit" class="first" id="make" { "Walk" }
                button type="button" id="stop" hidden { "Stop" }
            }
        }
        div id="making" hidden {
            label for="progress" id="says" { "Walking" }
            progress id="progress" max="1" value="0" {}
        }
        div id="trouble" role="alert" {}
    }
}

fn of_gate(job: &str, test: &Test, look: &FirstLook, which: &Which) -> Markup {
    let chosen = which.walk.as_deref().filter(|_| which.gate == look.gate);
    let chosen = chosen.and_then(|walk| walk.parse::<Seed>().ok());
    let of = (job, look.gate.as_str());
    html! {
        section class="group" id={ "gate-" (look.gate) } aria-labelledby={ "of-" (look.gate) } {
            h2 id={ "of-" (look.gate) } { "Gate " (look.gate) }
            @match &look.refused {
                Some(finding) => p { (Mark::from(finding.standing).said()) " " (finding.sentence) },
                None => {
                    (standing(test.kept.as_ref()))
                    @match &test.kept {
                        Some(kept) => {
                            (shares(&kept.record.sweep))
                            (families(of, &kept.record.families, chosen))
                            (worst(of, &kept.record.sweep.worst, chosen))
                        }
                        None => (worst(of, &look.worst, chosen)),
                    }
                    @if let Some(seed) = chosen { (player(&look.gate, seed)) }
                    (maps(look))
                    @if let Some(kept) = &test.kept { (margins(&kept.record.margins)) }
                    (assumptions(&look.assumptions))
                }
            }
        }
    }
}

fn standing(kept: Option<&KeptTest>) -> Markup {
    html! {
        @match kept {
            None => p { "Not walked yet. What stands here is a first look at a few walks of each kind: it finds who is hit, and clears nobody." },
            Some(kept) => {
                p {
                    "Walked on " (kept.when()) @if kept.beside { ", kept beside the site" } ". "
                    @if kept.is_of_now { "Nothing that it rests on has changed since." } @else {
                        strong { "Out of date: something that it rests on has changed since. Walk again." }
                    }
                }
                @if let Some(finding) = &kept.finding {
                    p { (Mark::from(finding.standing).said()) }
                    p class="strong" { (finding.sentence) }
                }
            }
        }
    }
}

fn shares(sweep: &SweepTold) -> Markup {
    html! {
        h3 { "How " (grouped(sweep.walks)) " walks end" }
        table class="numbers shares" {
            thead { tr { th scope="col" { "They end" } th scope="col" { "Share" } th scope="col" { "May be off by" } } }
            tbody {
                @for share in &sweep.shares {
                    tr {
                        th scope="row" { (share.ends) }
                        td { (format!("{:.4} %", share.share * 100.0)) }
                        td { (format!("± {:.4} %", share.error * 100.0)) }
                    }
                }
            }
        }
        p class="soft" { "Each kind of person, way and habit has the same share of the walks: this is no count of what happens on a day." }
    }
}

/// Who, what they do, and which way the leaf moves, as a family is told.
struct Apart<'f> {
    who: &'f str,
    does: String,
    moves: &'f str,
    family: &'f FamilyTold,
}

/// Takes the words of a family apart: `child of about 3, goes in, leaf closing`.
fn apart(family: &FamilyTold) -> Apart<'_> {
    let (rest, moves) = family
        .family
        .rsplit_once(", leaf ")
        .unwrap_or((&family.family, ""));
    let (who, does) = rest.split_once(", ").unwrap_or((rest, "reaches through"));
    let does = does
        .trim_end_matches(" in")
        .trim_end_matches(" out")
        .trim_end_matches(", going")
        .trim_end_matches(", facing");
    Apart {
        who,
        does: does.to_owned(),
        moves,
        family,
    }
}

/// What comes of several families: badly where one does, open where one is.
fn together<'f>(families: impl Iterator<Item = &'f FamilyTold>) -> Option<FamilyStanding> {
    families
        .map(|family| family.standing)
        .reduce(|one, other| match (one, other) {
            (FamilyStanding::Refuted, _) | (_, FamilyStanding::Refuted) => FamilyStanding::Refuted,
            (FamilyStanding::Undecided, _) | (_, FamilyStanding::Undecided) => {
                FamilyStanding::Undecided
            }
            _ => FamilyStanding::Proved,
        })
}

/// Each in the order in which it comes first.
fn each_once<T: PartialEq + Clone>(all: impl Iterator<Item = T>) -> Vec<T> {
    let mut once: Vec<T> = Vec::new();
    for one in all {
        if !once.contains(&one) {
            once.push(one);
        }
    }
    once
}

fn families(of: (&str, &str), families: &[FamilyTold], chosen: Option<Seed>) -> Markup {
    let all: Vec<Apart<'_>> = families.iter().map(apart).collect();
    let moves = each_once(all.iter().map(|one| one.moves));
    html! {
        h3 { "What is proved" }
        p { (told_together(families)) " In and out are taken together here." }
        @for way in moves {
            @let here: Vec<&Apart<'_>> = all.iter().filter(|one| one.moves == way).collect();
            @let does = each_once(here.iter().map(|one| one.does.as_str()));
            table class="numbers proved" {
                caption { "Leaf " (way) }
                thead { tr { th scope="col" { "Who" } @for one in &does { th scope="col" { (one) } } } }
                tbody {
                    @for who in each_once(here.iter().map(|one| one.who)) {
                        tr {
                            th scope="row" { (who) }
                            @for what in &does {
                                @let of_it = here.iter().filter(|one| one.who == who && one.does == *what).map(|one| one.family);
                                td { (stands(together(of_it))) }
                            }
                        }
                    }
                }
            }
        }
        @let open: Vec<&FamilyTold> = families.iter().filter(|one| one.standing != FamilyStanding::Proved).collect();
        @if !open.is_empty() {
            details class="disclosed" {
                summary { "What is not proved, one by one" }
                ul class="open-list" {
                    @for one in open {
                        li {
                            (stands(Some(one.standing))) " " (one.family)
                            @if let Some(told) = &one.refuted_by { p class="soft" { (told.sentence) } (watch(of, told, chosen)) }
                        }
                    }
                }
            }
        }
    }
}

fn stands(standing: Option<FamilyStanding>) -> Markup {
    let (class, mark, word) = match standing {
        None => return html! { span class="soft" { "–" } },
        Some(FamilyStanding::Proved) => ("proved", "✓", "proved"),
        Some(FamilyStanding::Refuted) => ("badly", "✗", "ends badly"),
        Some(FamilyStanding::Undecided) => ("open", "?", "open"),
    };
    html! { span class={ "stands " (class) } { span aria-hidden="true" { (mark) } " " (word) } }
}

fn worst(of: (&str, &str), worst: &[Told], chosen: Option<Seed>) -> Markup {
    html! {
        h3 { "The worst walks" }
        @if worst.is_empty() { p { "Nobody is touched." } }
        ol class="worst-walks" {
            @for told in worst {
                li class=[(told.seed.is_some() && told.seed == chosen).then_some("chosen")] {
                    p { span class={ "stands " @if told.bad { "badly" } @else { "proved" } } { span aria-hidden="true" { @if told.bad { "✗" } @else { "✓" } } " " (told.ends) } }
                    p { (told.sentence) }
                    (watch(of, told, chosen))
                }
            }
        }
    }
}

fn maps(look: &FirstLook) -> Markup {
    html! {
        @if !look.maps.is_empty() {
            h3 { "Where the leaf touches" }
            div class="maps" {
                @for map in &look.maps {
                    figure {
                        figcaption class="strong" { (map.title) }
                        div class="scrolls" tabindex="0" role="group" aria-label=(map.title) { (PreEscaped(&map.svg)) }
                        @for words in &map.words { p class="soft" { (words) } }
                    }
                }
            }
        }
    }
}

fn margins(margins: &[MarginTold]) -> Markup {
    html! {
        @if !margins.is_empty() {
            h3 { "How far it may go" }
            ul class="margins" {
                @for margin in margins {
                    li { span class="strong" { (margin.what) ": " } "now " (margin.now) "; " (holds(margin)) }
                }
            }
        }
    }
}

fn holds(margin: &MarginTold) -> String {
    let holds = match (&margin.holds_up_to, margin.proved) {
        (Some(holds), true) => format!("proved up to {holds}"),
        (Some(holds), false) => format!("nobody found hit up to {holds}"),
        (None, _) => "somebody is hit even now".to_owned(),
    };
    let not = margin
        .not_at
        .as_ref()
        .map_or_else(String::new, |not| format!("; no longer at {not}"));
    format!("{holds}{not}.")
}

fn assumptions(all: &[Assumption]) -> Markup {
    html! {
        details class="disclosed" {
            summary { "What this rests on: bodies, speeds, responses" }
            ul class="assumed" {
                @for one in all {
                    li { span class="strong" { (one.what) ": " } (one.value) " " span class="soft" { "(" (one.known) "; " (one.source) ")" } }
                }
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{FamilyStanding, FamilyTold, apart, together};

    fn family(words: &str, standing: FamilyStanding) -> FamilyTold {
        FamilyTold {
            family: words.to_owned(),
            standing,
            open: 0.0,
            boxes: 0,
            refuted_by: None,
        }
    }

    #[test]
    fn the_words_of_a_family_come_apart() {
        let told = |words: &str| {
            let family = family(words, FamilyStanding::Proved);
            let told = apart(&family);
            [told.who.to_owned(), told.does, told.moves.to_owned()]
        };
        assert_eq!(
            told("child of about 3, goes in, leaf closing"),
            ["child of about 3", "goes", "closing"]
        );
        assert_eq!(
            told("adult, has a hand in the gap before it starts, facing out, leaf opening"),
            ["adult", "has a hand in the gap before it starts", "opening"]
        );
        assert_eq!(
            told("someone reaches through the leaf beside a post, leaf opening")[1],
            "reaches through"
        );
    }

    #[test]
    fn the_worst_of_several_families_stands() {
        use FamilyStanding::{Proved, Refuted, Undecided};
        let of = |all: &[FamilyStanding]| {
            let all: Vec<FamilyTold> = all.iter().map(|one| family("", *one)).collect();
            together(all.iter())
        };
        assert_eq!(of(&[]), None);
        assert_eq!(of(&[Proved, Proved]), Some(Proved));
        assert_eq!(of(&[Proved, Undecided]), Some(Undecided));
        assert_eq!(of(&[Undecided, Refuted, Proved]), Some(Refuted));
    }
}
