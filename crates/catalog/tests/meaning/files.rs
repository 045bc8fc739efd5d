//! What files mean: shared lists, names, the day of an order, and what a revision takes for the same.

use crate::{Case, NONE, attribute, figure, item, measures, rule, table_figure};

const LIST: &str = "\n[[option_list]]\nid = \"colours\"\noptions = [{ id = \"white\" }, { id = \"grey\" }]\n";

fn colour(id: &str) -> String {
    format!("\n[[attribute]]\nid = \"{id}\"\nlabel = \"{id}\"\noptions = \"colours\"\nstandard = \"white\"\n")
}

#[test]
fn attributes_that_share_a_list_are_chosen_apart() {
    let judged = Case::new(LIST)
        .and(&colour("exterior"))
        .and(&colour("interior"))
        .pick("exterior", "grey")
        .answer();
    assert_eq!(
        (judged.value("exterior"), judged.value("interior")),
        ("grey (picked)".to_owned(), "white (standard)".to_owned())
    );
}

#[test]
fn a_shared_list_may_stand_in_an_included_file_that_is_reached_twice() {
    let case = |files: [(&str, &str); 2]| {
        let head = "format = 1\ninclude = [\"a.toml\", \"b.toml\"]\n[catalog]\nid = \"c\"\nlabel = \"C\"\nlength = { unit = \"in\" }\n";
        let mut case = Case::new("").file("catalog/catalog.toml", &format!("{head}{}", colour("exterior")));
        for (path, text) in files {
            case = case.file(path, text);
        }
        case
    };
    let including = "format = 1\ninclude = [\"list.toml\"]\n";
    let both = case([("catalog/a.toml", including), ("catalog/b.toml", including)]);
    let both = both.file("catalog/list.toml", &format!("format = 1\n{LIST}"));
    assert_eq!(both.answer().value("exterior"), "white (standard)");
}

#[test]
fn attributes_measures_facts_and_figures_share_one_namespace() {
    let fact = crate::fact("x", "house", "number");
    let all = [
        attribute("x", "a b", "standard = \"a\""),
        measures(&["x"]),
        fact,
        figure("x", "1"),
    ];
    for (position, one) in all.iter().enumerate() {
        for other in all.iter().skip(position + 1) {
            assert!(!Case::new(one).and(other).codes().is_empty(), "{one}{other}");
        }
    }
}

#[test]
fn a_rule_and_an_item_may_be_called_as_an_attribute_is() {
    let case = Case::new(&attribute("x", "x y", "standard = \"x\""))
        .and(&rule("x", "require = 'x == \"y\"'"))
        .and(&item("x", ""));
    assert_eq!(case.amount("x", "1.00").answer().broken(), ["x"]);
}

#[test]
fn options_rules_and_items_may_have_hyphens_and_what_an_expression_names_may_not() {
    let case = Case::new(&attribute("x", "a-b c", "standard = \"a-b\""))
        .and(&rule("no-a", "require = 'x != \"a-b\"'"))
        .and(&item("a-price", ""))
        .amount("a-price", "1.00");
    assert_eq!(case.answer().broken(), ["no-a"]);
    assert_eq!(
        Case::new(&attribute("x-y", "a b", "standard = \"a\"")).codes(),
        ["BAD_ID"]
    );
    assert_eq!(Case::new(&measures(&["x-y"])).codes(), ["BAD_ID"]);
    assert_eq!(Case::new(&figure("x-y", "1")).codes(), ["BAD_ID"]);
    assert_eq!(Case::new(&measures(&["X"])).codes(), ["BAD_ID"]);
    assert_eq!(Case::new(&measures(&["1x"])).codes(), ["BAD_ID"]);
}

/// Green may be ordered through 2026.
fn dated() -> Case {
    Case::new(
        "\n[[attribute]]\nid = \"exterior\"\nlabel = \"E\"\nstandard = \"green\"\n\
         options = [{ id = \"green\", offered_until = 2026-12-31 }]\n",
    )
}

#[test]
fn an_order_is_judged_on_the_day_that_it_states() {
    assert_eq!(dated().on("2026-06-01").answer().broken(), NONE);
    assert_eq!(dated().on("2027-06-01").answer().broken(), ["exterior.offered"]);
}

#[test]
fn a_day_given_by_the_caller_overrides_that_of_the_order() {
    assert_eq!(
        dated()
            .on("2026-06-01")
            .date_of_caller("2027-06-01")
            .answer()
            .broken(),
        ["exterior.offered"]
    );
    assert_eq!(
        dated()
            .on("2027-06-01")
            .date_of_caller("2026-06-01")
            .answer()
            .broken(),
        NONE
    );
}

#[test]
fn an_order_without_a_day_is_an_error_and_never_judged_today() {
    assert_eq!(dated().undated().codes(), ["MISSING_KEY"]);
    assert_eq!(
        dated().undated().date_of_caller("2027-06-01").answer().broken(),
        ["exterior.offered"]
    );
}

#[test]
fn the_options_of_an_attribute_are_asked_in_an_order_and_the_first_is_not_the_standard() {
    let judged = Case::new(&attribute("x", "a b", "standard = \"b\"")).answer();
    assert_eq!(judged.value("x"), "b (standard)");
}

fn revision(case: &Case) -> String {
    case.answer().catalog().revision().short()
}

fn small() -> Case {
    Case::new(&attribute("x", "a b", "standard = \"a\""))
        .and(&attribute("y", "a b", "standard = \"a\""))
        .and(&rule("r", "require = 'x == \"a\"'"))
        .and(&rule("s", "require = 'y == \"a\" && x != \"b\"'"))
}

#[test]
fn white_space_comments_and_the_order_of_keys_leave_the_revision_as_it_is() {
    let other = Case::new(
        "# the same\n[[attribute]]\nstandard = \"a\"   # standard first\nid = \"x\"\noptions = [\n  { id = \"a\" },\n\
         { id = \"b\" },\n]\nlabel = \"X\"\n",
    )
    .and(&attribute("y", "a b", "standard = \"a\""))
    .and("[[rule]]\nrequire = ' ( x  ==\"a\" ) '\nmessage = \"m\"\nid = \"r\"\n")
    .and(&rule("s", "require = 'y == \"a\" && x != \"b\"'"));
    assert_eq!(revision(&other), revision(&small()));
}

#[test]
fn the_order_of_rules_leaves_the_revision_as_it_is_and_that_of_attributes_and_options_does_not() {
    let rules = Case::new(&attribute("x", "a b", "standard = \"a\""))
        .and(&attribute("y", "a b", "standard = \"a\""))
        .and(&rule("s", "require = 'y == \"a\" && x != \"b\"'"))
        .and(&rule("r", "require = 'x == \"a\"'"));
    assert_eq!(revision(&rules), revision(&small()));
    let attributes = |first: &str, second: &str| {
        Case::new(&attribute(first, "a b", "standard = \"a\"")).and(&attribute(
            second,
            "a b",
            "standard = \"a\"",
        ))
    };
    assert_ne!(revision(&attributes("x", "y")), revision(&attributes("y", "x")));
    let options = |options: &str| Case::new(&attribute("x", options, "standard = \"a\""));
    assert_ne!(revision(&options("a b")), revision(&options("b a")));
}

#[test]
fn the_order_of_rows_counts_under_first_and_nowhere_else() {
    let table = |row_match: &str, rows: &str| {
        let case = Case::new(&attribute("x", "a b", "standard = \"a\""));
        let case = case.and(&table_figure("f", &format!("match = \"{row_match}\"")));
        revision(&case.file("catalog/f.csv", &format!("x,f\n{rows}")))
    };
    for row_match in ["only", "least", "greatest"] {
        assert_eq!(
            table(row_match, "a,1\nb,2\n"),
            table(row_match, "b,2\na,1\n"),
            "{row_match}"
        );
    }
    assert_ne!(table("first", "a,1\nb,2\n"), table("first", "b,2\na,1\n"));
}

#[test]
fn numbers_count_by_value_and_expressions_by_tree() {
    let with = |require: &str| {
        revision(&Case::new(&measures(&["width"])).and(&rule("r", &format!("require = '{require}'"))))
    };
    assert_eq!(with(r#"width > "35 1/2""#), with(r#"width > "35.50 in""#));
    assert_eq!(with("1.50 > 1"), with("1.5 > 1.0"));
    assert_ne!(
        with(r#"width > "35""#),
        with(r#"!(width <= "35")"#),
        "the same meaning, another tree"
    );
}

#[test]
fn labels_messages_and_examples_count_in_the_revision() {
    let label = Case::new(&attribute("x", "a b", "standard = \"a\"").replace("\"X\"", "\"Other\""));
    assert_ne!(
        revision(&label),
        revision(&Case::new(&attribute("x", "a b", "standard = \"a\"")))
    );
    let with_example = small().and("\n[[example]]\nid = \"e\"\ndate = 2026-11-25\n");
    assert_ne!(revision(&with_example), revision(&small()));
    let message = small().and("\n[[rule]]\nid = \"t\"\nmessage = \"m\"\nrequire = 'true'\n");
    let other_message = small().and("\n[[rule]]\nid = \"t\"\nmessage = \"n\"\nrequire = 'true'\n");
    assert_ne!(revision(&message), revision(&other_message));
}
