//! The engine of every catalog that an order uses, compiled when it is first asked for.
//!
//! A policy has a diagram of its own only where it needs one; otherwise it comes in when a question is prepared.

use std::cell::OnceCell;

use astragal_core::engine::Engine;
use astragal_core::ground::needs_own_diagram;
use astragal_core::limit::Limits;
use astragal_model::{Authorities, Catalog, Id, Policy};

use crate::quote::work::Used;

/// Engines by catalog.
pub(crate) struct Engines<'a> {
    authorities: &'a Authorities,
    engines: Vec<(Used<'a>, OnceCell<Result<Engine, String>>)>,
}

impl<'a> Engines<'a> {
    pub(crate) fn new(used: &[Used<'a>], authorities: &'a Authorities) -> Self {
        let engines = used.iter().map(|used| (*used, OnceCell::new()));
        Self {
            authorities,
            engines: engines.collect(),
        }
    }

    /// The engine of a catalog, or why there is none: a limit that was passed.
    pub(crate) fn of(&self, catalog: &Id) -> Result<&Engine, String> {
        let mut engines = self.engines.iter();
        let Some((used, engine)) = engines.find(|(used, _)| used.id == catalog) else {
            return Err(format!("catalog `{catalog}` was not read"));
        };
        let engine = engine.get_or_init(|| compile(used.catalog, used.policy, self.authorities));
        engine.as_ref().map_err(Clone::clone)
    }
}

/// Compiles a catalog, with its policy where that needs a diagram of its own.
pub(crate) fn compile(
    catalog: &Catalog,
    policy: Option<&Policy>,
    authorities: &Authorities,
) -> Result<Engine, String> {
    let policy = policy.filter(|policy| has_own(catalog, policy));
    let terms = policy.map(|policy| &policy.terms);
    Engine::new(catalog, terms, authorities, 0, &Limits::default()).map_err(|limit| limit.to_string())
}

/// Whether a policy needs an engine of its own.
pub(crate) fn has_own(catalog: &Catalog, policy: &Policy) -> bool {
    needs_own_diagram(catalog, &policy.terms)
}
