//! Counts what random cases reach, so that a test can insist that they reach everything.

use std::collections::BTreeMap;

use astragal_model::{
    Audience, Cell, Choice, Declarations, Effect, ItemState, Judgement, Outcome, Requirement, Rule, RuleName,
    RuleState, Standard, Standing, Table, Total, UndefinedCause, Unit, Verdict,
};

use crate::generate::{Case, World};
use crate::reading::Met;

/// How often each situation was met, by name.
#[derive(Clone, Default, Debug)]
pub struct Census {
    /// The counts.
    pub counts: BTreeMap<String, u64>,
}

impl Census {
    /// Counts one more of these.
    pub fn add(&mut self, name: &str) {
        self.add_many(name, 1);
    }

    fn add_many(&mut self, name: &str, count: u64) {
        *self.counts.entry(name.to_owned()).or_default() += count;
    }

    /// Counts what the oracle met while reading.
    pub fn reading(&mut self, met: &Met) {
        for ((what, how), count) in met {
            self.add_many(&format!("{what}: {how}"), *count);
        }
    }

    /// Counts what a world is made of.
    pub fn world(&mut self, world: &World) {
        let declared = world.catalog.declarations();
        for attribute in declared.attributes.values() {
            self.add(match &attribute.standard {
                Standard::Ask => "standard ask",
                Standard::Option(_) => "standard option",
                Standard::Formula(_) => "standard formula",
            });
            if attribute.audience == Audience::Plant {
                self.add("audience plant");
            }
        }
        let of_policy = world.policy.iter().flat_map(|policy| &policy.terms.rules);
        for rule in declared.rules.iter().chain(of_policy) {
            self.rule(rule);
        }
        self.add(if world.book.is_some() {
            "with a book"
        } else {
            "without a book"
        });
        if let Some(policy) = &world.policy {
            self.add(if policy.terms.round_to.is_some() {
                "policy rounds"
            } else {
                "policy without a unit"
            });
        }
        self.per_part(declared);
    }

    fn per_part(&mut self, declared: &Declarations) {
        let attributes = declared
            .attributes
            .values()
            .filter(|attribute| attribute.part.is_some());
        attributes.for_each(|_| self.add("per part: attribute"));
        let figures = declared.figures.values().filter(|figure| figure.part.is_some());
        figures.for_each(|_| self.add("per part: figure"));
        declared
            .rules
            .iter()
            .filter(|rule| rule.part.is_some())
            .for_each(|_| self.add("per part: rule"));
        declared
            .items
            .values()
            .filter(|item| item.part.is_some())
            .for_each(|_| self.add("per part: item"));
        declared
            .notices
            .iter()
            .filter(|one| one.part.is_some())
            .for_each(|_| self.add("per part: notice"));
    }

    fn rule(&mut self, rule: &Rule) {
        self.add(match rule.effect {
            Effect::Block => "effect block",
            Effect::Warn => "effect warn",
            Effect::SignOff => "effect sign_off",
        });
        if let Requirement::Allowed(table) | Requirement::Forbidden(table) = &rule.requirement {
            self.table(table);
        }
    }

    fn table(&mut self, table: &Table) {
        if table.rows.is_empty() {
            self.add("table without rows");
        }
        for cell in table.rows.iter().flat_map(|row| &row.cells) {
            match cell {
                Cell::Any => self.add("cell *"),
                Cell::OneOf(_) => self.add("cell one of"),
                Cell::Within(intervals) => {
                    for interval in intervals {
                        self.add(match (&interval.lower, &interval.upper) {
                            (None, None) => "cell within: no ends",
                            (None, Some(_)) => "cell within: upper end",
                            (Some(lower), _) if lower.open => "cell within: open below",
                            (Some(_), _) => "cell within: closed below",
                        });
                    }
                }
            }
        }
    }

    /// Counts what a case asks and what follows.
    pub fn case(&mut self, case: &Case, unit: &Unit, judgement: &Judgement) {
        for choice in unit.choices.values() {
            let wild = if case.wild { "wild" } else { "filled" };
            self.add(&format!(
                "{wild} choice: {}",
                match choice {
                    Choice::Open => "open",
                    Choice::NotAsked => "not asked",
                    Choice::Chosen { .. } if choice.is_picked() => "picked",
                    Choice::Chosen { .. } => "standard",
                }
            ));
        }
        for finding in &judgement.rules {
            let state = state_word(&finding.state);
            self.add(&format!("rule {}: {state}", rule_word(finding.rule)));
            self.add(&format!("standing {}: {state}", standing_word(finding.standing)));
            if let RuleState::NoRow(cause) = &finding.state {
                self.add(&format!("cause of no row: {}", cause_word(cause)));
            }
        }
        for figure in &judgement.figures {
            self.outcome("figure", &figure.outcome);
            self.add(&format!(
                "part of a figure: {}",
                match &figure.part_exists {
                    exists if exists.is_truth(true) => "exists",
                    Outcome::Known(_) => "absent",
                    Outcome::Unknown(_) => "unknown",
                    Outcome::Undefined(_) => "undefined",
                }
            ));
        }
        for item in &judgement.items {
            let state = match &item.state {
                ItemState::Amount(amount) if amount.amount().is_negative() => "amount below zero",
                ItemState::Amount(_) => "amount",
                ItemState::Unknown(_) => "unknown",
                ItemState::NoPrice => "no price",
            };
            self.add(&format!(
                "item {}: {state}",
                if item.standard { "standard" } else { "upcharge" }
            ));
        }
        self.judgement(judgement);
    }

    fn judgement(&mut self, judgement: &Judgement) {
        self.add(match &judgement.total {
            Total::NotPriced => "total not priced",
            Total::Known(_) => "total known",
            Total::Unknown(_) => "total unknown",
            Total::NoPrice => "total no price",
        });
        self.add(match judgement.verdict {
            Verdict::Holds => "verdict holds",
            Verdict::Undecided => "verdict undecided",
            Verdict::Broken => "verdict broken",
        });
        for step in &judgement.tail {
            self.add(if step.percent.is_some() {
                "tail percent"
            } else {
                "tail flat"
            });
        }
        if !judgement.waivers_used.is_empty() {
            self.add("waivers used");
        }
        if !judgement.authorities_not_applied.is_empty() {
            self.add("authorities not applied");
        }
    }

    fn outcome(&mut self, what: &str, outcome: &Outcome) {
        let word = match outcome {
            Outcome::Known(_) => "known",
            Outcome::Unknown(_) => "unknown",
            Outcome::Undefined(cause) => cause_word(cause),
        };
        self.add(&format!("{what} outcome: {word}"));
    }
}

fn state_word(state: &RuleState) -> &'static str {
    match state {
        RuleState::Broken => "broken",
        RuleState::NoRow(_) => "no row",
        RuleState::Undecided(_) => "undecided",
    }
}

fn rule_word(rule: RuleName) -> &'static str {
    match rule {
        RuleName::Catalog(_) => "of the catalog",
        RuleName::Policy(_) => "of the policy",
        RuleName::Applies(_) => "applies",
        RuleName::Offered(_) => "offered",
        RuleName::Determined(_) => "determined",
        RuleName::HasAPrice(_) => "has-a-price",
        RuleName::BookInForce => "book-in-force",
    }
}

fn standing_word(standing: Standing) -> &'static str {
    match standing {
        Standing::Binds => "binds",
        Standing::Warns => "warns",
        Standing::SignOff => "sign-off",
        Standing::Waived(_) => "waived",
        Standing::NotApplied => "not applied",
    }
}

fn cause_word(cause: &UndefinedCause) -> &'static str {
    match cause {
        UndefinedCause::NoRow(_) => "no row",
        UndefinedCause::NotAsked(_) => "not asked",
        UndefinedCause::NoProperty(..) => "no property",
        UndefinedCause::NotCovered(_) => "not covered",
        UndefinedCause::TooLarge => "too large",
        UndefinedCause::IllTyped => "ill typed",
    }
}
