//! The waivers of a request, each for a rule that may be waived.
//!
//! As in the file of an order: a waiver says where it is written, and does not end before it begins.
//!
//! Cost: a look at each rule a waiver.

use astragal_model::{Id, Waiver};

use crate::serve::day;
use crate::serve::fault::{Faults, Reason, shown};
use crate::serve::product::Product;
use crate::serve::v1;

/// Written releases from rules of the catalog or one of its policies.
pub(super) fn waivers(
    written: &[v1::Waiver],
    product: &Product,
    dealer: Option<usize>,
    faults: &mut Faults,
) -> Vec<Waiver> {
    let mut found = Vec::new();
    for (at, waiver) in written.iter().enumerate() {
        let field = format!("unit.waivers[{at}]");
        check_rule(&waiver.rule, product, dealer, &format!("{field}.rule"), faults);
        if waiver.reference.trim().is_empty() {
            let message = "where the waiver is written is asked for";
            faults.push(Reason::Required, format!("{field}.reference"), message);
        }
        let from = day::needed(waiver.valid_from.as_ref(), &format!("{field}.valid_from"), faults);
        let until = day::read_if(
            waiver.valid_until.as_ref(),
            &format!("{field}.valid_until"),
            faults,
        );
        if let (Some(from), Some(until)) = (from, until)
            && until < from
        {
            let message = format!("it ends on {until}, before it begins on {from}");
            faults.push(Reason::BadRange, format!("{field}.valid_until"), &message);
        }
        found.extend(from.map(|from| Waiver {
            rule: Id::new(&waiver.rule),
            reference: waiver.reference.clone(),
            from,
            until,
        }));
    }
    found
}

fn check_rule(rule: &str, product: &Product, dealer: Option<usize>, field: &str, faults: &mut Faults) {
    if !faults.has_name(rule, field, "a rule") {
        return;
    }
    let policy = dealer.and_then(|dealer| product.dealers.get(dealer));
    let of_policy = policy.iter().flat_map(|dealer| &dealer.policy.terms.rules);
    let declared = product.catalog.declarations().rules.iter().chain(of_policy);
    let mut named = declared
        .clone()
        .filter(|declared| declared.id.as_str() == rule)
        .peekable();
    if named.peek().is_none() {
        let message = format!("there is no declared rule {}", shown(rule));
        let waivable = declared.filter(|declared| declared.waivable);
        let known = waivable.map(|declared| declared.id.as_str());
        faults.push_unknown(Reason::UnknownRule, field, &message, (rule, known));
    } else if !named.all(|declared| declared.waivable) {
        let message = format!("rule {} is not waivable", shown(rule));
        faults.push(Reason::NotWaivable, field, &message);
    }
}
