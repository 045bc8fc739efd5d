//! Price pages on paper: size grids, prices by option, single amounts and percentages, the steps at the end.

use astragal_model::{Date, Money};
use maud::{Markup, html};

use super::parts::{condition, id, parts};
use super::{printed_from, revision, tables};
use crate::print::pages::{Amounts, ItemSheet, PricePages, PriceRow, Sheet, TailAmount};

/// How wide the labels of options are where they stand over amounts, at the least.
const LABEL_DIGITS: usize = 8;

/// The price pages of one book.
pub(super) fn article(library: &str, prices: &PricePages, number: usize) -> Markup {
    let of = |belongs: fn(&Amounts) -> bool| -> Vec<&ItemSheet> {
        prices
            .items
            .iter()
            .filter(|item| belongs(&item.amounts))
            .collect()
    };
    let sizes = of(|amounts| matches!(amounts, Amounts::Sizes { .. } | Amounts::Grid { .. }));
    let sheets = of(|amounts| matches!(amounts, Amounts::Pairs(_) | Amounts::Rows { .. }));
    let lists = of(|amounts| matches!(amounts, Amounts::List { .. }));
    let single = of(|amounts| matches!(amounts, Amounts::Flat(_) | Amounts::Percent(..)));
    html! {
        article class="chart" id={ "prices" (number) } {
            p class="kind" { "Price pages" }
            h1 { (prices.label) }
            (printed_from(&header(library, prices)))
            (key(prices))
            @if !sizes.is_empty() {
                h2 { "Prices by size" }
                @for item in sizes { (self::item(item)) }
            }
            @if !lists.is_empty() || !sheets.is_empty() {
                h2 { "Prices by option" }
                div class="two" { @for item in lists { (self::item(item)) } }
                @for item in sheets { (self::item(item)) }
            }
            @if !single.is_empty() {
                h2 { "Single amounts and percentages" }
                (single_items(&single))
            }
            (tail(prices))
        }
    }
}

fn header(library: &str, prices: &PricePages) -> Vec<(&'static str, Markup)> {
    let (catalog, label) = &prices.catalog;
    vec![
        ("Library", html! { (library) }),
        (
            "Catalog",
            html! { (label) " " (id(catalog)) ", " (revision(&prices.catalog_revision)) },
        ),
        (
            "Price book",
            html! { (prices.label) " " (id(&prices.id)) ", " (revision(&prices.revision)) },
        ),
        ("In force", html! { (in_force(prices.from, prices.until)) }),
        (
            "Amounts",
            html! { "in " (prices.currency) ", list prices before any dealer's mark-up; each line is rounded to " (prices.round_to.grouped()) },
        ),
    ]
}

fn in_force(from: Option<Date>, until: Option<Date>) -> String {
    match (from, until) {
        (None, None) => "without end".to_owned(),
        (Some(from), None) => format!("from {from}"),
        (None, Some(until)) => format!("until {until}, that day included"),
        (Some(from), Some(until)) => format!("from {from} until {until}, both days included"),
    }
}

fn key(prices: &PricePages) -> Markup {
    html! {
        ul class="key" aria-label="Key" {
            li { "A bracket holds its upper end: “over 24 to 30” holds 30 and not 24." }
            li { "– no amount in the book: where the item is charged, such a unit has no price." }
            li { "What is not asked costs nothing." }
            li { "All amounts are in " (prices.currency) "." }
        }
    }
}

fn item(item: &ItemSheet) -> Markup {
    let is_long = match &item.amounts {
        Amounts::List { rows, .. } => rows.len() > 20,
        Amounts::Rows { rows, .. } => rows.len() > 24,
        Amounts::Sizes { amounts, .. } => amounts.len() > 24,
        Amounts::Grid {
            axes: [down, across], ..
        } => down.brackets.len() > 24 || across.brackets.len() > 20,
        Amounts::Pairs(sheet) => sheet.rows.len() > 24 || sheet.columns.len() > 20,
        Amounts::Flat(_) | Amounts::Percent(..) => false,
    };
    html! {
        div class={ "block" @if is_long { " long" } } {
            h4 { (item.label) " " (id(&item.id)) " " (classes(item)) }
            (terms(item))
            div class="sheets" { (amounts(item)) }
        }
    }
}

fn classes(item: &ItemSheet) -> Markup {
    html! {
        span class="badge" { (item.class) }
        @if let Some(tax) = &item.tax_class { " " span class="badge" { "tax: " (tax) } }
    }
}

/// When an item is charged, for which parts and how many times.
fn terms(item: &ItemSheet) -> Markup {
    html! {
        @if let Some(when) = &item.when { p class="small" { "Charged when: " (condition(when)) } }
        @if let Some(those) = &item.parts { p class="small" { "Charged " (parts(those)) } }
        @if let Some(quantity) = &item.quantity { p class="small" { "Times: " (condition(quantity)) } }
    }
}

fn amounts(item: &ItemSheet) -> Markup {
    match &item.amounts {
        Amounts::Flat(_) | Amounts::Percent(..) => html! {},
        Amounts::List { by, rows } => list(by, rows),
        Amounts::Pairs(sheet) => pairs(sheet),
        Amounts::Rows { by, rows } => sheet_rows(by, rows),
        Amounts::Sizes {
            axis,
            amounts,
            signs_off,
            ..
        } => html! {
            table class={ "sheet grid" @if amounts.len() > 30 { " tall" } } {
                caption { (tables::axis(axis)) "; upper bounds inclusive" (past(*signs_off)) }
                thead {
                    tr {
                        th scope="col" class="corner" { (tables::axis(axis)) }
                        th scope="col" { "Amount" }
                    }
                }
                tbody {
                    @for (bracket, amount) in tables::bracket_lines(axis).iter().zip(amounts) {
                        tr { th scope="row" { (bracket) } (tables::amount_cell(amount.as_ref())) }
                    }
                }
            }
        },
        Amounts::Grid {
            axes: [down, across],
            rows,
            signs_off,
            ..
        } => {
            let labels = tables::bracket_lines(down);
            let rows: Vec<(Markup, &[Option<Money>])> =
                labels.into_iter().zip(rows.iter().map(Vec::as_slice)).collect();
            let digits = tables::bracket_digits(across);
            let (down, across_label) = (tables::axis(down), tables::axis(across));
            let caption = html! {
                (down) " down, " (across_label) " across; upper bounds inclusive" (past(*signs_off))
            };
            tables::amounts(
                (&down, &across_label),
                &tables::brackets(across),
                &rows,
                &caption,
                digits,
            )
        }
    }
}

/// What a size past the end means.
fn past(signs_off: bool) -> &'static str {
    if signs_off {
        "; past the end the plant prices it and signs"
    } else {
        "; past the end there is no price"
    }
}

fn list(by: &str, rows: &[PriceRow]) -> Markup {
    html! {
        table {
            thead { tr { th scope="col" { (by) } th scope="col" class="amount" { "Amount" } } }
            tbody {
                @for row in rows {
                    tr {
                        th scope="row" {
                            (row.option)
                            @if row.is_standard { " " span class="badge" { "standard" } }
                            @if let Some(until) = row.offered_until {
                                span class="ends" { span class="badge" { "ends" } " " (until) }
                            }
                        }
                        (tables::amount_cell(row.amount.as_ref()))
                    }
                }
            }
        }
    }
}

fn pairs(sheet: &Sheet) -> Markup {
    let columns: Vec<Markup> = sheet.columns.iter().map(|label| html! { (label) }).collect();
    let rows: Vec<(Markup, &[Option<Money>])> = sheet
        .rows
        .iter()
        .map(|(label, amounts)| (html! { (label) }, amounts.as_slice()))
        .collect();
    let caption = html! { (sheet.down) " down, " (sheet.across) " across" };
    tables::amounts(
        (&sheet.down, &sheet.across),
        &columns,
        &rows,
        &caption,
        LABEL_DIGITS,
    )
}

fn sheet_rows(by: &[String], rows: &[(Vec<String>, Money)]) -> Markup {
    html! {
        table class="sheet tall" {
            caption { "The first row that matches counts" }
            thead {
                tr {
                    @for label in by { th scope="col" { (label) } }
                    th scope="col" class="amount" { "Amount" }
                }
            }
            tbody {
                @for (cells, amount) in rows {
                    tr {
                        @for cell in cells { td { (cell) } }
                        (tables::amount_cell(Some(amount)))
                    }
                }
            }
        }
    }
}

/// Items of one amount or percentage.
fn single_items(items: &[&ItemSheet]) -> Markup {
    html! {
        table {
            thead {
                tr {
                    th scope="col" { "Item" }
                    th scope="col" { "Charged" }
                    th scope="col" class="amount" { "Amount" }
                }
            }
            tbody {
                @for item in items {
                    tr {
                        th scope="row" { strong { (item.label) } " " (id(&item.id)) br; (classes(item)) }
                        td {
                            @if item.when.is_none() { p class="small" { "Always" } }
                            (terms(item))
                            (percent_of(item))
                        }
                        (single_amount(item))
                    }
                }
            }
        }
    }
}

fn percent_of(item: &ItemSheet) -> Markup {
    html! {
        @if let Amounts::Percent(_, of) = &item.amounts {
            p class="small" {
                "Of each line of: "
                @for (position, (of, label)) in of.iter().enumerate() {
                    @if position > 0 { ", " }
                    (label) " " (id(of))
                }
            }
        }
    }
}

fn single_amount(item: &ItemSheet) -> Markup {
    match &item.amounts {
        Amounts::Flat(money) => tables::amount_cell(money.as_ref()),
        Amounts::Percent(Some(percent), _) => html! { td class="amount" { (percent) " %" } },
        _ => tables::amount_cell(None),
    }
}

fn tail(prices: &PricePages) -> Markup {
    html! {
        @if !prices.tail.is_empty() {
            h2 { "After all items, in this order" }
            table {
                thead {
                    tr {
                        th scope="col" { "Step" }
                        th scope="col" { "Class" }
                        th scope="col" class="amount" { "Amount" }
                    }
                }
                tbody {
                    @for (position, step) in prices.tail.iter().enumerate() {
                        tr {
                            th scope="row" { (position + 1) ". " (step.label) " " (id(&step.id)) }
                            td {
                                (step.class)
                                @if let Some(tax) = &step.tax_class { ", tax: " (tax) }
                            }
                            @match &step.amount {
                                TailAmount::Money(money) => { (tables::amount_cell(Some(money))) }
                                TailAmount::Percent(percent) => {
                                    td class="amount" { (percent) " % of what stands so far" }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}
