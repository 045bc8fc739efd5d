//! Every cell of the code's tables: how it was seen, and values on both sides of it.

use crate::number;
use astragal_exact::Number;
use astragal_trade::energy::CodeZone;
use astragal_trade::energy::code::{CodeAnswer, EnergyCode, Maximum, Place, Quantity, check, maximum};
use astragal_trade::{Status, Truth};

const QUANTITIES: [Quantity; 3] = [
    Quantity::UFactor,
    Quantity::SkylightUFactor,
    Quantity::SolarHeatGain,
];

/// A cell as the table prints it; `m` behind it: from memory, `2`: second hand, `v`: read in the text; `-`: not encoded.
fn cell(code: EnergyCode, zone: CodeZone, quantity: Quantity) -> String {
    let mark = |status| match status {
        Status::Verified => 'v',
        Status::SecondHand => '2',
        Status::Computed => 'c',
        Status::FromMemory => 'm',
    };
    match maximum(code, zone, quantity) {
        Maximum::NotEncoded => "-".to_owned(),
        Maximum::NoRequirement(basis) => format!("NR {}", mark(basis.status)),
        Maximum::AtMost(limit) => {
            let eased = limit
                .allowance
                .map(|(value, _)| format!("/{}", value.to_fixed(2)));
            format!(
                "{}{} {}",
                limit.value.to_fixed(2),
                eased.unwrap_or_default(),
                mark(limit.basis.status)
            )
        }
    }
}

/// Table, zone, U, skylight U, SHGC, and where the row was seen. Behind a stroke: above 4,000 ft or in a windborne-debris region.
const CELLS: &str = "
iecc_2021         | 0        | 0.50 m      | 0.75 m | -      | IECC 2021, from memory; SHGC: sources disagree, 0.25 against 0.40
iecc_2021         | 1        | 0.50 m      | 0.75 m | 0.25 m | IECC 2021, from memory
iecc_2021         | 2        | 0.40 2      | 0.65 2 | 0.25 2 | a repository that cites IECC 2021 R402.1.2
iecc_2021         | 3        | 0.30 2      | 0.55 m | 0.25 2 | trade press; skylights from memory
iecc_2021         | 4        | 0.30 2      | 0.55 m | 0.40 m | trade press; the rest from memory
iecc_2021         | marine_4 | 0.30/0.32 2 | 0.55 m | 0.40 2 | trade press; skylights from memory
iecc_2021         | 5        | 0.30/0.32 2 | 0.55 m | 0.40 2 | trade press; skylights from memory
iecc_2021         | 6        | 0.30/0.32 2 | 0.55 m | NR m   | trade press; the rest from memory
iecc_2021         | 7        | 0.30/0.32 2 | 0.55 m | NR m   | trade press; the rest from memory
iecc_2021         | 8        | 0.30/0.32 2 | 0.55 m | NR m   | trade press; the rest from memory
iecc_2024         | 0        | -           | -      | -      | not seen
iecc_2024         | 1        | -           | -      | -      | not seen
iecc_2024         | 2        | -           | -      | -      | not seen
iecc_2024         | 3        | 0.30 2      | -      | -      | a repository with IECC 2024 values
iecc_2024         | 4        | 0.30 2      | -      | -      | a repository with IECC 2024 values
iecc_2024         | marine_4 | 0.28/0.30 2 | -      | -      | a repository with IECC 2024 values
iecc_2024         | 5        | 0.28/0.30 2 | -      | -      | a repository with IECC 2024 values
iecc_2024         | 6        | 0.28/0.30 2 | -      | -      | a repository with IECC 2024 values
iecc_2024         | 7        | 0.27 2      | -      | -      | a repository with IECC 2024 values
iecc_2024         | 8        | 0.27 2      | -      | -      | a repository with IECC 2024 values
adopted_city_2018 | 0        | -           | -      | -      | Philadelphia Code: it has no zone 0
adopted_city_2018 | 1        | NR v        | 0.75 v | 0.25 v | Philadelphia Code R-N1102.1.2
adopted_city_2018 | 2        | 0.40 v      | 0.65 v | 0.25 v | Philadelphia Code R-N1102.1.2
adopted_city_2018 | 3        | 0.35 v      | 0.55 v | 0.25 v | Philadelphia Code R-N1102.1.2
adopted_city_2018 | 4        | 0.32 v      | 0.55 v | 0.40 v | Philadelphia Code R-N1102.1.2
adopted_city_2018 | marine_4 | 0.30 v      | 0.55 v | NR v   | Philadelphia Code R-N1102.1.2
adopted_city_2018 | 5        | 0.30 v      | 0.55 v | NR v   | Philadelphia Code R-N1102.1.2
adopted_city_2018 | 6        | 0.30 v      | 0.55 v | NR v   | Philadelphia Code R-N1102.1.2
adopted_city_2018 | 7        | 0.30 v      | 0.55 v | NR v   | Philadelphia Code R-N1102.1.2
adopted_city_2018 | 8        | 0.30 v      | 0.55 v | NR v   | Philadelphia Code R-N1102.1.2
";

#[test]
fn every_cell_of_the_tables_is_as_it_was_seen() {
    let rows = CELLS.trim().lines();
    assert_eq!(rows.clone().count(), CodeZone::ALL.len() * EnergyCode::ALL.len());
    for row in rows {
        let columns: Vec<&str> = row.split('|').map(str::trim).collect();
        let [edition, zone, u_factor, skylight, shgc, _source] = columns[..] else {
            panic!("{row}");
        };
        let (edition, zone) = (
            EnergyCode::from_text(edition).unwrap(),
            CodeZone::from_text(zone).unwrap(),
        );
        let found = QUANTITIES.map(|quantity| cell(edition, zone, quantity));
        assert_eq!(found, [u_factor, skylight, shgc], "{row}");
    }
}

/// A value that is compared with a cell, and what is to be said of it.
struct Row {
    name: String,
    place: Place,
    value: Number,
    expected: &'static str,
}

fn place(elevation_feet: Option<i64>, windborne_debris_region: Option<bool>) -> Place {
    Place {
        elevation: elevation_feet.map(|feet| Number::from(feet * 12)),
        windborne_debris_region,
    }
}

fn row(name: &str, place: &Place, value: Number, expected: &'static str) -> Row {
    Row {
        name: format!("{name}: {value}"),
        place: place.clone(),
        value,
        expected,
    }
}

/// The rows on both sides of a cell, made of its text in the table above and of nothing that the crate says.
fn both_sides(name: &str, cell: &str, quantity: Quantity) -> Vec<Row> {
    let most = match quantity {
        Quantity::SolarHeatGain => number("1"),
        Quantity::UFactor | Quantity::SkylightUFactor => number("2"),
    };
    let (limits, _mark) = cell.split_once(' ').unwrap_or((cell, ""));
    match limits.split_once('/') {
        _ if limits == "-" => vec![row(name, &Place::default(), most, "not encoded")],
        _ if limits == "NR" => vec![row(name, &Place::default(), most, "no requirement")],
        Some((limit, eased)) => eased_limit(name, &number(limit), &number(eased)),
        None => one_limit(name, &number(limits)),
    }
}

/// A limit that is the same wherever the house is.
fn one_limit(name: &str, limit: &Number) -> Vec<Row> {
    let step = number("0.01");
    let places = [
        ("place not known", Place::default()),
        ("low and inland", place(Some(4000), Some(false))),
        ("high up by the sea", place(Some(5000), Some(true))),
    ];
    let rows = places.map(|(words, place)| {
        let named = |what: &str| format!("{name}, {words}, {what}");
        [
            row(&named("a hundredth under"), &place, limit - &step, "yes"),
            row(&named("at the limit"), &place, limit.clone(), "yes"),
            row(&named("a hundredth over"), &place, limit + &step, "no"),
        ]
    });
    rows.into_iter().flatten().collect()
}

/// A limit, and a higher one above 4,000 ft or in a windborne-debris region.
fn eased_limit(name: &str, limit: &Number, eased: &Number) -> Vec<Row> {
    let step = number("0.01");
    let places = [
        ("low and inland", place(Some(4000), Some(false)), limit),
        ("high up", place(Some(4001), Some(false)), eased),
        ("where debris flies", place(Some(0), Some(true)), eased),
    ];
    let rows = places.map(|(words, place, limit)| {
        let named = |what: &str| format!("{name}, {words}, {what}");
        [
            row(&named("a hundredth under"), &place, limit - &step, "yes"),
            row(&named("at the limit"), &place, limit.clone(), "yes"),
            row(&named("a hundredth over"), &place, limit + &step, "no"),
        ]
    });
    let mut rows: Vec<Row> = rows.into_iter().flatten().collect();
    let (nowhere, named) = (Place::default(), |what: &str| {
        format!("{name}, place not known, {what}")
    });
    rows.extend([
        row(&named("at the lower limit"), &nowhere, limit.clone(), "yes"),
        row(&named("a hundredth over it"), &nowhere, limit + &step, "open"),
        row(&named("at the higher limit"), &nowhere, eased.clone(), "open"),
        row(&named("a hundredth over it too"), &nowhere, eased + &step, "no"),
    ]);
    rows
}

fn said(answer: &CodeAnswer) -> &'static str {
    match answer {
        CodeAnswer::NotEncoded => "not encoded",
        CodeAnswer::NoRequirement(_) => "no requirement",
        CodeAnswer::Compared { within, .. } => match within {
            Truth::Yes => "yes",
            Truth::No => "no",
            Truth::Unknown(_) => "open",
        },
    }
}

/// Of every table, zone and quantity: the limit itself is within, a hundredth more is not.
#[test]
fn a_value_at_the_limit_of_each_cell_is_within_and_a_hundredth_more_is_not() {
    let (mut limits, mut eased, mut without, mut not_encoded) = (0, 0, 0, 0);
    for line in CELLS.trim().lines() {
        let columns: Vec<&str> = line.split('|').map(str::trim).collect();
        let [edition, zone, u_factor, skylight, shgc, source] = columns[..] else {
            panic!("{line}");
        };
        let code = EnergyCode::from_text(edition).unwrap();
        let code_zone = CodeZone::from_text(zone).unwrap();
        for (quantity, cell) in QUANTITIES.into_iter().zip([u_factor, skylight, shgc]) {
            match cell {
                "-" => not_encoded += 1,
                cell if cell.starts_with("NR") => without += 1,
                cell => {
                    limits += 1;
                    eased += usize::from(cell.contains('/'));
                }
            }
            let name = format!("{edition}, zone {zone}, {quantity:?}");
            for row in both_sides(&name, cell, quantity) {
                let answer = check(code, Some(code_zone), quantity, Some(&row.value), &row.place);
                assert_eq!(said(&answer.unwrap()), row.expected, "{} ({source})", row.name);
            }
        }
    }
    // Counted by hand in the table: every one of its 90 cells was asked, and each kind is there.
    assert_eq!((limits, eased, without, not_encoded), (54, 8, 9, 27));
}
