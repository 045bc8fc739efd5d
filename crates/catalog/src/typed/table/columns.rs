//! Which subject each column of a sheet reads, for every part.
//!
//! In a sheet with the columns `exterior`, `glazing` and `# source`, the first reads an attribute, the second the
//! attribute of this part, and the third is a remark that nobody reads.
//!
//! Always holds: no two columns read the same subject in one part; a table has at most [`COLUMNS_LIMIT`] columns.

use astragal_model::{PartIndex, Subject};

use crate::finding::{Finding, Place};
use crate::nearest::{nearest, quoted_list};
use crate::sheet::{ColumnId, Sheet};
use crate::source::Sources;
use crate::typed::{PlacedText, Scope, Type};

/// LIMIT: how many columns of a table are read, remarks left out.
pub(crate) const COLUMNS_LIMIT: usize = 64;

/// A key column: what it reads and of which type.
pub(crate) struct KeyedBy {
    pub(crate) column: ColumnId,
    /// What it reads, one subject an entry of `parts`.
    pub(crate) subjects: Vec<Subject>,
    pub(crate) of: Type,
}

/// The columns that can be read, and whether these are all that there should be.
pub(crate) struct Columns {
    pub(crate) keys: Vec<KeyedBy>,
    pub(crate) is_whole: bool,
}

/// The columns that are no remarks.
pub(crate) fn spoken(sheet: &Sheet) -> impl Iterator<Item = (ColumnId, &str)> {
    sheet.columns().filter(|(_, name)| !name.starts_with('#'))
}

/// All columns but the remarks and `value`, each by its own name.
pub(crate) fn all_columns(
    sheet: &Sheet,
    scope: &Scope<'_>,
    parts: &[Option<PartIndex>],
    value: Option<ColumnId>,
) -> Columns {
    let named = spoken(sheet).filter(|(column, _)| Some(*column) != value);
    let named = named.map(|(column, name)| {
        let text = PlacedText::new(name.to_owned(), sheet.column_place(column), &Sources::new());
        (column, text)
    });
    // Only the corner of a sheet may come without a name, and only a matrix or a grid leaves it so.
    let (columns, blank): (Vec<_>, Vec<_>) = named.partition(|(_, text)| !text.text.is_empty());
    let mut read = read_columns(sheet, scope, parts, &columns);
    for (_, text) in blank {
        let finding = Finding::error("EMPTY_COLUMN_NAME", "column 1 has no name").at(text.place);
        scope
            .findings
            .push(finding.with_help("name what the column holds, or delete it"));
        read.is_whole = false;
    }
    read
}

/// The columns of these names.
pub(crate) fn key_columns(
    sheet: &Sheet,
    scope: &Scope<'_>,
    parts: &[Option<PartIndex>],
    keys: &[PlacedText],
) -> Columns {
    let found = keys
        .iter()
        .filter_map(|key| Some((column_named(sheet, key, scope)?, key.clone())));
    let columns: Vec<(ColumnId, PlacedText)> = found.collect();
    let mut read = read_columns(sheet, scope, parts, &columns);
    read.is_whole &= columns.len() == keys.len();
    read
}

/// The column that a text elsewhere names; a finding there when the sheet has none.
pub(crate) fn column_named(sheet: &Sheet, name: &PlacedText, scope: &Scope<'_>) -> Option<ColumnId> {
    let found = sheet.column(name.text.trim());
    if found.is_none() {
        let known = || spoken(sheet).map(|(_, name)| name);
        let message = format!("the sheet has no column `{}`", name.text);
        let help = match nearest(&name.text, known()) {
            Some(near) => format!("did you mean `{near}`? there are {}", quoted_list(known())),
            None => format!("there are {}", quoted_list(known())),
        };
        let finding = Finding::error("MISSING_COLUMN", message).at(name.place.clone());
        let finding = finding.with_related(sheet.header_place(), "the columns of the sheet");
        scope.findings.push(finding.with_help(help));
    }
    found
}

/// What a column, or the side of a matrix, reads in each part.
pub(crate) fn subjects(
    name: &PlacedText,
    scope: &Scope<'_>,
    parts: &[Option<PartIndex>],
) -> Option<(Vec<Subject>, Type)> {
    let first_word = name.text.split('.').next().unwrap_or_default().trim();
    if scope.names.find(first_word).is_none() {
        let known = || scope.names.all();
        let message = format!("`{}` is not a name of this catalog", name.text);
        let help = match nearest(first_word, known()) {
            Some(near) => format!("did you mean `{near}`?"),
            None => format!(
                "write an id, not a label: {}; a column of remarks begins with `#`",
                quoted_list(known())
            ),
        };
        let finding = Finding::error("UNKNOWN_NAME", message).at(name.place.clone());
        scope.findings.push(finding.with_help(help));
        return None;
    }
    let mut subjects = Vec::new();
    let mut of = None;
    for part in parts {
        let (subject, subject_type) = scope.in_part(*part).subject(name)?;
        subjects.push(subject);
        of.get_or_insert(subject_type);
    }
    Some((subjects, of?))
}

fn read_columns(
    sheet: &Sheet,
    scope: &Scope<'_>,
    parts: &[Option<PartIndex>],
    columns: &[(ColumnId, PlacedText)],
) -> Columns {
    let mut read = Columns {
        keys: Vec::new(),
        is_whole: true,
    };
    if columns.is_empty() {
        let finding = Finding::error("NO_COLUMNS", "the sheet has no column to look anything up by");
        let finding = finding.at(sheet.header_place());
        scope
            .findings
            .push(finding.with_help("name an attribute, measure, fact or figure in the first row"));
        read.is_whole = false;
    }
    if columns.len() > COLUMNS_LIMIT {
        let message = format!(
            "the table has {} columns; at most {COLUMNS_LIMIT} are read",
            columns.len()
        );
        let finding = Finding::error("LIMIT", message).at(sheet.header_place());
        scope.findings.push(finding.with_help("split the table"));
        return Columns {
            keys: Vec::new(),
            is_whole: false,
        };
    }
    for (column, name) in columns {
        let Some((subjects, of)) = subjects(name, scope, parts) else {
            read.is_whole = false;
            continue;
        };
        if let Some(twin) = read.keys.iter().find(|key| reads_same(&key.subjects, &subjects)) {
            let (first, second) = (sheet.column_name(twin.column), &name.text);
            let message = format!("the columns `{first}` and `{second}` read the same");
            let (place, other) = (sheet.column_place(*column), sheet.column_place(twin.column));
            let finding = Finding::error("DUPLICATE_COLUMN", message).at(place);
            let finding = finding.with_related(other, "this is the other one");
            scope.findings.push(finding.with_help("delete one of them"));
            read.is_whole = false;
            continue;
        }
        read.keys.push(KeyedBy {
            column: *column,
            subjects,
            of,
        });
    }
    read
}

fn reads_same(a: &[Subject], b: &[Subject]) -> bool {
    a.iter().zip(b).any(|(a, b)| a == b)
}

/// Says that a sheet has no rows.
pub(crate) fn no_rows(place: Place) -> Finding {
    Finding::error("NO_ROWS", "the table has no rows")
        .at(place)
        .with_help("write a row, or take the table away")
}
