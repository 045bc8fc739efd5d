//! The order of completions, worked out for one configuration after the other.

use astragal_core::complete::Aim;
use astragal_model::{
    AttributeIndex, Id, Origin, Outcome, Pick, Setting, Slot, Unit, Value, Verdict, fill, slots,
};

use crate::completing::selection::Selection;
use crate::judged::{Judged, unit};

/// A configuration, and for each attribute whether what it has is not what its standard says.
pub(crate) struct Unpicked<'a> {
    pub(crate) judged: &'a Judged,
    pub(crate) departs: Vec<bool>,
}

impl<'a> Unpicked<'a> {
    pub(crate) fn new(setting: &Setting<'_>, judged: &'a Judged) -> Self {
        let unit = unit(setting.catalog, &judged.values, &|_, _| Origin::Standard);
        let standards: Vec<Option<Id>> = if judged.verdict == Verdict::Holds {
            let attributes = setting.catalog.declarations().attributes.positions();
            attributes
                .map(|attribute| filled_alone(setting, &unit, attribute))
                .collect()
        } else {
            // Filling leaves open what may not be asked, which this configuration has decided.
            let standard = |slot: &Slot| match &slot.standard {
                Outcome::Known(Value::Option(id)) => Some(id.clone()),
                _ => None,
            };
            slots(setting, &unit).values().map(standard).collect()
        };
        let choices = unit.choices.values().zip(standards);
        let departs = choices.map(|(choice, standard)| {
            let pair = choice.option().zip(standard.as_ref());
            pair.is_some_and(|(option, standard)| option != standard)
        });
        Self {
            departs: departs.collect(),
            judged,
        }
    }

    pub(crate) fn counts(&self, asked: &Asked<'_>) -> Counts {
        let values = &self.judged.values;
        let is_kept = |at: usize| asked.selection.is_kept(at, values[at]);
        let departures = (0..values.len()).filter(|at| self.departs[*at] && !is_kept(*at));
        let moves = asked.near.map_or(0, |near| {
            let moved = (0..values.len()).filter(|at| near[*at] != values[*at] && !is_kept(*at));
            moved.count()
        });
        Counts {
            changes: asked.selection.changes(values),
            departures: departures.count() as i64,
            moves: moves as i64,
            // What is not known may be anything.
            cents: if asked.is_priced {
                self.judged.cents
            } else {
                Some(0)
            },
        }
    }
}

/// For each attribute whether its standard comes to no option in any configuration.
pub(crate) fn without_standard(setting: &Setting<'_>, all: &[Judged]) -> Vec<bool> {
    let mut without = vec![true; setting.catalog.declarations().attributes.len()];
    for one in all {
        let unit = unit(setting.catalog, &one.values, &|_, _| Origin::Standard);
        for (without, slot) in without.iter_mut().zip(slots(setting, &unit).values()) {
            *without &= !matches!(slot.standard, Outcome::Known(Value::Option(_)));
        }
    }
    without
}

/// What an option-by-option filling says of one attribute when all others are as they are.
pub(crate) fn filled_alone(setting: &Setting<'_>, unit: &Unit, attribute: AttributeIndex) -> Option<Id> {
    let others = unit.choices.iter().filter(|(other, _)| *other != attribute);
    let picks: Vec<Pick> = others
        .filter_map(|(other, choice)| {
            let option = choice.option()?.clone();
            Some(Pick {
                attribute: other,
                option,
                quoted: None,
            })
        })
        .collect();
    let filled = fill(setting, &picks);
    filled.choices.at(attribute).option().cloned()
}

/// What completions are ordered by; an unknown amount is `None`, which is less than any other.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) struct Counts {
    pub(crate) changes: i64,
    pub(crate) departures: i64,
    pub(crate) moves: i64,
    pub(crate) cents: Option<i64>,
}

impl Counts {
    pub(crate) fn key(self, aim: Aim) -> (i64, Option<i64>, i64, i64, Option<i64>) {
        match aim {
            Aim::Standard => (self.changes, None, self.departures, self.moves, self.cents),
            Aim::Cheapest => (self.changes, self.cents, self.moves, self.departures, None),
        }
    }
}

/// One question.
pub(crate) struct Asked<'a> {
    pub(crate) selection: &'a Selection,
    pub(crate) aim: Aim,
    pub(crate) near: Option<&'a [usize]>,
    pub(crate) count: usize,
    pub(crate) is_priced: bool,
    /// For each attribute whether its standard comes to no option, whatever is chosen.
    pub(crate) without: &'a [bool],
}
