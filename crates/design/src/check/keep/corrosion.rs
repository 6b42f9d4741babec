//! How long until rust reaches a leaf, or a post that holds it.
//!
//! The zinc is used up at the upper rate of the air's class. Another metal that is nobler than the part eats it where
//! both are wet, and a cut edge that was not coated again has no zinc at all: either fails by itself.

use crate::asking::{Asking, Wants, pick, read};
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::life::{CorrosivityClass, ZincLife};
use formula::{Evidence, Source};
use quantity::{Quantity as _, Word as _};
use site::{Coating, Finish, Material, Origin, PostRole, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "keep-corrosion",
    codes: BOTH,
    leaves_open: "soil line, standing water, irrigation and de-icing salt, the inside of tubes, and bolts: look and tap at every visit",
    concerns: "each leaf and each post that carries, guides or catches one",
    ask,
};

/// How the finish of a leaf is written.
const OF_LEAF: &str =
    "[gate.leaf.finish]\ncoating = \"hot-dip zinc\"\nzinc = \"85 µm\"\nwanted_life = \"25 years\"";
/// How the finish of a post is written.
const OF_POST: &str =
    "[gate.post.finish]\ncoating = \"hot-dip zinc\"\nzinc = \"85 µm\"\nwanted_life = \"25 years\"";

static NOBILITY: Source = Source {
    work: "order of the metals in sea water: zinc and aluminum, then steel, then stainless steel",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "common practice against contact corrosion",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for gate in &site.gate {
        for leaf in &gate.leaf {
            round.ask(About::new(&leaf.origin, &leaf.id), |asking| {
                let material = pick!(asking, leaf.material);
                let finish = written(asking, &leaf.origin, leaf.finish.as_ref(), OF_LEAF);
                lasts(asking, site, material, finish?)
            });
        }
        let holds = |role| matches!(role, PostRole::Hinge | PostRole::Catch | PostRole::Guide);
        for post in gate.post.iter().filter(|post| holds(post.role)) {
            round.ask(About::new(&post.origin, &post.id), |asking| {
                let finish = written(asking, &post.origin, post.finish.as_ref(), OF_POST);
                lasts(asking, site, Ok(Material::Steel), finish?)
            });
        }
    }
}

fn written<'s>(
    asking: &mut Asking<'s>,
    origin: &'s Origin,
    finish: Option<&'s Finish>,
    table: &'static str,
) -> Result<&'s Finish, Halt> {
    match finish {
        Some(finish) => Ok(finish),
        None => asking.lack(origin, "finish", Wants::Table(table)),
    }
}

fn lasts<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    material: Result<Material, Halt>,
    finish: &'s Finish,
) -> Answer {
    let coating = pick!(asking, finish.coating);
    let contact = material.and_then(|material| is_apart(asking, finish, material));
    let edges = coating.and_then(|coating| edges(asking, finish, coating));
    let (material, coating) = (material?, coating?);
    if contact.is_ok_and(|apart| !apart) {
        asking.say(|_| {
            format!(
                "Where it is wet, the {} that touches the {material} eats it: keep the two apart with a sleeve or a pad.",
                finish.touches.map_or("other metal", Material::word)
            )
        });
        return Ok(Outcome::Rule(false));
    }
    if edges.is_ok_and(|coated| !coated) {
        asking.say(|_| "Cut and drilled edges are bare: rust begins there at once.".to_owned());
        return Ok(Outcome::Rule(false));
    }
    let answer = match (coating, material) {
        (Coating::HotDipZinc | Coating::ZincAndPaint, _) => zinc(asking, site, finish),
        (_, Material::Steel) => bare_or_painted(asking, coating),
        (_, material) => {
            asking.say(|_| format!("It is {material}, which needs no zinc."));
            Ok(Outcome::Rule(true))
        }
    };
    contact?;
    edges?;
    answer
}

/// Steel with paint alone, or with nothing.
fn bare_or_painted(asking: &mut Asking<'_>, coating: Coating) -> Answer {
    if coating == Coating::Paint {
        return asking.refuse(
            "paint alone on steel lasts as long as it is unhurt; no table says how long: look at it at every visit",
        );
    }
    asking.say(|_| "Bare steel rusts from the first rain.".to_owned());
    Ok(Outcome::Rule(false))
}

fn zinc<'s>(asking: &mut Asking<'s>, site: &'s Site, finish: &'s Finish) -> Answer {
    let thickness = read!(asking, finish.zinc);
    let wanted = read!(asking, finish.wanted_life);
    let class = pick!(asking, site.climate?.corrosivity);
    let (thickness, wanted, class) = (thickness?, wanted?, class?);
    let Some(corrosivity) = CorrosivityClass::from_word(class.word()) else {
        return asking.refuse(
            "in the extreme class zinc has no steady rate to count on; ask the galvanizer for a system",
        );
    };
    let life = asking.work(&ZincLife {
        thickness,
        corrosivity,
    })?;
    asking.say(|print| {
        format!(
            "{:.0} µm of zinc in {class} air last {} at the upper rate; wanted are {}.",
            thickness.base() * 1e6,
            print.q(life.life),
            print.q(wanted)
        )
    });
    Ok(Outcome::at_most(
        Labeled::new("years wanted before the first paint", wanted),
        Labeled::new("life of the zinc", life.life),
    ))
}

/// No nobler metal touches it unless something keeps the two apart.
fn is_apart<'s>(
    asking: &mut Asking<'s>,
    finish: &'s Finish,
    material: Material,
) -> Result<bool, Halt> {
    let Some(touching) = finish.touches else {
        return Ok(true);
    };
    pick!(asking, finish.touches)?;
    if rank(touching) <= rank(material) {
        return Ok(true);
    }
    asking.rest_on(&NOBILITY);
    asking
        .need(
            &finish.origin,
            "insulated",
            finish.insulated.as_ref(),
            "true",
        )
        .copied()
}

/// Place in the order of the metals; timber and plastic are not in it and hurt none.
fn rank(material: Material) -> u8 {
    match material {
        Material::Timber | Material::Plastic => 0,
        Material::Aluminum => 1,
        Material::Steel => 2,
        Material::StainlessSteel => 3,
    }
}

/// The edges of zinc-coated steel were coated again.
fn edges<'s>(asking: &mut Asking<'s>, finish: &'s Finish, coating: Coating) -> Result<bool, Halt> {
    match coating {
        Coating::HotDipZinc | Coating::ZincAndPaint => asking
            .need(
                &finish.origin,
                "edges_coated",
                finish.edges_coated.as_ref(),
                "true",
            )
            .copied(),
        Coating::Paint | Coating::None => Ok(true),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [climate]
        corrosivity = "C3"
        [[gate]]
        id = "main"
        kind = "single-swing"
        [[gate.leaf]]
        id = "leaf"
        material = "steel"
        [gate.leaf.finish]
        coating = "hot-dip zinc"
        zinc = "85 µm"
        wanted_life = "25 years"
        touches = "stainless steel"
        insulated = true
        edges_coated = true
    "#;

    #[test]
    fn holds_with_thick_zinc_in_mild_air() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_in_salt_with_a_nobler_metal_and_with_bare_edges() {
        for (from, to) in [
            ("\"C3\"", "\"C5\""),
            ("insulated = true", "insulated = false"),
            ("edges_coated = true", "edges_coated = false"),
            ("\"hot-dip zinc\"", "\"none\""),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{to}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn a_metal_that_needs_no_zinc_is_asked_for_contact_only() {
        let aluminum = SITE
            .replace("material = \"steel\"", "material = \"aluminum\"")
            .replace("\"hot-dip zinc\"", "\"none\"");
        assert_eq!(only(&CHECK, &aluminum).verdict, Verdict::Holds);
        let touching = aluminum.replace("insulated = true", "insulated = false");
        assert_eq!(only(&CHECK, &touching).verdict, Verdict::Fails);
    }

    #[test]
    fn paint_alone_and_extreme_air_are_outside() {
        for (from, to) in [("\"hot-dip zinc\"", "\"paint\""), ("\"C3\"", "\"CX\"")] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::OutsideThisTool, "{to}");
        }
    }

    #[test]
    fn unknown_without_zinc_and_air_and_for_a_post_without_finish() {
        let bare = SITE
            .replace("zinc = \"85 µm\"", "")
            .replace("corrosivity = \"C3\"", "");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
        let post = format!("{SITE}\n[[gate.post]]\nid = \"post\"\nrole = \"hinge\"\n");
        let verdicts: Vec<Verdict> = all(&CHECK, &post)
            .iter()
            .map(|finding| finding.verdict)
            .collect();
        assert!(verdicts.contains(&Verdict::UnknownUntil), "{verdicts:?}");
    }
}
