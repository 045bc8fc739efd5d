//! The compact form of all options: numbers by position, which a front end reads beside the catalog of the same revision.
//!
//! An attribute of two options and a conditional one of one have the positions 0, 1 and 2, 3, of which 3 is *not asked*.
//!
//! Always holds: the arrays by position are of one length, that of all options of `GetCatalog` and of *not asked* of its
//! conditional attributes.
//! Cost: a few bytes an option, and no text.

use std::collections::BTreeMap;

use astragal_model::{Currency, Wants};

use crate::options::engine::{EngineOptions, OneOption, State};
use crate::serve::product::Product;
use crate::serve::v1;

/// Every option by position.
pub(super) fn options(
    product: &Product,
    currency: Currency,
    options: &EngineOptions<'_>,
) -> v1::CompactOptions {
    let mut made = Made::new(product.positions, currency, &options.wants);
    let mut asked = product.asked.iter().peekable();
    for (attribute, answers) in options.attributes() {
        if asked.next_if(|(at, _)| *at == attribute).is_some() {
            answers.for_each(|one| made.push(&one));
        }
    }
    made.compact
}

struct Made<'a> {
    compact: v1::CompactOptions,
    all: &'a Wants,
    /// The place of each set in `wait_sets`.
    sets: BTreeMap<&'a Wants, i32>,
}

impl<'a> Made<'a> {
    fn new(positions: usize, currency: Currency, all: &'a Wants) -> Self {
        Self {
            compact: v1::CompactOptions {
                states: Vec::with_capacity(positions),
                changes: Vec::with_capacity(positions),
                differences: Vec::with_capacity(positions),
                currency_code: currency.code().to_owned(),
                ..v1::CompactOptions::default()
            },
            all,
            sets: BTreeMap::new(),
        }
    }

    fn push(&mut self, one: &OneOption<'a>) {
        let position = size(self.compact.states.len());
        self.compact.states.push(super::state(one.state).into());
        let changes = one.state.changes().map(super::count);
        self.compact.changes.push(changes.unwrap_or_default());
        self.compact.differences.push(one.difference.unwrap_or_default());
        let is_priced = matches!(one.state, State::Kept | State::Free | State::Depends(0));
        if is_priced && one.difference.is_none() {
            self.compact.without_difference.push(position);
        }
        if matches!(one.state, State::Depends(_)) {
            let set = self.set(one.waits);
            self.compact.waits.push(set);
        }
        if let Some(withheld) = one.withheld {
            self.compact.withheld.push(v1::WithheldOption {
                position,
                withheld: Some(super::withheld(withheld)),
            });
        }
    }

    /// The place of a set.
    fn set(&mut self, waits: Option<&'a Wants>) -> i32 {
        const NONE: &Wants = &Wants::new();
        let waits = waits.unwrap_or(NONE);
        let next = size(self.compact.wait_sets.len());
        let set = *self.sets.entry(waits).or_insert(next);
        if set == next {
            let waits = super::positions(self.all, waits);
            self.compact.wait_sets.push(v1::WaitSet { waits });
        }
        set
    }
}

/// A place among options or sets, of which a catalog has fewer.
fn size(count: usize) -> i32 {
    i32::try_from(count).unwrap_or(i32::MAX)
}
