//! Random problems larger than can be tried out one configuration after the other, in the format of `instances/README.md`.
//!
//! 12 to 40 attributes of 2 to 12 options. Attributes stand on a line, and most rules and pair prices take theirs from a window of
//! it; names and places in the file are shuffled, so that nothing gives the line away. One problem in eight has no windows.
//! The same seed gives the same problem.

use astragal_oracle::chance::Chance;
use serde_json::{Value, json};

/// Tables have no more tuples than this, allowed or not.
const TUPLES_MAX: usize = 500;

/// Attributes on the line, by their position in the file.
struct Line<'a> {
    chance: &'a mut Chance,
    places: Vec<usize>,
    sizes: Vec<usize>,
    window: usize,
}

/// The problem of a seed.
pub(crate) fn problem(seed: u64) -> Value {
    let mut chance = Chance::new(seed);
    let count = chance.between(12, 40);
    let sizes: Vec<usize> = (0..count).map(|_| size(&mut chance)).collect();
    let mut places: Vec<usize> = (0..count).collect();
    chance.shuffle(&mut places);
    let window = if chance.percent(12) {
        count
    } else {
        chance.between(3, 7)
    };
    let tightness = chance.between(0, 3);
    let mut line = Line {
        chance: &mut chance,
        places,
        sizes,
        window,
    };
    let mut several = |least: usize, greatest: usize, one: fn(&mut Line<'_>, usize) -> Value| {
        let times = line.chance.between(least, greatest);
        let all = (0..times).map(|_| one(&mut line, tightness));
        Value::Array(all.collect())
    };
    // Without windows everything ties everything, so that there are fewer rules.
    let (tables, clauses, pairs) = if window == count {
        (count / 4, count / 3, count / 8)
    } else {
        (count * 2 / 3, count * 3 / 2, count / 3)
    };
    let tables = several(tables / 2, tables, table);
    let clauses = several(clauses / 2, clauses, clause);
    let pairs = several(0, pairs, pair_prices);
    let sizes = &line.sizes;
    let attributes = sizes.iter().enumerate();
    json!({
        "name": format!("problem {seed}"),
        "attributes": attributes.map(|(at, size)| json!({"name": name(at), "options": size})).collect::<Vec<_>>(),
        "tables": tables,
        "clauses": clauses,
        "option_prices": sizes.clone().into_iter().map(|size| prices(line.chance, size, 80)).collect::<Vec<_>>(),
        "pair_prices": pairs,
    })
}

/// The name of the attribute at a position of the file.
pub(crate) fn name(position: usize) -> String {
    format!("a{position}")
}

fn size(chance: &mut Chance) -> usize {
    if chance.percent(70) {
        chance.between(2, 5)
    } else {
        chance.between(2, 12)
    }
}

/// Prices of which so many of a hundred are not 0; one in eight of those is negative.
fn prices(chance: &mut Chance, count: usize, percent: usize) -> Vec<i64> {
    let one = |_| {
        if !chance.percent(percent) {
            return 0;
        }
        let price = i64::try_from(chance.between(1, 400)).unwrap_or(0);
        if chance.percent(12) { -price } else { price }
    };
    (0..count).map(one).collect()
}

impl Line<'_> {
    /// Different attributes out of one window.
    fn scope(&mut self, count: usize) -> Vec<usize> {
        let first = self.chance.below(self.places.len() + 1 - self.window);
        let mut window = self.places[first..first + self.window].to_vec();
        self.chance.shuffle(&mut window);
        window.truncate(count);
        window
    }
}

fn names(scope: &[usize]) -> Vec<String> {
    scope.iter().map(|at| name(*at)).collect()
}

/// A table of allowed rows over two to four attributes.
fn table(line: &mut Line<'_>, tightness: usize) -> Value {
    let wanted = line.chance.between(2, 4);
    let mut scope = line.scope(wanted);
    let tuples = |scope: &[usize]| scope.iter().map(|at| line.sizes[*at]).product::<usize>();
    while scope.len() > 2 && tuples(&scope) > TUPLES_MAX {
        scope.pop();
    }
    let kept = line.chance.between(92, 98) - tightness * line.chance.between(6, 14);
    let mut rows = vec![Vec::new()];
    for at in &scope {
        let longer = |row: &Vec<usize>| {
            let options = 0..line.sizes[*at];
            options
                .map(|option| [row.as_slice(), &[option]].concat())
                .collect::<Vec<_>>()
        };
        rows = rows.iter().flat_map(longer).collect();
    }
    rows.retain(|_| line.chance.percent(kept));
    json!({"scope": names(&scope), "allowed": rows})
}

/// A clause: of two to four memberships one must hold. An attribute may stand in it twice.
fn clause(line: &mut Line<'_>, _tightness: usize) -> Value {
    let wanted = line.chance.between(2, 4);
    let mut scope = line.scope(wanted);
    if line.chance.percent(5) {
        scope.push(scope[0]);
    }
    let member = |at: &usize| {
        let all: Vec<usize> = (0..line.sizes[*at]).collect();
        let options = line.chance.some_of(45, &all);
        json!({"attribute": name(*at), "options": options})
    };
    Value::Array(scope.iter().map(member).collect())
}

/// A matrix of prices over two attributes.
fn pair_prices(line: &mut Line<'_>, _tightness: usize) -> Value {
    let scope = line.scope(2);
    let (rows, columns) = (line.sizes[scope[0]], line.sizes[scope[1]]);
    let matrix: Vec<Vec<i64>> = (0..rows).map(|_| prices(line.chance, columns, 40)).collect();
    json!({"scope": names(&scope), "price": matrix})
}
