//! The diagram of every checked catalog: how large it is, how long it took, and the options that nobody can have.
//!
//! Compiled without a policy, for all authorities, with the first seed. Always holds: all numbers but the milliseconds are the
//! same every time.
//! Cost: one compile a catalog. Stops at the limits of the engine, and says which.

use std::time::Instant;

use astragal_catalog::LoadedCatalog;
use astragal_catalog::check::CheckReport;
use astragal_core::engine::Engine;
use astragal_core::limit::Limits;
use astragal_model::{Authorities, Id, Subject};
use serde::Serialize;

/// The diagram of one catalog, or why there is none.
pub(crate) struct OfCatalog {
    pub(crate) catalog: Id,
    pub(crate) diagram: Result<Size, String>,
}

/// How large a diagram is.
#[derive(Serialize)]
pub(crate) struct Size {
    pub(crate) nodes: usize,
    pub(crate) edges: usize,
    pub(crate) gates: usize,
    pub(crate) cells: usize,
    pub(crate) bytes: usize,
    pub(crate) milliseconds: u64,
    /// How many configurations the rules leave before anything is known of an opening.
    pub(crate) configurations: String,
    pub(crate) never_chosen: Vec<Never>,
}

/// An option that no opening can have; without an option, that the attribute is never left out.
#[derive(Serialize)]
pub(crate) struct Never {
    pub(crate) attribute: String,
    pub(crate) option: Option<String>,
}

/// The diagrams of all catalogs without errors.
pub(crate) fn all(report: &CheckReport) -> Vec<OfCatalog> {
    report.catalogs.iter().map(of_catalog).collect()
}

fn of_catalog(loaded: &LoadedCatalog) -> OfCatalog {
    let catalog = &loaded.catalog;
    let begun = Instant::now();
    let engine = Engine::new(catalog, None, &Authorities::default(), 0, &Limits::default());
    let milliseconds = u64::try_from(begun.elapsed().as_millis()).unwrap_or(u64::MAX);
    let size = |engine: Engine| {
        let diagram = engine.diagram();
        let never = engine.never_chosen().into_iter().map(|(attribute, value)| {
            let options = &catalog.declarations().attributes.at(attribute).options;
            Never {
                attribute: catalog.name_of(Subject::Attribute(attribute)),
                option: options.get(value).map(|option| option.id.to_string()),
            }
        });
        Size {
            nodes: diagram.node_count(),
            edges: diagram.edge_count(),
            gates: engine.gate_count(),
            cells: engine.price_cell_count(),
            bytes: diagram.bytes(),
            milliseconds,
            configurations: engine.configurations().to_string(),
            never_chosen: never.collect(),
        }
    };
    OfCatalog {
        catalog: catalog.declarations().id.clone(),
        diagram: engine.map(size).map_err(|limit| limit.to_string()),
    }
}
