//! Puts the judge's answers and the oracle's side by side.
//!
//! [`said`] turns a judgement into a [`Reading`], so that both can be compared name by name; [`differences`] says
//! where they are not the same.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Debug;

use astragal_model::{
    Declarations, ItemState, Judgement, Outcome, Pick, RuleFinding, RuleName, RuleState, Setting, Subject,
    Total, UndefinedCause, Unit, Want, fill, judge,
};

use crate::reading::{
    Answer, Datum, Failing, Line, Met, Price, Reading, Stand, at_part, attribute_name, fraction, part_name,
    stands, subject_name,
};

/// One thing on which the judge and the oracle do not agree.
#[derive(Clone, Debug)]
pub struct Difference {
    /// What sort of thing it is: `rule`, `item`.
    pub kind: &'static str,
    /// Its name.
    pub name: String,
    /// What the judge says.
    pub judge: String,
    /// What the oracle says.
    pub oracle: String,
}

/// Judges and reads a unit, and says where the answers differ; with what the oracle met.
#[must_use]
pub fn judged(setting: &Setting<'_>, unit: &Unit) -> (Vec<Difference>, Judgement, Met) {
    let judgement = judge(setting, unit);
    let (ours, met) = crate::reading::read(setting, unit);
    let theirs = said(setting.catalog.declarations(), &judgement);
    let mut found = differences(&theirs, &ours);
    if theirs.rules.len() != judgement.rules.len() || theirs.items.len() != judgement.items.len() {
        let count = format!("{} rules, {} items", judgement.rules.len(), judgement.items.len());
        let names = format!("{} rules, {} items", theirs.rules.len(), theirs.items.len());
        found.push(Difference {
            kind: "count",
            name: "findings".to_owned(),
            judge: count,
            oracle: names,
        });
    }
    (found, judgement, met)
}

/// Fills picks both ways, and says where the units differ.
#[must_use]
pub fn filled(setting: &Setting<'_>, picks: &[Pick]) -> (Vec<Difference>, Unit) {
    let unit = fill(setting, picks);
    let declared = setting.catalog.declarations();
    let mut found = Vec::new();
    let ours = crate::reading::fill(setting, picks);
    by_name("choice", &stands(declared, &unit), &ours, &mut found);
    (found, unit)
}

/// Everywhere that two readings are not the same; the first is called the judge's.
#[must_use]
pub fn differences(judge: &Reading, oracle: &Reading) -> Vec<Difference> {
    let mut found = Vec::new();
    by_name("rule", &judge.rules, &oracle.rules, &mut found);
    by_name("figure", &judge.figures, &oracle.figures, &mut found);
    by_name("item", &judge.items, &oracle.items, &mut found);
    by_name("notice", &judge.notices, &oracle.notices, &mut found);
    by_name("open attribute", &judge.open, &oracle.open, &mut found);
    same("subtotal", &judge.subtotal, &oracle.subtotal, &mut found);
    same("tail", &judge.tail, &oracle.tail, &mut found);
    same("total", &judge.total, &oracle.total, &mut found);
    same("verdict", &judge.verdict, &oracle.verdict, &mut found);
    same(
        "waivers used",
        &judge.waivers_used,
        &oracle.waivers_used,
        &mut found,
    );
    let (theirs, ours) = (&judge.authorities_not_applied, &oracle.authorities_not_applied);
    same("authorities not applied", theirs, ours, &mut found);
    found
}

fn same<T: PartialEq + Debug>(kind: &'static str, judge: &T, oracle: &T, found: &mut Vec<Difference>) {
    if judge != oracle {
        let (judge, oracle) = (format!("{judge:?}"), format!("{oracle:?}"));
        found.push(Difference {
            kind,
            name: String::new(),
            judge,
            oracle,
        });
    }
}

fn by_name<T: PartialEq + Debug>(
    kind: &'static str,
    judge: &BTreeMap<String, T>,
    oracle: &BTreeMap<String, T>,
    found: &mut Vec<Difference>,
) {
    let names: BTreeSet<&String> = judge.keys().chain(oracle.keys()).collect();
    for name in names {
        let (theirs, ours) = (judge.get(name), oracle.get(name));
        if theirs != ours {
            let (judge, oracle) = (format!("{theirs:?}"), format!("{ours:?}"));
            found.push(Difference {
                kind,
                name: name.clone(),
                judge,
                oracle,
            });
        }
    }
}

/// What a judgement says, by name.
#[must_use]
pub fn said(declared: &Declarations, judgement: &Judgement) -> Reading {
    let rules = judgement.rules.iter().map(|finding| {
        let failing = match &finding.state {
            RuleState::Broken => Failing::Broken,
            RuleState::NoRow(cause) => Failing::NoRow(reason(declared, cause)),
            RuleState::Undecided(wants) => Failing::Undecided(names(declared, wants)),
        };
        (rule_name(declared, finding), (failing, finding.standing))
    });
    let figures = judgement.figures.iter().map(|finding| {
        let figure = declared.figures.at(finding.figure);
        let name = part_name(declared, &figure.id, figure.part);
        let value = answer(declared, &finding.outcome);
        (name, (value, answer(declared, &finding.part_exists)))
    });
    let items = judgement.items.iter().map(|finding| {
        let item = declared.items.at(finding.item);
        let line = match &finding.state {
            ItemState::Amount(money) => Line::Amount(fraction(money.amount())),
            ItemState::Unknown(wants) => Line::Unknown(names(declared, wants)),
            ItemState::NoPrice => Line::NoPrice,
        };
        (at_part(declared, &item.id, item.part), (line, finding.standard))
    });
    let tail = judgement.tail.iter().map(|step| {
        let (adds, after) = (fraction(step.amount.amount()), fraction(step.after.amount()));
        (step.id.as_str().to_owned(), adds, after)
    });
    let authorities = judgement.authorities_not_applied.iter();
    Reading {
        rules: rules.collect(),
        figures: figures.collect(),
        items: items.collect(),
        subtotal: judgement.subtotal.as_ref().map(|money| fraction(money.amount())),
        tail: tail.collect(),
        total: price(declared, &judgement.total),
        notices: notices(declared, judgement),
        open: open(declared, judgement),
        verdict: judgement.verdict,
        waivers_used: judgement.waivers_used.iter().copied().collect(),
        authorities_not_applied: authorities.map(|id| id.as_str().to_owned()).collect(),
    }
}

/// Where the oracle keeps the finding of a rule.
fn rule_name(declared: &Declarations, finding: &RuleFinding) -> String {
    match finding.rule {
        RuleName::HasAPrice(item) => {
            let item = declared.items.at(item);
            format!(
                "{} {}",
                finding.id.as_str(),
                at_part(declared, &item.id, item.part)
            )
        }
        _ => at_part(declared, &finding.id, finding.part),
    }
}

fn price(declared: &Declarations, total: &Total) -> Price {
    match total {
        Total::NotPriced => Price::NotPriced,
        Total::Known(money) => Price::Known(fraction(money.amount())),
        Total::Unknown(wants) => Price::Unknown(names(declared, wants)),
        Total::NoPrice => Price::NoPrice,
    }
}

fn notices(declared: &Declarations, judgement: &Judgement) -> BTreeMap<String, Option<BTreeSet<String>>> {
    let findings = judgement.notices.iter();
    findings
        .map(|finding| {
            let part = declared
                .notices
                .get(finding.notice)
                .and_then(|notice| notice.part);
            let wants = finding.wants.as_ref().map(|wants| names(declared, wants));
            (at_part(declared, &finding.id, part), wants)
        })
        .collect()
}

fn open(declared: &Declarations, judgement: &Judgement) -> BTreeMap<String, BTreeSet<String>> {
    let findings = judgement.open.iter();
    findings
        .map(|finding| {
            let name = attribute_name(declared, declared.attributes.at(finding.attribute));
            (name, names(declared, &finding.wants))
        })
        .collect()
}

/// An outcome of the model in the oracle's words.
#[must_use]
pub fn answer(declared: &Declarations, outcome: &Outcome) -> Answer {
    match outcome {
        Outcome::Known(value) => Answer::Is(Datum::of(value)),
        Outcome::Unknown(wants) => Answer::Wants(names(declared, wants)),
        Outcome::Undefined(cause) => Answer::Nothing(reason(declared, cause)),
    }
}

fn names(declared: &Declarations, wants: &BTreeSet<Want>) -> BTreeSet<String> {
    wants.iter().map(|want| want_name(declared, want)).collect()
}

/// What is wanted, in the oracle's words.
#[must_use]
pub fn want_name(declared: &Declarations, want: &Want) -> String {
    match want {
        Want::Measure(index) => format!("measure {}", subject_name(declared, Subject::Measure(*index))),
        Want::DeductedBy(index) => {
            format!(
                "deducted by {}",
                subject_name(declared, Subject::DeductedBy(*index))
            )
        }
        Want::Fact(index) => format!("fact {}", subject_name(declared, Subject::Fact(*index))),
        Want::Choice(index) => format!("choice {}", subject_name(declared, Subject::Attribute(*index))),
        Want::SignOff(index) => {
            let item = declared.items.at(*index);
            format!("sign-off {}", at_part(declared, &item.id, item.part))
        }
    }
}

fn reason(declared: &Declarations, cause: &UndefinedCause) -> String {
    match cause {
        UndefinedCause::NoRow(index) => format!("no row {}", subject_name(declared, Subject::Figure(*index))),
        UndefinedCause::NotAsked(index) => {
            format!("not asked {}", subject_name(declared, Subject::Attribute(*index)))
        }
        UndefinedCause::NoProperty(index, property) => {
            let name = subject_name(declared, Subject::Attribute(*index));
            format!("no property {name}.{}", property.as_str())
        }
        UndefinedCause::NotCovered(function) => format!("not covered by {}", function.name()),
        UndefinedCause::TooLarge => "too large".to_owned(),
        UndefinedCause::IllTyped => "ill typed".to_owned(),
    }
}

/// Whether nothing stands at an attribute yet.
#[must_use]
pub fn is_open(stand: &Stand) -> bool {
    matches!(stand, Stand::Open(_))
}
