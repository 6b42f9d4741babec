//! Names of jobs: the names of their folders.

use crate::serve::refusal::Refusal;

/// Characters that a name may have.
const LONGEST: usize = 80;

/// A folder of this name can be a job: letters, digits, spaces, `-`, `_` and `.`, beginning with a letter or a digit.
pub(crate) fn is_name(name: &str) -> bool {
    name.chars().next().is_some_and(char::is_alphanumeric)
        && name.chars().count() <= LONGEST
        && !name.ends_with(['.', ' '])
        && name
            .chars()
            .all(|sign| sign.is_alphanumeric() || matches!(sign, ' ' | '-' | '_' | '.'))
}

/// The name, if it can be one.
pub(crate) fn checked(name: &str) -> Result<&str, Refusal> {
    if is_name(name) {
        Ok(name)
    } else {
        Err(
            Refusal::unusable("This cannot be the name of a job.", "Choose another name.")
                .at("name")
                .expected("1 to 80 letters, digits, spaces, - and _, beginning with a letter or a digit, such as north-yard"),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::is_name;

    #[test]
    fn no_name_leads_out_of_the_folder() {
        for name in ["boatyard", "Hof 3", "north_yard-2", "v1.2", "Zäune"] {
            assert!(is_name(name), "{name}");
        }
        for name in [
            "", ".", "..", "../x", "a/b", "a\\b", ".hidden", "-x", "a\0b", "a\nb", "x.", "x ", "C:",
        ] {
            assert!(!is_name(name), "{name:?}");
        }
        assert!(!is_name(&"x".repeat(81)));
    }
}
