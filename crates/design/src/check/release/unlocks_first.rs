//! Whether the lock lets go before the drive pulls, and locks only once the leaf has arrived.
//!
//! A bolt that is drawn by current takes its own time; one that is let go by switching off takes what its quench part
//! leaves it: a plain diode keeps a coil held long after its contact has opened.

use crate::asking::{Asking, Wants, pick, read};
use crate::check::protect::means::told;
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::outcome::{Answer, Comparison, Halt, Labeled};
use crate::subject::About;
use formula::{Evidence, Source};
use quantity::{Quantity as _, Time};
use site::{Device, DeviceKind, LockTiming, PowerLoss, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "release-unlocks-first",
    codes: BOTH,
    leaves_open: "a bolt that rusts, freezes or is leaned on, and a controller that forgets its delay after a reset",
    concerns: "each powered lock",
    ask,
};

static MARGIN: Source = Source {
    work: "a tenth of a second between lock and drive",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "what a stopwatch and slow video still tell apart",
};

/// Left between the drawn bolt and the start of the drive, in seconds.
const LEFT: f64 = 0.1;

/// How the times of a lock are written.
const LOCK: &str = "lock = { release_time = \"150 ms\", drive_delay = \"0.5 s\", locks_on_contact = true, rests_after = \"0.5 s\", locks_after = \"1 s\" }";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let locks = site
        .device
        .iter()
        .filter(|device| device.kind == DeviceKind::Lock);
    for device in locks {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            let Some(lock) = &device.lock else {
                return asking.lack(&device.origin, "lock", Wants::Table(LOCK));
            };
            timed(asking, device, lock)
        });
    }
}

fn timed<'s>(asking: &mut Asking<'s>, device: &'s Device, lock: &'s LockTiming) -> Answer {
    let release = release_time(asking, device, lock);
    let delay = read!(asking, lock.drive_delay);
    let rests = read!(asking, lock.rests_after);
    let locks = read!(asking, lock.locks_after);
    let contact = told(
        asking,
        &lock.origin,
        "locks_on_contact",
        lock.locks_on_contact,
    );
    let (release, delay, rests) = (release?, delay?, rests?);
    let (locks, contact) = (locks?, contact?);
    asking.rest_on(&DATA_SHEET);
    asking.rest_on(&MARGIN);
    let drawn = release + Time::from_base(LEFT);
    let mut rules = Rules::default();
    rules.keep(contact, &format!(
        "{} locks by the clock, wherever the leaf stands: a bolt that is out before the leaf arrives is run into. Let the contact of the closed leaf release it.",
        device.id
    ));
    rules.compare(Comparison::at_most(
        Labeled::new("lock drawn, and a tenth of a second", drawn),
        Labeled::new("start of the drive", delay),
    ));
    rules.compare(Comparison::at_most(
        Labeled::new("leaf at rest after its contact", rests),
        Labeled::new("lock after the same contact", locks),
    ));
    asking.say(|print| {
        rules.says(|| {
            format!(
                "{} is drawn {} after the command and the drive pulls after {}; closed, the leaf rests {} after its contact and the lock follows after {}.",
                device.id,
                print.q(release),
                print.q(delay),
                print.q(rests),
                print.q(locks)
            )
        })
    });
    Ok(rules.outcome())
}

/// From the command until the lock is drawn or let go.
fn release_time<'s>(
    asking: &mut Asking<'s>,
    device: &'s Device,
    lock: &'s LockTiming,
) -> Result<Time, Halt> {
    match pick!(asking, device.on_power_loss)? {
        PowerLoss::FailSecure => read!(asking, lock.release_time),
        PowerLoss::FailSafe => {
            let quench = pick!(asking, device.coil?.quench);
            let let_go = read!(asking, device.coil?.let_go);
            let quench = quench?;
            asking.note(|_| format!("Let go by switching off, with {quench} across its coil."));
            let_go
        }
    }
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::only;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[device]]
        id = "bolt"
        kind = "lock"
        on_power_loss = "fail-secure"
        coil = { quench = "diode", let_go = "400 ms" }
        lock = { release_time = "150 ms ± 30 ms", drive_delay = "0.5 s", locks_on_contact = true, rests_after = "0.4 s", locks_after = "1 s" }
    "#;

    #[test]
    fn holds_with_the_bolt_drawn_first() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_with_a_slow_coil_or_an_early_lock() {
        let magnet = SITE.replace("fail-secure", "fail-safe");
        assert_eq!(only(&CHECK, &magnet).verdict, Verdict::Holds);
        let slow = magnet.replace("let_go = \"400 ms\"", "let_go = \"450 ms\"");
        assert_eq!(only(&CHECK, &slow).verdict, Verdict::Fails);
        for (from, to) in [
            ("drive_delay = \"0.5 s\"", "drive_delay = \"0.2 s\""),
            ("rests_after = \"0.4 s\"", "rests_after = \"1.4 s\""),
            ("locks_on_contact = true", "locks_on_contact = false"),
        ] {
            let finding = only(&CHECK, &SITE.replace(from, to));
            assert_eq!(finding.verdict, Verdict::Fails, "{}", finding.sentence);
        }
    }

    #[test]
    fn unknown_without_the_delay_of_the_drive() {
        let finding = only(&CHECK, &SITE.replace(" drive_delay = \"0.5 s\",", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1);
    }
}
