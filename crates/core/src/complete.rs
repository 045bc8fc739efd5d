//! The answer to *complete*: whole units that keep the picks and hold, the best first.
//!
//! Best is the standard completion, which departs least from what is filled in when nobody picks, or the cheapest; a [`Wish`]
//! says which. Both change as few picks as can be. With a white inside picked, the screen standard "as the inside", and no white screen
//! made, the standard completion departs once, at the screen.
//!
//! What is unknown is never guessed. What is found counts everything unknown as not holding; it is *found* only when
//! counting it as holding comes to nothing better. Otherwise the answer is that unit which is best if all turns out well, and its
//! judgement says what must be known.
//!
//! Always holds: a pinned pick never changes; attributes whose standard is `ask` stay open; every unit is judged before it is
//! handed out, whole and with what stays open, and its subtotal is what judging says.
//! Cost: three ways up the diagram, and judging twice; then a way up an attribute for each next unit.

mod best;
mod ranks;
mod unit;

use std::collections::{BTreeMap, BTreeSet};

use astragal_model::{
    AttributeIndex, Date, Judgement, Money, Revision, Setting, Standard, Unit, Verdict, judge,
};
use thiserror::Error;

use crate::complete::best::Best;
use crate::complete::ranks::ranks;
use crate::diagram::Diagram;
use crate::options::Picked;
use crate::prepare::{Certainty, Prepared};
pub use crate::rank::Aim;
use crate::rank::Rank;

/// LIMIT: how many completions are asked for at once.
pub const COMPLETIONS_MAX: usize = 100;

/// LIMIT: how many units are looked at for them: units that come to the same once something is open are handed out once.
const UNITS_MAX: usize = 4 * COMPLETIONS_MAX;

/// What is asked for.
#[derive(Clone, Copy, Debug)]
pub struct Wish<'a> {
    /// The setting that was prepared.
    pub setting: &'a Setting<'a>,
    /// The picks; of two of one attribute the later stands.
    pub picks: &'a [Picked],
    /// The date of the quote for each pick that was carried over, without which no pick is honoured when it is judged.
    pub quoted: &'a BTreeMap<AttributeIndex, Date>,
    /// What is best.
    pub aim: Aim,
    /// The unit on screen: among units that are otherwise as good, one that moves less away from it is better. It is compared
    /// before cents for the standard completion, after them for the cheapest.
    pub near: Option<&'a Unit>,
    /// How many units, at least one; more than [`COMPLETIONS_MAX`] are not looked for. Fewer are found where fewer hold, and
    /// where four times [`COMPLETIONS_MAX`] units came to the same ones once something was left open. One only where the
    /// answer depends on what is unknown.
    pub count: usize,
}

impl Wish<'_> {
    fn pick(&self, attribute: AttributeIndex) -> Option<&Picked> {
        self.picks.iter().find(|pick| pick.attribute == attribute)
    }
}

/// What comes of completing picks.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Completion {
    /// Nothing holds, even with everything unknown counted as holding.
    Impossible,
    /// What is best depends on what is unknown. This unit is, if all turns out well; its judgement names what is wanted.
    Depends(Box<Completed>),
    /// These units hold, best first; at least one.
    Found(Vec<Completed>),
}

/// A unit that is completed.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Completed {
    /// A whole unit: for each attribute the position among its values, the options, then *not asked* where it has a condition.
    pub values: Vec<usize>,
    /// How many picks were changed.
    pub changes: i64,
    /// How many attributes are not what their standard says, kept picks left out.
    pub departures: i64,
    /// The subtotal of the whole unit in minor units; nothing without a book; `None` where it is not known.
    pub cents: Option<i64>,
    /// The unit, with open what nobody may fill in. What a pick chose and kept is picked, what is filled in says whether it is
    /// standard.
    pub unit: Unit,
    /// What judging says of the unit.
    pub judgement: Judgement,
}

/// Judging a completed unit says something else than the diagram, which is a fault of this program, or of a setting
/// that is not the one that was prepared.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
#[error(
    "catalog {catalog}: the engine found a unit with {departures} departures at {cents:?} minor units, and judging it gives `{verdict:?}`, {counted} departures, {judged:?} minor units; nothing is answered"
)]
pub struct Disagreement {
    /// The revision of the catalog.
    pub catalog: Revision,
    /// The position of the value of each attribute.
    pub values: Vec<usize>,
    /// The departures that the diagram gives.
    pub departures: i64,
    /// The departures that are counted in the unit.
    pub counted: i64,
    /// The subtotal that the diagram gives.
    pub cents: Option<i64>,
    /// The verdict of judging.
    pub verdict: Verdict,
    /// The subtotal of judging in minor units, where it is known.
    pub judged: Option<i64>,
}

/// The completions of picks.
pub(crate) fn complete(
    diagram: &Diagram,
    prepared: &Prepared,
    wish: &Wish<'_>,
) -> Result<Completion, Disagreement> {
    let free = left_open(prepared, wish);
    let best = |certainty| Best::new(diagram, ranks(diagram, prepared, wish, certainty), &free);
    let mut possible = best(Certainty::NotRuledOut);
    let Some(rank) = possible.rank() else {
        return Ok(Completion::Impossible);
    };
    let certain = best(Certainty::Certain);
    if certain.rank() == Some(rank) {
        return found(wish, certain).map(Completion::Found);
    }
    let Some((rank, values)) = possible.next() else {
        return Ok(Completion::Impossible);
    };
    judged(wish, Certainty::NotRuledOut, rank, values).map(|unit| Completion::Depends(Box::new(unit)))
}

/// The first units that differ in what is filled in.
fn found(wish: &Wish<'_>, best: Best<'_>) -> Result<Vec<Completed>, Disagreement> {
    let count = wish.count.clamp(1, COMPLETIONS_MAX);
    let mut found: Vec<Completed> = Vec::new();
    for (rank, values) in best.take(UNITS_MAX) {
        let unit = judged(wish, Certainty::Certain, rank, values)?;
        // What is opened may have been all that differed.
        if found.iter().all(|other| other.unit != unit.unit) {
            found.push(unit);
        }
        if found.len() >= count {
            break;
        }
    }
    Ok(found)
}

/// The attributes that stay open in every unit that asks them: nobody picked them, and their standard is `ask`, for them and for
/// the same attribute of earlier parts, or with the standard as the aim comes to no option in this setting.
fn left_open(prepared: &Prepared, wish: &Wish<'_>) -> BTreeSet<usize> {
    let catalog = wish.setting.catalog;
    let asks = |index: AttributeIndex| {
        matches!(wish.setting.standard(index), Standard::Ask) && wish.pick(index).is_none()
    };
    let is_left_open = |index: &AttributeIndex| {
        let mut earlier = catalog.earlier_parts(*index).into_iter();
        let asked = asks(*index) && earlier.all(|(_, attribute)| asks(attribute));
        let has_none = || wish.aim == Aim::Standard && prepared.departures.has_none(*index);
        asked || (wish.pick(*index).is_none() && has_none())
    };
    let attributes = catalog.declarations().attributes.positions();
    attributes.filter(is_left_open).map(|index| index.0).collect()
}

/// The unit of these values, judged whole and with what stays open.
fn judged(
    wish: &Wish<'_>,
    certainty: Certainty,
    rank: Rank,
    values: Vec<usize>,
) -> Result<Completed, Disagreement> {
    let counts = rank.counts(wish.aim);
    let (whole, departures) = unit::whole(wish, &values);
    let judgement = judge(wish.setting, &whole);
    let judged = judgement.subtotal.as_ref().and_then(Money::minor_units);
    let is_priced = wish.setting.book.is_some();
    let changed = |pick: &&Picked| values.get(pick.attribute.0) != Some(&pick.value);
    let changes = wish.picks.iter().filter(changed).count();
    let agrees = departures == counts.departures
        && i64::try_from(changes) == Ok(counts.changes)
        && match certainty {
            Certainty::Certain => {
                judgement.verdict == Verdict::Holds && (!is_priced || judged == Some(counts.cents))
            }
            Certainty::NotRuledOut => judgement.verdict != Verdict::Broken,
        };
    let cents = match certainty {
        Certainty::Certain => Some(counts.cents),
        Certainty::NotRuledOut => judged,
    };
    let disagreement = |verdict, values| Disagreement {
        catalog: wish.setting.catalog.revision(),
        values,
        departures: counts.departures,
        counted: departures,
        cents,
        verdict,
        judged,
    };
    if !agrees {
        return Err(disagreement(judgement.verdict, values));
    }
    let unit = unit::with_open(wish, &whole);
    let judgement = if unit == whole {
        judgement
    } else {
        judge(wish.setting, &unit)
    };
    if judgement.verdict == Verdict::Broken {
        return Err(disagreement(judgement.verdict, values));
    }
    Ok(Completed {
        values,
        changes: counts.changes,
        departures,
        cents,
        unit,
        judgement,
    })
}
