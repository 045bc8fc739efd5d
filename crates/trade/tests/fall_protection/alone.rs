//! Falls alone: both heights strict, what protects and what does not.

use super::text_rows::{number, rows, said};
use super::{device, verdict, window};
use astragal_trade::building_code::Edition;
use astragal_trade::fall_protection::{Means, Opening, fall_protection};
use astragal_trade::{Fact, FactsError};
use proptest::prelude::*;

/// IRC 2012 to 2021 R312.2.1, as quoted: above 72 in over the ground and below 24 in over the floor. IBC: 36 in, a page on the
/// difference. The first three rows are computed from them.
const HEIGHTS: &str = "
    row                           | grade   | lowest  | IRC            | IBC
    exactly 72 over the ground    | 72      | 10      | not called for | not called for
    exactly 24 over the floor     | 72.1    | 24      | not called for | unprotected
    a tenth under                 | 72.1    | 23.9    | unprotected    | unprotected
    one sixteenth over 72         | 1153/16 | 10      | unprotected    | unprotected
    one sixteenth under 72        | 1151/16 | 10      | not called for | not called for
    one sixteenth under 24        | 120     | 383/16  | unprotected    | unprotected
    one sixteenth over 24         | 120     | 385/16  | not called for | unprotected
    one sixteenth under 36        | 120     | 575/16  | not called for | unprotected
    exactly 36                    | 120     | 36      | not called for | not called for
    one sixteenth over 36         | 120     | 577/16  | not called for | not called for
    on the floor                  | 120     | 0       | unprotected    | unprotected
    below the ground              | -20     | 0       | not called for | not called for
    ground not known              | ?       | 10      | open: height_above_grade | open: height_above_grade
    ground not known, high enough | ?       | 36      | not called for | not called for
    lowest part not known         | 120     | ?       | open: lowest_part_of_opening | open: lowest_part_of_opening
    near the ground, not known    | 72      | ?       | not called for | not called for
    neither known                 | ?       | ?       | open: lowest_part_of_opening, height_above_grade | open: lowest_part_of_opening, height_above_grade
";

#[test]
fn both_heights_are_compared_strictly() {
    for row in rows(HEIGHTS) {
        let [name, grade, lowest, by_irc, by_ibc] = row[..] else {
            panic!("{row:?}");
        };
        for edition in [Edition::Irc2018, Edition::Irc2021, Edition::Irc2024] {
            assert_eq!(
                verdict(edition, &window(grade, lowest)),
                by_irc,
                "{name}, {edition}"
            );
        }
        for edition in [Edition::Ibc2018, Edition::Ibc2021] {
            assert_eq!(
                verdict(edition, &window(grade, lowest)),
                by_ibc,
                "{name}, {edition}"
            );
        }
    }
}

/// IRC 2012 R312.2.1, as quoted: a sphere of 4 in, or a device of ASTM F2090. Screens: IRC 2024 R321.1.1, transcribed. That a vent
/// latch does not count: common practice, no source. A window 120 in up, 20 in over the floor.
const PROTECTION: &str = "
    row                              | opens | sphere | device     | answer
    nothing                          | yes   | yes    | none       | unprotected
    a sphere does not pass           | yes   | no     | none       | protected
    a stop that lets a sphere pass   | yes   | yes    | stop       | unprotected
    a stop that does not             | yes   | no     | stop       | protected
    a stop, sphere not known         | yes   | ?      | stop       | open: passes_sphere
    vent latch                       | yes   | yes    | latch      | unprotected
    vent latch, sphere not known     | yes   | ?      | latch      | open: passes_sphere
    releasable                       | yes   | yes    | releasable | protected
    releasable, sphere not known     | yes   | ?      | releasable | protected
    guard                            | yes   | yes    | guard      | protected
    device not known                 | yes   | yes    | ?          | open: control_device
    neither known                    | yes   | ?      | ?          | open: control_device, passes_sphere
    a sphere does not pass, no more  | yes   | no     | ?          | protected
    does not open                    | no    | ?      | ?          | does not open
    whether it opens is not known    | ?     | yes    | none       | open: operation
    not known, but protected         | ?     | yes    | releasable | protected
";

#[test]
fn a_narrow_opening_or_a_device_of_f2090_protects_and_a_screen_never() {
    for row in rows(PROTECTION) {
        let [name, opens, sphere, device_text, expected] = row[..] else {
            panic!("{row:?}");
        };
        for insect_screen in [false, true] {
            let opening = Opening {
                opens: said(opens),
                passes_sphere: said(sphere),
                device: device(device_text),
                insect_screen,
                ..window("120", "20")
            };
            assert_eq!(verdict(Edition::Irc2021, &opening), expected, "{name}");
        }
    }
}

/// Source: IRC 2024 R321.1.1 as transcribed, a screen is no guard; of a vent latch common practice, no source.
#[test]
fn what_does_not_count_is_said() {
    let opening = Opening {
        device: device("latch"),
        insect_screen: true,
        ..window("120", "20")
    };
    let sentences = fall_protection(Edition::Irc2021, &opening).unwrap().sentences();
    let expected = [
        "IRC 2021 R312.2.1 calls for protection from falls, and nothing of what is known protects",
        "an insect screen does not protect from falls",
        "a vent latch does not count as protection from falls",
    ];
    assert_eq!(sentences, expected);
    let high = Opening {
        insect_screen: true,
        ..window("120", "40")
    };
    assert_eq!(
        fall_protection(Edition::Irc2021, &high)
            .unwrap()
            .sentences()
            .len(),
        1
    );
}

/// Source: IRC 2012 R312.2.1 as quoted, carried to 2021 under the same number; R321.2 in a state's summary; IBC 1015.8 from memory.
#[test]
fn each_edition_names_its_section() {
    let of = |edition| {
        fall_protection(edition, &window("120", "20"))
            .unwrap()
            .basis
            .to_string()
    };
    assert_eq!(of(Edition::Irc2018), "IRC 2018 R312.2.1");
    assert_eq!(of(Edition::Irc2021), "IRC 2021 R312.2.1");
    assert_eq!(of(Edition::Irc2024), "IRC 2024 R321.2");
    assert_eq!(
        of(Edition::Ibc2018),
        "IBC 2018 1015.8 (from memory, to be confirmed)"
    );
    assert_eq!(
        of(Edition::Ibc2021),
        "IBC 2021 1015.8 (from memory, to be confirmed)"
    );
    let nothing = fall_protection(Edition::Nfpa101, &window("120", "20")).unwrap_err();
    assert_eq!(
        nothing.to_string(),
        "nothing about fall protection is known here for `NFPA 101`; expected an edition of the IRC or the IBC"
    );
}

#[test]
fn heights_that_cannot_be_are_refused() {
    for (grade, lowest, fact) in [
        ("120", "-1", Fact::LowestPartOfOpening),
        ("120", "36001", Fact::LowestPartOfOpening),
        ("36001", "20", Fact::HeightAboveGrade),
        ("-36001", "20", Fact::HeightAboveGrade),
    ] {
        match fall_protection(Edition::Irc2021, &window(grade, lowest)) {
            Err(FactsError::Input(error)) => assert_eq!(error.fact, fact),
            other => panic!("{other:?}"),
        }
    }
}

#[test]
fn means_are_what_is_known_to_protect() {
    let opening = Opening {
        passes_sphere: Some(false),
        device: device("guard"),
        ..window("120", "20")
    };
    let answer = fall_protection(Edition::Irc2021, &opening).unwrap();
    assert_eq!(answer.means, [Means::NarrowOpening, Means::FallPrevention]);
}

proptest! {
    #[test]
    fn a_missing_height_never_turns_an_answer_round(
        grade in -100_i64..2000, lowest in 0_i64..700, mask in 0_u8..4, passes in any::<bool>(),
        by in proptest::sample::select(vec![Edition::Irc2018, Edition::Irc2024, Edition::Ibc2021]),
    ) {
        let all = Opening {
            height_above_grade: Number16(grade).inches(),
            lowest_part: Number16(lowest).inches(),
            passes_sphere: Some(passes),
            ..window("0", "0")
        };
        let limit = if by == Edition::Ibc2021 { 36 } else { 24 };
        let known = verdict(by, &all);
        let expected = match (grade > 72 * 16 && lowest < limit * 16, passes) {
            (false, _) => "not called for",
            (true, false) => "protected",
            (true, true) => "unprotected",
        };
        prop_assert_eq!(&known, expected);
        let mut less = all;
        if mask & 1 != 0 { less.height_above_grade = None; }
        if mask & 2 != 0 { less.lowest_part = None; }
        let now = verdict(by, &less);
        // Protection that may not be called for is protection all the same.
        let same = now == known || now.starts_with("open") || (now == "protected" && !passes);
        prop_assert!(same, "{} then {}", known, now);
    }
}

/// A length in sixteenths.
struct Number16(i64);

impl Number16 {
    fn inches(&self) -> Option<astragal_exact::Number> {
        Some(number(&format!("{}/16", self.0)))
    }
}
