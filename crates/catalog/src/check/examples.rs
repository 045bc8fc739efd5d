//! Proves the examples of a catalog, and asks for an example of every rule.
//!
//! An example is filled with standards and judged; what comes out is compared with what it says. A rule of the catalog
//! should have an example that breaks it and nothing else.

use std::collections::{BTreeMap, BTreeSet};

use astragal_model::{Book, Catalog, Example, Id, Judgement, Mismatch, RuleState, Total};

use crate::finding::{Finding, Findings, Place};
use crate::load::{DeclarationKind, Places};
use crate::nearest::quoted_list;
use crate::site_values::contradictions_of;

/// LIMIT: how many messages of rules a help repeats.
const MESSAGES_SHOWN: usize = 3;

/// Proves every example. The totals are compared by the books of `books`.
pub(super) fn prove(catalog: &Catalog, places: &Places, books: &BTreeMap<Id, Book>, findings: &Findings) {
    let declarations = catalog.declarations();
    let mut alone: BTreeSet<Id> = BTreeSet::new();
    for example in &declarations.examples {
        let place = places
            .of_kind(DeclarationKind::Example, &example.id)
            .map(|it| it.place.clone());
        if let Some(place) = &place {
            let of = format!("example `{}`", example.id);
            for finding in contradictions_of(catalog, &example.site, &of, place) {
                findings.push(finding);
            }
        }
        let book = example.total.as_ref().and_then(|total| books.get(&total.book));
        let mismatches = example.mismatches(catalog, book);
        alone.extend(breaks_alone(example, &mismatches).cloned());
        if mismatches.is_empty() {
            continue;
        }
        let judgement = example.judge(catalog, book, None);
        for mismatch in &mismatches {
            findings.push(differs(example, mismatch, &judgement, catalog, place.clone()));
        }
    }
    every_rule_has_one(catalog, &alone, places, findings);
}

/// The one rule that an example breaks, whatever it says, or says that it breaks: either way it needs no other example.
fn breaks_alone<'e>(example: &'e Example, mismatches: &'e [Mismatch]) -> impl Iterator<Item = &'e Id> {
    let found = mismatches.iter().find_map(|mismatch| match mismatch {
        Mismatch::Breaks { found } => Some(found),
        _ => None,
    });
    let sets = std::iter::once(&example.breaks).chain(found);
    sets.filter(|breaks| breaks.len() == 1).flatten()
}

fn differs(
    example: &Example,
    mismatch: &Mismatch,
    judgement: &Judgement,
    catalog: &Catalog,
    place: Option<Place>,
) -> Finding {
    let id = &example.id;
    let (message, help) = match mismatch {
        Mismatch::Breaks { found } => (
            format!(
                "example `{id}` should break {}, and breaks {}",
                listed(&example.breaks),
                listed(found)
            ),
            reasons(found, &example.breaks, judgement)
                .unwrap_or_else(|| "what it should break holds; change the example or the rule".to_owned()),
        ),
        Mismatch::Undecided { found } => {
            let expected = example.undecided.clone().unwrap_or_default();
            (
                format!(
                    "example `{id}` should leave {} undecided, and leaves {}",
                    listed(&expected),
                    listed(found)
                ),
                wanted(judgement, catalog),
            )
        }
        Mismatch::RoomBreaks { found } => (
            format!(
                "example `{id}` should break {} of its room, and breaks {}",
                listed(&example.room_breaks),
                listed(found)
            ),
            "its unit is judged as the only one of its room; see `room_breaks`".to_owned(),
        ),
        Mismatch::RoomUndecided { found } => {
            let expected = example.room_undecided.clone().unwrap_or_default();
            (
                format!(
                    "example `{id}` should leave {} of its room undecided, and leaves {}",
                    listed(&expected),
                    listed(found)
                ),
                "its unit is judged as the only one of its room; see `room_undecided`".to_owned(),
            )
        }
        Mismatch::Notices { found } => {
            let expected = example.notices.clone().unwrap_or_default();
            (
                format!(
                    "example `{id}` should carry {}, and carries {}",
                    notices(&expected),
                    notices(found)
                ),
                "only what is carried for certain counts".to_owned(),
            )
        }
        Mismatch::Total { found } => total(example, found, catalog),
    };
    Finding::error("EXAMPLE_DIFFERS", message)
        .at_if_known(place)
        .with_help(help)
}

fn total(example: &Example, found: &Total, catalog: &Catalog) -> (String, String) {
    let expected = example
        .total
        .as_ref()
        .map_or_else(String::new, |total| total.amount.to_string());
    let id = &example.id;
    let should = format!("example `{id}` should come to {expected}");
    match found {
        Total::Known(money) => (
            format!("{should}, and comes to {money}"),
            "quote it to see the items and the steps that lead there".to_owned(),
        ),
        Total::Unknown(wants) => {
            let wants: Vec<String> = wants.iter().map(|want| catalog.show_want(want)).collect();
            (
                format!("{should}, and its total cannot be known"),
                format!("not known: {}", wants.join(", ")),
            )
        }
        Total::NoPrice => (
            format!("{should}, and has no price"),
            "an item that it incurs has no amount; see `has-a-price`".to_owned(),
        ),
        Total::NotPriced => (
            format!("{should}, and is not priced"),
            "name a price book".to_owned(),
        ),
    }
}

/// The messages of rules that are broken and should not be.
fn reasons(found: &BTreeSet<Id>, expected: &BTreeSet<Id>, judgement: &Judgement) -> Option<String> {
    let broken = judgement.rules.iter().filter(|finding| {
        let is_broken = matches!(finding.state, RuleState::Broken | RuleState::NoRow(_));
        is_broken && found.contains(&finding.id) && !expected.contains(&finding.id)
    });
    let messages: Vec<String> = broken
        .take(MESSAGES_SHOWN)
        .map(|finding| format!("`{}`: {}", finding.id, finding.message))
        .collect();
    (!messages.is_empty()).then(|| messages.join(" "))
}

fn wanted(judgement: &Judgement, catalog: &Catalog) -> String {
    let wants: BTreeSet<String> = judgement
        .rules
        .iter()
        .filter_map(|finding| match &finding.state {
            RuleState::Undecided(wants) => Some(wants),
            _ => None,
        })
        .flatten()
        .map(|want| catalog.show_want(want))
        .collect();
    if wants.is_empty() {
        return "everything that it needs is known".to_owned();
    }
    let wants: Vec<String> = wants.into_iter().collect();
    format!("not known: {}", wants.join(", "))
}

fn listed(ids: &BTreeSet<Id>) -> String {
    if ids.is_empty() {
        "nothing".to_owned()
    } else {
        quoted_list(ids.iter().map(Id::as_str))
    }
}

fn notices(ids: &BTreeSet<Id>) -> String {
    if ids.is_empty() {
        "no notice".to_owned()
    } else {
        quoted_list(ids.iter().map(Id::as_str))
    }
}

fn every_rule_has_one(catalog: &Catalog, alone: &BTreeSet<Id>, places: &Places, findings: &Findings) {
    let declarations = catalog.declarations();
    let shown: BTreeSet<&Id> = alone.iter().collect();
    let rules: BTreeSet<&Id> = declarations.rules.iter().map(|rule| &rule.id).collect();
    for rule in rules.difference(&shown) {
        let message = format!(
            "no example of catalog `{}` breaks rule `{rule}` and nothing else",
            declarations.id
        );
        let place = places
            .of_kind(DeclarationKind::Rule, rule)
            .map(|it| it.place.clone());
        findings.push(
            Finding::warning("RULE_WITHOUT_EXAMPLE", message)
                .at_if_known(place)
                .with_help(format!("add an `[[example]]` with breaks = [\"{rule}\"]")),
        );
    }
    every_room_rule_has_one(catalog, places, findings);
}

fn every_room_rule_has_one(catalog: &Catalog, places: &Places, findings: &Findings) {
    let declarations = catalog.declarations();
    let examples = &declarations.examples;
    let shown: BTreeSet<&Id> = examples.iter().flat_map(|example| &example.room_breaks).collect();
    for rule in declarations.room_rules.iter().map(|rule| &rule.id) {
        if shown.contains(rule) {
            continue;
        }
        let id = &declarations.id;
        let message = format!("no example of catalog `{id}` breaks room rule `{rule}`");
        let place = places
            .of_kind(DeclarationKind::RoomRule, rule)
            .map(|it| it.place.clone());
        let help = format!("add an `[[example]]` with room_breaks = [\"{rule}\"]");
        let finding = Finding::warning("RULE_WITHOUT_EXAMPLE", message).at_if_known(place);
        findings.push(finding.with_help(help));
    }
}
