//! Notices by kind: cautions, warranty terms, sign-offs; those of every opening once, the others with their opening.
//!
//! With three openings that all carry "replacing windows may need a permit", it stands once after the last opening.
//! Always holds: each notice of an opening stands with it, or under "Every opening carries"; nothing is gathered that
//! one opening, included or not, does not carry in the same words.

use std::collections::BTreeSet;

use astragal_model::{NoticeFinding, NoticeKind};

use crate::quote::work::{Quote, QuotedUnit};
use crate::text::opening::section;
use crate::text::page::{Page, Tone};

/// The kinds in the order in which they are printed, and what stands above them.
const KINDS: [(NoticeKind, &str); 3] = [
    (NoticeKind::Caution, "Cautions"),
    (NoticeKind::Warranty, "Warranty"),
    (NoticeKind::SignOff, "To be signed"),
];

/// The notices that every opening carries in the same words, as printed.
#[derive(Default)]
pub(crate) struct Shared {
    texts: [BTreeSet<String>; KINDS.len()],
}

impl Shared {
    /// Finds them; a single opening keeps its notices to itself.
    pub(crate) fn of(quote: &Quote<'_>) -> Self {
        let [first, _, ..] = quote.units.as_slice() else {
            return Self::default();
        };
        let texts = KINDS.map(|(kind, _)| {
            let mut shared: BTreeSet<String> = texts(first, kind).into_iter().collect();
            for unit in &quote.units {
                let own = texts(unit, kind);
                shared.retain(|text| own.contains(text));
            }
            shared
        });
        Self { texts }
    }

    fn is_empty(&self) -> bool {
        self.texts.iter().all(BTreeSet::is_empty)
    }
}

/// Writes the notices of one opening, without those that every opening carries.
pub(crate) fn write(page: &mut Page, unit: &QuotedUnit<'_>, shared: &Shared) {
    for ((kind, title), shared) in KINDS.iter().zip(&shared.texts) {
        let mut own = texts(unit, *kind);
        own.retain(|text| !shared.contains(text));
        if !own.is_empty() {
            section(page, title);
        }
        for text in own {
            page.entry(4, "- ", &text);
        }
    }
    if !shared.is_empty() {
        page.blank();
        page.text(2, "Also what every opening carries: at the end.");
    }
}

/// Writes the notices that every opening carries.
pub(crate) fn write_shared(page: &mut Page, quote: &Quote<'_>, shared: &Shared) {
    let Some(first) = quote.units.first().filter(|_| !shared.is_empty()) else {
        return;
    };
    page.blank();
    page.rule("-");
    page.heading(0, Tone::Strong, "Every opening carries");
    for ((kind, title), shared) in KINDS.iter().zip(&shared.texts) {
        let mut texts = texts(first, *kind);
        texts.retain(|text| shared.contains(text));
        if !texts.is_empty() {
            section(page, title);
        }
        for text in texts {
            page.entry(4, "- ", &text);
        }
    }
}

/// The notices of a kind as printed, in the order of the catalog, each once.
fn texts(unit: &QuotedUnit<'_>, kind: NoticeKind) -> Vec<String> {
    let of_kind = unit.judgement.notices.iter().filter(|notice| notice.kind == kind);
    let mut texts: Vec<String> = Vec::new();
    for notice in of_kind {
        let text = text(unit, notice);
        if !texts.contains(&text) {
            texts.push(text);
        }
    }
    texts
}

/// The text, where it is published, and whether it is shown only for want of something.
fn text(unit: &QuotedUnit<'_>, notice: &NoticeFinding) -> String {
    let catalog = unit.used.catalog;
    let mut text = notice.text.clone();
    let declared = catalog.declarations().notices.get(notice.notice);
    if let Some(basis) = declared.and_then(|declared| declared.basis.as_ref()) {
        text = format!("{text} ({basis})");
    }
    if let Some(wants) = &notice.wants {
        let labels: Vec<String> = wants.iter().map(|want| catalog.show_want(want)).collect();
        let verb = if labels.len() == 1 { "is" } else { "are" };
        text = format!("{text} (shown because {} {verb} not known)", labels.join(" and "));
    }
    text
}
