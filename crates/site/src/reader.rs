//! Walks the tables of the files, and collects problems, names and references on the way.

use crate::Id;
use crate::exchange::Exchange;
use crate::origin::{Origin, Place, join};
use crate::overlay::{Layers, Parts};
use crate::problem::{Code, Problem, Problems};
use crate::record::{Field, Key};
use crate::source::Source;
use std::collections::BTreeSet;
use std::ops::Range;
use std::rc::Rc;
use toml::Spanned;
use toml::de::DeValue;

/// A value in a file, with the key that holds it.
#[derive(Clone)]
pub(crate) struct Node<'t> {
    /// Number of the file among the sources.
    pub(crate) file: usize,
    /// The value.
    pub(crate) value: &'t Spanned<DeValue<'t>>,
    /// Table that holds the key, such as `device`.
    pub(crate) owner: &'static str,
    /// The key.
    pub(crate) key: &'static str,
    /// The record that holds the key, as a person would say it.
    pub(crate) path: Rc<str>,
    /// The value is one of a list.
    pub(crate) in_list: bool,
    /// Which of the list, from zero.
    pub(crate) index: Option<usize>,
    /// It was taken from a parts file.
    pub(crate) from_part: bool,
}

impl<'t> Node<'t> {
    /// The value of a key that stands in no table.
    pub(crate) fn top(
        file: usize,
        value: &'t Spanned<DeValue<'t>>,
        key: &'static str,
        from_part: bool,
    ) -> Self {
        Self {
            file,
            value,
            owner: "",
            key,
            path: "".into(),
            in_list: false,
            index: None,
            from_part,
        }
    }

    /// The header under which the value would be a table: `gate.leaf`.
    pub(crate) fn header(&self) -> String {
        if self.owner.is_empty() {
            self.key.to_owned()
        } else {
            format!("{}.{}", self.owner, self.key)
        }
    }

    /// The text, if the value is one.
    pub(crate) fn text(&self) -> Option<&'t str> {
        self.value.get_ref().as_str()
    }

    /// The key as a person reads it.
    pub(crate) fn key_in_words(&self) -> String {
        format!("`{}`", self.key)
    }
}

/// A name that a record gives itself.
pub(crate) struct Named {
    pub(crate) owner: &'static str,
    pub(crate) id: Id,
    pub(crate) place: Place,
    pub(crate) path: String,
}

/// A name by which a key refers to something.
pub(crate) struct Reference {
    pub(crate) owner: &'static str,
    pub(crate) key: &'static str,
    pub(crate) id: Id,
    pub(crate) place: Place,
    pub(crate) path: String,
}

/// What reading needs and what it finds.
pub(crate) struct Reader<'t> {
    pub(crate) sources: &'t [Source],
    parts: &'t Parts<'t>,
    /// Lines, by file, that are not TOML: what else is wrong there follows from that.
    spoiled: &'t BTreeSet<(usize, usize)>,
    reads_parts: bool,
    /// Another part in place of one that is there.
    exchange: Option<&'t Exchange>,
    pub(crate) problems: Problems,
    pub(crate) named: Vec<Named>,
    pub(crate) references: Vec<Reference>,
}

impl<'t> Reader<'t> {
    /// A reader of these files; `spoiled` are the lines, by file, that are not TOML.
    pub(crate) fn new(
        sources: &'t [Source],
        parts: &'t Parts<'t>,
        spoiled: &'t BTreeSet<(usize, usize)>,
    ) -> Self {
        Self {
            sources,
            parts,
            spoiled,
            reads_parts: false,
            exchange: None,
            problems: Problems::default(),
            named: Vec::new(),
            references: Vec::new(),
        }
    }

    /// From now on entries of parts files are read for their own sake.
    pub(crate) fn begin_parts(&mut self) {
        self.reads_parts = true;
    }

    /// Entries of parts files are being read for their own sake.
    pub(crate) fn reads_parts(&self) -> bool {
        self.reads_parts
    }

    /// From now on one thing is read as if it were another part.
    pub(crate) fn exchange(&mut self, exchange: Option<&'t Exchange>) {
        self.exchange = exchange;
    }

    /// The exchange, if it is of the thing with this path.
    pub(crate) fn exchange_at(&self, path: &str) -> Option<&'t Exchange> {
        self.exchange.filter(|exchange| exchange.path == path)
    }

    /// The entries of the parts files.
    pub(crate) fn parts(&self) -> &'t Parts<'t> {
        self.parts
    }

    /// Looks at a record as a whole: which keys it has, and where.
    pub(crate) fn open(&mut self, layers: &Layers<'t>, keys: &'static [Key]) -> Origin {
        self.refuse_unknown_keys(layers, keys);
        let fields = keys
            .iter()
            .filter_map(|key| {
                let (table, value, from_part) = layers.find(key.name)?;
                Some((key.name, self.place(table.file, &value.span(), from_part)))
            })
            .collect();
        let place = self.place(layers.own.file, &layers.span, layers.from_part);
        Origin::new(place, layers.path.to_string(), fields)
    }

    /// Reads one key of a record.
    pub(crate) fn field<T: Field>(&mut self, layers: &Layers<'t>, key: &'static str) -> Option<T> {
        let Some((table, value, from_part)) = layers.find(key) else {
            let absent = T::absent();
            if absent.is_none() && !layers.may_lack_keys {
                self.report_missing::<T>(layers, key);
            }
            return absent;
        };
        let node = Node {
            file: table.file,
            value,
            owner: layers.owner,
            key,
            path: layers.path.clone(),
            in_list: false,
            index: None,
            from_part,
        };
        T::read(self, &node)
    }
}

/// What reading finds out and reports.
impl Reader<'_> {
    /// The place of some bytes of a file.
    pub(crate) fn place(&self, file: usize, span: &Range<usize>, from_part: bool) -> Place {
        self.sources[file].place(span, from_part)
    }

    /// Begins a problem with the value at `node`.
    pub(crate) fn problem(&self, node: &Node<'_>, code: Code, what: String) -> Problem {
        self.problem_at(node, &node.value.span(), code, what)
    }

    /// Begins a problem with some bytes of the text at `node`, as far as its quotes hold the text as it is.
    pub(crate) fn problem_inside(
        &self,
        node: &Node<'_>,
        inside: &Range<usize>,
        code: Code,
        what: String,
    ) -> Problem {
        let whole = node.value.span();
        let raw = self.sources[node.file]
            .text
            .get(whole.clone())
            .unwrap_or_default();
        let plain = node
            .value
            .get_ref()
            .as_str()
            .is_some_and(|text| raw.get(1..raw.len().saturating_sub(1)) == Some(text));
        let span = if plain {
            whole.start + 1 + inside.start..whole.start + 1 + inside.end
        } else {
            whole
        };
        self.problem_at(node, &span, code, what)
    }

    /// Begins a problem with some bytes of the file of `node`.
    fn problem_at(
        &self,
        node: &Node<'_>,
        span: &Range<usize>,
        code: Code,
        what: String,
    ) -> Problem {
        Problem::wrong(&self.sources[node.file], span, code, what).path(join(&node.path, node.key))
    }

    /// Keeps a problem, unless it follows from one that is known already.
    pub(crate) fn report(&mut self, problem: Problem) {
        let file = self
            .sources
            .iter()
            .position(|source| *source.name == *problem.file);
        let spoiled = file.is_some_and(|file| self.spoiled.contains(&(file, problem.line)));
        let reported_with_the_parts = !self.reads_parts && file.is_some_and(|file| file > 0);
        if !spoiled && !reported_with_the_parts {
            self.problems.push(problem);
        }
    }

    /// Reports a value of another type than text in quotes.
    pub(crate) fn refuse_type(&mut self, node: &Node<'_>, expected: &str, example: &str) {
        let what = format!(
            "{} is {}, not text in quotes",
            node.key_in_words(),
            type_in_words(node.value.get_ref())
        );
        let write = match node.value.get_ref() {
            DeValue::Integer(number) => format!("{} = \"{number}\"", node.key),
            _ => format!("{} = {example}", node.key),
        };
        let problem = self
            .problem(node, Code::WrongType, what)
            .expected(expected)
            .write(write);
        self.report(problem);
    }

    /// Keeps a name: either the record's own, or a reference to another.
    pub(crate) fn note_id(&mut self, node: &Node<'_>, id: &Id) {
        if self.reads_parts || node.key == "part" {
            return;
        }
        let place = self.place(node.file, &node.value.span(), node.from_part);
        let (owner, key, id) = (node.owner, node.key, id.clone());
        if key == "id" {
            self.named.push(Named {
                owner,
                id,
                place,
                path: node.path.to_string(),
            });
        } else {
            self.references.push(Reference {
                owner,
                key,
                id,
                place,
                path: node.path.to_string(),
            });
        }
    }

    /// Reports that a key that must be there is not.
    fn report_missing<T: Field>(&mut self, layers: &Layers<'_>, key: &'static str) {
        let (what, write) = if layers.path.is_empty() {
            (format!("the site has no table `{key}`"), format!("[{key}]"))
        } else {
            (
                format!("{} has no `{key}`", layers.path),
                format!("{key} = {}", crate::schema::example::<T>()),
            )
        };
        let problem = Problem::wrong(
            &self.sources[layers.own.file],
            &layers.span,
            Code::MissingKey,
            what,
        )
        .path(join(&layers.path, key))
        .write(write);
        self.report(problem);
    }
}

/// The type of a value, as a person would say it.
fn type_in_words(value: &DeValue<'_>) -> &'static str {
    match value {
        DeValue::String(_) => "text",
        DeValue::Integer(_) | DeValue::Float(_) => "a bare number",
        DeValue::Boolean(_) => "true or false",
        DeValue::Datetime(_) => "a day or a time",
        DeValue::Array(_) => "a list",
        DeValue::Table(_) => "a table",
    }
}
