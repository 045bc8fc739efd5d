//! `[[rule]]` and `[[notice]]`: what must hold, and what a finished unit carries.

use astragal_model::{Effect, NoticeKind};

use super::{Fields, Head, IdKind};
use crate::typed::{Parsed, PlacedText};

/// `[[rule]]`, of a catalog or of a policy.
#[derive(Clone, Debug)]
pub(crate) struct RawRule {
    pub(crate) head: Head,
    pub(crate) authority: Option<PlacedText>,
    pub(crate) effect: Effect,
    pub(crate) when: Option<Parsed>,
    /// `None`: it could not be read.
    pub(crate) requirement: Option<RawRequirement>,
    pub(crate) message: Option<PlacedText>,
    pub(crate) basis: Option<String>,
    pub(crate) waivable: bool,
    pub(crate) per: Option<PlacedText>,
    /// The one catalog that a policy's rule is for.
    pub(crate) catalog: Option<PlacedText>,
}

/// What a rule demands.
#[derive(Clone, Debug)]
pub(crate) enum RawRequirement {
    /// A condition.
    Require(Parsed),
    /// A row of a sheet, or none of them.
    Table {
        /// The sheet, relative to the file that says it.
        file: PlacedText,
        /// Whether the rows are allowed; otherwise they are forbidden.
        allowed: bool,
        /// How the sheet is laid out.
        layout: RawLayout,
    },
}

/// How the sheet of a rule is laid out.
#[derive(Clone, Debug)]
#[expect(
    clippy::large_enum_variant,
    reason = "there is one a rule, and it does not live long"
)]
pub(crate) enum RawLayout {
    /// A row a line.
    List,
    /// A row a marked cell.
    Matrix {
        /// What the first column names.
        down: PlacedText,
        /// What the first row names.
        across: PlacedText,
    },
}

/// `[[notice]]`.
#[derive(Clone, Debug)]
pub(crate) struct RawNotice {
    pub(crate) head: Head,
    pub(crate) kind: NoticeKind,
    pub(crate) when: Option<Parsed>,
    pub(crate) text: Option<PlacedText>,
    pub(crate) basis: Option<String>,
    pub(crate) per: Option<PlacedText>,
}

/// The words for what follows when a rule does not hold.
pub(super) const EFFECTS: [(&str, Effect); 3] = [
    ("block", Effect::Block),
    ("warn", Effect::Warn),
    ("sign_off", Effect::SignOff),
];

pub(super) fn rule(fields: Fields<'_>) -> Option<RawRule> {
    read(fields, false)
}

pub(super) fn policy_rule(fields: Fields<'_>) -> Option<RawRule> {
    read(fields, true)
}

fn read(mut fields: Fields<'_>, of_policy: bool) -> Option<RawRule> {
    let head = fields.head(IdKind::Rule);
    let authority = fields.text("authority");
    let effect = fields.word("effect", &EFFECTS);
    let when = fields.expression("when");
    let requirement = requirement(&mut fields);
    let message = fields.required_text("message");
    let basis = fields.plain("basis");
    let waivable = fields.flag("waivable");
    let per = fields.text("per");
    let catalog = if of_policy { fields.text("catalog") } else { None };
    fields.reader.finish();
    Some(RawRule {
        head: head?,
        authority,
        effect: effect.unwrap_or_default(),
        when,
        requirement,
        message,
        basis,
        waivable,
        per,
        catalog,
    })
}

fn requirement(fields: &mut Fields<'_>) -> Option<RawRequirement> {
    match fields.exactly_one(&["require", "table"]) {
        Some("require") => {
            fields.without(
                &["rows", "layout", "down", "across"],
                "which only a rule by table has",
            );
            fields.expression("require").map(RawRequirement::Require)
        }
        Some(_) => table(fields),
        None => {
            for key in ["rows", "layout", "down", "across"] {
                let _ = fields.reader.node(key);
            }
            None
        }
    }
}

fn table(fields: &mut Fields<'_>) -> Option<RawRequirement> {
    let file = fields.text("table");
    let allowed = fields.required_word("rows", &[("allowed", true), ("forbidden", false)]);
    let layout = match fields.word("layout", &[("list", false), ("matrix", true)]) {
        Some(true) => {
            let (down, across) = (fields.required_text("down"), fields.required_text("across"));
            down.zip(across)
                .map(|(down, across)| RawLayout::Matrix { down, across })
        }
        Some(false) => {
            fields.without(&["down", "across"], "which only `layout = \"matrix\"` has");
            Some(RawLayout::List)
        }
        None => {
            for key in ["down", "across"] {
                let _ = fields.reader.node(key);
            }
            None
        }
    };
    Some(RawRequirement::Table {
        file: file?,
        allowed: allowed?,
        layout: layout?,
    })
}

pub(super) fn notice(mut fields: Fields<'_>) -> Option<RawNotice> {
    let head = fields.head(IdKind::Other);
    let kinds = [
        ("caution", NoticeKind::Caution),
        ("warranty", NoticeKind::Warranty),
        ("sign_off", NoticeKind::SignOff),
    ];
    let kind = fields.word("kind", &kinds);
    let when = fields.expression("when");
    let text = fields.required_text("text");
    let basis = fields.plain("basis");
    let per = fields.text("per");
    fields.reader.finish();
    Some(RawNotice {
        head: head?,
        kind: kind.unwrap_or_default(),
        when,
        text,
        basis,
        per,
    })
}
