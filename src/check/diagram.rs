//! The diagram of every checked catalog: how large it is, how long it took, and the options that nobody can have.
//!
//! Compiled without a policy, for all authorities, with seed 0, as it is served; where the seeds are raced, with the winner.
//! Always holds: all numbers but the milliseconds are the same every time.
//! Cost: one compile a catalog, and a race where one is asked for. Stops at the limits of the engine, and says which.

use std::time::Instant;

use astragal_catalog::LoadedCatalog;
use astragal_catalog::check::CheckReport;
use astragal_core::engine::Engine;
use astragal_core::limit::{Limit, Limits};
use astragal_core::race::{Race, SEEDS};
use astragal_model::{Authorities, Catalog, Id, Subject};
use serde::Serialize;

/// The diagram of one catalog, or why there is none.
pub(crate) struct OfCatalog {
    pub(crate) catalog: Id,
    pub(crate) diagram: Result<Size, String>,
    /// The race of the seeds, where one was asked for and some seed was done.
    pub(crate) race: Option<Race>,
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

/// The diagrams of all catalogs without errors; `with_race` compiles each with the winner of its race.
pub(crate) fn all(report: &CheckReport, with_race: bool) -> Vec<OfCatalog> {
    let catalogs = report.catalogs.iter();
    catalogs.map(|loaded| of_catalog(loaded, with_race)).collect()
}

fn of_catalog(loaded: &LoadedCatalog, with_race: bool) -> OfCatalog {
    let catalog = &loaded.catalog;
    let race = with_race.then(|| raced(catalog)).transpose();
    let (race, size) = match race {
        Ok(race) => {
            let seed = race.as_ref().map_or(SEEDS.start, |race| race.seed);
            (race, size(catalog, seed))
        }
        Err(limit) => (None, Err(limit)),
    };
    OfCatalog {
        catalog: catalog.declarations().id.clone(),
        diagram: size.map_err(|limit| limit.to_string()),
        race,
    }
}

fn raced(catalog: &Catalog) -> Result<Race, Limit> {
    let seeds: Vec<u64> = SEEDS.collect();
    Engine::race(catalog, None, &Authorities::default(), &seeds, &Limits::default())
}

fn size(catalog: &Catalog, seed: u64) -> Result<Size, Limit> {
    let begun = Instant::now();
    let engine = Engine::new(catalog, None, &Authorities::default(), seed, &Limits::default())?;
    let milliseconds = u64::try_from(begun.elapsed().as_millis()).unwrap_or(u64::MAX);
    let diagram = engine.diagram();
    let never = engine.never_chosen().into_iter().map(|(attribute, value)| {
        let options = &catalog.declarations().attributes.at(attribute).options;
        Never {
            attribute: catalog.name_of(Subject::Attribute(attribute)),
            option: options.get(value).map(|option| option.id.to_string()),
        }
    });
    Ok(Size {
        nodes: diagram.node_count(),
        edges: diagram.edge_count(),
        gates: engine.gate_count(),
        cells: engine.price_cell_count(),
        bytes: diagram.bytes(),
        milliseconds,
        configurations: engine.configurations().to_string(),
        never_chosen: never.collect(),
    })
}
