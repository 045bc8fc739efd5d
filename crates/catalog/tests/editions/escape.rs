//! Escape openings: each rule of each file against the requirement of the crate that it is about.
//!
//! The files do not ask for everything that the crate asks for. In the comparison the opening opens without keys, and of a window well
//! the files ask one thing: whether it is large enough. [`crate::escape_differences`] shows each such fact apart.

use std::collections::BTreeMap;

use astragal_model::{Number, Value};
use astragal_trade::building_code::Edition;
use astragal_trade::escape::{self, Answer, Excuse, Existing, Requirement, Well};
use astragal_trade::{Fact, Truth};

use crate::case::{Case, around, number};
use crate::code_file::{CodeFile, building_codes};
use crate::falls::Opens;
use crate::random::Random;
use crate::said::{Said, truth};

/// What is known of an opening and of the window that stands there now.
#[derive(Clone, Debug)]
pub(crate) struct WayOut {
    pub(crate) serves: Option<bool>,
    pub(crate) width: Option<Number>,
    pub(crate) height: Option<Number>,
    pub(crate) bottom: Option<Number>,
    pub(crate) sill: Option<Number>,
    /// Whether a window well before it is large enough.
    pub(crate) well: Option<bool>,
    pub(crate) opens: Opens,
    pub(crate) largest: Option<bool>,
    pub(crate) existing_operation: Option<&'static str>,
    pub(crate) existing_square_feet: Option<Number>,
    pub(crate) occupancy: Option<bool>,
}

impl WayOut {
    /// 20 x 41 1/16 in, the bottom at 44 in, upstairs, a casement without a device, nothing excused: it has just what is asked.
    pub(crate) fn just_enough() -> WayOut {
        WayOut {
            serves: Some(true),
            width: Some(number("20")),
            height: Some(number("41 1/16")),
            bottom: Some(number("44")),
            sill: Some(number("120")),
            well: Some(true),
            opens: Opens::With("none", astragal_trade::control_device::Device::Nothing),
            largest: Some(false),
            existing_operation: Some("casement"),
            existing_square_feet: Some(number("4")),
            occupancy: Some(false),
        }
    }

    pub(crate) fn case(&self) -> Case {
        let case = Case::default()
            .truth("serves_as_escape", self.serves)
            .length("clear_width", self.width.as_ref())
            .length("clear_height", self.height.as_ref())
            .length("bottom_of_clear_opening", self.bottom.as_ref())
            .length("sill_above_grade", self.sill.as_ref())
            .truth("window_well_enough", self.well)
            .truth("largest_standard_size_fits", self.largest)
            .option("existing_operation", self.existing_operation)
            .number("existing_clear_square_feet", self.existing_square_feet.as_ref())
            .truth("change_of_occupancy", self.occupancy);
        self.opens.choose(case)
    }

    /// The same for the crate, with what the files do not ask for taken as it should be.
    pub(crate) fn opening(&self) -> escape::Opening {
        let operation = match self.opens {
            Opens::NotChosen => None,
            Opens::Never => Some("fixed"),
            Opens::DeviceNotChosen | Opens::With(..) => Some("casement"),
        };
        let same = self.existing_operation.zip(operation).map(|(was, is)| was == is);
        let square_feet = self.existing_square_feet.as_ref();
        escape::Opening {
            clear_width: self.width.clone().map(Into::into),
            clear_height: self.height.clone().map(Into::into),
            bottom: self.bottom.clone(),
            sill_above_grade: self.sill.clone(),
            device: self.opens.device(),
            opens_without_keys: Some(true),
            well: self.well.map_or_else(Well::default, |is_enough| Well {
                area: Some(number(if is_enough { "1296" } else { "1295 15/16" })),
                projection: Some(number("36")),
                width: Some(number("36")),
                depth: Some(number("44")),
                ladder: Some(false),
            }),
            existing: Some(Existing {
                largest_standard_size_fits: self.largest,
                same_operation: same,
                clear_area: square_feet.map(|feet| feet * &number("144")),
                change_of_occupancy: self.occupancy,
            }),
            ..escape::Opening::default()
        }
    }

    /// The crate counts the smaller area below the ground as well, by the IRC; the files do at a grade floor alone. See
    /// [`crate::escape_differences`].
    pub(crate) fn is_far_below_the_ground(&self) -> bool {
        self.sill.as_ref().is_some_and(|sill| *sill < number("-44"))
    }

    /// What the ground leaves: a sill at or above it, or a well that is large enough.
    fn clear_of_the_ground(&self) -> Truth {
        let is_above = Truth::of(Fact::SillAboveGrade, self.sill.as_ref(), |sill| {
            !sill.is_negative()
        });
        Truth::any([is_above, Truth::fact(Fact::WellArea, self.well)])
    }

    /// What the exception itself comes to, whatever the opening lacks.
    pub(crate) fn exception(&self) -> Truth {
        let existing = self.opening().existing.unwrap();
        let area = self
            .width
            .as_ref()
            .zip(self.height.as_ref())
            .map(|(width, height)| width * height);
        let no_less = existing.clear_area.zip(area).map(|(was, is)| is >= was);
        let zero = Number::ZERO;
        Truth::all([
            Truth::above(Fact::ClearWidth, self.width.as_ref(), &zero),
            Truth::above(Fact::ClearHeight, self.height.as_ref(), &zero),
            Truth::fact(Fact::LargestStandardSizeFits, existing.largest_standard_size_fits),
            Truth::fact(Fact::ChangeOfOccupancy, existing.change_of_occupancy).opposite(),
            Truth::any([
                Truth::fact(Fact::ExistingOperation, existing.same_operation),
                Truth::fact(Fact::ExistingClearArea, no_less),
            ]),
        ])
    }
}

/// What the crate says of one requirement.
fn requirement(answer: &Answer, requirement: Requirement) -> Truth {
    let lacks = answer
        .shortfalls
        .iter()
        .any(|shortfall| shortfall.requirement == requirement);
    if lacks {
        return Truth::No;
    }
    let facts: &[Fact] = match requirement {
        Requirement::Area => &[Fact::ClearWidth, Fact::ClearHeight, Fact::SillAboveGrade],
        Requirement::Width => &[Fact::ClearWidth],
        Requirement::Height => &[Fact::ClearHeight],
        Requirement::Bottom => &[Fact::BottomOfClearOpening],
        Requirement::Device => &[Fact::ControlDevice],
        other => panic!("{other:?} is in no file"),
    };
    let missing: astragal_trade::Missing = facts
        .iter()
        .copied()
        .filter(|fact| answer.missing.contains(fact))
        .collect();
    if missing.is_empty() {
        Truth::Yes
    } else {
        Truth::Unknown(missing)
    }
}

/// What the crate says of the excuse, as far as a figure can say it: nothing where everything is met.
fn excuse(answer: &Answer) -> Option<Truth> {
    match &answer.excuse {
        Excuse::NotAsked => None,
        Excuse::MayBeExcused { .. } => Some(Truth::Yes),
        Excuse::NotExcused(_) => Some(Truth::No),
        Excuse::Undecided(missing) => Some(Truth::Unknown(missing.clone())),
        other => panic!("{other:?}"),
    }
}

/// The rules of a file over a size, and the requirements that they are about.
const SIZES: [(&str, Requirement); 4] = [
    ("escape-area", Requirement::Area),
    ("escape-height", Requirement::Height),
    ("escape-width", Requirement::Width),
    ("escape-bottom", Requirement::Bottom),
];

fn compare(codes: &[(Edition, CodeFile)], way_out: &WayOut, counts: &mut BTreeMap<String, usize>) {
    let (case, opening) = (way_out.case(), way_out.opening());
    let serves = Truth::fact(Fact::ReliedOnForEscape, way_out.serves);
    let exception = way_out.exception();
    for (edition, file) in codes {
        if edition.is_residential() && way_out.is_far_below_the_ground() {
            continue;
        }
        let answer = escape::opening(*edition, &opening).unwrap();
        let answers = file.judge(&case);
        let mut agree = |what: &str, said: Said, expected: Truth| {
            assert_eq!(said, Said::from(expected), "{edition} {what}: {way_out:?}");
            *counts.entry(format!("{what} {said:?}")).or_default() += 1;
        };
        // Without the well, which may ask for the sill as well.
        let with_well = WayOut {
            well: Some(true),
            ..way_out.clone()
        };
        let of_sizes = escape::opening(*edition, &with_well.opening()).unwrap();
        let sizes = || SIZES.iter().map(|(_, of)| requirement(&of_sizes, *of));
        for (rule, of) in SIZES {
            let has_it = Truth::any([requirement(&of_sizes, of), exception.clone()]);
            let expected = Truth::any([serves.clone().opposite(), has_it]);
            agree(rule, answers.rule(rule), expected);
        }
        let expected = Truth::any([serves.clone().opposite(), way_out.clear_of_the_ground()]);
        agree("escape-well", answers.rule("escape-well"), expected);
        let no_stop = requirement(&answer, Requirement::Device);
        let expected = Truth::any([serves.clone().opposite(), no_stop]);
        agree("escape-stop", answers.rule("escape-stop"), expected);
        let is_excused = Truth::all([serves.clone(), exception.clone()]);
        let expected = Truth::any([is_excused.opposite(), Truth::all(sizes())]);
        agree("escape-exception", answers.rule("escape-exception"), expected);
        agree(
            "meets_escape_sizes",
            Said::from(answers.figure("meets_escape_sizes")),
            answer.meets(),
        );
        agree(
            "replacement_exception",
            Said::from(answers.figure("replacement_exception")),
            exception.clone(),
        );
        if let Some(excused) = excuse(&answer).filter(|_| !answer.missing.contains(&Fact::SillAboveGrade)) {
            let may_serve = Said::from(answers.figure("may_serve_as_escape"));
            agree(
                "may_serve_as_escape",
                may_serve,
                Truth::any([answer.meets(), excused]),
            );
        }
    }
}

/// Each named and counted, so that no comparison is of one answer alone.
fn all_were_said(counts: &BTreeMap<String, usize>, says: &[&str]) {
    let rules = SIZES.map(|(rule, _)| rule);
    let others = [
        "escape-well",
        "escape-stop",
        "escape-exception",
        "meets_escape_sizes",
        "replacement_exception",
        "may_serve_as_escape",
    ];
    for what in rules.into_iter().chain(others) {
        for said in says {
            let seen = counts.get(&format!("{what} {said}")).copied().unwrap_or(0);
            assert!(seen >= 8, "{what} says {said} {seen} times");
        }
    }
}

/// Widths and heights around the limits of a side, and those that make an area of 5.0 and 5.7 sq ft and a sixteenth of a square
/// inch less and more.
fn clear_sizes() -> Vec<(Number, Number)> {
    let mut sizes = Vec::new();
    for width in around(&["20"]) {
        for height in around(&["24", "36"]) {
            sizes.push((width.clone(), height));
        }
        for area in around(&["720", "820.8"]) {
            let height = area.checked_div(&width).unwrap();
            sizes.push((width.clone(), height));
        }
    }
    for height in around(&["24"]) {
        for area in around(&["720", "820.8"]) {
            let width = area.checked_div(&height).unwrap();
            sizes.push((width, height.clone()));
        }
    }
    sizes
}

#[test]
fn sizes_bottom_and_sill_agree_at_both_sides_of_their_limits() {
    let (codes, mut counts) = (building_codes(), BTreeMap::new());
    for (width, height) in clear_sizes() {
        for bottom in around(&["44"]) {
            for sill in around(&["-44", "0", "44"]) {
                for largest in [false, true] {
                    let way_out = WayOut {
                        width: Some(width.clone()),
                        height: Some(height.clone()),
                        bottom: Some(bottom.clone()),
                        sill: Some(sill.clone()),
                        largest: Some(largest),
                        ..WayOut::just_enough()
                    };
                    compare(&codes, &way_out, &mut counts);
                }
            }
        }
    }
    assert!(counts["escape-area No"] >= 100 && counts["meets_escape_sizes Yes"] >= 100);
}

#[test]
fn devices_and_the_exception_for_replacements_agree_condition_by_condition() {
    let (codes, mut counts) = (building_codes(), BTreeMap::new());
    let truths = [None, Some(false), Some(true)];
    // 20 x 32 in are 4.44 sq ft: too small anywhere.
    let areas = around(&["640"])
        .into_iter()
        .map(|inches| inches.checked_div(&number("144")));
    let areas: Vec<Option<Number>> = areas.chain([None]).collect();
    for opens in Opens::all() {
        for (largest, occupancy) in truths.iter().flat_map(|one| truths.map(|other| (*one, other))) {
            for existing_operation in [None, Some("casement"), Some("fixed"), Some("another")] {
                for existing_square_feet in &areas {
                    for height in ["32", "45"] {
                        let way_out = WayOut {
                            height: Some(number(height)),
                            opens,
                            largest,
                            occupancy,
                            existing_operation,
                            existing_square_feet: existing_square_feet.clone(),
                            ..WayOut::just_enough()
                        };
                        compare(&codes, &way_out, &mut counts);
                    }
                }
            }
        }
    }
    assert!(counts["may_serve_as_escape Unknown"] >= 100 && counts["may_serve_as_escape Yes"] >= 100);
}

#[test]
fn random_openings_agree_whatever_is_missing() {
    let (codes, mut counts) = (building_codes(), BTreeMap::new());
    for seed in 0..4_000 {
        let way_out = random_way_out(&mut Random::new(seed));
        compare(&codes, &way_out, &mut counts);
    }
    all_were_said(&counts, &["Yes", "No", "Unknown"]);
}

/// An opening of which anything may be missing.
pub(crate) fn random_way_out(random: &mut Random) -> WayOut {
    let sizes = clear_sizes();
    let (width, height) = random.one_of(&sizes);
    WayOut {
        serves: random.known(&[true, true, false]),
        width: random.known(&[width]),
        height: random.known(&[height, number("24"), number("41 1/16")]),
        bottom: random.length(&["44"], 60),
        sill: random.known(&around(&["-44", "0", "44"])),
        well: random.truth(),
        opens: random.one_of(&Opens::all()),
        largest: random.truth(),
        existing_operation: random.known(&["casement", "fixed", "double-hung", "another"]),
        existing_square_feet: random.known(&[number("4"), number("5.0"), number("5.7"), number("9")]),
        occupancy: random.known(&[false, false, true]),
    }
}

#[test]
fn the_helper_reads_an_area_as_the_figure_does() {
    let way_out = WayOut::just_enough();
    let (_, file) = &building_codes()[0];
    let answers = file.judge(&way_out.case());
    assert_eq!(
        answers.figure("clear_area").known(),
        Some(&Value::Area(number("821.25")))
    );
    assert_eq!(
        truth(Said::from(answers.figure("meets_escape_sizes"))),
        Truth::Yes
    );
}

/// The sill at the ground and a sixteenth of an inch below it, with every answer about the well.
#[test]
fn a_sill_below_the_ground_is_asked_for_its_well() {
    let (codes, mut counts) = (building_codes(), BTreeMap::new());
    for sill in [None, Some("-0 1/16"), Some("0")] {
        for well in [None, Some(false), Some(true)] {
            let way_out = WayOut {
                sill: sill.map(number),
                well,
                ..WayOut::just_enough()
            };
            compare(&codes, &way_out, &mut counts);
            let said = match (sill, well) {
                (Some("0"), _) | (_, Some(true)) => Said::Yes,
                (Some(_), Some(false)) => Said::No,
                _ => Said::Unknown,
            };
            for (edition, file) in &codes {
                let answers = file.judge(&way_out.case());
                assert_eq!(answers.rule("escape-well"), said, "{edition}: {sill:?}, {well:?}");
            }
        }
    }
}
