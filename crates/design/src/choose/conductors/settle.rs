//! A plan carried through the whole site: what batteries leave and what converters draw follows from what is chosen, and
//! what is chosen from that.

use super::plan::{Decided, Plan, Reached, voltages};
use site::Site;

/// What came of a plan.
pub(crate) struct Settled {
    pub(crate) decided: Decided,
    /// The site with what was chosen in it.
    pub(crate) site: Site,
    /// The lowest voltages of that site, the whole of it worked.
    pub(crate) after: Vec<Reached>,
    /// Every voltage that conductors can mend is kept in the whole site.
    pub(crate) is_kept: bool,
    /// No set costs less.
    pub(crate) bound: u64,
}

impl Settled {
    /// Everything could be worked and mended, and no set is cheaper: proved.
    pub(crate) fn is_proved(&self) -> bool {
        let whole = self.decided.unworked.is_empty() && self.decided.stuck.is_empty();
        whole && self.is_kept && self.bound >= self.decided.cost
    }
}

/// Rounds in which what is chosen is put into the site and decided again.
const ROUNDS: usize = 5;

/// Decides with the most that others can leave, the thickest conductors everywhere; if that does not stand in the whole
/// site, with what the choice leaves.
pub(crate) fn settled(plan: &Plan<'_>) -> Settled {
    let mut context = plan.thickest();
    let mut bound = None;
    let mut round = 0;
    loop {
        let decided = plan.decided(&context);
        let site = plan.site_with(&decided.chosen);
        let (after, _) = voltages(&site);
        let is_kept = after
            .iter()
            .filter(|reached| plan.concerns(reached, &decided))
            .all(Reached::is_kept);
        let bound = *bound.get_or_insert(decided.bound);
        round += 1;
        if is_kept || round == ROUNDS {
            return Settled {
                bound: bound.min(decided.cost),
                decided,
                site,
                after,
                is_kept,
            };
        }
        context = if round + 1 == ROUNDS {
            plan.thinnest()
        } else {
            site
        };
    }
}

impl Plan<'_> {
    /// It hangs on a cable of the plan, and not on one that no set mends.
    fn concerns(&self, reached: &Reached, decided: &Decided) -> bool {
        let named = |spot: &usize| {
            let id = &self.site.cable[self.spots[*spot].cable].id;
            reached.cable.as_ref() == Some(id)
        };
        let mut spots = 0..self.spots.len();
        spots
            .find(named)
            .is_some_and(|spot| !decided.stuck.contains(&spot))
    }
}
