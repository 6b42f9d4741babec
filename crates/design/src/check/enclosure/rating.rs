//! Which rating against weather covers which other.

/// How a rating compares with the one that is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Tight {
    /// They are the same words.
    Same,
    /// Both are digits: whether each is at least as high.
    ByDigits(bool),
    /// It takes knowledge of types.
    ByTypes,
}

/// A rating against the one that is asked for.
pub(super) fn at_least(rating: &str, wanted: &str) -> Tight {
    let (rating, wanted) = (plain(rating), plain(wanted));
    if rating == wanted {
        return Tight::Same;
    }
    match (digits(&rating), digits(&wanted)) {
        (Some(has), Some(asks)) => Tight::ByDigits(has.0 >= asks.0 && has.1 >= asks.1),
        _ => Tight::ByTypes,
    }
}

/// Small differences of writing aside: `NEMA 4X` and `nema type 4x` are one.
fn plain(rating: &str) -> String {
    rating
        .to_uppercase()
        .replace("TYPE", "")
        .chars()
        .filter(char::is_ascii_alphanumeric)
        .collect()
}

/// The two digits behind `IP`; an `X` is a zero.
fn digits(rating: &str) -> Option<(u32, u32)> {
    let mut letters = rating.strip_prefix("IP")?.chars();
    let mut next = || match letters.next()? {
        'X' => Some(0),
        letter => letter.to_digit(10),
    };
    Some((next()?, next()?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digits_compare_one_by_one_and_types_do_not() {
        assert_eq!(at_least("NEMA 4X", "nema type 4x"), Tight::Same);
        assert_eq!(at_least("IP66", "IP65"), Tight::ByDigits(true));
        assert_eq!(at_least("IP54", "IP65"), Tight::ByDigits(false));
        assert_eq!(at_least("IP68", "IPX5"), Tight::ByDigits(true));
        assert_eq!(at_least("NEMA 4X", "NEMA 3R"), Tight::ByTypes);
        assert_eq!(at_least("IP66", "NEMA 4X"), Tight::ByTypes);
    }
}
