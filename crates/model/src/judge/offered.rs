//! Judges the implicit rules of attributes: asked when chosen, on offer on the day, determined by the plant; and
//! that the price book is in force.

use jiff::civil::Date;

use crate::attribute::{Attribute, Audience, OptionEntry};
use crate::evaluate::Environment;
use crate::expression::Subject;
use crate::fill::standard_outcome;
use crate::id::{AttributeIndex, Id};
use crate::judge::find::{direct_reads, failing_state, implicit};
use crate::judge::report::{RuleFinding, RuleName, RuleState, Standing};
use crate::setting::Setting;
use crate::unit::{Choice, Origin};
use crate::value::{Outcome, Value};

/// The findings of all implicit rules but `has-a-price`, attribute by attribute.
pub(crate) fn implicit_findings(setting: &Setting<'_>, environment: &Environment<'_>) -> Vec<RuleFinding> {
    let mut findings = Vec::new();
    findings.extend(book_in_force(setting, environment));
    for (index, attribute) in environment.declarations.attributes.iter() {
        findings.extend(applies(setting, environment, index, attribute));
        findings.extend(offered(setting, environment, index, attribute));
        if attribute.audience == Audience::Plant {
            findings.extend(determined(setting, environment, index));
        }
    }
    findings
}

/// `<attribute>.applies`: chosen when asked, not asked when not. An open attribute breaks it only when its
/// condition is undefined.
fn applies(
    setting: &Setting<'_>,
    environment: &Environment<'_>,
    index: AttributeIndex,
    attribute: &Attribute,
) -> Option<RuleFinding> {
    let asked = environment.asked.at(index);
    let choice = environment.unit.choices.at(index);
    let outcome = match (choice, asked) {
        (_, Outcome::Undefined(_)) | (Choice::Chosen { .. }, _) => asked.clone(),
        (Choice::NotAsked, _) => asked.clone().not(),
        (Choice::Open, _) => return None,
    };
    let state = failing_state(outcome)?;
    let label = setting.catalog.label_of(Subject::Attribute(index));
    let message = match choice {
        Choice::Chosen { option, .. } => {
            format!(
                "{label} is not asked here, but {} is chosen for it.",
                option_label(attribute, option)
            )
        }
        Choice::NotAsked => format!("{label} is asked here, but nothing is chosen for it."),
        Choice::Open => format!("Whether {label} is asked has no answer here."),
    };
    let mut direct = vec![Subject::Attribute(index)];
    direct.extend(
        attribute
            .applies_when
            .iter()
            .flat_map(direct_reads)
            .filter(|read| *read != Subject::Attribute(index)),
    );
    let id = format!("{}.applies", setting.catalog.name_of(Subject::Attribute(index)));
    Some(implicit(
        environment,
        RuleName::Applies(index),
        id,
        state,
        message,
        &direct,
    ))
}

fn option_label<'a>(attribute: &'a Attribute, option: &'a Id) -> &'a str {
    attribute
        .option(option)
        .map_or(option.as_str(), |entry| entry.label.as_str())
}

/// `<attribute>.offered`: the option exists, is not hidden, and may be ordered on the day.
fn offered(
    setting: &Setting<'_>,
    environment: &Environment<'_>,
    index: AttributeIndex,
    attribute: &Attribute,
) -> Option<RuleFinding> {
    let Choice::Chosen { option, origin } = environment.unit.choices.at(index) else {
        return None;
    };
    let label = setting.catalog.label_of(Subject::Attribute(index));
    let shown = option_label(attribute, option);
    let hidden = setting
        .policy
        .and_then(|policy| policy.terms.hidden.get(&index))
        .is_some_and(|hidden| hidden.contains(option));
    let (message, standing) = match attribute.option(option) {
        None => (format!("{label} has no option `{option}`."), Standing::Binds),
        Some(entry) if hidden => (
            format!(
                "{shown} ({label}) is not sold by this dealer.{}",
                instead(attribute, entry)
            ),
            Standing::Binds,
        ),
        Some(entry) => out_of_date(attribute, entry, origin, setting.date, &label)?,
    };
    let subject = Subject::Attribute(index);
    let id = format!("{}.offered", setting.catalog.name_of(subject));
    let mut finding = implicit(
        environment,
        RuleName::Offered(index),
        id,
        RuleState::Broken,
        message,
        &[subject],
    );
    finding.standing = standing;
    Some(finding)
}

/// What to choose instead, as a sentence behind another; empty where nothing is said.
fn instead(attribute: &Attribute, entry: &OptionEntry) -> String {
    match &entry.validity.replaced_by {
        Some(replacement) => format!(" {} replaces it.", option_label(attribute, replacement)),
        None => String::new(),
    }
}

/// What is to be said of an option on a day on which it is not simply on offer.
fn out_of_date(
    attribute: &Attribute,
    entry: &OptionEntry,
    origin: &Origin,
    date: Date,
    label: &str,
) -> Option<(String, Standing)> {
    let validity = &entry.validity;
    let shown = &entry.label;
    if let Some(from) = validity.offered_from.filter(|from| date < *from) {
        return Some((
            format!("{shown} ({label}) is offered from {from}."),
            Standing::Binds,
        ));
    }
    let until = validity.offered_until.filter(|until| *until < date)?;
    let honoured = validity.honoured_until.filter(|honoured| date <= *honoured);
    let quoted_in_time =
        matches!(origin, Origin::Picked { quoted: Some(quoted) } if validity.offers(*quoted));
    if let Some(honoured) = honoured.filter(|_| quoted_in_time) {
        let message = format!(
            "{shown} ({label}) was offered until {until}; it was quoted in time and is honoured until {honoured}."
        );
        return Some((message, Standing::Warns));
    }
    let instead = instead(attribute, entry);
    Some((
        format!("{shown} ({label}) was offered until {until}.{instead}"),
        Standing::Binds,
    ))
}

/// `<attribute>.determined`: what stands there is what the standard says.
fn determined(
    setting: &Setting<'_>,
    environment: &Environment<'_>,
    index: AttributeIndex,
) -> Option<RuleFinding> {
    let Choice::Chosen { option, .. } = environment.unit.choices.at(index) else {
        return None;
    };
    let attribute = environment.declarations.attributes.at(index);
    let standard = standard_outcome(setting, environment, index);
    let sets = match &standard {
        Outcome::Known(Value::Option(standard)) => {
            format!("; the plant sets {}", option_label(attribute, standard))
        }
        _ => String::new(),
    };
    let outcome = match standard {
        Outcome::Known(Value::Option(standard)) => Outcome::truth(standard == *option),
        // A source that is not asked leaves the attribute open; an option that stands there all the same is nobody's.
        Outcome::Known(_) => Outcome::truth(false),
        other => other,
    };
    let state = failing_state(outcome)?;
    let label = setting.catalog.label_of(Subject::Attribute(index));
    let subject = Subject::Attribute(index);
    let id = format!("{}.determined", setting.catalog.name_of(subject));
    let shown = option_label(attribute, option);
    let message = format!("{label} is determined by the plant and is not {shown} here{sets}.");
    Some(implicit(
        environment,
        RuleName::Determined(index),
        id,
        state,
        message,
        &[subject],
    ))
}

/// `book-in-force`: the day lies within the dates of the price book.
fn book_in_force(setting: &Setting<'_>, environment: &Environment<'_>) -> Option<RuleFinding> {
    let book = setting.book?;
    let message = if let Some(from) = book.from.filter(|from| setting.date < *from) {
        format!(
            "The price book {} is in force from {from}; the day is {}.",
            book.label, setting.date
        )
    } else {
        let until = book.until.filter(|until| *until < setting.date)?;
        format!(
            "The price book {} was in force until {until}; the day is {}.",
            book.label, setting.date
        )
    };
    let id = "book-in-force".to_owned();
    Some(implicit(
        environment,
        RuleName::BookInForce,
        id,
        RuleState::Broken,
        message,
        &[],
    ))
}
