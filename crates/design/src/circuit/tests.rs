//! Circuits that share conductors, pass power on, live on a battery or collapse, against what follows by hand.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use crate::check::power::{capacity, voltage};
use crate::check::testing::{all, only};
use crate::{Finding, Verdict};

const HEAD: &str = r#"
    [site]
    name = "Test yard"
    code_basis = "us"
    [[supply]]
    id = "source"
    kind = "power supply"
    voltage = "24 V"
    efficiency = "90 %"
    rated_current = "10 A"
    hottest = "60 °C"
    [climate]
    hottest = "35 °C"
"#;

fn device(id: &str, amperes: f64) -> String {
    format!(
        "[[device]]\nid = \"{id}\"\nkind = \"lock\"\nsupply = \"source\"\nleast_voltage = \"20 V\"\ncurrent = \"{amperes} A\"\n"
    )
}

fn cable(id: &str, from: &str, to: &str, feet: f64) -> String {
    format!(
        "[[cable]]\nid = \"{id}\"\nfrom = \"{from}\"\nto = \"{to}\"\nsize = \"18 AWG\"\nmetal = \"copper\"\nstranding = \"stranded\"\nhottest = \"20 °C\"\nlength = \"{feet} ft\"\n"
    )
}

fn joint(id: &str) -> String {
    format!("[[joint]]\nid = \"{id}\"\n")
}

fn finding(site: &str, device: &str) -> Finding {
    let found = all(&voltage::CHECK, site);
    found
        .into_iter()
        .find(|finding| finding.subject.name == device)
        .unwrap()
}

/// Voltage lost up to a device.
fn lost(site: &str, device: &str) -> f64 {
    24.0 - finding(site, device).capacity.unwrap().value.unwrap()
}

fn near(found: f64, wanted: f64) {
    assert!((found - wanted).abs() < 1e-9, "{found} {wanted}");
}

#[test]
fn what_shares_a_trunk_is_felt() {
    let wires = [
        joint("splice"),
        cable("trunk", "source", "splice", 100.0),
        cable("one", "splice", "near", 1.0),
        cable("two", "splice", "beside", 1.0),
    ]
    .concat();
    let alone = [HEAD, &device("near", 1.0), &device("beside", 0.0), &wires].concat();
    let both = [HEAD, &device("near", 1.0), &device("beside", 1.0), &wires].concat();
    let foot = lost(&alone, "near") / 101.0;
    near(lost(&both, "near"), foot * 201.0);
    let star = [
        HEAD,
        &device("near", 1.0),
        &device("beside", 1.0),
        &cable("one", "source", "near", 101.0),
        &cable("two", "source", "beside", 101.0),
    ]
    .concat();
    near(lost(&star, "near"), foot * 101.0);
}

#[test]
fn two_ways_to_a_joint_halve_the_loss() {
    let ring = |second: &str| {
        [
            HEAD,
            &device("lock", 2.0),
            &joint("far"),
            &cable("one", "source", "far", 100.0),
            second,
            &cable("last", "far", "lock", 50.0),
        ]
        .concat()
    };
    let foot = lost(&ring(""), "lock") / 150.0;
    let both = ring(&cable("two", "source", "far", 100.0));
    near(lost(&both, "lock"), foot * 100.0);
}

#[test]
fn a_device_passes_power_on() {
    let chain = [
        HEAD,
        &device("first", 1.0),
        &device("second", 1.0),
        &cable("one", "source", "first", 50.0),
        &cable("two", "first", "second", 10.0),
    ]
    .concat();
    let single = [
        HEAD,
        &device("first", 1.0),
        &cable("one", "source", "first", 50.0),
    ]
    .concat();
    let foot = lost(&single, "first") / 50.0;
    near(lost(&chain, "second"), foot * (2.0 * 50.0 + 10.0));
}

#[test]
fn a_battery_at_its_end_is_felt_behind_its_own_resistance() {
    let site = format!(
        "{HEAD}[[enclosure]]\nid = \"box\"\n[[battery]]\nid = \"battery\"\nsupply = \"source\"\nvoltage = \"24 V\"\nend_voltage = \"22.4 V\"\ninner_resistance = \"100 mΩ\"\n{}",
        device("lock", 2.0).replace("supply =", "enclosure = \"box\"\nsupply =")
    )
    .replace("kind = \"power supply\"", "kind = \"power supply\"\nenclosure = \"box\"");
    near(lost(&site, "lock"), 24.0 - 22.2);
    let bare = site.replace("end_voltage = \"22.4 V\"\n", "");
    let finding = finding(&bare, "lock");
    assert_eq!(finding.verdict, Verdict::UnknownUntil);
    assert!(
        finding.missing[0].path.ends_with("end_voltage"),
        "{:?}",
        finding.missing
    );
}

#[test]
fn a_converter_takes_the_power_of_what_it_feeds_and_its_own_loss() {
    let site = format!(
        "{HEAD}[[supply]]\nid = \"twelve\"\nkind = \"power supply\"\nfed_by = \"source\"\nvoltage = \"12 V\"\nefficiency = \"80 %\"\nleast_input = \"18 V\"\nrated_current = \"5 A\"\nhottest = \"60 °C\"\n{}{}{}",
        device("reader", 1.0).replace("\"source\"", "\"twelve\""),
        cable("one", "source", "twelve", 0.001),
        cable("two", "twelve", "reader", 1.0),
    );
    let found = all(&capacity::CHECK, &site);
    let demand = |name: &str| {
        let finding = found
            .iter()
            .find(|finding| finding.subject.name == name)
            .unwrap();
        finding.demand.as_ref().unwrap().value.unwrap()
    };
    near(demand("twelve"), 1.0);
    assert!(
        (demand("source") - 12.0 / 0.8 / 24.0).abs() < 1e-5,
        "{}",
        demand("source")
    );
    assert!(finding(&site, "twelve").capacity.unwrap().value.unwrap() > 23.9);
}

#[test]
fn a_collapse_says_where_and_how_much_could_be_carried() {
    let heavy = device("switch", 3.0)
        .replace("\"lock\"", "\"network switch\"")
        .replace("current =", "voltage = \"24 V\"\ncurrent =");
    let site = [HEAD, &heavy, &cable("one", "source", "switch", 400.0)].concat();
    let finding = only(&voltage::CHECK, &site);
    assert_eq!(finding.verdict, Verdict::Fails);
    assert!(
        finding.sentence.contains("collapses"),
        "{}",
        finding.sentence
    );
    assert!(
        finding.sentence.contains("switch loses it first"),
        "{}",
        finding.sentence
    );
}

#[test]
fn a_joint_that_nothing_feeds_is_told() {
    let site = [
        HEAD,
        &device("lock", 1.0),
        &joint("splice"),
        &cable("one", "splice", "lock", 10.0),
    ]
    .concat();
    let finding = only(&voltage::CHECK, &site);
    assert_ne!(finding.verdict, Verdict::Holds);
    assert!(
        finding.sentence.contains("no source reaches"),
        "{}",
        finding.sentence
    );
}

#[test]
fn a_heater_hangs_on_the_cable_that_comes_into_its_enclosure() {
    let site = |heater: &str| {
        format!(
            "{HEAD}[[enclosure]]\nid = \"far-box\"\nheater = \"{heater}\"\nclimate_control = {{ heater_supply = \"source\" }}\n{}{}",
            device("lock", 1.0).replace("supply =", "enclosure = \"far-box\"\nsupply ="),
            cable("one", "source", "lock", 10.0),
        )
    };
    let current = |site: &str| {
        let found = all(&capacity::CHECK, site);
        found[0].demand.as_ref().unwrap().value.unwrap()
    };
    near(current(&site("0 W")), 1.0);
    let (volts, with) = (24.0 - lost(&site("24 W"), "lock"), current(&site("24 W")));
    near(with, 1.0 + 24.0 / volts);
    assert!(lost(&site("24 W"), "lock") > 1.9 * lost(&site("0 W"), "lock"));
}
