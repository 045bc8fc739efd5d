//! The answer to `CompleteUnit`: whole units that keep the picks and hold, the best first.
//!
//! Always holds: every unit has passed `judge`; what somebody must choose stays open.
//! LIMIT: `COMPLETIONS_MAX` units.
//! Cost: a few passes over the diagram a unit, and judging it.

use std::collections::BTreeSet;

use astragal_core::complete::{Aim, COMPLETIONS_MAX, Completed, Completion, Wish};
use astragal_model::{
    AttributeIndex, Choice, Judgement, Money, Number, Origin, RuleState, Standing, Total, Unit, Wants,
};
use tonic::Status;

use crate::quote::ask::UsedOn;
use crate::quote::nearest::changed;
use crate::quote::picked::Picks;
use crate::quote::words::CAUTION;
use crate::serve::asked::{Arrived, Asked, Served};
use crate::serve::deadline::Deadline;
use crate::serve::fault::{Faults, Reason, failed, shown};
use crate::serve::fill_in::changed_picks;
use crate::serve::finding;
use crate::serve::money::money;
use crate::serve::options::{changes_without_pins, count, picks};
use crate::serve::picks::{attribute, option};
use crate::serve::product::Product;
use crate::serve::v1::{self, shown_choice::Stands};

/// How a unit is to be completed.
struct Manner {
    aim: Aim,
    count: usize,
    near: Option<Unit>,
}

/// Answers the request.
pub(super) fn answer(
    served: &Served,
    arrived: Arrived,
    request: &v1::CompleteUnitRequest,
    deadline: Deadline,
) -> Result<v1::CompleteUnitResponse, Status> {
    let look_up = |product: &Product, faults: &mut Faults| Manner {
        aim: aim(request.mode, faults),
        count: number(request.count, faults),
        near: near(&request.shown, product, faults),
    };
    let (asked, manner) = Asked::new(served, arrived, look_up)?;
    deadline.check()?;
    let picks = picks(&asked)?;
    let (state, units) = found(&asked, &picks, &manner)?;
    let on = asked.on()?;
    let said = |unit| {
        deadline.check()?;
        Ok(completion(on, &asked, &picks, unit))
    };
    Ok(v1::CompleteUnitResponse {
        revisions: Some(asked.revisions()),
        state: state.into(),
        completions: units.iter().map(said).collect::<Result<_, Status>>()?,
        changes_without_pins: match state {
            v1::CompletionState::Impossible => changes_without_pins(&asked, &picks),
            _ => None,
        },
        caution: CAUTION.to_owned(),
    })
}

/// What the engine finds.
fn found(
    asked: &Asked,
    picks: &Picks,
    manner: &Manner,
) -> Result<(v1::CompletionState, Vec<Completed>), Status> {
    let setting = asked.setting()?;
    let wish = Wish {
        setting: &setting,
        picks: &picks.picks,
        quoted: &picks.quoted,
        aim: manner.aim,
        near: manner.near.as_ref(),
        count: manner.count,
    };
    let found = asked.engine().complete(asked.prepared()?, &wish);
    let found = found.map_err(|error| failed(Reason::Internal, &error.to_string()))?;
    Ok(match found {
        Completion::Impossible => (v1::CompletionState::Impossible, Vec::new()),
        Completion::Depends(unit) => (v1::CompletionState::Depends, vec![*unit]),
        Completion::Found(units) => (v1::CompletionState::Found, units),
    })
}

fn aim(mode: i32, faults: &mut Faults) -> Aim {
    match v1::CompletionMode::try_from(mode) {
        Ok(v1::CompletionMode::Unspecified | v1::CompletionMode::Standard) => Aim::Standard,
        Ok(v1::CompletionMode::Cheapest) => Aim::Cheapest,
        Err(_) => {
            faults.push(Reason::BadEnum, "mode", &format!("{mode} is no mode"));
            Aim::Standard
        }
    }
}

fn number(count: i32, faults: &mut Faults) -> usize {
    match usize::try_from(count) {
        Ok(0) => 1,
        Ok(count) if count <= COMPLETIONS_MAX => count,
        _ => {
            let message = format!("{count} units are asked for; expected 0 to {COMPLETIONS_MAX}");
            faults.push(Reason::OutOfRange, "count", &message);
            1
        }
    }
}

/// The unit on screen; what it does not name is open.
fn near(written: &[v1::ShownChoice], product: &Product, faults: &mut Faults) -> Option<Unit> {
    if written.is_empty() {
        return None;
    }
    let declared = &product.catalog.declarations().attributes;
    let mut unit = Unit {
        choices: declared.values().map(|_| Choice::Open).collect(),
    };
    let mut seen = BTreeSet::new();
    for (at, choice) in written.iter().enumerate() {
        let field = format!("shown[{at}].attribute");
        let Some(index) = attribute(&choice.attribute, product, &field, faults) else {
            continue;
        };
        if !seen.insert(index) {
            let message = format!("{} is shown twice", shown(&choice.attribute));
            faults.push(Reason::Duplicate, field, &message);
            continue;
        }
        if let Some(choice) = stands(choice, at, index, product, faults) {
            unit.choices.put(index, choice);
        }
    }
    Some(unit)
}

/// What stands at an attribute on screen; nothing where that is open, or no such thing can be.
fn stands(
    written: &v1::ShownChoice,
    at: usize,
    attribute: AttributeIndex,
    product: &Product,
    faults: &mut Faults,
) -> Option<Choice> {
    match written.stands.as_ref()? {
        Stands::NotAsked(false) => None,
        Stands::NotAsked(true) => {
            let declared = product.catalog.declarations().attributes.at(attribute);
            if declared.applies_when.is_none() {
                let message = format!("{} is always asked", shown(&written.attribute));
                faults.push(
                    Reason::UnknownOption,
                    format_args!("shown[{at}].not_asked"),
                    &message,
                );
                return None;
            }
            Some(Choice::NotAsked)
        }
        Stands::Option(id) => {
            let field = format_args!("shown[{at}].option");
            let option = option(id, attribute, product, field, faults)?;
            let origin = Origin::Standard;
            Some(Choice::Chosen { option, origin })
        }
    }
}

fn completion(on: UsedOn<'_>, asked: &Asked, picks: &Picks, completed: &Completed) -> v1::Completion {
    let judgement = &completed.judgement;
    let currency = on.used.book.currency;
    let subtotal = completed.cents.and_then(|cents| {
        let amount = &Number::from(cents) * &currency.minor_unit();
        money(&Money::new(amount, currency))
    });
    v1::Completion {
        verdict: finding::verdict(judgement.verdict).into(),
        changed: changed_picks(on, &changed(on.used.catalog, &picks.picks, completed)),
        departures: count(completed.departures),
        choices: finding::choices(on, &completed.unit),
        subtotal,
        total: finding::total(judgement).and_then(money),
        open: finding::open(on, judgement),
        rules: finding::rules(on, &completed.unit, judgement, &asked.request.waivers),
        wants: finding::wants(on, &waited_for(judgement)),
    }
}

/// What must be known or chosen before a unit holds and has a price.
fn waited_for(judgement: &Judgement) -> Wants {
    let mut all = Wants::new();
    if let Total::Unknown(wants) = &judgement.total {
        all.extend(wants.iter().cloned());
    }
    for finding in &judgement.rules {
        if let (Standing::Binds, RuleState::Undecided(wants)) = (&finding.standing, &finding.state) {
            all.extend(wants.iter().cloned());
        }
    }
    for open in &judgement.open {
        all.extend(open.wants.iter().cloned());
    }
    all
}
