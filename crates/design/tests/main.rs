//! Everything that is tested from outside this crate, as one program: each program more would be linked for itself.

mod choose;
mod choose_anchors;
mod choose_conductors;
mod choose_protection;
mod choose_raised;
mod curves;
mod examples;
mod remembered;
mod tidy;
mod walk_arms;
