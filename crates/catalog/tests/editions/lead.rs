//! Lead-safe work: the notice is carried exactly where the crate says to work as if the rules applied.

use astragal_model::Number;
use astragal_trade::lead::{Work, lead_safe};

use crate::case::Case;
use crate::code_file::CodeFile;

#[test]
fn the_notice_is_shown_for_every_year_for_which_the_rules_are_taken_to_apply() {
    let file = CodeFile::load("lead-safe-40-cfr-745", "");
    let years = [None, Some(1500), Some(1977), Some(1978), Some(1979), Some(2026)];
    for year in years.into_iter().chain((1900..2100).map(Some)) {
        let answer = lead_safe(year, &Work::window_replacement()).unwrap();
        let number = year.map(|year| Number::from(i64::from(year)));
        let answers = file.judge(&Case::default().number("year_built", number.as_ref()));
        let notice = answers.notice("lead-safe");
        assert_eq!(notice.is_some(), answer.is_treated_as_applying(), "{year:?}");
        let is_asked_for = notice.is_some_and(|notice| notice.wants.is_some());
        assert_eq!(is_asked_for, !answer.missing().is_empty(), "{year:?}");
    }
}
