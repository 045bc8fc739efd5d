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

/// What is said of a formula, or its type.
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
    check_formula(
        "united_inches_exact(width)",
        expect![[r#"
        c/catalog.toml:38:14 `united_inches_exact(width)` WRONG_ARGUMENTS `united_inches_exact` takes 2 argument(s), not 1
          help: write united_inches_exact(width, height)
    "#]],
    );
    check_formula(
        "pounds_of_glass()",
        expect![[r#"
        c/catalog.toml:38:14 `pounds_of_glass()` WRONG_ARGUMENTS `pounds_of_glass` takes 2 argument(s), not 0
          help: write pounds_of_glass(thickness, area)
    "#]],
    );
    check_formula(
        "water_test_pressure(speed, speed)",
        expect![[r#"
        c/catalog.toml:38:14 `water_test_pressure(speed, speed)` WRONG_ARGUMENTS `water_test_pressure` takes 1 argument(s), not 2
          help: write water_test_pressure(grade)
    "#]],
    );
    check_formula(
        "wind_grade(speed, exposure, width, width * width)",
        expect![[r#"
        c/catalog.toml:38:14 `wind_grade(speed, exposure, width, width * width)` WRONG_ARGUMENTS `wind_grade` takes 5 argument(s), not 4
          help: write wind_grade(speed, exposure, roof_height, area, near_corner)
    "#]],
    );
}

#[test]
fn a_wrong_type_is_refused_where_it_stands_and_all_at_once() {
    check_formula(
        "united_inches_sum_up(speed, 60)",
        expect![[r#"
        c/catalog.toml:38:35 `speed` WRONG_TYPE this is a number; expected a length
          help: a length is written in quotes: "15" or "35 5/8"
        c/catalog.toml:38:42 `60` WRONG_TYPE this is a number; expected a length
          help: a length is written in quotes: "15" or "35 5/8"
    "#]],
    );
    check_formula(
        "pounds_of_glass(width, width)",
        expect![[r#"
        c/catalog.toml:38:37 `width` WRONG_TYPE this is a length; expected an area
          help: make both sides one type
    "#]],
    );
    check_formula(
        "structural_test_pressure(width)",
        expect![[r#"
        c/catalog.toml:38:39 `width` WRONG_TYPE this is a length; expected a number
          help: in_inches(...), in_feet(...) or in_mm(...) turns a length into a number
    "#]],
    );
    check_formula(
        "wind_grade(width, speed, speed, width, 1)",
        expect![[r#"
        c/catalog.toml:38:25 `width` WRONG_TYPE this is a length; expected a number
          help: in_inches(...), in_feet(...) or in_mm(...) turns a length into a number
        c/catalog.toml:38:32 `speed` WRONG_TYPE this is a number; expected an option
          help: make both sides one type
        c/catalog.toml:38:39 `speed` WRONG_TYPE this is a number; expected a length
          help: a length is written in quotes: "15" or "35 5/8"
        c/catalog.toml:38:46 `width` WRONG_TYPE this is a length; expected an area
          help: make both sides one type
        c/catalog.toml:38:53 `1` WRONG_TYPE this is a number; expected a yes or no
          help: compare it with something: `>=`, `==`
    "#]],
    );
}

#[test]
fn an_option_that_the_function_does_not_know_is_refused() {
    check_formula(
        "wind_grade(speed, terrain, width, width * width, corner)",
        expect![[r#"
            c/catalog.toml:38:32 `terrain` UNKNOWN_OPTION this may be `a`, which `wind_grade` does not know
              help: it knows `b`, `c`, `d`
        "#]],
    );
    check_formula(
        "wind_grade(speed, \"e\", width, width * width, corner)",
        expect![[r#"
        c/catalog.toml:38:32 `"e"` UNKNOWN_OPTION `wind_grade` does not know `e`
          help: it knows `b`, `c`, `d`
    "#]],
    );
    check_formula(
        "wind_grade(speed, \"b\", width, width * width, corner)",
        expect![[r#"
        Number
    "#]],
    );
}

#[test]
fn a_name_beside_it_is_named() {
    check_formula(
        "pounds_of_glas(width, width * width)",
        expect![[r#"
        c/catalog.toml:38:14 `pounds_of_glas` UNKNOWN_FUNCTION `pounds_of_glas` is not a function
          help: did you mean `pounds_of_glass`?
    "#]],
    );
}
