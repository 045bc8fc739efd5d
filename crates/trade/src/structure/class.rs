//! The four performance classes of windows and the grades in pounds by the square foot.
//!
//! LC-PG35 is class LC, tested for 35 psf. Class AW begins at 40.
//!
//! Always holds: a [`Grade`] is a multiple of 5 psf from 15 to 200.
//!
//! Source: NAFS (AAMA/WDMA/CSA 101/I.S.2/A440), editions 2008 to 2022: classes read on the standards body's page, least grades
//! in a trade journal, the step of 5 psf from memory.

use std::fmt;

use astragal_exact::Number;

use crate::refusal::{refused, unknown};
use crate::{Basis, Fact, InputError};

/// Where the least grade of each class stands.
pub const MINIMUM_BASIS: Basis = Basis::second_hand("NAFS", "minimum performance grades");
/// Where the step between grades stands.
pub const GRADE_BASIS: Basis = Basis::from_memory("NAFS", "optional performance grades");

/// What is said where a unit comes with a design pressure and no grade.
pub const PRESSURE_IS_NO_GRADE: &str =
    "a design pressure alone is not a grade: a grade asks for air, water, operation and forced entry as well";
/// Where that stands.
pub const PRESSURE_IS_NO_GRADE_BASIS: Basis =
    Basis::verified("NAFS, the standards body's summary", "performance grade");

/// The lowest grade of any class, in psf.
pub const GRADE_LEAST: i64 = 15;
/// The step between grades, in psf.
pub const GRADE_STEP: i64 = 5;
/// LIMIT: the highest grade that is taken for one, in psf.
pub const GRADE_MOST: i64 = 200;

/// A performance class.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Class {
    /// R: one- and two-family houses.
    R,
    /// LC: low and mid-rise.
    LC,
    /// CW: commercial.
    CW,
    /// AW: tall buildings, the hardest use.
    AW,
}

/// A performance grade.
///
/// INVARIANT: a multiple of [`GRADE_STEP`] from [`GRADE_LEAST`] to [`GRADE_MOST`].
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub struct Grade(i64);

impl Class {
    /// Every class, from the lightest use to the hardest.
    pub const ALL: [Self; 4] = [Self::R, Self::LC, Self::CW, Self::AW];

    /// The name of the class.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::R => "R",
            Self::LC => "LC",
            Self::CW => "CW",
            Self::AW => "AW",
        }
    }

    /// The least grade that a unit of this class has ([`MINIMUM_BASIS`]).
    #[must_use]
    pub fn least_grade(self) -> Grade {
        Grade(match self {
            Self::R => 15,
            Self::LC => 25,
            Self::CW => 30,
            Self::AW => 40,
        })
    }

    /// The least grade in pascals, as the standard prints it: a round number, not a conversion.
    #[must_use]
    pub fn least_grade_pascals_printed(self) -> i64 {
        match self {
            Self::R => 720,
            Self::LC => 1200,
            Self::CW => 1440,
            Self::AW => 1920,
        }
    }

    /// Takes a grade that a unit of this class can have.
    ///
    /// # Errors
    /// [`InputError`] for a grade below the least one of the class.
    ///
    /// # Examples
    /// ## AW begins at 40
    /// ```
    /// use astragal_exact::Number;
    /// use astragal_trade::structure::{Class, Grade};
    /// let grade = Grade::new(&Number::from(35))?;
    /// assert!(Class::LC.check(grade).is_ok());
    /// let error = Class::AW.check(grade).err().map(|error| error.to_string());
    /// let expected = "performance grade of the unit is `PG35`; expected PG40 or more for class AW";
    /// assert_eq!(error.as_deref(), Some(expected));
    /// # Ok::<(), astragal_trade::InputError>(())
    /// ```
    pub fn check(self, grade: Grade) -> Result<(), InputError> {
        let least = self.least_grade();
        if grade >= least {
            return Ok(());
        }
        Err(InputError {
            fact: Fact::PerformanceGrade,
            found: grade.to_string(),
            expected: format!("{least} or more for class {self}"),
        })
    }

    /// Reads a class: `R`, `lc`.
    ///
    /// # Errors
    /// [`InputError`] for any other text, with the classes that are known.
    ///
    /// # Examples
    /// ## A class of an older edition
    /// ```
    /// use astragal_trade::structure::Class;
    /// assert_eq!(Class::from_text("lc"), Ok(Class::LC));
    /// let error = Class::from_text("HC").err().map(|error| error.to_string());
    /// let expected = "performance class of the unit is `HC`; expected one of `R`, `LC`, `CW`, `AW`";
    /// assert_eq!(error.as_deref(), Some(expected));
    /// ```
    pub fn from_text(text: &str) -> Result<Self, InputError> {
        Self::ALL
            .into_iter()
            .find(|class| class.id().eq_ignore_ascii_case(text.trim()))
            .ok_or_else(|| unknown(Fact::PerformanceClass, text, &Self::ALL.map(Self::id)))
    }
}

impl fmt::Display for Class {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str(self.id())
    }
}

impl Grade {
    /// Returns the grade of so many psf.
    ///
    /// # Errors
    /// [`InputError`] unless it is a multiple of 5 from 15 to 200.
    ///
    /// # Examples
    /// ## 32 psf is a pressure and no grade
    /// ```
    /// use astragal_exact::Number;
    /// use astragal_trade::structure::Grade;
    /// assert_eq!(Grade::new(&Number::from(35))?.to_string(), "PG35");
    /// assert!(Grade::new(&Number::from(32)).is_err());
    /// # Ok::<(), astragal_trade::InputError>(())
    /// ```
    pub fn new(pounds_per_square_foot: &Number) -> Result<Self, InputError> {
        match pounds_per_square_foot.to_i64() {
            Some(whole) if (GRADE_LEAST..=GRADE_MOST).contains(&whole) && whole % GRADE_STEP == 0 => {
                Ok(Self(whole))
            }
            _ => Err(refused(
                Fact::PerformanceGrade,
                pounds_per_square_foot,
                "a multiple of 5 psf from 15 to 200",
            )),
        }
    }

    /// Returns the lowest grade that is at least a pressure in psf; nothing when there is none.
    #[must_use]
    pub fn least_for(pounds_per_square_foot: &Number) -> Option<Self> {
        let step = Number::from(GRADE_STEP);
        let up = pounds_per_square_foot
            .ceil_to(&step)?
            .max(Number::from(GRADE_LEAST));
        Self::new(&up).ok()
    }

    /// The grade in pounds by the square foot.
    #[must_use]
    pub fn pounds_per_square_foot(self) -> Number {
        Number::from(self.0)
    }
}

impl fmt::Display for Grade {
    /// `PG35`.
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "PG{}", self.0)
    }
}
