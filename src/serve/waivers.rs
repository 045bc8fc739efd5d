//! The waivers of a request, each for a rule that may be waived.

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
        if waiver.reference.is_empty() {
            let message = "where the waiver is written is asked for";
            faults.push(Reason::Required, format!("{field}.reference"), message);
        }
        let from = day::needed(waiver.valid_from.as_ref(), &format!("{field}.valid_from"), faults);
        let until = day::read_if(
            waiver.valid_until.as_ref(),
            &format!("{field}.valid_until"),
            faults,
        );
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
    let policy = dealer.and_then(|dealer| product.dealers.get(dealer));
    let of_policy = policy.iter().flat_map(|dealer| &dealer.policy.terms.rules);
    let declared = product.catalog.declarations().rules.iter().chain(of_policy);
    let mut named = declared
        .filter(|declared| declared.id.as_str() == rule)
        .peekable();
    if named.peek().is_none() {
        let message = format!("there is no declared rule {}", shown(rule));
        faults.push(Reason::UnknownRule, field, &message);
    } else if !named.all(|declared| declared.waivable) {
        let message = format!("rule {} is not waivable", shown(rule));
        faults.push(Reason::NotWaivable, field, &message);
    }
}
