//! A record is a table of the site file: declared once, it becomes a Rust type, a strict reader and a part of the schema.

use crate::changed::Changed;
use crate::overlay::Layers;
use crate::reader::{Node, Reader};
use crate::schema::Definitions;
use crate::stated::Statement;

/// A table of the site file.
pub(crate) trait Record: Sized {
    /// Name of the Rust type, which is its name in the schema.
    const NAME: &'static str;
    /// What it is, as its doc comment says.
    const DOC: &'static [&'static str];
    /// Its keys, in the order of declaration.
    const KEYS: &'static [Key];
    /// Reads the table; nothing when a key that must be there is missing or wrong.
    fn read_record<'t>(reader: &mut Reader<'t>, layers: &Layers<'t>) -> Option<Self>;
    /// Adds what it states under a key.
    fn state_record(&self, key: &str, statement: &mut Statement);
    /// The same record later says the same, but for measured values and the lines on which it stands; what is different is put in.
    fn stands_but_for(&self, later: &Self, changed: &mut Changed) -> bool;
}

/// A type that a key of a record can hold.
pub(crate) trait Field: Sized {
    /// The key must be there.
    const REQUIRED: bool = true;
    /// Reads a value that is there; nothing, and a problem, when it is wrong.
    fn read<'t>(reader: &mut Reader<'t>, node: &Node<'t>) -> Option<Self>;
    /// What the field holds when the key is missing; nothing when the key must be there.
    fn absent() -> Option<Self> {
        None
    }
    /// The JSON Schema of the value.
    fn schema(definitions: &mut Definitions) -> serde_json::Value;
    /// Adds the value under its key, where there is one.
    fn state(&self, key: &str, statement: &mut Statement);
    /// The same value later says the same, but for measured values in it; those that are others are put in as they were.
    fn is_same_but_for(&self, later: &Self, changed: &mut Changed) -> bool;
    /// The keys of the record, or of each record in the list, that the value is.
    fn keys() -> Option<&'static [Key]> {
        None
    }
}

/// A key of a record.
pub(crate) struct Key {
    /// The key as it is written.
    pub(crate) name: &'static str,
    /// What it means, as its doc comment says.
    pub(crate) doc: &'static [&'static str],
    /// It must be there.
    pub(crate) required: bool,
    /// The JSON Schema of its value.
    pub(crate) schema: fn(&mut Definitions) -> serde_json::Value,
    /// Tries to read a value of it.
    pub(crate) check: for<'t> fn(&mut Reader<'t>, &Node<'t>),
    /// Reads a value of it and states what it says.
    pub(crate) state: for<'t> fn(&mut Reader<'t>, &Node<'t>, &mut Statement),
    /// The keys of the record that it holds.
    pub(crate) keys: fn() -> Option<&'static [Key]>,
}

impl Key {
    /// A key with the type of its field.
    pub(crate) const fn of<T: Field>(name: &'static str, doc: &'static [&'static str]) -> Self {
        Self {
            name,
            doc,
            required: T::REQUIRED,
            schema: T::schema,
            check: check::<T>,
            state: state::<T>,
            keys: T::keys,
        }
    }
}

/// Reads a value only for its problems.
fn check<'t, T: Field>(reader: &mut Reader<'t>, node: &Node<'t>) {
    let _ = T::read(reader, node);
}

/// Reads a value and states what it says, where it reads.
fn state<'t, T: Field>(reader: &mut Reader<'t>, node: &Node<'t>, statement: &mut Statement) {
    if let Some(value) = T::read(reader, node) {
        value.state(node.key, statement);
    }
}

/// Doc comment lines as one paragraph.
pub(crate) fn prose(doc: &[&str]) -> String {
    doc.iter()
        .map(|line| line.trim())
        .collect::<Vec<_>>()
        .join(" ")
        .trim()
        .to_owned()
}

/// Declares records: their documentation, keys and types.
macro_rules! record {
    ($(#[doc = $doc:literal])* pub struct $name:ident {
        $($(#[doc = $field_doc:literal])* $field:ident: $type:ty,)*
    }) => {
        $(#[doc = $doc])*
        #[derive(Debug, Clone)]
        pub struct $name {
            $($(#[doc = $field_doc])* pub $field: $type,)*
            /// Where it was written.
            pub origin: $crate::Origin,
        }

        impl $name {
            /// Every key that it states, with its value and how that is known.
            pub fn stated(&self, units: quantity::UnitSystem) -> Vec<$crate::Stated> {
                let mut statement = $crate::stated::Statement::new(units);
                $crate::record::Record::state_record(self, "", &mut statement);
                statement.keys()
            }
        }

        impl $crate::record::Record for $name {
            const NAME: &'static str = stringify!($name);
            const DOC: &'static [&'static str] = &[$($doc,)*];
            const KEYS: &'static [$crate::record::Key] =
                &[$($crate::record::Key::of::<$type>(stringify!($field), &[$($field_doc,)*]),)*];

            fn read_record<'t>(
                reader: &mut $crate::reader::Reader<'t>,
                layers: &$crate::overlay::Layers<'t>,
            ) -> Option<Self> {
                let origin = reader.open(layers, Self::KEYS);
                $(let $field = reader.field::<$type>(layers, stringify!($field));)*
                Some(Self { $($field: $field?,)* origin })
            }

            fn state_record(&self, key: &str, statement: &mut $crate::stated::Statement) {
                $(statement.add_field(
                    (key, stringify!($field)),
                    &self.$field,
                    self.origin.from_part(stringify!($field)),
                );)*
            }

            fn stands_but_for(&self, later: &Self, changed: &mut $crate::Changed) -> bool {
                self.origin.stands_alike(&later.origin, changed)
                    $(&& $crate::record::Field::is_same_but_for(&self.$field, &later.$field, changed))*
            }
        }
    };
}
