//! Grids: brackets, bounds that rise, and the items that use them.

use expect_test::expect;

use super::*;

fn check_grid(items: Vec<PriceItem>, lower: &str, csv: &str, expected: Expect) {
    let toml = book_toml(&format!(
        "[[grid]]\nid = \"casement\"\ntable = \"grid.csv\"\nlower = {lower}\n"
    ));
    check(
        &catalog(items),
        &[("book.toml", &toml), ("grid.csv", csv)],
        expected,
    );
}

fn two_axes() -> Vec<PriceItem> {
    vec![grid("base", "casement", &[1, 0])]
}

#[test]
fn bounds_are_lengths_and_an_empty_cell_has_no_amount() {
    check_grid(
        two_axes(),
        "[\"12\", 0]",
        "high \\ wide,24,35 1/2,914.4 mm,# note\n36,210,255.5,1,?\n\"4'\",240,,-3,\n",
        expect![[r#"
            b `B` for hinged in USD, to 0.01, None to None
            casement: [Axis { lower: 12, uppers: [36, 48] }, Axis { lower: 0, uppers: [24, 35.5, 36] }] [Some(210), Some(255.5), Some(1), Some(240), None, Some(-3)]
        "#]],
    );
}

#[test]
fn one_axis_has_columns() {
    check_grid(
        vec![grid("base", "casement", &[3])],
        "[0]",
        "upper,amount,# note\n72.5,100,\n84,120,\n101,,\n",
        expect![[r#"
            b `B` for hinged in USD, to 0.01, None to None
            casement: [Axis { lower: 0, uppers: [72.5, 84, 101] }] [Some(100), Some(120), None]
        "#]],
    );
    check_grid(
        vec![grid("base", "casement", &[2])],
        "[\"0 ft2\"]",
        "upper,amount\n5 ft2,100\n",
        expect![[r#"
        b `B` for hinged in USD, to 0.01, None to None
        casement: [Axis { lower: 0, uppers: [720] }] [Some(100)]
    "#]],
    );
}

#[test]
fn bounds_rise_strictly_from_the_lower_end() {
    check_grid(
        two_axes(),
        "[\"36\", \"0\"]",
        "x,24,24.0,20,30\n36,1,1,1,1\n48,1,1,1,1\n47 63/64,1,1,1,1\n",
        expect![[r#"
        book/grid.csv:1:6 [24.0] BOUNDS_DO_NOT_RISE the bound `24.0` is not above the one before, `24`
          row 1, column 24.0
          help: bounds are upper ends and rise from one to the next
        book/grid.csv:1:11 [20] BOUNDS_DO_NOT_RISE the bound `20` is not above the one before, `24.0`
          row 1, column 20
          help: bounds are upper ends and rise from one to the next
        book/grid.csv:2:1 [36] BOUNDS_DO_NOT_RISE the bound `36` is not above the lower end
          row 2, column x
          help: bounds are upper ends and rise from one to the next
        book/grid.csv:4:1 [47 63/64] BOUNDS_DO_NOT_RISE the bound `47 63/64` is not above the one before, `48`
          row 4, column x
          help: bounds are upper ends and rise from one to the next
    "#]],
    );
    check_grid(
        vec![grid("base", "casement", &[3])],
        "[10]",
        "upper,amount\n9,1\n12,1\n12,1\n",
        expect![[r#"
        book/grid.csv:2:1 [9] BOUNDS_DO_NOT_RISE the bound `9` is not above the lower end
          row 2, column upper
          help: bounds are upper ends and rise from one to the next
        book/grid.csv:4:1 [12] BOUNDS_DO_NOT_RISE the bound `12` is not above the one before, `12`
          row 4, column upper
          help: bounds are upper ends and rise from one to the next
    "#]],
    );
}

#[test]
fn bounds_and_amounts_are_checked() {
    check_grid(
        two_axes(),
        "[\"0\", \"0\"]",
        "x,24,5-Aug,wide\n36,1,$2,3\n,1,2,3\n\"48,5\",15 %,2,\"1,234.5\"\n",
        expect![[r#"
            book/grid.csv:1:6 [5-Aug] WRONG_VALUE `5-Aug` is a date, not a length
              row 1, column 5-Aug
              help: a spreadsheet turned this into a date; was it a fraction like 5/8? format the column as text
            book/grid.csv:1:12 [wide] WRONG_VALUE `wide` is not a length
              row 1, column wide
              help: write a length such as `35 5/8`, `35.625 in`, `2'-11 5/8"` or `904.875 mm`
            book/grid.csv:2:6 [$2] BAD_AMOUNT `$2` is not an amount of money
              row 2, column 5-Aug
              help: write the number alone; `currency` of the book says which money it is
            book/grid.csv:3:1 [] EMPTY_CELL found nothing, expected a length as a bound
              row 3, column x
              help: write the upper end of the bracket
            book/grid.csv:4:2 [48,5] WRONG_VALUE `48,5` has a decimal comma
              row 4, column x
              help: write a decimal point, not a comma
            book/grid.csv:4:8 [15 %] BAD_AMOUNT `15 %` is a percentage; expected an amount of money
              row 4, column 24
              help: write the amount without `%`
            book/grid.csv:4:15 ["1,234.5"] BAD_AMOUNT `1,234.5` is not an amount of money
              row 4, column wide
              help: write `1234.5` without separators between thousands
        "#]],
    );
}

#[test]
fn lower_has_an_end_for_each_axis() {
    check_grid(
        two_axes(),
        "[\"0\"]",
        "x,24\n36,1\n",
        expect![[r#"
        book/book.toml:11:9 [["0"]] WRONG_NUMBER_OF_AXES `lower` has 1 ends; grid `casement` has 2 axes
          help: write one lower end an axis, rows first
    "#]],
    );
    check_grid(
        two_axes(),
        "[\"0\", \"narrow\"]",
        "x,24\n36,1\n",
        expect![[r#"
        book/book.toml:11:16 [narrow] WRONG_VALUE `narrow` is not a length
          help: write a length such as `35 5/8`, `35.625 in`, `2'-11 5/8"` or `904.875 mm`
    "#]],
    );
    check_grid(
        two_axes(),
        "[\"0\", true]",
        "x,24\n36,1\n",
        expect![[r#"
        book/book.toml:11:15 [true] WRONG_TYPE element 2 of `lower` is true; expected a number
    "#]],
    );
}

#[test]
fn one_axis_is_not_two() {
    check_grid(
        two_axes(),
        "[0, 0]",
        "upper,amount\n36,1\n",
        expect![[r#"
        book/grid.csv:1:1 [upper,amount] WRONG_NUMBER_OF_AXES grid `casement` has two axes; its sheet has bounds in the first row and the first column
          help: write the sheet as a matrix, or give the price item one of the `axes`
    "#]],
    );
    check_grid(
        vec![grid("base", "casement", &[0])],
        "[\"0\"]",
        "x,24\n36,1\n",
        expect![[r#"
        book/grid.csv:1:1 [x,24] WRONG_NUMBER_OF_AXES grid `casement` has one axis; its sheet has the columns `upper` and `amount`
          help: write one bracket a row, or give the price item two `axes`
    "#]],
    );
}

#[test]
fn items_share_a_grid_when_their_axes_agree() {
    let shared = vec![
        grid("base", "casement", &[1, 0]),
        grid("other", "casement", &[0, 1]),
    ];
    check_grid(
        shared,
        "[0, 0]",
        "x,24\n36,1\n",
        expect![[r#"
        b `B` for hinged in USD, to 0.01, None to None
        casement: [Axis { lower: 0, uppers: [36] }, Axis { lower: 0, uppers: [24] }] [Some(1)]
    "#]],
    );
    let unlike = vec![grid("base", "casement", &[1, 0]), grid("other", "casement", &[3])];
    check_grid(
        unlike,
        "[0, 0]",
        "x,24\n36,1\n",
        expect![[r#"
        book/book.toml:9:6 ["casement"] GRID_AXES_DIFFER `base` and `other` use grid `casement` with axes of another number or type
          help: give one of the items a grid of its own
    "#]],
    );
}

#[test]
fn a_grid_that_nothing_uses_or_that_is_not_there_is_found() {
    check_grid(
        vec![grid("base", "casements", &[1, 0])],
        "[0, 0]",
        "x,24\n36,1\n",
        expect![[r#"
            book/book.toml:9:6 ["casement"] AMOUNT_WITHOUT_ITEM grid `casement` belongs to nothing: no price item of the catalog uses it
              help: did you mean `casements`?
        "#]],
    );
}

#[test]
fn a_grid_without_bounds_or_amounts_is_refused() {
    check_grid(
        two_axes(),
        "[0, 0]",
        "x,24\n",
        expect![[r#"
        book/grid.csv:1:1 [x,24] NO_ROWS the grid has no bounds
          help: write upper ends in the first row and column
    "#]],
    );
    check_grid(
        two_axes(),
        "[0, 0]",
        "x\n24\n",
        expect![[r#"
        book/grid.csv:1:1 [x] NO_ROWS the grid has no bounds
          help: write upper ends in the first row and column
    "#]],
    );
    check_grid(
        two_axes(),
        "[0, 0]",
        "x,24\n24,\n",
        expect![[r#"
        book/grid.csv:1:1 [x,24] NO_ROWS grid `casement` has no amount in any cell
          help: write amounts, or take the grid away
    "#]],
    );
}

#[test]
fn two_grids_have_two_ids() {
    let one = "[[grid]]\nid = \"casement\"\ntable = \"grid.csv\"\nlower = [0, 0]\n";
    let toml = book_toml(&one.repeat(2));
    let files = [("book.toml", toml.as_str()), ("grid.csv", "x,24\n24,1\n")];
    check(
        &catalog(two_axes()),
        &files,
        expect![[r#"
        book/book.toml:13:6 ["casement"] DUPLICATE_ID `casement` stands twice among the grids
          help: give one of the two another id
          ["casement"] it stands here first
    "#]],
    );
}

#[test]
fn a_grid_that_leaves_the_library_is_not_read() {
    let toml = book_toml("[[grid]]\nid = \"casement\"\ntable = \"../../grid.csv\"\nlower = [0, 0]\n");
    check(
        &catalog(two_axes()),
        &[("book.toml", &toml)],
        expect![[r#"
        book/book.toml:10:9 ["../../grid.csv"] INCLUDE_LEAVES_LIBRARY `../../grid.csv` leaves the library
          help: move the file into the library; one `..` goes up one folder
    "#]],
    );
}
