//! The names by which a request speaks of one catalog, looked up.
//!
//! Where `glazing` is one attribute a sash, `glazing.upper` and `glazing.lower` are its names.

use std::collections::BTreeMap;

use astragal_model::{AttributeIndex, Catalog, FactIndex, MeasureIndex, Subject};

/// Positions by name.
pub(super) struct Names {
    pub(super) attributes: BTreeMap<String, AttributeIndex>,
    pub(super) measures: BTreeMap<String, MeasureIndex>,
    pub(super) facts: BTreeMap<String, FactIndex>,
}

impl Names {
    /// The names of a catalog.
    pub(super) fn new(catalog: &Catalog) -> Self {
        let declared = catalog.declarations();
        let attributes = declared.attributes.positions();
        let measures = declared.measures.positions();
        let facts = declared.facts.positions();
        Self {
            attributes: attributes
                .map(|at| (catalog.name_of(Subject::Attribute(at)), at))
                .collect(),
            measures: measures
                .map(|at| (catalog.name_of(Subject::Measure(at)), at))
                .collect(),
            facts: facts.map(|at| (catalog.name_of(Subject::Fact(at)), at)).collect(),
        }
    }
}
