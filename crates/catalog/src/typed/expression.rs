//! Types an expression: from the untyped tree to the model's, with a finding wherever names or types do not fit.
//!
//! A quoted text takes the type and the unit of the other side: in `unit_width >= "15"` it is a length in the catalog's
//! unit, in `operation == "casement"` an option of `operation`.
//!
//! Always holds: what is returned is well typed, so that the judge never meets types that do not fit.
//! Cost: linear in the tree, times the parts for `any`, `all` and `sum`. Recursion is as deep as the tree, which the
//! parser caps.

mod call;
mod conditional;
mod count;
mod name;
mod operator;
mod trade;

pub(crate) use call::FUNCTIONS;

use std::cell::Cell;
use std::collections::BTreeSet;
use std::rc::Rc;

use astragal_model::{Expression, Id, Number, PartIndex, Subject, Value, ValueType};

use crate::finding::{Finding, Findings};
use crate::syntax::{Expr, ExprKind, Literal, Span};
use crate::typed::guard::guards;
use crate::typed::literal::{literal, self_explaining};
use crate::typed::{Names, OptionDomain, Parsed, PlacedText, Type};

/// Where an expression stands: which names it may use, which part is "this part", what is known to be asked.
#[derive(Clone)]
pub(crate) struct Scope<'a> {
    pub(crate) names: &'a Names,
    pub(crate) findings: &'a Findings,
    /// "This part", for bare names that are `per` part.
    pub(crate) part: Option<PartIndex>,
    /// Names of attributes that are known to be asked.
    asked: BTreeSet<String>,
    /// How many `any`, `all` and `sum` the expression stands in.
    levels_over_parts: usize,
    /// How many nodes the expression has been written out to so far.
    nodes: Rc<Cell<usize>>,
}

/// A typed expression.
#[derive(Debug, Clone)]
pub(crate) struct Typed {
    pub(crate) expression: Expression,
    pub(crate) of: Type,
}

impl<'a> Scope<'a> {
    /// The whole unit, nothing known to be asked.
    pub(crate) fn new(names: &'a Names, findings: &'a Findings) -> Self {
        Self {
            names,
            findings,
            part: None,
            asked: BTreeSet::new(),
            levels_over_parts: 0,
            nodes: Rc::default(),
        }
    }

    /// The same scope with this part.
    pub(crate) fn in_part(&self, part: Option<PartIndex>) -> Self {
        Self { part, ..self.clone() }
    }

    /// The same scope where a condition is known to be true.
    pub(crate) fn assuming(&self, condition: &Parsed) -> Self {
        self.knowing(guards(&condition.tree, true))
    }

    fn knowing(&self, more: BTreeSet<String>) -> Self {
        let mut scope = self.clone();
        scope.asked.extend(more);
        scope
    }

    /// A condition: a yes or no.
    pub(crate) fn condition(&self, parsed: &Parsed) -> Option<Expression> {
        self.of_type(parsed, &Type::plain(ValueType::Bool))
    }

    /// A number.
    pub(crate) fn number(&self, parsed: &Parsed) -> Option<Expression> {
        self.of_type(parsed, &Type::plain(ValueType::Number))
    }

    /// An expression that gives only options of the wanted type.
    pub(crate) fn option_of(&self, parsed: &Parsed, wanted: &Type) -> Option<Expression> {
        let typed = self.whole(parsed, Some(wanted))?;
        self.fits(&parsed.text, &parsed.tree.span, &typed.of, wanted)?;
        let (given, allowed) = (typed.of.options.as_deref()?, wanted.options.as_deref()?);
        let strange: Vec<&Id> = given.ids.difference(&allowed.ids).collect();
        let Some(first) = strange.first() else {
            return Some(typed.expression);
        };
        let more = if strange.len() > 1 {
            format!(" and {} more", strange.len() - 1)
        } else {
            String::new()
        };
        self.error(
            &parsed.text,
            &parsed.tree.span,
            "UNKNOWN_OPTION",
            format!(
                "this may give `{first}`{more}, which {} does not have",
                allowed.of
            ),
            "give an option of the attribute in every case, with `condition ? option : option`",
        )
    }

    /// An expression of a declared type.
    pub(crate) fn of_type(&self, parsed: &Parsed, wanted: &Type) -> Option<Expression> {
        let typed = self.whole(parsed, Some(wanted))?;
        self.fits(&parsed.text, &parsed.tree.span, &typed.of, wanted)?;
        Some(typed.expression)
    }

    /// An expression of whatever type it is.
    pub(crate) fn any_type(&self, parsed: &Parsed) -> Option<Typed> {
        self.whole(parsed, None)
    }

    /// What a column, an axis or the like names.
    pub(crate) fn subject(&self, text: &PlacedText) -> Option<(Subject, Type)> {
        let parsed = Parsed::parse(text.clone(), self.findings)?;
        match self.any_type(&parsed)? {
            Typed {
                expression: Expression::Read(subject),
                of,
            } => Some((subject, of)),
            _ => self.error(
                text,
                &parsed.tree.span,
                "NOT_A_NAME",
                format!("`{}` is not a name", text.text),
                "name an attribute, a measure, a fact or a figure",
            ),
        }
    }

    fn fits(&self, text: &PlacedText, span: &Span, found: &Type, wanted: &Type) -> Option<()> {
        if found.value_type == wanted.value_type {
            return Some(());
        }
        self.error(
            text,
            span,
            "WRONG_TYPE",
            format!(
                "this is {}; expected {}",
                found.value_type.words(),
                wanted.value_type.words()
            ),
            type_help(found.value_type, wanted.value_type),
        )
    }

    /// Reports an error and gives nothing.
    pub(crate) fn error<T>(
        &self,
        text: &PlacedText,
        span: &Span,
        code: &'static str,
        message: String,
        help: &str,
    ) -> Option<T> {
        self.findings
            .push(Finding::error(code, message).at(text.at(span)).with_help(help));
        None
    }

    /// Types a whole expression: the count of its nodes begins anew.
    fn whole(&self, parsed: &Parsed, wanted: Option<&Type>) -> Option<Typed> {
        self.nodes.set(0);
        self.typed(&parsed.text, &parsed.tree, wanted)
    }

    /// Types a node; `wanted` is what a bare text is taken for.
    pub(crate) fn typed(&self, text: &PlacedText, expr: &Expr, wanted: Option<&Type>) -> Option<Typed> {
        self.count(text, &expr.span, 1)?;
        let plain = |expression, value_type| {
            Some(Typed {
                expression,
                of: Type::plain(value_type),
            })
        };
        match &expr.kind {
            ExprKind::Literal(written) => self.written(text, expr, written, wanted),
            ExprKind::Name(_) | ExprKind::Member { .. } => self.name(text, expr),
            ExprKind::Call { function, arguments } => self.call(text, expr, function, arguments, wanted),
            ExprKind::List(_) => self.error(
                text,
                &expr.span,
                "WRONG_TYPE",
                "a list stands alone".to_owned(),
                "a list stands only behind `in`",
            ),
            ExprKind::Not(inner) => {
                let inner = self.truth(text, inner)?;
                plain(Expression::Not(Box::new(inner)), ValueType::Bool)
            }
            ExprKind::And(inner) => plain(Expression::And(self.truths(text, inner, true)?), ValueType::Bool),
            ExprKind::Or(inner) => plain(Expression::Or(self.truths(text, inner, false)?), ValueType::Bool),
            ExprKind::Compare {
                operator,
                left,
                right,
            } => {
                let compared = self.compare(text, expr, *operator, left, right)?;
                plain(compared, ValueType::Bool)
            }
            ExprKind::In { item, set } => plain(self.membership(text, item, set)?, ValueType::Bool),
            ExprKind::Sum { first, rest } => self.sum(text, expr, first, rest, wanted),
            ExprKind::Product { first, rest } => self.product(text, expr, first, rest),
            ExprKind::Negate(inner) => {
                let inner_typed = self.typed(text, inner, wanted)?;
                self.magnitude(text, &inner.span, &inner_typed.of)?;
                Some(Typed {
                    expression: negated(inner_typed.expression),
                    of: inner_typed.of,
                })
            }
            ExprKind::Conditional {
                condition,
                then,
                otherwise,
            } => self.conditional(text, condition, [&**then, &**otherwise], wanted),
        }
    }

    fn written(
        &self,
        text: &PlacedText,
        expr: &Expr,
        written: &Literal,
        wanted: Option<&Type>,
    ) -> Option<Typed> {
        let known = |value: Value| {
            let of = match &value {
                Value::Option(id) => Type {
                    value_type: ValueType::Option,
                    options: Some(Rc::new(OptionDomain {
                        ids: BTreeSet::from([id.clone()]),
                        attribute: None,
                        of: format!("`{id}`"),
                    })),
                },
                other => Type::plain(other.value_type()),
            };
            Some(Typed {
                expression: Expression::Literal(value),
                of,
            })
        };
        match (written, wanted) {
            (Literal::Bool(value), _) => known(Value::Bool(*value)),
            (Literal::Number(raw), _) => match Number::from_decimal(raw) {
                Some(number) => known(Value::Number(number)),
                None => self.error(
                    text,
                    &expr.span,
                    "WRONG_VALUE",
                    format!("`{raw}` has too many digits or too large an exponent"),
                    "at most 400 digits and an exponent of at most 400 are read",
                ),
            },
            (Literal::Text(raw), Some(wanted)) => {
                known(literal(text, &expr.span, raw, wanted, self.names, self.findings)?)
            }
            (Literal::Text(raw), None) => match self_explaining(raw) {
                Some(value) => known(value),
                None => self.error(
                    text,
                    &expr.span,
                    "UNCLEAR_TEXT",
                    format!("nothing says what `{raw}` is"),
                    "a text takes the type of the other side; here write a length or an area with its unit, such as \"35 5/8 in\"",
                ),
            },
        }
    }

    /// A yes or no.
    fn truth(&self, text: &PlacedText, expr: &Expr) -> Option<Expression> {
        let wanted = Type::plain(ValueType::Bool);
        let typed = self.typed(text, expr, Some(&wanted))?;
        self.fits(text, &expr.span, &typed.of, &wanted)?;
        Some(typed.expression)
    }

    /// The sides of `&&` (`decided` true) or `||`: each side may rely on what the others guard.
    fn truths(&self, text: &PlacedText, sides: &[Expr], decided: bool) -> Option<Vec<Expression>> {
        let guarded: Vec<BTreeSet<String>> = sides.iter().map(|side| guards(side, decided)).collect();
        let typed = sides.iter().enumerate().map(|(position, side)| {
            let others = guarded.iter().enumerate().filter(|(other, _)| *other != position);
            let known = others.flat_map(|(_, names)| names.iter().cloned()).collect();
            self.knowing(known).truth(text, side)
        });
        // Every side is typed, so that all findings come at once.
        let typed: Vec<Option<Expression>> = typed.collect();
        typed.into_iter().collect()
    }
}

/// Whether a node takes its type from the other side: texts, and operators over nothing but texts.
pub(crate) fn is_flexible(expr: &Expr) -> bool {
    match &expr.kind {
        ExprKind::Literal(Literal::Text(_)) => true,
        ExprKind::Negate(inner) => is_flexible(inner),
        ExprKind::Conditional { then, otherwise, .. } => is_flexible(then) && is_flexible(otherwise),
        ExprKind::Sum { first, rest } => is_flexible(first) && rest.iter().all(|(_, term)| is_flexible(term)),
        ExprKind::Call { function, arguments } => {
            call::takes_type_of_arguments(&function.text) && arguments.first().is_some_and(is_flexible)
        }
        _ => false,
    }
}

type Side<'e> = (&'e Expr, &'e dyn Fn(Option<&Type>) -> Option<Typed>);

/// Types two sides of which one may take its type from the other.
fn pair(wanted: Option<&Type>, left: Side<'_>, right: Side<'_>) -> (Option<Typed>, Option<Typed>) {
    if is_flexible(left.0) && !is_flexible(right.0) {
        let right = (right.1)(wanted);
        let of = right.as_ref().map(|typed| typed.of.clone());
        // A wanted type of options is wider than what the other side happens to give.
        let wanted = wanted.or(of.as_ref());
        // When the side that says the type is wrong, that is the one finding to give.
        return (wanted.and_then(|wanted| (left.1)(Some(wanted))), right);
    }
    let left_typed = (left.1)(wanted);
    let of = left_typed.as_ref().map(|typed| typed.of.clone());
    let wanted = wanted.or(of.as_ref());
    if wanted.is_none() && is_flexible(right.0) {
        return (left_typed, None);
    }
    (left_typed, (right.1)(wanted))
}

/// A written number keeps its sign; anything else is negated when it is evaluated.
fn negated(expression: Expression) -> Expression {
    match expression {
        Expression::Literal(Value::Number(number)) => Expression::Literal(Value::Number(-number)),
        Expression::Literal(Value::Length(number)) => Expression::Literal(Value::Length(-number)),
        Expression::Literal(Value::Area(number)) => Expression::Literal(Value::Area(-number)),
        other => Expression::Negate(Box::new(other)),
    }
}

fn type_help(found: ValueType, wanted: ValueType) -> &'static str {
    match (found, wanted) {
        (ValueType::Length, ValueType::Number) => {
            "in_inches(...), in_feet(...) or in_mm(...) turns a length into a number"
        }
        (ValueType::Area, ValueType::Number) => {
            "in_ft2(...), in_in2(...) or in_m2(...) turns an area into a number"
        }
        (ValueType::Number, ValueType::Length) => "a length is written in quotes: \"15\" or \"35 5/8\"",
        (ValueType::Number, ValueType::Area) => "an area is written in quotes with its unit: \"5.7 ft2\"",
        (ValueType::Option, ValueType::Bool) => "compare the option: `operation == \"casement\"`",
        (_, ValueType::Bool) => "compare it with something: `>=`, `==`",
        _ => "make both sides one type",
    }
}
