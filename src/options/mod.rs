//! `astragal options`: every option of every attribute of one opening, with what it costs and what it would change.
//!
//! Always holds: nothing is said when an error was found in what was read; an opening that is not there ends with the usage
//! code and says which there are.

pub(crate) mod answer;
pub(crate) mod engine;

use astragal_catalog::order::{OrderFile, ReadOptions, read_order};

use crate::arguments::{Format, OptionsArguments};
use crate::exit::Exit;
use crate::options::answer::{UnitOptions, worst};
use crate::output::{self, write_findings};
use crate::quote::work::{Quote, QuotedUnit};
use crate::quote::{there_are, unreadable, used};
use crate::{json, text};

/// Carries the command out.
pub(crate) fn run(arguments: &OptionsArguments) -> Exit {
    let read = read_order(&arguments.order, &ReadOptions { date: arguments.date });
    let Some(file) = &read.order else {
        return unreadable(&read, arguments.format);
    };
    if !read.findings.is_empty() {
        write_findings(&read.findings, &read.sources, "");
    }
    match answer(file, arguments) {
        Ok(exit) => exit,
        Err(message) => {
            output::write_message(&format!("error: {message}\n"));
            Exit::Unreadable
        }
    }
}

fn answer(file: &OrderFile, arguments: &OptionsArguments) -> Result<Exit, String> {
    let used = used(file);
    let left_out = std::collections::BTreeSet::new();
    let quote = Quote::new(&file.order, &used, &left_out, arguments.date.is_some(), None)?;
    let units: Vec<&QuotedUnit<'_>> = quote
        .units
        .iter()
        .filter(|unit| unit.opening.tag == arguments.opening)
        .collect();
    if units.is_empty() {
        let tags: Vec<&str> = file.order.openings.iter().map(|one| one.tag.as_str()).collect();
        let message = format!(
            "there is no opening `{}` in order `{}`",
            arguments.opening, file.order.id
        );
        return Ok(output::usage(&message, &there_are("openings", &tags)));
    }
    let answers: Vec<UnitOptions<'_>> = units
        .into_iter()
        .map(UnitOptions::new)
        .collect::<Result<_, _>>()?;
    let exit = Exit::from(worst(&answers));
    Ok(match arguments.format {
        Format::Text => output::write_text(&text::options(&answers), exit),
        Format::Json => output::write_json(json::options(&answers), exit),
    })
}
