//! What it takes to resolve one declaration: names, sheets, authorities, and what could not be read.

use std::collections::BTreeSet;

use astragal_model::{Expression, Id, PartIndex};

use super::Sheets;
use crate::finding::{Finding, Findings};
use crate::nearest::{nearest, quoted_list};
use crate::sheet::Sheet;
use crate::typed::{Names, Parsed, PlacedText, Scope};

/// What it takes to resolve one declaration.
#[derive(Clone, Copy)]
pub(crate) struct Resolver<'a> {
    pub(crate) names: &'a Names,
    pub(crate) sheets: &'a Sheets,
    pub(crate) findings: &'a Findings,
    pub(crate) authorities: &'a BTreeSet<Id>,
    pub(crate) unreadable: &'a Unreadable,
}

/// Names of declarations that could not be read. Whatever names them is left alone: the fault is said already.
#[derive(Debug, Default)]
pub(crate) struct Unreadable(BTreeSet<String>);

impl Unreadable {
    pub(crate) fn add(&mut self, id: &Id) {
        self.0.insert(id.to_string());
    }

    /// Whether an expression names one.
    pub(crate) fn is_in(&self, parsed: &Parsed) -> bool {
        !self.0.is_empty() && parsed.names().iter().any(|name| self.0.contains(*name))
    }

    /// Whether a dotted name begins with one.
    pub(crate) fn is_name(&self, text: &str) -> bool {
        let first = text.split('.').next().unwrap_or_default();
        self.0.contains(first.trim())
    }

    /// Whether a message has one in braces.
    pub(crate) fn is_in_message(&self, text: &str) -> bool {
        !self.0.is_empty()
            && text.split('{').skip(1).any(|piece| {
                let name = piece.split('}').next().unwrap_or_default();
                self.is_name(name)
            })
    }

    /// Whether a column of a sheet names one.
    pub(crate) fn is_in_sheet(&self, sheet: &Sheet) -> bool {
        !self.0.is_empty() && sheet.columns().any(|(_, name)| self.is_name(name))
    }
}

impl<'a> Resolver<'a> {
    /// The scope of one part, or of the whole unit.
    pub(crate) fn scope(&self, part: Option<PartIndex>) -> Scope<'a> {
        Scope::new(self.names, self.findings).in_part(part)
    }

    /// The same where a condition holds.
    pub(crate) fn scope_when(&self, part: Option<PartIndex>, when: Option<&Parsed>) -> Scope<'a> {
        match when {
            Some(when) => self.scope(part).assuming(when),
            None => self.scope(part),
        }
    }

    /// The parts that a `per` names; one entry without a part when it names none.
    pub(crate) fn parts_of(&self, per: Option<&PlacedText>) -> Option<Vec<Option<PartIndex>>> {
        parts_of(per, self.names, self.findings)
    }

    /// A condition with the existence of the part in front; the outer `None` means that a finding says why.
    #[expect(
        clippy::option_option,
        reason = "no condition and an unreadable one are different"
    )]
    pub(crate) fn when(&self, part: Option<PartIndex>, own: Option<&Parsed>) -> Option<Option<Expression>> {
        let own = match own {
            Some(parsed) => Some(self.condition(&self.scope(part), parsed)?),
            None => None,
        };
        let exists = part
            .and_then(|part| self.names.part_condition(part))
            .flatten()
            .cloned();
        Some(match (exists, own) {
            (Some(exists), Some(own)) => Some(Expression::And(vec![exists, own])),
            (exists, own) => exists.or(own),
        })
    }

    /// A condition, unless it names what could not be read.
    pub(crate) fn condition(&self, scope: &Scope<'_>, parsed: &Parsed) -> Option<Expression> {
        if self.unreadable.is_in(parsed) {
            return None;
        }
        scope.condition(parsed)
    }
}

/// The parts of the kind that a `per` names; one entry without a part when it names none.
pub(crate) fn parts_of(
    per: Option<&PlacedText>,
    names: &Names,
    findings: &Findings,
) -> Option<Vec<Option<PartIndex>>> {
    let Some(per) = per else {
        return Some(vec![None]);
    };
    let parts = names.parts_of_kind(&Id::new(&per.text));
    if !parts.is_empty() {
        return Some(parts.into_iter().map(Some).collect());
    }
    let kinds = || names.kinds().into_iter().map(Id::as_str);
    let help = match nearest(&per.text, kinds()) {
        Some(near) => format!("did you mean `{near}`?"),
        None if kinds().next().is_none() => "declare the parts with `[[part]]`".to_owned(),
        None => format!("kinds of parts are {}", quoted_list(kinds())),
    };
    let message = format!("no part is a `{}`", per.text);
    findings.push(
        Finding::error("UNKNOWN_PART_KIND", message)
            .at(per.place.clone())
            .with_help(help),
    );
    None
}
