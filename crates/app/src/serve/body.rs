//! What a request carries, read strictly, with refusals that say what is wrong.

use super::refusal::Refusal;
use axum::body::Bytes;
use axum::extract::{FromRequest, FromRequestParts, Query, Request};
use axum::http::StatusCode;
use axum::http::request::Parts;
use serde::de::DeserializeOwned;

/// A body of JSON.
pub(crate) struct Sent<T>(pub(crate) T);

impl<S: Send + Sync, T: DeserializeOwned> FromRequest<S> for Sent<T> {
    type Rejection = Refusal;

    async fn from_request(request: Request, state: &S) -> Result<Self, Refusal> {
        let bytes =
            Bytes::from_request(request, state)
                .await
                .map_err(|rejection| match rejection.status() {
                    StatusCode::PAYLOAD_TOO_LARGE => Refusal::new(
                        StatusCode::PAYLOAD_TOO_LARGE,
                        "What was sent is too long.",
                        "Send less at a time: 2 MiB, or 8 MiB where a job is brought in.",
                    ),
                    status => Refusal::new(
                        status,
                        "What was sent did not arrive whole.",
                        "Send it again.",
                    ),
                })?;
        let bytes: &[u8] = if bytes.is_empty() { b"{}" } else { &bytes };
        serde_json::from_slice(bytes).map(Self).map_err(|error| {
            let status = if error.is_data() {
                StatusCode::UNPROCESSABLE_ENTITY
            } else {
                StatusCode::BAD_REQUEST
            };
            Refusal::new(
                status,
                format!("What was sent cannot be read: {error}."),
                "See /api/openapi.json for how it is written.",
            )
            .at(format!("line {}, column {}", error.line(), error.column()))
            .expected("JSON")
        })
    }
}

/// What stands behind the question mark of an address.
pub(crate) struct Given<T>(pub(crate) T);

impl<S: Send + Sync, T: DeserializeOwned> FromRequestParts<S> for Given<T> {
    type Rejection = Refusal;

    async fn from_request_parts(parts: &mut Parts, state: &S) -> Result<Self, Refusal> {
        Query::<T>::from_request_parts(parts, state)
            .await
            .map(|Query(given)| Self(given))
            .map_err(|rejection| {
                Refusal::new(
                    StatusCode::BAD_REQUEST,
                    format!("The address cannot be read: {}.", rejection.body_text()),
                    "See /api/openapi.json for how it is written.",
                )
                .at(parts.uri.query().unwrap_or_default())
            })
    }
}
