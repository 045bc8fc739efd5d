//! Raw readings of an opening: what is worked out from them, and readings that cannot be.

use super::*;

use astragal_model::{DeductedBy, Value};

const CATALOG: &str =
    "[[catalog]]\nid = \"measured\"\nfolder = \"library/measured\"\nbook = \"library/measured-book\"\n";
const UNIT_OF_IT: &str = "[[opening.unit]]\ncatalog = \"measured\"\n";

/// An order with one opening of these keys.
fn with(keys: &str) -> String {
    format!("{CATALOG}[[opening]]\ntag = \"K1\"\n{keys}\n{UNIT_OF_IT}")
}

/// What an opening knows by its readings: each measure and fact with its value in inches.
fn known(keys: &str) -> Vec<String> {
    let file = order_of(&with(keys));
    let opening = &file.order.openings[0];
    let of = file.catalogs[&opening.units[0].catalog]
        .catalog
        .catalog
        .declarations();
    let measures = of.measures.iter().filter_map(|(at, measure)| {
        let measured = opening.site.measures.at(at).as_ref()?;
        let Value::Length(length) = &measured.value else {
            unreachable!("it is a length")
        };
        let by = measured.deducted_by.map_or("nobody said", DeductedBy::word);
        Some(format!("{} {length} {by}", measure.id))
    });
    let facts = of.facts.iter().filter_map(|(at, fact)| {
        let value = opening.site.facts.at(at).as_ref()?;
        Some(format!("{} {}", fact.id, value.magnitude().unwrap()))
    });
    measures.chain(facts).collect()
}

#[test]
fn the_smallest_readings_make_the_measures_and_their_spreads_the_facts() {
    let found = known(
        "readings = { widths = [\"36\", \"36 1/8\", \"35 15/16\"], heights = [\"60\", \"60 1/4\"], deducted_by = \"nobody\" }",
    );
    assert_eq!(
        found,
        [
            "opening_width 35.9375 nobody",
            "opening_height 60 nobody",
            "width_spread 0.1875",
            "height_spread 0.25",
        ]
    );
}

/// 36 x 60 with diagonals of 70 and 69 1/2: `trade::measuring` has the derivation, (70^2 - 69.5^2) / 4 = 17.4375; over 36 it
/// is 0.484375, over 60 it is 0.290625. Both come off.
#[test]
fn diagonals_that_differ_make_the_upright_rectangle_smaller_exactly() {
    let found = known(
        "readings = { widths = [36], heights = [60], diagonals = [\"70\", \"69 1/2\"], deducted_by = \"dealer\" }",
    );
    assert_eq!(
        found,
        [
            "opening_width 35.5 dealer",
            "opening_height 59.709375 dealer",
            "diagonal_difference 0.5",
        ]
    );
}

#[test]
fn a_level_takes_off_what_it_reads() {
    let found =
        known("readings = { widths = [36], heights = [60], out_of_plumb = \"1/4\", out_of_level = 0.125 }");
    assert_eq!(
        found,
        [
            "opening_width 35.75 nobody said",
            "opening_height 59.875 nobody said",
        ]
    );
}

#[test]
fn of_one_side_alone_the_smallest_reading_is_taken() {
    assert_eq!(
        known("readings = { widths = [37, 36] }"),
        ["opening_width 36 nobody said", "width_spread 1"]
    );
    assert_eq!(
        known("readings = { widths = [36] }\nmeasures = { opening_height = 60 }"),
        ["opening_width 36 nobody said", "opening_height 60 nobody said"]
    );
    assert_eq!(known("readings = {}"), [""; 0]);
}

#[test]
fn what_the_readings_do_not_say_is_taken_as_written_or_inherited() {
    let sides = "readings = { widths = [36], heights = [60] }";
    let found = known(&format!("{sides}\nfacts = {{ diagonal_difference = \"1/8\" }}"));
    assert_eq!(
        found.last().map(String::as_str),
        Some("diagonal_difference 0.125")
    );
    let house = |diagonals: &str| {
        let text = format!(
            "{CATALOG}[house]\nfacts = {{ diagonal_difference = \"3/8\" }}\n[[opening]]\ntag = \"K1\"\n\
             readings = {{ widths = [36], heights = [60], diagonals = [{diagonals}] }}\n{UNIT_OF_IT}"
        );
        fact_of(&text, "diagonal_difference")
    };
    assert_eq!(house("70"), "Length(0.375)");
    assert_eq!(house("70, \"70 1/8\""), "Length(0.125)");
}

#[test]
fn the_readings_are_carried_as_they_were_read() {
    let file = order_of(&with(
        "readings = { widths = [36, \"36 1/8\"], heights = [60], diagonals = [70], deducted_by = \"customer\" }",
    ));
    let readings = file.order.openings[0].readings.as_ref().unwrap();
    let number = |text: &str| astragal_model::Number::from_decimal(text);
    assert_eq!(readings.deducted_by, Some(DeductedBy::Customer));
    assert_eq!(readings.readings.widths, [number("36"), number("36.125"), None]);
    assert_eq!(readings.readings.heights, [number("60"), None, None]);
    assert_eq!(readings.readings.diagonals, [number("70"), None]);
    assert_eq!(order_of(OPENING).order.openings[0].readings, None);
}

#[test]
fn a_reading_that_no_opening_has_is_refused_with_its_place() {
    check(
        &with("readings = { widths = [36, -36], heights = [60] }"),
        expect![[r#"
            17 "{ widths = [36, -36], heights = [60] }" READINGS_IMPOSSIBLE readings of opening `K1`: width of the opening is `-36 in, middle`; expected a length above 0 and at most 50 ft
              help: correct the reading, or leave it out
        "#]],
    );
    check(
        &with("readings = { widths = [36], heights = [0] }"),
        expect![[r#"
        17 "{ widths = [36], heights = [0] }" READINGS_IMPOSSIBLE readings of opening `K1`: height of the opening is `0 in, left`; expected a length above 0 and at most 50 ft
          help: correct the reading, or leave it out
    "#]],
    );
    check(
        &with("readings = { widths = [36], heights = [\"51 ft\"] }"),
        expect![[r#"
            17 "{ widths = [36], heights = [\"51 ft\"] }" READINGS_IMPOSSIBLE readings of opening `K1`: height of the opening is `612 in, left`; expected a length above 0 and at most 50 ft
              help: correct the reading, or leave it out
        "#]],
    );
    check(
        &with("readings = { widths = [36], heights = [60], out_of_plumb = -1 }"),
        expect![[r#"
            17 "{ widths = [36], heights = [60], out_of_plumb = -1 }" READINGS_IMPOSSIBLE readings of opening `K1`: how far the jambs are out of plumb is `-1 in`; expected a length of 0 or more, at most 3,000 ft
              help: correct the reading, or leave it out
        "#]],
    );
    check(
        &with("readings = { widths = [36], heights = [60], out_of_level = 30 }"),
        expect![[r#"
            17 "{ widths = [36], heights = [60], out_of_level = 30 }" READINGS_IMPOSSIBLE readings of opening `K1`: the opening stands so far askew that `30 in` of the height is lost; expected at most `18 in`, half of the shorter side
              help: measure the diagonals again, and hold a level to the sill and a jamb
        "#]],
    );
}

#[test]
fn diagonals_that_no_opening_of_these_sides_has_are_refused() {
    check(
        &with("readings = { widths = [36], heights = [60], diagonals = [70, 75] }"),
        expect![[r#"
            17 "{ widths = [36], heights = [60], diagonals = [70, 75] }" READINGS_IMPOSSIBLE readings of opening `K1`: diagonals of the opening are `70 in` and `75 in`; expected `69 3/4 in` to `70 3/16 in`, or one as much longer as the other is shorter
              help: measure all again, diagonals and sides at the same faces; where something was deducted from the sides, give what was read
        "#]],
    );
    check(
        &with("readings = { widths = [36], heights = [60], diagonals = [97, 70] }"),
        expect![[r#"
            17 "{ widths = [36], heights = [60], diagonals = [97, 70] }" READINGS_IMPOSSIBLE readings of opening `K1`: diagonal of the opening is `97 in`; expected `23 3/4 in` to `96 1/4 in`
              help: measure the diagonal again, from corner to corner
        "#]],
    );
}

#[test]
fn what_is_no_length_is_refused_and_everything_is_said_at_once() {
    check(
        &with("readings = { widths = [\"wide\", \"36 5/8\"], heights = [\"5-10\"], diagonals = [\"70,5\"] }"),
        expect![[r#"
            17 "\"wide\"" WRONG_VALUE `wide` is not a length
              help: write a length such as `35 5/8`, `35.625 in`, `2'-11 5/8"` or `904.875 mm`
            17 "\"5-10\"" WRONG_VALUE `5-10` is not a length
              help: write a length such as `35 5/8`, `35.625 in`, `2'-11 5/8"` or `904.875 mm`
            17 "\"70,5\"" WRONG_VALUE `70,5` has a decimal comma
              help: write a decimal point: `70.5`, or no comma if it separates thousands
        "#]],
    );
    check(
        &with("readings = { widths = \"36\", heights = [true], diagonals = [[70]], out_of_plumb = {} }"),
        expect![[r#"
            17 "\"36\"" WRONG_TYPE `widths` is text; expected a list
              help: write `["36"]`
            17 "true" WRONG_TYPE `heights` is true; expected a number
            17 "[70]" WRONG_TYPE `diagonals` is an array; expected a number
            17 "{}" WRONG_TYPE `out_of_plumb` is a table; expected a number
        "#]],
    );
    check(
        &with("readings = [36, 60]"),
        expect![[r#"
        17 "[36, 60]" WRONG_TYPE `readings` is an array; expected a table
    "#]],
    );
}

#[test]
fn three_widths_three_heights_and_two_diagonals_are_the_most() {
    check(
        &with(
            "readings = { widths = [36, 36, 36, 36], heights = [60, 60, 60, 60], diagonals = [70, 70, 70] }",
        ),
        expect![[r#"
            17 "[36, 36, 36, 36]" TOO_MANY_READINGS `widths` has 4 readings; expected at most 3
              help: write those at the top, in the middle and at the bottom, or left, centre and right
            17 "[60, 60, 60, 60]" TOO_MANY_READINGS `heights` has 4 readings; expected at most 3
              help: write those at the top, in the middle and at the bottom, or left, centre and right
            17 "[70, 70, 70]" TOO_MANY_READINGS `diagonals` has 3 readings; expected at most 2
              help: write the two diagonals
        "#]],
    );
}

#[test]
fn keys_and_words_that_are_not_known_are_refused() {
    check(
        &with("readings = { width = [36], heights = [60], deducted_by = \"plant\" }"),
        expect![[r#"
            17 "width" UNKNOWN_KEY unknown key `width` in `readings`
              help: did you mean `widths`?
            17 "\"plant\"" UNKNOWN_WORD `deducted_by` is `plant`; expected one of `nobody`, `dealer`, `customer`
              help: leave it out when nobody said who deducts
        "#]],
    );
}

#[test]
fn what_is_written_and_worked_out_is_given_twice() {
    check(
        &with(
            "readings = { widths = [36, 37], heights = [60], diagonals = [70, 71] }\nmeasures = { opening_width = 36 }\nfacts = { width_spread = 1, diagonal_difference = \"unknown\", height_spread = 0 }",
        ),
        expect![[r#"
            17 "{ widths = [36, 37], heights = [60], diagonals = [70, 71] }" warning READINGS_DIFFER readings of opening `K1`: readings of the width lie `1 in` apart; common practice is at most `1/8 in`: measure again or have it looked at in the field
              help: is it a slip? what was read is worked with
            17 "{ widths = [36, 37], heights = [60], diagonals = [70, 71] }" warning READINGS_DIFFER readings of opening `K1`: the diagonals differ by `1 in`; common practice is at most `1/4 in`: measure again or have it looked at in the field
              help: is it a slip? what was read is worked with
            18 "opening_width" GIVEN_TWICE `opening_width` is written, and worked out from the readings as well
              17 "{ widths = [36, 37], heights = [60], diagonals = [70, 71] }": the readings stand here
              help: leave one of the two out
            19 "width_spread" GIVEN_TWICE `width_spread` is written, and worked out from the readings as well
              17 "{ widths = [36, 37], heights = [60], diagonals = [70, 71] }": the readings stand here
              help: leave one of the two out
            19 "diagonal_difference" GIVEN_TWICE `diagonal_difference` is written, and worked out from the readings as well
              17 "{ widths = [36, 37], heights = [60], diagonals = [70, 71] }": the readings stand here
              help: leave one of the two out
        "#]],
    );
}

#[test]
fn a_catalog_that_takes_no_readings_says_what_to_write() {
    check(
        "[[opening]]\ntag = \"K1\"\nreadings = { widths = [36], heights = [60] }\n[[opening.unit]]\ncatalog = \"hinged\"\n",
        expect![[r#"
            13 "{ widths = [36], heights = [60] }" NO_READINGS_HERE opening `K1` has readings, and catalog `hinged` has no measure that is `taken_as` height
              help: write the measures of the catalog instead
            13 "{ widths = [36], heights = [60] }" NO_READINGS_HERE opening `K1` has readings, and catalog `hinged` has no measure that is `taken_as` width
              help: write the measures of the catalog instead
        "#]],
    );
}

#[test]
fn readings_in_json_are_those_in_toml() {
    let toml = with(
        "readings = { widths = [36, \"36 1/8\"], heights = [60.5], diagonals = [\"70\", \"70 1/4\"], out_of_level = 0.25, \
         deducted_by = \"nobody\" }",
    );
    let json = r#"{
      "format": 1,
      "order": { "id": "1042", "date": "2026-11-25", "currency": "USD" },
      "catalog": [{ "id": "measured", "folder": "library/measured", "book": "library/measured-book" }],
      "opening": [{
        "tag": "K1",
        "readings": {
          "widths": [36, "36 1/8"], "heights": [60.5], "diagonals": ["70", "70 1/4"], "out_of_level": 0.25,
          "deducted_by": "nobody"
        },
        "unit": [{ "catalog": "measured" }]
      }]
    }"#;
    let read = read_file("order.json", json.as_bytes(), &ReadOptions::default());
    let lines = lines_of(&read);
    let of_json = read.order.unwrap_or_else(|| panic!("{lines}"));
    let of_toml = order_of(&toml);
    assert_eq!(of_json.order.openings, of_toml.order.openings);
    assert!(of_json.order.openings[0].readings.is_some());
    let bad = json.replace("[60.5]", "[-60.5]");
    let read = read_file("order.json", bad.as_bytes(), &ReadOptions::default());
    expect![[r#"
        7 "{\n          \"widths\": [36, \"36 1/8\"], \"heights\": [-60.5], \"diagonals\": [\"70\", \"70 1/4\"], \"out_of_level\": 0.25,\n          \"deducted_by\": \"nobody\"\n        }" READINGS_IMPOSSIBLE readings of opening `K1`: height of the opening is `-60 1/2 in, left`; expected a length above 0 and at most 50 ft
          help: correct the reading, or leave it out
    "#]].assert_eq(&lines_of(&read));
}

/// Nobody need be asked who deducts from a side that was not read: it was said of the readings as a whole.
#[test]
fn of_a_side_that_was_not_read_it_is_known_who_deducts() {
    let said = |keys: &str| {
        let file = order_of(&with(keys));
        let opening = &file.order.openings[0];
        let of = file.catalogs[&opening.units[0].catalog]
            .catalog
            .catalog
            .declarations();
        let by = |id: &str| {
            let at = of.measures.iter().find(|(_, measure)| measure.id.as_str() == id);
            at.and_then(|(at, _)| opening.site.deducted_by(at))
                .map(DeductedBy::word)
        };
        [by("opening_width"), by("opening_height")]
    };
    let nobody = Some("nobody");
    assert_eq!(
        said("readings = { widths = [], heights = [60], deducted_by = \"nobody\" }"),
        [nobody, nobody]
    );
    assert_eq!(said("readings = { widths = [], heights = [60] }"), [None, None]);
    assert_eq!(
        said(
            "readings = { heights = [60], deducted_by = \"nobody\" }\nmeasures = { opening_width = { size = 36, deducted_by = \"dealer\" } }"
        ),
        [Some("dealer"), nobody]
    );
}
