//! Rules, figures, notices and open attributes of one unit for a program.

use astragal_model::{
    FigureFinding, NoticeFinding, NoticeKind, OpenAttribute, Outcome, PartIndex, RuleFinding, RuleName,
    RuleState, Standing, Subject,
};
use serde::Serialize;

use crate::json::values::{Cause, Ending, Named, Readable, Wanted, cause, ending, named, readable, wants};
use crate::quote::work::QuotedUnit;

/// A rule that does not plainly hold.
#[derive(Serialize)]
pub(crate) struct RuleAnswer {
    id: String,
    part: Option<Named>,
    /// `catalog`, `policy` or `implicit`.
    declared_by: &'static str,
    authority: String,
    basis: Option<String>,
    /// `broken`, `no_row` or `undecided`.
    state: &'static str,
    /// `binds`, `warns`, `sign_off`, `waived` or `not_applied`.
    standing: &'static str,
    waiver: Option<String>,
    message: String,
    cause: Option<Cause>,
    wants: Vec<Wanted>,
    reads: Vec<ReadAnswer>,
    standards_against_picks: Vec<Named>,
}

/// Something that a rule reads.
#[derive(Serialize)]
pub(crate) struct ReadAnswer {
    subject: Readable,
    directly: bool,
    picked: bool,
    outcome: Ending,
}

#[derive(Serialize)]
pub(crate) struct FigureAnswer {
    id: String,
    label: String,
    shown: bool,
    /// Whether the unit has the figure's part; `null` when that is not known.
    part_exists: Option<bool>,
    outcome: Ending,
}

#[derive(Serialize)]
pub(crate) struct NoticeAnswer {
    id: String,
    kind: &'static str,
    text: String,
    basis: Option<String>,
    /// Whether it is carried for certain; otherwise it is shown for want of something.
    certain: bool,
    wants: Vec<Wanted>,
}

#[derive(Serialize)]
pub(crate) struct OpenAnswer {
    attribute: Named,
    to_choose: bool,
    wants: Vec<Wanted>,
}

impl RuleAnswer {
    pub(crate) fn new(unit: &QuotedUnit<'_>, finding: &RuleFinding) -> Self {
        let catalog = unit.used.catalog;
        let (state, cause_of, wanted) = match &finding.state {
            RuleState::Broken => ("broken", None, Vec::new()),
            RuleState::NoRow(why) => ("no_row", Some(cause(catalog, why)), Vec::new()),
            RuleState::Undecided(more) => ("undecided", None, wants(unit, more)),
        };
        let (standing, waiver) = standing(unit, finding.standing);
        let against = finding.standards_against_picks.iter();
        Self {
            id: finding.id.to_string(),
            part: finding.part.map(|part| part_named(unit, part)),
            declared_by: match finding.rule {
                RuleName::Catalog(_) => "catalog",
                RuleName::Policy(_) => "policy",
                _ => "implicit",
            },
            authority: finding.authority.to_string(),
            basis: unit.basis(finding).map(str::to_owned),
            state,
            standing,
            waiver,
            message: finding.message.clone(),
            cause: cause_of,
            wants: wanted,
            reads: reads(unit, finding),
            standards_against_picks: against
                .map(|index| named(catalog, Subject::Attribute(*index)))
                .collect(),
        }
    }
}

fn reads(unit: &QuotedUnit<'_>, finding: &RuleFinding) -> Vec<ReadAnswer> {
    finding.reads.iter().map(|read| read_answer(unit, read)).collect()
}

/// What is read, with its value.
pub(crate) fn read_answer(unit: &QuotedUnit<'_>, read: &astragal_model::Read) -> ReadAnswer {
    let is_picked = |subject: Subject| match subject {
        Subject::Attribute(index) => unit.filled.choices.at(index).is_picked(),
        _ => false,
    };
    ReadAnswer {
        subject: readable(unit.used.catalog, read.subject),
        directly: read.directly,
        picked: is_picked(read.subject),
        outcome: ending(unit, read.subject, &read.outcome),
    }
}

fn standing(unit: &QuotedUnit<'_>, standing: Standing) -> (&'static str, Option<String>) {
    match standing {
        Standing::Binds => ("binds", None),
        Standing::Warns => ("warns", None),
        Standing::SignOff => ("sign_off", None),
        Standing::Waived(position) => {
            let waiver = unit.request.waivers.get(position);
            ("waived", waiver.map(|waiver| waiver.reference.clone()))
        }
        Standing::NotApplied => ("not_applied", None),
    }
}

/// A part by id and label.
pub(crate) fn part_named(unit: &QuotedUnit<'_>, part: PartIndex) -> Named {
    let declared = unit.used.catalog.declarations().parts.at(part);
    Named {
        id: declared.id.to_string(),
        label: declared.label.clone(),
    }
}

impl FigureAnswer {
    pub(crate) fn new(unit: &QuotedUnit<'_>, finding: &FigureFinding) -> Self {
        let subject = Subject::Figure(finding.figure);
        let Named { id, label } = named(unit.used.catalog, subject);
        let exists = match &finding.part_exists {
            Outcome::Unknown(_) | Outcome::Undefined(_) => None,
            known => Some(known.is_truth(true)),
        };
        Self {
            id,
            label,
            shown: unit.used.catalog.declarations().figures.at(finding.figure).shown,
            part_exists: exists,
            outcome: ending(unit, subject, &finding.outcome),
        }
    }
}

impl NoticeAnswer {
    pub(crate) fn new(unit: &QuotedUnit<'_>, finding: &NoticeFinding) -> Self {
        let declared = unit.used.catalog.declarations().notices.get(finding.notice);
        Self {
            id: finding.id.to_string(),
            kind: match finding.kind {
                NoticeKind::Caution => "caution",
                NoticeKind::Warranty => "warranty",
                NoticeKind::SignOff => "sign_off",
            },
            text: finding.text.clone(),
            basis: declared.and_then(|notice| notice.basis.clone()),
            certain: finding.wants.is_none(),
            wants: finding
                .wants
                .as_ref()
                .map(|more| wants(unit, more))
                .unwrap_or_default(),
        }
    }
}

impl OpenAnswer {
    pub(crate) fn new(unit: &QuotedUnit<'_>, open: &OpenAttribute) -> Self {
        let catalog = unit.used.catalog;
        Self {
            attribute: named(catalog, Subject::Attribute(open.attribute)),
            to_choose: open.is_to_choose(catalog),
            wants: wants(unit, &open.wants),
        }
    }
}
