//! Each sentence of "What a catalog means" (`docs/meaning.md`) as a test that fails when it is read the other way.
//!
//! A test is text in, facts out: a small catalog with its book, policy and one order is written down, read through the
//! public interface, filled and judged, and asked short questions. The name of a test is the sentence. The last two
//! modules hold published and computed values of the trade, each row with its source.

#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a fault ends the test"
)]

mod harness;
mod judged;

mod authorities;
mod escape_table;
mod expressions;
mod facts;
mod files;
mod filling;
mod grids;
mod money;
mod not_asked;
mod notices;
mod offered;
mod parts;
mod readings;
mod rooms;
mod rules;
mod standards;
mod tables;
mod tail;
mod trade;
mod trade_functions;
mod truth;

use harness::Case;

/// No entries.
const NONE: [&str; 0] = [];

/// A rule with this id and these keys.
fn rule(id: &str, keys: &str) -> String {
    format!("\n[[rule]]\nid = \"{id}\"\nmessage = \"m\"\n{keys}\n")
}

/// A rule by a sheet of the catalog's folder.
fn table_rule(id: &str, rows: &str, file: &str) -> String {
    rule(id, &format!("table = \"{file}\"\nrows = \"{rows}\""))
}

/// A price item with this id, which is its label as well, and these keys.
fn item(id: &str, keys: &str) -> String {
    format!("\n[[price]]\nid = \"{id}\"\nlabel = \"{id}\"\n{keys}\n")
}

/// A figure by formula.
fn figure(id: &str, formula: &str) -> String {
    format!("\n[[figure]]\nid = \"{id}\"\nlabel = \"{id}\"\nformula = '{formula}'\n")
}

/// A figure by the sheet `<id>.csv` of the catalog's folder.
fn table_figure(id: &str, keys: &str) -> String {
    format!("\n[[figure]]\nid = \"{id}\"\nlabel = \"{id}\"\ntable = \"{id}.csv\"\n{keys}\n")
}

/// Measures of these names, their labels in capitals.
fn measures(names: &[&str]) -> String {
    let of = |name: &&str| {
        format!(
            "\n[[measure]]\nid = \"{name}\"\nlabel = \"{}\"\n",
            name.to_uppercase()
        )
    };
    names.iter().map(of).collect()
}

/// An attribute with plain options, its label in capitals, and these keys.
fn attribute(id: &str, options: &str, keys: &str) -> String {
    let options: Vec<String> = options
        .split(' ')
        .map(|option| format!("{{ id = \"{option}\" }}"))
        .collect();
    let label = id.to_uppercase();
    format!(
        "\n[[attribute]]\nid = \"{id}\"\nlabel = \"{label}\"\noptions = [{}]\n{keys}\n",
        options.join(", ")
    )
}

/// A fact, its label in capitals.
fn fact(id: &str, of: &str, value_type: &str) -> String {
    let label = id.to_uppercase();
    format!("\n[[site_fact]]\nid = \"{id}\"\nlabel = \"{label}\"\nof = \"{of}\"\ntype = \"{value_type}\"\n")
}
