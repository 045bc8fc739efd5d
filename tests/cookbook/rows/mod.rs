//! One row a recipe: its title, and what a person reads of it.

mod place;
mod price;
mod unit;

/// A recipe of the page.
pub(crate) struct Row {
    /// The group that it stands in.
    pub(crate) group: &'static str,
    /// Its title.
    pub(crate) title: &'static str,
    /// What it shows.
    pub(crate) shown: &'static [Shown],
}

/// One thing that a recipe shows.
pub(crate) enum Shown {
    /// A rule that an example breaks, with what is said then; an example beside it holds.
    Rule {
        /// The id, of a declared or an implicit rule.
        id: &'static str,
        /// The whole message.
        says: &'static str,
    },
    /// A notice that an example carries; one beside it does not.
    Notice {
        /// The id.
        id: &'static str,
    },
    /// What two examples that differ in one thing come to.
    Totals([&'static str; 2]),
    /// An order, quoted by the program.
    Order {
        /// Its name on the page.
        name: &'static str,
        /// The exit code.
        code: i32,
        /// Pieces of the answer, in order.
        pieces: &'static [&'static str],
    },
}

impl Shown {
    /// The id of a rule or a notice that the recipe declares; implicit rules have a full stop.
    pub(crate) fn declared(&self) -> Option<&'static str> {
        match *self {
            Self::Rule { id, .. } | Self::Notice { id } if !id.contains('.') => Some(id),
            _ => None,
        }
    }
}

/// The recipes, in the order of the page.
pub(crate) fn rows() -> impl Iterator<Item = &'static Row> {
    unit::ROWS.iter().chain(place::ROWS).chain(price::ROWS)
}
