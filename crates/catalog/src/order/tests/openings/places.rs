//! Floors, rooms and faces, and where an opening stands.

use super::*;

#[test]
fn an_unknown_room_face_or_floor_is_named_with_the_nearest() {
    let text = "[[floor]]\nid = \"ground\"\n[[room]]\nid = \"kitchen\"\nfloor = \"grond\"\n[[face]]\nid = \"front\"\n\
        [[opening]]\ntag = \"K1\"\nroom = \"kichen\"\nface = \"rear\"\n";
    check(
        &format!("{text}{UNIT}"),
        expect![[r#"
        15 "\"grond\"" UNKNOWN_FLOOR room `kitchen` names floor `grond`, which the order does not have
          help: did you mean `ground`?
        20 "\"kichen\"" UNKNOWN_ROOM opening `K1` names room `kichen`, which the order does not have
          help: did you mean `kitchen`?
        21 "\"rear\"" UNKNOWN_FACE opening `K1` names face `rear`, which the order does not have
          help: the order has `front`
    "#]],
    );
    check(
        &format!("[[opening]]\ntag = \"K1\"\nroom = \"kitchen\"\n{UNIT}"),
        expect![[r#"
        13 "\"kitchen\"" UNKNOWN_ROOM opening `K1` names room `kitchen`, which the order does not have
          help: add a `[[room]]` with this id, or leave the name out
    "#]],
    );
}

#[test]
fn places_of_one_kind_have_different_ids() {
    let text = "[[floor]]\nid = \"a\"\n[[floor]]\nid = \"a\"\n[[room]]\nid = \"a\"\n[[room]]\nid = \"a\"\n\
        [[face]]\nid = \"a\"\n[[face]]\nid = \"a\"\n";
    check(
        &format!("{text}{OPENING}"),
        expect![[r#"
        14 "\"a\"" DUPLICATE_ID two floors have the id `a`
          12 "\"a\"": `a` stands here first
          help: give one of them another id
        18 "\"a\"" DUPLICATE_ID two rooms have the id `a`
          16 "\"a\"": `a` stands here first
          help: give one of them another id
        22 "\"a\"" DUPLICATE_ID two faces have the id `a`
          20 "\"a\"": `a` stands here first
          help: give one of them another id
    "#]],
    );
}

#[test]
fn an_id_of_a_place_has_no_spaces() {
    check(
        &format!("[[room]]\nid = \"The kitchen\"\n{OPENING}"),
        expect![[r#"
            12 "\"The kitchen\"" BAD_ID `The kitchen` is no id of a room
              help: begin with a small letter or a digit; go on with small letters, digits, `-` and `_`; what people read goes into `label`
        "#]],
    );
}

#[test]
fn places_say_where_openings_and_picks_stand() {
    let text = format!("{HEAD}{OPENING}picks = [ {{ attribute = \"operation\", option = \"fixed\" }} ]\n");
    let read = read_text(&text);
    let places = &read.order.unwrap().places.openings["K1"];
    assert_eq!(read.sources.text_at(&places.tag), "\"K1\"");
    let picks: Vec<_> = places
        .picks
        .values()
        .map(|place| read.sources.text_at(place))
        .collect();
    assert_eq!(picks, ["\"operation\""]);
}
