//! What a device does when it sees a vehicle.

site_words! {
    /// What a device does when it sees a vehicle.
    pub enum OnVehicle {
        /// It only reports: it frees a reader, counts, or starts a camera.
        Reports = "reports",
        /// It opens the gate; it does nothing against a leaf that closes.
        Opens = "opens",
        /// No leaf starts to close as long as it sees a vehicle; one that is closing goes on.
        HoldsOpen = "holds open",
        /// No leaf starts to close, and one that is closing stops or reverses.
        StopsClosing = "stops closing",
        /// No leaf starts to open, and one that is opening stops or reverses.
        StopsOpening = "stops opening",
    }
}
