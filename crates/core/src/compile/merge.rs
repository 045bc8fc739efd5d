//! Makes a node of values with their edges: values with the same label and children become one edge.
//!
//! White and brown with label 1 over AND node 5, and grey with label 0 over it, are two edges: `{white, brown}` and `{grey}`.
//!
//! Always holds: edges stand in the order of their first value; the values of an edge rise.
//! Cost: a hash and a sort of the values. Its memory is used again.

use crate::compile::frame::Frame;
use crate::diagram::build::Builder;
use crate::diagram::{AndId, Branch, Edge, NodeId};
use crate::label::LabelId;
use crate::lists::Lists;

/// Memory for making one node after the other.
#[derive(Default)]
pub(crate) struct Merge {
    /// The AND node of each edge under its label.
    edges: Lists<AndId>,
    /// The values by edge.
    placed: Vec<(u32, u16)>,
    values: Vec<u16>,
    made: Vec<Edge>,
}

impl Merge {
    /// The node of a frame whose groups are all visited; `None` when nothing holds.
    pub(crate) fn node(&mut self, frame: &Frame, builder: &mut Builder) -> Option<NodeId> {
        self.edges.clear();
        self.placed.clear();
        for (value, label, and) in frame.values() {
            let edge = self.edges.number(label.0, &[and]);
            self.placed.push((edge, value));
        }
        self.placed.sort_unstable();
        self.made.clear();
        for (run, (label, and)) in self
            .placed
            .chunk_by(|one, other| one.0 == other.0)
            .zip(self.edges.iter())
        {
            self.values.clear();
            self.values.extend(run.iter().map(|(_, value)| *value));
            let and = and.first().copied()?;
            let set = builder.set(frame.variable, &self.values);
            let label = LabelId(label);
            self.made.push(Edge {
                branch: builder.branch(Branch { set, label }),
                and,
            });
        }
        (!self.made.is_empty()).then(|| builder.node(frame.variable, &self.made))
    }
}
