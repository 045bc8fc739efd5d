//! Compares lengths, areas and conversions with the Python package `pint`, exactly.
//!
//! A grid of magnitudes, written as people write them, times every unit: what `parse_length` and `parse_area` read
//! must be the very fraction that `pint` converts to. Needs an interpreter with `pint` in `ASTRAGAL_PYTHON`; without
//! it each test says that it was skipped.
//!
//! Source: PyPI package `pint`, its own definitions of units, with `fractions.Fraction` for numbers.

use astragal_exact::measure_text::{
    AreaUnit, LengthUnit, format_area, format_length, parse_area, parse_length,
};
use astragal_exact::number::Number;
use std::error::Error;
use std::io::Write;
use std::process::{Command, Stdio};

const SCRIPT: &str = concat!(
    env!("CARGO_MANIFEST_DIR"),
    "/../../tests/outside/lengths_by_pint.py"
);

/// How people write a magnitude, and the same as a fraction for `pint`, worked out by hand.
const MAGNITUDES: [(&str, &str); 16] = [
    ("0", "0"),
    ("1", "1"),
    ("5/8", "5/8"),
    ("35 5/8", "285/8"),
    ("35-5/8", "285/8"),
    ("35 15/16", "575/16"),
    ("59-13/16", "957/16"),
    ("3-1/4", "13/4"),
    ("0.1", "1/10"),
    ("41.04", "1026/25"),
    ("5.7", "57/10"),
    ("9", "9"),
    ("820", "820"),
    ("904.875", "7239/8"),
    ("99999.99999", "9999999999/100000"),
    ("-1/4", "-1/4"),
];

/// One question to `pint`: so much of this unit, in that one.
struct Question {
    magnitude: String,
    unit: &'static str,
    target: &'static str,
}

#[test]
fn lengths_are_read_as_pint_converts_them() -> Result<(), Box<dyn Error>> {
    let mut cases = Vec::new();
    for (written, magnitude) in MAGNITUDES {
        for unit in LengthUnit::ALL {
            let text = format!("{written} {}", unit.symbol());
            let ours = parse_length(&text, None)?;
            assert_eq!(parse_length(written, Some(unit))?, ours, "{text}");
            cases.push((text, ours, question(magnitude, pint_length(unit), "inch")));
        }
    }
    compare("lengths", &cases)
}

#[test]
fn areas_are_read_as_pint_converts_them() -> Result<(), Box<dyn Error>> {
    let mut cases = Vec::new();
    for (written, magnitude) in MAGNITUDES {
        for unit in AreaUnit::ALL {
            let text = format!("{written} {}", unit.symbol());
            cases.push((
                text.clone(),
                parse_area(&text)?,
                question(magnitude, pint_area(unit), "inch**2"),
            ));
        }
    }
    compare("areas", &cases)
}

#[test]
fn units_stand_in_the_ratio_that_pint_gives() -> Result<(), Box<dyn Error>> {
    let mut cases = Vec::new();
    for from in LengthUnit::ALL {
        for to in LengthUnit::ALL {
            let ratio = from
                .in_inches()
                .checked_div(&to.in_inches())
                .ok_or("a unit of nothing")?;
            cases.push((
                format!("{from:?} in {to:?}"),
                ratio,
                question("1", pint_length(from), pint_length(to)),
            ));
        }
    }
    for from in AreaUnit::ALL {
        for to in AreaUnit::ALL {
            let ratio = from
                .in_square_inches()
                .checked_div(&to.in_square_inches())
                .ok_or("a unit of nothing")?;
            cases.push((
                format!("{from:?} in {to:?}"),
                ratio,
                question("1", pint_area(from), pint_area(to)),
            ));
        }
    }
    compare("ratios of units", &cases)
}

/// Numbers that are shown without an ellipsis must be those of `pint`, not merely read back by our own reader.
#[test]
fn what_is_shown_as_exact_is_what_pint_says() -> Result<(), Box<dyn Error>> {
    let mut cases = Vec::new();
    for sixteenths in 1..200_i64 {
        let inches = Number::ratio(sixteenths * 3, 16).ok_or("a denominator of zero")?;
        let magnitude = format!("{}/16", sixteenths * 3);
        for unit in [LengthUnit::Millimetre, LengthUnit::Centimetre, LengthUnit::Metre] {
            let shown = format_length(&inches, unit);
            let digits = shown.split(' ').next().unwrap_or_default();
            let ours = Number::from_decimal(digits).ok_or_else(|| format!("`{shown}` is cut"))?;
            cases.push((shown, ours, question(&magnitude, "inch", pint_length(unit))));
        }
        let shown = format_area(&inches, AreaUnit::SquareFoot);
        let digits = shown.split(' ').next().unwrap_or_default();
        if let Some(ours) = Number::from_decimal(digits) {
            cases.push((shown, ours, question(&magnitude, "inch**2", "foot**2")));
        }
    }
    compare("lengths and areas shown", &cases)
}

fn question(magnitude: &str, unit: &'static str, target: &'static str) -> Question {
    Question {
        magnitude: magnitude.to_string(),
        unit,
        target,
    }
}

fn pint_length(unit: LengthUnit) -> &'static str {
    match unit {
        LengthUnit::Inch => "inch",
        LengthUnit::Foot => "foot",
        LengthUnit::Millimetre => "millimeter",
        LengthUnit::Centimetre => "centimeter",
        LengthUnit::Metre => "meter",
    }
}

fn pint_area(unit: AreaUnit) -> &'static str {
    match unit {
        AreaUnit::SquareInch => "inch**2",
        AreaUnit::SquareFoot => "foot**2",
        AreaUnit::SquareMillimetre => "millimeter**2",
        AreaUnit::SquareCentimetre => "centimeter**2",
        AreaUnit::SquareMetre => "meter**2",
    }
}

/// Compares each of our numbers with the answer to its question; all must be equal, none may be missing.
fn compare(what: &str, cases: &[(String, Number, Question)]) -> Result<(), Box<dyn Error>> {
    let Ok(python) = std::env::var("ASTRAGAL_PYTHON") else {
        writeln!(
            std::io::stderr(),
            "skipped: against_pint ({what}) needs ASTRAGAL_PYTHON, an interpreter with the package pint"
        )?;
        return Ok(());
    };
    let questions: String = cases
        .iter()
        .map(|(_, _, q)| format!("{}\t{}\t{}\n", q.magnitude, q.unit, q.target))
        .collect();
    let answers = ask(&python, questions)?;
    let mut lines = answers.lines();
    let version = lines.next().unwrap_or_default();
    let answers: Vec<&str> = lines.collect();
    assert_eq!(answers.len(), cases.len(), "answers of {version}");
    for ((text, ours, _), theirs) in cases.iter().zip(&answers) {
        assert_eq!(ours, &fraction(theirs)?, "`{text}`: {version} says {theirs}");
    }
    writeln!(
        std::io::stderr(),
        "against_pint: {} {what} equal those of {version}",
        cases.len()
    )?;
    Ok(())
}

/// The questions are written from a second thread, so that neither side waits for the other's full pipe.
fn ask(python: &str, questions: String) -> Result<String, Box<dyn Error>> {
    let mut child = Command::new(python)
        .arg(SCRIPT)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()?;
    let mut input = child.stdin.take().ok_or("no standard input")?;
    let writer = std::thread::spawn(move || input.write_all(questions.as_bytes()));
    let output = child.wait_with_output()?;
    writer.join().map_err(|_| "the writing thread panicked")??;
    if !output.status.success() {
        return Err(format!("{python} ended with {}", output.status).into());
    }
    Ok(String::from_utf8(output.stdout)?)
}

fn fraction(text: &str) -> Result<Number, Box<dyn Error>> {
    let (numerator, denominator) = text.split_once('/').unwrap_or((text, "1"));
    Ok(Number::from_bigs(numerator.parse()?, denominator.parse()?).ok_or("a denominator of zero")?)
}
