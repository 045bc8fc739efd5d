//! `astragal options`: every option of every attribute of one opening, with what it costs and what it would change.
//!
//! Always holds: nothing is said when an error was found in what was read; an opening that is not there ends with the usage
//! code and says which there are; where a limit is passed, a program is told so on standard output too.

pub(crate) mod answer;
pub(crate) mod engine;
pub(crate) mod selection;

use astragal_catalog::order::{OrderFile, ReadOptions, ReadOrder, read_order};
use astragal_model::Subject;

use crate::arguments::{Format, OptionsArguments};
use crate::exit::Exit;
use crate::options::answer::{UnitOptions, worst};
use crate::output::{self, write_findings};
use crate::quote::work::{Quote, QuotedUnit};
use crate::quote::{failed, there_are, unreadable, used};
use crate::{json, text};

/// Carries the command out.
pub(crate) fn run(arguments: &OptionsArguments) -> Exit {
    let read = read_order(&arguments.order, &ReadOptions { date: arguments.date });
    let Some(file) = &read.order else {
        return unreadable(&read, arguments.format, "; no options are shown");
    };
    if !read.findings.is_empty() {
        write_findings(&read.findings, &read.sources, "");
    }
    answer(file, &read, arguments).unwrap_or_else(|message| failed(&message, &read, arguments.format))
}

fn answer(file: &OrderFile, read: &ReadOrder, arguments: &OptionsArguments) -> Result<Exit, String> {
    let used = used(file);
    let left_out = std::collections::BTreeSet::new();
    let quote = Quote::new(&file.order, &used, &left_out, arguments.date.is_some(), None)?;
    let units = quote.units.iter();
    let units: Vec<&QuotedUnit<'_>> = units
        .filter(|unit| unit.opening.tag == arguments.opening)
        .collect();
    if units.is_empty() {
        return Ok(no_opening(file, &arguments.opening));
    }
    let mut answers: Vec<UnitOptions<'_>> = Vec::new();
    for unit in units {
        answers.push(UnitOptions::new(unit).map_err(|reason| about(unit, &reason))?);
    }
    let exit = Exit::from(worst(&answers));
    Ok(match arguments.format {
        Format::Text => output::write_text(&text::options(&quote, &answers), exit),
        Format::Json => {
            let answer = json::options(&quote, &answers, &read.findings, &read.sources);
            output::write_json(answer, exit)
        }
    })
}

fn no_opening(file: &OrderFile, tag: &str) -> Exit {
    let tags: Vec<&str> = file.order.openings.iter().map(|one| one.tag.as_str()).collect();
    let message = format!("there is no opening `{tag}` in order `{}`", file.order.id);
    output::usage(&message, &there_are("openings", &tags))
}

/// Why there are no options, with the opening and its measures, which are the likeliest to be wrong.
fn about(unit: &QuotedUnit<'_>, reason: &str) -> String {
    let catalog = unit.used.catalog;
    let measures = unit.opening.site.measures.iter();
    let measures = measures.filter_map(|(index, measured)| {
        let subject = Subject::Measure(index);
        let shown = catalog.show(subject, &measured.as_ref()?.value);
        Some(format!("{} {shown}", catalog.label_of(subject)))
    });
    let measures: Vec<String> = measures.collect();
    let tag = &unit.opening.tag;
    format!("opening `{tag}` with {}: {reason}", measures.join(", "))
}
