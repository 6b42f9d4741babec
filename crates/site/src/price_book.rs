//! The price book that a site names, with what was read from it.

use crate::Text;
use crate::model::{PriceBook, Site};
use crate::overlay::{Layers, TableIn};
use crate::problem::{Code, Problem};
use crate::reader::{Node, Reader};
use crate::record::{Field, Record as _};
use crate::schema::Definitions;
use crate::stated::Statement;
use std::sync::Arc;
use toml::de::{DeTable, DeValue};

/// A price book that a site names, and what stands in it when it could be read.
#[derive(Debug, Clone)]
pub struct PriceBookFile {
    /// Its name, as seen from the site file.
    pub name: Text,
    /// What stands in it.
    pub book: Option<Arc<PriceBook>>,
}

impl Field for PriceBookFile {
    fn read<'t>(reader: &mut Reader<'t>, node: &Node<'t>) -> Option<Self> {
        Text::read(reader, node).map(|name| Self { name, book: None })
    }

    fn state(&self, key: &str, statement: &mut Statement) {
        self.name.state(key, statement);
    }

    fn is_same_but_for(&self, later: &Self, changed: &mut crate::Changed) -> bool {
        let same = match (&self.book, &later.book) {
            (Some(was), Some(is)) => Arc::ptr_eq(was, is) || was.is_same_but_for(is, changed),
            (was, is) => was.is_none() && is.is_none(),
        };
        same && self.name == later.name
    }

    fn schema(definitions: &mut Definitions) -> serde_json::Value {
        Text::schema(definitions)
    }
}

/// The name of the price book that a site file asks for.
pub(crate) fn named(site: &DeTable<'_>) -> Option<String> {
    let about = site.get("site")?.get_ref().as_table()?;
    let name = about.get("price_book").map(toml::Spanned::get_ref)?;
    DeValue::as_str(name).map(str::to_owned)
}

/// A file that was given is the one that is asked for.
pub(crate) fn is(given: &str, wanted: &str) -> bool {
    given == wanted || given.ends_with(&format!("/{wanted}"))
}

/// Reads the price book from its own tables; `reader` reads files for their own sake.
pub(crate) fn read<'t>(
    reader: &mut Reader<'t>,
    file: usize,
    table: &'t DeTable<'t>,
) -> Option<PriceBook> {
    let book = PriceBook::read_record(reader, &Layers::root(TableIn { file, table }))?;
    let named = book.item.iter().map(|it| (&it.id, &it.origin));
    let named: Vec<_> = named
        .chain(book.tool.iter().map(|it| (&it.id, &it.origin)))
        .collect();
    for (at, (id, origin)) in named.iter().enumerate() {
        let place = origin
            .field("id")
            .filter(|_| named[..at].iter().any(|(other, _)| other == id));
        if let Some(place) = place {
            let what = format!("two entries of the price book are called `{id}`");
            let problem =
                Problem::wrong(&reader.sources[file], &place.span, Code::DoubledPart, what)
                    .expected("a name that no other entry of the price book has");
            reader.report(problem);
        }
    }
    Some(book)
}

/// Puts the price book into the site that names it; a problem where it names one that is not there.
pub(crate) fn attach(
    reader: &mut Reader<'_>,
    site: Option<&mut Site>,
    book: Option<Arc<PriceBook>>,
) {
    let Some(about) = site.map(|site| &mut site.site) else {
        return;
    };
    let (Some(named), Some(place)) = (about.price_book.as_mut(), about.origin.field("price_book"))
    else {
        return;
    };
    let is_given = |source: &crate::source::Source| is(&source.name, named.name.as_str());
    if reader.sources.iter().skip(1).any(is_given) {
        named.book = book;
        return;
    }
    let what = format!(
        "there is no price book `{}` beside the site file",
        named.name
    );
    let problem = Problem::wrong(&reader.sources[0], &place.span, Code::NoPartsFile, what)
        .path(about.origin.path_of("price_book"))
        .expected("the name of a file with prices, rates, stock, tools and hours worked, as seen from the site file");
    reader.report(problem);
}
