//! Figures and notices of a judged unit.

use crate::evaluate::Environment;
use crate::judge::report::{FigureFinding, NoticeFinding};
use crate::value::{Outcome, Value};

/// Every figure with its value, in catalog order.
pub(crate) fn figure_findings(environment: &Environment<'_>) -> Vec<FigureFinding> {
    let figures = environment.declarations.figures.iter();
    figures
        .map(|(index, figure)| FigureFinding {
            figure: index,
            outcome: environment.figures.at(index).clone(),
            part_exists: figure
                .part
                .and_then(|part| environment.declarations.parts.at(part).when.as_ref())
                .map_or_else(|| Outcome::truth(true), |when| environment.evaluate(when)),
        })
        .collect()
}

/// Every notice that is carried, or may be: shown as well when its condition is unknown or undefined.
pub(crate) fn notice_findings(environment: &Environment<'_>) -> Vec<NoticeFinding> {
    let mut findings = Vec::new();
    for (position, notice) in environment.declarations.notices.iter().enumerate() {
        let outcome = notice
            .when
            .as_ref()
            .map_or_else(|| Outcome::truth(true), |when| environment.evaluate(when));
        let wants = match outcome {
            Outcome::Known(Value::Bool(false)) => continue,
            Outcome::Unknown(wants) => Some(wants),
            Outcome::Known(_) | Outcome::Undefined(_) => None,
        };
        findings.push(NoticeFinding {
            notice: position,
            id: notice.id.clone(),
            kind: notice.kind,
            text: notice.text.fill(|piece| environment.show_piece(piece)),
            wants,
        });
    }
    findings
}
