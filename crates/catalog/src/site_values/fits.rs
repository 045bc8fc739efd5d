//! Whether a number that was written is one that its measure or fact takes.

use astragal_model::measure_text::{LengthUnit, format_length};
use astragal_model::{Bounds, Number, Refused};

use crate::finding::{Finding, Findings, Place};

/// A number as it was written.
pub(super) struct WrittenNumber<'a> {
    /// What it is: "measure `width`".
    pub(super) what: String,
    pub(super) text: &'a str,
    pub(super) place: &'a Place,
    pub(super) is_length: bool,
    /// The unit of the catalog, in which lengths are shown.
    pub(super) unit: LengthUnit,
}

impl WrittenNumber<'_> {
    /// Whether it is a multiple of the step and lies within the bounds; `None` means that a finding says why not.
    pub(super) fn fits(
        &self,
        number: &Number,
        step: Option<&Number>,
        bounds: &Bounds,
        findings: &Findings,
    ) -> Option<()> {
        let Some(refused) = bounds.refuse(number, step, |number| self.show(number)) else {
            return Some(());
        };
        findings.push(self.finding(refused));
        None
    }

    fn show(&self, number: &Number) -> String {
        if self.is_length {
            format_length(number, self.unit)
        } else {
            number.to_string()
        }
    }

    fn finding(&self, refused: Refused) -> Finding {
        let (what, text, place) = (&self.what, self.text, self.place.clone());
        match refused {
            Refused::OutOfRange { expected } => {
                let message = format!("{what} is `{text}`; expected {expected}");
                Finding::error("OUT_OF_RANGE", message).at(place).with_help(
                    "look at it again: what was measured, in which unit, from where; leave it out while nobody knows",
                )
            }
            Refused::OffStep { step, nearest } => {
                let message = format!("{what} is `{text}`, which is not a multiple of {step}");
                let finding = Finding::error("OFF_STEP", message).at(place);
                match nearest {
                    Some(nearest) => finding.with_help(nearest),
                    None => finding,
                }
            }
        }
    }
}
