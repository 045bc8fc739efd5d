//! Works an order out: fills every unit with standards and judges it.
//!
//! Always holds: units stand in the order of the file; sums are exact and leave out what is not known, which
//! [`Totals`] names. Openings that are not included are worked out and count for nothing.

use std::collections::BTreeSet;

use astragal_model::{
    Authorities, Book, Catalog, Date, Id, Judgement, Money, Number, Opening, Order, Policy, RuleFinding,
    RuleState, Setting, Standing, Total, Unit, UnitRequest, Verdict, fill, fill_standards, judge,
};

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
}

/// An order that was worked out.
pub(crate) struct Quote<'a> {
    pub(crate) order: &'a Order,
    /// The day was given on the command line.
    pub(crate) date_given: bool,
    pub(crate) used: &'a [Used<'a>],
    /// The authorities whose rules did not bind.
    pub(crate) left_out: &'a BTreeSet<Id>,
    pub(crate) units: Vec<QuotedUnit<'a>>,
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
    /// Works an order out. The error names an opening whose catalog was not given.
    pub(crate) fn new(
        order: &'a Order,
        used: &'a [Used<'a>],
        left_out: &'a BTreeSet<Id>,
        date_given: bool,
    ) -> Result<Self, String> {
        let authorities = Authorities {
            left_out: left_out.clone(),
        };
        let mut units = Vec::new();
        for opening in &order.openings {
            for request in &opening.units {
                let Some(used) = used.iter().find(|used| *used.id == request.catalog) else {
                    let (tag, catalog) = (&opening.tag, &request.catalog);
                    return Err(format!(
                        "opening `{tag}` uses catalog `{catalog}`, which was not read"
                    ));
                };
                units.push(QuotedUnit::new(opening, request, *used, &authorities, order.date));
            }
        }
        Ok(Self {
            order,
            date_given,
            used,
            left_out,
            units,
        })
    }

    /// The units of openings that count in the order.
    pub(crate) fn included(&self) -> impl Iterator<Item = &QuotedUnit<'a>> {
        self.units.iter().filter(|unit| unit.opening.included)
    }

    /// The worst verdict of what counts.
    pub(crate) fn verdict(&self) -> Verdict {
        let verdicts = self.included().map(|unit| unit.judgement.verdict);
        verdicts.max().unwrap_or(Verdict::Holds)
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
            match unit.judgement.verdict {
                Verdict::Holds => {}
                Verdict::Undecided => totals.undecided.push(tag),
                Verdict::Broken => totals.broken.push(tag),
            }
        }
        totals
    }
}

impl<'a> QuotedUnit<'a> {
    fn new(
        opening: &'a Opening,
        request: &'a UnitRequest,
        used: Used<'a>,
        authorities: &Authorities,
        date: Date,
    ) -> Self {
        let setting = used.setting(opening, request, authorities, date);
        let filled = fill(&setting, &request.picks);
        Self {
            opening,
            request,
            used,
            date,
            alone: fill_standards(&setting, &filled),
            judgement: judge(&setting, &filled),
            filled,
        }
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
