//! Whether a number that was written is one that its measure or fact takes.

use astragal_model::measure_text::{LengthUnit, format_length};
use astragal_model::{Bounds, Number};

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
        if !bounds.admit(number) {
            findings.push(self.out_of_range(bounds));
            return None;
        }
        if let Some(step) = step.filter(|step| !number.is_multiple_of(step)) {
            findings.push(self.off_step(number, step));
            return None;
        }
        Some(())
    }

    fn show(&self, number: &Number) -> String {
        if self.is_length {
            format_length(number, self.unit)
        } else {
            number.to_string()
        }
    }

    fn out_of_range(&self, bounds: &Bounds) -> Finding {
        let taken = bounds.words(|number| self.show(number)).unwrap_or_default();
        let message = format!("{} is `{}`; expected {taken}", self.what, self.text);
        Finding::error("OUT_OF_RANGE", message)
            .at(self.place.clone())
            .with_help("look at it again: what was measured, in which unit, from where; leave it out while nobody knows")
    }

    fn off_step(&self, number: &Number, step: &Number) -> Finding {
        let message = format!(
            "{} is `{}`, which is not a multiple of {}",
            self.what,
            self.text,
            self.show(step)
        );
        let finding = Finding::error("OFF_STEP", message).at(self.place.clone());
        match (number.floor_to(step), number.ceil_to(step)) {
            (Some(below), Some(above)) => {
                let nearest = format!("the nearest are {} and {}", self.show(&below), self.show(&above));
                finding.with_help(nearest)
            }
            _ => finding,
        }
    }
}
