//! Who may ask: only pages of this server in a browser on this computer. And what every answer carries.

use super::refusal::Refusal;
use super::workbench::Workbench;
use axum::extract::{Request, State};
use axum::http::header::{
    CACHE_CONTROL, CONTENT_SECURITY_POLICY, CONTENT_TYPE, HOST, HeaderName, ORIGIN,
    REFERRER_POLICY, X_CONTENT_TYPE_OPTIONS,
};
use axum::http::{HeaderMap, HeaderValue, Method, StatusCode, Uri};
use axum::middleware::Next;
use axum::response::{IntoResponse as _, Response};
use std::sync::Arc;

/// A page takes scripts, styles and pictures from here alone, none of them written into the page, and stands in no foreign frame.
const POLICY: &str = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; font-src 'self'; \
connect-src 'self'; frame-src 'self'; object-src 'none'; form-action 'self'; base-uri 'none'; frame-ancestors 'self'";

/// Names of this computer.
const NAMES: [&str; 3] = ["127.0.0.1", "localhost", "[::1]"];

const OPENER: HeaderName = HeaderName::from_static("cross-origin-opener-policy");
const RESOURCE: HeaderName = HeaderName::from_static("cross-origin-resource-policy");
const SITE: &str = "sec-fetch-site";

/// Lets a request through, or refuses it.
pub(super) async fn guard(
    State(workbench): State<Arc<Workbench>>,
    request: Request,
    next: Next,
) -> Response {
    let is_api = request.uri().path().starts_with("/api/");
    let permitted = permitted(
        request.method(),
        request.uri(),
        request.headers(),
        workbench.port(),
    );
    let answer = match permitted {
        Ok(()) => next.run(request).await,
        Err(refusal) => refusal.into_response(),
    };
    with_headers(in_our_words(answer, is_api))
}

/// Nothing is at this address.
pub(super) async fn nothing_here(uri: Uri) -> Refusal {
    Refusal::absent(
        format!("There is nothing at {}.", uri.path()),
        "Begin at / or at /api/openapi.json.",
    )
}

/// Whether a request may be carried out here.
fn permitted(method: &Method, uri: &Uri, headers: &HeaderMap, port: u16) -> Result<(), Refusal> {
    let refused = |what: String, expected: String| {
        Err(Refusal::new(
            StatusCode::FORBIDDEN,
            what,
            "Open the address that gatewright printed when it was started.",
        )
        .expected(expected))
    };
    let hosts = headers.get_all(HOST);
    let asked = uri
        .authority()
        .map(|authority| authority.as_str().as_bytes());
    let named: Vec<&[u8]> = hosts
        .iter()
        .map(HeaderValue::as_bytes)
        .chain(asked)
        .collect();
    if named.is_empty() || !named.iter().all(|host| is_ours(host, port)) {
        return refused(
            "This server is spoken to under another name than its own.".to_owned(),
            format!("Host: 127.0.0.1:{port} or localhost:{port}"),
        );
    }
    let mut origins = headers.get_all(ORIGIN).iter();
    let foreign = origins.any(|origin| {
        origin
            .as_bytes()
            .strip_prefix(b"http://")
            .is_none_or(|host| !is_ours(host, port))
    });
    let elsewhere = headers
        .get(SITE)
        .is_some_and(|site| !matches!(site.as_bytes(), b"same-origin" | b"none"));
    let changes = !matches!(*method, Method::GET | Method::HEAD | Method::OPTIONS);
    if foreign || (elsewhere && changes) {
        return refused(
            "A page of another server asks for this.".to_owned(),
            format!("Origin: http://127.0.0.1:{port}"),
        );
    }
    if matches!(*method, Method::POST | Method::PUT | Method::PATCH) && !is_json(headers) {
        return Err(Refusal::new(
            StatusCode::UNSUPPORTED_MEDIA_TYPE,
            "What is sent here is not marked as JSON.",
            "Send it with Content-Type: application/json.",
        )
        .expected("application/json"));
    }
    Ok(())
}

/// A name of this computer with our port; the port of the web may be left out.
fn is_ours(host: &[u8], port: u16) -> bool {
    let Ok(host) = std::str::from_utf8(host) else {
        return false;
    };
    NAMES.iter().any(|name| {
        host.strip_prefix(name).is_some_and(|rest| {
            let given = rest
                .strip_prefix(':')
                .and_then(|digits| digits.parse().ok());
            given == Some(port) || (rest.is_empty() && port == 80)
        })
    })
}

fn is_json(headers: &HeaderMap) -> bool {
    headers
        .get(CONTENT_TYPE)
        .and_then(|value| value.to_str().ok())
        .and_then(|value| value.split(';').next())
        .is_some_and(|kind| kind.trim().eq_ignore_ascii_case("application/json"))
}

/// A refusal of the server's own parts, such as for a body that is too long, said as we say it.
fn in_our_words(answer: Response, is_api: bool) -> Response {
    let status = answer.status();
    let kind = answer.headers().get(CONTENT_TYPE);
    let ours = kind.is_some_and(|kind| {
        let kind = kind.as_bytes();
        kind.starts_with(b"application/json") || (!is_api && kind.starts_with(b"text/html"))
    });
    if ours || !(status.is_client_error() || status.is_server_error()) {
        return answer;
    }
    let (what, act) = match status {
        StatusCode::PAYLOAD_TOO_LARGE => (
            "What was sent is too long.",
            "Send less than 2 MiB at a time.",
        ),
        StatusCode::METHOD_NOT_ALLOWED => (
            "That cannot be done at this address.",
            "See /api/openapi.json for what can.",
        ),
        StatusCode::BAD_REQUEST => (
            "The request cannot be read.",
            "See /api/openapi.json for how it is written.",
        ),
        _ => (
            "The request cannot be carried out.",
            "See /api/openapi.json for what can be asked.",
        ),
    };
    let mut told = Refusal::new(status, what, act).into_response();
    if let Some(allow) = answer.headers().get(axum::http::header::ALLOW) {
        told.headers_mut()
            .insert(axum::http::header::ALLOW, allow.clone());
    }
    told
}

fn with_headers(mut answer: Response) -> Response {
    let headers = answer.headers_mut();
    let fixed = [
        (CONTENT_SECURITY_POLICY, POLICY),
        (X_CONTENT_TYPE_OPTIONS, "nosniff"),
        (REFERRER_POLICY, "no-referrer"),
        (OPENER, "same-origin"),
        (RESOURCE, "same-origin"),
    ];
    for (name, value) in fixed {
        headers.insert(name, HeaderValue::from_static(value));
    }
    headers
        .entry(CACHE_CONTROL)
        .or_insert(HeaderValue::from_static("no-store"));
    answer
}
