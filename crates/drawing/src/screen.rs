//! The insect screen: a corner of mesh on the glass behind it or before it, and the word.
//!
//! The mesh fills a corner triangle and not the whole glass, so that bars, hinge lines and marks stay readable; it stands in
//! a corner that the lines of the hinge leave free: a lower one, or an upper one where the hinge is at the top.
//!
//! Always holds: mesh and word lie within the glass; the word is left out where it would not fit, since the words beside the
//! drawing say it in any case.

use crate::colour::{DARK, GLASS, MESH};
use crate::elevation::{Operation, Side};
use crate::geometry::{Area, Point};
use crate::letter::Face;
use crate::shape::{Pen, Set, Shape};

const WORD: &str = "screen";
const FACE: Face = Face::regular(200);
/// LIMIT: the longest side of the mesh, and the shortest to which it shrinks for the sake of its word.
const SIDE_MOST: i64 = 800;
const SIDE_LEAST: i64 = 330;
/// Between the mesh and its word.
const GAP: i64 = 70;
/// How far the word reaches from the edge of the glass, with some room.
const REACH: i64 = 290;
/// Between two threads, along the edge.
const APART: i64 = 110;

/// A corner of the glass.
#[derive(Clone, Copy)]
struct Corner {
    right: bool,
    top: bool,
}

/// The mesh over this glass.
pub(crate) fn mesh(operation: Operation, glass: &Area) -> Vec<Shape> {
    let (corner, side) = (corner(operation), side(operation, glass));
    let place = |point: Point| corner.place(glass, point);
    let triangle = vec![place((0, 0)), place((side, 0)), place((0, side))];
    let steps = || (1..).map(|step| step * APART).take_while(|far| *far < side);
    // In the corner's own directions the long side is x + y = side.
    let along = steps().map(|far| vec![place((far, 0)), place((0, far))]);
    let from_x = steps().map(|far| vec![place((far, 0)), place(((side + far) / 2, (side - far) / 2))]);
    let from_y = steps().map(|far| vec![place((0, far)), place(((side - far) / 2, (side + far) / 2))]);
    let middle = std::iter::once(vec![place((0, 0)), place((side / 2, side / 2))]);
    let threads = along.chain(middle).chain(from_x).chain(from_y).collect();
    vec![
        Shape::outline("screen", triangle, Pen::line(MESH, 12)),
        Shape::lines("screen-mesh", threads, Pen::line(MESH, 7)),
    ]
}

/// The word beside the mesh, where there is room beside what is `taken`.
pub(crate) fn word(operation: Operation, glass: &Area, taken: &[Area]) -> Vec<Shape> {
    let (corner, width) = (corner(operation), FACE.width(WORD));
    let begin = side(operation, glass) + GAP;
    let up = 60 + FACE.below();
    let middle = corner.place(glass, (begin + width / 2, up + FACE.capital() / 2));
    let at = (middle.0, middle.1 + FACE.capital() / 2);
    let text = Shape::text("screen-word", at, Set::Centred, FACE, WORD, DARK);
    let Some(plate) = text.covers().map(|area| area.grown(20)) else {
        return Vec::new();
    };
    let free = taken.iter().all(|taken| !plate.overlaps(taken));
    if !free || !plate.is_within(glass) || !misses_hinge(operation, glass, begin + width) {
        return Vec::new();
    }
    vec![Shape::rectangle("mark-plate", plate, Pen::fill(GLASS)), text]
}

/// Whether a word that ends so far from the corner misses the lines of the hinge.
fn misses_hinge(operation: Operation, glass: &Area, end: i64) -> bool {
    let (width, height) = (glass.width(), glass.height());
    match operation {
        // The line falls from the far corner to the middle of this side.
        Operation::Hinged {
            side: Side::Left | Side::Right,
            ..
        } => (width - end) * height > REACH * 2 * width,
        // The line runs from the corner above or below to the middle of this side.
        Operation::Hinged { .. } => (width - 2 * end) * height > REACH * width,
        Operation::Fixed | Operation::Slides(_) => true,
    }
}

/// The side of the mesh: as long as can be, and shorter where the lines of the hinge would else leave no room for the word.
fn side(operation: Operation, glass: &Area) -> i64 {
    let most = (glass.width().min(glass.height()) * 2 / 5).min(SIDE_MOST);
    let word = FACE.width(WORD);
    let tried = (0..).map(|step| most - step * 10);
    let mut tried = tried.take_while(|side| *side >= SIDE_LEAST);
    tried
        .find(|side| misses_hinge(operation, glass, side + GAP + word))
        .unwrap_or(most)
}

fn corner(operation: Operation) -> Corner {
    let hinge = match operation {
        Operation::Hinged { side, .. } => Some(side),
        Operation::Fixed | Operation::Slides(_) => None,
    };
    Corner {
        right: hinge == Some(Side::Right),
        top: hinge == Some(Side::Top),
    }
}

impl Corner {
    /// A point so far from the corner along the glass and across it.
    fn place(self, glass: &Area, (along, across): Point) -> Point {
        let x = if self.right {
            glass.right - along
        } else {
            glass.left + along
        };
        let y = if self.top {
            glass.top + across
        } else {
            glass.bottom - across
        };
        (x, y)
    }
}
