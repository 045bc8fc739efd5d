//! How a unit of a catalog is drawn: its panels, how they move, and what lies over their glass.
//!
//! A catalog says that a casement hinged on the left is one panel that is hinged left, with a frame of 2 1/4 in and a sash of
//! 1 3/4 in to the eye. [`draw`] works that out for one unit; the lines are drawn elsewhere.
//!
//! Always holds: left and right are those of somebody who stands outside. What is not known is not drawn: [`Undrawn`] says
//! what is wanted. Nothing here takes part in a decision or a price.
//! Cost: linear in the expressions.

mod pen;

use astragal_exact::Number;

use crate::expression::Expression;
use crate::fill::{Mode, settle};
use crate::id::{AttributeIndex, Id};
use crate::setting::Setting;
use crate::unit::Unit;
use crate::value::{UndefinedCause, Wants};
use pen::Pen;

/// How units of a catalog are drawn.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Drawing {
    /// The width over the frame; a length.
    pub width: Expression,
    /// The height over the frame; a length.
    pub height: Expression,
    /// How wide the frame is to the eye; a length.
    pub frame: Expression,
    /// The attribute whose option colours frame and sashes outside.
    pub frame_colour: AttributeIndex,
    /// The layouts; the first whose condition holds is drawn.
    pub layouts: Vec<Layout>,
    /// Bars over the glass.
    pub grilles: Vec<OnPanels<GrilleDrawing>>,
    /// Insect screens.
    pub screens: Vec<OnPanels<ScreenSide>>,
    /// What the glass is marked with.
    pub marks: Vec<OnPanels<GlassMark>>,
}

/// The panels of a unit and how they share it.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Layout {
    /// When it is this one; `None` means always.
    pub when: Option<Expression>,
    /// How each panel moves, from the left or from the top.
    pub panels: Vec<PanelMotion>,
    /// Whether they stand side by side or one above the other.
    pub arranged: Arranged,
    /// Where they meet, one fewer than panels, from the left or from the top of the unit; lengths.
    pub divided_at: Vec<Expression>,
    /// How wide a sash is to the eye; a length. `None`: the glass sits in the frame.
    pub sash: Option<Expression>,
}

/// How a panel moves, seen from outside.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum PanelMotion {
    /// It does not.
    Fixed,
    /// About hinges on the left, outwards.
    HingedLeft,
    /// About hinges on the right, outwards.
    HingedRight,
    /// About hinges at the top, outwards.
    HingedTop,
    /// About hinges at the bottom, inwards.
    HingedBottom,
    /// It slides to the left.
    SlidesLeft,
    /// It slides to the right.
    SlidesRight,
    /// It slides up.
    SlidesUp,
    /// It slides down.
    SlidesDown,
}

/// How panels share a unit.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Arranged {
    /// From the left.
    SideBySide,
    /// From the top.
    Stacked,
}

/// Something over the glass of some panels.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct OnPanels<T> {
    /// When it is there; `None` means always.
    pub when: Option<Expression>,
    /// The positions of its panels, counted from 0; empty means all.
    pub panels: Vec<usize>,
    /// What is there.
    pub what: T,
}

/// Bars over the glass of a panel.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct GrilleDrawing {
    /// How they run.
    pub pattern: GrillePattern<Expression>,
    /// How wide a bar is; a length.
    pub bar: Expression,
    /// The attribute whose option colours them.
    pub colour: AttributeIndex,
}

/// How bars run.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum GrillePattern<N> {
    /// A grid of equal lites.
    Grid {
        /// Lites across; a number.
        columns: N,
        /// Lites down; a number.
        rows: N,
    },
    /// Two bars each way, so far from the edges of the glass; a length.
    Perimeter(N),
    /// One row of lites at the top, with clear glass below.
    TopRow {
        /// Lites across; a number.
        columns: N,
        /// How high the row is; a length.
        height: N,
    },
}

/// On which side of the glass a screen stands.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum ScreenSide {
    /// In the room.
    Inside,
    /// In the open air.
    Outside,
}

/// What glass is marked with.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum GlassMark {
    /// One does not see through it.
    Obscure,
    /// Tempered, as ordered.
    Tempered,
}

/// A unit as it is to be drawn; lengths in inches.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Drawn {
    /// The width over the frame.
    pub width: Number,
    /// The height over the frame.
    pub height: Number,
    /// How wide the frame is to the eye.
    pub frame: Number,
    /// The attribute and option that colour frame and sashes.
    pub frame_colour: (AttributeIndex, Id),
    /// The position of its layout in the drawing.
    pub layout: usize,
    /// How the panels share the unit.
    pub arranged: Arranged,
    /// The panels, from the left or from the top.
    pub panels: Vec<DrawnPanel>,
    /// Where they meet, from the left or from the top of the unit.
    pub divided_at: Vec<Number>,
}

/// One panel as it is to be drawn.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct DrawnPanel {
    /// How it moves.
    pub motion: PanelMotion,
    /// How wide its sash is to the eye, if it has one.
    pub sash: Option<Number>,
    /// Its bars.
    pub grille: Option<DrawnGrille>,
    /// Its screen.
    pub screen: Option<ScreenSide>,
    /// The marks of its glass, each once.
    pub marks: Vec<GlassMark>,
}

/// Bars as they are to be drawn.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct DrawnGrille {
    /// Its position among the grilles of the drawing.
    pub grille: usize,
    /// How they run.
    pub pattern: GrillePattern<Number>,
    /// How wide a bar is.
    pub bar: Number,
    /// The attribute and option that colour them.
    pub colour: (AttributeIndex, Id),
}

/// Where in a drawing something is written; positions count from 0.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum DrawingKey {
    /// The drawing as a whole.
    Whole,
    /// `width`.
    Width,
    /// `height`.
    Height,
    /// `frame`.
    Frame,
    /// `frame_colour`.
    FrameColour,
    /// The condition of a layout.
    LayoutWhen(usize),
    /// A divider of a layout.
    Divider(usize, usize),
    /// The sash of a layout.
    Sash(usize),
    /// The condition of a grille.
    GrilleWhen(usize),
    /// How the bars of a grille run.
    GrillePattern(usize),
    /// The bar of a grille.
    GrilleBar(usize),
    /// The colour of a grille.
    GrilleColour(usize),
    /// The condition of a screen.
    ScreenWhen(usize),
    /// The condition of a mark on the glass.
    MarkWhen(usize),
}

/// Why a unit is not drawn.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Undrawn {
    /// The catalog says nothing about drawing.
    NoDrawing,
    /// It depends on what is wanted.
    Unknown(Wants),
    /// No layout is for this unit.
    NoLayout,
    /// Something has no value for this unit, and why.
    NoValue(DrawingKey, UndefinedCause),
}

/// Works out how one unit is drawn.
///
/// # Errors
/// [`Undrawn`] says why it is not.
pub fn draw(setting: &Setting<'_>, unit: &Unit) -> Result<Drawn, Undrawn> {
    let drawing = setting.catalog.declarations().drawing.as_ref();
    let drawing = drawing.ok_or(Undrawn::NoDrawing)?;
    let environment = settle(setting, unit.clone(), Mode::Keep);
    let pen = Pen {
        environment: &environment,
    };
    let (number, layout) = pen.first(&drawing.layouts)?;
    let sash = layout.sash.as_ref();
    let sash = sash.map(|sash| pen.magnitude(sash, DrawingKey::Sash(number)));
    let sash = sash.transpose()?;
    let mut panels = Vec::new();
    for (position, motion) in layout.panels.iter().enumerate() {
        let screens = pen.on(&drawing.screens, position, DrawingKey::ScreenWhen)?;
        panels.push(DrawnPanel {
            motion: *motion,
            sash: sash.clone(),
            grille: pen.grille(&drawing.grilles, position)?,
            screen: screens.first().map(|(_, side)| **side),
            marks: pen.marks(&drawing.marks, position)?,
        });
    }
    let dividers = layout.divided_at.iter().enumerate();
    let divided_at = dividers.map(|(divider, at)| pen.magnitude(at, DrawingKey::Divider(number, divider)));
    Ok(Drawn {
        width: pen.magnitude(&drawing.width, DrawingKey::Width)?,
        height: pen.magnitude(&drawing.height, DrawingKey::Height)?,
        frame: pen.magnitude(&drawing.frame, DrawingKey::Frame)?,
        frame_colour: pen.option(drawing.frame_colour, DrawingKey::FrameColour)?,
        layout: number,
        arranged: layout.arranged,
        panels,
        divided_at: divided_at.collect::<Result<_, _>>()?,
    })
}

impl Drawing {
    /// Every expression of the drawing.
    pub(crate) fn expressions(&self) -> Vec<&Expression> {
        let mut all = vec![&self.width, &self.height, &self.frame];
        for layout in &self.layouts {
            all.extend(layout.when.iter().chain(&layout.divided_at).chain(&layout.sash));
        }
        for grille in &self.grilles {
            all.extend(grille.when.iter().chain([&grille.what.bar]));
            match &grille.what.pattern {
                GrillePattern::Grid { columns, rows } => all.extend([columns, rows]),
                GrillePattern::Perimeter(inset) => all.push(inset),
                GrillePattern::TopRow { columns, height } => all.extend([columns, height]),
            }
        }
        all.extend(self.screens.iter().flat_map(|screen| &screen.when));
        all.extend(self.marks.iter().flat_map(|mark| &mark.when));
        all
    }
}
