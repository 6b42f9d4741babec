//! When and how the work is done: its days and hours, the weather it meets, who watches, how people get past it.

use crate::{Date, Id, Signed, Text};
use quantity::{Length, Measured, Ratio, Temperature, Time, Velocity};

site_words! {
    /// A day of the week.
    pub enum Weekday {
        /// Monday.
        Monday = "Monday",
        /// Tuesday.
        Tuesday = "Tuesday",
        /// Wednesday.
        Wednesday = "Wednesday",
        /// Thursday.
        Thursday = "Thursday",
        /// Friday.
        Friday = "Friday",
        /// Saturday.
        Saturday = "Saturday",
        /// Sunday.
        Sunday = "Sunday",
    }
}

impl Weekday {
    /// Its place in the week: 0 is Monday, 6 is Sunday.
    pub fn in_week(self) -> usize {
        match self {
            Self::Monday => 0,
            Self::Tuesday => 1,
            Self::Wednesday => 2,
            Self::Thursday => 3,
            Self::Friday => 4,
            Self::Saturday => 5,
            Self::Sunday => 6,
        }
    }
}

record! {
    /// Weather that is usual in the weeks of the work, as the weather service has it for the month.
    pub struct UsualWeather {
        /// Coldest in the working hours of a usual day.
        coldest: Option<Measured<Temperature>>,
        /// Hottest in the working hours of a usual day.
        hottest: Option<Measured<Temperature>>,
        /// Strongest wind of a usual working day.
        wind: Option<Measured<Velocity>>,
        /// Share of days with rain that stops work.
        wet_days: Option<Measured<Ratio>>,
    }
}

record! {
    /// Weather of one day, as forecast or as noted on the day sheet.
    pub struct Forecast {
        /// The day.
        on: Option<Date>,
        /// Coldest in the working hours.
        coldest: Option<Measured<Temperature>>,
        /// Hottest in the working hours.
        hottest: Option<Measured<Temperature>>,
        /// Strongest wind in the working hours.
        wind: Option<Measured<Velocity>>,
        /// The working hours stay dry.
        dry: Option<bool>,
    }
}

record! {
    /// Who notices when somebody who works alone is hurt, and where help is sent.
    pub struct CheckIn {
        /// Who is called, or calls.
        person: Option<Text>,
        /// What they do when no call comes.
        no_call: Option<Text>,
        /// By what: phone, radio.
        means: Option<Text>,
        /// Day on which it was tried from the gate line, standing where the work is.
        tried: Option<Date>,
        /// Address for the rescue service, as they find it.
        address: Option<Text>,
        /// How they get in: gate code, key box, who opens.
        way_in: Option<Text>,
    }
}

record! {
    /// What is agreed for nights on which the job stands half done.
    pub struct Overnight {
        /// How the owner and those who live or work there get in and out.
        way_in_and_out: Option<Text>,
        /// With whom that is agreed.
        agreed_with: Option<Text>,
        /// Who is told each evening what stands open.
        told: Option<Text>,
        /// Photographs are taken at the end of each day.
        photographs: Option<bool>,
    }
}

site_words! {
    /// How people and vehicles get past the work.
    pub enum WayThrough {
        /// Past it, on a way that stays free.
        PastIt = "past it",
        /// By another entrance.
        OtherEntrance = "other entrance",
        /// Not at all: the lane is closed for the time.
        Closed = "closed for the time",
    }
}

site_words! {
    /// What stands between the work and vehicles.
    pub enum WorkGuard {
        /// A parked vehicle or trailer across the lane.
        Vehicle = "parked vehicle",
        /// Barrier of concrete or filled with water.
        Barrier = "heavy barrier",
        /// The gate itself or a leaf, shut and locked.
        ShutGate = "shut and locked gate",
        /// A bollard, a kerb of at least knee height, a wall.
        Fixed = "bollard or wall",
        /// Cones.
        Cones = "cones",
        /// Tape or chain.
        Tape = "tape or chain",
        /// Signs.
        Signs = "signs",
        /// Somebody who stops vehicles.
        Flagger = "somebody who stops vehicles",
    }
}

impl WorkGuard {
    /// A car stops at it, whatever its driver does.
    pub fn stops_a_car(self) -> bool {
        matches!(
            self,
            Self::Vehicle | Self::Barrier | Self::ShutGate | Self::Fixed
        )
    }
}

record! {
    /// A guarded work place in a lane or in the travel of a leaf.
    pub struct WorkZone {
        /// Name, unique on the site.
        id: Id,
        /// The lane that it stands in.
        lane: Option<Id>,
        /// How people and vehicles get past.
        way: Option<WayThrough>,
        /// With whom that is agreed.
        agreed_with: Option<Text>,
        /// Day of the agreement.
        agreed: Option<Date>,
        /// Clear width that stays free for vehicles, where they pass.
        clear_width: Option<Measured<Length>>,
        /// Where people on foot walk meanwhile.
        foot_way: Option<Text>,
        /// What stands between the work and vehicles.
        guard: Vec<WorkGuard>,
        /// The fire engine still gets through.
        fire_access: Option<bool>,
        /// Who of the fire service was told, where it does not.
        fire_told: Option<Text>,
        /// The drive is switched off and locked, and the leaf held, while somebody works there.
        locked_out: Option<bool>,
        /// Part of it is on a public way.
        on_public_way: Option<bool>,
        /// Who permitted the set-up on the public way, and when.
        permit: Option<Text>,
    }
}

record! {
    /// When and how the work is done.
    pub struct Work {
        /// First day.
        begins: Option<Date>,
        /// Days of the week that are worked; Monday to Friday when missing.
        weekdays: Vec<Weekday>,
        /// Hour of the day at which work begins.
        first_hour: Option<u32>,
        /// Working hours of a day, breaks left out.
        hours_a_day: Option<Measured<Time>>,
        /// Hours by which clocks there are ahead of universal time in those weeks.
        clock: Option<Signed<Time>>,
        /// Day on which the clocks change meanwhile.
        clock_changes: Option<Date>,
        /// Hours by which they are ahead from that day on.
        clock_then: Option<Signed<Time>>,
        /// Days on which nobody works: holidays, other jobs.
        away: Vec<Date>,
        /// Days that were lost.
        lost: Vec<Date>,
        /// What is usual weather then.
        usual: Option<UsualWeather>,
        /// Single days as forecast or noted.
        forecast: Vec<Forecast>,
        /// Who notices when somebody is hurt.
        check_in: Option<CheckIn>,
        /// What is agreed for the nights.
        overnight: Option<Overnight>,
    }
}
