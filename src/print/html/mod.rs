//! Writes pages as one HTML file: no script, nothing from elsewhere, made for paper of either size.
//!
//! Each chart and each set of price pages begins a page of its own and names its revision at the foot of every page.
//! Headings of tables repeat on the next page, no row is split, and what is wide is split into blocks of
//! columns, so that A4 and Letter both hold it. Marks are signs, never colours alone.
//!
//! Always holds: every text is escaped where it is put in (`maud` does so by construction; what goes into the style sheet
//! is written in escapes); every element that is opened is closed; ids are unique, since they begin with the number of
//! the chart.
//! Source: CSS Paged Media Module Level 3, for the boxes at the foot of a page.

mod chart;
mod parts;
mod prices;
mod rules;
mod tables;

use maud::{DOCTYPE, Markup, PreEscaped, html};

use super::pages::{Pages, Revised};
use super::phrases;

const STYLE: &str = include_str!("style.css");

/// The whole document.
pub(crate) fn document(pages: &Pages) -> String {
    let title = format!("{}: option charts and prices", pages.library);
    let markup = html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (title) }
                style { (PreEscaped(style(pages))) }
            }
            body {
                @for (number, chart) in pages.charts.iter().enumerate() {
                    (chart::article(&pages.library, chart, number + 1))
                }
                @for (number, prices) in pages.prices.iter().enumerate() {
                    (prices::article(&pages.library, prices, number + 1))
                }
            }
        }
    };
    let mut text = markup.into_string();
    text.push('\n');
    text
}

/// The style sheet, with a sort of page for each chart and book that names it at the foot.
fn style(pages: &Pages) -> String {
    let mut style = String::from("\n");
    style.push_str(STYLE);
    style.push_str("@page { margin: 13mm 12mm 16mm; }\n");
    let charts = pages.charts.iter().enumerate().map(|(number, chart)| {
        let foot = format!("{} · catalog revision {}", chart.label, chart.revision.short);
        (format!("chart{}", number + 1), foot)
    });
    let prices = pages.prices.iter().enumerate().map(|(number, prices)| {
        let foot = format!("{} · book revision {}", prices.label, prices.revision.short);
        (format!("prices{}", number + 1), foot)
    });
    for (name, foot) in charts.chain(prices) {
        let foot = escaped(&format!("{foot} · {}", phrases::GOVERNS));
        let text = "font: 7.5pt Helvetica, Arial, \"Liberation Sans\", sans-serif; vertical-align: top; padding-top: 3mm;";
        let rule = format!(
            "@page {name} {{ @bottom-left {{ content: \"{foot}\"; white-space: nowrap; {text} }} \
             @bottom-right {{ content: counter(page) \" / \" counter(pages); {text} }} }}\n\
             #{name} {{ page: {name}; }}\n"
        );
        style.push_str(&rule);
    }
    style
}

/// Text inside a CSS string: whatever is not a plain letter, digit or space is written by its number.
fn escaped(text: &str) -> String {
    let mut escaped = String::new();
    for letter in text.chars() {
        if letter.is_ascii_alphanumeric() || letter == ' ' {
            escaped.push(letter);
        } else {
            escaped.push_str(&format!("\\{:x} ", u32::from(letter)));
        }
    }
    escaped
}

/// The box at the head that says what a chart or book was printed from.
fn printed_from(entries: &[(&str, Markup)]) -> Markup {
    html! {
        dl class="from" {
            @for (name, value) in entries {
                dt { (name) }
                dd { (value) }
            }
            dt { "These pages" }
            dd { (phrases::GOVERNS) "." }
        }
    }
}

/// A revision as a person compares it, in full behind it.
fn revision(revision: &Revised) -> Markup {
    html! { span title=(revision.full) { "revision " code { (revision.short) } } }
}

#[cfg(test)]
mod tests {
    use super::escaped;

    #[test]
    fn no_text_ends_a_string_or_the_style_sheet() {
        assert_eq!(
            escaped("a\"b</style>\\\n"),
            "a\\22 b\\3c \\2f style\\3e \\5c \\a "
        );
    }
}
