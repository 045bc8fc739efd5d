//! Rules and notices, one a part where they are `per` part. A dealer policy resolves its rules here as well.

use astragal_model::{Id, Notice, PartIndex, Requirement, Rule, Table, Template};

use super::limits::{RULES_LIMIT, within};
use super::resolver::Resolver;
use crate::declare::{Declared, RawLayout, RawNotice, RawRequirement, RawRule};
use crate::finding::Finding;
use crate::nearest::{nearest, quoted_list};
use crate::typed::{Parsed, PlacedText, list_table, matrix_table, template};

/// The authorities that need no declaration.
pub(crate) const AUTHORITIES: [&str; 4] = ["plant", "code", "programme", "dealer"];

/// The rules of the model; `None` means that findings say why.
pub(crate) fn rules(raws: &[RawRule], resolver: &Resolver<'_>, unsaid: &Id) -> Option<Vec<Rule>> {
    let mut rules = Some(Vec::new());
    let mut count = 0_usize;
    for raw in raws {
        let read = rule(raw, resolver, unsaid);
        count += read.as_ref().map_or(1, Vec::len);
        if !within(
            count,
            RULES_LIMIT,
            "rules",
            Some(&raw.head.place),
            resolver.findings,
        ) {
            return None;
        }
        match (&mut rules, read) {
            (Some(rules), Some(read)) => rules.extend(read),
            _ => rules = None,
        }
    }
    rules
}

/// One rule a part.
fn rule(raw: &RawRule, resolver: &Resolver<'_>, unsaid: &Id) -> Option<Vec<Rule>> {
    let authority = authority(raw.authority.as_ref(), resolver, unsaid);
    let parts = resolver.parts_of(raw.per.as_ref())?;
    let requirements = requirements(raw, &parts, resolver);
    let heads: Vec<Option<_>> = parts
        .iter()
        .map(|part| {
            let when = resolver.when(*part, raw.when.as_ref());
            let message = raw
                .message
                .as_ref()
                .and_then(|text| message(text, *part, raw.when.as_ref(), resolver));
            Some((*part, when?, message?))
        })
        .collect();
    warn_of_waiver(raw, authority.as_ref(), resolver);
    let (authority, requirements) = (authority?, requirements?);
    let rule = |((part, when, message), requirement)| Rule {
        id: raw.head.id.clone(),
        part,
        authority: authority.clone(),
        effect: raw.effect,
        when,
        requirement,
        message,
        basis: raw.basis.clone(),
        waivable: raw.waivable,
    };
    let heads: Option<Vec<_>> = heads.into_iter().collect();
    Some(heads?.into_iter().zip(requirements).map(rule).collect())
}

/// A dealer's waiver sets a rule of the plant or the dealer aside, never one of the law.
fn warn_of_waiver(raw: &RawRule, authority: Option<&Id>, resolver: &Resolver<'_>) {
    let official = match authority.map(Id::as_str) {
        Some("code") => "the building official",
        Some("programme") => "the programme",
        _ => return,
    };
    if raw.waivable {
        let message = format!(
            "rule `{}` is waivable: a dealer's waiver would set a rule of `{}` aside, which only {official} can excuse",
            raw.head.id,
            authority.map_or("", Id::as_str)
        );
        resolver.findings.push(
            Finding::warning("WAIVABLE_LAW", message)
                .at(raw.head.place.clone())
                .with_help("leave `waivable` out"),
        );
    }
}

/// The authority that a rule names, or else the one that is meant when none is named.
pub(super) fn authority(written: Option<&PlacedText>, resolver: &Resolver<'_>, unsaid: &Id) -> Option<Id> {
    let Some(written) = written else {
        return Some(unsaid.clone());
    };
    let id = Id::new(&written.text);
    if resolver.authorities.contains(&id) {
        return Some(id);
    }
    let known = || resolver.authorities.iter().map(Id::as_str);
    let help = match nearest(&written.text, known()) {
        Some(near) => format!("did you mean `{near}`?"),
        None => format!(
            "authorities are {}; declare others with `[[authority]]`",
            quoted_list(known())
        ),
    };
    let message = format!("there is no authority `{}`", written.text);
    resolver.findings.push(
        Finding::error("UNKNOWN_AUTHORITY", message)
            .at(written.place.clone())
            .with_help(help),
    );
    None
}

/// A message of a part, unless it names what could not be read.
pub(super) fn message(
    text: &PlacedText,
    part: Option<PartIndex>,
    when: Option<&Parsed>,
    resolver: &Resolver<'_>,
) -> Option<Template> {
    if resolver.unreadable.is_in_message(&text.text) {
        return None;
    }
    template(text, &resolver.scope_when(part, when))
}

/// What the rule demands, one a part.
fn requirements(
    raw: &RawRule,
    parts: &[Option<PartIndex>],
    resolver: &Resolver<'_>,
) -> Option<Vec<Requirement>> {
    match raw.requirement.as_ref()? {
        RawRequirement::Require(parsed) => {
            let read: Vec<Option<Requirement>> = parts
                .iter()
                .map(|part| {
                    let scope = resolver.scope_when(*part, raw.when.as_ref());
                    resolver.condition(&scope, parsed).map(Requirement::Expression)
                })
                .collect();
            read.into_iter().collect()
        }
        RawRequirement::Table {
            file,
            allowed,
            layout,
        } => {
            let tables = tables(raw, file, layout, parts, resolver)?;
            let make = if *allowed {
                Requirement::Allowed
            } else {
                Requirement::Forbidden
            };
            Some(tables.into_iter().map(make).collect())
        }
    }
}

fn tables(
    raw: &RawRule,
    file: &PlacedText,
    layout: &RawLayout,
    parts: &[Option<PartIndex>],
    resolver: &Resolver<'_>,
) -> Option<Vec<Table>> {
    let sheet = resolver.sheets.find(&raw.head.home, file)?;
    let scope = resolver.scope_when(None, raw.when.as_ref());
    match layout {
        RawLayout::List if resolver.unreadable.is_in_sheet(sheet) => None,
        RawLayout::List => list_table(sheet, &scope, parts),
        RawLayout::Matrix { down, across } => {
            let is_unreadable = [down, across]
                .iter()
                .any(|text| resolver.unreadable.is_name(&text.text));
            if is_unreadable {
                return None;
            }
            matrix_table(sheet, &scope, parts, down, across)
        }
    }
}

/// The notices of the model; `None` means that findings say why.
pub(crate) fn notices(declared: &Declared, resolver: &Resolver<'_>) -> Option<Vec<Notice>> {
    let read: Vec<Option<Vec<Notice>>> = declared.notices.iter().map(|raw| notice(raw, resolver)).collect();
    let read: Option<Vec<Vec<Notice>>> = read.into_iter().collect();
    let read: Vec<Notice> = read?.into_iter().flatten().collect();
    let place = declared.notices.last().map(|raw| &raw.head.place);
    within(read.len(), RULES_LIMIT, "notices", place, resolver.findings).then_some(read)
}

fn notice(raw: &RawNotice, resolver: &Resolver<'_>) -> Option<Vec<Notice>> {
    let parts = resolver.parts_of(raw.per.as_ref())?;
    let read: Vec<Option<Notice>> = parts
        .into_iter()
        .map(|part| {
            let when = resolver.when(part, raw.when.as_ref());
            let text = raw
                .text
                .as_ref()
                .and_then(|text| message(text, part, raw.when.as_ref(), resolver));
            Some(Notice {
                id: raw.head.id.clone(),
                part,
                kind: raw.kind,
                when: when?,
                text: text?,
                basis: raw.basis.clone(),
            })
        })
        .collect();
    read.into_iter().collect()
}
