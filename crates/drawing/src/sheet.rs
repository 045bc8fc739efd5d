//! What there is to print: an order's openings by floor and room.
//!
//! A sheet has floors, a floor has rooms, a room has cells; a cell is one opening with its drawing, its tag, how many there
//! are, and what is said about it.
//!
//! Always holds: plain data; the texts are the caller's, and are printed as they are.

mod page;
mod rows;
mod style;

pub use page::sheet_html;

use astragal_exact::LengthUnit;

use crate::elevation::Elevation;

/// The openings of an order, to be printed on one or more pages.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Sheet {
    /// The name of the order; it also stands at the foot of every page.
    pub title: String,
    /// Lines under it: for whom, the day, the revision.
    pub lines: Vec<String>,
    /// What the scale is stated in. The lengths of each unit are written in its own.
    pub unit: LengthUnit,
    /// In the order in which they are printed.
    pub floors: Vec<Floor>,
    /// Notes at the end of the sheet.
    pub notes: Vec<String>,
}

/// One floor of the house.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Floor {
    /// Such as `Ground floor`.
    pub name: String,
    /// In the order in which they are printed.
    pub rooms: Vec<Room>,
}

/// One room.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Room {
    /// Such as `Kitchen`.
    pub name: String,
    /// In the order in which they are printed.
    pub cells: Vec<Cell>,
}

/// One opening of the sheet.
///
/// Under the drawing are printed: tag, quantity and status; the size; what the drawing shows in words (see
/// [`description`](crate::description)); `lines`; `cautions`; `notes`. What the drawing says need not be repeated.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Cell {
    /// What the opening is called; the tag of the elevation is not printed.
    pub tag: String,
    /// How many units of it are ordered.
    pub quantity: u32,
    /// Its drawing, or why there is none.
    pub picture: Picture,
    /// The caller's word on whether it can be made, if there is one.
    pub status: Option<Status>,
    /// What else there is to say about the unit: interior colour, glass package, hardware.
    pub lines: Vec<String>,
    /// What has to be looked at before the unit is ordered; printed so that nobody misses it.
    pub cautions: Vec<String>,
    /// What is good to know.
    pub notes: Vec<String>,
}

/// The drawing of an opening, or why there is none.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Picture {
    /// The unit. If it cannot be drawn, its cell says why, and the rest of the sheet is printed all the same.
    Drawn(Box<Elevation>),
    /// Why it is not drawn, such as `the width is not measured yet`.
    NotDrawn(String),
}

/// A status in the caller's words.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Status {
    /// Such as `holds`, `does not hold`, `cannot be decided`.
    pub words: String,
    /// How it is printed, so that it can be told at a glance and without colours.
    pub standing: Standing,
}

/// How a status is printed.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Standing {
    /// In a thin box.
    Holds,
    /// White on black.
    DoesNotHold,
    /// In a dashed box.
    Undecided,
}

impl Sheet {
    /// All cells, floor by floor and room by room.
    pub fn cells(&self) -> impl Iterator<Item = &Cell> + Clone {
        let rooms = self.floors.iter().flat_map(|floor| &floor.rooms);
        rooms.flat_map(|room| &room.cells)
    }
}
