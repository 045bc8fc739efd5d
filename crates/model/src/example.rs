//! Worked examples that a catalog carries, and whether they come out as it says.
//!
//! An example names picks, measures, facts and a day, and what should follow. It is proved at every check: filled
//! with standards and judged. `breaks` is exact: an example that breaks another rule as well does not come out.

use std::collections::BTreeSet;

use jiff::civil::Date;

use crate::catalog::Catalog;
use crate::drawing::{Drawn, Undrawn, draw};
use crate::fill::fill;
use crate::id::Id;
use crate::judge::{Judgement, RoomFinding, RoomState, RoomUnit, RuleState, Total, judge, judge_room};
use crate::policy::Policy;
use crate::price::Book;
use crate::setting::{Authorities, Setting};
use crate::site::Site;
use crate::unit::Pick;
use astragal_exact::Number;

/// A worked example of a catalog.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Example {
    /// The id that the catalog declares.
    pub id: Id,
    /// The picks, in the order they are made.
    pub picks: Vec<Pick>,
    /// The measures and facts.
    pub site: Site,
    /// The day as of which it is judged.
    pub date: Date,
    /// Exactly the declared and implicit rules that are broken, whatever their effect.
    pub breaks: BTreeSet<Id>,
    /// Exactly the rules that cannot be decided, where the example says.
    pub undecided: Option<BTreeSet<Id>>,
    /// Exactly the rules over a room that are broken where this unit is the only one in its room.
    pub room_breaks: BTreeSet<Id>,
    /// Exactly the rules over a room that cannot be decided then, where the example says.
    pub room_undecided: Option<BTreeSet<Id>>,
    /// Exactly the notices that are carried for certain, where the example says.
    pub notices: Option<BTreeSet<Id>>,
    /// The total of one unit by the book with this id, where the example says.
    pub total: Option<ExpectedTotal>,
}

/// The total that an example expects.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ExpectedTotal {
    /// The id of the price book.
    pub book: Id,
    /// The amount in the book's currency.
    pub amount: Number,
}

/// How an example fails to come out.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Mismatch {
    /// Other rules are broken than it says.
    Breaks {
        /// What is broken.
        found: BTreeSet<Id>,
    },
    /// Other rules are undecided than it says.
    Undecided {
        /// What is undecided.
        found: BTreeSet<Id>,
    },
    /// Other rules over a room are broken than it says.
    RoomBreaks {
        /// What is broken.
        found: BTreeSet<Id>,
    },
    /// Other rules over a room are undecided than it says.
    RoomUndecided {
        /// What is undecided.
        found: BTreeSet<Id>,
    },
    /// Other notices are carried than it says.
    Notices {
        /// What is carried for certain.
        found: BTreeSet<Id>,
    },
    /// The total is another.
    Total {
        /// What the total is.
        found: Total,
    },
}

impl Example {
    /// Fills and judges the example. `book` and `policy` may be left out; without the book of the example, its
    /// total is not compared.
    #[must_use]
    pub fn judge(&self, catalog: &Catalog, book: Option<&Book>, policy: Option<&Policy>) -> Judgement {
        self.in_setting(catalog, book, policy, |setting| {
            judge(setting, &fill(setting, &self.picks))
        })
    }

    /// Fills the example and judges the rules over a room, as if its unit were the only one there.
    #[must_use]
    pub fn judge_room(&self, catalog: &Catalog) -> Vec<RoomFinding> {
        self.in_setting(catalog, None, None, |setting| {
            let unit = fill(setting, &self.picks);
            let alone = RoomUnit { setting, unit: &unit };
            judge_room(&[alone])
        })
    }

    /// Fills the example and works out how its unit is drawn.
    ///
    /// # Errors
    /// [`Undrawn`] says why it is not.
    pub fn draw(&self, catalog: &Catalog) -> Result<Drawn, Undrawn> {
        self.in_setting(catalog, None, None, |setting| {
            draw(setting, &fill(setting, &self.picks))
        })
    }

    fn in_setting<T>(
        &self,
        catalog: &Catalog,
        book: Option<&Book>,
        policy: Option<&Policy>,
        ask: impl FnOnce(&Setting<'_>) -> T,
    ) -> T {
        let authorities = Authorities::default();
        ask(&Setting {
            catalog,
            book,
            policy,
            site: &self.site,
            waivers: &[],
            authorities: &authorities,
            date: self.date,
        })
    }

    /// How the example fails to come out; empty when it does.
    #[must_use]
    pub fn mismatches(&self, catalog: &Catalog, book: Option<&Book>) -> Vec<Mismatch> {
        let judgement = self.judge(catalog, book, None);
        let mut mismatches = Vec::new();
        let found = ids_where(&judgement, |state| {
            matches!(state, RuleState::Broken | RuleState::NoRow(_))
        });
        if found != self.breaks {
            mismatches.push(Mismatch::Breaks { found });
        }
        let found = ids_where(&judgement, |state| matches!(state, RuleState::Undecided(_)));
        if self.undecided.as_ref().is_some_and(|expected| *expected != found) {
            mismatches.push(Mismatch::Undecided { found });
        }
        mismatches.extend(self.room_mismatches(catalog));
        let certain = judgement.notices.iter().filter(|notice| notice.wants.is_none());
        let found: BTreeSet<Id> = certain.map(|notice| notice.id.clone()).collect();
        if self.notices.as_ref().is_some_and(|expected| *expected != found) {
            mismatches.push(Mismatch::Notices { found });
        }
        let priced = self
            .total
            .as_ref()
            .filter(|expected| book.is_some_and(|book| book.id == expected.book));
        let wrong = priced.filter(
            |expected| !matches!(&judgement.total, Total::Known(total) if *total.amount() == expected.amount),
        );
        if wrong.is_some() {
            mismatches.push(Mismatch::Total {
                found: judgement.total,
            });
        }
        mismatches
    }
}

impl Example {
    fn room_mismatches(&self, catalog: &Catalog) -> Vec<Mismatch> {
        let findings = self.judge_room(catalog);
        let found = |state: RoomState| -> BTreeSet<Id> {
            let found = findings.iter().filter(|finding| finding.state == state);
            found.map(|finding| finding.id.clone()).collect()
        };
        let mut mismatches = Vec::new();
        let broken = found(RoomState::Broken);
        if broken != self.room_breaks {
            mismatches.push(Mismatch::RoomBreaks { found: broken });
        }
        let undecided = found(RoomState::Undecided);
        if self
            .room_undecided
            .as_ref()
            .is_some_and(|expected| *expected != undecided)
        {
            mismatches.push(Mismatch::RoomUndecided { found: undecided });
        }
        mismatches
    }
}

fn ids_where(judgement: &Judgement, keep: impl Fn(&RuleState) -> bool) -> BTreeSet<Id> {
    judgement
        .rules
        .iter()
        .filter(|finding| keep(&finding.state))
        .map(|finding| finding.id.clone())
        .collect()
}
