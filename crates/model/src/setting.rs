//! A setting: everything that stands still around a unit while it is filled and judged.

use std::collections::BTreeSet;

use jiff::civil::Date;

use crate::attribute::Standard;
use crate::catalog::Catalog;
use crate::id::{AttributeIndex, Id};
use crate::order::Waiver;
use crate::plan::Plan;
use crate::policy::Policy;
use crate::price::Book;
use crate::site::Site;

/// Everything that stands still around a unit while it is filled and judged.
#[derive(Clone, Copy, Debug)]
pub struct Setting<'a> {
    /// The catalog.
    pub catalog: &'a Catalog,
    /// The price book, if the unit is to be priced.
    pub book: Option<&'a Book>,
    /// The dealer policy, if there is one. It must have been made by this catalog.
    pub policy: Option<&'a Policy>,
    /// What is known about the opening and its place.
    pub site: &'a Site,
    /// The waivers that the unit carries.
    pub waivers: &'a [Waiver],
    /// Whose rules bind.
    pub authorities: &'a Authorities,
    /// The day as of which the unit is judged.
    pub date: Date,
}

/// Whose rules bind.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct Authorities {
    /// The authorities that were left out; every other one applies.
    pub left_out: BTreeSet<Id>,
}

impl Authorities {
    /// Whether the rules of an authority bind.
    #[must_use]
    pub fn apply(&self, authority: &Id) -> bool {
        !self.left_out.contains(authority)
    }
}

impl<'a> Setting<'a> {
    pub(crate) fn plan(&self) -> &'a Plan {
        self.policy
            .map_or_else(|| self.catalog.plan(), |policy| &policy.plan)
    }

    /// Whether the policy hides an option.
    #[must_use]
    pub fn hides(&self, attribute: AttributeIndex, option: &Id) -> bool {
        let hidden = self.policy.and_then(|policy| policy.terms.hidden.get(&attribute));
        hidden.is_some_and(|hidden| hidden.contains(option))
    }

    /// The standard of an attribute: the policy's, or else the plant's.
    #[must_use]
    pub fn standard(&self, attribute: AttributeIndex) -> &'a Standard {
        self.policy
            .and_then(|policy| policy.terms.standards.get(&attribute))
            .unwrap_or(&self.catalog.declarations().attributes.at(attribute).standard)
    }
}
