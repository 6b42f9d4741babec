//! The cables of a conduit as they are pulled: those that share their whole route go in together.

use super::walk::Bundle;
use crate::asking::{Asking, read};
use crate::check::route::bore::cables_in;
use crate::outcome::Halt;
use quantity::{Length, MassPerLength, Quantity as _};
use site::{Cable, Conduit, Site};

/// The cables of a conduit, sorted into pulls.
pub(crate) fn together<'s>(site: &'s Site, conduit: &'s Conduit) -> Vec<Vec<&'s Cable>> {
    let mut pulls: Vec<Vec<&Cable>> = Vec::new();
    for cable in cables_in(site, conduit) {
        let same =
            |pull: &&mut Vec<&Cable>| pull.first().is_some_and(|first| first.route == cable.route);
        match pulls.iter_mut().find(same) {
            Some(pull) => pull.push(cable),
            None => pulls.push(vec![cable]),
        }
    }
    pulls
}

/// The cables of one pull, taken together.
pub(crate) fn bundle<'s>(asking: &mut Asking<'s>, cables: &[&'s Cable]) -> Result<Bundle, Halt> {
    let (mut mass, mut widest) = (0.0, 0.0_f64);
    let mut whole = Ok(());
    for cable in cables {
        let mass_per_length = read!(asking, cable.mass_per_length);
        let diameter = read!(asking, cable.diameter);
        match (mass_per_length, diameter) {
            (Ok(mass_per_length), Ok(diameter)) => {
                mass += mass_per_length.base();
                widest = widest.max(diameter.base());
            }
            _ => whole = Err(Halt),
        }
    }
    whole.map(|()| Bundle {
        mass_per_length: MassPerLength::from_base(mass),
        diameter: Length::from_base(widest),
        count: cables.len(),
    })
}
