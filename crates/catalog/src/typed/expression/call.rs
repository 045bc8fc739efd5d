//! The closed table of functions, and `any`, `all` and `sum` over the parts that a unit has.

use std::collections::BTreeSet;

use astragal_model::{Expression, Function, Id, MeasuringUnit, Number, TradeFunction, Value, ValueType};

use super::count::node_count;
use super::{Scope, Typed, is_flexible};
use crate::nearest::nearest;
use crate::syntax::{Expr, ExprKind, Placed};
use crate::typed::parsed::push_children;
use crate::typed::{PlacedText, Type};

/// LIMIT: how many levels of `any`, `all` and `sum` may stand inside each other: each is written out over all parts.
const LEVELS_LIMIT: usize = 2;

/// Every function there is, for helps.
pub(crate) const FUNCTIONS: [&str; 25] = [
    "min",
    "max",
    "abs",
    "floor_to",
    "ceil_to",
    "round_to",
    "in_inches",
    "in_feet",
    "in_mm",
    "in_m",
    "in_in2",
    "in_ft2",
    "in_m2",
    "is_asked",
    "family",
    "any",
    "all",
    "sum",
    "united_inches_exact",
    "united_inches_each_up",
    "united_inches_sum_up",
    "pounds_of_glass",
    "structural_test_pressure",
    "water_test_pressure",
    "wind_grade",
];

/// Whether a function gives the type of its first argument.
pub(super) fn takes_type_of_arguments(function: &str) -> bool {
    matches!(
        function,
        "min" | "max" | "abs" | "floor_to" | "ceil_to" | "round_to"
    )
}

fn function_named(name: &str) -> Option<Function> {
    Some(match name {
        "min" => Function::Min,
        "max" => Function::Max,
        "abs" => Function::Absolute,
        "floor_to" => Function::FloorTo,
        "ceil_to" => Function::CeilTo,
        "round_to" => Function::RoundTo,
        "in_inches" => Function::InUnit(MeasuringUnit::Inch),
        "in_feet" => Function::InUnit(MeasuringUnit::Foot),
        "in_mm" => Function::InUnit(MeasuringUnit::Millimetre),
        "in_m" => Function::InUnit(MeasuringUnit::Metre),
        "in_in2" => Function::InUnit(MeasuringUnit::SquareInch),
        "in_ft2" => Function::InUnit(MeasuringUnit::SquareFoot),
        "in_m2" => Function::InUnit(MeasuringUnit::SquareMetre),
        _ => return TradeFunction::named(name).map(Function::Trade),
    })
}

impl Scope<'_> {
    pub(super) fn call(
        &self,
        text: &PlacedText,
        expr: &Expr,
        function: &Placed,
        arguments: &[Expr],
        wanted: Option<&Type>,
    ) -> Option<Typed> {
        let truth = |expression| {
            Some(Typed {
                expression,
                of: Type::plain(ValueType::Bool),
            })
        };
        match (function.text.as_str(), arguments) {
            ("is_asked", [argument]) => truth(Expression::IsAsked(self.attribute(text, argument)?)),
            ("any" | "all" | "sum", [argument]) => self.over_parts(text, expr, &function.text, argument),
            ("is_asked" | "any" | "all" | "sum", _) => {
                let message = format!("`{}` takes one argument, not {}", function.text, arguments.len());
                self.error(
                    text,
                    &expr.span,
                    "WRONG_ARGUMENTS",
                    message,
                    "write it as docs/catalog.md says",
                )
            }
            ("family", _) => self.error(
                text,
                &expr.span,
                "WRONG_TYPE",
                "a family stands alone".to_owned(),
                "a family stands only behind `in`: `exterior in family(\"dark\")`",
            ),
            (name, _) => match function_named(name) {
                Some(known) => self.known_call(text, expr, (known, &function.text), arguments, wanted),
                None => {
                    let help = match nearest(name, FUNCTIONS) {
                        Some(near) => format!("did you mean `{near}`?"),
                        None => format!("functions are {}", FUNCTIONS.join(", ")),
                    };
                    let message = format!("`{name}` is not a function");
                    self.error(text, &function.span, "UNKNOWN_FUNCTION", message, &help)
                }
            },
        }
    }

    fn known_call(
        &self,
        text: &PlacedText,
        expr: &Expr,
        (function, name): (Function, &str),
        arguments: &[Expr],
        wanted: Option<&Type>,
    ) -> Option<Typed> {
        if let Function::Trade(function) = function {
            return self.trade_call(text, expr, function, arguments);
        }
        let fits = match function {
            Function::Trade(_) => true,
            Function::Min | Function::Max => arguments.len() >= 2,
            Function::Absolute | Function::InUnit(_) => arguments.len() == 1,
            Function::FloorTo | Function::CeilTo | Function::RoundTo => arguments.len() == 2,
        };
        if !fits {
            let message = format!("`{name}` does not take {} argument(s)", arguments.len());
            let help = "min and max take two or more, abs and in_... one, floor_to, ceil_to and round_to a value and a step";
            return self.error(text, &expr.span, "WRONG_ARGUMENTS", message, help);
        }
        if let Function::InUnit(unit) = function {
            let value_type = if unit.is_area() {
                ValueType::Area
            } else {
                ValueType::Length
            };
            let wanted = Type::plain(value_type);
            let argument = arguments.first()?;
            let typed = self.typed(text, argument, Some(&wanted))?;
            self.fits(text, &argument.span, &typed.of, &wanted)?;
            let expression = Expression::Call(function, vec![typed.expression]);
            return Some(Typed {
                expression,
                of: Type::plain(ValueType::Number),
            });
        }
        // The first argument that says its type is typed first, and only once: calls nest.
        let leading = arguments.iter().position(|argument| !is_flexible(argument));
        let mut leading_typed = match leading.and_then(|leading| arguments.get(leading)) {
            Some(argument) => Some(self.typed(text, argument, wanted)?),
            None => None,
        };
        let mut of = leading_typed
            .as_ref()
            .map(|typed| typed.of.clone())
            .or_else(|| wanted.cloned());
        let mut typed_arguments = Vec::new();
        for (position, argument) in arguments.iter().enumerate() {
            let typed = match leading_typed.take_if(|_| leading == Some(position)) {
                Some(typed) => typed,
                None => self.typed(text, argument, of.as_ref())?,
            };
            if let Some(of) = &of {
                self.fits(text, &argument.span, &typed.of, of)?;
            }
            of.get_or_insert(typed.of);
            typed_arguments.push(typed.expression);
        }
        let of = of?;
        let is_date = of.value_type == ValueType::Date && matches!(function, Function::Min | Function::Max);
        if !is_date {
            self.magnitude(text, &expr.span, &of)?;
        }
        self.step(text, function, arguments, &typed_arguments)?;
        Some(Typed {
            expression: Expression::Call(function, typed_arguments),
            of,
        })
    }

    /// The step of a rounding function is a written value above zero.
    fn step(
        &self,
        text: &PlacedText,
        function: Function,
        arguments: &[Expr],
        typed: &[Expression],
    ) -> Option<()> {
        if !matches!(function, Function::FloorTo | Function::CeilTo | Function::RoundTo) {
            return Some(());
        }
        let ([_, written], [_, step]) = (arguments, typed) else {
            return Some(());
        };
        let above_zero = match step {
            Expression::Literal(value) => value.magnitude().is_some_and(Number::is_positive),
            _ => false,
        };
        if above_zero {
            return Some(());
        }
        let message = "the step is not a written value above zero".to_owned();
        self.error(
            text,
            &written.span,
            "WRONG_ARGUMENTS",
            message,
            "write the step, such as \"1/8\"",
        )
    }

    /// `any`, `all` and `sum`, written out over the parts of the kind that the argument names.
    fn over_parts(&self, text: &PlacedText, expr: &Expr, function: &str, argument: &Expr) -> Option<Typed> {
        if self.levels_over_parts == LEVELS_LIMIT {
            let message = format!(
                "`{function}` stands inside {LEVELS_LIMIT} others that go over parts, the most there may be"
            );
            let help = "work the inner part out as a figure of its own, and name that";
            return self.error(text, &expr.span, "LIMIT", message, help);
        }
        let kind = self.kind_named(text, expr, argument)?;
        let sum = function == "sum";
        let mut terms = Vec::new();
        let mut of = Type::plain(if sum { ValueType::Number } else { ValueType::Bool });
        for part in self.names.parts_of_kind(&kind) {
            let mut scope = self.in_part(Some(part));
            scope.levels_over_parts += 1;
            let Some(exists) = self.names.part_condition(part) else {
                let message = format!("when a part exists may not depend on `{function}` over parts");
                return self.error(
                    text,
                    &expr.span,
                    "NO_PARTS",
                    message,
                    "name the parts: `glazing.upper`",
                );
            };
            self.count(text, &expr.span, exists.map_or(0, node_count))?;
            let term = if sum {
                let typed = scope.typed(text, argument, None)?;
                scope.magnitude(text, &argument.span, &typed.of)?;
                of = typed.of;
                let zero = zero_of(of.value_type)?;
                match exists {
                    Some(exists) => {
                        let zero = Box::new(Expression::Literal(zero));
                        Expression::Conditional(Box::new(exists.clone()), Box::new(typed.expression), zero)
                    }
                    None => typed.expression,
                }
            } else {
                let condition = scope.truth(text, argument)?;
                match (exists, function) {
                    (None, _) => condition,
                    (Some(exists), "any") => Expression::And(vec![exists.clone(), condition]),
                    (Some(exists), _) => {
                        Expression::Or(vec![Expression::Not(Box::new(exists.clone())), condition])
                    }
                }
            };
            terms.push(term);
        }
        let expression = match function {
            "any" => Expression::Or(terms),
            "all" => Expression::And(terms),
            _ => Expression::Add(terms),
        };
        Some(Typed { expression, of })
    }

    /// The one kind of parts over which an argument goes.
    fn kind_named(&self, text: &PlacedText, expr: &Expr, argument: &Expr) -> Option<Id> {
        let mut kinds: BTreeSet<Id> = BTreeSet::new();
        let mut stack = vec![argument];
        while let Some(node) = stack.pop() {
            if let ExprKind::Member { base, name } = &node.kind
                && matches!(base.kind, ExprKind::Name(_))
                && self.names.part(&name.text).is_some()
            {
                // `glazing.upper` says its part itself.
                continue;
            }
            if let ExprKind::Name(name) = &node.kind
                && let Some(kind) = self.names.kind_of_named(name)
            {
                kinds.insert(kind);
            }
            push_children(node, &mut stack);
        }
        let mut kinds = kinds.into_iter();
        match (kinds.next(), kinds.next()) {
            (Some(kind), None) => Some(kind),
            (None, _) => self.error(
                text,
                &expr.span,
                "NO_PARTS",
                "nothing in here is one a part".to_owned(),
                "any, all and sum go over attributes and figures that are `per` part",
            ),
            (Some(one), Some(other)) => self.error(
                text,
                &expr.span,
                "NO_PARTS",
                format!("this goes over `{one}` and `{other}` at once"),
                "go over one kind of part at a time",
            ),
        }
    }
}

fn zero_of(value_type: ValueType) -> Option<Value> {
    match value_type {
        ValueType::Number => Some(Value::Number(Number::ZERO)),
        ValueType::Length => Some(Value::Length(Number::ZERO)),
        ValueType::Area => Some(Value::Area(Number::ZERO)),
        _ => None,
    }
}
