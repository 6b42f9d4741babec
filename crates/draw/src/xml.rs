//! Pieces of XML: text that is safe inside it, ids, and numbers that never differ between machines.

/// Text as XML character data or attribute value; characters that XML 1.0 can't hold are left out.
pub(crate) fn escaped(words: &str) -> String {
    let mut safe = String::with_capacity(words.len());
    for character in words.chars().filter(|character| allowed(*character)) {
        match character {
            '&' => safe.push_str("&amp;"),
            '<' => safe.push_str("&lt;"),
            '>' => safe.push_str("&gt;"),
            '"' => safe.push_str("&quot;"),
            other => safe.push(other),
        }
    }
    safe
}

/// Whether XML 1.0 can hold a character.
fn allowed(character: char) -> bool {
    let plain =
        character >= ' ' && !matches!(character, '\u{7f}'..='\u{9f}' | '\u{fffe}' | '\u{ffff}');
    plain || matches!(character, '\t' | '\n')
}

/// Words as an id: small letters, digits and hyphens.
pub(crate) fn id(words: &str) -> String {
    let mut id = String::new();
    for character in words.chars().flat_map(char::to_lowercase) {
        if character.is_alphanumeric() {
            id.push(character);
        } else if !id.ends_with('-') && !id.is_empty() {
            id.push('-');
        }
    }
    id.trim_end_matches('-').to_owned()
}

/// A number with at most three decimals, without trailing zeros and never `-0`.
pub(crate) fn number(number: f64) -> String {
    let fixed = format!("{number:.3}");
    let short = fixed.trim_end_matches('0').trim_end_matches('.');
    if short == "-0" {
        "0".to_owned()
    } else {
        short.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_have_one_spelling() {
        let spelled = [0.0, -0.0, -0.0004, 1.5, 10.0, -2.34567].map(number);
        assert_eq!(spelled, ["0", "0", "0", "1.5", "10", "-2.346"]);
    }

    #[test]
    fn words_are_safe() {
        assert_eq!(escaped("a<b & \"c\"\u{1}"), "a&lt;b &amp; &quot;c&quot;");
        assert_eq!(id("Buried conduit, 1 1/2 in"), "buried-conduit-1-1-2-in");
    }
}
