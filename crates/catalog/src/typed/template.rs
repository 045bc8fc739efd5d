//! Messages of a catalog: the names in braces become subjects and properties.
//!
//! `{unit_width}` is the value of a figure, `{exterior.gloss}` a property of the option that is chosen,
//! `{glazing.upper}` the attribute of a part, `{glazing}` that of this part where one is meant.

use std::collections::BTreeSet;

use astragal_model::{AttributeIndex, Id, Piece, Subject, Template};

use crate::finding::Finding;
use crate::nearest::{nearest, quoted_list};
use crate::source::Sources;
use crate::syntax::{Expr, ExprKind, PartKind, Placed, parse_template};
use crate::typed::{Named, PartWise, PlacedText, Scope};

/// Reads a message; `None` means that findings say what is wrong.
pub(crate) fn template(text: &PlacedText, scope: &Scope<'_>) -> Option<Template> {
    let parts = match parse_template(&text.text) {
        Ok(parts) => parts,
        Err(error) => {
            text.report(error, scope.findings);
            return None;
        }
    };
    let pieces: Vec<Option<Piece>> = parts
        .into_iter()
        .map(|part| match part.kind {
            PartKind::Literal(literal) => Some(Piece::Text(literal)),
            PartKind::Placeholder(name) => piece(&words(&name), text, scope),
        })
        .collect();
    let pieces = pieces.into_iter().collect::<Option<Vec<Piece>>>()?;
    Some(Template { pieces })
}

/// `glazing.upper.gloss` as its three words.
fn words(name: &Expr) -> Vec<Placed> {
    let mut words = Vec::new();
    let mut rest = name;
    loop {
        match &rest.kind {
            ExprKind::Member { base, name } => {
                words.push(name.clone());
                rest = base;
            }
            ExprKind::Name(name) => {
                words.push(Placed {
                    text: name.clone(),
                    span: rest.span.clone(),
                });
                break;
            }
            _ => break,
        }
    }
    words.reverse();
    words
}

fn piece(words: &[Placed], text: &PlacedText, scope: &Scope<'_>) -> Option<Piece> {
    let (first, rest) = words.split_first()?;
    if scope.names.find(&first.text).is_none() {
        let known = || scope.names.all();
        let help = match nearest(&first.text, known()) {
            Some(near) => format!("did you mean `{near}`?"),
            None => format!("names are {}", quoted_list(known())),
        };
        let message = format!("`{}` is not a name of this catalog", first.text);
        let finding = Finding::error("UNKNOWN_NAME", message).at(text.at(&first.span));
        scope.findings.push(finding.with_help(help));
        return None;
    }
    // The words that name the subject; what is left is a property.
    let named = match (scope.names.find(&first.text), rest.first()) {
        (Some(Named::Attribute(PartWise::PerPart { .. })), Some(part))
            if scope.names.part(&part.text).is_some() =>
        {
            2
        }
        (Some(Named::Attribute(_)), _) => 1,
        _ => words.len(),
    };
    let (subject_words, property) = words.split_at_checked(named)?;
    let subject = subject(subject_words, text, scope)?;
    let Some((property, more)) = property.split_first() else {
        return Some(Piece::Value(subject));
    };
    let Subject::Attribute(attribute) = subject else {
        return None;
    };
    if let Some(extra) = more.first() {
        let message = format!("found `.{}` after a property", extra.text);
        let finding = Finding::error("UNKNOWN_NAME", message).at(text.at(&extra.span));
        scope
            .findings
            .push(finding.with_help("a property has no parts; leave it out"));
        return None;
    }
    property_piece(attribute, property, text, scope)
}

fn subject(words: &[Placed], text: &PlacedText, scope: &Scope<'_>) -> Option<Subject> {
    let span = words.first()?.span.start..words.last()?.span.end;
    let names: Vec<&str> = words.iter().map(|word| word.text.as_str()).collect();
    let name = PlacedText::new(names.join("."), text.at(&span), &Sources::new());
    scope.subject(&name).map(|(subject, _)| subject)
}

fn property_piece(
    attribute: AttributeIndex,
    property: &Placed,
    text: &PlacedText,
    scope: &Scope<'_>,
) -> Option<Piece> {
    let shape = scope.names.attribute(attribute)?;
    let known: BTreeSet<&str> = shape
        .options
        .iter()
        .flat_map(|option| option.properties.keys().map(Id::as_str))
        .collect();
    if known.contains(property.text.as_str()) {
        return Some(Piece::Property(attribute, Id::new(&property.text)));
    }
    let message = format!("no option of `{}` has a property `{}`", shape.id, property.text);
    let help = match nearest(&property.text, known.iter().copied()) {
        Some(near) => format!("did you mean `{near}`?"),
        None if known.is_empty() => "they have no properties; leave it out".to_owned(),
        None => format!("properties are {}", quoted_list(known.iter().copied())),
    };
    let finding = Finding::error("UNKNOWN_PROPERTY", message).at(text.at(&property.span));
    scope.findings.push(finding.with_help(help));
    None
}

#[cfg(test)]
mod tests;
