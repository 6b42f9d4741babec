//! The kinds of gate and the directions of travel that rules of protection speak of.

quantity::words! {
    /// Kind of gate, by how its leaf moves.
    pub enum GateKind {
        /// Leaf that rolls sideways on a track in the ground.
        TrackSlide = "track-slide",
        /// Leaf that rolls sideways, carried beside the opening.
        CantileverSlide = "cantilever-slide",
        /// One leaf that turns about an upright axis.
        SingleSwing = "single-swing",
        /// Two leaves that turn about upright axes.
        DoubleSwing = "double-swing",
        /// Leaf that turns up about a level axis at its end.
        VerticalPivot = "vertical-pivot",
        /// Leaf that is lifted.
        VerticalLift = "vertical-lift",
        /// Arm that closes a lane.
        BarrierArm = "barrier-arm",
    }
}

quantity::words! {
    /// Direction of travel.
    pub enum TravelDirection {
        /// Toward the open position.
        Opening = "opening",
        /// Toward the closed position.
        Closing = "closing",
    }
}

quantity::words! {
    /// Whether somebody can be caught.
    pub enum Entrapment {
        /// There is a place in this direction of travel where somebody can be caught.
        Possible = "possible",
        /// Every place in this direction was looked at and none can catch anybody.
        Excluded = "excluded",
    }
}
