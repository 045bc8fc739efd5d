//! `book.toml`: its header and its tail.

use expect_test::expect;

use super::*;

#[test]
fn a_book_says_its_currency_its_dates_and_its_tail() {
    let toml = "format = 1\n[book]\nid = \"h-26\"\nlabel = \"Hinged, 2026\"\ncatalog = \"hinged\"\ncurrency = \"JPY\"\n\
                round_to = 10\nfrom = 2026-01-01\nuntil = 2026-12-31\n\
                [[tail]]\nid = \"freight\"\nlabel = \"Freight\"\nflat = \"12.00\"\nclass = \"fee\"\ntax_class = \"services\"\n\
                [[tail]]\nid = \"spring\"\nlabel = \"Spring\"\npercent = -3.5\n\
                [[tail]]\nid = \"gift\"\nlabel = \"Gift\"\npercent = \"-100 %\"\nclass = \"credit\"\n";
    check(
        &catalog(Vec::new()),
        &[("book.toml", toml)],
        expect![[r#"
        h-26 `Hinged, 2026` for hinged in JPY, to 10, Some(2026-01-01) to Some(2026-12-31)
        freight `Freight` Fee Some("services"): 12
        spring `Spring` Goods None: -3.5 %
        gift `Gift` Credit None: -100 %
    "#]],
    );
}

#[test]
fn what_a_header_lacks_or_has_wrong_is_found_at_once() {
    let toml = "format = 1\n[book]\nid = \"B 1\"\ncatalog = \"hinged\"\ncurrency = \"usd\"\nround_to = \"0,05\"\n\
                from = 2026-12-31\nuntil = 2026-01-01\nvalid = true\n";
    check(
        &catalog(Vec::new()),
        &[("book.toml", toml)],
        expect![[r#"
            book/book.toml:2:1 [[book]] MISSING_KEY book `B 1` lacks `label`
              help: add `label`
            book/book.toml:3:6 ["B 1"] BAD_ID `B 1` is not an id
              help: write `b-1`; begin with a small letter or a digit; go on with small letters, digits, `-` and `_`
            book/book.toml:5:12 ["usd"] CURRENCY_UNKNOWN `usd` is not a currency of ISO 4217 with minor units
              help: did you mean `USD`?
            book/book.toml:6:12 ["0,05"] BAD_AMOUNT `0,05` is not an amount of money
              help: write a decimal point, not a comma
            book/book.toml:8:9 [2026-01-01] DATES_OUT_OF_ORDER `until` is 2026-01-01, before `from`, 2026-12-31
              help: both days belong to the time in force
              [2026-12-31] it begins here
            book/book.toml:9:1 [valid] UNKNOWN_KEY unknown key `valid` in book `B 1`
              help: known keys are `id`, `label`, `catalog`, `currency`, `round_to`, `from`, `until`, `amounts`
        "#]],
    );
}

#[test]
fn the_currency_is_one_of_iso_4217() {
    for (code, expected) in [
        (
            "XAU",
            expect![[r#"
            book/book.toml:6:12 ["XAU"] CURRENCY_UNKNOWN `XAU` is not a currency of ISO 4217 with minor units
              help: write the three letters of ISO 4217, such as `USD`, `CAD` or `EUR`
        "#]],
        ),
        (
            "DOLLARS",
            expect![[r#"
            book/book.toml:6:12 ["DOLLARS"] CURRENCY_UNKNOWN `DOLLARS` is not a currency of ISO 4217 with minor units
              help: write the three letters of ISO 4217, such as `USD`, `CAD` or `EUR`
        "#]],
        ),
    ] {
        let toml = book_toml("").replace("USD", code);
        check(&catalog(Vec::new()), &[("book.toml", &toml)], expected);
    }
}

#[test]
fn the_unit_of_rounding_is_a_whole_number_of_minor_units_above_zero() {
    for (unit, currency, expected) in [
        (
            "0",
            "USD",
            expect![[r#"
            book/book.toml:7:12 ["0"] BAD_ROUNDING `round_to` is 0; expected more than 0
              help: write the smallest step of a price, such as "0.01"
        "#]],
        ),
        (
            "-0.01",
            "USD",
            expect![[r#"
            book/book.toml:7:12 ["-0.01"] BAD_ROUNDING `round_to` is -0.01; expected more than 0
              help: write the smallest step of a price, such as "0.01"
        "#]],
        ),
        (
            "0.001",
            "USD",
            expect![[r#"
            book/book.toml:7:12 ["0.001"] BAD_ROUNDING `round_to` is 0.001, not a whole number of 0.01
              help: the smallest unit of USD is 0.01
        "#]],
        ),
        (
            "0.5",
            "JPY",
            expect![[r#"
            book/book.toml:7:12 ["0.5"] BAD_ROUNDING `round_to` is 0.5, not a whole number of 1
              help: the smallest unit of JPY is 1
        "#]],
        ),
        (
            "0.005",
            "BHD",
            expect![[r#"
            b `B` for hinged in BHD, to 0.005, None to None
        "#]],
        ),
        (
            "1e3",
            "USD",
            expect![[r#"
            book/book.toml:7:12 ["1e3"] BAD_AMOUNT `1e3` is not an amount of money
              help: a spreadsheet shortened this number; format the column as text or as number
        "#]],
        ),
        (
            "2000000000000",
            "USD",
            expect![[r#"
            book/book.toml:7:12 ["2000000000000"] AMOUNT_TOO_LARGE `2000000000000` is too large; at most 1000000000000 is read
              help: was a decimal point lost?
        "#]],
        ),
    ] {
        let toml = book_toml("").replace("0.01", unit).replace("USD", currency);
        check(&catalog(Vec::new()), &[("book.toml", &toml)], expected);
    }
}

#[test]
fn a_book_is_for_one_catalog() {
    let toml = book_toml("").replace("hinged", "sliding");
    check(
        &catalog(vec![flat("screen")]),
        &[("book.toml", &toml)],
        expect![[r#"
        book/book.toml:5:11 ["sliding"] BOOK_FOR_OTHER_CATALOG book `b` is for catalog `sliding`, not for `hinged`
          help: use a book of `hinged`, or write catalog = "hinged"
    "#]],
    );
}

#[test]
fn a_tail_step_is_flat_or_percent_and_never_below_minus_100() {
    let toml = book_toml(
        "[[tail]]\nid = \"a\"\nlabel = \"A\"\n\
         [[tail]]\nid = \"b\"\nlabel = \"B\"\nflat = \"1\"\npercent = 1\n\
         [[tail]]\nid = \"c\"\nlabel = \"C\"\npercent = -100.01\n\
         [[tail]]\nid = \"d\"\nlabel = \"D\"\nflat = \"12 %\"\n\
         [[tail]]\nid = \"e\"\nlabel = \"E\"\nflat = \"$12\"\nclass = \"freight\"\n\
         [[tail]]\nlabel = \"F\"\nflat = \"1\"\n\
         [[tail]]\nid = \"g\"\nlabel = \"G\"\nflat = \"9999999999999\"\n",
    );
    check(
        &catalog(Vec::new()),
        &[("book.toml", &toml)],
        expect![[r#"
            book/book.toml:8:1 [[[tail]]] MISSING_KEY tail step `a` lacks `flat` or `percent`
              help: add `flat` or `percent`
            book/book.toml:11:1 [[[tail]]] KEYS_EXCLUDE tail step `b` has both `flat` and `percent`
              help: keep one of the two
            book/book.toml:19:11 [-100.01] PERCENT_BELOW_MINUS_100 `percent` is -100.01; expected at least -100
              help: with less the total would fall as the items rise
            book/book.toml:23:8 ["12 %"] BAD_AMOUNT `12 %` is a percentage; expected an amount of money
              help: write the amount without `%`
            book/book.toml:27:8 ["$12"] BAD_AMOUNT `$12` is not an amount of money
              help: write the number alone; `currency` of the book says which money it is
            book/book.toml:28:9 ["freight"] UNKNOWN_WORD `class` is `freight`; expected one of `goods`, `labour`, `fee`, `credit`
              help: write one of these words
            book/book.toml:29:1 [[[tail]]] MISSING_KEY tail step lacks `id`
              help: add `id`
            book/book.toml:35:8 ["9999999999999"] AMOUNT_TOO_LARGE `9999999999999` is too large; at most 1000000000000 is read
              help: was a decimal point lost?
        "#]],
    );
}

#[test]
fn two_tail_steps_have_two_ids() {
    let toml = book_toml(
        "[[tail]]\nid = \"a\"\nlabel = \"A\"\nflat = 1\n[[tail]]\nid = \"a\"\nlabel = \"A\"\nflat = 2\n",
    );
    check(
        &catalog(Vec::new()),
        &[("book.toml", &toml)],
        expect![[r#"
        book/book.toml:13:6 ["a"] DUPLICATE_ID `a` stands twice among the tail steps
          help: give one of the two another id
          ["a"] `a` stands here first
    "#]],
    );
}

#[test]
fn unknown_keys_a_missing_header_and_an_unknown_format_are_found() {
    check(
        &catalog(Vec::new()),
        &[("book.toml", "format = 2\n[bok]\nid = \"b\"\n")],
        expect![[r#"
            book/book.toml:1:10 [2] UNKNOWN_FORMAT `format = 2` is not known; this program reads `format = 1`
              help: write `format = 1`
            book/book.toml:2:2 [bok] UNKNOWN_KEY unknown key `bok` in price book file
              help: did you mean `book`?
        "#]],
    );
}

#[test]
fn a_file_or_folder_that_is_not_there_or_empty_is_found() {
    for files in [&[][..], &[("book.toml", "")]] {
        let (book, findings, _) = Shelf::new(files).load(&catalog(Vec::new()));
        assert!(book.is_none());
        let codes: Vec<_> = findings.iter().map(Finding::code).collect();
        assert_eq!(
            codes,
            [if files.is_empty() {
                "FILE_NOT_THERE"
            } else {
                "EMPTY_FILE"
            }]
        );
    }
}

#[test]
fn the_header_alone_says_which_book_it_is() {
    let shelf = Shelf::new(&[("book.toml", &book_toml("amounts = \"nowhere.csv\"\n[[grid]]\n"))]);
    let (mut sources, findings) = (Sources::new(), Findings::new());
    let library = Library::find(shelf.folder.path(), &findings).unwrap();
    let folder = library.locate(&shelf.folder.path().join("book")).unwrap();
    let header = book_header(&library, &folder, &mut sources, &findings);
    let expected = BookHeader {
        id: Id::new("b"),
        catalog: Id::new("hinged"),
    };
    assert_eq!(header, Some(expected));
    assert!(findings.is_empty(), "the rest is found when the book is loaded");
}

#[test]
fn a_header_that_cannot_be_read_says_why() {
    let shelf = Shelf::new(&[("book.toml", "format = 1\n[book]\nid = \"b\"\n")]);
    let (mut sources, findings) = (Sources::new(), Findings::new());
    let library = Library::find(shelf.folder.path(), &findings).unwrap();
    let folder = library.locate(&shelf.folder.path().join("book")).unwrap();
    assert_eq!(book_header(&library, &folder, &mut sources, &findings), None);
    assert!(findings.has_errors());
}
