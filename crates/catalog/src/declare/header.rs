//! `[library]`, `[catalog]`, `[[authority]]` and `[[part]]`: what stands above the rest.

use astragal_model::Id;
use astragal_model::measure_text::LengthUnit;

use super::{Fields, Head, IdKind};
use crate::finding::{Finding, Findings, Place};
use crate::library_files::Library;
use crate::source::Sources;
use crate::tree::{self, Spanned};
use crate::typed::Parsed;

/// `[catalog]`.
#[derive(Clone, Debug)]
pub(crate) struct RawHeader {
    pub(crate) head: Head,
    pub(crate) label: String,
    pub(crate) length_unit: LengthUnit,
    /// What measures must be multiples of, as text in the unit.
    pub(crate) step: Option<(String, Place)>,
}

/// `[[authority]]`.
#[derive(Clone, Debug)]
pub(crate) struct RawAuthority {
    pub(crate) head: Head,
    pub(crate) label: String,
}

/// `[[part]]`.
#[derive(Clone, Debug)]
pub(crate) struct RawPart {
    pub(crate) head: Head,
    pub(crate) kind: Id,
    pub(crate) label: String,
    pub(crate) when: Option<Parsed>,
}

/// `[library]` of `library.toml`: id and label.
pub(crate) fn library_header(
    library: &Library,
    sources: &mut Sources,
    findings: &Findings,
) -> Option<(Id, String)> {
    let path = library.library_file();
    let file = library.read(sources, &path, None, findings)?;
    let root = tree::read(sources, file, findings)?;
    let mut fields = Fields::new(&root, file, "library file", &path, sources, findings)?;
    fields.reader.format_is_known();
    let header = table(&mut fields, "library", "library").and_then(|mut table| {
        let head = table.head(IdKind::Other);
        let label = table.label();
        table.reader.finish();
        Some((head?.id, label))
    });
    fields.reader.finish();
    header
}

pub(super) fn catalog_header(file: &mut Fields<'_>) -> Option<RawHeader> {
    let mut table = table(file, "catalog", "catalog")?;
    let head = table.head(IdKind::Other);
    let label = table.label();
    let (length_unit, step) = length(&mut table);
    table.reader.finish();
    Some(RawHeader {
        head: head?,
        label,
        length_unit,
        step,
    })
}

fn length(table: &mut Fields<'_>) -> (LengthUnit, Option<(String, Place)>) {
    let Some(mut length) = self::table(table, "length", "`length`") else {
        return (LengthUnit::Inch, None);
    };
    let units = LengthUnit::ALL.map(|unit| (unit.symbol(), unit));
    let unit = length.required_word("unit", &units);
    let step = length.reader.decimal_text("step");
    let step = step.map(|Spanned { value, span }| (value, length.place_of(&span)));
    length.reader.finish();
    (unit.unwrap_or(LengthUnit::Inch), step)
}

/// The table under a key, which must be there.
pub(crate) fn table<'a>(fields: &mut Fields<'a>, key: &'static str, what: &str) -> Option<Fields<'a>> {
    if !fields.reader.requires(key) {
        return None;
    }
    let node = fields.reader.node(key)?;
    fields.inner(node, what)
}

pub(super) fn no_catalog_here(file: &mut Fields<'_>) {
    if let Some(node) = file.reader.node("catalog") {
        let place = file.place_of(&node.span);
        let finding = Finding::error(
            "CATALOG_IN_INCLUDE",
            "`[catalog]` stands in an included file; it stands in `catalog.toml` alone",
        );
        file.findings().push(
            finding
                .at(place)
                .with_help("take it out, or do not include this file"),
        );
    }
}

pub(super) fn authority(mut fields: Fields<'_>) -> Option<RawAuthority> {
    let head = fields.head(IdKind::Other);
    let label = fields.label();
    fields.reader.finish();
    Some(RawAuthority { head: head?, label })
}

pub(super) fn part(mut fields: Fields<'_>) -> Option<RawPart> {
    let head = fields.head(IdKind::Name);
    let kind = fields.required_text("kind");
    if let Some(kind) = &kind {
        super::ids::check(IdKind::Name, &kind.text, &kind.place, fields.findings());
    }
    let label = fields.label();
    let when = fields.expression("when");
    fields.reader.finish();
    Some(RawPart {
        head: head?,
        kind: Id::new(&kind?.text),
        label,
        when,
    })
}
