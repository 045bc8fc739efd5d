//! Operators: comparisons, membership, sums and products.

use std::collections::BTreeSet;

use astragal_model::{Comparison, Expression, Id, Number, Value, ValueType};

use super::{Scope, Typed, is_flexible, negated, pair};
use crate::nearest::nearest;
use crate::syntax::{CompareOperator, Expr, ExprKind, Literal, ProductOperator, Span, SumOperator};
use crate::typed::{PlacedText, Type};

impl Scope<'_> {
    pub(super) fn compare(
        &self,
        text: &PlacedText,
        expr: &Expr,
        operator: CompareOperator,
        left: &Expr,
        right: &Expr,
    ) -> Option<Expression> {
        // A side in parentheses begins after the comparison does: `(a < b) == (c < d)` is no chain.
        if matches!(left.kind, ExprKind::Compare { .. }) && left.span.start == expr.span.start {
            return self.error(
                text,
                &expr.span,
                "WRONG_TYPE",
                "two comparisons stand in a chain".to_owned(),
                "join them: `a < b && b < c`",
            );
        }
        let (left_typed, right_typed) = pair(
            None,
            (left, &|wanted| self.typed(text, left, wanted)),
            (right, &|wanted| self.typed(text, right, wanted)),
        );
        let (left_typed, right_typed) = (left_typed?, right_typed?);
        self.fits(text, &right.span, &right_typed.of, &left_typed.of)?;
        let comparison = comparison(operator);
        let equality = matches!(comparison, Comparison::Equal | Comparison::NotEqual);
        if !equality && !left_typed.of.value_type.is_ordered() {
            return self.error(
                text,
                &expr.span,
                "WRONG_TYPE",
                format!("{} has no order", left_typed.of.value_type.words()),
                "compare with `==` or `!=`, or read a property: `exterior.gloss`",
            );
        }
        if let (Some(one), Some(other)) = (&left_typed.of.options, &right_typed.of.options)
            && one.ids.is_disjoint(&other.ids)
        {
            return self.error(
                text,
                &expr.span,
                "NEVER_EQUAL",
                format!("{} and {} have no option in common", one.of, other.of),
                "options are compared by their ids",
            );
        }
        Some(Expression::Compare(
            comparison,
            Box::new(left_typed.expression),
            Box::new(right_typed.expression),
        ))
    }

    /// `item in [...]` or `item in family("dark")`.
    pub(super) fn membership(&self, text: &PlacedText, item: &Expr, set: &Expr) -> Option<Expression> {
        let item_typed = self.typed(text, item, None)?;
        match &set.kind {
            ExprKind::List(members) => {
                if members.is_empty() {
                    let help = "list what it may be";
                    return self.error(
                        text,
                        &set.span,
                        "EMPTY_LIST",
                        "nothing is in an empty list".to_owned(),
                        help,
                    );
                }
                let typed: Vec<Option<Expression>> = members
                    .iter()
                    .map(|member| {
                        let typed = self.typed(text, member, Some(&item_typed.of))?;
                        self.fits(text, &member.span, &typed.of, &item_typed.of)?;
                        Some(typed.expression)
                    })
                    .collect();
                let members = typed.into_iter().collect::<Option<Vec<Expression>>>()?;
                Some(Expression::In(Box::new(item_typed.expression), members))
            }
            ExprKind::Call { function, arguments } if function.text == "family" => {
                let members = self.family(text, set, arguments, &item_typed.of)?;
                self.count(text, &set.span, members.len())?;
                let members = members
                    .into_iter()
                    .map(|id| Expression::Literal(Value::Option(id)))
                    .collect();
                Some(Expression::In(Box::new(item_typed.expression), members))
            }
            _ => self.error(
                text,
                &set.span,
                "WRONG_TYPE",
                "this is not a list".to_owned(),
                "behind `in` stands a list, [\"white\", \"grey\"], or family(\"dark\")",
            ),
        }
    }

    /// The options of a family, in the order of the attribute.
    fn family(&self, text: &PlacedText, call: &Expr, arguments: &[Expr], of: &Type) -> Option<Vec<Id>> {
        let [
            Expr {
                kind: ExprKind::Literal(Literal::Text(family)),
                span,
            },
        ] = arguments
        else {
            let message = "family takes one name in quotes".to_owned();
            return self.error(
                text,
                &call.span,
                "WRONG_ARGUMENTS",
                message,
                "write family(\"dark\")",
            );
        };
        let attribute = of.options.as_ref().and_then(|options| options.attribute);
        let Some(shape) = attribute.and_then(|attribute| self.names.attribute(attribute)) else {
            return self.error(
                text,
                &call.span,
                "WRONG_TYPE",
                "only an attribute has families".to_owned(),
                "before `in` stands the name of an attribute",
            );
        };
        let id = Id::new(family);
        let members: Vec<Id> = shape
            .options
            .iter()
            .filter(|option| option.families.contains(&id))
            .map(|option| option.id.clone())
            .collect();
        if !members.is_empty() {
            return Some(members);
        }
        let known: BTreeSet<&str> = shape
            .options
            .iter()
            .flat_map(|option| &option.families)
            .map(Id::as_str)
            .collect();
        let help = match nearest(family, known.iter().copied()) {
            Some(near) => format!("did you mean `{near}`?"),
            None if known.is_empty() => format!("give options of `{}` families = [\"{family}\"]", shape.id),
            None => format!("families of `{}` are {}", shape.id, quoted(&known)),
        };
        let message = format!("no option of `{}` is in the family `{family}`", shape.id);
        self.error(text, span, "UNKNOWN_FAMILY", message, &help)
    }

    /// `a + b - c`, of one type.
    pub(super) fn sum(
        &self,
        text: &PlacedText,
        expr: &Expr,
        first: &Expr,
        rest: &[(SumOperator, Expr)],
        wanted: Option<&Type>,
    ) -> Option<Typed> {
        let terms: Vec<(bool, &Expr)> = std::iter::once((false, first))
            .chain(
                rest.iter()
                    .map(|(operator, term)| (*operator == SumOperator::Minus, term)),
            )
            .collect();
        // The first term that says its type is typed first, and only once: sums nest.
        let leading = terms.iter().position(|(_, term)| !is_flexible(term));
        let mut leading_typed = match leading.and_then(|leading| terms.get(leading)) {
            Some((_, term)) => Some(self.typed(text, term, wanted)?),
            None => None,
        };
        let mut of = leading_typed
            .as_ref()
            .map(|typed| typed.of.clone())
            .or_else(|| wanted.cloned());
        let mut typed_terms = Vec::new();
        for (position, (negative, term)) in terms.into_iter().enumerate() {
            let typed = match leading_typed.take_if(|_| leading == Some(position)) {
                Some(typed) => typed,
                None => self.typed(text, term, of.as_ref())?,
            };
            self.magnitude(text, &term.span, &typed.of)?;
            if let Some(of) = &of {
                self.fits(text, &term.span, &typed.of, of)?;
            }
            of.get_or_insert(typed.of);
            typed_terms.push(if negative {
                negated(typed.expression)
            } else {
                typed.expression
            });
        }
        let Some(of) = of else {
            return self.error(
                text,
                &expr.span,
                "WRONG_TYPE",
                "nothing is added".to_owned(),
                "write terms",
            );
        };
        Some(Typed {
            expression: Expression::Add(typed_terms),
            of,
        })
    }

    /// `a * b / 2`, left to right.
    pub(super) fn product(
        &self,
        text: &PlacedText,
        expr: &Expr,
        first: &Expr,
        rest: &[(ProductOperator, Expr)],
    ) -> Option<Typed> {
        let mut product = self.typed(text, first, None)?;
        self.magnitude(text, &first.span, &product.of)?;
        for (operator, factor) in rest {
            product = match operator {
                ProductOperator::Over => self.quotient(text, product, factor)?,
                ProductOperator::Times => {
                    let typed = self.typed(text, factor, None)?;
                    self.magnitude(text, &factor.span, &typed.of)?;
                    let of = match (product.of.value_type, typed.of.value_type) {
                        (ValueType::Length, ValueType::Length) => ValueType::Area,
                        (ValueType::Number, other) | (other, ValueType::Number) => other,
                        _ => {
                            return self.error(
                                text,
                                &expr.span,
                                "WRONG_TYPE",
                                "a length times an area is neither".to_owned(),
                                "multiply by a number, or two lengths",
                            );
                        }
                    };
                    let expression =
                        Expression::Multiply(Box::new(product.expression), Box::new(typed.expression));
                    Typed {
                        expression,
                        of: Type::plain(of),
                    }
                }
            };
        }
        Some(product)
    }

    fn quotient(&self, text: &PlacedText, dividend: Typed, divisor: &Expr) -> Option<Typed> {
        let written = match &divisor.kind {
            ExprKind::Literal(Literal::Number(raw)) => Number::from_decimal(raw),
            ExprKind::Negate(inner) => match &inner.kind {
                ExprKind::Literal(Literal::Number(raw)) => Number::from_decimal(raw).map(|number| -number),
                _ => None,
            },
            _ => None,
        };
        let help = "write the number, such as `/ 2`; multiply by what is not written as a number";
        match written {
            None => self.error(
                text,
                &divisor.span,
                "DIVISION",
                "only division by a written number is allowed".to_owned(),
                help,
            ),
            Some(number) if number.is_zero() => self.error(
                text,
                &divisor.span,
                "DIVISION",
                "this divides by zero".to_owned(),
                help,
            ),
            Some(number) => {
                let expression = Expression::Divide(Box::new(dividend.expression), number);
                Some(Typed {
                    expression,
                    of: dividend.of,
                })
            }
        }
    }

    /// Whether a type is one to calculate with.
    pub(super) fn magnitude(&self, text: &PlacedText, span: &Span, of: &Type) -> Option<()> {
        if matches!(
            of.value_type,
            ValueType::Number | ValueType::Length | ValueType::Area
        ) {
            return Some(());
        }
        self.error(
            text,
            span,
            "WRONG_TYPE",
            format!("{} is nothing to calculate with", of.value_type.words()),
            "calculate with numbers, lengths and areas",
        )
    }
}

fn comparison(operator: CompareOperator) -> Comparison {
    match operator {
        CompareOperator::Equal => Comparison::Equal,
        CompareOperator::NotEqual => Comparison::NotEqual,
        CompareOperator::Less => Comparison::Less,
        CompareOperator::LessOrEqual => Comparison::LessOrEqual,
        CompareOperator::Greater => Comparison::Greater,
        CompareOperator::GreaterOrEqual => Comparison::GreaterOrEqual,
    }
}

fn quoted(names: &BTreeSet<&str>) -> String {
    let quoted: Vec<String> = names.iter().map(|name| format!("`{name}`")).collect();
    quoted.join(", ")
}
