//! The changes of measures and site facts that make another revision.

use super::catalog_changes::{Change, edit};
use crate::bounds::Bounds;
use crate::catalog::Declarations;
use crate::expression::Expression;
use crate::id::{FactIndex, Id, MeasureIndex};
use crate::site::{Measure, Scope, SiteFact, TakenFact, TakenSide};
use crate::value::{Value, ValueType};
use astragal_exact::Number;

fn measure(of: &mut Declarations, change: impl FnOnce(&mut Measure)) {
    edit(&mut of.measures, MeasureIndex(0), change);
}

fn fact(of: &mut Declarations, change: impl FnOnce(&mut SiteFact)) {
    edit(&mut of.facts, FactIndex(1), change);
}

fn another_measure(id: &str) -> Measure {
    Measure {
        id: Id::new(id),
        label: "Another".to_owned(),
        value_type: ValueType::Length,
        step: None,
        bounds: Bounds::default(),
        taken_as: None,
    }
}

pub(super) fn another_fact(id: &str) -> SiteFact {
    SiteFact {
        id: Id::new(id),
        label: "Another".to_owned(),
        value_type: ValueType::Bool,
        options: Vec::new(),
        of: Scope::House,
        bounds: Bounds::default(),
        step: None,
        taken_as: None,
    }
}

pub(super) const SITE: &[Change] = &[
    ("id of a measure", |d| {
        measure(d, |measure| measure.id = Id::new("breadth"))
    }),
    ("label of a measure", |d| {
        measure(d, |measure| measure.label.push('!'))
    }),
    ("type of a measure", |d| {
        measure(d, |measure| measure.value_type = ValueType::Number)
    }),
    ("type of a measure: area", |d| {
        measure(d, |measure| measure.value_type = ValueType::Area)
    }),
    ("step of a measure", |d| {
        measure(d, |measure| measure.step = Number::ratio(1, 8))
    }),
    ("least of a measure", |d| {
        measure(d, |measure| measure.bounds.least = Some(Number::from(7)))
    }),
    ("no least of a measure", |d| {
        measure(d, |measure| measure.bounds.least = None)
    }),
    ("most of a measure", |d| {
        measure(d, |measure| measure.bounds.most = Some(Number::from(7)))
    }),
    ("least of a fact", |d| {
        fact(d, |fact| fact.bounds.least = Some(Number::from(7)))
    }),
    ("most of a fact", |d| {
        fact(d, |fact| fact.bounds.most = Some(Number::from(7)))
    }),
    ("step of a fact", |d| {
        fact(d, |fact| fact.step = Some(Number::from(7)))
    }),
    ("id of a site check", |d| {
        d.site_checks[0].id = Id::new("another");
    }),
    ("what a site check requires", |d| {
        d.site_checks[0].require = Expression::Literal(Value::Bool(false));
    }),
    ("message of a site check", |d| d.site_checks[0].message.push('!')),
    ("one site check fewer", |d| {
        d.site_checks.pop();
    }),
    ("which side a measure is", |d| {
        measure(d, |measure| measure.taken_as = Some(TakenSide::Width))
    }),
    ("which side a measure is: height", |d| {
        measure(d, |measure| measure.taken_as = Some(TakenSide::Height))
    }),
    ("what a fact says of readings", |d| {
        fact(d, |fact| fact.taken_as = Some(TakenFact::WidthSpread))
    }),
    ("what a fact says of readings: diagonals", |d| {
        fact(d, |fact| fact.taken_as = Some(TakenFact::DiagonalDifference))
    }),
    ("no step", |d| measure(d, |measure| measure.step = None)),
    ("names of measures swapped", |d| {
        let swapped: Vec<Measure> = d.measures.values().rev().cloned().collect();
        d.measures = swapped.into();
    }),
    ("one more measure", |d| {
        d.measures.push(another_measure("depth"));
    }),
    ("one more measure by another name", |d| {
        d.measures.push(another_measure("sill"));
    }),
    ("one more fact", |d| {
        d.facts.push(another_fact("wet"));
    }),
    ("one more fact by another name", |d| {
        d.facts.push(another_fact("noisy"));
    }),
    ("id of a fact", |d| fact(d, |fact| fact.id = Id::new("climate"))),
    ("label of a fact", |d| fact(d, |fact| fact.label.push('!'))),
    ("type of a fact: date", |d| {
        fact(d, |fact| fact.value_type = ValueType::Date)
    }),
    ("type of a fact: bool", |d| {
        fact(d, |fact| fact.value_type = ValueType::Bool)
    }),
    ("type of a fact: number", |d| {
        fact(d, |fact| fact.value_type = ValueType::Number)
    }),
    ("type of a fact: length", |d| {
        fact(d, |fact| fact.value_type = ValueType::Length)
    }),
    ("type of a fact: area", |d| {
        fact(d, |fact| fact.value_type = ValueType::Area)
    }),
    ("id of a value of a fact", |d| {
        fact(d, |fact| fact.options[0].0 = Id::new("icy"))
    }),
    ("label of a value of a fact", |d| {
        fact(d, |fact| fact.options[0].1.push('!'))
    }),
    ("scope of a fact: floor", |d| {
        fact(d, |fact| fact.of = Scope::Floor)
    }),
    ("scope of a fact: room", |d| fact(d, |fact| fact.of = Scope::Room)),
    ("scope of a fact: face", |d| fact(d, |fact| fact.of = Scope::Face)),
    ("scope of a fact: opening", |d| {
        fact(d, |fact| fact.of = Scope::Opening)
    }),
];
