//! Every field of a catalog changed, one at a time: each change makes another revision, and no two make the same.

use jiff::civil::date;

use super::drawing_changes::DRAWING;
use super::fixture::{
    GLAZING_LOWER, GLAZING_UPPER, Layout, OPERATION, SCREEN, UPPER, declarations, ids, inches,
};
use super::item_changes::{EXAMPLES, ITEMS, NOTICES, item, notice};
use super::rule_changes::{FIGURES, ROOM_RULES, RULES, figure, rule};
use super::site_changes::{SITE, another_fact};
use super::{check_all_differ, revision_of};
use crate::attribute::{Attribute, Audience, OptionEntry, Standard, Swatch};
use crate::catalog::{Declarations, Part};
use crate::expression::{Expression, Subject};
use crate::id::{AttributeIndex, Id, Indexed, PartIndex, Position};
use crate::rule::Definition;
use crate::value::Value;
use astragal_exact::Number;
use astragal_exact::measure_text::LengthUnit;

/// A change with its name.
pub(super) type Change = (&'static str, fn(&mut Declarations));

#[test]
fn every_change_of_a_catalog_makes_another_revision() {
    let groups = [
        HEAD, PARTS, ATTRIBUTES, OPTIONS, SITE, FIGURES, RULES, ROOM_RULES, ITEMS, NOTICES, DRAWING, EXAMPLES,
    ];
    let mut rows = vec![("as it is", revision_of(declarations(Layout::default())))];
    for (name, change) in groups.into_iter().flatten() {
        let mut changed = declarations(Layout::default());
        change(&mut changed);
        rows.push((name, revision_of(changed)));
    }
    check_all_differ(&rows);
}

pub(super) fn edit<I: Position, T: Clone>(
    list: &mut Indexed<I, T>,
    position: I,
    change: impl FnOnce(&mut T),
) {
    let mut thing = list.at(position).clone();
    change(&mut thing);
    list.put(position, thing);
}

fn part(of: &mut Declarations, change: impl FnOnce(&mut Part)) {
    edit(&mut of.parts, UPPER, change);
}

pub(super) fn attribute(of: &mut Declarations, which: AttributeIndex, change: impl FnOnce(&mut Attribute)) {
    edit(&mut of.attributes, which, change);
}

fn option(of: &mut Declarations, change: impl FnOnce(&mut OptionEntry)) {
    edit(&mut of.attributes, OPERATION, |attribute| {
        change(&mut attribute.options[0])
    });
}

/// A thing that nothing names, so that its id counts for itself alone.
fn another_part(id: &str) -> Part {
    Part {
        id: Id::new(id),
        kind: Id::new("sash"),
        label: "Another".to_owned(),
        when: None,
    }
}

fn another_attribute(id: &str) -> Attribute {
    Attribute {
        id: Id::new(id),
        part: None,
        label: "Another".to_owned(),
        section: None,
        options: vec![OptionEntry::plain("one")],
        applies_when: None,
        standard: Standard::Ask,
        audience: Audience::Customer,
    }
}

const HEAD: &[Change] = &[
    ("id of the catalog", |d| d.id = Id::new("hinged")),
    ("label of the catalog", |d| d.label.push('!')),
    ("text moved from label to id", |d| {
        d.id = Id::new("hungHung");
        d.label = " windows".to_owned();
    }),
    ("length unit ft", |d| d.length_unit = LengthUnit::Foot),
    ("length unit mm", |d| d.length_unit = LengthUnit::Millimetre),
    ("length unit cm", |d| d.length_unit = LengthUnit::Centimetre),
    ("length unit m", |d| d.length_unit = LengthUnit::Metre),
    ("id of an authority", |d| d.authorities[0].0 = Id::new("museum")),
    ("label of an authority", |d| d.authorities[0].1.push('!')),
    ("labels of authorities swapped", |d| {
        let (first, rest) = d.authorities.split_at_mut(1);
        std::mem::swap(&mut first[0].1, &mut rest[0].1);
    }),
    ("an authority less", |d| drop(d.authorities.pop())),
    ("an authority twice", |d| {
        d.authorities.push(d.authorities[0].clone())
    }),
    ("an authority turned into nothing but a fact", |d| {
        d.authorities.pop();
        d.facts.push(another_fact("lender"));
    }),
];

const PARTS: &[Change] = &[
    ("id of a part", |d| part(d, |part| part.id = Id::new("top"))),
    ("kind of a part", |d| part(d, |part| part.kind = Id::new("lite"))),
    ("label of a part", |d| part(d, |part| part.label.push('!'))),
    ("a part always there", |d| part(d, |part| part.when = None)),
    ("a part there otherwise", |d| {
        part(d, |part| {
            part.when = Some(Expression::is_option(OPERATION, "single"))
        });
    }),
    ("order of parts", |d| {
        let parts: Vec<Part> = d.parts.values().rev().cloned().collect();
        d.parts = parts.into();
        for (which, part) in [(GLAZING_UPPER, 1), (GLAZING_LOWER, 0)] {
            attribute(d, which, |attribute| attribute.part = Some(PartIndex(part)));
        }
        figure(d, |figure| figure.part = Some(PartIndex(1)));
        rule(d, |rule| rule.part = Some(PartIndex(1)));
        item(d, 2, |item| item.part = Some(PartIndex(1)));
        notice(d, |notice| notice.part = Some(PartIndex(1)));
    }),
    ("one more part", |d| {
        d.parts.push(another_part("middle"));
    }),
    ("one more part by another name", |d| {
        d.parts.push(another_part("centre"));
    }),
];

const ATTRIBUTES: &[Change] = &[
    ("id of an attribute", |d| {
        attribute(d, SCREEN, |attribute| attribute.id = Id::new("mesh"))
    }),
    ("part of an attribute", |d| {
        attribute(d, SCREEN, |attribute| attribute.part = Some(UPPER))
    }),
    ("label of an attribute", |d| {
        attribute(d, SCREEN, |attribute| attribute.label.push('!'))
    }),
    ("section of an attribute", |d| {
        attribute(d, OPERATION, |attribute| {
            attribute.section = Some("Use".to_owned())
        });
    }),
    ("no section", |d| {
        attribute(d, OPERATION, |attribute| attribute.section = None)
    }),
    ("the section that is called none", |d| {
        attribute(d, OPERATION, |attribute| {
            attribute.section = Some("none".to_owned())
        });
    }),
    ("the section without a name", |d| {
        attribute(d, OPERATION, |attribute| attribute.section = Some(String::new()));
    }),
    ("order of options", |d| {
        attribute(d, OPERATION, |attribute| attribute.options.swap(1, 2))
    }),
    ("an option less", |d| {
        attribute(d, OPERATION, |attribute| drop(attribute.options.pop()))
    }),
    ("an attribute that always applies", |d| {
        attribute(d, SCREEN, |attribute| attribute.applies_when = None);
    }),
    ("an attribute that applies when the fact is true", |d| {
        let sleeping = Expression::Read(Subject::Fact(Layout::default().sleeping()));
        attribute(d, SCREEN, |attribute| attribute.applies_when = Some(sleeping));
    }),
    ("standard that is another option", |d| {
        attribute(d, GLAZING_LOWER, |attribute| {
            attribute.standard = Standard::Option(Id::new("low_e"))
        });
    }),
    ("standard that is asked", |d| {
        attribute(d, GLAZING_LOWER, |attribute| attribute.standard = Standard::Ask)
    }),
    ("standard by a formula that gives the same option", |d| {
        let clear = Expression::Literal(Value::Option(Id::new("clear")));
        attribute(d, GLAZING_LOWER, |attribute| {
            attribute.standard = Standard::Formula(clear)
        });
    }),
    ("standard by another formula", |d| {
        let none = Expression::Literal(Value::Option(Id::new("none")));
        attribute(d, SCREEN, |attribute| {
            attribute.standard = Standard::Formula(none)
        });
    }),
    ("audience", |d| {
        attribute(d, GLAZING_LOWER, |attribute| {
            attribute.audience = Audience::Customer
        })
    }),
    ("order of attributes", |d| {
        let (upper, lower) = (
            d.attributes.at(GLAZING_UPPER).clone(),
            d.attributes.at(GLAZING_LOWER).clone(),
        );
        d.attributes.put(GLAZING_UPPER, lower);
        d.attributes.put(GLAZING_LOWER, upper);
        // What read `glazing.upper` reads it still.
        figure(d, |figure| match &mut figure.definition {
            Definition::Table(table, _) => table.columns = vec![Subject::Attribute(GLAZING_LOWER)],
            Definition::Formula(_) => panic!("it is a table"),
        });
    }),
    ("one more attribute", |d| {
        d.attributes.push(another_attribute("spacer"));
    }),
    ("one more attribute by another name", |d| {
        d.attributes.push(another_attribute("seal"));
    }),
];

const OPTIONS: &[Change] = &[
    ("id of an option", |d| {
        option(d, |option| option.id = Id::new("twin"))
    }),
    ("label of an option", |d| {
        option(d, |option| option.label.push('!'))
    }),
    ("a family less", |d| {
        option(d, |option| option.families = ids(&["opens"]))
    }),
    ("a family more", |d| {
        option(d, |option| option.families = ids(&["opens", "tilts", "lifts"]))
    }),
    ("two families run together", |d| {
        option(d, |option| option.families = ids(&["openstilts"]))
    }),
    ("a property less", |d| {
        option(d, |option| drop(option.properties.pop_first()))
    }),
    ("value of a property", |d| {
        option(d, |option| {
            drop(option.properties.insert(Id::new("deep"), Value::Bool(false)))
        });
    }),
    ("type of a property", |d| {
        option(d, |option| {
            drop(option.properties.insert(Id::new("sashes"), inches("2")))
        });
    }),
    ("a property that is an area", |d| {
        let area = Value::Area(Number::from(2));
        option(d, |option| {
            drop(option.properties.insert(Id::new("sashes"), area))
        });
    }),
    ("a property that is a date", |d| {
        let day = Value::Date(date(2026, 1, 2));
        option(d, |option| drop(option.properties.insert(Id::new("sashes"), day)));
    }),
    ("a property that is an option", |d| {
        let two = Value::Option(Id::new("2"));
        option(d, |option| drop(option.properties.insert(Id::new("sashes"), two)));
    }),
    ("a property that is not asked", |d| {
        option(d, |option| {
            drop(option.properties.insert(Id::new("sashes"), Value::NotAsked))
        });
    }),
    ("a number turned upside down", |d| {
        let half = Value::Number(Number::ratio(1, 2).expect("not zero"));
        option(d, |option| {
            drop(option.properties.insert(Id::new("sashes"), half))
        });
    }),
    ("a number less than zero", |d| {
        let below = Value::Number(Number::from(-2));
        option(d, |option| {
            drop(option.properties.insert(Id::new("sashes"), below))
        });
    }),
    ("name of a property", |d| {
        option(d, |option| {
            let deep = option.properties.remove("deep").expect("it is there");
            option.properties.insert(Id::new("dark"), deep);
        });
    }),
    ("swatch", |d| {
        option(d, |option| {
            option.swatch = Some(Swatch {
                red: 1,
                green: 3,
                blue: 2,
            })
        })
    }),
    ("no swatch", |d| option(d, |option| option.swatch = None)),
    ("plant code", |d| {
        option(d, |option| option.plant_code = Some("D2".to_owned()))
    }),
    ("no plant code", |d| option(d, |option| option.plant_code = None)),
    ("offered from", |d| {
        option(d, |option| option.validity.offered_from = Some(date(2020, 1, 2)))
    }),
    ("offered until", |d| {
        option(d, |option| option.validity.offered_until = Some(date(2026, 7, 1)))
    }),
    ("honoured until", |d| {
        option(d, |option| {
            option.validity.honoured_until = Some(date(2027, 9, 30))
        })
    }),
    ("offered for ever", |d| {
        option(d, |option| option.validity.offered_until = None)
    }),
    ("offered from the day until which it was offered", |d| {
        option(d, |option| {
            option.validity.offered_from = option.validity.offered_until;
            option.validity.offered_until = None;
        });
    }),
    ("replaced by", |d| {
        option(d, |option| option.validity.replaced_by = Some(Id::new("fixed")))
    }),
    ("not replaced", |d| {
        option(d, |option| option.validity.replaced_by = None)
    }),
];
