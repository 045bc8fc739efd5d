//! The tightest level: literals, names, calls, members, lists and parentheses.

use super::super::ast::{ExprKind, Literal, Placed};
use super::super::error::{Span, SyntaxError};
use super::super::refused::outside;
use super::super::text::unescape;
use super::super::token::{TokenKind, is_keyword, is_reserved};
use super::{Expr, Parsed, Parser};

impl Parser<'_> {
    /// A value and the members that follow it.
    pub(super) fn member(&mut self) -> Parsed {
        let start = self.start();
        let mut grown = self.primary()?;
        loop {
            if self.peek() == Some(TokenKind::OpenList) {
                let help = "lists are searched with `in`; parts and properties are named with a dot";
                return Err(outside("[", self.here(), "an index", Some(help)));
            }
            if self.eat(TokenKind::Dot).is_none() {
                return Ok(grown);
            }
            let text = self.slice(&self.here()).to_owned();
            if is_keyword(&text) {
                return Err(self.unexpected("a name after `.` that is no keyword of CEL", None));
            }
            let Some(place) = self.eat(TokenKind::Word) else {
                return Err(self.unexpected("a name after `.`", None));
            };
            if self.peek() == Some(TokenKind::OpenParenthesis) {
                return Err(method(&text, place));
            }
            let depth = grown.depth + 1;
            let name = Placed { text, span: place };
            grown = self.grow(
                ExprKind::Member {
                    base: Box::new(grown.tree),
                    name,
                },
                start,
                depth,
            )?;
        }
    }

    fn primary(&mut self) -> Parsed {
        let place = self.here();
        let Some(kind) = self.peek() else {
            return Err(self.unexpected("a value", None));
        };
        match kind {
            TokenKind::Number => self.literal(place, |text, _| Ok(Literal::Number(text.to_owned()))),
            TokenKind::Text => self.literal(place, |text, place| Ok(Literal::Text(unescape(text, place)?))),
            TokenKind::True => self.literal(place, |_, _| Ok(Literal::Bool(true))),
            TokenKind::False => self.literal(place, |_, _| Ok(Literal::Bool(false))),
            TokenKind::Word => self.word(place),
            TokenKind::OpenParenthesis => {
                self.next += 1;
                let inner = self.deeper(place.clone(), Self::conditional)?;
                self.close(TokenKind::CloseParenthesis, place)?;
                Ok(inner)
            }
            TokenKind::OpenList => {
                self.next += 1;
                let (items, depth) =
                    self.deeper(place.clone(), |p| p.items(TokenKind::CloseList, place.clone()))?;
                self.grow(ExprKind::List(items), place.start, depth)
            }
            TokenKind::Dot => Err(outside(
                ".",
                place,
                "a leading dot",
                Some("write the name without the dot"),
            )),
            _ => Err(self.unexpected("a value", None)),
        }
    }

    fn literal(&mut self, place: Span, read: fn(&str, &Span) -> Result<Literal, SyntaxError>) -> Parsed {
        self.next += 1;
        let literal = read(self.slice(&place), &place)?;
        self.grow(ExprKind::Literal(literal), place.start, 0)
    }

    /// A name, or the call of a function.
    fn word(&mut self, place: Span) -> Parsed {
        let text = self.slice(&place).to_owned();
        if text == "null" {
            let help = "a condition on what may not be asked is written `is_asked(x)`";
            return Err(outside("null", place, "the missing value", Some(help)));
        }
        if is_reserved(&text) {
            let message = format!("found `{text}`, a word that CEL reserves, expected a value");
            let help = match text.as_str() {
                "if" | "else" => "a choice between two values is written `condition ? a : b`",
                _ => "no name can be a reserved word; a text is written in quotes",
            };
            return Err(SyntaxError::new(place, message).with_help(help));
        }
        self.next += 1;
        let Some(open) = self.eat(TokenKind::OpenParenthesis) else {
            return self.grow(ExprKind::Name(text), place.start, 0);
        };
        if text == "not" {
            return Err(SyntaxError::new(place, "found `not`, which is no function")
                .with_help("\"not\" is written `!`"));
        }
        let (arguments, depth) = self.deeper(open.clone(), |p| p.items(TokenKind::CloseParenthesis, open))?;
        let start = place.start;
        self.grow(
            ExprKind::Call {
                function: Placed { text, span: place },
                arguments,
            },
            start,
            depth,
        )
    }

    /// Items between commas up to the closing bracket, and the depth of a node that holds them.
    /// As in CEL, a list may end with a comma and a call may not.
    fn items(&mut self, closing: TokenKind, open: Span) -> Result<(Vec<Expr>, usize), SyntaxError> {
        let mut items = Vec::new();
        let mut depth = 0;
        if self.eat(closing).is_some() {
            return Ok((items, depth));
        }
        loop {
            let item = self.conditional()?;
            depth = depth.max(item.depth + 1);
            items.push(item.tree);
            if self.eat(TokenKind::Comma).is_none() {
                self.close(closing, open)?;
                return Ok((items, depth));
            }
            if closing == TokenKind::CloseList && self.eat(closing).is_some() {
                return Ok((items, depth));
            }
        }
    }

    fn close(&mut self, closing: TokenKind, open: Span) -> Result<(), SyntaxError> {
        match self.eat(closing) {
            Some(_) => Ok(()),
            None => Err(self.unclosed(closing, open)),
        }
    }
}

fn method(name: &str, place: Span) -> SyntaxError {
    let found = format!(".{name}(...)");
    let help = match name {
        "all" => "over parts write `all(...)`".to_owned(),
        "exists" | "exists_one" => "over parts write `any(...)`".to_owned(),
        _ => format!("functions are called as `{name}(...)`"),
    };
    let is_macro = matches!(name, "all" | "exists" | "exists_one" | "map" | "filter");
    outside(
        &found,
        place,
        if is_macro { "a macro" } else { "a method call" },
        Some(&help),
    )
}
