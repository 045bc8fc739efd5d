//! What is known of one opening, taken together.

use astragal_model::{Catalog, Site, contradictions};

use crate::finding::{Finding, Place};

/// A finding for each check of the catalog that a site does not pass; `of` names whose site it is: "opening `B1`".
pub(crate) fn contradictions_of(catalog: &Catalog, site: &Site, of: &str, place: &Place) -> Vec<Finding> {
    let finding = |found: astragal_model::Contradiction<'_>| {
        let reads = found.reads.iter().map(|(subject, value)| {
            let label = catalog.label_of(*subject);
            format!("{label}: {}", catalog.show(*subject, value))
        });
        let reads: Vec<String> = reads.collect();
        let message = format!("{of}: {}", found.check.message);
        Finding::error("CONTRADICTION", message)
            .at(place.clone())
            .with_help(format!(
                "look at them again, one is wrong (check `{}`): {}",
                found.check.id,
                reads.join("; ")
            ))
    };
    contradictions(catalog, site).into_iter().map(finding).collect()
}
