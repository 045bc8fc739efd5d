//! A relation by rows: the first row that matches a tuple labels it.
//!
//! A row restricts some columns to sets of values and leaves the others free. The clause "white, or double glass" is two
//! rows, `white *` and `* double`, with the empty label, and everything else forbidden.
//!
//! A state is the list of rows that still match what was read. Cost: one visit a row, value and state. Rows that leave many columns
//! free stay in many states; how many rows all states hold together has a limit, since that is what takes memory.

use crate::label::Label;
use crate::limit::{Limit, Limits};
use crate::lists::Lists;
use crate::network::{Decision, Relation, RelationState, Variable};

/// LIMIT: how many rows the states of a relation may hold, for each state that it may have.
const ROWS_A_STATE: usize = 8;

/// One row.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Row {
    /// For each variable of the scope the values that match, or `None` where all do.
    pub cells: Vec<Option<Vec<usize>>>,
    /// What a tuple carries that matches; `None` forbids it.
    pub label: Option<Label>,
}

/// A relation by rows.
#[derive(Clone, Debug)]
pub struct Rows {
    name: String,
    scope: Vec<Variable>,
    sizes: Vec<usize>,
    rows: Vec<Row>,
    otherwise: Option<Label>,
    own_limit: usize,
    /// The limit of the compile, or its own where that is less.
    limit: usize,
    /// The columns in the order in which they are read.
    columns: Vec<usize>,
    /// For each row the position after its last restricted column.
    free_from: Vec<usize>,
    /// For each state the rows that still match, rising.
    states: Lists<u32>,
    /// For each value the rows that match after it; memory that is used again.
    by_value: Vec<Vec<u32>>,
}

impl Rows {
    /// A relation over `scope`, whose variables have `sizes` values; tuples that no row matches carry `otherwise`.
    /// `limit` is how many states it may have at most, beside the limit of a compile.
    #[must_use]
    pub fn new(
        name: &str,
        scope: Vec<Variable>,
        sizes: Vec<usize>,
        rows: Vec<Row>,
        otherwise: Option<Label>,
        limit: usize,
    ) -> Self {
        Self {
            name: name.to_owned(),
            scope,
            sizes,
            rows,
            otherwise,
            own_limit: limit,
            limit,
            columns: Vec::new(),
            free_from: Vec::new(),
            states: Lists::default(),
            by_value: Vec::new(),
        }
    }

    fn number(&mut self, alive: &[u32]) -> Result<RelationState, Limit> {
        let number = self.states.number(0, alive);
        if self.states.len() > self.limit {
            return Err(Limit::RelationStates {
                relation: self.name.clone(),
                limit: self.limit,
            });
        }
        let most = self.limit.saturating_mul(ROWS_A_STATE).max(self.rows.len());
        if self.states.item_count() > most {
            return Err(Limit::RelationRows {
                relation: self.name.clone(),
                limit: most,
            });
        }
        Ok(number)
    }

    fn cell(&self, row: u32, position: usize) -> Option<&[usize]> {
        let column = self.columns.get(position)?;
        self.rows.get(row as usize)?.cells.get(*column)?.as_deref()
    }

    /// Drops the rows that can no longer be the first to match: those after one that matches whatever comes.
    fn cut(&self, alive: &mut Vec<u32>, position: usize) {
        let free = |row: &u32| {
            self.free_from
                .get(*row as usize)
                .is_some_and(|from| *from <= position)
        };
        if let Some(first) = alive.iter().position(free) {
            alive.truncate(first + 1);
        }
    }
}

impl Relation for Rows {
    fn name(&self) -> &str {
        &self.name
    }

    fn scope(&self) -> &[Variable] {
        &self.scope
    }

    fn start(&mut self, order: &[Variable], limits: &Limits) -> Result<RelationState, Limit> {
        self.limit = self.own_limit.min(limits.relation_states);
        let column = |variable| self.scope.iter().position(|one| one == variable);
        self.columns = order.iter().filter_map(column).collect();
        self.states.clear();
        let free_from = |row: &Row| {
            let restricted = |column: &&usize| row.cells.get(**column).is_some_and(Option::is_some);
            let last = self
                .columns
                .iter()
                .enumerate()
                .rev()
                .find(|(_, column)| restricted(column));
            last.map_or(0, |(position, _)| position + 1)
        };
        self.free_from = self.rows.iter().map(free_from).collect();
        let mut alive: Vec<u32> = (0..u32::try_from(self.rows.len()).unwrap_or(u32::MAX)).collect();
        self.cut(&mut alive, 0);
        self.number(&alive)
    }

    fn decision(&self, state: RelationState, position: usize) -> Decision {
        let decided = |label: &Option<Label>| match label {
            Some(label) => Decision::Allowed(label.clone()),
            None => Decision::Forbidden,
        };
        let alive = self.states.list(state);
        let label = |row: &u32| self.rows.get(*row as usize).map(|row| &row.label);
        let Some((last, before)) = alive.split_last() else {
            return decided(&self.otherwise);
        };
        // The last row alive may match whatever comes; then it decides unless an earlier row says something else.
        let last_is_free = self
            .free_from
            .get(*last as usize)
            .is_some_and(|from| *from <= position);
        let fallback = if last_is_free {
            label(last)
        } else {
            Some(&self.otherwise)
        };
        let mut rows = before.iter().chain((!last_is_free).then_some(last));
        match fallback {
            Some(fallback) if rows.all(|row| label(row) == Some(fallback)) => decided(fallback),
            _ => Decision::Open,
        }
    }

    fn after(
        &mut self,
        state: RelationState,
        position: usize,
        states: &mut Vec<RelationState>,
    ) -> Result<(), Limit> {
        let size = self
            .columns
            .get(position)
            .and_then(|column| self.sizes.get(*column));
        let mut by_value = std::mem::take(&mut self.by_value);
        by_value.resize(size.copied().unwrap_or(0), Vec::new());
        by_value.iter_mut().for_each(Vec::clear);
        for row in self.states.list(state) {
            match self.cell(*row, position) {
                None => by_value.iter_mut().for_each(|alive| alive.push(*row)),
                Some(values) => {
                    for value in values {
                        if let Some(alive) = by_value.get_mut(*value) {
                            alive.push(*row);
                        }
                    }
                }
            }
        }
        for alive in &mut by_value {
            alive.dedup();
            self.cut(alive, position + 1);
            states.push(self.number(alive)?);
        }
        self.by_value = by_value;
        Ok(())
    }
}
