//! The program `astragal`: quotes an order of made-to-order windows, and checks a library of catalogs.
//!
//! `astragal quote order.toml` says for every opening what it costs and which rules hold; `astragal options order.toml
//! --opening B1` what every other option would cost and change; `astragal check library` what is wrong with the files of a
//! library; `astragal draw order.toml` draws its units to scale; `astragal print library` writes its option charts and price pages; `astragal schema` what an editor needs to
//! know of the files; `astragal serve library` answers other programs over gRPC. Answers go to standard output, findings to
//! standard error, and the exit code says the worst that was found: see [`exit`].
//!
//! Always holds: the same files and arguments give the same bytes, the milliseconds of a check apart; nothing is rounded for
//! showing; a reader that stops listening is no failure.

mod arguments;
mod check;
mod draw;
mod exit;
mod json;
mod options;
mod output;
mod print;
mod quote;
mod schema;
mod serve;
mod text;

use clap::Parser as _;

use arguments::{Arguments, Command};

fn main() -> std::process::ExitCode {
    let exit = match Arguments::parse().command {
        Command::Quote(arguments) => quote::run(&arguments),
        Command::Draw(arguments) => draw::run(&arguments),
        Command::Options(arguments) => options::run(&arguments),
        Command::Check(arguments) => check::run(&arguments),
        Command::Print(arguments) => print::run(&arguments),
        Command::Schema(arguments) => schema::run(&arguments),
        Command::Serve(arguments) => serve::run(&arguments),
    };
    exit.into()
}
