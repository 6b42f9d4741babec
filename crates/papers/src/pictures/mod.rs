//! What people would rather look at than read: curves and levels of a site, for the screen, from what the papers draw too.
//!
//! A group tells of one thing: its pictures, and what keeps others from being drawn, with the lines to write.

mod battery;
mod moving;
mod power;
mod queue;
mod tension;
mod warmth;

use design::Finding;
use draw::{Chart, Levels};
use site::Site;

/// What a picture shows.
#[derive(Debug, Clone)]
pub enum Shape {
    /// Curves over axes.
    Curves(Chart),
    /// Values of several things on one axis.
    Levels(Levels),
}

impl Shape {
    /// What is shown.
    pub fn title(&self) -> &str {
        match self {
            Self::Curves(chart) => &chart.title,
            Self::Levels(levels) => &levels.title,
        }
    }

    /// What is to be seen, for those who can't see it.
    pub fn description(&self) -> &str {
        match self {
            Self::Curves(chart) => &chart.description,
            Self::Levels(levels) => &levels.description,
        }
    }

    /// Whole sentences under it.
    pub fn remarks(&self) -> &[String] {
        match self {
            Self::Curves(chart) => &chart.remarks,
            Self::Levels(levels) => &levels.remarks,
        }
    }
}

/// A picture.
#[derive(Debug, Clone)]
pub struct Picture {
    /// Its name, for addresses: `gate-force-main`.
    pub name: String,
    /// What it shows.
    pub shape: Shape,
}

impl Picture {
    fn curves(name: impl Into<String>, chart: Chart) -> Self {
        Self {
            name: name.into(),
            shape: Shape::Curves(chart),
        }
    }

    fn levels(name: impl Into<String>, levels: Levels) -> Self {
        Self {
            name: name.into(),
            shape: Shape::Levels(levels),
        }
    }
}

/// Something that cannot be drawn.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Untold {
    /// What it would have shown.
    pub title: String,
    /// Why not, as a sentence.
    pub why: String,
    /// The lines to write, each after the record that it belongs to; empty where none would do.
    pub write: Vec<String>,
}

/// Pictures that belong together.
#[derive(Debug, Clone)]
pub struct Group {
    /// Its name, for addresses: `warmth`.
    pub name: &'static str,
    /// Its title: `Warmth in each box`.
    pub title: &'static str,
    /// Its pictures.
    pub pictures: Vec<Picture>,
    /// What cannot be drawn.
    pub untold: Vec<Untold>,
}

/// All pictures of a site, in the order in which people ask for them.
pub fn groups(site: &Site) -> Vec<Group> {
    vec![
        moving::group(site),
        power::group(site),
        battery::group(site),
        warmth::group(site),
        tension::group(site),
        queue::group(site),
    ]
}

/// Where the pictures show what a finding speaks of: the name of a group.
pub fn of_finding(finding: &Finding) -> Option<&'static str> {
    match finding.question.as_str() {
        "force-slide" | "force-swing-torque" | "force-balance" | "force-cold-start"
        | "motion-travel-time" | "motion-edge-speed" => Some(moving::NAME),
        "power-voltage-at-device" | "power-voltage-at-release" => Some(power::NAME),
        "solar-year" => Some(battery::NAME),
        "enclosure-cold" | "enclosure-hot" | "enclosure-heater-stuck" => Some(warmth::NAME),
        "pull-tension" => Some(tension::NAME),
        "lane-queue" => Some(queue::NAME),
        _ => None,
    }
}

/// Why nothing of a kind is drawn, where the site has no such thing.
fn none(title: &str, why: &str, write: &str) -> Untold {
    Untold {
        title: title.to_owned(),
        why: why.to_owned(),
        write: vec![write.to_owned()],
    }
}

/// What cannot be drawn because facts are missing.
fn lacking(title: String, write: Vec<String>) -> Untold {
    Untold {
        title,
        why: if write.is_empty() {
            "It cannot be worked from what the site file says; the answers tell why.".to_owned()
        } else {
            "Facts are missing. Write".to_owned()
        },
        write,
    }
}
