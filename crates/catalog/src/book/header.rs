//! `[book]`: which book it is, its currency and dates, and what every item is rounded to.

use astragal_model::{Currency, Date, Number};

use super::amount_text::money;
use super::amounts::amount_code;
use crate::declare::{Fields, Head, IdKind};
use crate::finding::{Finding, Place};
use crate::typed::PlacedText;

/// `[book]`. What is `None` here, but the dates, has a finding.
pub(super) struct Header {
    pub(super) head: Head,
    pub(super) label: String,
    pub(super) catalog: PlacedText,
    pub(super) currency: Option<Currency>,
    pub(super) round_to: Option<Number>,
    pub(super) from: Option<Date>,
    pub(super) until: Option<Date>,
}

/// `[book]` of a file, when nothing else of it is wanted.
pub(super) fn book_of(file: &mut Fields<'_>) -> Option<Header> {
    if !file.reader.requires("book") {
        return None;
    }
    let node = file.reader.node("book")?;
    Header::read(&mut file.inner(node, "book")?)
}

impl Header {
    /// Takes the keys of `[book]` but `amounts`.
    pub(super) fn read(fields: &mut Fields<'_>) -> Option<Self> {
        let head = fields.head(IdKind::Other);
        let label = fields.label();
        let catalog = fields.required_text("catalog");
        let currency = fields
            .required_text("currency")
            .and_then(|code| currency(&code, fields));
        let has_unit = fields.reader.requires("round_to");
        let round_to = if has_unit {
            round_to(fields, currency)
        } else {
            None
        };
        let from = fields.reader.date("from");
        let until = fields.reader.date("until");
        if let (Some(from), Some(until)) = (&from, &until)
            && from.value > until.value
        {
            let message = format!("`until` is {}, before `from`, {}", until.value, from.value);
            let finding = Finding::error("DATES_OUT_OF_ORDER", message).at(fields.place_of(&until.span));
            let finding = finding.with_related(fields.place_of(&from.span), "it begins here");
            fields
                .findings()
                .push(finding.with_help("both days belong to the time in force"));
        }
        Some(Self {
            head: head?,
            label,
            catalog: catalog?,
            currency,
            round_to,
            from: from.map(|date| date.value),
            until: until.map(|date| date.value),
        })
    }
}

fn currency(code: &PlacedText, fields: &Fields<'_>) -> Option<Currency> {
    let found = Currency::from_code(&code.text);
    if found.is_none() {
        let upper = code.text.trim().to_ascii_uppercase();
        let help = if Currency::from_code(&upper).is_some() {
            format!("did you mean `{upper}`?")
        } else {
            "write the three letters of ISO 4217, such as `USD`, `CAD` or `EUR`".to_owned()
        };
        let message = format!("`{}` is not a currency of ISO 4217 with minor units", code.text);
        let finding = Finding::error("CURRENCY_UNKNOWN", message).at(code.place.clone());
        fields.findings().push(finding.with_help(help));
    }
    found
}

/// Takes `round_to`: above 0 and, when the currency is known, a whole number of its minor units.
///
/// `None` when the key is not there or a finding says what is wrong.
fn round_to(fields: &mut Fields<'_>, currency: Option<Currency>) -> Option<Number> {
    placed_round_to(fields, currency).map(|(unit, _)| unit)
}

/// The same with its place, for a policy, whose currency is known only beside a book.
pub(crate) fn placed_round_to(
    fields: &mut Fields<'_>,
    currency: Option<Currency>,
) -> Option<(Number, Place)> {
    let written = fields.reader.decimal_text("round_to")?;
    let place = fields.place_of(&written.span);
    let wrong = |code: &'static str, message: String, help: String| {
        fields
            .findings()
            .push(Finding::error(code, message).at(place.clone()).with_help(help));
        None
    };
    let unit = match money(&written.value) {
        Ok(unit) => unit,
        Err((message, help)) => return wrong(amount_code(&written.value), message, help),
    };
    if !unit.is_positive() {
        let message = format!("`round_to` is {unit}; expected more than 0");
        return wrong(
            "BAD_ROUNDING",
            message,
            "write the smallest step of a price, such as \"0.01\"".to_owned(),
        );
    }
    match currency {
        Some(currency) if !unit.is_multiple_of(&currency.minor_unit()) => {
            let message = format!(
                "`round_to` is {unit}, not a whole number of {}",
                currency.minor_unit()
            );
            let help = format!("the smallest unit of {currency} is {}", currency.minor_unit());
            wrong("BAD_ROUNDING", message, help)
        }
        _ => Some((unit, place.clone())),
    }
}
