//! The end of a quote: what it comes to, how it stands, and what it does not say.

use std::collections::BTreeSet;

use astragal_core::complete::Aim;
use astragal_model::{Id, Money, RuleFinding, Verdict};

use crate::quote::words::CAUTION;
use crate::quote::work::{Quote, QuotedUnit, SignOff, Totals};
use crate::text::opening::{verdict_tone, verdict_words};
use crate::text::page::{Page, Tone};
use crate::text::sale;

pub(crate) fn write(page: &mut Page, quote: &Quote<'_>) {
    page.blank();
    page.rule("=");
    if quote.units.is_empty() {
        page.text(0, "The order has no openings.");
    }
    total(page, &quote.totals());
    saves(page, quote);
    page.blank();
    verdicts(page, quote);
    if !quote.left_out.is_empty() {
        page.blank();
        let named: Vec<String> = quote.left_out.iter().map(|id| format!("`{id}`")).collect();
        page.text(0, &format!("The rules of {} were not applied.", joined(&named)));
    }
    sale::write(page, quote);
    page.blank();
    page.text(0, CAUTION);
}

/// What the same choices cost less when everything else is filled in at its cheapest.
fn saves(page: &mut Page, quote: &Quote<'_>) {
    let Some(saves) = quote.saves() else { return };
    let saves = format!("{} {}", saves.grouped(), saves.currency());
    let text = match quote.aim {
        Some(Aim::Cheapest) => {
            let standards = quote.filled_with_standards();
            let but = match standards.as_slice() {
                [] => String::new(),
                tags => format!("; standards are filled in all the same for {}", joined(tags)),
            };
            format!("This is {saves} less than with standards{but}.")
        }
        _ => format!("With the same choices and `--cheapest` it is {saves} less."),
    };
    page.text(0, &text);
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
        let with = quote.included().filter(|unit| unit.verdict() == verdict);
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
    for verdict in [Verdict::Broken, Verdict::Undecided] {
        let rooms = quote.rooms_that(verdict);
        if !rooms.is_empty() {
            let text = format!("{} as a room: {}", words(verdict, rooms.len()), rooms.join(", "));
            page.heading(0, verdict_tone(verdict), &capitalised(&text));
        }
    }
    for (needed, words) in [
        (SignOff::Needed, "Needs a sign-off before it is ordered"),
        (
            SignOff::MayBeNeeded,
            "May need a sign-off, which waits for what is not known",
        ),
    ] {
        let signing = quote.included().filter(|unit| unit.sign_off() == needed);
        let rooms = quote.rooms.iter().filter(|room| room.sign_off() == needed);
        let rooms = rooms.map(|room| room.label.as_str());
        let signing: Vec<&str> = signing
            .map(|unit| unit.opening.tag.as_str())
            .chain(rooms)
            .collect();
        if !signing.is_empty() {
            page.heading(0, Tone::Unsure, &format!("{words}: {}", signing.join(", ")));
        }
    }
    set_aside(page, quote);
    let left_out = quote.units.iter().filter(|unit| !unit.opening.included);
    let left_out: Vec<&str> = left_out.map(|unit| unit.opening.tag.as_str()).collect();
    if !left_out.is_empty() {
        page.text(0, &format!("Not included: {}", left_out.join(", ")));
    }
}

/// What only a waiver holds, and what would not hold under rules that were not applied.
fn set_aside(page: &mut Page, quote: &Quote<'_>) {
    let aside = quote.included().map(|unit| (unit, unit.set_aside()));
    let of_rooms = quote
        .rooms
        .iter()
        .map(|room| (room.label.as_str(), room.set_aside()));
    let aside = named_with(
        aside
            .map(|(unit, ids)| (unit.opening.tag.as_str(), ids))
            .chain(of_rooms),
    );
    if !aside.is_empty() {
        let text = format!("Would not hold under the rules that were not applied: {aside}");
        page.heading(0, Tone::Bad, &text);
    }
    let of = |dealers: bool| {
        let is_of = move |finding: &&RuleFinding| {
            matches!(finding.authority.as_str(), "code" | "programme") != dealers
        };
        let rules = move |unit| -> BTreeSet<&Id> {
            QuotedUnit::waived(unit)
                .filter(is_of)
                .map(|finding| &finding.id)
                .collect()
        };
        by_opening(quote.included().map(|unit| (unit, rules(unit))))
    };
    let (others, published) = (of(true), of(false));
    if !others.is_empty() {
        page.text(0, &format!("Held by a waiver: {others}"));
    }
    if !published.is_empty() {
        let text = format!(
            "A published rule was set aside by a waiver, which only the official can excuse: {published}"
        );
        page.heading(0, Tone::Unsure, &text);
    }
}

/// `L1 (fixed-area); L2 (unit-area)`; empty where no opening has such a rule.
fn by_opening<'a>(rules: impl Iterator<Item = (&'a QuotedUnit<'a>, BTreeSet<&'a Id>)>) -> String {
    named_with(rules.map(|(unit, ids)| (unit.opening.tag.as_str(), ids)))
}

/// Names of openings or rooms with the rules; those without rules are left out.
fn named_with<'a>(rules: impl Iterator<Item = (&'a str, BTreeSet<&'a Id>)>) -> String {
    let named = rules.filter(|(_, ids)| !ids.is_empty()).map(|(name, ids)| {
        let ids: Vec<&str> = ids.into_iter().map(Id::as_str).collect();
        format!("{name} ({})", ids.join(", "))
    });
    named.collect::<Vec<_>>().join("; ")
}

/// The text with a capital in front.
fn capitalised(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|letter| letter.to_ascii_uppercase());
    first.into_iter().chain(letters).collect()
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
