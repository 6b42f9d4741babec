//! The conductors that a run may have, as the search sees them: what each resists, and what it costs.

/// One conductor that a run may have.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Rung {
    /// Resistance of both conductors and the fuse, in ohms.
    pub(crate) ohms: f64,
    /// What it costs, in the smallest unit that counts.
    pub(crate) cost: u64,
    /// Number among the conductors that were offered.
    pub(crate) offer: usize,
}

/// The conductors that a run may have, the thickest first; each thinner one is cheaper.
#[derive(Debug, Clone)]
pub(crate) struct Ladder(Vec<Rung>);

impl Ladder {
    /// Leaves out what is neither cheaper nor less resistance than another.
    pub(crate) fn new(mut rungs: Vec<Rung>) -> Self {
        rungs.sort_by(|a, b| a.ohms.total_cmp(&b.ohms).then(a.cost.cmp(&b.cost)));
        let mut kept: Vec<Rung> = Vec::new();
        for rung in rungs {
            if kept.last().is_none_or(|last| rung.cost < last.cost) {
                kept.push(rung);
            }
        }
        Self(kept)
    }

    /// The rungs, the thickest first.
    pub(crate) fn rungs(&self) -> &[Rung] {
        &self.0
    }

    /// The thickest.
    pub(crate) fn thickest(&self) -> Option<&Rung> {
        self.0.first()
    }

    /// Leaves only some rungs.
    pub(crate) fn keep(&mut self, keep: impl Fn(&Rung) -> bool) {
        self.0.retain(keep);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_dearer_and_thinner_is_left_out() {
        let rung = |ohms: f64, cost, offer| Rung { ohms, cost, offer };
        let ladder = Ladder::new(vec![
            rung(3.0, 10, 0),
            rung(1.0, 30, 1),
            rung(2.0, 40, 2),
            rung(2.5, 20, 3),
            rung(1.0, 35, 4),
        ]);
        let offers: Vec<usize> = ladder.rungs().iter().map(|rung| rung.offer).collect();
        assert_eq!(offers, [1, 3, 0]);
    }
}
