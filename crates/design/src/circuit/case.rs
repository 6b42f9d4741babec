//! The hours in which voltages are worked.

/// An operating case.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum PowerCase {
    /// By day, nothing moves.
    Idle,
    /// By night, nothing moves: infrared, lamps and heaters are on.
    Night,
    /// By night, the gate runs.
    Moving,
    /// By night, a lock pulls in.
    Release,
    /// On the coldest night, the gate starts.
    ColdStart,
    /// As the last one, with mains or sun gone and the battery at its end.
    BatteryEnd,
}

/// All of them, from the lightest to the hardest.
pub(crate) const CASES: [PowerCase; 6] = [
    PowerCase::Idle,
    PowerCase::Night,
    PowerCase::Moving,
    PowerCase::Release,
    PowerCase::ColdStart,
    PowerCase::BatteryEnd,
];

impl PowerCase {
    /// When that is, as it stands in a sentence.
    pub(crate) fn when(self) -> &'static str {
        match self {
            Self::Idle => "idle by day",
            Self::Moving => "while the gate runs at night",
            Self::Night => "at night",
            Self::Release => "as the lock pulls in at night",
            Self::ColdStart => "as the gate starts on the coldest night",
            Self::BatteryEnd => "as the gate starts with the battery at its end",
        }
    }

    /// As the head of a column.
    pub(crate) fn title(self) -> &'static str {
        match self {
            Self::Idle => "idle",
            Self::Moving => "gate runs",
            Self::Night => "night",
            Self::Release => "lock pulls in",
            Self::ColdStart => "cold start",
            Self::BatteryEnd => "battery at its end",
        }
    }

    pub(super) fn is_dark(self) -> bool {
        self != Self::Idle
    }

    /// What flows then flows for longer than a moment.
    pub(crate) fn lasts(self) -> bool {
        matches!(self, Self::Idle | Self::Night | Self::Moving)
    }

    /// The motor starts.
    pub(super) fn starts(self) -> bool {
        matches!(self, Self::ColdStart | Self::BatteryEnd)
    }
}
