//! The federal holidays of the United States, by their rules.
//!
//! Independence Day is named for 4 July; in 2026 that is a Saturday, and it is observed on Friday 3 July.
//!
//! Always holds: a holiday of a given Monday or Thursday is observed on its named day. A day of the year that falls on a
//! Saturday is observed on the Friday before, on a Sunday on the Monday after: New Year's Day may be observed in the year
//! before.
//! Not here: Inauguration Day, which is a holiday in and around the capital only, and days that a president gives once.
//! LIMIT: 1971, when the Monday holidays began, to 2200.
//! Cost: a few dates.
//!
//! Source: 5 U.S.C. 6103, not read itself: the eleven holidays and the two rules of observance as federal courts print them; from which
//! year on a holiday is one, and the Veterans Days of 1971 to 1977, in texts about it.

use jiff::civil::{Date, Weekday};
use std::ops::RangeInclusive;

use crate::basis::Basis;

/// LIMIT: the years whose holidays are known here.
pub const YEARS: RangeInclusive<i16> = 1971..=2200;

/// A federal holiday of the United States.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum FederalHoliday {
    /// 1 January.
    NewYearsDay,
    /// The third Monday of January, from 1986.
    MartinLutherKingJr,
    /// The third Monday of February.
    WashingtonsBirthday,
    /// The last Monday of May.
    MemorialDay,
    /// 19 June, from 2021.
    Juneteenth,
    /// 4 July.
    IndependenceDay,
    /// The first Monday of September.
    LaborDay,
    /// The second Monday of October.
    ColumbusDay,
    /// 11 November; from 1971 to 1977 the fourth Monday of October.
    VeteransDay,
    /// The fourth Thursday of November.
    ThanksgivingDay,
    /// 25 December.
    ChristmasDay,
}

/// How a holiday is found in a year.
#[derive(Clone, Copy)]
enum Rule {
    Day(i8, i8),
    Nth(i8, i8, Weekday),
}

impl FederalHoliday {
    /// Every holiday, in the order of the year.
    pub const ALL: [Self; 11] = [
        Self::NewYearsDay,
        Self::MartinLutherKingJr,
        Self::WashingtonsBirthday,
        Self::MemorialDay,
        Self::Juneteenth,
        Self::IndependenceDay,
        Self::LaborDay,
        Self::ColumbusDay,
        Self::VeteransDay,
        Self::ThanksgivingDay,
        Self::ChristmasDay,
    ];

    /// Returns its name as the statute has it.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::NewYearsDay => "New Year's Day",
            Self::MartinLutherKingJr => "Birthday of Martin Luther King, Jr.",
            Self::WashingtonsBirthday => "Washington's Birthday",
            Self::MemorialDay => "Memorial Day",
            Self::Juneteenth => "Juneteenth National Independence Day",
            Self::IndependenceDay => "Independence Day",
            Self::LaborDay => "Labor Day",
            Self::ColumbusDay => "Columbus Day",
            Self::VeteransDay => "Veterans Day",
            Self::ThanksgivingDay => "Thanksgiving Day",
            Self::ChristmasDay => "Christmas Day",
        }
    }

    /// Returns the day that its rule names in a year; `None` outside [`YEARS`] and before it was a holiday.
    ///
    /// # Examples
    /// ## The fourth Thursday of November
    /// ```
    /// use astragal_trade::Date;
    /// use astragal_trade::cooling_off::FederalHoliday;
    /// assert_eq!(FederalHoliday::ThanksgivingDay.named_day(2026), Some(Date::constant(2026, 11, 26)));
    /// ```
    /// ## Not yet a holiday
    /// ```
    /// use astragal_trade::cooling_off::FederalHoliday;
    /// assert_eq!(FederalHoliday::Juneteenth.named_day(2020), None);
    /// ```
    #[must_use]
    pub fn named_day(self, year: i16) -> Option<Date> {
        YEARS.contains(&year).then(|| self.day_of(year)).flatten()
    }

    /// Returns the day on which it is observed; it may lie in the year before. `None` as in
    /// [`named_day`](Self::named_day).
    ///
    /// # Examples
    /// ## New Year's Day on a Saturday
    /// ```
    /// use astragal_trade::Date;
    /// use astragal_trade::cooling_off::FederalHoliday;
    /// let observed = FederalHoliday::NewYearsDay.observed_day(2022);
    /// assert_eq!(observed, Some(Date::constant(2021, 12, 31)));
    /// ```
    /// ## Not yet a holiday
    /// ```
    /// use astragal_trade::cooling_off::FederalHoliday;
    /// assert_eq!(FederalHoliday::MartinLutherKingJr.observed_day(1985), None);
    /// ```
    #[must_use]
    pub fn observed_day(self, year: i16) -> Option<Date> {
        self.named_day(year).and_then(observed)
    }

    /// Returns the holiday that is named for this day.
    #[must_use]
    pub fn named_on(day: Date) -> Option<Self> {
        Self::ALL
            .into_iter()
            .find(|holiday| holiday.day_of(day.year()) == Some(day))
    }

    /// Returns the holiday that is observed on this day, its named day included when it is observed there.
    #[must_use]
    pub fn observed_on(day: Date) -> Option<Self> {
        let year = day.year();
        Self::ALL.into_iter().find(|holiday| {
            [Some(year), year.checked_add(1)]
                .into_iter()
                .flatten()
                .filter_map(|year| holiday.day_of(year))
                .any(|named| observed(named) == Some(day))
        })
    }

    /// Returns where it was seen.
    #[must_use]
    pub fn basis(self) -> Basis {
        Basis::second_hand("5 U.S.C.", "6103")
    }

    /// Without the limit of years, so that a span may end just after it.
    fn day_of(self, year: i16) -> Option<Date> {
        if year < self.first_year() {
            return None;
        }
        match self.rule(year) {
            Rule::Day(month, day) => Date::new(year, month, day).ok(),
            Rule::Nth(month, nth, weekday) => Date::new(year, month, 1)
                .ok()?
                .nth_weekday_of_month(nth, weekday)
                .ok(),
        }
    }

    fn first_year(self) -> i16 {
        match self {
            Self::MartinLutherKingJr => 1986,
            Self::Juneteenth => 2021,
            _ => *YEARS.start(),
        }
    }

    fn rule(self, year: i16) -> Rule {
        match self {
            Self::NewYearsDay => Rule::Day(1, 1),
            Self::MartinLutherKingJr => Rule::Nth(1, 3, Weekday::Monday),
            Self::WashingtonsBirthday => Rule::Nth(2, 3, Weekday::Monday),
            Self::MemorialDay => Rule::Nth(5, -1, Weekday::Monday),
            Self::Juneteenth => Rule::Day(6, 19),
            Self::IndependenceDay => Rule::Day(7, 4),
            Self::LaborDay => Rule::Nth(9, 1, Weekday::Monday),
            Self::ColumbusDay => Rule::Nth(10, 2, Weekday::Monday),
            Self::VeteransDay if year < 1978 => Rule::Nth(10, 4, Weekday::Monday),
            Self::VeteransDay => Rule::Day(11, 11),
            Self::ThanksgivingDay => Rule::Nth(11, 4, Weekday::Thursday),
            Self::ChristmasDay => Rule::Day(12, 25),
        }
    }
}

fn observed(named: Date) -> Option<Date> {
    match named.weekday() {
        Weekday::Saturday => named.yesterday().ok(),
        Weekday::Sunday => named.tomorrow().ok(),
        _ => Some(named),
    }
}
