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
mod plan;

use rustc_hash::{FxBuildHasher, FxHashMap};

use crate::automata::{Automata, StateId};
use crate::compile::frame::Frame;
use crate::compile::plan::Plan;
use crate::diagram::build::Builder;
use crate::diagram::{AndId, Diagram, NodeId};
use crate::label::LabelId;
use crate::limit::{Limit, Limits};
use crate::network::{Network, Variable};
use crate::order::Tree;

/// Compiles a network with one order.
///
/// # Errors
/// When a limit is passed; the error names the relation or the variables.
pub fn compile(network: &mut Network, seed: u64, limits: &Limits) -> Result<Diagram, Limit> {
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
    }
    let plan = Plan::new(&automata, &roots, &tree, &network.domains);
    let labels = std::mem::take(&mut automata.labels);
    let compiler = Compiler {
        automata: &automata,
        plan: &plan,
        network,
        limits,
        known: vec![FxHashMap::default(); network.domains.len()],
        states: 0,
        builder: Builder::new(&network.domains, labels),
    };
    compiler.run()
}

/// What is known of a state: its node, or that nothing holds below.
type Known = Option<NodeId>;

struct Compiler<'a> {
    automata: &'a Automata,
    plan: &'a Plan,
    network: &'a Network,
    limits: &'a Limits,
    /// For each variable the states seen.
    known: Vec<FxHashMap<Box<[StateId]>, Known>>,
    states: usize,
    builder: Builder,
}

impl Compiler<'_> {
    fn run(mut self) -> Result<Diagram, Limit> {
        let mut roots = Vec::with_capacity(self.plan.roots.len());
        for variable in self.plan.roots.clone() {
            roots.push(self.node(variable)?);
        }
        let roots: Option<Vec<NodeId>> = roots.into_iter().collect();
        let whole = roots.filter(|_| !self.plan.contradicts);
        let whole = whole.map(|roots| self.builder.and(roots));
        let label = self
            .plan
            .constant
            .iter()
            .fold(LabelId::EMPTY, |all, one| self.builder.label(all, *one));
        Ok(self.builder.finish(whole, label))
    }

    /// The node of a root.
    fn node(&mut self, variable: Variable) -> Result<Known, Limit> {
        let mut stack = vec![self.frame(variable, Box::default())?];
        let mut key = Vec::new();
        while let Some(frame) = stack.last_mut() {
            let Some(group) = frame.groups.get(frame.group) else {
                let done = stack.pop();
                let Some(done) = done else { break };
                let known = self.finish(done)?;
                if stack.is_empty() {
                    return Ok(known);
                }
                continue;
            };
            let children = self.plan.children(frame.variable);
            let Some(child) = children.get(frame.below.len()) else {
                let below = std::mem::take(&mut frame.below);
                let and = self.builder.and(below);
                frame.edges.push((group.label, and, group.values.clone()));
                frame.group += 1;
                continue;
            };
            key.clear();
            key.extend(child.slots.iter().map(|slot| group.state(*slot)));
            match self
                .known
                .get(child.variable.index())
                .and_then(|known| known.get(key.as_slice()))
            {
                Some(Some(node)) => frame.below.push(*node),
                Some(None) => {
                    frame.below.clear();
                    frame.group += 1;
                }
                None => {
                    let next = self.frame(child.variable, key.as_slice().into())?;
                    stack.push(next);
                }
            }
        }
        Ok(None)
    }

    /// Makes the node of a frame whose groups are all visited, and remembers its state.
    fn finish(&mut self, frame: Frame) -> Result<Known, Limit> {
        let variable = frame.variable;
        let known = if frame.edges.is_empty() {
            None
        } else {
            Some(self.builder.node(variable, merged(frame.edges)))
        };
        if self.builder.node_count() > self.limits.nodes {
            return Err(Limit::Nodes {
                variables: self.builder.busiest(&self.network.domains),
                limit: self.limits.nodes,
            });
        }
        self.states += 1;
        if self.states > self.limits.states {
            return Err(Limit::States {
                variables: self.widest(),
                limit: self.limits.states,
            });
        }
        if let Some(states) = self.known.get_mut(variable.index()) {
            states.insert(frame.state, known);
        }
        Ok(known)
    }

    /// The three variables at which most states were seen.
    fn widest(&self) -> Vec<String> {
        let counts = self.known.iter().map(FxHashMap::len).zip(&self.network.domains);
        let mut counts: Vec<(usize, &String)> = counts.map(|(count, domain)| (count, &domain.name)).collect();
        counts.sort_by(|one, other| other.cmp(one));
        counts.into_iter().take(3).map(|(_, name)| name.clone()).collect()
    }

    fn frame(&mut self, variable: Variable, state: Box<[StateId]>) -> Result<Frame, Limit> {
        let at = self.plan.at(variable);
        let size = self
            .network
            .domains
            .get(variable.index())
            .map_or(0, |domain| domain.size);
        Ok(Frame::new(
            self.automata,
            at,
            variable,
            size,
            state,
            &mut self.builder,
        ))
    }
}

/// Edges with the same label and children become one.
fn merged(edges: Vec<(LabelId, AndId, Vec<u16>)>) -> Vec<(LabelId, AndId, Vec<u16>)> {
    let mut places: FxHashMap<(LabelId, AndId), usize> =
        FxHashMap::with_capacity_and_hasher(edges.len(), FxBuildHasher);
    let mut merged: Vec<(LabelId, AndId, Vec<u16>)> = Vec::with_capacity(edges.len());
    for (label, and, values) in edges {
        match places.get(&(label, and)).and_then(|place| merged.get_mut(*place)) {
            Some(edge) => edge.2.extend(values),
            None => {
                places.insert((label, and), merged.len());
                merged.push((label, and, values));
            }
        }
    }
    for edge in &mut merged {
        edge.2.sort_unstable();
    }
    merged
}
