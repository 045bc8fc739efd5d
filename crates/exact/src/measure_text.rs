//! Lengths and areas as people write them: read exactly, shown exactly or visibly cut.
//!
//! `35 5/8`, `35-5/8"`, `35.625 in`, `2'-11 5/8"` and `904.875 mm` are one length, held as the number 285/8 of
//! inches. Areas are held as square inches.
//!
//! Invariant: reading and showing never round. What is shown without an ellipsis reads back as the same number.
//! Cost: linear in the text, which is at most 200 characters; nothing recurses.
//!
//! Source: 1 in = 25.4 mm by definition (international inch, 1959); unit codes from the Unified Code for Units
//! of Measure (UCUM), from memory.

mod error;
mod fault;
mod reading;
mod writing;

pub use error::{LengthTextError, LengthTextErrorKind};
pub use reading::{parse_area, parse_length};
pub use writing::{format_area, format_length};

use crate::number::Number;

/// A unit of length.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LengthUnit {
    /// 25.4 mm.
    Inch,
    /// 12 in.
    Foot,
    /// A thousandth of a metre.
    Millimetre,
    /// A hundredth of a metre.
    Centimetre,
    /// The metre.
    Metre,
}

/// A unit of area: the square of a unit of length.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum AreaUnit {
    /// 1 in by 1 in.
    SquareInch,
    /// 12 in by 12 in.
    SquareFoot,
    /// 1 mm by 1 mm.
    SquareMillimetre,
    /// 1 cm by 1 cm.
    SquareCentimetre,
    /// 1 m by 1 m.
    SquareMetre,
}

impl LengthUnit {
    /// Every unit of length, in the order in which messages list them.
    pub const ALL: [LengthUnit; 5] = [
        LengthUnit::Inch,
        LengthUnit::Foot,
        LengthUnit::Millimetre,
        LengthUnit::Centimetre,
        LengthUnit::Metre,
    ];

    /// Returns the symbol that files and answers use.
    pub fn symbol(self) -> &'static str {
        match self {
            LengthUnit::Inch => "in",
            LengthUnit::Foot => "ft",
            LengthUnit::Millimetre => "mm",
            LengthUnit::Centimetre => "cm",
            LengthUnit::Metre => "m",
        }
    }

    /// Returns the unit with exactly this symbol; `None` for any other text, capitals included.
    pub fn from_symbol(symbol: &str) -> Option<LengthUnit> {
        LengthUnit::ALL.into_iter().find(|unit| unit.symbol() == symbol)
    }

    /// Returns the code of the Unified Code for Units of Measure.
    pub fn ucum(self) -> &'static str {
        match self {
            LengthUnit::Inch => "[in_i]",
            LengthUnit::Foot => "[ft_i]",
            LengthUnit::Millimetre => "mm",
            LengthUnit::Centimetre => "cm",
            LengthUnit::Metre => "m",
        }
    }

    /// Returns how many inches one of this unit is, exactly: 5/127 for a millimetre.
    pub fn in_inches(self) -> Number {
        let (inches, of) = match self {
            LengthUnit::Inch => (1, 1),
            LengthUnit::Foot => (12, 1),
            LengthUnit::Millimetre => (5, 127),
            LengthUnit::Centimetre => (50, 127),
            LengthUnit::Metre => (5000, 127),
        };
        Number::ratio(inches, of).unwrap_or_default()
    }
}

impl AreaUnit {
    /// Every unit of area, in the order in which messages list them.
    pub const ALL: [AreaUnit; 5] = [
        AreaUnit::SquareInch,
        AreaUnit::SquareFoot,
        AreaUnit::SquareMillimetre,
        AreaUnit::SquareCentimetre,
        AreaUnit::SquareMetre,
    ];

    /// Returns the unit of length that this is the square of.
    pub fn side(self) -> LengthUnit {
        match self {
            AreaUnit::SquareInch => LengthUnit::Inch,
            AreaUnit::SquareFoot => LengthUnit::Foot,
            AreaUnit::SquareMillimetre => LengthUnit::Millimetre,
            AreaUnit::SquareCentimetre => LengthUnit::Centimetre,
            AreaUnit::SquareMetre => LengthUnit::Metre,
        }
    }

    /// Returns the symbol that answers use.
    pub fn symbol(self) -> &'static str {
        match self {
            AreaUnit::SquareInch => "sq in",
            AreaUnit::SquareFoot => "sq ft",
            AreaUnit::SquareMillimetre => "mm2",
            AreaUnit::SquareCentimetre => "cm2",
            AreaUnit::SquareMetre => "m2",
        }
    }

    /// Returns the code of the Unified Code for Units of Measure.
    pub fn ucum(self) -> &'static str {
        match self {
            AreaUnit::SquareInch => "[sin_i]",
            AreaUnit::SquareFoot => "[sft_i]",
            AreaUnit::SquareMillimetre => "mm2",
            AreaUnit::SquareCentimetre => "cm2",
            AreaUnit::SquareMetre => "m2",
        }
    }

    /// Returns how many square inches one of this unit is, exactly.
    pub fn in_square_inches(self) -> Number {
        self.side().in_inches() * self.side().in_inches()
    }
}

#[cfg(test)]
mod tests;
