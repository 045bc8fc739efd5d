//! Finds rows of a table that can match at once, and rows with the same key.
//!
//! Two rows *meet* when in every column some value passes both cells: `white, 15..36` and `*, 36..` meet at white and
//! 36. The rows are partitioned column by column: sweeping over the values of a column gives the largest groups of rows
//! that share a value, and only rows of one group can meet. A small group is compared pair by pair.
//!
//! Always holds: when the search is complete, a row that meets an earlier one is named together with the earliest one.
//! Cost: for plain rows O(rows x columns x log rows). Wildcards put a row into many groups; past [`WORK_LIMIT`] steps
//! the search stops and says so; past a fiftieth of that it stops as soon as more meetings are found than are reported
//! one by one. Never recursive: the groups that are still to divide stand on a stack.
//! Source: sweeping for the maximal cliques of intervals is common practice, from memory.

use std::collections::{BTreeMap, BTreeSet};

use astragal_model::{Cell, Interval, Value};

use super::reports::REPORTS_LIMIT;

/// LIMIT: how many steps the search takes, where a step puts a row into a group or compares two rows.
pub(crate) const WORK_LIMIT: u64 = 50_000_000;

/// After so many steps, meetings enough to fill the report end the search.
const STEPS_BEFORE_ENOUGH: u64 = 1_000_000;

/// Groups of at most so many rows are compared pair by pair.
const PAIRWISE_MAX: usize = 8;

/// One column of a table: its distinct cells, and which of them each row has.
pub(crate) struct KeyColumn {
    pub(crate) cells: Vec<Cell>,
    pub(crate) rows: Vec<u32>,
}

/// Which rows meet.
pub(crate) struct Meetings {
    /// For each row that meets an earlier one: the earliest.
    pub(crate) earlier: BTreeMap<u32, u32>,
    /// Whether the search ended by itself.
    pub(crate) complete: bool,
}

/// Finds the rows that meet an earlier row.
///
/// With `labels`, one a row, rows of the same label may meet.
pub(crate) fn meetings(columns: &[KeyColumn], labels: Option<&[u32]>, work_limit: u64) -> Meetings {
    let row_count = columns.first().map_or(0, |column| column.rows.len());
    let mut spread: Vec<Spread<'_>> = columns.iter().map(Spread::new).collect();
    spread.sort_by_key(Spread::pairs);
    let mut search = Search {
        columns: spread,
        labels,
        earlier: BTreeMap::new(),
        work: 0,
        work_limit,
    };
    let mut open = vec![(0, (0..row_count).map(row_number).collect::<Vec<u32>>())];
    let mut complete = true;
    while let Some((column, rows)) = open.pop() {
        if search.is_over() {
            complete = false;
            break;
        }
        search.divide(column, rows, &mut open);
    }
    Meetings {
        earlier: search.earlier,
        complete,
    }
}

/// Finds the rows whose cells are all the same as those of an earlier row; with each, the first of them.
pub(crate) fn repetitions(columns: &[KeyColumn]) -> BTreeMap<u32, u32> {
    let row_count = columns.first().map_or(0, |column| column.rows.len());
    let key = |row: u32| columns.iter().map(move |column| column.cell_number(row));
    let mut rows: Vec<u32> = (0..row_count).map(row_number).collect();
    rows.sort_by(|a, b| key(*a).cmp(key(*b)).then(a.cmp(b)));
    let mut repeated = BTreeMap::new();
    let mut first: Option<u32> = None;
    for row in rows {
        match first {
            Some(earlier) if key(earlier).eq(key(row)) => {
                repeated.insert(row, earlier);
            }
            _ => first = Some(row),
        }
    }
    repeated
}

/// Where two cells meet.
#[derive(Debug, PartialEq, Eq)]
pub(crate) enum MeetingPoint {
    /// At every value.
    Anywhere,
    /// At this value, and perhaps at others.
    At(Value),
    /// At the values above this one.
    Above(Value),
}

/// Where two cells meet, if they do.
pub(crate) fn meeting_point(a: &Cell, b: &Cell) -> Option<MeetingPoint> {
    if *a == Cell::Any && *b == Cell::Any {
        return Some(MeetingPoint::Anywhere);
    }
    let shared = ends(a, |interval| interval.upper.as_ref())
        .into_iter()
        .chain(ends(b, |interval| interval.upper.as_ref()))
        .find(|value| a.admits(value) && b.admits(value));
    if let Some(value) = shared {
        return Some(MeetingPoint::At(value.clone()));
    }
    // What is left is intervals without an upper end: they meet above the greatest of their lower ends.
    let is_unbounded = |cell: &Cell| match cell {
        Cell::Any => true,
        Cell::OneOf(_) => false,
        Cell::Within(intervals) => intervals.iter().any(|interval| interval.upper.is_none()),
    };
    if !is_unbounded(a) || !is_unbounded(b) {
        return None;
    }
    let lower = |interval: &'_ Interval| interval.lower.as_ref().map(|end| end.value.clone());
    let last = |cell: &Cell| match cell {
        Cell::Within(intervals) => intervals
            .iter()
            .rev()
            .find(|interval| interval.upper.is_none())
            .and_then(lower),
        _ => None,
    };
    match last(a).max(last(b)) {
        Some(value) if a.admits(&value) && b.admits(&value) => Some(MeetingPoint::At(value)),
        Some(value) => Some(MeetingPoint::Above(value)),
        None => Some(MeetingPoint::Anywhere),
    }
}

/// The values of a set, or one end of each interval, where there is one.
fn ends(cell: &Cell, end: impl Fn(&Interval) -> Option<&Value>) -> Vec<&Value> {
    match cell {
        Cell::Any => Vec::new(),
        Cell::OneOf(values) => values.iter().collect(),
        Cell::Within(intervals) => intervals.iter().filter_map(end).collect(),
    }
}

fn row_number(row: usize) -> u32 {
    u32::try_from(row).unwrap_or(u32::MAX)
}

fn position(number: u32) -> usize {
    usize::try_from(number).unwrap_or(usize::MAX)
}

impl KeyColumn {
    fn cell_number(&self, row: u32) -> u32 {
        self.rows.get(position(row)).copied().unwrap_or(u32::MAX)
    }

    /// The cell of a row.
    pub(crate) fn cell(&self, row: u32) -> Option<&Cell> {
        self.cells.get(position(self.cell_number(row)))
    }
}

/// A column whose values are numbered in order, gaps between them included.
///
/// The values that its cells mention, sorted, have the odd numbers; the gaps below, between and above the even ones.
struct Spread<'a> {
    column: &'a KeyColumn,
    /// For each distinct cell the numbers that pass, as ranges with both ends; sorted and apart.
    spans: Vec<Vec<(u32, u32)>>,
    last: u32,
}

impl<'a> Spread<'a> {
    fn new(column: &'a KeyColumn) -> Self {
        let mut values: BTreeSet<&Value> = BTreeSet::new();
        for cell in &column.cells {
            match cell {
                Cell::Any => {}
                Cell::OneOf(members) => values.extend(members.iter()),
                Cell::Within(intervals) => {
                    let lower = intervals.iter().filter_map(|interval| interval.lower.as_ref());
                    values.extend(lower.map(|end| &end.value));
                    values.extend(intervals.iter().filter_map(|interval| interval.upper.as_ref()));
                }
            }
        }
        let values: Vec<&Value> = values.into_iter().collect();
        let last = row_number(values.len()).saturating_mul(2);
        let number = |value: &Value| {
            let at = values.partition_point(|other| *other < value);
            row_number(at).saturating_mul(2).saturating_add(1)
        };
        let spans = column.cells.iter().map(|cell| match cell {
            Cell::Any => vec![(0, last)],
            Cell::OneOf(members) => members
                .iter()
                .map(|value| (number(value), number(value)))
                .collect(),
            Cell::Within(intervals) => intervals
                .iter()
                .map(|interval| {
                    let start = match &interval.lower {
                        None => 0,
                        Some(end) => number(&end.value).saturating_add(u32::from(end.open)),
                    };
                    (start, interval.upper.as_ref().map_or(last, number))
                })
                .collect(),
        });
        Self {
            column,
            spans: spans.collect(),
            last,
        }
    }

    fn spans_of(&self, row: u32) -> &[(u32, u32)] {
        let cell = position(self.column.cell_number(row));
        self.spans.get(cell).map_or(&[], Vec::as_slice)
    }

    /// About how many pairs of rows share a value: what the search would have left after this column.
    fn pairs(&self) -> u128 {
        let mut change = vec![0_i64; position(self.last).saturating_add(2)];
        for row in 0..self.column.rows.len() {
            for (start, end) in self.spans_of(row_number(row)) {
                if let Some(place) = change.get_mut(position(*start)) {
                    *place += 1;
                }
                if let Some(place) = change.get_mut(position(*end).saturating_add(1)) {
                    *place -= 1;
                }
            }
        }
        let mut rows = 0_i64;
        let mut pairs = 0_u128;
        for step in change {
            rows += step;
            let rows = u128::from(rows.unsigned_abs());
            pairs = pairs.saturating_add(rows.saturating_mul(rows));
        }
        pairs
    }

    fn meet(&self, a: u32, b: u32) -> bool {
        let (mut a, mut b) = (self.spans_of(a), self.spans_of(b));
        while let ([first, rest_a @ ..], [second, rest_b @ ..]) = (a, b) {
            if first.1 < second.0 {
                a = rest_a;
            } else if second.1 < first.0 {
                b = rest_b;
            } else {
                return true;
            }
        }
        false
    }
}

struct Search<'a> {
    columns: Vec<Spread<'a>>,
    labels: Option<&'a [u32]>,
    earlier: BTreeMap<u32, u32>,
    work: u64,
    work_limit: u64,
}

impl Search<'_> {
    /// Whether it has cost too much, or has cost much and found enough.
    fn is_over(&self) -> bool {
        self.work > self.work_limit
            || (self.work > STEPS_BEFORE_ENOUGH && self.earlier.len() >= REPORTS_LIMIT)
    }

    /// Divides rows that meet in all columns before this one.
    fn divide(&mut self, column: usize, rows: Vec<u32>, open: &mut Vec<(usize, Vec<u32>)>) {
        if rows.len() <= PAIRWISE_MAX {
            return self.compare(column, &rows);
        }
        let Some(spread) = self.columns.get(column) else {
            return self.all_meet(&rows);
        };
        let mut starts: Vec<(u32, u32, u32)> = Vec::with_capacity(rows.len());
        for row in &rows {
            starts.extend(
                spread
                    .spans_of(*row)
                    .iter()
                    .map(|(start, end)| (*start, *end, *row)),
            );
        }
        starts.sort_unstable();
        let mut ends: Vec<(u32, u32)> = starts.iter().map(|(_, end, row)| (*end, *row)).collect();
        ends.sort_unstable();
        let mut starts = starts.into_iter().peekable();
        let mut active: BTreeSet<u32> = BTreeSet::new();
        let mut has_grown = false;
        for (end, row) in ends {
            while let Some((_, _, starting)) = starts.next_if(|(start, _, _)| *start <= end) {
                active.insert(starting);
                has_grown = true;
            }
            if has_grown && active.len() > 1 {
                self.work = self
                    .work
                    .saturating_add(u64::try_from(active.len()).unwrap_or(u64::MAX));
                if self.is_over() {
                    // The group that is left behind makes the search incomplete.
                    open.push((column, rows));
                    return;
                }
                let group: Vec<u32> = active.iter().copied().collect();
                if group.len() <= PAIRWISE_MAX {
                    self.compare(column + 1, &group);
                } else {
                    open.push((column + 1, group));
                }
            }
            has_grown = false;
            active.remove(&row);
        }
    }

    /// Compares few rows, pair by pair, in the columns that are left.
    fn compare(&mut self, column: usize, rows: &[u32]) {
        for (at, row) in rows.iter().enumerate() {
            let met = rows.iter().take(at).find(|earlier| {
                self.may_not_meet(**earlier, *row)
                    && self
                        .columns
                        .iter()
                        .skip(column)
                        .all(|spread| spread.meet(**earlier, *row))
            });
            let met = met.copied();
            self.work = self.work.saturating_add(u64::try_from(at).unwrap_or(u64::MAX));
            if let Some(earlier) = met {
                self.record(*row, earlier);
            }
        }
    }

    /// Records rows of which every two meet.
    fn all_meet(&mut self, rows: &[u32]) {
        let Some(first) = rows.first().copied() else {
            return;
        };
        let other = rows.iter().copied().find(|row| self.may_not_meet(first, *row));
        for row in rows.iter().copied().skip(1) {
            self.work = self.work.saturating_add(1);
            if self.may_not_meet(first, row) {
                self.record(row, first);
            } else if let Some(other) = other.filter(|other| *other < row) {
                self.record(row, other);
            }
        }
    }

    fn record(&mut self, row: u32, earlier: u32) {
        self.earlier
            .entry(row)
            .and_modify(|known| *known = (*known).min(earlier))
            .or_insert(earlier);
    }

    fn may_not_meet(&self, a: u32, b: u32) -> bool {
        let Some(labels) = self.labels else { return a != b };
        labels.get(position(a)) != labels.get(position(b))
    }
}

#[cfg(test)]
mod tests;
