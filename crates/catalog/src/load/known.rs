//! Measures and facts as the model knows them: their types, steps and bounds.
//!
//! Always holds: a step is above zero, and the least that is taken is not above the most.

use astragal_model::measure_text::LengthUnit;
use astragal_model::{Bounds, FactIndex, Indexed, Measure, MeasureIndex, Number, SiteFact, ValueType};

use crate::declare::{Declared, RawBounds, RawHeader, RawMeasureKind, RawSiteFact};
use crate::finding::{Finding, Findings, Place};
use crate::site_values::{length, number};

/// What numbers are read by.
#[derive(Clone, Copy)]
struct By<'a> {
    value_type: ValueType,
    unit: LengthUnit,
    findings: &'a Findings,
}

impl By<'_> {
    fn number(self, (text, place): &(String, Place)) -> Option<Number> {
        if self.value_type == ValueType::Length {
            length(text, place, self.unit, self.findings)
        } else {
            number(text, place, self.findings)
        }
    }

    /// A step that is written, `none` for no step; the outer `None` means that a finding says why.
    #[expect(clippy::option_option, reason = "no step and an unreadable one are different")]
    fn step(self, written: Option<&(String, Place)>) -> Option<Option<Number>> {
        let Some(written) = written.filter(|(text, _)| text != "none") else {
            return Some(None);
        };
        let step = self.number(written)?;
        if step.is_positive() {
            return Some(Some(step));
        }
        let (text, place) = written;
        self.findings.push(
            Finding::error("WRONG_VALUE", format!("the step `{text}` is not above zero"))
                .at(place.clone())
                .with_help("write \"none\" for no step"),
        );
        None
    }

    /// Both ends; `None` means that a finding says why.
    fn bounds(self, written: &RawBounds) -> Option<Bounds> {
        let end = |end: &Option<(String, Place)>| match end {
            Some(written) => self.number(written).map(Some),
            None => Some(None),
        };
        let (least, most) = (end(&written.least), end(&written.most));
        let bounds = Bounds {
            least: least?,
            most: most?,
        };
        let (Some(least), Some(most)) = (&bounds.least, &bounds.most) else {
            return Some(bounds);
        };
        if least <= most {
            return Some(bounds);
        }
        let of = |end: &Option<(String, Place)>| {
            end.clone()
                .map_or((String::new(), None), |(text, place)| (text, Some(place)))
        };
        let ((least, least_place), (most, most_place)) = (of(&written.least), of(&written.most));
        let message = format!("the least that is taken, `{least}`, is above the most, `{most}`");
        let mut finding = Finding::error("WRONG_VALUE", message).at_if_known(most_place);
        if let Some(place) = least_place {
            finding = finding.with_related(place, "the least".to_owned());
        }
        self.findings
            .push(finding.with_help("write the smaller number as `least`, or leave one of the two out"));
        None
    }
}

/// The measures; `None` means that findings say why.
pub(super) fn measures(
    declared: &Declared,
    header: &RawHeader,
    findings: &Findings,
) -> Option<Indexed<MeasureIndex, Measure>> {
    let by = |value_type| By {
        value_type,
        unit: header.length_unit,
        findings,
    };
    let of_catalog = by(ValueType::Length).step(header.step.as_ref());
    let measure = |raw: &RawMeasureKind| {
        let by = by(raw.value_type);
        let bounds = by.bounds(&raw.bounds);
        let step = match (&raw.step, raw.value_type) {
            (None, ValueType::Length) => of_catalog.clone()?,
            (written, _) => by.step(written.as_ref())?,
        };
        Some(Measure {
            id: raw.head.id.clone(),
            label: raw.label.clone(),
            value_type: raw.value_type,
            step,
            bounds: bounds?,
            taken_as: raw.taken_as,
        })
    };
    // All are read, so that each one's findings are made.
    let read: Vec<Option<Measure>> = declared.measures.iter().map(measure).collect();
    read.into_iter().collect()
}

/// The site facts; `None` means that findings say why.
pub(super) fn facts(
    declared: &Declared,
    header: &RawHeader,
    findings: &Findings,
) -> Option<Indexed<FactIndex, SiteFact>> {
    let fact = |raw: &RawSiteFact| {
        let by = By {
            value_type: raw.value_type,
            unit: header.length_unit,
            findings,
        };
        let (bounds, step) = (by.bounds(&raw.bounds), by.step(raw.step.as_ref()));
        Some(SiteFact {
            id: raw.head.id.clone(),
            label: raw.label.clone(),
            value_type: raw.value_type,
            options: raw.options.clone(),
            of: raw.of,
            bounds: bounds?,
            step: step?,
            taken_as: raw.taken_as,
        })
    };
    let read: Vec<Option<SiteFact>> = declared.facts.iter().map(fact).collect();
    read.into_iter().collect()
}
