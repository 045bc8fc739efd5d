//! An opening of the demo house with everything that a question about it needs.

use std::path::Path;

use astragal_catalog::order::{OrderFile, ReadOptions, read_order};
use astragal_core::engine::Engine;
use astragal_core::limit::Limits;
use astragal_core::race::{Race, SEEDS};
use astragal_model::{Authorities, Setting};

/// An opening of the demo house.
pub(crate) struct Demo {
    order: OrderFile,
    opening: usize,
    authorities: Authorities,
}

impl Demo {
    /// Reads the demo house.
    pub(crate) fn read(tag: &str) -> Self {
        let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/corner-house/order.toml");
        let order = read_order(&file, &ReadOptions::default()).order.unwrap();
        let mut openings = order.order.openings.iter();
        let opening = openings.position(|opening| opening.tag == tag).unwrap();
        Self {
            order,
            opening,
            authorities: Authorities::default(),
        }
    }

    /// The opening's catalog, book, policy, measures, facts and day.
    pub(crate) fn setting(&self) -> Setting<'_> {
        let opening = self.order.order.openings.get(self.opening).unwrap();
        let unit = opening.units.first().unwrap();
        let used = self.order.catalogs.get(&unit.catalog).unwrap();
        Setting {
            catalog: &used.catalog.catalog,
            book: Some(&used.book.book),
            policy: used.policy.as_ref().map(|policy| &policy.policy),
            site: &opening.site,
            waivers: &unit.waivers,
            authorities: &self.authorities,
            date: self.order.order.date,
        }
    }

    /// Compiles the opening's catalog with the rules of its policy.
    pub(crate) fn engine(&self) -> Engine {
        let setting = self.setting();
        let terms = setting.policy.map(|policy| &policy.terms);
        Engine::new(setting.catalog, terms, &self.authorities, 0, &Limits::default()).unwrap()
    }
    /// Races the seeds over the opening's catalog with the rules of its policy.
    pub(crate) fn race(&self) -> Race {
        let setting = self.setting();
        let terms = setting.policy.map(|policy| &policy.terms);
        let seeds: Vec<u64> = SEEDS.collect();
        Engine::race(
            setting.catalog,
            terms,
            &self.authorities,
            &seeds,
            &Limits::default(),
        )
        .unwrap()
    }
}
