//! Catalogs at the edge: much closed at once, totals near the limit, long chains, long lists, a long table.
//!
//! Each right answer is worked out by hand, or by the closed formula that stands beside it.

#![expect(clippy::unwrap_used, clippy::indexing_slicing, reason = "these are tests")]

use std::collections::BTreeSet;
use std::sync::Arc;

use astragal_core::engine::{Certainty, Engine};
use astragal_core::limit::Limits;
use astragal_core::options::{Least, Picked};
use astragal_core::prepare::Prepared;
use astragal_model::{
    Amount, AttributeIndex, Authorities, Cell, Effect, Id, Requirement, Row, Rule, Subject, Table, Template,
    Value,
};
use num_bigint::BigUint;

use crate::plain::{Made, NARROW, Plain, Together, WIDE, site};

mod plain;

fn compiled(made: &Made) -> Engine {
    Engine::new(
        &made.catalog,
        None,
        &Authorities::default(),
        0,
        &Limits::default(),
    )
    .unwrap()
}

fn prepared(engine: &Engine, made: &Made, inches: i64) -> Prepared {
    engine.prepare(&made.setting(&site(&[Some(inches)]))).unwrap()
}

fn pick(attribute: usize, value: usize) -> Picked {
    Picked {
        attribute: AttributeIndex(attribute),
        value,
        pinned: false,
        honoured: false,
    }
}

fn least(changes: i64, cents: i64) -> Option<Least> {
    Some(Least { changes, cents })
}

/// A hub of two options and seven leaves of two; with the first option, a wide opening closes both options of five leaves.
#[test]
fn five_children_closed_at_once_close_what_is_above_them_and_nothing_else() {
    let mut plain = Plain::of(&[2; 8]);
    for leaf in 1..=5 {
        for option in 0..2 {
            plain
                .forbidden
                .push(Together::where_is(&[(0, 0), (leaf, option)], Some(WIDE)));
        }
    }
    for leaf in 1..8 {
        // So that each leaf hangs below the hub, whatever the size.
        plain.priced.push((Together::of(&[(0, 1), (leaf, 1)]), 100));
        plain.priced.push((Together::of(&[(0, 0), (leaf, 0)]), 10));
    }
    let made = plain.made();
    let engine = compiled(&made);
    let narrow = prepared(&engine, &made, 30);
    assert_eq!(engine.count(&narrow, Certainty::Certain), BigUint::from(256_u32));
    assert_eq!(engine.cheapest(&narrow, Certainty::Certain), Some(0));
    let wide = prepared(&engine, &made, 40);
    assert_eq!(engine.count(&wide, Certainty::Certain), BigUint::from(128_u32));
    assert_eq!(engine.cheapest(&wide, Certainty::Certain), Some(0));
    let picks: Vec<Picked> = (0..8).map(|attribute| pick(attribute, 0)).collect();
    let answers = engine.options(&wide, &picks);
    assert_eq!(answers[0][0].certain, None, "the hub's first option");
    assert_eq!(answers[0][0].possible, None, "the hub's first option");
    assert_eq!(
        answers[0][1].certain,
        least(0, 0),
        "the hub's own pick does not count"
    );
    for (leaf, of_leaf) in answers.iter().enumerate().skip(1) {
        assert_eq!(
            of_leaf[0].certain,
            least(1, 0),
            "leaf {leaf}: the hub must change"
        );
        assert_eq!(
            of_leaf[1].certain,
            least(1, 100),
            "leaf {leaf}: the hub, and 1.00"
        );
    }
    let answers = engine.options(&narrow, &picks);
    for (leaf, of_leaf) in answers.iter().enumerate().skip(1) {
        assert_eq!(of_leaf[0].certain, least(0, 70), "leaf {leaf}: seven times 0.10");
        assert_eq!(of_leaf[1].certain, least(0, 60), "leaf {leaf}: six times 0.10");
    }
}

/// Two items that both may be incurred; together they come to exactly one less than 2^39, or to 2^39.
#[test]
fn totals_up_to_the_limit_are_exact_and_one_more_is_refused() {
    const LIMIT: i64 = 1 << 39;
    for sign in [1, -1] {
        let with = |second: i64| {
            let mut plain = Plain::of(&[2, 2, 2]);
            plain.priced = vec![
                (Together::of(&[(0, 1)]), sign * (LIMIT - 1_000)),
                (Together::of(&[(1, 1)]), sign * second),
            ];
            plain.forbidden = vec![
                Together::of(&[(0, 0), (1, 0)]),
                Together::of(&[(0, 1), (1, 0)]),
                Together::of(&[(0, 0), (1, 1)]),
            ];
            plain.made()
        };
        let made = with(999);
        let engine = compiled(&made);
        let prepared = prepared(&engine, &made, 30);
        let total = sign * (LIMIT - 1);
        assert_eq!(engine.cheapest(&prepared, Certainty::Certain), Some(total));
        // All three picks must change; the amounts do not run into the changes.
        let picks = [pick(0, 0), pick(1, 0), pick(2, 0)];
        assert_eq!(engine.selection(&prepared, &picks).certain, least(2, total));
        let answers = engine.options(&prepared, &picks);
        assert_eq!(answers[2][1].certain, least(2, total), "the third is free");
        assert_eq!(answers[0][1].certain, least(1, total), "the second must change");
        assert_eq!(answers[0][0].certain, None);

        let made = with(1_000);
        let error = compiled(&made)
            .prepare(&made.setting(&site(&[Some(30)])))
            .unwrap_err();
        assert!(error.to_string().contains("549755813888 minor units"), "{error}");
    }
}

/// An amount that no i64 holds closes nothing silently: the question is refused.
#[test]
fn an_amount_that_cannot_be_counted_is_refused() {
    let mut plain = Plain::of(&[2]);
    plain.priced = vec![(Together::of(&[(0, 1)]), 100)];
    let mut made = plain.made();
    let huge = &astragal_model::Number::from(i64::MAX) * &astragal_model::Number::from(1_000);
    made.book.amounts.insert(Id::new("p0"), Amount::Money(huge));
    let engine = compiled(&made);
    assert!(engine.prepare(&made.setting(&site(&[Some(30)]))).is_err());
}

/// Twenty discounts, each on one option of twenty attributes; neighbours may not both have theirs.
#[test]
fn amounts_below_zero_are_taken_as_far_as_the_rules_go() {
    const COUNT: usize = 20;
    let mut plain = Plain::of(&[2; COUNT]);
    for at in 0..COUNT {
        plain
            .priced
            .push((Together::of(&[(at, 1)]), -100 - i64::try_from(at % 2).unwrap()));
    }
    for at in 1..COUNT {
        plain.forbidden.push(Together::of(&[(at - 1, 1), (at, 1)]));
    }
    let made = plain.made();
    let engine = compiled(&made);
    let prepared = prepared(&engine, &made, 30);
    // Without two ones in a row: Fibonacci, F(22) = 17711. Best: every odd place, ten times 1.01.
    assert_eq!(
        engine.count(&prepared, Certainty::Certain),
        BigUint::from(17_711_u32)
    );
    assert_eq!(engine.cheapest(&prepared, Certainty::Certain), Some(-1_010));
    // The first discount costs the second one: 1.00 instead of 1.01.
    let answers = engine.options(&prepared, &[]);
    assert_eq!(answers[0][1].certain, least(0, -1_009));
    assert_eq!(answers[1][0].certain, least(0, -1_009));
    // Without the last, ten fit only at the even places.
    assert_eq!(answers[19][0].certain, least(0, -1_000));
    assert_eq!(answers[18][1].certain, least(0, -1_000));
}

/// Five hundred attributes, each of which must be what the one before is, unless the opening is wide.
#[test]
fn five_hundred_attributes_in_one_chain() {
    const COUNT: usize = 500;
    let mut plain = Plain::of(&[3; COUNT]);
    for at in 1..COUNT {
        for option in 0..3 {
            for other in (0..3).filter(|other| *other != option) {
                plain
                    .forbidden
                    .push(Together::where_is(&[(at - 1, option), (at, other)], Some(NARROW)));
            }
        }
        plain.priced.push((Together::of(&[(at, 2)]), -3));
    }
    plain.priced.push((Together::of(&[(0, 2)]), 7));
    let made = plain.made();
    let engine = compiled(&made);
    let narrow = prepared(&engine, &made, 30);
    assert_eq!(engine.count(&narrow, Certainty::Certain), BigUint::from(3_u32));
    assert_eq!(engine.cheapest(&narrow, Certainty::Certain), Some(7 - 3 * 499));
    // Picked: the first option everywhere but at the end, where it is the second.
    let mut picks: Vec<Picked> = (0..COUNT).map(|at| pick(at, 0)).collect();
    picks[COUNT - 1] = pick(COUNT - 1, 1);
    assert_eq!(engine.selection(&narrow, &picks).certain, least(1, 0));
    let answers = engine.options(&narrow, &picks);
    assert_eq!(answers[250][0].certain, least(1, 0), "the last must change");
    assert_eq!(
        answers[250][1].certain,
        least(498, 0),
        "all but itself and the last"
    );
    assert_eq!(answers[250][2].certain, least(499, 7 - 3 * 499), "all but itself");
    let wide = prepared(&engine, &made, 40);
    assert_eq!(
        engine.count(&wide, Certainty::Certain),
        BigUint::from(3_u32).pow(500)
    );
    assert_eq!(engine.cheapest(&wide, Certainty::Certain), Some(-3 * 499));
}

/// One attribute with 4,096 options beside one with two: the first half goes with one, the second half with the other.
#[test]
fn an_attribute_with_4_096_options() {
    const COUNT: usize = 4_096;
    let mut declared = Plain::of(&[COUNT, 2]).made().catalog.declarations().clone();
    let some = |from: usize, to: usize| one_of((from..to).map(|at| format!("o{at}")));
    let halves = [
        vec![some(0, COUNT / 2), some(0, 1)],
        vec![some(COUNT / 2, COUNT), some(1, 2)],
    ];
    declared.rules = vec![allowed("halves", &[0, 1], halves.into_iter().map(row).collect())];
    let made = Plain::of(&[COUNT, 2]).made().with(declared);
    let engine = compiled(&made);
    let prepared = prepared(&engine, &made, 30);
    assert_eq!(
        engine.count(&prepared, Certainty::Certain),
        BigUint::from(4_096_u32)
    );
    assert!(
        engine.diagram().edge_count() <= 4,
        "{}",
        engine.diagram().edge_count()
    );
    let answers = engine.options(&prepared, &[pick(1, 0)]);
    for (option, answer) in answers[0].iter().enumerate() {
        let changes = i64::from(option >= COUNT / 2);
        assert_eq!(answer.certain, least(changes, 0), "option {option}");
    }
}

/// Twelve attributes of ten options, and 100,000 rows: five digits free, the others follow from them.
#[test]
fn a_rule_over_twelve_attributes_with_100_000_rows() {
    let follows = |number: usize| -> [usize; 12] {
        let digit = |at: u32| number / 10_usize.pow(at) % 10;
        let [a, b, c, d, e] = [digit(0), digit(1), digit(2), digit(3), digit(4)];
        let sum = a + b + c + d + e;
        [
            a,
            b,
            c,
            d,
            e,
            (a + b) % 10,
            (b + c) % 10,
            (c + d) % 10,
            (d + e) % 10,
            sum % 10,
            (3 * a + e) % 10,
            (7 * b + d) % 10,
        ]
    };
    let digits: Vec<Cell> = (0..10).map(|digit| one_of([format!("o{digit}")])).collect();
    let rows = (0..100_000).map(|number| row(follows(number).map(|digit| digits[digit].clone()).to_vec()));
    let columns: Vec<usize> = (0..12).collect();
    let mut plain = Plain::of(&[10; 12]);
    // The sum of the five digits ends in 9: 1.00 back. All five are 9: 5.00.
    plain.priced = vec![
        (Together::of(&[(9, 9)]), -100),
        (Together::of(&[(0, 9), (1, 9), (2, 9), (3, 9), (4, 9)]), 500),
    ];
    let made = plain.made();
    let mut declared = made.catalog.declarations().clone();
    declared.rules = vec![allowed("long", &columns, rows.collect())];
    let made = made.with(declared);
    let engine = compiled(&made);
    let prepared = prepared(&engine, &made, 30);
    assert_eq!(
        engine.count(&prepared, Certainty::Certain),
        BigUint::from(100_000_u32)
    );
    assert_eq!(engine.cheapest(&prepared, Certainty::Certain), Some(-100));
    // 45 ends in 5 and not in 9: five nines cost 5.00. Then the sixth digit is 8, the tenth 5.
    let mut picks: Vec<Picked> = (0..5).map(|at| pick(at, 9)).collect();
    assert_eq!(engine.selection(&prepared, &picks).certain, least(0, 500));
    // The first or the second becomes an 8: the sixth is 7 then, and the sum ends in 4.
    picks.push(pick(5, 7));
    assert_eq!(engine.selection(&prepared, &picks).certain, least(1, 0));
    let answers = engine.options(&prepared, &picks[..5]);
    for (digit, answer) in answers[5].iter().enumerate() {
        let expected = if digit == 8 { least(0, 500) } else { None };
        let free = answer.certain.filter(|least| least.changes == 0);
        assert_eq!(free, expected, "sixth digit {digit}");
    }
}

fn one_of(options: impl IntoIterator<Item = String>) -> Cell {
    let values = options.into_iter().map(|option| Value::Option(Id::new(&option)));
    Cell::OneOf(Arc::new(values.collect::<BTreeSet<_>>()))
}

fn row(cells: Vec<Cell>) -> Row {
    Row { cells, value: None }
}

fn allowed(id: &str, columns: &[usize], rows: Vec<Row>) -> Rule {
    let columns = columns.iter().map(|at| Subject::Attribute(AttributeIndex(*at)));
    Rule {
        id: Id::new(id),
        part: None,
        authority: Id::new("plant"),
        effect: Effect::Block,
        when: None,
        requirement: Requirement::Allowed(Table {
            columns: columns.collect(),
            rows: Arc::new(rows),
        }),
        message: Template::text("these do not go together"),
        basis: None,
        waivable: false,
    }
}
