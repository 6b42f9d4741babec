//! The fields of a site for drawings.

use super::set::as_set;
use crate::asking::Asking;
use quantity::{Length, Quantity as _};
use site::Site;

/// A field as its detector is set.
#[derive(Debug, Clone)]
pub struct ShownField {
    /// The detector.
    pub id: String,
    /// Corners of the field, around it: along the gate, and into the property.
    pub corners: Vec<(Length, Length)>,
}

/// The fields whose settings the site holds.
pub fn shown(site: &Site) -> Vec<ShownField> {
    let mut asking = Asking::new(site.site.unit_system());
    let with = site.device.iter().filter(|it| it.field_mount.is_some());
    with.filter_map(|device| {
        let set = as_set(&mut asking, device).ok()?;
        let corners = set.corners().into_iter();
        Some(ShownField {
            id: device.id.to_string(),
            corners: corners
                .map(|(x, y)| (Length::from_base(x), Length::from_base(y)))
                .collect(),
        })
    })
    .collect()
}
