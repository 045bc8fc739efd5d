//! Ids that stand twice: the second is a finding that points to the first, and is left out.
//!
//! Always holds: what is left has every id once. Cost: O(n log n).

use std::collections::BTreeMap;

use super::Declared;
use crate::finding::{Finding, Findings, Place};

/// Keeps the first of each id; the others are findings. `what` names the list: "rules", "options of attribute `x`".
pub(crate) fn keep_first<T>(
    things: &mut Vec<T>,
    what: &str,
    id_of: impl for<'t> Fn(&'t T) -> (&'t str, &'t Place),
    findings: &Findings,
) {
    let mut first: BTreeMap<String, Place> = BTreeMap::new();
    things.retain(|thing| {
        let (id, place) = id_of(thing);
        if let Some(before) = first.get(id) {
            findings.push(duplicate(id, place, what, before));
            return false;
        }
        first.insert(id.to_owned(), place.clone());
        true
    });
}

fn duplicate(id: &str, place: &Place, what: &str, before: &Place) -> Finding {
    Finding::error("DUPLICATE_ID", format!("`{id}` stands twice among the {what}"))
        .at(place.clone())
        .with_help("give one of the two another id")
        .with_related(before.clone(), format!("`{id}` stands here first"))
}

impl Declared {
    /// Leaves every id in once; names of expressions share one namespace.
    pub(crate) fn make_unique(&mut self, findings: &Findings) {
        keep_first(
            &mut self.authorities,
            "authorities",
            |it| (it.head.id.as_str(), &it.head.place),
            findings,
        );
        keep_first(
            &mut self.option_lists,
            "option lists",
            |it| (it.head.id.as_str(), &it.head.place),
            findings,
        );
        keep_first(
            &mut self.rules,
            "rules",
            |it| (it.head.id.as_str(), &it.head.place),
            findings,
        );
        keep_first(
            &mut self.room_rules,
            "room rules",
            |it| (it.head.id.as_str(), &it.head.place),
            findings,
        );
        let rules: BTreeMap<&str, &Place> = self
            .rules
            .iter()
            .map(|it| (it.head.id.as_str(), &it.head.place))
            .collect();
        self.room_rules.retain(|it| {
            let before = rules.get(it.head.id.as_str());
            if let Some(before) = before {
                findings.push(duplicate(it.head.id.as_str(), &it.head.place, "rules", before));
            }
            before.is_none()
        });
        keep_first(
            &mut self.site_checks,
            "site checks",
            |it| (it.head.id.as_str(), &it.head.place),
            findings,
        );
        keep_first(
            &mut self.items,
            "price items",
            |it| (it.head.id.as_str(), &it.head.place),
            findings,
        );
        keep_first(
            &mut self.notices,
            "notices",
            |it| (it.head.id.as_str(), &it.head.place),
            findings,
        );
        keep_first(
            &mut self.examples,
            "examples",
            |it| (it.head.id.as_str(), &it.head.place),
            findings,
        );
        self.make_names_unique(findings);
    }

    /// In the order attributes, measures, facts, figures, parts: a later kind yields to an earlier one.
    fn make_names_unique(&mut self, findings: &Findings) {
        let mut first: BTreeMap<String, Place> = BTreeMap::new();
        let mut is_first = |head: &super::Head| {
            if let Some(before) = first.get(head.id.as_str()) {
                let what = "attributes, measures, facts, figures and parts";
                findings.push(duplicate(head.id.as_str(), &head.place, what, before));
                return false;
            }
            first.insert(head.id.to_string(), head.place.clone());
            true
        };
        self.attributes.retain(|it| is_first(&it.head));
        self.measures.retain(|it| is_first(&it.head));
        self.facts.retain(|it| is_first(&it.head));
        self.figures.retain(|it| is_first(&it.head));
        self.parts.retain(|it| is_first(&it.head));
    }
}
