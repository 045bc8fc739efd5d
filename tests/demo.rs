//! The demo library is of the size and the kind that a product manager would recognise. Everything is derived from
//! the model that was read, not from what the files say of themselves.

#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::expect_used,
    reason = "these are tests"
)]

mod mentions;

use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};

use astragal_catalog::finding::Findings;
use astragal_catalog::library_files::Library;
use astragal_catalog::source::Sources;
use astragal_catalog::{CheckReport, book_header, check_library, load_book};
use astragal_model::{
    Amount, Attribute, Audience, Book, Catalog, Cell, Class, Definition, Example, Id, PriceItem, Requirement,
    Rule, Standard, Subject,
};
use mentions::{idle, item_subjects, reached, rule_subjects};

/// What a catalog of the demo must have at least.
struct Wanted {
    catalog: &'static str,
    attributes: usize,
    /// Rules of the plant, and tables that figures are looked up in.
    rules_and_tables: usize,
    books: usize,
}

const CATALOGS: [Wanted; 2] = [
    Wanted {
        catalog: "hinged",
        attributes: 30,
        rules_and_tables: 60,
        books: 2,
    },
    Wanted {
        catalog: "sliding",
        attributes: 30,
        rules_and_tables: 60,
        books: 2,
    },
];

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("examples/library")
}

fn checked() -> CheckReport {
    check_library(&folder())
}

/// Runs a test on each catalog of the demo.
fn check_each(test: impl Fn(&Catalog, &Wanted)) {
    let report = checked();
    for wanted in &CATALOGS {
        let loaded = report
            .catalogs
            .iter()
            .find(|loaded| loaded.catalog.declarations().id.as_str() == wanted.catalog)
            .unwrap_or_else(|| panic!("no catalog {} without errors", wanted.catalog));
        test(&loaded.catalog, wanted);
    }
}

/// Runs a test on each price book of each catalog of the demo; gives how many there are by catalog.
fn check_books(test: impl Fn(&Catalog, &Book)) -> BTreeMap<Id, usize> {
    let report = checked();
    let (findings, mut sources) = (Findings::new(), Sources::new());
    let library = Library::find(&folder(), &findings).expect("the demo is a library");
    let mut counts = BTreeMap::new();
    for summary in &report.summary.books {
        let header = book_header(&library, &summary.folder, &mut sources, &findings).unwrap();
        let mut catalogs = report.catalogs.iter().map(|loaded| &loaded.catalog);
        let of_book = catalogs.find(|catalog| catalog.declarations().id == header.catalog);
        let catalog = of_book.unwrap();
        let book = load_book(&library, &summary.folder, catalog, &mut sources, &findings).unwrap();
        test(catalog, &book.book);
        *counts.entry(header.catalog).or_insert(0) += 1;
    }
    counts
}

// --- size ---

#[test]
fn the_demo_is_checked_without_a_finding_and_has_no_other_catalogs() {
    let report = checked();
    let messages: Vec<&str> = report.findings.iter().map(|finding| finding.message()).collect();
    assert_eq!(messages, Vec::<&str>::new());
    let catalogs = report.summary.catalogs.iter();
    let found: BTreeSet<&str> = catalogs.map(|catalog| catalog.id.as_str()).collect();
    assert_eq!(found, CATALOGS.iter().map(|wanted| wanted.catalog).collect());
}

#[test]
fn each_catalog_asks_what_a_real_one_asks() {
    check_each(|catalog, wanted| {
        let ids: BTreeSet<&Id> = attributes(catalog).map(|attribute| &attribute.id).collect();
        assert!(
            ids.len() >= wanted.attributes,
            "{} attributes: {ids:?}",
            wanted.catalog
        );
        let sizes = [("exterior", 8, 12), ("interior", 4, 6), ("glass_package", 5, 7)];
        for (id, least, most) in sizes {
            let count = attribute(catalog, id).options.len();
            assert!(
                (least..=most).contains(&count),
                "{}: {count} {id}",
                wanted.catalog
            );
        }
    });
}

#[test]
fn each_catalog_has_the_rules_and_tables_of_a_real_one() {
    check_each(|catalog, wanted| {
        let declarations = catalog.declarations();
        let own = declarations
            .rules
            .iter()
            .filter(|rule| rule.authority.as_str() == "plant");
        let own: BTreeSet<&Id> = own.map(|rule| &rule.id).collect();
        let figures = declarations
            .figures
            .values()
            .filter_map(|figure| match &figure.definition {
                Definition::Table(table, _) => Some(&table.columns),
                Definition::Formula(_) => None,
            });
        // Figures with the same key columns come from one sheet, as far as this counts.
        let sheets: BTreeSet<&Vec<Subject>> = figures.collect();
        let count = own.len() + sheets.len();
        assert!(
            count >= wanted.rules_and_tables,
            "{}: {} rules, {} tables",
            wanted.catalog,
            own.len(),
            sheets.len()
        );
        let in_tables = declarations
            .rules
            .iter()
            .filter(|rule| !matches!(rule.requirement, Requirement::Expression(_)));
        assert!(
            in_tables.count() >= 15,
            "{}: most of a real catalog is tables",
            wanted.catalog
        );
    });
}

// --- nothing stands there for show ---

#[test]
fn every_attribute_is_mentioned_by_a_rule_a_table_or_a_price_item() {
    check_each(|catalog, wanted| {
        let idle = idle(catalog, catalog.declarations());
        assert_eq!(idle, BTreeSet::new(), "{}", wanted.catalog);
    });
}

/// The test before this one can fail: without what mentions the mesh of the screen, the mesh is found.
#[test]
fn an_attribute_that_nothing_mentions_is_found() {
    check_each(|catalog, _| {
        let mut declarations = catalog.declarations().clone();
        let mesh = catalog.attribute_named("screen_mesh").unwrap();
        let reads = |subjects: Vec<Subject>| reached(&declarations, subjects).contains(&mesh);
        let rules: Vec<Rule> = declarations
            .rules
            .iter()
            .filter(|rule| !reads(rule_subjects(rule)))
            .cloned()
            .collect();
        let items: Vec<PriceItem> = declarations
            .items
            .values()
            .filter(|item| !reads(item_subjects(item)))
            .cloned()
            .collect();
        assert!(rules.len() < declarations.rules.len() && items.len() < declarations.items.len());
        declarations.rules = rules;
        declarations.items = items.into();
        assert!(idle(catalog, &declarations).contains("screen_mesh"));
    });
}

/// A rule about the weight of the sash mentions the glass, and not the spacer.
#[test]
fn what_a_rule_mentions_is_followed_through_figures() {
    check_each(|catalog, wanted| {
        let declarations = catalog.declarations();
        let weight = declarations
            .figures
            .iter()
            .find(|(_, figure)| figure.id.as_str() == "unit_weight");
        let (weight, _) = weight.unwrap_or_else(|| panic!("{} has no unit_weight", wanted.catalog));
        let reached = reached(declarations, vec![Subject::Figure(weight)]);
        let names: BTreeSet<&str> = reached
            .iter()
            .map(|index| declarations.attributes.at(*index).id.as_str())
            .collect();
        assert!(
            names.contains("glass_thickness") && names.contains("install_type"),
            "{names:?}"
        );
        assert!(!names.contains("spacer"), "{names:?}");
    });
}

// --- examples ---

#[test]
fn every_declared_rule_has_an_example_that_breaks_exactly_it() {
    check_each(|catalog, wanted| {
        let declarations = catalog.declarations();
        let proved: BTreeSet<&Id> = declarations
            .examples
            .iter()
            .filter(|example| example.mismatches(catalog, None).is_empty())
            .filter_map(alone)
            .collect();
        let unproved: BTreeSet<&Id> = declarations
            .rules
            .iter()
            .map(|rule| &rule.id)
            .filter(|id| !proved.contains(id))
            .collect();
        assert_eq!(unproved, BTreeSet::new(), "{}", wanted.catalog);
    });
}

/// The one rule that an example breaks.
fn alone(example: &Example) -> Option<&Id> {
    example.breaks.first().filter(|_| example.breaks.len() == 1)
}

// --- what a real catalog has ---

#[test]
fn each_catalog_has_a_retired_option_with_a_replacement_that_is_honoured_for_a_while() {
    check_each(|catalog, wanted| {
        let is_retired = |attribute: &Attribute| {
            attribute.options.iter().any(|option| {
                let validity = &option.validity;
                validity.offered_until < validity.honoured_until
                    && validity.offered_until.is_some()
                    && validity
                        .replaced_by
                        .as_ref()
                        .is_some_and(|id| attribute.option(id).is_some())
            })
        };
        assert!(attributes(catalog).any(is_retired), "{}", wanted.catalog);
    });
}

#[test]
fn each_catalog_has_an_attribute_that_the_plant_determines_by_more_than_one_word() {
    check_each(|catalog, wanted| {
        let is_determined = |attribute: &Attribute| {
            attribute.audience == Audience::Plant && matches!(attribute.standard, Standard::Formula(_))
        };
        assert!(attributes(catalog).any(is_determined), "{}", wanted.catalog);
        assert!(
            matches!(
                attribute(catalog, "hardware_finish").standard,
                Standard::Formula(_)
            ),
            "{}: the finish follows another choice",
            wanted.catalog
        );
    });
}

#[test]
fn each_catalog_has_a_rule_that_may_be_waived_and_a_credit() {
    check_each(|catalog, wanted| {
        let declarations = catalog.declarations();
        assert!(
            declarations.rules.iter().any(|rule| rule.waivable),
            "{}",
            wanted.catalog
        );
        let is_credit = |item: &PriceItem| item.class == Class::Credit;
        assert!(declarations.items.values().any(is_credit), "{}", wanted.catalog);
    });
}

#[test]
fn a_fixed_stop_a_vent_latch_and_a_device_that_is_released_are_three_things() {
    check_each(|catalog, _| {
        let device = attribute(catalog, "control_device");
        for id in ["none", "fixed-stop", "vent-latch", "release-device"] {
            assert!(device.option(&Id::new(id)).is_some(), "{id}");
        }
    });
}

#[test]
fn not_every_colour_inside_goes_with_every_colour_outside_and_none_goes_with_nothing() {
    check_each(|catalog, wanted| {
        let rule = catalog
            .declarations()
            .rules
            .iter()
            .find(|rule| rule.id.as_str() == "colour-pairs");
        let Some(Requirement::Allowed(table)) = rule.map(|rule| &rule.requirement) else {
            panic!("{} has no table of colour pairs", wanted.catalog);
        };
        let mut counts = [BTreeMap::new(), BTreeMap::new()];
        let mut pairs = 0;
        for row in table.rows.iter() {
            let [one, other] = row.cells.as_slice() else {
                panic!("{}: a pair is two cells", wanted.catalog);
            };
            for (count, cell) in counts.iter_mut().zip([one, other]) {
                let Cell::OneOf(values) = cell else {
                    panic!("{}: a colour is named", wanted.catalog);
                };
                assert_eq!(values.len(), 1);
                *count.entry(values.first().cloned()).or_insert(0) += 1;
            }
            pairs += 1;
        }
        let options = [attribute(catalog, "exterior"), attribute(catalog, "interior")];
        let [outside, inside] = options.map(|attribute| attribute.options.len());
        assert!(pairs < outside * inside, "{}: {pairs} pairs", wanted.catalog);
        let sizes: BTreeSet<usize> = counts.iter().map(BTreeMap::len).collect();
        assert_eq!(sizes, BTreeSet::from([outside, inside]), "{}", wanted.catalog);
        let ragged: BTreeSet<&i32> = counts.iter().flat_map(BTreeMap::values).collect();
        assert!(
            ragged.len() > 2,
            "{}: the pairs are no rectangle: {ragged:?}",
            wanted.catalog
        );
    });
}

#[test]
fn there_are_books_enough_and_each_has_a_credit_below_nothing() {
    let counts = check_books(|catalog, book| {
        let items = catalog.declarations().items.values();
        let mut credits = items.filter(|item| item.class == Class::Credit);
        let is_below = |item: &PriceItem| matches!(book.amounts.get(&item.id), Some(Amount::Money(amount)) if amount.is_negative());
        assert!(credits.any(is_below), "{}", book.id);
    });
    for wanted in &CATALOGS {
        let count = counts.get(wanted.catalog).copied().unwrap_or_default();
        assert!(count >= wanted.books, "{}: {count} books", wanted.catalog);
    }
}

/// A second book is no copy, and it is plain which of the two is in force.
#[test]
fn books_of_one_catalog_ask_different_amounts() {
    let books = std::cell::RefCell::new(Vec::new());
    check_books(|_, book| books.borrow_mut().push(book.clone()));
    let books = books.into_inner();
    for (position, one) in books.iter().enumerate() {
        for other in books.iter().skip(position + 1) {
            if one.catalog == other.catalog {
                assert_ne!(one.grids, other.grids, "{} and {}", one.id, other.id);
                assert_ne!(one.amounts, other.amounts, "{} and {}", one.id, other.id);
                assert!(
                    one.until < other.from || other.until < one.from || one.currency != other.currency,
                    "{} and {} are in force at once",
                    one.id,
                    other.id
                );
            }
        }
    }
}

fn attributes(catalog: &Catalog) -> impl Iterator<Item = &Attribute> {
    catalog.declarations().attributes.values()
}

fn attribute<'a>(catalog: &'a Catalog, id: &str) -> &'a Attribute {
    attributes(catalog)
        .find(|attribute| attribute.id.as_str() == id)
        .unwrap_or_else(|| panic!("no attribute {id}"))
}
