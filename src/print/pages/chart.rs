//! The option chart of a catalog, as plain data.

use astragal_model::{Date, Effect, Id, NoticeKind};

use super::{Condition, Message, Parts, Revised};

/// The option chart of one catalog.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Chart {
    /// The catalog.
    pub(crate) id: Id,
    /// What a person calls it.
    pub(crate) label: String,
    /// Its revision, in full and short.
    pub(crate) revision: Revised,
    /// What there is to choose, with the rules that belong there, in file order.
    pub(crate) sections: Vec<Section>,
    /// Rules about sizes and other figures alone.
    pub(crate) sizes: RuleGroup,
    /// Rules that belong to no section.
    pub(crate) others: RuleGroup,
    /// Rules that others than the plant stand for, by authority.
    pub(crate) authorities: Vec<AuthorityRules>,
    /// What is worked out.
    pub(crate) figures: Vec<FigureSheet>,
    /// The tables of figures, those with the same keys in one.
    pub(crate) figure_tables: Vec<FigureTable>,
    /// What a finished unit carries along.
    pub(crate) notices: Vec<NoticeLine>,
}

/// One section of a chart.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Section {
    /// Its heading.
    pub(crate) title: String,
    /// The attributes in it.
    pub(crate) attributes: Vec<AttributeSheet>,
    /// The rules that belong to it.
    pub(crate) rules: RuleGroup,
}

/// One attribute with its options.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct AttributeSheet {
    /// Its id.
    pub(crate) id: Id,
    /// What a person calls it.
    pub(crate) label: String,
    /// The parts that have it, when it is asked for each.
    pub(crate) parts: Option<Parts>,
    /// Whether the plant determines it.
    pub(crate) is_determined: bool,
    /// When it is asked; always when there is nothing.
    pub(crate) asked_when: Option<Condition>,
    /// What it is when nobody picks.
    pub(crate) standard: StandardLine,
    /// Its options in file order.
    pub(crate) options: Vec<OptionLine>,
    /// The rules that mention it.
    pub(crate) rules: Vec<Id>,
}

/// What an attribute is when nobody picks.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum StandardLine {
    /// Somebody must choose.
    Ask,
    /// This option; it is marked in the list.
    Option(String),
    /// It depends.
    Formula(Condition),
}

/// One option.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct OptionLine {
    /// Its id.
    pub(crate) id: Id,
    /// What a person calls it.
    pub(crate) label: String,
    /// What the plant calls it.
    pub(crate) plant_code: Option<String>,
    /// Whether it is the standard.
    pub(crate) is_standard: bool,
    /// The families it is in.
    pub(crate) families: Vec<Id>,
    /// Its properties with their values as a person reads them.
    pub(crate) properties: Vec<(Id, String)>,
    /// The first day on which it may be ordered.
    pub(crate) offered_from: Option<Date>,
    /// The last day on which it may be ordered.
    pub(crate) offered_until: Option<Date>,
    /// Until when quotes made while it was offered are built.
    pub(crate) honoured_until: Option<Date>,
    /// The id and label of what replaces it.
    pub(crate) replaced_by: Option<(Id, String)>,
}

/// Rules that stand together: those with a drawn table, those that limit a figure, all others.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub(crate) struct RuleGroup {
    /// Rules by table.
    pub(crate) tables: Vec<RuleSheet>,
    /// Rules that put bounds on figures.
    pub(crate) limits: Vec<RuleSheet>,
    /// Other rules by expression.
    pub(crate) conditions: Vec<RuleSheet>,
}

/// The rules of one authority that is not the plant.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct AuthorityRules {
    /// The authority.
    pub(crate) id: Id,
    /// What a person calls it.
    pub(crate) label: String,
    /// Its rules.
    pub(crate) rules: RuleGroup,
}

/// One rule.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct RuleSheet {
    /// Its id.
    pub(crate) id: Id,
    /// On whose authority it stands.
    pub(crate) authority: Id,
    /// What happens when it is broken.
    pub(crate) effect: Effect,
    /// Whether an order may carry a waiver.
    pub(crate) waivable: bool,
    /// Where it is published.
    pub(crate) basis: Option<String>,
    /// The parts it is about.
    pub(crate) parts: Option<Parts>,
    /// What a person is told.
    pub(crate) message: Message,
    /// When it applies; always when there is nothing.
    pub(crate) when: Option<Condition>,
    /// What must hold then.
    pub(crate) demand: Demand,
}

/// What a rule demands.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum Demand {
    /// Bounds on figures, together as written.
    Limits(Vec<Limit>, Condition),
    /// A condition.
    Condition(Condition),
    /// One of these rows.
    Allowed(Drawing),
    /// None of these rows.
    Forbidden(Drawing),
}

/// The bounds of one figure or measure.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Limit {
    /// What is bounded.
    pub(crate) of: String,
    /// The lower bound.
    pub(crate) low: Option<String>,
    /// The upper bound.
    pub(crate) high: Option<String>,
}

/// A table as it is drawn.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum Drawing {
    /// Two attributes against each other: a mark for each pair of options.
    Marks(Marks),
    /// Rows of cells as a person reads them.
    List {
        /// What each column is.
        columns: Vec<String>,
        /// The rows in file order.
        rows: Vec<Vec<String>>,
    },
}

/// Which options of two attributes go together.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Marks {
    /// What goes down.
    pub(crate) down: String,
    /// What goes across.
    pub(crate) across: String,
    /// The options that go across.
    pub(crate) columns: Vec<String>,
    /// The options that go down, each with a mark a column: whether the pair goes together.
    pub(crate) rows: Vec<(String, Vec<bool>)>,
}

/// One figure.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct FigureSheet {
    /// Its id.
    pub(crate) id: Id,
    /// What a person calls it.
    pub(crate) label: String,
    /// The parts that have it.
    pub(crate) parts: Option<Parts>,
    /// What its numbers count.
    pub(crate) unit: Option<String>,
    /// Whether a quote shows it.
    pub(crate) shown: bool,
    /// How it is worked out.
    pub(crate) working: Working,
}

/// How a figure is worked out.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) enum Working {
    /// By a formula.
    Formula(Condition),
    /// By a table; the text says which of several matching rows counts.
    Table {
        /// Which row counts.
        which: &'static str,
        /// What each column is, the value last.
        columns: Vec<String>,
        /// The rows in file order.
        rows: Vec<Vec<String>>,
    },
}

/// The table of one figure, or of several that are looked up by the same keys.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct FigureTable {
    /// What is looked up.
    pub(crate) figures: Vec<String>,
    /// Which row counts.
    pub(crate) which: &'static str,
    /// What each column is, the values last.
    pub(crate) columns: Vec<String>,
    /// The rows in file order.
    pub(crate) rows: Vec<Vec<String>>,
}

/// One notice.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct NoticeLine {
    /// Its id.
    pub(crate) id: Id,
    /// What sort of notice it is.
    pub(crate) kind: NoticeKind,
    /// The parts it is about.
    pub(crate) parts: Option<Parts>,
    /// When it is carried; always when there is nothing.
    pub(crate) when: Option<Condition>,
    /// What a person reads.
    pub(crate) text: Message,
    /// Where it is published.
    pub(crate) basis: Option<String>,
}
