//! Grounds a catalog: every binding rule and every price item becomes a relation over the attributes that it reads.
//!
//! Figures are seen through. What is left of a rule once its attributes are known is `true`, something that does not hold,
//! or a *gate*: a condition on measures, facts and waivers. What is left of an item is nothing or a *cell*: a charge to be
//! worked out when a question is prepared. "A casement is at most 36 wide" reads `operation` alone: a casement carries
//! the gate `opening_width - 0.5 <= 36`, an awning nothing.
//!
//! Always holds: a variable stands at the position of its attribute; its values are the options in catalog order, then *not
//! asked* where the attribute has a condition. Rules that warn or ask for a sign-off, and rules of authorities left out, are not
//! ground.

mod relation;
mod residual;
mod standards;
mod table;

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::rc::Rc;

use astragal_model::{
    AmountKind, AttributeIndex, Audience, Authorities, Catalog, Effect, Expression, Indexed, PolicyTerms,
    PriceItem, Requirement, Rule, Subject, Value,
};
use rustc_hash::FxHashMap;

use crate::ground::relation::{Kind, Root, TermRelation};
pub(crate) use crate::ground::residual::Residual;
use crate::index::number;
use crate::label::{CellId, GateId};
use crate::limit::{Limit, Limits};
use crate::network::{Network, Variable};
use crate::term::{Term, TermId, Terms, Translator};

pub use crate::ground::standards::needs_own_diagram;

/// A catalog whose rules are ground.
pub struct Ground {
    /// The variables and relations.
    pub network: Network,
    shared: Rc<RefCell<Shared>>,
}

impl Ground {
    /// What is left when the relations are no longer needed.
    ///
    /// # Errors
    /// When there are too many gates or cells.
    pub(crate) fn into_residual(self, limits: &Limits) -> Result<Residual, Limit> {
        drop(self.network);
        let shared = std::mem::take(&mut *self.shared.borrow_mut());
        shared.within(limits)?;
        Ok(Residual::new(shared))
    }
}

/// What all relations of one catalog share.
#[derive(Debug, Default)]
pub(crate) struct Shared {
    terms: Terms,
    /// For each attribute its values, and the properties of each.
    values: Vec<Vec<Value>>,
    properties: Vec<Vec<BTreeMap<astragal_model::Id, Value>>>,
    gates: Vec<TermId>,
    gate_numbers: FxHashMap<TermId, GateId>,
    /// How many gates each rule brought that no rule before it had.
    gates_of: BTreeMap<String, usize>,
    /// Charges and departures.
    cells: Vec<TermId>,
    cell_numbers: FxHashMap<TermId, CellId>,
    /// How many cells each item brought that no item before it had.
    cells_of: BTreeMap<String, usize>,
    /// For each attribute its standard, where that reads no attribute.
    standards: Vec<Option<TermId>>,
}

impl Shared {
    fn new(catalog: &Catalog) -> Self {
        let mut shared = Self::default();
        for attribute in catalog.declarations().attributes.values() {
            let options = attribute
                .options
                .iter()
                .map(|option| Value::Option(option.id.clone()));
            let mut values: Vec<Value> = options.collect();
            let mut properties: Vec<_> = attribute
                .options
                .iter()
                .map(|option| option.properties.clone())
                .collect();
            if attribute.applies_when.is_some() {
                values.push(Value::NotAsked);
                properties.push(BTreeMap::new());
            }
            shared.values.push(values);
            shared.properties.push(properties);
        }
        shared
    }

    fn gate(&mut self, term: TermId, rule: &str) -> GateId {
        let next = GateId(number(self.gates.len()));
        let number = *self.gate_numbers.entry(term).or_insert(next);
        if number == next {
            self.gates.push(term);
            *self.gates_of.entry(rule.to_owned()).or_default() += 1;
        }
        number
    }

    /// The gate that a rule is waived.
    fn waived(&mut self, rule: &Rule) -> GateId {
        let waived = self.terms.leaf(Term::Waived(rule.id.clone()));
        self.gate(waived, rule.id.as_str())
    }

    fn cell(&mut self, term: TermId, item: &str) -> CellId {
        let next = CellId(number(self.cells.len()));
        let number = *self.cell_numbers.entry(term).or_insert(next);
        if number == next {
            self.cells.push(term);
            *self.cells_of.entry(item.to_owned()).or_default() += 1;
        }
        number
    }
}

impl Shared {
    /// Refuses when there are too many gates or cells.
    fn within(&self, limits: &Limits) -> Result<(), Limit> {
        if self.gates.len() > limits.gates {
            return Err(Limit::Gates {
                rules: most(&self.gates_of),
                limit: limits.gates,
            });
        }
        if self.cells.len() > limits.cells {
            return Err(Limit::Cells {
                items: most(&self.cells_of),
                limit: limits.cells,
            });
        }
        Ok(())
    }
}

/// The three names that count most, the first of the alphabet among equals.
fn most(counts: &BTreeMap<String, usize>) -> Vec<String> {
    let mut counts: Vec<(&String, &usize)> = counts.iter().collect();
    counts.sort_by_key(|(_, count)| std::cmp::Reverse(**count));
    counts.into_iter().take(3).map(|(name, _)| name.clone()).collect()
}

/// Grounds a catalog, with the rules of a policy if one is given, for the authorities that bind.
#[must_use]
pub fn ground(catalog: &Catalog, policy: Option<&PolicyTerms>, authorities: &Authorities) -> Ground {
    let shared = Rc::new(RefCell::new(Shared::new(catalog)));
    let mut roots = Vec::new();
    let mut tables = Vec::new();
    let mut network = Network::default();
    {
        let mut borrowed = shared.borrow_mut();
        let shared = &mut *borrowed;
        for (index, attribute) in catalog.declarations().attributes.iter() {
            let size = shared.values.get(index.0).map_or(0, Vec::len);
            network.variable(
                &catalog.name_of(Subject::Attribute(index)),
                size.max(attribute.options.len()),
            );
        }
        let mut translator = Translator::new(catalog, &mut shared.terms);
        roots.extend(implicit(catalog, policy, &mut translator));
        let of_policy = policy.iter().flat_map(|policy| &policy.rules);
        for rule in catalog.declarations().rules.iter().chain(of_policy) {
            if rule.effect != Effect::Block || !authorities.apply(&rule.authority) {
                continue;
            }
            match table::columns(rule) {
                Some(columns) => tables.push((rule, columns)),
                None => roots.push((rule.id.to_string(), Kind::Rule, binding(&mut translator, rule))),
            }
        }
        roots.extend(charges(catalog, &mut translator));
        let (alone, departures) = standards::departures(catalog, policy, &mut translator);
        roots.extend(departures);
        shared.standards = alone;
    }
    for (name, kind, root) in roots {
        let constant = shared.borrow().terms.is_truth(root, kind.nothing());
        if !constant {
            network
                .relations
                .push(Box::new(TermRelation::new(name, kind, root, &shared)));
        }
    }
    for (rule, columns) in tables {
        let waived = rule.waivable.then(|| shared.borrow_mut().waived(rule));
        if let Some(rows) = table::rows(catalog, rule, &columns, waived) {
            network.relations.push(Box::new(rows));
        }
    }
    Ground { network, shared }
}

/// A rule, unless it is waived.
fn binding(translator: &mut Translator<'_>, rule: &Rule) -> TermId {
    let root = translator.rule(rule);
    if !rule.waivable {
        return root;
    }
    let waived = translator.terms.leaf(Term::Waived(rule.id.clone()));
    translator.terms.or(vec![waived, root])
}

/// `<attribute>.applies` and `<attribute>.determined`.
fn implicit(catalog: &Catalog, policy: Option<&PolicyTerms>, translator: &mut Translator<'_>) -> Vec<Root> {
    let mut roots = Vec::new();
    for (index, attribute) in catalog.declarations().attributes.iter() {
        let name = catalog.name_of(Subject::Attribute(index));
        if let Some(condition) = &attribute.applies_when {
            let asked = translator.terms.leaf(Term::IsAsked(index));
            let condition = translator.expression(condition);
            let not = translator.terms.not(condition);
            let root = translator.terms.conditional(asked, condition, not);
            roots.push((format!("{name}.applies"), Kind::Rule, root));
        }
        if attribute.audience == Audience::Plant {
            let root = standards::determined(catalog, policy, translator, index);
            roots.push((format!("{name}.determined"), Kind::Rule, root));
        }
    }
    roots
}

/// One charge an item; percent items hold the charges that they are of.
fn charges(catalog: &Catalog, translator: &mut Translator<'_>) -> Vec<Root> {
    let items = &catalog.declarations().items;
    let nothing = translator.terms.truth(false);
    let mut made: Indexed<astragal_model::ItemIndex, TermId> = items.values().map(|_| nothing).collect();
    for percent in [false, true] {
        for (index, item) in items.iter() {
            if matches!(item.amount, AmountKind::Percent(_)) != percent {
                continue;
            }
            let mut parts = vec![incurred(item, translator)];
            if let Some(quantity) = &item.quantity {
                parts.push(translator.expression(quantity));
            }
            match &item.amount {
                AmountKind::Flat => {}
                AmountKind::By(attributes) => {
                    let keys = attributes
                        .iter()
                        .map(|one| translator.subject(Subject::Attribute(*one)));
                    parts.extend(keys);
                }
                AmountKind::Grid { axes, .. } => {
                    let sizes = axes
                        .iter()
                        .map(|figure| translator.subject(Subject::Figure(*figure)));
                    parts.extend(sizes);
                }
                AmountKind::Percent(named) => {
                    let of = items.iter().filter(|(_, other)| named.contains(&other.id));
                    let of = of.filter(|(_, other)| takes(catalog, item, other));
                    parts.extend(of.map(|(other, _)| *made.at(other)));
                }
            }
            let charge = translator.terms.charge(index, parts);
            made.put(index, charge);
        }
    }
    let roots = items
        .iter()
        .map(|(index, item)| (item.id.to_string(), Kind::Charge, *made.at(index)));
    roots.collect()
}

/// Whether a percent item takes a line of an item that it names: of another part of its own kind it does not.
fn takes(catalog: &Catalog, item: &PriceItem, other: &PriceItem) -> bool {
    let parts = &catalog.declarations().parts;
    match (item.part, other.part) {
        (Some(own), Some(of)) => own == of || parts.at(own).kind != parts.at(of).kind,
        _ => true,
    }
}

/// When an item is incurred: its condition, and that the attributes that it goes by are asked, which comes first.
fn incurred(item: &PriceItem, translator: &mut Translator<'_>) -> TermId {
    let mut condition = match &item.when {
        Some(when) => translator.expression(when),
        None => translator.terms.truth(true),
    };
    let nothing = translator.terms.truth(false);
    if let AmountKind::By(attributes) = &item.amount {
        for attribute in attributes.iter().rev() {
            let asked = translator.terms.leaf(Term::IsAsked(*attribute));
            condition = translator.terms.conditional(asked, condition, nothing);
        }
    }
    condition
}

/// Whether an expression or table reads attributes alone.
fn attribute_of(subject: Subject) -> Option<AttributeIndex> {
    match subject {
        Subject::Attribute(attribute) => Some(attribute),
        _ => None,
    }
}

fn variable(attribute: AttributeIndex) -> Variable {
    Variable(u32::try_from(attribute.0).unwrap_or(u32::MAX))
}

/// Whether a rule has no condition of its own.
fn is_unconditional(rule: &Rule) -> bool {
    match &rule.when {
        None => true,
        Some(Expression::Literal(Value::Bool(true))) => true,
        Some(Expression::And(parts)) => parts.is_empty(),
        Some(_) => false,
    }
}

/// The table of a rule, and whether its rows are allowed.
fn table_of(rule: &Rule) -> Option<(&astragal_model::Table, bool)> {
    match &rule.requirement {
        Requirement::Allowed(table) => Some((table, true)),
        Requirement::Forbidden(table) => Some((table, false)),
        Requirement::Expression(_) => None,
    }
}
