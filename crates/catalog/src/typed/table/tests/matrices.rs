//! Matrices: headers, marks, and marks that contradict each other.

use expect_test::expect;

use super::{Bench, check_matrix};
use crate::typed::Scope;

#[test]
fn marked_pairs_are_the_rows() {
    check_matrix(
        "in \\ out,white,dark,# remark,cream\nwhite,x,yes,?,no\ndark|cream,-,X,?,\n*,no,x,?,\n",
        expect![[r#""#]],
    );
}

#[test]
fn headers_and_marks_are_checked() {
    check_matrix("x,white,purple\nwhite,x,x\ngray,x,x\nblack,1,\n,x,x\n", expect![[r#""#]]);
}

#[test]
fn pairs_that_meet_under_different_marks_contradict_each_other() {
    check_matrix("x,white,dark,black\nwhite,x,x,no\n", expect![[r#""#]]);
    check_matrix("x,white\ngrey,x\ndark,\n", expect![[r#""#]]);
    check_matrix("x,white\nwhite,x\n*,\n", expect![[r#""#]]);
    check_matrix("x,white,white|white\nwhite,x,\n", expect![[r#""#]]);
}

#[test]
fn a_pair_marked_twice_is_a_warning() {
    check_matrix("x,white\ndark,x\ngrey|black,x\n", expect![[r#""#]]);
}

#[test]
fn a_matrix_without_marks_or_pairs_is_refused() {
    check_matrix("x,white\nwhite,no\n", expect![[r#""#]]);
    check_matrix("x\nwhite\n", expect![[r#""#]]);
    check_matrix("x,white\n", expect![[r#""#]]);
}

#[test]
fn the_sides_are_known_and_differ() {
    for (down, across, expected) in [
        ("interior", "interior", expect![[r#""#]]),
        ("interor", "exterior", expect![[r#""#]]),
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
    check_matrix(&format!("x,{}\n{}", header.join(","), row.repeat(1000)).replace("white\n", "white\n"), expect![[r#""#]]);
}
