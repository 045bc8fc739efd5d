//! The letters on the glass: `F` for a fixed panel, `T` for tempered glass.
//!
//! `F` stands in the middle lite; `T` stands in a box in a corner that the lines of the hinge leave free.
//!
//! Always holds: a mark lies within its glass and no mark lies on another or on an arrow. One that finds no room is not drawn; the words
//! beside the drawing say the same in any case.
//! Source: `F` and `T` are common practice, no source.

use crate::colour::{DARK, GLASS};
use crate::elevation::{Operation, Panel, Side};
use crate::geometry::{Area, Point};
use crate::letter::Face;
use crate::motion::middle_lite;
use crate::shape::{Pen, Set, Shape};

/// The sizes of letters that are tried, the largest first.
const FIXED_SIZES: [i64; 4] = [420, 340, 270, 210];
const TEMPERED_SIZES: [i64; 3] = [270, 230, 190];
/// Between a mark and the edge of the glass.
const CLEARANCE: i64 = 60;

/// The marks of a panel with this glass; `lites` is how its grille divides it, `taken` what its arrow covers.
pub(crate) fn marks(panel: &Panel, glass: &Area, lites: (u32, u32), taken: &[Area]) -> Vec<Shape> {
    let mut shapes = Vec::new();
    let mut taken = taken.to_vec();
    if panel.operation == Operation::Fixed {
        let at = middle_lite(glass, lites);
        let plate = FIXED_SIZES.iter().find_map(|size| fixed(at, *size, glass));
        if let Some((plate, face)) = plate {
            shapes.push(Shape::rectangle("mark-plate", plate, Pen::fill(GLASS)));
            shapes.push(letter("fixed", "F", at, face));
            taken.push(plate);
        }
    }
    if panel.tempered {
        let boxed = TEMPERED_SIZES
            .iter()
            .find_map(|size| tempered(panel.operation, *size, glass, &taken));
        if let Some((area, face)) = boxed {
            let pen = Pen::line(DARK, 12).filled(GLASS);
            shapes.push(Shape::rectangle("mark-plate", area, pen));
            shapes.push(letter("tempered", "T", area.middle(), face));
        }
    }
    shapes
}

fn fixed(at: Point, size: i64, glass: &Area) -> Option<(Area, Face)> {
    let face = Face::regular(size);
    let plate = Area::around(
        at,
        face.width("F") + 2 * CLEARANCE,
        face.capital() + 2 * CLEARANCE,
    );
    plate.is_within(glass).then_some((plate, face))
}

fn tempered(operation: Operation, size: i64, glass: &Area, taken: &[Area]) -> Option<(Area, Face)> {
    let face = Face::bold(size);
    let side = face.capital() + 2 * CLEARANCE;
    let far = CLEARANCE + 20 + side / 2;
    let (left, top) = match operation {
        Operation::Hinged { side: Side::Left, .. } => (true, true),
        Operation::Hinged {
            side: Side::Right | Side::Top,
            ..
        } => (false, true),
        _ => (false, false),
    };
    let x = if left { glass.left + far } else { glass.right - far };
    let y = if top { glass.top + far } else { glass.bottom - far };
    let area = Area::around((x, y), side, side);
    let free = taken.iter().all(|taken| !area.overlaps(taken));
    (area.is_within(glass) && free).then_some((area, face))
}

fn letter(part: &'static str, words: &str, (x, y): Point, face: Face) -> Shape {
    Shape::text(part, (x, y + face.capital() / 2), Set::Centred, face, words, DARK)
}
