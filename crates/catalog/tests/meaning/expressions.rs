//! Types in expressions: properties, families, units, rounding, and what there is not.

use crate::{Case, attribute, fact, figure, measures, rule};

fn case() -> Case {
    Case::new(&measures(&["width", "height"]))
        .and(&fact("count", "opening", "number"))
        .and(&fact("built", "house", "date"))
        .and(
            "\n[[attribute]]\nid = \"exterior\"\nlabel = \"E\"\nstandard = \"grey\"\noptions = [\n\
             { id = \"white\", properties = { gloss = 10 } },\n\
             { id = \"grey\", families = [\"dark\"], properties = { gloss = 30, film = \"1/8\" } },\n]\n",
        )
        .measure("width", "36")
        .measure("height", "60")
        .fact("count", "3")
        .fact("built", "1964-05-01")
}

#[test]
fn a_property_is_that_of_the_chosen_option() {
    assert_eq!(
        case().values(&["exterior.gloss", "exterior.film"]),
        ["30", "1/8 in"]
    );
    assert_eq!(
        case().pick("exterior", "white").values(&["exterior.gloss"]),
        ["10"]
    );
}

#[test]
fn a_property_that_the_chosen_option_lacks_is_undefined() {
    assert_eq!(
        case().pick("exterior", "white").values(&["exterior.film"]),
        ["undefined"]
    );
}

#[test]
fn a_family_holds_the_options_that_name_it() {
    assert_eq!(case().truths(&[r#"exterior in family("dark")"#]), ["true"]);
    assert_eq!(
        case()
            .pick("exterior", "white")
            .truths(&[r#"exterior in family("dark")"#]),
        ["false"]
    );
}

#[test]
fn length_times_length_is_an_area() {
    assert_eq!(case().values(&["width * height"]), ["15 sq ft"]);
    assert_eq!(
        case().truths(&[r#"width * height == "15 ft2""#, r#"width * height == "2160 in2""#]),
        ["true"; 2]
    );
    assert_eq!(
        case()
            .and(&rule("a", r#"require = 'width * height > "36"'"#))
            .codes()
            .len(),
        1,
        "an area says its unit"
    );
}

#[test]
fn in_functions_turn_lengths_and_areas_into_numbers() {
    let found = case().values(&[
        "in_inches(width)",
        "in_feet(width)",
        "in_mm(width)",
        "in_m(width)",
    ]);
    assert_eq!(found, ["36", "3", "914.4", "0.9144"]);
    assert_eq!(
        case().values(&["in_in2(width * height)", "in_ft2(width * height)"]),
        ["2160", "15"]
    );
    assert_eq!(
        case().truths(&["in_m2(width * height) == 1.3935456"]),
        ["true"],
        "2160 x 0.0254 x 0.0254"
    );
    assert_eq!(
        case().and(&figure("bad", "in_ft2(width)")).codes(),
        ["WRONG_TYPE"]
    );
    assert_eq!(case().and(&figure("bad", "width + 1")).codes(), ["WRONG_TYPE"]);
}

#[test]
fn a_quoted_literal_takes_the_type_of_the_other_side() {
    let found = case().truths(&[
        r#"width == "36""#,
        r#"exterior == "grey""#,
        r#"built == "1964-05-01""#,
        r#""36" == width"#,
    ]);
    assert_eq!(found, ["true"; 4]);
}

#[test]
fn a_quoted_length_without_a_unit_is_in_the_catalogs_unit_and_one_with_a_unit_is_in_that() {
    let metric = Case::new(&measures(&["width"]))
        .length("{ unit = \"mm\" }")
        .measure("width", "914.4");
    assert_eq!(
        metric.truths(&[r#"width == "914.4""#, r#"width == "36 in""#, r#"width == "3 ft""#]),
        ["true"; 3]
    );
    assert_eq!(
        case().truths(&[r#"width == "914.4 mm""#, r#"width > "35""#, r#"width > "37""#]),
        ["true", "true", "false"]
    );
}

#[test]
fn floor_to_goes_towards_minus_infinity() {
    let found = case().values(&[
        r#"floor_to(width - "40 1/16", "1/8")"#,
        r#"floor_to(width + "1/16", "1/8")"#,
        "floor_to(count - 5.5, 1)",
        r#"ceil_to(width - "40 1/16", "1/8")"#,
    ]);
    assert_eq!(found, ["-4 1/8 in", "36 in", "-3", "-4 in"]);
}

#[test]
fn round_to_takes_a_half_away_from_zero() {
    let found = case().values(&[
        "round_to(count - 0.5, 1)",
        "round_to(count - 5.5, 1)",
        "round_to(count - 5.4, 1)",
    ]);
    assert_eq!(found, ["3", "-3", "-2"]);
    assert_eq!(
        case().values(&["round_to(count + 0.5, 1)"]),
        ["4"],
        "not to the even one"
    );
}

#[test]
fn there_is_no_test_for_what_is_known() {
    for name in ["is_known(width)", "has(width)", "is_open(exterior)"] {
        assert_eq!(
            case().and(&rule("a", &format!("require = '{name}'"))).codes(),
            ["UNKNOWN_FUNCTION"],
            "{name}"
        );
    }
}

/// Goal: learning more never changes an answer that was known. Each condition is asked without and with the width.
#[test]
fn learning_a_measure_never_changes_what_was_known() {
    let conditions = [
        r#"width > "30" || count > 2"#,
        r#"width > "30" && count > 5"#,
        r#"count == 3 || (width > "30" ? count : 2) == 3"#,
        r#"!(width > "30") || !(count > 5)"#,
    ];
    let before = case_without_width().truths(&conditions);
    assert_eq!(before, ["true", "false", "true", "true"]);
    for width in ["10", "30", "50"] {
        assert_eq!(
            case_without_width().measure("width", width).truths(&conditions),
            before,
            "{width}"
        );
    }
}

fn case_without_width() -> Case {
    Case::new(&measures(&["width"]))
        .and(&fact("count", "opening", "number"))
        .fact("count", "3")
}

#[test]
fn division_is_by_a_written_number_that_is_not_zero() {
    assert_eq!(case().values(&["count / 2", "width / 2"]), ["1.5", "18 in"]);
    for formula in ["count / 0", "count / 0.0", "1 / count", "count / (3 - 3)"] {
        assert_eq!(case().and(&figure("bad", formula)).codes().len(), 1, "{formula}");
    }
}

#[test]
fn there_is_one_type_of_number_and_it_is_exact() {
    let exact = [
        "7 / 2 == 3.5",
        "1 / 3 * 3 == 1",
        "0.1 + 0.2 == 0.3",
        "count / 7 * 7 == count",
        "2 == 2.0",
    ];
    assert_eq!(case().truths(&exact), ["true"; 5]);
}

#[test]
fn a_number_does_not_overflow() {
    let large = "count * 1000000000000000000000 * 1000000000000000000000";
    let found = case().truths(&[&format!(
        "{large} / 1000000000000000000000 == 3000000000000000000000"
    )]);
    assert_eq!(found, ["true"]);
}

#[test]
fn a_comparison_in_parentheses_is_a_yes_or_no_to_compare() {
    let found = case().truths(&[
        "(count > 2) == (count > 1)",
        "(count > 2) != (count > 5)",
        "true == (count > 5)",
        "(count > 5) == false",
    ]);
    assert_eq!(found, ["true", "true", "false", "true"]);
}

#[test]
fn a_chain_of_comparisons_and_an_order_of_options_are_findings() {
    assert!(
        !case()
            .and(&rule("a", "require = '1 < count < 5'"))
            .codes()
            .is_empty()
    );
    assert_eq!(
        case()
            .and(&rule("a", r#"require = 'exterior < "white"'"#))
            .codes(),
        ["WRONG_TYPE"]
    );
}

#[test]
fn a_text_that_is_no_option_of_the_other_side_is_a_finding() {
    assert_eq!(
        case()
            .and(&rule("a", r#"require = 'exterior == "gray"'"#))
            .codes(),
        ["UNKNOWN_OPTION"]
    );
    let two = case().and(&attribute("handle", "round flat", "standard = \"flat\""));
    assert_eq!(
        two.and(&rule("a", "require = 'exterior == handle'")).codes(),
        ["NEVER_EQUAL"]
    );
}

#[test]
fn sizes_are_compared_exactly_and_never_rounded_for_comparing() {
    let third = case().truths(&[
        r#"width / 7 * 7 == "36""#,
        r#"width / 7 > "5.142857""#,
        r#"width / 7 < "5.142858""#,
    ]);
    assert_eq!(third, ["true"; 3]);
}

/// The longest chains that may be written are worked out on a stack smaller than any thread of a service has.
#[test]
fn the_longest_chain_of_every_operator_is_worked_out_on_a_small_stack() {
    let chain = |operator: &str, part: &str, parts: usize| vec![part; parts].join(operator);
    let values = [
        (chain(" * ", "count", 64), "3433683820292512484657849089281"),
        (format!("{} / 2", chain(" * ", "1", 63)), "0.5"),
        (format!("count{}", " / 1".repeat(63)), "3"),
        (chain(" + ", "count", 5_000), "15000"),
        (format!("count{}", " - 1".repeat(5_000)), "-4997"),
        (format!("{}count", "-".repeat(64)), "3"),
    ];
    let work = move || {
        for (expression, expected) in &values {
            assert_eq!(case().values(&[expression]), [*expected], "{expression:.60}");
        }
        let truths = [
            vec!["count == 3"; 3_000].join(" && "),
            ["count == 4", "count == 3"].repeat(1_500).join(" || "),
            format!("{}(count == 3)", "!".repeat(62)),
        ];
        for expression in &truths {
            assert_eq!(case().truths(&[expression]), ["true"], "{expression:.60}");
        }
    };
    let small = std::thread::Builder::new().stack_size(768 * 1024);
    small.spawn(work).expect("a thread").join().expect("no overflow");
}

#[test]
fn a_product_of_more_factors_than_are_worked_out_is_refused() {
    for operator in ["*", "/"] {
        let text = format!("1{}", format!(" {operator} 3").repeat(16_000));
        let findings = case()
            .and(&rule("a", &format!("require = '{text} > 0'")))
            .faults();
        assert!(
            matches!(findings.as_slice(), [only] if only.contains("the product has more than 64 factors after the first")),
            "{:.200}",
            findings.concat()
        );
    }
}
