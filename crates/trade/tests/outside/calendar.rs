//! Holidays and last days to cancel, day by day.
//!
//! The script has a calendar and a count of its own; it knows nothing of ours.
//!
//! Source: PyPI package `holidays`, the United States, with and without observed days.

use super::ask;
use astragal_trade::Date;
use astragal_trade::cooling_off::{FederalHoliday, last_day};

const SCRIPT: &str = "last_days_by_holidays.py";
const SIGNED: (i16, i16) = (2024, 2030);

/// The years that the package knows; ours go on to 2200 by the same rules.
const HOLIDAYS: (i16, i16) = (1971, 2100);

#[test]
fn every_day_of_seven_years_has_the_same_last_day() {
    let (first, last) = (SIGNED.0.to_string(), SIGNED.1.to_string());
    let Some((version, answers)) = ask(SCRIPT, "holidays", &["last-days", &first, &last], String::new())
    else {
        return;
    };
    let mut ours = Vec::new();
    let mut day = Date::constant(SIGNED.0, 1, 1);
    while day.year() <= SIGNED.1 {
        let last = last_day(day).unwrap();
        ours.push(format!("{day} {} {}", last.day, last.by_named_days));
        day = day.tomorrow().unwrap();
    }
    assert_eq!(ours.len(), 2557, "seven years, two of them leap years");
    assert_eq!(answers.len(), ours.len(), "{version}");
    let mut apart = 0;
    for (ours, theirs) in ours.iter().zip(&answers) {
        assert_eq!(ours, theirs, "signed, last day, by named days alone; {version}");
        let mut days = ours.split(' ').skip(1);
        apart += usize::from(days.next() != days.next());
    }
    assert!(apart > 0, "no day on which observed holidays matter");
    eprintln!(
        "outside: last days of {} days equal those of {version}; observed holidays move {apart}",
        ours.len()
    );
}

#[test]
fn every_holiday_falls_on_the_same_day() {
    let (first, last) = (HOLIDAYS.0.to_string(), HOLIDAYS.1.to_string());
    let Some((version, answers)) = ask(SCRIPT, "holidays", &["holidays", &first, &last], String::new())
    else {
        return;
    };
    let mut ours = Vec::new();
    let mut day = Date::constant(HOLIDAYS.0, 1, 1);
    while day.year() <= HOLIDAYS.1 {
        let (named, observed) = (FederalHoliday::named_on(day), FederalHoliday::observed_on(day));
        match (named.is_some(), observed.is_some()) {
            (true, _) => ours.push(format!("{day} named")),
            (false, true) => ours.push(format!("{day} observed")),
            (false, false) => {}
        }
        day = day.tomorrow().unwrap();
    }
    for (ours, theirs) in ours.iter().zip(&answers) {
        assert_eq!(ours, theirs, "{version}");
    }
    assert_eq!(ours.len(), answers.len(), "{version}");
    eprintln!(
        "outside: {} named and observed holidays of {first} to {last} equal those of {version}",
        ours.len()
    );
}
