//! Columns of lists, and rows that say the same.

use expect_test::expect;

use super::check_list;

#[test]
fn remarks_are_not_read() {
    check_list(
        "exterior,# source,#2\nwhite,anything at all,\n",
        expect![[r#"
        `white`
    "#]],
    );
}

#[test]
fn who_deducts_and_the_attribute_of_a_part_can_be_columns() {
    check_list(
        "width.deducted_by,glazing.upper\nnobody|dealer,tempered\n",
        expect![[r#"
        `dealer`|`nobody` ; `tempered`
    "#]],
    );
}

#[test]
fn an_unknown_column_is_named_with_the_nearest() {
    check_list(
        "exteriour,zone\nwhite,east\n",
        expect![[r#"
        table.csv:1:1 [exteriour] UNKNOWN_NAME `exteriour` is not a name of this catalog
          row 1, column exteriour
          help: did you mean `exterior`?
        table.csv:2:7 [east] UNKNOWN_OPTION unknown option `east` of `zone`
          row 2, column zone
          help: there are `north`, `south`
    "#]],
    );
    check_list(
        "notes,zone\nwhite,north\n",
        expect![[r#"
            table.csv:1:1 [notes] UNKNOWN_NAME `notes` is not a name of this catalog
              row 1, column notes
              help: write an id, not a label: `area`, `exterior`, `finish`, `glazing`, `height`, `interior`, `lites`, `lower`, `permit`, `sleeps`, `upper`, `width`, `zone`; a column of remarks begins with `#`
        "#]],
    );
}

#[test]
fn a_part_is_no_column_and_a_bare_name_needs_a_part() {
    check_list(
        "glazing\ntempered\n",
        expect![[r#"
        table.csv:1:1 [glazing] PART_NOT_SAID `glazing` is one a sash, and here nothing says which sash
          row 1, column glazing
          help: write `glazing.upper` or `glazing.lower`, or any(glazing ...), all(...) or sum(...) over the parts
    "#]],
    );
    check_list(
        "upper\ntempered\n",
        expect![[r#"
        table.csv:1:1 [upper] NOT_A_VALUE `upper` is a part, not a value
          row 1, column upper
          help: name an attribute of the part: `glazing.upper`
    "#]],
    );
    check_list(
        "exterior.gloss\n1\n",
        expect![[r#"
        table.csv:1:1 [exterior.gloss] UNKNOWN_PROPERTY no option of `exterior` has a property `gloss`
          row 1, column exterior.gloss
          help: give the options of `exterior` a property `gloss`
    "#]],
    );
}

#[test]
fn the_same_subject_twice_is_refused() {
    let bench = super::Bench::new("glazing,glazing.upper\ntempered,annealed\n");
    let scope = crate::typed::Scope::new(&bench.names, &bench.findings);
    let tables = super::list_table(&bench.sheet(), &scope, &[Some(astragal_model::PartIndex(0))]);
    bench.shown(
        tables,
        expect![[r#"
        table.csv:1:9 [glazing.upper] DUPLICATE_COLUMN the columns `glazing` and `glazing.upper` read the same
          row 1, column glazing.upper
          help: delete one of them
          [glazing] this is the other one
    "#]],
    );
}

#[test]
fn a_table_without_rows_or_columns_is_refused() {
    check_list(
        "exterior,zone\n",
        expect![[r#"
        table.csv:1:1 [exterior,zone] NO_ROWS the table has no rows
          row 1
          help: write a row, or take the table away
    "#]],
    );
    check_list(
        "# remark\nwhite\n",
        expect![[r#"
        table.csv:1:1 [# remark] NO_COLUMNS the sheet has no column to look anything up by
          row 1
          help: name an attribute, measure, fact or figure in the first row
    "#]],
    );
}

#[test]
fn more_columns_than_the_limit_are_refused() {
    let header: Vec<String> = (0..65).map(|at| format!("c{at}")).collect();
    let row = vec!["x"; 65];
    let bench = super::Bench::new(&format!("{}\n{}\n", header.join(","), row.join(",")));
    let scope = crate::typed::Scope::new(&bench.names, &bench.findings);
    assert!(super::list_table(&bench.sheet(), &scope, &[None]).is_none());
    bench.check_messages(&["LIMIT the table has 65 columns; at most 64 are read"]);
}

#[test]
fn rows_that_say_the_same_are_a_warning() {
    check_list(
        "exterior,zone\ndark,*\nwhite,*\nblack|grey,*\n",
        expect![[r#"
        `black`|`grey` ; *
        `white` ; *
        `black`|`grey` ; *
        warning table.csv:4:1 [black|grey,*] DUPLICATE_ROW rows 2 and 4 say the same
          row 4
          help: delete one of them
          [dark,*] row 2
    "#]],
    );
}
