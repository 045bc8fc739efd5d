//! `[[measure]]` and `[[site_fact]]`: what is known about an opening and its place.

use astragal_model::{Id, Scope, TakenFact, TakenSide, ValueType};

use super::{Fields, Head, IdKind, unique};
use crate::finding::{Finding, Place};
use crate::tree::{Node, NodeValue, Spanned};

/// Between which numbers a value lies, as written.
#[derive(Clone, Debug, Default)]
pub(crate) struct RawBounds {
    pub(crate) least: Option<(String, Place)>,
    pub(crate) most: Option<(String, Place)>,
}

/// `[[measure]]`.
#[derive(Clone, Debug)]
pub(crate) struct RawMeasureKind {
    pub(crate) head: Head,
    pub(crate) label: String,
    pub(crate) value_type: ValueType,
    /// What its values must be multiples of, as written; `none` for no step.
    pub(crate) step: Option<(String, Place)>,
    pub(crate) bounds: RawBounds,
    pub(crate) taken_as: Option<TakenSide>,
}

/// `[[site_fact]]`.
#[derive(Clone, Debug)]
pub(crate) struct RawSiteFact {
    pub(crate) head: Head,
    pub(crate) label: String,
    pub(crate) of: Scope,
    pub(crate) value_type: ValueType,
    /// The values of an enumeration with their labels.
    pub(crate) options: Vec<(Id, String)>,
    pub(crate) bounds: RawBounds,
    /// What its values must be multiples of, as written.
    pub(crate) step: Option<(String, Place)>,
    pub(crate) taken_as: Option<TakenFact>,
}

pub(super) fn measure(mut fields: Fields<'_>) -> Option<RawMeasureKind> {
    let head = fields.head(IdKind::Name);
    let label = fields.label();
    let value_type = fields.word(
        "type",
        &[("length", ValueType::Length), ("number", ValueType::Number)],
    );
    let step = written_number(&mut fields, "step");
    let bounds = bounds(&mut fields);
    let taken_as = taken_as(
        &mut fields,
        value_type,
        &TakenSide::ALL.map(|side| (side.word(), side)),
    );
    fields.reader.finish();
    Some(RawMeasureKind {
        head: head?,
        label,
        value_type: value_type?,
        step,
        bounds,
        taken_as,
    })
}

fn bounds(fields: &mut Fields<'_>) -> RawBounds {
    RawBounds {
        least: written_number(fields, "least"),
        most: written_number(fields, "most"),
    }
}

fn written_number(fields: &mut Fields<'_>, key: &'static str) -> Option<(String, Place)> {
    let Spanned { value, span } = fields.reader.decimal_text(key)?;
    Some((value, fields.place_of(&span)))
}

/// What a fact has that is a number or a length, and no other.
fn numbers_of_fact(
    fields: &mut Fields<'_>,
    value_type: Option<ValueType>,
) -> (RawBounds, Option<(String, Place)>) {
    match value_type {
        Some(ValueType::Number | ValueType::Length) => (bounds(fields), written_number(fields, "step")),
        Some(_) => {
            let keys = ["least", "most", "step"];
            fields.without(&keys, "which only a number and a length have");
            (RawBounds::default(), None)
        }
        None => {
            for key in ["least", "most", "step"] {
                let _ = fields.reader.node(key);
            }
            (RawBounds::default(), None)
        }
    }
}

pub(super) fn fact(mut fields: Fields<'_>) -> Option<RawSiteFact> {
    let head = fields.head(IdKind::Name);
    let label = fields.label();
    let scopes = [
        Scope::House,
        Scope::Floor,
        Scope::Room,
        Scope::Face,
        Scope::Opening,
    ];
    let of = fields.required_word("of", &scopes.map(|scope| (scope.word(), scope)));
    let types = [
        ("bool", ValueType::Bool),
        ("number", ValueType::Number),
        ("length", ValueType::Length),
        ("date", ValueType::Date),
        ("enumeration", ValueType::Option),
    ];
    let value_type = fields.required_word("type", &types);
    let options = match value_type {
        Some(ValueType::Option) => options(&mut fields),
        Some(_) => {
            fields.without(&["options"], "which only an enumeration has");
            Some(Vec::new())
        }
        None => {
            let _ = fields.reader.node("options");
            None
        }
    };
    let (bounds, step) = numbers_of_fact(&mut fields, value_type);
    let taken_as = taken_as(
        &mut fields,
        value_type,
        &TakenFact::ALL.map(|fact| (fact.word(), fact)),
    );
    fields.reader.finish();
    Some(RawSiteFact {
        head: head?,
        label,
        of: of?,
        value_type: value_type?,
        options: options?,
        bounds,
        step,
        taken_as,
    })
}

/// What it is worked out from, where an opening has raw readings; only lengths are.
fn taken_as<T: Copy>(
    fields: &mut Fields<'_>,
    value_type: Option<ValueType>,
    words: &[(&'static str, T)],
) -> Option<T> {
    let text = fields.text("taken_as")?;
    let taken = fields.one_of("taken_as", &text, words)?;
    if value_type == Some(ValueType::Length) {
        return Some(taken);
    }
    let message = format!("{} has `taken_as`, which only a length has", fields.reader.what());
    let finding = Finding::error("KEYS_EXCLUDE", message).at(text.place.clone());
    fields
        .findings()
        .push(finding.with_help("leave `taken_as` out, or make it a length"));
    None
}

fn options(fields: &mut Fields<'_>) -> Option<Vec<(Id, String)>> {
    if !fields.reader.requires("options") {
        return None;
    }
    let nodes = fields.reader.array("options")?;
    if nodes.value.is_empty() {
        let message = format!("{} has no options", fields.reader.what());
        fields.findings().push(
            Finding::error("NO_OPTIONS", message)
                .at(fields.place_of(&nodes.span))
                .with_help("an enumeration has at least one value"),
        );
        return None;
    }
    let mut read: Vec<(Id, String, Place)> = nodes
        .value
        .iter()
        .filter_map(|node| option(fields, node))
        .collect();
    let what = format!("options of {}", fields.reader.what());
    unique::keep_first(
        &mut read,
        &what,
        |(id, _, place)| (id.as_str(), place),
        fields.findings(),
    );
    Some(read.into_iter().map(|(id, label, _)| (id, label)).collect())
}

/// `"north"`, or a table with id and label.
fn option(fields: &Fields<'_>, node: &Node) -> Option<(Id, String, Place)> {
    if let NodeValue::Text(text) = &node.value {
        let place = fields.place_of(&node.span);
        super::ids::check(IdKind::FactOption, text, &place, fields.findings());
        return Some((Id::new(text), text.clone(), place));
    }
    let mut fields = fields.inner(node, "option")?;
    let head = fields.head(IdKind::FactOption);
    let label = fields.plain("label");
    fields.reader.finish();
    let head = head?;
    let label = label.unwrap_or_else(|| head.id.to_string());
    Some((head.id, label, head.place))
}
