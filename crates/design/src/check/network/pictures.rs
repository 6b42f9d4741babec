//! Whether all pictures together fit the narrowest link on their way, and how long the recorder keeps them.
//!
//! Each link is held against the sum of the peaks that cross it: rain at night makes every camera send its most at once. A link
//! is filled to seven tenths, the rest is for calls, commands and what is sent twice. The recorder fills at the mean rates.

use crate::asking::{Asking, Wants, read};
use crate::check::{BOTH, Check, DATA_SHEET, Round};
use crate::network::{Edge, way};
use crate::outcome::{Answer, Comparison, Halt, Labeled, Outcome};
use crate::plain::counted;
use crate::subject::About;
use formula::signal::{Stored, StreamStorage};
use formula::{Evidence, Source};
use quantity::{DataRate, DataSize, Quantity as _, Time};
use site::{Device, DeviceKind, Site};

/// The check.
pub(crate) const CHECK: Check = Check {
    question: "network-bandwidth-and-storage",
    codes: BOTH,
    leaves_open: "sound, what the recorder needs for its own index, and cameras of the owner that send over the same links",
    concerns: "each recorder, or the site where cameras have none",
    ask,
};

static MARGIN: Source = Source {
    work: "a link is filled to 70 % by pictures at their peak",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "the rest is for calls, commands and what is sent twice",
};

/// Share of a link that pictures may fill.
const FILLED: f64 = 0.7;

/// How the pictures of a camera are written.
const STREAM: &str = "[device.stream]\nto = \"recorder\"\npeak = \"8 Mbit/s\"\nquiet = \"1 Mbit/s\"\nbusy = \"4 Mbit/s\"\nmotion = \"25 %\"";

fn ask<'s>(site: &'s Site, round: &mut Round<'s, '_>) {
    let mut recorders = site.device.iter().filter(|it| is_recorder(site, it));
    let none = recorders.clone().next().is_none();
    if none && cameras(site).next().is_some() {
        round.ask(About::site(&site.origin), |asking| {
            for camera in cameras(site) {
                let _ = unkept::<()>(asking, camera);
            }
            Err(Halt)
        });
    }
    for recorder in recorders.by_ref() {
        round.ask(About::new(&recorder.origin, &recorder.id), |asking| {
            kept(asking, site, recorder)
        });
    }
}

fn cameras(site: &Site) -> impl Iterator<Item = &Device> {
    let is = |device: &&Device| device.kind == DeviceKind::Camera;
    site.device.iter().filter(is)
}

/// A recorder, or what cameras name as theirs.
fn is_recorder(site: &Site, device: &Device) -> bool {
    device.kind == DeviceKind::Recorder || site.device.iter().any(|it| sends_to(it, device))
}

fn sends_to(camera: &Device, recorder: &Device) -> bool {
    let to = camera.stream.as_ref().and_then(|stream| stream.to.as_ref());
    to == Some(&recorder.id)
}

fn unkept<'s, T>(asking: &mut Asking<'s>, camera: &'s Device) -> Result<T, Halt> {
    match &camera.stream {
        None => asking.lack(&camera.origin, "stream", Wants::Table(STREAM)),
        Some(stream) => asking.lack(&stream.origin, "to", Wants::Written("\"recorder\"")),
    }
}

/// A link with the peaks that cross it.
struct Filled<'s> {
    edge: Edge<'s>,
    peak: DataRate,
}

/// What all cameras of a recorder come to.
struct Sum<'s> {
    links: Vec<Filled<'s>>,
    peak: DataRate,
    mean: DataRate,
    size: DataSize,
    count: usize,
}

fn kept<'s>(asking: &mut Asking<'s>, site: &'s Site, recorder: &'s Device) -> Answer {
    asking.rest_on(&MARGIN);
    asking.rest_on(&DATA_SHEET);
    let wanted = read!(asking, recorder.recorder?.wanted);
    let storage = storage(asking, recorder);
    let sum = sum(asking, site, recorder, &wanted);
    let (wanted, storage, sum) = (wanted?, storage?, sum?);
    if sum.count == 0 {
        return asking.lack(&site.origin, "device.stream", Wants::Table(STREAM));
    }
    let narrowest = narrowest(asking, site, &sum)?;
    let held = held(&sum, storage);
    asking.say(|print| {
        let link = narrowest
            .as_ref()
            .map_or_else(String::new, |(filled, rate)| {
                format!(
                    "; the narrowest link, {} to {}, carries {} and gets {}",
                    filled.edge.lower.id,
                    filled.edge.upper.id,
                    print.q(*rate),
                    print.q(filled.peak)
                )
            });
        format!(
            "{} {} at most {} together{link}. {} has {} and is full after {}; {} are wanted.",
            counted(sum.count, "camera"),
            if sum.count == 1 { "sends" } else { "send" },
            print.q(sum.peak),
            recorder.id,
            print.q(storage),
            print.q(held),
            print.q(wanted)
        )
    });
    let link = narrowest.map(|(filled, rate)| link_holds(filled.peak, rate));
    let disk = Comparison::at_most(
        Labeled::new("pictures of the wanted time", sum.size),
        Labeled::new("room for them", storage),
    );
    Outcome::worst(link.into_iter().chain([disk])).ok_or(Halt)
}

fn link_holds(peak: DataRate, rate: DataRate) -> Comparison {
    Comparison::at_most(
        Labeled::new("peaks on the narrowest link together", peak),
        Labeled::new("share of its rate for pictures", FILLED * rate),
    )
}

/// How long the pictures are kept, at their mean rates.
fn held(sum: &Sum<'_>, storage: DataSize) -> Time {
    let mean = sum.mean.base();
    let seconds = if mean > 0.0 {
        storage.base() / mean
    } else {
        0.0
    };
    Time::from_base(seconds)
}

/// Room for pictures, less what other cameras of the owner take.
fn storage<'s>(asking: &mut Asking<'s>, recorder: &'s Device) -> Result<DataSize, Halt> {
    let storage = read!(asking, recorder.recorder?.storage);
    let taken = recorder
        .recorder
        .as_ref()
        .and_then(|record| asking.read_if_there(&record.origin, "taken", record.taken.as_ref()));
    let left = storage?.base() - taken.map_or(0.0, DataSize::base);
    Ok(DataSize::from_base(left.max(0.0)))
}

fn sum<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    recorder: &'s Device,
    wanted: &Result<Time, Halt>,
) -> Result<Sum<'s>, Halt> {
    let nothing = DataRate::from_base(0.0);
    let mut sum = Sum {
        links: Vec::new(),
        peak: nothing,
        mean: nothing,
        size: DataSize::from_base(0.0),
        count: 0,
    };
    let mut whole = Ok(());
    for camera in cameras(site) {
        let unnamed = camera.stream.as_ref().is_none_or(|it| it.to.is_none());
        if unnamed {
            whole = unkept(asking, camera);
            continue;
        }
        if !sends_to(camera, recorder) {
            continue;
        }
        if let Err(halt) = added(asking, site, (camera, recorder), wanted, &mut sum) {
            whole = Err(halt);
        }
    }
    whole.map(|()| sum)
}

/// Adds one camera.
fn added<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    (camera, recorder): (&'s Device, &'s Device),
    wanted: &Result<Time, Halt>,
    sum: &mut Sum<'s>,
) -> Result<(), Halt> {
    let peak = read!(asking, camera.stream?.peak);
    let quiet = read!(asking, camera.stream?.quiet);
    let busy = read!(asking, camera.stream?.busy);
    let motion = read!(asking, camera.stream?.motion);
    let Some(way) = way(site, camera, recorder) else {
        const INTO: &str = "\"net-switch\"";
        return asking.lack(
            &recorder.origin,
            "network.plugged_into",
            Wants::Written(INTO),
        );
    };
    let time = wanted.as_ref().copied().unwrap_or(Time::from_base(0.0));
    let (peak, quiet, busy, share) = (peak?, quiet?, busy?, motion?);
    let Stored { mean, size } = asking.work(&StreamStorage {
        quiet,
        busy,
        share,
        time,
    })?;
    for edge in way {
        match sum.links.iter_mut().find(|link| link.edge.is(&edge)) {
            Some(link) => link.peak += peak,
            None => sum.links.push(Filled { edge, peak }),
        }
    }
    sum.peak += peak;
    sum.mean += mean;
    sum.size += size;
    sum.count += 1;
    Ok(())
}

/// The link with the least in hand, and its rate.
fn narrowest<'s, 'f>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    sum: &'f Sum<'s>,
) -> Result<Option<(&'f Filled<'s>, DataRate)>, Halt> {
    let mut tightest: Option<(&Filled<'s>, DataRate)> = None;
    let mut whole = Ok(());
    for link in &sum.links {
        match link.edge.rate(asking, site) {
            Err(halt) => whole = Err(halt),
            Ok(rate) => {
                let strain = |(link, rate): (&Filled<'s>, DataRate)| link.peak.base() / rate.base();
                if tightest.is_none_or(|known| strain((link, rate)) > strain(known)) {
                    tightest = Some((link, rate));
                }
            }
        }
    }
    whole?;
    Ok(tightest)
}

#[cfg(test)]
mod tests {
    use super::CHECK;
    use crate::check::testing::only;
    use crate::{Standing, Verdict};

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[device]]
        id = "switch"
        kind = "network switch"
        ethernet = { speed = "100 Mbit/s" }
        network = { plugged_into = "bridge" }
        [[device]]
        id = "bridge"
        kind = "radio"
        ethernet = { speed = "100 Mbit/s" }
        network = { plugged_into = "house", radio_rate = "40 Mbit/s" }
        [[device]]
        id = "house"
        kind = "network switch"
        ethernet = { speed = "1 Gbit/s" }
        [[device]]
        id = "keeper"
        kind = "recorder"
        ethernet = { speed = "1 Gbit/s" }
        network = { plugged_into = "house" }
        recorder = { storage = "2 TB", taken = "0.5 TB", wanted = "30 days" }
        [[device]]
        id = "camera-a"
        kind = "camera"
        supply = "switch"
        ethernet = { speed = "100 Mbit/s" }
        stream = { to = "keeper", peak = "12 Mbit/s", quiet = "1 Mbit/s", busy = "5 Mbit/s", motion = "25 % ± 5 %" }
        [[device]]
        id = "camera-b"
        kind = "camera"
        supply = "switch"
        ethernet = { speed = "100 Mbit/s" }
        stream = { to = "keeper", peak = "12 Mbit/s", quiet = "1 Mbit/s", busy = "5 Mbit/s", motion = "25 %" }
    "#;

    #[test]
    fn holds_and_names_the_narrowest_link() {
        let finding = only(&CHECK, SITE);
        assert_eq!(finding.standing, Standing::Holds, "{}", finding.sentence);
        assert!(
            finding
                .sentence
                .contains("bridge to house, carries 40 Mbit/s"),
            "{}",
            finding.sentence
        );
    }

    #[test]
    fn fails_over_a_link_in_rain_and_on_a_small_disk() {
        let rain = only(&CHECK, &SITE.replace("40 Mbit/s", "30 Mbit/s"));
        assert_eq!(rain.verdict, Verdict::Fails, "{}", rain.sentence);
        let small = only(&CHECK, &SITE.replace("\"2 TB\"", "\"1.2 TB\""));
        assert_eq!(small.verdict, Verdict::Fails, "{}", small.sentence);
    }

    #[test]
    fn unknown_without_a_rate_a_recorder_or_a_way() {
        let gone = |old: &str| only(&CHECK, &SITE.replacen(old, "", 1));
        assert_eq!(
            gone("peak = \"12 Mbit/s\", ").verdict,
            Verdict::UnknownUntil
        );
        assert_eq!(
            gone("network = { plugged_into = \"house\" }").verdict,
            Verdict::UnknownUntil
        );
        let bare = "[site]\nname = \"Yard\"\ncode_basis = \"us\"\n[[device]]\nid = \"eye\"\nkind = \"camera\"\n";
        let finding = only(&CHECK, bare);
        assert_eq!(
            (finding.verdict, finding.missing.len()),
            (Verdict::UnknownUntil, 1)
        );
    }
}
