//! The functions of the trade that expressions may call, with the types of their arguments.
//!
//! `pounds_of_glass(thickness, area)` is the published weight of one lite. What each means, from which edition, and what it does
//! not cover, says the crate `astragal-trade`.
//!
//! Always holds: exact, the same for the same values, and nothing where the function does not cover the values: then the
//! call is undefined. A bound that two roundings leave open gives nothing as well.

use astragal_exact::Number;
use astragal_trade::glass::Nominal;
use astragal_trade::measuring::{Size, UnitedInches};
use astragal_trade::structure::{
    Class, Exposure, ExposureReading, Grade, GradeAnswer, Market, Product, WindAnswer, WindSite,
    WindStandard, grade_to_look_for, net_pressures, structural_test, water_minimum_printed, water_test,
};

use crate::value::{Value, ValueType};

/// A function of the trade.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum TradeFunction {
    /// Width and height together, in inches.
    UnitedInchesExact,
    /// Each side up to a whole inch, then together.
    UnitedInchesEachUp,
    /// Together, then up to a whole inch.
    UnitedInchesSumUp,
    /// The weight of one lite in pounds, by its nominal thickness and area.
    PoundsOfGlass,
    /// The pressure of the structural test of a window, by its design pressure or grade, in lb/ft2.
    StructuralTestPressure,
    /// The pressure of the water test of a window of class R, LC or CW in the United States, by its grade, in lb/ft2.
    WaterTestPressure,
    /// The performance grade to look for, by the wind of the place, in lb/ft2.
    WindGrade,
}

/// An argument of a function.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Argument {
    /// What it is called in helps and docs.
    pub name: &'static str,
    /// What it takes.
    pub kind: ArgumentKind,
}

/// What an argument takes.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum ArgumentKind {
    /// A number.
    Number,
    /// A length.
    Length,
    /// An area.
    Area,
    /// A yes or no.
    Bool,
    /// An option with one of these ids.
    OneOf(&'static [&'static str]),
}

impl ArgumentKind {
    /// The type of the values that it takes.
    #[must_use]
    pub fn value_type(self) -> ValueType {
        match self {
            Self::Number => ValueType::Number,
            Self::Length => ValueType::Length,
            Self::Area => ValueType::Area,
            Self::Bool => ValueType::Bool,
            Self::OneOf(_) => ValueType::Option,
        }
    }
}

/// The ids of the exposures that wind is worked out for.
const EXPOSURES: [&str; 3] = ["b", "c", "d"];

const fn argument(name: &'static str, kind: ArgumentKind) -> Argument {
    Argument { name, kind }
}

const SIDES: [Argument; 2] = [
    argument("width", ArgumentKind::Length),
    argument("height", ArgumentKind::Length),
];
const LITE: [Argument; 2] = [
    argument("thickness", ArgumentKind::Length),
    argument("area", ArgumentKind::Area),
];
const PRESSURE: [Argument; 1] = [argument("grade", ArgumentKind::Number)];
const WIND: [Argument; 5] = [
    argument("speed", ArgumentKind::Number),
    argument("exposure", ArgumentKind::OneOf(&EXPOSURES)),
    argument("roof_height", ArgumentKind::Length),
    argument("area", ArgumentKind::Area),
    argument("near_corner", ArgumentKind::Bool),
];

impl TradeFunction {
    /// Every function, in the order of the documentation.
    pub const ALL: [Self; 7] = [
        Self::UnitedInchesExact,
        Self::UnitedInchesEachUp,
        Self::UnitedInchesSumUp,
        Self::PoundsOfGlass,
        Self::StructuralTestPressure,
        Self::WaterTestPressure,
        Self::WindGrade,
    ];

    /// The name that expressions call it by.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::UnitedInchesExact => "united_inches_exact",
            Self::UnitedInchesEachUp => "united_inches_each_up",
            Self::UnitedInchesSumUp => "united_inches_sum_up",
            Self::PoundsOfGlass => "pounds_of_glass",
            Self::StructuralTestPressure => "structural_test_pressure",
            Self::WaterTestPressure => "water_test_pressure",
            Self::WindGrade => "wind_grade",
        }
    }

    /// The function of this name, if there is one.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|function| function.name() == name)
    }

    /// What a person reads before the arguments.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::UnitedInchesExact => "united inches of",
            Self::UnitedInchesEachUp => "united inches, each side up to a whole inch, of",
            Self::UnitedInchesSumUp => "united inches, up to a whole inch, of",
            Self::PoundsOfGlass => "published weight of glass of",
            Self::StructuralTestPressure => "pressure of the structural test at",
            Self::WaterTestPressure => "pressure of the water test at",
            Self::WindGrade => "grade to look for by the wind of",
        }
    }

    /// What it works out, as a person reads it.
    #[must_use]
    pub fn subject(self) -> &'static str {
        match self {
            Self::UnitedInchesExact | Self::UnitedInchesEachUp | Self::UnitedInchesSumUp => "united inches",
            Self::PoundsOfGlass => "the published weight of glass",
            Self::StructuralTestPressure => "the pressure of the structural test",
            Self::WaterTestPressure => "the pressure of the water test",
            Self::WindGrade => "the grade to look for by the wind",
        }
    }

    /// Which published values stand behind it; counted in the revision of a catalog that calls it, and changed with them.
    #[must_use]
    pub(crate) fn values(self) -> &'static str {
        match self {
            Self::UnitedInchesExact | Self::UnitedInchesEachUp | Self::UnitedInchesSumUp => "arithmetic",
            Self::PoundsOfGlass => "trade table of nominal inches, 1",
            Self::StructuralTestPressure | Self::WaterTestPressure => "NAFS, 1",
            Self::WindGrade => "ASCE 7-16, coefficients as printed, 1",
        }
    }

    /// What it takes, in order.
    #[must_use]
    pub fn arguments(self) -> &'static [Argument] {
        match self {
            Self::UnitedInchesExact | Self::UnitedInchesEachUp | Self::UnitedInchesSumUp => &SIDES,
            Self::PoundsOfGlass => &LITE,
            Self::StructuralTestPressure | Self::WaterTestPressure => &PRESSURE,
            Self::WindGrade => &WIND,
        }
    }

    /// The type of what it gives: a number, of all of them today.
    #[must_use]
    pub fn result(self) -> ValueType {
        ValueType::Number
    }

    /// What it gives for known values; `None` where it does not cover them, or they are not of its types.
    #[must_use]
    pub fn apply(self, values: &[&Value]) -> Option<Value> {
        let number = match self {
            Self::UnitedInchesExact => united_inches(UnitedInches::Exact, values),
            Self::UnitedInchesEachUp => united_inches(UnitedInches::EachSideUp, values),
            Self::UnitedInchesSumUp => united_inches(UnitedInches::SumUp, values),
            Self::PoundsOfGlass => pounds_of_glass(values),
            Self::StructuralTestPressure => structural_test(single(values)?, Product::WindowOrDoor).ok(),
            Self::WaterTestPressure => {
                let grade = Grade::new(single(values)?).ok()?;
                water_test(Class::R, grade, Market::UnitedStates, &water_minimum_printed()).ok()
            }
            Self::WindGrade => wind_grade(values),
        };
        number.map(Value::Number)
    }
}

fn single<'a>(values: &[&'a Value]) -> Option<&'a Number> {
    match values {
        [Value::Number(number)] => Some(number),
        _ => None,
    }
}

fn united_inches(rule: UnitedInches, values: &[&Value]) -> Option<Number> {
    let [Value::Length(width), Value::Length(height)] = values else {
        return None;
    };
    rule.of(&Size::new(width.clone(), height.clone())).ok()
}

fn pounds_of_glass(values: &[&Value]) -> Option<Number> {
    let [Value::Length(thickness), Value::Area(area)] = values else {
        return None;
    };
    let nominal = Nominal::ALL
        .iter()
        .find(|nominal| nominal.inches() == *thickness)?;
    if area.is_negative() {
        return None;
    }
    let square_feet = area.checked_div(&Number::from(144))?;
    Some(nominal.weight().pounds * square_feet)
}

/// The exposure coefficient is read as the standards print it; the slope of the roof and hills are not asked.
fn wind_grade(values: &[&Value]) -> Option<Number> {
    let [
        Value::Number(speed),
        Value::Option(exposure),
        Value::Length(roof_height),
        Value::Area(area),
        Value::Bool(near_corner),
    ] = values
    else {
        return None;
    };
    let site = WindSite {
        standard: WindStandard::Asce7In2016,
        reading: ExposureReading::Printed,
        speed: Some(speed.clone()),
        exposure: Some(Exposure::from_text(exposure.as_str()).ok()?),
        roof_height: Some(roof_height.clone()),
        roof_slope: None,
        topographic_factor: None,
    };
    let WindAnswer::Pressures(pressures) = net_pressures(&site, area).ok()? else {
        return None;
    };
    match grade_to_look_for(&pressures, Some(*near_corner)) {
        GradeAnswer::Grade(grade) => Some(grade.pounds_per_square_foot()),
        _ => None,
    }
}
