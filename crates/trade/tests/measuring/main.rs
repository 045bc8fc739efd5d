//! From readings to sizes, row by row, each with where its numbers come from.
//!
//! A row is text: its columns stand between bars, and readings are written `width 36, 36, 36; height 60, 60, 60; diagonals
//! 70, -; plumb 1/8`, where `-` was not read. What a row leaves out was not read.
#![expect(clippy::unwrap_used, clippy::panic, reason = "these are tests")]

mod askew;
mod diagonals;
mod findings;
mod fits;
mod sizes;

use astragal_exact::{LengthUnit, Number, parse_length};
use astragal_trade::measuring::{Measured, Readings, Size};

const PRACTICE: &str = "common practice, no source";
const COMPUTED: &str = "computed";
const GUIDE: &str = "an installer's how-to page";

/// Inches as a tape shows them; the tests read no other unit.
fn inches(text: &str) -> Number {
    parse_length(text, Some(LengthUnit::Inch)).unwrap()
}

fn size(text: &str) -> Size {
    let (width, height) = text.split_once(" x ").unwrap();
    Size::new(inches(width), inches(height))
}

fn columns<const COUNT: usize>(row: &str) -> [&str; COUNT] {
    let columns: Vec<&str> = row.split('|').map(str::trim).collect();
    columns.try_into().unwrap()
}

fn readings(text: &str) -> Readings {
    let mut readings = Readings::default();
    for part in text.split(';') {
        let (what, written) = part.trim().split_once(' ').unwrap();
        let mut read = written
            .split(',')
            .map(str::trim)
            .map(|one| (one != "-").then(|| inches(one)));
        let mut next = || read.next().unwrap();
        match what {
            "width" => readings.widths = [(); 3].map(|()| next()),
            "height" => readings.heights = [(); 3].map(|()| next()),
            "diagonals" => readings.diagonals = [(); 2].map(|()| next()),
            "plumb" => readings.out_of_plumb = next(),
            "level" => readings.out_of_level = next(),
            "pocket" => readings.pocket_depth = next(),
            other => panic!("no reading is called `{other}`"),
        }
    }
    readings
}

/// 36 x 60 in, and what else was read.
fn plain(also: &str) -> Readings {
    let also = if also.is_empty() {
        String::new()
    } else {
        format!("; {also}")
    };
    readings(&format!("width 36, 36, 36; height 60, 60, 60{also}"))
}

fn ids(measured: &Measured) -> String {
    let ids: Vec<&str> = measured.findings.iter().map(|finding| finding.id()).collect();
    ids.join(" ")
}
