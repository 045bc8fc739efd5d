//! Structure: performance class and grade, what they were tested to, the wind on a window and the grade to look for.
//!
//! A 36 x 60 in window at a corner, 130 mph, suburban ground, 30 ft: 17.7 psf inwards, 23.4 psf outwards, so that a grade of
//! PG25 is the one to look for. In open country it is PG35, at the coast PG40.
//!
//! Always holds: no float; where nature is irrational (a height to the power of 2/7, a logarithm of an area) a pressure is an
//! interval that is rounded outwards, and a grade that lies inside it cannot be decided. A grade is that of the size tested:
//! a unit wider **or** taller is not qualified by it, and one unit's grade says nothing of an assembly it is joined into.
//!
//! Not covered here: buildings above 60 ft, partially enclosed ones, impact and windborne-debris glazing, the strength of the
//! glass itself, the table of gateway sizes. A licensed person decides.

mod air;
mod bounds;
mod class;
mod designation;
mod exposure;
mod gateway;
mod logarithm;
mod look_for;
mod power;
mod pressure;
mod tested_size;
mod wind;

pub use air::{
    AIR_BASIS, AIR_TEST_BASIS, AIR_TEST_METHOD, air_leakage_compares, air_leakage_most,
    air_leakage_most_litres_printed,
};
pub use class::{
    Class, GRADE_BASIS, GRADE_LEAST, GRADE_MOST, GRADE_STEP, Grade, MINIMUM_BASIS, PRESSURE_IS_NO_GRADE,
    PRESSURE_IS_NO_GRADE_BASIS,
};
pub use designation::{DESIGNATION_BASIS, designation};
pub use exposure::{Exposure, ExposureReading, WindStandard, exposure_coefficient, height_basis};
pub use gateway::{GATEWAY_BASIS, is_gateway_size};
pub use logarithm::area_share;
pub use look_for::{GradeAnswer, grade_to_look_for, needed_pressure};
pub use pressure::{
    Market, Product, TEST_BASIS, structural_test, water_minimum_earlier, water_minimum_printed,
    water_spray_rate, water_test,
};
pub use tested_size::{SIZE_BASIS, size_is_qualified};

pub use crate::measuring::Size;
pub use wind::{
    Assumption, NetPressures, PRESSURE_BASIS, SPEED_LEAST, SPEED_MOST, WindAnswer, WindSite, net_pressures,
};
