//! Structure: classes, test pressures, tested size, wind, the grade to look for. Each row names where its answer is known from.

#![expect(clippy::panic, reason = "these are tests")]

mod grades;
mod look_for;
mod tested_size;
mod wind;
mod wind_digits;

use astragal_exact::Number;
use astragal_trade::structure::{Exposure, ExposureReading, Grade, WindSite, WindStandard};

fn number(text: &str) -> Number {
    Number::from_decimal(text).unwrap_or_else(|| panic!("{text}"))
}

fn grade(psf: i64) -> Grade {
    Grade::new(&Number::from(psf)).unwrap_or_else(|error| panic!("{error}"))
}

/// A site by speed, exposure and roof height in feet, with everything else as the residential code's table has it.
fn site(speed: &str, exposure: Exposure, roof_height_feet: &str) -> WindSite {
    WindSite {
        standard: WindStandard::Asce7In2016,
        reading: ExposureReading::Printed,
        speed: Some(number(speed)),
        exposure: Some(exposure),
        roof_height: Some(number(roof_height_feet) * Number::from(12)),
        roof_slope: None,
        topographic_factor: None,
    }
}
