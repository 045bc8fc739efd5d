//! How a unit was completed, for a program.

use astragal_core::complete::Aim;
use astragal_model::{AttributeIndex, Catalog, Choice, Subject};
use serde::Serialize;

use crate::json::values::{Amount, Named, amount, named, option};
use crate::quote::cheapest::{Cheapest, Less};
use crate::quote::nearest::Nearest;
use crate::quote::work::{Quote, QuotedUnit};

/// How a unit was completed.
#[derive(Serialize)]
pub(crate) struct CompletionAnswer {
    /// What was asked for: `standard` or `cheapest`.
    aim: &'static str,
    /// What was filled in: `standard` also where what is cheapest cannot be said.
    filled_with: &'static str,
    /// The rules that would not hold with standards alone and do with what is filled in.
    because: Vec<Because>,
    /// What is filled in beside its standard.
    departures: Vec<Departure>,
    /// How many picks must change at least, where nothing holds with all of them and something does that keeps the pins.
    least_changes: Option<i64>,
    /// Whether nothing holds that keeps the pins.
    impossible: bool,
    /// How many picks must change at least once the pins are loosened, where nothing holds with them and something does without.
    changes_without_pins: Option<i64>,
    /// What changes the fewest picks, where some must change; with pins loosened where nothing holds with them.
    nearest: Option<NearestAnswer>,
    cheapest: CheapestAnswer,
    /// Why nothing but standards could be filled in.
    not_completed: Option<String>,
}

#[derive(Serialize)]
struct Because {
    rule: String,
    message: String,
}

#[derive(Serialize)]
struct Departure {
    attribute: Named,
    standard: Named,
}

/// The unit that changes the fewest picks.
#[derive(Serialize)]
pub(super) struct NearestAnswer {
    changed: Vec<ChangedAnswer>,
    /// Whether it holds only if what is not known turns out well.
    depends: bool,
}

#[derive(Serialize)]
struct ChangedAnswer {
    attribute: Named,
    from: Named,
    /// Null where the attribute is no longer asked.
    to: Option<Named>,
}

#[derive(Serialize)]
struct CheapestAnswer {
    /// `quoted`: the unit costs no more; `less`: the unit or the other one costs less; `depends`: on what is not known; `none`.
    state: &'static str,
    /// The total of the cheapest unit, where it is another than with standards.
    total: Option<Amount>,
    saves: Option<Amount>,
    /// Where the cheapest and the standard unit differ, what the one has that is not quoted.
    instead: Vec<Instead>,
}

#[derive(Serialize)]
struct Instead {
    attribute: Named,
    /// `chosen`, `not_asked` or `open`.
    state: &'static str,
    option: Option<Named>,
}

impl CompletionAnswer {
    pub(crate) fn new(quote: &Quote<'_>, unit: &QuotedUnit<'_>) -> Self {
        let completion = &unit.completion;
        let catalog = unit.used.catalog;
        let because = completion.because.iter().map(|(rule, message)| Because {
            rule: rule.clone(),
            message: message.clone(),
        });
        let departures = completion.departures.iter().map(|(attribute, standard)| {
            let subject = Subject::Attribute(*attribute);
            Departure {
                attribute: named(catalog, subject),
                standard: option(catalog, subject, standard),
            }
        });
        Self {
            aim: aim_word(quote.aim.unwrap_or_default()),
            filled_with: aim_word(completion.filled_with),
            because: because.collect(),
            departures: departures.collect(),
            least_changes: completion.least_changes,
            impossible: completion.is_impossible,
            changes_without_pins: completion.changes_without_pins,
            nearest: completion.nearest.as_ref().map(|one| nearest(catalog, one)),
            cheapest: cheapest(catalog, &completion.cheapest),
            not_completed: completion.not_asked.clone(),
        }
    }
}

fn aim_word(aim: Aim) -> &'static str {
    match aim {
        Aim::Standard => "standard",
        Aim::Cheapest => "cheapest",
    }
}

pub(super) fn nearest(catalog: &Catalog, nearest: &Nearest) -> NearestAnswer {
    let changed = nearest.changed.iter().map(|pick| {
        let subject = Subject::Attribute(pick.attribute);
        ChangedAnswer {
            attribute: named(catalog, subject),
            from: option(catalog, subject, &pick.from),
            to: pick.to.as_ref().map(|to| option(catalog, subject, to)),
        }
    });
    NearestAnswer {
        changed: changed.collect(),
        depends: nearest.depends,
    }
}

fn cheapest(catalog: &Catalog, cheapest: &Cheapest) -> CheapestAnswer {
    let plain = |state| CheapestAnswer {
        state,
        total: None,
        saves: None,
        instead: Vec::new(),
    };
    match cheapest {
        Cheapest::None => plain("none"),
        Cheapest::Depends => plain("depends"),
        Cheapest::Quoted => plain("quoted"),
        Cheapest::Less(less) => less_answer(catalog, less),
    }
}

fn less_answer(catalog: &Catalog, less: &Less) -> CheapestAnswer {
    let one = |(attribute, choice): &(AttributeIndex, Choice)| {
        let subject = Subject::Attribute(*attribute);
        Instead {
            attribute: named(catalog, subject),
            state: match choice {
                Choice::Chosen { .. } => "chosen",
                Choice::NotAsked => "not_asked",
                Choice::Open => "open",
            },
            option: choice.option().map(|id| option(catalog, subject, id)),
        }
    };
    CheapestAnswer {
        state: "less",
        total: Some(amount(&less.cheapest)),
        saves: Some(amount(&less.saves)),
        instead: less.instead.iter().map(one).collect(),
    }
}
