//! Whether each device has an address of its own that is written down: in the block of its segment, and not among those that
//! are handed out automatically.

use crate::asking::{Asking, Wants, need};
use crate::check::{BOTH, Check, Round};
use crate::network::{is_of_owner, members, segment_of};
use crate::outcome::{Answer, Halt, Outcome};
use crate::subject::About;
use formula::{Evidence, Source};
use site::{Address, Device, DeviceKind, NetworkSegment, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "network-addresses-apart",
    codes: BOTH,
    leaves_open: "what is really set on each device and on the router, which a scan from an outdoor port shows, names and passwords",
    concerns: "each device of the data network, and each segment at the gate",
    ask,
};

pub(super) static PLAN: Source = Source {
    work: "address plan: each address once, none of those handed out automatically, the gate on a segment of its own with only the named crossings",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as networks of plants and buildings are kept",
};

/// How a segment is written.
pub(super) const SEGMENT: &str = "[[network_segment]]\nid = \"gate-net\"\nwhat = \"gate and its cameras\"\naddresses = \"10.20.30.0/24\"\nautomatic = \"none\"\nkept_apart = \"own switches\"\nall_else_blocked = true";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    for device in members(site).filter(|device| has_address(site, device)) {
        round.ask(About::new(&device.origin, &device.id), |asking| {
            addressed(asking, site, device)
        });
    }
    super::segments::ask(site, round);
}

/// The device has an address; an injector and an extender have none, and a plain switch need not.
fn has_address(site: &Site, device: &Device) -> bool {
    let written = device.network.as_ref();
    let written = written.is_some_and(|network| network.address.is_some());
    let plain = matches!(
        device.kind,
        DeviceKind::Injector | DeviceKind::Extender | DeviceKind::NetworkSwitch
    );
    written || !(plain || is_of_owner(site, device))
}

fn addressed<'s>(asking: &mut Asking<'s>, site: &'s Site, device: &'s Device) -> Answer {
    asking.rest_on(&PLAN);
    let address = need!(asking, device.network?.address, "\"10.20.30.11\"").copied();
    let segment = segment(asking, site, device);
    let address = address?;
    if let Some(other) = twin(site, device, address) {
        let free = segment.ok().and_then(|segment| free(site, segment));
        asking.say(|_| {
            let mend = free.map_or_else(String::new, |free| {
                format!(
                    "; write a free one, such as address = \"{free}\", at {} or at {}",
                    device.id, other.id
                )
            });
            format!(
                "{} and {} both have the address {address}: each knocks the other off{mend}.",
                device.id, other.id
            )
        });
        return Ok(Outcome::Rule(false));
    }
    let segment = segment?;
    let block = need!(asking, segment.addresses, "\"10.20.30.0/24\"").copied();
    let automatic = need!(
        asking,
        segment.automatic,
        "\"10.20.30.100 to 10.20.30.199\""
    )
    .copied();
    let (block, automatic) = (block?, automatic?);
    let mend = free(site, segment).map_or_else(String::new, |free| format!("; {free} is free"));
    let (kept, said) = if !block.has(address) {
        (
            false,
            format!(
                "{} has {address}, which is no address of {} ({block}){mend}.",
                device.id, segment.id
            ),
        )
    } else if automatic.has(address) {
        (
            false,
            format!(
                "{} has {address}, which {} hands out automatically ({automatic}) to whoever comes first{mend}.",
                device.id, segment.id
            ),
        )
    } else {
        (
            true,
            format!(
                "{} alone has {address} on {}, outside what is handed out automatically.",
                device.id, segment.id
            ),
        )
    };
    asking.say(|_| said);
    Ok(Outcome::Rule(kept))
}

fn segment<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    device: &'s Device,
) -> Result<&'s NetworkSegment, Halt> {
    if site.network_segment.is_empty() {
        return asking.lack(&site.origin, "network_segment", Wants::Table(SEGMENT));
    }
    if let Some(segment) = segment_of(site, device) {
        Ok(segment)
    } else {
        need!(asking, device.network?.segment, "\"gate-net\"")?;
        Err(Halt)
    }
}

/// Another device with the same address.
fn twin<'s>(site: &'s Site, device: &Device, address: Address) -> Option<&'s Device> {
    let has = |other: &&Device| {
        let theirs = other.network.as_ref().and_then(|network| network.address);
        other.id != device.id && theirs == Some(address)
    };
    site.device.iter().find(has)
}

/// The lowest address of a segment that is neither written nor handed out.
fn free(site: &Site, segment: &NetworkSegment) -> Option<Address> {
    let taken = |address: Address| {
        let mut networks = site.device.iter().filter_map(|it| it.network.as_ref());
        networks.any(|network| network.address == Some(address))
    };
    let automatic = |address: Address| segment.automatic.is_some_and(|range| range.has(address));
    let mut addresses = segment.addresses?.addresses();
    // The first address of a block is the router's by custom.
    addresses.next();
    addresses
        .take(4096)
        .find(|address| !taken(*address) && !automatic(*address))
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::CHECK;
    use crate::check::testing::all;
    use crate::{Finding, Verdict};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[network_segment]]
        id = "gate-net"
        addresses = "10.20.30.0/24"
        automatic = "10.20.30.100 to 10.20.30.199"
        kept_apart = "own switches"
        all_else_blocked = true
        [[network_segment]]
        id = "office-net"
        of_owner = true
        addresses = "192.168.1.0/24"
        [[crossing]]
        id = "pictures"
        from = "gate-net"
        to = "office-net"
        what = "pictures to the recorder"
        reach = "named addresses and services"
        [[device]]
        id = "camera-a"
        kind = "camera"
        network = { segment = "gate-net", address = "10.20.30.11", guard = "out of reach" }
        [[device]]
        id = "camera-b"
        kind = "camera"
        network = { segment = "gate-net", address = "10.20.30.12", guard = "locked to its device" }
    "#;

    fn about(text: &str, subject: &str) -> Finding {
        let mut findings = all(&CHECK, text);
        findings.retain(|finding| finding.subject.name == subject);
        findings.remove(0)
    }

    #[test]
    fn holds_with_an_address_for_each_and_named_crossings() {
        let findings = all(&CHECK, SITE);
        assert_eq!(findings.len(), 3);
        assert!(
            findings
                .iter()
                .all(|finding| finding.verdict == Verdict::Holds),
            "{findings:#?}"
        );
    }

    #[test]
    fn fails_where_two_have_one_address_and_names_a_free_one() {
        let finding = about(&SITE.replace("30.12", "30.11"), "camera-b");
        assert_eq!(finding.verdict, Verdict::Fails);
        let said = &finding.sentence;
        assert!(
            said.contains("camera-b and camera-a both have the address 10.20.30.11"),
            "{said}"
        );
        assert!(said.contains("address = \"10.20.30.2\""), "{said}");
        let handed_out = about(&SITE.replace("30.12", "30.120"), "camera-b");
        assert_eq!(handed_out.verdict, Verdict::Fails);
        let elsewhere = about(&SITE.replace("10.20.30.12", "192.168.1.12"), "camera-b");
        assert_eq!(elsewhere.verdict, Verdict::Fails);
    }

    #[test]
    fn fails_where_the_gate_reaches_the_office() {
        for (old, new) in [
            ("named addresses and services", "everything"),
            ("own switches", "not at all"),
            ("all_else_blocked = true", "all_else_blocked = false"),
            ("192.168.1.0/24", "10.20.0.0/16"),
            ("locked to its device", "open"),
        ] {
            let finding = about(&SITE.replace(old, new), "gate-net");
            assert_eq!(
                finding.verdict,
                Verdict::Fails,
                "{new}: {}",
                finding.sentence
            );
        }
    }

    #[test]
    fn unknown_without_an_address_a_segment_or_a_guard() {
        let finding = about(&SITE.replace("address = \"10.20.30.12\", ", ""), "camera-b");
        assert_eq!(finding.verdict, Verdict::UnknownUntil);
        let finding = about(&SITE.replace(", guard = \"out of reach\"", ""), "gate-net");
        assert_eq!(
            finding.verdict,
            Verdict::UnknownUntil,
            "{}",
            finding.sentence
        );
        let bare = "[site]\nname = \"Yard\"\ncode_basis = \"us\"\n[[device]]\nid = \"eye\"\nkind = \"camera\"\n";
        assert_eq!(about(bare, "eye").verdict, Verdict::UnknownUntil);
    }
}
