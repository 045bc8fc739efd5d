//! One change at a time: what the schema says of the changed file, and what the reader says.

use std::collections::{BTreeMap, BTreeSet};

use astragal_catalog::schema::{SchemaKind, schema};
use serde_json::{Map, Value};

use crate::reader::{findings, of_shape, quoted, said};
use crate::specimen::{Spot, all_ways, is_of_type, spots};

/// A kind of file, its validator, its specimens and the places in them.
struct Subject {
    kind: SchemaKind,
    schema: jsonschema::Validator,
    specimens: Vec<(Value, Vec<Spot>)>,
}

fn subjects() -> Vec<Subject> {
    let subject = |kind| {
        let whole = schema(kind);
        let specimens = all_ways(&whole).into_iter().map(|specimen| {
            let spots = spots(&whole, &specimen);
            (specimen, spots)
        });
        Subject {
            kind,
            specimens: specimens.collect(),
            schema: jsonschema::validator_for(&whole).unwrap(),
        }
    };
    SchemaKind::ALL.into_iter().map(subject).collect()
}

impl Subject {
    /// Calls back with every place of every specimen.
    fn each(&self, mut call: impl FnMut(&Value, &Spot)) {
        for (specimen, spots) in &self.specimens {
            spots.iter().for_each(|spot| call(specimen, spot));
        }
    }

    /// Both must take the shape of this file, or both must refuse it. Returns whether they take it.
    fn agree(&self, file: &Value, change: &str) -> bool {
        let found = of_shape(findings(self.kind, file));
        let refused: Vec<String> = self
            .schema
            .iter_errors(file)
            .map(|error| error.to_string())
            .collect();
        assert_eq!(
            refused.is_empty(),
            found.is_empty(),
            "{:?}: {change}\nschema: {refused:#?}\nreader: {}",
            self.kind,
            said(&found)
        );
        refused.is_empty()
    }
}

fn with(specimen: &Value, pointer: &str, change: impl FnOnce(&mut Value)) -> Value {
    let mut file = specimen.clone();
    change(file.pointer_mut(pointer).unwrap());
    file
}

fn table(value: &mut Value) -> &mut Map<String, Value> {
    value.as_object_mut().unwrap()
}

#[test]
fn a_file_made_of_the_examples_has_the_shape_that_both_take() {
    for subject in subjects() {
        assert!(!subject.specimens.is_empty());
        for (specimen, _) in &subject.specimens {
            assert!(subject.agree(specimen, "as it is"));
        }
    }
}

#[test]
fn the_reader_knows_the_keys_that_the_schema_knows_and_no_others() {
    const ODD: &str = "zzzzzzzzzzzzzzzz";
    let mut tables = BTreeMap::new();
    for subject in subjects() {
        subject.each(|specimen, spot| {
            let Some(known) = spot.branch["properties"].as_object() else {
                return;
            };
            let file = with(specimen, &spot.pointer, |value| {
                table(value).insert(ODD.to_owned(), true.into());
            });
            assert!(!subject.schema.is_valid(&file), "{}", spot.pointer);
            let found = findings(subject.kind, &file);
            let odd = found.iter().find(|finding| finding.code() == "UNKNOWN_KEY");
            let odd = odd.unwrap_or_else(|| panic!("{:?} {}: {}", subject.kind, spot.pointer, said(&found)));
            assert!(odd.message().contains(ODD), "{}", odd.message());
            let read: BTreeSet<String> = quoted(odd.help().unwrap()).into_iter().collect();
            let known: BTreeSet<String> = known.keys().cloned().collect();
            assert_eq!(read, known, "{:?} {}", subject.kind, spot.pointer);
            tables.insert((subject.kind, spot.path()), known.len());
        });
    }
    assert!(tables.len() >= 40, "{} tables: {tables:#?}", tables.len());
}

#[test]
fn the_reader_knows_the_words_that_the_schema_knows_and_no_others() {
    let mut read: BTreeMap<(SchemaKind, String), BTreeSet<String>> = BTreeMap::new();
    let mut known = BTreeMap::new();
    for subject in subjects() {
        subject.each(|specimen, spot| {
            let Some(words) = spot.schema["enum"]
                .as_array()
                .filter(|words| words[0].is_string())
            else {
                return;
            };
            let file = with(specimen, &spot.pointer, |value| *value = "zz-zz".into());
            assert!(!subject.agree(&file, &spot.pointer), "{}", spot.pointer);
            let words: BTreeSet<String> = words
                .iter()
                .map(|word| word.as_str().unwrap().to_owned())
                .collect();
            let found = findings(subject.kind, &file);
            let unknown = found.iter().find(|finding| finding.code() == "UNKNOWN_WORD");
            let of_reader = match unknown {
                Some(finding) => quoted(finding.message().split_once("expected one of").unwrap().1),
                None if found.iter().any(|finding| finding.code() == "NOT_DEALER") => {
                    vec!["dealer".to_owned()]
                }
                None => panic!("{}: {}", spot.pointer, said(&found)),
            };
            // One key may have fewer words beside some others; all of them together are the schema's.
            let at = (subject.kind, spot.path());
            read.entry(at.clone()).or_default().extend(of_reader);
            known.insert(at, words);
        });
    }
    assert_eq!(read, known);
    assert!(known.len() >= 20, "{} keys with words", known.len());
}

/// `[catalog]` is the one key that the reader demands and the schema does not: an included file must not have it. An order
/// without a date is one that both refuse; a caller may give the date.
#[test]
fn both_demand_the_same_keys() {
    let mut counts = (0, 0);
    for subject in subjects() {
        subject.each(|specimen, spot| {
            let Some(known) = spot.branch["properties"].as_object() else {
                return;
            };
            let here = specimen.pointer(&spot.pointer).unwrap().as_object().unwrap();
            for key in known.keys().filter(|key| here.contains_key(*key)) {
                if subject.kind == SchemaKind::Catalog && spot.pointer.is_empty() && key == "catalog" {
                    continue;
                }
                let file = with(specimen, &spot.pointer, |value| {
                    table(value).remove(key);
                });
                if subject.agree(&file, &format!("without {}/{key}", spot.pointer)) {
                    counts.0 += 1;
                } else {
                    counts.1 += 1;
                }
            }
        });
    }
    assert!(
        counts.0 >= 100 && counts.1 >= 80,
        "optional and required: {counts:?}"
    );
}

#[test]
fn both_refuse_keys_that_exclude_each_other() {
    let mut refused = 0;
    for subject in subjects() {
        subject.each(|specimen, spot| {
            let Some(known) = spot.branch["properties"].as_object() else {
                return;
            };
            let here = specimen.pointer(&spot.pointer).unwrap().as_object().unwrap();
            for (key, inner) in known.iter().filter(|(key, _)| !here.contains_key(*key)) {
                let file = with(specimen, &spot.pointer, |value| {
                    table(value).insert(key.clone(), all_ways(inner)[0].clone());
                });
                let taken = subject.agree(&file, &format!("with {}/{key}", spot.pointer));
                refused += usize::from(!taken);
            }
        });
    }
    assert!(refused >= 20, "{refused}");
}

#[test]
fn both_take_and_refuse_the_same_types() {
    let values: [Value; 6] = [
        true.into(),
        7.into(),
        2.5.into(),
        "zz".into(),
        Value::Array(Vec::new()),
        Value::Object(Map::new()),
    ];
    let mut counts = (0, 0);
    for subject in subjects() {
        subject.each(|specimen, spot| {
            if spot.pointer.is_empty() {
                return;
            }
            for value in &values {
                let file = with(specimen, &spot.pointer, |there| *there = value.clone());
                let found = of_shape(findings(subject.kind, &file));
                let change = || {
                    format!(
                        "{:?}: {} is {value}\n{}",
                        subject.kind,
                        spot.pointer,
                        said(&found)
                    )
                };
                if !is_of_type(&spot.schema, value) {
                    assert!(!found.is_empty(), "the schema refuses the type: {}", change());
                    counts.1 += 1;
                } else if subject.schema.is_valid(&file) {
                    assert!(found.is_empty(), "the schema takes it: {}", change());
                    counts.0 += 1;
                }
            }
        });
    }
    assert!(
        counts.0 >= 200 && counts.1 >= 1_000,
        "taken and refused: {counts:?}"
    );
}
