//! Sheets of items by option.

use expect_test::expect;

use super::*;

fn check_sheet(item: PriceItem, csv: &str, expected: Expect) {
    let toml = book_toml(&format!(
        "[[sheet]]\nitem = \"{}\"\ntable = \"sheet.csv\"\n",
        item.id
    ));
    check(
        &catalog(vec![item]),
        &[("book.toml", &toml), ("sheet.csv", csv)],
        expected,
    );
}

fn check_finish(csv: &str, expected: Expect) {
    check_sheet(by("finish", &[FINISH]), csv, expected);
}

#[test]
fn options_sets_families_and_stars_have_amounts() {
    check_finish(
        "finish,amount,# since\nwhite|tan,0.00,2019\nmetal,24.005,\n",
        expect![[r#"
        b `B` for hinged in USD, to 0.01, None to None
        finish: [Some({`tan`, `white`})] 0
        finish: [Some({`brass`, `nickel`})] 24.005
    "#]],
    );
    check_finish(
        "amount,finish\n-3,*\n",
        expect![[r#"
        b `B` for hinged in USD, to 0.01, None to None
        finish: [None] -3
    "#]],
    );
}

/// The columns of an item of a part are the bare names; an item of the unit names the parts.
#[test]
fn columns_are_named_as_by_names_them() {
    let mut of_part = by("glass", &[FINISH, AttributeIndex(1)]);
    of_part.part = Some(PartIndex(0));
    check_sheet(
        of_part,
        "glazing,finish,amount\ntempered,*,12\n",
        expect![[r#"
        b `B` for hinged in USD, to 0.01, None to None
        glass: [None, Some({`tempered`})] 12
    "#]],
    );
    let of_unit = by("glass", &[AttributeIndex(1), AttributeIndex(2)]);
    check_sheet(
        of_unit,
        "glazing.upper,glazing.lower,amount\ntempered,*,12\n",
        expect![[r#"
        b `B` for hinged in USD, to 0.01, None to None
        glass: [Some({`tempered`}), None] 12
    "#]],
    );
}

#[test]
fn columns_are_those_of_by_and_the_amount() {
    check_finish(
        "finsh,amount\nwhite,1\n",
        expect![[r#"
        book/sheet.csv:1:1 [finsh,amount] MISSING_COLUMN the sheet has no column `finish`
          help: columns are `finish`, `amount`
        book/sheet.csv:1:1 [finsh] UNKNOWN_COLUMN unknown column `finsh`
          row 1, column finsh
          help: did you mean `finish`?
    "#]],
    );
    check_finish(
        "finish,glazing\nwhite,1\n",
        expect![[r#"
        book/sheet.csv:1:1 [finish,glazing] MISSING_COLUMN the sheet has no column `amount`
          help: columns are `finish`, `amount`
        book/sheet.csv:1:8 [glazing] UNKNOWN_COLUMN unknown column `glazing`
          row 1, column glazing
          help: columns are `finish`, `amount`; one of remarks begins with `#`
    "#]],
    );
}

#[test]
fn cells_and_amounts_are_checked() {
    check_finish(
        "finish,amount\nwhtie,1\ntan,\nbrass,$4\n15..36,1\n,2\n",
        expect![[r#"
            book/sheet.csv:2:1 [whtie] UNKNOWN_OPTION unknown option or family `whtie` of `finish`
              row 2, column finish
              help: did you mean `white`? there are `brass`, `nickel`, `tan`, `white`, `metal`
            book/sheet.csv:3:5 [] EMPTY_CELL found nothing, expected an amount of money
              row 3, column amount
              help: write the amount, 0 for nothing
            book/sheet.csv:4:7 [$4] BAD_AMOUNT `$4` is not an amount of money
              row 4, column amount
              help: write the number alone; `currency` of the book says which money it is
            book/sheet.csv:5:1 [15..36] RANGE_WITHOUT_ORDER found a range, expected an option
              row 5, column finish
              help: list what matches: `a|b|c`
            book/sheet.csv:6:1 [] EMPTY_CELL found an empty cell, expected what it matches
              row 6, column finish
              help: write `*` where anything may stand; of merged cells a spreadsheet saves only the first, so write it in every row
        "#]],
    );
}

#[test]
fn rows_that_meet_or_contradict_each_other_are_refused() {
    check_finish(
        "finish,amount\nmetal,24\nbrass,30\n*,1\n",
        expect![[r#"
        book/sheet.csv:3:1 [brass,30] ROWS_MEET rows 2 and 3 both match when `finish` is `brass`; only one row may
          help: narrow one of them, so that every unit has one row
          [metal,24] row 2
        book/sheet.csv:4:1 [*,1] ROWS_MEET rows 2 and 4 both match when `finish` is `brass`; only one row may
          help: narrow one of them, so that every unit has one row
          [metal,24] row 2
    "#]],
    );
    check_finish(
        "finish,amount\nmetal,24\nnickel|brass,30\n",
        expect![[r#"
        book/sheet.csv:3:1 [nickel|brass,30] TABLE_CONTRADICTS rows 2 and 3 have the same key and two values, 24 and 30: the table contradicts itself
          help: delete one of them
          [metal,24] row 2
    "#]],
    );
}

#[test]
fn a_sheet_without_rows_or_given_twice_is_refused() {
    check_finish(
        "finish,amount\n",
        expect![[r#"
        book/sheet.csv:1:1 [finish,amount] NO_ROWS the table has no rows
          help: write a row, or take the table away
    "#]],
    );
    let sheet = "[[sheet]]\nitem = \"finish\"\ntable = \"sheet.csv\"\n";
    let toml = book_toml(&sheet.repeat(2));
    let files = [
        ("book.toml", toml.as_str()),
        ("sheet.csv", "finish,amount\n*,1\n"),
    ];
    check(
        &catalog(vec![by("finish", &[FINISH])]),
        &files,
        expect![[r#"
        book/book.toml:12:8 ["finish"] AMOUNT_GIVEN_TWICE `finish` is given twice
          help: keep one of them
          ["finish"] it is given here first
    "#]],
    );
}

#[test]
fn an_item_whose_sheet_is_incomplete_is_not_called_without_an_amount() {
    let toml = book_toml("[[sheet]]\nitem = \"finish\"\n");
    check(
        &catalog(vec![by("finish", &[FINISH])]),
        &[("book.toml", &toml)],
        expect![[r#"
        book/book.toml:8:1 [[[sheet]]] MISSING_KEY sheet of `finish` lacks `table`
          help: add `table`
    "#]],
    );
    check(
        &catalog(vec![by("finish", &[FINISH])]),
        &[("book.toml", &book_toml(""))],
        expect![[r#"
        book/book.toml:2:1 [[book]] ITEM_WITHOUT_AMOUNT price item `finish` has no amount in the book
          help: add a `[[sheet]]` with item = "finish"
    "#]],
    );
}

#[test]
fn an_option_without_a_row_is_warned_of() {
    check_finish(
        "finish,amount\nwhite,0.00\nmetal,24.00\n",
        expect![[r#"
            b `B` for hinged in USD, to 0.01, None to None
            finish: [Some({`white`})] 0
            finish: [Some({`brass`, `nickel`})] 24
            book/book.toml:10:9 ["sheet.csv"] OPTION_WITHOUT_AMOUNT the sheet of `finish` has no row for `tan` of `finish`: a unit with that has no price
              help: add a row such as `tan,0.00` to sheet.csv
        "#]],
    );
}

#[test]
fn an_option_that_the_condition_may_leave_out_needs_no_row() {
    let mut conditional = by("finish", &[FINISH]);
    conditional.when = Some(Expression::is_option(FINISH, "white"));
    check_sheet(
        conditional,
        "finish,amount\nwhite,0.00\n",
        expect![[r#"
        b `B` for hinged in USD, to 0.01, None to None
        finish: [Some({`white`})] 0
    "#]],
    );
}
