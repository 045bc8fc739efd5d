//! Tables on paper: marks, rows, and sheets of amounts, split where they are wide.

use astragal_model::Money;
use maud::{Markup, html};

use crate::print::pages::{AxisSheet, Drawing, Marks};

/// LIMIT: how many columns of marks stand side by side; what is wider goes on below. With their upright labels they fit
/// between the margins of A4 and Letter beside the labels of the rows.
const MARK_COLUMNS_MAX: usize = 12;

/// LIMIT: how many columns of amounts stand side by side, however short the amounts.
const AMOUNT_COLUMNS_MAX: usize = 10;

/// How many digits fit side by side into the columns of a sheet of amounts, two a column being lost between them.
const DIGITS_ACROSS: usize = 78;

/// LIMIT: sheets of more rows than this may go on on the next page.
const ROWS_TOGETHER_MAX: usize = 30;

/// A table of a rule.
pub(super) fn drawing(drawing: &Drawing, what: &str) -> Markup {
    match drawing {
        Drawing::Marks(marks) => self::marks(marks, what),
        Drawing::List { columns, rows } => list(columns, rows, what),
    }
}

/// Two attributes against each other.
fn marks(marks: &Marks, what: &str) -> Markup {
    let blocks = blocks(marks.columns.len(), MARK_COLUMNS_MAX);
    html! {
        @for block in &blocks {
            table class=(sheet_class("marks", marks.rows.len())) {
                caption { (what) ": " (marks.down) " down, " (marks.across) " across" (block.says(blocks.len())) }
                thead {
                    tr {
                        th scope="col" class="corner" { (marks.down) " \\ " (marks.across) }
                        @for column in block.of(&marks.columns) {
                            th scope="col" class="upright" { span { (column) } }
                        }
                    }
                }
                tbody {
                    @for (label, row) in &marks.rows {
                        tr {
                            th scope="row" { (label) }
                            @for goes in block.of(row) { (mark(*goes)) }
                        }
                    }
                }
            }
        }
    }
}

/// Signs that differ in shape, and words for who does not see them.
fn mark(goes: bool) -> Markup {
    html! {
        @if goes {
            td aria-label="yes" { "●" }
        } @else {
            td aria-label="no" { "–" }
        }
    }
}

/// Rows as they stand.
pub(super) fn list(columns: &[String], rows: &[Vec<String>], what: &str) -> Markup {
    html! {
        table class=(sheet_class("rows", rows.len())) {
            caption { (what) }
            thead { tr { @for column in columns { th scope="col" { (column) } } } }
            tbody {
                @for row in rows { tr { @for cell in row { td { (cell) } } } }
            }
        }
    }
}

/// Amounts by two things, what goes down with its labels. The labels of the columns are `label_digits` wide.
pub(super) fn amounts(
    (down, across): (&str, &str),
    columns: &[Markup],
    rows: &[(Markup, &[Option<Money>])],
    caption: &Markup,
    label_digits: usize,
) -> Markup {
    let cells = rows.iter().flat_map(|(_, amounts)| amounts.iter().flatten());
    let longest = cells.map(|money| money.grouped().len()).max().unwrap_or(0);
    let fitting = DIGITS_ACROSS / (longest.max(label_digits) + 2);
    let blocks = blocks(columns.len(), fitting.clamp(1, AMOUNT_COLUMNS_MAX));
    html! {
        @for block in &blocks {
            table class=(sheet_class("grid", rows.len())) {
                caption { (caption) (block.says(blocks.len())) }
                thead {
                    tr {
                        th scope="col" class="corner" { (down) " \\ " (across) }
                        @for column in block.of(columns) { th scope="col" { (column) } }
                    }
                }
                tbody {
                    @for (label, amounts) in rows {
                        tr {
                            th scope="row" { (label) }
                            @for amount in block.of(amounts) { (amount_cell(amount.as_ref())) }
                        }
                    }
                }
            }
        }
    }
}

/// The brackets of an axis as people read them, the upper end inside.
pub(super) fn brackets(axis: &AxisSheet) -> Vec<Markup> {
    let bracket = |bracket: &crate::print::pages::Bracket| {
        html! {
            span class="whole" {
                @if !bracket.is_from_zero { "over " (bracket.over) br; }
                "to " (bracket.to)
            }
        }
    };
    axis.brackets.iter().map(bracket).collect()
}

/// How many digits wide the brackets of an axis are as labels, whose letters are smaller.
pub(super) fn bracket_digits(axis: &AxisSheet) -> usize {
    let over = axis
        .brackets
        .iter()
        .map(|bracket| bracket.over.chars().count() + 5);
    over.max().unwrap_or(0) * 7 / 8
}

/// The brackets of an axis on one line each.
pub(super) fn bracket_lines(axis: &AxisSheet) -> Vec<Markup> {
    let bracket = |bracket: &crate::print::pages::Bracket| {
        html! {
            @if !bracket.is_from_zero { "over " (bracket.over) " " }
            "to " (bracket.to)
        }
    };
    axis.brackets.iter().map(bracket).collect()
}

/// What an axis goes by, with its unit.
pub(super) fn axis(axis: &AxisSheet) -> String {
    if axis.unit.is_empty() {
        axis.of.clone()
    } else {
        format!("{} ({})", axis.of, axis.unit)
    }
}

/// An amount, or a dash where there is none.
pub(super) fn amount_cell(amount: Option<&Money>) -> Markup {
    html! {
        @match amount {
            Some(money) => { td class="amount" { (money.grouped()) } }
            None => { td class="none" aria-label="no amount" { "–" } }
        }
    }
}

fn sheet_class(kind: &str, rows: usize) -> String {
    let tall = if rows > ROWS_TOGETHER_MAX { " tall" } else { "" };
    format!("sheet {kind}{tall}")
}

/// Some columns that stand side by side.
struct Block {
    first: usize,
    after: usize,
    all: usize,
}

/// As few blocks as hold all columns, as even as can be.
fn blocks(columns: usize, columns_max: usize) -> Vec<Block> {
    let count = columns.div_ceil(columns_max.max(1)).max(1);
    (0..count)
        .map(|block| Block {
            first: columns * block / count,
            after: columns * (block + 1) / count,
            all: columns,
        })
        .collect()
}

impl Block {
    fn of<'a, T>(&self, columns: &'a [T]) -> &'a [T] {
        columns.get(self.first..self.after).unwrap_or(columns)
    }

    /// Which columns these are, where they are not all.
    fn says(&self, blocks: usize) -> Markup {
        html! {
            @if blocks > 1 {
                ", columns " (self.first + 1) " to " (self.after) " of " (self.all)
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_column_stands_in_one_block_and_no_block_is_too_wide() {
        for columns in 0..100 {
            let blocks = blocks(columns, 10);
            let mut next = 0;
            for block in &blocks {
                assert_eq!(block.first, next, "{columns}");
                assert!(block.after - block.first <= 10, "{columns}");
                next = block.after;
            }
            assert_eq!(next, columns);
        }
    }
}
