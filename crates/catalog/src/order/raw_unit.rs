//! The shape of the units of an opening: picks, pins and waivers as they were written.
//!
//! Always holds: what could not be read is absent, and a finding says why; waivers have a reference, and their dates
//! are in order.
//! Cost: O(length of the file).
//! Source: docs/reference.md, "order.toml or order.json".

use std::ops::Range;

use astragal_model::Date;

use super::raw::filled_text;
use crate::finding::Finding;
use crate::tree::{Spanned, TableReader};

/// A unit in an opening.
#[derive(Debug)]
pub(super) struct RawUnit {
    pub(super) catalog: Option<Spanned<String>>,
    pub(super) picks: Vec<RawPick>,
    pub(super) pins: Vec<Spanned<String>>,
    pub(super) waivers: Vec<RawWaiver>,
}

/// A pick.
#[derive(Debug)]
pub(super) struct RawPick {
    pub(super) attribute: Spanned<String>,
    pub(super) option: Option<Spanned<String>>,
    pub(super) quoted: Option<Date>,
}

/// A waiver.
#[derive(Debug)]
pub(super) struct RawWaiver {
    pub(super) rule: Spanned<String>,
    pub(super) reference: String,
    pub(super) from: Date,
    pub(super) until: Option<Date>,
}

/// Reads the units of an opening; anything but one is a finding.
pub(super) fn read_units(opening: &mut TableReader<'_>) -> Vec<RawUnit> {
    let what = format!("the unit of {}", opening.what());
    let tables = opening.array_of_tables("unit", &what);
    let heads: Vec<Range<usize>> = tables.iter().map(|table| table.place().span).collect();
    match heads.as_slice() {
        [] if !opening.has_slip_of("unit")
            && opening
                .node("unit")
                .is_none_or(|node| node.as_array().is_some_and(<[_]>::is_empty)) =>
        {
            let text = format!("{} has no unit", opening.what());
            let finding = Finding::error("NO_UNIT", text).at(opening.place());
            opening
                .findings()
                .push(finding.with_help("add an `[[opening.unit]]` after it, with `catalog` and `picks`"));
        }
        [] | [_] => {}
        [first, second, ..] => {
            let text = format!(
                "{} has {} units: several units in one opening (mulled units) are not read yet",
                opening.what(),
                heads.len()
            );
            let finding = Finding::error("MULLED_NOT_YET", text)
                .at(opening.place_of(second))
                .with_related(opening.place_of(first), "the first unit")
                .with_help("write one opening for each unit for now, each with its own tag and measures");
            opening.findings().push(finding);
        }
    }
    tables.into_iter().map(read_unit).collect()
}

fn read_unit(mut reader: TableReader<'_>) -> RawUnit {
    let catalog = filled_text(&mut reader, "catalog");
    let picks = reader.array_of_tables("picks", "pick");
    let picks = picks.into_iter().filter_map(read_pick).collect();
    let pins = reader.array_of_texts("pins").unwrap_or_default();
    let waivers = reader.array_of_tables("waivers", "waiver");
    let waivers = waivers.into_iter().filter_map(read_waiver).collect();
    reader.finish();
    RawUnit {
        catalog,
        picks,
        pins,
        waivers,
    }
}

fn read_pick(mut reader: TableReader<'_>) -> Option<RawPick> {
    let attribute = filled_text(&mut reader, "attribute");
    if let Some(attribute) = &attribute {
        reader.rename(format!("the pick of `{}`", attribute.value));
    }
    let option = filled_text(&mut reader, "option");
    let quoted = reader.date("quoted").map(|date| date.value);
    reader.finish();
    Some(RawPick {
        attribute: attribute?,
        option,
        quoted,
    })
}

fn read_waiver(mut reader: TableReader<'_>) -> Option<RawWaiver> {
    let rule = filled_text(&mut reader, "rule");
    if let Some(rule) = &rule {
        reader.rename(format!("the waiver of `{}`", rule.value));
    }
    let reference = filled_text(&mut reader, "reference");
    let from = if reader.requires("from") {
        reader.date("from")
    } else {
        None
    };
    let until = reader.date("until");
    if let (Some(from), Some(until)) = (&from, &until)
        && until.value < from.value
    {
        let text = format!(
            "{} ends on {}, before it begins on {}",
            reader.what(),
            until.value,
            from.value
        );
        let finding = Finding::error("DATES_OUT_OF_ORDER", text)
            .at(reader.place_of(&until.span))
            .with_related(reader.place_of(&from.span), "it begins here")
            .with_help("`from` is its first day and `until` its last");
        reader.findings().push(finding);
    }
    reader.finish();
    Some(RawWaiver {
        rule: rule?,
        reference: reference?.value,
        from: from?.value,
        until: until.map(|until| until.value),
    })
}
