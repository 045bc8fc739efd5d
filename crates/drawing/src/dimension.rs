//! Dimension lines: below the unit for widths, to its left for heights.
//!
//! A unit 28 in wide has a line below it from its left edge to its right, a slanting tick at each end, a thin line from
//! each end up to the unit, and `28 in` under it.
//!
//! Always holds: dimensions whose lines or texts would run into each other take lines of their own, further out; the overall
//! one is the outermost; no text lies on the unit. A text covers the extension lines that it crosses.
//! Source: ticks, extension lines, and texts that read from below and from the right: common practice, no source.

use astragal_exact::{LengthUnit, Number, format_length};

use crate::colour::{DARK, GREY, PAPER};
use crate::elevation::{Along, Elevation};
use crate::geometry::{Area, Point};
use crate::letter::{Face, clean};
use crate::scale::Scale;
use crate::shape::{Form, Pen, Set, Shape};

const FACE: Face = Face::regular(270);
/// From the unit to the first line, from a line to the next, from a line to its text.
const FIRST: i64 = 380;
const PITCH: i64 = 540;
const TEXT: i64 = 115;
/// From the unit to where an extension line begins, and how far it runs past the dimension line.
const BEGIN: i64 = 90;
const PAST: i64 = 90;
/// Half of a tick each way.
const TICK: i64 = 65;

/// One dimension along its way.
struct Run {
    from: i64,
    to: i64,
    words: String,
}

/// All dimensions of a unit that covers `unit` on paper.
pub(crate) fn dimensions(elevation: &Elevation, unit: &Area, scale: Scale) -> Vec<Shape> {
    let widths = lines(elevation, Along::Width, &elevation.width, scale);
    let heights = lines(elevation, Along::Height, &elevation.height, scale);
    let aside = aside(&widths, &heights, unit);
    let widths = drawn(&widths, |along, out| (along, unit.bottom + out), Set::Centred);
    let heights = drawn(
        &heights,
        |along, out| (unit.left - beside(out, aside), along),
        Set::Upright,
    );
    let (texts, others): (Vec<Shape>, Vec<Shape>) = widths
        .into_iter()
        .chain(heights)
        .partition(|shape| matches!(shape.form, Form::Text(_)));
    let plates = texts.iter().filter_map(plate).collect::<Vec<Shape>>();
    [others, plates, texts].concat()
}

/// How much further out heights stand, so that a text longer than the unit is high misses one longer than it is wide.
fn aside(widths: &[Vec<Run>], heights: &[Vec<Run>], unit: &Area) -> i64 {
    let ends = heights.iter().flatten().map(|run| run.text().1);
    if ends.max().is_none_or(|end| end <= unit.bottom) {
        return 0;
    }
    let begins = widths.iter().flatten().map(|run| run.text().0);
    begins.min().map_or(0, |begin| (unit.left - begin).max(0))
}

/// What is further out than where extension lines begin, moved aside.
fn beside(out: i64, aside: i64) -> i64 {
    if out > BEGIN { out + aside } else { out }
}

/// The runs of each line, the one nearest to the unit first.
fn lines(elevation: &Elevation, along: Along, overall: &Number, scale: Scale) -> Vec<Vec<Run>> {
    let unit = elevation.unit;
    let extra = elevation
        .dimensions
        .iter()
        .filter(|dimension| dimension.along == along);
    let extra = extra.map(|dimension| run(&dimension.from, &dimension.to, &dimension.label, unit, scale));
    let mut lines: Vec<Vec<Run>> = Vec::new();
    for run in extra {
        let free = lines
            .iter_mut()
            .find(|line| line.iter().all(|other| !collide(&run, other)));
        match free {
            Some(line) => line.push(run),
            None => lines.push(vec![run]),
        }
    }
    lines.push(vec![run(&Number::ZERO, overall, "", unit, scale)]);
    lines
}

fn run(from: &Number, to: &Number, label: &str, unit: LengthUnit, scale: Scale) -> Run {
    let length = format_length(&(to - from), unit);
    Run {
        from: scale.hundredths(from),
        to: scale.hundredths(to),
        words: clean(&if label.is_empty() {
            length
        } else {
            format!("{label} {length}")
        }),
    }
}

impl Run {
    fn middle(&self) -> i64 {
        (self.from + self.to) / 2
    }

    /// Where its text begins and ends, with some room.
    fn text(&self) -> (i64, i64) {
        let half = FACE.width(&self.words) / 2 + 60;
        (self.middle() - half, self.middle() + half)
    }
}

/// Whether two dimensions on one line would run into each other; they may touch where one ends and the other begins.
fn collide(one: &Run, other: &Run) -> bool {
    let over = |a: (i64, i64), b: (i64, i64)| a.0 < b.1 && b.0 < a.1;
    let (line, text) = ((one.from, one.to), one.text());
    let (other_line, other_text) = ((other.from, other.to), other.text());
    over(line, other_line) || over(text, other_text)
}

/// The shapes of lines, where `place` turns a place along the unit and a distance from it into a point.
fn drawn(lines: &[Vec<Run>], place: impl Fn(i64, i64) -> Point, set: Set) -> Vec<Shape> {
    let mut shapes = Vec::new();
    let outs = (0..).map(|number| FIRST + number * PITCH);
    for (line, out) in lines.iter().zip(outs) {
        for run in line {
            let ends = [run.from, run.to];
            let extensions = ends.map(|end| vec![place(end, BEGIN), place(end, out + PAST)]);
            shapes.push(Shape::lines("extension", extensions.to_vec(), Pen::line(GREY, 9)));
            let along = vec![place(run.from, out), place(run.to, out)];
            shapes.push(Shape::lines("dimension-line", vec![along], Pen::line(DARK, 12)));
            let ticks = ends.map(|end| tick(place(end, out)));
            shapes.push(Shape::lines("tick", ticks.to_vec(), Pen::line(DARK, 24)));
            let base = match set {
                Set::Upright => out + TEXT,
                _ => out + TEXT + FACE.capital(),
            };
            let at = place(run.middle(), base);
            shapes.push(Shape::text("dimension", at, set, FACE, &run.words, DARK));
        }
    }
    shapes
}

fn tick((x, y): Point) -> Vec<Point> {
    vec![(x - TICK, y + TICK), (x + TICK, y - TICK)]
}

/// What a text covers, so that it can be read over the lines that it crosses.
fn plate(text: &Shape) -> Option<Shape> {
    let Form::Text(words) = &text.form else {
        return None;
    };
    let (capital, covers) = (words.face.capital(), words.covers());
    let area = match words.set {
        Set::Upright => Area {
            left: words.at.0 - capital,
            right: words.at.0,
            ..covers
        },
        _ => Area {
            top: words.at.1 - capital,
            bottom: words.at.1,
            ..covers
        },
    };
    Some(Shape::rectangle("text-plate", area.grown(25), Pen::fill(PAPER)))
}
