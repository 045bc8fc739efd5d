//! How a panel moves, as it is drawn on its glass.
//!
//! A casement hinged left has two dashed lines from the right corners of its glass to the middle of its left side. A sash
//! that slides up has an arrow that points up.
//!
//! Always holds: the dashed lines meet at the hinge side, and the legend says so, since other places read them the other way
//! round; arrows point where the panel goes when it is opened, seen from outside. Glass too small for an
//! arrow has none; the words beside the drawing say the same in any case.
//! Source: common practice, no source; ISO and national standards differ about the point where the lines meet.

use crate::colour::{DARK, GLASS};
use crate::elevation::{Operation, Side};
use crate::geometry::{Area, Point};
use crate::shape::{Pen, Shape};

/// LIMIT: the longest arrow.
const ARROW_MOST: i64 = 1_300;

/// LIMIT: in a lite narrower than this no arrow could be told from a spot.
const ROOM_LEAST: i64 = 80;

/// The lines or the arrow of a panel with this glass; `lites` is how its grille divides it.
pub(crate) fn motion(operation: Operation, glass: &Area, lites: (u32, u32)) -> Vec<Shape> {
    match operation {
        Operation::Fixed => Vec::new(),
        Operation::Hinged { side, .. } => vec![hinge(glass, side)],
        Operation::Slides(side) => arrow(glass, side, lites),
    }
}

fn hinge(glass: &Area, side: Side) -> Shape {
    let (one, other) = glass.corners(side.opposite());
    let lines = vec![vec![one, glass.side(side)], vec![other, glass.side(side)]];
    Shape::lines("hinge", lines, Pen::line(DARK, 16).dashed())
}

fn arrow(glass: &Area, side: Side, lites: (u32, u32)) -> Vec<Shape> {
    let level = matches!(side, Side::Left | Side::Right);
    let (columns, rows) = (i64::from(lites.0.max(1)), i64::from(lites.1.max(1)));
    let (run, room) = if level {
        (glass.width(), glass.height() / rows)
    } else {
        (glass.height(), glass.width() / columns)
    };
    if run.min(room) < ROOM_LEAST {
        return Vec::new();
    }
    let length = (run * 55 / 100).min(ARROW_MOST);
    let head = (length / 4).min(190).min(room);
    let lite = middle_lite(glass, lites);
    let middle = glass.middle();
    let (x, y) = if level {
        (middle.0, lite.1)
    } else {
        (lite.0, middle.1)
    };
    let (step_x, step_y) = side.step();
    let along = |far: i64, aside: i64| {
        (
            x + step_x * far + step_y * aside,
            y + step_y * far + step_x * aside,
        )
    };
    let half = length / 2;
    let shaft = vec![along(-half, 0), along(half - head, 0)];
    let point = vec![
        along(half, 0),
        along(half - head, head * 2 / 5),
        along(half - head, -head * 2 / 5),
    ];
    vec![
        Shape::lines(
            "arrow-clearance",
            vec![vec![along(-half, 0), along(half, 0)]],
            Pen::line(GLASS, 110),
        ),
        Shape::lines("arrow-shaft", vec![shaft], Pen::line(DARK, 26)),
        Shape::outline("arrow-head", point, Pen::line(GLASS, 12).filled(DARK)),
    ]
}

/// The middle of the lite that is nearest to the middle of the glass, below and to the right of it where two are.
pub(crate) fn middle_lite(glass: &Area, (columns, rows): (u32, u32)) -> Point {
    let middle = |from: i64, length: i64, count: u32| {
        let count = i64::from(count.max(1));
        from + length * (2 * (count / 2) + 1) / (2 * count)
    };
    (
        middle(glass.left, glass.width(), columns),
        middle(glass.top, glass.height(), rows),
    )
}
