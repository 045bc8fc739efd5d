//! Until when a buyer may cancel a sale made at home or elsewhere away from the seller's shop, by the federal rule.
//!
//! Signed at the buyer's home on Monday 23 November 2026 for $4,000: until midnight of Friday 27 November, the third business day
//! after, since Thanksgiving does not count.
//!
//! A business day is any day but a Sunday and a federal holiday; a Saturday is one. Where a holiday falls on a weekend and is
//! observed on another day, the text does not say which of the two days it means. Both are left out here, so that the later
//! date is given: a buyer is never told too early a day.
//!
//! Always holds: the last day is after the day of signing, is a business day, and is never before the one that leaves out
//! the named days alone. What cannot be decided names what is missing.
//! Who asked for the visit is no fact here: the rule applies to buyers who invited the seller as well ([`APPLIES_ALSO`]).
//! Not decided here: what takes a sale out of the rule ([`NOT_COVERED`]). State law may give longer. The answer is a check.
//! LIMIT: days signed from 1971, when the present Monday holidays began, to 2200; later holidays are unknown. The amounts
//! are those of the text as of 2021, whatever day is asked about. No clock is read.
//! Cost: a few dozen dates.
//!
//! Source: 16 CFR 429.0 and 429.1 (amounts and the third business day were read there; the definition of a business day in
//! texts that quote it); holidays as in [`FederalHoliday`].

mod contract;
mod holiday;

pub use contract::{CANCELLATION_FORMS, CONTRACT_BASIS, CONTRACT_FORM, NOTICE_POINTS_LEAST};
pub use holiday::{FederalHoliday, YEARS};

use astragal_exact::Number;
use jiff::civil::{Date, Weekday};
use std::fmt;

use crate::basis::Basis;
use crate::fact::Fact;
use crate::input::InputError;
use crate::truth::{Missing, Truth};

/// The least price at the buyer's home, in dollars.
pub const PRICE_AT_HOME_LEAST: i64 = 25;

/// The least price elsewhere away from the seller's premises, in dollars.
pub const PRICE_ELSEWHERE_LEAST: i64 = 130;

/// How many business days after the day of signing the right lasts, until midnight of the last.
pub const BUSINESS_DAYS: u32 = 3;

/// Where the amounts come from.
pub const PRICE_BASIS: Basis = Basis::verified("16 CFR", "429.0(a)");

/// Where the number of days comes from.
pub const DAYS_BASIS: Basis = Basis::verified("16 CFR", "429.1(a)");

/// Where the meaning of a business day comes from.
pub const BUSINESS_DAY_BASIS: Basis = Basis::second_hand("16 CFR", "429.0");

/// What is thought to take a sale out of the rule and does not: a sale in the home is one whoever asked for the visit.
pub const APPLIES_ALSO: &str = "the buyer invited the seller to come";

/// Where that stands.
pub const APPLIES_ALSO_BASIS: Basis = Basis::verified("16 CFR", "429.0(a)");

/// Sales that the rule leaves out and that are not decided here, each with where it was seen.
pub const NOT_COVERED: [(&str, Basis); 4] = [
    (
        "it was agreed after the buyer had visited the seller's permanent shop, where the goods are shown",
        Basis::verified("16 CFR", "429.0(a)(1)"),
    ),
    (
        "it was made wholly by mail or telephone",
        Basis::from_memory("16 CFR", "429.0(a)"),
    ),
    (
        "the buyer asked for it in an emergency and says so in a signed statement of the buyer's own",
        Basis::from_memory("16 CFR", "429.0(a)"),
    ),
    (
        "it is a sale of real estate, insurance or securities",
        Basis::from_memory("16 CFR", "429.0(a)"),
    ),
];

/// What is said with every answer.
pub const STATE_LAW: &str = "state law may give longer";

/// Where a sale is agreed to.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum PlaceOfSale {
    /// At the buyer's home, whether or not the buyer invited the seller ([`APPLIES_ALSO`]).
    BuyersHome,
    /// Elsewhere, away from the seller's place of business: a fair, a hotel, the buyer's workplace.
    Elsewhere,
    /// At the seller's place of business.
    SellersPremises,
}

/// A sale, as far as it is known.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Sale {
    /// Where it is agreed to.
    pub place: Option<PlaceOfSale>,
    /// The day on which the buyer signs.
    pub signed: Option<Date>,
    /// The price in dollars, under one contract or several together.
    pub price: Option<Number>,
}

/// The last day on which a buyer may cancel.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub struct LastDay {
    /// Until midnight of this day: named and observed days of holidays left out.
    pub day: Date,
    /// What it would be if only the named days were left out; the same or earlier.
    pub by_named_days: Date,
}

/// What the federal rule says about a sale, as far as it can be decided.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct CoolingOff {
    /// Whether the rule applies, by place and price.
    pub applies: Truth,
    /// The last day to cancel, if it applies; `None` when it does not, or the day of signing is not known.
    pub last_day: Option<LastDay>,
    /// What is missing: for whether it applies, and for the day.
    pub missing: Missing,
}

/// Says whether the federal cooling-off rule applies to a sale, and until when it may be cancelled.
///
/// # Errors
/// [`InputError`] for a price below 0, or a day of signing outside 1971 to 2200.
///
/// # Cost
/// A few dozen dates.
///
/// # Source
/// 16 CFR 429.0, 429.1.
///
/// # Examples
/// ## Signed at home in the week of Thanksgiving
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::{Date, Truth};
/// use astragal_trade::cooling_off::{PlaceOfSale, Sale, cooling_off};
/// let sale = Sale {
///     place: Some(PlaceOfSale::BuyersHome),
///     signed: Some(Date::constant(2026, 11, 23)),
///     price: Some(Number::from(4000)),
/// };
/// let answer = cooling_off(&sale)?;
/// assert_eq!(answer.applies, Truth::Yes);
/// assert_eq!(answer.last_day.map(|last| last.day), Some(Date::constant(2026, 11, 27)));
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
/// ## It is not known where
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::Fact;
/// use astragal_trade::cooling_off::{Sale, cooling_off};
/// let sale = Sale { price: Some(Number::from(4000)), ..Sale::default() };
/// assert_eq!(cooling_off(&sale)?.missing, [Fact::PlaceOfSale, Fact::DaySigned].into());
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
/// ## A price below nothing
/// ```
/// use astragal_exact::Number;
/// use astragal_trade::cooling_off::{Sale, cooling_off};
/// let sale = Sale { price: Some(Number::from(-1)), ..Sale::default() };
/// let error = cooling_off(&sale).err().map(|error| error.to_string());
/// assert_eq!(error.as_deref(), Some("price of the sale is `-1`; expected an amount of 0 or more, in dollars"));
/// ```
pub fn cooling_off(sale: &Sale) -> Result<CoolingOff, InputError> {
    if let Some(price) = sale.price.as_ref().filter(|price| price.is_negative()) {
        return Err(InputError {
            fact: Fact::Price,
            found: price.to_string(),
            expected: "an amount of 0 or more, in dollars".to_owned(),
        });
    }
    let last = sale.signed.map(last_day).transpose()?;
    let applies = applies(sale);
    if applies == Truth::No {
        return Ok(CoolingOff {
            applies,
            last_day: None,
            missing: Missing::new(),
        });
    }
    let mut missing = applies.missing();
    if last.is_none() {
        missing.insert(Fact::DaySigned);
    }
    Ok(CoolingOff {
        applies,
        last_day: last,
        missing,
    })
}

/// Returns the last day on which a sale that was signed on this day may be cancelled, if the rule applies to it.
///
/// # Errors
/// [`InputError`] for a day outside 1971 to 2200.
///
/// # Examples
/// ## A holiday on a Saturday, observed on a Friday
/// ```
/// use astragal_trade::Date;
/// use astragal_trade::cooling_off::last_day;
/// let last = last_day(Date::constant(2026, 7, 1))?;
/// assert_eq!(last.day, Date::constant(2026, 7, 7));
/// assert_eq!(last.by_named_days, Date::constant(2026, 7, 6));
/// # Ok::<(), astragal_trade::InputError>(())
/// ```
/// ## Before there was such a calendar
/// ```
/// use astragal_trade::Date;
/// use astragal_trade::cooling_off::last_day;
/// let error = last_day(Date::constant(1970, 12, 31)).err().map(|error| error.to_string());
/// let text = "day on which it is signed is `1970-12-31`; expected a day from 1971 to 2200";
/// assert_eq!(error.as_deref(), Some(text));
/// ```
pub fn last_day(signed: Date) -> Result<LastDay, InputError> {
    let found = YEARS.contains(&signed.year()).then(|| {
        Some(LastDay {
            day: third_business_day(signed, |day| {
                FederalHoliday::named_on(day).is_some() || FederalHoliday::observed_on(day).is_some()
            })?,
            by_named_days: third_business_day(signed, |day| FederalHoliday::named_on(day).is_some())?,
        })
    });
    found.flatten().ok_or_else(|| InputError {
        fact: Fact::DaySigned,
        found: signed.to_string(),
        expected: format!("a day from {} to {}", YEARS.start(), YEARS.end()),
    })
}

/// Says whether a day is a business day of the rule, with named and observed holidays left out.
#[must_use]
pub fn is_business_day(day: Date) -> bool {
    day.weekday() != Weekday::Sunday
        && FederalHoliday::named_on(day).is_none()
        && FederalHoliday::observed_on(day).is_none()
}

fn applies(sale: &Sale) -> Truth {
    let at = |place| {
        Truth::of(Fact::PlaceOfSale, sale.place.as_ref(), move |known| {
            *known == place
        })
    };
    let least = |dollars: i64| Truth::at_least(Fact::Price, sale.price.as_ref(), &Number::from(dollars));
    Truth::any([
        Truth::all([at(PlaceOfSale::BuyersHome), least(PRICE_AT_HOME_LEAST)]),
        Truth::all([at(PlaceOfSale::Elsewhere), least(PRICE_ELSEWHERE_LEAST)]),
    ])
}

/// `None` only at the end of the calendar, thousands of years away.
fn third_business_day(signed: Date, is_holiday: impl Fn(Date) -> bool) -> Option<Date> {
    let mut day = signed;
    let mut left = BUSINESS_DAYS;
    while left > 0 {
        day = day.tomorrow().ok()?;
        if day.weekday() != Weekday::Sunday && !is_holiday(day) {
            left -= 1;
        }
    }
    Some(day)
}

impl fmt::Display for LastDay {
    /// One line for a person: `until midnight of Tuesday 2026-07-07 (2026-07-06 if observed holidays count); state law ...`.
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let weekday = weekday_name(self.day.weekday());
        write!(formatter, "until midnight of {weekday} {}", self.day)?;
        if self.by_named_days != self.day {
            write!(
                formatter,
                " ({} if days on which a holiday is only observed count as business days)",
                self.by_named_days
            )?;
        }
        write!(formatter, "; {STATE_LAW}")
    }
}

fn weekday_name(weekday: Weekday) -> &'static str {
    match weekday {
        Weekday::Monday => "Monday",
        Weekday::Tuesday => "Tuesday",
        Weekday::Wednesday => "Wednesday",
        Weekday::Thursday => "Thursday",
        Weekday::Friday => "Friday",
        Weekday::Saturday => "Saturday",
        Weekday::Sunday => "Sunday",
    }
}
