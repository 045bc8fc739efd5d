//! Writes shapes as SVG.
//!
//! One user unit is a hundredth of a millimetre: a frame 50.8 mm wide is `width="5080"`, and the picture states its own
//! width and height in millimetres, so that it prints at the scale that it names.
//!
//! Always holds: every text and every attribute is escaped where it is put in (`maud` does so by construction); no ids and
//! no style sheet, so that many pictures may stand in one page; the same shapes give the same bytes.
//! Source: Scalable Vector Graphics (SVG) 1.1, second edition.

use std::fmt::Write;

use maud::{Markup, PreEscaped, html};

use crate::colour::Ink;
use crate::geometry::{Area, Point};
use crate::letter::{FAMILY, clean};
use crate::shape::{Form, Pen, Set, Shape, Text};

const NAMESPACE: &str = "http://www.w3.org/2000/svg";

/// A picture of `area`, with what it shows in words for those who do not see it.
pub(crate) fn picture(shapes: &[Shape], area: Area, title: &str) -> Markup {
    let (width, height) = (area.width(), area.height());
    let view = format!("{} {} {width} {height}", area.left, area.top);
    html! {
        svg xmlns=(NAMESPACE) width=(millimetres(width)) height=(millimetres(height)) viewBox=(view)
            role="img" font-family=(FAMILY) stroke-linejoin="round" stroke-linecap="butt" {
            (line()) title { (clean(title)) } (line())
            @for shape in shapes { (one(shape)) (line()) }
        }
    }
}

/// Hundredths of a millimetre in millimetres, as a decimal.
pub(crate) fn millimetres(hundredths: i64) -> String {
    format!("{}.{:02}mm", hundredths / 100, (hundredths % 100).abs())
}

fn one(shape: &Shape) -> Markup {
    let Shape { part, form, pen } = shape;
    let (fill, line, width, dash) = written(pen);
    html! {
        @match form {
            Form::Rectangle(area) => {
                rect data-part=(part) x=(area.left) y=(area.top) width=(area.width()) height=(area.height())
                    fill=(fill) stroke=[line] stroke-width=[width] stroke-dasharray=[dash] {}
            }
            Form::Lines(lines) => {
                path data-part=(part) d=(path(lines, "")) fill="none" stroke=[line] stroke-width=[width]
                    stroke-dasharray=[dash] {}
            }
            Form::Outline(points) => {
                path data-part=(part) d=(path(std::slice::from_ref(points), "Z")) fill=(fill) stroke=[line]
                    stroke-width=[width] stroke-dasharray=[dash] {}
            }
            Form::Text(text) => (letters(part, text, &fill)),
        }
    }
}

fn letters(part: &str, text: &Text, fill: &str) -> Markup {
    let (x, y) = text.at;
    let anchor = (text.set != Set::Left).then_some("middle");
    let turn = (text.set == Set::Upright).then(|| format!("rotate(-90 {x} {y})"));
    let weight = text.face.bold.then_some("bold");
    html! {
        text data-part=(part) x=(x) y=(y) font-size=(text.face.size) font-weight=[weight] text-anchor=[anchor]
            transform=[turn] fill=(fill) { (text.words) }
    }
}

type Written = (String, Option<String>, Option<i64>, Option<&'static str>);

fn written(pen: &Pen) -> Written {
    let fill = pen.fill.map_or_else(|| "none".to_owned(), colour);
    let line = pen.line.map(|(ink, _)| colour(ink));
    let width = pen.line.map(|(_, width)| width);
    (fill, line, width, pen.dashed.then_some("120 70"))
}

fn colour([red, green, blue]: Ink) -> String {
    format!("#{red:02x}{green:02x}{blue:02x}")
}

/// The data of a path; `end` closes each of its lists of points.
fn path(lines: &[Vec<Point>], end: &str) -> String {
    let mut data = String::new();
    for line in lines {
        for (position, (x, y)) in line.iter().enumerate() {
            let command = if position == 0 { 'M' } else { 'L' };
            // Writing into a string cannot fail.
            let _ = write!(data, "{command}{x} {y}");
        }
        data.push_str(end);
    }
    data
}

/// A shape a line, so that two drawings can be compared line by line.
fn line() -> Markup {
    PreEscaped("\n".to_owned())
}
