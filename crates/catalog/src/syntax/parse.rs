//! Tokens to a tree, by descent through CEL's levels of precedence.
//!
//! `a || b && c` is [`ExprKind::Or`] of `a` and an [`ExprKind::And`]; loosest first the levels are the conditional, `||`,
//! `&&`, relations, sums, products, prefixes, members and calls. Written out rather than with parser combinators, because
//! nearly every failure here names something a combinator does not see: the bracket that was opened, the word `and` where
//! an operator belongs, the level that is one too many.
//!
//! What always holds: before the parser goes a level down it checks [`DEPTH_MAX`], and it refuses to build a node whose tree
//! is deeper, so neither parsing nor walking nor dropping a tree can exhaust the stack. Cost: one pass over the tokens.
//! Source: <https://github.com/google/cel-spec/blob/master/doc/langdef.md#syntax>.

mod primary;
mod unexpected;

#[cfg(test)]
mod random_tests;
#[cfg(test)]
mod tests;

use super::ast::{CompareOperator, Expr, ExprKind, ProductOperator, SumOperator};
use super::error::{Span, SyntaxError};
use super::token::{Token, TokenKind, tokens};
use super::{DEPTH_MAX, EXPRESSION_BYTES_MAX};

/// Reads the text of an expression.
///
/// # Examples
///
/// A tree and where its parts stand:
///
/// ```
/// use astragal_catalog::syntax::{ExprKind, parse_expression};
///
/// let tree = parse_expression(r#"unit_width >= "15" && sash != "fixed""#).unwrap();
/// let ExprKind::And(parts) = tree.kind else { panic!("two conditions") };
/// assert_eq!(parts[1].span, 22..37);
/// ```
///
/// An error says what to do:
///
/// ```
/// use astragal_catalog::syntax::parse_expression;
///
/// let error = parse_expression(r#"grille = "none""#).unwrap_err();
/// assert_eq!(error.span, 7..8);
/// assert_eq!(error.help.as_deref(), Some("compare with `==`"));
/// ```
///
/// # Errors
///
/// The first thing in the text that is not in the subset of CEL, is nested deeper than [`DEPTH_MAX`], or the end of a text
/// longer than [`EXPRESSION_BYTES_MAX`].
pub fn parse_expression(text: &str) -> Result<Expr, SyntaxError> {
    if text.len() > EXPRESSION_BYTES_MAX {
        let start = text.floor_char_boundary(EXPRESSION_BYTES_MAX);
        let message = format!(
            "found an expression of {} bytes, expected at most {EXPRESSION_BYTES_MAX}",
            text.len()
        );
        return Err(SyntaxError::new(start..text.len(), message).with_help(TOO_LARGE_HELP));
    }
    parse_unmeasured(text)
}

const TOO_LARGE_HELP: &str = "declare a part of it as a figure and use its name, or use a table";

/// Parses a text of any length: depth alone must keep the stack safe.
fn parse_unmeasured(text: &str) -> Result<Expr, SyntaxError> {
    let tokens = tokens(text)?;
    let mut parser = Parser {
        text,
        tokens: &tokens,
        next: 0,
        nesting: 0,
    };
    if tokens.is_empty() {
        return Err(SyntaxError::new(
            0..text.len(),
            "found nothing, expected an expression",
        ));
    }
    let grown = parser.conditional()?;
    match parser.peek() {
        None => Ok(grown.tree),
        Some(_) => Err(parser.unexpected("an operator or the end of the expression", None)),
    }
}

/// Where the parser stands in the tokens.
struct Parser<'t> {
    text: &'t str,
    tokens: &'t [Token],
    /// The token that is read next.
    next: usize,
    /// How many brackets and conditionals are open around it.
    nesting: usize,
}

/// A tree and how many levels are below its root.
struct Grown {
    tree: Expr,
    depth: usize,
}

type Parsed = Result<Grown, SyntaxError>;

/// Levels that are chains of operators.
impl Parser<'_> {
    fn conditional(&mut self) -> Parsed {
        let start = self.start();
        let condition = self.or()?;
        let Some(question) = self.eat(TokenKind::Question) else {
            return Ok(condition);
        };
        let then = self.or()?;
        if let Some(inner) = self.eat(TokenKind::Question) {
            return Err(
                SyntaxError::new(inner, "found a second `?` before the `:` of the first")
                    .with_help("put the inner conditional in parentheses: `a ? (b ? c : d) : e`")
                    .with_related(question, "the first `?` is here"),
            );
        }
        if self.eat(TokenKind::Colon).is_none() {
            return Err(self.unexpected("`:`", Some((question, "this `?` needs a `:`"))));
        }
        let otherwise = self.deeper(question, Self::conditional)?;
        let depth = condition.depth.max(then.depth).max(otherwise.depth) + 1;
        let kind = ExprKind::Conditional {
            condition: Box::new(condition.tree),
            then: Box::new(then.tree),
            otherwise: Box::new(otherwise.tree),
        };
        self.grow(kind, start, depth)
    }

    fn or(&mut self) -> Parsed {
        self.joined(TokenKind::Or, Self::and, ExprKind::Or)
    }

    fn and(&mut self) -> Parsed {
        self.joined(TokenKind::And, Self::relation, ExprKind::And)
    }

    /// `part`, or a chain of them with `operator` between.
    fn joined(
        &mut self,
        operator: TokenKind,
        part: fn(&mut Self) -> Parsed,
        join: fn(Vec<Expr>) -> ExprKind,
    ) -> Parsed {
        let start = self.start();
        let first = part(self)?;
        if self.peek() != Some(operator) {
            return Ok(first);
        }
        let mut depth = first.depth;
        let mut parts = vec![first.tree];
        while self.eat(operator).is_some() {
            let next = part(self)?;
            depth = depth.max(next.depth);
            parts.push(next.tree);
        }
        self.grow(join(parts), start, depth + 1)
    }

    /// Relations chain to the left, as in CEL; whether `a < b < c` means anything is a question of types.
    fn relation(&mut self) -> Parsed {
        let start = self.start();
        let mut left = self.sum()?;
        while let Some(relation) = self.peek().and_then(Relation::of) {
            self.next += 1;
            let right = self.sum()?;
            let depth = left.depth.max(right.depth) + 1;
            let (left_tree, right_tree) = (Box::new(left.tree), Box::new(right.tree));
            let kind = match relation {
                Relation::In => ExprKind::In {
                    item: left_tree,
                    set: right_tree,
                },
                Relation::Compare(operator) => ExprKind::Compare {
                    operator,
                    left: left_tree,
                    right: right_tree,
                },
            };
            left = self.grow(kind, start, depth)?;
        }
        Ok(left)
    }

    fn sum(&mut self) -> Parsed {
        let operator = |kind| match kind {
            TokenKind::Plus => Some(SumOperator::Plus),
            TokenKind::Minus => Some(SumOperator::Minus),
            _ => None,
        };
        self.chained(
            operator,
            Self::product,
            |_| 1,
            |first, rest| ExprKind::Sum { first, rest },
        )
    }

    /// A product counts a level a factor: typed, it multiplies two by two, each product inside the next.
    fn product(&mut self) -> Parsed {
        let operator = |kind| match kind {
            TokenKind::Times => Some(ProductOperator::Times),
            TokenKind::Over => Some(ProductOperator::Over),
            _ => None,
        };
        let levels = |others| others;
        self.chained(operator, Self::prefixed, levels, |first, rest| {
            ExprKind::Product { first, rest }
        })
    }

    /// `part`, or a chain of them, each but the first with its operator; so many others are so many `levels`.
    fn chained<O>(
        &mut self,
        operator: fn(TokenKind) -> Option<O>,
        part: fn(&mut Self) -> Parsed,
        levels: fn(usize) -> usize,
        join: fn(Box<Expr>, Vec<(O, Expr)>) -> ExprKind,
    ) -> Parsed {
        let start = self.start();
        let first = part(self)?;
        let mut depth = first.depth;
        let mut rest = Vec::new();
        while let Some(operator) = self.peek().and_then(operator) {
            let place = self.here();
            self.next += 1;
            let next = part(self)?;
            depth = depth.max(next.depth);
            rest.push((operator, next.tree));
            if levels(rest.len()) > DEPTH_MAX {
                return Err(too_many_factors(place));
            }
        }
        if rest.is_empty() {
            Ok(first)
        } else {
            let depth = depth + levels(rest.len());
            self.grow(join(Box::new(first.tree), rest), start, depth)
        }
    }

    /// `!!a` and `--a`; CEL does not mix the two.
    fn prefixed(&mut self) -> Parsed {
        let Some(operator @ (TokenKind::Not | TokenKind::Minus)) = self.peek() else {
            return self.member();
        };
        let mut places = Vec::new();
        while let Some(place) = self.eat(operator) {
            if places.len() >= DEPTH_MAX {
                return Err(too_deep(place));
            }
            places.push(place.start);
        }
        if let Some(TokenKind::Not | TokenKind::Minus) = self.peek() {
            let error = self.unexpected("a value", None);
            return Err(error.with_help("CEL does not mix `!` and `-`: use parentheses"));
        }
        let wrap = if operator == TokenKind::Not {
            ExprKind::Not
        } else {
            ExprKind::Negate
        };
        let mut grown = self.member()?;
        for start in places.into_iter().rev() {
            let depth = grown.depth + 1;
            grown = self.grow(wrap(Box::new(grown.tree)), start, depth)?;
        }
        Ok(grown)
    }
}

/// Reading tokens and building nodes.
impl Parser<'_> {
    /// The next token, if there is one.
    fn peek(&self) -> Option<TokenKind> {
        self.tokens.get(self.next).map(|token| token.kind)
    }

    /// Where the next token stands; the end of the text after the last.
    fn here(&self) -> Span {
        let end = self.text.len();
        self.tokens
            .get(self.next)
            .map_or(end..end, |token| token.span.clone())
    }

    fn start(&self) -> usize {
        self.here().start
    }

    /// Where the last token that was read ends.
    fn end(&self) -> usize {
        let last = self.next.checked_sub(1).and_then(|last| self.tokens.get(last));
        last.map_or(0, |token| token.span.end)
    }

    /// Reads the next token if it is of this kind, and says where it stands.
    fn eat(&mut self, kind: TokenKind) -> Option<Span> {
        let token = self.tokens.get(self.next).filter(|token| token.kind == kind)?;
        self.next += 1;
        Some(token.span.clone())
    }

    /// The text at a span.
    fn slice(&self, span: &Span) -> &str {
        self.text.get(span.clone()).unwrap_or_default()
    }

    /// Parses one level down, inside what opens at `place`.
    fn deeper<T>(
        &mut self,
        place: Span,
        part: impl FnOnce(&mut Self) -> Result<T, SyntaxError>,
    ) -> Result<T, SyntaxError> {
        if self.nesting >= DEPTH_MAX {
            return Err(too_deep(place));
        }
        self.nesting += 1;
        let parsed = part(self);
        self.nesting -= 1;
        parsed
    }

    /// A node from `start` to the last token that was read.
    fn grow(&self, kind: ExprKind, start: usize, depth: usize) -> Parsed {
        let span = start..self.end();
        if depth > DEPTH_MAX {
            return Err(too_deep(span));
        }
        Ok(Grown {
            tree: Expr { kind, span },
            depth,
        })
    }
}

enum Relation {
    Compare(CompareOperator),
    In,
}

impl Relation {
    fn of(kind: TokenKind) -> Option<Self> {
        let operator = match kind {
            TokenKind::In => return Some(Self::In),
            TokenKind::Equal => CompareOperator::Equal,
            TokenKind::NotEqual => CompareOperator::NotEqual,
            TokenKind::Less => CompareOperator::Less,
            TokenKind::LessOrEqual => CompareOperator::LessOrEqual,
            TokenKind::Greater => CompareOperator::Greater,
            TokenKind::GreaterOrEqual => CompareOperator::GreaterOrEqual,
            _ => return None,
        };
        Some(Self::Compare(operator))
    }
}

fn too_many_factors(place: Span) -> SyntaxError {
    SyntaxError::new(
        place,
        format!("the product has more than {DEPTH_MAX} factors after the first"),
    )
    .with_help("work a part of the product out as a figure, and multiply by its name; `/ 3 / 3` is `/ 9`")
}

fn too_deep(place: Span) -> SyntaxError {
    SyntaxError::new(
        place,
        format!("the expression is nested deeper than {DEPTH_MAX} levels"),
    )
    .with_help(TOO_LARGE_HELP)
}
