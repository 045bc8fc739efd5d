//! Each sentence of MEANING, "Facts".

use super::*;

/// A house with a floor, a room on it, a face, and an opening in that room on that face; facts in that order.
fn house(house: &str, floor: &str, room: &str, face: &str, opening: &str) -> String {
    format!(
        "[house]\nfacts = {{ {house} }}\n[[floor]]\nid = \"ground\"\nfacts = {{ {floor} }}\n\
         [[room]]\nid = \"kitchen\"\nfloor = \"ground\"\nfacts = {{ {room} }}\n\
         [[face]]\nid = \"front\"\nfacts = {{ {face} }}\n\
         [[opening]]\ntag = \"K1\"\nroom = \"kitchen\"\nface = \"front\"\nfacts = {{ {opening} }}\n{UNIT}"
    )
}

const H: &str = "cladding = \"brick\"";
const W: &str = "cladding = \"wood\"";
const U: &str = "cladding = \"unknown\"";

#[test]
fn a_fact_of_the_house_is_inherited_by_an_opening() {
    assert_eq!(fact_of(&house(H, "", "", "", ""), "cladding"), "Option(`brick`)");
}

#[test]
fn a_fact_that_nobody_sets_is_unknown() {
    assert_eq!(fact_of(&house("", "", "", "", ""), "cladding"), "unknown");
}

#[test]
fn the_floor_wins_over_the_house() {
    assert_eq!(fact_of(&house(H, W, "", "", ""), "cladding"), "Option(`wood`)");
}

#[test]
fn the_room_wins_over_the_floor() {
    assert_eq!(fact_of(&house("", H, W, "", ""), "cladding"), "Option(`wood`)");
}

#[test]
fn the_face_wins_over_the_floor_and_the_house() {
    assert_eq!(fact_of(&house(H, H, "", W, ""), "cladding"), "Option(`wood`)");
}

#[test]
fn the_opening_wins_over_room_and_face() {
    assert_eq!(fact_of(&house("", "", H, H, W), "cladding"), "Option(`wood`)");
}

#[test]
fn room_and_face_may_say_the_same() {
    assert_eq!(fact_of(&house("", "", W, W, ""), "cladding"), "Option(`wood`)");
    assert_eq!(fact_of(&house(H, "", U, U, ""), "cladding"), "unknown");
}

#[test]
fn the_same_length_written_in_two_ways_agrees() {
    let text = house("", "", "ceiling = \"96\"", "ceiling = \"8 ft\"", "");
    assert_eq!(fact_of(&text, "ceiling"), "Length(96)");
}

#[test]
fn a_room_and_a_face_that_disagree_are_an_error_that_names_both() {
    check(
        &house("", "", H, W, ""),
        expect![[r#"
        24 "\"K1\"" FACTS_DISAGREE fact `cladding` of opening `K1` is `brick` by room `kitchen` and `wood` by face `front`
          19 "\"brick\"": room `kitchen` says `brick`
          22 "\"wood\"": face `front` says `wood`
          help: correct one of the two, or set `cladding` at the opening itself
    "#]],
    );
}

#[test]
fn unknown_at_a_room_disagrees_with_a_value_at_the_face() {
    check(
        &house("", "", U, W, ""),
        expect![[r#"
        24 "\"K1\"" FACTS_DISAGREE fact `cladding` of opening `K1` is `unknown` by room `kitchen` and `wood` by face `front`
          19 "\"unknown\"": room `kitchen` says `unknown`
          22 "\"wood\"": face `front` says `wood`
          help: correct one of the two, or set `cladding` at the opening itself
    "#]],
    );
}

#[test]
fn an_opening_may_settle_what_room_and_face_disagree_about() {
    assert_eq!(fact_of(&house("", "", H, W, H), "cladding"), "Option(`brick`)");
    assert_eq!(fact_of(&house("", "", H, W, U), "cladding"), "unknown");
}

#[test]
fn room_and_face_disagree_only_where_an_opening_has_both() {
    let places = format!(
        "[[room]]\nid = \"kitchen\"\nfacts = {{ {H} }}\n[[face]]\nid = \"front\"\nfacts = {{ {W} }}\n\
         [[opening]]\ntag = \"K1\"\nroom = \"kitchen\"\n{UNIT}[[opening]]\ntag = \"K2\"\nface = \"front\"\n{UNIT}"
    );
    check(
        &places,
        expect![[r#"
        no findings
    "#]],
    );
}

#[test]
fn unknown_at_an_opening_hides_every_higher_value() {
    assert_eq!(fact_of(&house(H, H, H, H, U), "cladding"), "unknown");
}

#[test]
fn unknown_at_a_room_hides_floor_and_house() {
    assert_eq!(fact_of(&house(H, H, U, "", ""), "cladding"), "unknown");
}

#[test]
fn unknown_at_a_floor_hides_the_house_and_not_the_room() {
    assert_eq!(fact_of(&house(H, U, "", "", ""), "cladding"), "unknown");
    assert_eq!(fact_of(&house(H, U, W, "", ""), "cladding"), "Option(`wood`)");
}

#[test]
fn an_opening_without_a_room_has_no_floor() {
    let text =
        format!("[house]\nfacts = {{ {H} }}\n[[floor]]\nid = \"ground\"\nfacts = {{ {W} }}\n{OPENING}");
    assert_eq!(fact_of(&text, "cladding"), "Option(`brick`)");
}

#[test]
fn a_fact_is_set_no_higher_than_it_is_declared() {
    let all = "ceiling = 96, sleeping_room = true, exposed = true, wet_place = true";
    check(
        &house(all, "", "", "", ""),
        expect![[r#"
        12 "ceiling" FACT_SCOPE fact `ceiling` is set at the house; the highest place for it is a floor
          help: set it at a floor, a room, a face or an opening
        12 "sleeping_room" FACT_SCOPE fact `sleeping_room` is set at the house; the highest place for it is a room
          help: set it at a room or an opening
        12 "exposed" FACT_SCOPE fact `exposed` is set at the house; the highest place for it is a face
          help: set it at a face or an opening
        12 "wet_place" FACT_SCOPE fact `wet_place` is set at the house; the highest place for it is an opening
          help: set it at each opening
    "#]],
    );
}

#[test]
fn a_fact_of_a_room_is_not_set_at_a_face_nor_the_other_way() {
    check(
        &house(
            "",
            "sleeping_room = true",
            "exposed = true",
            "sleeping_room = true",
            "",
        ),
        expect![[r#"
            15 "sleeping_room" FACT_SCOPE fact `sleeping_room` is set at a floor; the highest place for it is a room
              help: set it at a room or an opening
            19 "exposed" FACT_SCOPE fact `exposed` is set at a room; the highest place for it is a face
              help: set it at a face or an opening
            22 "sleeping_room" FACT_SCOPE fact `sleeping_room` is set at a face; the highest place for it is a room
              help: set it at a room or an opening
        "#]],
    );
}

#[test]
fn a_fact_may_be_set_lower_than_it_is_declared() {
    let all = "year_built = 1964, ceiling = 96, sleeping_room = true, exposed = true, wet_place = true";
    check(
        &house("", "", "", "", all),
        expect![[r#"
        no findings
    "#]],
    );
    check(
        &house("", "", "ceiling = 96, sleeping_room = true", "exposed = true", ""),
        expect![[r#"
        no findings
    "#]],
    );
}

#[test]
fn a_fact_that_no_catalog_has_is_an_error_wherever_it_is_set() {
    check(
        &house(
            "year_bild = 1964",
            "storey = 1",
            "sleeping_rom = true",
            "colour = 1",
            "wet = true",
        ),
        expect![[r#"
            12 "year_bild" UNKNOWN_FACT no catalog of the order has a fact `year_bild`
              help: did you mean `year_built`?
            15 "storey" UNKNOWN_FACT no catalog of the order has a fact `storey`
              help: facts are `ceiling`, `cladding`, `exposed`, `sleeping_room`, `wet_place`, `year_built`
            19 "sleeping_rom" UNKNOWN_FACT no catalog of the order has a fact `sleeping_rom`
              help: did you mean `sleeping_room`?
            22 "colour" UNKNOWN_FACT no catalog of the order has a fact `colour`
              help: facts are `ceiling`, `cladding`, `exposed`, `sleeping_room`, `wet_place`, `year_built`
            27 "wet" UNKNOWN_FACT opening `K1` sets fact `wet`, which catalog `hinged` does not have
              help: facts are `ceiling`, `cladding`, `exposed`, `sleeping_room`, `wet_place`, `year_built`
        "#]],
    );
}

const BOTH: &str =
    "[[catalog]]\nid = \"sliding\"\nfolder = \"library/sliding\"\nbook = \"library/sliding-book\"\n";

#[test]
fn each_catalog_types_the_facts_of_the_house_in_its_own_unit() {
    let text = format!(
        "{BOTH}[[floor]]\nid = \"ground\"\nfacts = {{ ceiling = 2400 }}\n[[room]]\nid = \"hall\"\nfloor = \"ground\"\n\
         [[opening]]\ntag = \"K1\"\nroom = \"hall\"\n[[opening.unit]]\ncatalog = \"sliding\"\n\
         [[opening]]\ntag = \"K2\"\nroom = \"hall\"\n{UNIT}"
    );
    assert_eq!(fact_of(&text, "ceiling"), "Length(12000/127)");
    let other = text.replace("K1", "K0").replace("K2", "K1");
    assert_eq!(fact_of(&other, "ceiling"), "Length(2400)");
}

#[test]
fn a_wrong_fact_is_reported_once_for_all_catalogs() {
    let text = format!(
        "{BOTH}[house]\nfacts = {{ ceiling = 96 }}\n[[floor]]\nid = \"ground\"\nfacts = {{ ceiling = \"high\" }}\n\
         [[opening]]\ntag = \"K1\"\n[[opening.unit]]\ncatalog = \"sliding\"\n\
         [[opening]]\ntag = \"K2\"\n{UNIT}"
    );
    check(
        &text,
        expect![[r#"
            16 "ceiling" FACT_SCOPE fact `ceiling` is set at the house; the highest place for it is a floor
              help: set it at a floor, a room, a face or an opening
            19 "\"high\"" WRONG_VALUE `high` is not a length
              help: write a length such as `35 5/8`, `35.625 in`, `2'-11 5/8"` or `904.875 mm`
        "#]],
    );
}

#[test]
fn an_opening_sets_only_facts_of_its_own_catalog() {
    let text = format!(
        "{BOTH}[house]\nfacts = {{ track_heated = true }}\n\
         [[opening]]\ntag = \"K1\"\nfacts = {{ track_heated = true }}\n{UNIT}\
         [[opening]]\ntag = \"K2\"\nfacts = {{ track_heated = true }}\n[[opening.unit]]\ncatalog = \"sliding\"\n"
    );
    check(
        &text,
        expect![[r#"
        19 "track_heated" UNKNOWN_FACT opening `K1` sets fact `track_heated`, which catalog `hinged` does not have
          help: facts are `ceiling`, `cladding`, `exposed`, `sleeping_room`, `wet_place`, `year_built`
    "#]],
    );
}

#[test]
fn a_fact_must_have_the_type_that_is_declared() {
    check(
        &house(
            "year_built = true, cladding = \"stone\"",
            "ceiling = 1964-01-01",
            "sleeping_room = \"yes\"",
            "",
            "",
        ),
        expect![[r#"
            12 "true" WRONG_TYPE fact `year_built` is true; expected a number
              help: write a number, or `"unknown"`
            12 "\"stone\"" UNKNOWN_OPTION fact `cladding` has no value `stone`
              help: values of `cladding` are `brick`, `wood`, and `unknown`
            15 "1964-01-01" WRONG_TYPE fact `ceiling` is the date 1964-01-01; expected a length
              help: write a length, or `"unknown"`
            19 "\"yes\"" WRONG_TYPE fact `sleeping_room` is `yes`; expected true or false
              help: write `true`, `false` or `"unknown"`
        "#]],
    );
}
