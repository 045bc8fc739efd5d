//! Finds when parts exist and which types figures have, each after what it reads.
//!
//! A formula says the type of its figure: `unit_width * unit_height` is an area when both are lengths. Its type can be found
//! once the types of the figures that it names are known, and a formula over parts (`any`, `all`, `sum`) once it is known
//! when parts exist.
//!
//! Always holds: what goes in a circle is a finding that names the chain, and has no type.
//! Cost: linear in formulas and the names in them; never recursive.
//! Source: A. B. Kahn, Topological sorting of large networks, CACM 5 (1962).

use std::collections::{BTreeMap, BTreeSet};

use astragal_model::{Expression, PartIndex};

use super::circle;
use super::cycle::Link;
use super::resolver::Unreadable;
use crate::declare::{Declared, RawDefinition};
use crate::finding::Findings;
use crate::syntax::ExprKind;
use crate::typed::{Names, Parsed, Scope};

/// A part or a figure, by the position of its declaration.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Debug)]
enum Step {
    Part(usize),
    Figure(usize),
}

/// Gives figures their types and returns when parts exist.
pub(crate) fn find_types(
    declared: &Declared,
    names: &mut Names,
    unreadable: &mut Unreadable,
    findings: &Findings,
) -> BTreeMap<PartIndex, Expression> {
    let mut needs = needs_of_all(declared);
    let mut conditions = BTreeMap::new();
    let mut parts_left = declared.parts.len();
    if parts_left == 0 {
        names.set_part_conditions(BTreeMap::new());
    }
    let mut needed_by: BTreeMap<Step, Vec<Step>> = BTreeMap::new();
    for (step, needed) in &needs {
        for other in needed {
            needed_by.entry(*other).or_default().push(*step);
        }
    }
    let free = needs.iter().filter(|(_, needed)| needed.is_empty());
    let mut ready: BTreeSet<Step> = free.map(|(step, _)| *step).collect();
    loop {
        while let Some(step) = ready.pop_first() {
            needs.remove(&step);
            match step {
                Step::Part(position) => {
                    conditions.extend(condition(position, declared, names, unreadable, findings));
                    parts_left -= 1;
                    if parts_left == 0 {
                        names.set_part_conditions(conditions.clone());
                    }
                }
                Step::Figure(position) => find_type(position, declared, names, unreadable, findings),
            }
            for follower in needed_by.get(&step).into_iter().flatten() {
                if let Some(needed) = needs.get_mut(follower) {
                    needed.remove(&step);
                    if needed.is_empty() {
                        ready.insert(*follower);
                    }
                }
            }
        }
        // What is left goes in circles; each is reported, taken out, and what it held up goes on.
        let Some(chain) = one_circle(&needs) else { break };
        let links: Vec<Link> = chain.iter().filter_map(|step| link(declared, *step)).collect();
        let has_parts = chain.iter().any(|step| is_per_part(declared, *step));
        let finding = circle(&links);
        findings.push(if has_parts {
            finding.with_help(
                "take one of these out, or, where one part reads another, say the `type` of the figure",
            )
        } else {
            finding
        });
        for step in &chain {
            if let Step::Figure(position) = step
                && let Some(raw) = declared.figures.get(*position)
            {
                unreadable.add(&raw.head.id);
            }
            if let Some(needed) = needs.get_mut(step) {
                needed.clear();
            }
        }
        ready.extend(chain);
    }
    conditions
}

fn needs_of_all(declared: &Declared) -> BTreeMap<Step, BTreeSet<Step>> {
    let untyped: BTreeMap<&str, usize> = declared
        .figures
        .iter()
        .enumerate()
        .filter(|(_, figure)| figure.declared_type.is_none() && figure.definition.is_some())
        .map(|(position, figure)| (figure.head.id.as_str(), position))
        .collect();
    let figures_in = |parsed: &Parsed| -> BTreeSet<Step> {
        let names = parsed.names();
        let found = names.iter().filter_map(|name| untyped.get(name));
        found.map(|position| Step::Figure(*position)).collect()
    };
    let mut needs = BTreeMap::new();
    for (position, part) in declared.parts.iter().enumerate() {
        let needed = part.when.as_ref().map(&figures_in).unwrap_or_default();
        needs.insert(Step::Part(position), needed);
    }
    for position in untyped.values() {
        let Some(RawDefinition::Formula(formula)) = definition(declared, *position) else {
            continue;
        };
        let mut needed = figures_in(formula);
        if goes_over_parts(formula) {
            needed.extend((0..declared.parts.len()).map(Step::Part));
        }
        needs.insert(Step::Figure(*position), needed);
    }
    needs
}

fn definition(declared: &Declared, position: usize) -> Option<&RawDefinition> {
    declared.figures.get(position)?.definition.as_ref()
}

fn goes_over_parts(formula: &Parsed) -> bool {
    let mut stack = vec![&formula.tree];
    while let Some(node) = stack.pop() {
        if let ExprKind::Call { function, .. } = &node.kind
            && matches!(function.text.as_str(), "any" | "all" | "sum")
        {
            return true;
        }
        crate::typed::push_children(node, &mut stack);
    }
    false
}

fn condition(
    position: usize,
    declared: &Declared,
    names: &Names,
    unreadable: &Unreadable,
    findings: &Findings,
) -> Option<(PartIndex, Expression)> {
    let when = declared.parts.get(position)?.when.as_ref()?;
    if unreadable.is_in(when) {
        return None;
    }
    let expression = Scope::new(names, findings).condition(when)?;
    Some((PartIndex(position), expression))
}

fn find_type(
    position: usize,
    declared: &Declared,
    names: &mut Names,
    unreadable: &mut Unreadable,
    findings: &Findings,
) {
    let Some(raw) = declared.figures.get(position) else {
        return;
    };
    let Some(RawDefinition::Formula(formula)) = &raw.definition else {
        return;
    };
    if unreadable.is_name(raw.head.id.as_str()) {
        return;
    }
    let found = if unreadable.is_in(formula) {
        None
    } else {
        let kind = raw
            .per
            .as_ref()
            .map(|per| names.parts_of_kind(&per.text.as_str().into()));
        let part = kind.and_then(|parts| parts.first().copied());
        Scope::new(names, findings).in_part(part).any_type(formula)
    };
    match found {
        Some(typed) => names.set_figure_type(&raw.head.id, typed.of),
        None => unreadable.add(&raw.head.id),
    }
}

/// One circle among the steps that are left: each needs the next, and the last needs the first.
fn one_circle(needs: &BTreeMap<Step, BTreeSet<Step>>) -> Option<Vec<Step>> {
    // Every step that is left needs a step that is left, so that walking on must come back to one already seen.
    let (start, _) = needs.first_key_value()?;
    let mut path = vec![*start];
    let mut seen = BTreeMap::from([(*start, 0_usize)]);
    loop {
        let next = needs
            .get(path.last()?)?
            .iter()
            .find(|step| needs.contains_key(step))?;
        if let Some(position) = seen.get(next) {
            return Some(path.split_off(*position));
        }
        seen.insert(*next, path.len());
        path.push(*next);
    }
}

fn is_per_part(declared: &Declared, step: Step) -> bool {
    match step {
        Step::Part(_) => false,
        Step::Figure(position) => declared
            .figures
            .get(position)
            .is_some_and(|raw| raw.per.is_some()),
    }
}

fn link(declared: &Declared, step: Step) -> Option<Link> {
    let (head, what) = match step {
        Step::Part(position) => (&declared.parts.get(position)?.head, "part "),
        Step::Figure(position) => (&declared.figures.get(position)?.head, ""),
    };
    Some(Link {
        name: format!("{what}`{}`", head.id),
        place: Some(head.place.clone()),
    })
}
