//! docs later
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
pub use error::DrawingError;
pub use scale::Scale;
pub use sheet::{Cell, Floor, Picture, Room, Sheet, Standing, Status, sheet_html};
pub use single::{elevation_svg, elevation_svg_at};
pub use words::{description, size_words};
