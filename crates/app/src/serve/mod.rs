//! The workbench: a server for this computer alone, whose pages and interface speak of the sites in one folder.

#![allow(
    clippy::unused_async,
    reason = "what answers a request is asynchronous by contract"
)]

mod answering;
mod api;
mod assets;
mod body;
mod drawn;
mod events;
mod guard;
mod items;
mod page;
mod refusal;
mod start;
mod store;
mod survey;
mod tasks;
mod walked;
mod workbench;

pub(crate) use start::{own_folder, run};

use axum::Router;
use axum::extract::DefaultBodyLimit;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use workbench::Workbench;

/// Bytes that a request may carry: ten times the largest site file that is in use.
const LARGEST_BODY: usize = 2 * 1024 * 1024;

/// Every address that is answered.
fn router(workbench: &Arc<Workbench>) -> Router {
    Router::new()
        .merge(page::routes())
        .merge(api::routes())
        .merge(assets::routes())
        .fallback(guard::nothing_here)
        .layer(DefaultBodyLimit::max(LARGEST_BODY))
        .layer(axum::middleware::from_fn_with_state(
            workbench.clone(),
            guard::guard,
        ))
        .with_state(workbench.clone())
}

/// What a lock holds. A panic of another holder leaves nothing half-done: everything is put in place in one step.
fn lock<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}
