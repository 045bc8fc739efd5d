//! `astragal check`: reads a library, proves its examples, and writes what is wrong or what there is.
//!
//! Always holds: findings go to standard error, and with `--format json` to standard output as well; an error among
//! them ends with the code for input that cannot be read, and warnings do not.

pub(crate) mod diagram;
pub(crate) mod implicit;

use astragal_catalog::check::{CheckReport, check_library};
use astragal_catalog::nearest::nearest;

use crate::arguments::{CheckArguments, Format};
use crate::exit::Exit;
use crate::output::{self, write_findings};
use crate::{json, text};

/// LIMIT: how many rules are named when one is not there.
const NAMED_MAX: usize = 20;

/// Carries the command out.
pub(crate) fn run(arguments: &CheckArguments) -> Exit {
    let report = check_library(&arguments.folder);
    let exit = if report.has_errors() {
        Exit::Unreadable
    } else {
        Exit::Holds
    };
    if !report.findings.is_empty() {
        let closing = if report.has_errors() {
            "; what has errors cannot be used"
        } else {
            ""
        };
        write_findings(&report.findings, &report.sources, closing);
    }
    match &arguments.explain {
        Some(rule) => explain(&report, rule, arguments.format, exit),
        None => summary(&report, arguments, exit),
    }
}

fn summary(report: &CheckReport, arguments: &CheckArguments, exit: Exit) -> Exit {
    let diagrams = || diagram::all(report, arguments.race);
    match arguments.format {
        Format::Json => output::write_json(json::checked(report, &diagrams(), exit), exit),
        Format::Text if report.has_errors() => exit,
        Format::Text => output::write_text(&text::checked(&report.summary, &diagrams()), exit),
    }
}

fn explain(report: &CheckReport, rule: &str, format: Format, exit: Exit) -> Exit {
    let declared = report.explain(rule);
    let implicit = implicit::explain(report, rule);
    if !declared.is_empty() || !implicit.is_empty() {
        return match format {
            Format::Json => output::write_json(json::explained(&declared, &implicit), exit),
            Format::Text => output::write_text(&text::explained(&declared, &implicit), exit),
        };
    }
    let known: Vec<&str> = report.rule_ids().map(|id| id.as_str()).collect();
    let message = format!("no catalog that was checked has a rule `{rule}`");
    let usage = output::usage(&message, &help(rule, &known));
    // The rule may stand in what cannot be read.
    if report.has_errors() { exit } else { usage }
}

fn help(rule: &str, known: &[&str]) -> String {
    if let Some(near) = nearest(rule, known.iter().copied()) {
        return format!("did you mean `{near}`?");
    }
    let mut named: Vec<String> = Vec::new();
    for id in known {
        let quoted = format!("`{id}`");
        if !named.contains(&quoted) {
            named.push(quoted);
        }
    }
    if named.is_empty() {
        return "there are no rules".to_owned();
    }
    let more = named.len().saturating_sub(NAMED_MAX);
    named.truncate(NAMED_MAX);
    let rest = if more > 0 {
        format!(" and {more} more")
    } else {
        String::new()
    };
    format!("rules are {}{rest}", named.join(", "))
}
