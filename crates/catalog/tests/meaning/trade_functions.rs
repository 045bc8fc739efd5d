//! Functions of the trade: exact, without a value where they do not cover what they are given.

use crate::{Case, fact, measures};

fn case() -> Case {
    let exposure = "\n[[site_fact]]\nid = \"exposure\"\nlabel = \"EXPOSURE\"\nof = \"house\"\ntype = \"enumeration\"\noptions = [\"b\", \"c\"]\n";
    Case::new(
        &[
            measures(&["width"]),
            fact("speed", "house", "number"),
            exposure.to_owned(),
        ]
        .concat(),
    )
}

#[test]
fn a_function_of_the_trade_gives_what_the_trade_says_exactly() {
    // Flat glass, published weight of 1/8 in: 1.64 lb/ft2, common practice; united inches: width and height together.
    let found = case().measure("width", "35 5/8").values(&[
        "pounds_of_glass(\"1/8\", \"9 ft2\")",
        "united_inches_exact(width, \"60\")",
        "united_inches_each_up(width, \"60 1/8\")",
        "united_inches_sum_up(width, \"60 1/8\")",
    ]);
    assert_eq!(found, ["14.76", "95.625", "97", "96"]);
}

#[test]
fn what_a_function_does_not_cover_has_no_value() {
    let found = case().fact("speed", "210").fact("exposure", "\"b\"").values(&[
        "pounds_of_glass(\"0.3\", \"9 ft2\")",
        "wind_grade(speed, exposure, \"30 ft\", \"15 ft2\", true)",
        "water_test_pressure(17)",
    ]);
    assert_eq!(found, ["undefined", "undefined", "undefined"]);
}

#[test]
fn an_argument_that_is_not_known_leaves_the_call_unknown() {
    let found = case().fact("exposure", "\"b\"").values(&[
        "wind_grade(speed, exposure, \"30 ft\", \"15 ft2\", true)",
        "united_inches_exact(width, width)",
    ]);
    assert_eq!(found, ["unknown: SPEED", "unknown: WIDTH"]);
}

#[test]
fn a_rule_over_what_is_not_covered_is_broken_for_want_of_a_row() {
    let found = case().truths(&["pounds_of_glass(\"0.3\", \"9 ft2\") < 100"]);
    assert_eq!(found, ["undefined"]);
}
