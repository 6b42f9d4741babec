//! Pictures of a site: each with its key, a way to read a value from it, and its numbers for those who can't see it.

use super::calculations::capital;
use super::shell::{Place, Shell};
use draw::{Axis, Chart, Curve, Levels};
use maud::{Markup, PreEscaped, html};
use papers::pictures::{Group, Picture, Shape, Untold};

/// Steps of the slider that reads a value.
pub(super) const STEPS: u32 = 200;

/// Pictures of a group that are shown at once.
const AT_ONCE: usize = 4;

/// The page.
pub(super) fn page(job: &str, title: &str, revision: &str, groups: &[Group]) -> Markup {
    let shell = Shell {
        title: &format!("Pictures of {title}"),
        place: Place::Pictures(job, title),
        styles: &["pictures.css"],
        modules: &["pictures.js"],
        class: "pictures",
    };
    shell.around(&html! {
        div class="leaf-of-paper" id="pictures" data-job=(job) data-revision=(revision) {
            h1 { "Pictures" }
            nav class="jump" aria-label="Groups of pictures" {
                @for group in groups { a class="button" href={ "#" (group.name) } { (capital(group.name)) } }
                a class="button" href={ "/jobs/" (job) "/walk" } { "Walk test" }
            }
            p id="word" class="soft" role="status" {}
            @for group in groups { (of_group(group)) }
        }
    })
}

fn of_group(group: &Group) -> Markup {
    html! {
        section class="group" id=(group.name) aria-labelledby={ "of-" (group.name) } tabindex="-1" {
            h2 id={ "of-" (group.name) } { (group.title) }
            @let (first, more) = group.pictures.split_at(group.pictures.len().min(AT_ONCE));
            @for picture in first { (of_picture(picture)) }
            @if !more.is_empty() {
                details class="disclosed" id={ "more-" (group.name) } {
                    summary { (more.len()) " more" }
                    div class="group" { @for picture in more { (of_picture(picture)) } }
                }
            }
            @for one in &group.untold { (untold(one)) }
        }
    }
}

fn untold(one: &Untold) -> Markup {
    html! {
        div class="untold" {
            p { span class="strong" { (one.title) ". " } (one.why) }
            @for line in &one.write { pre class="typed" { (line) } }
        }
    }
}

fn of_picture(picture: &Picture) -> Markup {
    html! {
        figure class="picture" id=(picture.name) data-picture=(picture.name) {
            figcaption { h3 { (picture.shape.title()) } }
            @match &picture.shape {
                Shape::Curves(chart) => (curves(&picture.name, chart)),
                Shape::Levels(levels) => (rows(levels)),
            }
            @for remark in picture.shape.remarks() { p class="soft remark" { (remark) } }
            @match &picture.shape {
                Shape::Curves(chart) => (numbers(&picture.shape, &table(chart))),
                Shape::Levels(levels) => (numbers(&picture.shape, &cases(levels))),
            }
        }
    }
}

fn curves(name: &str, chart: &Chart) -> Markup {
    let letters = chart.curves.len() > 1;
    html! {
        div class="plot" {
            p class="axis-up" { (chart.up.named()) }
            (PreEscaped(chart.svg()))
            p class="axis-across" { (chart.across.named()) }
        }
        div class="beside" {
            div class="read" {
                label for={ "read-" (name) } { "Read a value" }
                input type="range" id={ "read-" (name) } min="0" max=(STEPS) step="1" value="0" data-read;
                output class="reading" role="status" for={ "read-" (name) } {}
            }
            ul class="key" {
                @for (at, curve) in chart.curves.iter().enumerate() {
                    li {
                        (sample(curve))
                        @if letters { span class="letter" { (letter(at)) } }
                        span class="what" { (curve.name) }
                        span class="value" data-value=(at) aria-hidden="true" {}
                    }
                }
            }
        }
    }
}

fn letter(at: usize) -> char {
    (b'A'..=b'Z').nth(at).map_or('·', char::from)
}

/// A piece of the line of a curve.
fn sample(curve: &Curve) -> Markup {
    html! {
        svg class="sample" viewBox="0 0 40 12" aria-hidden="true" {
            line class={ "curve " (curve.part.word()) } x1="0" y1="6" x2="40" y2="6" {}
        }
    }
}

fn rows(levels: &Levels) -> Markup {
    html! {
        ol class="levels" {
            @for row in &levels.rows {
                li {
                    p { span class="strong" { (row.name) } " " @if row.fails { span class="too-low" { "✗ " (row.words) } } @else { (row.words) } }
                    (PreEscaped(levels.svg(row)))
                }
            }
        }
        (PreEscaped(levels.foot()))
        p class="axis-across" { (levels.axis.named()) }
        ul class="key" {
            li { svg class="sample" viewBox="0 0 40 12" aria-hidden="true" { circle class="case" cx="20" cy="6" r="4" {} } span class="what" { "a case: " (levels.cases.join(", ")) } }
            li { svg class="sample" viewBox="0 0 40 12" aria-hidden="true" { circle class="lowest" cx="20" cy="6" r="5" {} } span class="what" { "the lowest" } }
            li { svg class="sample" viewBox="0 0 40 12" aria-hidden="true" { line class="least" x1="20" y1="0" x2="20" y2="12" {} } span class="what" { "the least at which it works" } }
        }
    }
}

/// Numbers under their heads: the first column names the rows.
type Table = (Vec<String>, Vec<Vec<String>>);

fn numbers(shape: &Shape, (heads, rows): &Table) -> Markup {
    html! {
        details class="disclosed" {
            summary { "Its numbers" }
            p class="soft" { (shape.description()) }
            div class="scrolls" tabindex="0" role="group" aria-label={ "Numbers of " (shape.title()) } {
                table class="numbers" {
                    thead { tr { @for head in heads { th scope="col" { (head) } } } }
                    tbody {
                        @for row in rows {
                            tr {
                                @for (at, cell) in row.iter().enumerate() {
                                    @if at == 0 { th scope="row" { (cell) } } @else { td { (cell) } }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// A chart at its ticks and at its marks.
fn table(chart: &Chart) -> Table {
    let (low, high) = chart.across.ends();
    let ticks = chart.across.ticks().into_iter();
    let ticks = ticks.map(|(share, words)| (low + share * (high - low), words));
    let marks = chart.marks.iter().map(|mark| {
        let words = mark.words.replace('\n', " ");
        let at = mark.at.0;
        let place = if chart.across.is_year() {
            words
        } else {
            format!("{} ({words})", number(at, &chart.across))
        };
        (at, place)
    });
    let mut places: Vec<(f64, String)> = ticks.chain(marks).collect();
    places.sort_by(|one, other| one.0.total_cmp(&other.0));
    let row = |(at, words): (f64, String)| {
        let values = chart.curves.iter().map(|curve| {
            height(&curve.points, at).map_or_else(String::new, |value| number(value, &chart.up))
        });
        [words].into_iter().chain(values).collect()
    };
    let up = chart.up.unit();
    let heads = chart.curves.iter().map(|curve| match up {
        "" => curve.name.clone(),
        unit => format!("{}, {unit}", curve.name),
    });
    (
        [chart.across.named()].into_iter().chain(heads).collect(),
        places.into_iter().map(row).collect(),
    )
}

/// The height of a curve at a place; none where it does not reach there.
fn height(points: &[(f64, f64)], at: f64) -> Option<f64> {
    let near = 1e-9 * at.abs().max(1.0);
    points.windows(2).find_map(|pair| {
        let ((x, y), (to_x, to_y)) = (pair[0], pair[1]);
        if at < x - near || at > to_x + near {
            return None;
        }
        let share = if to_x > x { (at - x) / (to_x - x) } else { 0.0 };
        Some(y + share.clamp(0.0, 1.0) * (to_y - y))
    })
}

fn number(value: f64, axis: &Axis) -> String {
    format!("{value:.*}", axis.digits()).replace('-', "−")
}

/// Each row of levels in each case.
fn cases(levels: &Levels) -> Table {
    let unit = levels.axis.unit();
    let values = levels.rows.iter().map(|row| {
        let all = row.values.iter().chain([&row.least]);
        let cells = all
            .map(|value| value.map_or_else(|| "–".to_owned(), |value| number(value, &levels.axis)));
        [row.name.clone()].into_iter().chain(cells).collect()
    });
    let heads = levels.cases.iter().map(|case| format!("{case}, {unit}"));
    (
        ["what".to_owned()]
            .into_iter()
            .chain(heads)
            .chain([format!("needs, {unit}")])
            .collect(),
        values.collect(),
    )
}

#[cfg(test)]
mod tests {
    use super::height;

    #[test]
    fn a_curve_is_read_between_its_points_and_nowhere_else() {
        let points = [(1.0, 10.0), (3.0, 20.0), (3.0, 5.0), (4.0, 5.0)];
        assert_eq!(height(&points, 2.0), Some(15.0));
        assert_eq!(height(&points, 3.0), Some(20.0));
        assert_eq!(height(&points, 3.5), Some(5.0));
        assert_eq!(height(&points, 0.5), None);
        assert_eq!(height(&points, 4.5), None);
    }
}
