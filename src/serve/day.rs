//! Days of the calendar between requests, the model and answers.

use astragal_model::Date;

use crate::serve::fault::{Faults, Reason};
use crate::serve::google_type;

/// The day that is written; a year or a month without a day is none.
pub(super) fn read(written: &google_type::Date, field: &str, faults: &mut Faults) -> Option<Date> {
    let day = || {
        let year = i16::try_from(written.year)
            .ok()
            .filter(|year| (1..=9999).contains(year))?;
        let month = i8::try_from(written.month).ok()?;
        Date::new(year, month, i8::try_from(written.day).ok()?).ok()
    };
    let found = day();
    if found.is_none() {
        let google_type::Date { year, month, day } = written;
        let message = format!("year {year}, month {month}, day {day} is no day of the calendar");
        faults.push(Reason::BadDate, field, &message);
    }
    found
}

/// A day that may be left out.
pub(super) fn read_if(written: Option<&google_type::Date>, field: &str, faults: &mut Faults) -> Option<Date> {
    written.and_then(|written| read(written, field, faults))
}

/// A day that must be there.
pub(super) fn needed(written: Option<&google_type::Date>, field: &str, faults: &mut Faults) -> Option<Date> {
    if written.is_none() {
        faults.push(Reason::Required, field, "a day is asked for");
    }
    read_if(written, field, faults)
}

/// A day of the model.
pub(super) fn write(date: Date) -> google_type::Date {
    google_type::Date {
        year: i32::from(date.year()),
        month: i32::from(date.month()),
        day: i32::from(date.day()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_day_comes_back_as_it_was_and_half_a_day_is_refused() {
        for (year, month, day, is_day) in [
            (2026, 11, 25, true),
            (2024, 2, 29, true),
            (2026, 2, 29, false),
            (2026, 11, 0, false),
            (2026, 0, 0, false),
            (0, 11, 25, false),
            (70_000, 1, 1, false),
            (2026, 300, 1, false),
        ] {
            let written = google_type::Date { year, month, day };
            let mut faults = Faults::default();
            let found = read(&written, "unit.date", &mut faults);
            assert_eq!(
                found.map(write),
                is_day.then_some(written),
                "{year}-{month}-{day}"
            );
            assert_eq!(faults.is_empty(), is_day);
        }
    }
}
