//! Refuses units that cannot be: no size, shares that no sash has, cosine and sine of no angle.
//!
//! Cosine 4/5 with sine 4/5 is refused; 4/5 with 3/5 is taken, since their squares add up to 1.

use astragal_exact::{LengthUnit, Number, format_length};

use super::{EscapeRating, Losses, Operation, StoppedSash};
use crate::fact::Fact;
use crate::facts_error::{Contradiction, FactsError};
use crate::input::{self, InputError};
use crate::interval::Interval;
use crate::refusal::{self, shown};

pub(super) fn unit(
    width: &Number,
    height: &Number,
    losses: &Losses,
    operation: &Operation,
) -> Result<(), FactsError> {
    input::size(Fact::UnitWidth, width)?;
    input::size(Fact::UnitHeight, height)?;
    taken_away(Fact::WidthLoss, &losses.width)?;
    taken_away(Fact::HeightLoss, &losses.height)?;
    match operation {
        Operation::Hung { sash_share } => {
            let taken = sash_share.is_positive() && *sash_share < Number::ONE;
            share(
                Fact::SashShare,
                sash_share,
                taken,
                "a share between 0 and 1, without them",
            )
        }
        Operation::Slider { vent_fraction } => {
            let taken = vent_fraction.is_positive() && vent_fraction + vent_fraction <= Number::ONE;
            share(
                Fact::VentFraction,
                vent_fraction,
                taken,
                "a share above 0 and at most 1/2",
            )
        }
        Operation::Casement { hinge_intrusion } => taken_away(Fact::HingeIntrusion, hinge_intrusion),
        Operation::StoppedCasement(sash) => stopped(width, sash),
        Operation::Projecting {
            escape_rating: Some(rating),
        } => stated(width, height, rating),
        Operation::Projecting { escape_rating: None } | Operation::Fixed => Ok(()),
    }
}

fn stopped(width: &Number, sash: &StoppedSash) -> Result<(), FactsError> {
    input::size(Fact::SashWidth, &sash.width)?;
    taken_away(Fact::SashThickness, &sash.thickness)?;
    taken_away(Fact::HingeOffset, &sash.hinge_offset)?;
    for part in [&sash.cosine, &sash.sine] {
        let taken = !part.low().is_negative() && *part.high() <= Number::ONE;
        if !taken {
            return Err(refused(
                Fact::OpeningAngle,
                shown(&part.to_string()),
                "a cosine and a sine from 0 to 1",
            ));
        }
    }
    within(Fact::SashWidth, &sash.width, Fact::UnitWidth, width)?;
    let square = |part: &Interval| part.times(part);
    if square(&sash.cosine)
        .plus(&square(&sash.sine))
        .contains(&Number::ONE)
    {
        return Ok(());
    }
    Err(FactsError::Contradiction(Contradiction {
        one: (Fact::OpeningAngle, shown(&format!("cosine {}", sash.cosine))),
        other: (Fact::OpeningAngle, shown(&format!("sine {}", sash.sine))),
        expected: "squares that add up to 1, or intervals that have such in them",
    }))
}

fn stated(width: &Number, height: &Number, rating: &EscapeRating) -> Result<(), FactsError> {
    input::size(Fact::EscapeRating, &rating.width)?;
    input::size(Fact::EscapeRating, &rating.height)?;
    within(Fact::EscapeRating, &rating.width, Fact::UnitWidth, width)?;
    within(Fact::EscapeRating, &rating.height, Fact::UnitHeight, height)
}

/// Refuses a part that is larger than the unit it is part of.
fn within(part: Fact, length: &Number, of: Fact, whole: &Number) -> Result<(), FactsError> {
    if length <= whole {
        return Ok(());
    }
    Err(FactsError::Contradiction(Contradiction {
        one: (part, format_length(length, LengthUnit::Inch)),
        other: (of, format_length(whole, LengthUnit::Inch)),
        expected: "a part that is no larger than the unit",
    }))
}

fn taken_away(fact: Fact, inches: &Number) -> Result<(), FactsError> {
    if !inches.is_negative() && *inches <= Number::from(input::SIZE_MOST) {
        return Ok(());
    }
    let found = format_length(inches, LengthUnit::Inch);
    Err(refused(fact, found, "a length of 0 or more, at most 50 ft"))
}

fn share(fact: Fact, found: &Number, taken: bool, expected: &str) -> Result<(), FactsError> {
    if taken {
        return Ok(());
    }
    Err(FactsError::Input(refusal::refused(fact, found, expected)))
}

fn refused(fact: Fact, found: String, expected: &str) -> FactsError {
    FactsError::Input(InputError {
        fact,
        found,
        expected: expected.to_owned(),
    })
}
