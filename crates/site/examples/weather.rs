//! Reads a weather file through a site that names it and prints its hours, for cross-checks.

#![allow(
    clippy::print_stdout,
    clippy::unwrap_used,
    reason = "a program for the terminal"
)]

use quantity::Quantity as _;
use site::{SourceFile, load};

fn main() {
    let path = std::env::args().nth(1).unwrap();
    let name = path.rsplit('/').next().unwrap().to_owned();
    let text = format!(
        "[site]\nname = \"Test yard\"\ncode_basis = \"eu\"\n[climate]\nweather_file = \"{name}\"\n"
    );
    let main = SourceFile {
        name: "site.toml".to_owned(),
        text,
    };
    let weather = SourceFile {
        name,
        text: std::fs::read_to_string(&path).unwrap(),
    };
    let loaded = load(main, vec![weather]);
    print!("{}", loaded.problems);
    let climate = loaded.site.unwrap().climate.unwrap();
    let Some(year) = climate.weather_file.unwrap().year else {
        std::process::exit(1);
    };
    println!("latitude,longitude,ahead,air,dew_point,level,direct,diffuse");
    for hour in &year.hours {
        let values = [
            year.latitude.base().to_degrees(),
            year.longitude.base().to_degrees(),
            year.ahead.base() / 3600.0,
            hour.air.base() - 273.15,
            hour.dew_point.base() - 273.15,
            hour.level.base(),
            hour.direct.base(),
            hour.diffuse.base(),
        ];
        println!("{}", values.map(|value| format!("{value:.6}")).join(","));
    }
}
