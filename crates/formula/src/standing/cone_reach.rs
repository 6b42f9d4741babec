//! Geometry that the cones of both codes share: what a group reaches, and how deep it counts in a narrow member.

/// Anchors in a row and their spacing.
pub(super) type InRow = (u32, f64);

/// Projected area of a rectangular group: edges are left, right, front, back; rows across and along.
pub(super) fn projected_area(edges: &[f64; 4], rows: [InRow; 2], reach: f64) -> f64 {
    side(edges[0], edges[1], rows[0], reach) * side(edges[2], edges[3], rows[1], reach)
}

/// One side of the projected area: the row of anchors, with what the cone reaches beyond it on both sides.
fn side(before: f64, after: f64, (count, spacing): InRow, reach: f64) -> f64 {
    let gaps = f64::from(count.saturating_sub(1));
    before.min(reach) + after.min(reach) + gaps * spacing.min(2.0 * reach)
}

/// Embedment that counts: in a narrow member with three or more near edges, no deeper than those edges allow.
pub(super) fn counted_embedment(depth: f64, edges: &[f64; 4], rows: [InRow; 2]) -> f64 {
    let near: Vec<f64> = edges
        .iter()
        .copied()
        .filter(|edge| *edge < 1.5 * depth)
        .collect();
    if near.len() < 3 {
        return depth;
    }
    let farthest = near.iter().copied().fold(0.0, f64::max);
    let spacing = rows
        .into_iter()
        .filter(|(count, _)| *count > 1)
        .map(|(_, spacing)| spacing)
        .fold(0.0, f64::max);
    (farthest / 1.5).max(spacing / 3.0).min(depth)
}
