//! One engine's answers beside what judging every configuration says: counts, the cheapest, and every option.

#![allow(dead_code, reason = "every test that includes this uses a part of it")]

use std::collections::BTreeMap;

use astragal_core::engine::{Certainty, Engine};
use astragal_core::options::{Least, OptionAnswer, Picked};
use astragal_core::prepare::Prepared;
use astragal_model::{AttributeIndex, Verdict};
use num_bigint::BigUint;

use crate::judged::Judged;

/// How often each thing was met while comparing.
#[derive(Debug, Default)]
pub(crate) struct Met(pub(crate) BTreeMap<&'static str, u64>);

impl Met {
    pub(crate) fn meet(&mut self, what: &'static str) {
        self.add(what, 1);
    }

    pub(crate) fn add(&mut self, what: &'static str, count: u64) {
        *self.0.entry(what).or_default() += count;
    }

    /// Fails unless each thing was met so often.
    #[expect(
        clippy::print_stdout,
        reason = "shown when a test fails, or when somebody asks"
    )]
    pub(crate) fn at_least(&self, expected: &[(&'static str, u64)]) {
        println!("{:?}", self.0);
        for (what, least) in expected {
            assert!(self.0.get(what) >= Some(least), "{what}: {:?}", self.0);
        }
    }
}

/// An engine that is prepared, beside every configuration judged in the same setting.
pub(crate) struct Compared<'a> {
    engine: &'a Engine,
    prepared: &'a Prepared,
    holds: Vec<&'a Judged>,
    not_broken: Vec<&'a Judged>,
}

impl<'a> Compared<'a> {
    /// Compares the counts and the cheapest.
    pub(crate) fn new(
        engine: &'a Engine,
        prepared: &'a Prepared,
        all: &'a [Judged],
        place: &str,
        met: &mut Met,
    ) -> Self {
        let with = |verdicts: &[Verdict]| -> Vec<&Judged> {
            all.iter()
                .filter(|unit| verdicts.contains(&unit.verdict))
                .collect()
        };
        let compared = Self {
            engine,
            prepared,
            holds: with(&[Verdict::Holds]),
            not_broken: with(&[Verdict::Holds, Verdict::Undecided]),
        };
        compared.counts(place, met);
        compared
    }

    fn counts(&self, place: &str, met: &mut Met) {
        for (certainty, units) in [
            (Certainty::Certain, &self.holds),
            (Certainty::NotRuledOut, &self.not_broken),
        ] {
            let counted = self.engine.count(self.prepared, certainty);
            assert_eq!(counted, BigUint::from(units.len()), "{place}: {certainty:?}");
        }
        let totals = || self.holds.iter().map(|unit| unit.cents.unwrap_or(0));
        let cheapest = totals().min();
        let answered = self.engine.cheapest(self.prepared, Certainty::Certain);
        assert_eq!(answered, cheapest, "{place}: cheapest");
        met.meet("settings");
        match self.not_broken.len() {
            0 => met.meet("unsatisfiable"),
            1 => met.meet("unique"),
            _ => {}
        }
        if totals().filter(|cents| Some(*cents) == cheapest).count() > 1 {
            met.meet("cheapest ties");
        }
        if cheapest < Some(0) && cheapest.is_some() {
            met.meet("a total below zero");
        }
        if self.holds.len() < self.not_broken.len() {
            met.meet("something unknown");
        }
    }

    /// Compares every option and the selection itself under these picks.
    pub(crate) fn picks(&self, picks: &[Picked], place: &str, met: &mut Met) {
        met.meet("selections");
        let selection = self.engine.selection(self.prepared, picks);
        self.same(selection, picks, None, place, met);
        let answers = self.engine.options(self.prepared, picks);
        for (attribute, values) in answers.iter().enumerate() {
            for (value, answer) in values.iter().enumerate() {
                met.meet("options");
                self.same(*answer, picks, Some((attribute, value)), place, met);
            }
        }
    }

    /// Compares one answer: of an option, or of the selection where there is none.
    fn same(
        &self,
        answer: OptionAnswer,
        picks: &[Picked],
        option: Option<(usize, usize)>,
        place: &str,
        met: &mut Met,
    ) {
        let certain = least(&self.holds, picks, option);
        let possible = least(&self.not_broken, picks, option);
        let changes = |least: Option<Least>| least.map(|least| least.changes);
        assert_eq!(answer.certain, certain, "{place}: {option:?} with {picks:?}");
        assert_eq!(
            answer.possible,
            changes(possible),
            "{place}: {option:?} with {picks:?}"
        );
        if certain.is_some_and(|least| least.changes >= 2) {
            met.meet("two changes or more");
        }
    }
}

/// The fewest changes and the least total among units with this option; a change of the option's own attribute does not count.
fn least(units: &[&Judged], picks: &[Picked], option: Option<(usize, usize)>) -> Option<Least> {
    let has = |unit: &&&Judged| option.is_none_or(|(attribute, value)| unit.values[attribute] == value);
    let changed = |unit: &Judged, pick: &Picked| unit.values[pick.attribute.0] != pick.value;
    let keeps = |unit: &&&Judged| !picks.iter().any(|pick| pick.pinned && changed(unit, pick));
    let own = |pick: &Picked| option.is_some_and(|(attribute, _)| pick.attribute.0 == attribute);
    let weigh = |unit: &&Judged| Least {
        changes: picks
            .iter()
            .map(|pick| i64::from(!own(pick) && changed(unit, pick)))
            .sum(),
        cents: unit.cents.unwrap_or(0),
    };
    units.iter().filter(has).filter(keeps).map(weigh).min()
}

/// Every selection over attributes of so many options: each is picked or not.
pub(crate) fn selections(options: &[usize]) -> Vec<Vec<Picked>> {
    let mut all = vec![Vec::new()];
    for (attribute, count) in options.iter().enumerate() {
        let picked = |value| Picked {
            attribute: AttributeIndex(attribute),
            value,
            pinned: false,
            honoured: false,
        };
        let with = |before: &Vec<Picked>| {
            let with = |value| before.iter().copied().chain([picked(value)]).collect();
            std::iter::once(before.clone())
                .chain((0..*count).map(with))
                .collect::<Vec<Vec<Picked>>>()
        };
        all = all.iter().flat_map(with).collect();
    }
    all
}
