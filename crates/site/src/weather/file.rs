//! The weather file that a site names, with what was read from it.

use super::{WeatherYear, Wrong, is_weather_file, read};
use crate::Text;
use crate::model::Site;
use crate::problem::{Code, Problem};
use crate::reader::{Node, Reader};
use crate::record::Field;
use crate::schema::Definitions;
use crate::source::SourceFile;
use crate::stated::Statement;
use std::sync::Arc;

/// A weather file that a site names, and the year in it when it could be read.
#[derive(Debug, Clone, PartialEq)]
pub struct WeatherFile {
    /// Its name, as seen from the site file.
    pub name: Text,
    /// The year in it.
    pub year: Option<Arc<WeatherYear>>,
}

impl Field for WeatherFile {
    fn read<'t>(reader: &mut Reader<'t>, node: &Node<'t>) -> Option<Self> {
        Text::read(reader, node).map(|name| Self { name, year: None })
    }

    fn state(&self, key: &str, statement: &mut Statement) {
        self.name.state(key, statement);
    }

    fn is_same_but_for(&self, later: &Self, _: &mut crate::Changed) -> bool {
        self == later
    }

    fn schema(definitions: &mut Definitions) -> serde_json::Value {
        Text::schema(definitions)
    }
}

/// A file that is given beside the site file is a weather file, not a parts file.
pub(crate) fn is_weather(file: &SourceFile) -> bool {
    is_weather_file(&file.name)
}

/// A weather file that was gone through, and what came of it.
#[derive(Debug)]
pub(crate) struct KnownWeather {
    file: SourceFile,
    year: Result<Arc<WeatherYear>, Wrong>,
}

/// Reads the weather file that the site names, out of those that were given; one that is known is not gone through again.
pub(crate) fn attach(
    reader: &mut Reader<'_>,
    site: Option<&mut Site>,
    files: Vec<SourceFile>,
    known: &mut Option<KnownWeather>,
) {
    let Some(climate) = site.and_then(|site| site.climate.as_mut()) else {
        return;
    };
    let Some(named) = climate.weather_file.as_mut() else {
        return;
    };
    let wanted = named.name.as_str();
    let given = files
        .into_iter()
        .find(|file| file.name == wanted || file.name.ends_with(&format!("/{wanted}")));
    let (code, what) = match given.map(|file| &known_or_read(known, file).year) {
        Some(Ok(year)) => {
            named.year = Some(year.clone());
            return;
        }
        Some(Err(wrong)) => (
            Code::UnreadableWeather,
            format!("the weather file `{wanted}` cannot be used: {wrong}"),
        ),
        None => (
            Code::NoWeatherFile,
            format!("there is no weather file `{wanted}` beside the site file"),
        ),
    };
    let Some(place) = climate.origin.field("weather_file") else {
        return;
    };
    let problem = Problem::wrong(&reader.sources[0], &place.span, code, what)
        .path(climate.origin.path_of("weather_file"))
        .expected("a file of 8,760 hours in one of the formats EPW (.epw) or TMY3 (.csv)");
    reader.report(problem);
}

fn known_or_read(known: &mut Option<KnownWeather>, file: SourceFile) -> &KnownWeather {
    let known_before = known.take().filter(|known| known.file == file);
    known.insert(known_before.unwrap_or_else(|| KnownWeather {
        year: read(&file.name, &file.text).map(Arc::new),
        file,
    }))
}
