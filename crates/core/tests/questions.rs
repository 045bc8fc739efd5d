//! What an engine takes and refuses: settings that were not compiled, two picks of one attribute, conditions that are one.

#![expect(clippy::unwrap_used, clippy::indexing_slicing, reason = "these are tests")]

use std::collections::{BTreeMap, BTreeSet};

use astragal_core::complete::{Aim, Completion, Wish};
use astragal_core::engine::{Engine, NotPrepared};
use astragal_core::limit::Limits;
use astragal_core::options::{Least, Picked};
use astragal_model::{
    Attribute, AttributeIndex, Authorities, Comparison, Declarations, Expression, Id, MeasureIndex, Number,
    PolicyTerms, Setting, Standard, Subject, Value,
};

use crate::plain::{Made, Plain, Together, WIDE, site};

mod plain;

fn pick(attribute: usize, value: usize) -> Picked {
    Picked {
        attribute: AttributeIndex(attribute),
        value,
        pinned: false,
        honoured: false,
    }
}

fn engine(setting: &Setting<'_>) -> Engine {
    let policy = setting.policy.map(|policy| &policy.terms);
    let limits = Limits::default();
    Engine::new(setting.catalog, policy, setting.authorities, 0, &limits).unwrap()
}

fn two_attributes() -> Made {
    let mut plain = Plain::of(&[2, 3]);
    plain.forbidden.push(Together::of(&[(0, 0), (1, 2)]));
    plain.priced.push((Together::of(&[(1, 1)]), 700));
    plain.made()
}

#[test]
fn an_engine_can_be_shared_between_threads() {
    fn shared<T: Send + Sync>() {}
    shared::<Engine>();
}

#[test]
fn a_setting_with_other_authorities_or_another_policy_is_refused() {
    let made = two_attributes();
    let site = site(&[Some(30)]);
    let setting = made.setting(&site);
    let engine = engine(&setting);
    assert!(engine.prepare(&setting).is_ok());
    let without_plant = Authorities {
        left_out: BTreeSet::from([Id::new("plant")]),
    };
    let other = Setting {
        authorities: &without_plant,
        ..setting
    };
    assert_eq!(engine.prepare(&other).unwrap_err(), NotPrepared::OtherAuthorities);

    let mut terms = PolicyTerms {
        id: Id::new("dealer"),
        label: "Dealer".to_owned(),
        hidden: BTreeMap::new(),
        standards: BTreeMap::from([(AttributeIndex(0), Standard::Option(Id::new("o1")))]),
        rules: Vec::new(),
        mark_ups: BTreeMap::new(),
        round_to: None,
        tail: Vec::new(),
    };
    let policy = made.catalog.policy(terms.clone()).unwrap();
    let light = Setting {
        policy: Some(&policy),
        ..setting
    };
    assert!(engine.prepare(&light).is_ok(), "it needs no diagram of its own");
    terms
        .rules
        .extend(made.catalog.declarations().rules.iter().cloned());
    let with_rule = made.catalog.policy(terms).unwrap();
    let heavy = Setting {
        policy: Some(&with_rule),
        ..setting
    };
    assert_eq!(engine.prepare(&heavy).unwrap_err(), NotPrepared::OtherPolicy);
    let own = self::engine(&heavy);
    assert!(own.prepare(&heavy).is_ok());
    assert_eq!(own.prepare(&light).unwrap_err(), NotPrepared::OtherPolicy);
    assert_eq!(own.prepare(&setting).unwrap_err(), NotPrepared::OtherPolicy);
}

#[test]
fn of_two_picks_of_one_attribute_the_later_stands_in_every_question() {
    let made = two_attributes();
    let site = site(&[Some(30)]);
    let setting = made.setting(&site);
    let engine = engine(&setting);
    let prepared = engine.prepare(&setting).unwrap();
    let twice = [pick(1, 2), pick(0, 0), pick(1, 1)];
    let once = [pick(0, 0), pick(1, 1)];
    let selection = engine.selection(&prepared, &twice);
    assert_eq!(
        selection.certain,
        Some(Least {
            changes: 0,
            cents: 700
        })
    );
    assert_eq!(
        engine.answers(&prepared, &twice),
        engine.answers(&prepared, &once)
    );
    let complete = |picks: &[Picked]| {
        let wish = Wish {
            setting: &setting,
            picks,
            quoted: &BTreeMap::new(),
            aim: Aim::Standard,
            near: None,
            count: 2,
        };
        engine.complete(&prepared, &wish).unwrap()
    };
    assert_eq!(complete(&twice), complete(&once));
    let Completion::Found(found) = complete(&twice) else {
        panic!("it holds")
    };
    assert_eq!((found[0].values.as_slice(), found[0].changes), (&[0, 1][..], 0));
}

/// A colour of 500 options whose standard waits for a measure stays open: 500 units that differ in nothing else are one.
#[test]
fn what_stays_open_in_every_unit_does_not_use_up_the_units_that_are_looked_at() {
    let made = Plain::of(&[500, 2]).made();
    let mut declared: Declarations = made.catalog.declarations().clone();
    let option = |id: &str| Box::new(Expression::Literal(Value::Option(Id::new(id))));
    let wide = Expression::Compare(Comparison::Greater, width(), inches(36, 1));
    let by_width = Expression::Conditional(Box::new(wide), option("o7"), option("o8"));
    let standards = [Standard::Formula(by_width), Standard::Option(Id::new("o1"))];
    let attributes = declared.attributes.values().cloned().zip(standards);
    declared.attributes = attributes
        .map(|(attribute, standard)| Attribute {
            standard,
            ..attribute
        })
        .collect();
    let made = made.with(declared);
    let site = site(&[None]);
    let setting = made.setting(&site);
    let engine = engine(&setting);
    let wish = Wish {
        setting: &setting,
        picks: &[],
        quoted: &BTreeMap::new(),
        aim: Aim::Standard,
        near: None,
        count: 3,
    };
    let prepared = engine.prepare(&setting).unwrap();
    let Completion::Found(found) = engine.complete(&prepared, &wish).unwrap() else {
        panic!("both units hold")
    };
    let chosen: Vec<Vec<Option<Id>>> = found
        .iter()
        .map(|one| {
            one.unit
                .choices
                .values()
                .map(|choice| choice.option().cloned())
                .collect()
        })
        .collect();
    let open_with = |id: &str| -> Vec<Option<Id>> { vec![None, Some(Id::new(id))] };
    assert_eq!(chosen, [open_with("o1"), open_with("o0")]);
}

fn width() -> Box<Expression> {
    Box::new(Expression::Read(Subject::Measure(MeasureIndex(0))))
}

fn inches(numerator: i64, denominator: i64) -> Box<Expression> {
    let number = Number::ratio(numerator, denominator).unwrap();
    Box::new(Expression::Literal(Value::Length(number)))
}

fn number(number: i64) -> Box<Expression> {
    Box::new(Expression::Literal(Value::Number(Number::from(number))))
}

/// A catalog in which each option of the first attribute but one is ruled out by its own condition.
fn ruled_out_where(conditions: Vec<Expression>) -> Made {
    let mut plain = Plain::of(&[conditions.len() + 1, 2]);
    plain.forbidden = (0..conditions.len())
        .map(|option| Together::where_is(&[(0, option)], Some(WIDE)))
        .collect();
    let made = plain.made();
    let mut declared: Declarations = made.catalog.declarations().clone();
    let rules = declared.rules.iter().cloned().zip(conditions).enumerate();
    declared.rules = rules
        .map(|(option, (mut rule, condition))| {
            let own = Expression::is_option(AttributeIndex(0), &format!("o{option}"));
            rule.when = Some(Expression::And(vec![own, condition]));
            rule
        })
        .collect();
    made.with(declared)
}

/// Six ways to say that the width is more than 36 inches. From memory: a comparison keeps its truth when the same is added to both
/// sides, and when both are multiplied by the same number above zero.
#[test]
fn conditions_that_are_one_by_algebra_are_one_gate() {
    use Comparison::{Greater, Less, LessOrEqual};
    let half_less = Box::new(Expression::Add(vec![*width(), *inches(-1, 2)]));
    let twice = Box::new(Expression::Multiply(number(2), width()));
    let third = Box::new(Expression::Divide(width(), Number::from(3)));
    let foot_less = Box::new(Expression::Negate(Box::new(Expression::Add(vec![
        *width(),
        *inches(-12, 1),
    ]))));
    let made = ruled_out_where(vec![
        Expression::Compare(Greater, width(), inches(36, 1)),
        Expression::Compare(Greater, half_less, inches(71, 2)),
        Expression::Compare(Less, inches(72, 1), twice),
        Expression::Compare(Less, inches(12, 1), third),
        Expression::Compare(Less, foot_less, inches(-24, 1)),
        Expression::Not(Box::new(Expression::Compare(LessOrEqual, width(), inches(36, 1)))),
    ]);
    for (inches, free) in [(35, 7), (36, 7), (37, 1)] {
        let site = site(&[Some(inches)]);
        let setting = made.setting(&site);
        let engine = engine(&setting);
        assert_eq!(engine.gate_count(), 1);
        let options = &engine.options(&engine.prepare(&setting).unwrap(), &[])[0];
        let possible = options.iter().filter(|option| option.certain.is_some());
        assert_eq!(possible.count(), free, "{inches}");
    }
}

/// From memory: a comparison turns round when both sides are multiplied by a number below zero.
#[test]
fn conditions_that_are_opposite_are_not_one() {
    use Comparison::{Equal, Greater, GreaterOrEqual, Less, NotEqual};
    let turned = Box::new(Expression::Negate(width()));
    let made = ruled_out_where(vec![
        Expression::Compare(Greater, width(), inches(36, 1)),
        Expression::Compare(Less, width(), inches(36, 1)),
        Expression::Compare(Greater, turned.clone(), inches(-36, 1)),
        Expression::Compare(GreaterOrEqual, width(), inches(36, 1)),
        Expression::Compare(Equal, turned, inches(-36, 1)),
        Expression::Compare(NotEqual, inches(36, 1), width()),
    ]);
    for (inches, ruled_out) in [(35, vec![1, 2, 5]), (36, vec![3, 4]), (37, vec![0, 3, 5])] {
        let site = site(&[Some(inches)]);
        let setting = made.setting(&site);
        let engine = engine(&setting);
        assert_eq!(engine.gate_count(), 5, "the second and the third are one");
        let options = &engine.options(&engine.prepare(&setting).unwrap(), &[])[0];
        let closed = options
            .iter()
            .enumerate()
            .filter(|(_, option)| option.certain.is_none());
        let closed: Vec<usize> = closed.map(|(at, _)| at).collect();
        assert_eq!(closed, ruled_out, "{inches}");
    }
}

#[test]
fn what_cancels_out_by_algebra_still_waits_for_its_measure() {
    use Comparison::{Equal, Less};
    let nothing = Box::new(Expression::Add(vec![*width(), Expression::Negate(width())]));
    let more = Box::new(Expression::Add(vec![*width(), *inches(1, 1)]));
    let made = ruled_out_where(vec![
        Expression::Compare(Equal, nothing, inches(0, 1)),
        Expression::Compare(Less, width(), more),
    ]);
    let site = site(&[None]);
    let setting = made.setting(&site);
    let engine = engine(&setting);
    let options = &engine.options(&engine.prepare(&setting).unwrap(), &[])[0];
    for option in &options[..2] {
        assert_eq!((option.possible, option.certain), (Some(0), None), "not known");
    }
}
