//! The order of the variables: a tree in which every relation lies on one path.
//!
//! Variables that share a relation are neighbours. They are eliminated one after the other, each time the one whose
//! elimination joins the fewest neighbours that were apart (min-fill, every pair weighted by the logarithm of how many
//! values the two have together). A variable hangs under the first of its later neighbours. In `a - b - c` the ends are
//! eliminated first; with b last the tree is b with the children a and c.
//!
//! Always holds: two variables of one relation lie on one path to a root; the tree depends on names, sizes and
//! neighbours, and not on the order of declaration, because ties go by a seeded hash of the name.
//! Cost: about variables x degree^2. Never recursive.
//! Source: D. J. Rose, Triangulated graphs and the elimination process (1970); R. Dechter, Reasoning with
//! Probabilistic and Deterministic Graphical Models (2013), section 3.4, on min-fill and pseudo trees.

use std::collections::BTreeSet;

use crate::network::{Domain, Variable};

/// The tree of variables.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Tree {
    /// The variables by rank: parents before children, a subtree in one piece.
    pub by_rank: Vec<Variable>,
    /// The rank of each variable, by its position.
    pub rank_of: Vec<u32>,
    /// The children of each variable, by its position.
    pub children: Vec<Vec<Variable>>,
    /// The variables without a parent.
    pub roots: Vec<Variable>,
}

impl Tree {
    /// Orders the variables. `scopes` are the sets of variables that must lie on one path.
    #[must_use]
    pub fn new(domains: &[Domain], scopes: &[&[Variable]], seed: u64) -> Self {
        let ties: Vec<u64> = domains.iter().map(|domain| hash(&domain.name, seed)).collect();
        let (eliminated, parents) = eliminate(domains, scopes, &ties);
        hang(&eliminated, &parents)
    }
}

/// A thousand times the binary logarithm, rounded down to what integers give.
fn weight(size: usize) -> u64 {
    // log2(n) = log2(n^64) / 64: enough for telling orders apart, and exact everywhere.
    let mut fraction = 0_u64;
    let whole = u64::from(size.max(1).ilog2());
    let mut mantissa = (size.max(1) as u128) << (63 - whole.min(63));
    for bit in (0..10).rev() {
        mantissa = (mantissa * mantissa) >> 63;
        if mantissa >= 1 << 64 {
            mantissa >>= 1;
            fraction |= 1 << bit;
        }
    }
    (whole << 10) | fraction
}

/// Eliminates all variables; returns them in that order, and the parent of each by position.
fn eliminate(
    domains: &[Domain],
    scopes: &[&[Variable]],
    ties: &[u64],
) -> (Vec<Variable>, Vec<Option<Variable>>) {
    let weights: Vec<u64> = domains.iter().map(|domain| weight(domain.size)).collect();
    let weight_of = |variable: &Variable| weights.get(variable.index()).copied().unwrap_or(0);
    let tie_of = |variable: &Variable| ties.get(variable.index()).copied().unwrap_or(0);
    let mut graph = Graph::new(domains.len(), scopes);
    let mut waiting: BTreeSet<(u64, u64, Variable)> = BTreeSet::new();
    let mut fills: Vec<u64> = Vec::with_capacity(domains.len());
    for variable in graph.variables() {
        let fill = graph.fill(variable, weight_of);
        fills.push(fill);
        waiting.insert((fill, tie_of(&variable), variable));
    }
    let mut eliminated = Vec::with_capacity(domains.len());
    let mut later: Vec<BTreeSet<Variable>> = vec![BTreeSet::new(); domains.len()];
    while let Some((_, _, variable)) = waiting.pop_first() {
        eliminated.push(variable);
        let neighbours = graph.remove(variable);
        for changed in graph.around(&neighbours) {
            let fill = graph.fill(changed, weight_of);
            if let Some(known) = fills.get_mut(changed.index()) {
                waiting.remove(&(*known, tie_of(&changed), changed));
                waiting.insert((fill, tie_of(&changed), changed));
                *known = fill;
            }
        }
        if let Some(slot) = later.get_mut(variable.index()) {
            *slot = neighbours;
        }
    }
    let mut turns = vec![0; domains.len()];
    for (turn, variable) in eliminated.iter().enumerate() {
        if let Some(slot) = turns.get_mut(variable.index()) {
            *slot = turn;
        }
    }
    let turn = |variable: &Variable| turns.get(variable.index()).copied().unwrap_or(0);
    let parents = later
        .iter()
        .map(|later| later.iter().copied().min_by_key(turn))
        .collect();
    (eliminated, parents)
}

/// Makes the tree: later eliminated children come first.
fn hang(eliminated: &[Variable], parents: &[Option<Variable>]) -> Tree {
    let mut children: Vec<Vec<Variable>> = vec![Vec::new(); parents.len()];
    let mut roots = Vec::new();
    for variable in eliminated.iter().rev() {
        match parents.get(variable.index()).copied().flatten() {
            Some(parent) => {
                if let Some(siblings) = children.get_mut(parent.index()) {
                    siblings.push(*variable);
                }
            }
            None => roots.push(*variable),
        }
    }
    let mut by_rank = Vec::with_capacity(parents.len());
    let mut rank_of = vec![0; parents.len()];
    let mut stack: Vec<Variable> = roots.iter().rev().copied().collect();
    while let Some(variable) = stack.pop() {
        if let Some(rank) = rank_of.get_mut(variable.index()) {
            *rank = u32::try_from(by_rank.len()).unwrap_or(u32::MAX);
        }
        by_rank.push(variable);
        let below = children.get(variable.index()).map_or(&[][..], |below| below);
        stack.extend(below.iter().rev());
    }
    Tree {
        by_rank,
        rank_of,
        children,
        roots,
    }
}

/// Which variables are neighbours, among those not yet eliminated.
struct Graph {
    neighbours: Vec<BTreeSet<Variable>>,
    bits: Vec<Vec<u64>>,
}

impl Graph {
    fn new(count: usize, scopes: &[&[Variable]]) -> Self {
        let mut graph = Self {
            neighbours: vec![BTreeSet::new(); count],
            bits: vec![vec![0; count.div_ceil(64)]; count],
        };
        for scope in scopes {
            for (position, one) in scope.iter().enumerate() {
                for other in scope.iter().skip(position + 1) {
                    graph.join(*one, *other);
                }
            }
        }
        graph
    }

    fn variables(&self) -> impl Iterator<Item = Variable> + use<> {
        (0..u32::try_from(self.neighbours.len()).unwrap_or(u32::MAX)).map(Variable)
    }

    fn of(&self, variable: Variable) -> &BTreeSet<Variable> {
        static NONE: BTreeSet<Variable> = BTreeSet::new();
        self.neighbours.get(variable.index()).unwrap_or(&NONE)
    }

    fn are_joined(&self, one: Variable, other: Variable) -> bool {
        let word = self
            .bits
            .get(one.index())
            .and_then(|bits| bits.get(other.index() / 64));
        word.is_some_and(|word| word >> (other.index() % 64) & 1 == 1)
    }

    fn join(&mut self, one: Variable, other: Variable) {
        if one == other {
            return;
        }
        for (from, to) in [(one, other), (other, one)] {
            if let Some(neighbours) = self.neighbours.get_mut(from.index()) {
                neighbours.insert(to);
            }
            if let Some(word) = self
                .bits
                .get_mut(from.index())
                .and_then(|bits| bits.get_mut(to.index() / 64))
            {
                *word |= 1 << (to.index() % 64);
            }
        }
    }

    /// What eliminating a variable would join, weighted.
    fn fill(&self, variable: Variable, weight_of: impl Fn(&Variable) -> u64) -> u64 {
        let neighbours: Vec<Variable> = self.of(variable).iter().copied().collect();
        let mut fill = 0;
        for (position, one) in neighbours.iter().enumerate() {
            for other in neighbours.iter().skip(position + 1) {
                if !self.are_joined(*one, *other) {
                    fill += weight_of(one) + weight_of(other);
                }
            }
        }
        fill
    }

    /// Eliminates a variable: joins its neighbours, takes it out, and returns them.
    fn remove(&mut self, variable: Variable) -> BTreeSet<Variable> {
        let slot = self.neighbours.get_mut(variable.index());
        let neighbours = slot.map(std::mem::take).unwrap_or_default();
        for one in &neighbours {
            if let Some(others) = self.neighbours.get_mut(one.index()) {
                others.remove(&variable);
            }
        }
        for one in &neighbours {
            for other in neighbours.range(one..).skip(1) {
                if !self.are_joined(*one, *other) {
                    self.join(*one, *other);
                }
            }
        }
        neighbours
    }

    /// These variables and their neighbours: those whose fill may have changed.
    fn around(&self, variables: &BTreeSet<Variable>) -> BTreeSet<Variable> {
        let mut around = variables.clone();
        for variable in variables {
            around.extend(self.of(*variable));
        }
        around
    }
}

/// A hash of a name that depends on nothing else but the seed.
///
/// Source: FNV-1a (Fowler, Noll, Vo), finished by the mix of splitmix64 (Steele, Lea, Flood, 2014).
fn hash(name: &str, seed: u64) -> u64 {
    let mut hash = 0xcbf2_9ce4_8422_2325_u64 ^ seed.wrapping_mul(0x9e37_79b9_7f4a_7c15);
    for byte in name.bytes() {
        hash = (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3);
    }
    hash = (hash ^ (hash >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    hash = (hash ^ (hash >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    hash ^ (hash >> 31)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_weight_is_a_thousand_times_the_logarithm() {
        for (size, expected) in [(1, 0), (2, 1024), (3, 1623), (4, 2048), (10, 3401), (4096, 12288)] {
            assert_eq!(weight(size), expected, "{size}");
        }
    }

    #[test]
    fn the_middle_of_a_chain_carries_both_ends() {
        let domain = |name: &str| Domain {
            name: name.to_owned(),
            size: 2,
        };
        let domains = [domain("a"), domain("b"), domain("c")];
        let (a, b, c) = (Variable(0), Variable(1), Variable(2));
        let tree = Tree::new(&domains, &[&[a, b], &[b, c]], 0);
        for scope in [[a, b], [b, c]] {
            assert!(on_one_path(&tree, scope[0], scope[1]));
        }
        assert_eq!(tree.by_rank.len(), 3);
    }

    fn on_one_path(tree: &Tree, one: Variable, other: Variable) -> bool {
        let is_above = |top: Variable, bottom: Variable| {
            let mut stack = vec![top];
            while let Some(variable) = stack.pop() {
                if variable == bottom {
                    return true;
                }
                stack.extend(&tree.children[variable.index()]);
            }
            false
        };
        is_above(one, other) || is_above(other, one)
    }
}
