//! `astragal print`: writes the option chart of each catalog and the price pages of each book, for paper or spreadsheet.
//!
//! Two steps: [`chart`] and [`prices`] read the checked catalogs and books into plain [`pages`]; [`html`] and [`csv`] write
//! these. The pages say what the rules say and nothing beside, and name the revisions that they were printed from.
//!
//! Always holds: nothing is printed of a library with errors; the clock is not read; the same library gives the same
//! bytes.

mod chart;
mod csv;
mod figures;
mod html;
mod limits;
mod pages;
mod phrases;
mod prices;
mod reading;
mod rules;
mod tables;
mod words;
mod written;

use std::path::Path;

use astragal_catalog::LoadedCatalog;
use astragal_catalog::check::{CheckReport, CheckedBook, check_library};
use astragal_catalog::nearest::nearest;
use astragal_model::Id;

use crate::arguments::{PrintArguments, PrintFormat};
use crate::exit::Exit;
use crate::output::{self, write_findings};
use pages::Pages;
use written::Files;

/// Carries the command out.
pub(crate) fn run(arguments: &PrintArguments) -> Exit {
    if arguments.format == PrintFormat::Csv && arguments.out.is_none() {
        return output::usage(
            "`--format csv` writes several files and needs a folder for them",
            "add `--out FOLDER`",
        );
    }
    let report = check_library(&arguments.folder);
    if !report.findings.is_empty() {
        let closing = if report.has_errors() {
            "; nothing was printed"
        } else {
            ""
        };
        write_findings(&report.findings, &report.sources, closing);
    }
    if report.has_errors() {
        return Exit::Unreadable;
    }
    match Selection::of(&report, arguments) {
        Ok(selection) => write(&selection.pages(&report), arguments),
        Err(exit) => exit,
    }
}

/// The catalogs and books that were asked for.
struct Selection<'a> {
    catalogs: Vec<&'a LoadedCatalog>,
    books: Vec<&'a CheckedBook>,
}

impl<'a> Selection<'a> {
    fn of(report: &'a CheckReport, arguments: &PrintArguments) -> Result<Self, Exit> {
        let mut catalogs: Vec<&LoadedCatalog> = report.catalogs.iter().collect();
        let mut books: Vec<&CheckedBook> = report.books.iter().collect();
        if let Some(wanted) = &arguments.catalog {
            let known: Vec<&Id> = catalogs.iter().map(|loaded| catalog_id(loaded)).collect();
            is_known("catalog", wanted, &known)?;
            catalogs.retain(|loaded| catalog_id(loaded).as_str() == wanted);
            books.retain(|checked| checked.book.catalog.as_str() == wanted);
        }
        if let Some(wanted) = &arguments.book {
            let known: Vec<&Id> = books.iter().map(|checked| &checked.book.id).collect();
            is_known("price book", wanted, &known)?;
            books.retain(|checked| checked.book.id.as_str() == wanted);
            catalogs.retain(|loaded| {
                books
                    .iter()
                    .any(|checked| checked.book.catalog == *catalog_id(loaded))
            });
        }
        if catalogs.is_empty() && books.is_empty() {
            let message = format!(
                "there is no catalog and no price book in `{}`",
                arguments.folder.display()
            );
            return Err(output::usage(
                &message,
                "name a library, or the folder of a catalog or book",
            ));
        }
        Ok(Self { catalogs, books })
    }

    fn pages(&self, report: &CheckReport) -> Pages {
        let files = Files::of(report);
        let library = report.summary.library.as_ref();
        Pages {
            library: library.map(|(_, label)| label.clone()).unwrap_or_default(),
            charts: self
                .catalogs
                .iter()
                .map(|loaded| chart::chart(loaded, &files))
                .collect(),
            prices: self
                .books
                .iter()
                .map(|checked| prices::price_pages(checked, &files))
                .collect(),
        }
    }
}

fn catalog_id(loaded: &LoadedCatalog) -> &Id {
    &loaded.catalog.declarations().id
}

fn is_known(what: &str, wanted: &str, known: &[&Id]) -> Result<(), Exit> {
    if known.iter().any(|id| id.as_str() == wanted) {
        return Ok(());
    }
    let names = || known.iter().map(|id| id.as_str());
    let help = match nearest(wanted, names()) {
        Some(near) => format!("did you mean `{near}`?"),
        None if known.is_empty() => format!("there is no {what} among what was read"),
        None => {
            let quoted: Vec<String> = names().map(|name| format!("`{name}`")).collect();
            format!("there is {}", quoted.join(", "))
        }
    };
    Err(output::usage(
        &format!("nothing that was read is {what} `{wanted}`"),
        &help,
    ))
}

fn write(pages: &Pages, arguments: &PrintArguments) -> Exit {
    match (arguments.format, &arguments.out) {
        (PrintFormat::Html, None) => output::write_document(&html::document(pages), Exit::Holds),
        (PrintFormat::Html, Some(path)) => written(path, std::fs::write(path, html::document(pages))),
        (PrintFormat::Csv, Some(folder)) => match csv::files(pages) {
            Ok(files) => files
                .iter()
                .map(|file| {
                    let path = folder.join(&file.path);
                    let folder = path.parent().unwrap_or(folder);
                    let made = std::fs::create_dir_all(folder);
                    written(&path, made.and_then(|()| std::fs::write(&path, &file.bytes)))
                })
                .find(|exit| *exit != Exit::Holds)
                .unwrap_or(Exit::Holds),
            Err(error) => unwritten(&error.to_string()),
        },
        (PrintFormat::Csv, None) => Exit::Usage,
    }
}

fn written(path: &Path, result: std::io::Result<()>) -> Exit {
    match result {
        Ok(()) => Exit::Holds,
        Err(error) => unwritten(&format!("`{}`: {error}", path.display())),
    }
}

fn unwritten(why: &str) -> Exit {
    output::write_message(&format!("error: the pages could not be written: {why}\n"));
    Exit::Unwritten
}
