//! What does not hold, what cannot be decided and for want of what, what is still to choose, and the rest of the rules.
//!
//! Always holds: every finding of the judgement is said once, with the rule's id, authority and basis. What has to be
//! asked or measured is collected once an opening.

use std::collections::BTreeSet;

use astragal_model::{
    AttributeIndex, Audience, Outcome, Read, RuleFinding, RuleState, Standing, Subject, Total, Value, Want,
    Wants,
};

use crate::quote::work::QuotedUnit;
use crate::text::chosen::{is_shown, named};
use crate::text::opening::section;
use crate::text::page::{Page, Tone};

/// LIMIT: how many things are shown that a rule reads through its figures; all of them stand in the JSON.
const THROUGH_MAX: usize = 8;

/// The rules that bind and are broken.
pub(crate) fn write_broken(page: &mut Page, unit: &QuotedUnit<'_>) {
    let broken: Vec<_> = standing(unit, Standing::Binds)
        .filter(|finding| is_broken(finding))
        .collect();
    if broken.is_empty() {
        return;
    }
    page.blank();
    page.heading(2, Tone::Bad, "Does not hold");
    for finding in broken {
        rule(page, unit, finding);
    }
}

/// The rules that bind and cannot be decided, and everything that is wanted.
pub(crate) fn write_undecided(page: &mut Page, unit: &QuotedUnit<'_>) {
    let undecided = standing(unit, Standing::Binds).filter(|finding| !is_broken(finding));
    let undecided: Vec<_> = undecided.collect();
    let asks = asks(unit);
    let wants_total = matches!(unit.judgement.total, Total::Unknown(_));
    let waiting = waiting(unit);
    if undecided.is_empty() && asks.is_empty() && !wants_total && waiting.is_empty() {
        return;
    }
    page.blank();
    page.heading(2, Tone::Unsure, "Cannot be decided yet");
    for finding in undecided {
        rule(page, unit, finding);
    }
    for (label, wants) in waiting {
        page.entry(
            4,
            "- ",
            &format!("{label} waits for {}", want_labels(unit, wants)),
        );
    }
    if let Total::Unknown(wants) = &unit.judgement.total {
        page.entry(
            4,
            "- ",
            &format!("the total waits for {}", want_labels(unit, wants)),
        );
    }
    if !asks.is_empty() {
        page.text(4, "To decide it:");
    }
    for ask in asks {
        page.entry(6, "> ", &ask);
    }
}

/// What the customer has still to choose.
pub(crate) fn write_to_choose(page: &mut Page, unit: &QuotedUnit<'_>) {
    let catalog = unit.used.catalog;
    let open = unit
        .judgement
        .open
        .iter()
        .filter(|open| open.is_to_choose(catalog));
    let open: Vec<_> = open.collect();
    if open.is_empty() {
        return;
    }
    page.blank();
    page.heading(2, Tone::Unsure, "Still to choose");
    for open in open {
        page.text(4, &unit.ask(&Want::Choice(open.attribute)));
    }
}

/// Warnings, sign-offs, what is waived, and what was not applied.
pub(crate) fn write_others(page: &mut Page, unit: &QuotedUnit<'_>) {
    let mut group = |title: &str, findings: Vec<&RuleFinding>| {
        if !findings.is_empty() {
            section(page, title);
        }
        for finding in findings {
            rule(page, unit, finding);
        }
    };
    group("Warnings", standing(unit, Standing::Warns).collect());
    group("Needs a sign-off", standing(unit, Standing::SignOff).collect());
    let of_rules = unit.judgement.rules.iter();
    let waived = of_rules
        .clone()
        .filter(|finding| matches!(finding.standing, Standing::Waived(_)));
    group("Waived", waived.collect());
    let (broken, undecided): (Vec<_>, Vec<_>) =
        standing(unit, Standing::NotApplied).partition(|finding| is_broken(finding));
    group("Not applied: would not hold", broken);
    group("Not applied: cannot be decided", undecided);
}

/// Whether a finding is certain, rather than undecided.
fn is_broken(finding: &RuleFinding) -> bool {
    !matches!(finding.state, RuleState::Undecided(_))
}

fn standing<'a>(unit: &'a QuotedUnit<'_>, standing: Standing) -> impl Iterator<Item = &'a RuleFinding> {
    let rules = unit.judgement.rules.iter();
    rules.filter(move |finding| finding.standing == standing)
}

fn rule(page: &mut Page, unit: &QuotedUnit<'_>, finding: &RuleFinding) {
    match &finding.state {
        RuleState::Broken => page.entry(4, "- ", &finding.message),
        RuleState::NoRow(cause) => {
            page.entry(4, "- ", &finding.message);
            page.text(
                6,
                &format!("It has no answer: {}.", unit.used.catalog.show_cause(cause)),
            );
        }
        RuleState::Undecided(wants) => {
            let may = if finding.standing == Standing::Binds {
                "Waits"
            } else {
                "May apply: waits"
            };
            page.entry(4, "- ", &format!("{may} for {}.", want_labels(unit, wants)));
            page.text(6, &format!("If it fails: {}", finding.message));
        }
    }
    page.text(6, &source(unit, finding));
    if let Standing::Waived(position) = finding.standing {
        waiver(page, unit, position);
    }
    standards(page, unit, finding);
    reads(page, unit, finding);
}

/// The rule's id, authority and basis.
fn source(unit: &QuotedUnit<'_>, finding: &RuleFinding) -> String {
    let declarations = unit.used.catalog.declarations();
    let authority = declarations
        .authorities
        .iter()
        .find(|(id, _)| *id == finding.authority);
    let authority = authority.map_or(finding.authority.as_str(), |(_, label)| label.as_str());
    let part = finding
        .part
        .map(|part| format!(" ({})", declarations.parts.at(part).label));
    let basis = unit.basis(finding).map(|basis| format!("; basis: {basis}"));
    let (part, basis) = (part.unwrap_or_default(), basis.unwrap_or_default());
    format!("Rule {}{part}, authority: {authority}{basis}", finding.id)
}

fn waiver(page: &mut Page, unit: &QuotedUnit<'_>, position: usize) {
    let Some(waiver) = unit.request.waivers.get(position) else {
        return;
    };
    let until = waiver
        .until
        .map_or_else(|| "without end".to_owned(), |until| format!("until {until}"));
    page.text(
        6,
        &format!("Waived by {}, from {}, {until}.", waiver.reference, waiver.from),
    );
}

/// Says which standards do not go with which picks.
///
/// Certain only where the rule itself reads both; where a figure reads them, they merely take part.
fn standards(page: &mut Page, unit: &QuotedUnit<'_>, finding: &RuleFinding) {
    let directly = |attribute: AttributeIndex| {
        let subject = Subject::Attribute(attribute);
        finding
            .reads
            .iter()
            .any(|read| read.directly && read.subject == subject)
    };
    let picked = finding.reads.iter().filter_map(|read| match read.subject {
        Subject::Attribute(attribute) if read.directly => Some(attribute),
        _ => None,
    });
    let picked = picked.filter(|attribute| unit.filled.choices.at(*attribute).is_picked());
    let picked: Vec<String> = picked.filter_map(|attribute| named(unit, attribute)).collect();
    let shown = finding.standards_against_picks.iter().copied();
    let shown = shown.filter(|attribute| is_shown(unit, *attribute));
    let (certain, partly): (Vec<_>, Vec<_>) =
        shown.partition(|attribute| directly(*attribute) && !picked.is_empty());
    for attribute in certain {
        if let Some(standard) = named(unit, attribute) {
            let text = format!(
                "The standard {standard} does not go with your {}.",
                picked.join(" and your ")
            );
            page.text(6, &text);
        }
    }
    let partly: Vec<_> = partly
        .into_iter()
        .filter_map(|attribute| named(unit, attribute))
        .collect();
    if !partly.is_empty() {
        page.text(6, &format!("Standards that take part: {}.", partly.join("; ")));
    }
}

/// What the rule reads, with the values: itself and, where it binds, through its figures, the nearest first.
fn reads(page: &mut Page, unit: &QuotedUnit<'_>, finding: &RuleFinding) {
    let shown = |directly: bool| {
        let reads = finding.reads.iter().filter(move |read| read.directly == directly);
        reads
            .filter_map(|read| shown_read(unit, read))
            .collect::<Vec<String>>()
    };
    let direct = shown(true);
    if !direct.is_empty() {
        page.entry(6, "It reads ", &direct.join("; "));
    }
    let mut through = shown(false);
    if through.is_empty() || finding.standing != Standing::Binds {
        return;
    }
    let more = through.len().saturating_sub(THROUGH_MAX);
    through.truncate(THROUGH_MAX);
    let rest = if more > 0 {
        format!("; and {more} more")
    } else {
        String::new()
    };
    page.entry(6, "from ", &format!("{}{rest}", through.join("; ")));
}

fn shown_read(unit: &QuotedUnit<'_>, read: &Read) -> Option<String> {
    let catalog = unit.used.catalog;
    let mut suffix = "";
    if let Subject::Attribute(attribute) = read.subject {
        if !is_shown(unit, attribute) {
            return None;
        }
        if unit.filled.choices.at(attribute).is_picked() {
            suffix = " (you chose)";
        }
    }
    let is_idle = matches!(
        read.outcome,
        Outcome::Known(Value::NotAsked) | Outcome::Undefined(_)
    );
    if is_idle && !read.directly {
        return None;
    }
    let value = catalog.show_outcome(read.subject, &read.outcome);
    Some(format!("{}: {value}{suffix}", catalog.label_of(read.subject)))
}

fn want_labels(unit: &QuotedUnit<'_>, wants: &Wants) -> String {
    let labels: Vec<String> = wants
        .iter()
        .map(|want| unit.used.catalog.show_want(want))
        .collect();
    labels.join(", ")
}

/// The labels of attributes that wait for something else than a choice of their own.
fn waiting<'a>(unit: &'a QuotedUnit<'_>) -> Vec<(String, &'a Wants)> {
    let catalog = unit.used.catalog;
    let open = unit
        .judgement
        .open
        .iter()
        .filter(|open| !open.is_to_choose(catalog));
    let open = open.filter(|open| is_shown(unit, open.attribute));
    open.map(|open| (catalog.label_of(Subject::Attribute(open.attribute)), &open.wants))
        .collect()
}

/// What is wanted for the verdict and is no choice of the customer, as what to do about it, each once.
fn asks(unit: &QuotedUnit<'_>) -> Vec<String> {
    let judgement = &unit.judgement;
    let mut wants: BTreeSet<&Want> = BTreeSet::new();
    for finding in &judgement.rules {
        if let (RuleState::Undecided(more), Standing::Binds) = (&finding.state, finding.standing) {
            wants.extend(more);
        }
    }
    wants.extend(judgement.open.iter().flat_map(|open| &open.wants));
    if let Total::Unknown(more) = &judgement.total {
        wants.extend(more);
    }
    let attributes = &unit.used.catalog.declarations().attributes;
    let is_asked_elsewhere = |want: &Want| match want {
        Want::Choice(attribute) => attributes.at(*attribute).audience == Audience::Customer,
        _ => false,
    };
    let wants = wants.into_iter().filter(|want| !is_asked_elsewhere(want));
    wants.map(|want| unit.ask(want)).collect()
}
