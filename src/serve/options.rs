//! The answer to `EvaluateOptions`: what the engine says of every option, as `astragal options` does.
//!
//! Always holds: attributes of the plant are left out, since nobody picks them; both forms say the same.
//! Cost: some passes over the diagram; judging once where a pick was carried over from an earlier quote. The full form has
//! two texts an option, its id and its currency; the compact form has none.

mod compact;

use astragal_model::{AttributeIndex, Wants, fill, judge};
use tonic::Status;

use crate::options::engine::{EngineOptions, OneOption, State, Withheld};
use crate::options::selection::SelectionState;
use crate::quote::ask::UsedOn;
use crate::quote::picked::Picks;
use crate::quote::words::CAUTION;
use crate::serve::asked::{Arrived, Asked, Served};
use crate::serve::fault::{Faults, Reason};
use crate::serve::money::minor;
use crate::serve::v1::{self, option_answer::Stands};
use crate::serve::{day, finding};

/// Answers the request.
pub(super) fn answer(
    served: &Served,
    arrived: Arrived,
    view: i32,
) -> Result<v1::EvaluateOptionsResponse, Status> {
    let (asked, is_compact) = Asked::new(served, arrived, |_, faults| is_compact(view, faults))?;
    let picks = picks(&asked)?;
    let on = asked.on()?;
    let options = EngineOptions::new(asked.engine(), asked.prepared()?, on, &picks.picks);
    let currency = on.used.book.currency;
    let waits = options.waits();
    let selection = options.selection();
    let state = SelectionState::of(selection);
    Ok(v1::EvaluateOptionsResponse {
        revisions: Some(asked.revisions()),
        selection_state: selection_state(state).into(),
        selection_changes: selection.possible.map(count),
        changes_without_pins: match state {
            SelectionState::Impossible => changes_without_pins(&asked, &picks),
            _ => None,
        },
        least_subtotal: options.least().and_then(|least| minor(least, currency)),
        attributes: if is_compact {
            Vec::new()
        } else {
            attributes(&asked, on, &options)
        },
        compact: is_compact.then(|| compact::options(asked.product(), currency, &options)),
        wants: wants(&asked, on, &options.wants, is_compact),
        waits: waits
            .map(|waits| positions(&options.wants, waits))
            .unwrap_or_default(),
        caution: CAUTION.to_owned(),
    })
}

fn selection_state(state: SelectionState) -> v1::SelectionState {
    match state {
        SelectionState::GoesTogether => v1::SelectionState::GoesTogether,
        SelectionState::Depends => v1::SelectionState::Depends,
        SelectionState::Conflicts => v1::SelectionState::Conflicts,
        SelectionState::Impossible => v1::SelectionState::Impossible,
    }
}

/// How many picks must change at least once the pins are loosened; nothing where nothing is pinned, or nothing holds then either.
pub(super) fn changes_without_pins(asked: &Asked, picks: &Picks) -> Option<i32> {
    let loosened = picks.without_pins()?;
    let prepared = asked.prepared().ok()?;
    let selection = asked.engine().selection(prepared, &loosened.picks);
    selection.possible.map(count)
}

fn is_compact(view: i32, faults: &mut Faults) -> bool {
    match v1::OptionsView::try_from(view) {
        Ok(v1::OptionsView::Unspecified | v1::OptionsView::Full) => false,
        Ok(v1::OptionsView::Compact) => true,
        Err(_) => {
            faults.push(Reason::BadEnum, "view", &format!("{view} is no view"));
            false
        }
    }
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

/// What is wanted, phrased when the setting was prepared; with its label and what to ask unless it is to be short.
fn wants(asked: &Asked, on: UsedOn<'_>, wants: &Wants, is_compact: bool) -> Vec<v1::Want> {
    let one = |want| match asked.known.wants.get(want) {
        Some(said) if is_compact => v1::Want {
            kind: said.kind,
            id: said.id.clone(),
            ..v1::Want::default()
        },
        Some(said) => said.clone(),
        None => finding::want(on, want),
    };
    wants.iter().map(one).collect()
}

/// Where some things that are wanted stand among all.
fn positions(all: &Wants, some: &Wants) -> Vec<i32> {
    if some.is_empty() {
        return Vec::new();
    }
    let all = all.iter().enumerate();
    let positions = all.filter(|(_, want)| some.contains(want));
    positions.filter_map(|(at, _)| i32::try_from(at).ok()).collect()
}

fn state(state: State) -> v1::OptionState {
    match state {
        State::Kept => v1::OptionState::Kept,
        State::Free => v1::OptionState::Free,
        State::Changes(_) => v1::OptionState::Changes,
        State::Impossible => v1::OptionState::Impossible,
        State::Depends(_) => v1::OptionState::Depends,
    }
}

fn withheld(withheld: Withheld) -> v1::Withheld {
    let reason = match withheld {
        Withheld::Hidden => v1::WithheldReason::Hidden,
        Withheld::From(_) => v1::WithheldReason::NotYetOffered,
        Withheld::Until(_) => v1::WithheldReason::NoLongerOffered,
    };
    v1::Withheld {
        reason: reason.into(),
        date: withheld.date().map(day::write),
    }
}

fn attributes(asked: &Asked, on: UsedOn<'_>, options: &EngineOptions<'_>) -> Vec<v1::AttributeAnswer> {
    let product = asked.product();
    let mut names = product.asked.iter().peekable();
    let attribute = |(at, answers)| {
        let (_, name) = names.next_if(|(asked, _)| *asked == at)?;
        Some(v1::AttributeAnswer {
            attribute: name.clone(),
            options: of_attribute(on, &options.wants, at, answers),
        })
    };
    options.attributes().filter_map(attribute).collect()
}

fn of_attribute<'a>(
    on: UsedOn<'_>,
    wants: &Wants,
    attribute: AttributeIndex,
    answers: impl Iterator<Item = OneOption<'a>>,
) -> Vec<v1::OptionAnswer> {
    let declared = on.used.catalog.declarations().attributes.at(attribute);
    let currency = on.used.book.currency;
    let option = |one: OneOption<'_>| v1::OptionAnswer {
        stands: Some(match declared.options.get(one.value) {
            Some(entry) => Stands::Option(entry.id.as_str().to_owned()),
            None => Stands::NotAsked(true),
        }),
        state: state(one.state).into(),
        picked: one.picked,
        changes: one.state.changes().map(count),
        difference: one.difference.and_then(|difference| minor(difference, currency)),
        waits: one.waits.map(|waits| positions(wants, waits)).unwrap_or_default(),
        withheld: one.withheld.map(withheld),
    };
    answers.map(option).collect()
}
