//! The ways of an offer as lines, with what stops it.

use design::offer::{Costs, Offered, Way};
use site::Price;
use std::fmt::{self, Display};

/// The figures of an offer, for the owner of the business.
pub(crate) fn priced(found: &Offered) -> impl Display + '_ {
    Priced(found)
}

struct Priced<'a>(&'a Offered);

impl Display for Priced<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for way in &self.0.ways {
            shown(f, way)?;
        }
        if self.0.stopped_by.is_empty() {
            return Ok(());
        }
        writeln!(f, "The offer waits for these:")?;
        for stop in &self.0.stopped_by {
            writeln!(f, "  {}", stop.what)?;
            writeln!(f, "       {}:{}", stop.file, stop.line)?;
            writeln!(f, "       write   {}", stop.write)?;
        }
        Ok(())
    }
}

/// A label, and how it is read off the costs.
type Sum = (&'static str, fn(&Costs) -> Price);

const SUMS: [Sum; 14] = [
    ("material", |it| it.material),
    ("own hours", |it| it.labor),
    ("helper", |it| it.helper),
    ("hours on the road", |it| it.road),
    ("driving", |it| it.driving),
    ("hire", |it| it.hire),
    ("paid to others", |it| it.fees),
    ("tax on what is bought", |it| it.tax_on_bought),
    ("direct cost", |it| it.direct),
    ("risk", |it| it.risk),
    ("overhead", |it| it.overhead),
    ("all cost", |it| it.cost),
    ("profit wanted", |it| it.profit),
    ("least price", |it| it.least),
];

fn shown(f: &mut fmt::Formatter<'_>, way: &Way) -> fmt::Result {
    writeln!(f, "{} ({})", way.name, way.id)?;
    let mut line = |label: &str, price: Option<Price>| match price {
        Some(price) => writeln!(f, "  {label:<24}{:>18}", price.to_string()),
        None => Ok(()),
    };
    for (label, of) in SUMS {
        line(label, way.costs.as_ref().map(of))?;
    }
    line("price", way.price)?;
    line("over the least", way.spare)?;
    line("SHORT of the least by", way.short)?;
    line("tax on the price", way.tax)?;
    line("customer pays", way.total)?;
    for paid in &way.payments {
        line(&format!("{}, {}", paid.share, paid.when), Some(paid.sum))?;
    }
    writeln!(f)
}
