//! Invented vehicles and gates for tests, benchmarks and cross-checks, and ones drawn from a number.
#![allow(dead_code, unreachable_pub, reason = "each test takes what it needs")]

use quantity::Quantity;
use sim::vehicle::{
    Act, Detector, Field, Hinged, Lane, Leaf, Motion, Outline, Part, PartName, Toward, World,
};
use sim::walk::Spot;

/// A value from its number in the coherent unit.
pub fn base<Q: Quantity>(number: f64) -> Q {
    Q::from_base(number)
}

pub fn spot(x: f64, y: f64) -> Spot {
    Spot {
        x: base(x),
        y: base(y),
    }
}

pub fn part(
    name: PartName,
    stretch: (f64, f64),
    width: f64,
    heights: (f64, f64),
    metal: bool,
) -> Part {
    Part {
        name,
        from: base(stretch.0),
        to: base(stretch.1),
        width: base(width),
        bottom: base(heights.0),
        top: base(heights.1),
        metal,
    }
}

pub fn car() -> Outline {
    Outline {
        parts: vec![part(PartName::Body, (0.0, 5.0), 1.9, (0.2, 1.5), true)],
        narrow: false,
    }
}

/// Car of 4.8 m, 1.5 m of drawbar up to 0.45 m, trailer of 5 m.
pub fn with_trailer() -> Outline {
    Outline {
        parts: vec![
            part(PartName::Body, (0.0, 4.8), 1.9, (0.2, 1.5), true),
            part(PartName::Drawbar, (4.8, 6.3), 0.15, (0.35, 0.45), false),
            part(PartName::Trailer, (6.3, 11.3), 2.2, (0.4, 2.5), true),
        ],
        narrow: false,
    }
}

pub fn detector(field: Field, acts: &[Act], response: f64) -> Detector {
    Detector {
        field,
        acts: acts.to_vec(),
        response: base(response),
        drop_out: base(0.0),
        stays_on: true,
    }
}

/// A beam across the gate that stops the closing leaf.
pub fn beam(y: f64, height: f64) -> Detector {
    let field = Field::Beam {
        from: spot(-1.0, y),
        to: spot(7.0, y),
        height: base(height),
        width: base(0.07),
    };
    detector(field, &[Act::StopsClosing], 0.02)
}

/// A loop over the lane that stops the closing leaf.
pub fn ring(from: f64, to: f64, height: f64) -> Detector {
    let field = Field::Loop {
        near: spot(0.8, from),
        far: spot(5.2, to),
        height: base(height),
        least: base(1.2),
    };
    detector(field, &[Act::StopsClosing], 0.1)
}

pub fn slide(outline: Outline, detectors: Vec<Detector>) -> World {
    World {
        leaf: Leaf::Slide {
            open: base(6.2),
            closed: base(-0.1),
            bottom: base(0.05),
            top: base(1.8),
            thickness: base(0.05),
        },
        motion: Motion {
            cruise_speed: base(0.26),
            acceleration: base(0.25),
            stopping: base(2.0),
            reaction: base(0.08),
        },
        detectors,
        lane: Lane {
            middle: base(3.0),
            play: base(0.5),
        },
        outline,
    }
}

/// Two leaves of 3 m that open into the property.
pub fn swing(outline: Outline, detectors: Vec<Detector>) -> World {
    let hinged = |pivot: f64, toward| Hinged {
        pivot: base(pivot),
        toward,
        length: base(3.0),
        open: base(std::f64::consts::FRAC_PI_2),
    };
    World {
        leaf: Leaf::Swing {
            leaves: vec![hinged(0.0, Toward::Greater), hinged(6.0, Toward::Smaller)],
            side: Toward::Greater,
            bottom: base(0.1),
            top: base(1.5),
            thickness: base(0.05),
        },
        ..slide(outline, detectors)
    }
}

pub fn arm(outline: Outline, detectors: Vec<Detector>) -> World {
    World {
        leaf: Leaf::Arm {
            pivot: base(6.2),
            toward: Toward::Smaller,
            length: base(6.0),
            bottom: base(0.85),
            open: base(1.5),
            thickness: base(0.05),
        },
        motion: Motion {
            cruise_speed: base(1.5),
            acceleration: base(1.2),
            stopping: base(3.0),
            reaction: base(0.05),
        },
        ..slide(outline, detectors)
    }
}

/// Numbers between 0 and 1, one after the other, from a seed.
pub struct Numbers(pub u64);

impl Numbers {
    pub fn share(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        mixed ^= mixed >> 31;
        #[allow(clippy::cast_precision_loss, reason = "53 bits fit")]
        let share = (mixed >> 11) as f64 / (1_u64 << 53) as f64;
        share
    }

    pub fn between(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.share()
    }
}

/// A world drawn from a number: any gate, any vehicle, up to five detectors.
pub fn drawn(seed: u64) -> World {
    let mut numbers = Numbers(seed);
    let outline = drawn_outline(&mut numbers);
    let kinds = ["beam", "loop", "area"];
    let count = numbers.between(0.0, 5.99);
    let mut detectors = Vec::new();
    while f64::from(u32::try_from(detectors.len()).unwrap_or(u32::MAX)) + 1.0 <= count {
        let kind = kinds[usize::from(numbers.share() > 0.4) + usize::from(numbers.share() > 0.7)];
        detectors.push(drawn_detector(kind, &mut numbers));
    }
    let make = [slide, swing, arm];
    let choice = usize::from(numbers.share() > 0.4) + usize::from(numbers.share() > 0.5);
    let mut world = make[choice](outline, detectors);
    world.lane.play = base(numbers.between(0.0, 0.8));
    world.lane.middle = base(numbers.between(2.5, 3.5));
    world
}

fn drawn_outline(numbers: &mut Numbers) -> Outline {
    let length = numbers.between(2.0, 8.0);
    let sill = numbers.between(0.15, 1.1);
    let mut parts = vec![part(
        PartName::Body,
        (0.0, length),
        numbers.between(0.8, 2.6),
        (sill, sill + numbers.between(0.6, 2.5)),
        true,
    )];
    if numbers.share() > 0.4 {
        let gap = numbers.between(0.5, 3.0);
        let (trailer, sill) = (numbers.between(2.0, 9.0), numbers.between(0.3, 1.2));
        let rear = length + gap;
        parts.push(part(
            PartName::Drawbar,
            (length, rear),
            0.15,
            (0.3, numbers.between(0.4, 0.7)),
            false,
        ));
        let heights = (sill, sill + numbers.between(0.3, 3.0));
        parts.push(part(
            PartName::Trailer,
            (rear, rear + trailer),
            2.2,
            heights,
            true,
        ));
        if numbers.share() > 0.5 {
            let tail = (rear + trailer, rear + trailer + numbers.between(0.3, 2.0));
            parts.push(part(
                PartName::Tail,
                tail,
                2.2,
                (heights.0 + 0.2, heights.1 + 0.5),
                false,
            ));
        }
    }
    Outline {
        parts,
        narrow: false,
    }
}

fn drawn_detector(kind: &str, numbers: &mut Numbers) -> Detector {
    let y = numbers.between(-4.0, 5.0);
    let field = match kind {
        "beam" => Field::Beam {
            from: spot(-1.0, y),
            to: spot(7.0, y + numbers.between(-0.5, 0.5)),
            height: base(numbers.between(0.2, 1.0)),
            width: base(numbers.between(0.02, 0.1)),
        },
        "loop" => Field::Loop {
            near: spot(numbers.between(0.0, 2.0), y),
            far: spot(numbers.between(4.0, 6.0), y + numbers.between(0.5, 3.0)),
            height: base(numbers.between(0.4, 1.4)),
            least: base(numbers.between(0.1, 1.2)),
        },
        _ => Field::Area {
            corners: vec![
                spot(-0.5, y),
                spot(6.5, y + 0.3),
                spot(6.0, y + numbers.between(1.0, 3.0)),
                spot(0.5, y + numbers.between(1.0, 3.0)),
            ],
            height: base(numbers.between(0.2, 0.9)),
            smallest: base(0.07),
        },
    };
    detector(
        field,
        &[Act::StopsClosing, Act::StopsOpening],
        numbers.between(0.01, 0.2),
    )
}
