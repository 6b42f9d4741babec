//! The way of each radio bridge from the side: line, Fresnel zone, ground, and what stands nearest.

use crate::sheets::Planned;
use design::radio::{RadioProfile, radio_profiles};
use draw::{Marked, North, Part, Plot, ScaleChoice, Series};
use quantity::{Length, Quantity as _, Ratio};
use site::Site;

/// The drawings of the radio bridges of a site.
pub(crate) fn planned(site: &Site) -> Vec<Planned> {
    let units = site.site.unit_system();
    let profiles = radio_profiles(site);
    let planned = profiles.iter().map(|profile| Planned {
        name: format!("radio-{}", profile.link),
        scene: plot(profile).scene(units),
        north: North::NotSeenFromAbove,
        scale: ScaleChoice::NotToScale(Ratio::from_base(1.0)),
        half: true,
    });
    planned.collect()
}

fn plot(profile: &RadioProfile) -> Plot<Length, Length> {
    let title = format!("Way of radio link {}", profile.link);
    let mut plot = Plot::new(title, "distance from the gate", "height over the gate line");
    "The straight line from antenna to antenna, the spindle in which its wave runs, the room that is kept free below it, the ground and what stands nearest."
        .clone_into(&mut plot.description);
    let line = |name: &str, points: &[(Length, Length)], part: Part| Series {
        name: name.to_owned(),
        points: points.to_vec(),
        part,
    };
    let mut spindle = profile.zone_top.clone();
    spindle.extend(profile.zone_bottom.iter().rev().copied());
    plot.series = vec![
        line("straight line", &profile.line, Part::OtherDemand),
        line("first Fresnel zone", &spindle, Part::Aside),
        line(
            "kept free down to here, 60 % of it",
            &profile.kept_free,
            Part::Limit,
        ),
    ];
    if profile.ground.len() > 1 {
        plot.series
            .push(line("tops of the ground", &profile.ground, Part::Demand));
    }
    plot.marked = profile
        .standing
        .iter()
        .map(|(at, words)| Marked {
            at: *at,
            words: words.clone(),
        })
        .collect();
    plot.remarks.push(
        "Heights are drawn larger than distances. Tops are marked of what stands nearest to the line, the leaf in each position; what is lost in rain and leaves is told by the finding on the link.".to_owned(),
    );
    plot
}
