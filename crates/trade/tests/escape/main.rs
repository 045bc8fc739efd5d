//! Escape openings: one opening by each edition, the exception for replacements, and rooms.

#![expect(clippy::unwrap_used, clippy::panic, reason = "these are tests")]

mod laws;
mod one_opening;
mod replacement;
mod rooms;
mod standing;
#[path = "../text_rows/mod.rs"]
mod text_rows;

use astragal_trade::Truth;
use astragal_trade::control_device::Device;
use astragal_trade::escape::{Answer, Edition, Opening, Requirement, Verdict};
use astragal_trade::interval::Interval;
use text_rows::{maybe, number, said};

/// `36`, `35..36`, or `?`.
fn size(text: &str) -> Option<Interval> {
    match text.split_once("..") {
        Some((low, high)) => Some(Interval::between(number(low), number(high))),
        None => maybe(text).map(Interval::exact),
    }
}

fn device(text: &str) -> Option<Device> {
    match text {
        "?" => None,
        "none" => Some(Device::Nothing),
        "stop" => Some(Device::FixedStop),
        "latch" => Some(Device::VentLatch),
        "releasable" => Some(Device::ReleasableControl),
        "guard" => Some(Device::FallPrevention { releases: None }),
        "guard lets go" => Some(Device::FallPrevention { releases: Some(true) }),
        "guard holds" => Some(Device::FallPrevention {
            releases: Some(false),
        }),
        other => panic!("`{other}` is no device"),
    }
}

/// An opening from `20 x 41`, its bottom and its sill above the ground; no device, no keys.
fn window(sizes: &str, bottom: &str, sill: &str) -> Opening {
    let (width, height) = sizes.split_once(" x ").unwrap();
    Opening {
        clear_width: size(width),
        clear_height: size(height),
        bottom: maybe(bottom),
        sill_above_grade: maybe(sill),
        device: Some(Device::Nothing),
        opens_without_keys: said("yes"),
        ..Opening::default()
    }
}

/// `meets`, `short: area, width`, `open: fact, fact`, or `short: width; open: fact`.
fn shown(answer: &Answer) -> String {
    let lacks: Vec<&str> = answer
        .shortfalls
        .iter()
        .map(|short| name(short.requirement))
        .collect();
    let open: Vec<&str> = answer.missing.iter().map(|fact| fact.id()).collect();
    let rest = if open.is_empty() {
        String::new()
    } else {
        format!("open: {}", open.join(", "))
    };
    assert_eq!(answer.meets() == Truth::Yes, answer.verdict == Verdict::Meets);
    assert_eq!(answer.meets() == Truth::No, answer.verdict == Verdict::FallsShort);
    match answer.verdict {
        Verdict::Meets => {
            assert!(lacks.is_empty() && open.is_empty());
            "meets".to_owned()
        }
        Verdict::Undecided => {
            assert!(lacks.is_empty() && !open.is_empty());
            rest
        }
        Verdict::FallsShort if rest.is_empty() => format!("short: {}", lacks.join(", ")),
        Verdict::FallsShort => format!("short: {}; {rest}", lacks.join(", ")),
    }
}

fn name(requirement: Requirement) -> &'static str {
    match requirement {
        Requirement::Area => "area",
        Requirement::Width => "width",
        Requirement::Height => "height",
        Requirement::Bottom => "bottom",
        Requirement::WithoutKeys => "keys",
        Requirement::Device => "device",
        Requirement::Reach => "reach",
        Requirement::WellArea => "well area",
        Requirement::WellProjection => "well projection",
        Requirement::WellWidth => "well width",
        Requirement::WellLadder => "well ladder",
        other => panic!("{other:?}"),
    }
}

fn edition(text: &str) -> Edition {
    Edition::from_text(text).unwrap_or_else(|error| panic!("{error}"))
}
