//! Everything that is tested from outside this crate, as one program: each program more would be linked for itself.

mod closed_forms;
mod network;
mod queue;
mod swept_again;
mod swept_world;
mod walk_account;
mod walk_again;
mod walk_collision;
mod walk_lean;
mod walk_mutation;
mod walk_prove;
mod walk_reach;
mod walk_replayed;
mod walk_rising;
mod walk_slide;
mod walk_swing;
mod walk_swing_symmetry;
mod walk_symmetry;
mod walk_turning_mutation;
mod walk_turning_prove;
mod walk_world;
