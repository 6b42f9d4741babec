//! Reads a site from its texts: everything that can be read, and every problem with its place.

use crate::exchange::Exchange;
use crate::model::{PartsFile, PriceBook, Site};
use crate::overlay::{Layers, PART_KINDS, Parts, TableIn};
use crate::problem::{Code, Problem, Problems};
use crate::reader::{Node, Reader};
use crate::record::Record;
use crate::source::{Source, SourceFile};
use crate::weather::KnownWeather;
use crate::{price_book, reference, syntax, validate, weather};
use std::collections::BTreeSet;
use std::sync::Arc;
use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// What came out of reading a site.
#[derive(Debug, Clone)]
pub struct Loaded {
    /// The site, without what could not be read; nothing when its name or its code basis could not be read.
    pub site: Option<Site>,
    /// Everything that is wrong or doubtful, in the order of its places.
    pub problems: Problems,
}

/// Stands in for a site table that could not be read, so that the rest is looked at all the same.
const STAND_IN: &str = "[site]\nname = \"site\"\ncode_basis = \"us\"\n";

/// Reads a site file together with its parts files and its weather file.
///
/// A value that is wrong counts as missing, a record that lacks a key that must be there is left out, and everything
/// else is there. The problems are complete: mending them all gives a site without problems.
pub fn load(main: SourceFile, parts: Vec<SourceFile>) -> Loaded {
    load_with(main, parts, None, &mut KnownParts::default())
}

/// What was found in parts files, a price book and a weather file, for the next reading of a site with the same ones.
#[derive(Debug, Default)]
pub struct KnownParts {
    files: Vec<SourceFile>,
    book_at: Option<usize>,
    problems: Problems,
    book: Option<Arc<PriceBook>>,
    weather: Option<KnownWeather>,
    named: Vec<String>,
}

impl KnownParts {
    /// What [`files_named`] says of the site file that was read last.
    pub fn files_named(&self) -> &[String] {
        &self.named
    }
}

/// Reads a site as [`load`] does; parts files, price book and weather file of the reading before are not gone through again.
pub fn load_knowing(main: SourceFile, parts: Vec<SourceFile>, known: &mut KnownParts) -> Loaded {
    load_with(main, parts, None, known)
}

/// Reads a site as [`load`] does, with another part in place of one that is there.
pub fn load_exchanged(main: SourceFile, parts: Vec<SourceFile>, exchange: &Exchange) -> Loaded {
    load_with(main, parts, Some(exchange), &mut KnownParts::default())
}

fn load_with(
    main: SourceFile,
    parts: Vec<SourceFile>,
    exchange: Option<&Exchange>,
    known: &mut KnownParts,
) -> Loaded {
    let (weather, parts): (Vec<_>, Vec<_>) = parts.into_iter().partition(weather::is_weather);
    let is_known = !known.files.is_empty() && parts == known.files;
    if !is_known {
        known.files.clone_from(&parts);
    }
    let files = std::iter::once(main).chain(parts);
    let sources: Vec<Source> = files.map(Source::new).collect();
    let (mut trees, mut problems, spoiled) = parse(&sources);
    known.named = trees.first().map_or_else(Vec::new, |tree| {
        let named = named_by(tree.get_ref()).into_iter();
        named.map(|(name, _)| name).collect()
    });
    let (book, book_at) = take_price_book(&sources, &mut trees).unzip();
    let is_known = is_known && known.book_at == book_at;
    known.book_at = book_at;
    let (trees, book) = (trees.as_slice(), book.as_ref());
    let entries = part_entries(&sources, trees, &mut problems);
    if !is_known {
        let mut reader = Reader::new(&sources, &entries, &spoiled);
        read_parts(&mut reader, trees);
        let book = book.zip(book_at);
        known.book = book
            .and_then(|(tree, at)| price_book::read(&mut reader, at, tree.get_ref()))
            .map(Arc::new);
        known.problems = reader.problems;
    }
    problems.append(known.problems.clone());
    let book = known.book.clone();

    let mut reader = Reader::new(&sources, &entries, &spoiled);
    reader.exchange(exchange);
    let mut site = trees.first().and_then(|tree| read_site(&mut reader, tree));
    weather::attach(&mut reader, site.as_mut(), weather, &mut known.weather);
    price_book::attach(&mut reader, site.as_mut(), book);
    check_parts_given(&mut reader, site.as_ref());
    reference::check(&mut reader);
    problems.append(reader.problems);
    problems.append(validate_as_far_as_possible(
        &sources,
        &entries,
        &spoiled,
        trees,
        site.as_ref(),
    ));
    problems.sort(&sources);
    Loaded { site, problems }
}

/// The tables of the price book that the main file names, and its place among the files; empty ones are left in their place,
/// so that it is not taken for a parts file.
pub(crate) fn take_price_book<'t>(
    sources: &[Source],
    trees: &mut [Tree<'t>],
) -> Option<(Tree<'t>, usize)> {
    let wanted = price_book::named(trees.first()?.get_ref())?;
    let mut beside = sources.iter().skip(1);
    let at = 1 + beside.position(|source| price_book::is(&source.name, &wanted))?;
    let empty = Spanned::new(0..0, DeTable::default());
    Some((std::mem::replace(trees.get_mut(at)?, empty), at))
}

/// Names of the parts files, the weather file and the price book that a site file asks for, as they are written there.
pub fn files_named(text: &str) -> Vec<String> {
    let named = files_named_for(text).into_iter();
    named.map(|(name, _)| name).collect()
}

/// The same, each with what it is for, in words.
pub fn files_named_for(text: &str) -> Vec<(String, &'static str)> {
    let (tree, _) = DeTable::parse_recoverable(text);
    named_by(tree.get_ref())
}

fn named_by(site: &DeTable<'_>) -> Vec<(String, &'static str)> {
    let value = |table: &str, key: &str| {
        let table = site.get(table)?.get_ref().as_table()?;
        table.get(key).map(toml::Spanned::get_ref)
    };
    let parts = value("site", "parts").and_then(DeValue::as_array);
    let parts = parts.iter().flat_map(|parts| parts.iter());
    let parts = parts.filter_map(|name| name.get_ref().as_str());
    let weather = value("climate", "weather_file").and_then(DeValue::as_str);
    let prices = price_book::named(site);
    parts
        .map(|name| (name.to_owned(), "what the things are bought as"))
        .chain(weather.map(|name| (name.to_owned(), "the weather of a year")))
        .chain(prices.map(|name| (name, "prices for the offer")))
        .collect()
}

pub(crate) type Tree<'t> = Spanned<DeTable<'t>>;

/// Parses all files; what is not TOML becomes a problem, one for each line, and those lines are remembered.
pub(crate) fn parse(sources: &[Source]) -> (Vec<Tree<'_>>, Problems, BTreeSet<(usize, usize)>) {
    let (mut trees, mut problems, mut spoiled) = (Vec::new(), Problems::default(), BTreeSet::new());
    for (file, source) in sources.iter().enumerate() {
        let (tree, errors) = DeTable::parse_recoverable(&source.text);
        for error in &errors {
            let problem = syntax::problem(source, error);
            if spoiled.insert((file, problem.line)) {
                problems.push(problem);
            }
        }
        trees.push(tree);
    }
    (trees, problems, spoiled)
}

/// The entries of the parts files; an entry whose name is taken is a problem.
pub(crate) fn part_entries<'t>(
    sources: &[Source],
    trees: &'t [Tree<'t>],
    problems: &mut Problems,
) -> Parts<'t> {
    let mut entries = Parts::new();
    for (file, tree) in trees.iter().enumerate().skip(1) {
        for kind in PART_KINDS {
            let array = tree
                .get_ref()
                .get(*kind)
                .and_then(|value| value.get_ref().as_array());
            for entry in array.iter().flat_map(|array| array.iter()) {
                let Some(table) = entry.get_ref().as_table() else {
                    continue;
                };
                let Some(id) = table.get("id") else { continue };
                let Some(name) = id.get_ref().as_str() else {
                    continue;
                };
                let taken = entries.insert((kind, name.to_owned()), TableIn { file, table });
                if taken.is_some() {
                    let what = format!("two parts of the same kind are called `{name}`");
                    let expected = "a name that no other part of its kind has";
                    problems.push(
                        Problem::wrong(&sources[file], &id.span(), Code::DoubledPart, what)
                            .expected(expected),
                    );
                }
            }
        }
    }
    entries
}

/// Reads every entry of the parts files for its own sake.
fn read_parts<'t>(reader: &mut Reader<'t>, trees: &'t [Tree<'t>]) {
    reader.begin_parts();
    for (file, tree) in trees.iter().enumerate().skip(1) {
        reader.refuse_unknown_part_kinds(file, tree.get_ref());
        for key in PartsFile::KEYS {
            if let Some(value) = tree.get_ref().get(key.name) {
                let node = Node::top(file, value, key.name, true);
                (key.check)(reader, &node);
            }
        }
    }
}

/// Reads the site from the tables of the main file.
fn read_site<'t>(reader: &mut Reader<'t>, tree: &'t Tree<'t>) -> Option<Site> {
    Site::read_record(
        reader,
        &Layers::root(TableIn {
            file: 0,
            table: tree.get_ref(),
        }),
    )
}

/// Reports parts files that the site asks for and nobody gave.
fn check_parts_given(reader: &mut Reader<'_>, site: Option<&Site>) {
    let Some(about) = site.map(|site| &site.site) else {
        return;
    };
    let Some(place) = about.origin.field("parts") else {
        return;
    };
    for name in &about.parts {
        let wanted = name.as_str();
        let is_it = |source: &Source| {
            *source.name == *wanted || source.name.ends_with(&format!("/{wanted}"))
        };
        if !reader.sources.iter().skip(1).any(is_it) {
            let problem = Problem::wrong(
                &reader.sources[0],
                &place.span,
                Code::NoPartsFile,
                format!("there is no parts file `{wanted}` beside the site file"),
            )
            .path(about.origin.path_of("parts"))
            .expected("names of files, as seen from the site file");
            reader.report(problem);
        }
    }
}

/// Asks whether the values can be so. Without a readable site table, one that stands in for it is used.
fn validate_as_far_as_possible(
    sources: &[Source],
    entries: &Parts<'_>,
    spoiled: &BTreeSet<(usize, usize)>,
    trees: &[Tree<'_>],
    site: Option<&Site>,
) -> Problems {
    if let Some(site) = site {
        return validate::validate(site, sources);
    }
    let (stand_in, _) = DeTable::parse_recoverable(STAND_IN);
    let (Some(tree), Some(about)) = (trees.first(), stand_in.get_ref().get("site")) else {
        return Problems::default();
    };
    let mut tree = tree.get_ref().clone();
    tree.insert(
        Spanned::new(0..0, "site".into()),
        Spanned::new(0..0, DeValue::clone(about.get_ref())),
    );
    let mut reader = Reader::new(sources, entries, spoiled);
    let site = Site::read_record(
        &mut reader,
        &Layers::root(TableIn {
            file: 0,
            table: &tree,
        }),
    );
    site.map(|site| validate::validate(&site, sources))
        .unwrap_or_default()
}
