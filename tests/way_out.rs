//! What is said where picks do not go together: pins that stand in the way, the nearest unit that holds, rules that other
//! fill-ins mend, and that nothing still to choose would hold.

#![expect(
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "these are tests"
)]

mod program;

use program::{block, changed_house as house, check_says, copy_folder, house_with_width, json, order, run};
use serde_json::{Value, json as value};

/// One opening of a quote for a program.
fn opening(path: &str, tag: &str) -> Value {
    let answer = json(&["quote", path, "--format", "json"]);
    let openings = answer["openings"].as_array().expect("openings");
    let found = openings.iter().find(|one| one["tag"] == tag);
    found.unwrap_or_else(|| panic!("no opening {tag}")).clone()
}

/// The options of one opening for a program.
fn options(path: &str, tag: &str) -> Value {
    json(&["options", path, "--opening", tag, "--format", "json"])["units"][0].clone()
}

/// The ids of the rules that bind and are broken.
fn broken(unit: &Value) -> Vec<&str> {
    let rules = unit["rules"].as_array().expect("rules").iter();
    let broken = rules.filter(|rule| rule["standing"] == "binds" && rule["state"] != "undecided");
    broken.filter_map(|rule| rule["id"].as_str()).collect()
}

/// Attribute, from and to of every changed pick.
fn changed(nearest: &Value) -> Vec<[Option<&str>; 3]> {
    let changed = nearest["changed"].as_array().expect("changed picks").iter();
    let ids = changed.map(|one| ["attribute", "from", "to"].map(|key| one[key]["id"].as_str()));
    ids.collect()
}

/// A fixed unit with a full screen: both pinned, nothing holds; without the pins one change is enough.
#[test]
fn pins_that_stand_in_the_way_are_named_and_so_is_what_would_do_without_them() {
    let pins = "pins = [\"operation\", \"screen\"]\npicks = [";
    let (_folder, path) = house("D1", "picks = [", pins);
    let says = [
        "Nothing holds with what is pinned: Operation, Insect screen.",
        "Without the pins at least one of your choices must change.",
        "The nearest unit that holds has Insect screen: No screen instead of",
    ];
    let quote = run(&["quote", &path]).out;
    check_says(block(&quote, "D1"), &says);
    check_says(
        block(&quote, "D1"),
        &["Once they are loosened, `astragal options`"],
    );
    let shown = run(&["options", &path, "--opening", "D1"]);
    check_says(&shown.out, &says);
    assert_eq!(shown.code, Some(4));
    for text in [block(&quote, "D1"), &shown.out] {
        assert!(!text.contains("whatever is"), "{text}");
    }
    let completion = &opening(&path, "D1")["unit"]["completion"];
    let unit = options(&path, "D1");
    assert_eq!(
        (&completion["impossible"], &completion["changes_without_pins"]),
        (&value!(true), &value!(1))
    );
    assert_eq!(completion["least_changes"], Value::Null);
    assert_eq!(
        (&unit["selection_state"], &unit["changes_without_pins"]),
        (&value!("impossible"), &value!(1))
    );
    assert_eq!(unit["selection_changes"], Value::Null);
    for nearest in [&completion["nearest"], &unit["nearest"]] {
        let screen = [Some("screen"), Some("full"), Some("none")];
        assert_eq!(changed(nearest), [screen]);
    }
}

/// Without pins nothing speaks of pins; a unit that no pick can help is said to be impossible whatever is picked.
#[test]
fn where_pins_are_not_what_stands_in_the_way_nothing_is_said_of_them() {
    let (_folder, path) = house(
        "D1",
        "opening_width = { size = \"30 1/2\"",
        "opening_width = { size = \"599\"",
    );
    let (_pinned, pinned) = house("D1", "picks = [", "pins = [\"operation\"]\npicks = [");
    for (path, says) in [
        (&path, "Nothing holds for this opening, whatever is chosen."),
        (&pinned, "at least one of"),
    ] {
        let quote = run(&["quote", path]).out;
        check_says(block(&quote, "D1"), &[says]);
        let shown = run(&["options", path, "--opening", "D1"]).out;
        check_says(&shown, &[says]);
        for text in [block(&quote, "D1"), &shown] {
            assert!(!text.contains("pinned") && !text.contains("pins"), "{text}");
        }
        let unit = options(path, "D1");
        assert_eq!(unit["changes_without_pins"], Value::Null);
    }
    assert_eq!(options(&path, "D1")["selection_state"], "impossible");
    assert_eq!(options(&pinned, "D1")["selection_state"], "conflicts");
}

/// 599 inches are too wide for every unit; the rules that say so stand there.
#[test]
fn where_nothing_holds_the_options_say_which_rules_are_broken() {
    let (_folder, path) = house_with_width("B1", "599", "45 9/16");
    let unit = options(&path, "B1");
    let rules = unit["broken"].as_array().expect("rules");
    assert!(!rules.is_empty());
    let shown = run(&["options", &path, "--opening", "B1"]).out;
    for rule in rules {
        let id = rule["id"].as_str().expect("an id");
        assert!(shown.contains(&format!("({id})")), "{id}: {shown}");
    }
    let house = "examples/corner-house/order.toml";
    assert_eq!(options(house, "B1")["broken"], value!([]));
    assert_eq!(options(house, "D1")["broken"][0]["id"], "screen-by-operation");
}

/// The ring crank is no longer offered, and the standard hinge opens too little: another hinge mends that, no crank does.
#[test]
fn rules_that_other_fill_ins_mend_are_not_shown_broken_beside_the_pick_that_must_change() {
    let ring = "picks = [{ attribute = \"handle\", option = \"ring\" },";
    let (_folder, path) = house("B1", "picks = [", ring);
    let bedroom = opening(&path, "B1");
    let unit = &bedroom["unit"];
    assert_eq!(broken(unit), ["handle.offered"]);
    let completion = &unit["completion"];
    assert_eq!(completion["because"][0]["rule"], "escape-area");
    assert_eq!(completion["least_changes"], 1);
    assert_eq!(
        changed(&completion["nearest"])[0][..2],
        [Some("handle"), Some("ring")]
    );
    let choices = unit["choices"].as_array().expect("choices");
    let of = |id: &str| choices.iter().find(|one| one["attribute"]["id"] == id);
    let (hinge, handle) = (
        of("hinge_type").expect("a hinge"),
        of("handle").expect("a handle"),
    );
    assert_eq!(
        (&hinge["option"]["id"], &hinge["origin"]),
        (&value!("clears-opening"), &value!("completed"))
    );
    assert_eq!(
        (&handle["option"]["id"], &handle["origin"]),
        (&value!("ring"), &value!("picked"))
    );
    let text = run(&["quote", &path]).out;
    check_says(
        block(&text, "B1"),
        &[
            "does not hold",
            "filled in Hinge: Hinge that clears the opening (the standard is Ordinary hinge)",
            "With standards alone this would not hold either:",
            "(escape-area)",
            "Does not hold",
            "Rule handle.offered",
            "at least one of your choices must change",
            "The nearest unit that holds has Handle:",
        ],
    );
}

/// Pine inside does not go with grey outside; the standard screen gives way to the fixed unit all the same.
#[test]
fn the_nearest_unit_names_as_many_picks_as_must_change() {
    let path = order("broken");
    for (tag, filled) in [("L5", value!([])), ("L6", value!(["no-screen-on-fixed"]))] {
        let found = opening(&path, tag);
        assert_eq!(broken(&found["unit"]), ["colour-pairs"], "{tag}");
        let completion = &found["unit"]["completion"];
        let because = completion["because"].as_array().expect("rules").iter();
        let because: Vec<&Value> = because.map(|one| &one["rule"]).collect();
        assert_eq!(value!(because), filled, "{tag}");
        assert_eq!(changed(&completion["nearest"]).len(), 1, "{tag}");
        assert_eq!(completion["nearest"]["depends"], false, "{tag}");
    }
}

/// A crank that is no longer offered and a finish that the dealer hides: no single option would do, and the quote promises none.
#[test]
fn where_two_picks_must_change_both_are_named() {
    let retired = "\"handle\", option = \"ring\" },\n  { attribute = \"hardware_finish\", option = \"polished-brass\" }";
    let finish = "\"hardware_finish\", option = \"satin-nickel\" }";
    let (_folder, path) = house("B1", finish, retired);
    let completion = opening(&path, "B1")["unit"]["completion"].clone();
    assert_eq!(completion["least_changes"], 2);
    let picks = changed(&completion["nearest"]);
    let picks: Vec<_> = picks
        .iter()
        .map(|[attribute, from, _]| [*attribute, *from])
        .collect();
    let expected = [["handle", "ring"], ["hardware_finish", "polished-brass"]];
    assert_eq!(picks, expected.map(|pair| pair.map(Some)));
    let text = run(&["quote", &path]).out;
    check_says(
        block(&text, "B1"),
        &[
            "at least 2 of your choices must change",
            "instead of Ring crank; Hardware finish:",
            "shows how many choices each option would change",
        ],
    );
}

/// Nobody asked whether someone sleeps in the basement, and the finish is hidden: the way out waits for that.
#[test]
fn a_nearest_unit_that_waits_for_something_says_so() {
    let finish = "picks = [{ attribute = \"hardware_finish\", option = \"polished-brass\" },";
    let (_folder, path) = house("C1", "picks = [", finish);
    let found = opening(&path, "C1");
    assert_eq!(broken(&found["unit"]), ["hardware_finish.offered"]);
    assert_eq!(found["unit"]["completion"]["nearest"]["depends"], true);
    let text = run(&["quote", &path]).out;
    let says = "As far as is known, the nearest unit that may hold has Hardware finish:";
    check_says(block(&text, "C1"), &[says]);
}

/// Changing what the nearest unit changes is enough: the quote then holds.
#[test]
fn the_picks_of_the_nearest_unit_hold() {
    let house_path = "examples/corner-house/order.toml";
    let completion = opening(house_path, "D1")["unit"]["completion"].clone();
    let nearest = changed(&completion["nearest"]);
    let [[Some(attribute), Some(from), Some(to)]] = nearest[..] else {
        panic!("one pick changes: {nearest:?}");
    };
    let pick = |option: &str| format!("attribute = \"{attribute}\", option = \"{option}\"");
    let (_folder, path) = house("D1", &pick(from), &pick(to));
    assert_eq!(opening(&path, "D1")["verdict"], "holds");
}

/// No side of the hinge would do, and the operation is pinned or not: nothing is broken yet, and nothing can hold.
#[test]
fn what_nothing_still_to_choose_would_mend_does_not_hold_and_invites_to_choose_nothing() {
    let folder = tempfile::tempdir().expect("a folder");
    copy_folder("tests/fixtures", folder.path());
    let catalog = folder.path().join("library/small/catalog.toml");
    let mut text = std::fs::read_to_string(&catalog).expect("the catalog");
    text.push_str(
        "\n[[rule]]\nid = \"no-side\"\nauthority = \"plant\"\nwhen = 'operation == \"casement\"'\n\
         require = 'hinge_side != \"left\" && hinge_side != \"right\"'\nmessage = \"No side.\"\n",
    );
    std::fs::write(&catalog, text).expect("the catalog with one rule more");
    let path = folder.path().join("orders/broken.toml");
    let text = std::fs::read_to_string(&path).expect("the order");
    let fixed = "picks = [{ attribute = \"operation\", option = \"fixed\" }]";
    let casement = fixed.replace("fixed", "casement");
    let pinned = format!("{casement}\npins = [\"operation\"]");
    let path_text = path.to_str().expect("a path");
    for (unit, says) in [
        (
            &casement,
            "Whatever is filled in, at least one of your choices must change.",
        ),
        (&pinned, "Nothing holds with what is pinned: Operation."),
    ] {
        std::fs::write(&path, text.replacen(fixed, unit, 1)).expect("the order");
        let ran = run(&["quote", path_text]);
        let block = block(&ran.out, "L1");
        check_says(
            block,
            &[
                "Small windows does not hold, whatever is still chosen",
                "Does not hold, whatever is still chosen",
                says,
                "The nearest unit that holds has Operation: Fixed instead of Casement.",
            ],
        );
        assert!(!block.contains("Still to choose"), "{block}");
        let answer = json(&["quote", path_text, "--format", "json"]);
        assert_eq!(answer["openings"][0]["verdict"], "broken");
        assert_eq!(broken(&answer["openings"][0]["unit"]), [""; 0]);
        for tags in [
            &answer["summary"]["broken"],
            &answer["totals"]["counted_though_broken"],
        ] {
            assert!(tags.as_array().expect("tags").contains(&value!("L1")), "{tags}");
        }
        let state = &options(path_text, "L1")["selection_state"];
        assert!(["conflicts", "impossible"].contains(&state.as_str().expect("a word")));
    }
}
