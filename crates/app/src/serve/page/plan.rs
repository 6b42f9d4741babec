//! The drawing of a gate on the page: from above or from the road, its layers, and what stands on it.

use super::calculations::capital;
use super::marked;
use crate::serve::drawn::Drawn;
use crate::serve::lock;
use crate::serve::store::Seen;
use design::zone;
use maud::{Markup, PreEscaped, html};
use papers::live::{self, Item, Live};
use quantity::units::angle::degree;
use quantity::{Quantity as _, Ratio, UnitSystem, Word as _};
use site::{DeviceKind, Gate, Site};
use std::collections::BTreeMap;
use std::sync::{Arc, Mutex};

/// What of a site is drawn.
#[derive(Debug, Clone, Default, serde::Deserialize)]
#[serde(default)]
pub(in crate::serve) struct Shown {
    /// The gate; the first where none is named.
    gate: String,
    /// `elevation`, or from above.
    view: String,
    /// How far it is open, from 0 to 1.
    open: Option<f64>,
}

impl Shown {
    fn gate<'s>(&self, site: &'s Site) -> Option<&'s Gate> {
        let named = site.gate.iter().find(|gate| gate.id == *self.gate.as_str());
        named.or(site.gate.first())
    }

    /// The same, with everything said that goes without saying.
    fn in_full(&self, site: Option<&Site>) -> Self {
        let gate = site.and_then(|site| self.gate(site));
        Self {
            gate: gate.map_or_else(String::new, |gate| gate.id.to_string()),
            view: (if self.is_elevation() {
                "elevation"
            } else {
                "plan"
            })
            .to_owned(),
            open: Some(self.open()),
        }
    }

    fn open(&self) -> f64 {
        let open = self.open.unwrap_or(0.0);
        if open.is_finite() {
            open.clamp(0.0, 1.0)
        } else {
            0.0
        }
    }

    fn is_elevation(&self) -> bool {
        self.view == "elevation"
    }
}

/// The drawings that pages look at. What a page looked at last of a job is drawn again as soon as a change is read, while that
/// goes to the disk.
#[derive(Default)]
pub(in crate::serve) struct Plans {
    drawn: Arc<Drawn<(String, Markup)>>,
    looked_at: Mutex<BTreeMap<String, Shown>>,
}

impl Plans {
    /// A drawing that a page looks at.
    pub(super) fn looked_at(&self, job: &str, seen: &Seen, shown: &Shown) -> Arc<(String, Markup)> {
        let shown = shown.in_full(seen.site.as_deref());
        let drawn = drawn_once(&self.drawn, (job, seen), &shown);
        lock(&self.looked_at).insert(job.to_owned(), shown);
        drawn
    }

    /// Draws a state that is about to be kept, for whoever looks at it next.
    pub(in crate::serve) fn foresee(&self, job: &str, seen: &Arc<Seen>) {
        let Some(shown) = lock(&self.looked_at).get(job).cloned() else {
            return;
        };
        let (drawn, job, seen) = (self.drawn.clone(), job.to_owned(), seen.clone());
        // Whoever looks draws by themselves where there is no thread to be had.
        let _ = std::thread::Builder::new()
            .name("drawing".to_owned())
            .spawn(move || drop(drawn_once(&drawn, (&job, &seen), &shown)));
    }
}

fn drawn_once(
    kept: &Drawn<(String, Markup)>,
    (job, seen): (&str, &Seen),
    shown: &Shown,
) -> Arc<(String, Markup)> {
    let name = format!("{job} {} {shown:?}", seen.revision);
    kept.under(&name, || drawn(job, seen.site.as_deref(), shown))
}

/// The drawing with all that belongs to it, and the digits that tell it from every other.
fn drawn(job: &str, site: Option<&Site>, shown: &Shown) -> (String, Markup) {
    let gate = site.and_then(|site| Some((site, shown.gate(site)?)));
    let inside = html! {
        @match gate {
            Some((site, gate)) => (of_gate(job, (site, gate), shown)),
            None => p class="waiting" { "There is no gate in the site file that can be drawn. Add one under Edit." },
        }
    };
    marked("drawing", &inside)
}

fn of_gate(job: &str, (site, gate): (&Site, &Gate), shown: &Shown) -> Markup {
    let open = Ratio::from_base(shown.open());
    let live = if shown.is_elevation() {
        live::elevation(site, gate, open)
    } else {
        live::plan(site, gate, open)
    };
    let units = if site.site.unit_system() == UnitSystem::Si {
        "si"
    } else {
        "us"
    };
    html! {
           div class="tools" {
               (views(job, site, gate, shown))
               div class="travel" {
                   label for="travel" { "Open" }
                   input type="range" id="travel" min="0" max="100" step="1" value=(format!("{:.0}", shown.open() * 100.0));
                   output id="opened" for="travel" { (format!("{:.0} %", shown.open() * 100.0)) }
               }
               (looks(&live))
           }
    div class="frame" {
           div class="stage" id="stage" tabindex="0" role="group" data-units=(units) data-gate=(gate.id) data-view=(if shown.is_elevation() { "elevation" } else { "plan" })
               aria-label={ (live.title) ". Arrow keys move the sheet, plus and minus go nearer and farther, zero shows it whole." } {
               (PreEscaped(&live.svg))
           }
           div class="card" id="card" role="group" aria-label="What is chosen" hidden {}
           template id="kinds" { (kinds()) }
           }
           div class="under" {
               p class="reading" id="reading" role="status" { (hint(shown)) }
               (orientation(site, shown))
           }
           div class="asides" {
           (things(&live))
           (zones((site, gate), &live))
           @if !live.without_place.is_empty() {
               p class="soft" { "Without a place, so not drawn: " (live.without_place.join(", ")) "." }
           }
           }
       }
}

/// Where north is, and how long a length is on the screen; the module draws the bar as near as one looks.
fn orientation(site: &Site, shown: &Shown) -> Markup {
    let place = site.place.as_ref();
    let north = place.and_then(|place| place.north.as_ref());
    html! {
        div class="orientation" {
            @match (shown.is_elevation(), north) {
                (true, _) => {}
                (false, None) => span class="soft" { "North not measured" },
                (false, Some(north)) => (arrow(90.0 - north.nominal().get::<degree>())),
            }
            span class="scale-bar" id="scale-bar" hidden {}
            span id="scale-length" {}
        }
    }
}

/// An arrow to the north that stands so many degrees clockwise from the top.
fn arrow(turn: f64) -> Markup {
    html! {
        svg class="north" viewBox="-16 -16 32 32" role="img" aria-label="North" {
            g transform=(format!("rotate({turn:.1})")) {
                path d="M0 15V-6" {}
                path class="tip" d="M0-9l4 9h-8z" {}
                text y="-10" text-anchor="middle" { "N" }
            }
        }
    }
}

fn hint(shown: &Shown) -> &'static str {
    if shown.is_elevation() {
        "Seen from the road."
    } else {
        "Road below, property above."
    }
}

fn views(job: &str, site: &Site, gate: &Gate, shown: &Shown) -> Markup {
    let at = |gate: &Gate, view: &str| format!("/jobs/{job}?gate={}&view={view}", gate.id);
    let elevation = shown.is_elevation();
    html! {
        nav class="views" aria-label="View" {
            a class={ "button" @if !elevation { " first" } } href=(at(gate, "plan")) data-view="plan" aria-current=[(!elevation).then_some("true")] { "From above" }
            a class={ "button" @if elevation { " first" } } href=(at(gate, "elevation")) data-view="elevation" aria-current=[elevation.then_some("true")] { "From the road" }
            @if site.gate.len() > 1 {
                @for other in &site.gate {
                    a class={ "button" @if other.id == gate.id { " first" } } href=(at(other, if elevation { "elevation" } else { "plan" })) data-gate=(other.id)
                        aria-current=[(other.id == gate.id).then_some("true")] { "Gate " (other.id) }
                }
            }
        }
    }
}

fn looks(live: &Live) -> Markup {
    html! {
        div class="looks" {
            button type="button" data-do="nearer" { "Nearer" }
            button type="button" data-do="farther" { "Farther" }
            button type="button" data-do="whole" { "Whole" }
            button type="button" data-do="add" aria-pressed="false" { "Add" }
            button type="button" data-do="route" aria-pressed="false" { "Route" }
            button type="button" data-do="measure" aria-pressed="false" { "Measure" }
            button type="button" data-do="grid" aria-pressed="false" { "Grid" }
            details class="layers" {
                summary class="button" { "Layers" }
                fieldset {
                    legend class="unseen" { "Layers that are shown" }
                    @for layer in &live.layers {
                        label class="choice" { input type="checkbox" data-layer=(layer.class) checked[layer.shown]; (layer.name) }
                    }
                }
            }
        }
    }
}

/// What can be added to the drawing: the list that it stands in, and what it is there.
fn kinds() -> Markup {
    html! {
        select id="add-kind" {
            optgroup label="Devices" {
                @for kind in DeviceKind::ALL { option value={ "device:" (kind.word()) } { (capital(kind.word())) } }
            }
            optgroup label="Other things" {
                @for (list, words) in [("enclosure", "Enclosure"), ("bollard", "Bollard"), ("cover", "Cover"), ("way_point", "Point of the ways")] {
                    option value=(list) { (words) }
                }
            }
        }
    }
}

/// What stands on the drawing, for whoever does not point at it.
fn things(live: &Live) -> Markup {
    let own = live.items.iter().filter(|item| item.key == "at");
    html! {
        details class="things disclosed" {
            summary { "Things on the drawing" }
            ul {
                @for item in own {
                    @let other = live.items.iter().find(|it| it.path == item.path && it.key == "to");
                    li { (thing(item, other)) }
                }
            }
        }
    }
}

fn thing(item: &Item, other: Option<&Item>) -> Markup {
    let place = |item: &Item| serde_json::json!(item.place).to_string();
    let spot = |item: &Item| format!("{:.4} {:.4}", item.at.x.base(), -item.at.y.base());
    html! {
        button type="button" class="plain" data-thing=(item.path) data-name=(item.name) data-kind=(item.kind) data-movable=(item.movable)
            data-at=(spot(item)) data-place=(place(item)) data-carried=[item.carried_by] data-beside=(item.beside)
            data-to=[other.map(spot)] data-to-place=[other.map(place)] {
            span class="strong" { (item.name) } " " span class="soft" { (item.kind) }
        }
    }
}

fn zones((site, gate): (&Site, &Gate), live: &Live) -> Markup {
    html! {
        @if !live.zones.is_empty() || !zone::all_known(site, gate) {
            details class="disclosed" {
                summary { "Hazard zones by number" }
                ol class="zones" {
                    @for zone in &live.zones {
                        li data-zone-words=(zone.number) { span class="strong" { (zone.number) ". " (zone.standing) } span class="strong now" {} " " (zone.words) }
                    }
                }
                @if !zone::all_known(site, gate) {
                    p { "Some kinds of place are left out, since facts are missing; the answers on hazard zones tell which." }
                }
                p class="soft" { "A blank place is not a safe one: only what the site file holds is worked out. The gate is looked over on site before it moves." }
            }
        }
    }
}
