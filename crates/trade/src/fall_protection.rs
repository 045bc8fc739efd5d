//! Protection of children from falling out of a window, and how it goes together with escape.
//!
//! A window whose opening is 120 in above the ground and whose lowest part is 20 in above the floor needs a device by IRC 2021
//! R312.2.1: its opening passes no sphere of 4 in, or it has a fall prevention or control device of ASTM F2090. An insect screen
//! never counts.
//!
//! The height that counts is that of the *lowest part of the clear opening*; the bottom of the clear opening (escape) and the exposed
//! edge of the glass (safety glazing) are other heights.
//!
//! In a bedroom both are asked. A fixed stop keeps a child in and everybody else too; a vent latch has no standing; a releasable
//! control device may serve both: [`both()`].
//!
//! Always holds: both limits are strict, 72 in above the ground and 24 in (IBC 36 in) above the floor are not caught; what is missing
//! is named.
//! Cost: a few comparisons.
//!
//! Source: IRC 2012 R312.2.1 as quoted, the same in 2018 and 2021; IRC 2024 R321.2 in a state's adoption summary; the 36 in of the
//! IBC in a page on the difference, its section 1015.8 from memory; that screens are no guard: IRC 2024 R321.1.1 in a copy typed by others.

mod both;
mod words;

use astragal_exact::Number;

use crate::basis::Basis;
use crate::building_code::Edition;
use crate::control_device::Device;
use crate::fact::Fact;
use crate::facts_error::FactsError;
use crate::input;
use crate::truth::{Missing, Truth};

pub use both::{BothAnswer, DeviceAnswer, Serving, both};

/// An opening counts above this height over the ground, in inches.
const GRADE_ABOVE: i64 = 72;
/// Its lowest part counts below this height over the floor, in inches: IRC, IBC.
const LOWEST_BELOW_IRC: i64 = 24;
const LOWEST_BELOW_IBC: i64 = 36;

/// What is known of an opening; `None` is what is not known. Heights in inches.
#[derive(Clone, Default, PartialEq, Eq, Debug)]
pub struct Opening {
    /// Whether the window opens.
    pub opens: Option<bool>,
    /// The opening above the ground or surface outside; below zero when it lies under it.
    pub height_above_grade: Option<Number>,
    /// The lowest part of the clear opening above the floor inside.
    pub lowest_part: Option<Number>,
    /// Whether a sphere of 4 in passes where it is open as far as it goes, a vent latch folded back, a device holding.
    pub passes_sphere: Option<bool>,
    /// The device that limits how far it opens.
    pub device: Option<Device>,
    /// Whether an insect screen is in it. It never protects; it is only said.
    pub insect_screen: bool,
}

/// Whether a window is protected against falls. A check, no approval.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Verdict {
    /// It does not open: it is not asked.
    DoesNotOpen,
    /// It is not asked, by its heights.
    NotCalledFor,
    /// It is asked, or may be, and something protects.
    Protected,
    /// It is asked, and nothing protects.
    Unprotected,
    /// It depends on what is missing.
    Undecided,
}

/// What protects.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Means {
    /// A sphere of 4 in does not pass.
    NarrowOpening,
    /// A fall prevention device of ASTM F2090.
    FallPrevention,
    /// A control device of ASTM F2090.
    ReleasableControl,
}

/// The answer about one opening.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Answer {
    /// The edition it was asked by.
    pub edition: Edition,
    /// Whether it is protected.
    pub verdict: Verdict,
    /// Whether protection is called for, by the heights.
    pub called_for: Truth,
    /// What is known to protect, in order.
    pub means: Vec<Means>,
    /// What would have to be known; empty unless it is undecided.
    pub missing: Missing,
    /// The device it has, where that is known.
    pub device: Option<Device>,
    /// Whether an insect screen is in it, which does not count.
    pub insect_screen: bool,
    /// Where it stands.
    pub basis: Basis,
}

/// Returns whether an opening calls for protection against falls, and whether something protects.
///
/// # Errors
/// - [`FactsError::Input`]: a lowest part below the floor; a height past 3,000 ft.
/// - [`FactsError::NotInEdition`]: NFPA 101, of which nothing is known here.
///
/// # Examples
/// ## A low window upstairs
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::building_code::Edition;
/// use astragal_trade::control_device::Device;
/// use astragal_trade::fall_protection::{Opening, Verdict, fall_protection};
/// let mut window = Opening {
///     opens: Some(true),
///     height_above_grade: Some(Number::from(120)),
///     lowest_part: Some(Number::from(20)),
///     passes_sphere: Some(true),
///     device: Some(Device::Nothing),
///     insect_screen: true,
/// };
/// let answer = fall_protection(Edition::Irc2021, &window).map_err(|error| error.to_string())?;
/// assert_eq!(answer.verdict, Verdict::Unprotected);
/// window.device = Some(Device::ReleasableControl);
/// let answer = fall_protection(Edition::Irc2021, &window).map_err(|error| error.to_string())?;
/// assert_eq!(answer.verdict, Verdict::Protected);
/// # Ok::<(), String>(())
/// ```
/// ## The limits are not caught
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::building_code::Edition;
/// use astragal_trade::fall_protection::{Opening, Verdict, fall_protection};
/// let window = Opening {
///     opens: Some(true),
///     height_above_grade: Some(Number::from(72)),
///     lowest_part: Some(Number::from(10)),
///     ..Opening::default()
/// };
/// let answer = fall_protection(Edition::Irc2021, &window).map_err(|error| error.to_string())?;
/// assert_eq!(answer.verdict, Verdict::NotCalledFor);
/// # Ok::<(), String>(())
/// ```
pub fn fall_protection(edition: Edition, opening: &Opening) -> Result<Answer, FactsError> {
    let (basis, lowest_below) = rule(edition)?;
    refuse(opening)?;
    Ok(answer(edition, opening, basis, lowest_below))
}

impl Answer {
    /// Returns whether the opening is protected as far as that is asked, as a truth: no only when it is asked and nothing protects.
    ///
    /// # Examples
    /// ## A window that does not open
    /// ```
    /// use astragal_trade::Truth;
    /// use astragal_trade::building_code::Edition;
    /// use astragal_trade::fall_protection::{Opening, fall_protection};
    /// let picture = Opening { opens: Some(false), ..Opening::default() };
    /// let answer = fall_protection(Edition::Irc2021, &picture).map_err(|error| error.to_string())?;
    /// assert_eq!(answer.has_what_is_asked(), Truth::Yes);
    /// # Ok::<(), String>(())
    /// ```
    #[must_use]
    pub fn has_what_is_asked(&self) -> Truth {
        match self.verdict {
            Verdict::DoesNotOpen | Verdict::NotCalledFor | Verdict::Protected => Truth::Yes,
            Verdict::Unprotected => Truth::No,
            Verdict::Undecided => Truth::Unknown(self.missing.clone()),
        }
    }
}

/// Where it stands, and below which height the lowest part counts.
fn rule(edition: Edition) -> Result<(Basis, i64), FactsError> {
    let irc = |document, section| Ok((Basis::second_hand(document, section), LOWEST_BELOW_IRC));
    // The 36 in were read in a page on the difference; the number of the section was not, and decides the standing of both.
    let ibc = |document| Ok((Basis::from_memory(document, "1015.8"), LOWEST_BELOW_IBC));
    match edition {
        Edition::Irc2018 => irc("IRC 2018", "R312.2.1"),
        Edition::Irc2021 => irc("IRC 2021", "R312.2.1"),
        Edition::Irc2024 => irc("IRC 2024", "R321.2"),
        Edition::Ibc2018 => ibc("IBC 2018"),
        Edition::Ibc2021 => ibc("IBC 2021"),
        Edition::Nfpa101 => Err(FactsError::NotInEdition {
            edition,
            asked: "fall protection",
        }),
    }
}

fn refuse(opening: &Opening) -> Result<(), FactsError> {
    if let Some(lowest) = &opening.lowest_part {
        input::distance(Fact::LowestPartOfOpening, lowest)?;
    }
    if let Some(height) = &opening.height_above_grade {
        input::height_either_way(Fact::HeightAboveGrade, height)?;
    }
    Ok(())
}

fn answer(edition: Edition, opening: &Opening, basis: Basis, lowest_below: i64) -> Answer {
    let called_for = Truth::all([
        Truth::fact(Fact::Operation, opening.opens),
        Truth::above(
            Fact::HeightAboveGrade,
            opening.height_above_grade.as_ref(),
            &Number::from(GRADE_ABOVE),
        ),
        Truth::below(
            Fact::LowestPartOfOpening,
            opening.lowest_part.as_ref(),
            &Number::from(lowest_below),
        ),
    ]);
    let protected = Truth::any([
        Truth::fact(Fact::PassesSphere, opening.passes_sphere).opposite(),
        device_protects(opening.device),
    ]);
    let (verdict, missing) = verdict(opening.opens, &called_for, protected);
    Answer {
        edition,
        verdict,
        called_for,
        means: means(opening),
        missing,
        device: opening.device,
        insect_screen: opening.insect_screen,
        basis,
    }
}

fn verdict(opens: Option<bool>, called_for: &Truth, protected: Truth) -> (Verdict, Missing) {
    let nothing = Missing::new();
    if opens == Some(false) {
        return (Verdict::DoesNotOpen, nothing);
    }
    match (called_for, protected) {
        (Truth::No, _) => (Verdict::NotCalledFor, nothing),
        (_, Truth::Yes) => (Verdict::Protected, nothing),
        (Truth::Yes, Truth::No) => (Verdict::Unprotected, nothing),
        (called_for, protected) => {
            let mut missing = called_for.missing();
            missing.extend(protected.missing());
            (Verdict::Undecided, missing)
        }
    }
}

/// A fixed stop protects by leaving a narrow opening, not by itself; a vent latch has no standing.
fn device_protects(device: Option<Device>) -> Truth {
    Truth::of(Fact::ControlDevice, device.as_ref(), |device| {
        matches!(device, Device::ReleasableControl | Device::FallPrevention { .. })
    })
}

fn means(opening: &Opening) -> Vec<Means> {
    let mut means = Vec::new();
    if opening.passes_sphere == Some(false) {
        means.push(Means::NarrowOpening);
    }
    match opening.device {
        Some(Device::FallPrevention { .. }) => means.push(Means::FallPrevention),
        Some(Device::ReleasableControl) => means.push(Means::ReleasableControl),
        Some(Device::Nothing | Device::FixedStop | Device::VentLatch) | None => {}
    }
    means
}
