//! A set of anchors evaluated while its working is kept.

use super::Asking;
use crate::outcome::Halt;
use formula::Formula;
use formula::standing::anchor_group::Works;

impl Works for Asking<'_> {
    type Stop = Halt;
    fn work<F: Formula>(&mut self, formula: &F) -> Result<F::Gives, Halt> {
        Asking::work(self, formula)
    }
}
