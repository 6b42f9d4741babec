//! The pulls of a site as they are drawn and listed: each from both ends, piece by piece.

use crate::asking::{Asking, Lack};
use crate::check::pull::alone::ends;
use crate::check::pull::tension::tension_limit;
use crate::check::pull::together::{bundle, together};
use crate::check::pull::walk::{Piece, Pulled, pieces, pull, turned_round};
use crate::check::route::bore::{bore, cables_in};
use crate::outcome::Halt;
use formula::Formula as _;
use formula::motion::{PushPullGuide, Pusher};
use quantity::{Angle, Force, ForcePerLength, Length, Quantity as _};
use site::{Cable, Conduit, Site};

/// The cables that go through a conduit in one pull, and what they meet there.
#[derive(Debug, Clone, PartialEq)]
pub struct ShownPull {
    /// The conduit.
    pub conduit: String,
    /// Its beginning and its end.
    pub ends: [String; 2],
    /// The cables that are pulled together.
    pub cables: Vec<String>,
    /// What is known of the pull; or the lines that the site file lacks, and why there is none.
    pub worked: Result<WorkedPull, Vec<String>>,
}

/// A pull from both ends.
#[derive(Debug, Clone, PartialEq)]
pub struct WorkedPull {
    /// Fed at the beginning of the conduit and pulled at its end.
    pub forward: PullWay,
    /// Fed at the end of the conduit and pulled at its beginning.
    pub backward: PullWay,
    /// The pieces of the way from the beginning of the conduit.
    pub pieces: Vec<WayPiece>,
    /// What the reel or the loose cable holds back before the first piece; nothing where the site does not say.
    pub drag: Option<Force>,
    /// What the weakest of the cables stands; nothing where it is not known.
    pub limit: Option<Force>,
    /// What the weakest of the cables stands against the side of a bend; nothing where it is not known.
    pub side_limit: Option<ForcePerLength>,
    /// What a hand keeps up.
    pub hand: Force,
}

impl WorkedPull {
    /// Fed at the beginning it takes less, or as much.
    pub fn is_easier_forward(&self) -> bool {
        self.forward.tension <= self.backward.tension
    }

    /// The easier way.
    pub fn easier(&self) -> &PullWay {
        if self.is_easier_forward() {
            &self.forward
        } else {
            &self.backward
        }
    }

    /// The other way.
    pub fn harder(&self) -> &PullWay {
        if self.is_easier_forward() {
            &self.backward
        } else {
            &self.forward
        }
    }

    /// Length of the way.
    pub fn length(&self) -> Length {
        let ends = self.pieces.last().map(|piece| piece.to);
        ends.unwrap_or_else(|| Length::from_base(0.0))
    }

    /// All bends together.
    pub fn bends(&self) -> Angle {
        let turns = self.pieces.iter().filter_map(|piece| piece.bend);
        Angle::from_base(turns.map(|turn| turn.base().abs()).sum())
    }
}

/// A pull from one end.
#[derive(Debug, Clone, PartialEq)]
pub struct PullWay {
    /// Largest pull on all cables together.
    pub tension: Force,
    /// Largest load against the side of a bend on the worst-placed cable.
    pub side_load: ForcePerLength,
    /// The pull over the way from the beginning of the conduit, whichever end is fed, in that order.
    pub steps: Vec<(Length, Force)>,
    /// Where it first passes what a hand keeps up: the way from the end that is fed.
    pub past_hand: Option<Length>,
}

/// A straight piece or a bend of a conduit.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct WayPiece {
    /// Where it begins, from the beginning of the conduit.
    pub from: Length,
    /// Where it ends.
    pub to: Length,
    /// By how much it bends; nothing where it is straight.
    pub bend: Option<Angle>,
}

/// Every pull through every conduit, in the order of the site file.
pub fn shown(site: &Site) -> Vec<ShownPull> {
    let mut shown = Vec::new();
    for conduit in &site.conduit {
        if cables_in(site, conduit).next().is_none() {
            continue;
        }
        for cables in together(site, conduit) {
            let mut asking = Asking::new(site.site.unit_system());
            let worked = worked(&mut asking, site, conduit, &cables);
            let (beginning, end) = ends(conduit, true);
            shown.push(ShownPull {
                conduit: conduit.id.to_string(),
                ends: [beginning, end],
                cables: cables.iter().map(|cable| cable.id.to_string()).collect(),
                worked: worked.map_err(|Halt| why(&asking)),
            });
        }
    }
    shown
}

/// The lines that the site file lacks, or what is out of reach.
fn why(asking: &Asking<'_>) -> Vec<String> {
    let lines = asking.lacks.iter().map(Lack::line);
    let beyond = asking.beyond.iter().map(|beyond| beyond.reach.why.clone());
    lines.chain(beyond).collect()
}

fn worked<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    conduit: &'s Conduit,
    cables: &[&'s Cable],
) -> Result<WorkedPull, Halt> {
    let inside = bore(asking, conduit);
    let friction = asking.read(&conduit.origin, "friction", conduit.friction.as_ref());
    let way = pieces(asking, conduit);
    let bundle = bundle(asking, cables);
    let (inside, friction, way, bundle) = (inside?, friction?, way?, bundle?);
    let pulling = site.pulling.as_ref();
    let drag = pulling.and_then(|pulling| pulling.drag.as_ref());
    let drag = drag.map(quantity::Measured::nominal);
    let start = drag.unwrap_or_else(|| Force::from_base(0.0));
    let back = turned_round(&way);
    let forward = pull(asking, &way, bundle, (friction, inside), start)?;
    let backward = pull(asking, &back, bundle, (friction, inside), start)?;
    let hand = PushPullGuide { who: Pusher::Women };
    let hand = hand.evaluate().map_err(|_| Halt)?.keep;
    let (limit, side_limit) = limits(site, cables);
    Ok(WorkedPull {
        pieces: laid(&way),
        forward: from_beginning(&forward, hand),
        backward: from_end(&backward, hand),
        drag,
        limit,
        side_limit,
        hand,
    })
}

fn from_beginning(pulled: &Pulled, hand: Force) -> PullWay {
    PullWay {
        past_hand: pulled.passes(hand),
        tension: pulled.tension,
        side_load: pulled.side_load,
        steps: pulled
            .steps
            .iter()
            .map(|step| (step.along, step.tension))
            .collect(),
    }
}

fn from_end(pulled: &Pulled, hand: Force) -> PullWay {
    let length = pulled.steps.last().map_or(0.0, |step| step.along.base());
    let mut way = from_beginning(pulled, hand);
    for (along, _) in &mut way.steps {
        *along = Length::from_base(length - along.base());
    }
    way.steps.reverse();
    way
}

/// What the weakest cable of a pull stands: along it, and against its side. Nothing where one cable does not say.
fn limits(site: &Site, cables: &[&Cable]) -> (Option<Force>, Option<ForcePerLength>) {
    let mut asking = Asking::new(site.site.unit_system());
    let along: Option<Vec<Force>> = cables
        .iter()
        .map(|cable| tension_limit(&mut asking, cable).ok())
        .collect();
    let side: Option<Vec<ForcePerLength>> = cables
        .iter()
        .map(|cable| {
            let limit = cable.greatest_side_load.as_ref();
            limit.map(quantity::Measured::nominal)
        })
        .collect();
    (least(along), least(side))
}

fn least<Q: PartialOrd + Copy>(all: Option<Vec<Q>>) -> Option<Q> {
    let smaller = |one: Q, other: Q| if other < one { other } else { one };
    all?.into_iter().reduce(smaller)
}

fn laid(way: &[Piece]) -> Vec<WayPiece> {
    let mut from = Length::from_base(0.0);
    let one = |piece: &Piece| {
        let (long, bend) = match *piece {
            Piece::Straight { length, .. } => (length, None),
            Piece::Bend { angle, radius } => (
                Length::from_base(radius.base() * angle.base().abs()),
                Some(angle),
            ),
        };
        let to = from + long;
        let piece = WayPiece { from, to, bend };
        from = to;
        piece
    };
    way.iter().map(one).collect()
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::shown;
    use crate::check::testing::{ONE_PULL as SITE, site};
    use quantity::Quantity as _;

    #[test]
    fn both_ways_run_over_the_same_place_from_the_beginning() {
        let pulls = shown(&site(SITE));
        let worked = pulls[0].worked.clone().unwrap();
        assert!(!worked.is_easier_forward());
        let feet = |length: quantity::Length| length.base() / 0.3048;
        let (forward, backward) = (&worked.forward.steps, &worked.backward.steps);
        let ends =
            |steps: &[(quantity::Length, _)]| (feet(steps[0].0), feet(steps.last().unwrap().0));
        assert_eq!(ends(forward).0.total_cmp(&0.0), std::cmp::Ordering::Equal);
        assert!((ends(backward).0).abs() < 1e-9);
        assert!((ends(forward).1 - ends(backward).1).abs() < 1e-9);
        // At its feeding end each begins with the drag of the reel: 2 lbf.
        let pounds = |force: quantity::Force| force.base() / 4.448_221_615_260_5;
        assert!((pounds(forward[0].1) - 2.0).abs() < 1e-9);
        assert!((pounds(backward.last().unwrap().1) - 2.0).abs() < 1e-9);
        // Backward: (2 + 4 ft of straight) · e^(0.35 · π/2) + 100 ft of straight.
        let weight = 0.045 * 0.35;
        let grown = (0.35 * std::f64::consts::FRAC_PI_2).exp();
        let expected = (2.0 + 4.0 * weight) * grown + 100.0 * weight;
        assert!((pounds(worked.backward.tension) - expected).abs() < 1e-4);
        assert!((feet(worked.length()) - 104.0 - std::f64::consts::FRAC_PI_4).abs() < 1e-6);
    }

    #[test]
    fn what_is_missing_is_named() {
        let pulls = shown(&site(&SITE.replace("friction = \"0.35\"", "")));
        let missing = pulls[0].worked.clone().unwrap_err();
        assert!(missing[0].starts_with("friction ="), "{missing:?}");
    }
}
