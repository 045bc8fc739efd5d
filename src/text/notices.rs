//! Notices of an opening by kind: cautions, warranty terms, sign-offs.

use astragal_model::NoticeKind;

use crate::quote::work::QuotedUnit;
use crate::text::opening::section;
use crate::text::page::Page;

pub(crate) fn write(page: &mut Page, unit: &QuotedUnit<'_>) {
    for (kind, title) in [
        (NoticeKind::Caution, "Cautions"),
        (NoticeKind::Warranty, "Warranty"),
        (NoticeKind::SignOff, "To be signed"),
    ] {
        let of_kind = unit.judgement.notices.iter().filter(|notice| notice.kind == kind);
        let mut texts: Vec<String> = Vec::new();
        for notice in of_kind {
            let text = text(unit, notice);
            if !texts.contains(&text) {
                texts.push(text);
            }
        }
        if !texts.is_empty() {
            section(page, title);
        }
        for text in texts {
            page.entry(4, "- ", &text);
        }
    }
}

/// The text, where it is published, and whether it is shown only for want of something.
fn text(unit: &QuotedUnit<'_>, notice: &astragal_model::NoticeFinding) -> String {
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
