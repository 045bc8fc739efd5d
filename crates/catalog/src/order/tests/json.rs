//! The same order as TOML and as JSON.

use super::*;

const TOML: &str = r#"
[house]
facts = { year_built = 1964 }
[[floor]]
id = "ground"
label = "Ground floor"
[[room]]
id = "kitchen"
floor = "ground"
facts = { sleeping_room = false, ceiling = "8 ft" }
[[face]]
id = "front"
facts = { cladding = "brick" }
[[opening]]
tag = "K1"
quantity = 2
room = "kitchen"
face = "front"
measures = { opening_width = { size = "36", deducted_by = "nobody" }, panes_wide = 2 }
facts = { wet_place = "unknown" }
note = "Sash out to the left."
extra = { z = 7.50, a = [true, "x"], d = 2026-01-02 }
[[opening.unit]]
catalog = "hinged"
picks = [{ attribute = "operation", option = "awning", quoted = 2026-05-02 }]
pins = ["operation"]
waivers = [{ rule = "casement-width", reference = "W-118", from = 2026-11-01, until = 2026-12-31 }]
[[opening]]
tag = "K2"
alternate_of = "K1"
[[opening.unit]]
catalog = "hinged"
"#;

const JSON: &str = r#"{
  "format": 1,
  "order": { "id": "1042", "date": "2026-11-25", "currency": "USD" },
  "catalog": [
    { "id": "hinged", "folder": "library/hinged", "book": "library/hinged-book", "policy": "library/policy" }
  ],
  "house": { "facts": { "year_built": 1964 } },
  "floor": [{ "id": "ground", "label": "Ground floor" }],
  "room": [{ "id": "kitchen", "floor": "ground", "facts": { "sleeping_room": false, "ceiling": "8 ft" } }],
  "face": [{ "id": "front", "facts": { "cladding": "brick" } }],
  "opening": [
    {
      "tag": "K1", "quantity": 2, "room": "kitchen", "face": "front",
      "measures": { "opening_width": { "size": "36", "deducted_by": "nobody" }, "panes_wide": 2 },
      "facts": { "wet_place": "unknown" },
      "note": "Sash out to the left.",
      "extra": { "z": 7.50, "a": [true, "x"], "d": "2026-01-02" },
      "unit": [
        {
          "catalog": "hinged",
          "picks": [{ "attribute": "operation", "option": "awning", "quoted": "2026-05-02" }],
          "pins": ["operation"],
          "waivers": [
            { "rule": "casement-width", "reference": "W-118", "from": "2026-11-01", "until": "2026-12-31" }
          ]
        }
      ]
    },
    { "tag": "K2", "alternate_of": "K1", "unit": [{ "catalog": "hinged" }] }
  ]
}"#;

fn read_json(text: &str) -> ReadOrder {
    read_file("order.json", text.as_bytes(), &ReadOptions::default())
}

#[test]
fn toml_and_json_are_the_same_order() {
    let (of_toml, of_json) = (order_of(TOML), read_json(JSON).order.unwrap());
    assert_eq!(of_toml.order, of_json.order);
    assert_eq!(of_toml.order.openings[0].units[0].picks.len(), 1);
}

#[test]
fn json_has_the_same_checks() {
    let check = |old: &str, new: &str, expected: Expect| {
        assert!(JSON.contains(old));
        expected.assert_eq(&lines_of(&read_json(&JSON.replace(old, new))));
    };
    check(
        "\"awning\"",
        "\"awing\"",
        expect![[r#"
        21 "\"awing\"" UNKNOWN_OPTION `operation` has no option `awing`
          help: did you mean `awning`? its options are `casement`, `awning`, `fixed`
    "#]],
    );
    check(
        "\"quantity\": 2",
        "\"quantity\": 2, \"quantity\": 3",
        expect![[r#"
        13 "\"quantity\"" DUPLICATE_KEY key `quantity` stands twice in the same table
          13 "\"quantity\"": `quantity` stands here first
          help: keep one of the two
    "#]],
    );
    check(
        "\"2026-05-02\"",
        "\"2026-5-2\"",
        expect![[r#"
            21 "\"2026-5-2\"" NOT_A_DATE `quoted` is `2026-5-2`; expected a date like 2024-06-01
              help: write year, month and day, all in digits: 2024-06-01
        "#]],
    );
    check(
        "\"note\": \"Sash out to the left.\"",
        "\"note\": null",
        expect![[r#"
        16 "null" WRONG_TYPE `note` is null; expected text
          help: leave the key out
    "#]],
    );
    check(
        "\"alternate_of\": \"K1\",",
        "\"alternate_of\": \"K1\" // remark\n,",
        expect![[r#"
        29 "// remark" JSON_GRAMMAR this is not JSON: comments are not allowed
    "#]],
    );
}

#[test]
fn nested_extra_in_json_is_carried_with_its_nothings() {
    let text = JSON.replace("\"z\": 7.50", "\"z\": { \"n\": null, \"e\": 1000 }");
    let order = read_json(&text).order.unwrap().order;
    expect![[r#"
        Table([("z", Table([("n", None), ("e", Number("1000"))])), ("a", List([Bool(true), Text("x")])), ("d", Text("2026-01-02"))])
    "#]].assert_eq(&format!("{:?}\n", order.openings[0].extra));
}

proptest::proptest! {
    #![proptest_config(proptest::prelude::ProptestConfig::with_cases(200))]

    /// The helper asserts that there is an order exactly when there is no error.
    #[test]
    fn a_damaged_order_is_read_whole_or_not_at_all(start in 0usize..100_000, length in 0usize..60, with in "[a-z0-9=\\[\\]{}\".,-]{0,8}") {
        for (name, text) in [("order.toml", format!("{HEAD}{TOML}")), ("order.json", JSON.to_owned())] {
            let start = start % text.len();
            let end = (start + length).min(text.len());
            let damaged = format!("{}{with}{}", &text[..start], &text[end..]);
            read_file(name, damaged.as_bytes(), &ReadOptions::default());
        }
    }
}
