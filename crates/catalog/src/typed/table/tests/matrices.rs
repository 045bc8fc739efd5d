//! Matrices: headers, marks, and marks that contradict each other.

use expect_test::expect;

use super::{Bench, check_matrix};
use crate::typed::Scope;

#[test]
fn marked_pairs_are_the_rows() {
    check_matrix(
        "in \\ out,white,dark,# remark,cream\nwhite,x,yes,?,no\ndark|cream,-,X,?,\n",
        expect![[r#"
            `white` ; `white`
            `white` ; `black`|`grey`
            `black`|`cream`|`grey` ; `black`|`grey`
        "#]],
    );
}

#[test]
fn headers_and_marks_are_checked() {
    check_matrix(
        "x,white,purple\nwhite,x,x\ngray,x,x\nblack,1,\n,x,x\n",
        expect![[r#"
            table.csv:1:9 [purple] UNKNOWN_OPTION unknown option or family `purple` of `exterior`
              row 1, column purple
              help: there are `black`, `cream`, `grey`, `white`, `dark`, `light`, `warm`
            table.csv:3:1 [gray] UNKNOWN_OPTION unknown option or family `gray` of `interior`
              row 3, column x
              help: did you mean `grey`? there are `black`, `cream`, `grey`, `white`, `dark`, `light`, `warm`
            table.csv:4:7 [1] BAD_MARK found `1`, expected a mark
              row 4, column white
              help: mark a pair with `x` or `yes`, or else with `no`, `-` or nothing
            table.csv:5:1 [] EMPTY_CELL found an empty cell, expected what it matches
              row 5, column x
              help: write `*` where anything may stand; of merged cells a spreadsheet saves only the first, so write it in every row
        "#]],
    );
}

#[test]
fn pairs_that_meet_under_different_marks_contradict_each_other() {
    check_matrix(
        "x,white,dark,black\nwhite,x,x,no\n",
        expect![[r#"
        table.csv:2:11 [no] TABLE_CONTRADICTS this pair is not marked and an earlier one is, though both hold when `interior` is `white`, `exterior` is `black`: the matrix contradicts itself
          row 2, column black
          help: mark both or neither, or let the headers not overlap
          [x] the earlier one
    "#]],
    );
    check_matrix(
        "x,white\ngrey,x\ndark,\n",
        expect![[r#"
        table.csv:3:6 [] TABLE_CONTRADICTS this pair is not marked and an earlier one is, though both hold when `interior` is `grey`, `exterior` is `white`: the matrix contradicts itself
          row 3, column white
          help: mark both or neither, or let the headers not overlap
          [x] the earlier one
    "#]],
    );
    check_matrix(
        "x,white\nwhite,x\n*,\n",
        expect![[r#"
        table.csv:3:3 [] TABLE_CONTRADICTS this pair is not marked and an earlier one is, though both hold when `interior` is `white`, `exterior` is `white`: the matrix contradicts itself
          row 3, column white
          help: mark both or neither, or let the headers not overlap
          [x] the earlier one
    "#]],
    );
    check_matrix(
        "x,white,white|white\nwhite,x,\n",
        expect![[r#"
        table.csv:2:9 [] TABLE_CONTRADICTS this pair is not marked and an earlier one is, though both hold when `interior` is `white`, `exterior` is `white`: the matrix contradicts itself
          row 2, column white|white
          help: mark both or neither, or let the headers not overlap
          [x] the earlier one
    "#]],
    );
}

#[test]
fn a_pair_marked_twice_is_a_warning() {
    check_matrix(
        "x,white\ndark,x\ngrey|black,x\n",
        expect![[r#"
        `black`|`grey` ; `white`
        `black`|`grey` ; `white`
        warning table.csv:3:12 [x] DUPLICATE_ROW this pair is marked twice
          row 3, column white
          help: delete one of them
          [x] the earlier one
    "#]],
    );
}

#[test]
fn a_matrix_without_marks_or_pairs_is_refused() {
    check_matrix(
        "x,white\nwhite,no\n",
        expect![[r#"
        table.csv:1:1 [x,white] NO_ROWS no pair of the matrix is marked
          row 1
          help: mark pairs with `x`
    "#]],
    );
    check_matrix(
        "x\nwhite\n",
        expect![[r#"
        table.csv:1:1 [x] NO_ROWS the table has no rows
          row 1
          help: write a row, or take the table away
    "#]],
    );
    check_matrix(
        "x,white\n",
        expect![[r#"
        table.csv:1:1 [x,white] NO_ROWS the table has no rows
          row 1
          help: write a row, or take the table away
    "#]],
    );
}

#[test]
fn the_sides_are_known_and_differ() {
    for (down, across, expected) in [
        (
            "interior",
            "interior",
            expect![[r#"
            catalog.toml:1:1 [down] DUPLICATE_COLUMN `down` and `across` are both `interior`
              help: name two different subjects
        "#]],
        ),
        (
            "interor",
            "exterior",
            expect![[r#"
            catalog.toml:1:1 [down] UNKNOWN_NAME `interor` is not a name of this catalog
              help: did you mean `interior`?
        "#]],
        ),
    ] {
        let bench = Bench::new("x,white\nwhite,x\n");
        let scope = Scope::new(&bench.names, &bench.findings);
        let (down, across) = (bench.text(down), bench.text(across));
        let tables = super::matrix_table(&bench.sheet(), &scope, &[None], &down, &across);
        bench.shown(tables, expected);
    }
}

#[test]
fn more_pairs_than_the_limit_are_refused() {
    let header: Vec<String> = (0..1001).map(|at| format!("c{at}")).collect();
    let row = format!("white{}\n", ",x".repeat(1001));
    let bench = Bench::new(&format!("x,{}\n{}", header.join(","), row.repeat(1000)));
    let scope = Scope::new(&bench.names, &bench.findings);
    let (down, across) = (bench.text("interior"), bench.text("exterior"));
    assert!(super::matrix_table(&bench.sheet(), &scope, &[None], &down, &across).is_none());
    bench.check_messages(&["LIMIT the matrix has 1001000 pairs; at most 1000000 are read"]);
}
