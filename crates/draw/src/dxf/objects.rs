//! The objects that every reader looks for: the root dictionary and a layout for model and paper space.

use super::pairs::Pairs;
use super::tables::Owners;
use crate::flat::Spot;

/// Writes all objects.
pub(super) fn objects(out: &mut Pairs, owners: &Owners) {
    out.section("OBJECTS");
    let (root, groups, layouts) = (out.fresh(), out.fresh(), out.fresh());
    dictionary(
        out,
        root,
        0,
        &[("ACAD_GROUP", groups), ("ACAD_LAYOUT", layouts)],
    );
    dictionary(out, groups, root, &[]);
    dictionary(
        out,
        layouts,
        root,
        &[
            ("Model", owners.model_layout),
            ("Layout1", owners.paper_layout),
        ],
    );
    layout(out, "Model", owners.model_layout, (layouts, owners.model));
    layout(out, "Layout1", owners.paper_layout, (layouts, owners.paper));
    out.end_section();
}

/// A dictionary of names and handles.
fn dictionary(out: &mut Pairs, handle: u32, owner: u32, entries: &[(&str, u32)]) {
    out.begin_as("DICTIONARY", handle, owner);
    out.classes(&["AcDbDictionary"]);
    out.whole(281, 1);
    for (name, entry) in entries {
        out.words(3, name);
        out.refers(350, *entry);
    }
}

/// The layout of a space.
fn layout(out: &mut Pairs, name: &str, handle: u32, (owner, block): (u32, u32)) {
    let is_model = name == "Model";
    out.begin_as("LAYOUT", handle, owner);
    out.classes(&["AcDbPlotSettings"]);
    out.words(1, "");
    out.whole(70, if is_model { 1024 } else { 0 });
    out.classes(&["AcDbLayout"]);
    out.words(1, name);
    out.whole(70, 1);
    out.whole(71, i32::from(!is_model));
    out.flat(10, Spot::new(0.0, 0.0));
    out.flat(11, Spot::new(1.0, 1.0));
    for (code, x, y) in [(12, 0.0, 0.0), (14, 0.0, 0.0), (15, 0.0, 0.0)] {
        out.point(code, Spot::new(x, y));
    }
    out.number(146, 0.0);
    out.point(13, Spot::new(0.0, 0.0));
    out.point(16, Spot::new(1.0, 0.0));
    out.point(17, Spot::new(0.0, 1.0));
    out.whole(76, 0);
    out.refers(330, block);
}
