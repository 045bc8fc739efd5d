//! A second, naive reading of what a catalog means: the same answers as the judge's, worked out in another style.
//!
//! Everything is named by text: `glazing.upper` is an attribute of a part, `escape@upper` a rule of a part. A
//! [`Reading`] holds all of a judgement that is meaning; messages, steps and what a rule reads are not in it.
//!
//! Always holds: of the model only data types are used; no plan, no environment, none of its arithmetic.
//! Cost: small catalogs only; names are made again at every look.

mod answer;
mod expression;
mod fraction;
mod prices;
mod reader;
mod rules;
mod table;
mod trade;
mod truth;

use std::collections::{BTreeMap, BTreeSet};

pub use answer::{Answer, Datum};
use astragal_model::{AttributeIndex, Declarations, Id, PartIndex, Pick, Setting, Standing, Unit, Verdict};
pub(crate) use fraction::fraction;
use num_rational::BigRational;
use reader::Reader;
pub(crate) use reader::{attribute_name, part_name, stand_of, subject_name};

/// How often each situation was met while reading: what, how.
pub type Met = BTreeMap<(&'static str, &'static str), u64>;

/// What stands at an attribute.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Stand {
    /// Nothing yet, for want of these.
    Open(BTreeSet<String>),
    /// The attribute is not asked.
    NotAsked,
    /// This option, filled in.
    Filled(String),
    /// This option, picked, perhaps in a quote of this day.
    Picked(String, Option<String>),
}

/// How a rule fails to hold.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Failing {
    /// It is false.
    Broken,
    /// It has no value, for this reason.
    NoRow(String),
    /// It depends on these.
    Undecided(BTreeSet<String>),
}

/// What a price item comes to.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Line {
    /// This much.
    Amount(BigRational),
    /// It depends on these.
    Unknown(BTreeSet<String>),
    /// There is no amount.
    NoPrice,
}

/// The price of a unit.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Price {
    /// There is no book.
    NotPriced,
    /// This much.
    Known(BigRational),
    /// It depends on these.
    Unknown(BTreeSet<String>),
    /// An item has no price.
    NoPrice,
}

/// Everything that follows from a unit, by name.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Reading {
    /// Every rule that does not plainly hold: how, and what follows.
    pub rules: BTreeMap<String, (Failing, Standing)>,
    /// Every figure: its value, and whether its part exists.
    pub figures: BTreeMap<String, (Answer, Answer)>,
    /// Every item that is incurred or may be, and whether it is standard.
    pub items: BTreeMap<String, (Line, bool)>,
    /// The sum of all items, where it is known.
    pub subtotal: Option<BigRational>,
    /// Every tail step: its id, what it adds, the total after it.
    pub tail: Vec<(String, BigRational, BigRational)>,
    /// The price of one unit.
    pub total: Price,
    /// Every notice that is carried (`None`) or may be (for want of these).
    pub notices: BTreeMap<String, Option<BTreeSet<String>>>,
    /// Every open attribute, with what it waits for.
    pub open: BTreeMap<String, BTreeSet<String>>,
    /// The worst that follows.
    pub verdict: Verdict,
    /// The waivers that made a difference.
    pub waivers_used: BTreeSet<usize>,
    /// The authorities whose rules did not bind.
    pub authorities_not_applied: BTreeSet<String>,
}

/// Completes picks with standards. Later picks of an attribute replace earlier ones.
#[must_use]
pub fn fill(setting: &Setting<'_>, picks: &[Pick]) -> BTreeMap<String, Stand> {
    let declared = setting.catalog.declarations();
    let mut given = BTreeMap::new();
    for pick in picks {
        if let Some(attribute) = declared.attributes.get(pick.attribute) {
            let quoted = pick.quoted.map(|date| date.to_string());
            let stand = Stand::Picked(pick.option.as_str().to_owned(), quoted);
            given.insert(attribute_name(declared, attribute), stand);
        }
    }
    without_wants(Reader::new(setting, given, true).unit())
}

/// Everything that follows from a unit in its setting, and what was met on the way.
#[must_use]
pub fn read(setting: &Setting<'_>, unit: &Unit) -> (Reading, Met) {
    let given = stands(setting.catalog.declarations(), unit);
    let alone = Reader::new(setting, alone(setting, &given), true);
    // Filled once more from what was filled, so that nothing is worked out from half a unit.
    let alone = Reader::new(setting, without_wants(alone.unit()), false);
    let reader = Reader::new(setting, given, false);
    let reading = reader.reading(&alone);
    (reading, reader.all_met())
}

/// The attributes of the same name at earlier parts of the kind.
fn earlier_parts(declared: &Declarations, index: AttributeIndex) -> impl Iterator<Item = String> {
    let own = declared.attributes.get(index);
    let attributes = declared.attributes.values();
    attributes
        .filter(move |other| {
            own.is_some_and(|own| other.id == own.id && own.part.is_some() && other.part < own.part)
        })
        .map(|other| attribute_name(declared, other))
}

/// What stands at every attribute of a unit; attributes beyond its end are open.
#[must_use]
pub fn stands(declared: &Declarations, unit: &Unit) -> BTreeMap<String, Stand> {
    let attributes = declared.attributes.iter();
    attributes
        .map(|(index, attribute)| {
            let stand = match unit.choices.get(index) {
                Some(choice) => stand_of(choice),
                None => Stand::Open(BTreeSet::new()),
            };
            (attribute_name(declared, attribute), stand)
        })
        .collect()
}

/// Where standards alone begin: with what is chosen at attributes that have none.
fn alone(setting: &Setting<'_>, given: &BTreeMap<String, Stand>) -> BTreeMap<String, Stand> {
    let declared = setting.catalog.declarations();
    let mut kept = BTreeMap::new();
    for (index, attribute) in declared.attributes.iter() {
        let name = attribute_name(declared, attribute);
        let of_policy = setting
            .policy
            .and_then(|policy| policy.terms.standards.get(&index));
        let standard = of_policy.unwrap_or(&attribute.standard);
        if let (astragal_model::Standard::Ask, Some(stand @ (Stand::Filled(_) | Stand::Picked(..)))) =
            (standard, given.get(&name))
            && earlier_parts(declared, index).all(|earlier| given.get(&earlier) == Some(&Stand::NotAsked))
        {
            kept.insert(name, stand.clone());
        }
    }
    kept
}

fn without_wants(mut unit: BTreeMap<String, Stand>) -> BTreeMap<String, Stand> {
    for stand in unit.values_mut() {
        if let Stand::Open(wants) = stand {
            wants.clear();
        }
    }
    unit
}

/// `escape@upper`: a rule, item or notice, with its part where it has one.
pub(crate) fn at_part(declared: &Declarations, id: &Id, part: Option<PartIndex>) -> String {
    match part.and_then(|part| declared.parts.get(part)) {
        Some(part) => format!("{}@{}", id.as_str(), part.id.as_str()),
        None => id.as_str().to_owned(),
    }
}
