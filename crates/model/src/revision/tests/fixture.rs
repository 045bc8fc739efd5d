//! A catalog, a book and a policy in which every field of the model is filled with something.
//!
//! [`Layout`] says in which order lists are written that have no order; positions are looked up by name, so that two
//! layouts say the same thing.

mod drawing;
mod rules;

use std::collections::{BTreeMap, BTreeSet};

use jiff::civil::date;

use crate::attribute::{Attribute, Audience, OptionEntry, Standard, Swatch, Validity};
use crate::bounds::Bounds;
use crate::catalog::{Declarations, Part};
use crate::example::{Example, ExpectedTotal};
use crate::expression::{Comparison, Expression, Function, Subject, Unit};
use crate::id::{AttributeIndex, FactIndex, FigureIndex, Id, Indexed, MeasureIndex, PartIndex};
use crate::price::{AmountKind, Beyond, Class, PriceItem};
use crate::rule::{Notice, NoticeKind};
use crate::site::{DeductedBy, Measure, Measured, Scope, Site, SiteFact};
use crate::site_check::SiteCheck;
use crate::table::Cell;
use crate::template::Template;
use crate::unit::Pick;
use crate::value::{Value, ValueType};
use astragal_exact::Number;
use astragal_exact::measure_text::LengthUnit;
use rules::{figures, rules};

pub(super) const UPPER: PartIndex = PartIndex(0);
pub(super) const OPERATION: AttributeIndex = AttributeIndex(0);
pub(super) const SCREEN: AttributeIndex = AttributeIndex(1);
pub(super) const GLAZING_UPPER: AttributeIndex = AttributeIndex(2);
pub(super) const GLAZING_LOWER: AttributeIndex = AttributeIndex(3);

/// Which of the lists without order are written backwards.
#[derive(Clone, Copy, Default)]
pub(super) struct Layout {
    pub(super) authorities: bool,
    pub(super) measures: bool,
    pub(super) facts: bool,
    pub(super) figures: bool,
    pub(super) rules: bool,
    pub(super) items: bool,
    pub(super) notices: bool,
    pub(super) examples: bool,
    pub(super) columns: bool,
    pub(super) allowed_rows: bool,
    pub(super) only_rows: bool,
    pub(super) intervals: bool,
    pub(super) picks: bool,
}

impl Layout {
    fn position(backwards: bool, of: usize, among: usize) -> usize {
        if backwards { among - 1 - of } else { of }
    }

    pub(super) fn width(self) -> MeasureIndex {
        MeasureIndex(Self::position(self.measures, 0, 2))
    }

    pub(super) fn height(self) -> MeasureIndex {
        MeasureIndex(Self::position(self.measures, 1, 2))
    }

    pub(super) fn sleeping(self) -> FactIndex {
        FactIndex(Self::position(self.facts, 0, 2))
    }

    pub(super) fn zone(self) -> FactIndex {
        FactIndex(Self::position(self.facts, 1, 2))
    }

    pub(super) fn united(self) -> FigureIndex {
        FigureIndex(Self::position(self.figures, 0, 3))
    }

    pub(super) fn thickness(self) -> FigureIndex {
        FigureIndex(Self::position(self.figures, 1, 3))
    }
}

fn turned<T>(mut things: Vec<T>, backwards: bool) -> Vec<T> {
    if backwards {
        things.reverse();
    }
    things
}

pub(super) fn number(text: &str) -> Number {
    Number::from_decimal(text).expect("a decimal")
}

pub(super) fn inches(text: &str) -> Value {
    Value::Length(number(text))
}

pub(super) fn ids(texts: &[&str]) -> BTreeSet<Id> {
    texts.iter().map(|text| Id::new(text)).collect()
}

pub(super) fn one_of(options: &[&str]) -> Cell {
    Cell::OneOf(
        options
            .iter()
            .map(|option| Value::Option(Id::new(option)))
            .collect::<BTreeSet<_>>()
            .into(),
    )
}

pub(super) fn compare(comparison: Comparison, left: Expression, right: Expression) -> Expression {
    Expression::Compare(comparison, Box::new(left), Box::new(right))
}

pub(super) fn literal(value: Value) -> Expression {
    Expression::Literal(value)
}

pub(super) fn declarations(layout: Layout) -> Declarations {
    Declarations {
        id: Id::new("hung"),
        label: "Hung windows".to_owned(),
        length_unit: LengthUnit::Inch,
        authorities: turned(
            vec![
                (Id::new("heritage"), "Heritage board".to_owned()),
                (Id::new("lender"), "Lender".to_owned()),
            ],
            layout.authorities,
        ),
        parts: parts().into(),
        attributes: attributes(layout).into(),
        measures: turned(measures(), layout.measures).into(),
        facts: turned(facts(), layout.facts).into(),
        site_checks: turned(site_checks(), layout.facts),
        figures: turned(figures(layout), layout.figures).into(),
        rules: turned(rules(layout), layout.rules),
        room_rules: turned(rules::room_rules(layout), layout.rules),
        items: turned(items(layout), layout.items).into(),
        notices: turned(notices(layout), layout.notices),
        drawing: Some(drawing::drawing(layout)),
        examples: turned(examples(layout), layout.examples),
    }
}

fn parts() -> Vec<Part> {
    vec![
        Part {
            id: Id::new("upper"),
            kind: Id::new("sash"),
            label: "Upper sash".to_owned(),
            when: Some(Expression::is_option(OPERATION, "double")),
        },
        Part {
            id: Id::new("lower"),
            kind: Id::new("sash"),
            label: "Lower sash".to_owned(),
            when: None,
        },
    ]
}

fn attributes(layout: Layout) -> Vec<Attribute> {
    let double = OptionEntry {
        id: Id::new("double"),
        label: "Double hung".to_owned(),
        families: ids(&["opens", "tilts"]),
        swatch: Some(Swatch {
            red: 1,
            green: 2,
            blue: 3,
        }),
        properties: BTreeMap::from([
            (Id::new("sashes"), Value::Number(Number::from(2))),
            (Id::new("deep"), Value::Bool(true)),
        ]),
        plant_code: Some("DH".to_owned()),
        validity: Validity {
            offered_from: Some(date(2020, 1, 1)),
            offered_until: Some(date(2026, 6, 30)),
            honoured_until: Some(date(2026, 9, 30)),
            replaced_by: Some(Id::new("single")),
        },
    };
    let glazing = |part| Attribute {
        id: Id::new("glazing"),
        part: Some(PartIndex(part)),
        label: "Glazing".to_owned(),
        section: None,
        options: vec![OptionEntry::plain("clear"), OptionEntry::plain("low_e")],
        applies_when: None,
        standard: Standard::Option(Id::new("clear")),
        audience: Audience::Plant,
    };
    vec![
        Attribute {
            id: Id::new("operation"),
            part: None,
            label: "Operation".to_owned(),
            section: Some("Opening".to_owned()),
            options: vec![double, OptionEntry::plain("single"), OptionEntry::plain("fixed")],
            applies_when: None,
            standard: Standard::Ask,
            audience: Audience::Customer,
        },
        Attribute {
            id: Id::new("screen"),
            part: None,
            label: "Screen".to_owned(),
            section: None,
            options: vec![OptionEntry::plain("none"), OptionEntry::plain("half")],
            applies_when: Some(Expression::Not(Box::new(Expression::is_option(
                OPERATION, "fixed",
            )))),
            standard: Standard::Formula(Expression::Conditional(
                Box::new(Expression::Read(Subject::Fact(layout.sleeping()))),
                Box::new(literal(Value::Option(Id::new("half")))),
                Box::new(literal(Value::Option(Id::new("none")))),
            )),
            audience: Audience::Customer,
        },
        glazing(0),
        glazing(1),
    ]
}

fn measures() -> Vec<Measure> {
    let measure = |id: &str, step| Measure {
        id: Id::new(id),
        label: format!("Opening {id}"),
        value_type: ValueType::Length,
        step,
        bounds: Bounds {
            least: Some(Number::from(6)),
            most: None,
        },
        taken_as: None,
    };
    vec![measure("width", Number::ratio(1, 16)), measure("height", None)]
}

fn facts() -> Vec<SiteFact> {
    vec![
        SiteFact {
            id: Id::new("sleeping"),
            label: "Somebody sleeps there".to_owned(),
            value_type: ValueType::Bool,
            options: Vec::new(),
            of: Scope::Room,
            bounds: Bounds::default(),
            step: None,
            taken_as: None,
        },
        SiteFact {
            id: Id::new("zone"),
            label: "Zone".to_owned(),
            value_type: ValueType::Option,
            options: vec![
                (Id::new("cold"), "Cold".to_owned()),
                (Id::new("hot"), "Hot".to_owned()),
            ],
            of: Scope::House,
            bounds: Bounds::default(),
            step: None,
            taken_as: None,
        },
    ]
}

fn site_checks() -> Vec<SiteCheck> {
    let check = |id: &str, value| SiteCheck {
        id: Id::new(id),
        require: Expression::Literal(Value::Bool(value)),
        message: format!("Check {id}."),
    };
    vec![check("one", true), check("other", false)]
}

fn items(layout: Layout) -> Vec<PriceItem> {
    let plain = |id: &str, amount| PriceItem {
        id: Id::new(id),
        part: None,
        label: format!("The {id}"),
        class: Class::Goods,
        tax_class: None,
        when: None,
        amount,
        quantity: None,
    };
    let width = Expression::Read(Subject::Measure(layout.width()));
    vec![
        plain(
            "base",
            AmountKind::Grid {
                grid: Id::new("sizes"),
                axes: vec![layout.united(), layout.thickness()],
                beyond: Beyond::SignOff,
            },
        ),
        plain("screen", AmountKind::By(vec![SCREEN, OPERATION])),
        PriceItem {
            part: Some(UPPER),
            class: Class::Labour,
            tax_class: Some("T1".to_owned()),
            when: Some(Expression::IsAsked(SCREEN)),
            quantity: Some(Expression::Call(Function::InUnit(Unit::Foot), vec![width])),
            ..plain("fitting", AmountKind::Flat)
        },
        plain("rush", AmountKind::Percent(ids(&["base", "fitting"]))),
    ]
}

fn notices(layout: Layout) -> Vec<Notice> {
    let sleeping = Expression::Read(Subject::Fact(layout.sleeping()));
    vec![
        Notice {
            id: Id::new("check-escape"),
            part: Some(UPPER),
            kind: NoticeKind::SignOff,
            when: Some(sleeping),
            text: Template::text("Check the way out."),
            basis: Some("the local code".to_owned()),
        },
        Notice {
            id: Id::new("care"),
            part: None,
            kind: NoticeKind::Caution,
            when: None,
            text: Template::text("Wash with water."),
            basis: None,
        },
    ]
}

fn examples(layout: Layout) -> Vec<Example> {
    let pick = |attribute, option| Pick {
        attribute,
        option: Id::new(option),
        quoted: None,
    };
    let quoted = Pick {
        quoted: Some(date(2026, 6, 1)),
        ..pick(OPERATION, "double")
    };
    let width = Measured {
        value: inches("40.5"),
        deducted_by: Some(DeductedBy::Dealer),
    };
    let height = Measured {
        value: inches("60"),
        deducted_by: None,
    };
    let measures: Indexed<_, _> = turned(vec![Some(width), Some(height)], layout.measures).into();
    let facts: Indexed<_, _> = turned(
        vec![Some(Value::Bool(true)), Some(Value::Option(Id::new("cold")))],
        layout.facts,
    )
    .into();
    vec![
        Example {
            id: Id::new("large"),
            picks: turned(vec![quoted, pick(SCREEN, "half")], layout.picks),
            site: Site {
                measures,
                facts,
                ..Site::default()
            },
            date: date(2026, 7, 1),
            breaks: ids(&["too-large"]),
            undecided: Some(ids(&["screens"])),
            room_breaks: ids(&["escape"]),
            room_undecided: Some(ids(&["light"])),
            notices: Some(ids(&["care"])),
            total: Some(ExpectedTotal {
                book: Id::new("spring"),
                amount: number("412.50"),
            }),
        },
        Example {
            id: Id::new("nothing"),
            picks: Vec::new(),
            site: Site::default(),
            date: date(2026, 7, 1),
            breaks: BTreeSet::new(),
            undecided: None,
            room_breaks: BTreeSet::new(),
            room_undecided: None,
            notices: None,
            total: None,
        },
    ]
}
