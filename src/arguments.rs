//! The command line: what may be asked, and the help that says so.
//!
//! Always holds: every subcommand's help ends with examples that run from the folder of this project.

use std::net::SocketAddr;
use std::path::PathBuf;

use astragal_model::{Date, Id};
use clap::{Args, Parser, Subcommand, ValueEnum};

const EXIT_CODES: &str = "\
Exit codes (the worst wins):
  0  all holds
  3  something cannot be decided for want of a measure, a fact or a choice
  4  something does not hold
  5  input cannot be read; the findings say where and why
  2  wrong usage
  1  the answer could not be written";

const OPTIONS_EXIT_CODES: &str = "\
Exit codes (where an opening has several units, the worst wins):
  0  the picks go together; something may still be to choose
  3  whether they go together depends on a measure or a fact that is not known
  4  some picks must change, or nothing holds whatever is picked
  5  input cannot be read, or a limit is passed; what is written says why
  2  wrong usage
  1  the answer could not be written";

const QUOTE_EXAMPLES: &str = "\
Examples:
  astragal quote examples/corner-house/order.toml
  astragal quote examples/corner-house/order.toml --format json
  astragal quote examples/corner-house/order.toml --why K1
  astragal quote examples/corner-house/order.toml --cheapest
  astragal quote examples/corner-house/order.toml --without code --date 2026-12-01";

const OPTIONS_EXAMPLES: &str = "\
Examples:
  astragal options examples/corner-house/order.toml --opening B1
  astragal options examples/corner-house/order.toml --opening B1 --format json
  astragal options examples/corner-house/order.toml --opening B1 --date 2026-12-01";

const DRAW_EXAMPLES: &str = "\
Examples:
  astragal draw examples/corner-house/order.toml --out sheet.html
  astragal draw examples/corner-house/order.toml --opening B1 --out b1.svg

Exit codes:
  0  drawn
  3  something is not drawn for want of a measure, a fact or a choice; its place says what
  5  input cannot be read, or a drawing passes a limit
  2  wrong usage
  1  the drawing could not be written";

const CHECK_EXAMPLES: &str = "\
Examples:
  astragal check examples/library
  astragal check examples/library --explain casement-width
  astragal check examples/library --race
  astragal check examples/library --format json";

const PRINT_EXAMPLES: &str = "\
Examples:
  astragal print examples/library
  astragal print examples/library --book hinged-2026
  astragal print examples/library/hinged
  astragal print examples/library --out pages.html
  astragal print examples/library --format csv --out sheets";

const SCHEMA_EXAMPLES: &str = "\
Examples:
  astragal schema --out schemas
  astragal schema catalog

An editor finds the schema of a file by the first line of the file, where its language server for TOML reads that:
  #:schema ../schemas/catalog.schema.json
or by a setting that names the files. catalog.schema.json serves the files that a catalog includes as well.
docs/schemas.md says more.

Exit codes:
  0  written
  2  wrong usage
  1  a schema could not be written";

const SERVE_EXAMPLES: &str = "\
Examples:
  astragal serve examples/library
  astragal serve examples/library --listen 127.0.0.1:0

It says `listening on ADDRESS` once it answers. The contract is in proto/; docs/service.md says what each call means.
SIGTERM or Ctrl-C ends it: calls that have begun are answered first.

Exit codes:
  0  told to stop, and everything was answered
  5  the library cannot be read; the findings say where and why
  2  wrong usage
  1  it could not listen, or calls were cut off: the drain time was over, or a second signal came";

/// Says which options of a made-to-order window go together, and what they cost, exactly.
#[derive(Parser, Debug)]
#[command(name = "astragal", version, after_help = EXIT_CODES)]
pub(crate) struct Arguments {
    /// What to do.
    #[command(subcommand)]
    pub(crate) command: Command,
}

/// What to do.
#[derive(Subcommand, Debug)]
pub(crate) enum Command {
    /// Quote an order: complete every opening with standards, judge it and price it
    #[command(after_help = format!("{QUOTE_EXAMPLES}\n\n{EXIT_CODES}"))]
    Quote(QuoteArguments),
    /// Draw the units of an order to scale: a sheet by floor and room as HTML, or one unit as SVG
    #[command(after_help = DRAW_EXAMPLES)]
    Draw(DrawArguments),
    /// Show every option of one opening: what is free, what it costs, and how many picks it would change
    #[command(after_help = format!("{OPTIONS_EXAMPLES}\n\n{OPTIONS_EXIT_CODES}"))]
    Options(OptionsArguments),
    /// Check a library: read every catalog, price book and policy, and prove the examples
    #[command(after_help = format!("{CHECK_EXAMPLES}\n\n{EXIT_CODES}"))]
    Check(CheckArguments),
    /// Print a library: the option chart of each catalog and the price pages of each book, as HTML or CSV
    #[command(after_help = format!("{PRINT_EXAMPLES}\n\n{EXIT_CODES}"))]
    Print(PrintArguments),
    /// Write JSON Schemas, with which an editor completes, explains and checks the files while they are written
    #[command(after_help = SCHEMA_EXAMPLES)]
    Schema(SchemaArguments),
    /// Serve a library: answer questions about catalogs and units over gRPC
    #[command(after_help = SERVE_EXAMPLES)]
    Serve(ServeArguments),
}

/// What to draw.
#[derive(Args, Debug)]
pub(crate) struct DrawArguments {
    /// The order: `order.toml` or `order.json`
    pub(crate) order: PathBuf,
    /// Draw the unit of this opening alone, as SVG
    #[arg(long, value_name = "TAG")]
    pub(crate) opening: Option<String>,
    /// Write into this file instead of standard output
    #[arg(long, value_name = "FILE")]
    pub(crate) out: Option<PathBuf>,
    /// Judge as of this day instead of the order's own
    #[arg(long, value_name = "YYYY-MM-DD", value_parser = date)]
    pub(crate) date: Option<Date>,
    /// Fill in what costs least instead of what is standard
    #[arg(long)]
    pub(crate) cheapest: bool,
    /// Do not let the rules of this authority bind; may be given several times, and the sheet says so
    #[arg(long, value_name = "AUTHORITY", value_parser = id)]
    pub(crate) without: Vec<Id>,
}

/// How to quote.
#[derive(Args, Debug)]
pub(crate) struct QuoteArguments {
    /// The order: `order.toml` or `order.json`
    pub(crate) order: PathBuf,
    /// Judge as of this day instead of the order's own
    #[arg(long, value_name = "YYYY-MM-DD", value_parser = date)]
    pub(crate) date: Option<Date>,
    /// For a person, or complete for a program
    #[arg(long, value_enum, default_value_t)]
    pub(crate) format: Format,
    /// Fill in what costs least instead of what is standard
    #[arg(long)]
    pub(crate) cheapest: bool,
    /// Also print the steps that led to every price of this opening
    #[arg(long, value_name = "TAG")]
    pub(crate) why: Option<String>,
    /// Do not let the rules of this authority bind; may be given several times, and the answer says so
    #[arg(long, value_name = "AUTHORITY", value_parser = id)]
    pub(crate) without: Vec<Id>,
}

/// Whose options to show.
#[derive(Args, Debug)]
pub(crate) struct OptionsArguments {
    /// The order: `order.toml` or `order.json`
    pub(crate) order: PathBuf,
    /// The tag of the opening
    #[arg(long, value_name = "TAG")]
    pub(crate) opening: String,
    /// Ask as of this day instead of the order's own
    #[arg(long, value_name = "YYYY-MM-DD", value_parser = date)]
    pub(crate) date: Option<Date>,
    /// For a person, or complete for a program
    #[arg(long, value_enum, default_value_t)]
    pub(crate) format: Format,
}

/// What to check.
#[derive(Args, Debug)]
pub(crate) struct CheckArguments {
    /// The library: a folder with `library.toml`, or a folder in it
    pub(crate) folder: PathBuf,
    /// Print this rule, where it stands, and the examples that break it
    #[arg(long, value_name = "RULE")]
    pub(crate) explain: Option<String>,
    /// Also race several orders of the attributes, and say which makes the smallest diagram
    #[arg(long, conflicts_with = "explain")]
    pub(crate) race: bool,
    /// For a person, or complete for a program
    #[arg(long, value_enum, default_value_t)]
    pub(crate) format: Format,
}

/// What to print.
#[derive(Args, Debug)]
pub(crate) struct PrintArguments {
    /// The library: a folder with `library.toml`, or a folder in it
    pub(crate) folder: PathBuf,
    /// Only this price book, and the option chart of its catalog
    #[arg(long, value_name = "ID")]
    pub(crate) book: Option<String>,
    /// Only this catalog, and its price books
    #[arg(long, value_name = "ID")]
    pub(crate) catalog: Option<String>,
    /// One page file for paper and screen, or a folder of tables for a spreadsheet
    #[arg(long, value_enum, default_value_t)]
    pub(crate) format: PrintFormat,
    /// The file to write instead of standard output; for CSV the folder to write into
    #[arg(long, value_name = "PATH")]
    pub(crate) out: Option<PathBuf>,
}

/// How to print.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default, ValueEnum)]
pub(crate) enum PrintFormat {
    /// One HTML file without scripts that prints well
    #[default]
    Html,
    /// One CSV file a table
    Csv,
}

/// Which schemas to write.
#[derive(Args, Debug)]
pub(crate) struct SchemaArguments {
    /// The kind of file that the schema is for; all kinds when left out, which needs --out
    #[arg(value_enum)]
    pub(crate) kind: Option<SchemaFile>,
    /// Write KIND.schema.json into this folder instead of to standard output; made if it is not there
    #[arg(long, value_name = "FOLDER")]
    pub(crate) out: Option<PathBuf>,
}

/// A kind of file that has a schema.
#[derive(Clone, Copy, PartialEq, Eq, Debug, ValueEnum)]
pub(crate) enum SchemaFile {
    /// library.toml
    Library,
    /// catalog.toml, and the files that it includes
    Catalog,
    /// book.toml
    Book,
    /// policy.toml
    Policy,
    /// order.toml and order.json
    Order,
}

/// What to serve, and where.
#[derive(Args, Debug)]
pub(crate) struct ServeArguments {
    /// The library: a folder with `library.toml`, or a folder in it
    pub(crate) folder: PathBuf,
    /// The address to listen on; port 0 takes a free one
    #[arg(long, value_name = "ADDRESS:PORT", default_value = "127.0.0.1:50051")]
    pub(crate) listen: SocketAddr,
    /// How long calls that have begun may take to end, once the program is told to stop; at a second signal it ends at once
    #[arg(long, value_name = "SECONDS", default_value_t = 10)]
    pub(crate) drain_seconds: u64,
}

/// For whom the answer is.
#[derive(Clone, Copy, PartialEq, Eq, Debug, Default, ValueEnum)]
pub(crate) enum Format {
    /// For a person
    #[default]
    Text,
    /// Complete, for a program
    Json,
}

fn date(text: &str) -> Result<Date, String> {
    let date: Option<Date> = text.parse().ok();
    date.filter(|date| date.to_string() == text)
        .ok_or_else(|| "a date is written like 2026-11-25".to_owned())
}

#[expect(
    clippy::unnecessary_wraps,
    reason = "the command line library asks for a result"
)]
fn id(text: &str) -> Result<Id, String> {
    Ok(Id::new(text))
}

#[cfg(test)]
mod tests {
    use super::*;
    use clap::CommandFactory as _;

    #[test]
    fn the_command_line_is_well_formed() {
        Arguments::command().debug_assert();
    }

    #[test]
    fn a_date_is_a_day_and_nothing_else() {
        assert!(date("2026-11-25").is_ok());
        for wrong in ["2026-11-31", "25.11.2026", "20261125", "2026-11-25T10:00", ""] {
            assert!(date(wrong).is_err(), "{wrong}");
        }
    }
}
