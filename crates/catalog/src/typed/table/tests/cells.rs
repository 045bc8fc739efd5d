//! What a cell may hold under each type.

use expect_test::expect;

use super::check_list;

#[test]
fn options_sets_families_and_stars_are_read() {
    check_list(
        "exterior,zone,sleeps\nwhite,north,yes\nwhite | grey,north|south,*\ndark,*,no\nlight|black,*,yes|no\n",
        expect![[r#"
            `white` ; `north` ; yes
            `grey`|`white` ; `north`|`south` ; *
            `black`|`grey` ; * ; no
            `black`|`cream`|`white` ; * ; no|yes
        "#]],
    );
}

#[test]
fn values_and_ranges_of_each_ordered_type_are_read() {
    check_list(
        "width,lites,area,permit\n\
         35 5/8,2|4,5.7 ft2,2026-01-01\n\
         15..36,..3,5 sq ft..,2026-01-01<..2026-06-30\n\
         \"15<..36\",-1.5..2,*,*\n",
        expect![[r#"
            35 5/8 in ; 2|4 ; 5.7 sq ft ; 2026-01-01
            15 in..36 in ; ..3 ; 5 sq ft.. ; 2026-01-01<..2026-06-30
            15 in<..36 in ; -1.5..2 ; * ; *
        "#]],
    );
}

/// What lets the same values through is the same cell.
#[test]
fn intervals_that_touch_are_one() {
    check_list(
        "width\n30..36|15..20|20<..25\n12|15..36\n..20|10..\n15..36|40\n15<..20|15\n",
        expect![[r#"
            15 in..25 in | 30 in..36 in
            12 in..12 in | 15 in..36 in
            ..
            15 in..36 in | 40 in..40 in
            15 in..20 in
        "#]],
    );
}

#[test]
fn a_range_of_one_point_holds_it() {
    check_list(
        "width\n36..36\n",
        expect![[r#"
        36 in..36 in
    "#]],
    );
}

#[test]
fn ranges_that_hold_nothing_are_refused() {
    check_list(
        "width,permit\n36..15,*\n36<..36,*\n*,2026-06-30..2026-01-01\n",
        expect![[r#"
        table.csv:2:1 [36..15] EMPTY_RANGE the range begins at 36 in, above its end 15 in
          row 2, column width
          help: write the lower end first
        table.csv:3:1 [36<..36] EMPTY_RANGE the range begins after 36 in and ends there, so it holds nothing
          row 3, column width
          help: write `..` without `<` for this value alone
        table.csv:4:3 [2026-06-30..2026-01-01] EMPTY_RANGE the range begins at 2026-06-30, above its end 2026-01-01
          row 4, column permit
          help: write the lower end first
    "#]],
    );
}

#[test]
fn a_range_needs_an_order() {
    check_list(
        "exterior,sleeps,zone\nwhite..grey,*,*\n*,no..yes,*\n*,*,north..\n",
        expect![[r#"
        table.csv:2:1 [white..grey] RANGE_WITHOUT_ORDER found a range, expected an option
          row 2, column exterior
          help: list what matches: `a|b|c`
        table.csv:3:3 [no..yes] RANGE_WITHOUT_ORDER found a range, expected a yes or no
          row 3, column sleeps
          help: list what matches: `a|b|c`
        table.csv:4:5 [north..] RANGE_WITHOUT_ORDER found a range, expected an option
          row 4, column zone
          help: list what matches: `a|b|c`
    "#]],
    );
}

#[test]
fn unknown_options_name_the_nearest_and_the_others() {
    check_list(
        "exterior,zone\nwhyte,north\nwhite|purple,*\ndrak,*\n*,east\n\"purple\",*\n",
        expect![[r#"
            table.csv:2:1 [whyte] UNKNOWN_OPTION unknown option or family `whyte` of `exterior`
              row 2, column exterior
              help: did you mean `white`? there are `black`, `cream`, `grey`, `white`, `dark`, `light`, `warm`
            table.csv:3:7 [purple] UNKNOWN_OPTION unknown option or family `purple` of `exterior`
              row 3, column exterior
              help: there are `black`, `cream`, `grey`, `white`, `dark`, `light`, `warm`
            table.csv:4:1 [drak] UNKNOWN_OPTION unknown option or family `drak` of `exterior`
              row 4, column exterior
              help: did you mean `dark`? there are `black`, `cream`, `grey`, `white`, `dark`, `light`, `warm`
            table.csv:5:3 [east] UNKNOWN_OPTION unknown option `east` of `zone`
              row 5, column zone
              help: there are `north`, `south`
            table.csv:6:2 [purple] UNKNOWN_OPTION unknown option or family `purple` of `exterior`
              row 6, column exterior
              help: there are `black`, `cream`, `grey`, `white`, `dark`, `light`, `warm`
        "#]],
    );
}

#[test]
fn a_word_that_is_option_and_family_is_refused() {
    check_list(
        "finish\nbrass\nmetal\n",
        expect![[r#"
        table.csv:3:1 [metal] AMBIGUOUS_WORD `metal` is an option and a family of `finish`
          row 3, column finish
          help: rename the family
    "#]],
    );
}

#[test]
fn an_empty_cell_is_not_a_star() {
    check_list(
        "exterior,zone\nwhite,\n",
        expect![[r#"
            table.csv:2:7 [] EMPTY_CELL found an empty cell, expected what it matches
              row 2, column zone
              help: write `*` where anything may stand; of merged cells a spreadsheet saves only the first, so write it in every row
        "#]],
    );
}

#[test]
fn values_of_a_wrong_type_are_refused() {
    check_list(
        "width,lites,area,permit,sleeps\n\
         wide,1,5 ft2,2026-01-01,yes\n\
         36,two,5 ft2,2026-01-01,yes\n\
         36,1,5,2026-01-01,yes\n\
         36,1,5 ft2,01.02.2026,yes\n\
         36,1,5 ft2,2026-01-01,TRUE\n\
         36,1,5 ft2,2026-01-01,maybe\n",
        expect![[r#"
            table.csv:2:1 [wide] WRONG_VALUE `wide` is not a length
              row 2, column width
              help: write a length such as `35 5/8`, `35.625 in`, `2'-11 5/8"` or `904.875 mm`
            table.csv:3:4 [two] WRONG_VALUE `two` is not a decimal number
              row 3, column lites
              help: write it like 12.5
            table.csv:4:6 [5] WRONG_VALUE `5` has no unit
              row 4, column area
              help: units are `sq in`, `sq ft`, `mm2`, `cm2`, `m2`
            table.csv:5:12 [01.02.2026] WRONG_VALUE `01.02.2026` is not a date
              row 5, column permit
              help: write it like 2026-11-25
            table.csv:6:23 [TRUE] WRONG_VALUE found `TRUE`, expected `yes` or `no`
              row 6, column sleeps
              help: write `yes`
            table.csv:7:23 [maybe] WRONG_VALUE found `maybe`, expected `yes` or `no`
              row 7, column sleeps
              help: write `yes`, `no`, or `*` for whatever stands there
        "#]],
    );
}

#[test]
fn what_spreadsheets_do_to_cells_is_named() {
    check_list(
        "width,lites\n5-Aug,1\n\"35,625\",1\n####,1\n15-36,1\n36,1.2E+05\n36,\"1,5\"\n",
        expect![[r#"
            table.csv:2:1 [5-Aug] WRONG_VALUE `5-Aug` is a date, not a length
              row 2, column width
              help: a spreadsheet turned this into a date; was it a fraction like 5/8? format the column as text
            table.csv:3:4 [,] SYNTAX found `,` inside a cell
              row 3, column width
              help: write a decimal point, not a comma
            table.csv:4:1 [####] WRONG_VALUE `####` is not a length
              row 4, column width
              help: the column of the spreadsheet was too narrow when it was saved
            table.csv:5:1 [15-36] WRONG_VALUE `15-36` is not a length
              row 5, column width
              help: a range is written with two dots: `15..36`
            table.csv:6:4 [1.2E+05] NUMBER_WITH_EXPONENT `1.2E+05` is a number with an exponent
              row 6, column lites
              help: a spreadsheet shortened this number; format the column as text or as number
            table.csv:7:6 [,] SYNTAX found `,` inside a cell
              row 7, column lites
              help: write a decimal point, not a comma
        "#]],
    );
}

#[test]
fn broken_cells_are_underlined_where_they_break() {
    check_list(
        "exterior,width\nwhite||grey,*\nwhite|*,*\n*,15<36\n*,..\n",
        expect![[r#"
        table.csv:2:6 [|] SYNTAX found nothing beside `|`, expected a member of the set
          row 2, column exterior
          help: remove the bar, or write what is missing
        table.csv:3:7 [*] SYNTAX found `*` inside a cell
          row 3, column exterior
          help: `*` holds everything, so it stands alone
        table.csv:4:3 [15<36] SYNTAX found `<` in `15<36`, expected a member or a range
          row 4, column width
          help: write `15..36`, `15<..36` to leave 15 out, `15..` or `..36`
        table.csv:5:3 [..] SYNTAX found a range with nothing on both sides
          row 5, column width
          help: write one end or both, `15..36`, `15..` or `..36`; `*` holds everything
    "#]],
    );
}

#[test]
fn after_fifty_findings_the_rest_is_counted() {
    let csv = format!("exterior\n{}", "purple\n".repeat(123));
    let bench = super::Bench::new(&csv);
    let scope = crate::typed::Scope::new(&bench.names, &bench.findings);
    assert!(super::list_table(&bench.sheet(), &scope, &[None]).is_none());
    let findings = bench.findings.into_sorted(&bench.sources);
    assert_eq!(findings.len(), 51);
    let last = findings.last().unwrap();
    assert_eq!(
        (last.code(), last.message()),
        ("MORE_FINDINGS", "and 73 more like these")
    );
    assert_eq!(last.place().and_then(|place| place.row), Some(52));
}

#[test]
fn a_cell_past_the_findings_that_are_said_looks_for_no_near_word() {
    let bench = super::Bench::new("exterior\nwhita\n");
    let helps = |is_said: bool| {
        let place = || bench.text("whita").place.clone();
        let text = crate::typed::table::cells::CellText {
            text: "whita",
            place: &place,
            is_said,
        };
        let mut reports = crate::typed::table::reports::Reports::new(&bench.findings);
        let (_, of) = crate::typed::Scope::new(&bench.names, &bench.findings)
            .subject(&bench.text("exterior"))
            .unwrap();
        let value = text.value("whita", &(0..5), &of, &bench.names).unwrap_err();
        let has_help = value.help().is_some();
        assert_eq!(value.code(), "UNKNOWN_OPTION");
        assert!(reports.says_more());
        for _ in 0..50 {
            reports.push((*value).clone());
        }
        assert!(!reports.says_more());
        let _ = reports.finish();
        has_help
    };
    assert!(helps(true));
    assert!(!helps(false));
}
