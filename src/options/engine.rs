//! What the engine says of every option of one unit.
//!
//! An option is *kept* when the picks name it and it can stay, *free* when no pick but its attribute's own must change. A price
//! difference compares the cheapest completion with the option and the cheapest with the picks as they are, before what is
//! added at the end of a price. With one white pick that costs nothing, and grey 90 more, grey is free at +90.
//!
//! Always holds: money is said only where no amount is unknown and no other pick changes.
//! Cost: some passes over the diagram; what is said of one option is read off when it is asked for, and allocates nothing.

use astragal_core::engine::Engine;
use astragal_core::options::{Answers, OptionAnswer, Picked};
use astragal_core::prepare::Prepared;
use astragal_core::waits::{Wait, Waits};
use astragal_model::{AttributeIndex, Date, Money, Number, Wants};

use crate::quote::ask::UsedOn;

/// What the engine says of every option.
pub(crate) struct EngineOptions<'a> {
    on: UsedOn<'a>,
    answers: Answers,
    /// What everything waits for; `None` where nothing depends on what is unknown.
    waits: Option<Waits>,
    /// The position of the option that is picked, by attribute.
    picked: Vec<Option<usize>>,
    /// What must be known before all options are certain that are not ruled out.
    pub(crate) wants: Wants,
}

/// One option.
pub(crate) struct OneOption<'a> {
    /// The position among the attribute's options; past the last it is *not asked*.
    pub(crate) value: usize,
    pub(crate) state: State,
    /// Whether it is what the pick names.
    pub(crate) picked: bool,
    /// What it costs more than the picks as they are, in minor units; where it depends, if all turns out as it needs.
    pub(crate) difference: Option<i64>,
    /// What must be known before it is certain, where it depends.
    pub(crate) waits: Option<&'a Wants>,
    /// Why it may not be chosen on the day, whatever else is.
    pub(crate) withheld: Option<Withheld>,
}

/// Why an option may not be chosen on the day.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Withheld {
    /// The policy hides it.
    Hidden,
    /// It is offered from this day.
    From(Date),
    /// It was offered until this day.
    Until(Date),
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
    /// It depends on what is not known; so many other picks must change at least.
    Depends(i64),
}

impl State {
    /// How many other picks must change, at least so many where it depends; nothing where none would do.
    pub(crate) fn changes(self) -> Option<i64> {
        match self {
            Self::Kept | Self::Free => Some(0),
            Self::Changes(changes) | Self::Depends(changes) => Some(changes),
            Self::Impossible => None,
        }
    }
}

impl Withheld {
    /// The first or the last day on which the option is offered.
    pub(crate) fn date(&self) -> Option<Date> {
        match self {
            Self::Hidden => None,
            Self::From(date) | Self::Until(date) => Some(*date),
        }
    }
}

impl<'a> EngineOptions<'a> {
    /// Asks the engine. What was prepared is `on`, for some opening.
    pub(crate) fn new(engine: &Engine, prepared: &Prepared, on: UsedOn<'a>, picks: &[Picked]) -> Self {
        let answers = engine.answers(prepared, picks);
        let any = answers.selection.depends || answers.options.iter().flatten().any(|answer| answer.depends);
        let waits = any.then(|| engine.waits(prepared, picks));
        let mut picked = vec![None; answers.options.len()];
        for pick in picks.iter().rev() {
            if let Some(place) = picked.get_mut(pick.attribute.0) {
                *place = Some(pick.value);
            }
        }
        let mut options = Self {
            on,
            answers,
            waits,
            picked,
            wants: Wants::new(),
        };
        options.wants = options.all_wants();
        options
    }

    fn all_wants(&self) -> Wants {
        let mut wants = Wants::new();
        if self.waits.is_none() {
            return wants;
        }
        for (_, options) in self.attributes() {
            for waits in options.filter_map(|option| option.waits) {
                wants.extend(waits.iter().cloned());
            }
        }
        wants.extend(self.waits().into_iter().flatten().cloned());
        wants
    }

    /// The answer for the picks as they are.
    pub(crate) fn selection(&self) -> &OptionAnswer {
        &self.answers.selection
    }

    /// What must be known before it is certain that the picks go together.
    pub(crate) fn waits(&self) -> Option<&Wants> {
        let waits = self.waits.as_ref().filter(|_| self.answers.selection.depends)?;
        waits.best.as_ref().map(|wait| &wait.wants)
    }

    /// All options of all attributes, in catalog order.
    pub(crate) fn attributes(
        &self,
    ) -> impl Iterator<Item = (AttributeIndex, impl Iterator<Item = OneOption<'_>>)> {
        let base = self.base();
        let answers = self.answers.options.iter().enumerate();
        answers.map(move |(at, answers)| {
            let attribute = AttributeIndex(at);
            let answers = answers.iter().enumerate();
            let options = answers.map(move |(value, answer)| self.one(attribute, value, answer, base));
            (attribute, options)
        })
    }

    /// The least subtotal with the picks as they are in minor units, where it is certain.
    pub(crate) fn least(&self) -> Option<i64> {
        let least = self.selection().certain.filter(|least| least.changes == 0)?;
        Some(least.cents)
    }

    /// An amount in minor units as money.
    pub(crate) fn money(&self, minor_units: i64) -> Money {
        let currency = self.on.used.book.currency;
        Money::new(&Number::from(minor_units) * &currency.minor_unit(), currency)
    }

    fn one(
        &self,
        attribute: AttributeIndex,
        value: usize,
        answer: &OptionAnswer,
        base: Option<i64>,
    ) -> OneOption<'_> {
        let picked = self.picked.get(attribute.0).copied().flatten();
        let state = state(answer, picked == Some(value));
        let wait = match state {
            State::Depends(_) => self.wait(attribute, value),
            _ => None,
        };
        let least = match state {
            State::Kept | State::Free => answer.certain,
            State::Depends(_) => wait
                .and_then(|wait| wait.least)
                .filter(|least| least.changes == 0),
            State::Changes(_) | State::Impossible => None,
        };
        OneOption {
            value,
            state,
            picked: picked == Some(value),
            difference: least
                .zip(base)
                .and_then(|(least, base)| least.cents.checked_sub(base)),
            waits: wait.map(|wait| &wait.wants),
            withheld: match state {
                State::Impossible => self.withheld(attribute, value),
                _ => None,
            },
        }
    }

    fn wait(&self, attribute: AttributeIndex, value: usize) -> Option<&Wait> {
        self.waits
            .as_ref()?
            .options
            .get(attribute.0)?
            .get(value)?
            .as_ref()
    }

    /// What the picks as they are come to: for certain, or else if all turns out as they need.
    fn base(&self) -> Option<i64> {
        let certain = self.selection().certain;
        let possible = || self.waits.as_ref()?.best.as_ref()?.least;
        let least = certain.or_else(possible).filter(|least| least.changes == 0)?;
        Some(least.cents)
    }

    fn withheld(&self, attribute: AttributeIndex, value: usize) -> Option<Withheld> {
        let UsedOn { used, date } = self.on;
        let attributes = &used.catalog.declarations().attributes;
        let entry = attributes.at(attribute).options.get(value)?;
        if used.hides(attribute, &entry.id) {
            return Some(Withheld::Hidden);
        }
        let from = entry.validity.offered_from.filter(|from| date < *from);
        let until = entry.validity.offered_until.filter(|until| *until < date);
        from.map(Withheld::From).or(until.map(Withheld::Until))
    }
}

fn state(answer: &OptionAnswer, is_picked: bool) -> State {
    match (answer.possible, answer.certain) {
        (None, _) => State::Impossible,
        (Some(possible), Some(certain)) if possible == certain.changes => match certain.changes {
            0 if is_picked => State::Kept,
            0 => State::Free,
            changes => State::Changes(changes),
        },
        (Some(possible), _) => State::Depends(possible),
    }
}
