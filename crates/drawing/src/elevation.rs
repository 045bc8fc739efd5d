//! What there is to draw: one unit as it is seen from outside.
//!
//! A casement 28 by 45 in, hinged left, opening out, with a frame 2 1/2 in and a sash 1 3/4 in wide to the eye, is an
//! `Elevation` of one panel. A double-hung unit is two panels, one above the other, with one divider where they meet.
//!
//! Always holds: plain data without a rule of its own; what cannot be drawn is refused when it is drawn.
//! Lengths are inches, exact. Left and right are those of somebody who stands outside.

use astragal_exact::{LengthUnit, Number};

use crate::colour::Colour;

/// One unit, seen from outside.
///
/// [`Elevation::new`] makes the plainest one, a fixed unit without texts; the fields say the rest.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Elevation {
    /// The width of the unit over its frame, in inches.
    pub width: Number,
    /// The height of the unit over its frame, in inches.
    pub height: Number,
    /// What lengths are written in. It also decides the family of scales: 1/2 in = 1 ft, or 1:20.
    pub unit: LengthUnit,
    /// The frame around everything.
    pub frame: Frame,
    /// The colour of every sash. Not used when no panel has one.
    pub sash_colour: Colour,
    /// The panels and how they share the unit.
    pub arrangement: Arrangement,
    /// What the unit is called on site and on the sheet, such as `K1`. Empty when it has no name.
    pub tag: String,
    /// Lines printed under the tag. Sheets print their own lines instead.
    pub title: Vec<String>,
    /// Dimensions besides the overall width and height, which are always drawn.
    pub dimensions: Vec<Dimension>,
}

/// The frame as it is seen from outside.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Frame {
    /// How wide its face is, in inches, the same on all four sides.
    pub face: Number,
    /// Its colour outside.
    pub colour: Colour,
}

/// The panels and how they share the unit.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Arrangement {
    /// One panel fills the frame.
    One(Panel),
    /// Panels one above the other, the uppermost first, with one divider between each two.
    Stacked {
        /// From the top down.
        panels: Vec<Panel>,
        /// From the top down, one fewer than there are panels; [`Divider::at`] counts from the top of the unit.
        dividers: Vec<Divider>,
    },
    /// Panels side by side, the leftmost first, with one divider between each two.
    SideBySide {
        /// From left to right.
        panels: Vec<Panel>,
        /// From left to right, one fewer than there are panels; [`Divider::at`] counts from the left of the unit.
        dividers: Vec<Divider>,
    },
}

/// Where one panel ends and the next begins.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Divider {
    /// How far its middle is from the top of the unit (stacked) or from its left (side by side), in inches.
    pub at: Number,
    /// How wide the bar of the frame is there (a mullion or a transom), in inches; 0 where two sashes meet.
    pub bar: Number,
}

/// A sash or a fixed lite.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Panel {
    /// How it moves.
    pub operation: Operation,
    /// How wide the face of its sash is, in inches; `None` when the glass sits in the frame itself.
    pub sash: Option<Number>,
    /// Bars across the glass.
    pub grille: Option<Grille>,
    /// What the glass looks like.
    pub glass: Glass,
    /// Whether its glass is tempered, as ordered. It is marked `T`; whether it has to be is not asked here.
    pub tempered: bool,
    /// An insect screen over this panel. A half screen of a double-hung unit is a screen over its lower panel only.
    pub screen: Option<Screen>,
    /// At the middle of which side there is a handle or a lock; `None` draws none.
    pub handle: Option<Side>,
}

/// How a panel moves.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Operation {
    /// It does not.
    Fixed,
    /// It turns about its hinges: a casement has them left or right, an awning at the top, a hopper at the bottom.
    Hinged {
        /// Where the hinges are, seen from outside.
        side: Side,
        /// Which way it opens.
        swing: Swing,
    },
    /// It slides towards this side when it is opened, seen from outside.
    Slides(Side),
}

/// A side of a panel, seen from outside.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Side {
    /// Left.
    Left,
    /// Right.
    Right,
    /// Top.
    Top,
    /// Bottom.
    Bottom,
}

/// Which way a hinged panel opens.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Swing {
    /// Into the open air.
    Out,
    /// Into the room.
    In,
}

/// What glass looks like.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug, Default)]
pub enum Glass {
    /// One sees through it.
    #[default]
    Clear,
    /// One does not: drawn with slanting lines.
    Obscure,
}

/// On which side of the glass a screen stands.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Screen {
    /// In the room.
    Inside,
    /// In the open air.
    Outside,
}

/// Bars across the glass of one panel.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Grille {
    /// Where the bars run.
    pub pattern: GrillePattern,
    /// How wide a bar is, in inches.
    pub bar: Number,
    /// Its colour.
    pub colour: Colour,
}

/// Where the bars of a grille run.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum GrillePattern {
    /// A grid of equal lites: `columns` across and `rows` down. 3 by 2 has two upright bars and a level one.
    Colonial {
        /// Lites across, 1 to 24.
        columns: u32,
        /// Lites down, 1 to 24.
        rows: u32,
    },
    /// One row of equal lites at the top, a level bar below it, and clear glass under that.
    TopRow {
        /// Lites across, 1 to 24.
        columns: u32,
        /// From the top of the glass to the middle of the level bar, in inches.
        height: Number,
    },
    /// Two bars each way, near the edges of the glass, which leave a large lite in the middle.
    Prairie {
        /// From the edge of the glass to the middle of the bar, in inches.
        inset: Number,
    },
}

/// A dimension besides the overall ones, such as the height of a meeting rail.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Dimension {
    /// Which way it is measured.
    pub along: Along,
    /// Where it begins, in inches from the left or the top of the unit.
    pub from: Number,
    /// Where it ends, counted likewise, beyond where it begins.
    pub to: Number,
    /// Printed before the length, such as `meeting rail`; may be empty.
    pub label: String,
}

/// Which way a dimension is measured.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Along {
    /// From left to right; drawn below the unit.
    Width,
    /// From the top down; drawn beside the unit.
    Height,
}

impl Elevation {
    /// A fixed unit of this size, glazed directly, without texts: where to begin.
    ///
    /// # Examples
    /// ```
    /// use astragal_drawing::{Colour, Elevation, Frame, elevation_svg};
    /// use astragal_exact::{LengthUnit, Number};
    /// let frame = Frame { face: Number::from(2), colour: Colour::new("White", 255, 255, 255) };
    /// let picture = Elevation::new(Number::from(60), Number::from(48), LengthUnit::Inch, frame);
    /// assert!(elevation_svg(&picture)?.contains("60 in"));
    /// # Ok::<(), astragal_drawing::DrawingError>(())
    /// ```
    #[must_use]
    pub fn new(width: Number, height: Number, unit: LengthUnit, frame: Frame) -> Elevation {
        Elevation {
            width,
            height,
            unit,
            sash_colour: frame.colour.clone(),
            frame,
            arrangement: Arrangement::One(Panel::new(Operation::Fixed)),
            tag: String::new(),
            title: Vec::new(),
            dimensions: Vec::new(),
        }
    }
}

impl Panel {
    /// A panel of clear glass without a sash, a grille, a screen or a handle: where to begin.
    #[must_use]
    pub fn new(operation: Operation) -> Panel {
        Panel {
            operation,
            sash: None,
            grille: None,
            glass: Glass::Clear,
            tempered: false,
            screen: None,
            handle: None,
        }
    }
}

impl Arrangement {
    /// The panels, from the top down or from left to right.
    pub fn panels(&self) -> &[Panel] {
        match self {
            Arrangement::One(panel) => std::slice::from_ref(panel),
            Arrangement::Stacked { panels, .. } | Arrangement::SideBySide { panels, .. } => panels,
        }
    }

    /// The dividers, from the top down or from left to right.
    pub fn dividers(&self) -> &[Divider] {
        match self {
            Arrangement::One(_) => &[],
            Arrangement::Stacked { dividers, .. } | Arrangement::SideBySide { dividers, .. } => dividers,
        }
    }
}
