//! A battery that panels charge, carried through the year of the site.

use crate::asking::{Asking, End, Wants, need, pick, read};
use crate::check::standby::load::Bank as Loads;
use crate::outcome::Halt;
use crate::weather;
use formula::{Evidence, OutOfReach, Source};
use quantity::{Angle, Charge, Energy, Power, Quantity as _, Ratio, Temperature, Time, Voltage};
use sim::sun::{Face, Skyline, SunPlace};
use sim::sun_year::{
    Bank, DayLoad, Given, Monthly, Panel, PanelHours, Plane, SunHour, Through, hourly, measured,
};
use site::{Battery, Climate, PanelStand, Site, SolarPanel, SunPlane, WeatherYear};

static POSITION: Source = Source {
    work: "NREL/TP-560-34302, Solar Position Algorithm for Solar Radiation Applications",
    clause: "",
    evidence: Evidence::Seen,
    seen: "its printed example; a public library that follows it; for the hours of a year Grena 2012, within a hundredth of a degree of it",
};

static CLEAR: Source = Source {
    work: "Haurwitz, Insolation in relation to cloudiness and cloud density, 1945",
    clause: "clear sky: 1098 W/m² · cos z · e^(−0.059 / cos z)",
    evidence: Evidence::Seen,
    seen: "public photovoltaic libraries; some texts print 0.057",
};

static SPLIT: Source = Source {
    work: "Erbs, Klein and Duffie, Estimation of the diffuse radiation fraction, 1982; Liu and Jordan, 1963, for tilted faces",
    clause: "",
    evidence: Evidence::Seen,
    seen: "public photovoltaic libraries",
};

static DAYS: Source = Source {
    work: "dark days have an eighth of the sun of clear ones, cells are 25 °C warmer than the air at 800 W/m², the ground throws a fifth back",
    clause: "",
    evidence: Evidence::CommonPractice,
    seen: "as sizing guides for stand-alone panels have them",
};

static WEATHER: Source = Source {
    work: "the weather file that the site names: a typical year in the format EPW (EnergyPlus, Auxiliary Programs) or TMY3 (NREL/TP-581-43156)",
    clause: "hours end at their stamp, in local standard time; the sun stands as in the middle of the hour",
    evidence: Evidence::Seen,
    seen: "the data dictionaries of both formats, and a public library that reads them",
};

/// The sun of a year, and the longest run of dark days.
struct Sunshine {
    year: Year,
    dark_run: Time,
}

/// Where the sun of a year comes from.
enum Year {
    /// From the means of the months.
    Months(Given),
    /// From a weather file, hour by hour.
    Weather(Vec<SunHour>),
}

impl Year {
    fn hours(&self, panel: &Panel) -> Result<PanelHours, OutOfReach> {
        match self {
            Self::Months(given) => hourly(given, panel),
            Self::Weather(hours) => measured(hours, panel),
        }
    }
}

/// A battery that came through the year.
pub(crate) struct Carried {
    pub(crate) bank: Bank,
    pub(crate) load: DayLoad,
    pub(crate) sun: PanelHours,
    pub(crate) through: Through,
    /// Power of all its panels.
    pub(crate) power: Power,
    /// Rated capacity.
    pub(crate) capacity: Charge,
    /// Charge that may be drawn, old.
    pub(crate) usable: Charge,
    /// Longest run of dark days.
    pub(crate) dark_run: Time,
}

/// The panels on the charge controller of a battery; none where mains feed it too.
pub(crate) fn panels_of<'s>(
    site: &'s Site,
    battery: &'s Battery,
) -> impl Iterator<Item = &'s SolarPanel> + use<'s> {
    let alone = battery.supply.as_ref().filter(|name| {
        let fed = |supply: &site::Supply| supply.id == **name && supply.fed_by.is_some();
        !site.supply.iter().any(fed)
    });
    site.solar_panel
        .iter()
        .filter(move |panel| alone.is_some() && panel.supply.as_ref() == alone)
}

/// Carries the battery through the year.
pub(crate) fn carried<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    battery: &'s Battery,
) -> Result<Carried, Halt> {
    let sunshine = sunshine(asking, site);
    let panels: Vec<_> = panels_of(site, battery)
        .map(|panel| one_panel(asking, panel))
        .collect();
    let bank = bank(asking, site, battery);
    let load = load(asking, site, battery);
    let (sunshine, (bank, capacity, usable), load) = (sunshine?, bank?, load?);
    let panels = panels.into_iter().collect::<Result<Vec<_>, _>>()?;
    let mut sun: Option<PanelHours> = None;
    let mut power = Power::from_base(0.0);
    for panel in &panels {
        power += panel.power;
        let hours = asking.in_reach(sunshine.year.hours(panel))?;
        sun = Some(match sun {
            Some(sum) => sum.and(&hours),
            None => hours,
        });
    }
    let Some(sun) = sun else { return Err(Halt) };
    let through = asking.in_reach(bank.through(&sun, &load))?;
    Ok(Carried {
        bank,
        load,
        sun,
        through,
        power,
        capacity,
        usable,
        dark_run: sunshine.dark_run,
    })
}

/// The sun of the weather file where the site names one that could be read, else that of the months.
fn sunshine<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<Sunshine, Halt> {
    asking.rest_on(&POSITION);
    asking.rest_on(&SPLIT);
    let Some((year, climate)) = weather::year(site).zip(site.climate.as_ref()) else {
        asking.rest_on(&CLEAR);
        asking.rest_on(&DAYS);
        let given = given(asking, site)?;
        return Ok(Sunshine {
            dark_run: given.dark_run,
            year: Year::Months(given),
        });
    };
    asking.rest_on(&WEATHER);
    let dark_run = read!(asking, climate.sun?.dark_run);
    let hours = asking.in_reach(weather::sun_hours(year))?;
    asking.note(|_| station(site, year));
    Ok(Sunshine {
        year: Year::Weather(hours),
        dark_run: dark_run?,
    })
}

/// Where the station of the weather file is.
fn station(site: &Site, year: &WeatherYear) -> String {
    let degrees = |angle: Angle| angle.base().to_degrees();
    let place = site.place.as_ref();
    let at = place.and_then(|place| place.latitude.as_ref().zip(place.longitude.as_ref()));
    let far = at.is_some_and(|(latitude, longitude)| {
        (degrees(latitude.nominal()) - degrees(year.latitude)).abs() > FAR
            || (degrees(longitude.nominal()) - degrees(year.longitude)).abs() > FAR
    });
    let word = if far {
        ", more than a degree away from the site"
    } else {
        ""
    };
    format!(
        "Sunshine and air hour by hour from the weather file of a station at {}, {}{word}.",
        toward(year.latitude, ["north", "south"]),
        toward(year.longitude, ["east", "west"])
    )
}

/// An angle of a place on Earth with its side.
fn toward(angle: Angle, [positive, negative]: [&str; 2]) -> String {
    let degrees = angle.base().to_degrees();
    let side = if degrees < 0.0 { negative } else { positive };
    format!("{:.2}° {side}", degrees.abs())
}

/// Degrees from which on a station is told to be far away.
const FAR: f64 = 1.0;

fn given<'s>(asking: &mut Asking<'s>, site: &'s Site) -> Result<Given, Halt> {
    let latitude = read!(asking, site.place?.latitude);
    let longitude = read!(asking, site.place?.longitude);
    let hottest = read!(asking, site.climate?.hottest);
    let coldest = read!(asking, site.climate?.coldest);
    let sun = match &site.climate {
        Some(climate) => sun(asking, climate),
        None => asking.lack(&site.origin, "climate.sun.monthly", Wants::Written(MONTHLY)),
    };
    let (latitude, longitude) = (latitude?, longitude?);
    let (hottest, coldest): (Temperature, Temperature) = (hottest?, coldest?);
    let (monthly, plane, dark_run) = sun?;
    Ok(Given {
        place: asking.in_reach(SunPlace::new(latitude, longitude))?,
        monthly,
        plane,
        dark_run,
        air: (hottest, coldest),
    })
}

/// How the sun of the months is written.
const MONTHLY: &str = "[\"1.0 kWh/(m²·day)\", \"1.8 kWh/(m²·day)\", …]";

fn sun<'s>(asking: &mut Asking<'s>, climate: &'s Climate) -> Result<(Monthly, Plane, Time), Halt> {
    let plane = pick!(asking, climate.sun?.plane);
    let dark_run = read!(asking, climate.sun?.dark_run);
    let Some(sun) = &climate.sun else {
        return asking.lack(&climate.origin, "sun.monthly", Wants::Written(MONTHLY));
    };
    let low: Vec<_> = sun.monthly.iter().map(quantity::Measured::low).collect();
    let Ok(monthly) = Monthly::try_from(low) else {
        return asking.lack(&sun.origin, "monthly", Wants::Written(MONTHLY));
    };
    let plane = match plane? {
        SunPlane::Level => Plane::Level,
        SunPlane::Panel => Plane::Panel,
    };
    Ok((monthly, plane, dark_run?))
}

fn one_panel<'s>(asking: &mut Asking<'s>, panel: &'s SolarPanel) -> Result<Panel, Halt> {
    let power = asking.read_at((&panel.origin, "power"), panel.power.as_ref(), End::Low);
    let tilt = read!(asking, panel.tilt);
    let azimuth = read!(asking, panel.azimuth);
    let per_celsius = read!(asking, panel.sheet?.power_per_celsius);
    let dirt = read!(asking, panel.stand?.dirt);
    let skyline = match &panel.stand {
        Some(stand) => skyline(asking, stand),
        None => asking.lack(&panel.origin, "stand.skyline", Wants::Table(SKYLINE)),
    };
    let (power, tilt, azimuth): (Power, Angle, Angle) = (power?, tilt?, azimuth?);
    Ok(Panel {
        power,
        face: Face {
            tilt,
            azimuth,
            skyline: skyline?,
        },
        dirt: dirt?,
        per_celsius: per_celsius?,
    })
}

/// How a skyline is written.
const SKYLINE: &str = "[solar_panel.stand.skyline]\ntoward = [\"90°\", \"150°\", \"210°\"]\nup = [\"12°\", \"4°\", \"20°\"]";

fn skyline<'s>(asking: &mut Asking<'s>, stand: &'s PanelStand) -> Result<Skyline, Halt> {
    let line = need!(asking, stand.skyline, "[solar_panel.stand.skyline]")?;
    if line.toward.len() != line.up.len() {
        return asking.lack(
            &line.origin,
            "up",
            Wants::Written("one height for each direction"),
        );
    }
    let corner = |(toward, up): (&quantity::Measured<Angle>, &quantity::Measured<Angle>)| {
        (toward.nominal(), up.high())
    };
    let corners: Vec<_> = line.toward.iter().zip(&line.up).map(corner).collect();
    asking.in_reach(Skyline::new(corners))
}

fn bank<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    battery: &'s Battery,
) -> Result<(Bank, Charge, Charge), Halt> {
    let capacity = asking.read_at(
        (&battery.origin, "capacity"),
        battery.capacity.as_ref(),
        End::Low,
    );
    let usable = read!(asking, battery.usable);
    let old = read!(asking, battery.end_of_life);
    let voltage = read!(asking, battery.voltage);
    let efficiency = read!(asking, battery.charging?.efficiency);
    let controller = site
        .supply
        .iter()
        .find(|supply| battery.supply.as_ref() == Some(&supply.id));
    let passes = match controller {
        Some(supply) => {
            let current = read!(asking, supply.rated_current);
            let loss = read!(asking, supply.efficiency);
            current.and_then(|current| loss.map(|loss| (current, loss)))
        }
        None => asking.lack(&battery.origin, "supply", Wants::Written("\"charge\"")),
    };
    let (capacity, usable, old): (Charge, Ratio, Ratio) = (capacity?, usable?, old?);
    let (voltage, efficiency): (Voltage, Ratio) = (voltage?, efficiency?);
    let (current, loss) = passes?;
    let charge = capacity * (usable.base() * old.base());
    let bank = Bank {
        usable: Energy::from_base(charge.base() * voltage.base()),
        efficiency: efficiency * loss.base(),
        greatest_charge: Power::from_base(current.base() * voltage.base()),
    };
    Ok((bank, capacity, charge))
}

/// Hours of the day in which the gate moves: from seven to ten in the evening.
const BUSY: std::ops::Range<usize> = 7..22;

/// What hangs on the battery in each hour of a day: the standing load all day, the moves spread over the busy hours.
fn load<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    battery: &'s Battery,
) -> Result<DayLoad, Halt> {
    let loads = Loads::new(asking, site, battery)?.at_its_hungriest();
    let standing = loads.standing(asking);
    let moving = loads.moving(asking);
    let cycle = loads.cycle(asking);
    let mut cycles = Ok(0.0);
    for gate in loads.gates() {
        match pick!(asking, gate.cycles_per_day) {
            Ok(count) => cycles = cycles.map(|sum: f64| sum.max(f64::from(count))),
            Err(halt) => cycles = Err(halt),
        }
    }
    let voltage = read!(asking, battery.voltage)?.base();
    let (standing, moving, cycle, cycles) = (standing?, moving?, cycle?, cycles?);
    let steady = standing.base() * voltage;
    let moves = cycles * cycle.base() * moving.base() * voltage;
    let span = 3600.0 * 15.0;
    let mut hours = [Power::from_base(steady); 24];
    for hour in hours.iter_mut().take(BUSY.end).skip(BUSY.start) {
        *hour = Power::from_base(steady + moves / span);
    }
    Ok(hours)
}
