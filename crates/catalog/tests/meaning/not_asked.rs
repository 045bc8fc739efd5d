//! What *not asked* is: in rules and tables, in comparisons, and for a condition that is unknown.

use crate::{Case, NONE, attribute, fact, measures, rule, table_figure, table_rule};

/// Picking `fixed` leaves the mesh and the crank not asked; `holes` is a property of the meshes.
fn case() -> Case {
    Case::new(&attribute("operation", "casement fixed", "standard = \"casement\""))
        .and(
            "\n[[attribute]]\nid = \"mesh\"\nlabel = \"MESH\"\nstandard = \"fine\"\n\
             options = [{ id = \"fine\", properties = { holes = 20 } }, { id = \"coarse\", properties = { holes = 10 } }]\n\
             applies_when = 'operation == \"casement\"'\n",
        )
        .and(&attribute("spare", "fine coarse", "standard = \"fine\"\napplies_when = 'operation == \"casement\"'"))
        .and(&fact("year_built", "house", "number"))
        .and(&measures(&["width"]))
}

fn fixed() -> Case {
    case().pick("operation", "fixed")
}

/// A rule by a list over operation and mesh.
fn with_table(case: Case, rows: &str, csv: &str) -> Case {
    case.and(&table_rule("a", rows, "a.csv"))
        .file("catalog/a.csv", &format!("operation,mesh\n{csv}\n"))
}

#[test]
fn an_attribute_is_not_asked_where_its_condition_is_false() {
    assert_eq!(fixed().answer().value("mesh"), "not asked");
    assert_eq!(case().answer().value("mesh"), "fine (standard)");
}

#[test]
fn an_allowed_table_ignores_the_column_of_what_is_not_asked() {
    let judged = with_table(fixed(), "allowed", "fixed,fine").answer();
    assert_eq!((judged.broken(), judged.undecided()), (vec![], vec![]));
    assert_eq!(
        with_table(fixed(), "allowed", "casement,fine").answer().broken(),
        ["a"]
    );
}

#[test]
fn an_allowed_table_does_not_ignore_the_column_of_what_is_asked() {
    assert_eq!(
        with_table(case(), "allowed", "casement,coarse").answer().broken(),
        ["a"]
    );
}

#[test]
fn a_row_that_forbids_does_not_match_what_is_not_asked_where_it_restricts_it() {
    assert_eq!(
        with_table(fixed(), "forbidden", "fixed,fine|coarse")
            .answer()
            .broken(),
        NONE
    );
}

#[test]
fn a_row_that_forbids_matches_what_is_not_asked_where_it_says_anything() {
    assert_eq!(
        with_table(fixed(), "forbidden", "fixed,*").answer().broken(),
        ["a"]
    );
}

#[test]
fn a_figure_by_table_over_what_is_not_asked_is_undefined() {
    let judged = fixed()
        .and(&table_figure("area_lost", "keys = [\"operation\", \"mesh\"]"))
        .file(
            "catalog/area_lost.csv",
            "operation,mesh,area_lost\nfixed,*,1\ncasement,*,2\n",
        )
        .answer();
    assert_eq!(judged.figure("area_lost"), "undefined");
}

#[test]
fn comparisons_for_equality_need_no_guard_and_what_is_not_asked_equals_nothing() {
    let found = fixed().truths(&[
        r#"mesh == "fine""#,
        r#"mesh != "fine""#,
        r#"mesh in ["fine", "coarse"]"#,
        r#"!(mesh in ["fine", "coarse"])"#,
    ]);
    assert_eq!(found, ["false", "true", "false", "true"]);
}

#[test]
fn what_is_not_asked_does_not_equal_itself_or_another_that_is_not_asked() {
    let found = fixed().truths(&["mesh == mesh", "mesh != mesh", "mesh == spare", "mesh != spare"]);
    assert_eq!(found, ["false", "true", "false", "true"]);
    assert_eq!(case().truths(&["mesh == mesh", "mesh == spare"]), ["true"; 2]);
}

#[test]
fn a_comparison_of_what_is_not_asked_waits_for_a_side_that_is_open() {
    let case = fixed().and(&attribute("frame_mesh", "fine coarse", "standard = \"ask\""));
    let conditions = ["mesh == frame_mesh", "mesh != frame_mesh"];
    assert_eq!(case.truths(&conditions), ["unknown: FRAME_MESH"; 2]);
    assert_eq!(
        case.pick("frame_mesh", "fine").truths(&conditions),
        ["false", "true"]
    );
}

#[test]
fn reading_a_property_of_what_may_not_be_asked_needs_a_guard() {
    assert_eq!(
        case().and(&rule("a", "require = 'mesh.holes > 3'")).codes(),
        ["NOT_GUARDED"]
    );
    let property = figure_of_holes("mesh.holes");
    assert_eq!(case().and(&property).codes(), ["NOT_GUARDED"]);
}

fn figure_of_holes(formula: &str) -> String {
    crate::figure("holes", formula)
}

#[test]
fn asking_whether_it_is_asked_is_the_guard() {
    let guarded = [
        "is_asked(mesh) && mesh.holes > 15",
        "!is_asked(mesh) || mesh.holes > 15",
    ];
    assert_eq!(case().truths(&guarded), ["true", "true"]);
    assert_eq!(fixed().truths(&guarded), ["false", "true"]);
    let figure = figure_of_holes("is_asked(mesh) ? mesh.holes : 0");
    assert_eq!(fixed().and(&figure).answer().figure("holes"), "0");
}

#[test]
fn a_guard_in_when_covers_what_is_required() {
    let guarded = rule("a", "when = 'is_asked(mesh)'\nrequire = 'mesh.holes > 30'");
    assert_eq!(case().and(&guarded).answer().broken(), ["a"]);
    assert_eq!(fixed().and(&guarded).answer().broken(), NONE);
}

#[test]
fn a_guard_beside_it_that_does_not_guard_is_not_taken_for_one() {
    let unguarded = [
        "is_asked(mesh) || mesh.holes > 3",
        "is_asked(spare) && mesh.holes > 3",
    ];
    for condition in unguarded {
        let case = case().and(&rule("a", &format!("require = '{condition}'")));
        assert_eq!(case.codes(), ["NOT_GUARDED"], "{condition}");
    }
}

#[test]
fn is_asked_says_what_stands_there() {
    assert_eq!(case().truths(&["is_asked(mesh)"]), ["true"]);
    assert_eq!(fixed().truths(&["is_asked(mesh)"]), ["false"]);
}

#[test]
fn is_asked_of_an_open_attribute_is_what_its_condition_says() {
    let case = case()
        .and(&attribute("grip", "a b", "standard = \"ask\""))
        .and(&attribute(
            "lead_kit",
            "a b",
            "standard = \"a\"\napplies_when = 'year_built < 1978'",
        ));
    assert_eq!(
        case.truths(&["is_asked(grip)", "is_asked(lead_kit)"]),
        ["true", "unknown: YEAR_BUILT"]
    );
}

#[test]
fn an_attribute_whose_condition_is_unknown_is_open_and_wants_what_the_condition_wants() {
    let case = case().and(&attribute(
        "lead_kit",
        "a b",
        "standard = \"a\"\napplies_when = 'year_built < 1978'",
    ));
    let judged = case.answer();
    assert_eq!(
        (judged.value("lead_kit"), judged.open()),
        ("open".to_owned(), vec!["lead_kit: YEAR_BUILT".to_owned()])
    );
    assert_eq!((judged.to_choose(), judged.verdict()), (vec![], "undecided"));
    assert_eq!(
        case.clone().fact("year_built", "1964").answer().value("lead_kit"),
        "a (standard)"
    );
    assert_eq!(
        case.fact("year_built", "1990").answer().value("lead_kit"),
        "not asked"
    );
}

#[test]
fn an_attribute_whose_condition_is_undefined_is_open_and_breaks_its_implicit_rule() {
    let judged = case()
        .and(&table_figure("weight", "keys = [\"operation\"]"))
        .file("catalog/weight.csv", "operation,weight\nfixed,3\n")
        .and(&attribute(
            "lift",
            "a b",
            "standard = \"a\"\napplies_when = 'weight > 2'",
        ))
        .answer();
    assert_eq!(
        (judged.value("lift"), judged.broken()),
        ("open".to_owned(), vec!["lift.applies (no row)".to_owned()])
    );
}

#[test]
fn a_cell_with_a_star_matches_what_is_not_known() {
    let case = case().and(&table_rule("a", "allowed", "a.csv"));
    let star = case
        .clone()
        .file("catalog/a.csv", "operation,width\ncasement,*\n")
        .answer();
    assert_eq!((star.broken(), star.undecided()), (vec![], vec![]));
    let range = case
        .file("catalog/a.csv", "operation,width\ncasement,..36\n")
        .answer();
    assert_eq!(range.undecided(), ["a: WIDTH"]);
}

#[test]
fn a_row_is_out_where_one_column_says_so_whatever_is_not_known() {
    let case = case().and(&table_rule("a", "forbidden", "a.csv"));
    let judged = case
        .file("catalog/a.csv", "operation,width\nfixed,..36\n")
        .answer();
    assert_eq!((judged.broken(), judged.undecided()), (vec![], vec![]));
}
