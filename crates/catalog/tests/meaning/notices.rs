//! Notices: carried for certain, perhaps, or not at all.

use crate::{Case, NONE, attribute, fact, table_figure};

const LEAD: &str =
    "\n[[notice]]\nid = \"lead-safe\"\nwhen = 'year_built < 1978'\ntext = \"Built in {year_built}.\"\n";

fn case() -> Case {
    Case::new(&fact("year_built", "house", "number")).and(LEAD)
}

#[test]
fn a_notice_is_carried_where_its_condition_is_true_and_not_where_it_is_false() {
    assert_eq!(
        case().fact("year_built", "1964").answer().notices(),
        ["lead-safe"]
    );
    assert_eq!(case().fact("year_built", "1978").answer().notices(), NONE);
}

#[test]
fn a_notice_is_shown_as_well_where_its_condition_is_unknown_and_leaves_the_unit_holding() {
    let judged = case().answer();
    assert_eq!(
        (judged.notices(), judged.verdict()),
        (vec!["perhaps lead-safe: YEAR_BUILT".to_owned()], "holds")
    );
}

#[test]
fn a_notice_without_a_condition_is_always_carried() {
    let judged = Case::new("\n[[notice]]\nid = \"care\"\ntext = \"t\"\n").answer();
    assert_eq!(
        (judged.notices(), judged.verdict()),
        (vec!["care".to_owned()], "holds")
    );
}

#[test]
fn a_notice_whose_condition_is_undefined_is_shown() {
    let judged = Case::new(&attribute("glass", "double triple", "standard = \"triple\""))
        .and(&table_figure("weight", ""))
        .file("catalog/weight.csv", "glass,weight\ndouble,3\n")
        .and("\n[[notice]]\nid = \"heavy\"\nwhen = 'weight > 5'\ntext = \"t\"\n")
        .answer();
    assert_eq!(judged.notices(), ["heavy"]);
}
