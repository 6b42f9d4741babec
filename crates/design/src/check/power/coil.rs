//! Whether every coil is quenched and its contact rated for it, and whether signal contacts switch their small currents.

use crate::asking::{Asking, pick, read};
use crate::check::rules::Rules;
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::outcome::{Answer, Comparison, Labeled};
use crate::subject::About;
use site::{CurrentKind, Device, DeviceKind, Quench, QuenchPlace, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "power-coil-and-contact",
    codes: BOTH,
    leaves_open: "relays inside devices, and signal contacts whose currents are not written",
    concerns: "each lock with a coil, and each signal contact that is described",
    ask,
};

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for device in &site.device {
        let powered = device.supply.is_some() || device.current.is_some();
        if device.kind == DeviceKind::Lock && powered {
            round.ask(About::new(&device.origin, &device.id), |asking| {
                coil(asking, device)
            });
        } else if device.contact.is_some() {
            round.ask(About::new(&device.origin, &device.id), |asking| {
                signal(asking, device)
            });
        }
    }
}

fn coil<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Answer {
    let quench = pick!(asking, device.coil?.quench);
    let place = pick!(asking, device.coil?.quench_at);
    let rating = read!(asking, device.coil?.contact_rating);
    let current =
        match asking.read_if_there(&device.origin, "peak_current", device.peak_current.as_ref()) {
            Some(peak) => Ok(peak),
            None => read!(asking, device.current),
        };
    let (quench, rating, current) = (quench?, rating?, current?);
    asking.rest_on(&DATA_SHEET);
    let quenched = quench != Quench::Nothing;
    let place = if quenched { Some(place?) } else { None };
    let mut rules = Rules::default();
    rules.keep(
        quenched,
        "Nothing takes up the voltage of this coil as it is switched off: it burns the contact and disturbs the electronics. Put a quench part at the coil.",
    );
    let one_way = matches!(quench, Quench::Diode | Quench::DiodeZener);
    rules.keep(
        !(one_way && device.takes == Some(CurrentKind::Alternating)),
        "A diode across a coil on alternating current is a short circuit; take a varistor or a suppressor diode for both directions.",
    );
    rules.keep(
        place != Some(QuenchPlace::Contact),
        "The quench part sits at the contact: the whole cable carries the peak past everything beside it. Put it at the coil.",
    );
    rules.compare(Comparison::at_most(
        Labeled::new("current of the coil as it pulls in", current),
        Labeled::new("rating of its contact for such a load", rating),
    ));
    if let Some(coil) = &device.coil {
        let slow = asking.read_if_there(&coil.origin, "let_go", coil.let_go.as_ref());
        let allowed =
            asking.read_if_there(&coil.origin, "allowed_let_go", coil.allowed_let_go.as_ref());
        if let (Some(slow), Some(allowed)) = (slow, allowed) {
            rules.compare(Comparison::at_most(
                Labeled::new("time to let go", slow),
                Labeled::new("longest time to let go", allowed),
            ));
        }
    }
    asking.say(|print| {
        rules.says(|| {
            format!(
                "The coil of {} is quenched by a {quench}; its contact is rated for {} of such a load and switches {}.",
                device.id,
                print.q(rating),
                print.q(current)
            )
        })
    });
    Ok(rules.outcome())
}

fn signal<'s>(asking: &mut Asking<'s>, device: &'s Device) -> Answer {
    let least = read!(asking, device.contact?.least_current);
    let input = read!(asking, device.contact?.input_current);
    let (least, input) = (least?, input?);
    asking.rest_on(&DATA_SHEET);
    asking.say(|print| {
        format!(
            "The contact of {} surely switches {} and more; the input that it works takes {}.",
            device.id,
            print.q(least),
            print.q(input)
        )
    });
    Ok(crate::outcome::Outcome::at_most(
        Labeled::new("least current of the contact", least),
        Labeled::new("current of the input", input),
    ))
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::Verdict;
    use crate::check::testing::{all, only};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[device]]
        id = "bolt"
        kind = "lock"
        current = "600 mA"
        peak_current = "900 mA"
        takes = "direct"
        coil = { quench = "diode", quench_at = "coil", contact_rating = "2 A", let_go = "120 ms", allowed_let_go = "300 ms" }
    "#;

    #[test]
    fn holds_with_a_diode_at_the_coil() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.verdict, Verdict::Holds, "{}", finding.sentence);
    }

    #[test]
    fn fails_unquenched_on_the_wrong_current_and_with_a_weak_contact() {
        for (right, wrong) in [
            ("quench = \"diode\"", "quench = \"none\""),
            ("takes = \"direct\"", "takes = \"alternating\""),
            ("quench_at = \"coil\"", "quench_at = \"contact\""),
            ("contact_rating = \"2 A\"", "contact_rating = \"0.5 A\""),
            ("let_go = \"120 ms\"", "let_go = \"400 ms\""),
        ] {
            let finding = only(&CHECK, &SITE.replacen(right, wrong, 1));
            assert_eq!(finding.verdict, Verdict::Fails, "{wrong}");
        }
    }

    #[test]
    fn fails_for_a_grand_contact_on_a_tiny_signal() {
        let edge = r#"
            [site]
            name = "Test yard"
            code_basis = "us"
            [[device]]
            id = "edge"
            kind = "contact edge"
            contact = { least_current = "100 mA", input_current = "5 mA" }
        "#;
        assert_eq!(only(&CHECK, edge).verdict, Verdict::Fails);
        assert!(all(&CHECK, &edge.replace("contact =", "note = \"none\" #")).is_empty());
    }

    #[test]
    fn unknown_without_its_quench_part() {
        let finding = only(&CHECK, &SITE.replace("quench = \"diode\", ", ""));
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        assert_eq!(finding.missing.len(), 1, "{:?}", finding.missing);
    }
}
