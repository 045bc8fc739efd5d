//! The canonical text of an expression: one space around operators, double quotes, parentheses only where needed.
//!
//! What always holds: parsing the text gives the tree back, up to spans; equal trees up to spans have one text.
//! Cost: one pass over the tree.

use std::fmt::{self, Display, Formatter};

use super::ast::{CompareOperator, Expr, ExprKind, Literal, ProductOperator, SumOperator};
use super::text::quoted;

impl Display for Expr {
    /// The canonical text.
    ///
    /// # Examples
    ///
    /// White space, quotes and needless parentheses are evened out:
    ///
    /// ```
    /// use astragal_catalog::syntax::parse_expression;
    ///
    /// let tree = parse_expression("(grille!='none')&&(width+1)*2>30").unwrap();
    /// assert_eq!(tree.to_string(), r#"grille != "none" && (width + 1) * 2 > 30"#);
    /// ```
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        match &self.kind {
            ExprKind::Literal(Literal::Number(number)) => f.write_str(number),
            ExprKind::Literal(Literal::Text(text)) => f.write_str(&quoted(text)),
            ExprKind::Literal(Literal::Bool(value)) => write!(f, "{value}"),
            ExprKind::Name(name) => f.write_str(name),
            ExprKind::Member { base, name } => member(base, &name.text, f),
            ExprKind::Call { function, arguments } => {
                write!(f, "{}(", function.text)?;
                separated(arguments, Binding::Conditional, ", ", f)?;
                f.write_str(")")
            }
            ExprKind::List(items) => {
                f.write_str("[")?;
                separated(items, Binding::Conditional, ", ", f)?;
                f.write_str("]")
            }
            ExprKind::Not(inner) => prefixed("!", inner, matches!(inner.kind, ExprKind::Not(_)), f),
            ExprKind::Negate(inner) => prefixed("-", inner, matches!(inner.kind, ExprKind::Negate(_)), f),
            ExprKind::Product { first, rest } => chain(first, rest, Binding::Prefix, f),
            ExprKind::Sum { first, rest } => chain(first, rest, Binding::Product, f),
            ExprKind::Compare {
                operator,
                left,
                right,
            } => relation(left, &operator.to_string(), right, f),
            ExprKind::In { item, set } => relation(item, "in", set, f),
            ExprKind::And(parts) => separated(parts, Binding::Relation, " && ", f),
            ExprKind::Or(parts) => separated(parts, Binding::And, " || ", f),
            ExprKind::Conditional {
                condition,
                then,
                otherwise,
            } => {
                at_least(condition, Binding::Or, f)?;
                f.write_str(" ? ")?;
                at_least(then, Binding::Or, f)?;
                f.write_str(" : ")?;
                at_least(otherwise, Binding::Conditional, f)
            }
        }
    }
}

impl Display for CompareOperator {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Equal => "==",
            Self::NotEqual => "!=",
            Self::Less => "<",
            Self::LessOrEqual => "<=",
            Self::Greater => ">",
            Self::GreaterOrEqual => ">=",
        })
    }
}

impl Display for SumOperator {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Plus => "+",
            Self::Minus => "-",
        })
    }
}

impl Display for ProductOperator {
    fn fmt(&self, f: &mut Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Times => "*",
            Self::Over => "/",
        })
    }
}

/// How tightly a node holds together, loosest first.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Binding {
    Conditional,
    Or,
    And,
    Relation,
    Sum,
    Product,
    Prefix,
    Primary,
}

fn binding(expr: &Expr) -> Binding {
    match expr.kind {
        ExprKind::Conditional { .. } => Binding::Conditional,
        ExprKind::Or(_) => Binding::Or,
        ExprKind::And(_) => Binding::And,
        ExprKind::Compare { .. } | ExprKind::In { .. } => Binding::Relation,
        ExprKind::Sum { .. } => Binding::Sum,
        ExprKind::Product { .. } => Binding::Product,
        ExprKind::Not(_) | ExprKind::Negate(_) => Binding::Prefix,
        ExprKind::Literal(_)
        | ExprKind::Name(_)
        | ExprKind::Member { .. }
        | ExprKind::Call { .. }
        | ExprKind::List(_) => Binding::Primary,
    }
}

/// The node, in parentheses where it holds together less tightly than its place asks.
fn at_least(expr: &Expr, place: Binding, f: &mut Formatter<'_>) -> fmt::Result {
    if binding(expr) < place {
        write!(f, "({expr})")
    } else {
        write!(f, "{expr}")
    }
}

fn separated(parts: &[Expr], place: Binding, separator: &str, f: &mut Formatter<'_>) -> fmt::Result {
    for (index, part) in parts.iter().enumerate() {
        if index > 0 {
            f.write_str(separator)?;
        }
        at_least(part, place, f)?;
    }
    Ok(())
}

fn chain(first: &Expr, rest: &[(impl Display, Expr)], place: Binding, f: &mut Formatter<'_>) -> fmt::Result {
    at_least(first, place, f)?;
    for (operator, part) in rest {
        write!(f, " {operator} ")?;
        at_least(part, place, f)?;
    }
    Ok(())
}

/// Relations hold to the left: only the right side of one needs parentheses when it is a relation itself.
fn relation(left: &Expr, operator: &str, right: &Expr, f: &mut Formatter<'_>) -> fmt::Result {
    at_least(left, Binding::Relation, f)?;
    write!(f, " {operator} ")?;
    at_least(right, Binding::Sum, f)
}

/// CEL repeats one prefix operator but does not mix two.
fn prefixed(operator: &str, inner: &Expr, is_repeated: bool, f: &mut Formatter<'_>) -> fmt::Result {
    f.write_str(operator)?;
    at_least(
        inner,
        if is_repeated {
            Binding::Prefix
        } else {
            Binding::Primary
        },
        f,
    )
}

/// A dot after a number would belong to the number.
fn member(base: &Expr, name: &str, f: &mut Formatter<'_>) -> fmt::Result {
    match base.kind {
        ExprKind::Literal(Literal::Number(_)) => write!(f, "({base}).{name}"),
        _ => {
            at_least(base, Binding::Primary, f)?;
            write!(f, ".{name}")
        }
    }
}
