//! Names on the plan: things that stand together share one label.

use draw::{Label, LayerId, Point, Scene};
use quantity::Quantity as _;

/// Letters in a line of a label.
pub(crate) const LINE: usize = 24;

/// Names with the points that they belong to, before they are put on the sheet.
#[derive(Debug, Default)]
pub(crate) struct Tags {
    tags: Vec<(Point, Vec<String>)>,
}

impl Tags {
    /// Names what stands at a point.
    pub(crate) fn add(&mut self, at: Point, name: impl Into<String>) {
        self.tags.push((at, vec![name.into()]));
    }

    /// Puts the names on the sheet, each with what there is to remark on its place; those nearer to each other than
    /// `near` (m) share a label at the first one's point.
    pub(crate) fn place(
        self,
        scene: &mut Scene,
        layer: LayerId,
        near: f64,
        remark: impl Fn(Point) -> Option<String>,
    ) {
        let mut placed: Vec<(Point, Vec<String>)> = Vec::new();
        for (at, names) in self.tags {
            match placed
                .iter_mut()
                .find(|(other, _)| other.distance(at).base() < near)
            {
                Some((_, lines)) => lines.extend(names),
                None => placed.push((at, names)),
            }
        }
        for (at, lines) in placed {
            let words = with_remark(together(&lines), remark(at));
            scene.add(layer, Label::new(at, words));
        }
    }
}

/// Names that share a label: one a line while they are few, else one after another.
fn together(names: &[String]) -> String {
    if names.len() <= 2 {
        names.join("\n")
    } else {
        broken(&names.join(", "), LINE)
    }
}

/// Names with a remark on a line of its own.
fn with_remark(names: String, remark: Option<String>) -> String {
    match remark {
        Some(remark) => format!("{names}\n{remark}"),
        None => names,
    }
}

/// Words broken into lines of about so many letters; a no-break space holds together what it joins.
pub(crate) fn broken(words: &str, most: usize) -> String {
    let mut lines: Vec<String> = Vec::new();
    for word in words.split([' ', '\n']).filter(|word| !word.is_empty()) {
        match lines.last_mut() {
            Some(line) if line.chars().count() + 1 + word.chars().count() <= most => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines.join("\n")
}
