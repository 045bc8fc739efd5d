//! `[[figure]]`: a value that is worked out by a formula or looked up in a table.

use astragal_model::{RowMatch, ValueType};

use super::{Fields, Head, IdKind};
use crate::typed::{Parsed, PlacedText};

/// `[[figure]]`.
#[derive(Clone, Debug)]
pub(crate) struct RawFigure {
    pub(crate) head: Head,
    pub(crate) label: String,
    pub(crate) declared_type: Option<ValueType>,
    pub(crate) unit: Option<PlacedText>,
    pub(crate) shown: bool,
    pub(crate) per: Option<PlacedText>,
    /// `None`: it could not be read.
    pub(crate) definition: Option<RawDefinition>,
}

/// How a figure is worked out.
#[derive(Clone, Debug)]
pub(crate) enum RawDefinition {
    /// By a formula.
    Formula(Parsed),
    /// By a row of a sheet.
    Table {
        /// The sheet, relative to the file that says it.
        file: PlacedText,
        /// The key columns; all but the value's when left out.
        keys: Option<Vec<PlacedText>>,
        /// The value column.
        value: PlacedText,
        /// Which matching row counts.
        row_match: RowMatch,
    },
}

pub(super) fn figure(mut fields: Fields<'_>) -> Option<RawFigure> {
    let id = fields.text("id");
    let head = fields.head(IdKind::Name);
    let label = fields.label();
    let (declared_type, definition) = match fields.exactly_one(&["formula", "table"]) {
        Some("formula") => {
            fields.without(&["keys", "value", "match"], "which only a figure by table has");
            let declared = fields
                .reader
                .has("type")
                .then(|| fields.word("type", &FORMULA_TYPES));
            (declared, fields.expression("formula").map(RawDefinition::Formula))
        }
        Some(_) => {
            let declared = fields.word("type", &TABLE_TYPES);
            (Some(declared), table(&mut fields, id.as_ref()))
        }
        None => {
            for key in ["keys", "value", "match", "type"] {
                let _ = fields.reader.node(key);
            }
            (None, None)
        }
    };
    let unit = fields.text("unit");
    let shown = fields.flag("show");
    let per = fields.text("per");
    fields.reader.finish();
    // A type that is not known as a word has its finding; the formula is then read as if it said nothing.
    let declared_type = declared_type.flatten();
    Some(RawFigure {
        head: head?,
        label,
        declared_type,
        unit,
        shown,
        per,
        definition,
    })
}

const FORMULA_TYPES: [(&str, ValueType); 5] = [
    ("number", ValueType::Number),
    ("length", ValueType::Length),
    ("area", ValueType::Area),
    ("date", ValueType::Date),
    ("bool", ValueType::Bool),
];

/// The first is the default.
const TABLE_TYPES: [(&str, ValueType); 4] = [
    ("number", ValueType::Number),
    ("length", ValueType::Length),
    ("area", ValueType::Area),
    ("date", ValueType::Date),
];

fn table(fields: &mut Fields<'_>, id: Option<&PlacedText>) -> Option<RawDefinition> {
    let file = fields.text("table");
    let keys = fields.texts("keys");
    let value = fields.text("value").or_else(|| id.cloned());
    let row_match = fields.word(
        "match",
        &[
            ("only", RowMatch::Only),
            ("first", RowMatch::First),
            ("least", RowMatch::Least),
            ("greatest", RowMatch::Greatest),
        ],
    );
    Some(RawDefinition::Table {
        file: file?,
        keys,
        value: value?,
        row_match: row_match?,
    })
}
