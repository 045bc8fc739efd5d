//! Facts that no opening has, refused before anything is asked of it.

use astragal_exact::{AreaUnit, LengthUnit, Number, format_area, format_length};

use super::{Opening, excuse};
use crate::fact::Fact;
use crate::facts_error::{Contradiction, FactsError};
use crate::input::{self, InputError};
use crate::interval::Interval;

/// Refuses facts that no opening has.
pub(super) fn facts(opening: &Opening) -> Result<(), FactsError> {
    let sizes = [
        (Fact::ClearWidth, &opening.clear_width),
        (Fact::ClearHeight, &opening.clear_height),
    ];
    for (fact, size) in sizes {
        if let Some(size) = size {
            clear_size(fact, size)?;
        }
    }
    let well = &opening.well;
    let lengths = [
        (Fact::BottomOfClearOpening, &opening.bottom),
        (Fact::WellProjection, &well.projection),
        (Fact::WellWidth, &well.width),
        (Fact::WellDepth, &well.depth),
    ];
    for (fact, length) in lengths {
        if let Some(length) = length {
            input::distance(fact, length)?;
        }
    }
    let heights = [
        (Fact::SillAboveGrade, &opening.sill_above_grade),
        (Fact::HeightAboveGrade, &opening.reach.height_above_grade),
    ];
    for (fact, height) in heights {
        if let Some(height) = height {
            input::height_either_way(fact, height)?;
        }
    }
    excuse::refuse(opening)?;
    well_area(opening)
}

fn clear_size(fact: Fact, size: &Interval) -> Result<(), InputError> {
    if !size.low().is_negative() && *size.high() <= Number::from(input::SIZE_MOST) {
        return Ok(());
    }
    let outside = if size.low().is_negative() {
        size.low()
    } else {
        size.high()
    };
    Err(InputError {
        fact,
        found: format_length(outside, LengthUnit::Inch),
        expected: "a length of 0 or more, at most 50 ft".to_owned(),
    })
}

fn well_area(opening: &Opening) -> Result<(), FactsError> {
    let well = &opening.well;
    let Some(area) = &well.area else {
        return Ok(());
    };
    let shown = |area: &Number| format_area(area, AreaUnit::SquareFoot);
    if area.is_negative() {
        return Err(FactsError::Input(InputError {
            fact: Fact::WellArea,
            found: shown(area),
            expected: "an area of 0 or more".to_owned(),
        }));
    }
    let Some((projection, width)) = well.projection.as_ref().zip(well.width.as_ref()) else {
        return Ok(());
    };
    let most = projection * width;
    if *area <= most {
        return Ok(());
    }
    Err(FactsError::Contradiction(Contradiction {
        one: (Fact::WellArea, shown(area)),
        other: (
            Fact::WellProjection,
            format!(
                "{} by {}",
                format_length(projection, LengthUnit::Inch),
                format_length(width, LengthUnit::Inch)
            ),
        ),
        expected: "an area of at most projection times width",
    }))
}
