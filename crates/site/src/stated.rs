//! What a record states, key by key: for papers that list every input with how it is known.

use crate::record::Field;
use quantity::{Known, UnitSystem};

/// A key that a record states.
#[derive(Debug, Clone, PartialEq)]
pub struct Stated {
    /// The key in words; a table inside leads: `anchor 1 · row spacing`.
    pub key: String,
    /// Its value, printed with unit and tolerance.
    pub text: String,
    /// How it is known.
    pub known: Known,
}

/// Where the keys of a record are gathered.
pub(crate) struct Statement {
    units: UnitSystem,
    keys: Vec<Stated>,
}

impl Statement {
    /// Nothing yet, to be printed in these units.
    pub(crate) fn new(units: UnitSystem) -> Self {
        Self {
            units,
            keys: Vec::new(),
        }
    }

    /// The units to print in.
    pub(crate) fn units(&self) -> UnitSystem {
        self.units
    }

    /// What was gathered.
    pub(crate) fn keys(self) -> Vec<Stated> {
        self.keys
    }

    /// Adds a value and how it is known.
    pub(crate) fn add(&mut self, key: &str, text: impl std::fmt::Display, known: Known) {
        self.keys.push(Stated {
            key: key.to_owned(),
            text: text.to_string(),
            known,
        });
    }

    /// Adds the field of a record; what comes from an entry of a parts file is from a data sheet.
    pub(crate) fn add_field(
        &mut self,
        (prefix, name): (&str, &str),
        field: &impl Field,
        from_part: bool,
    ) {
        let first = self.keys.len();
        let name = name.replace('_', " ");
        let key = if prefix.is_empty() {
            name
        } else {
            format!("{prefix} · {name}")
        };
        field.state(&key, self);
        if from_part {
            for stated in self.keys.iter_mut().skip(first) {
                if stated.known == Known::Stated {
                    stated.known = Known::DataSheet;
                }
            }
        }
    }

    /// Adds a list: tables one by one, plain values on one line.
    pub(crate) fn add_list<T: Field>(&mut self, key: &str, list: &[T]) {
        if T::keys().is_some() {
            for (index, item) in list.iter().enumerate() {
                item.state(&format!("{key} {}", index + 1), self);
            }
            return;
        }
        let mut each = Self::new(self.units);
        for item in list {
            item.state(key, &mut each);
        }
        let Some(first) = each.keys.first() else {
            return;
        };
        let known = first.known;
        let texts: Vec<&str> = each.keys.iter().map(|one| one.text.as_str()).collect();
        self.add(key, texts.join("; "), known);
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test may stop at the first surprise")]
    use crate::{SourceFile, load};
    use quantity::{Known, UnitSystem};

    #[test]
    fn every_stated_key_comes_with_how_it_is_known() {
        let text = "[site]\nname = \"Yard\"\ncode_basis = \"us\"\n[[foundation]]\nid = \"pad\"\nlength = \"30 in ± 1/2 in, measured\"\ndepth = \"40 in\"\nheld_at_grade = true\n[[foundation.anchor]]\nholds = \"operator\"\ncleaning = [\"blow\", \"brush\"]\nrow_spacing = \"8 in, data sheet\"\n";
        let file = SourceFile {
            name: "site.toml".to_owned(),
            text: text.to_owned(),
        };
        let site = load(file, Vec::new()).site.unwrap();
        let stated = site.foundation[0].stated(UnitSystem::UsCustomary);
        let found = |key: &str| stated.iter().find(|one| one.key == key).unwrap();
        assert_eq!(found("length").known, Known::Measured);
        assert_eq!(found("depth").text, "3 ft 4 in");
        assert_eq!(found("held at grade").text, "yes");
        assert_eq!(found("anchor 1 · row spacing").known, Known::DataSheet);
        assert_eq!(found("anchor 1 · cleaning").text, "blow; brush");
        assert!(stated.iter().all(|one| one.key != "width"));
    }
}
