//! Draws the examples of a catalog that says how its units are drawn.
//!
//! A unit that can be made can be drawn: where it cannot, `[drawing]` is wrong. Nothing is said of an example of which something
//! is not known, or that breaks a rule which binds: a unit too small for its own sashes is not made.
//!
//! Always holds: one finding for each place in the drawing, whatever the number of examples that end there.
//! Cost: one drawing an example, and one judgement for each that cannot be drawn.

use std::collections::BTreeMap;

use astragal_model::{Catalog, DrawingKey, Example, RuleState, Standing};

use crate::drawn::{Fault, NotDrawn, elevation};
use crate::finding::Findings;
use crate::load::{DeclarationKind, Places};

/// What is wrong at one place of the drawing, and the examples that show it.
struct Shown<'a> {
    fault: Fault,
    first: &'a Example,
    others: usize,
}

/// Draws every example.
pub(super) fn prove(catalog: &Catalog, places: &Places, findings: &Findings) {
    let declarations = catalog.declarations();
    if declarations.drawing.is_none() {
        return;
    }
    let mut faults: BTreeMap<DrawingKey, Shown<'_>> = BTreeMap::new();
    for example in &declarations.examples {
        let Err(NotDrawn::Wrong(fault)) = elevation(catalog, example.draw(catalog)) else {
            continue;
        };
        if is_broken(example, catalog) {
            continue;
        }
        let known = faults.entry(fault.key);
        let known = known.and_modify(|shown| shown.others += 1);
        known.or_insert(Shown {
            fault,
            first: example,
            others: 0,
        });
    }
    for shown in faults.values() {
        let mut whose = format!("example `{}`", shown.first.id);
        if shown.others > 0 {
            whose = format!("{whose} and {} more", shown.others);
        }
        let mut finding = shown.fault.finding(&whose, places);
        if let Some(example) = places.of_kind(DeclarationKind::Example, &shown.first.id) {
            finding = finding.with_related(example.place.clone(), "the example stands here");
        }
        findings.push(finding);
    }
}

/// Whether a rule that binds is broken.
fn is_broken(example: &Example, catalog: &Catalog) -> bool {
    let judgement = example.judge(catalog, None, None);
    judgement.rules.iter().any(|finding| {
        let is_broken = matches!(finding.state, RuleState::Broken | RuleState::NoRow(_));
        is_broken && finding.standing == Standing::Binds
    })
}
