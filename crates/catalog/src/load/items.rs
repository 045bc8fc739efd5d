//! Price items: when they are incurred, and how a book gives their amounts.

use std::collections::{BTreeMap, BTreeSet};

use astragal_model::{
    AmountKind, AttributeIndex, FigureIndex, Id, Indexed, ItemIndex, PartIndex, PriceItem, Subject, ValueType,
};

use super::limits::{RULES_LIMIT, within};
use super::resolver::Resolver;
use crate::declare::{Declared, RawAmount, RawItem};
use crate::finding::Finding;
use crate::nearest::nearest;
use crate::typed::PlacedText;

/// The price items of the model; `None` means that findings say why.
pub(crate) fn items(declared: &Declared, resolver: &Resolver<'_>) -> Option<Indexed<ItemIndex, PriceItem>> {
    let by_id: BTreeMap<&str, &RawItem> = declared
        .items
        .iter()
        .map(|item| (item.head.id.as_str(), item))
        .collect();
    let mut items = Some(Vec::new());
    let mut count = 0_usize;
    for raw in &declared.items {
        let read = item(raw, &by_id, resolver);
        count += read.as_ref().map_or(1, Vec::len);
        if !within(
            count,
            RULES_LIMIT,
            "price items",
            Some(&raw.head.place),
            resolver.findings,
        ) {
            return None;
        }
        match (&mut items, read) {
            (Some(items), Some(read)) => items.extend(read),
            _ => items = None,
        }
    }
    items.map(Indexed::from)
}

fn item(raw: &RawItem, by_id: &BTreeMap<&str, &RawItem>, resolver: &Resolver<'_>) -> Option<Vec<PriceItem>> {
    let parts = resolver.parts_of(raw.per.as_ref())?;
    let read: Vec<Option<PriceItem>> = parts
        .into_iter()
        .map(|part| {
            let when = resolver.when(part, raw.when.as_ref());
            let scope = resolver.scope_when(part, raw.when.as_ref());
            let quantity = match &raw.quantity {
                None => Some(None),
                Some(parsed) if resolver.unreadable.is_in(parsed) => None,
                Some(parsed) => scope.number(parsed).map(Some),
            };
            let amount = amount(raw, part, by_id, resolver);
            Some(PriceItem {
                id: raw.head.id.clone(),
                part,
                label: raw.label.clone(),
                class: raw.class,
                tax_class: raw.tax_class.clone(),
                when: when?,
                amount: amount?,
                quantity: quantity?,
            })
        })
        .collect();
    read.into_iter().collect()
}

fn amount(
    raw: &RawItem,
    part: Option<PartIndex>,
    by_id: &BTreeMap<&str, &RawItem>,
    resolver: &Resolver<'_>,
) -> Option<AmountKind> {
    match raw.amount.as_ref()? {
        RawAmount::Flat => Some(AmountKind::Flat),
        RawAmount::By(names) => by(raw, names, part, resolver).map(AmountKind::By),
        RawAmount::Grid { grid, axes, beyond } => Some(AmountKind::Grid {
            grid: Id::new(&grid.text),
            axes: self::axes(raw, axes, part, resolver)?,
            beyond: *beyond,
        }),
        RawAmount::Percent(names) => percent(raw, names, by_id, resolver).map(AmountKind::Percent),
    }
}

/// What a name of an item reads, unless its declaration could not be read.
fn subject(
    text: &PlacedText,
    part: Option<PartIndex>,
    resolver: &Resolver<'_>,
) -> Option<(Subject, ValueType)> {
    if resolver.unreadable.is_name(&text.text) {
        return None;
    }
    let (subject, of) = resolver.scope(part).subject(text)?;
    Some((subject, of.value_type))
}

fn by(
    raw: &RawItem,
    names: &[PlacedText],
    part: Option<PartIndex>,
    resolver: &Resolver<'_>,
) -> Option<Vec<AttributeIndex>> {
    if names.is_empty() {
        return wrong_count(
            raw,
            "`by` names no attribute",
            "name one or more, or leave `by` out",
            resolver,
        );
    }
    let mut seen = BTreeSet::new();
    let read: Vec<Option<AttributeIndex>> = names
        .iter()
        .map(|text| match subject(text, part, resolver)?.0 {
            Subject::Attribute(index) if seen.insert(index) => Some(index),
            Subject::Attribute(_) => {
                let message = format!("`{}` stands twice in `by`", text.text);
                report(
                    "DUPLICATE_ID",
                    message,
                    text,
                    "name each attribute once",
                    resolver,
                )
            }
            _ => {
                let message = format!("`{}` is not an attribute", text.text);
                report(
                    "NOT_AN_ATTRIBUTE",
                    message,
                    text,
                    "`by` names attributes; `axes` names figures",
                    resolver,
                )
            }
        })
        .collect();
    read.into_iter().collect()
}

fn axes(
    raw: &RawItem,
    names: &[PlacedText],
    part: Option<PartIndex>,
    resolver: &Resolver<'_>,
) -> Option<Vec<FigureIndex>> {
    if !matches!(names.len(), 1 | 2) {
        let message = format!("`axes` names {} figures; a grid has one or two", names.len());
        return wrong_count(raw, &message, "rows of the sheet come first", resolver);
    }
    let read: Vec<Option<FigureIndex>> = names
        .iter()
        .map(|text| match subject(text, part, resolver)? {
            (Subject::Figure(index), ValueType::Number | ValueType::Length | ValueType::Area) => Some(index),
            (Subject::Figure(_), found) => {
                let message = format!("figure `{}` is {}; an axis is a size", text.text, found.words());
                report(
                    "WRONG_TYPE",
                    message,
                    text,
                    "name a figure that is a number, a length or an area",
                    resolver,
                )
            }
            _ => {
                let message = format!("`{}` is not a figure", text.text);
                report(
                    "NOT_A_FIGURE",
                    message,
                    text,
                    "declare a figure for it: `formula = \"...\"`",
                    resolver,
                )
            }
        })
        .collect();
    if let [first, second] = names
        && first.text == second.text
    {
        let message = format!("`{}` stands twice in `axes`", second.text);
        return report(
            "DUPLICATE_ID",
            message,
            second,
            "name two figures, or one alone",
            resolver,
        );
    }
    read.into_iter().collect()
}

fn percent(
    raw: &RawItem,
    names: &[PlacedText],
    by_id: &BTreeMap<&str, &RawItem>,
    resolver: &Resolver<'_>,
) -> Option<BTreeSet<Id>> {
    if names.is_empty() {
        return wrong_count(
            raw,
            "`percent_of` names no item",
            "name one or more price items",
            resolver,
        );
    }
    let mut of = BTreeSet::new();
    let mut is_whole = true;
    for text in names {
        let found = by_id.get(text.text.as_str());
        let (code, message, help) = match found.map(|item| &item.amount) {
            None => {
                let help = match nearest(&text.text, by_id.keys().copied()) {
                    Some(near) => format!("did you mean `{near}`?"),
                    None => "name price items of this catalog".to_owned(),
                };
                (
                    "UNKNOWN_ITEM",
                    format!("there is no price item `{}`", text.text),
                    help,
                )
            }
            Some(Some(RawAmount::Percent(_))) => (
                "PERCENT_OF_PERCENT",
                format!("`{}` is a percentage itself", text.text),
                "name items that have amounts of their own".to_owned(),
            ),
            Some(_) if of.insert(Id::new(&text.text)) => continue,
            Some(_) => (
                "DUPLICATE_ID",
                format!("`{}` stands twice in `percent_of`", text.text),
                "name each item once".to_owned(),
            ),
        };
        is_whole = false;
        let _: Option<()> = report(code, message, text, &help, resolver);
    }
    is_whole.then_some(of)
}

fn wrong_count<T>(raw: &RawItem, message: &str, help: &str, resolver: &Resolver<'_>) -> Option<T> {
    let message = format!("price item `{}`: {message}", raw.head.id);
    resolver.findings.push(
        Finding::error("WRONG_COUNT", message)
            .at(raw.head.place.clone())
            .with_help(help),
    );
    None
}

fn report<T>(
    code: &'static str,
    message: String,
    text: &PlacedText,
    help: &str,
    resolver: &Resolver<'_>,
) -> Option<T> {
    resolver.findings.push(
        Finding::error(code, message)
            .at(text.place.clone())
            .with_help(help),
    );
    None
}
