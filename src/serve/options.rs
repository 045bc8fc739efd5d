//! The answer to `EvaluateOptions`: what the engine says of every option, as `astragal options` does.
//!
//! Always holds: attributes of the plant are left out, since nobody picks them.
//! Cost: some passes over the diagram; judging once where a pick was carried over from an earlier quote.

use astragal_core::options::Picked;
use astragal_model::{Audience, Subject, Wants, fill, judge};
use tonic::Status;

use crate::options::engine::{AttributeOptions, EngineOptions, OneOption, State, Withheld};
use crate::quote::ask::UsedOn;
use crate::quote::picked::Picks;
use crate::serve::asked::{Asked, Served};
use crate::serve::money::money;
use crate::serve::product::Product;
use crate::serve::v1;
use crate::serve::{day, finding};
use crate::text::CAUTION;

/// Answers the request.
pub(super) fn answer(
    served: &Served,
    request: v1::EvaluateOptionsRequest,
) -> Result<v1::EvaluateOptionsResponse, Status> {
    let (asked, ()) = Asked::new(served, request.unit, |_, _| ())?;
    let picks: Vec<Picked> = picks(&asked)?.picks;
    let used = asked.used()?;
    let setting = asked.setting()?;
    let prepared = &asked.known.prepared;
    let options = EngineOptions::new(asked.engine(), prepared, &setting, &picks, used.book.currency);
    let on = UsedOn {
        used,
        date: asked.date(),
    };
    let product = asked.product();
    let changes = options.selection.possible.map(count);
    Ok(v1::EvaluateOptionsResponse {
        revisions: Some(asked.revisions()),
        verdict: finding::verdict(options.verdict()).into(),
        selection_changes: changes,
        least_subtotal: options.least().as_ref().and_then(money),
        attributes: options
            .attributes
            .iter()
            .filter_map(|one| attribute(product, &options.wants, one))
            .collect(),
        wants: finding::wants(on, &options.wants),
        caution: CAUTION.to_owned(),
        waits: positions(&options.wants, &options.waits),
    })
}

/// The picks as the engine takes them. Only one that was carried over can be honoured, so that without such nothing is judged.
pub(super) fn picks(asked: &Asked) -> Result<Picks, Status> {
    let request = &asked.request;
    let is_carried = request.picks.iter().any(|pick| pick.quoted.is_some());
    let judgement = if is_carried {
        let setting = asked.setting()?;
        Some(judge(&setting, &fill(&setting, &request.picks)))
    } else {
        None
    };
    let catalog = &asked.product().catalog;
    Ok(Picks::new(
        catalog,
        &request.picks,
        &request.pins,
        judgement.as_ref(),
    ))
}

/// A count of picks, of which there are never more than attributes.
pub(super) fn count(changes: i64) -> i32 {
    i32::try_from(changes).unwrap_or(i32::MAX)
}

/// Where some things that are wanted stand among all.
fn positions(all: &Wants, some: &Wants) -> Vec<i32> {
    let all = all.iter().enumerate();
    let positions = all.filter(|(_, want)| some.contains(want));
    positions.filter_map(|(at, _)| i32::try_from(at).ok()).collect()
}

fn withheld(withheld: &Withheld) -> v1::Withheld {
    let (reason, date) = match withheld {
        Withheld::Hidden => (v1::WithheldReason::Hidden, None),
        Withheld::From(from) => (v1::WithheldReason::NotYetOffered, Some(*from)),
        Withheld::Until(until) => (v1::WithheldReason::NoLongerOffered, Some(*until)),
    };
    v1::Withheld {
        reason: reason.into(),
        date: date.map(day::write),
    }
}

fn attribute(product: &Product, wants: &Wants, answered: &AttributeOptions) -> Option<v1::AttributeOptions> {
    let declared = product.catalog.declarations().attributes.at(answered.attribute);
    if declared.audience == Audience::Plant {
        return None;
    }
    let option = |one: &OneOption| {
        let (state, changes) = match one.state {
            State::Kept => (v1::OptionState::Kept, Some(0)),
            State::Free => (v1::OptionState::Free, Some(0)),
            State::Changes(changes) => (v1::OptionState::Changes, Some(count(changes))),
            State::Impossible => (v1::OptionState::Impossible, None),
            State::Depends(changes) => (v1::OptionState::Depends, Some(count(changes))),
        };
        let entry = declared.options.get(one.value);
        v1::OptionAnswer {
            option: entry.map(|entry| entry.id.to_string()).unwrap_or_default(),
            state: state.into(),
            changes,
            difference: one.difference.as_ref().and_then(money),
            waits: positions(wants, &one.waits),
            withheld: one.withheld.as_ref().map(withheld),
        }
    };
    Some(v1::AttributeOptions {
        attribute: product.name(Subject::Attribute(answered.attribute)),
        options: answered.options.iter().map(option).collect(),
    })
}
