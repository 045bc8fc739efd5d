//! From the lines of a unit to its total: the subtotal, then the steps of the book and of the policy in turn.

use astragal_exact::Number;

use super::{Pricing, percent_of};
use crate::judge::report::{ItemFinding, ItemState, TailFinding, Total};
use crate::money::Money;
use crate::price::{Amount, TailStep};
use crate::value::Wants;

impl Pricing<'_> {
    /// The subtotal, the tail and the total of one unit.
    pub(super) fn total(&self, items: &[ItemFinding]) -> (Option<Money>, Vec<TailFinding>, Total) {
        let mut sum = Number::from(0);
        let mut wants = Wants::new();
        let mut unknown = false;
        for item in items {
            match &item.state {
                ItemState::Amount(amount) => sum = &sum + amount.amount(),
                ItemState::Unknown(more) => {
                    unknown = true;
                    wants.extend(more.iter().cloned());
                }
                ItemState::NoPrice => return (None, Vec::new(), Total::NoPrice),
            }
        }
        if unknown {
            return (None, Vec::new(), Total::Unknown(wants));
        }
        let subtotal = Money::new(sum, self.book.currency);
        let of_policy = self.setting.policy.iter().flat_map(|policy| &policy.terms.tail);
        let mut running = subtotal.clone();
        let mut tail = Vec::new();
        for step in self.book.tail.iter().chain(of_policy) {
            let finding = self.tail_step(step, &running);
            running = finding.after.clone();
            tail.push(finding);
        }
        (Some(subtotal), tail, Total::Known(running))
    }

    fn tail_step(&self, step: &TailStep, running: &Money) -> TailFinding {
        let (exact, percent) = match &step.amount {
            Amount::Money(amount) => (amount.clone(), None),
            Amount::Percent(percent) => (percent_of(running.amount(), percent), Some(percent.clone())),
        };
        // What is rounded is the running total, so that 437.35 less 10 % is 393.62 (393.615), not 437.35 less 43.74.
        let after = self.rounded(&(running.amount() + &exact));
        let amount = Money::new(after.amount() - running.amount(), self.book.currency);
        TailFinding {
            id: step.id.clone(),
            label: step.label.clone(),
            percent,
            amount,
            after,
        }
    }
}
