//! Orders: a job, its places, its openings, and what was picked for each.
//!
//! The order here is already resolved: facts are inherited, measures have their types, picks name attributes of the
//! opening's catalog. Files are read, and faults in them found, by the crate `astragal-catalog`.

use astragal_trade::cooling_off::PlaceOfSale;
use astragal_trade::measuring::Readings;
use jiff::civil::Date;

use crate::currency::Currency;
use crate::id::{AttributeIndex, Id};
use crate::site::{DeductedBy, Site};
use crate::unit::Pick;

/// A job.
#[derive(Clone, PartialEq, Debug)]
pub struct Order {
    /// The caller's id of the job.
    pub id: String,
    /// The day as of which the order is judged.
    pub date: Date,
    /// The currency of all its prices.
    pub currency: Currency,
    /// Where and when it is agreed to, as far as that is known.
    pub sale: Agreement,
    /// What a person calls the house, and more that is only shown.
    pub label: String,
    /// The floors in file order: id, label.
    pub floors: Vec<Place>,
    /// The rooms in file order.
    pub rooms: Vec<Room>,
    /// The faces in file order.
    pub faces: Vec<Place>,
    /// The openings in file order.
    pub openings: Vec<Opening>,
    /// Data of the caller, carried untouched.
    pub extra: Extra,
}

/// Where and when an order is agreed to.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default)]
pub struct Agreement {
    /// Where it is agreed to.
    pub place: Option<PlaceOfSale>,
    /// The day on which the buyer signs.
    pub signed: Option<Date>,
}

/// A floor or a face.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Place {
    /// The id.
    pub id: Id,
    /// What a person reads.
    pub label: String,
}

/// A room.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Room {
    /// The id.
    pub id: Id,
    /// What a person reads.
    pub label: String,
    /// The floor it is on.
    pub floor: Option<Id>,
}

/// A hole in a wall with its measures, and the units in it.
#[derive(Clone, PartialEq, Debug)]
pub struct Opening {
    /// The tag, unique in the order.
    pub tag: String,
    /// How many of them.
    pub quantity: u32,
    /// The room it is in.
    pub room: Option<Id>,
    /// The face it is on.
    pub face: Option<Id>,
    /// What is known about the opening and its place.
    pub site: Site,
    /// The raw readings from which some of it was worked out.
    pub readings: Option<OpeningReadings>,
    /// What stands in it; one, until mulled units come.
    pub units: Vec<UnitRequest>,
    /// A note to the plant.
    pub note: Option<String>,
    /// Whether it counts in the order.
    pub included: bool,
    /// The tag of the opening to which this is an alternate.
    pub alternate_of: Option<String>,
    /// Data of the caller, carried untouched.
    pub extra: Extra,
}

/// The raw readings of an opening.
#[derive(Clone, PartialEq, Debug)]
pub struct OpeningReadings {
    /// What the tape and the level said.
    pub readings: Readings,
    /// Who has deducted from the sides; `None` when nobody said.
    pub deducted_by: Option<DeductedBy>,
}

/// One unit as it was asked for.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct UnitRequest {
    /// The catalog.
    pub catalog: Id,
    /// The picks in the order they were made.
    pub picks: Vec<Pick>,
    /// Attributes whose picks must never change.
    pub pins: Vec<AttributeIndex>,
    /// Waivers that the unit carries.
    pub waivers: Vec<Waiver>,
}

/// A written release from one rule.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Waiver {
    /// The rule that it waives.
    pub rule: Id,
    /// Where it is written.
    pub reference: String,
    /// The first day on which it holds.
    pub from: Date,
    /// The last day on which it holds; `None` means without end.
    pub until: Option<Date>,
}

impl Waiver {
    /// Whether the waiver holds on a day; both ends are inclusive.
    #[must_use]
    pub fn holds_on(&self, date: Date) -> bool {
        self.from <= date && self.until.is_none_or(|until| date <= until)
    }
}

/// Data of the caller, carried untouched. Numbers are kept as they were written.
#[derive(Clone, PartialEq, Debug, Default)]
pub enum Extra {
    /// Nothing.
    #[default]
    None,
    /// True or false.
    Bool(bool),
    /// A number as written.
    Number(String),
    /// A text.
    Text(String),
    /// A list.
    List(Vec<Extra>),
    /// A table, its keys in the order they were written.
    Table(Vec<(String, Extra)>),
}
