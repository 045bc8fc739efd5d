//! `[[tail]]`: steps after all items, in order, of a book or a policy.
//!
//! `id = "freight"`, `flat = "12.00"` adds 12.00; `percent = 3.5` adds 3.5 percent of the running total.
//!
//! Always holds: a percentage is at least -100, so that the total never falls as the subtotal rises.

use astragal_model::{Amount, Class, Number, TailStep};

use super::amount_text::{money, plain_number};
use super::amounts::amount_code;
use crate::declare::{Fields, Head, IdKind, keep_first};
use crate::finding::Finding;
use crate::library_files::LibraryPath;

/// The words for what a step stands for; the first is the default.
const CLASSES: [(&str, Class); 4] = [
    ("goods", Class::Goods),
    ("labour", Class::Labour),
    ("fee", Class::Fee),
    ("credit", Class::Credit),
];

/// Takes `tail` of a file: its steps in order; `None` means that findings say why.
pub(crate) fn read_tail(file: &mut Fields<'_>, home: &LibraryPath) -> Option<Vec<TailStep>> {
    let findings = file.findings();
    let read: Vec<Option<(Head, TailStep)>> = file.list("tail", "tail step", home).map(step).collect();
    let mut steps = read.into_iter().collect::<Option<Vec<_>>>()?;
    let count = steps.len();
    keep_first(
        &mut steps,
        "tail steps",
        |(head, _)| (head.id.as_str(), &head.place),
        findings,
    );
    (steps.len() == count).then(|| steps.into_iter().map(|(_, step)| step).collect())
}

fn step(mut fields: Fields<'_>) -> Option<(Head, TailStep)> {
    let head = fields.head(IdKind::Other);
    let label = fields.label();
    let class = fields.word("class", &CLASSES);
    let tax_class = fields.plain("tax_class");
    let amount = match fields.exactly_one(&["flat", "percent"]) {
        Some("flat") => flat(&mut fields).map(Amount::Money),
        Some(_) => percent(&mut fields).map(Amount::Percent),
        None => None,
    };
    fields.reader.finish();
    let head = head?;
    let step = TailStep {
        id: head.id.clone(),
        label,
        class: class?,
        tax_class,
        amount: amount?,
    };
    Some((head, step))
}

fn flat(fields: &mut Fields<'_>) -> Option<Number> {
    let written = fields.reader.decimal_text("flat")?;
    let amount = money(&written.value);
    let place = fields.place_of(&written.span);
    let said = |(message, help): (String, String)| {
        fields.findings().push(
            Finding::error(amount_code(&written.value), message)
                .at(place)
                .with_help(help),
        );
    };
    amount.map_err(said).ok()
}

fn percent(fields: &mut Fields<'_>) -> Option<Number> {
    let written = fields.reader.decimal_text("percent")?;
    let place = fields.place_of(&written.span);
    let wrong = |code: &'static str, message: String, help: &str| {
        fields
            .findings()
            .push(Finding::error(code, message).at(place.clone()).with_help(help));
        None
    };
    let text = written.value.trim();
    let text = text.strip_suffix('%').map_or(text, str::trim_end);
    let percent = match plain_number(text, "a percentage", "3.5") {
        Ok(percent) => percent,
        Err((message, help)) => return wrong(amount_code(text), message, &help),
    };
    if percent < Number::from(-100_i64) {
        let message = format!("`percent` is {percent}; expected at least -100");
        return wrong(
            "PERCENT_BELOW_MINUS_100",
            message,
            "with less the total would fall as the items rise",
        );
    }
    Some(percent)
}
