//! Parts: attributes, rules, figures and items that stand once a sash.

use crate::{Case, NONE, attribute, item, rule};

/// Three sashes, in this order: `transom` when asked for, `upper` and `lower` in hung windows.
fn case() -> Case {
    Case::new(&attribute("operation", "hung fixed", "standard = \"hung\""))
        .and(&attribute("transom_wanted", "no yes", "standard = \"no\""))
        .and("\n[[part]]\nid = \"transom\"\nkind = \"sash\"\nlabel = \"transom\"\nwhen = 'transom_wanted == \"yes\"'\n")
        .and("\n[[part]]\nid = \"upper\"\nkind = \"sash\"\nlabel = \"upper\"\nwhen = 'operation == \"hung\"'\n")
        .and("\n[[part]]\nid = \"lower\"\nkind = \"sash\"\nlabel = \"lower\"\nwhen = 'operation == \"hung\"'\n")
        .and(&attribute("glazing", "clear obscure", "per = \"sash\"\nstandard = \"clear\""))
}

#[test]
fn an_attribute_per_part_applies_where_its_part_exists() {
    let judged = case().answer();
    assert_eq!(judged.value("glazing.upper"), "clear (standard)");
    assert_eq!(judged.value("glazing.transom"), "not asked");
    let fixed = case()
        .pick("operation", "fixed")
        .pick("transom_wanted", "yes")
        .answer();
    assert_eq!(
        (fixed.value("glazing.upper"), fixed.value("glazing.transom")),
        ("not asked".to_owned(), "clear (standard)".to_owned())
    );
}

#[test]
fn a_pick_for_a_part_that_does_not_exist_breaks_the_implicit_rule() {
    let judged = case()
        .pick("operation", "fixed")
        .pick("glazing.upper", "obscure")
        .answer();
    assert_eq!(judged.broken(), ["glazing.upper.applies"]);
}

#[test]
fn inside_a_rule_per_part_the_bare_name_is_this_part() {
    let case = case().and(&rule("a", "per = \"sash\"\nrequire = 'glazing == \"clear\"'"));
    let judged = case.pick("glazing.lower", "obscure").answer();
    assert_eq!(judged.broken(), ["a@lower"]);
}

#[test]
fn a_rule_per_part_is_not_asked_of_a_part_that_does_not_exist() {
    let case = case().and(&rule("a", "per = \"sash\"\nrequire = 'false'"));
    assert_eq!(case.answer().broken(), ["a@upper", "a@lower"]);
    assert_eq!(case.pick("operation", "fixed").answer().broken(), NONE);
}

#[test]
fn elsewhere_the_part_is_named() {
    let case = case().and(&rule("a", "require = 'glazing.lower == \"clear\"'"));
    assert_eq!(
        case.clone().pick("glazing.lower", "obscure").answer().broken(),
        ["a"]
    );
    assert_eq!(
        case.pick("glazing.upper", "obscure")
            .pick("glazing.lower", "clear")
            .answer()
            .broken(),
        NONE
    );
}

#[test]
fn a_bare_name_elsewhere_is_a_finding() {
    assert_eq!(
        case().and(&rule("a", "require = 'glazing == \"clear\"'")).codes(),
        ["PART_NOT_SAID"]
    );
    assert_eq!(case().pick("glazing", "clear").codes(), ["PART_NOT_SAID"]);
}

#[test]
fn any_all_and_sum_go_over_the_parts_that_exist() {
    let conditions = [
        "any(glazing == \"obscure\")",
        "all(glazing == \"obscure\")",
        "any(glazing == \"clear\")",
    ];
    let upper = case()
        .pick("glazing.upper", "obscure")
        .pick("glazing.lower", "clear");
    assert_eq!(upper.truths(&conditions), ["true", "false", "true"]);
    let both = case()
        .pick("glazing.upper", "obscure")
        .pick("glazing.lower", "obscure");
    assert_eq!(
        both.truths(&conditions),
        ["true", "true", "false"],
        "the transom is not there to be clear"
    );
    let count = ["sum(glazing == \"obscure\" ? 1 : 10)"];
    assert_eq!(upper.values(&count), ["11"]);
    assert_eq!(both.values(&count), ["2"]);
    assert_eq!(
        both.pick("transom_wanted", "yes")
            .pick("glazing.transom", "clear")
            .values(&count),
        ["12"]
    );
}

#[test]
fn over_no_part_any_is_false_all_is_true_and_the_sum_is_nothing() {
    let none = case().pick("operation", "fixed");
    assert_eq!(
        none.truths(&["any(glazing == \"clear\")", "all(glazing == \"clear\")"]),
        ["false", "true"]
    );
    assert_eq!(none.values(&["sum(glazing == \"clear\" ? 1 : 10)"]), ["0"]);
}

#[test]
fn the_standard_of_a_later_part_is_what_stands_at_the_first_that_exists() {
    let judged = case().pick("glazing.upper", "obscure").answer();
    assert_eq!(judged.value("glazing.lower"), "obscure (standard)");
    assert_eq!(
        case()
            .pick("glazing.lower", "obscure")
            .answer()
            .value("glazing.upper"),
        "clear (standard)"
    );
}

#[test]
fn the_first_part_is_the_first_in_the_file_that_exists_and_not_the_one_just_before() {
    let with_transom = case().pick("transom_wanted", "yes");
    let judged = with_transom
        .pick("glazing.transom", "obscure")
        .pick("glazing.upper", "clear")
        .answer();
    assert_eq!(judged.value("glazing.lower"), "obscure (standard)");
}

#[test]
fn a_later_part_stays_open_while_the_first_is_to_choose_and_only_the_first_is_asked() {
    let case = case().and(&attribute(
        "tint",
        "none bronze",
        "per = \"sash\"\nstandard = \"ask\"",
    ));
    let judged = case.answer();
    assert_eq!(
        (judged.value("tint.lower"), judged.to_choose()),
        ("open".to_owned(), vec!["tint.upper".to_owned()])
    );
    assert_eq!(
        case.pick("tint.upper", "bronze").answer().value("tint.lower"),
        "bronze (standard)"
    );
}

/// A sash that is there when the year says so.
fn uncertain() -> Case {
    Case::new(&crate::fact("year", "house", "number"))
        .and("\n[[part]]\nid = \"old\"\nkind = \"sash\"\nlabel = \"old\"\nwhen = 'year < 1978'\n")
        .and("\n[[part]]\nid = \"new\"\nkind = \"sash\"\nlabel = \"new\"\n")
        .and(&attribute(
            "glazing",
            "clear obscure",
            "per = \"sash\"\nstandard = \"clear\"",
        ))
}

#[test]
fn while_it_is_unknown_which_part_is_the_first_a_later_one_is_open() {
    let judged = uncertain().answer();
    assert_eq!(
        (judged.value("glazing.old"), judged.value("glazing.new")),
        ("open".to_owned(), "open".to_owned())
    );
    assert_eq!(judged.open(), ["glazing.old: YEAR", "glazing.new: YEAR"]);
    assert_eq!(
        uncertain().fact("year", "1990").answer().value("glazing.new"),
        "clear (standard)"
    );
}

#[test]
fn a_part_of_which_it_is_unknown_whether_it_exists_leaves_open_only_what_it_would_decide() {
    let picked = uncertain().pick("glazing.new", "obscure");
    let conditions = [
        "any(glazing == \"obscure\")",
        "all(glazing == \"obscure\")",
        "all(glazing == \"clear\")",
    ];
    assert_eq!(picked.truths(&conditions), ["true", "unknown: YEAR", "false"]);
    assert_eq!(
        picked.values(&["sum(glazing == \"obscure\" ? 1 : 10)"]),
        ["unknown: YEAR"]
    );
}

#[test]
fn a_later_part_that_differs_from_the_first_is_an_upcharge_and_what_the_first_asks_is_not() {
    let case = case()
        .and(&attribute(
            "tint",
            "none bronze",
            "per = \"sash\"\nstandard = \"ask\"",
        ))
        .and(&item("tinted", "per = \"sash\"\nwhen = 'tint == \"bronze\"'"))
        .amount("tinted", "9.00");
    let first = case.clone().pick("tint.upper", "bronze").answer();
    assert_eq!(first.item("tinted"), ["9.00 standard", "9.00 standard"]);
    let later = case
        .pick("tint.upper", "none")
        .pick("tint.lower", "bronze")
        .answer();
    assert_eq!(later.item("tinted"), ["9.00 upcharge"]);
}

#[test]
fn items_per_part_round_each_part() {
    let case = case()
        .and(&item("strip", "per = \"sash\"\nquantity = '0.5'"))
        .amount("strip", "0.25");
    let judged = case.answer();
    assert_eq!(judged.item("strip"), ["0.13 standard", "0.13 standard"]);
    assert_eq!(judged.total(), "0.26", "0.25 if the sum were rounded");
}

#[test]
fn an_item_stands_once_a_unit_unless_it_says_per() {
    let judged = case().and(&item("strip", "")).amount("strip", "1.00").answer();
    assert_eq!(judged.item("strip"), ["1.00 standard"]);
}

#[test]
fn inside_an_item_per_part_the_bare_name_is_this_part() {
    let case = case()
        .and(&item(
            "obscured",
            "per = \"sash\"\nwhen = 'glazing == \"obscure\"'",
        ))
        .amount("obscured", "8.00")
        .and(&item("glass", "per = \"sash\"\nby = [\"glazing\"]"))
        .sheet("glass", "glazing,amount\nclear,1.00\nobscure,2.00\n");
    let judged = case.pick("glazing.lower", "obscure").answer();
    assert_eq!(judged.item("obscured"), ["8.00 upcharge"]);
    assert_eq!(judged.item("glass"), ["1.00 standard", "2.00 upcharge"]);
}

#[test]
fn inside_a_figure_per_part_the_bare_name_is_this_part() {
    let figure = "\n[[figure]]\nid = \"layers\"\nlabel = \"layers\"\nper = \"sash\"\n\
                  formula = 'glazing == \"obscure\" ? 2 : 1'\n";
    let judged = case().and(figure).pick("glazing.lower", "obscure").answer();
    assert_eq!(
        (judged.figure("layers.upper"), judged.figure("layers.lower")),
        ("1".to_owned(), "2".to_owned())
    );
}

#[test]
fn a_percentage_per_part_is_of_the_line_of_this_part_alone() {
    let share = |keys: &str| {
        case()
            .and(&item("glass", "per = \"sash\""))
            .and(&item("share", keys))
            .amount("glass", "100.00")
            .amount("share", "10 %")
            .answer()
            .item("share")
    };
    assert_eq!(
        share("per = \"sash\"\npercent_of = [\"glass\"]"),
        ["10.00 standard", "10.00 standard"]
    );
    assert_eq!(
        share("percent_of = [\"glass\"]"),
        ["20.00 standard"],
        "of the whole unit"
    );
}
