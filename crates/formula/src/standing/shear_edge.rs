//! Geometry of a row of anchors at an edge: what breaks out when it is shoved.

/// A row of anchors at an edge, in inches.
pub(super) struct Row {
    pub(super) edge: f64,
    pub(super) corners: [f64; 2],
    pub(super) thickness: f64,
    pub(super) count: u32,
    pub(super) spacing: f64,
    pub(super) eccentricity: f64,
}

/// What breaks out, in inches.
pub(super) struct BrokenEdge {
    /// Edge distance that counts.
    pub(super) counted: f64,
    pub(super) reference_area: f64,
    pub(super) projected_area: f64,
    pub(super) eccentricity_factor: f64,
    pub(super) edge_factor: f64,
    pub(super) thickness_factor: f64,
}

/// Areas and factors by ACI 318-19, 17.7.2.
pub(super) fn broken_edge(row: &Row) -> BrokenEdge {
    let counted = counted(row);
    let reach = 1.5 * counted;
    let gaps = f64::from(row.count.saturating_sub(1)) * row.spacing.min(3.0 * counted);
    let length = row.corners[0].min(reach) + gaps + row.corners[1].min(reach);
    let nearest = row.corners[0].min(row.corners[1]);
    BrokenEdge {
        counted,
        reference_area: 4.5 * counted * counted,
        projected_area: length * reach.min(row.thickness),
        eccentricity_factor: 1.0 / (1.0 + row.eccentricity / reach),
        edge_factor: (0.7 + 0.3 * nearest / reach).min(1.0),
        thickness_factor: (reach / row.thickness).sqrt().max(1.0),
    }
}

/// Edge distance that counts: in narrow thin concrete no more than corners, thickness and spacing allow.
fn counted(row: &Row) -> f64 {
    let reach = 1.5 * row.edge;
    if row.thickness >= reach || row.corners.iter().any(|corner| *corner >= reach) {
        return row.edge;
    }
    let spacing = if row.count > 1 {
        row.spacing / 3.0
    } else {
        0.0
    };
    let farther = row.corners[0].max(row.corners[1]);
    (farther / 1.5)
        .max(row.thickness / 1.5)
        .max(spacing)
        .min(row.edge)
}
