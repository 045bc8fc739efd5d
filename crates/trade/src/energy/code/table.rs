//! The cells of the tables, each with how it was seen.
//!
//! Zone 4 except marine of IECC 2021: U 0.30 second hand, skylight U 0.55 and SHGC 0.40 from memory.

use super::{CodeZone, EnergyCode, Limit, Maximum, Quantity};
use crate::Status;
use crate::constant::over;

/// Returns the cell of a table; `NotEncoded` where the table or this list has none.
pub(super) fn cell(code: EnergyCode, zone: CodeZone, quantity: Quantity) -> Maximum {
    let rows = match code {
        EnergyCode::Iecc2021 => IECC_2021.as_slice(),
        EnergyCode::Iecc2024 => IECC_2024.as_slice(),
        EnergyCode::AdoptedCity2018 => ADOPTED_CITY_2018.as_slice(),
    };
    let row = rows.iter().find(|row| row.zones.contains(&zone));
    let cell = row.map(|row| match quantity {
        Quantity::UFactor => row.u_factor,
        Quantity::SkylightUFactor => row.skylight,
        Quantity::SolarHeatGain => row.solar_heat_gain,
    });
    match cell.unwrap_or(Cell::NotEncoded) {
        Cell::NotEncoded => Maximum::NotEncoded,
        Cell::None(status) => Maximum::NoRequirement(code.basis(status)),
        Cell::Most(hundredths, status) => Maximum::AtMost(Limit {
            value: over::<100>(hundredths),
            basis: code.basis(status),
            allowance: None,
        }),
        Cell::Eased(hundredths, eased, status) => Maximum::AtMost(Limit {
            value: over::<100>(hundredths),
            basis: code.basis(status),
            allowance: Some((over::<100>(eased), code.basis(status))),
        }),
    }
}

struct Row {
    zones: &'static [CodeZone],
    u_factor: Cell,
    skylight: Cell,
    solar_heat_gain: Cell,
}

/// Values are in hundredths.
#[derive(Clone, Copy)]
enum Cell {
    NotEncoded,
    None(Status),
    Most(i64, Status),
    /// The maximum, and the one above 4,000 ft or in a windborne-debris region.
    Eased(i64, i64, Status),
}

use Cell::{Eased, Most, NotEncoded};
use CodeZone::{Marine4, Zone0, Zone1, Zone2, Zone3, Zone4, Zone5, Zone6, Zone7, Zone8};
use Status::{FromMemory, SecondHand, Verified};

/// U-factors of zones 3 to 8 by a trade association and a national laboratory's quotation; zone 2 by a public repository that
/// cites the table; the solar heat gain of zone 5 and marine 4 by trade press. That of zone 0 is left
/// out: sources disagree.
const IECC_2021: [Row; 7] = [
    row(&[Zone0], Most(50, FromMemory), Most(75, FromMemory), NotEncoded),
    row(
        &[Zone1],
        Most(50, FromMemory),
        Most(75, FromMemory),
        Most(25, FromMemory),
    ),
    row(
        &[Zone2],
        Most(40, SecondHand),
        Most(65, SecondHand),
        Most(25, SecondHand),
    ),
    row(
        &[Zone3],
        Most(30, SecondHand),
        Most(55, FromMemory),
        Most(25, SecondHand),
    ),
    row(
        &[Zone4],
        Most(30, SecondHand),
        Most(55, FromMemory),
        Most(40, FromMemory),
    ),
    row(
        &[Zone5, Marine4],
        Eased(30, 32, SecondHand),
        Most(55, FromMemory),
        Most(40, SecondHand),
    ),
    row(
        &[Zone6, Zone7, Zone8],
        Eased(30, 32, SecondHand),
        Most(55, FromMemory),
        Cell::None(FromMemory),
    ),
];

/// U-factors only; the rest was not seen.
const IECC_2024: [Row; 3] = [
    row(&[Zone3, Zone4], Most(30, SecondHand), NotEncoded, NotEncoded),
    row(
        &[Zone5, Marine4, Zone6],
        Eased(28, 30, SecondHand),
        NotEncoded,
        NotEncoded,
    ),
    row(&[Zone7, Zone8], Most(27, SecondHand), NotEncoded, NotEncoded),
];

/// The whole table, read in the ordinance.
const ADOPTED_CITY_2018: [Row; 5] = [
    row(
        &[Zone1],
        Cell::None(Verified),
        Most(75, Verified),
        Most(25, Verified),
    ),
    row(
        &[Zone2],
        Most(40, Verified),
        Most(65, Verified),
        Most(25, Verified),
    ),
    row(
        &[Zone3],
        Most(35, Verified),
        Most(55, Verified),
        Most(25, Verified),
    ),
    row(
        &[Zone4],
        Most(32, Verified),
        Most(55, Verified),
        Most(40, Verified),
    ),
    row(
        &[Zone5, Marine4, Zone6, Zone7, Zone8],
        Most(30, Verified),
        Most(55, Verified),
        Cell::None(Verified),
    ),
];

const fn row(zones: &'static [CodeZone], u_factor: Cell, skylight: Cell, solar_heat_gain: Cell) -> Row {
    Row {
        zones,
        u_factor,
        skylight,
        solar_heat_gain,
    }
}
