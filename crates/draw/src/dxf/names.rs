//! Names and words as DXF allows them.

use crate::Layer;

/// The layers' names without the characters that DXF forbids, each different from the others.
pub(super) fn layer_names(layers: &[Layer]) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for layer in layers {
        let plain = layer_name(&layer.name);
        let mut name = plain.clone();
        let mut count = 2;
        while is_taken(&name, &names) {
            name = format!("{plain} {count}");
            count += 1;
        }
        names.push(name);
    }
    names
}

/// Whether a name is in use, whatever its case.
fn is_taken(name: &str, names: &[String]) -> bool {
    let same = |other: &str| other.to_lowercase() == name.to_lowercase();
    same("0") || same("defpoints") || names.iter().any(|other| same(other))
}

/// A name without forbidden characters.
fn layer_name(name: &str) -> String {
    let allowed: String = name
        .chars()
        .map(|character| {
            if is_forbidden(character) {
                ' '
            } else {
                character
            }
        })
        .take(200)
        .collect();
    let joined = allowed.split_whitespace().collect::<Vec<_>>().join(" ");
    if joined.is_empty() {
        "layer".to_owned()
    } else {
        joined
    }
}

/// Characters that a name may not hold.
fn is_forbidden(character: char) -> bool {
    "<>/\\\":;?*|,=`".contains(character) || character.is_control()
}

/// Words on one line, with nothing in them that a reader would take for a code.
pub(super) fn text(words: &str) -> String {
    let plain: String = words
        .chars()
        .filter(|character| !character.is_control())
        .collect();
    plain.replace("%%", "% %").replace('^', "^ ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::LineWeight;

    #[test]
    fn names_are_allowed_and_differ() {
        let layers = ["leaf, closed", "Leaf closed", "0", "*"]
            .map(|name| Layer::new(name, LineWeight::Fine));
        assert_eq!(
            layer_names(&layers),
            ["leaf closed", "Leaf closed 2", "0 2", "layer"]
        );
    }
}
