//! Whether what is known about one opening can be true together.
//!
//! An opening does not begin below its own sill: with a sill 10 in above the ground and an opening said to be 3 in above it, one of the
//! two was taken wrongly, and no answer that rests on either is worth anything.
//!
//! Always holds: what is not known contradicts nothing; only a condition that is known to be false does.
//! Cost: one evaluation a check.

use crate::catalog::Catalog;
use crate::evaluate::Environment;
use crate::expression::{Expression, Subject};
use crate::id::Id;
use crate::site::Site;
use crate::value::{Outcome, Value};

/// A condition on what is known about one opening: measures and facts, and nothing that is chosen.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct SiteCheck {
    /// The id that the catalog declares.
    pub id: Id,
    /// What must be true. It reads measures, who deducts, and facts.
    pub require: Expression,
    /// What a person is told when it is not.
    pub message: String,
}

/// A check that what is known of an opening does not pass.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Contradiction<'a> {
    /// The check.
    pub check: &'a SiteCheck,
    /// What it reads and what that is, in the order in which it is read, each once.
    pub reads: Vec<(Subject, Value)>,
}

/// The checks of a catalog that a site does not pass, in file order.
///
/// # Examples
///
/// Two heights of one opening:
/// ```
/// use astragal_model::{
///     Bounds, Catalog, Comparison, Declarations, Expression, Id, Number, Scope, Site, SiteCheck, SiteFact, Subject, Value,
///     ValueType, contradictions,
/// };
///
/// let mut of = Declarations::empty("c");
/// let mut height = |id: &str| {
///     of.facts.push(SiteFact {
///         id: Id::new(id),
///         label: id.to_owned(),
///         value_type: ValueType::Length,
///         options: Vec::new(),
///         of: Scope::Opening,
///         bounds: Bounds::default(),
///         step: None,
///         taken_as: None,
///     })
/// };
/// let (sill, begins) = (height("sill"), height("begins"));
/// let read = |fact| Box::new(Expression::Read(Subject::Fact(fact)));
/// of.site_checks.push(SiteCheck {
///     id: Id::new("begins-above-sill"),
///     require: Expression::Compare(Comparison::GreaterOrEqual, read(begins), read(sill)),
///     message: "An opening does not begin below its sill.".to_owned(),
/// });
/// let catalog = Catalog::new(of)?;
///
/// let length = |inches: i64| Some(Value::Length(Number::from(inches)));
/// let mut site = Site { facts: vec![length(10), length(3)].into(), ..Site::default() };
/// assert_eq!(contradictions(&catalog, &site).len(), 1);
/// site.facts.put(begins, None);
/// assert!(contradictions(&catalog, &site).is_empty());
/// # Ok::<(), astragal_model::CatalogError>(())
/// ```
#[must_use]
pub fn contradictions<'a>(catalog: &'a Catalog, site: &Site) -> Vec<Contradiction<'a>> {
    let checks = &catalog.declarations().site_checks;
    if checks.is_empty() {
        return Vec::new();
    }
    let environment = Environment::of_site(catalog, site);
    let found = checks
        .iter()
        .filter_map(|check| contradiction(check, &environment));
    found.collect()
}

fn contradiction<'a>(check: &'a SiteCheck, environment: &Environment<'_>) -> Option<Contradiction<'a>> {
    if environment.evaluate(&check.require) != Outcome::truth(false) {
        return None;
    }
    let known = |subject| match environment.read(subject) {
        Outcome::Known(value) => Some((subject, value)),
        Outcome::Unknown(_) | Outcome::Undefined(_) => None,
    };
    let reads = check.require.reads().into_iter().filter_map(known).collect();
    Some(Contradiction { check, reads })
}
