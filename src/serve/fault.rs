//! What is wrong with a request: collected over all its fields, and said at once.
//!
//! An error has one `google.rpc.ErrorInfo`, whose reason is that of the first fault, and a field violation a fault with
//! its own reason. A pick of `operatoin` gives `UNKNOWN_ATTRIBUTE` at `unit.picks[0].attribute`.
//!
//! Always holds: a reason keeps its word and its meaning. What a request wrote is cut short before it is said back, since
//! details travel in headers, of which many clients take 8 KiB.
//! LIMIT: [`FAULTS_MAX`] faults are said, the rest are counted; [`SHOWN_MAX`] letters of what was written.

use std::fmt::Display;

use astragal_catalog::nearest::nearest;
use tonic::{Code, Status};
use tonic_types::{ErrorDetails, FieldViolation, StatusExt};

/// Whose reasons these are.
pub(super) const DOMAIN: &str = "astragal";
/// How many faults are said at once.
pub(super) const FAULTS_MAX: usize = 10;
/// How many letters of what a request wrote are said back.
const SHOWN_MAX: usize = 40;
/// How many letters one fault has at most.
const MESSAGE_MAX: usize = 240;

/// Why a request is not answered.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(super) enum Reason {
    /// A field that must be there is not.
    Required,
    /// A resource name is not of its form.
    BadName,
    /// There is no such catalog.
    UnknownCatalog,
    /// The catalog has no such price book.
    UnknownBook,
    /// The catalog has no such policy.
    UnknownPolicy,
    /// The catalog has no such attribute.
    UnknownAttribute,
    /// The attribute has no such option.
    UnknownOption,
    /// The catalog has no such measure.
    UnknownMeasure,
    /// The catalog has no such site fact.
    UnknownFact,
    /// Neither catalog nor policy has such a rule.
    UnknownRule,
    /// The rule is not waivable.
    NotWaivable,
    /// The plant determines the attribute.
    NotPickable,
    /// Something is said twice.
    Duplicate,
    /// An attribute is pinned and not picked.
    PinWithoutPick,
    /// A text is no number.
    BadNumber,
    /// A unit of measurement is not known, or not of the right kind.
    BadUnit,
    /// A day is none.
    BadDate,
    /// A value is of another type.
    WrongType,
    /// A number is outside of what is taken.
    OutOfRange,
    /// What is known of an opening cannot be true together.
    Contradiction,
    /// Something ends before it begins.
    BadRange,
    /// A measure is not a multiple of its step.
    OffStep,
    /// A list is too long.
    TooMany,
    /// A page token was not given out by this service.
    BadPageToken,
    /// An enumeration has no such value.
    BadEnum,
    /// The amounts of a unit could add up to more than is counted with.
    TooMuchMoney,
    /// The time that the request gave is over.
    DeadlineExceeded,
    /// As many questions wait as may.
    Busy,
    /// The service was told to stop.
    Stopping,
    /// The engine and the judge disagree, or the service failed otherwise.
    Internal,
}

impl Reason {
    /// Every reason.
    #[cfg(test)]
    const ALL: [Self; 30] = [
        Self::Required,
        Self::BadName,
        Self::UnknownCatalog,
        Self::UnknownBook,
        Self::UnknownPolicy,
        Self::UnknownAttribute,
        Self::UnknownOption,
        Self::UnknownMeasure,
        Self::UnknownFact,
        Self::UnknownRule,
        Self::NotWaivable,
        Self::NotPickable,
        Self::Duplicate,
        Self::PinWithoutPick,
        Self::BadNumber,
        Self::BadUnit,
        Self::BadDate,
        Self::WrongType,
        Self::OutOfRange,
        Self::Contradiction,
        Self::BadRange,
        Self::OffStep,
        Self::TooMany,
        Self::BadPageToken,
        Self::BadEnum,
        Self::TooMuchMoney,
        Self::DeadlineExceeded,
        Self::Busy,
        Self::Stopping,
        Self::Internal,
    ];

    /// The word and the code, which never change.
    fn table(self) -> (&'static str, Code) {
        match self {
            Self::Required => ("REQUIRED", Code::InvalidArgument),
            Self::BadName => ("BAD_NAME", Code::InvalidArgument),
            Self::UnknownCatalog => ("UNKNOWN_CATALOG", Code::NotFound),
            Self::UnknownBook => ("UNKNOWN_BOOK", Code::NotFound),
            Self::UnknownPolicy => ("UNKNOWN_POLICY", Code::NotFound),
            Self::UnknownAttribute => ("UNKNOWN_ATTRIBUTE", Code::InvalidArgument),
            Self::UnknownOption => ("UNKNOWN_OPTION", Code::InvalidArgument),
            Self::UnknownMeasure => ("UNKNOWN_MEASURE", Code::InvalidArgument),
            Self::UnknownFact => ("UNKNOWN_FACT", Code::InvalidArgument),
            Self::UnknownRule => ("UNKNOWN_RULE", Code::InvalidArgument),
            Self::NotWaivable => ("NOT_WAIVABLE", Code::InvalidArgument),
            Self::NotPickable => ("NOT_PICKABLE", Code::InvalidArgument),
            Self::Duplicate => ("DUPLICATE", Code::InvalidArgument),
            Self::PinWithoutPick => ("PIN_WITHOUT_PICK", Code::InvalidArgument),
            Self::BadNumber => ("BAD_NUMBER", Code::InvalidArgument),
            Self::BadUnit => ("BAD_UNIT", Code::InvalidArgument),
            Self::BadDate => ("BAD_DATE", Code::InvalidArgument),
            Self::WrongType => ("WRONG_TYPE", Code::InvalidArgument),
            Self::OutOfRange => ("OUT_OF_RANGE", Code::InvalidArgument),
            Self::Contradiction => ("CONTRADICTION", Code::InvalidArgument),
            Self::BadRange => ("BAD_RANGE", Code::InvalidArgument),
            Self::OffStep => ("OFF_STEP", Code::InvalidArgument),
            Self::TooMany => ("TOO_MANY", Code::InvalidArgument),
            Self::BadPageToken => ("BAD_PAGE_TOKEN", Code::InvalidArgument),
            Self::BadEnum => ("BAD_ENUM", Code::InvalidArgument),
            Self::TooMuchMoney => ("TOO_MUCH_MONEY", Code::FailedPrecondition),
            Self::DeadlineExceeded => ("DEADLINE_EXCEEDED", Code::DeadlineExceeded),
            Self::Busy => ("BUSY", Code::Unavailable),
            Self::Stopping => ("STOPPING", Code::Unavailable),
            Self::Internal => ("INTERNAL", Code::Internal),
        }
    }
}

/// Everything that is wrong with a request.
#[derive(Default)]
pub(super) struct Faults {
    found: Vec<(Reason, FieldViolation)>,
    more: usize,
}

impl Faults {
    /// Notes what is wrong with a field: `unit.picks[0].option`.
    pub(super) fn push(&mut self, reason: Reason, field: impl Display, message: &str) {
        if self.found.len() >= FAULTS_MAX {
            self.more += 1;
            return;
        }
        let mut violation = FieldViolation::new(field.to_string(), cut(message, MESSAGE_MAX));
        violation.reason = reason.table().0.to_owned();
        self.found.push((reason, violation));
    }

    /// Notes a name that nothing has, with the one that was probably meant.
    pub(super) fn push_unknown<'a>(
        &mut self,
        reason: Reason,
        field: impl Display,
        message: &str,
        (name, known): (&str, impl IntoIterator<Item = &'a str>),
    ) {
        // What is only counted needs no advice.
        let is_said = self.found.len() < FAULTS_MAX;
        match is_said.then(|| nearest(name, known)).flatten() {
            Some(near) => self.push(reason, field, &format!("{message}; did you mean `{near}`?")),
            None => self.push(reason, field, message),
        }
    }

    /// Whether a name is there; notes it where it is not.
    pub(super) fn has_name(&mut self, name: &str, field: impl Display, what: &str) -> bool {
        if name.is_empty() {
            self.push(Reason::Required, field, &format!("{what} is asked for"));
        }
        !name.is_empty()
    }

    /// Whether nothing is wrong.
    pub(super) fn is_empty(&self) -> bool {
        self.found.is_empty()
    }

    /// These faults, and then others.
    pub(super) fn and(&self, others: &Self) -> Self {
        let mut all: Vec<_> = self.found.iter().chain(&others.found).cloned().collect();
        let more = all.len().saturating_sub(FAULTS_MAX);
        all.truncate(FAULTS_MAX);
        Self {
            found: all,
            more: self.more + others.more + more,
        }
    }

    /// The error, where something is wrong.
    pub(super) fn into_result(self) -> Result<(), Status> {
        if self.is_empty() {
            Ok(())
        } else {
            Err(self.status())
        }
    }

    /// The error.
    pub(super) fn status(&self) -> Status {
        let Some((reason, first)) = self.found.first() else {
            return failed(Reason::Internal, "an error without a fault");
        };
        let (word, code) = reason.table();
        let all = self.found.len() + self.more;
        let message = match all {
            1 => format!("{}: {}", first.field, first.description),
            _ => format!("{}: {}; {} more", first.field, first.description, all - 1),
        };
        let count = ("faults".to_owned(), all.to_string());
        let mut details = ErrorDetails::with_error_info(word, DOMAIN, [count]);
        let violations = self.found.iter().map(|(_, violation)| violation.clone());
        details.set_bad_request(violations.collect::<Vec<_>>());
        Status::with_error_details(code, message, details)
    }
}

/// An error that no field of the request is to blame for.
pub(super) fn failed(reason: Reason, message: &str) -> Status {
    let (word, code) = reason.table();
    let details = ErrorDetails::with_error_info(word, DOMAIN, []);
    Status::with_error_details(code, cut(message, 2 * MESSAGE_MAX), details)
}

/// What a request wrote, in backticks and cut short.
pub(super) fn shown(text: &str) -> String {
    format!("`{}`", cut(text, SHOWN_MAX))
}

fn cut(text: &str, letters: usize) -> String {
    match text.char_indices().nth(letters) {
        Some((end, _)) => format!("{}...", text.get(..end).unwrap_or_default()),
        None => text.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    #[test]
    fn every_reason_has_a_word_of_its_own_and_no_code_of_success() {
        let words: BTreeSet<&str> = Reason::ALL.iter().map(|reason| reason.table().0).collect();
        assert_eq!(words.len(), Reason::ALL.len());
        for reason in Reason::ALL {
            let status = failed(reason, "something");
            assert_ne!(status.code(), Code::Ok, "{reason:?}");
            let info = status.get_error_details();
            let info = info.error_info().expect("one reason");
            assert_eq!(
                (info.reason.as_str(), info.domain.as_str()),
                (reason.table().0, DOMAIN)
            );
        }
    }

    #[test]
    fn every_reason_stands_in_the_table_of_the_page() {
        let page = include_str!("../../docs/service.md");
        let of_layer = [
            "UNKNOWN_METHOD",
            "UNSUPPORTED_COMPRESSION",
            "UNKNOWN_SERVICE",
            "MESSAGE_TOO_LARGE",
            "UNREADABLE_MESSAGE",
            "FAILED",
        ];
        for word in Reason::ALL.iter().map(|reason| reason.table().0).chain(of_layer) {
            let mut rows = page.lines().filter(|line| line.starts_with("| `"));
            assert!(rows.any(|row| row.contains(&format!("`{word}`"))), "{word}");
        }
    }

    #[test]
    fn faults_beyond_the_limit_are_counted_and_long_texts_are_cut() {
        let mut faults = Faults::default();
        for number in 0..FAULTS_MAX + 3 {
            let long = shown(&"\u{e9}".repeat(9_000));
            faults.push(Reason::Duplicate, format!("unit.picks[{number}]"), &long);
        }
        let status = faults.into_result().expect_err("faults");
        assert!(status.message().ends_with("; 12 more"), "{}", status.message());
        assert!(status.details().len() < 4_000, "{}", status.details().len());
        let details = status.get_error_details();
        let violations = &details.bad_request().expect("violations").field_violations;
        assert_eq!(violations.len(), FAULTS_MAX);
        assert_eq!(violations[0].reason, "DUPLICATE");
    }

    #[test]
    fn no_fault_is_no_error() {
        assert!(Faults::default().into_result().is_ok());
    }
}
