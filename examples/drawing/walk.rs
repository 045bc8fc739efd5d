//! Two naive walks over the drawn graph: what is least below each node, and around it.

use crate::drawn::{ATTRIBUTES, Edge, HINGE, NODES, TOP};

/// Changes, then money; `None` is not to be had.
pub(crate) type Least = Option<(i64, i64)>;

/// A question: the picks, and whether the gate is open.
pub(crate) struct Question<'a> {
    pub(crate) picks: &'a [(usize, usize)],
    pub(crate) is_open: bool,
}

/// What came of both walks.
pub(crate) struct Walked {
    /// The least weight below and with each node.
    pub(crate) up: Vec<Least>,
    /// The least weight of everything else, where the node takes part.
    pub(crate) around: Vec<Least>,
    /// The least weight of the whole.
    pub(crate) whole: Least,
    /// By attribute and option the least weight of the whole with it.
    pub(crate) options: Vec<[Least; 2]>,
}

pub(crate) fn plus(one: Least, other: Least) -> Least {
    one.zip(other)
        .map(|(one, other)| (one.0 + other.0, one.1 + other.1))
}

pub(crate) fn least(one: Least, other: Least) -> Least {
    match (one, other) {
        (Some(one), Some(other)) => Some(one.min(other)),
        (one, other) => one.or(other),
    }
}

impl Question<'_> {
    /// What an option weighs: a change where another is picked, and its price.
    pub(crate) fn option(&self, attribute: usize, option: usize) -> Least {
        let mut picks = self.picks.iter();
        let is_change = picks.any(|(picked, value)| *picked == attribute && *value != option);
        let price = ATTRIBUTES.get(attribute)?.options.get(option)?.1;
        Some((i64::from(is_change), price))
    }

    pub(crate) fn label(&self, edge: &Edge) -> Least {
        match (edge.is_labelled, self.is_open) {
            (false, _) => Some((0, 0)),
            (true, true) => Some((0, HINGE)),
            (true, false) => None,
        }
    }

    /// Both walks.
    pub(crate) fn walk(&self) -> Walked {
        let mut up: Vec<Least> = Vec::new();
        let below = |up: &[Least], nodes: &[usize]| {
            let each = nodes.iter().map(|node| up.get(*node).copied().flatten());
            each.fold(Some((0, 0)), plus)
        };
        for node in &NODES {
            let through = |edge: &Edge| {
                let options = edge
                    .options
                    .iter()
                    .map(|option| self.option(node.attribute, *option));
                let cheapest = options.fold(None, least);
                plus(plus(cheapest, self.label(edge)), below(&up, edge.below))
            };
            up.push(node.edges.iter().map(through).fold(None, least));
        }
        let whole = below(&up, &TOP);
        let mut around = vec![None; NODES.len()];
        let mut options = vec![[None; 2]; ATTRIBUTES.len()];
        let hand = |around: &mut Vec<Least>, nodes: &[usize], above: Least| {
            for node in nodes {
                let others: Vec<usize> = nodes.iter().filter(|one| *one != node).copied().collect();
                if let Some(slot) = around.get_mut(*node) {
                    *slot = least(*slot, plus(above, below(&up, &others)));
                }
            }
        };
        hand(&mut around, &TOP, Some((0, 0)));
        for (number, node) in NODES.iter().enumerate().rev() {
            let above = around.get(number).copied().flatten();
            for edge in node.edges {
                let label = plus(above, self.label(edge));
                for option in edge.options {
                    let own = self.option(node.attribute, *option);
                    hand(&mut around, edge.below, plus(label, own));
                    let whole = plus(plus(label, own), below(&up, edge.below));
                    let slot = options
                        .get_mut(node.attribute)
                        .and_then(|row| row.get_mut(*option));
                    if let Some(slot) = slot {
                        *slot = least(*slot, whole);
                    }
                }
            }
        }
        Walked {
            up,
            around,
            whole,
            options,
        }
    }
}

/// How many configurations the drawn graph has, the gate open.
pub(crate) fn count() -> u64 {
    let mut counts: Vec<u64> = Vec::new();
    let product = |counts: &[u64], nodes: &[usize]| -> u64 {
        nodes.iter().filter_map(|node| counts.get(*node)).product()
    };
    for node in &NODES {
        let edges = node.edges.iter();
        let sum = edges.map(|edge| edge.options.len() as u64 * product(&counts, edge.below));
        let sum = sum.sum();
        counts.push(sum);
    }
    product(&counts, &TOP)
}
