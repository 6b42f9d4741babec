//! Whether the buried box of an underground drive stands under the hinge line, drains, carries wheels, and lets one person
//! lift its motor out.
//!
//! Offset and cover are held against the data sheet, the drain against its outlet, the bottom of the box against ground
//! water. The motor is lifted from the ground, close to the body, up to the height of the hips: the lifting equation of
//! NIOSH gives 23 kg times 0.775 for the height, times 0.88 for the way.

use super::swing_drive::of_kind;
use crate::asking::{Asking, read};
use crate::check::drive::leaf_of;
use crate::check::{BOTH, Check, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Length, Mass, Quantity as _};
use site::{DriveKind, Gate, Operator, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "force-underground-drive",
    codes: BOTH,
    leaves_open: "what the leaf's bottom corner carries, leaves and ice in the drain, and wheels heavier than written down",
    concerns: "each underground drive of a swing gate",
    ask,
};

/// Mass that one person lifts out of a box at the ground, in kilograms: 23 · 0.775 · 0.88.
const ONE_PERSON: f64 = 15.7;

static LIFT: Source = Source {
    work: "NIOSH applications manual for the lifting equation, 94-110",
    clause: "recommended weight limit: 23 kg · VM (hands at the ground) · DM (750 mm up), held close",
    evidence: Evidence::Seen,
    seen: "text of the manual as transcribed in a public repository of methods",
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for (gate, operator) in of_kind(site, DriveKind::Underground) {
        round.ask(About::new(&operator.origin, &operator.id), |asking| {
            buried(asking, gate, operator)
        });
    }
}

fn buried<'s>(asking: &mut Asking<'s>, gate: &'s Gate, operator: &'s Operator) -> Answer {
    asking.pick(&operator.origin, "drive", operator.drive)?;
    leaf_of(asking, gate, operator)?;
    let offset = read!(asking, operator.drive_box?.axis_offset);
    let allowed = read!(asking, operator.drive_box?.allowed_offset);
    let cover = read!(asking, operator.drive_box?.cover_rating);
    let wheel = read!(asking, operator.drive_box?.wheel_load);
    let depth = read!(asking, operator.drive_box?.depth);
    let water = read!(asking, operator.drive_box?.ground_water);
    let fall = read!(asking, operator.drive_box?.drain_fall);
    let motor = read!(asking, operator.drive_box?.motor_mass);
    let (offset, allowed, cover, wheel) = (offset?, allowed?, cover?, wheel?);
    let (depth, water, fall, motor) = (depth?, water?, fall?, motor?);
    asking.rest_on(&LIFT);
    let lift = Mass::from_base(ONE_PERSON);
    asking.say(|print| {
        format!(
            "The axis stands {} from the hinge line and {} is allowed; the cover carries {} and a wheel brings {}; the bottom lies \
             {} deep, ground water at {}, and the drain falls {} to its outlet; the motor weighs {}, and one person lifts {} out.",
            print.q(offset),
            print.q(allowed),
            print.q(cover),
            print.q(wheel),
            print.q(depth),
            print.q(water),
            print.q(fall),
            print.q(motor),
            print.q(lift)
        )
    });
    let level = Length::from_base(0.0);
    Outcome::worst([
        Comparison::at_most(
            Labeled::new("offset from the hinge line", offset),
            Labeled::new("offset that the data sheet allows", allowed),
        ),
        Comparison::at_most(
            Labeled::new("wheel load", wheel),
            Labeled::new("what the cover carries", cover),
        ),
        Comparison::below(
            Labeled::new("depth of the box", depth),
            Labeled::new("depth of ground water", water),
        ),
        Comparison::below(
            Labeled::new("level of the drain's outlet", level),
            Labeled::new("fall to the drain's outlet", fall),
        ),
        Comparison::at_most(
            Labeled::new("mass of the motor", motor),
            Labeled::new("what one person lifts out of a box at the ground", lift),
        ),
    ])
    .ok_or(Halt)
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "eu"
        [[gate]]
        id = "main"
        kind = "single-swing"
        [[gate.leaf]]
        id = "leaf"
        [[operator]]
        id = "drive"
        gate = "main"
        drive = "underground"
        [operator.drive_box]
        axis_offset = "1 mm ± 0.5 mm"
        allowed_offset = "2 mm"
        cover_rating = "15 kN"
        wheel_load = "10 kN"
        depth = "450 mm"
        ground_water = "1.2 m ± 0.3 m"
        drain_fall = "200 mm"
        drain_outlet = "ditch beside the drive"
        motor_mass = "12 kg"
    "#;

    #[test]
    fn holds_in_line_and_drained() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_in_ground_water_without_fall_or_with_a_heavy_motor() {
        for (right, wrong) in [
            ("1.2 m ± 0.3 m", "0.3 m"),
            ("200 mm", "0 mm"),
            ("12 kg", "19 kg"),
            ("10 kN", "20 kN"),
        ] {
            let finding = only(&CHECK, &SITE.replace(right, wrong));
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{wrong}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn unknown_without_box_levels() {
        let bare = SITE.replace("ground_water", "#").replace("drain_fall", "#");
        let finding = only(&CHECK, &bare);
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 2, "{:?}", finding.missing);
    }
}
