//! A catalog that is served: compiled, with its price books and dealer policies.
//!
//! A policy has an engine of its own only where it needs one, as in a quote.
//!
//! Cost: one compile, and one more for each policy that needs it.

use astragal_core::engine::Engine;
use astragal_model::{AttributeIndex, Audience, Authorities, Book, Catalog, Policy, Revision, Subject};

use crate::quote::engines::{compile, has_own};
use crate::quote::work::Used;
use crate::serve::names::Names;

/// A catalog that is served.
pub(super) struct Product {
    pub(super) catalog: Catalog,
    pub(super) revision: String,
    pub(super) books: Vec<Priced>,
    pub(super) dealers: Vec<Dealer>,
    pub(super) names: Names,
    /// The attributes that a customer is asked, in catalog order, with their names.
    pub(super) asked: Vec<(AttributeIndex, String)>,
    /// How many options these have together, with *not asked* of each that has a condition.
    pub(super) positions: usize,
    engine: Engine,
}

/// A price book with its revision.
pub(super) struct Priced {
    pub(super) book: Book,
    pub(super) revision: String,
}

/// A dealer policy with its revision.
pub(super) struct Dealer {
    pub(super) policy: Policy,
    pub(super) revision: String,
    engine: Option<Engine>,
}

impl Product {
    /// Compiles a catalog and what belongs to it. The error says which limit was passed.
    pub(super) fn new(catalog: Catalog, books: Vec<Book>, policies: Vec<Policy>) -> Result<Self, String> {
        let id = catalog.declarations().id.clone();
        let engine = |policy: Option<&Policy>| {
            compile(&catalog, policy, &Authorities::default())
                .map_err(|limit| format!("catalog `{id}` cannot be served: {limit}"))
        };
        let whole = engine(None)?;
        let mut dealers = Vec::new();
        for policy in policies {
            let own = has_own(&catalog, &policy).then(|| engine(Some(&policy)));
            let revision = Revision::of_policy(&policy.terms, &catalog).to_string();
            dealers.push(Dealer {
                engine: own.transpose()?,
                policy,
                revision,
            });
        }
        let priced = |book: Book| Priced {
            revision: book.revision().to_string(),
            book,
        };
        let attributes = catalog.declarations().attributes.iter();
        let attributes = attributes.filter(|(_, one)| one.audience == Audience::Customer);
        let mut asked = Vec::new();
        let mut positions = 0;
        for (at, one) in attributes {
            asked.push((at, catalog.name_of(Subject::Attribute(at))));
            positions += one.options.len() + usize::from(one.applies_when.is_some());
        }
        Ok(Self {
            asked,
            positions,
            revision: catalog.revision().to_string(),
            names: Names::new(&catalog),
            books: books.into_iter().map(priced).collect(),
            dealers,
            engine: whole,
            catalog,
        })
    }

    /// The id of the catalog.
    pub(super) fn id(&self) -> &str {
        self.catalog.declarations().id.as_str()
    }

    /// The catalog with one of its books and policies; `None` for a position that is not there.
    pub(super) fn used(&self, book: usize, dealer: Option<usize>) -> Option<Used<'_>> {
        let policy = match dealer {
            Some(dealer) => Some(&self.dealers.get(dealer)?.policy),
            None => None,
        };
        Some(Used {
            id: &self.catalog.declarations().id,
            catalog: &self.catalog,
            book: &self.books.get(book)?.book,
            policy,
        })
    }

    /// The engine for one of the policies.
    pub(super) fn engine(&self, dealer: Option<usize>) -> &Engine {
        let own = dealer.and_then(|dealer| self.dealers.get(dealer)?.engine.as_ref());
        own.unwrap_or(&self.engine)
    }

    /// The name of a subject, as answers write it.
    pub(super) fn name(&self, subject: Subject) -> String {
        self.catalog.name_of(subject)
    }
}
