//! The words for a site. Each record is a table of the site file; each field is a key of it.
//!
//! Almost every field may be missing: a fact that nobody has measured yet is left out, and the findings that need it
//! say so. Only what names a thing or says which kind it is must be there.

mod about;
mod anchor;
mod bollard;
mod boundary;
mod building;
mod bus;
mod cabling;
mod charging;
mod circuit;
mod climate;
mod control;
mod cutting;
mod device;
mod earth;
mod enclosure;
mod eye;
mod finish;
mod fire;
mod foot;
mod gate;
mod hanging;
mod hazard;
mod labels;
mod lane_view;
mod leaf;
mod lift;
mod looked_up;
mod mains;
mod mounting;
mod network;
mod offer;
mod on_vehicle;
mod operator;
mod panel;
mod papers;
mod post;
mod power;
mod price_book;
mod protection;
mod pulling;
mod queue;
mod radio;
mod release;
mod running;
mod shelter;
mod speech;
mod station;
mod surge;
mod swept;
mod task;
mod traffic;
mod turning;
mod vehicle_field;
mod vehicle_loop;
mod ways;
mod wiring;
mod work;

pub use about::*;
pub use anchor::*;
pub use bollard::*;
pub use boundary::*;
pub use building::*;
pub use bus::*;
pub use cabling::*;
pub use charging::*;
pub use circuit::*;
pub use climate::*;
pub use control::*;
pub use cutting::*;
pub use device::*;
pub use earth::*;
pub use enclosure::*;
pub use eye::*;
pub use finish::*;
pub use fire::*;
pub use foot::*;
pub use gate::*;
pub use hanging::*;
pub use hazard::*;
pub use labels::*;
pub use lane_view::*;
pub use leaf::*;
pub use lift::*;
pub use looked_up::*;
pub use mains::*;
pub use mounting::*;
pub use network::*;
pub use offer::*;
pub use on_vehicle::*;
pub use operator::*;
pub use panel::*;
pub use papers::*;
pub use post::*;
pub use power::*;
pub use price_book::*;
pub use protection::*;
pub use pulling::*;
pub use queue::*;
pub use radio::*;
pub use release::*;
pub use running::*;
pub use shelter::*;
pub use speech::*;
pub use station::*;
pub use surge::*;
pub use swept::*;
pub use task::*;
pub use traffic::*;
pub use turning::*;
pub use vehicle_field::*;
pub use vehicle_loop::*;
pub use ways::*;
pub use wiring::*;
pub use work::*;

use crate::changed::Changed;
use crate::record::Record as _;

record! {
    /// A whole installation, as one description.
    pub struct Site {
        /// What the site is called, which codes count there, which units it is written in.
        site: About,
        /// Where on Earth it is and which way it faces.
        place: Option<Place>,
        /// Weather and soil that the design must stand.
        climate: Option<Climate>,
        /// The gates.
        gate: Vec<Gate>,
        /// The operators that drive them.
        operator: Vec<Operator>,
        /// Everything that senses, identifies, speaks, shows, locks or switches.
        device: Vec<Device>,
        /// Boxes that shelter equipment.
        enclosure: Vec<Enclosure>,
        /// Power supplies, mains circuits included.
        supply: Vec<Supply>,
        /// Batteries.
        battery: Vec<Battery>,
        /// Solar panels.
        solar_panel: Vec<SolarPanel>,
        /// Fuses, and what does their work.
        fuse: Vec<Fuse>,
        /// Places where conductors are joined.
        joint: Vec<Joint>,
        /// Cables.
        cable: Vec<Cable>,
        /// Conduits, from pull point to pull point.
        conduit: Vec<Conduit>,
        /// Means to switch sources of power off.
        disconnect: Vec<Disconnect>,
        /// Earth electrodes.
        electrode: Vec<Electrode>,
        /// Bonds between metal parts and the protective terminal.
        bond: Vec<Bond>,
        /// Lines and fences near the gate that bring voltage.
        lines_near: Option<LinesNear>,
        /// Concrete pads and post foundations.
        foundation: Vec<Foundation>,
        /// Covers over handholes, pull boxes and pits.
        cover: Vec<Cover>,
        /// Bollards and other guards against vehicles.
        bollard: Vec<Bollard>,
        /// Lanes that lead to and from the gates.
        lane: Vec<Lane>,
        /// Vehicles that are expected.
        vehicle: Vec<Vehicle>,
        /// People who are expected near the gates.
        people: Vec<People>,
        /// Gates and ways for people on foot.
        walk_gate: Vec<WalkGate>,
        /// Lines that people on foot really take.
        foot_route: Vec<FootRoute>,
        /// What people on foot stop for.
        foot_stop: Vec<FootStop>,
        /// What is asked of the way out on foot.
        egress: Option<Egress>,
        /// What the fire service asks, and how it gets in.
        fire: Option<Fire>,
        /// What is heavy on the job, and how it is lifted.
        lift: Vec<Lift>,
        /// How leaves are hung or taken down.
        hanging: Vec<Hanging>,
        /// Ways to start a movement without a hand on a fixed control: fobs, phones, clocks, desks, detectors.
        remote: Vec<Remote>,
        /// Lines at which the property ends.
        boundary: Vec<Boundary>,
        /// Signs at the gates.
        sign: Vec<Sign>,
        /// What somebody looked up in a work that is known here from memory only.
        looked_up: Vec<LookedUp>,
        /// What lives at the far end of the line.
        far_end: Vec<FarEnd>,
        /// Lines of two wires on which readers speak to a controller.
        bus: Vec<Bus>,
        /// Parts of the data network whose devices reach each other freely.
        network_segment: Vec<NetworkSegment>,
        /// What may cross between them.
        crossing: Vec<Crossing>,
        /// How the site keeps the time.
        time_keeping: Option<TimeKeeping>,
        /// What the law of the place lets a camera record.
        recording_law: Option<RecordingLaw>,
        /// Radio links to a house, and mobile modems.
        radio_link: Vec<RadioLink>,
        /// What is offered to the customer.
        offer: Option<Offer>,
        /// What is needed and is no thing of the site.
        material: Vec<FurtherMaterial>,
        /// What is on its way.
        ordered: Vec<Ordered>,
        /// The way in for machines.
        access: Option<Access>,
        /// When and how the work is done.
        work: Option<Work>,
        /// What has to be done on the job.
        task: Vec<Task>,
        /// Guarded work places in a lane or in the travel of a leaf.
        work_zone: Vec<WorkZone>,
        /// Terminals on which cores land.
        terminals: Vec<Terminals>,
        /// Where the cores of each cable land.
        wiring: Vec<Wiring>,
        /// What the labels are made for, and how large they are.
        labels: Option<Labels>,
        /// The papers of the site and where they stand.
        papers: Option<Papers>,
        /// How cables are pulled on this job.
        pulling: Option<Pulling>,
        /// What was asked and searched before the first cut.
        locate: Option<Locate>,
        /// Lines that are buried already.
        buried: Vec<Buried>,
        /// Ground that no way may cross.
        keep_off: Vec<KeepOff>,
        /// What a length of way costs.
        digging: Vec<Digging>,
        /// Points at which ways meet, or at which something is reached.
        way_point: Vec<WayPoint>,
        /// Ways that may be taken.
        way: Vec<Way>,
        /// How high water or snow has stood.
        water_line: Vec<WaterLine>,
        /// Bars, tubes and rails, and what is cut from them.
        bar_stock: Vec<BarStock>,
        /// Reels of cable, and which runs are cut from them.
        cable_reels: Vec<CableReels>,
        /// Tracks, rails and racks of several lengths.
        joined: Vec<Joined>,
    }
}

impl Site {
    /// The measured values that are others in the same site later, and the lines; nothing where anything else is another, be it a
    /// word, a name, what is there at all, or what stands before what.
    pub fn changed(&self, later: &Self) -> Option<Changed> {
        let mut changed = Changed::nothing();
        let is_same = self.stands_but_for(later, &mut changed);
        (is_same && changed.keeps_order()).then_some(changed)
    }

    /// The operators that drive a gate.
    pub fn operators_of<'s, 'g>(
        &'s self,
        gate: &'g Gate,
    ) -> impl Iterator<Item = &'s Operator> + use<'s, 'g> {
        self.operator
            .iter()
            .filter(|operator| operator.gate == gate.id)
    }

    /// The operators that drive a leaf of a gate: those that name it, and those that name no leaf.
    pub fn operators_of_leaf<'s, 'g>(
        &'s self,
        gate: &'g Gate,
        leaf: &'g Leaf,
    ) -> impl Iterator<Item = &'s Operator> + use<'s, 'g> {
        self.operators_of(gate)
            .filter(|operator| operator.drives(leaf))
    }
}

record! {
    /// The entries of a parts file: things as their data sheets describe them.
    pub struct PartsFile {
        /// Operators.
        operator: Vec<Operator>,
        /// Everything that senses, identifies, speaks, shows, locks or switches.
        device: Vec<Device>,
        /// Boxes that shelter equipment.
        enclosure: Vec<Enclosure>,
        /// Cables.
        cable: Vec<Cable>,
        /// Batteries.
        battery: Vec<Battery>,
        /// Power supplies, mains circuits included.
        supply: Vec<Supply>,
        /// Solar panels.
        solar_panel: Vec<SolarPanel>,
        /// Fuses.
        fuse: Vec<Fuse>,
        /// Wheels and trolleys, in sets.
        wheels: Vec<Wheels>,
        /// Hinges, in sets.
        hinges: Vec<Hinges>,
        /// Posts.
        post: Vec<Post>,
        /// Anchors.
        anchor: Vec<Anchor>,
    }
}
