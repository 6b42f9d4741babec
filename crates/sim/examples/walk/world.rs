//! A world with a leaf that slides as JSON, for whoever works it again in another language.

use super::n;
use sim::walk::{Answer, Body, Direction, Pass, World};

fn list<T>(of: &[T], print: impl Fn(&T) -> String) -> String {
    format!("[{}]", of.iter().map(print).collect::<Vec<_>>().join(","))
}

fn guards(of: &[Direction]) -> String {
    list(of, |direction| match direction {
        Direction::Opening => "\"opening\"".to_owned(),
        Direction::Closing => "\"closing\"".to_owned(),
    })
}

pub(crate) fn world_as_json(world: &World) -> String {
    let beams = list(&world.beams, |beam| {
        let spots = [beam.from, beam.to].map(|spot| format!("[{},{}]", n(spot.x), n(spot.y)));
        format!(
            "{{\"kind\":\"beam\",\"guards\":{},\"corners\":[{},{}],\"height\":{},\"diameter\":{},\"response\":{}}}",
            guards(&beam.guards),
            spots[0],
            spots[1],
            n(beam.height),
            n(beam.diameter),
            n(beam.response)
        )
    });
    let scanners = list(&world.scanners, |field| {
        format!(
            "{{\"kind\":\"field\",\"guards\":{},\"corners\":{},\"bottom\":{},\"top\":{},\"smallest\":{},\"response\":{}}}",
            guards(&field.guards),
            list(&field.corners, |spot| format!(
                "[{},{}]",
                n(spot.x),
                n(spot.y)
            )),
            n(field.bottom),
            n(field.top),
            n(field.smallest_object),
            n(field.response)
        )
    });
    let edges = list(&world.edges, |edge| {
        format!(
            "{{\"guards\":{},\"bottom\":{},\"top\":{},\"actuation\":{},\"response\":{},\"stiffness\":{},\"soft\":{},\"hard\":{}}}",
            guards(&[edge.guards]),
            n(edge.bottom),
            n(edge.top),
            n(edge.actuation_travel),
            n(edge.response),
            n(edge.stiffness),
            n(edge.soft_travel),
            n(edge.hard_stiffness)
        )
    });
    let drive = world.drive.as_ref().map_or_else(
        || "null".to_owned(),
        |drive| {
            format!(
                "{{\"guards\":{},\"force\":{},\"response\":{}}}",
                guards(&drive.guards),
                n(drive.force),
                n(drive.response)
            )
        },
    );
    format!(
        "{{\"leaf\":[{},{},{}],\"bare\":{},\"passes\":{},\"beams\":{beams},\"scanners\":{scanners},\"edges\":{edges},\
         \"drive\":{drive},\"controller\":{},\"limits\":{},\"bodies\":{}}}",
        n(world.leaf.thickness),
        n(world.leaf.bottom),
        n(world.leaf.top),
        n(world.bare_stiffness),
        list(&world.passes, pass),
        controller(world),
        limits(world),
        list(&world.bodies, body)
    )
}

fn pass(pass: &Pass) -> String {
    let plan = &pass.plan;
    format!(
        "{{\"direction\":{},\"edge\":{},\"opposing\":{},\"travel\":{},\"cruise\":{},\"acceleration\":{},\"deceleration\":{},\
         \"set_point\":{},\"creep\":{}}}",
        guards(&[pass.direction]),
        n(pass.edge),
        pass.opposing.map_or_else(|| "null".to_owned(), n),
        n(plan.travel),
        n(plan.cruise_speed),
        n(plan.acceleration),
        n(plan.deceleration),
        n(plan.set_point),
        n(plan.creep_speed)
    )
}

fn controller(world: &World) -> String {
    let back = match world.controller.answer {
        Answer::Stop => "null".to_owned(),
        Answer::Reverse {
            pause,
            speed,
            distance,
        } => format!("[{},{},{}]", n(pause), n(speed), n(distance)),
    };
    format!(
        "{{\"reaction\":{},\"stopping\":{},\"back\":{back}}}",
        n(world.controller.reaction),
        n(world.controller.stopping)
    )
}

fn limits(world: &World) -> String {
    let limits = &world.limits;
    format!(
        "{{\"gap\":{},\"crushing\":{},\"open\":{},\"lasting\":{},\"lasting_after\":{},\"rest\":{},\"rest_after\":{},\"squeeze\":{}}}",
        n(limits.crushing_gap),
        n(limits.crushing_force),
        n(limits.open_force),
        n(limits.lasting_force),
        n(limits.lasting_after),
        n(limits.rest_force),
        n(limits.rest_after),
        n(limits.squeeze)
    )
}

fn body(body: &Body) -> String {
    list(&body.parts, |part| {
        format!(
            "[{},{},{},{},{}]",
            n(part.ahead),
            n(part.aside),
            n(part.radius),
            n(part.bottom),
            n(part.top)
        )
    })
}
