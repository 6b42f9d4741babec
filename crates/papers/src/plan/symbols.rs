//! Symbols of the plan: simple shapes a few millimeters across, told apart by form and explained in the legend.

use draw::{Figure, Fill, Ink, Point, Symbol};
use quantity::{Angle, Length, Quantity as _};
use site::DeviceKind;

/// A point on the paper, in millimeters from the symbol's origin.
fn mm(x: f64, y: f64) -> Point {
    Point::new(length(x), length(y))
}

fn length(millimeters: f64) -> Length {
    Length::from_base(millimeters / 1000.0)
}

fn angle(degrees: f64) -> Angle {
    Angle::from_base(degrees.to_radians())
}

fn square(half: f64, fill: Fill) -> Figure {
    Figure::rectangle(mm(-half, -half), mm(half, half), fill)
}

fn disc(radius: f64, fill: Fill) -> Figure {
    Figure::circle(mm(0.0, 0.0), length(radius), fill)
}

/// The symbol of a kind of device; those with a direction look along +x.
pub(crate) fn device(kind: DeviceKind) -> Symbol {
    let black = Fill::Solid(Ink::Black);
    let paper = Fill::Solid(Ink::Paper);
    let figures = match kind {
        DeviceKind::ThroughBeam => {
            vec![
                Figure::line(mm(0.0, 0.0), mm(1.4, 0.0)),
                Figure::area([mm(1.4, -1.2), mm(3.8, 0.0), mm(1.4, 1.2)], black),
            ]
        }
        DeviceKind::Reflective => vec![
            Figure::line(mm(0.0, 0.0), mm(1.4, 0.0)),
            Figure::area([mm(1.4, -1.2), mm(3.8, 0.0), mm(1.4, 1.2)], paper),
        ],
        DeviceKind::ContactEdge => vec![Figure::rectangle(mm(-0.6, -1.6), mm(0.6, 1.6), black)],
        DeviceKind::AreaScanner => vec![
            disc(0.8, black),
            Figure::arc(mm(0.0, 0.0), length(2.4), angle(-60.0), angle(120.0)),
            Figure::line(mm(0.0, 0.0), mm(1.2, 2.08)),
            Figure::line(mm(0.0, 0.0), mm(1.2, -2.08)),
        ],
        DeviceKind::Loop => vec![square(1.2, Fill::Open), square(0.7, Fill::Open)],
        DeviceKind::Reader => vec![
            Figure::rectangle(mm(-1.0, -1.5), mm(1.0, 1.5), paper),
            disc(0.5, black),
        ],
        DeviceKind::Keypad => {
            let key = |x, y| Figure::circle(mm(x, y), length(0.25), black);
            vec![
                Figure::rectangle(mm(-1.0, -1.5), mm(1.0, 1.5), paper),
                key(-0.45, 0.6),
                key(0.45, 0.6),
                key(-0.45, -0.6),
                key(0.45, -0.6),
            ]
        }
        DeviceKind::Intercom => vec![
            Figure::rectangle(mm(-1.2, -1.6), mm(1.2, 1.6), paper),
            Figure::line(mm(-0.7, 0.7), mm(0.7, 0.7)),
            Figure::line(mm(-0.7, 0.1), mm(0.7, 0.1)),
            Figure::line(mm(-0.7, -0.5), mm(0.7, -0.5)),
        ],
        DeviceKind::Camera => vec![
            Figure::rectangle(mm(-2.0, -0.9), mm(0.4, 0.9), black),
            Figure::area([mm(0.4, 0.0), mm(1.8, 1.2), mm(1.8, -1.2)], paper),
        ],
        DeviceKind::Radio => vec![
            Figure::line(mm(0.0, -1.6), mm(0.0, 0.4)),
            Figure::arc(mm(0.0, 0.4), length(1.0), angle(20.0), angle(140.0)),
            Figure::arc(mm(0.0, 0.4), length(1.7), angle(20.0), angle(140.0)),
        ],
        DeviceKind::WarningLight => vec![
            disc(1.3, paper),
            Figure::line(mm(-0.92, -0.92), mm(0.92, 0.92)),
            Figure::line(mm(-0.92, 0.92), mm(0.92, -0.92)),
        ],
        DeviceKind::Lock => vec![
            Figure::rectangle(mm(-1.2, -1.4), mm(1.2, 0.3), black),
            Figure::arc(mm(0.0, 0.3), length(0.8), angle(0.0), angle(180.0)),
        ],
        DeviceKind::Control => vec![disc(1.4, paper), disc(0.7, paper)],
        DeviceKind::AccessController
        | DeviceKind::NetworkSwitch
        | DeviceKind::Injector
        | DeviceKind::Extender
        | DeviceKind::Recorder
        | DeviceKind::Router
        | DeviceKind::SurgeProtector => {
            vec![square(1.2, paper)]
        }
    };
    Symbol::new(kind.to_string(), figures)
}

/// The symbol of three or more devices on one pole or pedestal, whose own symbols would hide each other.
pub(crate) fn several() -> Symbol {
    Symbol::new(
        "several devices at one place",
        [
            Figure::area(
                [mm(-2.2, 0.0), mm(0.0, -2.2), mm(2.2, 0.0), mm(0.0, 2.2)],
                Fill::Solid(Ink::Paper),
            ),
            disc(0.8, Fill::Solid(Ink::Black)),
        ],
    )
}

/// The symbol of a reflector that faces +x.
pub(crate) fn reflector() -> Symbol {
    Symbol::new(
        "reflector",
        [
            Figure::line(mm(0.0, 0.0), mm(1.4, 0.0)),
            Figure::rectangle(mm(1.4, -1.2), mm(2.0, 1.2), Fill::Solid(Ink::Paper)),
        ],
    )
}

/// The symbol of an operator.
pub(crate) fn operator() -> Symbol {
    let letters = length(1.9);
    Symbol::new("operator", [disc(2.2, Fill::Solid(Ink::Paper))]).lettered(
        mm(0.0, 0.0),
        "M",
        letters,
    )
}

/// The symbol of an enclosure.
pub(crate) fn enclosure() -> Symbol {
    Symbol::new(
        "enclosure",
        [
            Figure::rectangle(mm(-2.2, -1.4), mm(2.2, 1.4), Fill::Solid(Ink::Paper)),
            Figure::line(mm(-2.2, -1.4), mm(2.2, 1.4)),
        ],
    )
}

/// The symbol of a cover in the ground.
pub(crate) fn cover() -> Symbol {
    Symbol::new(
        "cover in the ground",
        [
            square(1.6, Fill::Solid(Ink::Paper)),
            square(1.1, Fill::Open),
            Figure::line(mm(-0.5, 0.0), mm(0.5, 0.0)),
        ],
    )
}

/// The symbol of a supply.
pub(crate) fn supply() -> Symbol {
    Symbol::new(
        "supply",
        [
            square(1.5, Fill::Solid(Ink::Paper)),
            Figure::line(mm(-1.5, -1.5), mm(1.5, 1.5)),
        ],
    )
}

/// The symbol of a solar panel, facing +x.
pub(crate) fn solar_panel() -> Symbol {
    Symbol::new(
        "solar panel",
        [
            Figure::rectangle(mm(-0.9, -2.2), mm(0.9, 2.2), Fill::Solid(Ink::Tint)),
            Figure::line(mm(0.9, 0.0), mm(2.6, 0.0)),
            Figure::path([mm(1.9, 0.5), mm(2.6, 0.0), mm(1.9, -0.5)]),
        ],
    )
}

/// The symbol of a walk gate.
pub(crate) fn walk_gate() -> Symbol {
    Symbol::new(
        "walk gate",
        [
            Figure::rectangle(mm(-2.4, -0.5), mm(-1.6, 0.5), Fill::Solid(Ink::Black)),
            Figure::rectangle(mm(1.6, -0.5), mm(2.4, 0.5), Fill::Solid(Ink::Black)),
            Figure::line(mm(-1.6, 0.0), mm(-1.6, 3.0)),
            Figure::arc(mm(-1.6, 0.0), length(3.0), angle(0.0), angle(90.0)),
        ],
    )
}

/// The symbol of a bell, a letter box and the like.
pub(crate) fn foot_stop() -> Symbol {
    Symbol::new(
        "bell, letter box",
        [
            Figure::area(
                [
                    mm(-1.5, -1.1),
                    mm(1.5, -1.1),
                    mm(1.5, 0.7),
                    mm(0.0, 1.8),
                    mm(-1.5, 0.7),
                ],
                Fill::Solid(Ink::Paper),
            ),
            Figure::line(mm(-0.8, 0.1), mm(0.8, 0.1)),
        ],
    )
}

/// The symbol of a sign.
pub(crate) fn sign() -> Symbol {
    Symbol::new(
        "sign",
        [
            Figure::area(
                [mm(-1.8, -1.2), mm(1.8, -1.2), mm(0.0, 1.9)],
                Fill::Solid(Ink::Paper),
            ),
            Figure::line(mm(0.0, -0.1), mm(0.0, 0.9)),
            Figure::circle(mm(0.0, -0.7), length(0.2), Fill::Solid(Ink::Black)),
        ],
    )
}

/// The symbol of a place at which a drive is let go by hand.
pub(crate) fn hand_release() -> Symbol {
    Symbol::new("release by hand", [square(1.9, Fill::Solid(Ink::Paper))]).lettered(
        mm(0.0, 0.0),
        "R",
        length(1.9),
    )
}

/// The symbol of somebody who stands there.
pub(crate) fn feet() -> Symbol {
    let foot = |x| {
        Figure::rectangle(
            mm(x - 0.35, -0.8),
            mm(x + 0.35, 0.8),
            Fill::Solid(Ink::Gray),
        )
    };
    Symbol::new("where somebody stands", [foot(-0.5), foot(0.5)])
}

/// The symbol of a positive stop.
pub(crate) fn stop() -> Symbol {
    Symbol::new(
        "positive stop",
        [Figure::area(
            [mm(-1.0, -1.0), mm(1.0, -1.0), mm(0.0, 0.9)],
            Fill::Solid(Ink::Black),
        )],
    )
}
