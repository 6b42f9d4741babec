//! Handbook pages.
