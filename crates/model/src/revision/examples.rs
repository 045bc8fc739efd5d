//! Encodes worked examples.
//!
//! Picks of different attributes have no order; of two picks of one attribute the later stands, so those keep
//! theirs. A measure that was not taken and a fact that is not known are left out, like those past the end of a site.
//!
//! Always holds: every structure is taken apart field by field, so that a new field does not compile until it is
//! encoded.

use std::collections::BTreeMap;

use super::encoder::{Encode, Encoder, words};
use crate::example::{Example, ExpectedTotal};
use crate::id::AttributeIndex;
use crate::site::{DeductedBy, Measured, Site};
use crate::unit::Pick;

impl Encode for Example {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self {
            id,
            picks,
            site,
            date,
            breaks,
            undecided,
            room_breaks,
            room_undecided,
            notices,
            total,
        } = self;
        encoder.put(id);
        encoder.unordered(by_attribute(picks).into_values());
        encoder.put(site).put(date).put(breaks);
        encoder.put(room_breaks).put(room_undecided);
        encoder.put(undecided).put(notices).put(total);
    }
}

fn by_attribute(picks: &[Pick]) -> BTreeMap<AttributeIndex, Vec<&Pick>> {
    let mut by_attribute: BTreeMap<_, Vec<_>> = BTreeMap::new();
    for pick in picks {
        by_attribute.entry(pick.attribute).or_default().push(pick);
    }
    by_attribute
}

impl Encode for Pick {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self {
            attribute,
            option,
            quoted,
        } = self;
        encoder.put(attribute).put(option).put(quoted);
    }
}

impl Encode for Site {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        // Examples have no readings, which alone say who deducted from what was not taken.
        let Self {
            measures,
            facts,
            deducted: _,
        } = self;
        let taken = measures
            .iter()
            .filter_map(|(index, measured)| Some((index, measured.as_ref()?)));
        encoder.unordered(taken);
        let known = facts
            .iter()
            .filter_map(|(index, value)| Some((index, value.as_ref()?)));
        encoder.unordered(known);
    }
}

impl Encode for Measured {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self { value, deducted_by } = self;
        encoder.put(value).put(deducted_by);
    }
}

words!(DeductedBy {
    Nobody => "nobody",
    Dealer => "dealer",
    Customer => "customer",
});

impl Encode for ExpectedTotal {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self { book, amount } = self;
        encoder.put(book).put(amount);
    }
}
