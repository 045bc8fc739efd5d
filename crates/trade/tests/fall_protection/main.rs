//! Protection from falls, and how it goes together with escape, row by row.

#![expect(clippy::unwrap_used, clippy::panic, reason = "these are tests")]

mod alone;
#[path = "../text_rows/mod.rs"]
mod text_rows;
mod with_escape;

use astragal_trade::Truth;
use astragal_trade::building_code::Edition;
use astragal_trade::control_device::Device;
use astragal_trade::fall_protection::{Opening, Verdict, fall_protection};
use text_rows::maybe;

fn device(text: &str) -> Option<Device> {
    match text {
        "?" => None,
        "none" => Some(Device::Nothing),
        "stop" => Some(Device::FixedStop),
        "latch" => Some(Device::VentLatch),
        "releasable" => Some(Device::ReleasableControl),
        "guard" => Some(Device::FallPrevention { releases: None }),
        other => panic!("`{other}` is no device"),
    }
}

fn window(grade: &str, lowest: &str) -> Opening {
    Opening {
        opens: Some(true),
        height_above_grade: maybe(grade),
        lowest_part: maybe(lowest),
        passes_sphere: Some(true),
        device: Some(Device::Nothing),
        insect_screen: false,
    }
}

fn verdict(by: Edition, opening: &Opening) -> String {
    let answer = fall_protection(by, opening).unwrap();
    let missing: Vec<&str> = answer.missing.iter().map(|fact| fact.id()).collect();
    assert_eq!(
        answer.has_what_is_asked() == Truth::No,
        answer.verdict == Verdict::Unprotected
    );
    match answer.verdict {
        Verdict::DoesNotOpen => "does not open".to_owned(),
        Verdict::NotCalledFor => "not called for".to_owned(),
        Verdict::Protected => "protected".to_owned(),
        Verdict::Unprotected => "unprotected".to_owned(),
        Verdict::Undecided => format!("open: {}", missing.join(", ")),
    }
}
