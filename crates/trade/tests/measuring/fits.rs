//! Whether the upright rectangle fits in the opening that was measured: openings are drawn by their corners, read with an
//! exact tape, and the corners of the answer must lie inside.

use astragal_exact::Number;
use astragal_trade::Fact;
use astragal_trade::interval::square_root;
use astragal_trade::measuring::{Finding, Measured, Readings, measure};
use proptest::prelude::*;

/// An opening by its straight sides: bottom (w, s), left jamb (e, h), and by how much the right jamb leans more.
#[derive(Clone, Debug)]
struct Opening {
    w: Number,
    h: Number,
    lean: Number,
    slope: Number,
}

fn number(sixteenths: i64) -> Number {
    Number::ratio(sixteenths, 16).unwrap()
}

/// Diagonals of such openings are no fractions; they are read to 20 places, which moves a size by less than this.
fn hair() -> Number {
    Number::from_decimal("1e-12").unwrap()
}

fn length(x: &Number, y: &Number) -> Number {
    square_root(&(x * x + y * y)).unwrap().low().clone()
}

impl Opening {
    fn area(&self) -> Number {
        &self.w * &self.h - &self.slope * &self.lean
    }

    /// The chords that a level and a plumb tape read.
    fn chords(&self) -> (Number, Number) {
        (
            self.area().checked_div(&self.h).unwrap(),
            self.area().checked_div(&self.w).unwrap(),
        )
    }

    fn read(&self, plumb: bool, level: bool) -> Readings {
        let (width, height) = self.chords();
        Readings {
            widths: [(); 3].map(|()| Some(width.clone())),
            heights: [(); 3].map(|()| Some(height.clone())),
            diagonals: [
                Some(length(&(&self.w + &self.lean), &(&self.h + &self.slope))),
                Some(length(&(&self.w - &self.lean), &(&self.h - &self.slope))),
            ],
            out_of_plumb: plumb.then(|| self.lean.abs()),
            out_of_level: level.then(|| self.slope.abs()),
            pocket_depth: None,
        }
    }

    /// Whether an upright rectangle lies in both strips of the parallelogram.
    fn has(&self, measured: &Measured) -> bool {
        let size = measured.upright.as_ref().unwrap();
        let (x, y) = (&size.width - hair(), &size.height - hair());
        let across = &self.h * &x + self.lean.abs() * &y;
        let along = &self.w * &y + self.slope.abs() * &x;
        across <= self.area() && along <= self.area()
    }
}

fn opening() -> impl Strategy<Value = Opening> {
    (16 * 16..72_i64 * 16, 16 * 16..96_i64 * 16, -8..=8_i64, -8..=8_i64).prop_map(|(w, h, lean, slope)| {
        Opening {
            w: number(w),
            h: number(h),
            lean: number(lean),
            slope: number(slope),
        }
    })
}

/// Lean 1/4, slope 0.3 the other way: the diagonals differ by 0.257, and the jambs explain all of it.
#[test]
fn lean_and_slope_against_each_other_are_not_told_by_one_level() {
    let against = |lean: i64, slope: i64| Opening {
        w: Number::from(36),
        h: Number::from(60),
        lean: Number::ratio(lean, 20).unwrap(),
        slope: Number::ratio(slope, 20).unwrap(),
    };
    let rows = [
        (
            "jambs read, slope against",
            against(5, -6),
            (true, false),
            Some(Fact::OutOfLevel),
        ),
        (
            "sill read, lean against",
            against(-10, 3),
            (false, true),
            Some(Fact::OutOfPlumb),
        ),
        ("jambs read true", against(0, -6), (true, false), None),
        ("sill read true", against(5, 0), (false, true), None),
        ("both read", against(5, -6), (true, true), None),
    ];
    for (name, opening, (plumb, level), asked) in rows {
        let measured = measure(&opening.read(plumb, level)).unwrap();
        let found: Vec<Fact> = measured
            .findings
            .iter()
            .filter_map(|finding| match finding {
                Finding::OneLevel(fact) => Some(*fact),
                _ => None,
            })
            .collect();
        assert_eq!(found, asked.into_iter().collect::<Vec<_>>(), "{name}");
        assert_eq!(opening.has(&measured), asked.is_none(), "{name}");
        if let Some(fact) = asked {
            let taken = if fact == Fact::OutOfLevel {
                &measured.slope
            } else {
                &measured.lean
            };
            let hundredth = Number::ratio(1, 100).unwrap();
            assert!(*taken < hundredth, "{name}: {taken}");
        }
    }
    let [first, second] = against(5, -6).read(true, false).diagonals.map(Option::unwrap);
    assert_eq!((first - second).abs().to_fixed(3), "0.257");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(2000))]

    /// No assumption: a level was held to both.
    #[test]
    fn with_a_level_on_both_it_fits_however_the_opening_stands(opening in opening()) {
        let measured = measure(&opening.read(true, true)).unwrap();
        prop_assert!(opening.has(&measured), "{:?}", measured);
        prop_assert!(measured.findings.iter().all(|finding| finding.id() != "level_against_diagonals"));
        prop_assert_eq!(measured.lean, opening.lean.abs());
        prop_assert_eq!(measured.slope, opening.slope.abs());
    }

    /// Lean and slope lengthen the same diagonal, or one of them is nothing.
    #[test]
    fn without_a_level_it_fits_when_both_work_the_same_way(opening in opening(), plumb: bool, level: bool) {
        let slope = if opening.lean.is_negative() { -opening.slope.abs() } else { opening.slope.abs() };
        let opening = Opening { slope, ..opening };
        for (plumb, level) in [(false, false), (plumb, level)] {
            let measured = measure(&opening.read(plumb, level)).unwrap();
            prop_assert!(opening.has(&measured), "{:?}", measured);
        }
    }

    /// A level on one side alone: it fits, or a finding says that it may not, and which level to hold.
    #[test]
    fn with_one_level_it_fits_or_the_other_one_is_asked_for(opening in opening(), plumb: bool) {
        let measured = measure(&opening.read(plumb, !plumb)).unwrap();
        let asked = Finding::OneLevel(if plumb { Fact::OutOfLevel } else { Fact::OutOfPlumb });
        prop_assert!(opening.has(&measured) || measured.findings.contains(&asked), "{:?}", measured);
        let read = if plumb { &opening.lean } else { &opening.slope };
        prop_assert!(!read.is_zero() || !measured.findings.contains(&asked), "{:?}", measured);
    }

    /// Where only one pair stands askew the answer is what it leans, to a hair: nothing is given away.
    #[test]
    fn a_lean_alone_is_found_from_the_diagonals(opening in opening()) {
        let leaning = Opening { slope: Number::ZERO, ..opening.clone() };
        let measured = measure(&leaning.read(false, false)).unwrap();
        prop_assert!((measured.lean - leaning.lean.abs()).abs() < hair());
        let sloping = Opening { lean: Number::ZERO, ..opening };
        let measured = measure(&sloping.read(false, false)).unwrap();
        prop_assert!((measured.slope - sloping.slope.abs()).abs() < hair());
    }

    /// With a level head and sill, no upright rectangle of less height has a larger area.
    #[test]
    fn no_lower_rectangle_is_larger(opening in opening(), share in 1_i64..100) {
        let leaning = Opening { slope: Number::ZERO, ..opening };
        let full = measure(&leaning.read(true, true)).unwrap().upright.unwrap();
        let share = Number::ratio(share, 100).unwrap();
        let lower = &leaning.h * &share;
        let widest = &leaning.w - &(leaning.lean.abs() * &share);
        prop_assert!(widest * lower <= full.area());
    }

    /// The header promises it: jambs straight but not parallel. The bottom width is `w`, the left jamb leans by `lean`, the right
    /// by `other`; head and sill are level.
    #[test]
    fn jambs_that_are_not_parallel_are_no_reason_to_give_more(opening in opening(), other in -16..=16_i64) {
        let (w, h, left, right) = (&opening.w, &opening.h, &opening.lean, &number(other));
        let top = w + right - left;
        let half = Number::ratio(1, 2).unwrap();
        let middle = (w + &top) * half;
        let readings = Readings {
            widths: [Some(top), Some(middle), Some(w.clone())],
            heights: [(); 3].map(|()| Some(h.clone())),
            diagonals: [Some(length(&(w + right), h)), Some(length(&(w - left), h))],
            ..Readings::default()
        };
        let size = measure(&readings).unwrap().upright.unwrap();
        let zero = Number::ZERO;
        let from = left.clone().max(zero);
        let to = w.clone().min(w + right);
        prop_assert!(size.width <= to - from + hair());
        prop_assert!(size.height <= *h);
    }

    /// The tape is right to 1/8: readings rounded to the nearest eighth are never refused.
    #[test]
    fn honest_readings_are_never_refused(opening in opening(), plumb: bool, level: bool) {
        let eighth = Number::ratio(1, 8).unwrap();
        let near = |reading: Option<Number>| reading.map(|reading| reading.round_to(&eighth).unwrap());
        let exact = opening.read(plumb, level);
        let read = Readings {
            widths: exact.widths.map(near),
            heights: exact.heights.map(near),
            diagonals: exact.diagonals.map(near),
            out_of_plumb: near(exact.out_of_plumb),
            out_of_level: near(exact.out_of_level),
            pocket_depth: None,
        };
        prop_assert!(measure(&read).is_ok(), "{:?}", measure(&read));
    }

    /// Every answer is above nothing and at most the smallest reading, and no input panics.
    #[test]
    fn whatever_is_read_the_answer_is_at_most_the_smallest_reading(
        readings in prop::array::uniform10(prop::option::of(-8..1200_i64))
    ) {
        let [a, b, c, d, e, f, g, h, i, j] = readings.map(|reading| reading.map(number));
        let readings = Readings {
            widths: [a, b, c],
            heights: [d, e, f],
            diagonals: [g, h],
            out_of_plumb: i,
            out_of_level: j,
            pocket_depth: None,
        };
        if let Ok(Measured { upright: Some(size), width: Some(width), height: Some(height), .. }) = measure(&readings) {
            prop_assert!(size.width.is_positive() && size.width <= width.smallest);
            prop_assert!(size.height.is_positive() && size.height <= height.smallest);
        }
    }
}
