//! A catalog: attributes, options, rules, figures, price items without amounts, and notices of one product line.
//!
//! [`Declarations`] are what a catalog says, as plain data; [`Catalog::new`] checks that their positions are in
//! range and that nothing depends on itself, and works out the order of filling.
//!
//! Always holds: figures, standards and `applies_when` form no cycle; every position is in range.
//! Cost: construction is linear in the size of all expressions and tables.

mod positions;

use std::fmt;

use crate::attribute::{Attribute, Standard};
use crate::drawing::Drawing;
use crate::example::Example;
use crate::expression::{Expression, Subject};
use crate::id::{AttributeIndex, FactIndex, FigureIndex, Id, Indexed, ItemIndex, MeasureIndex, PartIndex};
use crate::plan::{Plan, Step};
use crate::policy::{Policy, PolicyTerms};
use crate::price::PriceItem;
use crate::rule::{Figure, Notice, RoomRule, Rule};
use crate::site::{Measure, SiteFact};
use crate::site_check::SiteCheck;
use astragal_exact::measure_text::LengthUnit;

/// What a catalog says, as plain data.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Declarations {
    /// The id of the catalog.
    pub id: Id,
    /// What a person reads.
    pub label: String,
    /// The unit in which lengths are shown and bare lengths are read.
    pub length_unit: LengthUnit,
    /// Authorities beside `plant`, `code`, `programme` and `dealer`, with their labels.
    pub authorities: Vec<(Id, String)>,
    /// The parts, in file order.
    pub parts: Indexed<PartIndex, Part>,
    /// The attributes, in display order.
    pub attributes: Indexed<AttributeIndex, Attribute>,
    /// The measures.
    pub measures: Indexed<MeasureIndex, Measure>,
    /// The site facts.
    pub facts: Indexed<FactIndex, SiteFact>,
    /// What measures and facts of one opening must agree on.
    pub site_checks: Vec<SiteCheck>,
    /// The figures.
    pub figures: Indexed<FigureIndex, Figure>,
    /// The rules.
    pub rules: Vec<Rule>,
    /// The rules over a room.
    pub room_rules: Vec<RoomRule>,
    /// The price items.
    pub items: Indexed<ItemIndex, PriceItem>,
    /// The notices.
    pub notices: Vec<Notice>,
    /// How units are drawn, where the catalog says.
    pub drawing: Option<Drawing>,
    /// The worked examples.
    pub examples: Vec<Example>,
}

/// A sash or lite that a unit may have.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Part {
    /// The id (`upper`).
    pub id: Id,
    /// What sort of part it is (`sash`).
    pub kind: Id,
    /// What a person reads.
    pub label: String,
    /// When a unit has it; `None` means always.
    pub when: Option<Expression>,
}

/// A catalog that is ready to be asked.
#[derive(Clone, Debug)]
pub struct Catalog {
    declarations: Declarations,
    plan: Plan,
}

/// Why declarations make no catalog.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum CatalogError {
    /// These steps depend on each other in a circle; the first is also what the last depends on.
    Cycle(Vec<Step>),
    /// A position lies outside of its list; files cannot cause it.
    OutOfRange(String),
}

impl fmt::Display for CatalogError {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Cycle(steps) => write!(
                formatter,
                "{} things depend on each other in a circle",
                steps.len()
            ),
            Self::OutOfRange(what) => write!(formatter, "{what} names something that is not there"),
        }
    }
}

impl std::error::Error for CatalogError {}

impl Catalog {
    /// Makes a catalog of its declarations.
    ///
    /// # Errors
    /// - [`CatalogError::Cycle`]: figures, standards or `applies_when` depend on themselves.
    /// - [`CatalogError::OutOfRange`]: a position names nothing.
    pub fn new(declarations: Declarations) -> Result<Self, CatalogError> {
        declarations.check_positions()?;
        let plan = Plan::new(&declarations, |attribute| {
            &declarations.attributes.at(attribute).standard
        })
        .map_err(CatalogError::Cycle)?;
        Ok(Self { declarations, plan })
    }

    /// Resolves a dealer policy against this catalog.
    ///
    /// # Errors
    /// As for [`Catalog::new`]; a policy's standards may close a circle that the plant's do not.
    pub fn policy(&self, terms: PolicyTerms) -> Result<Policy, CatalogError> {
        let expressions = terms.rules.iter().flat_map(positions::rule_expressions).chain(
            terms.standards.values().filter_map(|standard| {
                if let Standard::Formula(formula) = standard {
                    Some(formula)
                } else {
                    None
                }
            }),
        );
        for expression in expressions {
            self.declarations.check_expression(expression, "the policy")?;
        }
        for rule in &terms.rules {
            self.declarations.check_columns(rule)?;
            self.declarations.check_template(&rule.message, &rule.id)?;
        }
        let attributes = terms.hidden.keys().chain(terms.standards.keys());
        for attribute in attributes {
            self.declarations
                .check_subject(Subject::Attribute(*attribute), "the policy")?;
        }
        let plan = Plan::new(&self.declarations, |attribute| {
            terms
                .standards
                .get(&attribute)
                .unwrap_or(&self.declarations.attributes.at(attribute).standard)
        })
        .map_err(CatalogError::Cycle)?;
        Ok(Policy { terms, plan })
    }

    /// What the catalog says.
    #[must_use]
    pub fn declarations(&self) -> &Declarations {
        &self.declarations
    }

    /// The order of filling: every attribute and figure after all that it depends on, with the plant's standards.
    #[must_use]
    pub fn steps(&self) -> &[Step] {
        &self.plan.steps
    }

    /// The earlier parts of the kind of an attribute's part, with the attribute of the same id there, in file order.
    /// Where one of these parts exists, what stands at the first is the attribute's standard.
    #[must_use]
    pub fn earlier_parts(&self, attribute: AttributeIndex) -> Vec<(PartIndex, AttributeIndex)> {
        crate::plan::parts_before(&self.declarations, attribute)
    }

    pub(crate) fn plan(&self) -> &Plan {
        &self.plan
    }

    /// The name by which expressions and orders name a subject: `screen_mesh`, `glazing.upper`,
    /// `opening_width.deducted_by`.
    #[must_use]
    pub fn name_of(&self, subject: Subject) -> String {
        let with_part = |id: &Id, part: Option<PartIndex>| match part {
            Some(part) => format!("{id}.{}", self.declarations.parts.at(part).id),
            None => id.to_string(),
        };
        match subject {
            Subject::Attribute(index) => {
                let attribute = self.declarations.attributes.at(index);
                with_part(&attribute.id, attribute.part)
            }
            Subject::Measure(index) => self.declarations.measures.at(index).id.to_string(),
            Subject::DeductedBy(index) => format!("{}.deducted_by", self.declarations.measures.at(index).id),
            Subject::Fact(index) => self.declarations.facts.at(index).id.to_string(),
            Subject::Figure(index) => {
                let figure = self.declarations.figures.at(index);
                with_part(&figure.id, figure.part)
            }
        }
    }

    /// What a person calls a subject: its label, with the part in brackets.
    #[must_use]
    pub fn label_of(&self, subject: Subject) -> String {
        let with_part = |label: &str, part: Option<PartIndex>| match part {
            Some(part) => format!("{label} ({})", self.declarations.parts.at(part).label),
            None => label.to_owned(),
        };
        match subject {
            Subject::Attribute(index) => {
                let attribute = self.declarations.attributes.at(index);
                with_part(&attribute.label, attribute.part)
            }
            Subject::Measure(index) => self.declarations.measures.at(index).label.clone(),
            Subject::DeductedBy(index) => {
                format!("who deducts from {}", self.declarations.measures.at(index).label)
            }
            Subject::Fact(index) => self.declarations.facts.at(index).label.clone(),
            Subject::Figure(index) => {
                let figure = self.declarations.figures.at(index);
                with_part(&figure.label, figure.part)
            }
        }
    }

    /// The attribute with this name (`screen_mesh`, `glazing.upper`), if there is one.
    #[must_use]
    pub fn attribute_named(&self, name: &str) -> Option<AttributeIndex> {
        self.declarations
            .attributes
            .positions()
            .find(|index| self.name_of(Subject::Attribute(*index)) == name)
    }
}

impl Declarations {
    /// A catalog with a name and nothing in it, in inches.
    #[must_use]
    pub fn empty(id: &str) -> Self {
        Self {
            id: Id::new(id),
            label: id.to_owned(),
            length_unit: LengthUnit::Inch,
            authorities: Vec::new(),
            parts: Indexed::default(),
            attributes: Indexed::default(),
            measures: Indexed::default(),
            facts: Indexed::default(),
            site_checks: Vec::new(),
            figures: Indexed::default(),
            rules: Vec::new(),
            items: Indexed::default(),
            room_rules: Vec::new(),
            notices: Vec::new(),
            drawing: None,
            examples: Vec::new(),
        }
    }
}
