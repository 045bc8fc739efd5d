//! What a judgement says: plain data, from which every screen and message is made.

use crate::attribute::Audience;
use crate::catalog::Catalog;
use crate::expression::Subject;
use crate::id::{AttributeIndex, FigureIndex, Id, ItemIndex, PartIndex};
use crate::money::Money;
use crate::rule::NoticeKind;
use crate::value::{Outcome, UndefinedCause, Wants};
use astragal_exact::Number;

/// Everything that follows from a unit in its setting.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Judgement {
    /// The worst that follows.
    pub verdict: Verdict,
    /// Every rule that does not plainly hold: broken, undecided, warning, sign-off, waived. Implicit rules come
    /// first, then the catalog's, then the policy's, in file order, then `has-a-price`.
    pub rules: Vec<RuleFinding>,
    /// Every figure, in catalog order.
    pub figures: Vec<FigureFinding>,
    /// Every price item that is incurred or may be, in catalog order. Empty without a book.
    pub items: Vec<ItemFinding>,
    /// The sum of all items before the tail, where it is known.
    pub subtotal: Option<Money>,
    /// The steps after all items, where the subtotal is known.
    pub tail: Vec<TailFinding>,
    /// The price of one unit.
    pub total: Total,
    /// Every notice that is carried, or may be.
    pub notices: Vec<NoticeFinding>,
    /// Every attribute that is still open, with what it waits for.
    pub open: Vec<OpenAttribute>,
    /// Authorities whose rules did not bind.
    pub authorities_not_applied: Vec<Id>,
    /// Positions, in the setting's waivers, of those that made a difference.
    pub waivers_used: Vec<usize>,
}

/// The worst that follows.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Verdict {
    /// Every binding rule holds, nothing is open, and the total is known (where there is a book).
    Holds,
    /// No binding rule is broken, but one cannot be decided, or something is open, or the total is unknown.
    Undecided,
    /// A binding rule is broken.
    Broken,
}

/// A rule that does not plainly hold.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct RuleFinding {
    /// Which rule it is.
    pub rule: RuleName,
    /// Its id, as orders and messages name it.
    pub id: Id,
    /// The part, where the rule is `per` part.
    pub part: Option<PartIndex>,
    /// On whose authority it stands.
    pub authority: Id,
    /// How it fails to hold.
    pub state: RuleState,
    /// What follows.
    pub standing: Standing,
    /// The rule in its own words.
    pub message: String,
    /// What it reads, with what its figures read, and the values.
    pub reads: Vec<Read>,
    /// The standards among the attributes that it reads, when it reads picks as well.
    pub standards_against_picks: Vec<AttributeIndex>,
}

/// Which rule it is.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum RuleName {
    /// A rule of the catalog, by position.
    Catalog(usize),
    /// A rule of the policy, by position.
    Policy(usize),
    /// `<attribute>.applies`: an attribute is chosen exactly when it is asked.
    Applies(AttributeIndex),
    /// `<attribute>.offered`: the option exists, is not hidden, and may be ordered on the day.
    Offered(AttributeIndex),
    /// `<attribute>.determined`: an attribute of the plant is what its standard says.
    Determined(AttributeIndex),
    /// `has-a-price`: every item that is incurred has an amount.
    HasAPrice(ItemIndex),
    /// `book-in-force`: the price book is in force on the day.
    BookInForce,
}

/// How a rule fails to hold.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum RuleState {
    /// It is false.
    Broken,
    /// It is undefined: a figure that decides it has no row, or the like.
    NoRow(UndefinedCause),
    /// It cannot be decided for want of something.
    Undecided(Wants),
}

/// What follows from a rule that does not plainly hold.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Debug)]
pub enum Standing {
    /// It binds: the unit does not hold, or cannot be decided.
    Binds,
    /// It warns.
    Warns,
    /// Somebody must sign for it.
    SignOff,
    /// It is waived by this waiver of the setting.
    Waived(usize),
    /// Its authority was not applied.
    NotApplied,
}

/// Something that a rule reads, with its value.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Read {
    /// What is read.
    pub subject: Subject,
    /// What it is.
    pub outcome: Outcome,
    /// Whether the rule itself reads it, rather than a figure that the rule reads.
    pub directly: bool,
}

/// A figure and its value.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct FigureFinding {
    /// The figure.
    pub figure: FigureIndex,
    /// Its value.
    pub outcome: Outcome,
    /// Whether the unit has the figure's part; true for figures of the whole unit.
    pub part_exists: Outcome,
}

/// A price item that is incurred or may be.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct ItemFinding {
    /// The item.
    pub item: ItemIndex,
    /// What it comes to.
    pub state: ItemState,
    /// Whether standards alone would incur it as well; otherwise it is an upcharge.
    pub standard: bool,
    /// The steps that led to the amount.
    pub steps: Vec<PriceStep>,
    /// The attributes on which the item depends directly.
    pub about: Vec<AttributeIndex>,
}

/// What a price item comes to.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum ItemState {
    /// This much.
    Amount(Money),
    /// It cannot be known yet.
    Unknown(Wants),
    /// It is incurred, or may be, and has no amount: `has-a-price` is broken.
    NoPrice,
}

/// One step that led to the amount of an item.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum PriceStep {
    /// The amount that stands in the book.
    Book(Number),
    /// The amount that stands in the book for these options.
    Sheet {
        /// The attributes and the options they have.
        key: Vec<(AttributeIndex, Id)>,
        /// The amount.
        amount: Number,
    },
    /// The bracket of a grid along one axis.
    Bracket {
        /// The figure along the axis.
        axis: FigureIndex,
        /// Its size.
        size: Number,
        /// The lower end, outside of the bracket.
        lower: Number,
        /// The upper end, inside of the bracket.
        upper: Number,
    },
    /// The amount that stands in the grid.
    Cell(Number),
    /// Times this quantity.
    Quantity(Number),
    /// Plus this percentage of mark-up.
    MarkUp(Number),
    /// This percentage of one line of another item.
    PercentOf {
        /// The other item.
        item: ItemIndex,
        /// Its line.
        amount: Money,
        /// The percentage.
        percent: Number,
        /// The result, rounded.
        result: Money,
    },
    /// Rounded to this unit, half away from zero.
    Rounded {
        /// What was rounded.
        exact: Number,
        /// The unit.
        to: Number,
    },
}

/// One step after all items.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct TailFinding {
    /// The id of the step.
    pub id: Id,
    /// What a person reads.
    pub label: String,
    /// The percentage, for a percent step.
    pub percent: Option<Number>,
    /// What the step adds.
    pub amount: Money,
    /// The running total after the step.
    pub after: Money,
}

/// The price of one unit.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum Total {
    /// There is no book.
    NotPriced,
    /// This much.
    Known(Money),
    /// It depends on what is wanted.
    Unknown(Wants),
    /// An item has no price.
    NoPrice,
}

/// A notice that is carried, or may be.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct NoticeFinding {
    /// The position in the catalog.
    pub notice: usize,
    /// The id.
    pub id: Id,
    /// What sort of notice it is.
    pub kind: NoticeKind,
    /// The text, filled in.
    pub text: String,
    /// What is wanted to know whether it is carried; `None` when it is carried for certain.
    pub wants: Option<Wants>,
}

/// An attribute that is still open.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct OpenAttribute {
    /// The attribute.
    pub attribute: AttributeIndex,
    /// What it waits for; the attribute itself when somebody must choose.
    pub wants: Wants,
}

impl OpenAttribute {
    /// Whether the customer is the one to choose now: the attribute waits for nothing but itself.
    #[must_use]
    pub fn is_to_choose(&self, catalog: &Catalog) -> bool {
        let customer = catalog.declarations().attributes.at(self.attribute).audience == Audience::Customer;
        customer && self.wants == Wants::from([crate::value::Want::Choice(self.attribute)])
    }
}
