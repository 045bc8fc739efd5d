//! `astragal quote`: reads an order, works it out, and writes the answer.
//!
//! Always holds: nothing is quoted when an error was found in what was read. An argument that names nothing of the
//! order ends with the usage code and says what there is.

pub(crate) mod ask;
pub(crate) mod asking;
pub(crate) mod cheapest;
pub(crate) mod completion;
pub(crate) mod engines;
pub(crate) mod nearest;
pub(crate) mod picked;
pub(crate) mod rooms;
pub(crate) mod sale;
pub(crate) mod words;
pub(crate) mod work;

use std::collections::BTreeSet;

use astragal_catalog::order::{OrderFile, ReadOptions, ReadOrder, read_order};
use astragal_core::complete::Aim;
use astragal_model::Id;

use crate::arguments::{Format, QuoteArguments};
use crate::exit::Exit;
use crate::output::{self, write_findings};
use crate::quote::work::{Quote, Used};
use crate::{json, text};

/// The authorities that every catalog knows.
const AUTHORITIES: [&str; 4] = ["plant", "code", "programme", "dealer"];

/// Carries the command out.
pub(crate) fn run(arguments: &QuoteArguments) -> Exit {
    let options = ReadOptions { date: arguments.date };
    let read = read_order(&arguments.order, &options);
    let Some(file) = &read.order else {
        return unreadable(&read, arguments.format, "; nothing was quoted");
    };
    if let Some(exit) = check_arguments(arguments, file) {
        return exit;
    }
    let used = used(file);
    let left_out: BTreeSet<Id> = arguments.without.iter().cloned().collect();
    let aim = if arguments.cheapest {
        Aim::Cheapest
    } else {
        Aim::Standard
    };
    match Quote::new(&file.order, &used, &left_out, arguments.date.is_some(), Some(aim)) {
        Ok(quote) => write(&quote, &read, arguments),
        Err(message) => failed(&message, &read, arguments.format),
    }
}

pub(crate) fn used(file: &OrderFile) -> Vec<Used<'_>> {
    let catalogs = file.catalogs.iter();
    let used = catalogs.map(|(id, used)| Used {
        id,
        catalog: &used.catalog.catalog,
        book: &used.book.book,
        policy: used.policy.as_ref().map(|loaded| &loaded.policy),
    });
    used.collect()
}

fn write(quote: &Quote<'_>, read: &ReadOrder, arguments: &QuoteArguments) -> Exit {
    let exit = Exit::from(quote.verdict());
    if !read.findings.is_empty() {
        write_findings(&read.findings, &read.sources, "");
    }
    match arguments.format {
        Format::Text => output::write_text(&text::quote(quote, arguments.why.as_deref()), exit),
        Format::Json => output::write_json(json::quote(quote, &read.findings, &read.sources), exit),
    }
}

/// Says why there is no answer: for a person on standard error, which ends with `closing`, and for a program on standard output
/// too.
pub(crate) fn unreadable(read: &ReadOrder, format: Format, closing: &str) -> Exit {
    write_findings(&read.findings, &read.sources, closing);
    no_answer(read, format, None)
}

/// Says why there is no answer to what was read: a limit that was passed, or a disagreement.
pub(crate) fn failed(message: &str, read: &ReadOrder, format: Format) -> Exit {
    output::write_message(&format!("error: {message}\n"));
    no_answer(read, format, Some(message))
}

fn no_answer(read: &ReadOrder, format: Format, error: Option<&str>) -> Exit {
    let exit = Exit::Unreadable;
    match format {
        Format::Text => exit,
        Format::Json => {
            let answer = json::NoAnswer::new(exit, error, &read.findings, &read.sources);
            output::write_json(json::to_text(&answer, &[]), exit)
        }
    }
}

/// Checks what the arguments name against the order.
fn check_arguments(arguments: &QuoteArguments, file: &OrderFile) -> Option<Exit> {
    let order = &file.order;
    if let Some(tag) = &arguments.why
        && !order.openings.iter().any(|opening| opening.tag == *tag)
    {
        let tags: Vec<&str> = order
            .openings
            .iter()
            .map(|opening| opening.tag.as_str())
            .collect();
        let message = format!("there is no opening `{tag}` in order `{}`", order.id);
        return Some(output::usage(&message, &there_are("openings", &tags)));
    }
    check_authorities(&arguments.without, file)
}

/// Checks the authorities that are left out against those of the order's catalogs.
pub(crate) fn check_authorities(without: &[Id], file: &OrderFile) -> Option<Exit> {
    let authorities = authorities(file);
    let unknown = without.iter().find(|id| !authorities.contains(id.as_str()));
    unknown.map(|unknown| {
        let known: Vec<&str> = authorities.iter().copied().collect();
        output::usage(
            &format!("there is no authority `{unknown}`"),
            &there_are("authorities", &known),
        )
    })
}

/// Every authority that a catalog of the order knows.
fn authorities(file: &OrderFile) -> BTreeSet<&str> {
    let declared = file
        .catalogs
        .values()
        .flat_map(|used| &used.catalog.catalog.declarations().authorities);
    AUTHORITIES
        .into_iter()
        .chain(declared.map(|(id, _)| id.as_str()))
        .collect()
}

pub(crate) fn there_are(what: &str, names: &[&str]) -> String {
    let quoted: Vec<String> = names.iter().map(|name| format!("`{name}`")).collect();
    format!("{what} are {}", quoted.join(", "))
}
