//! The rules that every catalog has by itself: `exterior.offered`, `grille.applies`, `has-a-price` and their like.
//!
//! They stand in no file, so that they are explained by what they ask, and by where their attribute stands.

use astragal_catalog::check::CheckReport;
use astragal_catalog::{DeclarationKind, LoadedCatalog};
use astragal_model::{Audience, Subject};
use serde::Serialize;

/// An implicit rule of one catalog.
#[derive(Serialize)]
pub(crate) struct ImplicitRule {
    pub(crate) catalog: String,
    pub(crate) rule: String,
    /// What it asks, in a sentence.
    pub(crate) message: String,
    /// The file of its attribute.
    pub(crate) file: Option<String>,
    /// The line of its attribute.
    pub(crate) line: Option<usize>,
}

/// Explains an implicit rule, once for each checked catalog that has it.
pub(crate) fn explain(report: &CheckReport, rule: &str) -> Vec<ImplicitRule> {
    report
        .catalogs
        .iter()
        .filter_map(|loaded| of_catalog(report, loaded, rule))
        .collect()
}

fn of_catalog(report: &CheckReport, loaded: &LoadedCatalog, rule: &str) -> Option<ImplicitRule> {
    let whole = |message: &str| ImplicitRule {
        catalog: loaded.catalog.declarations().id.to_string(),
        rule: rule.to_owned(),
        message: message.to_owned(),
        file: None,
        line: None,
    };
    match rule {
        "has-a-price" => {
            return Some(whole(
                "Every price item that is incurred has an amount in the price book.",
            ));
        }
        "book-in-force" => return Some(whole("The price book is in force on the day.")),
        _ => {}
    }
    let (name, what) = rule.rsplit_once('.')?;
    let attribute = loaded.catalog.attribute_named(name)?;
    let declared = loaded.catalog.declarations().attributes.at(attribute);
    let label = loaded.catalog.label_of(Subject::Attribute(attribute));
    let message = match what {
        "applies" => format!("{label} is chosen when it is asked, and only then."),
        "offered" => {
            format!("The option of {label} is there, is sold by the dealer, and may be ordered on the day.")
        }
        "determined" if declared.audience == Audience::Plant => {
            format!("{label} is what its standard says: the plant determines it.")
        }
        _ => return None,
    };
    let stands = loaded.places.of_kind(DeclarationKind::Attribute, &declared.id);
    Some(ImplicitRule {
        file: stands.map(|at| report.sources.path(at.place.file).to_owned()),
        line: stands.map(|at| report.sources.position(&at.place).line),
        ..whole(&message)
    })
}
