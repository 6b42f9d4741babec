//! The list of files: name, media type, bytes.

use papers::engine::INTER;

const STYLE: &str = "text/css; charset=utf-8";
const SCRIPT: &str = "text/javascript; charset=utf-8";
const FACE: &str = "font/otf";

/// A file of this folder.
macro_rules! here {
    ($name:literal, $kind:expr) => {
        ($name, $kind, include_bytes!($name))
    };
}

/// Every file that pages may ask for.
pub(in crate::serve) const FILES: &[(&str, &str, &[u8])] = &[
    here!("paper.css", STYLE),
    here!("controls.css", STYLE),
    here!("drawing.css", STYLE),
    here!("workbench.css", STYLE),
    here!("plan.css", STYLE),
    here!("answers.css", STYLE),
    here!("form.css", STYLE),
    here!("jobs.css", STYLE),
    here!("calculations.css", STYLE),
    here!("pictures.css", STYLE),
    here!("walk.css", STYLE),
    here!("workbench.js", SCRIPT),
    here!("plan.js", SCRIPT),
    here!("card.js", SCRIPT),
    here!("removal.js", SCRIPT),
    here!("ruled.js", SCRIPT),
    here!("written.js", SCRIPT),
    here!("snap.js", SCRIPT),
    here!("passing.js", SCRIPT),
    here!("placing.js", SCRIPT),
    here!("way.js", SCRIPT),
    here!("sheet.js", SCRIPT),
    here!("thing.js", SCRIPT),
    here!("names.js", SCRIPT),
    here!("lengths.js", SCRIPT),
    here!("pointing.js", SCRIPT),
    here!("answers.js", SCRIPT),
    here!("list.js", SCRIPT),
    here!("edit.js", SCRIPT),
    here!("house.js", SCRIPT),
    here!("calculations.js", SCRIPT),
    here!("jobs.js", SCRIPT),
    here!("papers.js", SCRIPT),
    here!("pictures.js", SCRIPT),
    here!("walk.js", SCRIPT),
    here!("replay.js", SCRIPT),
    here!("mark.svg", "image/svg+xml"),
    ("inter-regular.otf", FACE, INTER[0]),
    ("inter-semibold.otf", FACE, INTER[1]),
];
