//! Why something cannot be drawn, in one sentence.
//!
//! A frame 20 in wide around a unit 28 in wide leaves no glass: "the frame is `20 in` wide on each side, which leaves no
//! opening in a unit of `28 in x 45 in`".
//!
//! Always holds: lower case, one line, user input in backticks; what was found, what was expected; the help says what to do.

use std::fmt;

/// A length of an elevation; dividers and panels are counted from 1, from the top or from the left.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
#[non_exhaustive]
pub enum LengthOf {
    /// The width over the frame.
    Width,
    /// The height over the frame.
    Height,
    /// The face of the frame.
    Frame,
    /// Where a divider stands.
    Divider(usize),
    /// How wide the bar of a divider is.
    DividerBar(usize),
    /// The face of the sash of a panel.
    Sash(usize),
    /// The bar of the grille of a panel.
    GrilleBar(usize),
    /// The height of the top row of the grille of a panel.
    TopRow(usize),
    /// The inset of the grille of a panel.
    Inset(usize),
}

impl fmt::Display for LengthOf {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(match self {
            LengthOf::Width => "width",
            LengthOf::Height => "height",
            LengthOf::Frame => "face of the frame",
            LengthOf::Divider(_) => "place of a divider",
            LengthOf::DividerBar(_) => "bar of a divider",
            LengthOf::Sash(_) => "face of a sash",
            LengthOf::GrilleBar(_) => "bar of the grille",
            LengthOf::TopRow(_) => "height of the top row",
            LengthOf::Inset(_) => "inset of the grille",
        })
    }
}

/// Why something cannot be drawn.
#[derive(Clone, PartialEq, Eq, Debug)]
#[non_exhaustive]
pub enum DrawingError {
    /// A length is not one that can be drawn.
    Length {
        /// Which.
        what: LengthOf,
        /// What was found, as a person writes it.
        found: String,
        /// What is expected.
        expected: String,
    },
    /// The frame leaves no opening.
    FrameFillsUnit {
        /// The face of the frame.
        face: String,
        /// The size of the unit.
        size: String,
    },
    /// There are no panels, or too many.
    Panels {
        /// How many were found.
        found: usize,
        /// How many may be drawn.
        most: usize,
    },
    /// There is not one divider between each two panels.
    Dividers {
        /// How many were found.
        found: usize,
        /// How many panels there are.
        panels: usize,
    },
    /// A divider lies outside the frame, or on or before the one that it follows.
    DividerPlace {
        /// Which divider, from 1, from the top or from the left.
        number: usize,
        /// Where it is.
        found: String,
        /// Between what it has to lie, its bar included.
        between: (String, String),
    },
    /// The sash of a panel leaves no glass.
    SashFillsPanel {
        /// Which panel, from 1, from the top or from the left.
        panel: usize,
        /// The face of the sash.
        face: String,
        /// The size of the panel.
        size: String,
    },
    /// A grille has no lite, or too many.
    GrilleCount {
        /// Which panel, from 1.
        panel: usize,
        /// Lites across and down, as found.
        found: (u32, u32),
        /// How many there may be each way.
        most: u32,
    },
    /// The bars of a grille leave no glass.
    GrilleFillsGlass {
        /// Which panel, from 1.
        panel: usize,
        /// The size of its glass.
        size: String,
    },
    /// A dimension does not lie within the unit.
    DimensionPlace {
        /// Where it begins and ends.
        found: (String, String),
        /// The largest it may end at.
        most: String,
    },
    /// A text is too long, or there are too many.
    Text {
        /// Which.
        what: String,
        /// How long it is, or how many there are.
        found: usize,
        /// How much is taken.
        most: usize,
        /// What is counted: `letters` or `lines`.
        of: String,
    },
    /// A sheet has too many openings.
    Cells {
        /// How many were found.
        found: usize,
        /// How many may be drawn.
        most: usize,
    },
}

impl DrawingError {
    /// What to do about it, in a sentence.
    pub fn help(&self) -> &'static str {
        match self {
            DrawingError::Length { .. } => "check the measure and the unit that it is written in",
            DrawingError::FrameFillsUnit { .. } => "check the size of the unit and the face of its frame",
            DrawingError::Panels { .. } => "draw the unit as several units side by side",
            DrawingError::Dividers { .. } => "give one divider fewer than panels",
            DrawingError::DividerPlace { .. } => {
                "measure dividers from the top or the left of the unit, in order, to the middle of their bar"
            }
            DrawingError::SashFillsPanel { .. } => "check the dividers and the face of the sash",
            DrawingError::GrilleCount { .. } => "give the lites across and down; 1 and 1 has no bar",
            DrawingError::GrilleFillsGlass { .. } => "check the width of the bars and how many there are",
            DrawingError::DimensionPlace { .. } => {
                "measure dimensions from the left or the top of the unit, the smaller end first"
            }
            DrawingError::Text { .. } => "shorten it",
            DrawingError::Cells { .. } => "split the order into several sheets",
        }
    }
}

impl fmt::Display for DrawingError {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            DrawingError::Length {
                what,
                found,
                expected,
            } => {
                write!(formatter, "the {what} is `{found}`; expected {expected}")
            }
            DrawingError::FrameFillsUnit { face, size } => write!(
                formatter,
                "the frame is `{face}` wide on each side, which leaves no opening in a unit of `{size}`"
            ),
            DrawingError::Panels { found, most } => {
                write!(formatter, "there are `{found}` panels; expected 1 to {most}")
            }
            DrawingError::Dividers { found, panels } => write!(
                formatter,
                "there are `{found}` dividers for `{panels}` panels; expected one between each two"
            ),
            DrawingError::DividerPlace {
                number,
                found,
                between: (low, high),
            } => write!(
                formatter,
                "divider {number} is at `{found}`; expected it with its bar between {low} and {high}"
            ),
            DrawingError::SashFillsPanel { panel, face, size } => write!(
                formatter,
                "the sash of panel {panel} is `{face}` wide on each side, which leaves no glass in a panel of `{size}`"
            ),
            DrawingError::GrilleCount {
                panel,
                found: (columns, rows),
                most,
            } => write!(
                formatter,
                "the grille of panel {panel} has `{columns}` lites across and `{rows}` down; expected 1 to {most} each way"
            ),
            DrawingError::GrilleFillsGlass { panel, size } => write!(
                formatter,
                "the grille of panel {panel} leaves no glass between its bars; the glass is `{size}`"
            ),
            DrawingError::DimensionPlace {
                found: (from, to),
                most,
            } => write!(
                formatter,
                "a dimension runs from `{from}` to `{to}`; expected it to end beyond its beginning, within 0 and {most}"
            ),
            DrawingError::Text {
                what,
                found,
                most,
                of,
            } => {
                write!(
                    formatter,
                    "the {what} has `{found}` {of}; expected at most {most}"
                )
            }
            DrawingError::Cells { found, most } => {
                write!(
                    formatter,
                    "the sheet has `{found}` openings; expected at most {most}"
                )
            }
        }
    }
}

impl std::error::Error for DrawingError {}
