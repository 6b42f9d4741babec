//! Labels: what they are made for, how large they are, and which wire number is free.

use quantity::{Length, Measured};

site_words! {
    /// What a label stands for years.
    pub enum LabelStands {
        /// Sun.
        Sun = "sun",
        /// Damp and water.
        Damp = "damp",
        /// Oil and grease.
        Oil = "oil",
    }
}

record! {
    /// The labels of the site.
    pub struct Labels {
        /// Height of the capital letters of the smallest text on them.
        letter_height: Option<Measured<Length>>,
        /// Distance from which they have to be read.
        read_from: Option<Measured<Length>>,
        /// What their material is rated for.
        stands: Vec<LabelStands>,
        /// Beside each fuse stands what it feeds.
        fuses_say: Option<bool>,
        /// The first wire number that was never given: numbers of wires that are gone stay unused.
        next_wire: Option<u32>,
        /// Sheets of labels that they are printed on.
        sheet: Option<LabelSheet>,
        /// Strip that they are printed on, one after the other.
        strip: Option<LabelStrip>,
    }
}

record! {
    /// A sheet of labels, each the same size.
    pub struct LabelSheet {
        /// Width of the sheet.
        width: Option<Measured<Length>>,
        /// Height of the sheet.
        height: Option<Measured<Length>>,
        /// Width of a label.
        label_width: Option<Measured<Length>>,
        /// Height of a label.
        label_height: Option<Measured<Length>>,
        /// Labels side by side.
        across: Option<u32>,
        /// Labels one below the other.
        down: Option<u32>,
        /// From the left edge of the sheet to the first label.
        from_left: Option<Measured<Length>>,
        /// From the upper edge of the sheet to the first label.
        from_top: Option<Measured<Length>>,
        /// Between two labels side by side.
        gap_across: Option<Measured<Length>>,
        /// Between two labels one below the other.
        gap_down: Option<Measured<Length>>,
        /// Labels at the head of the first sheet that are used up.
        used: Option<u32>,
    }
}

record! {
    /// A strip of tape for labels.
    pub struct LabelStrip {
        /// Width of the tape.
        width: Option<Measured<Length>>,
        /// Length of a label.
        label_length: Option<Measured<Length>>,
    }
}
