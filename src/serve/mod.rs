//! `astragal serve`: a gRPC service over the catalogs of one library, by the contract in `proto/`.
//!
//! The library is read and checked as `astragal check` does it, every catalog is compiled once, and then questions about one
//! unit are answered until the program is told to stop. `CheckUnit` with a grey casement and nothing measured says what is
//! undecided, and what to measure.
//!
//! Always holds: nothing is served when an error was found in what was read; every answer names the revisions it was worked
//! out from; a unit that does not hold is an answer and no error; every error has one reason that does not change.
//! Cost: a compile a catalog at the start; questions run on threads of their own.
//!
//! This is the only place that knows protobuf. Not here yet, each with its place: keys and roles, and who may leave an
//! authority out (a layer beside [`reason`]); TLS, gRPC-Web and the page ([`listen`]); a session stream (another method of
//! [`unit_service`]); metrics and traces (a layer); stages and reloading ([`library`]).

mod asked;
mod cache;
mod catalog_service;
mod check;
mod complete;
mod day;
mod deadline;
mod describe;
mod drain;
mod ending;
mod fault;
mod fill_in;
mod finding;
mod library;
mod listen;
mod money;
mod names;
mod number;
mod options;
mod picks;
mod product;
mod reason;
mod revisions;
mod site;
mod unit_service;
mod waivers;
mod wire;

use std::time::Duration;

use crate::arguments::ServeArguments;
use crate::exit::Exit;
use crate::output;
use library::Library;
use wire::{DESCRIPTORS, google_type, v1};

/// Carries the command out.
pub(crate) fn run(arguments: &ServeArguments) -> Exit {
    let library = match Library::load(&arguments.folder) {
        Ok(library) => library,
        Err(exit) => return exit,
    };
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    let mut builder = tokio::runtime::Builder::new_multi_thread();
    // A question keeps one core busy, so that more threads than cores would only wait for each other.
    let runtime = match builder.enable_all().max_blocking_threads(cores).build() {
        Ok(runtime) => runtime,
        Err(error) => return failed(&format!("no threads could be started: {error}")),
    };
    let drain = Duration::from_secs(arguments.drain_seconds);
    let ended = runtime.block_on(listen::serve(library, arguments.listen, drain));
    // What the deadline cut off is not waited for.
    runtime.shutdown_background();
    match ended {
        Ok(()) => Exit::Holds,
        Err(message) => failed(&message),
    }
}

fn failed(message: &str) -> Exit {
    output::write_message(&format!("error: {message}\n"));
    Exit::Unwritten
}
