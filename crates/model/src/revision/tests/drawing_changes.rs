//! The changes of a drawing that make another revision.

use super::catalog_changes::Change;
use super::fixture::{OPERATION, SCREEN, inches, literal};
use crate::catalog::Declarations;
use crate::drawing::{Arranged, Drawing, GlassMark, GrillePattern, PanelMotion, ScreenSide};

fn drawing(of: &mut Declarations, change: impl FnOnce(&mut Drawing)) {
    change(of.drawing.as_mut().expect("it is drawn"));
}

pub(super) const DRAWING: &[Change] = &[
    ("no drawing", |d| d.drawing = None),
    ("width of the drawing", |d| {
        drawing(d, |drawing| drawing.width = literal(inches("9")))
    }),
    ("height of the drawing", |d| {
        drawing(d, |drawing| drawing.height = literal(inches("9")))
    }),
    ("frame of the drawing", |d| {
        drawing(d, |drawing| drawing.frame = literal(inches("9")))
    }),
    ("colour of the frame", |d| {
        drawing(d, |drawing| drawing.frame_colour = SCREEN)
    }),
    ("order of layouts", |d| {
        drawing(d, |drawing| drawing.layouts.reverse())
    }),
    ("a layout that is always", |d| {
        drawing(d, |drawing| drawing.layouts[0].when = None)
    }),
    ("how a panel moves", |d| {
        drawing(d, |drawing| {
            drawing.layouts[0].panels[0] = PanelMotion::SlidesLeft
        })
    }),
    ("how panels are arranged", |d| {
        drawing(d, |drawing| drawing.layouts[0].arranged = Arranged::SideBySide)
    }),
    ("where panels meet", |d| {
        drawing(d, |drawing| {
            drawing.layouts[0].divided_at[0] = literal(inches("9"))
        })
    }),
    ("no sash", |d| {
        drawing(d, |drawing| drawing.layouts[0].sash = None)
    }),
    ("a grille that is always", |d| {
        drawing(d, |drawing| drawing.grilles[0].when = None)
    }),
    ("the panels of a grille", |d| {
        drawing(d, |drawing| drawing.grilles[0].panels = vec![0])
    }),
    ("the pattern of a grille", |d| {
        drawing(d, |drawing| {
            let GrillePattern::Grid { columns, rows } = drawing.grilles[0].what.pattern.clone() else {
                panic!("it is a grid")
            };
            drawing.grilles[0].what.pattern = GrillePattern::TopRow {
                columns,
                height: rows,
            };
        })
    }),
    ("the bars of a grille", |d| {
        drawing(d, |drawing| drawing.grilles[0].what.bar = literal(inches("9")))
    }),
    ("the colour of a grille", |d| {
        drawing(d, |drawing| drawing.grilles[0].what.colour = OPERATION)
    }),
    ("the side of a screen", |d| {
        drawing(d, |drawing| drawing.screens[0].what = ScreenSide::Inside)
    }),
    ("the mark of the glass", |d| {
        drawing(d, |drawing| drawing.marks[0].what = GlassMark::Obscure)
    }),
    ("a mark less", |d| {
        drawing(d, |drawing| {
            drawing.marks.pop();
        })
    }),
];
