//! Neutral symbols for circuits.
