//! Ways to spoil a good unit, one fault each.

use super::google_type::{Date, Decimal};
use super::v1::quantity::Number;
use super::v1::value::Kind;
use super::v1::{KnownFact, Measured, Pick, Quantity, Unit, Value, Waiver};

/// A way to spoil a good unit, and what is then said: the reason and the field.
pub(crate) type Case = (&'static str, fn(&mut Unit), &'static str, &'static str);

pub(crate) fn decimal(value: &str, unit: &str) -> Option<Quantity> {
    Some(Quantity {
        number: Some(Number::Decimal(Decimal {
            value: value.to_owned(),
        })),
        unit: unit.to_owned(),
    })
}

pub(crate) fn fact(fact: &str, kind: Option<Kind>) -> KnownFact {
    KnownFact {
        fact: fact.to_owned(),
        value: Some(Value {
            kind,
            text: String::new(),
        }),
    }
}

pub(crate) fn pick(attribute: &str, option: &str) -> Pick {
    Pick {
        attribute: attribute.to_owned(),
        option: option.to_owned(),
        quoted: None,
    }
}

/// Says that the opening begins so far above the ground, in inches; its sill lies 134 in above it.
fn begins_at(unit: &mut Unit, inches: &str) {
    let height = fact(
        "height_above_grade",
        decimal(inches, "[in_i]").map(Kind::Quantity),
    );
    let known = unit.facts.iter_mut().find(|known| known.fact == height.fact);
    if let Some(known) = known {
        *known = height;
    }
}

fn waiver(rule: &str) -> Waiver {
    Waiver {
        rule: rule.to_owned(),
        reference: "letter 7".to_owned(),
        valid_from: Some(day(1)),
        valid_until: None,
    }
}

fn day(day: i32) -> Date {
    Date {
        year: 2026,
        month: 11,
        day,
    }
}

pub(crate) const CASES: [Case; 52] = [
    (
        "no catalog",
        |unit| unit.catalog.clear(),
        "REQUIRED",
        "unit.catalog",
    ),
    (
        "a bare id",
        |unit| unit.catalog = "hinged".into(),
        "BAD_NAME",
        "unit.catalog",
    ),
    (
        "a book for a catalog",
        |unit| unit.catalog = "books/hinged".into(),
        "BAD_NAME",
        "unit.catalog",
    ),
    (
        "an unknown catalog",
        |unit| unit.catalog = "catalogs/hung".into(),
        "UNKNOWN_CATALOG",
        "unit.catalog",
    ),
    ("no book", |unit| unit.book.clear(), "REQUIRED", "unit.book"),
    (
        "an unknown book",
        |unit| unit.book = "books/none".into(),
        "UNKNOWN_BOOK",
        "unit.book",
    ),
    (
        "the book of another catalog",
        |unit| unit.book = "books/sliding-2026".into(),
        "UNKNOWN_BOOK",
        "unit.book",
    ),
    (
        "an unknown policy",
        |unit| unit.policy = "policies/none".into(),
        "UNKNOWN_POLICY",
        "unit.policy",
    ),
    ("no day", |unit| unit.date = None, "REQUIRED", "unit.date"),
    (
        "half a day",
        |unit| unit.date = Some(day(0)),
        "BAD_DATE",
        "unit.date",
    ),
    (
        "the 31st of November",
        |unit| unit.date = Some(day(31)),
        "BAD_DATE",
        "unit.date",
    ),
    (
        "an unknown measure",
        |unit| unit.measures[0].measure = "depth".into(),
        "UNKNOWN_MEASURE",
        "unit.measures[0].measure",
    ),
    (
        "a measure without a size",
        |unit| unit.measures[0].size = None,
        "REQUIRED",
        "unit.measures[0].size",
    ),
    (
        "a measure of no number",
        |unit| unit.measures[1].size = Some(Quantity::default()),
        "REQUIRED",
        "unit.measures[1].size",
    ),
    (
        "a decimal comma",
        |unit| unit.measures[0].size = decimal("35,5", "[in_i]"),
        "BAD_NUMBER",
        "unit.measures[0].size.decimal.value",
    ),
    (
        "a size of 36,000 in",
        |unit| unit.measures[0].size = decimal("36000", "[in_i]"),
        "OUT_OF_RANGE",
        "unit.measures[0].size",
    ),
    (
        "a distance of 5,000 ft",
        |unit| {
            unit.facts[0] = fact(
                "water_edge_distance",
                decimal("60000", "[in_i]").map(Kind::Quantity),
            )
        },
        "OUT_OF_RANGE",
        "unit.facts[0].value.quantity",
    ),
    (
        "a year of five digits",
        |unit| unit.facts[0] = fact("year_built", decimal("19644", "1").map(Kind::Quantity)),
        "OUT_OF_RANGE",
        "unit.facts[0].value.quantity",
    ),
    (
        "half a year",
        |unit| unit.facts[0] = fact("year_built", decimal("1964.5", "1").map(Kind::Quantity)),
        "OFF_STEP",
        "unit.facts[0].value.quantity",
    ),
    (
        "an opening that begins below its sill",
        |unit| begins_at(unit, "133"),
        "CONTRADICTION",
        "unit",
    ),
    (
        "an opening that begins above its head",
        |unit| begins_at(unit, "200"),
        "CONTRADICTION",
        "unit",
    ),
    (
        "an infinite size",
        |unit| unit.measures[0].size = decimal("inf", "[in_i]"),
        "BAD_NUMBER",
        "unit.measures[0].size.decimal.value",
    ),
    (
        "a number of absurd length",
        |unit| unit.measures[0].size = decimal(&"9".repeat(5_000), "[in_i]"),
        "BAD_NUMBER",
        "unit.measures[0].size.decimal.value",
    ),
    (
        "a symbol that is no code",
        |unit| unit.measures[0].size = decimal("35", "inch"),
        "BAD_UNIT",
        "unit.measures[0].size.unit",
    ),
    (
        "a size below zero",
        |unit| unit.measures[0].size = decimal("-35", "[in_i]"),
        "OUT_OF_RANGE",
        "unit.measures[0].size",
    ),
    (
        "a size off its step",
        |unit| unit.measures[0].size = decimal("35.01", "[in_i]"),
        "OFF_STEP",
        "unit.measures[0].size",
    ),
    (
        "nobody known deducts",
        |unit| unit.measures[0].deducted_by = 9,
        "BAD_ENUM",
        "unit.measures[0].deducted_by",
    ),
    (
        "a measure twice",
        |unit| {
            let again: Measured = unit.measures[0].clone();
            unit.measures.push(again);
        },
        "DUPLICATE",
        "unit.measures[2].measure",
    ),
    (
        "an unknown fact",
        |unit| unit.facts[0] = fact("moon_phase", Some(Kind::Truth(true))),
        "UNKNOWN_FACT",
        "unit.facts[0].fact",
    ),
    (
        "a fact without a value",
        |unit| unit.facts[0] = fact("year_built", None),
        "REQUIRED",
        "unit.facts[0].value",
    ),
    (
        "a fact of another type",
        |unit| unit.facts[0] = fact("year_built", Some(Kind::Truth(true))),
        "WRONG_TYPE",
        "unit.facts[0].value",
    ),
    (
        "a fact with a unit",
        |unit| unit.facts[0] = fact("year_built", decimal("1964", "mm").map(Kind::Quantity)),
        "BAD_UNIT",
        "unit.facts[0].value.quantity.unit",
    ),
    (
        "a fact of an unknown option",
        |unit| unit.facts[0] = fact("cladding", Some(Kind::Option("straw".into()))),
        "UNKNOWN_OPTION",
        "unit.facts[0].value.option",
    ),
    (
        "an unknown attribute",
        |unit| unit.picks[0] = pick("operatoin", "casement"),
        "UNKNOWN_ATTRIBUTE",
        "unit.picks[0].attribute",
    ),
    (
        "an unknown option",
        |unit| unit.picks[0] = pick("operation", "revolving"),
        "UNKNOWN_OPTION",
        "unit.picks[0].option",
    ),
    (
        "a pick twice",
        |unit| {
            let again = unit.picks[0].clone();
            unit.picks.insert(0, again);
        },
        "DUPLICATE",
        "unit.picks[1].attribute",
    ),
    (
        "an attribute of the plant",
        |unit| unit.picks.insert(0, pick("PLANT", "whatever")),
        "NOT_PICKABLE",
        "unit.picks[0].attribute",
    ),
    (
        "a day of a quote that is none",
        |unit| unit.picks[0].quoted = Some(day(40)),
        "BAD_DATE",
        "unit.picks[0].quoted",
    ),
    (
        "a pin without a pick",
        |unit| unit.pins = vec!["exterior_trim".into()],
        "PIN_WITHOUT_PICK",
        "unit.pins[0]",
    ),
    (
        "a pin twice",
        |unit| unit.pins = vec!["operation".into(), "operation".into()],
        "DUPLICATE",
        "unit.pins[1]",
    ),
    (
        "an unknown rule",
        |unit| unit.waivers = vec![waiver("none")],
        "UNKNOWN_RULE",
        "unit.waivers[0].rule",
    ),
    (
        "a rule that is not waivable",
        |unit| unit.waivers = vec![waiver("escape-area")],
        "NOT_WAIVABLE",
        "unit.waivers[0].rule",
    ),
    (
        "a waiver that is written nowhere",
        |unit| {
            unit.waivers = vec![waiver("fixed-area")];
            unit.waivers[0].reference.clear();
        },
        "REQUIRED",
        "unit.waivers[0].reference",
    ),
    (
        "a waiver with a blank reference",
        |unit| {
            unit.waivers = vec![waiver("fixed-area")];
            unit.waivers[0].reference = "  ".into();
        },
        "REQUIRED",
        "unit.waivers[0].reference",
    ),
    (
        "a waiver that ends before it begins",
        |unit| {
            unit.waivers = vec![waiver("fixed-area")];
            unit.waivers[0].valid_from = Some(day(2));
            unit.waivers[0].valid_until = Some(day(1));
        },
        "BAD_RANGE",
        "unit.waivers[0].valid_until",
    ),
    (
        "a waiver of no rule",
        |unit| unit.waivers = vec![waiver("")],
        "REQUIRED",
        "unit.waivers[0].rule",
    ),
    (
        "a pick without an option",
        |unit| unit.picks[0] = pick("operation", ""),
        "REQUIRED",
        "unit.picks[0].option",
    ),
    (
        "a pick without an attribute",
        |unit| unit.picks[0] = pick("", "casement"),
        "REQUIRED",
        "unit.picks[0].attribute",
    ),
    (
        "a measure without a name",
        |unit| unit.measures[0].measure.clear(),
        "REQUIRED",
        "unit.measures[0].measure",
    ),
    (
        "a fact without a name",
        |unit| unit.facts[0].fact.clear(),
        "REQUIRED",
        "unit.facts[0].fact",
    ),
    (
        "a fact without an option",
        |unit| unit.facts[0] = fact("cladding", Some(Kind::Option(String::new()))),
        "REQUIRED",
        "unit.facts[0].value.option",
    ),
    (
        "too many picks",
        |unit| unit.picks = vec![pick("operation", "casement"); 1_001],
        "TOO_MANY",
        "unit.picks",
    ),
];
