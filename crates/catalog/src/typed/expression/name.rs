//! Names: attributes, measures, facts and figures; parts of them; properties of options; who deducts.

use astragal_model::{AttributeIndex, Expression, Id, PartIndex, Subject, Value};

use super::{Scope, Typed};
use crate::finding::Finding;
use crate::nearest::nearest;
use crate::syntax::{Expr, Span};
use crate::typed::guard::path;
use crate::typed::{Named, PartWise, PlacedText, Type};

impl Scope<'_> {
    /// A dotted name.
    pub(super) fn name(&self, text: &PlacedText, expr: &Expr) -> Option<Typed> {
        let Some(dotted) = path(expr) else {
            return self.error(
                text,
                &expr.span,
                "NOT_A_NAME",
                "only names have members".to_owned(),
                "write a name before the dot: `exterior.gloss`",
            );
        };
        let mut words = dotted.split('.');
        let first = words.next().unwrap_or_default();
        let rest: Vec<&str> = words.collect();
        let span = &expr.span;
        match self.names.find(first) {
            None => self.unknown_name(text, span, first),
            Some(Named::Part(_)) => self.error(
                text,
                span,
                "NOT_A_VALUE",
                format!("`{first}` is a part, not a value"),
                "name an attribute of the part: `glazing.upper`",
            ),
            Some(Named::Measure(index, value_type)) => match rest.as_slice() {
                [] => Some(read(Subject::Measure(*index), Type::plain(*value_type))),
                ["deducted_by"] => {
                    let subject = Subject::DeductedBy(*index);
                    Some(read(subject, self.names.type_of(subject)?))
                }
                _ => self.no_member(
                    text,
                    span,
                    first,
                    &rest,
                    "the one member of a measure is `deducted_by`",
                ),
            },
            Some(Named::Fact(index, of)) => match rest.as_slice() {
                [] => Some(read(Subject::Fact(*index), of.clone())),
                _ => self.no_member(text, span, first, &rest, "a fact has no members"),
            },
            Some(Named::Figure(partwise, of)) => {
                let (index, left) = self.pick(text, span, first, partwise, &rest)?;
                if !left.is_empty() {
                    return self.no_member(text, span, first, &rest, "a figure has no members but its parts");
                }
                // Without a type the figure itself has a finding.
                Some(read(Subject::Figure(index), of.clone()?))
            }
            Some(Named::Attribute(partwise)) => {
                let (index, left) = self.pick(text, span, first, partwise, &rest)?;
                let subject = Subject::Attribute(index);
                match left {
                    [] => Some(read(subject, self.names.type_of(subject)?)),
                    [property] => self.property(text, span, (index, &dotted), property),
                    _ => self.no_member(
                        text,
                        span,
                        first,
                        &rest,
                        "an option has properties, and these have no members",
                    ),
                }
            }
        }
    }

    /// The attribute that an expression names, whatever its part.
    pub(super) fn attribute(&self, text: &PlacedText, expr: &Expr) -> Option<AttributeIndex> {
        match self.typed(text, expr, None)? {
            Typed {
                expression: Expression::Read(Subject::Attribute(index)),
                ..
            } => Some(index),
            _ => self.error(
                text,
                &expr.span,
                "NOT_AN_ATTRIBUTE",
                "this is not an attribute".to_owned(),
                "is_asked takes the name of an attribute: `is_asked(exterior)`",
            ),
        }
    }

    /// Which thing a name means: this part's, the named part's, or the only one; and the words that are left.
    fn pick<'w, I: Copy + PartialEq>(
        &self,
        text: &PlacedText,
        span: &Span,
        first: &str,
        partwise: &PartWise<I>,
        rest: &'w [&'w str],
    ) -> Option<(I, &'w [&'w str])> {
        let (kind, of) = match partwise {
            PartWise::Whole(index) => return Some((*index, rest)),
            PartWise::PerPart { kind, of } => (kind, of),
        };
        if let Some((word, left)) = rest.split_first()
            && let Some(part) = self.names.part(word)
        {
            return match of.get(&part) {
                Some(index) => Some((*index, left)),
                None => self.no_member(
                    text,
                    span,
                    first,
                    rest,
                    &self.parts_help(first, of.keys().copied()),
                ),
            };
        }
        if let Some(index) = self.part.and_then(|part| of.get(&part)) {
            return Some((*index, rest));
        }
        let help = format!(
            "write {}, or any({first} ...), all(...) or sum(...) over the parts",
            self.parts_help(first, of.keys().copied())
        );
        self.error(
            text,
            span,
            "PART_NOT_SAID",
            format!("`{first}` is one a {kind}, and here nothing says which {kind}"),
            &help,
        )
    }

    fn parts_help(&self, first: &str, parts: impl Iterator<Item = PartIndex>) -> String {
        let named: Vec<String> = parts
            .filter_map(|part| self.names.part_id(part))
            .map(|part| format!("`{first}.{part}`"))
            .collect();
        named.join(" or ")
    }

    fn property(
        &self,
        text: &PlacedText,
        span: &Span,
        (index, dotted): (AttributeIndex, &str),
        property: &str,
    ) -> Option<Typed> {
        let shape = self.names.attribute(index)?;
        let id = Id::new(property);
        let mut values = shape
            .options
            .iter()
            .filter_map(|option| option.properties.get(&id));
        let Some(value) = values.next() else {
            let known = shape
                .options
                .iter()
                .flat_map(|option| option.properties.keys())
                .map(Id::as_str);
            let help = match nearest(property, known) {
                Some(near) => format!("did you mean `{near}`?"),
                None => format!("give the options of `{}` a property `{property}`", shape.id),
            };
            return self.error(
                text,
                span,
                "UNKNOWN_PROPERTY",
                format!("no option of `{}` has a property `{property}`", shape.id),
                &help,
            );
        };
        let base = dotted
            .strip_suffix(property)
            .and_then(|base| base.strip_suffix('.'))
            .unwrap_or(dotted);
        if shape.conditional && !self.asked.contains(base) {
            return self.error(
                text,
                span,
                "NOT_GUARDED",
                format!("`{base}` may be not asked here, and then it has no `{property}`"),
                &format!("write `is_asked({base}) && ...` or `!is_asked({base}) || ...`"),
            );
        }
        let of = match value {
            Value::Option(_) | Value::NotAsked => return None,
            other => Type::plain(other.value_type()),
        };
        Some(Typed {
            expression: Expression::Property(index, id),
            of,
        })
    }

    fn unknown_name(&self, text: &PlacedText, span: &Span, name: &str) -> Option<Typed> {
        let mut finding = Finding::error("UNKNOWN_NAME", format!("`{name}` is not a name of this catalog"))
            .at(text.at(span));
        finding = match nearest(name, self.names.all()) {
            _ if self.names.is_option(name) => {
                finding.with_help(format!("an option is written in quotes: `\"{name}\"`"))
            }
            Some(near) => finding.with_help(format!("did you mean `{near}`?")),
            None => finding.with_help(
                "names are attributes, measures, facts and figures; an option is written in quotes",
            ),
        };
        self.findings.push(finding);
        None
    }

    fn no_member<T>(
        &self,
        text: &PlacedText,
        span: &Span,
        first: &str,
        rest: &[&str],
        help: &str,
    ) -> Option<T> {
        let message = format!("`{first}` has no member `{}`", rest.join("."));
        self.error(text, span, "UNKNOWN_MEMBER", message, help)
    }
}

fn read(subject: Subject, of: Type) -> Typed {
    Typed {
        expression: Expression::Read(subject),
        of,
    }
}
