//! The facts of an enclosure that its warmth rests on.

use crate::weather::Lit;
use quantity::{
    Angle, Area, Energy, HeatTransfer, Mass, Measured, Power, Quantity, Ratio, Temperature,
};
use sim::enclosure::{Enclosure as Box, Heater, SunlitFace, Switch, Walls};
use sim::sun::Face;
use site::{BoxFace, DeviceKind, Enclosure, Id, Site};
use std::f64::consts::{FRAC_PI_2, PI};

/// Heat that warms a kilogram of a box and what is in it by one kelvin, in joules: between steel and plastic.
pub(crate) const STORES: f64 = 600.0;

/// A cut-out closes again so far below where it opens, in kelvin: common practice.
const FALLS_BACK: f64 = 10.0;

/// The facts, and which of them are missing.
pub(super) struct Facts<'s> {
    pub(super) site: &'s Site,
    pub(super) enclosure: &'s Enclosure,
    pub(super) missing: Vec<String>,
    /// Heat that everything in it gives off.
    pub(super) heat: Option<Power>,
    walls: Option<Walls>,
}

impl<'s> Facts<'s> {
    pub(super) fn new(site: &'s Site, enclosure: &'s Enclosure) -> Self {
        let mut facts = Self {
            site,
            enclosure,
            missing: Vec::new(),
            heat: None,
            walls: None,
        };
        facts.heat = facts.heat();
        facts.walls = facts.walls();
        facts
    }

    /// The nominal value; a missing one is named once.
    pub(super) fn want<Q: Quantity>(
        &mut self,
        value: Option<&Measured<Q>>,
        what: &str,
    ) -> Option<Q> {
        let found = value.map(Measured::nominal);
        if found.is_none() && !self.missing.iter().any(|known| known == what) {
            self.missing.push(what.to_owned());
        }
        found
    }

    fn heat(&mut self) -> Option<Power> {
        let (site, enclosure) = (self.site, self.enclosure);
        let here = |id: Option<&Id>| id == Some(&enclosure.id);
        let mut given = Vec::new();
        for device in &site.device {
            if here(device.enclosure.as_ref()) && device.kind != DeviceKind::SurgeProtector {
                given.push(self.want(device.heat.as_ref(), &format!("heat of {}", device.id)));
            }
        }
        for supply in &site.supply {
            if here(supply.enclosure.as_ref()) {
                given.push(self.want(supply.heat.as_ref(), &format!("heat of {}", supply.id)));
            }
        }
        for mounted in &enclosure.mounted {
            let one = self.want(mounted.heat.as_ref(), &format!("heat of {}", mounted.what));
            given.push(one.map(|one| one * f64::from(mounted.count.unwrap_or(1))));
        }
        let none = Power::from_base(0.0);
        given
            .into_iter()
            .try_fold(none, |sum, one| Some(sum + one?))
    }

    fn walls(&mut self) -> Option<Walls> {
        let enclosure = self.enclosure;
        let transfer: Option<HeatTransfer> = self.want(
            enclosure.heat_transfer.as_ref(),
            "heat transfer of its walls",
        );
        let layout = enclosure.layout.as_ref();
        let mass: Option<Mass> = self.want(
            layout.and_then(|layout| layout.mass.as_ref()),
            "mass with all in it",
        );
        let area = self.area();
        Some(Walls {
            transfer: transfer?,
            area: area?,
            stores: Energy::from_base(mass?.base() * STORES),
        })
    }

    fn area(&mut self) -> Option<Area> {
        let enclosure = self.enclosure;
        if let Some(written) = &enclosure.cooling_area {
            return Some(written.nominal());
        }
        let wide = self.want(enclosure.width.as_ref(), "width");
        let high = self.want(enclosure.height.as_ref(), "height");
        let deep = self.want(enclosure.depth.as_ref(), "depth");
        let (wide, high, deep) = (wide?, high?, deep?);
        Some(2.0 * (wide * high + wide * deep + high * deep))
    }

    /// Power of its heater; none where it has none.
    pub(super) fn heater(&self) -> Option<Power> {
        let heater = self.enclosure.heater.as_ref().map(Measured::nominal);
        heater.filter(|heater| heater.base() > 0.0)
    }

    /// Where its thermostat switches.
    pub(super) fn thermostat(&self) -> Option<(Temperature, Temperature)> {
        let control = self.enclosure.climate_control.as_ref()?;
        let (on, off) = (control.heater_on.as_ref()?, control.heater_off.as_ref()?);
        Some((on.nominal(), off.nominal()))
    }

    /// Where the cut-out opens, when it opens the feed of the heater.
    pub(super) fn cut_out(&self) -> Option<Temperature> {
        let control = self.enclosure.climate_control.as_ref()?;
        let counts = control.cut_out_in_feed == Some(true);
        control
            .cut_out
            .as_ref()
            .filter(|_| counts)
            .map(Measured::nominal)
    }

    /// The box with its heater.
    pub(super) fn boxed(&mut self, stuck: bool, with_cut_out: bool) -> Option<Box> {
        let heater = match (self.heater(), self.thermostat()) {
            (None, _) => None,
            (Some(power), Some((on_below, off_above))) => Some(Heater {
                power,
                on_below,
                off_above,
                stuck,
            }),
            (Some(_), None) => {
                self.want::<Temperature>(None, "where its thermostat switches");
                return None;
            }
        };
        let cut_out = self.cut_out().filter(|_| with_cut_out).map(|above| Switch {
            above,
            below: Temperature::from_base(above.base() - FALLS_BACK),
        });
        Some(Box {
            walls: self.walls?,
            inside: self.heat?,
            heater,
            cut_out,
            vent: None,
        })
    }

    /// The sun strikes faces that are written.
    pub(super) fn by_face(&self) -> bool {
        let in_sun = self.enclosure.in_sun.as_ref();
        in_sun.is_some_and(|in_sun| in_sun.facing.is_some() && !in_sun.lit.is_empty())
    }

    /// What of it the sun strikes, and the share that its finish takes up.
    pub(super) fn lit(&mut self) -> Option<(Lit, Ratio)> {
        let enclosure = self.enclosure;
        let absorptance = self.want(
            enclosure.absorptance.as_ref(),
            "share of the sunshine that its finish takes up",
        );
        let lit = if self.by_face() {
            self.faces().map(Lit::Faces)
        } else {
            let area = self.want(enclosure.sunlit_area.as_ref(), "area that the sun strikes");
            area.map(Lit::Facing)
        };
        Some((lit?, absorptance?))
    }

    fn faces(&mut self) -> Option<Vec<SunlitFace>> {
        let place = self.site.place.as_ref();
        let north: Angle = self.want(place.and_then(|place| place.north.as_ref()), "north")?;
        let in_sun = self.enclosure.in_sun.as_ref()?;
        let door = north.base() - in_sun.facing.as_ref()?.nominal().base();
        let mut faces = Vec::new();
        for lit in &in_sun.lit {
            let area = self.want(
                lit.area.as_ref(),
                &format!("sunlit area of its {}", lit.face),
            )?;
            let (tilt, turn) = match lit.face {
                BoxFace::Front => (FRAC_PI_2, 0.0),
                BoxFace::Left => (FRAC_PI_2, FRAC_PI_2),
                BoxFace::Back => (FRAC_PI_2, PI),
                BoxFace::Right => (FRAC_PI_2, -FRAC_PI_2),
                BoxFace::Top => (0.0, 0.0),
            };
            let face = Face::open(Angle::from_base(tilt), Angle::from_base(door + turn));
            faces.push(SunlitFace { face, area });
        }
        Some(faces)
    }
}
