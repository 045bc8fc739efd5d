//! Compares the minor digits of every currency with those of the npm package `currency-codes`.
//!
//! Needs `node` in `ASTRAGAL_NODE` and the folder of its packages in `ASTRAGAL_NODE_MODULES`; without them the test
//! says that it was skipped.
//!
//! Source: npm package `currency-codes`, which carries the list that the maintenance agency of ISO 4217 publishes.

use astragal_model::currency::Currency;
use std::collections::{BTreeMap, BTreeSet};
use std::error::Error;
use std::io::Write;
use std::process::Command;

const SCRIPT: &str = concat!(
    env!("CARGO_MANIFEST_DIR"),
    "/../../tests/outside/currency_digits.js"
);

/// Codes for which ISO 4217 gives no minor units ("N.A."); the package writes 0, we accept no such money.
const WITHOUT_MINOR_UNITS: [&str; 13] = [
    "XAG", "XAU", "XBA", "XBB", "XBC", "XBD", "XDR", "XPD", "XPT", "XSU", "XTS", "XUA", "XXX",
];
/// Codes that only we know, and why: what replaced them as `iso_currency` has it, years from memory.
const ONLY_OURS: [(&str, &str); 5] = [
    ("HRK", "replaced by EUR in 2023; old orders may hold it"),
    ("SLL", "replaced by SLE; old orders may hold it"),
    ("XAD", "newer than the package's list of June 2024"),
    (
        "XCG",
        "replaces ANG from 2025, newer than the package's list of June 2024",
    ),
    ("ZWL", "replaced by ZWG in 2024; old orders may hold it"),
];
/// Codes that only the package knows, and why.
const ONLY_THEIRS: [(&str, &str); 1] = [("ANG", "replaced by XCG in 2025, no longer in `iso_currency`")];

#[test]
fn minor_digits_are_those_of_currency_codes() -> Result<(), Box<dyn Error>> {
    let (Ok(node), Ok(modules)) = (
        std::env::var("ASTRAGAL_NODE"),
        std::env::var("ASTRAGAL_NODE_MODULES"),
    ) else {
        writeln!(
            std::io::stderr(),
            "skipped: against_currency_codes needs ASTRAGAL_NODE and ASTRAGAL_NODE_MODULES, with the package currency-codes"
        )?;
        return Ok(());
    };
    let output = Command::new(&node)
        .arg(SCRIPT)
        .env("NODE_PATH", modules)
        .output()?;
    if !output.status.success() {
        return Err(format!(
            "{node} ended with {}: {}",
            output.status,
            String::from_utf8_lossy(&output.stderr)
        )
        .into());
    }
    let text = String::from_utf8(output.stdout)?;
    let (version, list) = text.split_once('\n').ok_or("no list")?;
    let theirs = list
        .lines()
        .map(code_and_digits)
        .collect::<Result<BTreeMap<_, _>, _>>()?;
    let ours = all_ours();

    for code in WITHOUT_MINOR_UNITS {
        assert!(
            !ours.contains_key(code),
            "`{code}` has no minor units, yet is accepted"
        );
        assert_eq!(theirs.get(code), Some(&0), "`{code}` is no longer a departure");
    }
    let mut compared = 0;
    for (code, digits) in ours.iter().filter(|(code, _)| theirs.contains_key(*code)) {
        assert_eq!(
            theirs.get(code),
            Some(digits),
            "{version} has other digits for `{code}`"
        );
        compared += 1;
    }
    let without: BTreeSet<&str> = WITHOUT_MINOR_UNITS.into();
    assert_eq!(
        only_in(&ours, &theirs, &without),
        ONLY_OURS.map(|(code, _)| code),
        "codes that only we know"
    );
    assert_eq!(
        only_in(&theirs, &ours, &without),
        ONLY_THEIRS.map(|(code, _)| code),
        "codes that only they know"
    );
    writeln!(
        std::io::stderr(),
        "against_currency_codes: {compared} of {} codes compared, all equal; {} without minor units refused; {} only \
         ours, {} only theirs; {version}",
        theirs.len(),
        WITHOUT_MINOR_UNITS.len(),
        ONLY_OURS.len(),
        ONLY_THEIRS.len()
    )?;
    Ok(())
}

fn code_and_digits(line: &str) -> Result<(String, u32), Box<dyn Error>> {
    let (code, digits) = line
        .split_once('\t')
        .ok_or_else(|| format!("no digits in `{line}`"))?;
    Ok((code.to_string(), digits.parse()?))
}

/// Every code that is accepted, found by trying all codes of three letters.
fn all_ours() -> BTreeMap<String, u32> {
    let letters = || 'A'..='Z';
    letters()
        .flat_map(|a| letters().flat_map(move |b| letters().map(move |c| format!("{a}{b}{c}"))))
        .filter_map(|code| Currency::from_code(&code).map(|currency| (code, currency.minor_units())))
        .collect()
}

fn only_in<'a>(
    these: &'a BTreeMap<String, u32>,
    those: &BTreeMap<String, u32>,
    apart: &BTreeSet<&str>,
) -> Vec<&'a str> {
    these
        .keys()
        .map(String::as_str)
        .filter(|code| !those.contains_key(*code) && !apart.contains(code))
        .collect()
}
