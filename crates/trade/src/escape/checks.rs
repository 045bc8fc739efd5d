//! Compares one opening with what an edition asks.
//!
//! The sizes, the device, what NFPA 101 asks beside them and the well; the verdict is drawn from all of them.

use std::collections::BTreeSet;

use astragal_exact::Number;

use super::requirement::{Finding, at_least, fewest, finding, lacking};
use super::values::{GRADE_FLOOR_MOST, Limit, Values, values};
use super::{Amount, Answer, Excuse, Opening, Remark, Requirement, Shortfall, Verdict, excuse, well};
use crate::basis::Basis;
use crate::building_code::Edition;
use crate::control_device::Device;
use crate::fact::Fact;
use crate::interval::Interval;
use crate::truth::{Missing, Truth};

/// The answer about an opening whose facts can be.
pub(super) fn answer(edition: Edition, opening: &Opening) -> Answer {
    let values = values(edition);
    let mut remarks = BTreeSet::new();
    let mut findings = sizes(opening, &values, &mut remarks);
    findings.push(lacking(
        Requirement::WithoutKeys,
        Truth::fact(Fact::OpensWithoutKeys, opening.opens_without_keys),
        values.without_keys,
    ));
    findings.push(device(opening, &values, &mut remarks));
    findings.extend(reach(opening, &values));
    findings.extend(below_ground(opening, &values, &mut remarks));
    concluded(edition, opening, &values, findings, remarks)
}

fn sizes(opening: &Opening, values: &Values, remarks: &mut BTreeSet<Remark>) -> Vec<Finding> {
    let bottom = opening.bottom.as_ref();
    let low_enough = Truth::at_most(Fact::BottomOfClearOpening, bottom, &values.bottom.value);
    let too_high = bottom.map(|bottom| Amount {
        found: bottom.clone().into(),
        limit: values.bottom.value.clone(),
        by: (bottom - &values.bottom.value).into(),
    });
    vec![
        area(opening, values, remarks),
        fewest(
            Requirement::Width,
            Fact::ClearWidth,
            opening.clear_width.clone(),
            &values.width.value,
            values.width.basis,
        ),
        fewest(
            Requirement::Height,
            Fact::ClearHeight,
            opening.clear_height.clone(),
            &values.height.value,
            values.height.basis,
        ),
        finding(Requirement::Bottom, low_enough, too_high, values.bottom.basis),
    ]
}

/// The area, against the limit that the ground outside allows.
fn area(opening: &Opening, values: &Values, remarks: &mut BTreeSet<Remark>) -> Finding {
    let (width, height) = (opening.clear_width.as_ref(), opening.clear_height.as_ref());
    let parts = [(Fact::ClearWidth, width), (Fact::ClearHeight, height)];
    let area = width.zip(height).map(|(width, height)| width.times(height));
    let full = at_least(&parts, area.as_ref(), &values.area.value);
    let Some(small) = values.area_grade_floor.as_ref() else {
        return area_finding(full, area, &values.area);
    };
    if full == Truth::Yes {
        return area_finding(full, area, &values.area);
    }
    let (allowed, remark, basis) = smaller_area_counts(opening, values, small);
    let reached = at_least(&parts, area.as_ref(), &small.value);
    let truth = Truth::any([full, Truth::all([allowed.clone(), reached])]);
    if truth == Truth::Yes {
        remarks.insert(remark);
    }
    if allowed == Truth::No {
        return area_finding(truth, area, &values.area);
    }
    let limit = Limit {
        value: small.value.clone(),
        basis,
    };
    area_finding(truth, area, &limit)
}

fn area_finding(truth: Truth, area: Option<Interval>, limit: &Limit) -> Finding {
    let amount = area.map(|area| Amount {
        by: Interval::exact(limit.value.clone()).minus(&area),
        limit: limit.value.clone(),
        found: area,
    });
    finding(Requirement::Area, truth, amount, limit.basis)
}

/// Whether the smaller area counts: near the ground, or below it where the edition says so.
fn smaller_area_counts(opening: &Opening, values: &Values, small: &Limit) -> (Truth, Remark, Basis) {
    let sill = opening.sill_above_grade.as_ref();
    let near = Truth::of(Fact::SillAboveGrade, sill, |sill| {
        sill.abs() <= Number::from(GRADE_FLOOR_MOST)
    });
    let below = Truth::of(Fact::SillAboveGrade, sill, Number::is_negative);
    match (near, values.below_grade) {
        (Truth::No, Some(basis)) => (below, Remark::BelowGrade, basis),
        (near, _) => (near, Remark::GradeFloor, small.basis),
    }
}

fn device(opening: &Opening, values: &Values, remarks: &mut BTreeSet<Remark>) -> Finding {
    let truth = match opening.device {
        None => Truth::Unknown(Missing::from([Fact::ControlDevice])),
        Some(Device::Nothing) => Truth::Yes,
        Some(Device::FixedStop) => Truth::No,
        Some(Device::VentLatch) => {
            remarks.insert(Remark::VentLatch);
            Truth::Yes
        }
        Some(Device::ReleasableControl) => {
            remarks.insert(Remark::AfterRelease);
            Truth::Yes
        }
        Some(Device::FallPrevention { releases }) => {
            remarks.insert(Remark::AfterRelease);
            Truth::fact(Fact::DeviceReleases, releases)
        }
    };
    lacking(Requirement::Device, truth, values.devices)
}

/// What NFPA 101 asks beside the sizes; nothing for the others.
fn reach(opening: &Opening, values: &Values) -> Option<Finding> {
    let limit = values.reach.as_ref()?;
    let reach = &opening.reach;
    let truth = Truth::any([
        Truth::at_most(
            Fact::HeightAboveGrade,
            reach.height_above_grade.as_ref(),
            &limit.value,
        ),
        Truth::fact(Fact::RescueAccess, reach.rescue_access),
        Truth::fact(Fact::BalconyOutside, reach.onto_balcony),
    ]);
    Some(lacking(Requirement::Reach, truth, limit.basis))
}

/// The window well, unless the sill is known not to lie below the ground.
fn below_ground(opening: &Opening, values: &Values, remarks: &mut BTreeSet<Remark>) -> Vec<Finding> {
    let sill = opening.sill_above_grade.as_ref();
    if sill.is_some_and(|sill| !sill.is_negative()) {
        return Vec::new();
    }
    let Some(basis) = values.well else {
        remarks.insert(Remark::WellNotKnown);
        let missing = sill.map_or(Fact::SillAboveGrade, |_| Fact::WordingInForce);
        return vec![Finding::Open(Missing::from([missing]), values.rooms)];
    };
    let findings = well::findings(opening, basis);
    let well_is_enough = findings
        .iter()
        .all(|finding| matches!(finding, Finding::Holds(_)));
    if sill.is_some() || well_is_enough {
        return findings;
    }
    vec![Finding::Open(Missing::from([Fact::SillAboveGrade]), basis)]
}

fn concluded(
    edition: Edition,
    opening: &Opening,
    values: &Values,
    findings: Vec<Finding>,
    remarks: BTreeSet<Remark>,
) -> Answer {
    let (mut shortfalls, mut missing, mut bases) = (Vec::new(), Missing::new(), BTreeSet::new());
    for finding in findings {
        match finding {
            Finding::Holds(basis) => {
                bases.insert(basis);
            }
            Finding::Open(facts, basis) => {
                missing.extend(facts);
                bases.insert(basis);
            }
            Finding::Lacks(shortfall) => {
                bases.insert(shortfall.basis);
                shortfalls.push(shortfall);
            }
        }
    }
    let verdict = verdict(&shortfalls, &missing);
    let excuse = match verdict {
        Verdict::Meets => Excuse::NotAsked,
        Verdict::FallsShort | Verdict::Undecided => excuse::of(opening, values, &shortfalls, &missing),
    };
    Answer {
        name: opening.name.clone(),
        edition,
        verdict,
        shortfalls,
        missing,
        excuse,
        remarks: remarks.into_iter().collect(),
        bases: bases.into_iter().collect(),
    }
}

fn verdict(shortfalls: &[Shortfall], missing: &Missing) -> Verdict {
    match (shortfalls.is_empty(), missing.is_empty()) {
        (false, _) => Verdict::FallsShort,
        (true, false) => Verdict::Undecided,
        (true, true) => Verdict::Meets,
    }
}
