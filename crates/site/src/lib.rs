//! The words for a site: its model, reading it strictly from TOML, writing it back, and every problem with its place.

#[macro_use]
mod record;
#[macro_use]
mod word;
mod address;
mod changed;
mod choices;
mod date;
mod edit;
mod exchange;
mod field;
mod form;
mod id;
mod model;
mod money;
mod nearest;
mod origin;
mod overlay;
mod percent;
mod position;
mod price;
mod price_book;
mod problem;
mod read;
mod reader;
mod reference;
mod removal;
mod schema;
mod section;
mod signed;
mod source;
mod stated;
mod syntax;
mod text;
mod unknown;
mod validate;
mod value;
mod weather;

pub use address::{Address, AddressBlock, AddressRange};
pub use changed::Changed;
pub use choices::{Brought, PartChoice, parts_for};
pub use date::Date;
pub use edit::{Understood, Written, add_record, remove, set_value, understood, write_value};
pub use exchange::{Exchange, part_names};
pub use form::{FieldKind, Form, FormField, FormRecord, form, records};
pub use id::Id;
pub use model::*;
pub use origin::{Origin, Place};
pub use percent::Percent;
pub use position::Position;
pub use price::Price;
pub use price_book::PriceBookFile;
pub use problem::{Also, Code, Excerpt, Problem, Problems, Severity};
pub use read::{
    KnownParts, Loaded, files_named, files_named_for, load, load_exchanged, load_knowing,
};
pub use removal::{LetGo, Removal, removal};
pub use schema::{parts_schema, price_book_schema, schema};
pub use section::{Section, SectionShape};
pub use signed::Signed;
pub use source::SourceFile;
pub use stated::Stated;
pub use text::Text;
pub use weather::{WeatherFile, WeatherHour, WeatherYear, is_weather_file};
