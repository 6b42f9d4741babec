//! Writes the scene of a drawing as DXF.

/// The unit of a DXF file's numbers.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DxfUnit {
    /// Meters.
    Meters,
    /// Millimeters.
    Millimeters,
    /// Feet.
    Feet,
    /// Inches.
    Inches,
}
