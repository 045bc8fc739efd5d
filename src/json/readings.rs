//! The raw readings of an opening, what they come to and what to look at, for a program.

use astragal_model::{Number, OpeningReadings};
use astragal_trade::measuring::{self, Size};
use serde::Serialize;

/// Lengths are inches, exact, as text; null is a reading that was not taken.
#[derive(Serialize)]
pub(super) struct ReadingsAnswer {
    widths: Vec<Option<String>>,
    heights: Vec<Option<String>>,
    diagonals: Vec<Option<String>>,
    out_of_plumb: Option<String>,
    out_of_level: Option<String>,
    deducted_by: Option<&'static str>,
    /// What comes off the width because the sides lean, and off the height because head and sill slope.
    lean: Option<String>,
    slope: Option<String>,
    /// The largest upright rectangle: width, then height.
    upright: Option<[String; 2]>,
    findings: Vec<ReadingFinding>,
}

#[derive(Serialize)]
struct ReadingFinding {
    id: &'static str,
    /// Whether something lies outside what is common; otherwise something was not read.
    warning: bool,
    text: String,
}

pub(super) fn readings(taken: &OpeningReadings) -> ReadingsAnswer {
    let read = |numbers: &[Option<Number>]| {
        let numbers = numbers.iter();
        numbers
            .map(|number| number.as_ref().map(Number::to_string))
            .collect()
    };
    let readings = &taken.readings;
    let measured = measuring::measure(readings).ok();
    let upright = measured.as_ref().and_then(|measured| measured.upright.as_ref());
    ReadingsAnswer {
        widths: read(&readings.widths),
        heights: read(&readings.heights),
        diagonals: read(&readings.diagonals),
        out_of_plumb: readings.out_of_plumb.as_ref().map(Number::to_string),
        out_of_level: readings.out_of_level.as_ref().map(Number::to_string),
        deducted_by: taken.deducted_by.map(astragal_model::DeductedBy::word),
        lean: measured.as_ref().map(|measured| measured.lean.to_string()),
        slope: measured.as_ref().map(|measured| measured.slope.to_string()),
        upright: upright.map(|Size { width, height }| [width.to_string(), height.to_string()]),
        findings: measured
            .iter()
            .flat_map(|measured| &measured.findings)
            .map(|finding| ReadingFinding {
                id: finding.id(),
                warning: finding.is_warning(),
                text: finding.to_string(),
            })
            .collect(),
    }
}
