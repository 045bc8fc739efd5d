//! Which measures are the sides of an opening that has raw readings: one width and one height, or neither.

use std::collections::BTreeMap;

use astragal_model::TakenSide;

use crate::declare::{Declared, RawMeasureKind};
use crate::finding::{Finding, Findings};

/// Whether each side is taken once, or neither is; a finding when not.
pub(super) fn sides_are_whole(declared: &Declared, findings: &Findings) -> bool {
    let mut first: BTreeMap<TakenSide, &RawMeasureKind> = BTreeMap::new();
    let mut is_whole = true;
    for measure in &declared.measures {
        let Some(side) = measure.taken_as else { continue };
        if let Some(before) = first.get(&side) {
            let text = format!("two measures are `taken_as` {}", side.word());
            let finding = Finding::error("TAKEN_TWICE", text).at(measure.head.place.clone());
            let finding = finding.with_help("an opening has one of each; leave one `taken_as` out");
            let here = format!("`{}` is one", before.head.id);
            findings.push(finding.with_related(before.head.place.clone(), here));
            is_whole = false;
            continue;
        }
        first.insert(side, measure);
    }
    if let (1, Some((side, alone))) = (first.len(), first.iter().next()) {
        let text = format!(
            "a measure is `taken_as` {}, and none is the other side",
            side.word()
        );
        let finding = Finding::error("TAKEN_ALONE", text).at(alone.head.place.clone());
        findings.push(finding.with_help("say which measure is the width and which the height, or neither"));
        is_whole = false;
    }
    is_whole
}
