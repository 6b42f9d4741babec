//! Whether the machines that a task names fit the way in, and do not sink on it.

use super::tools_and_machines::{Found, is};
use crate::asking::{Asking, Wants, read};
use crate::outcome::{Comparison, Halt, Labeled};
use site::{Access, PriceBook, Site, Task, Tool};

/// How the way in is written.
const ACCESS: &str = "[access]\nwidth = \"9 ft\"\nheight = \"12 ft\"\nbearing = \"1500 psf\"";

/// Machines that a task names, against the way in.
pub(super) fn machines<'s>(
    asking: &mut Asking<'s>,
    site: &'s Site,
    book: &'s PriceBook,
    found: &mut Found,
) -> Result<(), Halt> {
    let driven = |tool: &&Tool| tool.width.is_some() || tool.ground_pressure.is_some();
    let used = |tool: &&Tool| {
        let names = |task: &Task| task.tools.iter().any(|name| is(tool, name.as_str()));
        site.task.iter().any(names)
    };
    let machines: Vec<&Tool> = book.tool.iter().filter(driven).filter(used).collect();
    if machines.is_empty() {
        return Ok(());
    }
    let Some(access) = &site.access else {
        return asking.lack(&site.origin, "access", Wants::Table(ACCESS));
    };
    let mut all = Ok(());
    for tool in machines {
        all = all.and(machine(asking, tool, access, found));
    }
    all
}

fn machine<'s>(
    asking: &mut Asking<'s>,
    tool: &'s Tool,
    access: &'s Access,
    found: &mut Found,
) -> Result<(), Halt> {
    let width = read!(asking, tool.width);
    let way = read!(asking, access.width);
    let pressure = read!(asking, tool.ground_pressure);
    let bearing = read!(asking, access.bearing);
    let mut compared = vec![
        Comparison::at_most(
            Labeled::new("width of the machine", width?),
            Labeled::new("width of the way in", way?),
        ),
        Comparison::at_most(
            Labeled::new("pressure of the machine on the ground", pressure?),
            Labeled::new("pressure that the way in bears", bearing?),
        ),
    ];
    if let Some(height) = asking.read_if_there(&tool.origin, "height", tool.height.as_ref()) {
        compared.push(Comparison::at_most(
            Labeled::new("height of the machine", height),
            Labeled::new("height of the way in", read!(asking, access.height)?),
        ));
    }
    let print = asking.print();
    for comparison in compared.iter().filter(|comparison| !comparison.holds()) {
        found.wrong.push(format!(
            "{}: {} is {}, and {} {}",
            tool.what,
            comparison.demand.label,
            print.value(&comparison.demand.value),
            comparison.capacity.label,
            print.value(&comparison.capacity.value)
        ));
    }
    found.compared.extend(compared);
    Ok(())
}
