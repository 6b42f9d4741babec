//! The list of files: name, media type, bytes.

/// Every file that pages may ask for.
pub(in crate::serve) const FILES: &[(&str, &str, &[u8])] = &[(
    "paper.css",
    "text/css; charset=utf-8",
    include_bytes!("paper.css"),
)];
