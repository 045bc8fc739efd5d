//! Figures by table: key and value columns, rows that meet, keys with two values.

use astragal_model::{RowMatch, ValueType};
use expect_test::expect;

use super::{check_figure, check_figure_of};

#[test]
fn values_are_typed() {
    check_figure(RowMatch::Only, "exterior,value,# why\nwhite,0.27,\ndark,1,\n", expect![[r#""#]]);
    check_figure_of(ValueType::Length, None, RowMatch::Only, "exterior,value\nwhite,3/32\n", expect![[r#""#]]);
    check_figure_of(ValueType::Area, None, RowMatch::Only, "exterior,value\nwhite,5.7 ft2\n", expect![[r#""#]]);
    check_figure_of(ValueType::Date, None, RowMatch::Only, "exterior,value\nwhite,2026-11-25\n", expect![[r#""#]]);
}

#[test]
fn value_cells_hold_one_value() {
    check_figure(
        RowMatch::Only,
        "exterior,value\nwhite,\ncream,*\ngrey,1|2\nblack,5-Aug\n\"*\",\"0,27\"\n",
        expect![[r#""#]],
    );
    check_figure_of(ValueType::Length, None, RowMatch::Only, "exterior,value\nwhite,5-Aug\n", expect![[r#""#]]);
}

#[test]
fn options_are_no_values_of_a_table() {
    check_figure_of(ValueType::Option, None, RowMatch::Only, "exterior,value\nwhite,a\n", expect![[r#""#]]);
}

#[test]
fn with_keys_other_columns_are_not_read() {
    let csv = "exterior,zone,other,value\nwhite,anything,?,1\n";
    check_figure_of(ValueType::Number, Some(&["exterior"]), RowMatch::Only, csv, expect![[r#""#]]);
}

#[test]
fn a_key_or_value_column_that_is_not_there_is_named() {
    let csv = "exterior,valeu\nwhite,1\n";
    check_figure_of(ValueType::Number, Some(&["exterior", "zone"]), RowMatch::Only, csv, expect![[r#""#]]);
    let csv = "exterior,value\nwhite,1\n";
    check_figure_of(ValueType::Number, Some(&["exterior", "value"]), RowMatch::Only, csv, expect![[r#""#]]);
}

#[test]
fn under_only_two_rows_that_meet_are_named_with_a_key() {
    check_figure(
        RowMatch::Only,
        "exterior,width,value\nwhite,15..36,1\ndark,*,2\n*,36..48,3\nlight,48<..,4\n",
        expect![[r#""#]],
    );
}

#[test]
fn ranges_that_share_only_an_open_end_do_not_meet() {
    check_figure(RowMatch::Only, "width,value\n..36,1\n36<..72,2\n72<..,3\n", expect![[r#""#]]);
}

#[test]
fn rows_that_meet_without_an_upper_end_say_above_what() {
    check_figure(RowMatch::Only, "width,value\n36<..,1\n40<..,2\n", expect![[r#""#]]);
    check_figure(RowMatch::Only, "width,zone,value\n*,*,1\n*,*,1\n", expect![[r#""#]]);
}

#[test]
fn one_key_with_two_values_contradicts_itself_whatever_the_match() {
    for row_match in [RowMatch::Only, RowMatch::Least, RowMatch::Greatest] {
        check_figure(
            row_match,
            "exterior,value\ndark,1\nwhite,2\ngrey|black,3\n",
            expect![[r#"
                table.csv:4:1 [grey|black,3] TABLE_CONTRADICTS rows 2 and 4 have the same key and two values, 1 and 3: the table contradicts itself
                  row 4
                  help: delete one of them
                  [dark,1] row 2
            "#]],
        );
    }
}

#[test]
fn under_first_a_row_that_can_never_match_is_named() {
    check_figure(RowMatch::First, "exterior,value\ndark,1\n*,2\ndark,3\n", expect![[r#""#]]);
}

#[test]
fn rows_that_say_the_same_are_a_warning_unless_one_alone_may_match() {
    check_figure(RowMatch::Least, "exterior,value\ndark,1\ndark,1.0\n", expect![[r#""#]]);
    check_figure(RowMatch::Only, "exterior,value\ndark,1\ndark,1.0\n", expect![[r#""#]]);
}

#[test]
fn rows_may_overlap_where_one_of_them_is_taken() {
    for row_match in [RowMatch::First, RowMatch::Least, RowMatch::Greatest] {
        check_figure(
            row_match,
            "exterior,value\ndark,1\n*,2\n",
            expect![[r#"
                `black`|`grey` = 1
                * = 2
            "#]],
        );
    }
}

/// A column that cannot be read must not make other rows seem to meet.
#[test]
fn rows_are_compared_only_when_all_columns_are_there() {
    check_figure(RowMatch::Only, "exterior,zoone,value\nwhite,north,1\nwhite,south,2\n", expect![[r#""#]]);
}
