//! The words for a site: its model, reading it strictly from TOML, writing it back, and every problem with its place.

#[macro_use]
mod record;
mod date;
mod edit;
mod id;
mod model;
mod overlay;
mod position;
mod problem;
mod read;
mod schema;
mod signed;
mod text;
mod validate;

pub use date::Date;
pub use edit::set_value;
pub use id::Id;
pub use model::*;
pub use position::Position;
pub use problem::{Problem, Problems};
pub use read::{Loaded, SourceFile, load, parts_named};
pub use record::Origin;
pub use schema::schema;
pub use signed::Signed;
pub use text::Text;
