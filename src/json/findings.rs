//! Findings for a program: code, text, and the place by file, line and column.

use astragal_catalog::finding::{Finding, Place, Severity};
use astragal_catalog::source::Sources;
use serde::Serialize;

use crate::exit::Exit;
use crate::json::FORMAT;

/// What stands in place of an answer when there is none.
#[derive(Serialize)]
pub(crate) struct NoAnswer<'a> {
    format: u32,
    exit_code: u8,
    /// Why there is none, where all could be read.
    error: Option<&'a str>,
    findings: Vec<JsonFinding>,
}

/// One finding with its place; lines and columns count from 1, and the end is not part of it.
#[derive(Serialize)]
pub(crate) struct JsonFinding {
    severity: &'static str,
    code: &'static str,
    message: String,
    help: Option<String>,
    file: Option<String>,
    line: Option<usize>,
    column: Option<usize>,
    end_line: Option<usize>,
    end_column: Option<usize>,
    row: Option<u32>,
    column_name: Option<String>,
    related: Vec<Related>,
}

/// Another place that explains a finding.
#[derive(Serialize)]
struct Related {
    message: String,
    file: String,
    line: usize,
    column: usize,
    end_line: usize,
    end_column: usize,
}

impl<'a> NoAnswer<'a> {
    pub(crate) fn new(exit: Exit, error: Option<&'a str>, findings: &[Finding], sources: &Sources) -> Self {
        let findings = JsonFinding::all(findings, sources);
        Self {
            format: FORMAT,
            exit_code: exit.code(),
            error,
            findings,
        }
    }
}

impl JsonFinding {
    /// All findings, in their order.
    pub(crate) fn all(findings: &[Finding], sources: &Sources) -> Vec<Self> {
        findings
            .iter()
            .map(|finding| Self::new(finding, sources))
            .collect()
    }

    fn new(finding: &Finding, sources: &Sources) -> Self {
        let place = finding.place();
        let position = place.map(|place| sources.position(place));
        let severity = match finding.severity() {
            Severity::Error => "error",
            Severity::Warning => "warning",
        };
        let related = finding.related().iter();
        Self {
            severity,
            code: finding.code(),
            message: finding.message().to_owned(),
            help: finding.help().map(str::to_owned),
            file: place.map(|place| sources.path(place.file).to_owned()),
            line: position.map(|position| position.line),
            column: position.map(|position| position.column),
            end_line: position.map(|position| position.end_line),
            end_column: position.map(|position| position.end_column),
            row: place.and_then(|place| place.row),
            column_name: place.and_then(|place| place.column.clone()),
            related: related
                .map(|(place, what)| Related::new(place, what, sources))
                .collect(),
        }
    }
}

impl Related {
    fn new(place: &Place, what: &str, sources: &Sources) -> Self {
        let position = sources.position(place);
        Self {
            message: what.to_owned(),
            file: sources.path(place.file).to_owned(),
            line: position.line,
            column: position.column,
            end_line: position.end_line,
            end_column: position.end_column,
        }
    }
}
