//! Laws of judging that need no second opinion: the same answer twice, no matter in which order things are declared,
//! and learning more never changes what was known already.

use std::collections::BTreeSet;

use astragal_model::{
    Attribute, AttributeIndex, Audience, Authorities, Bounds, Catalog, Choice, Comparison, Declarations,
    DeductedBy, Definition, Expression, Figure, Id, Measure, Measured, OptionEntry, Outcome, Row, RowMatch,
    Setting, Site, Standard, Subject, Table, Unit, Value, ValueType, Verdict, fill, judge,
};
use astragal_oracle::chance::Chance;
use astragal_oracle::compare::{is_open, said};
use astragal_oracle::generate::{Case, Size, World, value};
use astragal_oracle::reading::{Answer, Failing, Line, Price, Reading, stands};

/// How many times something is learnt, at least.
const LEARNT_AT_LEAST: u64 = 20_000;

fn unit_of(world: &World, count: u64, case: &Case) -> Unit {
    let filled = fill(&world.setting(case), &case.picks);
    world.unit(count, case, &filled)
}

#[test]
fn judging_the_same_unit_twice_gives_the_same_judgement() {
    for seed in 0..2_000 {
        let world = World::new(seed, Size::USUAL).unwrap();
        let again = World::new(seed, Size::USUAL).unwrap();
        for count in 0..3 {
            let (case, same) = (world.case(count), again.case(count));
            let (unit, unit_again) = (unit_of(&world, count, &case), unit_of(&again, count, &same));
            assert_eq!(unit, unit_again, "seed {seed}, case {count}");
            let once = judge(&world.setting(&case), &unit);
            assert_eq!(
                once,
                judge(&world.setting(&case), &unit),
                "seed {seed}, case {count}"
            );
            assert_eq!(
                once,
                judge(&again.setting(&same), &unit),
                "seed {seed}, case {count}"
            );
        }
    }
}

#[test]
fn the_order_of_rules_items_and_notices_changes_nothing() {
    for seed in 0..3_000 {
        let world = World::new(seed, Size::USUAL).unwrap();
        let reversed = world.reversed().unwrap();
        for count in 0..3 {
            let case = world.case(count);
            let unit = unit_of(&world, count, &case);
            assert_eq!(
                unit_of(&reversed, count, &case),
                unit,
                "seed {seed}, case {count}"
            );
            let forwards = judge(&world.setting(&case), &unit);
            let backwards = judge(&reversed.setting(&case), &unit);
            let forwards = said(world.catalog.declarations(), &forwards);
            let backwards = said(reversed.catalog.declarations(), &backwards);
            assert_eq!(forwards, backwards, "seed {seed}, case {count}");
        }
    }
}

/// One thing that was not known, and the site on which it is.
fn learnt(world: &World, site: &Site, chance: &mut Chance) -> Vec<(String, Site)> {
    let declared = world.catalog.declarations();
    let mut learnt = Vec::new();
    for (index, measure) in declared.measures.iter() {
        let mut more = site.clone();
        match site.measures.get(index).cloned().flatten() {
            None => {
                let measured = Measured {
                    value: value(chance, measure.value_type),
                    deducted_by: None,
                };
                more.measures.put(index, Some(measured));
                learnt.push((format!("measure {}", measure.id), more));
            }
            Some(mut measured) if measured.deducted_by.is_none() => {
                measured.deducted_by = chance.one_of(&DeductedBy::ALL).copied();
                more.measures.put(index, Some(measured));
                learnt.push((format!("deducted by {}", measure.id), more));
            }
            Some(_) => {}
        }
    }
    for (index, fact) in declared.facts.iter() {
        if site.facts.get(index).cloned().flatten().is_none() {
            let mut more = site.clone();
            more.facts.put(index, Some(value(chance, fact.value_type)));
            learnt.push((format!("fact {}", fact.id), more));
        }
    }
    learnt
}

/// Whether an answer that wanted these may have changed now that some things are known.
fn may_change(wants: &BTreeSet<String>, known: &BTreeSet<String>) -> bool {
    !wants.is_disjoint(known)
}

/// The reading without the reasons of what has no value: the first of several may become known later.
fn without_reasons(mut reading: Reading) -> Reading {
    for (failing, _) in reading.rules.values_mut() {
        if let Failing::NoRow(reason) = failing {
            reason.clear();
        }
    }
    for (value, exists) in reading.figures.values_mut() {
        for answer in [value, exists] {
            if let Answer::Nothing(reason) = answer {
                reason.clear();
            }
        }
    }
    reading
}

/// What changed although it did not want what became known; `passing` names rules that are not compared.
fn changed(before: &Reading, after: &Reading, known: &BTreeSet<String>, passing: &str) -> Vec<String> {
    let mut changed = Vec::new();
    let mut note = |what: &str, name: &str, free: bool, same: bool| {
        if !free && !same {
            changed.push(format!("{what} {name}"));
        }
    };
    for name in before
        .rules
        .keys()
        .chain(after.rules.keys())
        .collect::<BTreeSet<_>>()
    {
        let (then, now) = (before.rules.get(name), after.rules.get(name));
        let of_item = name
            .strip_prefix("has-a-price ")
            .and_then(|item| before.items.get(item));
        // An open attribute whose condition is unknown is listed as open, not as undecided.
        let of_open = name
            .strip_suffix(".applies")
            .and_then(|attribute| before.open.get(attribute));
        let free = match (then, of_item, of_open) {
            (Some((Failing::Undecided(wants), _)), _, _)
            | (None, Some((Line::Unknown(wants), _)), _)
            | (None, _, Some(wants)) => may_change(wants, known),
            _ => name
                .rsplit_once('.')
                .is_some_and(|(attribute, _)| attribute == passing),
        };
        note("rule", name, free, then == now);
    }
    for (name, (value, exists)) in &before.figures {
        let Some((value_now, exists_now)) = after.figures.get(name) else {
            continue;
        };
        for (then, now) in [(value, value_now), (exists, exists_now)] {
            let free = matches!(then, Answer::Wants(wants) if may_change(wants, known));
            note("figure", name, free, then == now);
        }
    }
    for name in before
        .items
        .keys()
        .chain(after.items.keys())
        .collect::<BTreeSet<_>>()
    {
        let (then, now) = (
            before.items.get(name).map(|item| &item.0),
            after.items.get(name).map(|item| &item.0),
        );
        let free = matches!(then, Some(Line::Unknown(wants)) if may_change(wants, known));
        note("item", name, free, then == now);
    }
    for name in before
        .notices
        .keys()
        .chain(after.notices.keys())
        .collect::<BTreeSet<_>>()
    {
        let (then, now) = (before.notices.get(name), after.notices.get(name));
        let free = matches!(then, Some(Some(wants)) if may_change(wants, known));
        note("notice", name, free, then == now);
    }
    let free = matches!(&before.total, Price::Unknown(wants) if may_change(wants, known));
    note("total", "", free, before.total == after.total);
    note(
        "verdict",
        "",
        before.verdict != Verdict::Broken,
        before.verdict == after.verdict,
    );
    changed
}

/// Kleene: what is known stays, and what is unknown stays while what it wants stays unknown.
#[test]
fn learning_a_measure_or_fact_changes_only_what_wanted_it() {
    let (mut steps, mut settled, mut seed) = (0_u64, 0_u64, 0_u64);
    while steps < LEARNT_AT_LEAST {
        let world = World::new(seed, Size::USUAL).unwrap();
        let declared = world.catalog.declarations();
        for count in 0..6 {
            let case = world.case(count);
            let unit = unit_of(&world, count, &case);
            let before = without_reasons(said(declared, &judge(&world.setting(&case), &unit)));
            let filled = stands(declared, &fill(&world.setting(&case), &case.picks));
            for (known, site) in learnt(&world, &case.site, &mut Chance::new(seed ^ count)) {
                let more = Case { site, ..case.clone() };
                let after = without_reasons(said(declared, &judge(&world.setting(&more), &unit)));
                let found = changed(&before, &after, &[known.clone()].into(), "");
                assert!(
                    found.is_empty(),
                    "seed {seed}, case {count}: learning {known} changed {found:?}"
                );
                let refilled = stands(declared, &fill(&world.setting(&more), &case.picks));
                for (name, stand) in filled.iter().filter(|(_, stand)| !is_open(stand)) {
                    assert_eq!(
                        refilled.get(name),
                        Some(stand),
                        "seed {seed}, case {count}: {known}, {name}"
                    );
                }
                steps += 1;
                settled += u64::from(before != after);
            }
        }
        seed += 1;
    }
    assert!(settled * 3 > steps, "only {settled} of {steps} changed anything");
}

#[test]
fn filling_an_open_attribute_changes_only_what_wanted_it() {
    let (mut steps, mut settled, mut seed) = (0_u64, 0_u64, 0_u64);
    while steps < LEARNT_AT_LEAST {
        let world = World::new(seed, Size::USUAL).unwrap();
        let declared = world.catalog.declarations();
        for count in 0..6 {
            let case = world.case(count);
            let setting = world.setting(&case);
            let unit = unit_of(&world, count, &case);
            let before = without_reasons(said(declared, &judge(&setting, &unit)));
            for (index, attribute) in declared.attributes.iter() {
                let name = world.catalog.name_of(Subject::Attribute(index));
                if !before.open.contains_key(&name) || unit.choices.get(index).is_none() {
                    continue;
                }
                let mut more = unit.clone();
                more.choices
                    .put(index, Choice::standard(attribute.options[0].id.as_str()));
                let after = without_reasons(said(declared, &judge(&setting, &more)));
                let asked = |reading: &Reading| !reading.rules.contains_key(&format!("{name}.applies"));
                if !asked(&before) || !asked(&after) {
                    continue;
                }
                // Who reads an attribute that waits for something wants that, and not the choice.
                let mut known = before.open.get(&name).cloned().unwrap_or_default();
                known.insert(format!("choice {name}"));
                let found = changed(&before, &after, &known, &name);
                assert!(
                    found.is_empty(),
                    "seed {seed}, case {count}: choosing {name} changed {found:?}"
                );
                steps += 1;
                settled += u64::from(before.rules != after.rules || before.figures != after.figures);
            }
        }
        seed += 1;
    }
    assert!(settled * 3 > steps, "only {settled} of {steps} changed anything");
}

/// A figure of options that is unknown without the measure, and has no row with one.
fn with_a_figure_without_rows() -> (Declarations, Expression, Expression) {
    let mut declared = Declarations::empty("small");
    declared.attributes.push(Attribute {
        id: Id::new("mesh"),
        part: None,
        label: "Mesh".to_owned(),
        section: None,
        options: vec![OptionEntry::plain("fine")],
        applies_when: Some(Expression::Literal(Value::Bool(false))),
        standard: Standard::Ask,
        audience: Audience::Customer,
    });
    let measure = declared.measures.push(Measure {
        id: Id::new("width"),
        label: "Width".to_owned(),
        value_type: ValueType::Length,
        step: None,
        bounds: Bounds::default(),
        taken_as: None,
    });
    let figure = declared.figures.push(Figure {
        id: Id::new("kind"),
        part: None,
        label: "Kind".to_owned(),
        value_type: ValueType::Option,
        unit: None,
        shown: false,
        definition: Definition::Table(
            Table {
                columns: vec![Subject::Measure(measure)],
                rows: Vec::<Row>::new().into(),
            },
            RowMatch::First,
        ),
    });
    (
        declared,
        Expression::attribute(AttributeIndex(0)),
        Expression::Read(Subject::Figure(figure)),
    )
}

/// What a figure of truth comes to before and after the width is known.
#[expect(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    reason = "the catalog stands above"
)]
fn before_and_after(mut declared: Declarations, formula: Expression) -> [Outcome; 2] {
    declared.figures.push(Figure {
        id: Id::new("truth"),
        part: None,
        label: "Truth".to_owned(),
        value_type: ValueType::Bool,
        unit: None,
        shown: false,
        definition: Definition::Formula(formula),
    });
    let catalog = Catalog::new(declared).unwrap();
    [
        None,
        Some(Measured {
            value: Value::Length(36.into()),
            deducted_by: None,
        }),
    ]
    .map(|width| {
        let site = Site {
            measures: vec![width].into(),
            ..Site::default()
        };
        let authorities = Authorities::default();
        let date = astragal_model::Date::constant(2026, 11, 25);
        let setting = Setting {
            catalog: &catalog,
            book: None,
            policy: None,
            site: &site,
            waivers: &[],
            authorities: &authorities,
            date,
        };
        judge(&setting, &fill(&setting, &[])).figures[1].outcome.clone()
    })
}

/// `mesh == kind` is not decided while `kind` is unknown, although a mesh that is not asked equals nothing: `kind` may
/// come to have no row, and then the comparison has no value.
#[test]
fn a_comparison_with_what_is_not_asked_waits_for_the_other_side() {
    let (declared, mesh, kind) = with_a_figure_without_rows();
    let equal = Expression::Compare(Comparison::Equal, Box::new(mesh), Box::new(kind));
    let [before, after] = before_and_after(declared, equal);
    assert!(matches!(before, Outcome::Unknown(_)), "{before:?}");
    assert!(matches!(after, Outcome::Undefined(_)), "{after:?}");
}

/// `kind == "fine" ? true : true` is unknown while `kind` is: the condition may come to have no value.
#[test]
fn a_conditional_waits_for_its_condition_although_both_sides_agree() {
    let (declared, _, kind) = with_a_figure_without_rows();
    let fine = Expression::Literal(Value::Option(Id::new("fine")));
    let condition = Expression::Compare(Comparison::Equal, Box::new(kind), Box::new(fine));
    let sides = || Box::new(Expression::Literal(Value::Bool(true)));
    let [before, after] = before_and_after(
        declared,
        Expression::Conditional(Box::new(condition), sides(), sides()),
    );
    assert!(matches!(before, Outcome::Unknown(_)), "{before:?}");
    assert!(matches!(after, Outcome::Undefined(_)), "{after:?}");
}
