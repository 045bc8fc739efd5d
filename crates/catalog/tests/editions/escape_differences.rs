//! Where the files and the crate are not meant to say the same about an escape opening, each with its reason.
//!
//! A row fails as soon as the two do say the same: then it has to go, and the comparison has to take its facts in.

use astragal_trade::building_code::Edition;
use astragal_trade::control_device::Device;
use astragal_trade::escape;

use crate::case::number;
use crate::code_file::building_codes;
use crate::escape::WayOut;
use crate::falls::Opens;
use crate::said::Said;

/// Facts on which the two differ.
struct Difference {
    name: &'static str,
    /// Why.
    reason: &'static str,
    way_out: WayOut,
    /// The same for the crate, where it is asked more.
    more: fn(escape::Opening) -> escape::Opening,
    editions: fn(Edition) -> bool,
    /// What the file says, and what the crate says.
    says: (Said, Said),
}

fn every(_: Edition) -> bool {
    true
}

fn the_same(opening: escape::Opening) -> escape::Opening {
    opening
}

fn differences() -> Vec<Difference> {
    vec![
        Difference {
            name: "below the ground",
            reason: "the exception for openings below the ground is from memory in every edition; the files take the smaller area at a grade floor alone, which is the stricter side",
            way_out: WayOut {
                height: Some(number("40")),
                sill: Some(number("-44 1/16")),
                ..WayOut::just_enough()
            },
            more: the_same,
            editions: Edition::is_residential,
            says: (Said::No, Said::Yes),
        },
        Difference {
            name: "keys",
            reason: "whether it opens without keys or tools is seen at the window; the files do not ask",
            way_out: WayOut::just_enough(),
            more: |opening| escape::Opening {
                opens_without_keys: None,
                ..opening
            },
            editions: every,
            says: (Said::Yes, Said::Unknown),
        },
        Difference {
            name: "a device for falls that may not let go",
            reason: "the catalogs offer no such device; the crate asks whether it lets go",
            way_out: WayOut {
                opens: Opens::With("release-device", Device::FallPrevention { releases: None }),
                ..WayOut::just_enough()
            },
            more: the_same,
            editions: every,
            says: (Said::Yes, Said::Unknown),
        },
    ]
}

#[test]
fn each_difference_is_one_still() {
    for (edition, file) in building_codes() {
        for difference in differences() {
            let Difference {
                name,
                reason,
                way_out,
                ..
            } = &difference;
            let opening = (difference.more)(way_out.opening());
            let of_the_crate = Said::from(escape::opening(edition, &opening).unwrap().meets());
            let answers = file.judge(&way_out.case());
            let of_the_file = Said::from(answers.figure("meets_escape_sizes"));
            assert!(reason.len() > 40);
            if (difference.editions)(edition) {
                assert_eq!((of_the_file, of_the_crate), difference.says, "{edition}: {name}");
            } else {
                assert_eq!(of_the_file, of_the_crate, "{edition}: {name} is no difference");
            }
            assert!(answers.notice("not-checked-here").is_some(), "{edition}: {name}");
        }
    }
}

/// With the sill not known, the area may be that of a grade floor, and the well before it is said to be large enough. The exception
/// excuses sizes either way; the crate asks for the sill all the same.
#[test]
fn the_exception_waits_for_the_sill_in_the_crate_alone() {
    let way_out = WayOut {
        height: Some(number("40")),
        sill: None,
        largest: Some(true),
        ..WayOut::just_enough()
    };
    for (edition, file) in building_codes() {
        let answer = escape::opening(edition, &way_out.opening()).unwrap();
        assert!(matches!(answer.excuse, escape::Excuse::Undecided(_)), "{edition}");
        let serves = |way_out: &WayOut| Said::from(file.judge(&way_out.case()).figure("may_serve_as_escape"));
        assert_eq!(serves(&way_out), Said::Yes, "{edition}");
        let without_well = WayOut {
            well: Some(false),
            ..way_out.clone()
        };
        assert_eq!(serves(&without_well), Said::Unknown, "{edition}");
    }
}

/// A unit that does not open is no opening, and nothing excuses it.
#[test]
fn a_unit_without_a_clear_opening_is_not_excused() {
    let sixteenth = || Some(number("0 1/16"));
    for (edition, file) in building_codes() {
        for (width, height, said) in [
            (Some(number("0")), sixteenth(), Said::No),
            (sixteenth(), Some(number("0")), Said::No),
            (sixteenth(), sixteenth(), Said::Yes),
        ] {
            let way_out = WayOut {
                width,
                height,
                largest: Some(true),
                ..WayOut::just_enough()
            };
            let excuse = escape::opening(edition, &way_out.opening()).unwrap().excuse;
            let is_excused = matches!(excuse, escape::Excuse::MayBeExcused { .. });
            assert_eq!(is_excused, said == Said::Yes, "{edition}: {excuse:?}");
            let answers = file.judge(&way_out.case());
            assert_eq!(
                Said::from(answers.figure("replacement_exception")),
                said,
                "{edition}"
            );
        }
    }
}
