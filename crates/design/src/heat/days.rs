//! A cold night, the hottest day, and the dampest morning.

use super::facts::Facts;
use super::{Damp, Followed};
use crate::check::enclosure::condensation::CLEAR_SKY;
use crate::weather::Lit;
use formula::Formula as _;
use formula::power::{DewPoint, EnclosureDawn};
use quantity::{Angle, HeatFlux, Power, Quantity as _, Ratio, Temperature};
use sim::enclosure::{Day, Enclosure as Box};
use sim::sun::SunPlace;

/// Between the coldest and the hottest hour of a day, in kelvin: common practice for open ground.
pub(crate) const SWING: f64 = 10.0;

/// Loss in wind over loss in still air.
pub(crate) const IN_WIND: f64 = 2.0;

/// Days of the year, counted from zero: 21 July and, south of the equator, 21 January.
const JULY: u16 = 201;
const JANUARY: u16 = 20;

impl Facts<'_> {
    /// A cold night in wind, the heater as it works.
    pub(super) fn night(&mut self) -> Option<Followed> {
        let climate = self.site.climate.as_ref();
        let coldest: Option<Temperature> = self.want(
            climate.and_then(|climate| climate.coldest.as_ref()),
            "coldest air of a usual year",
        );
        let mut one = self.boxed(false, true)?;
        one.walls.transfer *= IN_WIND;
        let coldest = coldest?;
        let warmer = Temperature::from_base(coldest.base() + SWING);
        follow(&one, &Day::dark(coldest, warmer))
    }

    /// The hottest day, the heater as it works: off.
    pub(super) fn day(&mut self) -> Option<Followed> {
        let day = self.hottest_day();
        let one = self.boxed(false, true)?;
        follow(&one, &day?)
    }

    /// The hottest day with the thermostat stuck closed; nothing without a heater.
    pub(super) fn stuck(&mut self, with_cut_out: bool) -> Option<Followed> {
        self.heater()?;
        let day = self.hottest_day();
        let one = self.boxed(true, with_cut_out)?;
        follow(&one, &day?)
    }

    fn hottest_day(&mut self) -> Option<Day> {
        let climate = self.site.climate.as_ref();
        let hottest: Option<Temperature> = self.want(
            climate.and_then(|climate| climate.hottest.as_ref()),
            "hottest air of a usual year",
        );
        let lit = self.lit();
        let place = self.place();
        let (hottest, (lit, absorptance), place) = (hottest?, lit?, place?);
        let cooler = Temperature::from_base(hottest.base() - SWING);
        let day = Day::dark(cooler, hottest);
        let of_year = if place.is_south() { JANUARY } else { JULY };
        match lit {
            Lit::Faces(faces) => Some(day.sunny(&place, of_year, &faces, absorptance)),
            Lit::Facing(area) => {
                let sunshine: HeatFlux = self.want(
                    climate.and_then(|climate| climate.sunshine.as_ref()),
                    "sunshine on a surface that faces the sun",
                )?;
                let power = Power::from_base(absorptance.base() * area.base() * sunshine.base());
                Some(facing(&day, &place, of_year, power))
            }
        }
    }

    fn place(&mut self) -> Option<SunPlace> {
        let place = self.site.place.as_ref();
        let latitude: Option<Angle> =
            self.want(place.and_then(|place| place.latitude.as_ref()), "latitude");
        let longitude: Option<Angle> = self.want(
            place.and_then(|place| place.longitude.as_ref()),
            "longitude",
        );
        SunPlace::new(latitude?, longitude?).ok()
    }

    /// The dampest morning, before sunrise, in still air under a clear sky.
    pub(super) fn damp(&mut self) -> Option<Damp> {
        let morning = self
            .site
            .climate
            .as_ref()
            .and_then(|climate| climate.damp_morning.as_ref());
        let air = self.want(
            morning.and_then(|morning| morning.temperature.as_ref()),
            "air of the dampest morning",
        );
        let humidity: Option<Ratio> = self.want(
            morning.and_then(|morning| morning.humidity.as_ref()),
            "humidity of the dampest morning",
        );
        let sky_area = self.want(
            self.enclosure.sunlit_area.as_ref(),
            "area that the sun strikes",
        );
        let one = self.boxed(false, true)?;
        let (air, humidity) = (air?, humidity?);
        let dawn = EnclosureDawn {
            heat: one.inside,
            sky: HeatFlux::from_base(CLEAR_SKY),
            sky_area: sky_area?,
            area: one.walls.area,
            transfer: one.walls.transfer,
            outside: air,
        };
        let moisture = DewPoint { air, humidity }.evaluate().ok()?;
        let dawn = dawn.evaluate().ok()?;
        Some(Damp {
            dew_point: moisture.dew_point,
            inside: dawn.inside,
            wall: dawn.wall,
        })
    }
}

/// The same sunshine as long as the sun is up.
fn facing(day: &Day, place: &SunPlace, of_year: u16, power: Power) -> Day {
    let open = sim::enclosure::SunlitFace {
        face: sim::sun::Face::open(Angle::from_base(0.0), Angle::from_base(0.0)),
        area: quantity::Area::from_base(1.0),
    };
    let lit = day.sunny(place, of_year, &[open], Ratio::from_base(1.0));
    let none = Power::from_base(0.0);
    Day {
        sun: lit.sun.map(|sun| if sun > none { power } else { none }),
        ..*day
    }
}

fn follow(one: &Box, day: &Day) -> Option<Followed> {
    let inside = one.through(day).ok()?;
    Some(Followed {
        outside: day.outside,
        inside,
    })
}
