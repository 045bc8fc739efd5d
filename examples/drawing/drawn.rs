//! The worked example: five attributes of two options, three relations, and the diagram of them as it is drawn.
//!
//! A fixed window has no screen. A casement with triple glass has to be at most 30 in wide (gate *narrow*) and costs 25 more for
//! the hinge (cell *hinge*). Triple glass is filled with argon.

/// An attribute with its options and what each costs.
pub(crate) struct Attribute {
    pub(crate) name: &'static str,
    pub(crate) options: [(&'static str, i64); 2],
}

pub(crate) const OPERATION: usize = 0;
pub(crate) const SCREEN: usize = 1;
pub(crate) const GLASS: usize = 2;
pub(crate) const GAS: usize = 3;
pub(crate) const COLOUR: usize = 4;

pub(crate) const ATTRIBUTES: [Attribute; 5] = [
    Attribute {
        name: "operation",
        options: [("casement", 300), ("fixed", 200)],
    },
    Attribute {
        name: "screen",
        options: [("none", 0), ("mesh", 40)],
    },
    Attribute {
        name: "glass",
        options: [("double", 0), ("triple", 90)],
    },
    Attribute {
        name: "gas",
        options: [("air", 0), ("argon", 30)],
    },
    Attribute {
        name: "colour",
        options: [("white", 0), ("grey", 55)],
    },
];

/// What the cell costs.
pub(crate) const HINGE: i64 = 25;

/// The picks of the drawing.
pub(crate) const PICKS: [(usize, usize); 2] = [(SCREEN, 1), (GLASS, 1)];

/// An edge: its options, whether it carries the gate and the cell, the nodes that hang side by side below.
pub(crate) struct Edge {
    pub(crate) options: &'static [usize],
    pub(crate) is_labelled: bool,
    pub(crate) below: &'static [usize],
}

/// A node: its attribute, its edges, and where its middle is drawn.
pub(crate) struct Node {
    pub(crate) attribute: usize,
    pub(crate) edges: &'static [Edge],
    pub(crate) place: (i64, i64),
}

const fn edge(options: &'static [usize], below: &'static [usize]) -> Edge {
    Edge {
        options,
        is_labelled: false,
        below,
    }
}

/// The nodes, those below before those above.
pub(crate) const NODES: [Node; 8] = [
    Node {
        attribute: GAS,
        edges: &[edge(&[0, 1], &[])],
        place: (250, 560),
    },
    Node {
        attribute: GAS,
        edges: &[edge(&[1], &[])],
        place: (800, 560),
    },
    Node {
        attribute: GLASS,
        edges: &[
            edge(&[0], &[0]),
            Edge {
                options: &[1],
                is_labelled: true,
                below: &[1],
            },
        ],
        place: (330, 360),
    },
    Node {
        attribute: GLASS,
        edges: &[edge(&[0], &[0]), edge(&[1], &[1])],
        place: (720, 360),
    },
    Node {
        attribute: SCREEN,
        edges: &[edge(&[0, 1], &[])],
        place: (110, 360),
    },
    Node {
        attribute: SCREEN,
        edges: &[edge(&[0], &[])],
        place: (520, 360),
    },
    Node {
        attribute: OPERATION,
        edges: &[edge(&[0], &[4, 2]), edge(&[1], &[5, 3])],
        place: (400, 150),
    },
    Node {
        attribute: COLOUR,
        edges: &[edge(&[0, 1], &[])],
        place: (780, 150),
    },
];

/// What hangs at the top.
pub(crate) const TOP: [usize; 2] = [6, 7];
