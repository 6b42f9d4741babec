//! What has to be done on the job: each task with what it needs first, its hours, its cure, its limits of weather.

use crate::model::Cure;
use crate::{Date, Id, Text};
use quantity::{Measured, Ratio, Temperature, Time, Velocity};

site_words! {
    /// What sort of work a task is.
    pub enum TaskKind {
        /// Digging a trench or a hole.
        Dig = "dig",
        /// Pouring concrete.
        Pour = "pour",
        /// Laying conduit or an earth electrode.
        Lay = "lay conduit",
        /// Filling a trench or a hole, or closing over work in another way.
        Cover = "cover",
        /// Setting anchors.
        Anchors = "set anchors",
        /// Hanging a leaf, or taking it down.
        Hang = "hang",
        /// Fixing and mounting things.
        Fix = "fix",
        /// Pulling cable.
        Pull = "pull cable",
        /// Splicing and joining conductors.
        Join = "join conductors",
        /// Switching on for the first time.
        SwitchOn = "switch on",
        /// Setting up and programming.
        SetUp = "set up",
        /// Testing forces and protection.
        ForceTest = "test forces",
        /// Testing pictures.
        PictureTest = "test pictures",
        /// Any other test.
        Test = "test",
        /// Tidying and cleaning.
        Tidy = "tidy",
        /// Handing over.
        HandOver = "hand over",
    }
}

site_words! {
    /// Light in which a task is done.
    pub enum TaskLight {
        /// By day.
        Daylight = "daylight",
        /// By night.
        Dark = "dark",
        /// Once by day and once by night.
        Both = "daylight and dark",
        /// By any light.
        Any = "any",
    }
}

site_words! {
    /// What makes a task one in which nobody should be alone and unheard.
    pub enum TaskRisk {
        /// Heavy things are moved.
        Heavy = "heavy",
        /// Parts are live.
        Live = "live",
        /// The body is in the travel of a leaf.
        InTravel = "in the travel",
        /// Feet are above the ground.
        Height = "at height",
        /// The body is in a hole or a trench.
        InHole = "in a hole",
    }
}

site_words! {
    /// What sets, dries or hardens.
    pub enum CureKind {
        /// Concrete.
        Concrete = "concrete",
        /// Adhesive of anchors.
        Adhesive = "adhesive",
        /// Grout under a plate.
        Grout = "grout",
        /// Sealant or loop compound.
        Sealant = "sealant",
        /// Resin in a joint.
        Resin = "resin",
        /// Paint or cold galvanizing.
        Paint = "paint",
    }
}

site_words! {
    /// How fast a cement hardens (EN 1992-1-1 3.1.2).
    pub enum CementClass {
        /// Rapid: class R.
        Rapid = "rapid",
        /// Normal: class N.
        Normal = "normal",
        /// Slow: class S.
        Slow = "slow",
    }
}

record! {
    /// What a task leaves to set, dry or harden.
    pub struct Curing {
        /// What it is.
        of: Option<CureKind>,
        /// Temperature of it through the cure: the coldest of the base material for adhesive, the mean for concrete.
        temperature: Option<Measured<Temperature>>,
        /// Lines of its data sheet.
        sheet: Vec<Cure>,
        /// How fast the cement hardens, where it is concrete.
        cement: Option<CementClass>,
        /// Share of the strength at 28 days that it must have before anything loads it, where it is concrete.
        wanted: Option<Measured<Ratio>>,
    }
}

record! {
    /// Somebody who must see the work before it is covered.
    pub struct Inspection {
        /// Who comes.
        by: Option<Text>,
        /// Time from the end of the task until they have been there, waiting included.
        wait: Option<Measured<Time>>,
        /// A photograph with a tape in it is taken.
        photograph: Option<bool>,
        /// Day on which it was passed.
        passed: Option<Date>,
    }
}

record! {
    /// Something that must have arrived before a task begins.
    pub struct Delivery {
        /// What it is.
        what: Text,
        /// Day that the supplier promises, or on which it came.
        arrives: Option<Date>,
    }
}

record! {
    /// Weather and light in which a task can be done.
    pub struct TaskLimits {
        /// Wind above which the work stops.
        wind: Option<Measured<Velocity>>,
        /// It must be dry.
        dry: Option<bool>,
        /// Coldest air in which it can be done.
        coldest: Option<Measured<Temperature>>,
        /// Hottest air in which it can be done.
        hottest: Option<Measured<Temperature>>,
        /// Light in which it is done; daylight when missing.
        light: Option<TaskLight>,
    }
}

site_words! {
    /// A danger that a task leaves behind until another one ends it.
    pub enum LeftKind {
        /// A leaf that can fall, roll or swing.
        Leaf = "leaf not held by its gear",
        /// A hole or a trench that somebody can fall into.
        Hole = "open hole or trench",
        /// Wires whose ends are bare or not yet shut away.
        Wires = "open wires",
        /// A drive that could start while its protection is not proved.
        Drive = "drive without proved protection",
        /// Something propped up or stacked that can fall.
        Props = "props or stacked things",
        /// A way into the property that cannot be shut.
        Opening = "opening that cannot be shut",
    }
}

record! {
    /// A danger that is there from the first hour of a task until another task is done.
    pub struct LeftBehind {
        /// What it is.
        what: LeftKind,
        /// The task that ends it; the same one when missing.
        until: Option<Id>,
        /// What holds it, covers it or shuts it off overnight, one by one.
        secured_by: Vec<Text>,
    }
}

record! {
    /// A task of the job.
    pub struct Task {
        /// Name, unique on the site.
        id: Id,
        /// What is done: `"pour the pad of the drive"`.
        what: Text,
        /// What sort of work it is.
        kind: Option<TaskKind>,
        /// Tasks that must be done before it.
        after: Vec<Id>,
        /// Tasks that must be done and cured before it, because it loads what they made.
        loads: Vec<Id>,
        /// Tasks whose work it covers: they must have been inspected and photographed.
        covers: Vec<Id>,
        /// Working hours that it takes one person.
        hours: Option<Measured<Time>>,
        /// Who helps, where one person cannot do it alone.
        helper: Option<Text>,
        /// Hours that the helper is needed; all of them when missing.
        helper_hours: Option<Measured<Time>>,
        /// It cannot be broken off and gone on with another day.
        in_one_go: Option<bool>,
        /// What must have arrived.
        delivery: Vec<Delivery>,
        /// What it leaves to cure.
        curing: Option<Curing>,
        /// Who must see it before it is covered.
        inspection: Option<Inspection>,
        /// Weather and light in which it can be done.
        limits: Option<TaskLimits>,
        /// What makes it one in which nobody should be alone and unheard.
        risk: Vec<TaskRisk>,
        /// Longest time between two calls to whoever watches, while it is done.
        check_in: Option<Measured<Time>>,
        /// The guarded work place that it is done in, where it stands in a lane or in the travel.
        zone: Option<Id>,
        /// Dangers that it leaves behind.
        leaves: Vec<LeftBehind>,
        /// Tools that it takes.
        tools: Vec<Text>,
        /// Materials that it takes, beside the parts that the site lists.
        materials: Vec<Text>,
        /// Day on which it was done.
        done: Option<Date>,
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use super::*;
    use quantity::Quantity as _;

    const SITE: &str = r#"
        [site]
        name = "Test yard"
        code_basis = "us"
        [[task]]
        id = "task-pour"
        what = "pour the pad"
        kind = "pour"
        hours = "4 h ± 1 h"
        curing = { of = "concrete", temperature = "54 °F", cement = "normal", wanted = "75 %" }
        [[task]]
        id = "task-hang"
        what = "hang the leaf"
        kind = "hang"
        loads = ["task-pour"]
        hours = "3 h"
        helper = "one hand of the yard"
        leaves = [{ what = "leaf not held by its gear", secured_by = ["chain and lock", "stop bolted down"] }]
    "#;

    fn load(text: &str) -> crate::Loaded {
        let source = crate::SourceFile {
            name: "site.toml".to_owned(),
            text: text.to_owned(),
        };
        crate::load(source, Vec::new())
    }

    #[test]
    fn a_task_reads_as_written() {
        let loaded = load(SITE);
        assert_eq!(loaded.problems.to_string(), "");
        let site = loaded.site.unwrap();
        assert_eq!(site.task.len(), 2);
        let (pour, hang) = (&site.task[0], &site.task[1]);
        let hours = pour.hours.unwrap();
        assert!((hours.high().base() - 5.0 * 3600.0).abs() < 1e-9);
        assert_eq!(pour.curing.as_ref().unwrap().of, Some(CureKind::Concrete));
        assert_eq!(hang.loads[0].as_str(), "task-pour");
        assert_eq!(hang.leaves[0].secured_by.len(), 2);
    }

    #[test]
    fn a_task_that_nothing_has_is_named() {
        let wrong = SITE.replace("loads = [\"task-pour\"]", "loads = [\"task-por\"]");
        let problems = load(&wrong).problems.to_string();
        assert!(
            problems.contains("nothing here is called `task-por`"),
            "{problems}"
        );
        assert!(problems.contains("task-pour"), "{problems}");
    }
}
