//! Makes rule findings: what a rule reads, with values, and which standards stand against picks.

use std::collections::{BTreeSet, VecDeque};

use crate::evaluate::Environment;
use crate::expression::{Expression, Subject};
use crate::id::{AttributeIndex, Id};
use crate::judge::report::{Read, RuleFinding, RuleName, RuleState, Standing};
use crate::rule::{Definition, Effect, Rule};
use crate::setting::Setting;
use crate::unit::{Choice, Origin};
use crate::value::{Outcome, Value};

/// How an outcome that should be true fails to be; `None` when it is true.
pub(crate) fn failing_state(outcome: Outcome) -> Option<RuleState> {
    match outcome {
        Outcome::Known(Value::Bool(true)) => None,
        Outcome::Known(_) => Some(RuleState::Broken),
        Outcome::Unknown(wants) => Some(RuleState::Undecided(wants)),
        Outcome::Undefined(cause) => Some(RuleState::NoRow(cause)),
    }
}

/// What follows from a declared rule that fails to hold.
pub(crate) fn standing(setting: &Setting<'_>, rule: &Rule) -> Standing {
    if !setting.authorities.apply(&rule.authority) {
        return Standing::NotApplied;
    }
    let waiver = setting
        .waivers
        .iter()
        .position(|waiver| rule.waivable && waiver.rule == rule.id && waiver.holds_on(setting.date));
    match (rule.effect, waiver) {
        (_, Some(waiver)) => Standing::Waived(waiver),
        (Effect::Block, None) => Standing::Binds,
        (Effect::Warn, None) => Standing::Warns,
        (Effect::SignOff, None) => Standing::SignOff,
    }
}

/// What an expression reads directly: subjects, and attributes of which it asks whether they are asked.
pub(crate) fn direct_reads(expression: &Expression) -> Vec<Subject> {
    let mut reads = expression.reads();
    for attribute in expression.asks() {
        let subject = Subject::Attribute(attribute);
        if !reads.contains(&subject) {
            reads.push(subject);
        }
    }
    reads
}

/// Direct reads first, then what their figures read, and so on; each once, with its value.
pub(crate) fn reads_of(environment: &Environment<'_>, direct: &[Subject]) -> Vec<Read> {
    let mut seen: BTreeSet<Subject> = direct.iter().copied().collect();
    let mut queue: VecDeque<(Subject, bool)> = direct.iter().map(|subject| (*subject, true)).collect();
    let mut reads = Vec::new();
    while let Some((subject, directly)) = queue.pop_front() {
        reads.push(Read {
            subject,
            outcome: environment.read(subject),
            directly,
        });
        let Subject::Figure(figure) = subject else {
            continue;
        };
        let below = match &environment.declarations.figures.at(figure).definition {
            Definition::Formula(formula) => direct_reads(formula),
            Definition::Table(table, _) => table.columns.clone(),
        };
        queue.extend(
            below
                .into_iter()
                .filter(|below| seen.insert(*below))
                .map(|below| (below, false)),
        );
    }
    reads
}

/// The standards among the attributes read, when a pick is read as well.
fn standards_against_picks(environment: &Environment<'_>, reads: &[Read]) -> Vec<AttributeIndex> {
    let attributes = || {
        reads.iter().filter_map(|read| match read.subject {
            Subject::Attribute(attribute) => Some((attribute, environment.unit.choices.at(attribute))),
            _ => None,
        })
    };
    if !attributes().any(|(_, choice)| choice.is_picked()) {
        return Vec::new();
    }
    attributes()
        .filter(|(_, choice)| {
            matches!(
                choice,
                Choice::Chosen {
                    origin: Origin::Standard,
                    ..
                }
            )
        })
        .map(|(attribute, _)| attribute)
        .collect()
}

/// The finding of an implicit rule, which always binds and belongs to the plant.
pub(crate) fn implicit(
    environment: &Environment<'_>,
    rule: RuleName,
    id: String,
    state: RuleState,
    message: String,
    direct: &[Subject],
) -> RuleFinding {
    finding(
        environment,
        Named {
            rule,
            id: Id::new(&id),
            authority: Id::new("plant"),
        },
        state,
        message,
        direct,
    )
}

/// The names of a rule in a finding.
pub(crate) struct Named {
    pub(crate) rule: RuleName,
    pub(crate) id: Id,
    pub(crate) authority: Id,
}

/// A finding that binds; the caller changes what differs.
pub(crate) fn finding(
    environment: &Environment<'_>,
    named: Named,
    state: RuleState,
    message: String,
    direct: &[Subject],
) -> RuleFinding {
    let reads = reads_of(environment, direct);
    let standards_against_picks = if state == RuleState::Broken {
        standards_against_picks(environment, &reads)
    } else {
        Vec::new()
    };
    RuleFinding {
        rule: named.rule,
        id: named.id,
        part: None,
        authority: named.authority,
        state,
        standing: Standing::Binds,
        message,
        reads,
        standards_against_picks,
    }
}
