//! Shows values as a person reads them, by what they are values of.
//!
//! Lengths are shown in the catalog's unit, areas in square feet or square metres. What is shown is exact or visibly
//! cut with an ellipsis; nothing is rounded for showing, since 5.694 square feet is not 5.7.

use crate::catalog::Catalog;
use crate::evaluate::Environment;
use crate::expression::{Expression, Subject};
use crate::id::Id;
use crate::template::Piece;
use crate::value::{Outcome, UndefinedCause, Value, ValueType, Want};
use astragal_exact::Number;
use astragal_exact::measure_text::{AreaUnit, LengthUnit, format_area, format_length};

/// How many decimals of a number that does not end are shown.
const DECIMALS_SHOWN: u32 = 4;

impl Catalog {
    /// A known value of a subject as a person reads it: the label of an option, a length in the catalog's unit.
    #[must_use]
    pub fn show(&self, subject: Subject, value: &Value) -> String {
        match value {
            Value::Bool(true) => "yes".to_owned(),
            Value::Bool(false) => "no".to_owned(),
            Value::Date(date) => date.to_string(),
            Value::NotAsked => "not asked".to_owned(),
            Value::Option(option) => self.option_label(subject, option),
            Value::Length(number) => self.show_magnitude(ValueType::Length, number),
            Value::Area(number) => self.show_magnitude(ValueType::Area, number),
            Value::Number(number) => {
                let shown = self.show_magnitude(ValueType::Number, number);
                match self.unit_of(subject) {
                    Some(unit) => format!("{shown} {unit}"),
                    None => shown,
                }
            }
        }
    }

    /// What a subject is as a person reads it: `not known` and `no value` included.
    #[must_use]
    pub fn show_outcome(&self, subject: Subject, outcome: &Outcome) -> String {
        match outcome {
            Outcome::Known(value) => self.show(subject, value),
            Outcome::Unknown(_) => "not known".to_owned(),
            Outcome::Undefined(_) => "no value".to_owned(),
        }
    }

    /// A bare number of this type, in the catalog's units.
    #[must_use]
    pub fn show_magnitude(&self, value_type: ValueType, number: &Number) -> String {
        let unit = self.declarations().length_unit;
        match value_type {
            ValueType::Length => format_length(number, unit),
            ValueType::Area if matches!(unit, LengthUnit::Inch | LengthUnit::Foot) => {
                format_area(number, AreaUnit::SquareFoot)
            }
            ValueType::Area => format_area(number, AreaUnit::SquareMetre),
            _ => {
                let (shown, exact) = number.to_decimal_truncated(DECIMALS_SHOWN);
                if exact { shown } else { format!("{shown}…") }
            }
        }
    }

    /// What is wanted, as a person reads it.
    #[must_use]
    pub fn show_want(&self, want: &Want) -> String {
        match want {
            Want::Measure(index) => self.label_of(Subject::Measure(*index)),
            Want::DeductedBy(index) => self.label_of(Subject::DeductedBy(*index)),
            Want::Fact(index) => self.label_of(Subject::Fact(*index)),
            Want::Choice(index) => self.label_of(Subject::Attribute(*index)),
            Want::SignOff(index) => format!(
                "the plant's sign-off on {}",
                self.declarations().items.at(*index).label
            ),
        }
    }

    /// Why something has no value, as a person reads it.
    #[must_use]
    pub fn show_cause(&self, cause: &UndefinedCause) -> String {
        match cause {
            UndefinedCause::NoRow(figure) => {
                format!(
                    "the table of {} has no row for this unit",
                    self.label_of(Subject::Figure(*figure))
                )
            }
            UndefinedCause::NotAsked(attribute) => {
                format!("{} is not asked", self.label_of(Subject::Attribute(*attribute)))
            }
            UndefinedCause::NoProperty(attribute, property) => {
                format!(
                    "the option of {} has no `{property}`",
                    self.label_of(Subject::Attribute(*attribute))
                )
            }
            UndefinedCause::NotCovered(function) => {
                format!("{} is not covered for these values", function.subject())
            }
            UndefinedCause::TooLarge => "a number grows too large".to_owned(),
            UndefinedCause::IllTyped => "types do not fit".to_owned(),
        }
    }

    fn unit_of(&self, subject: Subject) -> Option<&str> {
        match subject {
            Subject::Figure(index) => self.declarations().figures.at(index).unit.as_deref(),
            _ => None,
        }
    }

    fn option_label(&self, subject: Subject, option: &Id) -> String {
        let declarations = self.declarations();
        let label = match subject {
            Subject::Attribute(index) => declarations
                .attributes
                .at(index)
                .option(option)
                .map(|entry| entry.label.as_str()),
            Subject::Fact(index) => {
                let options = &declarations.facts.at(index).options;
                options
                    .iter()
                    .find(|(id, _)| id == option)
                    .map(|(_, label)| label.as_str())
            }
            _ => None,
        };
        label.unwrap_or(option.as_str()).to_owned()
    }
}

impl Environment<'_> {
    /// What a piece of a template reads as, for this unit.
    pub(crate) fn show_piece(&self, piece: &Piece) -> String {
        match piece {
            Piece::Text(text) => text.clone(),
            Piece::Value(subject) => self.catalog.show_outcome(*subject, &self.read(*subject)),
            Piece::Property(attribute, property) => {
                let expression = Expression::Property(*attribute, property.clone());
                self.catalog
                    .show_outcome(Subject::Attribute(*attribute), &self.evaluate(&expression))
            }
        }
    }
}
