//! Random expressions of a wanted type over what a rank may read.

use astragal_model::{
    Comparison, Expression, Function, MeasuringUnit, Number, Subject, TradeFunction, Value, ValueType,
};

use crate::chance::Chance;
use crate::generate::shape::{PROPERTIES, Shape};
use crate::generate::values::{giant, inches, number, square_inches, value, word};

/// Makes what a catalog says.
pub(crate) struct Maker<'a> {
    pub(crate) chance: &'a mut Chance,
    pub(crate) shape: &'a Shape,
    pub(crate) depth: usize,
}

const COMPARISONS: [Comparison; 6] = [
    Comparison::Equal,
    Comparison::NotEqual,
    Comparison::Less,
    Comparison::LessOrEqual,
    Comparison::Greater,
    Comparison::GreaterOrEqual,
];

fn boxed(expression: Expression) -> Box<Expression> {
    Box::new(expression)
}

impl Maker<'_> {
    /// An expression of this type and at most this depth, for something of this rank.
    pub(crate) fn expression(&mut self, of: ValueType, depth: usize, rank: usize) -> Expression {
        if depth == 0 || self.chance.percent(15) {
            return self.leaf(of, rank);
        }
        let depth = depth - 1;
        if of != ValueType::Bool && self.chance.percent(12) {
            return self.conditional(of, depth, rank);
        }
        match of {
            ValueType::Bool => self.condition(depth, rank),
            ValueType::Number => self.number(depth, rank),
            ValueType::Length | ValueType::Area => self.dimensioned(of, depth, rank),
            ValueType::Date => self.least_or_greatest(of, depth, rank),
            ValueType::Option => self.leaf(of, rank),
        }
    }

    /// A condition of full depth.
    pub(crate) fn any_condition(&mut self, rank: usize) -> Expression {
        self.expression(ValueType::Bool, self.depth, rank)
    }

    fn several(&mut self, least: usize, of: ValueType, depth: usize, rank: usize) -> Vec<Expression> {
        let count = self.chance.between(least, 3);
        (0..count).map(|_| self.expression(of, depth, rank)).collect()
    }

    fn leaf(&mut self, of: ValueType, rank: usize) -> Expression {
        if self.chance.percent(25) {
            return self.literal(of);
        }
        let attributes = self.shape.attributes_below(rank);
        if of == ValueType::Bool
            && self.chance.percent(25)
            && let Some(attribute) = self.chance.one_of(&attributes)
        {
            return Expression::IsAsked(*attribute);
        }
        if self.chance.percent(20) {
            let named = PROPERTIES.iter().find(|(_, value_type)| *value_type == of);
            if let (Some((property, _)), Some(attribute)) = (named, self.chance.one_of(&attributes)) {
                return Expression::Property(*attribute, (*property).into());
            }
        }
        let subjects: Vec<Subject> = self
            .shape
            .subjects(rank)
            .into_iter()
            .filter_map(|(subject, value_type)| (value_type == of).then_some(subject))
            .collect();
        match self.chance.one_of(&subjects) {
            Some(subject) => Expression::Read(*subject),
            None => self.literal(of),
        }
    }

    fn literal(&mut self, of: ValueType) -> Expression {
        if of == ValueType::Number && self.chance.percent(2) {
            return Expression::Literal(Value::Number(giant(self.chance)));
        }
        Expression::Literal(value(self.chance, of))
    }

    fn condition(&mut self, depth: usize, rank: usize) -> Expression {
        match self.chance.below(10) {
            0 => Expression::Not(boxed(self.expression(ValueType::Bool, depth, rank))),
            1 => Expression::And(self.several(0, ValueType::Bool, depth, rank)),
            2 => Expression::Or(self.several(0, ValueType::Bool, depth, rank)),
            3 => self.conditional(ValueType::Bool, depth, rank),
            4 => self.membership(depth, rank),
            5 | 6 => self.option_comparison(depth, rank),
            7 => {
                let comparison = if self.chance.percent(50) {
                    Comparison::Equal
                } else {
                    Comparison::NotEqual
                };
                let (left, right) = self.two(ValueType::Bool, depth, rank);
                Expression::Compare(comparison, left, right)
            }
            _ => {
                let types = [
                    ValueType::Number,
                    ValueType::Length,
                    ValueType::Area,
                    ValueType::Date,
                ];
                let of = self.chance.one_of(&types).copied().unwrap_or(ValueType::Length);
                let comparison = self
                    .chance
                    .one_of(&COMPARISONS)
                    .copied()
                    .unwrap_or(Comparison::Less);
                let (left, right) = self.two(of, depth, rank);
                Expression::Compare(comparison, left, right)
            }
        }
    }

    fn two(&mut self, of: ValueType, depth: usize, rank: usize) -> (Box<Expression>, Box<Expression>) {
        (
            boxed(self.expression(of, depth, rank)),
            boxed(self.expression(of, depth, rank)),
        )
    }

    fn conditional(&mut self, of: ValueType, depth: usize, rank: usize) -> Expression {
        let condition = self.expression(ValueType::Bool, depth, rank);
        let (then, otherwise) = self.two(of, depth, rank);
        let otherwise = if self.chance.percent(15) {
            then.clone()
        } else {
            otherwise
        };
        Expression::Conditional(boxed(condition), then, otherwise)
    }

    fn option_comparison(&mut self, depth: usize, rank: usize) -> Expression {
        let comparison = if self.chance.percent(60) {
            Comparison::Equal
        } else {
            Comparison::NotEqual
        };
        let (left, right) = (
            self.expression(ValueType::Option, depth, rank),
            self.expression(ValueType::Option, depth, rank),
        );
        let right = match &left {
            Expression::Read(Subject::Attribute(attribute)) if self.chance.percent(60) => {
                let options = self
                    .shape
                    .attributes
                    .get(attribute.0)
                    .map(|attribute| attribute.options.clone());
                let option = self.chance.one_of(&options.unwrap_or_default()).cloned();
                Expression::Literal(Value::Option(option.unwrap_or_else(|| word(self.chance))))
            }
            _ => right,
        };
        Expression::Compare(comparison, boxed(left), boxed(right))
    }

    fn membership(&mut self, depth: usize, rank: usize) -> Expression {
        if self.chance.percent(70) {
            let item = self.expression(ValueType::Option, depth, rank);
            let members = (0..self.chance.between(0, 3)).map(|_| {
                if self.chance.percent(70) {
                    self.literal(ValueType::Option)
                } else {
                    self.expression(ValueType::Option, depth, rank)
                }
            });
            return Expression::In(boxed(item), members.collect());
        }
        let types = [
            ValueType::Number,
            ValueType::Length,
            ValueType::Date,
            ValueType::Bool,
        ];
        let of = self.chance.one_of(&types).copied().unwrap_or(ValueType::Number);
        let item = self.expression(of, depth, rank);
        Expression::In(boxed(item), self.several(0, of, depth, rank))
    }

    fn number(&mut self, depth: usize, rank: usize) -> Expression {
        match self.chance.below(9) {
            0 => Expression::Multiply(
                boxed(Expression::Literal(Value::Number(giant(self.chance)))),
                boxed(Expression::Literal(Value::Number(giant(self.chance)))),
            ),
            1 | 2 => {
                let (left, right) = self.two(ValueType::Number, depth, rank);
                Expression::Multiply(left, right)
            }
            3 => self.in_unit(depth, rank),
            4 => self.of_trade(depth, rank),
            _ => self.arithmetic(ValueType::Number, depth, rank),
        }
    }

    /// A function of the trade; wind is left out, since the oracle has no second reading of it.
    fn of_trade(&mut self, depth: usize, rank: usize) -> Expression {
        let functions: Vec<TradeFunction> = TradeFunction::ALL
            .into_iter()
            .filter(|function| *function != TradeFunction::WindGrade)
            .collect();
        let chosen = self.chance.one_of(&functions).copied();
        let function = chosen.unwrap_or(TradeFunction::UnitedInchesExact);
        let mut arguments = Vec::new();
        for argument in function.arguments() {
            let of = argument.kind.value_type();
            arguments.push(match function {
                // A thickness that is published, more often than not.
                TradeFunction::PoundsOfGlass if of == ValueType::Length && self.chance.percent(75) => {
                    let sizes = [3, 4, 5, 6, 8, 10, 12, 16];
                    let size = self.chance.one_of(&sizes).copied().unwrap_or(4);
                    Expression::Literal(Value::Length(Number::ratio(size, 32).unwrap_or_default()))
                }
                TradeFunction::WaterTestPressure if self.chance.percent(75) => {
                    let fives = i64::try_from(self.chance.below(25)).unwrap_or_default();
                    Expression::Literal(Value::Number(Number::from(5 * fives)))
                }
                _ => self.expression(of, depth, rank),
            });
        }
        Expression::Call(Function::Trade(function), arguments)
    }

    fn in_unit(&mut self, depth: usize, rank: usize) -> Expression {
        let units = [
            (MeasuringUnit::Inch, ValueType::Length),
            (MeasuringUnit::Foot, ValueType::Length),
            (MeasuringUnit::Millimetre, ValueType::Length),
            (MeasuringUnit::Metre, ValueType::Length),
            (MeasuringUnit::SquareInch, ValueType::Area),
            (MeasuringUnit::SquareFoot, ValueType::Area),
            (MeasuringUnit::SquareMetre, ValueType::Area),
        ];
        let (unit, of) = self
            .chance
            .one_of(&units)
            .copied()
            .unwrap_or((MeasuringUnit::Inch, ValueType::Length));
        Expression::Call(Function::InUnit(unit), vec![self.expression(of, depth, rank)])
    }

    fn dimensioned(&mut self, of: ValueType, depth: usize, rank: usize) -> Expression {
        match self.chance.below(6) {
            0 if of == ValueType::Area => {
                let (left, right) = self.two(ValueType::Length, depth, rank);
                Expression::Multiply(left, right)
            }
            0 | 1 => {
                let number = boxed(self.expression(ValueType::Number, depth, rank));
                let other = boxed(self.expression(of, depth, rank));
                if self.chance.percent(50) {
                    Expression::Multiply(number, other)
                } else {
                    Expression::Multiply(other, number)
                }
            }
            _ => self.arithmetic(of, depth, rank),
        }
    }

    /// What goes for numbers, lengths and areas alike.
    fn arithmetic(&mut self, of: ValueType, depth: usize, rank: usize) -> Expression {
        match self.chance.below(8) {
            0 | 1 => Expression::Add(self.several(1, of, depth, rank)),
            2 => Expression::Negate(boxed(self.expression(of, depth, rank))),
            3 => {
                let mut divisor = number(self.chance);
                if divisor.is_zero() {
                    divisor = giant(self.chance);
                }
                Expression::Divide(boxed(self.expression(of, depth, rank)), divisor)
            }
            4 => Expression::Call(Function::Absolute, vec![self.expression(of, depth, rank)]),
            5 => self.least_or_greatest(of, depth, rank),
            _ => self.stepped(of, depth, rank),
        }
    }

    fn least_or_greatest(&mut self, of: ValueType, depth: usize, rank: usize) -> Expression {
        let function = if self.chance.percent(50) {
            Function::Min
        } else {
            Function::Max
        };
        Expression::Call(function, self.several(1, of, depth, rank))
    }

    fn stepped(&mut self, of: ValueType, depth: usize, rank: usize) -> Expression {
        let functions = [Function::FloorTo, Function::CeilTo, Function::RoundTo];
        let function = self
            .chance
            .one_of(&functions)
            .copied()
            .unwrap_or(Function::FloorTo);
        let step = if self.chance.percent(85) {
            let step = match of {
                ValueType::Length => Value::Length(inches(self.chance).abs()),
                ValueType::Area => Value::Area(square_inches(self.chance).abs()),
                _ => Value::Number(number(self.chance).abs()),
            };
            Expression::Literal(step)
        } else {
            self.expression(of, depth, rank)
        };
        Expression::Call(function, vec![self.expression(of, depth, rank), step])
    }
}
