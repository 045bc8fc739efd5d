//! Whether lead-safe work rules apply to a job in a house or in a child-occupied facility.
//!
//! A house of 1977 in which one window of 4 sq ft is replaced: they apply. A house of 1978: not, by its year. A house whose
//! year nobody knows: it cannot be decided, is treated as if they applied, and the year is asked for. A child-occupied facility
//! of 1977 is asked like a house of that year; an office building of 1977 is not.
//!
//! Always holds: replacing a window is never minor work, whatever its size. Unknown is never taken for no.
//! Not decided here: what takes a house or a job out of the rule for other reasons ([`NOT_DECIDED`]), and the rules of a
//! state that runs its own programme. The answer is a check; the agency and a certified firm decide.
//! Cost: constant.
//!
//! Source: 40 CFR 745 subpart E (renovation, repair and painting). Minor work as the EPA answers about 40 CFR 745.83.

use astragal_exact::{AreaUnit, Number, format_area};

use crate::basis::Basis;
use crate::fact::Fact;
use crate::input::InputError;
use crate::truth::{Missing, Truth};

/// The year from which on a house is not target housing by its year: 1978.
pub const FIRST_YEAR_WITHOUT_LEAD_RULE: i32 = 1978;

/// The most painted surface that minor work disturbs in one room, in square inches: 6 sq ft.
pub const MINOR_IN_ROOM_MOST: i64 = 6 * 144;

/// The most painted surface that minor work disturbs outside, in square inches: 20 sq ft.
pub const MINOR_OUTSIDE_MOST: i64 = 20 * 144;

/// LIMIT: the years that are taken for the year a house was built in.
pub const YEARS_BUILT: std::ops::RangeInclusive<i32> = 1500..=2200;

/// Where the year comes from.
pub const YEAR_BASIS: Basis = Basis::second_hand("40 CFR 745 subpart E", "");

/// Where minor work and the replacement of windows come from.
pub const MINOR_WORK_BASIS: Basis = Basis::verified("40 CFR 745.83", "as the EPA answers about it");

/// Where it stands that the rule is about housing and child-occupied facilities.
pub const BUILDING_BASIS: Basis = Basis::verified("40 CFR 745.83", "as the EPA answers about it");

/// What makes a building a child-occupied facility, which is not decided here, and where that stands.
pub const FACILITY_NOT_DECIDED: (&str, Basis) = (
    "whether a building is a child-occupied facility, such as a school or a day care that the same small children visit regularly",
    Basis::from_memory("40 CFR 745.83", ""),
);

/// Where it stands that a certified firm does the work.
pub const CERTIFIED_FIRM_BASIS: Basis = Basis::from_memory("40 CFR 745 subpart E", "certified firms");

/// What may take a house or a job out of the rule and is not decided here, each with where it was seen.
pub const NOT_DECIDED: [(&str, Basis); 3] = [
    (
        "the paint was found free of lead by a certified person",
        Basis::from_memory("40 CFR 745.82", ""),
    ),
    (
        "a dwelling without bedrooms in which no child under 6 lives",
        Basis::from_memory("40 CFR 745.83", ""),
    ),
    (
        "an owner works on the owner's own home",
        Basis::from_memory("40 CFR 745.82", ""),
    ),
];

/// What kind of building is worked in, as far as the rule asks ([`BUILDING_BASIS`]).
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Building {
    /// Housing.
    Housing,
    /// A child-occupied facility; what makes a building one is not decided here ([`FACILITY_NOT_DECIDED`]).
    ChildOccupiedFacility,
    /// Neither of them.
    Neither,
}

/// What a job disturbs. What is not known is `None`; a job that touches nothing outside says 0.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Work {
    /// Whether a window is replaced.
    pub window_replaced: Option<bool>,
    /// Painted surface disturbed in the room where it is most, in square inches.
    pub paint_in_room: Option<Number>,
    /// Painted surface disturbed outside, in square inches.
    pub paint_outside: Option<Number>,
    /// Whether painted surfaces are torn out.
    pub demolition: Option<bool>,
    /// Whether a practice is used that the rule prohibits or restricts.
    pub prohibited_practice: Option<bool>,
}

/// Whether lead-safe rules apply, as far as it can be decided.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct LeadSafe {
    /// Whether they do.
    pub applies: Truth,
    /// Whether the work is minor: no window replaced, nothing torn out, little disturbed.
    pub minor: Truth,
}

impl Work {
    /// Returns the work of replacing a window, of which no more needs to be known.
    #[must_use]
    pub fn window_replacement() -> Self {
        Self {
            window_replaced: Some(true),
            ..Self::default()
        }
    }

    fn is_minor(&self) -> Truth {
        let never = |fact, value| Truth::fact(fact, value).opposite();
        Truth::all([
            never(Fact::WindowReplaced, self.window_replaced),
            never(Fact::Demolition, self.demolition),
            never(Fact::ProhibitedPractice, self.prohibited_practice),
            Truth::at_most(
                Fact::PaintDisturbedInRoom,
                self.paint_in_room.as_ref(),
                &Number::from(MINOR_IN_ROOM_MOST),
            ),
            Truth::at_most(
                Fact::PaintDisturbedOutside,
                self.paint_outside.as_ref(),
                &Number::from(MINOR_OUTSIDE_MOST),
            ),
        ])
    }
}

impl LeadSafe {
    /// Says whether to work as if the rules applied: unless it is known that they do not.
    #[must_use]
    pub fn is_treated_as_applying(&self) -> bool {
        self.applies != Truth::No
    }

    /// Returns what would have to be known to decide it.
    #[must_use]
    pub fn missing(&self) -> Missing {
        self.applies.missing()
    }

    /// Returns the caution to show, in one line; `None` when it is known that the rules do not apply.
    #[must_use]
    pub fn caution(&self) -> Option<&'static str> {
        match self.applies {
            Truth::Yes => Some(
                "check: lead-safe work rules apply, to every window replacement in a house or a \
                 child-occupied facility from before 1978; a certified firm does the work (the firm from memory, to be confirmed)",
            ),
            Truth::Unknown(_) => Some(
                "check: treat as if lead-safe work rules applied, and ask what is missing; they apply to every window \
                 replacement in a house or a child-occupied facility from before 1978",
            ),
            Truth::No => None,
        }
    }
}

/// Says whether lead-safe work rules apply to work in a house of this year; `None` is not known. [`lead_safe_in`] asks about other
/// buildings.
///
/// # Errors
/// [`InputError`] for a year outside [`YEARS_BUILT`], or an area below 0.
///
/// # Cost
/// Constant.
///
/// # Source
/// 40 CFR 745 subpart E; see [`YEAR_BASIS`] and [`MINOR_WORK_BASIS`].
///
/// # Examples
/// ## One small window in a house of 1977
/// ```
/// use astragal_trade::Truth;
/// use astragal_trade::lead::{Work, lead_safe};
/// let window = Work::window_replacement();
/// assert_eq!(lead_safe(Some(1977), &window)?.applies, Truth::Yes);
/// assert_eq!(lead_safe(Some(1978), &window)?.applies, Truth::No);
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
/// ## Nobody knows the year
/// ```
/// use astragal_trade::Fact;
/// use astragal_trade::lead::{Work, lead_safe};
/// let answer = lead_safe(None, &Work::window_replacement())?;
/// assert!(answer.is_treated_as_applying());
/// assert_eq!(answer.missing(), [Fact::YearBuilt].into());
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
/// ## A slip of the pen
/// ```
/// use astragal_trade::lead::{Work, lead_safe};
/// let error = lead_safe(Some(197), &Work::default()).err().map(|error| error.to_string());
/// assert_eq!(error.as_deref(), Some("year built is `197`; expected a year from 1500 to 2200"));
/// ```
pub fn lead_safe(year_built: Option<i32>, work: &Work) -> Result<LeadSafe, InputError> {
    lead_safe_in(Some(Building::Housing), year_built, work)
}

/// Says the same of work in a building of any kind; `None` is not known, and asked for where the year and the work leave it open.
///
/// # Errors
/// Those of [`lead_safe`].
///
/// # Cost
/// Constant.
///
/// # Source
/// 40 CFR 745 subpart E; see [`BUILDING_BASIS`].
///
/// # Examples
/// ## A day care of 1977
/// ```
/// use astragal_trade::Truth;
/// use astragal_trade::lead::{Building, Work, lead_safe_in};
/// let ask = |building| lead_safe_in(Some(building), Some(1977), &Work::window_replacement());
/// assert_eq!(ask(Building::ChildOccupiedFacility)?.applies, Truth::Yes);
/// assert_eq!(ask(Building::Neither)?.applies, Truth::No);
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
/// ## Nobody says what it is
/// ```
/// use astragal_trade::Fact;
/// use astragal_trade::lead::{Work, lead_safe_in};
/// let answer = lead_safe_in(None, Some(1977), &Work::window_replacement())?;
/// assert!(answer.is_treated_as_applying());
/// assert_eq!(answer.missing(), [Fact::BuildingKind].into());
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
pub fn lead_safe_in(
    building: Option<Building>,
    year_built: Option<i32>,
    work: &Work,
) -> Result<LeadSafe, InputError> {
    if let Some(year) = year_built.filter(|year| !YEARS_BUILT.contains(year)) {
        return Err(InputError {
            fact: Fact::YearBuilt,
            found: year.to_string(),
            expected: format!("a year from {} to {}", YEARS_BUILT.start(), YEARS_BUILT.end()),
        });
    }
    area(Fact::PaintDisturbedInRoom, work.paint_in_room.as_ref())?;
    area(Fact::PaintDisturbedOutside, work.paint_outside.as_ref())?;
    let minor = work.is_minor();
    let old = Truth::of(Fact::YearBuilt, year_built.as_ref(), |year| {
        *year < FIRST_YEAR_WITHOUT_LEAD_RULE
    });
    let covered = Truth::of(Fact::BuildingKind, building.as_ref(), |building| match building {
        Building::Housing | Building::ChildOccupiedFacility => true,
        Building::Neither => false,
    });
    Ok(LeadSafe {
        applies: Truth::all([covered, old, minor.clone().opposite()]),
        minor,
    })
}

fn area(fact: Fact, square_inches: Option<&Number>) -> Result<(), InputError> {
    match square_inches {
        Some(area) if area.is_negative() => Err(InputError {
            fact,
            found: format_area(area, AreaUnit::SquareFoot),
            expected: "an area of 0 or more".to_owned(),
        }),
        _ => Ok(()),
    }
}
