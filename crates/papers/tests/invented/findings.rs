//! Twelve findings of every verdict, with working from one line to long.

use papers::view::{FindingView, Measure, Verdict, Working, WorkingLine};

pub(crate) fn all() -> Vec<FindingView> {
    vec![
        entrapment(),
        edge_distance(),
        soil(),
        conduit_length(),
        wind_force(),
        reader_voltage(),
        starting_voltage(),
        conduit_fill(),
        pulling_tension(),
        battery(),
        enclosure_heat(),
        lightning(),
    ]
}

fn words(text: &str) -> String {
    text.to_owned()
}

fn blank(id: &str, subject: &str, verdict: Verdict, sentence: &str, severity: &str) -> FindingView {
    FindingView {
        id: words(id),
        subject: words(subject),
        question: String::new(),
        sentence: words(sentence),
        verdict,
        because: String::new(),
        severity: words(severity),
        demand: String::new(),
        capacity: String::new(),
        ratio: String::new(),
        nominal: String::new(),
        worst: String::new(),
        deciding: String::new(),
        working: Vec::new(),
        source: String::new(),
        known: String::new(),
        measures: Vec::new(),
        same_as: None,
        confirm: String::new(),
    }
}

fn entrapment() -> FindingView {
    FindingView {
        question: words("Does each entrapment zone have the means that its kind of gate asks for?"),
        because: words("One independent means is missing while closing."),
        demand: words("2 means"),
        capacity: words("1 means"),
        ratio: words("2.00"),
        nominal: words("fails by 1"),
        worst: words("fails by 1"),
        source: words("UL 325, table of minimum quantities, track slide"),
        known: words("seen in trade retellings"),
        same_as: None,
        confirm: words(
            "With a test piece, interrupt each device while the gate closes; the gate stops and reverses each time.",
        ),
        working: vec![Working {
            title: words("Means counted by zone and direction"),
            formula: String::new(),
            given: vec![
                WorkingLine::new(
                    "",
                    "closing, leading edge: through-beam photo-eye E1 (type B1), monitored",
                    "1",
                    "site file",
                ),
                WorkingLine::new(
                    "",
                    "closing, leading edge: contact edge (type B2)",
                    "0",
                    "site file",
                ),
                WorkingLine::new(
                    "",
                    "inherent sensing of the operator (type A)",
                    "does not count here",
                    "data sheet",
                ),
            ],
            gives: vec![WorkingLine::new(
                "",
                "independent means while closing",
                "1",
                "",
            )],
            source: String::new(),
            known: String::new(),
            stands_at: None,
            formula_at: None,
        }],
        ..blank(
            "protection-entrapment-count",
            "Gate, closing",
            Verdict::Fails,
            "While closing, the gate has one independent entrapment protection; it needs two.",
            "life",
        )
    }
}

fn edge_distance() -> FindingView {
    FindingView {
        question: words(
            "Does the anchor nearest to the pad's edge hold the operator when the leaf hits its stop?",
        ),
        because: words("The cone of concrete is cut off by the edge, 3 in away."),
        demand: words("610 lbf ± 60 lbf"),
        capacity: words("540 lbf"),
        ratio: words("1.13"),
        nominal: words("fails by 70 lbf"),
        worst: words("fails by 130 lbf"),
        deciding: words("Edge distance of anchor A3 (3 in ± 1/4 in)"),
        source: words("ACI 318-19, 17.6.2 concrete breakout of a single anchor"),
        known: words("seen in published examples"),
        same_as: None,
        confirm: words("Measure the edge distance at all four anchors after the pad is poured."),
        working: vec![Working {
            title: words("Breakout of one anchor near an edge"),
            formula: words(
                "Nb = kc · λa · √f′c · hef^1.5\nNcb = (ANc / ANc0) · ψed · ψc · ψcp · Nb",
            ),
            given: vec![
                WorkingLine::new(
                    "kc",
                    "coefficient for a post-installed anchor",
                    "17",
                    "seen",
                ),
                WorkingLine::new("λa", "lightweight factor", "1.0", "site file"),
                WorkingLine::new("f′c", "strength of the concrete", "3000 psi", "site file"),
                WorkingLine::new("hef", "embedment", "2 1/2 in", "data sheet"),
                WorkingLine::new("ca", "edge distance", "3 in ± 1/4 in", "measured"),
                WorkingLine::new("ψed", "edge factor", "0.94", ""),
            ],
            gives: vec![
                WorkingLine::new("Nb", "basic breakout strength", "3681 lbf", ""),
                WorkingLine::new("Ncb", "breakout strength with the edge", "540 lbf", ""),
            ],
            source: words("ACI 318-19, 17.6.2"),
            known: words("seen"),
            stands_at: None,
            formula_at: None,
        }],
        ..blank(
            "standing-anchor-breakout",
            "Operator pad, anchor A3",
            Verdict::Fails,
            "At anchor A3 the stop pulls with 610 lbf; the concrete holds 540 lbf.",
            "damage",
        )
    }
}

fn soil() -> FindingView {
    FindingView {
        question: words("Does the receiving post stand in the survival wind?"),
        because: words("Unknown until the soil at the post is known."),
        severity: words("damage"),
        source: words("IBC 1807.3, embedded posts"),
        known: words("memory"),
        measures: vec![
            Measure {
                what: words(
                    "Soil at the receiving post, to 4 ft below the surface: class by texture, or a report",
                ),
                write: words(
                    "[post.receiving]\nsoil = \"sandy gravel\"   # or clay, silty sand, rock …",
                ),
            },
            Measure {
                what: words("Water in the hole one day after digging"),
                write: String::new(),
            },
        ],
        same_as: None,
        confirm: words("Look at the hole before the concrete is ordered."),
        ..blank(
            "standing-post-embedment",
            "Receiving post",
            Verdict::Unknown,
            "Whether the receiving post stands in a 140 mph wind is unknown until its soil is known.",
            "damage",
        )
    }
}

fn conduit_length() -> FindingView {
    FindingView {
        question: words("Does the camera have enough power at the far end of its data cable?"),
        because: words("Unknown until conduit 4 is measured."),
        demand: words("12.9 W"),
        measures: vec![Measure {
            what: words(
                "Length of conduit 4, from the enclosure to the camera pole, along the bends",
            ),
            write: words("length = \"… ft ± … ft\""),
        }],
        source: words("IEEE 802.3, power at the powered device"),
        known: words("seen"),
        same_as: None,
        confirm: words(
            "Read volts and watts at the camera in the coldest hour with its heater on.",
        ),
        ..blank(
            "signal-power-over-ethernet",
            "Camera C1",
            Verdict::Unknown,
            "Whether camera C1 gets its 12.9 W is unknown until conduit 4 is measured.",
            "nuisance",
        )
    }
}

fn wind_force() -> FindingView {
    FindingView {
        question: words("Can the operator move the leaf in the operating wind?"),
        because: words(
            "Holds as written by 22 lbf; fails by 9 lbf at the bad end of the tolerances.",
        ),
        demand: words("178 lbf ± 31 lbf"),
        capacity: words("200 lbf"),
        ratio: words("0.89"),
        nominal: words("holds by 22 lbf"),
        worst: words("fails by 9 lbf"),
        deciding: words(
            "Rolling resistance of the track (0.020 ± 0.006): it turns the verdict above 0.024",
        ),
        source: words("Balance of forces on the leaf"),
        known: words("physics"),
        same_as: None,
        confirm: words(
            "Pull the released leaf with a force gauge along the track, at three places, both ways; expect 38 lbf ± 6 lbf without wind.",
        ),
        working: vec![
            Working {
                title: words("Wind on the leaf"),
                formula: words("q = 0.00256 · Kz · Kd · V²\nF = q · G · Cf · A"),
                given: vec![
                    WorkingLine::new("V", "operating wind", "40 mph", "site file"),
                    WorkingLine::new("Kz", "exposure D, 0 to 15 ft", "1.03", "seen"),
                    WorkingLine::new("Kd", "directionality", "0.85", "seen"),
                    WorkingLine::new(
                        "G · Cf",
                        "gust and force coefficients at solidity 0.35",
                        "1.28",
                        "seen",
                    ),
                    WorkingLine::new("A", "solid area", "47.3 ft² ± 2 %", "measured"),
                ],
                gives: vec![
                    WorkingLine::new("q", "velocity pressure", "3.59 lbf/ft²", ""),
                    WorkingLine::new("F", "wind across the leaf", "217 lbf ± 4 lbf", ""),
                ],
                source: words("ASCE 7-16, 26.10 and 29.4"),
                known: words("seen in published examples"),
                stands_at: None,
                formula_at: None,
            },
            Working {
                title: words("Force to move the leaf"),
                formula: words("P = μr · m · g + m · g · sin φ + μs · F + m · a"),
                given: vec![
                    WorkingLine::new("μr", "rolling resistance", "0.020 ± 0.006", "assumed"),
                    WorkingLine::new("m", "mass of the leaf", "640 lb ± 5 %", "measured"),
                    WorkingLine::new("φ", "slope of the track", "1 in 200", "measured"),
                    WorkingLine::new(
                        "μs",
                        "friction at the guide rollers",
                        "0.15 ± 0.05",
                        "common practice",
                    ),
                    WorkingLine::new("a", "acceleration", "1 ft/s²", "data sheet"),
                ],
                gives: vec![WorkingLine::new(
                    "P",
                    "force at the rack",
                    "178 lbf ± 31 lbf",
                    "",
                )],
                source: words("Balance of forces"),
                known: words("physics"),
                stands_at: None,
                formula_at: None,
            },
            Working {
                title: words("Against what the operator gives"),
                formula: String::new(),
                given: vec![WorkingLine::new(
                    "",
                    "force of the operator at 1 ft/s",
                    "200 lbf",
                    "data sheet",
                )],
                gives: vec![WorkingLine::new(
                    "",
                    "left over",
                    "22 lbf; −9 lbf at worst",
                    "",
                )],
                source: String::new(),
                known: String::new(),
                stands_at: None,
                formula_at: None,
            },
        ],
        ..blank(
            "motion-force-in-wind",
            "Operator",
            Verdict::NotSure,
            "In a 40 mph wind the leaf needs 178 lbf; the operator gives 200 lbf. Holds by 22 lbf, but not at the bad end of the tolerances.",
            "nuisance",
        )
    }
}

fn drop_step(current: &str, length: &str, lost: &str, left: &str) -> Vec<Working> {
    vec![
        Working {
            title: words("Resistance of the conductor, warm"),
            formula: words("R = R20 · (1 + α · (T − 20 °C))"),
            given: vec![
                WorkingLine::new("R20", "18 AWG, stranded copper", "6.51 Ω/kft", "seen"),
                WorkingLine::new(
                    "α",
                    "temperature coefficient of copper",
                    "0.00393 1/K",
                    "seen",
                ),
                WorkingLine::new("T", "conductor temperature", "50 °C", "site file"),
            ],
            gives: vec![WorkingLine::new("R", "resistance", "7.28 Ω/kft", "")],
            source: words("ASTM B258; IEC 60228"),
            known: words("seen"),
            stands_at: None,
            formula_at: None,
        },
        Working {
            title: words("Voltage lost along the cable"),
            formula: words("U = 2 · L · R · I"),
            given: vec![
                WorkingLine::new("I", "current", current, "data sheet"),
                WorkingLine::new("L", "length of the run", length, "measured"),
            ],
            gives: vec![
                WorkingLine::new("U", "voltage lost", lost, ""),
                WorkingLine::new("", "voltage left", left, ""),
            ],
            source: words("Ohm’s law over both conductors"),
            known: words("physics"),
            stands_at: None,
            formula_at: None,
        },
    ]
}

fn reader_voltage() -> FindingView {
    FindingView {
        question: words("Has the reader enough voltage in its worst hour?"),
        because: words("Holds by 0.7 V."),
        demand: words("10.2 V"),
        capacity: words("10.9 V ± 0.2 V"),
        ratio: words("0.94"),
        nominal: words("holds by 0.7 V"),
        worst: words("holds by 0.5 V"),
        deciding: words("Length of the run (180 ft ± 5 ft)"),
        working: drop_step("0.42 A", "180 ft ± 5 ft", "1.1 V", "10.9 V ± 0.2 V"),
        source: words("Data sheet of the reader, least voltage"),
        known: words("nameplate"),
        same_as: None,
        confirm: words(
            "Measure at the reader’s terminals with the reader working; expect 10.9 V, at least 10.2 V.",
        ),
        ..blank(
            "power-voltage-at-device",
            "Reader R1",
            Verdict::Holds,
            "At the reader, 10.9 V in the coldest hour; it needs 10.2 V. Holds by 0.7 V.",
            "nuisance",
        )
    }
}

fn starting_voltage() -> FindingView {
    FindingView {
        question: words("Has the operator enough voltage when it starts?"),
        because: words("Holds by 3.1 V."),
        demand: words("108 V"),
        capacity: words("111.1 V ± 0.6 V"),
        ratio: words("0.97"),
        nominal: words("holds by 3.1 V"),
        worst: words("holds by 2.5 V"),
        working: drop_step("18 A", "210 ft ± 5 ft", "8.9 V", "111.1 V ± 0.6 V"),
        source: words("Data sheet of the operator, supply 120 V − 10 %"),
        known: words("nameplate"),
        same_as: None,
        confirm: words("Measure at the operator’s supply terminals while it starts."),
        ..blank(
            "power-starting-voltage",
            "Operator",
            Verdict::Holds,
            "When the operator starts it has 111.1 V; it needs 108 V. Holds by 3.1 V.",
            "nuisance",
        )
    }
}

fn simple(
    id: &str,
    subject: &str,
    sentence: &str,
    figures: [&str; 4],
    severity: &str,
) -> FindingView {
    let [demand, capacity, ratio, margin] = figures;
    FindingView {
        demand: words(demand),
        capacity: words(capacity),
        ratio: words(ratio),
        nominal: words(margin),
        worst: words(margin),
        because: words(margin),
        source: words("NEC 2023, chapter 9"),
        known: words("seen in a public reprint"),
        same_as: None,
        confirm: words("Look, and measure once the work is done."),
        ..blank(id, subject, Verdict::Holds, sentence, severity)
    }
}

fn conduit_fill() -> FindingView {
    simple(
        "ways-conduit-fill",
        "Conduit 2",
        "Conduit 2 is filled to 31 %; 40 % is allowed for three cables or more.",
        ["0.27 in²", "0.34 in²", "0.78", "holds by 0.07 in²"],
        "damage",
    )
}

fn pulling_tension() -> FindingView {
    simple(
        "ways-pulling-tension",
        "Cable W7",
        "Pulling cable W7 through three bends takes 34 lbf; it stands 52 lbf.",
        ["34 lbf", "52 lbf", "0.65", "holds by 18 lbf"],
        "damage",
    )
}

fn battery() -> FindingView {
    simple(
        "power-standby",
        "Battery",
        "With mains gone the battery carries the standing load 27 h and ten cycles; 24 h is asked for.",
        ["24 h", "27 h", "0.89", "holds by 3 h"],
        "life",
    )
}

fn enclosure_heat() -> FindingView {
    simple(
        "power-enclosure-heat",
        "Enclosure N1",
        "In the hottest hour the enclosure reaches 131 °F inside; its least tolerant part stands 140 °F.",
        ["131 °F", "140 °F", "0.94", "holds by 9 °F"],
        "fire",
    )
}

fn lightning() -> FindingView {
    FindingView {
        question: words("Does the site need protection against direct lightning?"),
        because: words("Outside this tool: a study of the whole property is needed."),
        ..blank(
            "power-direct-lightning",
            "Whole site",
            Verdict::Outside,
            "Whether the site needs protection against direct lightning is outside this tool.",
            "fire",
        )
    }
}
