//! Falls and escape asked of one opening at once, and which devices may serve it.
//!
//! A bedroom window upstairs, 20 in above the floor, relied on for escape: a fixed stop protects from falls and defeats escape; a
//! vent latch protects from nothing; a releasable control device may serve both.
//!
//! Always holds: the lowest part of the opening is never above its bottom; a device may serve only when both questions say so with
//! it in place.
//! Source: IRC 2021 R312.2 and R310.1.1, IEBC 505.3.1, as quoted: after it has let go, the device leaves the clear opening of escape.

use astragal_exact::{LengthUnit, Number, format_length};

use super::{Answer, Opening, fall_protection};
use crate::building_code::Edition;
use crate::control_device::Device;
use crate::escape;
use crate::fact::Fact;
use crate::facts_error::{Contradiction, FactsError};
use crate::truth::{Missing, Truth};

/// Falls and escape of one opening, and what may serve it.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct BothAnswer {
    /// Falls, with the device it has.
    pub falls: Answer,
    /// Escape, with the device it has.
    pub escape: escape::Answer,
    /// Each device that is offered, in the order of [`Device::OFFERED`].
    pub devices: Vec<DeviceAnswer>,
    /// Which of them may serve this opening.
    pub serving: Serving,
    /// The device that is there; `None` when that is not known.
    pub fitted: Option<Device>,
    /// Whether the room relies on this opening for escape.
    pub relied_on: Option<bool>,
}

/// What one device would do for an opening.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct DeviceAnswer {
    /// The device.
    pub device: Device,
    /// Whether the opening is protected from falls with it, or does not call for protection.
    pub protects: Truth,
    /// Whether the opening can still be escaped by with it.
    pub keeps_escape: Truth,
    /// Whether it may serve: it protects, and escape is kept or not relied on.
    pub may_serve: Truth,
}

/// Which devices may serve an opening.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Serving {
    /// Protection is not called for, or a sphere of 4 in does not pass without a device.
    NoneNeeded,
    /// These may serve.
    AnyOf(Vec<Device>),
    /// None of them serves.
    NoneServes,
    /// It depends on what is missing.
    Undecided(Missing),
}

/// Returns falls and escape of one opening, and which devices may serve it.
///
/// `relied_on` says whether the room relies on this opening for escape: the only one that qualifies in a bedroom. Where it does not,
/// a fixed stop may serve. The clear sizes are those without any stop. Both questions are asked again with each device in place of the one that is there: a fixed stop leaves a
/// gap that a sphere of 4 in does not pass, a vent latch is folded back, a releasable device lets go.
///
/// # Errors
/// Those of [`fall_protection`] and [`escape::opening`], and [`FactsError::Contradiction`]: a lowest part above the bottom of the clear
/// opening; two different devices; a clear opening of more than 4 in both ways, without a device that limits it, that a sphere of
/// 4 in does not pass.
///
/// # Examples
/// ## A bedroom upstairs
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::building_code::Edition;
/// use astragal_trade::control_device::Device;
/// use astragal_trade::{escape, fall_protection};
/// let falls = fall_protection::Opening {
///     opens: Some(true),
///     height_above_grade: Some(Number::from(120)),
///     lowest_part: Some(Number::from(20)),
///     passes_sphere: Some(true),
///     device: Some(Device::Nothing),
///     insect_screen: false,
/// };
/// let way_out = escape::Opening {
///     clear_width: Some(Number::from(30).into()),
///     clear_height: Some(Number::from(40).into()),
///     bottom: Some(Number::from(21)),
///     sill_above_grade: Some(Number::from(120)),
///     device: Some(Device::Nothing),
///     opens_without_keys: Some(true),
///     ..escape::Opening::default()
/// };
/// let answer = fall_protection::both(Edition::Irc2021, &falls, &way_out, Some(true)).map_err(|error| error.to_string())?;
/// assert_eq!(answer.serving, fall_protection::Serving::AnyOf(vec![Device::ReleasableControl]));
/// # Ok::<(), String>(())
/// ```
pub fn both(
    edition: Edition,
    falls: &Opening,
    way_out: &escape::Opening,
    relied_on: Option<bool>,
) -> Result<BothAnswer, FactsError> {
    refuse(falls, way_out)?;
    let falls_now = fall_protection(edition, falls)?;
    let escape_now = escape::opening(edition, way_out)?;
    let devices = Device::OFFERED
        .iter()
        .map(|device| with_device(edition, falls, way_out, relied_on, *device))
        .collect::<Result<Vec<DeviceAnswer>, FactsError>>()?;
    let serving = if is_narrow(falls) {
        Serving::NoneNeeded
    } else {
        serving(&falls_now, &devices)
    };
    Ok(BothAnswer {
        falls: falls_now,
        escape: escape_now,
        devices,
        serving,
        fitted: way_out.device.or(falls.device),
        relied_on,
    })
}

fn with_device(
    edition: Edition,
    falls: &Opening,
    way_out: &escape::Opening,
    relied_on: Option<bool>,
    device: Device,
) -> Result<DeviceAnswer, FactsError> {
    let protects = protects(edition, falls, device)?;
    let keeps_escape = keeps_escape(edition, way_out, device)?;
    let not_relied_on = Truth::fact(Fact::ReliedOnForEscape, relied_on).opposite();
    let may_serve = Truth::all([
        protects.clone(),
        Truth::any([not_relied_on, keeps_escape.clone()]),
    ]);
    Ok(DeviceAnswer {
        device,
        protects,
        keeps_escape,
        may_serve,
    })
}

fn protects(edition: Edition, falls: &Opening, device: Device) -> Result<Truth, FactsError> {
    let with_device = Opening {
        device: Some(device),
        passes_sphere: Some(device != Device::FixedStop && !is_narrow(falls)),
        ..falls.clone()
    };
    Ok(fall_protection(edition, &with_device)?.has_what_is_asked())
}

fn keeps_escape(edition: Edition, way_out: &escape::Opening, device: Device) -> Result<Truth, FactsError> {
    let with_device = escape::Opening {
        device: Some(device),
        ..way_out.clone()
    };
    Ok(escape::opening(edition, &with_device)?.meets())
}

/// A sphere of 4 in does not pass, and no device makes it so.
fn is_narrow(falls: &Opening) -> bool {
    falls.passes_sphere == Some(false) && matches!(falls.device, Some(Device::Nothing | Device::VentLatch))
}

fn serving(falls: &Answer, devices: &[DeviceAnswer]) -> Serving {
    if falls.called_for == Truth::No {
        return Serving::NoneNeeded;
    }
    let serve: Vec<Device> = devices
        .iter()
        .filter(|answer| answer.may_serve == Truth::Yes)
        .map(|answer| answer.device)
        .collect();
    if !serve.is_empty() {
        return Serving::AnyOf(serve);
    }
    let missing: Missing = devices
        .iter()
        .flat_map(|answer| answer.may_serve.missing())
        .collect();
    if missing.is_empty() {
        Serving::NoneServes
    } else {
        Serving::Undecided(missing)
    }
}

/// Refuses two descriptions that are not of one opening.
fn refuse(falls: &Opening, way_out: &escape::Opening) -> Result<(), FactsError> {
    if let Some((lowest, bottom)) = falls.lowest_part.as_ref().zip(way_out.bottom.as_ref())
        && lowest > bottom
    {
        return Err(contradiction(
            (Fact::LowestPartOfOpening, shown(lowest)),
            (Fact::BottomOfClearOpening, shown(bottom)),
            "a lowest part that is not above the bottom",
        ));
    }
    if let Some((one, other)) = falls.device.zip(way_out.device)
        && one != other
    {
        return Err(contradiction(
            (Fact::ControlDevice, one.to_string()),
            (Fact::ControlDevice, other.to_string()),
            "one device",
        ));
    }
    if passes_none_though_wide(falls, way_out) {
        return Err(contradiction(
            (Fact::PassesSphere, "no".to_owned()),
            (
                Fact::ClearWidth,
                "more than 4 in, and so is the height".to_owned(),
            ),
            "a device that limits the opening, or a sphere that passes",
        ));
    }
    Ok(())
}

/// A sphere of 4 in is said not to pass, the opening is wider and taller, and nothing limits it.
fn passes_none_though_wide(falls: &Opening, way_out: &escape::Opening) -> bool {
    let sphere = Number::from(4);
    let wide = [&way_out.clear_width, &way_out.clear_height]
        .iter()
        .all(|side| side.as_ref().is_some_and(|side| *side.low() > sphere));
    wide && is_narrow(falls)
}

fn contradiction(one: (Fact, String), other: (Fact, String), expected: &'static str) -> FactsError {
    FactsError::Contradiction(Contradiction { one, other, expected })
}

fn shown(length: &Number) -> String {
    format_length(length, LengthUnit::Inch)
}
