//! `astragal draw`: draws the units of an order to scale, as one sheet for paper or one picture.
//!
//! Every unit is completed as `quote` completes it; what is not known yet is not drawn, and its place on the sheet says why.
//!
//! Always holds: nothing is drawn of an order with errors; the same files give the same bytes.

mod elevation;
mod sheet;

use std::collections::BTreeSet;
use std::path::Path;

use astragal_catalog::drawn::NotDrawn;
use astragal_catalog::order::{OrderFile, ReadOptions, ReadOrder, read_order};
use astragal_core::complete::Aim;
use astragal_drawing::{DrawingError, elevation_svg, sheet_html};
use astragal_model::Id;

use crate::arguments::{DrawArguments, Format};
use crate::exit::Exit;
use crate::output::{self, write_findings};
use crate::quote::work::{Quote, QuotedUnit};
use crate::quote::{check_authorities, failed, unreadable, used};

/// Carries the command out.
pub(crate) fn run(arguments: &DrawArguments) -> Exit {
    let read = read_order(&arguments.order, &ReadOptions { date: arguments.date });
    let Some(file) = &read.order else {
        return unreadable(&read, Format::Text, "; nothing was drawn");
    };
    if !read.findings.is_empty() {
        write_findings(&read.findings, &read.sources, "");
    }
    if let Some(exit) = check_authorities(&arguments.without, file) {
        return exit;
    }
    if let Some(exit) = arguments
        .out
        .as_deref()
        .and_then(|out| overwrites(out, &arguments.order))
    {
        return exit;
    }
    let used = used(file);
    let left_out: BTreeSet<Id> = arguments.without.iter().cloned().collect();
    let aim = if arguments.cheapest {
        Aim::Cheapest
    } else {
        Aim::Standard
    };
    let quote = match Quote::new(&file.order, &used, &left_out, arguments.date.is_some(), Some(aim)) {
        Ok(quote) => quote,
        Err(message) => return failed(&message, &read, Format::Text),
    };
    match &arguments.opening {
        None => drawn_sheet(&quote, arguments.out.as_deref()),
        Some(tag) => picture(&quote, tag, &read, file, arguments.out.as_deref()),
    }
}

/// The order itself is not written over.
fn overwrites(out: &Path, order: &Path) -> Option<Exit> {
    let (out, order) = (out.canonicalize().ok()?, order.canonicalize().ok()?);
    (out == order).then(|| output::usage("`--out` names the order itself", "name another file"))
}

fn drawn_sheet(quote: &Quote<'_>, out: Option<&Path>) -> Exit {
    let is_drawn = |unit: &QuotedUnit<'_>| {
        elevation::elevation(unit).is_ok_and(|elevation| elevation_svg(&elevation).is_ok())
    };
    let exit = if quote.units.iter().all(is_drawn) {
        Exit::Holds
    } else {
        Exit::Undecided
    };
    match sheet_html(&sheet::sheet(quote)) {
        Ok(html) => write(html, out, exit),
        Err(error) => refused(&error),
    }
}

/// The picture of one opening's unit.
fn picture(quote: &Quote<'_>, tag: &str, read: &ReadOrder, file: &OrderFile, out: Option<&Path>) -> Exit {
    let of_opening = |unit: &&QuotedUnit<'_>| unit.opening.tag == tag;
    let Some(unit) = quote.units.iter().find(of_opening) else {
        let tags: Vec<&str> = quote.units.iter().map(|unit| unit.opening.tag.as_str()).collect();
        let message = format!("there is no opening `{tag}` in order `{}`", quote.order.id);
        return output::usage(&message, &format!("openings are {}", tags.join(", ")));
    };
    match elevation::elevation(unit) {
        Ok(elevation) => match elevation_svg(&elevation) {
            Ok(svg) => write(svg, out, Exit::Holds),
            Err(error) => refused(&error),
        },
        Err(why) => not_drawn(unit, &why, read, file),
    }
}

/// Says why a unit is not drawn, and where the catalog says so.
fn not_drawn(unit: &QuotedUnit<'_>, why: &NotDrawn, read: &ReadOrder, file: &OrderFile) -> Exit {
    let whose = format!("opening `{}`", unit.opening.tag);
    let places = file.catalogs.get(unit.used.id).map(|used| &used.catalog.places);
    if let (NotDrawn::Wrong(fault), Some(places)) = (why, places) {
        write_findings(
            &[fault.finding(&whose, places)],
            &read.sources,
            "; nothing was drawn",
        );
        return Exit::Unreadable;
    }
    let because = elevation::because(unit.used.catalog, why);
    let help = match why {
        NotDrawn::NoDrawing => "add a `[drawing]` to it",
        _ => "answer or measure that in the order",
    };
    let text = format!("{whose} is not drawn: {because}\n  = help: {help}\n");
    output::write_message(&text);
    Exit::Undecided
}

fn refused(error: &DrawingError) -> Exit {
    output::write_message(&format!("error: {error}\n  = help: {}\n", error.help()));
    Exit::Unreadable
}

fn write(text: String, out: Option<&Path>, exit: Exit) -> Exit {
    let Some(path) = out else {
        return output::write_text(&text, exit);
    };
    match std::fs::write(path, text) {
        Ok(()) => exit,
        Err(error) => {
            output::write_message(&format!("error: cannot write `{}`: {error}\n", path.display()));
            Exit::Unwritten
        }
    }
}
