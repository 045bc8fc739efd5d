//! Small pieces that stand in many places: conditions, messages, parts, ids, badges.

use astragal_model::{Effect, Id};
use maud::{Markup, html};

use crate::print::pages::{Condition, Message, MessagePiece, Parts, RuleSheet};
use crate::print::phrases;

/// An id as expressions and files write it.
pub(super) fn id(id: &Id) -> Markup {
    html! { span class="id" { (id.as_str()) } }
}

/// A condition in words, and below as written.
pub(super) fn condition(condition: &Condition) -> Markup {
    html! {
        (condition.words)
        @if let Some(text) = &condition.written {
            code class="written" { (text) }
        }
    }
}

/// A message with its places marked.
pub(super) fn message(message: &Message) -> Markup {
    html! {
        @for piece in &message.pieces {
            @match piece {
                MessagePiece::Text(text) => { (text) }
                MessagePiece::Place(place) => { span class="place" { (place) } }
            }
        }
    }
}

/// The parts, each with the condition under which there is one.
pub(super) fn parts(parts: &Parts) -> Markup {
    html! {
        "for each " (parts.kind.as_str()) ": "
        @for (position, (label, when)) in parts.parts.iter().enumerate() {
            @if position > 0 { ", " }
            (label)
            @if let Some(when) = when { " (when " (when) ")" }
        }
    }
}

/// What happens when a rule is broken, on whose authority, and what else there is to know.
pub(super) fn badges(rule: &RuleSheet) -> Markup {
    html! {
        span class="badge" { (phrases::effect(rule.effect)) }
        " "
        span class="badge" { (rule.authority.as_str()) }
        @if rule.waivable { " " span class="badge" { "may be waived" } }
    }
}

/// Who published what is asked for.
pub(super) fn basis(basis: Option<&String>) -> Markup {
    html! { @if let Some(basis) = basis { span class="ends" { "Basis: " (basis) } } }
}

/// Where a rule stands in full.
pub(super) fn anchor(number: usize, rule: &Id) -> String {
    format!("chart{number}-rule-{rule}")
}

/// Links to rules.
pub(super) fn rule_links(number: usize, rules: &[Id]) -> Markup {
    html! {
        @for (position, rule) in rules.iter().enumerate() {
            @if position > 0 { ", " }
            a class="id" href={ "#" (anchor(number, rule)) } { (rule.as_str()) }
        }
    }
}

/// Says what the effects mean.
pub(super) fn effect_key() -> Markup {
    html! {
        @for (effect, meaning) in [
            (Effect::Block, "a unit that breaks the rule is not made"),
            (Effect::Warn, "a unit that breaks the rule is made, with a warning"),
            (Effect::SignOff, "a unit that breaks the rule is made when somebody signs for it"),
        ] {
            li { span class="badge" { (phrases::effect(effect)) } " " (meaning) }
        }
    }
}
