//! The end of a quote: what it comes to, how it stands, and what it does not say.

use astragal_model::{Id, Money, Verdict};

use crate::quote::work::{Quote, Totals};
use crate::text::CAUTION;
use crate::text::opening::{verdict_tone, verdict_words};
use crate::text::page::{Page, Tone};

pub(crate) fn write(page: &mut Page, quote: &Quote<'_>) {
    page.blank();
    page.rule("=");
    if quote.units.is_empty() {
        page.text(0, "The order has no openings.");
    }
    total(page, &quote.totals());
    page.blank();
    verdicts(page, quote);
    if !quote.left_out.is_empty() {
        page.blank();
        let named: Vec<String> = quote.left_out.iter().map(|id| format!("`{id}`")).collect();
        page.text(0, &format!("The rules of {} were not applied.", joined(&named)));
    }
    page.blank();
    page.text(0, CAUTION);
}

fn total(page: &mut Page, totals: &Totals<'_>) {
    let Some(known) = &totals.known else {
        page.heading(
            0,
            Tone::Strong,
            "There is no total: the amounts are in different currencies.",
        );
        return;
    };
    let shown = |known: &Money| format!("{} {}", known.grouped(), known.currency());
    if totals.without_total.is_empty() {
        let label = "Total before tax and order charges:";
        page.spread(0, Tone::Strong, label, &shown(known));
    } else {
        let tags = joined(&totals.without_total);
        page.heading(
            0,
            Tone::Unsure,
            &format!("The total is incomplete: no total is known for {tags}."),
        );
        let label = "The other openings, before tax and order charges:";
        page.spread(0, Tone::Strong, label, &shown(known));
    }
    for (tags, what) in [
        (&totals.broken, "does not hold"),
        (&totals.undecided, "cannot be decided yet"),
    ] {
        if !tags.is_empty() {
            page.text(0, &format!("This counts what {what}: {}.", joined(tags)));
        }
    }
}

/// A line a verdict, and one for what is not included.
fn verdicts(page: &mut Page, quote: &Quote<'_>) {
    let all = quote.included().count();
    for verdict in [Verdict::Broken, Verdict::Undecided, Verdict::Holds] {
        let with = quote.included().filter(|unit| unit.judgement.verdict == verdict);
        let tags: Vec<&str> = with.map(|unit| unit.opening.tag.as_str()).collect();
        if !tags.is_empty() {
            let text = format!(
                "{} of {all} openings {}: {}",
                tags.len(),
                words(verdict, tags.len()),
                tags.join(", ")
            );
            page.heading(0, verdict_tone(verdict), &text);
        }
    }
    let signing = quote.included().filter(|unit| unit.needs_sign_off());
    let signing: Vec<&str> = signing.map(|unit| unit.opening.tag.as_str()).collect();
    if !signing.is_empty() {
        let text = format!("Needs a sign-off before it is ordered: {}", signing.join(", "));
        page.heading(0, Tone::Unsure, &text);
    }
    let waived = quote.included().filter(|unit| !unit.waived().is_empty());
    let waived: Vec<String> = waived
        .map(|unit| {
            let rules: Vec<&str> = unit.waived().into_iter().map(Id::as_str).collect();
            format!("{} ({})", unit.opening.tag, rules.join(", "))
        })
        .collect();
    if !waived.is_empty() {
        page.text(0, &format!("Held by a waiver: {}", waived.join("; ")));
    }
    let left_out = quote.units.iter().filter(|unit| !unit.opening.included);
    let left_out: Vec<&str> = left_out.map(|unit| unit.opening.tag.as_str()).collect();
    if !left_out.is_empty() {
        page.text(0, &format!("Not included: {}", left_out.join(", ")));
    }
}

/// A verdict in words about so many openings.
fn words(verdict: Verdict, count: usize) -> &'static str {
    match (verdict, count) {
        (Verdict::Holds, 2..) => "hold",
        (Verdict::Broken, 2..) => "do not hold",
        (verdict, _) => verdict_words(verdict),
    }
}

/// `a`, `a and b`, `a, b and c`.
fn joined<T: AsRef<str>>(things: &[T]) -> String {
    let things: Vec<&str> = things.iter().map(AsRef::as_ref).collect();
    match things.split_last() {
        None => String::new(),
        Some((only, [])) => (*only).to_owned(),
        Some((last, before)) => format!("{} and {last}", before.join(", ")),
    }
}
