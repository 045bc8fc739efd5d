//! Rows that meet: against comparing every pair, and fast enough for the longest sheets.

use std::collections::BTreeSet;
use std::time::{Duration, Instant};

use astragal_model::{Id, LowerEnd, Number};
use proptest::prelude::*;
use proptest::strategy::ValueTree;

use super::*;

fn number(value: i64) -> Value {
    Value::Number(Number::from(value))
}

fn option(id: usize) -> Value {
    Value::Option(Id::new(&format!("o{id}")))
}

/// A column with every row's cell as a distinct one.
fn column(rows: &[Cell]) -> KeyColumn {
    KeyColumn {
        cells: rows.to_vec(),
        rows: (0..rows.len()).map(row_number).collect(),
    }
}

/// A column whose rows have one cell out of few.
fn plain_column(count: usize, of_row: impl Fn(usize) -> usize, values: usize) -> KeyColumn {
    KeyColumn {
        cells: (0..values)
            .map(|value| Cell::OneOf(BTreeSet::from([option(value)]).into()))
            .collect(),
        rows: (0..count).map(|row| row_number(of_row(row))).collect(),
    }
}

fn cell() -> impl Strategy<Value = Cell> {
    let end = || 0..6_i64;
    let interval =
        (end(), end(), any::<bool>(), any::<bool>(), any::<bool>()).prop_map(|(a, b, open, low, high)| {
            let (a, b) = (a.min(b), a.max(b));
            Interval {
                lower: (low || !high).then(|| LowerEnd {
                    value: number(a),
                    open: open && a < b,
                }),
                upper: high.then(|| number(b)),
            }
        });
    prop_oneof![
        1 => Just(Cell::Any),
        3 => proptest::collection::btree_set(end().prop_map(number), 1..3).prop_map(|values| Cell::OneOf(values.into())),
        3 => interval.prop_map(|interval| Cell::Within(vec![interval])),
    ]
}

/// Whether a value passes both cells, tried at every end and between all ends.
fn meet_obviously(a: &Cell, b: &Cell) -> bool {
    let halves = (-2..14_i64).map(|half| Value::Number(Number::ratio(half, 2).unwrap()));
    halves
        .into_iter()
        .any(|value| a.admits(&value) && b.admits(&value))
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(3000))]

    /// Every row is reported with the earliest row that it meets, as comparing all pairs says.
    #[test]
    fn rows_meet_exactly_when_a_value_passes_both(
        rows in proptest::collection::vec((cell(), cell(), cell(), 0..3_u32), 0..24),
        labelled in any::<bool>(),
    ) {
        let columns = [
            column(&rows.iter().map(|row| row.0.clone()).collect::<Vec<_>>()),
            column(&rows.iter().map(|row| row.1.clone()).collect::<Vec<_>>()),
            column(&rows.iter().map(|row| row.2.clone()).collect::<Vec<_>>()),
        ];
        let labels: Vec<u32> = rows.iter().map(|row| row.3).collect();
        let labels = labelled.then_some(labels);
        let found = meetings(&columns, labels.as_deref(), WORK_LIMIT);
        prop_assert!(found.complete);
        let obvious = |b: usize| {
            (0..b).find(|a| {
                let differ = labels.as_ref().is_none_or(|labels| labels[*a] != labels[b]);
                let (a, b) = (&rows[*a], &rows[b]);
                differ && meet_obviously(&a.0, &b.0) && meet_obviously(&a.1, &b.1) && meet_obviously(&a.2, &b.2)
            })
        };
        let expected: BTreeMap<u32, u32> = (0..rows.len())
            .filter_map(|b| Some((row_number(b), row_number(obvious(b)?))))
            .collect();
        prop_assert_eq!(found.earlier, expected);
    }

    /// The value that is named passes both cells, and there is one exactly when the cells meet.
    #[test]
    fn the_point_where_cells_meet_passes_both((a, b) in (cell(), cell())) {
        match meeting_point(&a, &b) {
            None => prop_assert!(!meet_obviously(&a, &b)),
            Some(MeetingPoint::Anywhere) => prop_assert!(meet_obviously(&a, &b)),
            Some(MeetingPoint::At(value)) => prop_assert!(a.admits(&value) && b.admits(&value)),
            Some(MeetingPoint::Above(value)) => {
                let above = value.magnitude().cloned().unwrap_or_default() + Number::ONE;
                prop_assert!(a.admits(&Value::Number(above.clone())) && b.admits(&Value::Number(above)));
            }
        }
    }
}

/// The random rows above must not all be of one kind.
#[test]
fn random_rows_meet_and_do_not_meet() {
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    let mut met = [0_usize; 2];
    for _ in 0..1000 {
        let (a, b) = (cell(), cell()).new_tree(&mut runner).unwrap().current();
        met[usize::from(meet_obviously(&a, &b))] += 1;
    }
    assert!(met[0] > 200 && met[1] > 200, "{met:?}");
}

#[test]
fn repetitions_name_the_first_of_a_kind() {
    let columns = [
        plain_column(6, |row| [0, 1, 0, 1, 0, 1][row], 2),
        plain_column(6, |row| [0, 0, 0, 1, 0, 0][row], 2),
    ];
    assert_eq!(repetitions(&columns), BTreeMap::from([(2, 0), (4, 0), (5, 1)]));
    assert_eq!(repetitions(&[]), BTreeMap::new());
}

/// A million rows over four columns, one pair of which is the same, far from each other.
#[test]
fn a_million_plain_rows_are_compared_quickly() {
    let count = 1_000_000;
    let digit = |row: usize, place: usize| row / 32_usize.pow(u32::try_from(place).unwrap()) % 32;
    let row_of = |row: usize| if row == count - 1 { 17 } else { row };
    let columns: Vec<KeyColumn> = (0..4)
        .map(|place| plain_column(count, |row| digit(row_of(row), place), 32))
        .collect();
    let start = Instant::now();
    let found = meetings(&columns, None, WORK_LIMIT);
    let repeated = repetitions(&columns);
    assert!(found.complete);
    assert_eq!(found.earlier, BTreeMap::from([(row_number(count - 1), 17)]));
    assert_eq!(repeated, found.earlier);
    // Generous: debug builds on a busy machine. Comparing all pairs would take hours.
    assert!(start.elapsed() < Duration::from_secs(60), "{:?}", start.elapsed());
}

/// Brackets by width and height, as a price or weight table has them.
#[test]
fn a_grid_of_brackets_does_not_meet() {
    let bracket = |at: i64| {
        Cell::Within(vec![Interval {
            lower: Some(LowerEnd {
                value: number(at),
                open: true,
            }),
            upper: Some(number(at + 1)),
        }])
    };
    let side = 300_i64;
    let (mut wide, mut high) = (Vec::new(), Vec::new());
    for at in 0..side * side {
        wide.push(row_number(usize::try_from(at / side).unwrap()));
        high.push(row_number(usize::try_from(at % side).unwrap()));
    }
    let cells: Vec<Cell> = (0..side).map(bracket).collect();
    let columns = [
        KeyColumn {
            cells: cells.clone(),
            rows: wide,
        },
        KeyColumn { cells, rows: high },
    ];
    let found = meetings(&columns, None, WORK_LIMIT);
    assert!(found.complete && found.earlier.is_empty());
}

/// Row k asks for one value in column k alone: every two rows meet, and each column leaves nearly all of them together.
#[test]
fn entangled_rows_stop_at_the_limit() {
    let count = 60;
    let columns: Vec<KeyColumn> = (0..count)
        .map(|at| {
            let cells = (0..count).map(|row| {
                if row == at {
                    Cell::OneOf(BTreeSet::from([number(0)]).into())
                } else if row % 2 == 0 {
                    Cell::OneOf(BTreeSet::from([number(0), number(1)]).into())
                } else {
                    Cell::OneOf(BTreeSet::from([number(1), number(2), number(3)]).into())
                }
            });
            column(&cells.collect::<Vec<_>>())
        })
        .collect();
    let limited = meetings(&columns, None, 2_000);
    assert!(!limited.complete);
    // What was found so far are rows that meet, though perhaps not with the earliest.
    for (row, earlier) in limited.earlier {
        let meets =
            |column: &KeyColumn| meet_obviously(column.cell(row).unwrap(), column.cell(earlier).unwrap());
        assert!(columns.iter().all(meets), "{row} and {earlier}");
    }
}

#[test]
fn tangled_rows_stop_early_once_more_meet_than_are_reported() {
    let mut search = Search {
        columns: Vec::new(),
        labels: None,
        earlier: (1..=50).map(|row| (row, 0)).collect(),
        work: STEPS_BEFORE_ENOUGH + 1,
        work_limit: WORK_LIMIT,
    };
    assert!(search.is_over());
    search.earlier.pop_last();
    assert!(!search.is_over());
    search.earlier.insert(50, 0);
    search.work = STEPS_BEFORE_ENOUGH;
    assert!(!search.is_over(), "a cheap search counts every meeting");
}
