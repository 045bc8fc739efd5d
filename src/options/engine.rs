//! What the engine says of every option of one unit.
//!
//! An option is *kept* when the picks name it and it can stay, *free* when no pick but its attribute's own must change. A price
//! difference compares the cheapest completion with the option and the cheapest with the picks as they are, before what is
//! added at the end of a price. With one white pick that costs nothing, and grey 90 more, grey is free at +90.
//!
//! Always holds: money is said only where no amount is unknown and no other pick changes.
//! Cost: some passes over the diagram.

use astragal_core::engine::Engine;
use astragal_core::options::{OptionAnswer, Picked};
use astragal_core::prepare::Prepared;
use astragal_core::waits::Waits;
use astragal_model::{AttributeIndex, Currency, Date, Money, Number, Setting, Verdict, Wants};

/// What the engine says of every option.
pub(crate) struct EngineOptions {
    currency: Currency,
    pub(crate) selection: OptionAnswer,
    pub(crate) attributes: Vec<AttributeOptions>,
    /// What must be known before it is certain that the picks go together.
    pub(crate) waits: Wants,
    /// What must be known before all options are certain that are not ruled out.
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
    /// What it costs more than the picks as they are; where it depends, if all turns out as it needs.
    pub(crate) difference: Option<Money>,
    /// What must be known before it is certain, where it depends.
    pub(crate) waits: Wants,
    /// Why it may not be chosen on the day, whatever else is.
    pub(crate) withheld: Option<Withheld>,
}

/// Why an option may not be chosen on the day.
#[derive(Clone, PartialEq, Eq, Debug)]
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

impl EngineOptions {
    /// Asks the engine. `setting` is the one that was prepared.
    pub(crate) fn new(
        engine: &Engine,
        prepared: &Prepared,
        setting: &Setting<'_>,
        picks: &[Picked],
        currency: Currency,
    ) -> Self {
        let answers = engine.answers(prepared, picks);
        let selection = answers.selection;
        let depends = |answer: &OptionAnswer| answer.depends;
        let waits = answers.options.iter().flatten().any(depends) || depends(&selection);
        let waits = waits.then(|| engine.waits(prepared, picks));
        let asking = Asking {
            currency,
            setting,
            selection: &selection,
            waits: waits.as_ref(),
        };
        let answers = answers.options.iter().enumerate();
        let attributes = answers.map(|(at, answers)| {
            let attribute = AttributeIndex(at);
            let picked = picks.iter().find(|pick| pick.attribute == attribute);
            let picked = picked.map(|pick| pick.value);
            let answers = answers.iter().enumerate();
            let options = answers.map(|(value, answer)| asking.one(attribute, picked, value, answer));
            AttributeOptions {
                attribute,
                options: options.collect(),
            }
        });
        let attributes: Vec<AttributeOptions> = attributes.collect();
        let of_options = attributes.iter().flat_map(|one| &one.options);
        let of_options = of_options.flat_map(|option| &option.waits).cloned();
        let waits = waits.filter(|_| depends(&selection)).and_then(|waits| waits.best);
        let waits = waits.map(|wait| wait.wants).unwrap_or_default();
        Self {
            currency,
            selection,
            wants: of_options.chain(waits.iter().cloned()).collect(),
            attributes,
            waits,
        }
    }

    /// Whether the picks go together.
    pub(crate) fn verdict(&self) -> Verdict {
        if self.selection.certain.is_some_and(|least| least.changes == 0) {
            Verdict::Holds
        } else if self.selection.possible == Some(0) {
            Verdict::Undecided
        } else {
            Verdict::Broken
        }
    }

    /// The least subtotal with the picks as they are, where it is certain.
    pub(crate) fn least(&self) -> Option<Money> {
        let least = self.selection.certain.filter(|least| least.changes == 0)?;
        Some(money(self.currency, least.cents))
    }
}

/// What the answers about one unit have in common.
struct Asking<'a> {
    currency: Currency,
    setting: &'a Setting<'a>,
    selection: &'a OptionAnswer,
    /// `None` where nothing depends on what is unknown.
    waits: Option<&'a Waits>,
}

impl Asking<'_> {
    fn one(
        &self,
        attribute: AttributeIndex,
        picked: Option<usize>,
        value: usize,
        answer: &OptionAnswer,
    ) -> OneOption {
        let state = match (answer.possible, answer.certain) {
            (None, _) => State::Impossible,
            (Some(possible), Some(certain)) if possible == certain.changes => match certain.changes {
                0 if picked == Some(value) => State::Kept,
                0 => State::Free,
                changes => State::Changes(changes),
            },
            (Some(possible), _) => State::Depends(possible),
        };
        let wait = self
            .waits
            .and_then(|waits| waits.options.get(attribute.0)?.get(value)?.as_ref());
        let wait = wait.filter(|_| matches!(state, State::Depends(_)));
        let least = match state {
            State::Kept | State::Free => answer.certain,
            State::Depends(_) => wait
                .and_then(|wait| wait.least)
                .filter(|least| least.changes == 0),
            State::Changes(_) | State::Impossible => None,
        };
        let difference = least
            .zip(self.base())
            .and_then(|(least, base)| least.cents.checked_sub(base))
            .map(|cents| money(self.currency, cents));
        OneOption {
            value,
            state,
            difference,
            waits: wait.map(|wait| wait.wants.clone()).unwrap_or_default(),
            withheld: self
                .withheld(attribute, value)
                .filter(|_| state == State::Impossible),
        }
    }

    /// What the picks as they are come to: for certain, or else if all turns out as they need.
    fn base(&self) -> Option<i64> {
        let certain = self.selection.certain;
        let possible = || self.waits?.best.as_ref()?.least;
        let least = certain.or_else(possible).filter(|least| least.changes == 0)?;
        Some(least.cents)
    }

    fn withheld(&self, attribute: AttributeIndex, value: usize) -> Option<Withheld> {
        let options = &self
            .setting
            .catalog
            .declarations()
            .attributes
            .at(attribute)
            .options;
        let entry = options.get(value)?;
        let date = self.setting.date;
        if self.setting.hides(attribute, &entry.id) {
            return Some(Withheld::Hidden);
        }
        let from = entry.validity.offered_from.filter(|from| date < *from);
        let until = entry.validity.offered_until.filter(|until| *until < date);
        from.map(Withheld::From).or(until.map(Withheld::Until))
    }
}

fn money(currency: Currency, cents: i64) -> Money {
    Money::new(&Number::from(cents) * &currency.minor_unit(), currency)
}
