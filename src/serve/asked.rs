//! The unit of a request, looked up in the library and prepared.
//!
//! Everything that is wrong is found in one go, where it can be: without a catalog the rest of the unit cannot be looked up, and a
//! list that is too long is not looked at.
//!
//! Always holds: what comes out names things that are there.
//! LIMIT: [`ENTRIES_MAX`] entries of each list.
//! Cost: preparing, unless the same opening was asked about before; then one look-up a pick.

use std::collections::BTreeMap;
use std::sync::Arc;

use astragal_core::engine::{Engine, NotPrepared};
use astragal_core::prepare::Prepared;
use astragal_model::{Authorities, Date, Setting, Site, UnitRequest, Waiver, Want};
use prost::Message as _;
use tokio::sync::Semaphore;
use tonic::Status;

use crate::quote::ask::UsedOn;
use crate::serve::cache::Cache;
use crate::serve::fault::{Faults, Reason, failed, shown};
use crate::serve::library::Library;
use crate::serve::product::Product;
use crate::serve::revisions::{self, BOOKS, CATALOGS, POLICIES};
use crate::serve::v1;
use crate::serve::{day, finding, picks, site, waivers};

/// How many entries a list of a request may have.
const ENTRIES_MAX: usize = 1_000;
/// How many edges of a diagram are looked at without leaving the asynchronous threads: a few nanoseconds each.
const QUICK_EDGES_MAX: usize = 10_000;

/// What all requests share.
pub(super) struct Served {
    pub(super) library: Library,
    pub(super) settings: Cache<Known>,
    /// The places for questions that wait for a thread or have one.
    pub(super) places: Arc<Semaphore>,
}

/// What is known of an opening, prepared: all of a request but its picks.
pub(super) struct Known {
    product: Arc<Product>,
    book: usize,
    dealer: Option<usize>,
    date: Date,
    site: Site,
    waivers: Vec<Waiver>,
    authorities: Authorities,
    /// Or why not: a unit can be judged all the same.
    pub(super) prepared: Result<Prepared, NotPrepared>,
    /// From what an answer is worked out.
    pub(super) revisions: v1::Revisions,
    /// Everything that may be wanted, as it is said.
    pub(super) wants: BTreeMap<Want, v1::Want>,
}

/// A unit as it came, and its setting if that is kept. Nothing else was looked up yet.
pub(super) struct Arrived {
    /// All of it but picks and pins.
    unit: v1::Unit,
    picks: Vec<v1::Pick>,
    pins: Vec<String>,
    key: Vec<u8>,
    kept: Option<Arc<Known>>,
    /// Lists that were too long, and are empty here.
    too_long: Faults,
}

impl Arrived {
    /// Takes a unit in.
    pub(super) fn new(served: &Served, unit: Option<v1::Unit>) -> Result<Self, Status> {
        let mut unit = required(unit)?;
        let picks = std::mem::take(&mut unit.picks);
        let pins = std::mem::take(&mut unit.pins);
        let key = unit.encode_to_vec();
        let kept = served.settings.find(&key);
        let mut too_long = Faults::default();
        let picks = taken("picks", picks, &mut too_long);
        // Pins without their picks would be blamed for what is none of their fault.
        let pins = if too_long.is_empty() { pins } else { Vec::new() };
        let pins = taken("pins", pins, &mut too_long);
        unit.measures = taken("measures", unit.measures, &mut too_long);
        unit.facts = taken("facts", unit.facts, &mut too_long);
        unit.waivers = taken("waivers", unit.waivers, &mut too_long);
        Ok(Self {
            unit,
            picks,
            pins,
            key,
            kept,
            too_long,
        })
    }

    /// Whether all options are worked out within some tens of microseconds: nothing is left to prepare or to judge, and
    /// the diagram is small.
    pub(super) fn is_quick(&self) -> bool {
        let is_carried = self.picks.iter().any(|pick| pick.quoted.is_some());
        let kept = self.kept.as_ref().filter(|_| !is_carried);
        kept.is_some_and(|known| {
            // What depends on something takes three questions, one of them with marks.
            let questions = if known.wants.is_empty() { 1 } else { 4 };
            let prepared = known.prepared.as_ref();
            prepared.is_ok_and(|prepared| prepared.edge_count().saturating_mul(questions) <= QUICK_EDGES_MAX)
        })
    }
}

/// A unit that was asked about.
pub(super) struct Asked {
    pub(super) known: Arc<Known>,
    pub(super) request: UnitRequest,
}

impl Asked {
    /// Looks a unit up. `more` looks up what else the request has, and notes its faults.
    pub(super) fn new<T>(
        served: &Served,
        arrived: Arrived,
        more: impl FnOnce(&Product, &mut Faults) -> T,
    ) -> Result<(Self, T), Status> {
        let Arrived {
            unit,
            picks,
            pins,
            key,
            kept,
            too_long,
        } = arrived;
        let mut faults = Faults::default();
        let known = match kept {
            _ if !too_long.is_empty() => Known::new(served, &unit, too_long).map(Arc::new),
            Some(kept) => Ok(kept),
            None => served
                .settings
                .find_or(key, || Known::new(served, &unit, Faults::default())),
        };
        let product = match &known {
            Ok(known) => &known.product,
            Err(refused) => match &refused.product {
                Some(product) => product,
                None => return Err(refused.faults.status()),
            },
        };
        let found_picks = picks::picks(&picks, product, &mut faults);
        let found_pins = picks::pins(&pins, &picks, product, &mut faults);
        let more = more(product, &mut faults);
        let known = match &known {
            Ok(known) => Arc::clone(known),
            Err(refused) => return Err(refused.faults.and(&faults).status()),
        };
        faults.into_result()?;
        let product = &known.product;
        let request = UnitRequest {
            catalog: product.catalog.declarations().id.clone(),
            picks: found_picks,
            pins: found_pins,
            waivers: known.waivers.clone(),
        };
        let asked = Self { request, known };
        Ok((asked, more))
    }

    /// The catalog.
    pub(super) fn product(&self) -> &Product {
        &self.known.product
    }

    /// The engine that answers.
    pub(super) fn engine(&self) -> &Engine {
        self.known.engine()
    }

    /// The setting, prepared; the error says why it cannot be.
    pub(super) fn prepared(&self) -> Result<&Prepared, Status> {
        self.known.prepared.as_ref().map_err(|error| {
            let reason = match error {
                NotPrepared::TooMuchMoney => Reason::TooMuchMoney,
                NotPrepared::OtherAuthorities | NotPrepared::OtherPolicy => Reason::Internal,
            };
            let declared = self.product().catalog.declarations().measures.iter();
            let given = declared.filter(|(at, _)| self.known.site.measures.at(*at).is_some());
            let given: Vec<String> = given.map(|(_, measure)| format!("`{}`", measure.id)).collect();
            let mut faults = Faults::default();
            let message = match given.as_slice() {
                [] => error.to_string(),
                given => format!("{error}; it is measured by {}", given.join(", ")),
            };
            faults.push(reason, "unit", &message);
            faults.status()
        })
    }

    /// The catalog with its book and policy, as of the day.
    pub(super) fn on(&self) -> Result<UsedOn<'_>, Status> {
        let on = self.known.on();
        on.ok_or_else(|| failed(Reason::Internal, "a price book or policy is no longer there"))
    }

    /// What stands still around the unit.
    pub(super) fn setting(&self) -> Result<Setting<'_>, Status> {
        let UsedOn { used, date } = self.on()?;
        Ok(Setting {
            catalog: used.catalog,
            book: Some(used.book),
            policy: used.policy,
            site: &self.known.site,
            waivers: &self.known.waivers,
            authorities: &self.known.authorities,
            date,
        })
    }

    /// From what an answer is worked out.
    pub(super) fn revisions(&self) -> v1::Revisions {
        self.known.revisions.clone()
    }
}

/// What is wrong with a request beside its picks, and the catalog in which its picks can still be looked up.
struct Refused {
    faults: Faults,
    product: Option<Arc<Product>>,
}

impl Known {
    /// `faults` are known already; where there are some, this is refused.
    fn new(served: &Served, unit: &v1::Unit, mut faults: Faults) -> Result<Self, Refused> {
        let refuse = |faults, product: Option<&Arc<Product>>| Refused {
            faults,
            product: product.cloned(),
        };
        let date = day::needed(unit.date.as_ref(), "unit.date", &mut faults);
        let Some(product) = catalog(&unit.catalog, &served.library, "unit.catalog", &mut faults) else {
            revisions::id(&unit.book, BOOKS, "unit.book", &mut faults);
            if !unit.policy.is_empty() {
                revisions::id(&unit.policy, POLICIES, "unit.policy", &mut faults);
            }
            return Err(refuse(faults, None));
        };
        let book = book(&unit.book, product, &mut faults);
        let dealer = dealer(&unit.policy, product, &mut faults);
        let site = site::site(unit, product, &mut faults);
        let waivers = waivers::waivers(&unit.waivers, product, dealer, &mut faults);
        let (Some(date), Some(book), true) = (date, book, faults.is_empty()) else {
            return Err(refuse(faults, Some(product)));
        };
        let Some(prepared) = prepare(product, book, dealer, date, (&site, &waivers)) else {
            faults.push(Reason::Internal, "unit", "no price book at its position");
            return Err(refuse(faults, None));
        };
        let mut known = Self {
            product: Arc::clone(product),
            book,
            dealer,
            date,
            site,
            waivers,
            authorities: Authorities::default(),
            wants: BTreeMap::new(),
            revisions: revisions::revisions(product, book, dealer),
            prepared,
        };
        known.wants = known.all_wants();
        Ok(known)
    }

    fn all_wants(&self) -> BTreeMap<Want, v1::Want> {
        let Ok(prepared) = &self.prepared else {
            return BTreeMap::new();
        };
        let wants = prepared.wants().into_iter();
        let on = self.on();
        wants
            .filter_map(|want| {
                let said = finding::want(on?, &want);
                Some((want, said))
            })
            .collect()
    }

    fn engine(&self) -> &Engine {
        self.product.engine(self.dealer)
    }

    fn on(&self) -> Option<UsedOn<'_>> {
        Some(UsedOn {
            used: self.product.used(self.book, self.dealer)?,
            date: self.date,
        })
    }
}

fn prepare(
    product: &Product,
    book: usize,
    dealer: Option<usize>,
    date: Date,
    (site, waivers): (&Site, &[Waiver]),
) -> Option<Result<Prepared, NotPrepared>> {
    let used = product.used(book, dealer)?;
    let authorities = Authorities::default();
    let setting = Setting {
        catalog: used.catalog,
        book: Some(used.book),
        policy: used.policy,
        site,
        waivers,
        authorities: &authorities,
        date,
    };
    Some(product.engine(dealer).prepare(&setting))
}

fn required(unit: Option<v1::Unit>) -> Result<v1::Unit, Status> {
    unit.ok_or_else(|| {
        let mut faults = Faults::default();
        faults.push(Reason::Required, "unit", "a unit is asked for");
        faults.status()
    })
}

/// A list of a request; nothing of one that is too long.
fn taken<T>(name: &str, list: Vec<T>, faults: &mut Faults) -> Vec<T> {
    let length = list.len();
    if length <= ENTRIES_MAX {
        return list;
    }
    let message = format!("{length} entries; at most {ENTRIES_MAX} are taken");
    faults.push(Reason::TooMany, format!("unit.{name}"), &message);
    Vec::new()
}

/// The catalog with this resource name.
pub(super) fn catalog<'a>(
    name: &str,
    library: &'a Library,
    field: &str,
    faults: &mut Faults,
) -> Option<&'a Arc<Product>> {
    let id = revisions::id(name, CATALOGS, field, faults)?;
    let found = library.product(id);
    if found.is_none() {
        let message = format!("there is no catalog {}", shown(name));
        let known = library.products().map(Product::id);
        faults.push_unknown(Reason::UnknownCatalog, field, &message, (id, known));
    }
    found
}

fn book(name: &str, product: &Product, faults: &mut Faults) -> Option<usize> {
    let id = revisions::id(name, BOOKS, "unit.book", faults)?;
    let found = product
        .books
        .iter()
        .position(|priced| priced.book.id.as_str() == id);
    if found.is_none() {
        let message = format!("catalog `{}` has no price book {}", product.id(), shown(name));
        let known = product.books.iter().map(|priced| priced.book.id.as_str());
        faults.push_unknown(Reason::UnknownBook, "unit.book", &message, (id, known));
    }
    found
}

fn dealer(name: &str, product: &Product, faults: &mut Faults) -> Option<usize> {
    if name.is_empty() {
        return None;
    }
    let id = revisions::id(name, POLICIES, "unit.policy", faults)?;
    let found = product
        .dealers
        .iter()
        .position(|dealer| dealer.policy.terms.id.as_str() == id);
    if found.is_none() {
        let message = format!("catalog `{}` has no policy {}", product.id(), shown(name));
        let known = product
            .dealers
            .iter()
            .map(|dealer| dealer.policy.terms.id.as_str());
        faults.push_unknown(Reason::UnknownPolicy, "unit.policy", &message, (id, known));
    }
    found
}
