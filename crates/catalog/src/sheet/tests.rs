//! One helper: a sheet's text in, the rows with their numbers and the findings out.

use expect_test::{Expect, expect};

use super::*;

fn lines_of(findings: Findings, sources: &Sources) -> String {
    let shown = |place: &Place| {
        let position = sources.position(place);
        let text = sources.text_at(place);
        format!(
            "{}:{} row {:?} {text:?}",
            position.line,
            position.column,
            place.row.unwrap_or(0)
        )
    };
    let mut out = String::new();
    for finding in findings.into_sorted(sources) {
        let place = finding.place().map_or("-".to_owned(), shown);
        out += &format!("{place} {} {}\n", finding.code(), finding.message());
        out += &finding
            .help()
            .map_or(String::new(), |help| format!("  help: {help}\n"));
        for (place, what) in finding.related() {
            out += &format!("  {}: {what}\n", shown(place));
        }
    }
    out
}

fn check_limited(text: &str, limit: usize, expected: Expect) {
    let mut sources = Sources::new();
    let file = sources.add("a.csv", text);
    let findings = Findings::new();
    let mut out = String::new();
    match Sheet::read_limited(&sources, file, limit, &findings) {
        None => out += "no sheet\n",
        Some(sheet) => {
            out += &format!(
                "{:?}\n",
                sheet.columns().map(|(_, name)| name).collect::<Vec<_>>()
            );
            for row in sheet.rows() {
                let cells: Vec<_> = row.cells().map(|(_, cell)| cell).collect();
                let raw: Vec<_> = row
                    .cells()
                    .map(|(at, _)| sources.text_at(&row.place(at)).to_owned())
                    .collect();
                let line = sources.position(&row.row_place()).line;
                out += &format!("row {} on line {line}: {cells:?} from {raw:?}\n", row.number());
            }
        }
    }
    expected.assert_eq(&(out + &lines_of(findings, &sources)));
}

fn check(text: &str, expected: Expect) {
    check_limited(text, ROWS_LIMIT, expected);
}

#[test]
fn cells_are_trimmed_and_know_their_bytes() {
    check(
        "size , amount\n15..36,  12.50 \n\" a, b \",\"35-5/8\"\"\"\n35-5/8\",é",
        expect![[r#"
            ["size", "amount"]
            row 2 on line 2: ["15..36", "12.50"] from ["15..36", "12.50"]
            row 3 on line 3: ["a, b", "35-5/8\""] from ["\" a, b \"", "\"35-5/8\"\"\""]
            row 4 on line 4: ["35-5/8\"", "é"] from ["35-5/8\"", "é"]
        "#]],
    );
}

#[test]
fn rows_have_the_numbers_of_a_spreadsheet() {
    check(
        "\r\na,b\r\n1,2\r\n\r\n , \r\n\"two\r\nlines\",3\r\n4,5\r\n",
        expect![[r#"
            ["a", "b"]
            row 3 on line 3: ["1", "2"] from ["1", "2"]
            row 6 on line 6: ["two\r\nlines", "3"] from ["\"two\r\nlines\"", "3"]
            row 7 on line 8: ["4", "5"] from ["4", "5"]
        "#]],
    );
    check(
        "a\rb\r\rc",
        expect![[r#"
        ["a"]
        row 2 on line 1: ["b"] from ["b"]
        row 4 on line 1: ["c"] from ["c"]
    "#]],
    );
}

#[test]
fn a_ragged_row_is_a_finding_and_left_out() {
    check(
        "a,b,c\n1,2\n1,2,3\n1,2,3,4\n1\n",
        expect![[r#"
            ["a", "b", "c"]
            row 3 on line 3: ["1", "2", "3"] from ["1", "2", "3"]
            2:1 row 2 "1,2" RAGGED_ROW row 2 has 2 cells; the header has 3
              help: a cell with nothing in it still needs its comma
            4:1 row 4 "1,2,3,4" RAGGED_ROW row 4 has 4 cells; the header has 3
              help: a comma begins a new cell: write 1200.00 without one between thousands, several options as `white|grey`, and a text with commas in quotes
            5:1 row 5 "1" RAGGED_ROW row 5 has 1 cell; the header has 3
              help: a cell with nothing in it still needs its comma
        "#]],
    );
}

#[test]
fn many_ragged_rows_are_counted_not_listed() {
    let text = "a,b\n".to_owned() + &"1\n".repeat(REPORTS_LIMIT + 5);
    let mut sources = Sources::new();
    let file = sources.add("a.csv", text);
    let findings = Findings::new();
    assert!(Sheet::read(&sources, file, &findings).is_some());
    let all = findings.into_sorted(&sources);
    assert_eq!(all.len(), REPORTS_LIMIT + 1);
    assert_eq!(
        all.last().unwrap().message(),
        "5 more rows have the wrong number of cells"
    );
}

#[test]
fn an_unclosed_quote_and_text_after_a_quote_are_findings() {
    check(
        "a,b\n1,\"2\n3,4\n",
        expect![[r#"
        ["a", "b"]
        row 2 on line 2: ["1", "2\n3,4"] from ["1", "\"2\n3,4"]
        2:3 row 2 "\"" UNCLOSED_QUOTE row 2 has a cell with an opening quote and no closing one
          help: close it; a quote inside a quoted cell is written twice
    "#]],
    );
    check(
        "a,b\n1,\"2\"x\n",
        expect![[r#"
        ["a", "b"]
        row 2 on line 2: ["1", "2x"] from ["1", "\"2\"x"]
        2:6 row 2 "x" TEXT_AFTER_QUOTE row 2 has text after the closing quote of a cell
          help: a quote inside a quoted cell is written twice
    "#]],
    );
}

#[test]
fn a_header_needs_names_that_differ() {
    check(
        "a,,a, \n1,2,3,4\n",
        expect![[r#"
            no sheet
            1:3 row 1 "" EMPTY_COLUMN_NAME column B has no name
              help: name it, or delete the column
            1:4 row 1 "a" DUPLICATE_COLUMN two columns are named `a`
              help: rename or delete one
              1:1 row 1 "a": `a` stands here first
            1:6 row 1 "" EMPTY_COLUMN_NAME column D has no name
              help: name it, or delete the column
        "#]],
    );
    check(
        " , \n\n",
        expect![[r#"
        no sheet
        1:1 row 0 "" NO_HEADER the sheet is blank; expected a row of column names
    "#]],
    );
    check(
        "\n",
        expect![[r#"
        no sheet
        1:1 row 0 "" NO_HEADER the sheet is blank; expected a row of column names
    "#]],
    );
}

#[test]
fn semicolons_and_tabs_are_not_commas() {
    check(
        "a;b\n1;2\n",
        expect![[r#"
            no sheet
            1:1 row 1 "a;b" NOT_COMMAS the cells of the header are separated by semicolons; expected commas
              help: save as CSV with commas between the cells and a point in decimals
        "#]],
    );
    check(
        "a\tb\n1\t2\n",
        expect![[r#"
            no sheet
            1:1 row 1 "a\tb" NOT_COMMAS the cells of the header are separated by tabs; expected commas
              help: save as CSV with commas between the cells and a point in decimals
        "#]],
    );
    check(
        "only\n1;2\n",
        expect![[r#"
        ["only"]
        row 2 on line 2: ["1;2"] from ["1;2"]
    "#]],
    );
}

#[test]
fn a_header_without_rows_is_a_sheet_without_rows() {
    check(
        "a,b",
        expect![[r#"
        ["a", "b"]
    "#]],
    );
}

#[test]
fn one_row_more_than_the_limit_gives_no_sheet() {
    check_limited(
        "a\n1\n\n2\n",
        2,
        expect![[r#"
        ["a"]
        row 2 on line 2: ["1"] from ["1"]
        row 4 on line 4: ["2"] from ["2"]
    "#]],
    );
    check_limited(
        "a\n1\n\n2\n3\n4\n",
        2,
        expect![[r#"
        no sheet
        5:1 row 5 "3" TOO_MANY_ROWS the sheet has more than 2 rows, the most that are read
          help: use ranges or families, or split the sheet
    "#]],
    );
}

#[test]
fn a_million_rows_are_read_and_one_more_is_not() {
    let mut text = "width,amount\n".to_owned() + &"15..36,12.50\n".repeat(ROWS_LIMIT);
    let mut sources = Sources::new();
    let findings = Findings::new();
    let file = sources.add("a.csv", text.as_str());
    let sheet = Sheet::read(&sources, file, &findings).unwrap();
    assert!(findings.is_empty());
    let last = sheet.row(ROWS_LIMIT - 1).unwrap();
    let amount = sheet.column("amount").unwrap();
    assert_eq!((last.number(), last.cell(amount)), (1_000_001, "12.50"));
    assert_eq!(sources.position(&last.place(amount)).line, 1_000_001);

    text += "15..36,12.50\n";
    let file = sources.add("b.csv", text);
    assert!(Sheet::read(&sources, file, &findings).is_none());
    expect![[r#"
        1000002:1 row 1000002 "15..36,12.50" TOO_MANY_ROWS the sheet has more than 1000000 rows, the most that are read
          help: use ranges or families, or split the sheet
    "#]].assert_eq(&lines_of(findings, &sources));
}

proptest::proptest! {
    #![proptest_config(proptest::prelude::ProptestConfig::with_cases(3_000))]
    #[test]
    fn no_text_makes_reading_panic_and_cells_agree_with_their_bytes(text in "[a;\t\", \r\né]{0,30}") {
        let mut sources = Sources::new();
        let file = sources.add("a.csv", text.as_str());
        let findings = Findings::new();
        if let Some(sheet) = Sheet::read(&sources, file, &findings) {
            for row in sheet.rows() {
                for (column, cell) in row.cells() {
                    let raw = sources.text_at(&row.place(column)).to_owned();
                    proptest::prop_assert!(raw == cell || raw.starts_with('"'), "{raw:?} {cell:?}");
                }
            }
        } else {
            proptest::prop_assert!(findings.has_errors());
        }
        let all = findings.into_sorted(&sources);
        let _ = crate::render::render(&all, &sources, crate::render::RenderStyle { colour: false });
    }
}

#[test]
fn blank_columns_that_a_spreadsheet_leaves_at_the_end_are_no_columns() {
    check(
        "a,b,,\n1,2,,\n",
        expect![[r#"
        ["a", "b"]
        row 2 on line 2: ["1", "2"] from ["1", "2"]
    "#]],
    );
    check(
        "a,b,,\n1,2,,3\n",
        expect![[r#"
        no sheet
        1:5 row 1 "" EMPTY_COLUMN_NAME column C has no name
          help: name it, or delete the column
        1:6 row 1 "" EMPTY_COLUMN_NAME column D has no name
          help: name it, or delete the column
    "#]],
    );
}

#[test]
fn a_quote_that_is_not_closed_is_one_finding() {
    check(
        "a,b\n\"1,2\n3,4\n",
        expect![[r#"
        ["a", "b"]
        2:1 row 2 "\"" UNCLOSED_QUOTE row 2 has a cell with an opening quote and no closing one
          help: close it; a quote inside a quoted cell is written twice
    "#]],
    );
}

#[test]
fn a_row_with_too_many_cells_says_what_it_may_have_been() {
    check(
        "a,b\n1,2,\n225,00,7\nwhite,grey,pine\n",
        expect![[r#"
        ["a", "b"]
        2:1 row 2 "1,2," RAGGED_ROW row 2 has 3 cells; the header has 2
          help: take away the commas at the end of the row
        3:1 row 3 "225,00,7" RAGGED_ROW row 3 has 3 cells; the header has 2
          help: was this `225,00`? write a decimal point: `225.00`
        4:1 row 4 "white,grey,pine" RAGGED_ROW row 4 has 3 cells; the header has 2
          help: a comma begins a new cell: write 1200.00 without one between thousands, several options as `white|grey`, and a text with commas in quotes
    "#]],
    );
}

#[test]
fn columns_have_the_letters_of_a_spreadsheet() {
    for (column, letter) in [
        (0, "A"),
        (25, "Z"),
        (26, "AA"),
        (51, "AZ"),
        (52, "BA"),
        (701, "ZZ"),
        (702, "AAA"),
    ] {
        assert_eq!(column_letters(column + 1), letter, "{column}");
    }
}
