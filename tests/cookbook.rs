//! The recipes of `docs/cookbook.md`, each checked alone and all in one catalog, and the attempts that are refused.

#![expect(
    clippy::panic,
    clippy::expect_used,
    clippy::indexing_slicing,
    reason = "these are tests"
)]

#[path = "cookbook/kitchen.rs"]
mod kitchen;
mod program;
#[path = "cookbook/rows/mod.rs"]
mod rows;
mod samples;

use std::collections::BTreeSet;
use std::path::Path;

use astragal_catalog::finding::Finding;
use astragal_catalog::{CheckReport, check_library};
use astragal_model::{Catalog, Example, Judgement};

use kitchen::{Library, Section, sections};
use rows::{Row, Shown, rows};

/// The groups of the page, in its order.
const GROUPS: [&str; 11] = [
    "Sizes",
    "Glass",
    "Structure",
    "Hardware",
    "Screens",
    "Grilles",
    "Colours",
    "Install",
    "Escape",
    "Energy",
    "Price items",
];

/// The groups behind them, which hold no recipes.
const REFUSED: &str = "What cannot be said";
const LONG_WAY: &str = "What is said the long way round";

/// The sections that are recipes, each with its row.
fn recipes() -> Vec<(&'static Row, Section)> {
    let sections = sections();
    let recipes = sections
        .into_iter()
        .filter(|section| section.group != REFUSED && section.group != LONG_WAY);
    rows().zip(recipes).collect()
}

/// Checks a library, which must be without any finding, and returns its catalog.
fn check_clean(library: &Library, what: &str) -> Catalog {
    let report = check_library(library.path());
    assert!(report.findings.is_empty(), "{what}: {:#?}", said(&report));
    let catalog = report.catalogs.into_iter().next().expect("one catalog");
    catalog.catalog
}

fn said(report: &CheckReport) -> Vec<String> {
    let text = |finding: &Finding| format!("{}: {}", finding.code(), finding.message());
    report.findings.iter().map(text).collect()
}

/// In how many things two examples differ: picks, measures, facts, the day.
fn differences(one: &Example, other: &Example) -> usize {
    let attributes: BTreeSet<_> = one
        .picks
        .iter()
        .chain(&other.picks)
        .map(|it| it.attribute)
        .collect();
    let pick = |example: &Example, attribute| {
        let found = example.picks.iter().find(|it| it.attribute == attribute);
        found.map(|it| (it.option.clone(), it.quoted))
    };
    let picks = attributes
        .iter()
        .filter(|it| pick(one, **it) != pick(other, **it));
    let measures = one.site.measures.values().zip(other.site.measures.values());
    let facts = one.site.facts.values().zip(other.site.facts.values());
    picks.count()
        + measures.filter(|(one, other)| one != other).count()
        + facts.filter(|(one, other)| one != other).count()
        + usize::from(one.date != other.date)
}

/// The pairs of examples that differ in one thing, in either order.
fn neighbours(catalog: &Catalog) -> impl Iterator<Item = (&Example, &Example)> {
    let examples = &catalog.declarations().examples;
    let pairs = examples
        .iter()
        .flat_map(move |one| examples.iter().map(move |other| (one, other)));
    pairs.filter(|(one, other)| differences(one, other) == 1)
}

fn judged(catalog: &Catalog, example: &Example) -> Judgement {
    example.judge(catalog, None, None)
}

/// What an example reads of a rule that does not plainly hold.
fn message(judgement: &Judgement, rule: &str) -> Option<String> {
    let finding = judgement.rules.iter().find(|it| it.id.as_str() == rule)?;
    Some(finding.message.clone())
}

/// An example breaks the rule and nothing else and says `expected`; one that differs in one thing holds for certain.
fn check_rule(catalog: &Catalog, title: &str, rule: &str, expected: &str) {
    let mut pairs = neighbours(catalog).filter(|(broken, _)| {
        let breaks = &broken.breaks;
        breaks.len() == 1 && breaks.first().is_some_and(|id| id.as_str() == rule)
    });
    let said = pairs.find_map(|(broken, held)| {
        let holds = held.breaks.is_empty() && message(&judged(catalog, held), rule).is_none();
        holds.then(|| message(&judged(catalog, broken), rule))
    });
    let said = said.unwrap_or_else(|| panic!("{title}: no two neighbours, one of which breaks `{rule}`"));
    assert_eq!(said.as_deref(), Some(expected), "{title}");
}

/// An example carries the notice for certain; one that differs in one thing does not.
fn check_notice(catalog: &Catalog, title: &str, notice: &str) {
    let carries = |example: &Example| {
        let judgement = judged(catalog, example);
        judgement
            .notices
            .iter()
            .any(|it| it.id.as_str() == notice && it.wants.is_none())
    };
    let says = |example: &Example| example.notices.is_some();
    let found =
        neighbours(catalog).any(|(one, other)| says(one) && says(other) && carries(one) && !carries(other));
    assert!(
        found,
        "{title}: no two neighbours, one of which carries `{notice}`"
    );
}

/// Two examples that differ in one thing come to these two totals, which `check` has compared.
fn check_totals(catalog: &Catalog, title: &str, totals: [&str; 2]) {
    let total = |example: &Example| example.total.as_ref().map(|it| it.amount.clone());
    let [low, high] = totals.map(|text| Some(text.parse().expect("an amount")));
    let found = neighbours(catalog).any(|(one, other)| total(one) == low && total(other) == high);
    assert!(found, "{title}: no two neighbours come to {totals:?}");
}

fn check_order(library: &Library, title: &str, name: &str, code: i32, pieces: &[&str]) {
    let order = library.order(name);
    let ran = program::run(&["quote", order.to_str().expect("a path in UTF-8")]);
    assert_eq!(ran.code, Some(code), "{title}\n{}\n{}", ran.out, ran.err);
    program::check_says(&ran.out, pieces);
}

/// What a catalog shows by its examples. An order is for a recipe alone: what the others ask for it leaves undecided.
fn check_shown(catalog: &Catalog, title: &str, shown: &Shown) {
    match *shown {
        Shown::Rule { id, says } => check_rule(catalog, title, id, says),
        Shown::Notice { id } => check_notice(catalog, title, id),
        Shown::Totals(totals) => check_totals(catalog, title, totals),
        Shown::Order { .. } => {}
    }
}

#[test]
fn every_recipe_of_the_page_has_its_row_and_every_group_its_recipes() {
    let page: Vec<(String, String)> = sections()
        .into_iter()
        .map(|section| (section.group, section.title))
        .filter(|(group, _)| group != REFUSED && group != LONG_WAY)
        .collect();
    let expected: Vec<(String, String)> = rows()
        .map(|row| (row.group.to_owned(), row.title.to_owned()))
        .collect();
    assert_eq!(page, expected);
    let mut groups: Vec<&str> = rows().map(|row| row.group).collect();
    groups.dedup();
    assert_eq!(groups, GROUPS);
    assert!(page.len() >= 30, "{} recipes", page.len());
}

#[test]
fn every_recipe_alone_is_proved_on_both_sides_of_its_boundary() {
    for (row, section) in recipes() {
        let library = Library::of(&section.samples);
        let catalog = check_clean(&library, row.title);
        for shown in row.shown {
            check_shown(&catalog, row.title, shown);
            if let Shown::Order { name, code, pieces } = *shown {
                check_order(&library, row.title, name, code, pieces);
            }
        }
        assert!(!row.shown.is_empty(), "{} shows something", row.title);
    }
}

#[test]
fn no_rule_and_no_notice_of_a_recipe_is_without_its_row() {
    for (row, section) in recipes() {
        let catalog = check_clean(&Library::of(&section.samples), row.title);
        let declarations = catalog.declarations();
        let rules = declarations.rules.iter().map(|it| it.id.as_str());
        let declared: BTreeSet<&str> = rules
            .chain(declarations.notices.iter().map(|it| it.id.as_str()))
            .collect();
        let shown: BTreeSet<&str> = row.shown.iter().filter_map(Shown::declared).collect();
        assert_eq!(declared, shown, "{}", row.title);
        let priced = |it: &Shown| matches!(it, Shown::Totals(_) | Shown::Order { .. });
        assert!(
            declarations.items.values().next().is_none() || row.shown.iter().any(priced),
            "{}: a price item shows a total or an order",
            row.title
        );
    }
}

#[test]
fn all_recipes_together_are_one_catalog_in_which_nothing_disturbs_anything() {
    let recipes = recipes();
    let library = Library::of(recipes.iter().flat_map(|(_, section)| &section.samples));
    let catalog = check_clean(&library, "all recipes together");
    for (row, _) in &recipes {
        for shown in row.shown {
            check_shown(&catalog, row.title, shown);
        }
    }
}

#[test]
fn what_the_page_says_cannot_be_said_is_refused_for_the_reason_given() {
    let mut attempts = 0;
    for section in sections() {
        if section.group != REFUSED && section.group != LONG_WAY {
            continue;
        }
        let refused = section.samples.iter().filter(|it| it.verb != "accepted");
        attempts += refused.clone().count();
        assert!(
            section.group == LONG_WAY || refused.clone().count() > 0,
            "{} shows no attempt",
            section.title
        );
        for sample in &section.samples {
            check_attempt(&section.title, sample);
        }
    }
    assert!(attempts >= 20, "{attempts} attempts");
}

/// The attempt has an error of the code that it names and of no other; what is accepted has none.
fn check_attempt(title: &str, sample: &samples::Sample) {
    let library = Library::of([sample]);
    let errors = if sample.verb == "refused-order" {
        errors_of_order(&library.order("attempt"))
    } else {
        let report = check_library(library.path());
        let errors = report.findings.iter().filter(|it| it.is_error());
        errors.map(|it| it.code().to_owned()).collect()
    };
    let expected: BTreeSet<String> = if sample.verb == "accepted" {
        BTreeSet::new()
    } else {
        [sample.subject.clone()].into()
    };
    assert_eq!(errors, expected, "{title}, line {}", sample.line);
}

fn errors_of_order(order: &Path) -> BTreeSet<String> {
    let order = order.to_str().expect("a path in UTF-8");
    let answer = program::json(&["quote", order, "--format", "json"]);
    let findings = answer["findings"].as_array().expect("findings");
    let errors = findings.iter().filter(|it| it["severity"] == "error");
    errors
        .filter_map(|it| it["code"].as_str().map(str::to_owned))
        .collect()
}
