//! Safety glazing: whether a lite stands where people run, fall or slip into glass.
//!
//! A lite of 36 x 36 1/16 in whose bottom is 17 in above the floor and its top 53 1/16 in, with a floor before it, is a large pane
//! near a walking surface: safety glazing is called for (IRC 2021 R308.4.3). Raise its bottom to 18 in, or make it 36 x 36 in, and
//! this location no longer calls for it.
//!
//! The question is asked of one *lite*, by its own area and its exposed edges, never of a window. In insulating glass each exposed
//! lite is asked ([`lites`]): the inner one by the floor inside, the outer one by the deck outside. The height that counts is that
//! of the *exposed edge of the glass*; the bottom of the clear opening (escape) and its lowest part (falls) are other heights.
//!
//! Seven locations are asked, in the order of the sections: [`Location`]. Each is strict or inclusive as its section is.
//!
//! Always holds: a location whose facts are missing is not decided and says what to ask; an exception is never assumed: one that
//! the caller states only turns *called for* into *may be excused; have it looked at*, and one that what was measured rules out
//! ([`Measured`]) does not even that.
//! Cost: a few comparisons a lite.
//!
//! Source: IRC 2018 and 2021 R308.4, IRC 2024 R324.4, IBC 2018 and 2021 2406.4, read in texts that quote them; [`basis()`] says of
//! each location how far. Local amendments govern.

mod basis;
mod checks;
mod exception;
mod federal;
mod locations;
mod measured;
mod notes;
mod words;

use astragal_exact::Number;

use crate::basis::Basis;
use crate::building_code::Edition;
use crate::facts_error::FactsError;
use crate::truth::{Missing, Truth};

pub use basis::basis;
pub use exception::Exception;
pub use federal::{COVERED, COVERED_BASIS, TEST_STANDARD, TESTS_BASIS, TESTS_SINCE};
pub use measured::{Measured, Rail};
pub use notes::{CATEGORY_BASIS, Category, Note, category, notes};

/// One lite; `None` is what is not known. The area in square inches, heights in inches above the floor or walking surface.
#[derive(Clone, Default, PartialEq, Eq, Debug)]
pub struct Lite {
    /// What the answer calls it.
    pub name: String,
    /// Its exposed area.
    pub area: Option<Number>,
    /// The bottom of its exposed glass above the floor.
    pub bottom_edge: Option<Number>,
    /// The top of its exposed glass above the floor.
    pub top_edge: Option<Number>,
}

/// Where a lite is; `None` is what is not known. Distances are horizontal, in inches.
#[derive(Clone, Default, PartialEq, Eq, Debug)]
pub struct Site {
    /// Whether the glass is in a door: a fixed or operable panel of a swinging, sliding or bifold one.
    pub in_door: Option<bool>,
    /// A door near the glass.
    pub door: Door,
    /// How far the nearest walking surface is from the glass, in a straight line.
    pub walking_surface: Option<Number>,
    /// Whether the glass is in a guard or railing.
    pub in_guard: Option<bool>,
    /// Water near the glass.
    pub wet: Wet,
    /// A stair or ramp beside the glass.
    pub stair: Stair,
    /// The landing at the bottom of a stair.
    pub landing: Landing,
    /// The exceptions that the caller says apply.
    pub exceptions: Vec<Exception>,
    /// What was measured of them.
    pub measured: Measured,
}

/// A door near the glass.
#[derive(Clone, Default, PartialEq, Eq, Debug)]
pub struct Door {
    /// How the wall of the glass stands to the closed door.
    pub wall: Option<DoorWall>,
    /// How far the glass is from the nearer side of the door, or from its hinge side where the wall stands at an angle.
    pub distance: Option<Number>,
    /// Whether the glass is at the hinge side of a door that opens inwards.
    pub hinge_side_of_inswinging: Option<bool>,
}

/// How the wall of the glass stands to a closed door.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum DoorWall {
    /// In the plane of the closed door.
    InPlane,
    /// Perpendicular to it.
    Perpendicular,
    /// At another angle of less than 180 degrees to it.
    Angled,
    /// At 180 degrees or more.
    Beyond,
    /// There is no door near the glass.
    NoDoor,
}

/// Water near the glass.
#[derive(Clone, Default, PartialEq, Eq, Debug)]
pub struct Wet {
    /// What there is.
    pub place: Option<WetPlace>,
    /// The bottom of the exposed glass above where one stands or walks in it or at it; below zero when it lies under that.
    pub edge: Option<Number>,
    /// How far the water's edge is from the glass.
    pub distance: Option<Number>,
}

/// A wet place. A kitchen sink is none, and neither is a wash basin.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum WetPlace {
    /// None of those below.
    NoneHere,
    /// A bath tub.
    Tub,
    /// A shower.
    Shower,
    /// A spa.
    Spa,
    /// A sauna.
    Sauna,
    /// A swimming pool.
    Pool,
}

/// A stair or ramp beside the glass.
#[derive(Clone, Default, PartialEq, Eq, Debug)]
pub struct Stair {
    /// Whether there is one.
    pub beside: Option<bool>,
    /// The bottom of the exposed glass above its walking surface next to it; below zero when it lies under that.
    pub edge: Option<Number>,
    /// How far its walking surface is from the glass.
    pub distance: Option<Number>,
}

/// The landing at the bottom of a stair.
#[derive(Clone, Default, PartialEq, Eq, Debug)]
pub struct Landing {
    /// Whether the glass is at one.
    pub at_bottom: Option<bool>,
    /// The bottom of the exposed glass above the landing; below zero when it lies under that.
    pub edge: Option<Number>,
    /// How far the bottom tread is from the glass.
    pub tread_distance: Option<Number>,
}

/// A place where glass is hazardous, in the order of the sections.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Location {
    /// In a door.
    InDoor,
    /// Beside a door: bottom edge **below** 60 in, and at most 24 in from the door in its plane, or at most 24 in from the hinge
    /// side of a door that opens inwards, on a wall at an angle to it.
    BesideDoor,
    /// A large pane near a walking surface: area **above** 9 sq ft, bottom edge **below** 18 in, top edge **above** 36 in, a walking
    /// surface at most 36 in away, all four.
    LargePane,
    /// In a guard or railing, whatever its area and height.
    Guard,
    /// By a tub, shower, spa, sauna or pool: bottom edge **below** 60 in, and not **more** than 60 in from the water's edge.
    WetPlace,
    /// Beside a stair or ramp: bottom edge **below** 36 in (IRC) or 60 in (IBC), **less** than 36 in away.
    Stair,
    /// At the bottom landing of a stair: bottom edge **below** 36 in, at most 60 in from the bottom tread.
    BottomLanding,
}

/// Whether safety glazing is called for. A check, no approval. A later one outweighs those before it.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Overall {
    /// None of the locations asked calls for it.
    NotByWhatWasAsked,
    /// Each location that calls for it may be excused by an exception that the caller stated; have it looked at.
    MayBeExcused,
    /// It depends on what is missing.
    CannotDecide,
    /// One location at least calls for it.
    CalledFor,
}

/// The answer about one location.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct LocationAnswer {
    /// The location.
    pub location: Location,
    /// Whether it calls for safety glazing.
    pub calls_for_it: Truth,
    /// The exceptions that the caller stated and that belong to this location, in order, but for those that are ruled out.
    pub stated_exceptions: Vec<Exception>,
    /// The exceptions that the caller stated and that what was measured rules out, in order. They excuse nothing.
    pub ruled_out: Vec<Exception>,
    /// Where it stands.
    pub basis: Basis,
}

/// The answer about one lite.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Answer {
    /// The name of the lite.
    pub name: String,
    /// The edition it was asked by.
    pub edition: Edition,
    /// Whether safety glazing is called for.
    pub overall: Overall,
    /// The answer about each location, in the order of [`Location`].
    pub locations: Vec<LocationAnswer>,
    /// What would have to be known to decide all locations.
    pub missing: Missing,
}

/// The answer about the exposed lites of one unit.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct LitesAnswer {
    /// Whether one of them at least calls for it; [`Overall::CannotDecide`] when none was given.
    pub overall: Overall,
    /// The answer about each lite, in the order they were given.
    pub lites: Vec<Answer>,
}

/// Returns whether the lite stands in a hazardous location, location by location.
///
/// # Errors
/// - [`FactsError::Input`]: an area not above 0 or above 2,500 sq ft; an edge above the floor, a distance or a load below 0; a length past
///   3,000 ft; a load of a rail past 10,000 lb a foot.
/// - [`FactsError::Contradiction`]: a top edge that is not above the bottom edge.
/// - [`FactsError::NotInEdition`]: NFPA 101, of which nothing is known here.
///
/// # Examples
/// ## A large pane near the floor
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::building_code::Edition;
/// use astragal_trade::safety_glazing::{Lite, Location, Overall, Site, lite};
/// let pane = Lite {
///     name: "picture".into(),
///     area: Some(Number::from(1297)), // 9 sq ft are 1296
///     bottom_edge: Some(Number::from(17)),
///     top_edge: Some(Number::from(60)),
/// };
/// let site = Site { walking_surface: Some(Number::from(36)), ..Site::default() };
/// let answer = lite(Edition::Irc2021, &pane, &site).map_err(|error| error.to_string())?;
/// assert_eq!(answer.overall, Overall::CalledFor);
/// assert_eq!(answer.calling_for_it().map(|found| found.location).collect::<Vec<_>>(), [Location::LargePane]);
/// # Ok::<(), String>(())
/// ```
/// ## What is not known is not *not called for*
/// ```
/// use astragal_trade::building_code::Edition;
/// use astragal_trade::safety_glazing::{Lite, Overall, Site, lite};
/// let answer = lite(Edition::Irc2021, &Lite::default(), &Site::default()).map_err(|error| error.to_string())?;
/// assert_eq!(answer.overall, Overall::CannotDecide);
/// # Ok::<(), String>(())
/// ```
pub fn lite(edition: Edition, lite: &Lite, site: &Site) -> Result<Answer, FactsError> {
    checks::refuse(edition, lite, site)?;
    let locations: Vec<LocationAnswer> = Location::ALL
        .iter()
        .map(|location| {
            let (stated_exceptions, ruled_out) = exception::stated(*location, site);
            LocationAnswer {
                location: *location,
                calls_for_it: locations::calls_for_it(edition, *location, lite, site),
                stated_exceptions,
                ruled_out,
                basis: basis(edition, *location),
            }
        })
        .collect();
    let missing = locations
        .iter()
        .flat_map(|found| found.calls_for_it.missing())
        .collect();
    Ok(Answer {
        name: lite.name.clone(),
        edition,
        overall: overall(&locations),
        locations,
        missing,
    })
}

/// Returns whether one of the exposed lites of a unit stands in a hazardous location, each by its own edges and site.
///
/// # Errors
/// Those of [`lite`], for the first lite whose facts cannot be.
///
/// # Examples
/// ## The outer lite by a deck
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::building_code::Edition;
/// use astragal_trade::safety_glazing::{Lite, Overall, Site, lites};
/// let pane = |name: &str, bottom: i64| Lite {
///     name: name.into(),
///     area: Some(Number::from(1500)),
///     bottom_edge: Some(Number::from(bottom)),
///     top_edge: Some(Number::from(bottom + 40)),
/// };
/// let site = Site { walking_surface: Some(Number::from(12)), ..Site::default() };
/// let given = [(pane("inner", 30), site.clone()), (pane("outer", 6), site)];
/// let answer = lites(Edition::Irc2021, &given).map_err(|error| error.to_string())?;
/// assert_eq!(answer.lites[1].overall, Overall::CalledFor);
/// assert_eq!(answer.overall, Overall::CalledFor);
/// # Ok::<(), String>(())
/// ```
pub fn lites(edition: Edition, given: &[(Lite, Site)]) -> Result<LitesAnswer, FactsError> {
    let lites = given
        .iter()
        .map(|(of, site)| lite(edition, of, site))
        .collect::<Result<Vec<Answer>, FactsError>>()?;
    let overall = lites
        .iter()
        .map(|answer| answer.overall)
        .max()
        .unwrap_or(Overall::CannotDecide);
    Ok(LitesAnswer { overall, lites })
}

fn overall(locations: &[LocationAnswer]) -> Overall {
    locations
        .iter()
        .map(|found| match found.calls_for_it {
            Truth::No => Overall::NotByWhatWasAsked,
            Truth::Unknown(_) => Overall::CannotDecide,
            Truth::Yes if found.stated_exceptions.is_empty() => Overall::CalledFor,
            Truth::Yes => Overall::MayBeExcused,
        })
        .max()
        .unwrap_or(Overall::CannotDecide)
}

impl Location {
    /// Every location, in the order of the sections.
    pub const ALL: [Location; 7] = [
        Location::InDoor,
        Location::BesideDoor,
        Location::LargePane,
        Location::Guard,
        Location::WetPlace,
        Location::Stair,
        Location::BottomLanding,
    ];
}

impl Answer {
    /// Returns whether a location calls for safety glazing, as a truth, whatever may excuse it.
    ///
    /// # Examples
    /// ## One location decides
    /// ```
    /// use astragal_trade::Truth;
    /// use astragal_trade::building_code::Edition;
    /// use astragal_trade::safety_glazing::{Lite, Site, lite};
    /// let site = Site { in_guard: Some(true), ..Site::default() };
    /// let answer = lite(Edition::Irc2021, &Lite::default(), &site).map_err(|error| error.to_string())?;
    /// assert_eq!(answer.calls_for_it(), Truth::Yes);
    /// # Ok::<(), String>(())
    /// ```
    #[must_use]
    pub fn calls_for_it(&self) -> Truth {
        Truth::any(self.locations.iter().map(|found| found.calls_for_it.clone()))
    }

    /// Returns the locations that call for safety glazing, in order.
    pub fn calling_for_it(&self) -> impl Iterator<Item = &LocationAnswer> {
        self.locations
            .iter()
            .filter(|found| found.calls_for_it == Truth::Yes)
    }
}
