//! `condition ? then : otherwise`: two sides of one type.

use std::rc::Rc;

use astragal_model::Expression;

use super::{Scope, Typed, pair};
use crate::syntax::Expr;
use crate::typed::guard::guards;
use crate::typed::{OptionDomain, PlacedText, Type};

impl Scope<'_> {
    /// `condition ? then : otherwise`; each side may rely on what the condition guards.
    pub(super) fn conditional(
        &self,
        text: &PlacedText,
        condition: &Expr,
        sides: [&Expr; 2],
        wanted: Option<&Type>,
    ) -> Option<Typed> {
        let decided = self.truth(text, condition);
        let scopes = [true, false].map(|truth| self.knowing(guards(condition, truth)));
        let [then_scope, otherwise_scope] = &scopes;
        let [then_expr, otherwise_expr] = sides;
        let (then, otherwise) = pair(
            wanted,
            (then_expr, &|wanted| then_scope.typed(text, then_expr, wanted)),
            (otherwise_expr, &|wanted| {
                otherwise_scope.typed(text, otherwise_expr, wanted)
            }),
        );
        let (decided, then, otherwise) = (decided?, then?, otherwise?);
        self.fits(text, &otherwise_expr.span, &otherwise.of, &then.of)?;
        let of = union(&then.of, &otherwise.of);
        let expression = Expression::Conditional(
            Box::new(decided),
            Box::new(then.expression),
            Box::new(otherwise.expression),
        );
        Some(Typed { expression, of })
    }
}

/// A type that covers both; options are united.
fn union(left: &Type, right: &Type) -> Type {
    let options = match (&left.options, &right.options) {
        (Some(left), Some(right)) if left.attribute.is_some() && left.attribute == right.attribute => {
            Some(left.clone())
        }
        (Some(left), Some(right)) => Some(Rc::new(OptionDomain {
            ids: left.ids.union(&right.ids).cloned().collect(),
            attribute: None,
            of: format!("{} and {}", left.of, right.of),
        })),
        _ => None,
    };
    Type {
        value_type: left.value_type,
        options,
    }
}
