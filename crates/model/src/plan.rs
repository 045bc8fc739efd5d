//! The order of filling: every attribute and figure after all that it depends on.
//!
//! An attribute depends on what its `applies_when` and its standard read; on a part that is not the first, its
//! standard is that of the first existing part, so it depends on the parts and attributes before it. A figure
//! depends on what its formula or its table's columns read. Ties are broken in catalog order, attributes first.
//!
//! Always holds: a plan names every attribute and figure once. Cost: linear in nodes and edges, never recursive.
//! Source: A. B. Kahn, Topological sorting of large networks, CACM 5 (1962).

use std::collections::{BTreeMap, BTreeSet};

use crate::attribute::Standard;
use crate::catalog::Declarations;
use crate::expression::{Expression, Subject};
use crate::id::{AttributeIndex, FigureIndex, PartIndex};
use crate::rule::Definition;

/// One step of filling.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Step {
    /// Decide whether the attribute is asked, and fill it.
    Attribute(AttributeIndex),
    /// Work the figure out.
    Figure(FigureIndex),
}

/// The steps in order.
#[derive(Clone, Debug)]
pub(crate) struct Plan {
    pub(crate) steps: Vec<Step>,
}

impl Plan {
    /// Orders the steps, or returns one circle among them.
    pub(crate) fn new<'a>(
        declarations: &'a Declarations,
        standard_of: impl Fn(AttributeIndex) -> &'a Standard,
    ) -> Result<Self, Vec<Step>> {
        let needs = needs_of_all(declarations, standard_of);
        let mut waiting: BTreeMap<Step, usize> = BTreeMap::new();
        let mut needed_by: BTreeMap<Step, Vec<Step>> = BTreeMap::new();
        for (step, needed) in &needs {
            waiting.insert(*step, needed.len());
            for other in needed {
                needed_by.entry(*other).or_default().push(*step);
            }
        }
        let mut ready: BTreeSet<Step> = waiting
            .iter()
            .filter(|(_, count)| **count == 0)
            .map(|(step, _)| *step)
            .collect();
        let mut steps = Vec::with_capacity(needs.len());
        while let Some(step) = ready.pop_first() {
            steps.push(step);
            waiting.remove(&step);
            for follower in needed_by.get(&step).into_iter().flatten() {
                if let Some(count) = waiting.get_mut(follower) {
                    *count -= 1;
                    if *count == 0 {
                        ready.insert(*follower);
                    }
                }
            }
        }
        if waiting.is_empty() {
            Ok(Self { steps })
        } else {
            Err(circle(&needs, &waiting))
        }
    }
}

/// What each step needs before it.
fn needs_of_all<'a>(
    declarations: &'a Declarations,
    standard_of: impl Fn(AttributeIndex) -> &'a Standard,
) -> BTreeMap<Step, BTreeSet<Step>> {
    let mut needs = BTreeMap::new();
    for (index, attribute) in declarations.attributes.iter() {
        let mut needed = BTreeSet::new();
        needed.extend(attribute.applies_when.iter().flat_map(steps_read));
        if let Standard::Formula(formula) = standard_of(index) {
            needed.extend(steps_read(formula));
        }
        for (part, before) in parts_before(declarations, index) {
            needed.extend(declarations.parts.at(part).when.iter().flat_map(steps_read));
            needed.insert(Step::Attribute(before));
        }
        needs.insert(Step::Attribute(index), needed);
    }
    for (index, figure) in declarations.figures.iter() {
        let needed = match &figure.definition {
            Definition::Formula(formula) => steps_read(formula),
            Definition::Table(table, _) => table.columns.iter().copied().filter_map(step_of).collect(),
        };
        needs.insert(Step::Figure(index), needed);
    }
    needs
}

/// The earlier parts of the kind of an attribute's part, with the attribute of the same id there, in file order.
pub(crate) fn parts_before(
    declarations: &Declarations,
    attribute: AttributeIndex,
) -> Vec<(PartIndex, AttributeIndex)> {
    let own = declarations.attributes.at(attribute);
    let Some(own_part) = own.part else {
        return Vec::new();
    };
    let mut before: Vec<_> = declarations
        .attributes
        .iter()
        .filter(|(_, other)| other.id == own.id)
        .filter_map(|(index, other)| other.part.map(|part| (part, index)))
        .filter(|(part, _)| *part < own_part)
        .collect();
    before.sort_unstable();
    before
}

fn steps_read(expression: &Expression) -> BTreeSet<Step> {
    let reads = expression.reads().into_iter().filter_map(step_of);
    let asks = expression.asks().into_iter().map(Step::Attribute);
    reads.chain(asks).collect()
}

fn step_of(subject: Subject) -> Option<Step> {
    match subject {
        Subject::Attribute(index) => Some(Step::Attribute(index)),
        Subject::Figure(index) => Some(Step::Figure(index)),
        Subject::Measure(_) | Subject::DeductedBy(_) | Subject::Fact(_) => None,
    }
}

/// One circle among the steps that are left: each needs the next, and the last needs the first.
fn circle(needs: &BTreeMap<Step, BTreeSet<Step>>, left: &BTreeMap<Step, usize>) -> Vec<Step> {
    // Every step that is left needs a step that is left, so that walking on must come back to one already seen.
    let Some((start, _)) = left.first_key_value() else {
        return Vec::new();
    };
    let mut path = vec![*start];
    let mut seen = BTreeMap::from([(*start, 0_usize)]);
    loop {
        let next = path
            .last()
            .and_then(|step| needs.get(step))
            .and_then(|needed| needed.iter().find(|step| left.contains_key(*step)));
        let Some(next) = next else { return path };
        if let Some(position) = seen.get(next) {
            return path.split_off(*position);
        }
        seen.insert(*next, path.len());
        path.push(*next);
    }
}
