//! Cells, and which row of a figure's table gives the value.

use crate::{Case, NONE, attribute, measures, table_figure, table_rule};

fn widths(cell: &str, width: &str) -> Vec<String> {
    Case::new(&measures(&["width"]))
        .and(&table_rule("a", "allowed", "a.csv"))
        .file("catalog/a.csv", &format!("width\n{cell}\n"))
        .measure("width", width)
        .answer()
        .broken()
}

#[test]
fn a_range_holds_both_of_its_ends() {
    for inside in ["15", "15 1/64", "36"] {
        assert_eq!(widths("15..36", inside), NONE, "{inside}");
    }
    for outside in ["14 63/64", "36 1/64"] {
        assert_eq!(widths("15..36", outside), ["a"], "{outside}");
    }
}

#[test]
fn a_range_that_is_open_below_leaves_its_lower_end_outside_and_keeps_the_upper() {
    assert_eq!(widths("15<..36", "15"), ["a"]);
    assert_eq!(widths("15<..36", "15 1/64"), NONE);
    assert_eq!(widths("15<..36", "36"), NONE);
}

#[test]
fn a_range_without_an_end_goes_on() {
    assert_eq!(widths("..36", "1/16"), NONE);
    assert_eq!(widths("36..", "36"), NONE);
    assert_eq!(widths("36<..", "36"), ["a"]);
    assert_eq!(widths("36..", "1000"), NONE);
}

#[test]
fn several_ranges_in_one_cell_are_each_let_through() {
    assert_eq!(widths("..15|30..36", "15"), NONE);
    assert_eq!(widths("..15|30..36", "20"), ["a"]);
}

fn colours(cell: &str, colour: &str) -> Vec<String> {
    Case::new(
        "\n[[attribute]]\nid = \"exterior\"\nlabel = \"E\"\nstandard = \"white\"\noptions = [{ id = \"white\" }, \
         { id = \"grey\", families = [\"dark\"] }, { id = \"black\", families = [\"dark\"] }, { id = \"oak\" }]\n",
    )
    .and(&table_rule("a", "allowed", "a.csv"))
    .file("catalog/a.csv", &format!("exterior\n{cell}\n"))
    .pick("exterior", colour)
    .answer()
    .broken()
}

#[test]
fn a_set_lets_its_members_through_and_nothing_else() {
    assert_eq!(colours("white|oak", "oak"), NONE);
    assert_eq!(colours("white|oak", "grey"), ["a"]);
}

#[test]
fn a_family_stands_for_all_of_its_options() {
    assert_eq!(colours("dark", "grey"), NONE);
    assert_eq!(colours("dark", "black"), NONE);
    assert_eq!(colours("dark", "white"), ["a"]);
    assert_eq!(colours("white|dark", "black"), NONE);
}

#[test]
fn a_star_lets_everything_through() {
    assert_eq!(colours("*", "oak"), NONE);
}

/// A figure over the width; its match and its rows.
fn thickness(row_match: &str, rows: &str) -> Case {
    let keys = if row_match.is_empty() {
        String::new()
    } else {
        format!("match = \"{row_match}\"")
    };
    Case::new(&measures(&["width"]))
        .and(&table_figure("thickness", &keys))
        .file("catalog/thickness.csv", &format!("width,thickness\n{rows}"))
}

fn at(case: Case, width: &str) -> String {
    case.measure("width", width).answer().figure("thickness")
}

#[test]
fn where_only_one_row_may_match_two_rows_that_can_meet_are_a_finding() {
    assert_eq!(thickness("only", "..36,3\n30..,4\n").codes(), ["ROWS_MEET"]);
    assert_eq!(
        thickness("only", "..36,3\n36..,4\n").codes(),
        ["ROWS_MEET"],
        "both hold 36"
    );
    assert_eq!(
        thickness("", "..36,3\n36..,4\n").codes(),
        ["ROWS_MEET"],
        "only is what it is when left out"
    );
}

#[test]
fn rows_that_touch_at_an_open_end_do_not_meet() {
    let case = thickness("only", "..36,3\n36<..,4\n");
    assert_eq!(at(case.clone(), "36"), "3");
    assert_eq!(at(case, "36 1/64"), "4");
}

#[test]
fn rows_that_differ_in_one_column_do_not_meet() {
    let case = Case::new(&measures(&["width"]))
        .and(&attribute("glass", "double triple", "standard = \"triple\""))
        .and(&table_figure("thickness", ""))
        .file(
            "catalog/thickness.csv",
            "width,glass,thickness\n..36,double,3\n..36,triple,5\n",
        );
    assert_eq!(at(case, "20"), "5");
}

#[test]
fn under_first_the_first_row_in_the_file_gives_the_value() {
    assert_eq!(at(thickness("first", "..36,4\n..72,3\n"), "20"), "4");
    assert_eq!(at(thickness("first", "..72,3\n..36,4\n"), "20"), "3");
}

#[test]
fn under_least_and_greatest_it_is_the_value_that_counts_and_not_the_order() {
    for rows in ["..36,10\n..72,9\n", "..72,9\n..36,10\n"] {
        assert_eq!(at(thickness("least", rows), "20"), "9");
        assert_eq!(
            at(thickness("greatest", rows), "20"),
            "10",
            "by value, not by letter"
        );
    }
}

#[test]
fn least_and_greatest_look_at_matching_rows_alone() {
    assert_eq!(at(thickness("greatest", "..36,10\n..72,9\n"), "40"), "9");
    assert_eq!(at(thickness("least", "36<..,1\n..72,9\n"), "20"), "9");
}

#[test]
fn an_unknown_key_gives_unknown_and_no_matching_row_gives_undefined() {
    assert_eq!(
        thickness("only", "..36,3\n").answer().figure("thickness"),
        "unknown: WIDTH"
    );
    assert_eq!(at(thickness("only", "..36,3\n"), "40"), "undefined");
}

#[test]
fn an_unknown_key_gives_unknown_even_where_every_row_says_anything() {
    assert_eq!(
        thickness("only", "*,3\n").answer().figure("thickness"),
        "unknown: WIDTH"
    );
}

#[test]
fn a_table_that_gives_one_key_two_values_contradicts_itself_whatever_the_match() {
    for row_match in ["only", "first", "least", "greatest"] {
        let codes = thickness(row_match, "..36,3\n..36,4\n").codes();
        assert!(
            codes.contains(&"TABLE_CONTRADICTS".to_owned()),
            "{row_match}: {codes:?}"
        );
    }
}

#[test]
fn an_allowed_table_holds_where_one_row_matches_and_a_forbidden_one_is_broken_there() {
    let case = |rows: &str| {
        Case::new(&measures(&["width"]))
            .and(&table_rule("a", rows, "a.csv"))
            .file("catalog/a.csv", "width\n..12\n30..36\n")
    };
    assert_eq!(case("allowed").measure("width", "33").answer().broken(), NONE);
    assert_eq!(case("allowed").measure("width", "20").answer().broken(), ["a"]);
    assert_eq!(case("forbidden").measure("width", "33").answer().broken(), ["a"]);
    assert_eq!(case("forbidden").measure("width", "20").answer().broken(), NONE);
    assert_eq!(case("allowed").answer().undecided(), ["a: WIDTH"]);
}

#[test]
fn a_matrix_means_what_the_same_pairs_in_a_list_mean() {
    let case = |rows: &str| {
        Case::new(&attribute("interior", "white oak", "standard = \"white\""))
            .and(&attribute("exterior", "white grey", "standard = \"white\""))
            .and(&crate::rule(
                "a",
                &format!("table = \"a.csv\"\nrows = \"{rows}\"\nlayout = \"matrix\"\ndown = \"interior\"\nacross = \"exterior\""),
            ))
            .file("catalog/a.csv", "inside,white,grey\nwhite,x,\noak,x,x\n")
    };
    let white_in_grey = case("allowed").pick("exterior", "grey");
    assert_eq!(white_in_grey.answer().broken(), ["a"]);
    assert_eq!(white_in_grey.pick("interior", "oak").answer().broken(), NONE);
    let forbidden = case("forbidden").pick("exterior", "grey");
    assert_eq!(forbidden.answer().broken(), NONE);
    assert_eq!(forbidden.pick("interior", "oak").answer().broken(), ["a"]);
}
