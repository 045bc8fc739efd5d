//! Figures by table: key and value columns, rows that meet, keys with two values.

use astragal_model::{RowMatch, ValueType};
use expect_test::expect;

use super::{check_figure, check_figure_of};

#[test]
fn values_are_typed() {
    check_figure(
        RowMatch::Only,
        "exterior,value,# why\nwhite,0.27,\ndark,1,\n",
        expect![[r#"
        `white` = 0.27
        `black`|`grey` = 1
    "#]],
    );
    check_figure_of(
        ValueType::Length,
        None,
        RowMatch::Only,
        "exterior,value\nwhite,3/32\n",
        expect![[r#"
        `white` = 3/32 in
    "#]],
    );
    check_figure_of(
        ValueType::Area,
        None,
        RowMatch::Only,
        "exterior,value\nwhite,5.7 ft2\n",
        expect![[r#"
        `white` = 5.7 sq ft
    "#]],
    );
    check_figure_of(
        ValueType::Date,
        None,
        RowMatch::Only,
        "exterior,value\nwhite,2026-11-25\n",
        expect![[r#"
        `white` = 2026-11-25
    "#]],
    );
}

#[test]
fn value_cells_hold_one_value() {
    check_figure(
        RowMatch::Only,
        "exterior,value\nwhite,\ncream,*\ngrey,1|2\nblack,5-Aug\nlight,1.2E+05\n\"*\",\"0,27\"\n",
        expect![[r#"
            table.csv:2:7 [] EMPTY_CELL found an empty cell, expected a number
              row 2, column value
              help: write the value, or delete the row: without a row the figure has no value
            table.csv:3:7 [*] WRONG_VALUE `*` is not a decimal number
              row 3, column value
              help: write it like 12.5
            table.csv:4:6 [1|2] WRONG_VALUE `1|2` is not a decimal number
              row 4, column value
              help: write it like 12.5
            table.csv:5:7 [5-Aug] WRONG_VALUE `5-Aug` is not a decimal number
              row 5, column value
              help: a spreadsheet turned this into a date; was it a fraction like 5/8? format the column as text
            table.csv:6:7 [1.2E+05] NUMBER_WITH_EXPONENT `1.2E+05` is a number with an exponent
              row 6, column value
              help: a spreadsheet shortened this number; format the column as text or as number
            table.csv:7:6 [0,27] WRONG_VALUE `0,27` is not a decimal number
              row 7, column value
              help: write a decimal point, not a comma
        "#]],
    );
    check_figure_of(
        ValueType::Length,
        None,
        RowMatch::Only,
        "exterior,value\nwhite,5-Aug\n",
        expect![[r#"
        table.csv:2:7 [5-Aug] WRONG_VALUE `5-Aug` is a date, not a length
          row 2, column value
          help: a spreadsheet turned this into a date; was it a fraction like 5/8? format the column as text
    "#]],
    );
}

#[test]
fn options_are_no_values_of_a_table() {
    check_figure_of(
        ValueType::Option,
        None,
        RowMatch::Only,
        "exterior,value\nwhite,a\n",
        expect![[r#"
        catalog.toml:1:1 [down] WRONG_TYPE the values of a table are numbers, lengths, areas or dates, not an option
          help: use a formula
    "#]],
    );
}

#[test]
fn with_keys_other_columns_are_not_read() {
    let csv = "exterior,zone,other,value\nwhite,anything,?,1\n";
    check_figure_of(
        ValueType::Number,
        Some(&["exterior"]),
        RowMatch::Only,
        csv,
        expect![[r#"
        `white` = 1
    "#]],
    );
}

#[test]
fn a_key_or_value_column_that_is_not_there_is_named() {
    let csv = "exterior,valeu\nwhite,1\n";
    check_figure_of(
        ValueType::Number,
        Some(&["exterior", "zone"]),
        RowMatch::Only,
        csv,
        expect![[r#"
        catalog.toml:1:1 [down] MISSING_COLUMN the sheet has no column `value`
          help: did you mean `valeu`? there are `exterior`, `valeu`
          [exterior,valeu] the columns of the sheet
        catalog.toml:1:1 [down] MISSING_COLUMN the sheet has no column `zone`
          help: there are `exterior`, `valeu`
          [exterior,valeu] the columns of the sheet
    "#]],
    );
}

#[test]
fn a_column_is_a_key_or_the_value_not_both() {
    let bench = super::Bench::new("exterior,lites\nwhite,1\n");
    let scope = crate::typed::Scope::new(&bench.names, &bench.findings);
    let (keys, value) = ([bench.text("exterior"), bench.text("lites")], bench.text("lites"));
    let (of, only) = (ValueType::Number, RowMatch::Only);
    let tables = super::figure_table(&bench.sheet(), &scope, &[None], Some(&keys), &value, of, only);
    bench.shown(
        tables,
        expect![[r#"
        catalog.toml:1:1 [down] DUPLICATE_COLUMN the column `lites` cannot be both a key and the value
          help: take it out of `keys`
    "#]],
    );
}

#[test]
fn under_only_two_rows_that_meet_are_named_with_a_key() {
    check_figure(
        RowMatch::Only,
        "exterior,width,value\nwhite,15..36,1\ndark,*,2\n*,36..48,3\nlight,48<..,4\n",
        expect![[r#"
            table.csv:4:1 [*,36..48,3] ROWS_MEET rows 2 and 4 both match when `exterior` is `white`, `width` is 36 in; only one row may
              row 4
              help: narrow one of them, or say which counts: `match = "first"`, `"least"` or `"greatest"`
              [white,15..36,1] row 2
        "#]],
    );
}

#[test]
fn ranges_that_share_only_an_open_end_do_not_meet() {
    check_figure(
        RowMatch::Only,
        "width,value\n..36,1\n36<..72,2\n72<..,3\n",
        expect![[r#"
        ..36 in = 1
        36 in<..72 in = 2
        72 in<.. = 3
    "#]],
    );
}

#[test]
fn rows_that_meet_without_an_upper_end_say_above_what() {
    check_figure(
        RowMatch::Only,
        "width,value\n36<..,1\n40<..,2\n",
        expect![[r#"
        table.csv:3:1 [40<..,2] ROWS_MEET rows 2 and 3 both match when `width` is above 40 in; only one row may
          row 3
          help: narrow one of them, or say which counts: `match = "first"`, `"least"` or `"greatest"`
          [36<..,1] row 2
    "#]],
    );
    check_figure(
        RowMatch::Only,
        "width,zone,value\n*,*,1\n*,*,1\n",
        expect![[r#"
        table.csv:3:1 [*,*,1] ROWS_MEET rows 2 and 3 both match always; only one row may
          row 3
          help: narrow one of them, or say which counts: `match = "first"`, `"least"` or `"greatest"`
          [*,*,1] row 2
    "#]],
    );
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
    check_figure(
        RowMatch::First,
        "exterior,value\ndark,1\n*,2\ndark,3\n",
        expect![[r#"
        table.csv:4:1 [dark,3] TABLE_CONTRADICTS rows 2 and 4 have the same key and two values, 1 and 3: the table contradicts itself
          row 4
          help: under `match = "first"` row 4 can never match; delete one of them
          [dark,1] row 2
    "#]],
    );
}

#[test]
fn rows_that_say_the_same_are_a_warning_unless_one_alone_may_match() {
    check_figure(
        RowMatch::Least,
        "exterior,value\ndark,1\ndark,1.0\n",
        expect![[r#"
        `black`|`grey` = 1
        `black`|`grey` = 1
        warning table.csv:3:1 [dark,1.0] DUPLICATE_ROW rows 2 and 3 say the same
          row 3
          help: delete one of them
          [dark,1] row 2
    "#]],
    );
    check_figure(
        RowMatch::Only,
        "exterior,value\ndark,1\ndark,1.0\n",
        expect![[r#"
        table.csv:3:1 [dark,1.0] ROWS_MEET rows 2 and 3 both match when `exterior` is `black`; only one row may
          row 3
          help: narrow one of them, or say which counts: `match = "first"`, `"least"` or `"greatest"`
          [dark,1] row 2
    "#]],
    );
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
    check_figure(
        RowMatch::Only,
        "exterior,zoone,value\nwhite,north,1\nwhite,south,2\n",
        expect![[r#"
        table.csv:1:10 [zoone] UNKNOWN_NAME `zoone` is not a name of this catalog
          row 1, column zoone
          help: did you mean `zone`?
    "#]],
    );
}
