//! The order of the variables: a tree in which every relation lies on one path.
//!
//! Variables that share a relation are neighbours. They are eliminated one after the other, each time the one whose
//! elimination joins the fewest neighbours that were apart (min-fill, every pair weighted by the logarithm of how many
//! values the two have together). A variable hangs under the first of its later neighbours. In `a - b - c` the ends are
//! eliminated first; with b last the tree is b with the children a and c.
//!
//! Always holds: two variables of one relation lie on one path to a root; the tree depends on names, sizes and
//! neighbours, and not on the order of declaration, because ties go by a seeded hash of the name.
//! Cost: for each variable its neighbours and theirs, each a walk over as many words as 64 go into the variables. Never recursive.
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
    let tie_of = |variable: &Variable| ties.get(variable.index()).copied().unwrap_or(0);
    let mut graph = Graph::new(domains.len(), scopes);
    let mut waiting: BTreeSet<(u64, u64, Variable)> = BTreeSet::new();
    let mut fills: Vec<u64> = Vec::with_capacity(domains.len());
    for variable in (0..domains.len()).map(Variable::at) {
        let fill = graph.fill(variable, &weights);
        fills.push(fill);
        waiting.insert((fill, tie_of(&variable), variable));
    }
    let mut eliminated = Vec::with_capacity(domains.len());
    let mut later: Vec<Bits> = vec![Bits::default(); domains.len()];
    while let Some((_, _, variable)) = waiting.pop_first() {
        eliminated.push(variable);
        let neighbours = graph.remove(variable);
        for changed in graph.around(&neighbours).iter() {
            let fill = graph.fill(changed, &weights);
            if let Some(known) = fills.get_mut(changed.index()).filter(|known| **known != fill) {
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
    let parents = later.iter().map(|later| later.iter().min_by_key(turn)).collect();
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

/// A set of variables, a bit each.
#[derive(Clone, Debug, Default)]
struct Bits(Vec<u64>);

impl Bits {
    fn none(count: usize) -> Self {
        Self(vec![0; count.div_ceil(64)])
    }

    fn insert(&mut self, variable: Variable) {
        if let Some(word) = self.0.get_mut(variable.index() / 64) {
            *word |= 1 << (variable.index() % 64);
        }
    }

    fn remove(&mut self, variable: Variable) {
        if let Some(word) = self.0.get_mut(variable.index() / 64) {
            *word &= !(1 << (variable.index() % 64));
        }
    }

    fn add(&mut self, other: &Self) {
        for (word, more) in self.0.iter_mut().zip(&other.0) {
            *word |= more;
        }
    }

    /// How many variables are in this set and not in the other.
    fn count_without(&self, other: &Self) -> u64 {
        let words = self.0.iter().zip(&other.0);
        words
            .map(|(word, other)| u64::from((word & !other).count_ones()))
            .sum()
    }

    /// The variables, rising.
    fn iter(&self) -> impl Iterator<Item = Variable> {
        self.0.iter().enumerate().flat_map(|(place, word)| {
            let mut word = *word;
            std::iter::from_fn(move || {
                let bit = (word != 0).then(|| word.trailing_zeros() as usize)?;
                word &= word - 1;
                Some(Variable::at(place * 64 + bit))
            })
        })
    }
}

/// Which variables are neighbours, among those not yet eliminated.
///
/// Always holds: two variables are each other's neighbours, and none is its own.
struct Graph {
    neighbours: Vec<Bits>,
    none: Bits,
}

impl Graph {
    fn new(count: usize, scopes: &[&[Variable]]) -> Self {
        let mut graph = Self {
            neighbours: vec![Bits::none(count); count],
            none: Bits::none(count),
        };
        for scope in scopes {
            let mut all = graph.none.clone();
            scope.iter().for_each(|variable| all.insert(*variable));
            for variable in *scope {
                graph.join(*variable, &all);
            }
        }
        graph
    }

    fn of(&self, variable: Variable) -> &Bits {
        self.neighbours.get(variable.index()).unwrap_or(&self.none)
    }

    /// Makes all of these neighbours of a variable, itself left out.
    fn join(&mut self, variable: Variable, others: &Bits) {
        if let Some(neighbours) = self.neighbours.get_mut(variable.index()) {
            neighbours.add(others);
            neighbours.remove(variable);
        }
    }

    /// What eliminating a variable would join: both weights of every pair of neighbours that are apart.
    ///
    /// Each neighbour brings its weight once for every other neighbour that is not its own; it is itself one of those, hence
    /// the one that is taken off.
    fn fill(&self, variable: Variable, weights: &[u64]) -> u64 {
        let neighbours = self.of(variable);
        let brings = |one: Variable| {
            let apart = neighbours.count_without(self.of(one)).saturating_sub(1);
            apart * weights.get(one.index()).copied().unwrap_or(0)
        };
        neighbours.iter().map(brings).sum()
    }

    /// Eliminates a variable: joins its neighbours, takes it out, and returns them.
    fn remove(&mut self, variable: Variable) -> Bits {
        let slot = self.neighbours.get_mut(variable.index());
        let neighbours = slot.map(std::mem::take).unwrap_or_default();
        for one in neighbours.iter() {
            self.join(one, &neighbours);
            if let Some(others) = self.neighbours.get_mut(one.index()) {
                others.remove(variable);
            }
        }
        neighbours
    }

    /// These variables and their neighbours: those whose fill may have changed.
    fn around(&self, variables: &Bits) -> Bits {
        let mut around = variables.clone();
        for variable in variables.iter() {
            around.add(self.of(variable));
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

    /// The definition of min-fill, pair by pair: the order in which variables are eliminated.
    fn slowly(domains: &[Domain], scopes: &[&[Variable]], ties: &[u64]) -> Vec<Variable> {
        let count = domains.len();
        let mut joined = vec![vec![false; count]; count];
        for scope in scopes {
            for (one, other) in scope
                .iter()
                .flat_map(|one| scope.iter().map(move |other| (one, other)))
            {
                joined[one.index()][other.index()] = one != other;
            }
        }
        let mut left: Vec<usize> = (0..count).collect();
        let mut eliminated = Vec::new();
        while !left.is_empty() {
            let of = |at: usize, joined: &Vec<Vec<bool>>| -> Vec<usize> {
                left.iter().copied().filter(|other| joined[at][*other]).collect()
            };
            let fill = |at: usize| -> u64 {
                let near = of(at, &joined);
                let pairs = near
                    .iter()
                    .flat_map(|one| near.iter().map(move |other| (*one, *other)));
                let apart = pairs.filter(|(one, other)| one < other && !joined[*one][*other]);
                apart
                    .map(|(one, other)| weight(domains[one].size) + weight(domains[other].size))
                    .sum()
            };
            let next = *left
                .iter()
                .min_by_key(|at| (fill(**at), ties[**at], **at))
                .unwrap();
            let near = of(next, &joined);
            for (one, other) in near
                .iter()
                .flat_map(|one| near.iter().map(move |other| (*one, *other)))
            {
                joined[one][other] = one != other;
            }
            left.retain(|at| *at != next);
            eliminated.push(Variable::at(next));
        }
        eliminated
    }

    #[test]
    fn the_order_is_min_fill_pair_by_pair() {
        let mut dice = 1_u64;
        let mut throw = |sides: usize| {
            dice = hash("throw", dice);
            usize::try_from(dice >> 33).unwrap() % sides
        };
        let mut ties_mattered = 0;
        for _ in 0..300 {
            let count = 2 + throw(80);
            let domain = |at: usize, size: usize| Domain {
                name: format!("v{at}"),
                size,
            };
            let domains: Vec<Domain> = (0..count).map(|at| domain(at, 1 + throw(6))).collect();
            let scopes: Vec<Vec<Variable>> = (0..throw(2 * count))
                .map(|_| {
                    let mut scope: Vec<Variable> =
                        (0..2 + throw(3)).map(|_| Variable::at(throw(count))).collect();
                    scope.sort_unstable();
                    scope.dedup();
                    scope
                })
                .collect();
            let scopes: Vec<&[Variable]> = scopes.iter().map(Vec::as_slice).collect();
            let ties: Vec<u64> = domains.iter().map(|domain| hash(&domain.name, 7)).collect();
            let other_ties: Vec<u64> = domains.iter().map(|domain| hash(&domain.name, 8)).collect();
            let (eliminated, _) = eliminate(&domains, &scopes, &ties);
            assert_eq!(eliminated, slowly(&domains, &scopes, &ties));
            ties_mattered += usize::from(eliminated != eliminate(&domains, &scopes, &other_ties).0);
        }
        assert!(ties_mattered > 100, "{ties_mattered}");
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
