//! Reads drawings back: what stands where, in hundredths of a millimetre.

#![allow(dead_code, reason = "not every test reads everything")]
#![expect(clippy::unwrap_used, clippy::panic, reason = "these are tests")]

use astragal_drawing::{
    Arrangement, Colour, Divider, Elevation, Frame, Grille, GrillePattern, Operation, Panel, Side, Swing,
};
use astragal_exact::{LengthUnit, Number, parse_length};
use roxmltree::{Document, Node};

/// A rectangle: left, top, right, bottom.
pub(crate) type Area = (i64, i64, i64, i64);

pub(crate) fn inches(text: &str) -> Number {
    parse_length(text, Some(LengthUnit::Inch)).unwrap()
}

pub(crate) fn white() -> Colour {
    Colour::new("White", 250, 250, 247)
}

/// A unit with a frame of 2 in.
pub(crate) fn unit(width: &str, height: &str, arrangement: Arrangement) -> Elevation {
    let frame = Frame {
        face: inches("2"),
        colour: white(),
    };
    let mut unit = Elevation::new(inches(width), inches(height), LengthUnit::Inch, frame);
    unit.arrangement = arrangement;
    unit
}

pub(crate) fn one(width: &str, height: &str, panel: Panel) -> Elevation {
    unit(width, height, Arrangement::One(panel))
}

/// A panel with a sash of 1 1/2 in.
pub(crate) fn sash(operation: Operation) -> Panel {
    Panel {
        sash: Some(inches("1 1/2")),
        ..Panel::new(operation)
    }
}

pub(crate) fn hinged(side: Side) -> Operation {
    Operation::Hinged {
        side,
        swing: Swing::Out,
    }
}

pub(crate) fn colonial(columns: u32, rows: u32) -> Option<Grille> {
    let pattern = GrillePattern::Colonial { columns, rows };
    Some(Grille {
        pattern,
        bar: inches("7/8"),
        colour: white(),
    })
}

pub(crate) fn meeting(at: &str) -> Divider {
    Divider {
        at: inches(at),
        bar: Number::ZERO,
    }
}

/// Everything that shows `part`.
pub(crate) fn parts<'a>(document: &'a Document<'_>, part: &str) -> Vec<Node<'a, 'a>> {
    let found = document
        .descendants()
        .filter(|node| node.attribute("data-part") == Some(part));
    found.collect()
}

pub(crate) fn number(node: &Node<'_, '_>, name: &str) -> i64 {
    node.attribute(name).unwrap().parse().unwrap()
}

pub(crate) fn area(node: &Node<'_, '_>) -> Area {
    let (x, y) = (number(node, "x"), number(node, "y"));
    (x, y, x + number(node, "width"), y + number(node, "height"))
}

/// The points of a path, each of its lines on its own.
pub(crate) fn lines(node: &Node<'_, '_>) -> Vec<Vec<(i64, i64)>> {
    let data = node.attribute("d").unwrap().trim_end_matches('Z');
    let line = |line: &str| -> Vec<(i64, i64)> {
        let point = |point: &str| {
            let (x, y) = point.split_once(' ').unwrap();
            (x.parse().unwrap(), y.parse().unwrap())
        };
        line.split('L').map(point).collect()
    };
    data.split('M')
        .filter(|text| !text.is_empty())
        .map(line)
        .collect()
}

/// What the picture shows: left, top, right, bottom.
pub(crate) fn view(document: &Document<'_>) -> Area {
    let numbers: Vec<i64> = document
        .root_element()
        .attribute("viewBox")
        .unwrap()
        .split(' ')
        .map(|number| number.parse().unwrap())
        .collect();
    match numbers.as_slice() {
        [x, y, width, height] => (*x, *y, x + width, y + height),
        other => panic!("{other:?}"),
    }
}

/// What a shape covers. A letter is taken to be no wider than a capital W of Arial (944/1000), a digit than a digit (557).
pub(crate) fn covered(node: &Node<'_, '_>) -> Option<Area> {
    match node.tag_name().name() {
        "rect" => Some(area(node)),
        "path" => {
            let points: Vec<(i64, i64)> = lines(node).concat();
            let xs = || points.iter().map(|point| point.0);
            let ys = || points.iter().map(|point| point.1);
            Some((xs().min()?, ys().min()?, xs().max()?, ys().max()?))
        }
        "text" => Some(text_area(node)),
        _ => None,
    }
}

fn text_area(node: &Node<'_, '_>) -> Area {
    let (x, y, size) = (number(node, "x"), number(node, "y"), number(node, "font-size"));
    let words = node.text().unwrap_or_default();
    let widths = words.chars().map(|letter| match letter {
        'i' | 'j' | 'l' => 223,
        ' ' | '.' | ',' | ';' | ':' | '/' | 'f' | 't' | 'I' => 278,
        'r' | '-' | '(' | ')' => 334,
        'c' | 'k' | 's' | 'v' | 'x' | 'y' | 'z' => 500,
        'a'..='l' | 'n'..='q' | 'u' | '0'..='9' => 557,
        'w' => 723,
        'm' => 834,
        _ => 700,
    });
    // Capitals stand on their line; other letters reach below it.
    let capitals = words.chars().all(|letter| letter.is_ascii_uppercase());
    let below = if capitals { 0 } else { size / 5 };
    let (width, above, below) = (widths.sum::<i64>() * size / 1000, size * 69 / 100, below);
    let middle = node.attribute("text-anchor") == Some("middle");
    let begin = if middle { -width / 2 } else { 0 };
    if node.attribute("transform").is_some() {
        (x - above, y + begin, x + below, y + begin + width)
    } else {
        (x + begin, y - above, x + begin + width, y + below)
    }
}

pub(crate) fn within(inner: Area, outer: Area) -> bool {
    inner.0 >= outer.0 && inner.1 >= outer.1 && inner.2 <= outer.2 && inner.3 <= outer.3
}

pub(crate) fn overlap(one: Area, other: Area) -> bool {
    one.0 < other.2 && other.0 < one.2 && one.1 < other.3 && other.1 < one.3
}
