//! Rules on paper: drawn tables, limits side by side, and all others in words.

use astragal_model::Effect;
use maud::{Markup, html};

use super::parts::{anchor, badges, basis, condition, id, message, parts};
use super::tables;
use crate::print::pages::{Condition, Demand, Drawing, Limit, RuleGroup, RuleSheet};

/// The rules that stand together; nothing when there are none.
pub(super) fn group(number: usize, group: &RuleGroup, limits_title: &str, title: &str) -> Markup {
    html! {
        @for rule in &group.tables { (table(number, rule)) }
        @if !group.limits.is_empty() {
            h3 { (limits_title) }
            (limits(number, &group.limits))
        }
        @if !group.conditions.is_empty() {
            h3 { (title) }
            (conditions(number, &group.conditions))
        }
    }
}

/// Whether a group has no rules.
pub(super) fn is_empty(group: &RuleGroup) -> bool {
    group.tables.is_empty() && group.limits.is_empty() && group.conditions.is_empty()
}

/// A rule by table.
fn table(number: usize, rule: &RuleSheet) -> Markup {
    let (drawing, what) = match &rule.demand {
        Demand::Allowed(drawing) => (drawing, words(drawing, true, rule.effect)),
        Demand::Forbidden(drawing) => (drawing, words(drawing, false, rule.effect)),
        Demand::Limits(..) | Demand::Condition(_) => return html! {},
    };
    html! {
        div class={ "block" @if is_long(drawing) { " long" } } id=(anchor(number, &rule.id)) {
            h4 { (id(&rule.id)) " " (badges(rule)) }
            p { (message(&rule.message)) (basis(rule.basis.as_ref())) }
            @if let Some(when) = &rule.when {
                p class="small" { "Applies when: " (condition(when)) }
            }
            @if let Some(those) = &rule.parts { p class="small" { "Applies " (parts(those)) } }
            div class="sheets" { (tables::drawing(drawing, what)) }
        }
    }
}

fn is_long(drawing: &Drawing) -> bool {
    match drawing {
        Drawing::Marks(marks) => marks.rows.len() > 24,
        Drawing::List { rows, .. } => rows.len() > 24,
    }
}

/// What a table says, by what happens to a unit that breaks the rule: it is not made, looked at, or signed for.
fn words(drawing: &Drawing, is_allowed: bool, effect: Effect) -> &'static str {
    match (drawing, is_allowed, effect) {
        (Drawing::Marks(_), _, Effect::Block) => "● goes together, – does not",
        (Drawing::Marks(_), _, Effect::Warn) => "● goes together, – look at it",
        (Drawing::Marks(_), _, Effect::SignOff) => "● goes together, – needs a sign-off",
        (Drawing::List { .. }, true, Effect::Block) => "Made: what matches one of these rows",
        (Drawing::List { .. }, true, Effect::Warn) => "Look at: what matches none of these rows",
        (Drawing::List { .. }, true, Effect::SignOff) => "Needs a sign-off: what matches none of these rows",
        (Drawing::List { .. }, false, Effect::Block) => "Not made: what matches one of these rows",
        (Drawing::List { .. }, false, Effect::Warn) => "Look at: what matches one of these rows",
        (Drawing::List { .. }, false, Effect::SignOff) => "Needs a sign-off: what matches one of these rows",
    }
}

/// Rules that put bounds on figures.
fn limits(number: usize, rules: &[RuleSheet]) -> Markup {
    html! {
        table class="limits" {
            thead {
                tr {
                    th scope="col" { "Applies when" }
                    th scope="col" { "Size or figure" }
                    th scope="col" class="bound" { "At least" }
                    th scope="col" class="bound" { "At most" }
                    th scope="col" { "Rule" }
                }
            }
            @for rule in rules {
                @if let Demand::Limits(bounds, written) = &rule.demand {
                    (limit_rows(number, rule, bounds, written))
                }
            }
        }
    }
}

fn limit_rows(number: usize, rule: &RuleSheet, bounds: &[Limit], written: &Condition) -> Markup {
    let rows = bounds.len();
    html! {
        tbody id=(anchor(number, &rule.id)) {
            @for (position, limit) in bounds.iter().enumerate() {
                tr {
                    @if position == 0 {
                        td rowspan=(rows) { (applies(rule)) }
                    }
                    td { (limit.of) }
                    td class="bound" { (limit.low.as_deref().unwrap_or("")) }
                    td class="bound" { (limit.high.as_deref().unwrap_or("")) }
                    @if position == 0 {
                        td rowspan=(rows) { (id(&rule.id)) br; (badges(rule)) }
                    }
                }
            }
            tr class="says" {
                td colspan="5" {
                    (message(&rule.message))
                    @if let Some(text) = &written.written { code class="written" { (text) } }
                    (basis(rule.basis.as_ref()))
                }
            }
        }
    }
}

/// Rules in words.
fn conditions(number: usize, rules: &[RuleSheet]) -> Markup {
    html! {
        table class="rules" {
            thead {
                tr {
                    th scope="col" { "Applies when" }
                    th scope="col" { "Must hold" }
                    th scope="col" { "Rule, and what it says" }
                }
            }
            tbody {
                @for rule in rules {
                    @if let Demand::Condition(demand) = &rule.demand {
                        tr id=(anchor(number, &rule.id)) {
                            td { (applies(rule)) }
                            td { (condition(demand)) }
                            td {
                                (id(&rule.id)) " " (badges(rule))
                                span class="ends" { (message(&rule.message)) }
                                (basis(rule.basis.as_ref()))
                            }
                        }
                    }
                }
            }
        }
    }
}

/// When a rule applies, and to which parts.
fn applies(rule: &RuleSheet) -> Markup {
    html! {
        @match &rule.when {
            Some(when) => { (condition(when)) }
            None => { "always" }
        }
        @if let Some(those) = &rule.parts { span class="ends" { (parts(those)) } }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_rule_that_blocks_says_what_is_made_and_what_is_not() {
        let list = Drawing::List {
            columns: Vec::new(),
            rows: Vec::new(),
        };
        for is_allowed in [true, false] {
            for (effect, start) in [
                (Effect::Warn, "Look at: "),
                (Effect::SignOff, "Needs a sign-off: "),
            ] {
                assert!(words(&list, is_allowed, effect).starts_with(start));
            }
            let start = if is_allowed { "Made: " } else { "Not made: " };
            assert!(words(&list, is_allowed, Effect::Block).starts_with(start));
        }
    }
}
