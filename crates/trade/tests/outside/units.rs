//! Conversions, exactly those of `pint`.
//!
//! Source: PyPI package `pint`, its own definitions of units, with `fractions.Fraction` for numbers.

use super::ask;
use astragal_exact::{AreaUnit, LengthUnit, Number};
use astragal_trade::metric::{metric_u_factor, pascals, pounds_per_square_foot};

const POUND: &str = "pound_force/foot**2";
const U_FACTOR: &str = "international_british_thermal_unit/hour/foot**2/delta_degree_Fahrenheit";
const METRIC_U_FACTOR: &str = "watt/meter**2/kelvin";

/// From the least that is asked of a unit to what no unit has, and odd fractions.
const MAGNITUDES: [(i64, i64); 9] = [
    (0, 1),
    (1, 1),
    (286, 100),
    (30, 100),
    (57, 10),
    (9, 1),
    (-33, 7),
    (575, 16),
    (99_999, 1),
];

#[test]
fn conversions_are_those_of_pint() {
    let into = |number: &Number, unit: Number, target: Number| (number * unit).checked_div(&target).unwrap();
    let mut asked = String::new();
    let mut ours = Vec::new();
    for (numerator, denominator) in MAGNITUDES {
        let number = Number::ratio(numerator, denominator).unwrap();
        let (inch, foot) = (LengthUnit::Inch.in_inches(), LengthUnit::Foot.in_inches());
        let millimetre = LengthUnit::Millimetre.in_inches();
        let square_foot = AreaUnit::SquareFoot.in_square_inches();
        let square_metre = AreaUnit::SquareMetre.in_square_inches();
        let rows = [
            ("inch", "millimeter", into(&number, inch, millimetre.clone())),
            ("foot", "millimeter", into(&number, foot, millimetre)),
            (
                "foot**2",
                "meter**2",
                into(&number, square_foot.clone(), square_metre.clone()),
            ),
            ("meter**2", "foot**2", into(&number, square_metre, square_foot)),
            (POUND, "pascal", pascals(&number)),
            ("pascal", POUND, pounds_per_square_foot(&number)),
            (U_FACTOR, METRIC_U_FACTOR, metric_u_factor(&number)),
        ];
        for (unit, target, converted) in rows {
            asked.push_str(&format!("{numerator}/{denominator}\t{unit}\t{target}\n"));
            ours.push((format!("{number} {unit} in {target}"), converted));
        }
    }
    let Some((version, answers)) = ask("lengths_by_pint.py", "pint", &[], asked) else {
        return;
    };
    assert_eq!(answers.len(), ours.len());
    for ((name, ours), theirs) in ours.iter().zip(&answers) {
        let (numerator, denominator) = theirs.split_once('/').unwrap_or((theirs.as_str(), "1"));
        let theirs = Number::from_bigs(numerator.parse().unwrap(), denominator.parse().unwrap()).unwrap();
        assert_eq!(ours, &theirs, "{name}, {version}");
    }
    eprintln!("outside: {} conversions equal those of {version}", ours.len());
}
