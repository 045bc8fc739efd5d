//! Random networks of five shapes, and random questions about them.
//!
//! Mixed: tables over one to four of up to six variables. A star: six or seven leaves around a hub. A row: variables side by side,
//! each with a gate of its own. A chain. And a star of which a leaf is asked or not by a gate.

use astragal_oracle::chance::Chance;

use super::{Net, Question, Table, Tag};

const CONDITIONS: usize = 3;
const CELLS: u32 = 6;
/// More tuples than this are not looked at one by one.
const TUPLES_MAX: usize = 400;

/// What a network looks like.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Shape {
    Mixed,
    Star,
    Row,
    Chain,
    Asked,
}

/// A random network with its shape.
pub(crate) fn net(chance: &mut Chance) -> (Shape, Net) {
    let all = [
        Shape::Mixed,
        Shape::Mixed,
        Shape::Star,
        Shape::Row,
        Shape::Chain,
        Shape::Asked,
    ];
    let shape = all[chance.below(all.len())];
    let mut sizes = match shape {
        Shape::Mixed => (0..chance.between(1, 6)).map(|_| chance.between(1, 4)).collect(),
        Shape::Row | Shape::Chain => vec![2; chance.between(5, 7)],
        Shape::Star | Shape::Asked => {
            let leaves = chance.between(6, 7);
            [vec![chance.between(1, 3)], vec![2; leaves]].concat()
        }
    };
    while sizes.iter().product::<usize>() > TUPLES_MAX {
        sizes.pop();
    }
    let mut net = Net {
        names: (0..sizes.len()).map(|at| format!("v{at}")).collect(),
        sizes,
        tables: Vec::new(),
    };
    // Loose ones leave most tuples, tight ones few or none.
    let forbids = chance.one_of(&[1, 4, 20]).copied().unwrap_or(4);
    let guards = chance.one_of(&[4, 15, 60]).copied().unwrap_or(20);
    for scope in scopes(chance, shape, net.sizes.len()) {
        net.tables
            .push(table(chance, &net.sizes, scope, (forbids, guards)));
    }
    if shape == Shape::Asked {
        net.tables.push(asked(chance));
    }
    chance.shuffle(&mut net.tables);
    (shape, net)
}

fn scopes(chance: &mut Chance, shape: Shape, count: usize) -> Vec<Vec<usize>> {
    match shape {
        Shape::Mixed => {
            let tables = chance.between(0, 6);
            let scope = |chance: &mut Chance| {
                let mut all: Vec<usize> = (0..count).collect();
                chance.shuffle(&mut all);
                all.truncate(chance.between(1, 4));
                all
            };
            (0..tables).map(|_| scope(chance)).collect()
        }
        Shape::Star | Shape::Asked => (1..count).map(|leaf| vec![0, leaf]).collect(),
        Shape::Row => (0..count).map(|at| vec![at]).collect(),
        Shape::Chain => (1..count).map(|at| vec![at, at - 1]).collect(),
    }
}

/// Rows that restrict some columns to some values, in an order that matters.
fn table(chance: &mut Chance, sizes: &[usize], scope: Vec<usize>, percents: (usize, usize)) -> Table {
    let cell = |chance: &mut Chance, variable: &usize| {
        let values: Vec<usize> = (0..sizes[*variable]).collect();
        (!chance.percent(25)).then(|| {
            let some = chance.some_of(30, &values);
            if some.is_empty() {
                vec![chance.copy_of(&values)]
            } else {
                some
            }
        })
    };
    let rows = chance.between(1, 6);
    let row = |chance: &mut Chance| {
        let cells = scope.iter().map(|variable| cell(chance, variable)).collect();
        (cells, tag(chance, percents))
    };
    let rows = (0..rows).map(|_| row(chance)).collect();
    Table {
        scope,
        rows,
        otherwise: tag(chance, percents),
    }
}

fn tag(chance: &mut Chance, (forbids, guards): (usize, usize)) -> Option<Tag> {
    if chance.percent(forbids) {
        return None;
    }
    let mut tag = Tag::default();
    while chance.percent(guards) {
        tag.gates.push(chance.below(2 * CONDITIONS) as u32);
    }
    while chance.percent(40) {
        tag.cells.push(chance.below(CELLS as usize) as u32);
    }
    Some(tag)
}

/// The last value of the first leaf is *not asked*: what it takes to be asked is condition 0.
fn asked(chance: &mut Chance) -> Table {
    let (yes, no) = if chance.percent(50) { (0, 1) } else { (1, 0) };
    let gate = |gate| {
        Some(Tag {
            gates: vec![gate],
            cells: Vec::new(),
        })
    };
    Table {
        scope: vec![1],
        rows: vec![(vec![Some(vec![0])], gate(yes))],
        otherwise: gate(no),
    }
}

/// A random question about a network.
pub(crate) fn question(chance: &mut Chance, net: &Net) -> Question {
    let mut open = Vec::new();
    for _ in 0..CONDITIONS {
        // Yes, no, and what is unknown: counted as holding either way, or neither.
        let states = [[true, false], [false, true], [true, true], [false, false]];
        let known = chance.percent(70);
        open.extend(
            states[if known {
                chance.below(2)
            } else {
                chance.between(2, 3)
            }],
        );
    }
    let amount = |chance: &mut Chance| {
        chance
            .one_of(&[-300, -100, 0, 100, 100, 250])
            .copied()
            .unwrap_or(0)
    };
    let mut picks = Vec::new();
    let mut hidden = Vec::new();
    let (picked, pinned) = (
        chance.below(101),
        chance.one_of(&[0, 0, 30]).copied().unwrap_or(0),
    );
    for (variable, size) in net.sizes.iter().enumerate() {
        if chance.percent(picked) {
            picks.push((variable, chance.below(*size), chance.percent(pinned)));
        }
        if chance.percent(4) {
            hidden.push((variable, chance.below(*size)));
        }
    }
    Question {
        open,
        cells: (0..CELLS).map(|_| amount(chance)).collect(),
        hidden,
        picks,
    }
}
