//! The price pages as CSV: the book, its items, a file for each item with more than one amount, the tail.

use astragal_model::Money;

use super::cells::{File, both, file, or_empty, parts};
use crate::print::pages::{Amounts, AxisSheet, ItemSheet, PricePages, TailAmount};
use crate::print::phrases;

/// Adds the files of one book.
pub(super) fn write(files: &mut Vec<File>, library: &str, prices: &PricePages) -> Result<(), csv::Error> {
    let at = |name: &str| format!("books/{}/{name}.csv", prices.id);
    files.push(about(at("book"), library, prices)?);
    files.push(items(at("items"), prices)?);
    files.push(tail(at("tail"), prices)?);
    for item in &prices.items {
        files.extend(sheet(at(&format!("item-{}", item.id)), item)?);
    }
    Ok(())
}

fn about(path: String, library: &str, prices: &PricePages) -> Result<File, csv::Error> {
    let heading = [
        "library",
        "book",
        "label",
        "revision",
        "catalog",
        "catalog_revision",
        "currency",
        "round_to",
        "from",
        "until",
        "says",
    ];
    let row = vec![
        library.to_owned(),
        prices.id.to_string(),
        prices.label.clone(),
        prices.revision.full.clone(),
        prices.catalog.0.to_string(),
        prices.catalog_revision.full.clone(),
        prices.currency.to_owned(),
        plain(&prices.round_to),
        or_empty(prices.from),
        or_empty(prices.until),
        phrases::GOVERNS.to_owned(),
    ];
    file(path, &heading, [row])
}

fn items(path: String, prices: &PricePages) -> Result<File, csv::Error> {
    let heading = [
        "item",
        "label",
        "class",
        "tax_class",
        "parts",
        "charged_when",
        "charged_when_in_words",
        "quantity",
        "quantity_in_words",
        "amount",
        "percent",
        "percent_of",
        "sheet",
        "past_the_sheet",
    ];
    let rows = prices.items.iter().map(|item| {
        let [when, when_in_words] = both(item.when.as_ref());
        let [quantity, quantity_in_words] = both(item.quantity.as_ref());
        let [amount, percent, percent_of, sheet, past] = amount_cells(item);
        vec![
            item.id.to_string(),
            item.label.clone(),
            item.class.to_owned(),
            or_empty(item.tax_class.as_ref()),
            parts(item.parts.as_ref()),
            when,
            when_in_words,
            quantity,
            quantity_in_words,
            amount,
            percent,
            percent_of,
            sheet,
            past,
        ]
    });
    file(path, &heading, rows)
}

/// Amount, percentage, of what, the file of the sheet, what a size past it means.
fn amount_cells(item: &ItemSheet) -> [String; 5] {
    let mut cells: [String; 5] = Default::default();
    let [amount, percent, percent_of, sheet, past] = &mut cells;
    match &item.amounts {
        Amounts::Flat(money) => *amount = or_empty(money.as_ref().map(plain)),
        Amounts::Percent(number, of) => {
            *percent = or_empty(number.as_ref());
            let ids: Vec<&str> = of.iter().map(|(id, _)| id.as_str()).collect();
            *percent_of = ids.join("|");
        }
        Amounts::List { .. } | Amounts::Pairs(_) | Amounts::Rows { .. } => {
            *sheet = format!("item-{}.csv", item.id);
        }
        Amounts::Sizes { signs_off, .. } | Amounts::Grid { signs_off, .. } => {
            *sheet = format!("item-{}.csv", item.id);
            *past = if *signs_off { "sign-off" } else { "no price" }.to_owned();
        }
    }
    cells
}

fn sheet(path: String, item: &ItemSheet) -> Result<Option<File>, csv::Error> {
    let made = match &item.amounts {
        Amounts::Flat(_) | Amounts::Percent(..) => return Ok(None),
        Amounts::List { by, rows } => {
            let rows = rows
                .iter()
                .map(|row| vec![row.option.clone(), cell(row.amount.as_ref())]);
            file(path, &[by, "amount"], rows)
        }
        Amounts::Pairs(sheet) => {
            let corner = format!("{} (down), {} (across)", sheet.down, sheet.across);
            let columns = sheet.columns.iter().map(String::as_str);
            let heading: Vec<&str> = std::iter::once(corner.as_str()).chain(columns).collect();
            let rows = sheet.rows.iter().map(|(label, amounts)| line(label, amounts));
            file(path, &heading, rows)
        }
        Amounts::Rows { by, rows } => {
            let heading: Vec<&str> = by.iter().map(String::as_str).chain(["amount"]).collect();
            let rows = rows.iter().map(|(cells, amount)| {
                let mut cells = cells.clone();
                cells.push(plain(amount));
                cells
            });
            file(path, &heading, rows)
        }
        Amounts::Sizes { axis, amounts, .. } => {
            let heading = [axis_heading(axis), "amount".to_owned()];
            let brackets = axis.brackets.iter().zip(amounts);
            let rows = brackets.map(|(bracket, amount)| vec![bracket.upper.clone(), cell(amount.as_ref())]);
            file(path, &heading.each_ref().map(String::as_str), rows)
        }
        Amounts::Grid { axes, rows, .. } => {
            let [down, across] = axes;
            let corner = format!("{} down; {} across", axis_heading(down), axis_heading(across));
            let uppers = across.brackets.iter().map(|bracket| bracket.upper.as_str());
            let heading: Vec<&str> = std::iter::once(corner.as_str()).chain(uppers).collect();
            let brackets = down.brackets.iter().zip(rows);
            let rows = brackets.map(|(bracket, amounts)| line(&bracket.upper, amounts));
            file(path, &heading, rows)
        }
    };
    made.map(Some)
}

/// What goes down or across: sizes up to and with these.
fn axis_heading(axis: &AxisSheet) -> String {
    let unit = if axis.unit.is_empty() {
        String::new()
    } else {
        format!(" in {}", axis.unit)
    };
    let over = axis.brackets.first().map_or("0", |bracket| bracket.over.as_str());
    format!("{}{unit}, over {over}, up to and with", axis.of)
}

fn tail(path: String, prices: &PricePages) -> Result<File, csv::Error> {
    let heading = ["step", "label", "class", "tax_class", "amount", "percent"];
    let rows = prices.tail.iter().map(|step| {
        let (amount, percent) = match &step.amount {
            TailAmount::Money(money) => (plain(money), String::new()),
            TailAmount::Percent(percent) => (String::new(), percent.clone()),
        };
        vec![
            step.id.to_string(),
            step.label.clone(),
            step.class.to_owned(),
            or_empty(step.tax_class.as_ref()),
            amount,
            percent,
        ]
    });
    file(path, &heading, rows)
}

fn line(label: &str, amounts: &[Option<Money>]) -> Vec<String> {
    let amounts = amounts.iter().map(|amount| cell(amount.as_ref()));
    std::iter::once(label.to_owned()).chain(amounts).collect()
}

fn cell(amount: Option<&Money>) -> String {
    or_empty(amount.map(plain))
}

/// An amount without its currency: `1234.50`.
fn plain(money: &Money) -> String {
    let text = money.to_string();
    let amount = text.split_once(' ').map(|(amount, _)| amount.to_owned());
    amount.unwrap_or(text)
}
