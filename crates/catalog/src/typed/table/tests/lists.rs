//! Columns of lists, and rows that say the same.

use expect_test::expect;

use super::check_list;

#[test]
fn remarks_are_not_read() {
    check_list("exterior,# source,#2\nwhite,anything at all,\n", expect![[r#""#]]);
}

#[test]
fn who_deducts_and_the_attribute_of_a_part_can_be_columns() {
    check_list("width.deducted_by,glazing.upper\nnobody|dealer,tempered\n", expect![[r#""#]]);
}

#[test]
fn an_unknown_column_is_named_with_the_nearest() {
    check_list("exteriour,zone\nwhite,east\n", expect![[r#""#]]);
    check_list("notes,zone\nwhite,north\n", expect![[r#""#]]);
}

#[test]
fn a_part_is_no_column_and_a_bare_name_needs_a_part() {
    check_list("glazing\ntempered\n", expect![[r#""#]]);
    check_list("upper\ntempered\n", expect![[r#""#]]);
    check_list("exterior.gloss\n1\n", expect![[r#""#]]);
}

#[test]
fn the_same_subject_twice_is_refused() {
    let bench = super::Bench::new("glazing,glazing.upper\ntempered,annealed\n");
    let scope = crate::typed::Scope::new(&bench.names, &bench.findings);
    let tables = super::list_table(&bench.sheet(), &scope, &[Some(astragal_model::PartIndex(0))]);
    bench.shown(tables, expect![[r#""#]]);
}

#[test]
fn a_table_without_rows_or_columns_is_refused() {
    check_list("exterior,zone\n", expect![[r#""#]]);
    check_list("# remark\nwhite\n", expect![[r#""#]]);
}

#[test]
fn more_columns_than_the_limit_are_refused() {
    let header: Vec<String> = (0..65).map(|at| format!("c{at}")).collect();
    check_list(&format!("{}\n", header.join(",")), expect![[r#""#]]);
}

#[test]
fn rows_that_say_the_same_are_a_warning() {
    check_list("exterior,zone\ndark,*\nwhite,*\nblack|grey,*\n", expect![[r#""#]]);
}
