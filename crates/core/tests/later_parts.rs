//! An attribute of two sashes that somebody must choose (`ask`): the lower sash follows the upper one where that is there.
//!
//! Whether the upper one is there may be known, not known, or have no value; the upper one may be there and not asked. What a
//! completion leaves open of the lower sash is written down for each, for both aims.

#![expect(clippy::unwrap_used, clippy::panic, reason = "these are tests")]

use std::collections::BTreeMap;

use astragal_core::complete::{Aim, Completion, Wish};
use astragal_core::engine::Engine;
use astragal_core::limit::Limits;
use astragal_core::options::Picked;
use astragal_model::{
    Attribute, AttributeIndex, Audience, Authorities, Bounds, Catalog, Choice, Date, Declarations,
    Expression, FactIndex, Id, OptionEntry, Origin, Part, PartIndex, Pick, Scope, Setting, Site, SiteFact,
    Standard, Subject, Value, ValueType, fill,
};

const UPPER: AttributeIndex = AttributeIndex(1);

/// Whether the upper sash is there, as the catalog says it.
fn by_the_house() -> Expression {
    Expression::Read(Subject::Fact(FactIndex(0)))
}

/// A property that no option has.
fn without_a_value() -> Expression {
    Expression::Property(AttributeIndex(0), Id::new("double"))
}

fn catalog(upper: &Expression, asked_of_upper: bool) -> Catalog {
    let mut declared = Declarations::empty("sashes");
    declared.facts.push(SiteFact {
        id: Id::new("two"),
        label: "Two sashes".to_owned(),
        value_type: ValueType::Bool,
        options: Vec::new(),
        of: Scope::House,
        bounds: Bounds::default(),
        step: None,
        taken_as: None,
    });
    for (id, when) in [("upper", Some(upper.clone())), ("lower", None)] {
        declared.parts.push(Part {
            id: Id::new(id),
            kind: Id::new("sash"),
            label: id.to_owned(),
            when,
        });
    }
    let attribute = |id: &str, part, options: &[&str], applies_when, standard| Attribute {
        id: Id::new(id),
        part,
        label: id.to_owned(),
        section: None,
        options: options.iter().map(|option| OptionEntry::plain(option)).collect(),
        applies_when,
        standard,
        audience: Audience::Customer,
    };
    let kind = attribute("kind", None, &["hung"], None, Standard::Option(Id::new("hung")));
    declared.attributes.push(kind);
    let of_upper = Expression::And(vec![
        upper.clone(),
        Expression::Literal(Value::Bool(asked_of_upper)),
    ]);
    for (part, applies_when) in [(0, Some(of_upper)), (1, None)] {
        let part = Some(PartIndex(part));
        let options = ["ordinary", "tempered"];
        let safety = attribute("safety", part, &options, applies_when, Standard::Ask);
        declared.attributes.push(safety);
    }
    Catalog::new(declared).unwrap()
}

/// Both safety glasses in words: of what is filled without a search, and of the first completion for each aim.
fn completed(catalog: &Catalog, two: Option<bool>, picked: Option<usize>) -> [String; 3] {
    let site = Site {
        measures: Default::default(),
        facts: [two.map(Value::Bool)].into_iter().collect(),
        ..Site::default()
    };
    let authorities = Authorities::default();
    let setting = Setting {
        catalog,
        book: None,
        policy: None,
        site: &site,
        waivers: &[],
        authorities: &authorities,
        date: Date::constant(2026, 3, 1),
    };
    let engine = Engine::new(catalog, None, &authorities, 0, &Limits::default()).unwrap();
    let prepared = engine.prepare(&setting).unwrap();
    let picks: Vec<Picked> = picked
        .into_iter()
        .map(|value| Picked {
            attribute: UPPER,
            value,
            pinned: false,
            honoured: false,
        })
        .collect();
    let of_aim = |aim| {
        let wish = Wish {
            setting: &setting,
            picks: &picks,
            quoted: &BTreeMap::new(),
            aim,
            near: None,
            count: 1,
        };
        match engine.complete(&prepared, &wish).unwrap() {
            Completion::Found(units) => format!("found: {}", words(&units.first().unwrap().unit)),
            Completion::Depends(unit) => format!("depends: {}", words(&unit.unit)),
            Completion::Impossible => panic!("impossible"),
        }
    };
    let options = &catalog.declarations().attributes.at(UPPER).options;
    let as_picks: Vec<Pick> = picked
        .into_iter()
        .map(|value| Pick {
            attribute: UPPER,
            option: options.get(value).unwrap().id.clone(),
            quoted: None,
        })
        .collect();
    let filled = words(&fill(&setting, &as_picks));
    [filled, of_aim(Aim::Standard), of_aim(Aim::Cheapest)]
}

fn words(unit: &astragal_model::Unit) -> String {
    let word = |choice: &Choice| match choice {
        Choice::Open => "open".to_owned(),
        Choice::NotAsked => "not asked".to_owned(),
        Choice::Chosen { option, origin } => match origin {
            Origin::Picked { .. } => format!("{option} (picked)"),
            Origin::Standard => option.to_string(),
            Origin::Completed => format!("{option} (completed)"),
        },
    };
    let words: Vec<String> = unit.choices.values().skip(UPPER.0).map(word).collect();
    words.join(", ")
}

#[test]
fn where_the_first_part_may_not_be_there_what_must_be_asked_stays_open() {
    let catalog = catalog(&by_the_house(), true);
    let expected = ["open, open", "depends: open, open", "depends: open, open"];
    assert_eq!(completed(&catalog, None, None), expected);
    // What was picked for the upper sash stands for the lower one only where there is an upper one.
    let expected = [
        "tempered (picked), open",
        "depends: tempered (picked), open",
        "depends: tempered (picked), open",
    ];
    assert_eq!(completed(&catalog, None, Some(1)), expected);
}

#[test]
fn where_the_first_part_is_there_its_choice_stands_for_the_next() {
    let catalog = catalog(&by_the_house(), true);
    let expected = [
        "tempered (picked), tempered",
        "found: tempered (picked), tempered",
        "found: tempered (picked), tempered",
    ];
    assert_eq!(completed(&catalog, Some(true), Some(1)), expected);
    let expected = ["open, open", "found: open, open", "found: open, open"];
    assert_eq!(completed(&catalog, Some(true), None), expected);
    let expected = [
        "not asked, open",
        "found: not asked, open",
        "found: not asked, open",
    ];
    assert_eq!(completed(&catalog, Some(false), None), expected);
}

#[test]
fn where_it_has_no_value_or_the_first_is_not_asked_what_must_be_asked_stays_open() {
    let expected = [
        "not asked, open",
        "found: not asked, open",
        "found: not asked, open",
    ];
    assert_eq!(
        completed(&catalog(&without_a_value(), false), Some(true), None),
        expected
    );
    assert_eq!(
        completed(&catalog(&by_the_house(), false), Some(true), None),
        expected
    );
}
