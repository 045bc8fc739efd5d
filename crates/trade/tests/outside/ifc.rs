//! The names of the IFC enumerations, as sets, in three versions of the schema.
//!
//! Source: PyPI package `ifcopenshell`, which carries the published schemas.

use super::ask;
use astragal_trade::operation_terms::{PanelOperation, PanelPosition, TypePartitioning, WindowType};
use std::collections::{BTreeMap, BTreeSet};

const SCHEMAS: [&str; 3] = ["IFC2X3", "IFC4", "IFC4X3_ADD2"];

/// Where a schema has no such enumeration, and the one of the same literals that it has instead.
const ABSENT: [(&str, &str, Option<&str>); 2] = [
    (
        "IFC2X3",
        "IfcWindowTypePartitioningEnum",
        Some("IfcWindowStyleOperationEnum"),
    ),
    ("IFC2X3", "IfcWindowTypeEnum", None),
];

fn ours() -> BTreeMap<&'static str, BTreeSet<String>> {
    macro_rules! sets {
        ($($enumeration:ty),+) => {
            BTreeMap::from([$((
                <$enumeration>::ENUMERATION,
                <$enumeration>::ALL.iter().map(|term| term.literal().to_owned()).collect(),
            )),+])
        };
    }
    sets![PanelOperation, PanelPosition, TypePartitioning, WindowType]
}

#[test]
fn enumerations_have_the_names_of_the_schemas() {
    let ours = ours();
    let mut questions = Vec::new();
    for schema in SCHEMAS {
        for enumeration in ours.keys() {
            questions.push((schema, *enumeration));
        }
    }
    for (schema, _, instead) in ABSENT {
        questions.extend(instead.map(|instead| (schema, instead)));
    }
    let asked = questions
        .iter()
        .map(|(schema, enumeration)| format!("{schema}\t{enumeration}\n"))
        .collect();
    let Some((version, answers)) = ask("window_terms_by_ifcopenshell.py", "ifcopenshell", &[], asked) else {
        return;
    };
    assert_eq!(answers.len(), questions.len());
    let mut compared = 0;
    for ((schema, enumeration), answer) in questions.iter().zip(&answers) {
        let theirs: BTreeSet<String> = answer.split_whitespace().map(str::to_owned).collect();
        let absent = ABSENT
            .iter()
            .any(|(in_schema, absent, _)| in_schema == schema && absent == enumeration);
        if absent {
            assert!(
                theirs.is_empty(),
                "{schema} has {enumeration} after all, {version}"
            );
            continue;
        }
        let standing_in = ABSENT
            .iter()
            .find(|(in_schema, _, instead)| in_schema == schema && *instead == Some(*enumeration));
        let ours = ours.get(standing_in.map_or(*enumeration, |(_, for_this, _)| for_this));
        assert_eq!(ours, Some(&theirs), "{schema} {enumeration}, {version}");
        compared += 1;
    }
    eprintln!(
        "outside: {compared} enumerations of {} schemas equal those of {version}",
        SCHEMAS.len()
    );
}
