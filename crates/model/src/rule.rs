//! Figures, rules and notices: what is worked out, what must hold, and what a finished unit carries.

use crate::expression::Expression;
use crate::id::{Id, PartIndex};
use crate::table::{RowMatch, Table};
use crate::template::Template;
use crate::value::ValueType;

/// A value worked out by formula or table.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Figure {
    /// The id that the catalog declares; shared by the parts of a `per` figure.
    pub id: Id,
    /// The part, where the figure is `per` part.
    pub part: Option<PartIndex>,
    /// What a person reads.
    pub label: String,
    /// The type of its values.
    pub value_type: ValueType,
    /// What its numbers count, for display (`lb`).
    pub unit: Option<String>,
    /// Whether a quote shows it.
    pub shown: bool,
    /// How it is worked out.
    pub definition: Definition,
}

/// How a figure is worked out.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Definition {
    /// By a formula.
    Formula(Expression),
    /// By looking up a row; undefined without one.
    Table(Table, RowMatch),
}

/// A condition on a unit: `!when || requirement`.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Rule {
    /// The id that the catalog or policy declares; shared by the parts of a `per` rule.
    pub id: Id,
    /// The part, where the rule is `per` part.
    pub part: Option<PartIndex>,
    /// On whose authority it stands: `plant`, `code`, `programme`, `dealer`, or a declared one.
    pub authority: Id,
    /// What happens when it is broken.
    pub effect: Effect,
    /// When it applies, the existence of its part included; `None` means always.
    pub when: Option<Expression>,
    /// What must hold then.
    pub requirement: Requirement,
    /// What a person is told when it does not hold.
    pub message: Template,
    /// Where the requirement is published, as the catalog states it.
    pub basis: Option<String>,
    /// Whether an order may carry a waiver for it.
    pub waivable: bool,
}

/// A condition on a room: at least one of its openings meets it.
///
/// An escape opening is asked of a bedroom, not of each of its windows.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct RoomRule {
    /// The id that the catalog declares.
    pub id: Id,
    /// What a person reads: what at least one opening is.
    pub label: String,
    /// On whose authority it stands.
    pub authority: Id,
    /// What happens when it is broken.
    pub effect: Effect,
    /// When it applies. It reads facts of the house, the floor and the room alone; `None` means always.
    pub when: Option<Expression>,
    /// What one opening of the room at least must meet.
    pub at_least_one: Expression,
    /// What a person is told when none does. It reads what `when` may read.
    pub message: Template,
    /// Where the requirement is published, as the catalog states it.
    pub basis: Option<String>,
}

/// What a rule demands.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Requirement {
    /// The expression must be true.
    Expression(Expression),
    /// Some row must match; a column whose attribute is not asked is ignored.
    Allowed(Table),
    /// No row may match; a row that restricts a column whose attribute is not asked cannot match.
    Forbidden(Table),
}

/// What happens when a rule is broken.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub enum Effect {
    /// The unit does not hold.
    #[default]
    Block,
    /// The unit holds with a warning.
    Warn,
    /// The unit holds and somebody must sign for it.
    SignOff,
}

/// A caution, warranty term or sign-off that a finished unit carries.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Notice {
    /// The id that the catalog declares.
    pub id: Id,
    /// The part, where the notice is `per` part.
    pub part: Option<PartIndex>,
    /// What sort of notice it is.
    pub kind: NoticeKind,
    /// When it is carried; shown as well when that is unknown. `None` means always.
    pub when: Option<Expression>,
    /// What a person reads.
    pub text: Template,
    /// Where it is published, as the catalog states it.
    pub basis: Option<String>,
}

/// What sort of notice it is.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug, Default)]
pub enum NoticeKind {
    /// Something to take care of.
    #[default]
    Caution,
    /// A term of the warranty.
    Warranty,
    /// Something that somebody must sign.
    SignOff,
}
