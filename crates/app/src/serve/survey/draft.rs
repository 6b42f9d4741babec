//! The text of a first site. Everything beside the answers is a usual value, written as assumed.

use super::Given;
use super::words::{Infill, Power};
use quantity::{Quantity as _, Word as _};
use site::{CodeBasis, GateKind};
use std::fmt::Write as _;

/// The text.
pub(super) fn text(given: &Given) -> String {
    let size = Size::of(given);
    let mut text = head(given);
    text += &gate(given, &size);
    for leaf in &size.leaves {
        text += &drive(given, leaf);
    }
    text += &power(given, &size);
    text += &devices(given, &size);
    text
}

/// Sizes in meters.
struct Size {
    opening: f64,
    height: f64,
    leaves: Vec<LeafSize>,
    slides: bool,
}

/// A leaf.
struct LeafSize {
    id: &'static str,
    length: f64,
    mass: f64,
    /// Where its hinges stand along the opening; zero where it slides.
    hinge: f64,
}

impl Size {
    fn of(given: &Given) -> Self {
        let opening = given.opening.1.nominal().base();
        let height = given.height.1.nominal().base();
        // Steel frames of this size, as built: mass for each square meter.
        let each_area = match given.infill {
            Infill::Open => 22.0,
            Infill::Half => 28.0,
            Infill::Closed => 34.0,
        };
        let leaf = |id, length: f64, hinge| LeafSize {
            id,
            length,
            mass: (each_area * length * height).max(30.0),
            hinge,
        };
        let leaves = match given.kind {
            GateKind::CantileverSlide => vec![leaf("leaf", opening * 1.4 + 0.3, 0.0)],
            GateKind::SingleSwing => vec![leaf("leaf", opening - 0.02, 0.0)],
            GateKind::DoubleSwing => vec![
                leaf("leaf-left", opening / 2.0 - 0.06, 0.0),
                leaf("leaf-right", opening / 2.0 - 0.06, opening),
            ],
            _ => vec![leaf("leaf", opening + 0.3, 0.0)],
        };
        Self {
            opening,
            height,
            leaves,
            slides: matches!(given.kind, GateKind::TrackSlide | GateKind::CantileverSlide),
        }
    }
}

fn head(given: &Given) -> String {
    let title = toml_text(&given.title);
    let basis = given.basis.word();
    let mut text = format!(
        "# A first site from eight answers. Whatever nobody has given is marked as assumed: measure it, and write what is so.\n\n\
         [site]\nname = {title}\ncode_basis = \"{basis}\"\n"
    );
    text += match given.basis {
        CodeBasis::Us => {
            "usage_class = \"II\"                  # assumed\nwind_code = \"ASCE 7-16\"               # assumed\nprotection_code = \"UL 325 from 2018\"   # assumed\n\n[climate]\nbasic_wind_speed = \"115 mph, assumed\"\noperating_wind_speed = \"35 mph, assumed\"\nexposure = \"C\"                        # assumed\ntopographic_factor = \"1, assumed\"\nhottest = \"100 °F, assumed\"\ncoldest = \"0 °F, assumed\"\n"
        }
        CodeBasis::Eu => {
            "use_type = \"3\"                       # assumed\nwind_code = \"EN 1991-1-4\"             # assumed\nprotection_code = \"EN 12453\"          # assumed\n\n[climate]\nbasic_wind_speed = \"25 m/s, assumed\"\noperating_wind_speed = \"15 m/s, assumed\"\nterrain_category = \"II\"               # assumed\ntopographic_factor = \"1, assumed\"\nhottest = \"38 °C, assumed\"\ncoldest = \"-18 °C, assumed\"\n"
        }
    };
    text
}

fn gate(given: &Given, size: &Size) -> String {
    let mut text = format!(
        "\n[[gate]]\nid = \"main\"\nkind = \"{}\"\nclear_opening = {}\nslope = \"0.005, assumed\"\ncross_slope = \"0.01, assumed\"\nseal_force = \"30 N, assumed\"\ndebris_force = \"40 N, assumed\"\nclimbing_load = \"900 N, assumed\"\ncycles_per_day = {}\nhold_time = \"20 s, assumed\"\n",
        given.kind.word(),
        toml_text(&given.opening.0),
        given.cycles,
    );
    let path = if size.slides {
        format!(
            "travel = \"{:.2} m, assumed\"\nrun_back = \"{:.2} m, assumed\"\n",
            size.opening + 0.1,
            size.leaves.first().map_or(0.0, |leaf| leaf.length) + 0.3
        )
    } else {
        "travel_angle = \"90°, assumed\"\nswings = \"into the property\"         # assumed\n"
            .to_owned()
    };
    text += &path;
    for leaf in &size.leaves {
        text += &self::leaf(given, leaf, size.slides);
    }
    text += &running(given, size);
    text += if size.slides {
        "\n[gate.motion]\ncruise_speed = \"0.2 m/s, assumed\"\nacceleration = \"0.2 m/s², assumed\"\ndeceleration = \"0.2 m/s², assumed\"\ncreep_speed = \"0.08 m/s, assumed\"\ncreep_distance = \"0.3 m, assumed\"\nstopping_deceleration = \"1.5 m/s², assumed\"\nreversal_delay = \"300 ms, assumed\"\nreversal_distance = \"0.1 m, assumed\"\nslow_down_distance = \"0.3 m, assumed\"\nstop_gap = \"20 mm, assumed\"\n"
    } else {
        "\n[gate.motion]\ncruise_turning_speed = \"6 °/s, assumed\"\nacceleration = \"0.2 m/s², assumed\"\ndeceleration = \"0.2 m/s², assumed\"\ncreep_speed = \"0.08 m/s, assumed\"\ncreep_distance = \"0.3 m, assumed\"\nstopping_deceleration = \"1.5 m/s², assumed\"\nreversal_delay = \"300 ms, assumed\"\nreversal_distance = \"0.1 m, assumed\"\nslow_down_distance = \"0.3 m, assumed\"\nstop_gap = \"20 mm, assumed\"\n"
    };
    text
}

/// Wheels or trolleys, and the guide; nothing where the gate swings.
fn running(given: &Given, size: &Size) -> String {
    let length = size.leaves.first().map_or(0.0, |leaf| leaf.length);
    let (diameter, count, load, place) = match given.kind {
        GateKind::TrackSlide => (
            "120 mm",
            2,
            "4 kN",
            format!("spacing = \"{:.2} m, assumed\"", length - 0.6),
        ),
        GateKind::CantileverSlide => (
            "60 mm",
            10,
            "8 kN",
            format!(
                "spacing = \"{:.2} m, assumed\"\nfront_at = \"{:.2} m, assumed\"",
                length - size.opening - 0.4,
                size.opening + 0.2
            ),
        ),
        _ => return String::new(),
    };
    format!(
        "\n[gate.wheels]\ndiameter = \"{diameter}, assumed\"\nrolling = \"steel on steel\"            # assumed\nbearing_friction = \"0.01, assumed\"\naxle_diameter = \"20 mm, assumed\"\ncount = {count}                              # assumed\nrated_load = \"{load}, assumed\"\n{place}\n\n[gate.guide]\nfriction = \"0.15, assumed\"\ncount = 2                              # assumed\nheight = \"{:.2} m, assumed\"\nat = [\"-0.05 m, assumed\", \"{:.2} m, assumed\"]\nrated_load = \"4 kN, assumed\"\n",
        size.height,
        size.opening + 0.1,
    )
}

fn leaf(given: &Given, leaf: &LeafSize, slides: bool) -> String {
    let (solidity, opening) = match given.infill {
        Infill::Open => ("0.25", Some("100 mm")),
        Infill::Half => ("0.7", Some("20 mm")),
        Infill::Closed => ("1", None),
    };
    let mut text = format!(
        "\n[[gate.leaf]]\nid = \"{}\"\nlength = \"{:.2} m, assumed\"\nheight = {}\nthickness = \"50 mm, assumed\"\nground_clearance = \"60 mm, assumed\"\nmass = \"{:.0} kg, assumed\"\nsolidity = \"{solidity}, assumed\"\nprotrusion = \"0 mm, assumed\"\ncenter_along = \"{:.2} m, assumed\"\ncenter_up = \"{:.2} m, assumed\"\nmaterial = \"steel\"                     # assumed\n",
        leaf.id,
        leaf.length,
        toml_text(&given.height.0),
        leaf.mass,
        leaf.length / 2.0,
        given.height.1.nominal().base() / 2.0,
    );
    if slides {
        text += "closed_end = \"-0.1 m, assumed\"\n";
    }
    if let Some(opening) = opening {
        let _ = writeln!(text, "opening = \"{opening}, assumed\"");
    }
    if !slides {
        text += "\n[gate.leaf.hinges]\nspacing = \"1 m, assumed\"\nlean_along = \"0, assumed\"\nlean_across = \"0, assumed\"\npin_diameter = \"24 mm, assumed\"\nfriction = \"0.15, assumed\"\nrated_load = \"3 kN, assumed\"\nrated_side_load = \"4 kN, assumed\"\n";
    }
    text
}

fn drive(given: &Given, leaf: &LeafSize) -> String {
    let slides = matches!(given.kind, GateKind::TrackSlide | GateKind::CantileverSlide);
    let name = leaf.id.replace("leaf", "drive");
    let (drive, force) = if slides {
        (
            "rack",
            "rated_force = \"800 N, assumed\"\nstarting_force = \"1000 N, assumed\"",
        )
    } else {
        (
            "linear",
            "rated_torque = \"300 N·m, assumed\"\nstarting_torque = \"350 N·m, assumed\"",
        )
    };
    format!(
        "\n[[operator]]\nid = \"{name}\"\ngate = \"main\"\nleaf = \"{}\"\ndrive = \"{drive}\"                       # assumed\n{force}\nobstruction_force = \"150 N, assumed\"\nreaction_time = \"150 ms, assumed\"\nrelease_effort = \"100 N, assumed\"\nvoltage = \"24 V, assumed\"\nleast_voltage = \"20 V, assumed\"\nstanding_current = \"60 mA, assumed\"\nrunning_current = \"4 A, assumed\"\nstarting_current = \"9 A, assumed\"\nsupply = \"power\"\nbattery_speed = \"95 %, assumed\"\ncoldest = \"-20 °C, assumed\"\nhottest = \"55 °C, assumed\"\nduty = \"50 %, assumed\"\ninherent_sensing = true               # assumed\nmonitors_devices = true               # assumed\n",
        leaf.id,
    ) + if slides { "" } else { MOUNTING }
}

/// Where the pins of a linear drive go, from the hinge line.
const MOUNTING: &str = "\n[operator.mounting]\nrear_behind = \"180 mm, assumed\"\nrear_across = \"190 mm, assumed\"\nfront_along = \"780 mm, assumed\"\nfront_across = \"70 mm, assumed\"\nshortest = \"570 mm, assumed\"\nlongest = \"990 mm, assumed\"\n";

fn power(given: &Given, size: &Size) -> String {
    let mut text = match given.power {
        Power::Mains => {
            let volts = match given.basis {
                CodeBasis::Us => "120 V",
                CodeBasis::Eu => "230 V",
            };
            format!(
                "\n[[supply]]\nid = \"mains\"\nkind = \"mains circuit\"\nvoltage = \"{volts}, assumed\"\nrated_current = \"16 A, assumed\"\n\n[[supply]]\nid = \"power\"\nkind = \"power supply\"\nfed_by = \"mains\"\nvoltage = \"24 V, assumed\"\nefficiency = \"88 %, assumed\"\nrated_current = \"20 A, assumed\"\n"
            )
        }
        Power::Sun => "\n[[supply]]\nid = \"power\"\nkind = \"charge controller\"\nvoltage = \"24 V, assumed\"\nhighest_voltage = \"29 V, assumed\"\nrated_current = \"40 A, assumed\"\n\n[[battery]]\nid = \"battery\"\nsupply = \"power\"\nchemistry = \"lithium iron phosphate\"  # assumed\nvoltage = \"25.6 V, assumed\"\ncapacity = \"100 Ah, assumed\"\nusable = \"80 %, assumed\"\nend_of_life = \"80 %, assumed\"\nend_voltage = \"23 V, assumed\"\nhighest_voltage = \"29 V, assumed\"\ninner_resistance = \"30 mΩ, assumed\"\ncoldest = \"0 °C, assumed\"\nwanted_standby = \"72 h, assumed\"\n\n[[solar_panel]]\nid = \"panel\"\nsupply = \"power\"\npower = \"400 W, assumed\"\nopen_voltage = \"45 V, assumed\"\ntilt = \"60°, assumed\"\nazimuth = \"180°, assumed\"\n".to_owned(),
    };
    for leaf in &size.leaves {
        let name = leaf.id.replace("leaf", "drive");
        text += &cable(&name, leaf.hinge + 3.0);
    }
    for device in ["beam-road", "beam-inside", "reader-in", "light"] {
        text += &cable(device, size.opening + 4.0);
    }
    text
}

fn cable(to: &str, length: f64) -> String {
    let (carries, cores, size, rated) = if to.starts_with("drive") {
        ("power", 2, "2.5 mm²", "15 A")
    } else {
        ("signal", 4, "0.75 mm²", "2 A")
    };
    format!(
        "\n[[cable]]\nid = \"to-{to}\"\nfrom = \"power\"\nto = \"{to}\"\nlength = \"{length:.1} m, assumed\"\ncarries = \"{carries}\"\ncores = {cores}                              # assumed\nsize = \"{size}\"                       # assumed\nmetal = \"copper\"                       # assumed\nstranding = \"stranded\"                 # assumed\nhottest = \"40 °C, assumed\"\ninsulation = \"thermoplastic\"            # assumed\ninsulation_rating = \"75 °C, assumed\"\nfuse = \"fuse-{to}\"\n\n[[fuse]]\nid = \"fuse-{to}\"\nkind = \"fuse\"                          # assumed\nrated_current = \"{rated}, assumed\"\nrated_voltage = \"32 V, assumed\"\n"
    )
}

fn devices(given: &Given, size: &Size) -> String {
    let (left, right) = (-0.3, size.opening + 0.3);
    let mut text = String::new();
    for (id, across, guards) in [
        ("beam-road", -0.3, "\"closing\""),
        ("beam-inside", 0.3, "\"closing\", \"opening\""),
    ] {
        let _ = write!(
            text,
            "\n[[device]]\nid = \"{id}\"\nkind = \"through-beam photo-eye\"\ngate = \"main\"\nat = [\"{left:.2} m, assumed\", \"{across:.2} m, assumed\", \"0.5 m, assumed\"]\nto = [\"{right:.2} m, assumed\", \"{across:.2} m, assumed\", \"0.5 m, assumed\"]\nprotection = \"B1\"                     # assumed\nguards = [{guards}]\nmonitored = true                      # assumed\nresponse_time = \"50 ms, assumed\"\ndetection_capability = \"50 mm, assumed\"\nrange = \"20 m, assumed\"\nfield_angle = \"4°, assumed\"\nsupply = \"power\"\nvoltage = \"24 V, assumed\"\nleast_voltage = \"12 V, assumed\"\ncurrent = \"60 mA, assumed\"\ngreatest_voltage = \"30 V, assumed\"\ninrush = \"0.3 A, assumed\"\n"
        );
    }
    for leaf in &size.leaves {
        let id = leaf.id.replace("leaf", "edge");
        let tip = match given.kind {
            GateKind::DoubleSwing if leaf.hinge > 0.0 => leaf.hinge - leaf.length,
            GateKind::SingleSwing | GateKind::DoubleSwing => leaf.length,
            _ => 0.0,
        };
        let _ = write!(
            text,
            "\n[[device]]\nid = \"{id}\"\nkind = \"contact edge\"\ngate = \"main\"\ncarried_by = \"{}\"\nat = [\"{tip:.2} m, assumed\", \"0 m, assumed\", \"0.1 m, assumed\"]\nto = [\"{tip:.2} m, assumed\", \"0 m, assumed\", \"{:.2} m, assumed\"]\nprotection = \"B2\"                     # assumed\nguards = [\"closing\"]\nmonitored = true                      # assumed\nresponse_time = \"30 ms, assumed\"\nactuation_travel = \"8 mm, assumed\"\nsoft_travel = \"25 mm, assumed\"\nstiffness = \"6 N/mm, assumed\"\nhard_stiffness = \"60 N/mm, assumed\"\n",
            leaf.id,
            size.height.max(0.3),
        );
    }
    let _ = write!(
        text,
        "\n[[device]]\nid = \"reader-in\"\nkind = \"reader\"\ngate = \"main\"\nat = [\"-0.8 m, assumed\", \"-2.5 m, assumed\", \"1.1 m, assumed\"]\nsupply = \"power\"\nvoltage = \"12 V, assumed\"\nleast_voltage = \"10 V, assumed\"\ngreatest_voltage = \"30 V, assumed\"\ncurrent = \"120 mA, assumed\"\ninrush = \"0.5 A, assumed\"\n\n[[device]]\nid = \"light\"\nkind = \"warning light\"\ngate = \"main\"\nat = [\"-0.4 m, assumed\", \"0 m, assumed\", \"2.2 m, assumed\"]\nsupply = \"power\"\nvoltage = \"24 V, assumed\"\nleast_voltage = \"18 V, assumed\"\ncurrent = \"200 mA, assumed\"\ngreatest_voltage = \"30 V, assumed\"\ninrush = \"0.4 A, assumed\"\n"
    );
    text
}

/// A text in quotes, as the file writes it.
fn toml_text(text: &str) -> String {
    toml_edit::Value::from(text).to_string()
}
