//! What a compile knows before it begins: which automata are read at each variable, and which cross into each subtree.
//!
//! At a variable, the *slots* are the automata that came from above followed by those that begin here. A child's state
//! is made of some of these slots.
//!
//! Always holds: an automaton begins at the variable of its root's rank and crosses down to its last; ranks of a subtree
//! are one interval.

use crate::automata::{Automata, StateId};
use crate::label::LabelId;
use crate::network::{Domain, Variable};
use crate::order::Tree;

/// What is read at one variable.
#[derive(Clone, Debug, Default)]
pub(crate) struct At {
    pub(crate) rank: u32,
    /// The roots of the automata that begin here.
    pub(crate) beginning: Vec<StateId>,
    /// The slots of the automata that may read the variable.
    pub(crate) reads: Vec<usize>,
    /// The children with the slots that make their states.
    pub(crate) children: Vec<Child>,
}

/// A child in the tree.
#[derive(Clone, Debug)]
pub(crate) struct Child {
    pub(crate) variable: Variable,
    pub(crate) slots: Vec<usize>,
}

/// The plan of a compile.
#[derive(Clone, Debug)]
pub(crate) struct Plan {
    at: Vec<At>,
    pub(crate) roots: Vec<Variable>,
    /// The labels of automata that are a leaf from the start.
    pub(crate) constant: Vec<LabelId>,
    /// Whether an automaton forbids everything.
    pub(crate) contradicts: bool,
}

/// An automaton with the ranks of its first and last variable.
struct Spanned {
    root: StateId,
    first: u32,
    last: u32,
    support: Vec<u32>,
}

impl Plan {
    pub(crate) fn new(automata: &Automata, roots: &[StateId], tree: &Tree, domains: &[Domain]) -> Self {
        let mut plan = Self {
            at: vec![At::default(); domains.len()],
            roots: tree.roots.clone(),
            constant: Vec::new(),
            contradicts: false,
        };
        let mut spanned = Vec::new();
        for root in roots {
            if *root == StateId::FORBIDDEN {
                plan.contradicts = true;
            } else if let Some(label) = root.label() {
                plan.constant.push(label);
            } else {
                let support = automata.support(*root);
                if let (Some(first), Some(last)) = (support.first().copied(), support.last().copied()) {
                    spanned.push(Spanned {
                        root: *root,
                        first,
                        last,
                        support,
                    });
                }
            }
        }
        plan.fill(&spanned, tree);
        plan
    }

    pub(crate) fn at(&self, variable: Variable) -> &At {
        static NONE: At = At {
            rank: 0,
            beginning: Vec::new(),
            reads: Vec::new(),
            children: Vec::new(),
        };
        self.at.get(variable.index()).unwrap_or(&NONE)
    }

    pub(crate) fn children(&self, variable: Variable) -> &[Child] {
        &self.at(variable).children
    }

    /// Walks the ranks downwards; `here[r]` are the automata that cross into the subtree of rank r, in order.
    fn fill(&mut self, spanned: &[Spanned], tree: &Tree) {
        let ends = subtree_ends(tree);
        let mut inherited: Vec<Vec<usize>> = vec![Vec::new(); tree.by_rank.len()];
        let mut beginning: Vec<Vec<usize>> = vec![Vec::new(); tree.by_rank.len()];
        for (number, automaton) in spanned.iter().enumerate() {
            if let Some(begin) = beginning.get_mut(automaton.first as usize) {
                begin.push(number);
            }
        }
        for (rank, variable) in tree.by_rank.iter().enumerate() {
            let above = inherited.get(rank).cloned().unwrap_or_default();
            let begin = beginning.get(rank).cloned().unwrap_or_default();
            let slots: Vec<usize> = above.iter().chain(&begin).copied().collect();
            let mut children = Vec::new();
            for child in tree.children.get(variable.index()).into_iter().flatten() {
                let child_rank = tree.rank_of.get(child.index()).copied().unwrap_or(0);
                let end = ends.get(child_rank as usize).copied().unwrap_or(0);
                let crosses = |number: &usize| {
                    let automaton = spanned.get(*number);
                    automaton.is_some_and(|one| one.crosses(child_rank, end))
                };
                let crossing: Vec<usize> = (0..slots.len())
                    .filter(|slot| slots.get(*slot).is_some_and(crosses))
                    .collect();
                if let Some(into) = inherited.get_mut(child_rank as usize) {
                    *into = crossing
                        .iter()
                        .filter_map(|slot| slots.get(*slot))
                        .copied()
                        .collect();
                }
                children.push(Child {
                    variable: *child,
                    slots: crossing,
                });
            }
            let rank = u32::try_from(rank).unwrap_or(u32::MAX);
            if let Some(at) = self.at.get_mut(variable.index()) {
                *at = At {
                    rank,
                    reads: (0..slots.len())
                        .filter(|slot| {
                            let automaton = slots.get(*slot).and_then(|number| spanned.get(*number));
                            automaton.is_some_and(|one| one.support.binary_search(&rank).is_ok())
                        })
                        .collect(),
                    beginning: begin
                        .iter()
                        .filter_map(|number| spanned.get(*number))
                        .map(|one| one.root)
                        .collect(),
                    children,
                };
            }
        }
    }
}

impl Spanned {
    /// Whether it reads a variable whose rank lies in a subtree.
    fn crosses(&self, from: u32, end: u32) -> bool {
        self.last >= from && self.support.iter().any(|rank| (from..end).contains(rank))
    }
}

/// For each rank the rank after its subtree.
fn subtree_ends(tree: &Tree) -> Vec<u32> {
    let mut ends = vec![0; tree.by_rank.len()];
    for (rank, variable) in tree.by_rank.iter().enumerate().rev() {
        let last = tree
            .children
            .get(variable.index())
            .and_then(|children| children.last());
        let end = last.and_then(|child| tree.rank_of.get(child.index()));
        let end = end.and_then(|rank| ends.get(*rank as usize).copied());
        let after = u32::try_from(rank + 1).unwrap_or(u32::MAX);
        if let Some(slot) = ends.get_mut(rank) {
            *slot = end.unwrap_or(after);
        }
    }
    ends
}
