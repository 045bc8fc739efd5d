//! Tables about falls, devices, and the three heights. Openings are invented.

use astragal_exact::Number;
use astragal_trade::Truth;
use astragal_trade::building_code::Edition;
use astragal_trade::control_device::Device;
use astragal_trade::escape;
use astragal_trade::fall_protection::{self, Opening, both, fall_protection};
use astragal_trade::safety_glazing::{Lite, Location, Site, lite};

use crate::escape::good;
use crate::{Row, boundary, inches, named, row};

fn upstairs(lowest: &Number) -> Opening {
    Opening {
        opens: Some(true),
        height_above_grade: Some(Number::from(120)),
        lowest_part: Some(lowest.clone()),
        passes_sphere: Some(true),
        device: Some(Device::Nothing),
        insect_screen: false,
    }
}

fn called_for(edition: Edition, opening: &Opening) -> bool {
    fall_protection(edition, opening).unwrap().called_for == Truth::Yes
}

pub(crate) fn limits() -> Vec<Row> {
    let editions = Edition::ALL
        .iter()
        .filter(|edition| **edition != Edition::Nfpa101);
    editions
        .map(|edition| {
            let low = Number::from(10);
            let height = boundary::inches(|height| {
                let opening = Opening {
                    height_above_grade: Some(height.clone()),
                    ..upstairs(&low)
                };
                called_for(*edition, &opening)
            });
            let lowest = boundary::inches(|lowest| called_for(*edition, &upstairs(lowest)));
            let basis = fall_protection(*edition, &upstairs(&low)).unwrap().basis;
            row([&height, &lowest, &named(basis)])
        })
        .collect()
}

/// The three devices that are offered, in a bedroom upstairs that relies on the window.
pub(crate) fn devices() -> Vec<Row> {
    let way_out = escape::Opening {
        bottom: Some(Number::from(21)),
        ..good()
    };
    let answer = both(
        Edition::Irc2021,
        &upstairs(&Number::from(20)),
        &way_out,
        Some(true),
    )
    .unwrap();
    let said = |found: &fall_protection::DeviceAnswer| {
        let sentence = found.sentence();
        let (device, rest) = sentence.split_once(": ").unwrap();
        let (falls, escape) = rest.split_once("; ").unwrap();
        let may = match found.may_serve {
            Truth::Yes => "may serve",
            Truth::No => "does not serve",
            Truth::Unknown(_) => "cannot be decided",
        };
        row([device, falls, escape, may])
    };
    answer.devices.iter().map(said).collect()
}

/// Whether escape has what is asked, falls call for protection, the pane calls for safety glazing; by IRC 2021.
fn answers(bottom: &Number, lowest: &Number, edge: &Number) -> [&'static str; 3] {
    let way_out = escape::Opening {
        bottom: Some(bottom.clone()),
        ..good()
    };
    let escaped = escape::opening(Edition::Irc2021, &way_out).unwrap();
    let pane = Lite {
        area: Some(Number::from(1500)),
        bottom_edge: Some(edge.clone()),
        top_edge: Some(edge + &Number::from(40)),
        ..Lite::default()
    };
    let site = Site {
        walking_surface: Some(Number::ZERO),
        ..Site::default()
    };
    let glazing = lite(Edition::Irc2021, &pane, &site).unwrap();
    let large = glazing
        .calling_for_it()
        .any(|found| found.location == Location::LargePane);
    let word = |is_so: bool, yes: &'static str, no: &'static str| if is_so { yes } else { no };
    [
        word(escaped.meets() == Truth::Yes, "low enough", "too high"),
        word(
            called_for(Edition::Irc2021, &upstairs(lowest)),
            "called for",
            "not called for",
        ),
        word(large, "called for", "not called for"),
    ]
}

/// One window whose three heights differ, and what one number for all three would say.
pub(crate) fn heights() -> Vec<Row> {
    let [bottom, lowest, edge] = ["46", "20", "16"].map(inches);
    let all = |name: &str, height: &Number| {
        let [escape, falls, glazing] = answers(height, height, height);
        row([name, escape, falls, glazing])
    };
    let [escape, falls, glazing] = answers(&bottom, &lowest, &edge);
    vec![
        row(["each by its own height", escape, falls, glazing]),
        all("46 in for all three", &bottom),
        all("20 in for all three", &lowest),
        all("16 in for all three", &edge),
    ]
}

/// The same unit before and after it is set 1 1/2 in higher.
pub(crate) fn raised() -> Vec<Row> {
    let before = ["43", "23", "17"];
    let after = ["44 1/2", "24 1/2", "18 1/2"];
    let [of_before, of_after] = [before, after].map(|heights| {
        let [bottom, lowest, edge] = heights.map(inches);
        answers(&bottom, &lowest, &edge)
    });
    let names = [
        "bottom of the clear opening (escape)",
        "lowest part of the clear opening (falls)",
        "exposed edge of the glass (safety glazing)",
    ];
    (0..3)
        .map(|at| {
            let (before, after) = (format!("{} in", before[at]), format!("{} in", after[at]));
            row([names[at], &before, of_before[at], &after, of_after[at]])
        })
        .collect()
}
