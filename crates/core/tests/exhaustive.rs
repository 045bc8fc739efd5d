//! All small catalogs of three shapes, every selection of each, against judging every configuration.
//!
//! Two attributes or three, of two or three options. Every set of pairs that do not go together; every way to guard a pair by
//! a size, in either sense; every way in which a small attribute is asked or not; a negative amount for a pair.

#![expect(clippy::unwrap_used, clippy::indexing_slicing, reason = "these are tests")]

use astragal_core::engine::Engine;
use astragal_core::limit::Limits;
use astragal_model::Origin;

use crate::compared::{Compared, Met, selections};
use crate::judged::judged;
use crate::plain::{NARROW, Plain, Together, WIDE, site};

mod compared;
mod judged;
mod plain;

/// Compares one catalog at every size and with every selection.
fn compare(plain: &Plain, sizes: &[Option<i64>], place: &str, met: &mut Met) {
    let made = plain.made();
    let options: Vec<usize> = plain.attributes.iter().map(|one| one.options.len()).collect();
    let selections = selections(&options);
    let authorities = Default::default();
    let engine = Engine::new(&made.catalog, None, &authorities, 0, &Limits::default()).unwrap();
    met.meet("catalogs");
    for size in sizes {
        let site = site(&[*size]);
        let setting = made.setting(&site);
        let prepared = engine.prepare(&setting).unwrap();
        let all = judged(&setting, &|_, _| Origin::Standard).unwrap();
        let place = format!("{place}, {size:?}");
        let compared = Compared::new(&engine, &prepared, &all, &place, met);
        for picks in &selections {
            compared.picks(picks, &place, met);
        }
    }
}

/// The pairs of options of these two attributes.
fn pairs(one: (usize, usize), other: (usize, usize)) -> Vec<[(usize, usize); 2]> {
    let with = |first| (0..other.1).map(move |second| [(one.0, first), (other.0, second)]);
    (0..one.1).flat_map(with).collect()
}

#[test]
fn every_set_of_forbidden_pairs_of_three_attributes() {
    let mut met = Met::default();
    let all: Vec<_> = [
        pairs((0, 2), (1, 2)),
        pairs((0, 2), (2, 2)),
        pairs((1, 2), (2, 2)),
    ]
    .concat();
    for set in 0..1_u32 << all.len() {
        let mut plain = Plain::of(&[2, 2, 2]);
        let chosen = (0..all.len()).filter(|at| set >> at & 1 == 1);
        plain.forbidden = chosen.map(|at| Together::of(&all[at])).collect();
        plain.priced = vec![
            (Together::of(&[(0, 1), (1, 1)]), -500),
            (Together::of(&[(0, 0)]), 300),
            (Together::of(&[(2, 1)]), 100),
        ];
        compare(&plain, &[Some(30)], &format!("set {set:b}"), &mut met);
    }
    met.at_least(&[
        ("catalogs", 4_096),
        ("selections", 4_096 * 27),
        ("unsatisfiable", 1),
        ("unique", 1),
        ("two changes or more", 1),
        ("a total below zero", 1),
        ("cheapest ties", 1),
    ]);
}

#[test]
fn every_way_to_forbid_or_guard_the_pairs_of_two_attributes() {
    let mut met = Met::default();
    let all = pairs((0, 2), (1, 3));
    for code in 0..4_usize.pow(6) {
        let mut plain = Plain::of(&[2, 3]);
        for (at, pair) in all.iter().enumerate() {
            let gate = match code >> (2 * at) & 3 {
                0 => continue,
                1 => None,
                2 => Some(WIDE),
                _ => Some(NARROW),
            };
            plain.forbidden.push(Together::where_is(pair, gate));
        }
        plain.priced = vec![
            (Together::where_is(&[(0, 1), (1, 2)], Some(WIDE)), -700),
            (Together::of(&[(1, 0)]), 200),
            (Together::where_is(&[(0, 0)], Some(NARROW)), 50),
        ];
        let sizes = [Some(40), Some(36), None];
        compare(&plain, &sizes, &format!("code {code}"), &mut met);
    }
    met.at_least(&[
        ("catalogs", 4_096),
        ("selections", 4_096 * 3 * 12),
        ("something unknown", 1_000),
        ("unsatisfiable", 1),
        ("unique", 1),
        ("a total below zero", 1),
        ("cheapest ties", 1),
    ]);
}

/// The last of three attributes is asked by an option, by a size in either sense, or by both.
#[test]
fn every_set_of_forbidden_pairs_around_an_attribute_that_is_not_always_asked() {
    let mut met = Met::default();
    let conditions = [
        Together::of(&[(0, 1)]),
        Together::where_is(&[], Some(WIDE)),
        Together::where_is(&[], Some(NARROW)),
        Together::where_is(&[(0, 1)], Some(WIDE)),
        Together::where_is(&[(1, 0)], Some(NARROW)),
        Together::where_is(&[(0, 1), (1, 1)], Some(WIDE)),
    ];
    let all: Vec<_> = [pairs((0, 2), (2, 2)), pairs((1, 2), (2, 2))].concat();
    for (number, condition) in conditions.iter().enumerate() {
        for set in 0..1_u32 << all.len() {
            for guarded in [WIDE, NARROW] {
                let mut plain = Plain::of(&[2, 2, 2]);
                plain.attributes[2].applies = Some(condition.clone());
                let chosen = (0..all.len()).filter(|at| set >> at & 1 == 1);
                plain.forbidden = chosen.map(|at| Together::of(&all[at])).collect();
                plain
                    .forbidden
                    .push(Together::where_is(&[(0, 0), (1, 1)], Some(guarded)));
                plain.priced = vec![
                    (Together::of(&[(1, 1), (2, 0)]), -900),
                    (Together::of(&[(2, 1)]), 250),
                    (Together::of(&[(0, 1)]), 400),
                ];
                let sizes = [Some(40), Some(36), None];
                let place = format!("condition {number}, set {set:b}, {guarded:?}");
                compare(&plain, &sizes, &place, &mut met);
            }
        }
    }
    met.at_least(&[
        ("catalogs", 6 * 256 * 2),
        ("selections", 6 * 256 * 2 * 3 * 27),
        ("something unknown", 500),
        ("two changes or more", 1_000),
        ("a total below zero", 1),
        ("cheapest ties", 1),
    ]);
}
