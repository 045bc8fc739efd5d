//! Calls of the trade's functions: each argument has a type of its own.

use astragal_model::{ArgumentKind, Expression, Function, Id, TradeFunction, Value, ValueType};

use super::{Scope, Typed};
use crate::nearest::quoted_list;
use crate::syntax::{Expr, ExprKind, Literal};
use crate::typed::{PlacedText, Type};

impl Scope<'_> {
    pub(super) fn trade_call(
        &self,
        text: &PlacedText,
        expr: &Expr,
        function: TradeFunction,
        arguments: &[Expr],
    ) -> Option<Typed> {
        let declared = function.arguments();
        if declared.len() != arguments.len() {
            let message = format!(
                "`{}` takes {} argument(s), not {}",
                function.name(),
                declared.len(),
                arguments.len()
            );
            let names: Vec<&str> = declared.iter().map(|argument| argument.name).collect();
            let help = format!("write {}({})", function.name(), names.join(", "));
            return self.error(text, &expr.span, "WRONG_ARGUMENTS", message, &help);
        }
        let mut typed = Vec::new();
        let mut is_whole = true;
        for (argument, declared) in arguments.iter().zip(declared) {
            match self.trade_argument(text, argument, declared.kind, function) {
                Some(argument) => typed.push(argument),
                None => is_whole = false,
            }
        }
        is_whole.then(|| Typed {
            expression: Expression::Call(Function::Trade(function), typed),
            of: Type::plain(function.result()),
        })
    }

    fn trade_argument(
        &self,
        text: &PlacedText,
        argument: &Expr,
        kind: ArgumentKind,
        function: TradeFunction,
    ) -> Option<Expression> {
        let ArgumentKind::OneOf(words) = kind else {
            let wanted = Type::plain(kind.value_type());
            let typed = self.typed(text, argument, Some(&wanted))?;
            self.fits(text, &argument.span, &typed.of, &wanted)?;
            return Some(typed.expression);
        };
        let strange = |message: String| {
            let help = format!("it knows {}", quoted_list(words.iter().copied()));
            self.error(text, &argument.span, "UNKNOWN_OPTION", message, &help)
        };
        // A text has no other side here that would say what it is.
        if let ExprKind::Literal(Literal::Text(written)) = &argument.kind {
            if words.contains(&written.as_str()) {
                return Some(Expression::Literal(Value::Option(Id::new(written))));
            }
            return strange(format!("`{}` does not know `{written}`", function.name()));
        }
        let wanted = Type::plain(ValueType::Option);
        let typed = self.typed(text, argument, None)?;
        self.fits(text, &argument.span, &typed.of, &wanted)?;
        let unknown = typed.of.options.as_ref().and_then(|domain| {
            let is_unknown = |id: &&Id| !words.contains(&id.as_str());
            domain.ids.iter().find(is_unknown).cloned()
        });
        match unknown {
            None => Some(typed.expression),
            Some(id) => strange(format!(
                "this may be `{id}`, which `{}` does not know",
                function.name()
            )),
        }
    }
}
