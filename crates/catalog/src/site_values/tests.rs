//! One helper: an order's measures and facts in, values and findings out.

use expect_test::{Expect, expect};

use astragal_model::{Bounds, Id, Scope};

use super::*;
use crate::source::Sources;
use crate::tree;

fn declared_measure(name: &str) -> Option<Measure> {
    let (value_type, step) = match name {
        "width" => (ValueType::Length, Number::ratio(1, 16)),
        "clear" => (ValueType::Length, None),
        "panes" => (ValueType::Number, Some(Number::ONE)),
        _ => return None,
    };
    Some(Measure {
        id: Id::new(name),
        label: name.to_owned(),
        value_type,
        step,
        bounds: if name == "panes" {
            bounds(None, Some(9))
        } else {
            Bounds::default()
        },
        taken_as: None,
    })
}

fn declared_fact(name: &str) -> Option<SiteFact> {
    let value_type = match name {
        "sleeping_room" => ValueType::Bool,
        "year_built" => ValueType::Number,
        "sill_height" => ValueType::Length,
        "surveyed" => ValueType::Date,
        "zone" | "county" => ValueType::Option,
        _ => return None,
    };
    let options: &[&str] = match name {
        "zone" => &["north", "south"],
        "county" => &[
            "ash", "birch", "cedar", "elm", "fir", "hazel", "larch", "maple", "oak", "pine", "rowan",
            "spruce", "willow",
        ],
        _ => &[],
    };
    Some(SiteFact {
        id: Id::new(name),
        label: name.to_owned(),
        value_type,
        options: options
            .iter()
            .map(|option| ((*option).into(), (*option).to_owned()))
            .collect(),
        of: Scope::House,
        bounds: match name {
            "year_built" => bounds(Some(1500), Some(2200)),
            "sill_height" => bounds(Some(0), None),
            _ => Bounds::default(),
        },
        step: (name == "year_built").then_some(Number::ONE),
        taken_as: None,
    })
}

fn bounds(least: Option<i64>, most: Option<i64>) -> Bounds {
    Bounds {
        least: least.map(Number::from),
        most: most.map(Number::from),
    }
}

fn check(text: &str, expected: Expect) {
    let mut sources = Sources::new();
    let file = sources.add("order.toml", text);
    let findings = Findings::new();
    let root = tree::read(&sources, file, &findings).unwrap();
    let mut reader = TableReader::new(&root, file, "opening", &findings).unwrap();
    let mut out = String::new();
    for raw in raw_measures(&mut reader, "measures") {
        let value = declared_measure(&raw.name).and_then(|m| measured(&raw, &m, LengthUnit::Inch, &findings));
        out += &format!("{} = {value:?}\n", raw.name);
    }
    for raw in raw_facts(&mut reader, "facts") {
        let value = declared_fact(&raw.name).map(|f| fact_value(&raw, &f, LengthUnit::Inch, &findings));
        out += &format!("{} = {value:?}\n", raw.name);
    }
    reader.finish();
    for finding in findings.into_sorted(&sources) {
        let place = finding.place().unwrap();
        let at = (sources.position(place).line, sources.text_at(place));
        out += &format!("{at:?} {} {}\n", finding.code(), finding.message());
        out += &finding.help().map_or(String::new(), |h| format!("  help: {h}\n"));
    }
    expected.assert_eq(&out);
}

#[test]
fn measures_are_exact_and_say_who_deducted() {
    check(
        "[measures]\nwidth = { size = \"35 5/8\", deducted_by = \"dealer\" }\nclear = \"904.875 mm\"\npanes = 3\n",
        expect![[r#"
            width = Some(Measured { value: Length(35.625), deducted_by: Some(Dealer) })
            clear = Some(Measured { value: Length(35.625), deducted_by: None })
            panes = Some(Measured { value: Number(3), deducted_by: None })
        "#]],
    );
}

#[test]
fn a_measure_off_its_step_is_never_brought_to_it() {
    check(
        "[measures]\nwidth = \"35.7\"\npanes = \"1.5\"\nclear = \"35.7\"\n",
        expect![[r#"
            width = None
            panes = None
            clear = Some(Measured { value: Length(35.7), deducted_by: None })
            (2, "\"35.7\"") OFF_STEP measure `width` is `35.7`, which is not a multiple of 1/16 in
              help: the nearest are 35 11/16 in and 35 3/4 in
            (3, "\"1.5\"") OFF_STEP measure `panes` is `1.5`, which is not a multiple of 1
              help: the nearest are 1 and 2
        "#]],
    );
}

#[test]
fn a_length_that_was_measured_is_above_zero() {
    check(
        "[measures]\nwidth = \"-36\"\nclear = \"0\"\n",
        expect![[r#"
        width = None
        clear = None
        (2, "\"-36\"") NOT_ABOVE_ZERO measure `width` is `-36`, which is not above zero
          help: write the size as measured, or leave it out while nobody has measured
        (3, "\"0\"") NOT_ABOVE_ZERO measure `clear` is `0`, which is not above zero
          help: write the size as measured, or leave it out while nobody has measured
    "#]],
    );
}

#[test]
fn a_size_that_is_no_length_says_how_to_write_one() {
    check(
        "[measures]\nwidth = \"35,625\"\nclear = \"8-May\"\npanes = \"wide\"\n",
        expect![[r#"
            width = None
            clear = None
            panes = None
            (2, "\"35,625\"") WRONG_VALUE `35,625` has a decimal comma
              help: write a decimal point: `35.625`, or no comma if it separates thousands
            (3, "\"8-May\"") WRONG_VALUE `8-May` is a date, not a length
              help: a spreadsheet has turned a fraction into a date; format the column as text and write 5/8 again
            (4, "\"wide\"") WRONG_VALUE `wide` is not a number
              help: write a number such as `12.5`
        "#]],
    );
    check(
        "[measures]\nwidth = true\nclear = { deducted_by = \"nobody\" }\npanes = { size = 2, deducted_by = \"me\", depth = 1 }\n",
        expect![[r#"
            panes = Some(Measured { value: Number(2), deducted_by: None })
            (2, "true") WRONG_TYPE measure `width` is true; expected a number
            (3, "{ deducted_by = \"nobody\" }") MISSING_KEY measure `clear` lacks `size`
              help: add `size`
            (4, "\"me\"") UNKNOWN_WORD `deducted_by` is `me`; expected one of `nobody`, `dealer`, `customer`
              help: leave it out when nobody said who deducts
            (4, "depth") UNKNOWN_KEY unknown key `depth` in measure `panes`
              help: known keys are `size`, `deducted_by`
        "#]],
    );
}

#[test]
fn facts_have_the_type_that_the_catalog_declares() {
    check(
        "[facts]\nsleeping_room = true\nyear_built = 1964\nsill_height = \"1 ft\"\nsurveyed = 2026-05-02\nzone = \"north\"\n",
        expect![[r#"
            sleeping_room = Some(Some(Some(Bool(true))))
            year_built = Some(Some(Some(Number(1964))))
            sill_height = Some(Some(Some(Length(12))))
            surveyed = Some(Some(Some(Date(2026-05-02))))
            zone = Some(Some(Some(Option(`north`))))
        "#]],
    );
    check(
        "[facts]\nsleeping_room = \"yes\"\nyear_built = false\nsill_height = \"low\"\nsurveyed = \"2026-05-02T10:00\"\nzone = \"nort\"\n",
        expect![[r#"
            sleeping_room = Some(None)
            year_built = Some(None)
            sill_height = Some(None)
            surveyed = Some(None)
            zone = Some(None)
            (2, "\"yes\"") WRONG_TYPE fact `sleeping_room` is `yes`; expected true or false
              help: write `true`, `false` or `"unknown"`
            (3, "false") WRONG_TYPE fact `year_built` is false; expected a number
              help: write a number, or `"unknown"`
            (4, "\"low\"") WRONG_VALUE `low` is not a length
              help: write a length such as `35 5/8`, `35.625 in`, `2'-11 5/8"` or `904.875 mm`
            (5, "\"2026-05-02T10:00\"") WRONG_TYPE fact `surveyed` is `2026-05-02T10:00`; expected a date
              help: write a date like `2024-06-01`, or `"unknown"`
            (6, "\"nort\"") UNKNOWN_OPTION fact `zone` has no value `nort`
              help: values of `zone` are `north`, `south`, and `unknown`
        "#]],
    );
}

#[test]
fn of_more_than_twelve_values_the_nearest_is_guessed() {
    check(
        "[facts]\ncounty = \"mapel\"\n",
        expect![[r#"
            county = Some(None)
            (2, "\"mapel\"") UNKNOWN_OPTION fact `county` has no value `mapel`
              help: did you mean `maple`?
        "#]],
    );
}

#[test]
fn unknown_may_be_written_for_every_fact() {
    check(
        "[facts]\nsleeping_room = \"unknown\"\nyear_built = \"unknown\"\nsurveyed = \"unknown\"\nzone = \"unknown\"\nsill_height = [1]\n",
        expect![[r#"
            sleeping_room = Some(Some(None))
            year_built = Some(Some(None))
            surveyed = Some(Some(None))
            zone = Some(Some(None))
            (6, "[1]") WRONG_TYPE fact `sill_height` is an array; expected a single value
        "#]],
    );
}

#[test]
fn what_lies_outside_the_bounds_is_refused_and_both_ends_are_taken() {
    check(
        "[measures]\npanes = 9\n[facts]\nyear_built = 1500\nsill_height = 0\n",
        expect![[r#"
            panes = Some(Measured { value: Number(9), deducted_by: None })
            year_built = Some(Some(Some(Number(1500))))
            sill_height = Some(Some(Some(Length(0))))
        "#]],
    );
    check(
        "[facts]\nyear_built = 2200\n",
        expect![[r#"
        year_built = Some(Some(Some(Number(2200))))
    "#]],
    );
    check(
        "[measures]\npanes = 10\n[facts]\nyear_built = 1499\nsill_height = \"-1/16\"\n",
        expect![[r#"
            panes = None
            year_built = Some(None)
            sill_height = Some(None)
            (2, "10") OUT_OF_RANGE measure `panes` is `10`; expected at most 9
              help: look at it again: what was measured, in which unit, from where; leave it out while nobody knows
            (4, "1499") OUT_OF_RANGE fact `year_built` is `1499`; expected 1500 to 2200
              help: look at it again: what was measured, in which unit, from where; leave it out while nobody knows
            (5, "\"-1/16\"") OUT_OF_RANGE fact `sill_height` is `-1/16`; expected 0 in or more
              help: look at it again: what was measured, in which unit, from where; leave it out while nobody knows
        "#]],
    );
    check(
        "[facts]\nyear_built = \"2201\"\n",
        expect![[r#"
        year_built = Some(None)
        (2, "\"2201\"") OUT_OF_RANGE fact `year_built` is `2201`; expected 1500 to 2200
          help: look at it again: what was measured, in which unit, from where; leave it out while nobody knows
    "#]],
    );
}

#[test]
fn a_fact_off_its_step_is_never_brought_to_it() {
    check(
        "[facts]\nyear_built = 1964.5\n",
        expect![[r#"
        year_built = Some(None)
        (2, "1964.5") OFF_STEP fact `year_built` is `1964.5`, which is not a multiple of 1
          help: the nearest are 1964 and 1965
    "#]],
    );
}
