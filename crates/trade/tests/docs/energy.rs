//! Tables about energy.

use astragal_exact::Number;
use astragal_trade::Truth;
use astragal_trade::energy::average::{Average, RatedOpening, u_factor};
use astragal_trade::energy::code::{EnergyCode, HIGH_ELEVATION, Maximum, Quantity, maximum};
use astragal_trade::energy::programme::{Bound, CRITERIA, IN_FORCE, Path, in_each_zone};
use astragal_trade::energy::rating::Ratings;
use astragal_trade::energy::{CodeZone, ProgrammeZone};
use astragal_trade::metric::metric_u_factor;

use crate::{Row, number, row, seen, yes_or_no};

fn hundredths(value: i64) -> Number {
    Number::ratio(value, 100).unwrap()
}

fn bound(bound: Bound) -> String {
    match bound {
        Bound::AtMost(value) => format!("at most {}", hundredths(value).to_fixed(2)),
        Bound::Exactly(value) => format!("exactly {}", hundredths(value).to_fixed(2)),
        Bound::AtLeast(value) => format!("at least {}", hundredths(value).to_fixed(2)),
    }
}

pub(crate) fn programme() -> Vec<Row> {
    CRITERIA
        .map(|criterion| {
            let path = match criterion.path {
                Path::Prescriptive => "prescriptive",
                Path::EquivalentEnergyPerformance => "trade-off",
            };
            let (Bound::AtMost(value) | Bound::Exactly(value) | Bound::AtLeast(value)) = criterion.u_factor;
            let metric = metric_u_factor(&hundredths(value)).to_fixed(2);
            row([
                &criterion.zone.to_string(),
                path,
                &bound(criterion.u_factor),
                &metric,
                &bound(criterion.solar_heat_gain),
            ])
        })
        .to_vec()
}

pub(crate) fn programme_units() -> Vec<Row> {
    let rows = [
        ("0.22", "0.20"),
        ("0.22", "0.16"),
        ("0.23", "0.35"),
        ("0.23", "0.34"),
        ("0.25", "0.41"),
        ("0.25", "0.40"),
        ("0.27", "0.25"),
        ("0.27", "0.45"),
        ("0.28", "0.23"),
    ];
    rows.map(|(u_factor, solar_heat_gain)| {
        let ratings = Ratings {
            u_factor: Some(number(u_factor)),
            solar_heat_gain: Some(number(solar_heat_gain)),
        };
        let mut cells = vec![u_factor.to_owned(), solar_heat_gain.to_owned()];
        let answers = in_each_zone(&ratings).unwrap();
        assert_eq!(answers.clone().map(|(zone, _)| zone), ProgrammeZone::ALL);
        cells.extend(answers.map(|(_, answer)| yes_or_no(answer.within == Truth::Yes).to_owned()));
        cells
    })
    .to_vec()
}

fn cell(code: EnergyCode, zone: CodeZone, quantity: Quantity) -> String {
    match maximum(code, zone, quantity) {
        Maximum::NotEncoded => "not encoded".to_owned(),
        Maximum::NoRequirement(basis) => format!("no requirement ({})", seen(basis.status)),
        Maximum::AtMost(limit) => {
            let eased = limit.allowance.map_or(String::new(), |(value, basis)| {
                assert_eq!(basis.status, limit.basis.status, "one standing a cell");
                format!(", {} high up", value.to_fixed(2))
            });
            format!(
                "{}{eased} ({})",
                limit.value.to_fixed(2),
                seen(limit.basis.status)
            )
        }
    }
}

fn code(code: EnergyCode) -> Vec<Row> {
    let quantities = [
        Quantity::UFactor,
        Quantity::SkylightUFactor,
        Quantity::SolarHeatGain,
    ];
    CodeZone::ALL
        .map(|zone| {
            let mut cells = vec![zone.to_string()];
            cells.extend(quantities.map(|quantity| cell(code, zone, quantity)));
            cells
        })
        .to_vec()
}

pub(crate) fn iecc_2021() -> Vec<Row> {
    code(EnergyCode::Iecc2021)
}

pub(crate) fn iecc_2024() -> Vec<Row> {
    code(EnergyCode::Iecc2024)
}

pub(crate) fn adopted_city() -> Vec<Row> {
    code(EnergyCode::AdoptedCity2018)
}

pub(crate) fn averages() -> Vec<Row> {
    let rows: [(&str, &[(i64, &str)]); 3] = [
        ("10 sq ft of 0.28, 30 of 0.32", &[(10, "0.28"), (30, "0.32")]),
        ("10 sq ft of 0.29, 10 of 0.31", &[(10, "0.29"), (10, "0.31")]),
        ("10 sq ft of 0.29, 12 of 0.31", &[(10, "0.29"), (12, "0.31")]),
    ];
    rows.map(|(name, openings)| {
        let openings: Vec<RatedOpening> = openings
            .iter()
            .map(|(square_feet, value)| RatedOpening {
                area: Number::from(square_feet * 144),
                value: Some(number(value)),
            })
            .collect();
        let Average::Known(average) = u_factor(&openings).unwrap() else {
            panic!("all ratings are known")
        };
        let (cut, exact) = average.to_decimal_truncated(6);
        let exact = if exact { cut } else { format!("{cut}…") };
        let within = yes_or_no(average <= hundredths(30));
        row([name, &exact, &average.to_fixed(2), within])
    })
    .to_vec()
}

#[test]
fn the_height_and_the_day_that_the_page_names_are_those_of_the_crate() {
    assert_eq!(HIGH_ELEVATION, 4_000 * 12);
    assert_eq!(IN_FORCE.to_string(), "2023-10-23");
}
