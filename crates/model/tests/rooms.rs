//! Rules over a room: at least one of its openings meets a condition.
//!
//! A catalog here has one fact of the room, whether somebody sleeps there, one measure, the clear area in square feet as a
//! number, and one rule: in such a room one opening at least has 5 of them.
#![expect(clippy::expect_used, reason = "these are tests")]

use astragal_model::{
    Authorities, Bounds, Catalog, Comparison, Date, Declarations, Effect, Expression, FactIndex, Function,
    Id, Measure, MeasureIndex, Measured, Number, Outcome, Piece, RoomFinding, RoomRule, RoomStanding,
    RoomState, RoomUnit, Scope, Setting, Site, SiteFact, Subject, Template, TradeFunction, Unit, Value,
    ValueType, Want, Wants, judge_room,
};

const SLEEPS: FactIndex = FactIndex(0);
const AREA: MeasureIndex = MeasureIndex(0);

/// A catalog with the fact, the measure and these rules.
fn catalog(rules: Vec<RoomRule>) -> Catalog {
    Catalog::new(declarations(rules)).expect("a catalog")
}

fn declarations(rules: Vec<RoomRule>) -> Declarations {
    let mut of = Declarations::empty("c");
    of.facts.push(SiteFact {
        id: Id::new("sleeps"),
        label: "Somebody sleeps there".to_owned(),
        value_type: ValueType::Bool,
        options: Vec::new(),
        of: Scope::Room,
        bounds: Bounds::default(),
        step: None,
        taken_as: None,
    });
    of.measures.push(Measure {
        id: Id::new("area"),
        label: "Area".to_owned(),
        value_type: ValueType::Number,
        step: None,
        bounds: Bounds::default(),
        taken_as: None,
    });
    of.room_rules = rules;
    of
}

/// At least one opening of so many square feet, in a room where somebody sleeps.
fn rule(id: &str, least: i64) -> RoomRule {
    RoomRule {
        id: Id::new(id),
        label: "An opening to escape by".to_owned(),
        authority: Id::new("code"),
        effect: Effect::Block,
        when: Some(Expression::Read(Subject::Fact(SLEEPS))),
        at_least_one: at_least(Expression::Read(Subject::Measure(AREA)), least),
        message: Template {
            pieces: vec![
                Piece::Text("None of them; sleeps: ".to_owned()),
                Piece::Value(Subject::Fact(SLEEPS)),
            ],
        },
        basis: Some("a code".to_owned()),
    }
}

fn at_least(size: Expression, least: i64) -> Expression {
    let least = Expression::Literal(Value::Number(Number::from(least)));
    Expression::Compare(Comparison::GreaterOrEqual, Box::new(size), Box::new(least))
}

/// A weight of glass of a thickness that is not made: it has no value.
fn without_value() -> Expression {
    let thickness = Expression::Literal(Value::Length(Number::from(1_000)));
    let area = Expression::Literal(Value::Area(Number::from(144)));
    let weight = Function::Trade(TradeFunction::PoundsOfGlass);
    at_least(Expression::Call(weight, vec![thickness, area]), 5)
}

/// What is known at an opening: whether somebody sleeps in its room, and its area.
fn site(sleeps: Option<bool>, area: Option<i64>) -> Site {
    let mut site = Site::default();
    site.facts.push(sleeps.map(Value::Bool));
    site.measures.push(area.map(|area| Measured {
        value: Value::Number(Number::from(area)),
        deducted_by: None,
    }));
    site
}

/// The findings about one room; each opening with its catalog.
fn judged(openings: &[(&Catalog, Site)], left_out: &[&str]) -> Vec<RoomFinding> {
    let authorities = Authorities {
        left_out: left_out.iter().map(|id| Id::new(id)).collect(),
    };
    let settings: Vec<Setting<'_>> = openings
        .iter()
        .map(|(catalog, site)| Setting {
            catalog,
            book: None,
            policy: None,
            site,
            waivers: &[],
            authorities: &authorities,
            date: Date::constant(2026, 11, 25),
        })
        .collect();
    let unit = Unit {
        choices: Vec::new().into_iter().collect(),
    };
    let units: Vec<RoomUnit<'_>> = settings
        .iter()
        .map(|setting| RoomUnit { setting, unit: &unit })
        .collect();
    judge_room(&units)
}

/// The one finding about a room in which somebody sleeps, whose openings have these areas.
fn bedroom(areas: &[Option<i64>]) -> RoomFinding {
    let catalog = catalog(vec![rule("escape", 5)]);
    let openings: Vec<(&Catalog, Site)> = areas
        .iter()
        .map(|area| (&catalog, site(Some(true), *area)))
        .collect();
    let mut findings = judged(&openings, &[]);
    assert_eq!(findings.len(), 1);
    findings.remove(0)
}

#[test]
fn one_opening_that_meets_it_is_enough_and_a_smaller_one_is_no_error() {
    type Row = (&'static str, &'static [Option<i64>], RoomState);
    let rows: [Row; 9] = [
        ("none meets it", &[Some(4)], RoomState::Broken),
        ("none of two", &[Some(4), Some(3)], RoomState::Broken),
        ("just enough", &[Some(5)], RoomState::Holds),
        ("a second, smaller one", &[Some(5), Some(1)], RoomState::Holds),
        ("the smaller one first", &[Some(1), Some(5)], RoomState::Holds),
        ("both", &[Some(5), Some(6)], RoomState::Holds),
        ("nobody has measured", &[None], RoomState::Undecided),
        ("the other may meet it", &[Some(4), None], RoomState::Undecided),
        ("the other cannot matter", &[None, Some(5)], RoomState::Holds),
    ];
    for (name, areas, state) in rows {
        assert_eq!(bedroom(areas).state, state, "{name}");
    }
}

#[test]
fn each_unit_says_how_it_meets_the_condition_and_what_was_read() {
    let finding = bedroom(&[Some(5), None, Some(4)]);
    let wants = Outcome::want(Want::Measure(AREA));
    let units: Vec<_> = finding.units.iter().map(|unit| unit.as_ref().unwrap()).collect();
    assert_eq!(
        units.iter().map(|unit| unit.meets.clone()).collect::<Vec<_>>(),
        [Outcome::truth(true), wants, Outcome::truth(false)]
    );
    for unit in units {
        let subjects: Vec<Subject> = unit.reads.iter().map(|read| read.subject).collect();
        assert_eq!(subjects, [Subject::Measure(AREA)]);
        assert!(unit.reads.iter().all(|read| read.directly));
    }
    assert_eq!(finding.message, "None of them; sleeps: yes");
    assert_eq!(
        (finding.label.as_str(), finding.basis.as_deref()),
        ("An opening to escape by", Some("a code"))
    );
}

#[test]
fn a_condition_without_a_value_counts_as_one_that_is_not_met() {
    let odd = RoomRule {
        at_least_one: without_value(),
        ..rule("escape", 5)
    };
    let (odd, plain) = (catalog(vec![odd]), catalog(vec![rule("escape", 5)]));
    let rows = [
        ("alone", None, RoomState::Broken),
        ("beside one that meets it", Some(Some(5)), RoomState::Holds),
        ("beside one that does not", Some(Some(4)), RoomState::Broken),
        ("beside one that may", Some(None), RoomState::Undecided),
    ];
    for (name, beside, state) in rows {
        let mut openings = vec![(&odd, site(Some(true), Some(9)))];
        openings.extend(beside.map(|area| (&plain, site(Some(true), area))));
        let findings = judged(&openings, &[]);
        assert_eq!(findings[0].state, state, "{name}");
        let meets = &findings[0].units[0].as_ref().unwrap().meets;
        assert!(matches!(meets, Outcome::Undefined(_)), "{name}");
    }
}

#[test]
fn when_it_applies_decides_whether_it_is_said_at_all() {
    let catalog = catalog(vec![rule("escape", 5)]);
    let rows = [
        ("it does not apply", Some(false), Some(1), None),
        ("it does not apply, nobody measured", Some(false), None, None),
        (
            "nobody knows, and it is not met",
            None,
            Some(1),
            Some(RoomState::Undecided),
        ),
        (
            "nobody knows, and it is met",
            None,
            Some(5),
            Some(RoomState::Holds),
        ),
        ("it applies", Some(true), Some(1), Some(RoomState::Broken)),
    ];
    for (name, sleeps, area, state) in rows {
        let findings = judged(&[(&catalog, site(sleeps, area))], &[]);
        assert_eq!(findings.first().map(|finding| finding.state), state, "{name}");
    }
    let always = RoomRule {
        when: None,
        ..rule("escape", 5)
    };
    let findings = judged(&[(&self::catalog(vec![always]), site(None, Some(1)))], &[]);
    assert_eq!(findings[0].state, RoomState::Broken);
    assert_eq!(findings[0].applies, Some(true));
}

/// An opening may say for itself what the room says otherwise; one for which the rule applies is enough.
#[test]
fn it_applies_when_it_does_by_one_of_the_openings() {
    let catalog = catalog(vec![rule("escape", 5)]);
    let by = |one: Option<bool>, other: Option<bool>| {
        let findings = judged(
            &[(&catalog, site(one, Some(1))), (&catalog, site(other, Some(1)))],
            &[],
        );
        findings.first().map(|finding| finding.state)
    };
    assert_eq!(by(Some(false), Some(true)), Some(RoomState::Broken));
    assert_eq!(by(Some(false), None), Some(RoomState::Undecided));
    assert_eq!(by(Some(false), Some(false)), None);
}

#[test]
fn units_of_two_catalogs_stand_in_one_room_each_by_its_own_words() {
    let (small, large) = (
        catalog(vec![rule("escape", 5)]),
        catalog(vec![rule("escape", 10)]),
    );
    let rows = [
        ("enough for neither", Some(4), Some(9), RoomState::Broken),
        ("enough for the first", Some(5), Some(9), RoomState::Holds),
        ("enough for the second", Some(4), Some(10), RoomState::Holds),
        ("the second is not measured", Some(4), None, RoomState::Undecided),
    ];
    for (name, one, other, state) in rows {
        let findings = judged(
            &[(&small, site(Some(true), one)), (&large, site(Some(true), other))],
            &[],
        );
        assert_eq!(findings.len(), 1, "{name}: a rule is one by its id");
        assert_eq!(findings[0].state, state, "{name}");
    }
}

#[test]
fn a_unit_whose_catalog_does_not_have_the_rule_was_not_asked_and_leaves_it_open() {
    let (with, without) = (catalog(vec![rule("escape", 5)]), catalog(Vec::new()));
    let large = || (&without, site(Some(true), Some(100)));
    for (area, state) in [(4, RoomState::Undecided), (5, RoomState::Holds)] {
        let openings = [large(), (&with, site(Some(true), Some(area))), large()];
        let findings = judged(&openings, &[]);
        assert_eq!(findings[0].state, state);
        let has_it: Vec<bool> = findings[0].units.iter().map(Option::is_some).collect();
        assert_eq!(has_it, [false, true, false]);
    }
    assert_eq!(judged(&[large()], &[]), []);
    assert_eq!(judged(&[], &[]), []);
}

#[test]
fn of_two_catalogs_the_stricter_effect_counts() {
    let with = |effect: Effect| {
        catalog(vec![RoomRule {
            effect,
            ..rule("escape", 5)
        }])
    };
    let standing = |one: Effect, other: Effect| {
        let (one, other) = (with(one), with(other));
        let openings = [
            (&one, site(Some(true), Some(1))),
            (&other, site(Some(true), Some(1))),
        ];
        judged(&openings, &[])[0].standing
    };
    let rows = [
        (Effect::Warn, Effect::Block, RoomStanding::Binds),
        (Effect::Block, Effect::SignOff, RoomStanding::Binds),
        (Effect::Warn, Effect::SignOff, RoomStanding::SignOff),
        (Effect::Warn, Effect::Warn, RoomStanding::Warns),
    ];
    for (one, other, expected) in rows {
        assert_eq!(standing(one, other), expected, "{one:?} {other:?}");
    }
}

#[test]
fn rules_come_in_the_order_of_the_first_catalog_that_declares_them() {
    let one = catalog(vec![rule("b", 5), rule("a", 5)]);
    let other = catalog(vec![rule("c", 5), rule("a", 5), rule("b", 5)]);
    let findings = judged(
        &[(&one, site(Some(true), None)), (&other, site(Some(true), None))],
        &[],
    );
    let ids: Vec<&str> = findings.iter().map(|finding| finding.id.as_str()).collect();
    assert_eq!(ids, ["b", "a", "c"]);
}

#[test]
fn effect_and_authority_say_what_follows() {
    type Row = (&'static str, Effect, &'static [&'static str], RoomStanding);
    let rows: [Row; 6] = [
        ("a code binds", Effect::Block, &[], RoomStanding::Binds),
        ("it warns", Effect::Warn, &[], RoomStanding::Warns),
        (
            "it wants a signature",
            Effect::SignOff,
            &[],
            RoomStanding::SignOff,
        ),
        (
            "codes are left out",
            Effect::Block,
            &["code"],
            RoomStanding::NotApplied,
        ),
        (
            "codes are left out, it warns",
            Effect::Warn,
            &["code"],
            RoomStanding::NotApplied,
        ),
        (
            "another is left out",
            Effect::Block,
            &["plant", "dealer"],
            RoomStanding::Binds,
        ),
    ];
    for (name, effect, left_out, standing) in rows {
        let catalog = catalog(vec![RoomRule {
            effect,
            ..rule("escape", 5)
        }]);
        let findings = judged(&[(&catalog, site(Some(true), Some(4)))], left_out);
        assert_eq!(findings[0].standing, standing, "{name}");
        assert_eq!(findings[0].state, RoomState::Broken, "{name}");
        assert_eq!(findings[0].authority, Id::new("code"), "{name}");
    }
}

/// The fact stands at another position in each of the two, so that a position of one names something else in the other.
#[test]
fn what_a_unit_waits_for_is_wanted_by_its_own_catalog() {
    let one = catalog(vec![rule("escape", 5)]);
    let mut of = declarations(Vec::new());
    of.facts.push(SiteFact {
        id: Id::new("really_sleeps"),
        ..of.facts.at(SLEEPS).clone()
    });
    of.room_rules = vec![RoomRule {
        when: Some(Expression::Read(Subject::Fact(FactIndex(1)))),
        ..rule("escape", 5)
    }];
    let other = Catalog::new(of).expect("a catalog");
    let mut second = site(Some(true), Some(4));
    second.facts.push(None);
    let findings = judged(&[(&one, site(None, Some(4))), (&other, second)], &[]);
    let waits: Vec<Option<&Wants>> = findings[0]
        .units
        .iter()
        .map(|unit| unit.as_ref().unwrap().applies.wants())
        .collect();
    let of = |fact: usize| Wants::from([Want::Fact(FactIndex(fact))]);
    assert_eq!(waits, [Some(&of(0)), Some(&of(1))]);
    assert_eq!(findings[0].state, RoomState::Undecided);
}
