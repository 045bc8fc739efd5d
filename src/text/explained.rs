//! A rule explained for a person: its words, its lines in the file, its table and the examples that break it.

use astragal_catalog::check::{RuleExplanation, SourceLines};
use astragal_model::Effect;

use crate::check::implicit::ImplicitRule;
use crate::text::page::{Page, Tone};

/// The rules with one id, as text.
pub(crate) fn explained(declared: &[RuleExplanation], implicit: &[ImplicitRule]) -> String {
    let mut page = Page::default();
    for (position, rule) in declared.iter().enumerate() {
        if position > 0 {
            page.blank();
            page.rule("-");
        }
        write(&mut page, rule);
    }
    for rule in implicit {
        page.heading(
            0,
            Tone::Strong,
            &format!("Rule {}, which catalog {} has by itself", rule.rule, rule.catalog),
        );
        page.entry(2, "says       ", &rule.message);
        if let (Some(file), Some(line)) = (&rule.file, rule.line) {
            page.entry(2, "attribute  ", &format!("{file}:{line}"));
        }
    }
    page.into_text()
}

fn write(page: &mut Page, rule: &RuleExplanation) {
    page.heading(
        0,
        Tone::Strong,
        &format!("Rule {} of catalog {}", rule.rule, rule.catalog),
    );
    page.entry(2, "says       ", &rule.message);
    page.entry(2, "authority  ", rule.authority.as_str());
    let effect = match rule.effect {
        Effect::Block => "blocks: a unit that breaks it does not hold",
        Effect::Warn => "warns: a unit that breaks it holds with a warning",
        Effect::SignOff => "asks for a sign-off: a unit that breaks it holds when somebody signs",
    };
    page.entry(2, "effect     ", effect);
    let waivable = if rule.waivable {
        "yes, by an order with a reference"
    } else {
        "no"
    };
    page.entry(2, "waivable   ", waivable);
    if let Some(basis) = &rule.basis {
        page.entry(2, "basis      ", basis);
    }
    lines(page, "It stands at", &rule.lines);
    match (&rule.table, rule.row_count) {
        (Some(table), _) => lines(page, "Its table is", table),
        (None, Some(rows)) => {
            page.blank();
            page.text(2, &format!("Its table has {rows} rows."));
        }
        (None, None) => {}
    }
    if rule.examples.is_empty() {
        page.blank();
        page.text(2, "No example breaks it.");
    }
    for example in &rule.examples {
        let others = if example.is_alone {
            "it alone"
        } else {
            "it, and others"
        };
        let title = format!("Example {} breaks {others}:", example.id);
        lines(page, &title, &example.lines);
    }
}

/// Lines of a file under a heading that says where they stand.
fn lines(page: &mut Page, title: &str, lines: &SourceLines) {
    page.blank();
    page.heading(
        2,
        Tone::Strong,
        &format!("{title} {}:{}", lines.path, lines.first_line),
    );
    for (offset, line) in lines.lines.iter().enumerate() {
        page.source(lines.first_line + offset, line);
    }
}
