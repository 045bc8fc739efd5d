//! The amounts file: what an amount may be, and entries without items.

use expect_test::expect;

use super::*;

fn items() -> Catalog {
    let mut per_part = flat("lock");
    per_part.part = Some(PartIndex(0));
    let mut other_part = flat("lock");
    other_part.part = Some(PartIndex(1));
    catalog(vec![
        flat("screen"),
        percent("dark", "screen"),
        flat("credit"),
        per_part,
        other_part,
    ])
}

fn check_amounts(csv: &str, expected: Expect) {
    let toml = book_toml("amounts = \"amounts.csv\"\n");
    check(&items(), &[("book.toml", &toml), ("amounts.csv", csv)], expected);
}

#[test]
fn amounts_are_plain_decimals_and_percentages() {
    check_amounts(
        "item,amount,# who\nscreen,18.5,x\ndark,12.5 %,\ncredit,-1.005,\nlock,0,\n",
        expect![[r#"
            b `B` for hinged in USD, to 0.01, None to None
            credit: -1.005
            dark: 12.5 %
            lock: 0
            screen: 18.5
        "#]],
    );
    check_amounts(
        "amount,item\n15%,dark\n1000000000000,screen\n-1000000000000,credit\n.5,lock\n",
        expect![[r#"
        b `B` for hinged in USD, to 0.01, None to None
        credit: -1000000000000
        dark: 15 %
        lock: 0.5
        screen: 1000000000000
    "#]],
    );
}

const NO_PLAIN_DECIMALS: [&str; 17] = [
    "$18.50",
    "18.50 USD",
    "\"1,234.50\"",
    "\"1,234\"",
    "\"1,234,567\"",
    "1 234.50",
    "\"18,50\"",
    "\"1.234,50\"",
    "(18.50)",
    "+18.50",
    "1.8E+05",
    "5-Aug",
    "1/3",
    "free",
    "",
    "1000000000000.01",
    "15 %",
];

/// Each text is the amount of an item of its own; only row, message and help are compared.
#[test]
fn what_is_no_plain_decimal_has_its_own_help() {
    let items = (0..NO_PLAIN_DECIMALS.len()).map(|at| flat(&format!("i{at}")));
    let catalog = catalog(items.collect());
    let rows: String = NO_PLAIN_DECIMALS
        .iter()
        .enumerate()
        .map(|(at, text)| format!("i{at},{text}\n"))
        .collect();
    let (toml, csv) = (
        book_toml("amounts = \"amounts.csv\"\n"),
        format!("item,amount\n{rows}"),
    );
    let (_, findings, _) = Shelf::new(&[("book.toml", &toml), ("amounts.csv", &csv)]).load(&catalog);
    assert_eq!(findings.len(), NO_PLAIN_DECIMALS.len());
    let mut out = String::new();
    for finding in &findings {
        let row = finding.place().and_then(|place| place.row).unwrap();
        let help = finding.help().unwrap();
        writeln!(out, "{row} {} {}\n  {help}", finding.code(), finding.message()).unwrap();
    }
    expect![[r#"
        2 BAD_AMOUNT `$18.50` is not an amount of money
          write the number alone; `currency` of the book says which money it is
        3 BAD_AMOUNT `18.50 USD` is not an amount of money
          write the number alone; `currency` of the book says which money it is
        4 BAD_AMOUNT `1,234.50` is not an amount of money
          write `1234.50` without separators between thousands
        5 BAD_AMOUNT `1,234` is not an amount of money
          write `1234` without the separator, or `1.234` if it is a decimal comma
        6 BAD_AMOUNT `1,234,567` is not an amount of money
          write `1234567` without separators between thousands
        7 BAD_AMOUNT `1 234.50` is not an amount of money
          write `1234.50` without separators between thousands
        8 BAD_AMOUNT `18,50` is not an amount of money
          write a decimal point, not a comma
        9 BAD_AMOUNT `1.234,50` is not an amount of money
          write a decimal point, not a comma
        10 BAD_AMOUNT `(18.50)` is not an amount of money
          write `-18.50` for less than nothing
        11 BAD_AMOUNT `+18.50` is not an amount of money
          leave the `+` out
        12 BAD_AMOUNT `1.8E+05` is not an amount of money
          a spreadsheet shortened this number; format the column as text or as number
        13 BAD_AMOUNT `5-Aug` is not an amount of money
          a spreadsheet turned this into a date; was it a fraction like 5/8? format the column as text
        14 BAD_AMOUNT `1/3` is not an amount of money
          write it like 12.50
        15 BAD_AMOUNT `free` is not an amount of money
          write it like 12.50
        16 EMPTY_CELL found nothing, expected an amount of money
          write it like 12.50
        17 AMOUNT_TOO_LARGE `1000000000000.01` is too large; at most 1000000000000 is read
          was a decimal point lost?
        18 BAD_AMOUNT `i16` is an amount of money, and `15 %` is a percentage
          write the amount without `%`, or give the item `percent_of` in the catalog
    "#]]
    .assert_eq(&out);
}

#[test]
fn a_percent_item_needs_its_sign() {
    for (written, expected) in [
        (
            "15",
            expect![[r#"
            book/amounts.csv:3:6 [15] BAD_AMOUNT `dark` is a percentage, and `15` has no `%`
              row 3, column amount
              help: write `15 %`, or take `percent_of` out of the catalog
        "#]],
        ),
        (
            "15 percent",
            expect![[r#"
            book/amounts.csv:3:6 [15 percent] BAD_AMOUNT `dark` is a percentage, and `15 percent` has no `%`
              row 3, column amount
              help: write it like `15 %`
        "#]],
        ),
        (
            "\"12,5 %\"",
            expect![[r#"
            book/amounts.csv:3:6 ["12,5 %"] BAD_AMOUNT `12,5` is not a percentage
              row 3, column amount
              help: write a decimal point, not a comma
        "#]],
        ),
        (
            "%",
            expect![[r#"
            book/amounts.csv:3:6 [%] BAD_AMOUNT found nothing, expected a percentage
              row 3, column amount
              help: write it like `15 %`
        "#]],
        ),
    ] {
        check_amounts(
            &format!("item,amount\nscreen,1\ndark,{written}\ncredit,1\nlock,1\n"),
            expected,
        );
    }
}

#[test]
fn entries_without_an_item_and_items_without_an_entry_are_found() {
    check_amounts(
        "item,amount\nscren,1\nscreen,2\nscreen,3\n,4\nhandle,1\n",
        expect![[r#"
        book/amounts.csv:2:1 [scren] AMOUNT_WITHOUT_ITEM amount of `scren` belongs to nothing: the catalog has no such price item
          row 2, column item
          help: did you mean `screen`?
        book/amounts.csv:4:1 [screen] AMOUNT_GIVEN_TWICE `screen` is given twice
          row 4, column item
          help: keep one of them
          [screen] it is given here first
        book/amounts.csv:5:1 [] EMPTY_CELL found an empty cell, expected the id of a price item
          row 5, column item
          help: name the item, or delete the row
        book/amounts.csv:6:1 [handle] AMOUNT_WITHOUT_ITEM amount of `handle` belongs to nothing: the catalog has no such price item
          row 6, column item
          help: there are `credit`, `dark`, `lock`, `screen`
        book/book.toml:2:1 [[book]] ITEM_WITHOUT_AMOUNT price item `credit` has no amount in the book
          help: add a row such as `credit,12.50` to the amounts file
        book/book.toml:2:1 [[book]] ITEM_WITHOUT_AMOUNT price item `dark` has no amount in the book
          help: add a row such as `dark,15 %` to the amounts file
        book/book.toml:2:1 [[book]] ITEM_WITHOUT_AMOUNT price item `lock` has no amount in the book
          help: add a row such as `lock,12.50` to the amounts file
    "#]],
    );
}

#[test]
fn columns_are_item_and_amount() {
    check_amounts(
        "item,ammount\nscreen,1\n",
        expect![[r#"
        book/amounts.csv:1:1 [item,ammount] MISSING_COLUMN the sheet has no column `amount`
          help: columns are `item`, `amount`
        book/amounts.csv:1:6 [ammount] UNKNOWN_COLUMN unknown column `ammount`
          row 1, column ammount
          help: did you mean `amount`?
    "#]],
    );
}

#[test]
fn an_amounts_file_that_is_not_there_leaves_one_finding() {
    let toml = book_toml("amounts = \"amounts.csv\"\n");
    check(
        &items(),
        &[("book.toml", &toml)],
        expect![[r#"
        book/book.toml:8:11 ["amounts.csv"] FILE_NOT_THERE the library has no file `book/amounts.csv`
          help: look at the spelling; the path starts from the folder of this file
    "#]],
    );
}

#[test]
fn a_book_without_an_amounts_file_lacks_the_flat_items() {
    check(
        &catalog(vec![flat("screen")]),
        &[("book.toml", &book_toml(""))],
        expect![[r#"
        book/book.toml:2:1 [[book]] ITEM_WITHOUT_AMOUNT price item `screen` has no amount in the book
          help: add a row such as `screen,12.50` to the amounts file
    "#]],
    );
}

#[test]
fn an_item_of_another_kind_is_sent_elsewhere() {
    let catalog = catalog(vec![
        by("finish", &[FINISH]),
        grid("base", "casement", &[0, 1]),
        flat("screen"),
    ]);
    let toml = book_toml(
        "amounts = \"amounts.csv\"\n[[sheet]]\nitem = \"screen\"\ntable = \"screen.csv\"\n\
         [[sheet]]\nitem = \"base\"\ntable = \"screen.csv\"\n[[sheet]]\nitem = \"fnish\"\ntable = \"screen.csv\"\n",
    );
    let files = [
        ("book.toml", toml.as_str()),
        ("amounts.csv", "item,amount\nfinish,1\nbase,2\n"),
    ];
    check(
        &catalog,
        &files,
        expect![[r#"
        book/amounts.csv:2:1 [finish] WRONG_KIND_OF_AMOUNT `finish` is given an amount; in the catalog it is an amount by options
          row 2, column item
          help: give it a `[[sheet]]` with item = "finish"
        book/amounts.csv:3:1 [base] WRONG_KIND_OF_AMOUNT `base` is given an amount; in the catalog it is an amount by size
          row 3, column item
          help: give it a `[[grid]]` with id = "casement"
        book/book.toml:10:8 ["screen"] WRONG_KIND_OF_AMOUNT `screen` is given a sheet by options; in the catalog it is a flat amount
          help: give it a row in the amounts file
        book/book.toml:13:8 ["base"] WRONG_KIND_OF_AMOUNT `base` is given a sheet by options; in the catalog it is an amount by size
          help: give it a `[[grid]]` with id = "casement"
        book/book.toml:16:8 ["fnish"] AMOUNT_WITHOUT_ITEM sheet of `fnish` belongs to nothing: the catalog has no such price item
          help: did you mean `finish`?
    "#]],
    );
}

#[test]
fn after_fifty_wrong_amounts_the_rest_is_counted() {
    let rows: String = (0..60).map(|at| format!("nothing-{at},1\n")).collect();
    let toml = book_toml("amounts = \"amounts.csv\"\n");
    let csv = format!("item,amount\n{rows}");
    let (book, findings, _) =
        Shelf::new(&[("book.toml", &toml), ("amounts.csv", &csv)]).load(&catalog(Vec::new()));
    assert!(book.is_none());
    assert_eq!(findings.len(), 51);
    assert!(
        findings
            .iter()
            .any(|finding| finding.message() == "and 10 more like these")
    );
}
