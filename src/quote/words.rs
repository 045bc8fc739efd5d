//! What every answer says alike, whether a person, a program or the service reads it: the caution, the name of an item, where a
//! rule is published.

use astragal_model::{Catalog, ItemIndex, RuleFinding, RuleName};

use crate::quote::work::{QuotedUnit, Used};

/// The words that an answer about a unit ends with, whatever it says.
pub(crate) const CAUTION: &str = "astragal checks, it does not approve: the local code and a licensed person \
    decide. Confirm every measurement before ordering: windows that are made to order do not go back.";

/// The id of an item, with its part: `tempered`, `tempered.upper`.
pub(crate) fn item_name(catalog: &Catalog, item: ItemIndex) -> String {
    let declarations = catalog.declarations();
    let declared = declarations.items.at(item);
    match declared.part {
        Some(part) => format!("{}.{}", declared.id, declarations.parts.at(part).id),
        None => declared.id.to_string(),
    }
}

impl QuotedUnit<'_> {
    /// Where a declared rule says that it is published.
    pub(crate) fn basis(&self, finding: &RuleFinding) -> Option<&str> {
        self.used.basis(finding)
    }
}

impl<'a> Used<'a> {
    /// Where a declared rule says that it is published.
    pub(crate) fn basis(&self, finding: &RuleFinding) -> Option<&'a str> {
        let rule = match finding.rule {
            RuleName::Catalog(position) => self.catalog.declarations().rules.get(position),
            RuleName::Policy(position) => self.policy.and_then(|policy| policy.terms.rules.get(position)),
            _ => None,
        };
        rule.and_then(|rule| rule.basis.as_deref())
    }
}
