//! The option chart on paper: contents, sizes, sections with attributes and what goes with what, figures, notices.

use maud::{Markup, html};

use super::parts::{condition, effect_key, id, message, parts, rule_links};
use super::{printed_from, revision, rules, tables};
use crate::print::pages::{
    AttributeSheet, AuthorityRules, Chart, FigureSheet, NoticeLine, OptionLine, Section, StandardLine,
    Working,
};
use crate::print::phrases;

/// The chart of one catalog.
pub(super) fn article(library: &str, chart: &Chart, number: usize) -> Markup {
    html! {
        article class="chart" id={ "chart" (number) } {
            p class="kind" { "Option chart: what goes with what" }
            h1 { (chart.label) }
            (printed_from(&[
                ("Library", html! { (library) }),
                ("Catalog", html! { (chart.label) " " (id(&chart.id)) ", " (revision(&chart.revision)) }),
            ]))
            (contents(chart, number))
            (key())
            @for (position, section) in chart.sections.iter().enumerate() {
                (self::section(section, number, position + 1))
            }
            (sizes(chart, number))
            @if !rules::is_empty(&chart.others) {
                section {
                    h2 id={ "chart" (number) "-others" } { "Other rules" }
                    (rules::group(number, &chart.others, "Limits", "Conditions"))
                }
            }
            @for those in &chart.authorities { (authority(those, number)) }
            (figures(chart, number))
            (notices(chart, number))
        }
    }
}

fn contents(chart: &Chart, number: usize) -> Markup {
    let at = |name: &str| format!("#chart{number}-{name}");
    html! {
        nav class="contents" aria-label="Contents" {
            ol {
                @for (position, section) in chart.sections.iter().enumerate() {
                    li {
                        a href=(at(&format!("section{}", position + 1))) { (section.title) }
                        span class="small" { ": " (labels(section)) }
                    }
                }
                @if !rules::is_empty(&chart.sizes) { li { a href=(at("sizes")) { "Size limits" } } }
                @if !rules::is_empty(&chart.others) { li { a href=(at("others")) { "Other rules" } } }
                @for those in &chart.authorities {
                    li { a href=(at(&format!("authority-{}", those.id))) { (those.label) } }
                }
                @if !chart.figures.is_empty() { li { a href=(at("figures")) { "Figures" } } }
                @if !chart.notices.is_empty() { li { a href=(at("notices")) { "Notices" } } }
            }
        }
    }
}

fn labels(section: &Section) -> String {
    let labels: Vec<&str> = section
        .attributes
        .iter()
        .map(|attribute| attribute.label.as_str())
        .collect();
    labels.join("; ")
}

/// What the signs mean.
fn key() -> Markup {
    html! {
        ul class="key" aria-label="Key" {
            li { span class="badge" { "standard" } " taken when nobody picks" }
            li { span class="badge" { "ends" } " the last day on which the option may be ordered" }
            (effect_key())
            li { span class="badge" { "may be waived" } " an order may carry a waiver with a reference" }
            li { "An attribute that is not asked counts in no table." }
            li { "Conditions stand in words and, below, " code { "as written" } "." }
        }
    }
}

fn section(section: &Section, number: usize, position: usize) -> Markup {
    html! {
        section {
            h2 id={ "chart" (number) "-section" (position) } { (section.title) }
            div class="two" {
                @for attribute in &section.attributes { (self::attribute(attribute, number)) }
            }
            @if !rules::is_empty(&section.rules) {
                h3 { (section.title) ": what goes with what" }
                (rules::group(number, &section.rules, "Limits", "Conditions"))
            }
        }
    }
}

fn attribute(attribute: &AttributeSheet, number: usize) -> Markup {
    let is_long = attribute.options.len() > 16;
    html! {
        div class={ "block" @if is_long { " long" } } id={ "chart" (number) "-attribute-" (attribute.id.as_str()) } {
            h4 { (attribute.label) " " (id(&attribute.id)) }
            @if let Some(those) = &attribute.parts { p class="small" { "Chosen " (parts(those)) } }
            @if attribute.is_determined {
                p class="small" { strong { "Determined by the plant" } ", not asked." }
            }
            @if let Some(when) = &attribute.asked_when {
                p class="small" { "Asked when: " (condition(when)) }
            }
            @match &attribute.standard {
                StandardLine::Ask => { p class="small" { "No standard: somebody must choose." } }
                StandardLine::Option(_) => {}
                StandardLine::Formula(formula) => {
                    p class="small" {
                        @if attribute.is_determined { "It is: " } @else { "Standard: " }
                        (condition(formula))
                    }
                }
            }
            (options(attribute))
            @if !attribute.rules.is_empty() {
                p class="small" { "Rules: " (rule_links(number, &attribute.rules)) }
            }
        }
    }
}

/// The options, with the columns that any of them fills.
fn options(attribute: &AttributeSheet) -> Markup {
    let has_codes = attribute.options.iter().any(|option| option.plant_code.is_some());
    let has_families = attribute.options.iter().any(|option| !option.families.is_empty());
    let has_properties = attribute
        .options
        .iter()
        .any(|option| !option.properties.is_empty());
    html! {
        table {
            thead {
                tr {
                    th scope="col" { "Option" }
                    @if has_codes { th scope="col" { "Plant code" } }
                    @if has_families { th scope="col" { "Families" } }
                    @if has_properties { th scope="col" { "Properties" } }
                }
            }
            tbody {
                @for option in &attribute.options {
                    tr class=[option.is_standard.then_some("standard")] {
                        th scope="row" { (option_label(option)) }
                        @if has_codes { td { (option.plant_code.as_deref().unwrap_or("")) } }
                        @if has_families { td { (families(option)) } }
                        @if has_properties { td { (properties(option)) } }
                    }
                }
            }
        }
    }
}

fn option_label(option: &OptionLine) -> Markup {
    html! {
        (option.label) " " (id(&option.id))
        @if option.is_standard { " " span class="badge" { "standard" } }
        @if let Some(from) = option.offered_from {
            span class="ends" { span class="badge" { "from" } " " (from) }
        }
        @if let Some(until) = option.offered_until {
            span class="ends" {
                span class="badge" { "ends" } " " (until)
                @if let Some((_, label)) = &option.replaced_by { "; then take " (label) }
                @if let Some(honoured) = option.honoured_until {
                    "; quoted by then, built until " (honoured)
                }
            }
        } @else if let Some((_, label)) = &option.replaced_by {
            span class="ends" { "Replaced by " (label) }
        }
    }
}

fn families(option: &OptionLine) -> String {
    let families: Vec<&str> = option.families.iter().map(|family| family.as_str()).collect();
    families.join(", ")
}

fn properties(option: &OptionLine) -> Markup {
    html! {
        @for (position, (name, value)) in option.properties.iter().enumerate() {
            @if position > 0 { br; }
            (name.as_str()) " " (value)
        }
    }
}

fn sizes(chart: &Chart, number: usize) -> Markup {
    html! {
        @if !rules::is_empty(&chart.sizes) {
            section {
                h2 id={ "chart" (number) "-sizes" } { "Size limits" }
                (rules::group(number, &chart.sizes, "Least and greatest", "Proportions and other conditions on sizes"))
            }
        }
    }
}

fn authority(those: &AuthorityRules, number: usize) -> Markup {
    html! {
        section {
            h2 id={ "chart" (number) "-authority-" (those.id.as_str()) } { (those.label) }
            @if those.id.as_str() == "code" { p class="caution" { (phrases::CODE_CAUTION) } }
            (rules::group(number, &those.rules, "Least and greatest", "Conditions"))
        }
    }
}

fn figures(chart: &Chart, number: usize) -> Markup {
    html! {
        @if !chart.figures.is_empty() {
            section {
                h2 id={ "chart" (number) "-figures" } { "Figures: what is worked out" }
                table class="rules" {
                    thead {
                        tr {
                            th scope="col" { "Figure" }
                            th scope="col" { "How it is worked out" }
                        }
                    }
                    tbody {
                        @for figure in &chart.figures { (figure_row(figure)) }
                    }
                }
                @for table in &chart.figure_tables {
                    @let what = format!("{}: {}", table.figures.join("; "), table.which);
                    div class={ "block" @if table.rows.len() > 24 { " long" } } {
                        (tables::list(&table.columns, &table.rows, &what))
                    }
                }
            }
        }
    }
}

fn figure_row(figure: &FigureSheet) -> Markup {
    html! {
        tr {
            th scope="row" {
                (figure.label) " " (id(&figure.id))
                @if let Some(unit) = &figure.unit { ", in " (unit) }
                @if figure.shown { " " span class="badge" { "on the quote" } }
                @if let Some(those) = &figure.parts { span class="ends" { (parts(those)) } }
            }
            td {
                @match &figure.working {
                    Working::Formula(formula) => { (condition(formula)) }
                    Working::Table { .. } => { "By the table below." }
                }
            }
        }
    }
}

fn notices(chart: &Chart, number: usize) -> Markup {
    html! {
        @if !chart.notices.is_empty() {
            section {
                h2 id={ "chart" (number) "-notices" } { "Notices: what a unit carries along" }
                table class="rules" {
                    thead {
                        tr {
                            th scope="col" { "Notice" }
                            th scope="col" { "What it says" }
                            th scope="col" { "Carried when this is so, or not known" }
                        }
                    }
                    tbody {
                        @for notice in &chart.notices { (notice_row(notice)) }
                    }
                }
            }
        }
    }
}

fn notice_row(notice: &NoticeLine) -> Markup {
    html! {
        tr {
            td { (id(&notice.id)) " " span class="badge" { (phrases::kind(notice.kind)) } }
            td {
                (message(&notice.text))
                (super::parts::basis(notice.basis.as_ref()))
            }
            td {
                @match &notice.when {
                    Some(when) => { (condition(when)) }
                    None => { "always" }
                }
                @if let Some(those) = &notice.parts { span class="ends" { (parts(those)) } }
            }
        }
    }
}
