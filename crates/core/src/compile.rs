//! Compiles automata over a tree of variables into an AND/OR multi-valued decision diagram, top down.
//!
//! The state at a variable is what the automata that cross into its subtree have come to. Values after which nothing
//! differs are one group; below each group the children hang side by side. A state seen before has its node already;
//! equal nodes are one. A gate never prunes: whether it is open is known only when a question is asked.
//!
//! Always holds: children are made before their parents, so that numbers rise towards the roots; the same automata and
//! tree give the same diagram.
//! Cost: one visit a state and value. Stops at [`Limits`]. Never recursive.
//! Source: R. Mateescu, R. Dechter, R. Marinescu, AND/OR multi-valued decision diagrams for graphical models, JAIR 33
//! (2008).

mod frame;
mod merge;
mod plan;

use crate::automata::{Automata, StateId};
use crate::compile::frame::Frame;
use crate::compile::merge::Merge;
use crate::compile::plan::Plan;
use crate::diagram::build::Builder;
use crate::diagram::{Diagram, NodeId};
use crate::label::LabelId;
use crate::limit::{ATTRIBUTES_MAX, Limit, Limits, OPTIONS_MAX};
use crate::lists::Lists;
use crate::network::{Domain, Network, Variable};
use crate::order::Tree;

/// Compiles a network with one order.
///
/// # Errors
/// When a limit is passed; the error names the relation or the variables.
pub fn compile(network: &mut Network, seed: u64, limits: &Limits) -> Result<Diagram, Limit> {
    compile_counted(network, seed, limits).map(|(diagram, _)| diagram)
}

/// Compiles a network with one order; also returns how many states it took.
pub(crate) fn compile_counted(
    network: &mut Network,
    seed: u64,
    limits: &Limits,
) -> Result<(Diagram, usize), Limit> {
    within_sizes(&network.domains)?;
    let scopes: Vec<&[Variable]> = network
        .relations
        .iter()
        .map(|relation| relation.scope())
        .collect();
    let tree = Tree::new(&network.domains, &scopes, seed);
    let mut automata = Automata::default();
    let mut roots = Vec::with_capacity(network.relations.len());
    for relation in &mut network.relations {
        roots.push(automata.build(relation.as_mut(), &tree.rank_of, limits)?);
        if automata.bytes() > limits.bytes {
            return Err(Limit::RelationBytes {
                relation: relation.name().to_owned(),
                limit: limits.bytes,
            });
        }
    }
    let plan = Plan::new(&automata, &roots, &tree, &network.domains);
    let labels = std::mem::take(&mut automata.labels);
    let compiler = Compiler {
        automata: &automata,
        plan: &plan,
        network,
        limits,
        states: Lists::default(),
        known: Vec::new(),
        done: 0,
        stack: Vec::new(),
        spare: Vec::new(),
        merge: Merge::default(),
        builder: Builder::new(&network.domains, labels),
    };
    compiler.run()
}

/// Refuses more variables or values than are numbered; a variable may have one value more than options, *not asked*.
fn within_sizes(domains: &[Domain]) -> Result<(), Limit> {
    if domains.len() > ATTRIBUTES_MAX {
        return Err(Limit::Attributes { count: domains.len() });
    }
    match domains.iter().find(|domain| domain.size > OPTIONS_MAX + 1) {
        Some(domain) => Err(Limit::Options {
            attribute: domain.name.clone(),
            count: domain.size,
        }),
        None => Ok(()),
    }
}

/// What is known of a state: its node, or that nothing holds below.
type Known = Option<NodeId>;

struct Compiler<'a> {
    automata: &'a Automata,
    plan: &'a Plan,
    network: &'a Network,
    limits: &'a Limits,
    /// The states seen, each under its variable.
    states: Lists<StateId>,
    /// What is known of each state; `None` while its node is in the making.
    known: Vec<Option<Known>>,
    /// How many states are no longer in the making.
    done: usize,
    stack: Vec<Frame>,
    /// Frames whose memory is used again.
    spare: Vec<Frame>,
    merge: Merge,
    builder: Builder,
}

impl Compiler<'_> {
    fn run(mut self) -> Result<(Diagram, usize), Limit> {
        let mut roots = Vec::with_capacity(self.plan.roots.len());
        for variable in self.plan.roots.clone() {
            roots.push(self.node(variable)?);
        }
        let roots: Option<Vec<NodeId>> = roots.into_iter().collect();
        let whole = roots.filter(|_| !self.plan.contradicts);
        let whole = whole.map(|roots| self.builder.and(&roots));
        let label = self
            .plan
            .constant
            .iter()
            .fold(LabelId::EMPTY, |all, one| self.builder.label(all, *one));
        Ok((self.builder.finish(whole, label), self.done))
    }

    /// The node of a root.
    fn node(&mut self, variable: Variable) -> Result<Known, Limit> {
        let mut key = Vec::new();
        self.seen(variable, &key);
        while let Some(frame) = self.stack.last_mut() {
            if frame.is_done() {
                let known = self.finish()?;
                if self.stack.is_empty() {
                    return Ok(known);
                }
                continue;
            }
            let children = self.plan.children(frame.variable);
            let Some(child) = children.get(frame.below.len()) else {
                frame.keep(self.automata, &mut self.builder);
                continue;
            };
            key.clear();
            key.extend(frame.state_of(child));
            if let Some(known) = self.seen(child.variable, &key) {
                self.follow(known);
            }
        }
        Ok(None)
    }

    /// Goes on in the uppermost frame with what is known of its next child.
    fn follow(&mut self, known: Known) {
        let Some(frame) = self.stack.last_mut() else {
            return;
        };
        match known {
            Some(node) => frame.below.push(node),
            None => frame.close(self.automata),
        }
    }

    /// What is known of a state; when it was never seen, `None`, and a frame for it is begun.
    fn seen(&mut self, variable: Variable, state: &[StateId]) -> Option<Known> {
        let number = self.states.number(variable.0, state);
        if let Some(known) = self.known.get(number as usize) {
            return *known;
        }
        self.known.push(None);
        let domain = self.network.domains.get(variable.index());
        let mut frame = self.spare.pop().unwrap_or_default();
        frame.variable = variable;
        frame.state = number;
        frame.begin(
            self.automata,
            self.plan.at(variable),
            domain.map_or(0, |domain| domain.size),
            state,
            &mut self.builder,
        );
        self.stack.push(frame);
        None
    }

    /// Makes the node of the uppermost frame, whose groups are all visited, and remembers its state.
    fn finish(&mut self) -> Result<Known, Limit> {
        let Some(frame) = self.stack.pop() else {
            return Ok(None);
        };
        let known = self.merge.node(&frame, &mut self.builder);
        if self.builder.node_count() > self.limits.nodes {
            return Err(Limit::Nodes {
                variables: self.builder.busiest(&self.network.domains),
                limit: self.limits.nodes,
            });
        }
        if self.states.bytes() + self.builder.bytes() > self.limits.bytes {
            return Err(Limit::Bytes {
                variables: self.builder.busiest(&self.network.domains),
                limit: self.limits.bytes,
            });
        }
        self.done += 1;
        if self.done > self.limits.states {
            return Err(Limit::States {
                variables: self.widest(),
                limit: self.limits.states,
            });
        }
        if let Some(slot) = self.known.get_mut(frame.state as usize) {
            *slot = Some(known);
        }
        self.spare.push(frame);
        self.follow(known);
        Ok(known)
    }

    /// The three variables at which most states were seen.
    fn widest(&self) -> Vec<String> {
        let domains = self.network.domains.iter();
        let mut counts: Vec<(usize, &String)> = domains.map(|domain| (0, &domain.name)).collect();
        for ((variable, _), known) in self.states.iter().zip(&self.known) {
            let count = counts.get_mut(variable as usize);
            if let Some((count, _)) = count.filter(|_| known.is_some()) {
                *count += 1;
            }
        }
        counts.sort_by(|one, other| other.cmp(one));
        counts.into_iter().take(3).map(|(_, name)| name.clone()).collect()
    }
}
