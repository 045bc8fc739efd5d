//! Compares the drawn graph with what the engine compiles and answers.

use astragal_core::compile;
use astragal_core::count::count;
use astragal_core::diagram::Diagram;
use astragal_core::label::{CellId, GateId, Label};
use astragal_core::limit::Limits;
use astragal_core::network::{Network, Variable};
use astragal_core::order::Tree;
use astragal_core::pass::{Scratch, options};
use astragal_core::rows::{Row, Rows};
use astragal_core::weights::{Cost, Weight, Weights};

use crate::drawn::{ATTRIBUTES, COLOUR, GAS, GLASS, HINGE, NODES, OPERATION, PICKS, SCREEN};
use crate::walk::{self, Least, Question};

/// The seed under which operation hangs at the top, as it is drawn.
const SEED: u64 = 12;

/// Says the first thing that differs.
pub(crate) fn compare() -> Result<(), String> {
    let mut network = network();
    let scopes: Vec<&[Variable]> = network.relations.iter().map(|one| one.scope()).collect();
    let tree = Tree::new(&network.domains, &scopes, SEED);
    let child = |above: usize| tree.children.get(above).cloned().unwrap_or_default();
    same("the roots", &sorted(&tree.roots), &vec![OPERATION, COLOUR])?;
    same(
        "below operation",
        &sorted(&child(OPERATION)),
        &vec![SCREEN, GLASS],
    )?;
    same("below glass", &sorted(&child(GLASS)), &vec![GAS])?;
    let diagram = compile(&mut network, SEED, &Limits::default()).map_err(|limit| limit.to_string())?;
    same("nodes", &diagram.node_count(), &NODES.len())?;
    let edges = NODES.iter().map(|node| node.edges.len()).sum();
    same("edges", &diagram.edge_count(), &edges)?;
    let open = weights(
        &diagram,
        &Question {
            picks: &[],
            is_open: true,
        },
    );
    same("configurations", &count(&diagram, &open), &walk::count().into())?;
    for picks in [&[][..], &PICKS[..], &[(OPERATION, 1), (SCREEN, 1), (GAS, 0)]] {
        for is_open in [true, false] {
            answers(&diagram, &Question { picks, is_open })?;
        }
    }
    Ok(())
}

fn answers(diagram: &Diagram, question: &Question<'_>) -> Result<(), String> {
    let mut best = Vec::new();
    let weights = weights(diagram, question);
    let whole = options(diagram, &weights, &mut Scratch::default(), &mut best);
    let walked = question.walk();
    same("the whole", &plain(whole), &walked.whole)?;
    let drawn: Vec<Least> = walked.options.concat();
    let best: Vec<Least> = best.into_iter().map(plain).collect();
    same("the options", &best, &drawn)
}

fn plain(weight: Weight) -> Least {
    weight.is_feasible().then(|| (weight.changes(), weight.cents()))
}

fn same<T: PartialEq + std::fmt::Debug>(what: &str, engine: &T, drawn: &T) -> Result<(), String> {
    if engine == drawn {
        Ok(())
    } else {
        Err(format!("{what}: {engine:?}, drawn {drawn:?}"))
    }
}

fn sorted(variables: &[Variable]) -> Vec<usize> {
    let mut places: Vec<usize> = variables.iter().map(|one| one.index()).collect();
    places.sort_unstable();
    places
}

/// The three relations. What no row matches is allowed.
fn network() -> Network {
    let mut network = Network::default();
    for attribute in &ATTRIBUTES {
        network.variable(attribute.name, attribute.options.len());
    }
    let narrow = Label::new(vec![GateId(0)], vec![CellId(0)]);
    for (name, scope, tuple, label) in [
        ("fixed has no screen", [OPERATION, SCREEN], [1, 1], None),
        (
            "a triple casement is narrow",
            [OPERATION, GLASS],
            [0, 1],
            Some(narrow),
        ),
        ("triple is filled with argon", [GLASS, GAS], [1, 0], None),
    ] {
        let cells = tuple.iter().map(|value| Some(vec![*value])).collect();
        let scope = scope.into_iter().map(Variable::at).collect();
        let limit = Limits::default().relation_states;
        let rows = vec![Row { cells, label }];
        let relation = Rows::new(name, scope, vec![2, 2], rows, Some(Label::empty()), limit);
        network.relations.push(Box::new(relation));
    }
    network
}

fn weights(diagram: &Diagram, question: &Question<'_>) -> Weights {
    let weight = |least: Least| match least {
        Some((changes, cents)) => Weight::new(u32::try_from(changes).unwrap_or(0), cents),
        None => Weight::INFEASIBLE,
    };
    let options = (0..ATTRIBUTES.len()).flat_map(|at| [question.option(at, 0), question.option(at, 1)]);
    let label = |label: &Label| match (label.cells().is_empty(), question.is_open) {
        (true, _) => Some((0, 0)),
        (false, true) => Some((0, HINGE)),
        (false, false) => None,
    };
    Weights {
        options: options.map(weight).collect(),
        labels: diagram.labels().iter().map(label).map(weight).collect(),
    }
}
