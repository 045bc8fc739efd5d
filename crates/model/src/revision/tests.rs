//! Tests of revisions: which changes keep one, which make another, and what exactly is hashed.

mod catalog_changes;
mod drawing_changes;
mod expression_changes;
mod fixture;
mod item_changes;
mod price_changes;
mod rule_changes;
mod site_changes;

use std::collections::BTreeMap;
use std::sync::Arc;

use sha2::{Digest, Sha256};

use crate::bounds::Bounds;
use crate::catalog::{Catalog, Declarations};
use crate::id::{FigureIndex, Id};
use crate::revision::Revision;
use crate::rule::{Definition, Requirement};
use crate::site::Measure;
use crate::table::RowMatch;
use crate::value::ValueType;
use astragal_exact::Number;
use fixture::{Layout, declarations};

fn revision_of(declarations: Declarations) -> Revision {
    Catalog::new(declarations).expect("a catalog").revision()
}

/// Fails with the names of two rows that have one revision.
fn check_all_differ(rows: &[(&str, Revision)]) {
    let mut seen = BTreeMap::new();
    for (name, revision) in rows {
        if let Some(other) = seen.insert(revision, name) {
            panic!("`{other}` and `{name}` have one revision");
        }
    }
    assert!(rows.len() > 1);
}

#[test]
fn what_has_no_order_may_be_reordered() {
    type Turn = (&'static str, fn(&mut Layout));
    let turns: [Turn; 13] = [
        ("authorities", |layout| layout.authorities = true),
        ("measures", |layout| layout.measures = true),
        ("facts", |layout| layout.facts = true),
        ("figures", |layout| layout.figures = true),
        ("rules", |layout| layout.rules = true),
        ("items", |layout| layout.items = true),
        ("notices", |layout| layout.notices = true),
        ("examples", |layout| layout.examples = true),
        ("columns with their cells", |layout| layout.columns = true),
        ("rows of an allowed table", |layout| layout.allowed_rows = true),
        ("rows under only", |layout| layout.only_rows = true),
        ("intervals of a cell", |layout| layout.intervals = true),
        ("picks of different attributes", |layout| layout.picks = true),
    ];
    let before = declarations(Layout::default());
    let mut all = Layout::default();
    for (name, turn) in turns {
        let mut layout = Layout::default();
        turn(&mut layout);
        turn(&mut all);
        let turned = declarations(layout);
        assert_ne!(turned, before, "`{name}` turns nothing");
        assert_eq!(revision_of(turned), revision_of(before.clone()), "{name}");
    }
    assert_eq!(revision_of(declarations(all)), revision_of(before));
}

#[test]
fn rows_have_an_order_under_first_alone() {
    let with = |row_match, backwards: bool| {
        let mut declarations = declarations(Layout::default());
        let mut figure = declarations.figures.at(FigureIndex(1)).clone();
        let Definition::Table(mut table, _) = figure.definition else {
            panic!("it is a table")
        };
        if backwards {
            Arc::make_mut(&mut table.rows).reverse();
        }
        figure.definition = Definition::Table(table, row_match);
        declarations.figures.put(FigureIndex(1), figure);
        revision_of(declarations)
    };
    for row_match in [RowMatch::Only, RowMatch::Least, RowMatch::Greatest] {
        assert_eq!(with(row_match, false), with(row_match, true), "{row_match:?}");
    }
    assert_ne!(with(RowMatch::First, false), with(RowMatch::First, true));
}

#[test]
fn rows_of_a_forbidden_table_have_no_order() {
    let forbidding = |backwards: bool| {
        let mut declarations = declarations(Layout::default());
        let Requirement::Allowed(mut table) = declarations.rules[1].requirement.clone() else {
            panic!("it is a table")
        };
        if backwards {
            Arc::make_mut(&mut table.rows).reverse();
        }
        declarations.rules[1].requirement = Requirement::Forbidden(table);
        revision_of(declarations)
    };
    assert_eq!(forbidding(false), forbidding(true));
}

#[test]
fn numbers_count_by_value() {
    let stepped = |step: Number| {
        let mut declarations = Declarations::empty("hung");
        declarations.measures.push(Measure {
            id: Id::new("width"),
            label: String::new(),
            value_type: ValueType::Length,
            step: Some(step),
            bounds: Bounds::default(),
            taken_as: None,
        });
        revision_of(declarations)
    };
    let thirty_six = stepped(Number::from(36));
    assert_eq!(
        stepped(Number::from_decimal("36.0").expect("a decimal")),
        thirty_six
    );
    assert_eq!(stepped(Number::ratio(72, 2).expect("not zero")), thirty_six);
    assert_ne!(stepped(Number::ratio(73, 2).expect("not zero")), thirty_six);
}

#[test]
fn a_copy_of_the_rows_counts_like_the_rows() {
    let shared = declarations(Layout::default());
    let mut copied = shared.clone();
    for rule in &mut copied.rules {
        if let Requirement::Allowed(table) | Requirement::Forbidden(table) = &mut rule.requirement {
            table.rows = Arc::new(table.rows.to_vec());
        }
    }
    assert_eq!(revision_of(copied), revision_of(shared));
}

fn text(text: &str) -> Vec<u8> {
    let length = u64::try_from(text.len()).expect("short");
    [&length.to_be_bytes(), text.as_bytes()].concat()
}

/// The encoding written out by hand, so that it is known outside of the encoder: a catalog with one measure.
/// The literal was worked out by Python's `hashlib` from the same words.
#[test]
fn a_small_catalog_is_hashed_as_documented() {
    let mut small = Declarations::empty("hinged");
    small.label = "Hinged windows".to_owned();
    small.measures.push(Measure {
        id: Id::new("width"),
        label: "Width".to_owned(),
        value_type: ValueType::Length,
        step: Number::ratio(1, 16),
        bounds: Bounds::default(),
        taken_as: None,
    });
    let measure = [
        text("width"),
        text("Width"),
        b"length\0some\0".to_vec(),
        text("1"),
        text("16"),
        b"none\0".repeat(3),
    ];
    let none = 0_u64.to_be_bytes();
    let bytes = [
        b"astragal-catalog-3\0".to_vec(),
        text("hinged"),
        text("Hinged windows"),
        b"inch\0".to_vec(),
        none.repeat(3),
        1_u64.to_be_bytes().to_vec(),
        Sha256::digest(measure.concat()).to_vec(),
        none.repeat(7),
        b"none\0".to_vec(),
        none.to_vec(),
    ];
    let revision = revision_of(small);
    assert_eq!(
        *revision.as_bytes(),
        <[u8; 32]>::from(Sha256::digest(bytes.concat()))
    );
    assert_eq!(
        revision.to_string(),
        "7d3df8eca593fe0d088327f046c5d73c984c55704905615738c058a24234219e"
    );
}

/// Stored revisions must keep naming what they named. Whoever changes these literals changes the encoding, and must raise
/// the number in its version (`astragal-catalog-3` and its like) in the same change.
#[test]
fn the_encodings_are_still_those_of_their_versions() {
    let catalog = revision_of(declarations(Layout::default()));
    let book = price_changes::book().revision();
    let policy = price_changes::policy_revision(&price_changes::policy(), Layout::default());
    assert_eq!(
        catalog.to_string(),
        "1ddcdf1ba3a94125217e3bfe609b30de2aa2cfbab54040a594ccbdbf1e2a6716"
    );
    assert_eq!(
        book.to_string(),
        "6349edafb9ab7d95b775dc8b82841f8d91c3b60db6bebb1283457b27190bc3ee"
    );
    assert_eq!(
        policy.to_string(),
        "03a03a2952202adc8d8939018d0904be74e5f3cf7ee32e25dcf326053f65a38a"
    );
}

#[test]
fn a_revision_is_read_only_as_it_is_written() {
    let revision = revision_of(Declarations::empty("hung"));
    let written = revision.to_string();
    assert_eq!(written.len(), 64);
    assert_eq!(Revision::from_hex(&written), Some(revision));
    assert_eq!(revision.short(), written[..12]);
    assert_eq!(format!("{revision:?}"), format!("Revision({written})"));
    let refused = [
        ("empty", String::new()),
        ("a digit less", written[1..].to_owned()),
        ("a digit more", format!("{written}0")),
        ("upper case", "AF".repeat(32)),
        ("a sign", format!("+{}", &written[1..])),
        ("no digit", format!("g{}", &written[1..])),
        ("letters of two bytes", "é".repeat(32)),
    ];
    for (name, text) in refused {
        assert_eq!(Revision::from_hex(&text), None, "{name}");
    }
}

#[test]
fn revisions_are_ordered_as_they_are_written() {
    let low = Revision::from_hex(&"0a".repeat(32));
    let high = Revision::from_hex(&"a0".repeat(32));
    assert!(low.is_some() && low < high);
}

#[test]
fn the_order_of_the_values_of_a_fact_makes_no_other_revision() {
    let mut turned = declarations(Layout::default());
    let facts = turned.facts.values().cloned();
    turned.facts = facts
        .map(|mut fact| {
            fact.options.reverse();
            fact
        })
        .collect();
    assert_ne!(turned, declarations(Layout::default()));
    assert_eq!(revision_of(turned), revision_of(declarations(Layout::default())));
}
