//! Every rule that a site file is held to, by name.

quantity::words! {
    /// The name of a rule. Names never change; each has an example in `tests/problems`.
    pub enum Code {
        /// The text is not TOML.
        NotToml = "not-toml",
        /// A key stands twice in one table.
        DoubledKey = "doubled-key",
        /// A key or table that there is not.
        UnknownKey = "unknown-key",
        /// A key that must be there is missing.
        MissingKey = "missing-key",
        /// A value that is not text where text is wanted.
        WrongType = "wrong-type",
        /// A value that is not a table where a table is wanted.
        NotATable = "not-a-table",
        /// A value that is not a list where a list is wanted.
        NotAList = "not-a-list",
        /// Text without any characters.
        EmptyText = "empty-text",
        /// Text that is not one of the words that count.
        UnknownWord = "unknown-word",
        /// A name with other characters than a name may have.
        BadName = "bad-name",
        /// A value that is not a day of the calendar.
        NotADay = "not-a-day",
        /// A value that is not a whole number of zero or more.
        NotACount = "not-a-count",
        /// A value that is neither true nor false.
        NotYesOrNo = "not-yes-or-no",
        /// A value that is not three lengths.
        NotAPosition = "not-a-position",
        /// Text that is not a section.
        NotASection = "not-a-section",
        /// Text that is not a price.
        NotAPrice = "not-a-price",
        /// Text that is not an address of the data network.
        NotAnAddress = "not-an-address",
        /// A number without quotes where a quantity is wanted.
        NumberWithoutUnit = "number-without-unit",
        /// Text that is not a quantity of the kind that is wanted.
        UnreadableQuantity = "unreadable-quantity",
        /// A negative value where none can be.
        BelowZero = "below-zero",
        /// A tolerance that would make the value negative where it cannot be.
        ToleranceBelowZero = "tolerance-below-zero",
        /// A parts file that the site asks for was not found.
        NoPartsFile = "no-parts-file",
        /// The weather file that the site names was not found.
        NoWeatherFile = "no-weather-file",
        /// A weather file that holds no whole year of weather.
        UnreadableWeather = "unreadable-weather",
        /// A part that no parts file has.
        UnknownPart = "unknown-part",
        /// Two parts of one kind have the same name.
        DoubledPart = "doubled-part",
        /// Two things have the same name.
        DoubledId = "doubled-id",
        /// A reference to a name that nothing has.
        UnknownId = "unknown-id",
        /// A reference to a thing of another sort than is wanted.
        WrongSort = "wrong-sort",
        /// Zero where nothing can be zero.
        Zero = "zero",
        /// A share of more than the whole.
        ShareAboveOne = "share-above-one",
        /// An angle beyond what it can be.
        AngleOutOfRange = "angle-out-of-range",
        /// The coldest is hotter than the hottest.
        ColdAboveHot = "cold-above-hot",
        /// The weather is beyond anything seen on Earth.
        BeyondWeather = "beyond-weather",
        /// A slope that no drive has.
        SteepSlope = "steep-slope",
        /// The leaf does not cover the opening.
        LeafShorterThanOpening = "leaf-shorter-than-opening",
        /// More leaves than the kind of gate has, or fewer.
        LeafCount = "leaf-count",
        /// The tail is as long as the leaf.
        TailTooLong = "tail-too-long",
        /// The axle is as thick as the wheel.
        AxleTooThick = "axle-too-thick",
        /// The opening reaches above the thing that it is in.
        OpeningAboveTop = "opening-above-top",
        /// The creep speed is above the cruise speed.
        CreepAboveCruise = "creep-above-cruise",
        /// The creep distance is longer than the travel.
        CreepBeyondTravel = "creep-beyond-travel",
        /// The points of a curve are not in the order of rising speed.
        CurveOutOfOrder = "curve-out-of-order",
        /// An operator or a device names a leaf of another gate.
        LeafOfAnotherGate = "leaf-of-another-gate",
        /// The operator was made after it was installed.
        MadeAfterInstalled = "made-after-installed",
        /// The least voltage is above the voltage, or the voltage above the greatest.
        VoltageOutOfOrder = "voltage-out-of-order",
        /// The short current is below the lasting one.
        PeakBelowLasting = "peak-below-lasting",
        /// Supplies that feed each other in a circle.
        FeedingCircle = "feeding-circle",
        /// A cable whose two ends are at the same thing.
        CableToItself = "cable-to-itself",
        /// More cores joined for a pole than the cable has.
        TooFewCores = "too-few-cores",
        /// Power over Ethernet on another number of pairs than 2 or 4.
        PowerPairs = "power-pairs",
        /// A path, given to change a value, that leads to no value.
        UnknownPath = "unknown-path",
        /// The anchor reaches through the concrete.
        AnchorTooDeep = "anchor-too-deep",
        /// Anchors that do not share out over their rows.
        UnevenRows = "uneven-rows",
    }
}

impl serde::Serialize for Code {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(quantity::Word::word(*self))
    }
}
