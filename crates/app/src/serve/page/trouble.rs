//! A page that says why another is not there.

use super::shell::Shell;
use crate::serve::refusal::Refusal;
use axum::response::{IntoResponse, Response};
use maud::html;

/// Why there is no page.
pub(super) struct Trouble(Refusal);

impl From<Refusal> for Trouble {
    fn from(refusal: Refusal) -> Self {
        Self(refusal)
    }
}

impl IntoResponse for Trouble {
    fn into_response(self) -> Response {
        let shell = Shell {
            title: "Not here",
            ..Shell::default()
        };
        let page = shell.around(&html! {
            div class="leaf-of-paper" {
                h1 { "Not here" }
                p { (self.0.what()) }
                p { (self.0.act()) }
                p { a href="/" { "All jobs" } }
            }
        });
        (self.0.status(), page).into_response()
    }
}
