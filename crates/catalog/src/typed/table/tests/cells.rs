//! What a cell may hold under each type.

use expect_test::expect;

use super::check_list;

#[test]
fn options_sets_families_and_stars_are_read() {
    check_list(
        "exterior,zone,sleeps\nwhite,north,yes\nwhite | grey,north|south,*\ndark,*,no\nlight|black,*,yes|no\n",
        expect![[r#""#]],
    );
}

#[test]
fn values_and_ranges_of_each_ordered_type_are_read() {
    check_list(
        "width,lites,area,permit\n\
         35 5/8,2|4,5.7 ft2,2026-01-01\n\
         15..36,..3,5 sq ft..,2026-01-01<..2026-06-30\n\
         \"15<..36\",-1.5..2,*,*\n",
        expect![[r#""#]],
    );
}

/// What lets the same values through is the same cell.
#[test]
fn intervals_that_touch_are_one() {
    check_list(
        "width\n30..36|15..20|20<..25\n12|15..36\n..20|10..\n15..36|40\n15<..20|15\n",
        expect![[r#""#]],
    );
}

#[test]
fn a_range_of_one_point_holds_it() {
    check_list("width\n36..36\n", expect![[r#""#]]);
}

#[test]
fn ranges_that_hold_nothing_are_refused() {
    check_list("width,permit\n36..15,*\n36<..36,*\n*,2026-06-30..2026-01-01\n", expect![[r#""#]]);
}

#[test]
fn a_range_needs_an_order() {
    check_list("exterior,sleeps,zone\nwhite..grey,*,*\n*,no..yes,*\n*,*,north..\n", expect![[r#""#]]);
}

#[test]
fn unknown_options_name_the_nearest_and_the_others() {
    check_list(
        "exterior,zone\nwhyte,north\nwhite|purple,*\ndrak,*\n*,east\n\"purple\",*\n",
        expect![[r#""#]],
    );
}

#[test]
fn a_word_that_is_option_and_family_is_refused() {
    check_list("finish\nbrass\nmetal\n", expect![[r#""#]]);
}

#[test]
fn an_empty_cell_is_not_a_star() {
    check_list("exterior,zone\nwhite,\n", expect![[r#""#]]);
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
        expect![[r#""#]],
    );
}

#[test]
fn what_spreadsheets_do_to_cells_is_named() {
    check_list(
        "width,lites\n5-Aug,1\n\"35,625\",1\n####,1\n15-36,1\n36,1.2E+05\n36,\"1,5\"\n",
        expect![[r#""#]],
    );
}

#[test]
fn broken_cells_are_underlined_where_they_break() {
    check_list("exterior,width\nwhite||grey,*\nwhite|*,*\n*,15<36\n*,..\n", expect![[r#""#]]);
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
    assert_eq!((last.code(), last.message()), ("MORE_FINDINGS", "and 73 more like these"));
    assert_eq!(last.place().and_then(|place| place.row), Some(52));
}
