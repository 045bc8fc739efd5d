//! Catalogs written down in a few lines: attributes, what does not go together, what costs together, conditions on sizes.
//!
//! "Grey does not go with triple glass where the opening is over 40 wide" is one [`Together`] among the forbidden.
//!
//! Always holds: what is made is a catalog like any other; its meaning is `judge`'s and nobody else's.

#![allow(dead_code, reason = "every test that includes this uses a part of it")]

pub(crate) mod random;

use std::collections::BTreeMap;

use astragal_model::{
    Amount, AmountKind, Attribute, AttributeIndex, Audience, Authorities, Book, Bounds, Catalog, Class,
    Comparison, Currency, Date, Declarations, Effect, Expression, Id, Measure, MeasureIndex, Measured,
    Number, OptionEntry, PriceItem, Requirement, Rule, Setting, Site, Standard, Subject, Template, Value,
    ValueType,
};

/// A catalog in a few lines.
#[derive(Clone, Debug, Default)]
pub(crate) struct Plain {
    pub(crate) attributes: Vec<Asked>,
    /// No unit has all of these.
    pub(crate) forbidden: Vec<Together>,
    /// A unit with all of these costs so many minor units.
    pub(crate) priced: Vec<(Together, i64)>,
    pub(crate) measures: usize,
}

/// An attribute with its options, and what it takes for it to be asked.
#[derive(Clone, Debug)]
pub(crate) struct Asked {
    pub(crate) name: String,
    pub(crate) options: Vec<String>,
    pub(crate) applies: Option<Together>,
}

/// Options of some attributes by position, where a condition on the opening holds.
#[derive(Clone, Debug, Default)]
pub(crate) struct Together {
    pub(crate) options: Vec<(usize, usize)>,
    pub(crate) gate: Option<Gate>,
}

/// Whether a measure is above so many inches, or whether it is not.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) struct Gate {
    pub(crate) measure: usize,
    pub(crate) above: i64,
    pub(crate) holds: bool,
}

/// A catalog with its price book.
pub(crate) struct Made {
    pub(crate) catalog: Catalog,
    pub(crate) book: Book,
    authorities: Authorities,
}

/// The condition that the first measure is above 36 inches, or that it is not.
pub(crate) const WIDE: Gate = Gate {
    measure: 0,
    above: 36,
    holds: true,
};
/// The other way round.
pub(crate) const NARROW: Gate = Gate { holds: false, ..WIDE };

impl Together {
    /// These options, whatever the opening.
    pub(crate) fn of(options: &[(usize, usize)]) -> Self {
        Self {
            options: options.to_vec(),
            gate: None,
        }
    }

    /// These options, where the condition holds.
    pub(crate) fn where_is(options: &[(usize, usize)], gate: Option<Gate>) -> Self {
        Self {
            options: options.to_vec(),
            gate,
        }
    }
}

impl Plain {
    /// Attributes `a0`, `a1`, ... with so many options each, always asked, and one measure.
    pub(crate) fn of(options: &[usize]) -> Self {
        let attribute = |(at, count): (usize, &usize)| Asked {
            name: format!("a{at}"),
            options: (0..*count).map(|option| format!("o{option}")).collect(),
            applies: None,
        };
        Self {
            attributes: options.iter().enumerate().map(attribute).collect(),
            measures: 1,
            ..Self::default()
        }
    }

    /// The catalog, with a book in whole minor units.
    pub(crate) fn made(&self) -> Made {
        let mut declared = Declarations::empty("plain");
        declared.measures = (0..self.measures).map(measure).collect();
        declared.attributes = self.attributes.iter().map(|one| self.attribute(one)).collect();
        let rules = self.forbidden.iter().enumerate();
        declared.rules = rules.map(|(at, together)| self.rule(at, together)).collect();
        let items = self.priced.iter().enumerate();
        declared.items = items.map(|(at, (together, _))| self.item(at, together)).collect();
        let mut book = book(&declared.id);
        for (at, (_, cents)) in self.priced.iter().enumerate() {
            let amount = Number::ratio(*cents, 100).unwrap();
            book.amounts
                .insert(Id::new(&format!("p{at}")), Amount::Money(amount));
        }
        Made {
            catalog: Catalog::new(declared).unwrap(),
            book,
            authorities: Authorities::default(),
        }
    }

    fn attribute(&self, asked: &Asked) -> Attribute {
        Attribute {
            id: Id::new(&asked.name),
            part: None,
            label: asked.name.clone(),
            section: None,
            options: asked.options.iter().map(|one| OptionEntry::plain(one)).collect(),
            applies_when: asked.applies.as_ref().map(|together| self.condition(together)),
            standard: Standard::Ask,
            audience: Audience::Customer,
        }
    }

    fn rule(&self, at: usize, together: &Together) -> Rule {
        Rule {
            id: Id::new(&format!("r{at}")),
            part: None,
            authority: Id::new("plant"),
            effect: Effect::Block,
            when: Some(self.condition(together)),
            requirement: Requirement::Expression(Expression::Literal(Value::Bool(false))),
            message: Template::text("these do not go together"),
            basis: None,
            waivable: false,
        }
    }

    fn item(&self, at: usize, together: &Together) -> PriceItem {
        PriceItem {
            id: Id::new(&format!("p{at}")),
            part: None,
            label: format!("p{at}"),
            class: Class::Goods,
            tax_class: None,
            when: Some(self.condition(together)),
            amount: AmountKind::Flat,
            quantity: None,
        }
    }

    fn condition(&self, together: &Together) -> Expression {
        let options = together.options.iter().map(|(attribute, option)| {
            let name = &self.attributes[*attribute].options[*option];
            Expression::is_option(AttributeIndex(*attribute), name)
        });
        Expression::And(options.chain(together.gate.map(gate)).collect())
    }
}

impl Made {
    /// The same book with other declarations.
    pub(crate) fn with(self, declared: Declarations) -> Self {
        Self {
            catalog: Catalog::new(declared).unwrap(),
            ..self
        }
    }

    /// The setting with these sizes; `None` where it was not measured.
    pub(crate) fn setting<'a>(&'a self, site: &'a Site) -> Setting<'a> {
        Setting {
            catalog: &self.catalog,
            book: Some(&self.book),
            policy: None,
            site,
            waivers: &[],
            authorities: &self.authorities,
            date: Date::constant(2026, 3, 1),
        }
    }
}

/// A site of these sizes in inches.
pub(crate) fn site(sizes: &[Option<i64>]) -> Site {
    let measured = |size: &Option<i64>| {
        size.map(|inches| Measured {
            value: Value::Length(Number::from(inches)),
            deducted_by: None,
        })
    };
    Site {
        measures: sizes.iter().map(measured).collect(),
        facts: Default::default(),
        ..Site::default()
    }
}

fn gate(gate: Gate) -> Expression {
    let measure = Expression::Read(Subject::Measure(MeasureIndex(gate.measure)));
    let inches = Expression::Literal(Value::Length(Number::from(gate.above)));
    let above = Expression::Compare(Comparison::Greater, Box::new(measure), Box::new(inches));
    if gate.holds {
        above
    } else {
        Expression::Not(Box::new(above))
    }
}

fn measure(at: usize) -> Measure {
    Measure {
        id: Id::new(&format!("m{at}")),
        label: format!("m{at}"),
        value_type: ValueType::Length,
        step: None,
        bounds: Bounds::default(),
        taken_as: None,
    }
}

fn book(catalog: &Id) -> Book {
    let currency = Currency::from_code("USD").unwrap();
    Book {
        id: Id::new("book"),
        label: "Book".to_owned(),
        catalog: catalog.clone(),
        currency,
        round_to: currency.minor_unit(),
        from: None,
        until: None,
        amounts: BTreeMap::new(),
        sheets: BTreeMap::new(),
        grids: BTreeMap::new(),
        tail: Vec::new(),
    }
}
