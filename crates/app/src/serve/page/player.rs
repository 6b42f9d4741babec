//! One walk on the page of the walk test: the way to it, and the stage on which it is played.

use design::walk::{Seed, Told};
use maud::{Markup, html};

/// Leads to one walk as it is played.
pub(super) fn watch((job, gate): (&str, &str), told: &Told, chosen: Option<Seed>) -> Markup {
    html! {
        @if let Some(seed) = told.seed {
            p { a class="button" href={ "/jobs/" (job) "/walk?gate=" (gate) "&walk=" (seed) "#replay" } aria-current=[(told.seed == chosen).then_some("true")] { "Watch it" } }
        }
    }
}

/// The stage; the module plays on it.
pub(super) fn player(gate: &str, seed: Seed) -> Markup {
    let title = match seed {
        Seed::Number(number) => format!("Walk {number}"),
        Seed::Spelled(_) => "A walk that a proof came upon".to_owned(),
    };
    html! {
        section class="player" id="replay" tabindex="-1" aria-labelledby="of-replay" data-gate=(gate) data-walk=(seed) {
            h3 id="of-replay" { (title) }
            p class="strong" id="replay-words" {}
            div class="board" { svg id="board" class="board-drawing" role="img" aria-label="Leaf, body and devices" {} }
            p class="soft" id="seen-from" {}
            div class="playing" {
                button type="button" class="first" id="play" { "Play" }
                button type="button" id="back" { "Step back" }
                button type="button" id="on" { "Step on" }
                button type="button" id="touch" { "To the touch" }
            }
            div class="scrub" {
                label for="time" { "Time" }
                input type="range" id="time" min="0" max="1" step="1" value="0";
                output id="clock" for="time" {}
            }
            dl class="doing" id="doing" {}
            p class="unseen" id="now" role="status" {}
            ul class="devices" id="devices" {}
            details class="disclosed" { summary { "What happens when" } ol class="happens" id="happens" {} }
        }
    }
}
