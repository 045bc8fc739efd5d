//! Two families of random networks.
//!
//! *line*: attributes of four options in a row; a rule is a table over three neighbours that keeps each tuple in 95 of a hundred
//! cases. However long the row, cutting it separates by two attributes: the width is bounded. The rules go round the row until there
//! are as many as wanted.
//!
//! *grid*: attributes of three options in a square; a rule is a table over two neighbours, beside or below, that keeps each tuple in 85
//! of a hundred cases. To cut a square one has to cut a side: the width grows as the root of the attributes.
//!
//! The same numbers give the same network.

use astragal_core::label::Label;
use astragal_core::limit::Limits;
use astragal_core::network::{Network, Variable};
use astragal_core::rows::{Row, Rows};
use astragal_oracle::chance::Chance;

/// A family.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(crate) enum Family {
    Line,
    Grid,
}

impl Family {
    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::Line => "line",
            Self::Grid => "grid",
        }
    }

    /// Every network of the table: the family, attributes, rules.
    pub(crate) fn points() -> Vec<(Self, usize, usize)> {
        let mut points = Vec::new();
        for attributes in [10, 20, 50, 100, 200, 350, 500] {
            points.push((Self::Line, attributes, attributes));
        }
        for rules in [50, 200, 400, 800, 1_600] {
            points.push((Self::Line, 100, rules));
        }
        for side in [3, 4, 5, 6, 7, 8, 9, 10, 11, 12] {
            points.push((Self::Grid, side * side, 2 * side * (side - 1)));
        }
        points
    }
}

/// A network of a family.
pub(crate) fn network(family: Family, attributes: usize, rules: usize) -> Network {
    let (size, kept, scopes) = match family {
        Family::Line => (4, 95, line(attributes, rules)),
        Family::Grid => (3, 85, grid(attributes.isqrt())),
    };
    let mut network = Network::default();
    for attribute in 0..attributes {
        network.variable(&format!("a{attribute}"), size);
    }
    let mut chance = Chance::new(1);
    for (number, scope) in scopes.into_iter().enumerate() {
        let rows = tuples(size, scope.len())
            .into_iter()
            .filter(|_| chance.percent(kept))
            .map(|tuple| Row {
                cells: tuple.into_iter().map(|value| Some(vec![value])).collect(),
                label: Some(Label::empty()),
            });
        let (rows, sizes) = (rows.collect(), vec![size; scope.len()]);
        let scope = scope.into_iter().map(Variable::at).collect();
        let limit = Limits::default().relation_states;
        let rule = Rows::new(&format!("rule {number}"), scope, sizes, rows, None, limit);
        network.relations.push(Box::new(rule));
    }
    network
}

fn line(attributes: usize, rules: usize) -> Vec<Vec<usize>> {
    let places = attributes.saturating_sub(2).max(1);
    // With fewer rules than places they are spread evenly.
    let place = |rule: usize| {
        if rules < places {
            rule * places / rules
        } else {
            rule % places
        }
    };
    let scope = |rule: usize| (place(rule)..place(rule) + 3).collect();
    (0..rules).map(scope).collect()
}

fn grid(side: usize) -> Vec<Vec<usize>> {
    let mut scopes = Vec::new();
    for place in 0..side * side {
        if place % side + 1 < side {
            scopes.push(vec![place, place + 1]);
        }
        if place / side + 1 < side {
            scopes.push(vec![place, place + side]);
        }
    }
    scopes
}

/// All tuples of so many values.
fn tuples(size: usize, length: usize) -> Vec<Vec<usize>> {
    let mut tuples = vec![Vec::new()];
    for _ in 0..length {
        let longer = |tuple: &Vec<usize>| {
            let longer = (0..size).map(|value| [tuple.as_slice(), &[value]].concat());
            longer.collect::<Vec<_>>()
        };
        tuples = tuples.iter().flat_map(longer).collect();
    }
    tuples
}
