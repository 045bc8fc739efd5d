//! Conversions to the digits in which they were computed elsewhere; the exact fractions are compared in `outside`.

use astragal_exact::{AreaUnit, LengthUnit, Number};
use astragal_trade::metric::{metric_u_factor, pascals, pounds_per_square_foot};

/// Source of every row: the Python library pint 0.25.3.
#[test]
fn units_convert_as_computed_elsewhere() {
    let number = |text: &str| Number::from_decimal(text).unwrap();
    let millimetres = |inches: &Number| inches.checked_div(&LengthUnit::Millimetre.in_inches()).unwrap();
    let square_metres = |square_feet: &Number| {
        let inches = square_feet * AreaUnit::SquareFoot.in_square_inches();
        inches
            .checked_div(&AreaUnit::SquareMetre.in_square_inches())
            .unwrap()
    };
    let rows = [
        ("1 in in mm", millimetres(&number("1")), 1, "25.4"),
        ("5.7 sq ft in m2", square_metres(&number("5.7")), 5, "0.52955"),
        ("9 sq ft in m2", square_metres(&number("9")), 5, "0.83613"),
        ("1 psf in Pa", pascals(&number("1")), 4, "47.8803"),
        ("2.86 psf in Pa", pascals(&number("2.86")), 2, "136.94"),
        (
            "47.8803 Pa in psf",
            pounds_per_square_foot(&number("47.8803")),
            4,
            "1.0000",
        ),
        (
            "1 Btu/(h sq ft F) in W/(m2 K)",
            metric_u_factor(&number("1")),
            5,
            "5.67826",
        ),
    ];
    for (name, found, places, expected) in rows {
        assert_eq!(found.to_fixed(places), expected, "{name} (PyPI pint 0.25.3)");
    }
}
