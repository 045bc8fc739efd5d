//! What a rule over a room reads is one for the whole room: `sleeping_room`, `year_built` and, in its message, `ceiling`.

use super::*;

const YES: &str = "sleeping_room = true";
const NO: &str = "sleeping_room = false";
const UNKNOWN: &str = "sleeping_room = \"unknown\"";

/// A house, a floor, a room and a face with these facts, and two openings in that room, the first on that face.
fn room(house: &str, floor: &str, room: &str, face: &str, openings: [&str; 2]) -> String {
    let [first, second] = openings;
    format!(
        "[house]\nfacts = {{ {house} }}\n[[floor]]\nid = \"upper\"\nfacts = {{ {floor} }}\n\
         [[room]]\nid = \"bedroom\"\nfloor = \"upper\"\nfacts = {{ {room} }}\n\
         [[face]]\nid = \"front\"\nfacts = {{ {face} }}\n\
         [[opening]]\ntag = \"B1\"\nroom = \"bedroom\"\nface = \"front\"\nfacts = {{ {first} }}\n{UNIT}\
         [[opening]]\ntag = \"B2\"\nroom = \"bedroom\"\nfacts = {{ {second} }}\n{UNIT}"
    )
}

fn holds(text: &str) {
    check(text, expect!["no findings\n"]);
}

#[test]
fn an_opening_that_says_otherwise_than_its_room_is_an_error_that_names_both() {
    check(
        &room("", "", YES, "", [NO, ""]),
        expect![[r#"
        27 "false" ROOM_FACT_DIFFERS fact `sleeping_room` is `false` by opening `B1` and `true` by room `bedroom`; room rule `escape` reads it for the whole room
          19 "true": room `bedroom` says `true`
          help: correct one of the two, leave `sleeping_room` out here, or write `unknown` while nobody knows; an opening of another room names that room
    "#]],
    );
}

#[test]
fn so_is_one_that_says_otherwise_than_the_floor_or_the_house() {
    let (old, new) = ("year_built = 1964", "year_built = 1990");
    let (low, high) = ("ceiling = \"84\"", "ceiling = \"96\"");
    check(
        &room(old, low, "", "", [new, high]),
        expect![[r#"
        27 "1990" ROOM_FACT_DIFFERS fact `year_built` is `1990` by opening `B1` and `1964` by the house; room rule `escape` reads it for the whole room
          12 "1964": the house says `1964`
          help: correct one of the two, leave `year_built` out here, or write `unknown` while nobody knows; an opening of another room names that room
        33 "\"96\"" ROOM_FACT_DIFFERS fact `ceiling` is `96` by opening `B2` and `84` by floor `upper`; room rule `escape` reads it for the whole room
          15 "\"84\"": floor `upper` says `84`
          help: correct one of the two, leave `ceiling` out here, or write `unknown` while nobody knows; an opening of another room names that room
    "#]],
    );
}

#[test]
fn so_is_one_whose_face_says_otherwise_than_the_floor() {
    check(
        &room("", "year_built = 1964", "", "year_built = 1990", ["", ""]),
        expect![[r#"
            22 "1990" ROOM_FACT_DIFFERS fact `year_built` is `1990` by face `front` of opening `B1` and `1964` by floor `upper`; room rule `escape` reads it for the whole room
              15 "1964": floor `upper` says `1964`
              help: correct one of the two, leave `year_built` out here, or write `unknown` while nobody knows; an opening of another room names that room
        "#]],
    );
}

#[test]
fn where_the_room_says_nothing_or_does_not_know_its_openings_must_agree() {
    check(
        &room("", "", "", "", [YES, NO]),
        expect![[r#"
        33 "false" ROOM_FACT_DIFFERS fact `sleeping_room` is `false` by opening `B2` and `true` by opening `B1`; room rule `escape` reads it for the whole room
          27 "true": opening `B1` says `true`
          help: correct one of the two, leave `sleeping_room` out here, or write `unknown` while nobody knows; an opening of another room names that room
    "#]],
    );
    check(
        &room("", "", UNKNOWN, "", [YES, NO]),
        expect![[r#"
        33 "false" ROOM_FACT_DIFFERS fact `sleeping_room` is `false` by opening `B2` and `true` by opening `B1`; room rule `escape` reads it for the whole room
          27 "true": opening `B1` says `true`
          help: correct one of the two, leave `sleeping_room` out here, or write `unknown` while nobody knows; an opening of another room names that room
    "#]],
    );
    holds(&room("", "", "", "", [YES, YES]));
}

#[test]
fn unknown_contradicts_nothing() {
    holds(&room("", "", YES, "", [UNKNOWN, ""]));
    holds(&room("", "", UNKNOWN, "", [YES, ""]));
    holds(&room("", "", "", "", [UNKNOWN, NO]));
}

#[test]
fn an_opening_may_say_the_same_and_of_what_no_such_rule_reads_what_it_likes() {
    holds(&room("", "", YES, "", [YES, ""]));
    let text = room("", "ceiling = \"96\"", "", "", ["ceiling = \"8 ft\"", ""]);
    holds(&text);
    holds(&room(
        "cladding = \"brick\"",
        "",
        "",
        "",
        ["cladding = \"wood\"", ""],
    ));
}

#[test]
fn a_room_and_a_face_that_disagree_are_reported_once() {
    let text = room("", "", "year_built = 1964", "year_built = 1990", ["", ""]);
    let lines = lines_of(&read_text(&format!("{HEAD}{text}")));
    assert_eq!(lines.matches("FACTS_DISAGREE").count(), 1, "{lines}");
    assert!(!lines.contains("ROOM_FACT_DIFFERS"), "{lines}");
}

#[test]
fn an_opening_in_no_room_or_in_another_says_what_it_likes() {
    let openings = format!(
        "[house]\nfacts = {{ year_built = 1964 }}\n\
         [[room]]\nid = \"bedroom\"\nfacts = {{ {YES} }}\n[[room]]\nid = \"hall\"\n\
         [[opening]]\ntag = \"B1\"\nfacts = {{ {NO}, year_built = 1990 }}\n{UNIT}\
         [[opening]]\ntag = \"B2\"\nroom = \"hall\"\nfacts = {{ {NO} }}\n{UNIT}"
    );
    holds(&openings);
}

#[test]
fn a_catalog_without_such_a_rule_asks_nothing_of_the_kind() {
    check_whole(
        &format!(
            "{}[house]\nfacts = {{ ceiling = \"96\" }}\n[[room]]\nid = \"hall\"\n\
             [[opening]]\ntag = \"B1\"\nroom = \"hall\"\nfacts = {{ ceiling = \"90\" }}\n\
             [[opening.unit]]\ncatalog = \"sliding\"\n",
            HEAD.replace("hinged-book", "sliding-book")
                .replace("hinged", "sliding")
                .replace("policy = \"library/policy\"\n", "")
        ),
        expect![[r#"
            11 "ceiling" FACT_SCOPE fact `ceiling` is set at the house; the highest place for it is a floor
              help: set it at a floor, a room, a face or an opening
        "#]],
    );
}
