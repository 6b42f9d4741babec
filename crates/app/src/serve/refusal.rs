//! Why something was not done, for the person who can mend it.

use axum::Json;
use axum::http::StatusCode;
use axum::response::{IntoResponse, Response};
use serde_json::{Value, json};

/// Why a request was not carried out.
#[derive(Debug, Clone)]
pub(crate) struct Refusal {
    status: StatusCode,
    /// Apart, so that what is not refused carries little.
    said: Box<Said>,
}

/// What is said about it.
#[derive(Debug, Clone, Default)]
struct Said {
    what: String,
    place: String,
    expected: String,
    act: String,
    /// What stands instead, where somebody else has changed it.
    now: Option<Value>,
}

impl Refusal {
    /// A refusal that says what is so and what to do.
    pub(crate) fn new(status: StatusCode, what: impl Into<String>, act: impl Into<String>) -> Self {
        Self {
            status,
            said: Box::new(Said {
                what: what.into(),
                act: act.into(),
                ..Said::default()
            }),
        }
    }

    /// There is no such thing.
    pub(crate) fn absent(what: impl Into<String>, act: impl Into<String>) -> Self {
        Self::new(StatusCode::NOT_FOUND, what, act)
    }

    /// What was sent cannot be used.
    pub(crate) fn unusable(what: impl Into<String>, act: impl Into<String>) -> Self {
        Self::new(StatusCode::UNPROCESSABLE_ENTITY, what, act)
    }

    /// The computer did not do it.
    pub(crate) fn failed(what: impl Into<String>, act: impl Into<String>) -> Self {
        Self::new(StatusCode::INTERNAL_SERVER_ERROR, what, act)
    }

    /// A problem of the site file.
    pub(crate) fn problem(problem: &site::Problem) -> Self {
        let act = problem.write.as_ref().map_or_else(
            || "Mend it and send it again.".to_owned(),
            |write| format!("Write {write}"),
        );
        Self::unusable(problem.what.clone(), act)
            .at(if problem.path.is_empty() {
                format!("{}:{}:{}", problem.file, problem.line, problem.column)
            } else {
                problem.path.clone()
            })
            .expected(problem.expected.clone().unwrap_or_default())
    }

    /// Where.
    pub(crate) fn at(mut self, place: impl Into<String>) -> Self {
        self.said.place = place.into();
        self
    }

    /// What was expected.
    pub(crate) fn expected(mut self, expected: impl Into<String>) -> Self {
        self.said.expected = expected.into();
        self
    }

    /// What stands instead.
    pub(crate) fn now(mut self, now: Value) -> Self {
        self.said.now = Some(now);
        self
    }

    /// The status that it is answered with.
    pub(crate) fn status(&self) -> StatusCode {
        self.status
    }

    /// What is so, as a sentence.
    pub(crate) fn what(&self) -> &str {
        &self.said.what
    }

    /// What to do about it.
    pub(crate) fn act(&self) -> &str {
        &self.said.act
    }

    /// For machines.
    pub(crate) fn to_json(&self) -> Value {
        let mut told = json!({
            "what": self.said.what,
            "where": self.said.place,
            "expected": self.said.expected,
            "do": self.said.act,
        });
        if let Some(now) = &self.said.now {
            told["now"] = now.clone();
        }
        told
    }
}

impl IntoResponse for Refusal {
    fn into_response(self) -> Response {
        (self.status, Json(self.to_json())).into_response()
    }
}
