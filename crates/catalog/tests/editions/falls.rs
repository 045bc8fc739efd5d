//! Falls: the rule of each file against the crate, IRC and IBC.
//!
//! The files know devices and the crate asks in addition whether a sphere of 4 in passes: in the comparison it does not
//! behind a fixed stop, which is made so, and does otherwise. A fixed unit does not open, and its `control_device` is not asked.
//! Devices of fall prevention that are no control device are not offered by the files.

use std::collections::BTreeMap;

use astragal_model::{Choice, Number};
use astragal_trade::building_code::Edition;
use astragal_trade::control_device::Device;
use astragal_trade::fall_protection::{Opening, fall_protection};

use crate::case::{Case, around};
use crate::code_file::{CodeFile, building_codes};
use crate::random::Random;
use crate::said::Said;

/// The options of `control_device`, and what they are to the crate.
pub(crate) const DEVICES: [(&str, Device); 4] = [
    ("none", Device::Nothing),
    ("fixed-stop", Device::FixedStop),
    ("vent-latch", Device::VentLatch),
    ("release-device", Device::ReleasableControl),
];

/// What is known of how a unit opens.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Opens {
    /// Its operation is not chosen, and neither is a device.
    NotChosen,
    /// It is fixed.
    Never,
    /// It opens, and nobody has chosen a device.
    DeviceNotChosen,
    /// It opens, with this device.
    With(&'static str, Device),
}

impl Opens {
    /// Every one of them.
    pub(crate) fn all() -> Vec<Opens> {
        let devices = DEVICES.map(|(option, device)| Opens::With(option, device));
        let others = [Opens::NotChosen, Opens::Never, Opens::DeviceNotChosen];
        others.into_iter().chain(devices).collect()
    }

    /// The choices of operation and device, as the catalog fills them.
    pub(crate) fn choose(self, case: Case) -> Case {
        let (operation, device) = match self {
            Self::NotChosen => (Choice::Open, Choice::Open),
            Self::Never => (Choice::picked("fixed"), Choice::NotAsked),
            Self::DeviceNotChosen => (Choice::picked("casement"), Choice::Open),
            Self::With(option, _) => (Choice::picked("casement"), Choice::picked(option)),
        };
        case.choice("operation", operation)
            .choice("control_device", device)
    }

    /// The device, where it is known; a unit that never opens has none.
    pub(crate) fn device(self) -> Option<Device> {
        match self {
            Self::NotChosen | Self::DeviceNotChosen => None,
            Self::Never => Some(Device::Nothing),
            Self::With(_, device) => Some(device),
        }
    }

    fn opens(self) -> Option<bool> {
        match self {
            Self::NotChosen => None,
            Self::Never => Some(false),
            Self::DeviceNotChosen | Self::With(..) => Some(true),
        }
    }
}

fn compare(
    codes: &[(Edition, CodeFile)],
    opens: Opens,
    above_grade: Option<&Number>,
    lowest: Option<&Number>,
    counts: &mut BTreeMap<String, usize>,
) {
    let case = Case::default()
        .length("height_above_grade", above_grade)
        .length("lowest_part_of_opening", lowest);
    let case = opens.choose(case);
    let opening = Opening {
        opens: opens.opens(),
        height_above_grade: above_grade.cloned(),
        lowest_part: lowest.cloned(),
        passes_sphere: opens.device().map(|device| device != Device::FixedStop),
        device: opens.device(),
        insect_screen: true,
    };
    for (edition, file) in codes {
        let expected = Said::from(fall_protection(*edition, &opening).unwrap().has_what_is_asked());
        let said = file.judge(&case).rule("fall-protection");
        assert_eq!(said, expected, "{edition}: {opens:?}, {opening:?}");
        *counts.entry(format!("{edition} {said:?}")).or_default() += 1;
    }
}

#[test]
fn falls_agree_at_both_sides_of_their_limits_with_every_device() {
    let (codes, mut counts) = (building_codes(), BTreeMap::new());
    for opens in Opens::all() {
        for above_grade in around(&["72"]) {
            for lowest in around(&["24", "36"]) {
                compare(&codes, opens, Some(&above_grade), Some(&lowest), &mut counts);
            }
            compare(&codes, opens, Some(&above_grade), None, &mut counts);
        }
        for lowest in around(&["24", "36"]) {
            compare(&codes, opens, None, Some(&lowest), &mut counts);
        }
    }
    // Without a device and with a vent latch, above 72 in: below 24 in, and in the building code below 36 in.
    let broken = |edition: Edition| counts[&format!("{edition} No")];
    assert_eq!(broken(Edition::Irc2021), 2);
    assert_eq!(broken(Edition::Ibc2021), 2 * 4);
}

#[test]
fn random_openings_agree_whatever_is_missing() {
    let (codes, mut counts) = (building_codes(), BTreeMap::new());
    for seed in 0..2_000 {
        let mut random = Random::new(seed);
        let opens = random.one_of(&Opens::all());
        let above_grade = random.length(&["72"], 200);
        let lowest = random.length(&["24", "36"], 80);
        compare(&codes, opens, above_grade.as_ref(), lowest.as_ref(), &mut counts);
    }
    for (edition, _) in &codes {
        for said in ["Yes", "No", "Unknown"] {
            let seen = counts.get(&format!("{edition} {said}")).copied().unwrap_or(0);
            assert!(seen >= 20, "{edition} says {said} {seen} times");
        }
    }
}
