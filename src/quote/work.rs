//! Works an order out: completes every unit and judges it.
//!
//! Always holds: units stand in the order of the file; sums are exact and leave out what is not known, which
//! [`Totals`] names. Openings that are not included are worked out and count for nothing.

use std::collections::BTreeSet;

use astragal_core::complete::Aim;
use astragal_model::{
    AttributeIndex, Authorities, Book, Catalog, Date, Id, Judgement, Money, Number, Opening, Order, Policy,
    RuleFinding, RuleState, Setting, Standing, Total, Unit, UnitRequest, Verdict, fill_standards,
};

use crate::quote::cheapest::Cheapest;
use crate::quote::completion::{Completing, Quoted, quoted};
use crate::quote::engines::Engines;
use crate::quote::rooms::{self, QuotedRoom};

/// A catalog that an order uses, with its price book and policy.
#[derive(Clone, Copy)]
pub(crate) struct Used<'a> {
    pub(crate) id: &'a Id,
    pub(crate) catalog: &'a Catalog,
    pub(crate) book: &'a Book,
    pub(crate) policy: Option<&'a Policy>,
}

impl<'a> Used<'a> {
    /// What stands still around one unit.
    pub(crate) fn setting<'s>(
        &self,
        opening: &'s Opening,
        request: &'s UnitRequest,
        authorities: &'s Authorities,
        date: Date,
    ) -> Setting<'s>
    where
        'a: 's,
    {
        Setting {
            catalog: self.catalog,
            book: Some(self.book),
            policy: self.policy,
            site: &opening.site,
            waivers: &request.waivers,
            authorities,
            date,
        }
    }

    /// Whether the policy hides an option.
    pub(crate) fn hides(&self, attribute: AttributeIndex, option: &Id) -> bool {
        let hidden = self.policy.and_then(|policy| policy.terms.hidden.get(&attribute));
        hidden.is_some_and(|hidden| hidden.contains(option))
    }
}

/// An order that was worked out.
pub(crate) struct Quote<'a> {
    pub(crate) order: &'a Order,
    /// The day was given on the command line.
    pub(crate) date_given: bool,
    pub(crate) used: &'a [Used<'a>],
    /// The authorities whose rules did not bind.
    pub(crate) left_out: &'a BTreeSet<Id>,
    /// What units are completed to; `None` when standards alone are filled in.
    pub(crate) aim: Option<Aim>,
    pub(crate) units: Vec<QuotedUnit<'a>>,
    /// The rooms to which a rule applies, or may.
    pub(crate) rooms: Vec<QuotedRoom>,
}

/// One unit of one opening, filled and judged.
pub(crate) struct QuotedUnit<'a> {
    pub(crate) opening: &'a Opening,
    pub(crate) request: &'a UnitRequest,
    pub(crate) used: Used<'a>,
    pub(crate) date: Date,
    pub(crate) filled: Unit,
    /// The same unit with standards alone.
    pub(crate) alone: Unit,
    pub(crate) judgement: Judgement,
    pub(crate) completion: Completing,
}

/// Whether somebody must sign before a unit is ordered.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub(crate) enum SignOff {
    NotNeeded,
    /// It waits for something that is not known.
    MayBeNeeded,
    Needed,
}

/// What the openings that count come to together.
pub(crate) struct Totals<'a> {
    /// The sum of the totals that are known; `None` where currencies differ.
    pub(crate) known: Option<Money>,
    /// The tags of openings without a known total.
    pub(crate) without_total: Vec<&'a str>,
    /// The tags of openings whose total is counted although they do not hold.
    pub(crate) broken: Vec<&'a str>,
    /// The tags of openings whose total is counted although something about them cannot be decided.
    pub(crate) undecided: Vec<&'a str>,
}

impl<'a> Quote<'a> {
    /// Works an order out.
    ///
    /// # Errors
    /// When an opening's catalog was not given, or the engine and the judge disagree; the message names the opening.
    pub(crate) fn new(
        order: &'a Order,
        used: &'a [Used<'a>],
        left_out: &'a BTreeSet<Id>,
        date_given: bool,
        aim: Option<Aim>,
    ) -> Result<Self, String> {
        let authorities = Authorities {
            left_out: left_out.clone(),
        };
        let engines = Engines::new(used, &authorities);
        let mut units = Vec::new();
        for opening in &order.openings {
            for request in &opening.units {
                let Some(used) = used.iter().find(|used| *used.id == request.catalog) else {
                    let (tag, catalog) = (&opening.tag, &request.catalog);
                    return Err(format!(
                        "opening `{tag}` uses catalog `{catalog}`, which was not read"
                    ));
                };
                let setting = used.setting(opening, request, &authorities, order.date);
                let engine = aim.map(|_| engines.of(used.id));
                let quoted = quoted(&setting, request, engine, aim.unwrap_or_default())
                    .map_err(|error| format!("opening `{}`: {error}", opening.tag))?;
                units.push(QuotedUnit::new(opening, request, *used, &setting, quoted));
            }
        }
        let rooms = rooms::of(order, &units, &authorities);
        Ok(Self {
            order,
            date_given,
            used,
            left_out,
            aim,
            units,
            rooms,
        })
    }

    /// The units of openings that count in the order.
    pub(crate) fn included(&self) -> impl Iterator<Item = &QuotedUnit<'a>> {
        self.units.iter().filter(|unit| unit.opening.included)
    }

    /// The worst verdict of what counts, rooms included.
    pub(crate) fn verdict(&self) -> Verdict {
        let units = self.included().map(QuotedUnit::verdict);
        let rooms = self.rooms.iter().map(QuotedRoom::verdict);
        units.chain(rooms).max().unwrap_or(Verdict::Holds)
    }

    /// The labels of the rooms that stand so by the rules over rooms.
    pub(crate) fn rooms_that(&self, verdict: Verdict) -> Vec<String> {
        let rooms = self.rooms.iter().filter(|room| room.verdict() == verdict);
        rooms.map(|room| room.label.clone()).collect()
    }

    /// What the openings that count come to.
    pub(crate) fn totals(&self) -> Totals<'a> {
        let mut totals = Totals {
            known: Some(Money::zero(self.order.currency)),
            without_total: Vec::new(),
            broken: Vec::new(),
            undecided: Vec::new(),
        };
        for unit in self.included() {
            let tag = unit.opening.tag.as_str();
            let Some(total) = unit.opening_total() else {
                totals.without_total.push(tag);
                continue;
            };
            totals.known = totals.known.and_then(|known| known.plus(&total));
            match unit.verdict() {
                Verdict::Holds => {}
                Verdict::Undecided => totals.undecided.push(tag),
                Verdict::Broken => totals.broken.push(tag),
            }
        }
        totals
    }
}

impl Quote<'_> {
    /// How much less the openings that count come to with everything filled in at its cheapest; nothing where none does.
    pub(crate) fn saves(&self) -> Option<Money> {
        let mut saves = self
            .included()
            .filter_map(|unit| match &unit.completion.cheapest {
                Cheapest::Less(less) => {
                    let quantity = Number::from(i64::from(unit.opening.quantity));
                    Some(less.saves.times(&quantity))
                }
                Cheapest::None | Cheapest::Depends | Cheapest::Quoted => None,
            });
        let zero = Money::zero(self.order.currency);
        let sum = saves.try_fold(zero, |sum, one| sum.plus(&one));
        sum.filter(|sum| !sum.amount().is_zero())
    }

    /// The tags of the openings that count and are filled with standards.
    pub(crate) fn filled_with_standards(&self) -> Vec<&str> {
        let standard = |unit: &&QuotedUnit<'_>| unit.completion.filled_with == Aim::Standard;
        let units = self.included().filter(standard);
        units.map(|unit| unit.opening.tag.as_str()).collect()
    }
}

impl<'a> QuotedUnit<'a> {
    /// A unit as it was completed. `setting` is the one in which it was.
    pub(crate) fn new(
        opening: &'a Opening,
        request: &'a UnitRequest,
        used: Used<'a>,
        setting: &Setting<'_>,
        quoted: Quoted,
    ) -> Self {
        Self {
            opening,
            request,
            used,
            date: setting.date,
            alone: fill_standards(setting, &quoted.unit),
            judgement: quoted.judgement,
            completion: quoted.completion,
            filled: quoted.unit,
        }
    }

    /// The verdict of the judgement; *broken* too where nothing that is left to choose would hold.
    pub(crate) fn verdict(&self) -> Verdict {
        self.completion.verdict(&self.judgement)
    }

    /// No rule is broken yet, and nothing that is left to choose would hold.
    pub(crate) fn is_broken_whatever_is_chosen(&self) -> bool {
        self.verdict() == Verdict::Broken && self.judgement.verdict != Verdict::Broken
    }

    /// The attributes whose picks must not change, and that are picked.
    pub(crate) fn pinned(&self) -> impl Iterator<Item = AttributeIndex> {
        let picked = |pin: &AttributeIndex| self.request.picks.iter().any(|pick| pick.attribute == *pin);
        self.request.pins.iter().copied().filter(picked)
    }

    /// Whether somebody must sign for a rule before the unit is ordered.
    pub(crate) fn sign_off(&self) -> SignOff {
        let rules = self.judgement.rules.iter();
        let states = rules.filter(|finding| finding.standing == Standing::SignOff);
        let needs = states.map(|finding| match finding.state {
            RuleState::Undecided(_) => SignOff::MayBeNeeded,
            _ => SignOff::Needed,
        });
        needs.max().unwrap_or(SignOff::NotNeeded)
    }

    /// The ids of the rules that were not applied and would not hold, each once.
    pub(crate) fn set_aside(&self) -> BTreeSet<&Id> {
        let rules = self.judgement.rules.iter();
        let aside = rules.filter(|finding| {
            finding.standing == Standing::NotApplied && !matches!(finding.state, RuleState::Undecided(_))
        });
        aside.map(|finding| &finding.id).collect()
    }

    /// The rules from which a waiver releases the unit.
    pub(crate) fn waived(&self) -> impl Iterator<Item = &RuleFinding> {
        let rules = self.judgement.rules.iter();
        rules.filter(|finding| matches!(finding.standing, Standing::Waived(_)))
    }

    /// The price of one unit, where it is known.
    pub(crate) fn unit_total(&self) -> Option<&Money> {
        match &self.judgement.total {
            Total::Known(total) => Some(total),
            Total::NotPriced | Total::Unknown(_) | Total::NoPrice => None,
        }
    }

    /// The price of all units of the opening, where it is known.
    pub(crate) fn opening_total(&self) -> Option<Money> {
        let quantity = Number::from(i64::from(self.opening.quantity));
        self.unit_total().map(|total| total.times(&quantity))
    }
}
