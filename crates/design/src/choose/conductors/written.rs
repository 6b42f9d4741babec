//! What to write into the site file so that a cable is bought as another entry.

use serde::Serialize;
use site::{Cable, SourceFile};

/// One value of the site file.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ConductorLine {
    /// Its path: `cable.w-06.part`.
    pub path: String,
    /// The value as it is written: `"power-2x10"`.
    pub value: String,
}

/// Keys that go with the entry; the hottest that a conductor gets goes with its place.
const OF_THE_ENTRY: [&str; 13] = [
    "carries",
    "cores",
    "size",
    "metal",
    "stranding",
    "diameter",
    "mass_per_length",
    "greatest_tension",
    "greatest_side_load",
    "insulation",
    "insulation_rating",
    "price",
    "price_length",
];

/// The lines for one cable; what the site file says of the old cable itself is replaced by what the entry says.
pub(super) fn lines(today: &Cable, chosen: &Cable, parts: &[SourceFile]) -> Vec<ConductorLine> {
    let Some(part) = &chosen.part else {
        return Vec::new();
    };
    let line = |key: &str, value: String| ConductorLine {
        path: format!("cable.{}.{key}", today.id),
        value,
    };
    let name = toml::Value::String(part.to_string());
    let mut lines = vec![line("part", name.to_string())];
    let Some(entry) = entry(parts, part.as_str()) else {
        return lines;
    };
    for key in OF_THE_ENTRY {
        let is_own = today.origin.field(key).is_some() && !today.origin.from_part(key);
        if let (true, Some(value)) = (is_own, entry.get(key)) {
            lines.push(line(key, value.to_string()));
        }
    }
    lines
}

/// The table of an entry as it is written.
fn entry(parts: &[SourceFile], name: &str) -> Option<toml::Table> {
    parts.iter().find_map(|file| {
        let table: toml::Table = file.text.parse().ok()?;
        let cables = table.get("cable")?.as_array()?;
        let named = |cable: &&toml::Value| cable.get("id").and_then(|id| id.as_str()) == Some(name);
        cables.iter().find(named)?.as_table().cloned()
    })
}
