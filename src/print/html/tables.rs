//! Tables on paper: marks, rows, and sheets of amounts, split where they are wide.

use astragal_model::Money;
use maud::{Markup, html};

use crate::print::pages::{AxisSheet, Drawing, Marks};

/// LIMIT: how many columns stand side by side; what is wider goes on below. Ten amounts of six digits, or ten upright
/// labels, fit between the margins of A4 and Letter.
pub(super) const COLUMNS_MAX: usize = 10;

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
    let blocks = blocks(marks.columns.len());
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

/// Amounts by two things, what goes down with its labels.
pub(super) fn amounts(
    (down, across): (&str, &str),
    columns: &[Markup],
    rows: &[(Markup, &[Option<Money>])],
    caption: &Markup,
) -> Markup {
    let blocks = blocks(columns.len());
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
            @if !bracket.is_from_zero { "over " (bracket.over) br; }
            "to " (bracket.to)
        }
    };
    axis.brackets.iter().map(bracket).collect()
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
fn blocks(columns: usize) -> Vec<Block> {
    let count = columns.div_ceil(COLUMNS_MAX).max(1);
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
            let blocks = blocks(columns);
            let mut next = 0;
            for block in &blocks {
                assert_eq!(block.first, next, "{columns}");
                assert!(block.after - block.first <= COLUMNS_MAX, "{columns}");
                next = block.after;
            }
            assert_eq!(next, columns);
        }
    }
}
