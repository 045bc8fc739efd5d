//! `[[price]]`: when an amount is incurred, and how it is found in a book.

use astragal_model::{Beyond, Class};

use super::{Fields, Head, IdKind, ids};
use crate::typed::{Parsed, PlacedText};

/// `[[price]]`.
#[derive(Clone, Debug)]
pub(crate) struct RawItem {
    pub(crate) head: Head,
    pub(crate) label: String,
    pub(crate) class: Class,
    pub(crate) tax_class: Option<String>,
    pub(crate) when: Option<Parsed>,
    pub(crate) quantity: Option<Parsed>,
    pub(crate) per: Option<PlacedText>,
    /// `None`: it could not be read.
    pub(crate) amount: Option<RawAmount>,
}

/// How the amount is found.
#[derive(Clone, Debug)]
pub(crate) enum RawAmount {
    /// One amount.
    Flat,
    /// By the options of these attributes.
    By(Vec<PlacedText>),
    /// By one or two figures.
    Grid {
        /// The grid of the book.
        grid: PlacedText,
        /// The figures, rows first.
        axes: Vec<PlacedText>,
        /// What a size past the end means.
        beyond: Beyond,
    },
    /// A percentage of the lines of these items.
    Percent(Vec<PlacedText>),
}

/// The words for what an item stands for; the first is the default.
pub(crate) const CLASSES: [(&str, Class); 4] = [
    ("goods", Class::Goods),
    ("labour", Class::Labour),
    ("fee", Class::Fee),
    ("credit", Class::Credit),
];

pub(super) fn item(mut fields: Fields<'_>) -> Option<RawItem> {
    let head = fields.head(IdKind::Other);
    let label = fields.label();
    let class = fields.word("class", &CLASSES);
    let tax_class = fields.plain("tax_class");
    let when = fields.expression("when");
    let amount = amount(&mut fields);
    if matches!(amount, Some(RawAmount::Percent(_))) {
        fields.without(&["quantity"], "which an item by percentage does not take");
    }
    let quantity = fields.expression("quantity");
    let per = fields.text("per");
    fields.reader.finish();
    Some(RawItem {
        head: head?,
        label,
        class: class.unwrap_or_default(),
        tax_class,
        when,
        quantity,
        per,
        amount,
    })
}

fn amount(fields: &mut Fields<'_>) -> Option<RawAmount> {
    const KINDS: [&str; 3] = ["grid", "by", "percent_of"];
    let kind = if KINDS.iter().any(|kind| fields.reader.has(kind)) {
        Some(fields.exactly_one(&KINDS))
    } else {
        None
    };
    if kind == Some(Some("grid")) {
        return grid(fields);
    }
    if kind == Some(None) {
        for key in ["axes", "beyond"] {
            let _ = fields.reader.node(key);
        }
        return None;
    }
    fields.without(&["axes", "beyond"], "which only an item by grid has");
    match kind.flatten() {
        Some("by") => fields.texts("by").map(RawAmount::By),
        Some(_) => fields.texts("percent_of").map(RawAmount::Percent),
        None => Some(RawAmount::Flat),
    }
}

fn grid(fields: &mut Fields<'_>) -> Option<RawAmount> {
    let grid = fields.text("grid");
    if let Some(grid) = &grid {
        ids::check(IdKind::Other, &grid.text, &grid.place, fields.findings());
    }
    let axes = if fields.reader.requires("axes") {
        fields.texts("axes")
    } else {
        None
    };
    let beyond = fields.word(
        "beyond",
        &[("break", Beyond::Break), ("sign_off", Beyond::SignOff)],
    );
    Some(RawAmount::Grid {
        grid: grid?,
        axes: axes?,
        beyond: beyond?,
    })
}
