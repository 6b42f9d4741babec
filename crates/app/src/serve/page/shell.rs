//! The frame of every page: head, where one is, the caution, and what it loads, all of it from this program.

use maud::{DOCTYPE, Markup, html};
use papers::view::CAUTION_LINE;

/// What stands in the head of a page besides its content.
#[derive(Debug, Clone, Default)]
pub(crate) struct Shell<'a> {
    /// Title of the page, as the browser's tab shows it.
    pub(crate) title: &'a str,
    /// Where the page is in the house.
    pub(crate) place: Place<'a>,
    /// Style sheets besides the common one, by name: `workbench.css`.
    pub(crate) styles: &'a [&'a str],
    /// Modules, by name: `workbench.js`.
    pub(crate) modules: &'a [&'a str],
    /// Class of the body.
    pub(crate) class: &'a str,
}

/// A page of the house.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub(crate) enum Place<'a> {
    /// The list of jobs.
    #[default]
    Jobs,
    /// A job: its name in addresses and its title.
    Job(&'a str, &'a str),
    /// The papers of a job.
    Papers(&'a str, &'a str),
    /// The pictures of a job.
    Pictures(&'a str, &'a str),
    /// The walk test of a job.
    Walk(&'a str, &'a str),
    /// The calculations.
    Calculations,
}

impl Shell<'_> {
    /// The whole page around its content.
    pub(crate) fn around(&self, content: &Markup) -> Markup {
        html! {
            (DOCTYPE)
            html lang="en" {
                head {
                    meta charset="utf-8";
                    meta name="viewport" content="width=device-width, initial-scale=1";
                    meta name="color-scheme" content="light dark";
                    title { (self.title) " – Gatewright" }
                    link rel="icon" type="image/svg+xml" href="/assets/mark.svg";
                    link rel="preload" as="font" type="font/otf" crossorigin href="/assets/inter-regular.otf";
                    link rel="preload" as="font" type="font/otf" crossorigin href="/assets/inter-semibold.otf";
                    link rel="stylesheet" href="/assets/paper.css";
                    link rel="stylesheet" href="/assets/controls.css";
                    @for style in self.styles { link rel="stylesheet" href={ "/assets/" (style) }; }
                    @for module in self.modules { script type="module" src={ "/assets/" (module) } {} }
                }
                body class=(self.class) {
                    a class="skip" href="#content" { "To the content" }
                    header class="head" { (self.head()) }
                    main id="content" tabindex="-1" { (content) }
                    (caution())
                }
            }
        }
    }

    fn head(&self) -> Markup {
        html! {
            a class="house" href="/" { "Gatewright" }
            @match self.place {
                Place::Job(_, title) => span class="crumb here" { (title) },
                Place::Papers(name, title) => (under(name, title, "Papers")),
                Place::Pictures(name, title) => (under(name, title, "Pictures")),
                Place::Walk(name, title) => (under(name, title, "Walk test")),
                Place::Jobs | Place::Calculations => {},
            }
            nav class="end" aria-label="House" {
                @if self.place == Place::Jobs {
                    a class="here" href="/" aria-current="page" { "Jobs" }
                } @else {
                    a href="/" { "Jobs" }
                }
                @if self.place == Place::Calculations {
                    a class="here" href="/calculations" aria-current="page" { "Calculations" }
                } @else {
                    a href="/calculations" { "Calculations" }
                }
            }
        }
    }
}

/// A page of a job, after the way back to the job.
fn under(name: &str, title: &str, here: &str) -> Markup {
    html! {
        a href={ "/jobs/" (name) } { (title) }
        span class="crumb here" { (here) }
    }
}

/// The caution at the foot of every page.
fn caution() -> Markup {
    html! {
        footer class="caution" {
            strong { "Gates crush, mains kills, anchors and posts fail." } " " (CAUTION_LINE)
        }
    }
}
