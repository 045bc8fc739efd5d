//! What a check found, and rules explained, for a program.

use std::collections::BTreeMap;

use astragal_catalog::check::{
    BookSummary, CatalogSummary, CheckReport, Counts, ExampleLines, PolicySummary, RuleExplanation,
    SourceLines,
};
use astragal_core::race::{Race, Run};
use astragal_model::Effect;
use serde::Serialize;

use crate::check::diagram::{OfCatalog, Size};
use crate::check::implicit::ImplicitRule;
use crate::exit::Exit;
use crate::json::values::Named;
use crate::json::{FORMAT, JsonFinding, to_text};

#[derive(Serialize)]
struct CheckAnswer<'a> {
    format: u32,
    exit_code: u8,
    findings: Vec<JsonFinding>,
    library: Option<Named>,
    catalogs: Vec<CatalogAnswer<'a>>,
    books: Vec<BookAnswer>,
    policies: Vec<PolicyAnswer>,
}

#[derive(Serialize)]
struct CatalogAnswer<'a> {
    id: String,
    label: String,
    folder: String,
    revision: String,
    counts: CountsAnswer,
    diagram: Option<&'a Size>,
    /// Why there is no diagram.
    no_diagram: Option<&'a str>,
    /// With `--race`, unless no seed was done.
    race: Option<RaceAnswer>,
}

/// The race of the seeds.
#[derive(Serialize)]
struct RaceAnswer {
    /// The winner, with which `diagram` was compiled.
    seed: u64,
    rounds: usize,
    /// The caps of the last round.
    states_at_most: usize,
    nodes_at_most: usize,
    seeds: Vec<SeedAnswer>,
}

/// What one seed took, or what stopped it.
#[derive(Serialize)]
struct SeedAnswer {
    seed: u64,
    edges: Option<usize>,
    nodes: Option<usize>,
    states: Option<usize>,
    stopped: Option<String>,
}

#[derive(Serialize)]
struct CountsAnswer {
    attributes: usize,
    options: usize,
    parts: usize,
    measures: usize,
    facts: usize,
    site_checks: usize,
    figures: usize,
    rules: BTreeMap<String, usize>,
    room_rules: usize,
    tables: usize,
    rows: usize,
    items: usize,
    notices: usize,
    examples: usize,
}

#[derive(Serialize)]
struct BookAnswer {
    id: String,
    label: String,
    folder: String,
    catalog: String,
    currency: &'static str,
    from: Option<String>,
    until: Option<String>,
    revision: String,
}

#[derive(Serialize)]
struct PolicyAnswer {
    id: String,
    label: String,
    folder: String,
    revisions: Vec<PolicyRevision>,
}

#[derive(Serialize)]
struct PolicyRevision {
    catalog: String,
    revision: String,
}

#[derive(Serialize)]
struct ExplainAnswer<'a> {
    format: u32,
    rules: Vec<RuleAnswer>,
    implicit_rules: &'a [ImplicitRule],
}

#[derive(Serialize)]
struct RuleAnswer {
    catalog: String,
    rule: String,
    authority: String,
    effect: &'static str,
    waivable: bool,
    message: String,
    basis: Option<String>,
    source: LinesAnswer,
    table: Option<LinesAnswer>,
    row_count: Option<usize>,
    examples: Vec<ExampleAnswer>,
}

#[derive(Serialize)]
struct ExampleAnswer {
    id: String,
    breaks_it_alone: bool,
    source: LinesAnswer,
}

/// Lines of a file as they stand there.
#[derive(Serialize)]
struct LinesAnswer {
    file: String,
    line: usize,
    lines: Vec<String>,
}

/// What a check found, as JSON.
pub(crate) fn checked(report: &CheckReport, diagrams: &[OfCatalog], exit: Exit) -> Result<String, String> {
    let summary = &report.summary;
    let library = summary.library.as_ref();
    let answer = CheckAnswer {
        format: FORMAT,
        exit_code: exit.code(),
        findings: JsonFinding::all(&report.findings, &report.sources),
        library: library.map(|(id, label)| Named {
            id: id.to_string(),
            label: label.clone(),
        }),
        catalogs: summary
            .catalogs
            .iter()
            .map(|summary| catalog(summary, diagrams))
            .collect(),
        books: summary.books.iter().map(book).collect(),
        policies: summary.policies.iter().map(policy).collect(),
    };
    to_text(&answer, &[])
}

/// Rules explained, as JSON.
pub(crate) fn explained(declared: &[RuleExplanation], implicit: &[ImplicitRule]) -> Result<String, String> {
    let rules = declared.iter().map(rule).collect();
    to_text(
        &ExplainAnswer {
            format: FORMAT,
            rules,
            implicit_rules: implicit,
        },
        &[],
    )
}

fn catalog<'a>(summary: &CatalogSummary, diagrams: &'a [OfCatalog]) -> CatalogAnswer<'a> {
    let of = diagrams.iter().find(|of| of.catalog == summary.id);
    CatalogAnswer {
        id: summary.id.to_string(),
        label: summary.label.clone(),
        folder: summary.folder.to_string(),
        revision: summary.revision.to_string(),
        counts: counts(&summary.counts),
        diagram: of.and_then(|of| of.diagram.as_ref().ok()),
        no_diagram: of.and_then(|of| of.diagram.as_ref().err()).map(String::as_str),
        race: of.and_then(|of| of.race.as_ref()).map(race),
    }
}

fn race(race: &Race) -> RaceAnswer {
    let seed = |run: &Run| {
        let taken = run.outcome.as_ref().ok();
        SeedAnswer {
            seed: run.seed,
            edges: taken.map(|taken| taken.edges),
            nodes: taken.map(|taken| taken.nodes),
            states: taken.map(|taken| taken.states),
            stopped: run.outcome.as_ref().err().map(ToString::to_string),
        }
    };
    RaceAnswer {
        seed: race.seed,
        rounds: race.rounds,
        states_at_most: race.caps.states,
        nodes_at_most: race.caps.nodes,
        seeds: race.runs.iter().map(seed).collect(),
    }
}

fn counts(counts: &Counts) -> CountsAnswer {
    CountsAnswer {
        attributes: counts.attributes,
        options: counts.options,
        parts: counts.parts,
        measures: counts.measures,
        facts: counts.facts,
        site_checks: counts.site_checks,
        figures: counts.figures,
        rules: counts
            .rules
            .iter()
            .map(|(id, count)| (id.to_string(), *count))
            .collect(),
        room_rules: counts.room_rules,
        tables: counts.tables,
        rows: counts.rows,
        items: counts.items,
        notices: counts.notices,
        examples: counts.examples,
    }
}

fn book(summary: &BookSummary) -> BookAnswer {
    BookAnswer {
        id: summary.id.to_string(),
        label: summary.label.clone(),
        folder: summary.folder.to_string(),
        catalog: summary.catalog.to_string(),
        currency: summary.currency,
        from: summary.from.map(|date| date.to_string()),
        until: summary.until.map(|date| date.to_string()),
        revision: summary.revision.to_string(),
    }
}

fn policy(summary: &PolicySummary) -> PolicyAnswer {
    let revisions = summary.revisions.iter();
    let revision = |(catalog, revision): &(astragal_model::Id, astragal_model::Revision)| PolicyRevision {
        catalog: catalog.to_string(),
        revision: revision.to_string(),
    };
    PolicyAnswer {
        id: summary.id.to_string(),
        label: summary.label.clone(),
        folder: summary.folder.to_string(),
        revisions: revisions.map(revision).collect(),
    }
}

fn rule(rule: &RuleExplanation) -> RuleAnswer {
    RuleAnswer {
        catalog: rule.catalog.to_string(),
        rule: rule.rule.to_string(),
        authority: rule.authority.to_string(),
        effect: match rule.effect {
            Effect::Block => "block",
            Effect::Warn => "warn",
            Effect::SignOff => "sign_off",
        },
        waivable: rule.waivable,
        message: rule.message.clone(),
        basis: rule.basis.clone(),
        source: lines(&rule.lines),
        table: rule.table.as_ref().map(lines),
        row_count: rule.row_count,
        examples: rule.examples.iter().map(example).collect(),
    }
}

fn example(example: &ExampleLines) -> ExampleAnswer {
    ExampleAnswer {
        id: example.id.to_string(),
        breaks_it_alone: example.is_alone,
        source: lines(&example.lines),
    }
}

fn lines(lines: &SourceLines) -> LinesAnswer {
    LinesAnswer {
        file: lines.path.clone(),
        line: lines.first_line,
        lines: lines.lines.clone(),
    }
}
