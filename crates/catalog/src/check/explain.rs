//! What there is to say about one rule: its own lines, where they stand, its table, and the examples that break it.

use astragal_model::{Effect, Id, RoomRule, Rule};

use super::CheckReport;
use crate::finding::Place;
use crate::load::{DeclarationKind, LoadedCatalog};
use crate::source::{FileId, Sources};

/// LIMIT: the longest table that is shown, in rows.
pub const ROWS_SHOWN: usize = 20;

/// One rule of one catalog, for a person to read.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct RuleExplanation {
    /// The catalog.
    pub catalog: Id,
    /// The rule.
    pub rule: Id,
    /// On whose authority it stands.
    pub authority: Id,
    /// What happens when it is broken.
    pub effect: Effect,
    /// Whether an order may carry a waiver for it.
    pub waivable: bool,
    /// What a person is told, with names in braces.
    pub message: String,
    /// Where it is published.
    pub basis: Option<String>,
    /// The rule as it stands in its file.
    pub lines: SourceLines,
    /// Its table as it stands in its file, when it has one of at most 20 rows.
    pub table: Option<SourceLines>,
    /// How many rows its table has.
    pub row_count: Option<usize>,
    /// The examples that break it, those that break it alone first.
    pub examples: Vec<ExampleLines>,
}

/// An example that breaks a rule.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ExampleLines {
    /// The example.
    pub id: Id,
    /// Whether it breaks that rule and nothing else.
    pub is_alone: bool,
    /// The example as it stands in its file.
    pub lines: SourceLines,
}

/// Lines of a file as they stand there.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct SourceLines {
    /// The file, as findings name it.
    pub path: String,
    /// The number of the first line, counted from 1.
    pub first_line: usize,
    /// The lines without their ends.
    pub lines: Vec<String>,
}

impl CheckReport {
    /// Explains a rule, once for each checked catalog that has it.
    #[must_use]
    pub fn explain(&self, rule: &str) -> Vec<RuleExplanation> {
        let id = Id::new(rule);
        self.catalogs
            .iter()
            .filter_map(|loaded| {
                let declared = loaded.catalog.declarations();
                if let Some(rule) = declared.rules.iter().find(|rule| rule.id == id) {
                    return explanation(loaded, rule, &self.sources);
                }
                let rule = declared.room_rules.iter().find(|rule| rule.id == id)?;
                of_room(loaded, rule, &self.sources)
            })
            .collect()
    }

    /// The ids of all rules of the checked catalogs.
    pub fn rule_ids(&self) -> impl Iterator<Item = &Id> {
        self.catalogs.iter().flat_map(|loaded| {
            let declared = loaded.catalog.declarations();
            let of_rooms = declared.room_rules.iter().map(|rule| &rule.id);
            declared.rules.iter().map(|rule| &rule.id).chain(of_rooms)
        })
    }
}

fn explanation(loaded: &LoadedCatalog, rule: &Rule, sources: &Sources) -> Option<RuleExplanation> {
    let declarations = loaded.catalog.declarations();
    let stands = loaded.places.of_kind(DeclarationKind::Rule, &rule.id)?;
    let sheet = loaded.places.sheet_of_rule(&rule.id);
    let mut examples: Vec<ExampleLines> = declarations
        .examples
        .iter()
        .filter(|example| example.breaks.contains(&rule.id))
        .filter_map(|example| {
            let stands = loaded.places.of_kind(DeclarationKind::Example, &example.id)?;
            Some(ExampleLines {
                id: example.id.clone(),
                is_alone: example.breaks.len() == 1,
                lines: lines_of(&stands.block, sources),
            })
        })
        .collect();
    examples.sort_by_key(|example| !example.is_alone);
    Some(RuleExplanation {
        catalog: declarations.id.clone(),
        rule: rule.id.clone(),
        authority: rule.authority.clone(),
        effect: rule.effect,
        waivable: rule.waivable,
        message: rule.message.written(&loaded.catalog),
        basis: rule.basis.clone(),
        lines: lines_of(&stands.block, sources),
        table: sheet
            .filter(|(_, rows)| *rows <= ROWS_SHOWN)
            .map(|(file, _)| all_lines(file, sources)),
        row_count: sheet.map(|(_, rows)| rows),
        examples,
    })
}

/// A rule over a room; its examples are those in whose room it does not hold.
fn of_room(loaded: &LoadedCatalog, rule: &RoomRule, sources: &Sources) -> Option<RuleExplanation> {
    let declarations = loaded.catalog.declarations();
    let stands = loaded.places.of_kind(DeclarationKind::RoomRule, &rule.id)?;
    let breaking = declarations
        .examples
        .iter()
        .filter(|example| example.room_breaks.contains(&rule.id));
    let mut examples: Vec<ExampleLines> = breaking
        .filter_map(|example| {
            let stands = loaded.places.of_kind(DeclarationKind::Example, &example.id)?;
            Some(ExampleLines {
                id: example.id.clone(),
                is_alone: example.room_breaks.len() == 1 && example.breaks.is_empty(),
                lines: lines_of(&stands.block, sources),
            })
        })
        .collect();
    examples.sort_by_key(|example| !example.is_alone);
    Some(RuleExplanation {
        catalog: declarations.id.clone(),
        rule: rule.id.clone(),
        authority: rule.authority.clone(),
        effect: rule.effect,
        waivable: false,
        message: rule.message.written(&loaded.catalog),
        basis: rule.basis.clone(),
        lines: lines_of(&stands.block, sources),
        table: None,
        row_count: None,
        examples,
    })
}

/// The whole lines that a place touches.
fn lines_of(place: &Place, sources: &Sources) -> SourceLines {
    let position = sources.position(place);
    let count = position.end_line.saturating_sub(position.line) + 1;
    let lines = sources.text(place.file).lines();
    SourceLines {
        path: sources.path(place.file).to_owned(),
        first_line: position.line,
        lines: lines
            .skip(position.line.saturating_sub(1))
            .take(count)
            .map(str::to_owned)
            .collect(),
    }
}

fn all_lines(file: FileId, sources: &Sources) -> SourceLines {
    SourceLines {
        path: sources.path(file).to_owned(),
        first_line: 1,
        lines: sources.text(file).lines().map(str::to_owned).collect(),
    }
}
