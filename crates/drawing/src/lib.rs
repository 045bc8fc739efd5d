//! Elevations of windows, drawn to scale, and sheets of them for printing.
//!
//! Data in, text out: an [`Elevation`] becomes an SVG picture ([`elevation_svg`]), a [`Sheet`] of elevations by floor and
//! room becomes an HTML page that prints on A4 and Letter ([`sheet_html`]). This crate knows no catalog, no order and no
//! file, and decides nothing about a unit: what it is told, it draws.
//!
//! # What is drawn
//! A unit as it is seen **from outside**; left and right are those of somebody who stands there.
//!
//! | on the drawing | means | comes from |
//! |---|---|---|
//! | dashed lines from two corners | they meet at the **hinge side**; whether it opens in or out is said in words | [`Operation::Hinged`] |
//! | arrow | the panel slides that way when it is opened | [`Operation::Slides`] |
//! | `F` | fixed | [`Operation::Fixed`] |
//! | `T` in a box | tempered glass, as ordered | [`Panel::tempered`] |
//! | slanting lines | obscure glass | [`Glass::Obscure`] |
//! | a corner of mesh | an insect screen over this panel, inside or outside as the words say | [`Panel::screen`] |
//! | a small bar on a sash | handle or lock | [`Panel::handle`] |
//!
//! Every drawing has a legend of those that occur, and says the same in words: a mark that finds no room on a small unit is
//! left out of the drawing and never out of the words ([`description`]). Overall width and height are always dimensioned;
//! further [`Dimension`]s are stacked outwards. Lengths are written by `format_length`, exactly.
//!
//! # Examples
//! A double-hung unit with a half screen, from data to picture:
//! ```
//! use astragal_drawing::{
//!     Along, Arrangement, Colour, Dimension, Divider, Elevation, Frame, Grille, GrillePattern, Operation, Panel, Screen,
//!     Side, elevation_svg,
//! };
//! use astragal_exact::{LengthUnit, Number, parse_length};
//!
//! let inches = |text: &str| parse_length(text, Some(LengthUnit::Inch));
//! let bronze = Colour::new("Bronze", 74, 60, 49);
//! let white = Colour::new("White", 250, 250, 247);
//!
//! // Both sashes have a grille of 3 lites across and 2 down, and a face of 1 7/8 in.
//! let pattern = GrillePattern::Colonial { columns: 3, rows: 2 };
//! let grille = Grille { pattern, bar: inches("7/8")?, colour: white.clone() };
//! let mut upper = Panel::new(Operation::Slides(Side::Bottom));
//! upper.sash = Some(inches("1 7/8")?);
//! upper.grille = Some(grille);
//! let mut lower = Panel { operation: Operation::Slides(Side::Top), ..upper.clone() };
//! lower.screen = Some(Screen::Outside); // a half screen is one over the lower panel only
//!
//! // The sashes meet 29 1/2 in below the top; a mullion would have a bar wider than nothing.
//! let meeting = Divider { at: inches("29 1/2")?, bar: Number::ZERO };
//! let frame = Frame { face: inches("1 3/4")?, colour: bronze };
//! let mut unit = Elevation::new(inches("35 5/8")?, inches("59")?, LengthUnit::Inch, frame);
//! unit.sash_colour = white;
//! unit.arrangement = Arrangement::Stacked { panels: vec![upper, lower], dividers: vec![meeting] };
//! unit.tag = "D1".to_owned();
//! unit.title = vec!["Bedroom 2, garden side".to_owned()];
//! unit.dimensions.push(Dimension {
//!     along: Along::Height,
//!     from: inches("29 1/2")?,
//!     to: inches("59")?,
//!     label: "to meeting rail".to_owned(),
//! });
//!
//! let svg = elevation_svg(&unit)?;
//! assert!(svg.starts_with("<svg "));
//! for text in [
//!     "35 5/8 in x 59 in",
//!     "to meeting rail 29 1/2 in",
//!     "Upper: slides down; lower: slides up",
//!     "Lower: screen outside",
//!     "Frame: Bronze; sash: White",
//!     "Viewed from outside",
//!     "3/4 in = 1 ft (1:16)",
//! ] {
//!     assert!(svg.contains(text), "{text}");
//! }
//! # Ok::<(), Box<dyn std::error::Error>>(())
//! ```
//! What cannot be drawn is refused with a sentence and what to do:
//! ```
//! use astragal_drawing::{Arrangement, Colour, Divider, Elevation, Frame, Operation, Panel, elevation_svg};
//! use astragal_exact::{LengthUnit, Number};
//!
//! let frame = Frame { face: Number::from(2), colour: Colour::new("White", 250, 250, 247) };
//! let mut unit = Elevation::new(Number::from(60), Number::from(36), LengthUnit::Inch, frame);
//! let panels = vec![Panel::new(Operation::Fixed), Panel::new(Operation::Fixed)];
//! let outside = Divider { at: Number::from(64), bar: Number::from(2) };
//! unit.arrangement = Arrangement::SideBySide { panels, dividers: vec![outside] };
//! let error = elevation_svg(&unit).err().ok_or("drawn")?;
//! assert_eq!(error.to_string(), "divider 1 is at `64 in`; expected it with its bar between 2 in and 58 in");
//! assert!(error.help().starts_with("measure dividers from the top or the left"));
//! # Ok::<(), &str>(())
//! ```
//! A sheet of an order is in [`sheet_html`] and [`Cell`]; `cargo run -p astragal-drawing --example gallery -- DIR` writes a
//! gallery and a sheet to look at.
//!
//! # What always holds
//! - **To scale.** All lengths are exact until an edge is rounded once, to a hundredth of a millimetre on paper. The picture
//!   states its own size in millimetres and its scale in words.
//! - **Everything is within the picture**, and no text lies on the unit or on another text. Widths of texts are those of
//!   Arial and faces of its measure; a wider face may break that.
//! - **Every text is escaped**; controls, what XML forbids and marks that turn the direction of writing are left out.
//! - **The same data give the same bytes**, and nothing panics. Cost is linear in what is drawn; [`limit`] has the limits.
//!
//! # What is not drawn
//! Units joined to others, panels within panels (a picture unit over two casements), arched and other shapes, and how far a
//! sash opens. The colours are those given, as screen and paper show them: the name governs.

mod colour;
mod dimension;
mod elevation;
mod error;
mod figure;
mod geometry;
mod grille;
mod hatch;
mod layout;
mod legend;
mod letter;
pub mod limit;
mod mark;
mod motion;
mod panel;
mod scale;
mod screen;
mod shape;
mod sheet;
mod single;
mod svg;
mod words;

pub use colour::Colour;
pub use elevation::{
    Along, Arrangement, Dimension, Divider, Elevation, Frame, Glass, Grille, GrillePattern, Operation, Panel,
    Screen, Side, Swing,
};
pub use error::{DrawingError, LengthOf};
pub use layout::check_elevation;
pub use scale::Scale;
pub use sheet::{Cell, Floor, Picture, Room, Sheet, Standing, Status, sheet_html};
pub use single::{elevation_svg, elevation_svg_at};
pub use words::{description, size_words};
