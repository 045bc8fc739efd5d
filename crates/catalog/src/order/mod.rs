//! Reads an order with everything it uses: catalogs, price books, policies, the house, the openings.
//!
//! An *order* is `order.toml`, or `order.json` with the same keys. An opening `K1` in the room `kitchen` with
//! `facts = { year_built = 1964 }` at the house becomes an opening that knows the year it inherits, in the types of the
//! catalog of its unit.
//!
//! What always holds: reading goes on after a finding, so that all are returned at once; with any error there is no
//! order, so that nothing partial looks whole; the day is the order's or the caller's, never today's.
//! Cost: that of the catalogs, and O(openings x facts). Stops at [`OPENINGS_LIMIT`] openings, and at
//! [`QUANTITY_LIMIT`] of one.
//! Source: MEANING, "Facts" and "Files"; docs/reference.md, "order.toml or order.json".

mod extra;
mod facts;
mod house;
mod opening;
mod raw;
mod raw_unit;
mod readings;
mod room_facts;
mod sale;
mod unit;
mod used;
mod vocabulary;

use std::collections::BTreeMap;
use std::path::Path;

use astragal_model::{AttributeIndex, Date, Id, Order};

use self::facts::HouseFacts;
use self::house::House;
use self::opening::{KnownCatalog, KnownCatalogs};
use self::raw::{RawCatalog, RawOrder, Report};
use self::used::{Around, Loaded};
use self::vocabulary::Vocabulary;
use crate::book::LoadedBook;
use crate::finding::{Finding, Findings, Place};
use crate::load::LoadedCatalog;
use crate::policy::LoadedPolicy;
use crate::source::Sources;
use crate::tree;

pub use self::raw::{OPENINGS_LIMIT, QUANTITY_LIMIT};

/// How an order is read.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct ReadOptions {
    /// The day as of which the order is judged, instead of the one that it states.
    pub date: Option<Date>,
}

/// What came of reading an order.
#[derive(Debug)]
pub struct ReadOrder {
    /// All files that were read.
    pub sources: Sources,
    /// What was found, by place.
    pub findings: Vec<Finding>,
    /// The order; `None` when any finding is an error.
    pub order: Option<OrderFile>,
}

/// An order with everything it uses.
#[derive(Debug)]
pub struct OrderFile {
    /// The order.
    pub order: Order,
    /// Its catalogs by id.
    pub catalogs: BTreeMap<Id, UsedCatalog>,
    /// Where its openings stand.
    pub places: OrderPlaces,
}

/// A catalog of an order, with the book and the policy that go with it there.
#[derive(Debug)]
pub struct UsedCatalog {
    /// The catalog.
    pub catalog: LoadedCatalog,
    /// The price book.
    pub book: LoadedBook,
    /// The dealer policy, if there is one.
    pub policy: Option<LoadedPolicy>,
}

/// Where the openings of an order stand in its file.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct OrderPlaces {
    /// By tag.
    pub openings: BTreeMap<String, OpeningPlaces>,
}

/// Where an opening stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OpeningPlaces {
    /// Its tag.
    pub tag: Place,
    /// Its picks, by attribute of the unit's catalog.
    pub picks: BTreeMap<AttributeIndex, Place>,
}

/// Reads an order and everything it uses: `.json` as JSON, everything else as TOML.
///
/// # Examples
///
/// An order that is not there:
///
/// ```
/// use astragal_catalog::order::{ReadOptions, read_order};
///
/// let read = read_order("no/such/order.toml".as_ref(), &ReadOptions::default());
/// assert!(read.order.is_none());
/// assert_eq!(read.findings[0].message(), "there is no file `order.toml`");
/// ```
#[must_use]
pub fn read_order(path: &Path, options: &ReadOptions) -> ReadOrder {
    let mut sources = Sources::new();
    let findings = Findings::new();
    let order = read(path, *options, &mut sources, &findings);
    let order = order.filter(|_| !findings.has_errors());
    ReadOrder {
        findings: findings.into_sorted(&sources),
        sources,
        order,
    }
}

fn read(path: &Path, options: ReadOptions, sources: &mut Sources, findings: &Findings) -> Option<OrderFile> {
    let name = path.file_name().unwrap_or(path.as_os_str()).to_string_lossy();
    let file = sources.read(path, &name, None, findings)?;
    let root = tree::read(sources, file, findings)?;
    let report = Report { file, findings };
    let raw = raw::read(&root, options.date.is_none(), report)?;
    let folder = path.parent().unwrap_or(Path::new(""));
    let around = Around {
        folder,
        currency: raw.currency,
        report,
    };
    let loaded = used::load(&raw.catalogs, around, sources);
    let house = House::new(&raw, report);
    let known = known_catalogs(&loaded, &raw, &house, report);
    let words: Option<Vec<_>> = known
        .values()
        .map(|known| known.as_ref().map(|known| &known.words))
        .collect();
    if let Some(words) = words {
        facts::report_unknown(&raw, &words, report);
    }
    opening::check_tags(&raw.openings, report);
    let found = raw
        .openings
        .iter()
        .map(|opening| opening::find(opening, &house, &known, report));
    let (openings, places): (Vec<_>, Vec<_>) = found.flatten().unzip();
    room_facts::check(&raw, &house, &known, report);
    let tags = openings.iter().map(|opening| opening.tag.clone());
    let places = OrderPlaces {
        openings: tags.zip(places).collect(),
    };
    drop(known);
    if !findings.has_errors() {
        report_unused(&raw, report);
    }

    let order = Order {
        id: raw.id.as_ref()?.value.clone(),
        date: options.date.or(raw.date)?,
        currency: raw.currency?,
        sale: raw.sale,
        label: raw
            .label
            .clone()
            .or_else(|| raw.id.as_ref().map(|id| id.value.clone()))?,
        floors: house::places(&raw.floors),
        rooms: house::rooms(&raw.rooms),
        faces: house::places(&raw.faces),
        openings,
        extra: raw.extra.clone(),
    };
    let used = loaded
        .into_iter()
        .map(|(id, loaded)| Some((Id::new(id), loaded.into_used()?)));
    Some(OrderFile {
        order,
        catalogs: used.collect::<Option<_>>()?,
        places,
    })
}

fn known_catalogs<'a>(
    loaded: &'a BTreeMap<&'a str, Loaded>,
    raw: &'a RawOrder,
    house: &House<'a>,
    report: Report<'_>,
) -> KnownCatalogs<'a> {
    let known = loaded.iter().map(|(id, loaded)| {
        let known = loaded.catalog.as_ref().map(|found| {
            let policy = loaded.policy.as_ref().map(|policy| &policy.policy);
            let words = Vocabulary::new(&found.catalog, policy, policy.is_some() || !loaded.has_policy);
            let facts = HouseFacts::new(raw, house, &words, report);
            KnownCatalog { words, facts }
        });
        (*id, known)
    });
    known.collect()
}

/// Called when there is no error: a unit whose catalog cannot be read might use any of them.
fn report_unused(raw: &RawOrder, report: Report<'_>) {
    let units = raw.openings.iter().flat_map(|opening| &opening.units);
    let used: std::collections::BTreeSet<&str> = units
        .filter_map(|unit| unit.catalog.as_ref())
        .map(|name| name.value.as_str())
        .collect();
    let unused = |catalog: &&RawCatalog| !used.contains(catalog.id.value.as_str());
    for catalog in raw.catalogs.iter().filter(unused) {
        let text = format!("no opening uses catalog `{}`", catalog.id.value);
        let finding = Finding::warning("CATALOG_NOT_USED", text).at(report.place(&catalog.id.span));
        report.findings.push(finding.with_help("leave it out"));
    }
}

#[cfg(test)]
mod tests;
