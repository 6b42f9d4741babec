//! Conductors for whole sites: rings, a battery at its end and small terminals, each against trying every set.

#![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]

use design::{ConductorChoice, Verdict, conductor_choice, findings};
use site::{Price, SourceFile};

/// Entries of the parts file, thinnest first: gauge and price of a foot in hundredths.
const ENTRIES: [(&str, u64); 4] = [("18", 20), ("16", 29), ("14", 43), ("12", 66)];

const HEAD: &str = r#"
[site]
name = "Test yard"
code_basis = "us"
[[enclosure]]
id = "box"
[[supply]]
id = "source"
kind = "power supply"
enclosure = "box"
voltage = "24 V"
"#;

const LOCK: &str = r#"
[[device]]
id = "lock"
kind = "lock"
supply = "source"
least_voltage = "22 V"
current = "2.5 A"
"#;

const BATTERY: &str = r#"
[[battery]]
id = "battery"
supply = "source"
enclosure = "box"
voltage = "24 V"
end_voltage = "22.6 V"
inner_resistance = "60 mΩ"
"#;

fn parts() -> SourceFile {
    let entry = |(gauge, cents): &(&str, u64)| {
        format!(
            "[[cable]]\nid = \"pair-{gauge}\"\nsize = \"{gauge} AWG\"\nmetal = \"copper\"\nstranding = \"stranded\"\ncores = 2\nhottest = \"50 °C\"\nprice = \"0.{cents:02} USD\"\nprice_length = \"1 ft\"\n"
        )
    };
    SourceFile {
        name: "parts.toml".to_owned(),
        text: ENTRIES.iter().map(entry).collect(),
    }
}

/// A cable with its feet.
type Leg<'l> = (&'l str, &'l str, &'l str, u64);

fn site(rest: &str, legs: &[Leg<'_>], set: &[usize]) -> SourceFile {
    let cables = legs.iter().zip(set).map(|((id, from, to, feet), entry)| {
        let gauge = ENTRIES[*entry].0;
        format!(
            "[[cable]]\nid = \"{id}\"\npart = \"pair-{gauge}\"\nfrom = \"{from}\"\nto = \"{to}\"\nlength = \"{feet} ft\"\n"
        )
    });
    let cables: String = cables.collect();
    let head = HEAD.replace("[site]", "[site]\nparts = [\"parts.toml\"]");
    SourceFile {
        name: "site.toml".to_owned(),
        text: format!("{head}{rest}{cables}"),
    }
}

fn chosen(rest: &str, legs: &[Leg<'_>]) -> ConductorChoice {
    let first = vec![0; legs.len()];
    conductor_choice(&site(rest, legs, &first), &[parts()]).unwrap()
}

/// The cost of the cheapest set with which no voltage fails, among entries that the terminals take, by trying each.
fn by_trying_all(rest: &str, legs: &[Leg<'_>], entries: usize) -> u64 {
    let mut least = u64::MAX;
    let mut set = vec![0; legs.len()];
    loop {
        let price = |(leg, entry): (&Leg<'_>, &usize)| leg.3 * ENTRIES[*entry].1;
        let cost: u64 = legs.iter().zip(&set).map(price).sum();
        if cost < least && keeps(rest, legs, &set) {
            least = cost;
        }
        let Some(leg) = (0..set.len()).find(|leg| set[*leg] + 1 < entries) else {
            return least;
        };
        set[leg] += 1;
        set[..leg].fill(0);
    }
}

fn keeps(rest: &str, legs: &[Leg<'_>], set: &[usize]) -> bool {
    let read = site::load(site(rest, legs, set), vec![parts()]);
    let found = findings(&read.site.unwrap());
    let mut voltages = found
        .iter()
        .filter(|finding| finding.question == "power-voltage-at-device")
        .peekable();
    voltages.peek().is_some() && voltages.all(|finding| finding.verdict == Verdict::Holds)
}

fn hundredths(cost: &str) -> u64 {
    Price::read(cost).unwrap().hundredths()
}

#[test]
fn a_ring_costs_the_least_and_is_not_called_proved() {
    let rest = format!("{LOCK}[[joint]]\nid = \"far\"\n");
    let legs = [
        ("w-1", "source", "far", 90),
        ("w-2", "source", "far", 140),
        ("w-3", "far", "lock", 30),
    ];
    let choice = chosen(&rest, &legs);
    assert!(choice.kept, "{choice:#?}");
    assert!(!choice.proved, "{}", choice.proof);
    let least = by_trying_all(&rest, &legs, ENTRIES.len());
    let cost = hundredths(&choice.chosen);
    assert!(cost >= least, "{cost} {least}");
    let gap = choice.gap.unwrap();
    #[allow(clippy::cast_precision_loss, reason = "small numbers")]
    let (cost, least) = (cost as f64, least as f64);
    assert!(
        cost * (1.0 - gap) <= least + 0.5,
        "{cost} {least} within {gap}"
    );
}

#[test]
fn a_battery_at_its_end_asks_for_more_metal_and_the_least_of_it_is_found() {
    let legs = [
        ("w-1", "source", "near", 40),
        ("w-2", "near", "lock", 35),
        ("w-3", "near", "light", 60),
    ];
    let light = "[[device]]\nid = \"light\"\nkind = \"control\"\nsupply = \"source\"\nleast_voltage = \"21 V\"\ncurrent = \"1 A\"\n";
    let lock = LOCK.replace("22 V", "20.4 V");
    let bare = format!("{lock}{light}[[joint]]\nid = \"near\"\n");
    let with = format!("{bare}{BATTERY}");
    let costs = [&bare, &with].map(|rest| {
        let choice = chosen(rest, &legs);
        assert!(choice.kept && choice.proved, "{}", choice.proof);
        let cost = hundredths(&choice.chosen);
        assert_eq!(cost, by_trying_all(rest, &legs, ENTRIES.len()));
        cost
    });
    assert!(costs[0] < costs[1], "{costs:?}");
}

#[test]
fn what_is_too_thick_for_the_terminals_is_left_out() {
    let legs = [("w-1", "source", "lock", 95)];
    let open = chosen(LOCK, &legs);
    assert!(open.kept, "{open:#?}");
    assert_eq!(open.cables[0].part.as_deref(), Some("pair-14"));
    let small = LOCK.replace("current =", "largest_conductor = \"16 AWG\"\ncurrent =");
    let choice = chosen(&small, &legs);
    assert!(!choice.proved, "{choice:#?}");
    assert_eq!(choice.cables[0].part.as_deref(), Some("pair-18"));
    assert_eq!(by_trying_all(&small, &legs, 2), u64::MAX);
    assert!(!choice.unmended.is_empty());
}
