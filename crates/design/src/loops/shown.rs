//! The loops of a site for papers: how each is made and what is to be read at the cabinet.

use super::electrical::electrical;
use super::laid::{laid, loops};
use super::share::least_share;
use crate::asking::Asking;
use formula::signal::LoopFrequency;
use quantity::{Capacitance, Frequency, Inductance, Length, Measured, Quantity, Ratio, Resistance};
use site::Site;

/// One loop as it is made and read.
#[derive(Debug, Clone, Default)]
pub struct ShownLoop {
    /// Its name.
    pub id: String,
    /// Turns.
    pub turns: Option<u32>,
    /// Side along the gate, and side into the property.
    pub sides: Option<(Length, Length)>,
    /// Perimeter.
    pub perimeter: Option<Length>,
    /// Wire to cut, both wires of the lead-in counted.
    pub wire: Option<Length>,
    /// Inductance by the guide of the trade.
    pub guide: Option<Inductance>,
    /// Inductance by its wire and turns.
    pub own: Option<Inductance>,
    /// Length of its lead-in.
    pub lead_length: Option<Length>,
    /// What the lead-in adds.
    pub lead_in: Option<Inductance>,
    /// Least and most to be read at the cabinet; alike where no steel lies below.
    pub total: Option<(Inductance, Inductance)>,
    /// Resistance to be read at the cabinet.
    pub resistance: Option<Resistance>,
    /// The vehicle that it sees worst.
    pub worst: Option<String>,
    /// What that vehicle takes at least, at the detector.
    pub share: Option<Ratio>,
    /// Least change at which the output comes on, as set.
    pub sensitivity: Option<Ratio>,
    /// Frequency to be expected.
    pub frequency: Option<Frequency>,
    /// How far the frequency rises under that vehicle.
    pub rise: Option<Ratio>,
    /// Inductance that was read.
    pub read_inductance: Option<Inductance>,
    /// Resistance that was read.
    pub read_resistance: Option<Resistance>,
    /// Frequency that was read.
    pub read_frequency: Option<Frequency>,
}

fn nominal<Q: Quantity>(value: Option<&Measured<Q>>) -> Option<Q> {
    value.map(Measured::nominal)
}

/// Every loop of a site, as far as the facts go.
pub fn shown(site: &Site) -> Vec<ShownLoop> {
    loops(site).map(|device| of(site, device)).collect()
}

fn of(site: &Site, device: &site::Device) -> ShownLoop {
    let mut asking = Asking::new(site.site.unit_system());
    let setup = device.loop_setup.as_ref();
    let mut shown = ShownLoop {
        id: device.id.to_string(),
        turns: device.turns,
        sensitivity: setup.and_then(|it| nominal(it.sensitivity.as_ref())),
        read_inductance: setup.and_then(|it| nominal(it.measured_inductance.as_ref())),
        read_resistance: setup.and_then(|it| nominal(it.measured_resistance.as_ref())),
        read_frequency: setup.and_then(|it| nominal(it.frequency.as_ref())),
        ..ShownLoop::default()
    };
    let Ok(laid) = laid(&mut asking, site, device) else {
        return shown;
    };
    shown.sides = Some((laid.length(), laid.width()));
    shown.perimeter = Some((laid.length() + laid.width()) * 2.0);
    let Ok(of) = electrical(&mut asking, site, device, Ok(laid)) else {
        return shown;
    };
    shown.wire = Some(of.wire);
    shown.guide = Some(of.guide);
    shown.own = Some(of.own);
    shown.lead_length = Some(of.lead_length);
    shown.lead_in = Some(of.lead_in);
    shown.total = Some((of.least(), of.most()));
    shown.resistance = Some(of.resistance);
    let capacitance: Option<Capacitance> = device
        .loop_detector
        .as_ref()
        .and_then(|it| nominal(it.capacitance.as_ref()));
    shown.frequency = capacitance.and_then(|capacitance| {
        let tuned = asking.work_if_in_reach(&LoopFrequency {
            inductance: of.most(),
            capacitance,
            resistance: of.resistance,
        });
        tuned.map(|tuned| tuned.frequency)
    });
    if let Ok(Some(least)) = least_share(&mut asking, site, &laid, &of) {
        shown.worst = Some(least.what);
        shown.share = Some(least.share);
        shown.rise = Some(least.rise);
    }
    shown
}
