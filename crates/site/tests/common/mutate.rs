//! Damages a text in ways that people and machines do, the same way for the same seed.

/// Marsaglia's 64-bit xorshift: small, and the same on every machine.
pub(crate) struct Chance(u64);

impl Chance {
    /// Begins at a seed.
    pub(crate) fn new(seed: u64) -> Self {
        Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) | 1)
    }

    /// A number below `limit`; zero when the limit is zero.
    pub(crate) fn below(&mut self, limit: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        let limit = u64::try_from(limit.max(1)).unwrap_or(1);
        usize::try_from(self.0 % limit).unwrap_or(0)
    }

    /// One of some.
    fn one<'a, T>(&mut self, of: &'a [T]) -> Option<&'a T> {
        of.get(self.below(of.len()))
    }
}

/// What can be done to a text.
const DAMAGES: &[fn(&str, &mut Chance) -> String] = &[
    flip_byte,
    delete_span,
    swap_lines,
    swap_values,
    wrong_unit,
    double_line,
    delete_line,
    insert_token,
    cut_off,
];

/// Units that are wrong almost everywhere.
const UNITS: &[&str] = &["lbf", "psi", "V", "ft", "°F", "%", "Ω", "kg", "", "m/s²"];

/// Pieces of TOML and of quantities that upset readers.
const TOKENS: &[&str] = &[
    "\"",
    "'",
    "[",
    "]",
    "{",
    "}",
    "=",
    ".",
    ",",
    "#",
    "\n",
    "\r",
    "\0",
    "\"\"\"",
    "\\",
    "±",
    "-",
    "nan",
    "inf",
    "1e999",
    "0",
    "π",
    "\u{feff}",
    "99999999999999999999",
    "[[gate]]\n",
    "1979-05-27T07:32:00Z",
];

/// The text with one to three damages.
pub(crate) fn mutate(text: &str, seed: u64) -> String {
    let mut chance = Chance::new(seed);
    let mut text = text.to_owned();
    for _ in 0..=chance.below(3) {
        if let Some(damage) = chance.one(DAMAGES) {
            text = damage(&text, &mut chance);
        }
    }
    text
}

/// A place between two characters.
fn between(text: &str, chance: &mut Chance) -> usize {
    text.floor_char_boundary(chance.below(text.len()))
}

fn flip_byte(text: &str, chance: &mut Chance) -> String {
    let mut bytes = text.as_bytes().to_vec();
    let at = chance.below(bytes.len());
    let bit = chance.below(8);
    if let Some(byte) = bytes.get_mut(at) {
        *byte ^= 1 << bit;
    }
    String::from_utf8_lossy(&bytes).into_owned()
}

fn delete_span(text: &str, chance: &mut Chance) -> String {
    let start = between(text, chance);
    let end = text.ceil_char_boundary((start + chance.below(20)).min(text.len()));
    format!("{}{}", &text[..start], &text[end..])
}

fn with_lines(text: &str, change: impl FnOnce(&mut Vec<String>)) -> String {
    let mut lines: Vec<String> = text.split('\n').map(str::to_owned).collect();
    change(&mut lines);
    lines.join("\n")
}

fn swap_lines(text: &str, chance: &mut Chance) -> String {
    with_lines(text, |lines| {
        let (a, b) = (chance.below(lines.len()), chance.below(lines.len()));
        lines.swap(a, b);
    })
}

fn swap_values(text: &str, chance: &mut Chance) -> String {
    with_lines(text, |lines| {
        let with_value: Vec<usize> = (0..lines.len())
            .filter(|line| lines[*line].contains(" = "))
            .collect();
        let (Some(&a), Some(&b)) = (chance.one(&with_value), chance.one(&with_value)) else {
            return;
        };
        let parts = |line: &str| {
            line.split_once(" = ")
                .map(|(key, value)| (key.to_owned(), value.to_owned()))
        };
        if let (Some((key_a, value_a)), Some((key_b, value_b))) =
            (parts(&lines[a]), parts(&lines[b]))
        {
            lines[a] = format!("{key_a} = {value_b}");
            lines[b] = format!("{key_b} = {value_a}");
        }
    })
}

fn wrong_unit(text: &str, chance: &mut Chance) -> String {
    with_lines(text, |lines| {
        let with_unit: Vec<usize> = (0..lines.len())
            .filter(|line| lines[*line].contains("= \""))
            .collect();
        let (Some(&line), Some(unit)) = (chance.one(&with_unit), chance.one(UNITS)) else {
            return;
        };
        if let Some((before, _)) = lines[line].rsplit_once(' ') {
            lines[line] = format!("{before} {unit}\"");
        }
    })
}

fn double_line(text: &str, chance: &mut Chance) -> String {
    with_lines(text, |lines| {
        let line = chance.below(lines.len());
        lines.insert(line, lines[line].clone());
    })
}

fn delete_line(text: &str, chance: &mut Chance) -> String {
    with_lines(text, |lines| {
        let line = chance.below(lines.len());
        lines.remove(line);
    })
}

fn insert_token(text: &str, chance: &mut Chance) -> String {
    let at = between(text, chance);
    let token = chance.one(TOKENS).copied().unwrap_or_default();
    format!("{}{token}{}", &text[..at], &text[at..])
}

fn cut_off(text: &str, chance: &mut Chance) -> String {
    text[..between(text, chance)].to_owned()
}
