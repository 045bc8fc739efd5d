//! The options of one unit, asked of the engine.
//!
//! An option is *kept* when the picks name it and it can stay, *free* when no pick but its attribute's own must change. A price
//! difference compares the cheapest completion with the option and the cheapest with the picks as they are, before what is
//! added at the end of a price. With one white pick that costs nothing, and grey 90 more, grey is free at +90.
//!
//! Always holds: money is said only where it is certain and no other pick changes.
//! Cost: one compile of the catalog, then four passes over its diagram.

use astragal_core::options::OptionAnswer;
use astragal_model::{AttributeIndex, Authorities, Money, Number, Verdict, Wants};

use crate::quote::engines::compile;
use crate::quote::picked::Picks;
use crate::quote::work::QuotedUnit;

/// All options of one unit.
pub(crate) struct UnitOptions<'a> {
    pub(crate) unit: &'a QuotedUnit<'a>,
    pub(crate) selection: OptionAnswer,
    pub(crate) attributes: Vec<AttributeOptions>,
    /// What is not known and may matter.
    pub(crate) wants: Wants,
}

/// All options of one attribute.
pub(crate) struct AttributeOptions {
    pub(crate) attribute: AttributeIndex,
    pub(crate) options: Vec<OneOption>,
}

/// One option.
pub(crate) struct OneOption {
    /// The position among the attribute's options; past the last it is *not asked*.
    pub(crate) value: usize,
    pub(crate) state: State,
    /// What it costs more than the picks as they are.
    pub(crate) difference: Option<Money>,
}

/// What is to be said of an option.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum State {
    /// The pick names it, and no other pick must change.
    Kept,
    /// No other pick must change.
    Free,
    /// So many other picks must change.
    Changes(i64),
    /// Nothing that could be chosen goes with it.
    Impossible,
    /// It depends on what is not known.
    Depends,
}

impl<'a> UnitOptions<'a> {
    /// Asks the engine.
    pub(crate) fn new(unit: &'a QuotedUnit<'a>) -> Result<Self, String> {
        let used = unit.used;
        let authorities = Authorities::default();
        let setting = used.setting(unit.opening, unit.request, &authorities, unit.date);
        let engine = compile(&used, &authorities)?;
        let prepared = engine.prepare(&setting).map_err(|error| error.to_string())?;
        let request = unit.request;
        let picks = Picks::new(used.catalog, &request.picks, &request.pins, &unit.judgement).picks;
        let selection = engine.selection(&prepared, &picks);
        let answers = engine.options(&prepared, &picks).into_iter().enumerate();
        let attributes = answers.map(|(at, answers)| {
            let attribute = AttributeIndex(at);
            let picked = picks.iter().find(|pick| pick.attribute == attribute);
            let picked = picked.map(|pick| pick.value);
            let answers = answers.iter().enumerate();
            AttributeOptions {
                attribute,
                options: answers
                    .map(|(value, answer)| one(unit, &selection, picked, value, answer))
                    .collect(),
            }
        });
        Ok(Self {
            unit,
            selection,
            attributes: attributes.collect(),
            wants: prepared.wants(),
        })
    }

    /// Whether the picks go together.
    pub(crate) fn verdict(&self) -> Verdict {
        let holds = |least: astragal_core::options::Least| least.changes == 0;
        if self.selection.certain.is_some_and(holds) {
            Verdict::Holds
        } else if self.selection.possible.is_some_and(holds) {
            Verdict::Undecided
        } else {
            Verdict::Broken
        }
    }

    /// The least subtotal with the picks as they are, where it is certain.
    pub(crate) fn least(&self) -> Option<Money> {
        let least = self.selection.certain.filter(|least| least.changes == 0)?;
        money(self.unit, least.cents)
    }
}

/// The worst verdict of the units of an opening.
pub(crate) fn worst(units: &[UnitOptions<'_>]) -> Verdict {
    units
        .iter()
        .map(UnitOptions::verdict)
        .max()
        .unwrap_or(Verdict::Holds)
}

fn one(
    unit: &QuotedUnit<'_>,
    selection: &OptionAnswer,
    picked: Option<usize>,
    value: usize,
    answer: &OptionAnswer,
) -> OneOption {
    let state = match (answer.possible, answer.certain) {
        (None, _) => State::Impossible,
        (Some(possible), Some(certain)) if possible.changes == certain.changes => match certain.changes {
            0 if picked == Some(value) => State::Kept,
            0 => State::Free,
            changes => State::Changes(changes),
        },
        (Some(_), _) => State::Depends,
    };
    let base = selection.certain.filter(|least| least.changes == 0);
    let difference = match state {
        State::Kept | State::Free => base
            .zip(answer.certain)
            .and_then(|(base, answer)| money(unit, answer.cents.checked_sub(base.cents)?)),
        State::Changes(_) | State::Impossible | State::Depends => None,
    };
    OneOption {
        value,
        state,
        difference,
    }
}

fn money(unit: &QuotedUnit<'_>, cents: i64) -> Option<Money> {
    let currency = unit.used.book.currency;
    Some(Money::new(
        &Number::from(cents) * &currency.minor_unit(),
        currency,
    ))
}
