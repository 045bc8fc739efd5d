//! Falls and escape of one opening: which devices may serve it, and descriptions that are not of one opening.

use super::text_rows::{maybe, rows, said};
use super::window;
use astragal_trade::building_code::Edition;
use astragal_trade::control_device::Device;
use astragal_trade::fall_protection::{Opening, Serving, Verdict, both};
use astragal_trade::{Truth, escape};

fn way_out(clear: &str, bottom: &str) -> escape::Opening {
    let (width, height) = clear.split_once(" x ").unwrap();
    escape::Opening {
        clear_width: maybe(width).map(Into::into),
        clear_height: maybe(height).map(Into::into),
        bottom: maybe(bottom),
        sill_above_grade: maybe("120"),
        device: Some(Device::Nothing),
        opens_without_keys: Some(true),
        ..escape::Opening::default()
    }
}

fn serving(serving: &Serving) -> String {
    match serving {
        Serving::NoneNeeded => "none needed".to_owned(),
        Serving::NoneServes => "none serves".to_owned(),
        Serving::AnyOf(devices) => {
            let words: Vec<&str> = devices.iter().map(|device| device.words()).collect();
            words.join(", ")
        }
        Serving::Undecided(missing) => {
            let ids: Vec<&str> = missing.iter().map(|fact| fact.id()).collect();
            format!("open: {}", ids.join(", "))
        }
    }
}

/// IRC 2021 R312.2 and R310.1.1 as quoted: a device that lets go and then leaves the clear opening of escape may serve both.
const BOTH: &str = "
    row                                    | grade | lowest | clear   | bottom | relied on | answer
    a bedroom upstairs                     | 120   | 20     | 30 x 40 | 21     | yes       | releasable control device (ASTM F2090)
    not relied on for escape               | 120   | 20     | 30 x 40 | 21     | no        | fixed stop, releasable control device (ASTM F2090)
    whether relied on is not known         | 120   | 20     | 30 x 40 | 21     | ?         | releasable control device (ASTM F2090)
    too small to escape by                 | 120   | 20     | 20 x 24 | 21     | yes       | none serves
    too small, not relied on               | 120   | 20     | 20 x 24 | 21     | no        | fixed stop, releasable control device (ASTM F2090)
    too small, not known if relied on      | 120   | 20     | 20 x 24 | 21     | ?         | open: relied_on_for_escape
    size not known, relied on              | 120   | 20     | ? x 40  | 21     | yes       | open: clear_width
    near the ground                        | 60    | 20     | 30 x 40 | 21     | yes       | none needed
    high above the floor                   | 120   | 24     | 30 x 40 | 25     | yes       | none needed
    ground not known                       | ?     | 20     | 30 x 40 | 21     | yes       | releasable control device (ASTM F2090)
";

#[test]
fn which_devices_may_serve_falls_and_escape() {
    for row in rows(BOTH) {
        let [name, grade, lowest, clear, bottom, relied_on, expected] = row[..] else {
            panic!("{row:?}");
        };
        let answer = both(
            Edition::Irc2021,
            &window(grade, lowest),
            &way_out(clear, bottom),
            said(relied_on),
        );
        assert_eq!(serving(&answer.unwrap().serving), expected, "{name}");
    }
}

#[test]
fn a_fixed_stop_protects_and_defeats_a_releasable_device_may_serve_both_and_a_vent_latch_neither() {
    let answer = both(
        Edition::Irc2021,
        &window("120", "20"),
        &way_out("30 x 40", "21"),
        Some(true),
    )
    .unwrap();
    let each: Vec<(Device, Truth, Truth, Truth)> = answer
        .devices
        .iter()
        .map(|it| {
            (
                it.device,
                it.protects.clone(),
                it.keeps_escape.clone(),
                it.may_serve.clone(),
            )
        })
        .collect();
    let expected = [
        (Device::FixedStop, Truth::Yes, Truth::No, Truth::No),
        (Device::VentLatch, Truth::No, Truth::Yes, Truth::No),
        (Device::ReleasableControl, Truth::Yes, Truth::Yes, Truth::Yes),
    ];
    assert_eq!(each, expected);
    let sentences = answer.sentences();
    let expected = [
        "may serve this opening: releasable control device (ASTM F2090); check with the local code",
        "fixed stop: goes with protection from falls; defeats escape",
        "vent latch: does not protect from falls; leaves escape",
        "releasable control device (ASTM F2090): goes with protection from falls; leaves escape",
    ];
    assert_eq!(sentences, expected);
}

#[test]
fn the_device_that_is_there_is_judged_as_it_is() {
    let falls = Opening {
        passes_sphere: Some(false),
        device: Some(Device::FixedStop),
        ..window("120", "20")
    };
    let escaped = escape::Opening {
        device: Some(Device::FixedStop),
        ..way_out("30 x 40", "21")
    };
    let answer = both(Edition::Irc2021, &falls, &escaped, Some(true)).unwrap();
    assert_eq!(answer.falls.verdict, Verdict::Protected);
    assert_eq!(answer.escape.verdict, escape::Verdict::FallsShort);
    assert_eq!(serving(&answer.serving), "releasable control device (ASTM F2090)");
}

/// IRC 2021 R310.1.1 as quoted: what keeps the opening from opening is lacking for escape, whether falls call for it or not.
const FITTED: &str = "
    row                                   | grade | device     | relied on | said
    a stop near the ground, relied on     | 60    | stop       | yes       | the fixed stop that is fitted defeats escape, and the room relies on this opening
    a stop near the ground, not known     | 60    | stop       | ?         | the fixed stop that is fitted defeats escape; not known whether the room relies on this opening
    a stop near the ground, not relied on | 60    | stop       | no        | -
    a guard that holds, relied on         | 60    | holds      | yes       | the fall prevention device (ASTM F2090) that is fitted defeats escape, and the room relies on this opening
    a guard of which it is not known      | 60    | guard      | yes       | the fall prevention device (ASTM F2090) that is fitted defeats escape unless it lets go, which is not known, and the room relies on this opening
    a guard that lets go                  | 60    | lets go    | yes       | -
    a vent latch                          | 60    | latch      | yes       | -
    a releasable device                   | 60    | releasable | yes       | -
    nothing is fitted                     | 60    | none       | yes       | -
    a stop high up, relied on             | 120   | stop       | yes       | the fixed stop that is fitted defeats escape, and the room relies on this opening
";

#[test]
fn a_fitted_device_that_defeats_escape_is_said_where_none_is_called_for() {
    let none = "no device is called for by what was asked; check with the local code";
    for row in rows(FITTED) {
        let [name, grade, device, relied_on, said_of_it] = row[..] else {
            panic!("{row:?}");
        };
        let device = match device {
            "none" => Device::Nothing,
            "stop" => Device::FixedStop,
            "latch" => Device::VentLatch,
            "releasable" => Device::ReleasableControl,
            "guard" => Device::FallPrevention { releases: None },
            "lets go" => Device::FallPrevention { releases: Some(true) },
            "holds" => Device::FallPrevention {
                releases: Some(false),
            },
            other => panic!("{other}"),
        };
        let falls = Opening {
            device: (grade == "60").then_some(device),
            ..window(grade, "20")
        };
        let escaped = escape::Opening {
            device: (grade == "120").then_some(device),
            ..way_out("30 x 40", "21")
        };
        let answer = both(Edition::Irc2021, &falls, &escaped, said(relied_on)).unwrap();
        let sentences = answer.sentences();
        assert_eq!(sentences.iter().any(|it| it == none), grade == "60", "{name}");
        let fitted = sentences.iter().filter(|it| it.contains("fitted"));
        let fitted: Vec<&str> = fitted.map(String::as_str).collect();
        assert_eq!(fitted.join(" "), said_of_it.trim_matches('-'), "{name}");
    }
}

#[test]
fn an_opening_too_narrow_for_a_sphere_needs_no_device() {
    for device in [Device::Nothing, Device::VentLatch] {
        let narrow = Opening {
            passes_sphere: Some(false),
            device: Some(device),
            ..window("120", "20")
        };
        let escaped = escape::Opening {
            device: Some(device),
            ..way_out("3 x 40", "21")
        };
        let answer = both(Edition::Irc2021, &narrow, &escaped, Some(false)).unwrap();
        assert_eq!(answer.serving, Serving::NoneNeeded, "{device}");
        assert!(
            answer.devices.iter().all(|it| it.protects == Truth::Yes),
            "{device}"
        );
    }
}

#[test]
fn two_descriptions_that_are_not_of_one_opening_are_refused() {
    let ask = |falls: &Opening, escaped: &escape::Opening| both(Edition::Irc2021, falls, escaped, Some(true));
    let text = |falls: &Opening, escaped: &escape::Opening| ask(falls, escaped).unwrap_err().to_string();
    assert_eq!(
        text(&window("120", "26"), &way_out("30 x 40", "25")),
        "lowest part of the clear opening above the floor is `26 in` and bottom of the clear opening above the floor is `25 in`; expected a lowest part that is not above the bottom"
    );
    assert!(ask(&window("120", "25"), &way_out("30 x 40", "25")).is_ok());
    let stopped = Opening {
        device: Some(Device::FixedStop),
        ..window("120", "20")
    };
    assert!(text(&stopped, &way_out("30 x 40", "25")).contains("`fixed stop`"));
    let narrow = Opening {
        passes_sphere: Some(false),
        ..window("120", "20")
    };
    assert!(
        text(&narrow, &way_out("30 x 40", "25"))
            .starts_with("whether a sphere of 4 in passes the opening is `no`")
    );
    assert!(text(&narrow, &way_out("65/16 x 65/16", "25")).starts_with("whether a sphere"));
    assert!(ask(&narrow, &way_out("4 x 40", "25")).is_ok());
    assert!(ask(&narrow, &way_out("40 x 4", "25")).is_ok());
}
