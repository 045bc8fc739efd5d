//! Limits: what a compile may take, and which of them was passed.
//!
//! Always holds: limits count states, nodes and rows, never time, so that the same catalog passes or fails everywhere.

use thiserror::Error;

/// LIMIT: attributes of a catalog, parts expanded.
pub const ATTRIBUTES_MAX: usize = 512;

/// LIMIT: options of one attribute.
pub const OPTIONS_MAX: usize = 4_096;

/// What a compile may take.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Limits {
    /// LIMIT: states of one relation while it is read.
    pub relation_states: usize,
    /// LIMIT: states of the compile: pairs of a variable and what crosses into its subtree.
    pub states: usize,
    /// LIMIT: nodes of the diagram.
    pub nodes: usize,
    /// LIMIT: distinct gates of a catalog.
    pub gates: usize,
    /// LIMIT: distinct cells of a catalog.
    pub cells: usize,
    /// LIMIT: bytes of what grows while a relation is read, and of the diagram with its states; what is held beside is in
    /// proportion.
    pub bytes: usize,
}

impl Default for Limits {
    fn default() -> Self {
        Self {
            relation_states: 5_000_000,
            states: 20_000_000,
            nodes: 2_000_000,
            gates: 65_536,
            cells: 1_000_000,
            bytes: 1 << 30,
        }
    }
}

/// Which limit was passed, and by what.
#[derive(Clone, PartialEq, Eq, Debug, Error)]
pub enum Limit {
    /// The catalog has too many attributes.
    #[error("the catalog has {count} attributes, parts expanded; at most {ATTRIBUTES_MAX} are compiled")]
    Attributes {
        /// How many there are.
        count: usize,
    },
    /// One attribute has too many options.
    #[error("attribute `{attribute}` has {count} options; at most {OPTIONS_MAX} are compiled")]
    Options {
        /// The attribute.
        attribute: String,
        /// How many it has.
        count: usize,
    },
    /// One relation has too many states.
    #[error("rule `{relation}` has more than {limit} states")]
    RelationStates {
        /// The relation.
        relation: String,
        /// The limit.
        limit: usize,
    },
    /// The states of one relation hold too many rows of its table.
    #[error("the states of rule `{relation}` hold more than {limit} rows of its table")]
    RelationRows {
        /// The relation.
        relation: String,
        /// The limit.
        limit: usize,
    },
    /// The compile has too many states.
    #[error("the rules that tie {} together have more than {limit} states", quoted(.variables))]
    States {
        /// The variables whose nodes took most of them.
        variables: Vec<String>,
        /// The limit.
        limit: usize,
    },
    /// The diagram has too many nodes.
    #[error("the rules that tie {} together make more than {limit} nodes", quoted(.variables))]
    Nodes {
        /// The variables whose nodes are most.
        variables: Vec<String>,
        /// The limit.
        limit: usize,
    },
    /// What one relation comes to takes too much memory while it is read.
    #[error("rule `{relation}` takes more than {limit} bytes while it is read")]
    RelationBytes {
        /// The relation.
        relation: String,
        /// The limit.
        limit: usize,
    },
    /// The diagram and its states take too much memory.
    #[error("the rules that tie {} together take more than {limit} bytes", quoted(.variables))]
    Bytes {
        /// The variables whose nodes are most.
        variables: Vec<String>,
        /// The limit.
        limit: usize,
    },
    /// The rules ask too many different things of measures and facts.
    #[error("the rules {} and others ask more than {limit} different conditions of measures and facts", quoted(.rules))]
    Gates {
        /// The rules that brought most of them.
        rules: Vec<String>,
        /// The limit.
        limit: usize,
    },
    /// The price items and standards come to too many different amounts and departures.
    #[error("the price items or standards {} and others come to more than {limit} different cells", quoted(.items))]
    Cells {
        /// The items, or standards as `<attribute>.standard`, that brought most of them.
        items: Vec<String>,
        /// The limit.
        limit: usize,
    },
}

fn quoted(names: &[String]) -> String {
    let names: Vec<String> = names.iter().map(|name| format!("`{name}`")).collect();
    names.join(", ")
}
