//! Functions of the trade in formulas: how many arguments, of which types, and options that they know.

use super::*;

const NAMES: &str = r#"
[[measure]]
id = "width"
label = "W"

[[measure]]
id = "speed"
label = "S"
type = "number"

[[site_fact]]
id = "exposure"
label = "E"
of = "house"
type = "enumeration"
options = ["b", "c", "d"]

[[site_fact]]
id = "terrain"
label = "T"
of = "house"
type = "enumeration"
options = ["a", "b", "c"]

[[site_fact]]
id = "corner"
label = "C"
of = "opening"
type = "bool"
"#;

/// What is said of a formula, which stands on line 36.
fn check_formula(formula: &str, expected: Expect) {
    let text = format!("{HEAD}{NAMES}[[figure]]\nid = \"f\"\nlabel = \"F\"\nformula = '''{formula}'''\n");
    let (loaded, findings, sources) = load_files(&[("c/catalog.toml", &text)]);
    let mut out = lines_of(&findings, &sources);
    if let Some(loaded) = loaded {
        let figure = loaded.catalog.declarations().figures.values().next().unwrap();
        writeln!(out, "{:?}", figure.value_type).unwrap();
    }
    expected.assert_eq(&out);
}

#[test]
fn each_function_takes_its_arguments_and_gives_a_number() {
    for formula in [
        "united_inches_exact(width, \"60\")",
        "united_inches_each_up(width, width)",
        "united_inches_sum_up(width, width)",
        "pounds_of_glass(\"1/8\", width * width)",
        "structural_test_pressure(speed)",
        "water_test_pressure(speed)",
        "wind_grade(speed, exposure, width, width * width, corner)",
    ] {
        check_formula(
            formula,
            expect![[r#"
                Number
            "#]],
        );
    }
}

#[test]
fn a_wrong_count_of_arguments_is_refused_with_their_names() {
    check_formula("united_inches_exact(width)", expect![""]);
    check_formula("pounds_of_glass()", expect![""]);
    check_formula("water_test_pressure(speed, speed)", expect![""]);
    check_formula("wind_grade(speed, exposure, width, width * width)", expect![""]);
}

#[test]
fn a_wrong_type_is_refused_where_it_stands_and_all_at_once() {
    check_formula("united_inches_sum_up(speed, 60)", expect![""]);
    check_formula("pounds_of_glass(width, width)", expect![""]);
    check_formula("structural_test_pressure(width)", expect![""]);
    check_formula("wind_grade(width, speed, speed, width, 1)", expect![""]);
}

#[test]
fn an_option_that_the_function_does_not_know_is_refused() {
    check_formula(
        "wind_grade(speed, terrain, width, width * width, corner)",
        expect![""],
    );
    check_formula(
        "wind_grade(speed, \"b\", width, width * width, corner)",
        expect![""],
    );
    check_formula(
        "wind_grade(speed, \"e\", width, width * width, corner)",
        expect![""],
    );
}

#[test]
fn a_name_beside_it_is_named() {
    check_formula("pounds_of_glas(width, width * width)", expect![""]);
}
