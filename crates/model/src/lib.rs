//! The words of a window catalog and an order, and what a catalog means.
//!
//! A [`Catalog`] says what there is to choose and what must hold; a [`Book`] gives amounts; a [`Policy`] narrows. For
//! one opening, [`fill`](crate::fill()) completes the picks with standards and [`judge`](crate::judge()) says everything that follows: which rules
//! do not hold or cannot be decided and why, every figure, every price item with the steps that led to it, every
//! notice, what is still to choose and what is not known. `judge` is the definition of what a catalog means.
//!
//! This crate does no input or output, reads no files and knows no solver. Files are read by `astragal-catalog`.

pub mod currency;
pub mod money;

mod attribute;
mod bounds;
mod catalog;
mod drawing;
mod evaluate;
mod example;
mod expression;
mod fill;
mod id;
mod judge;
pub mod operate;
mod order;
mod plan;
mod policy;
mod price;
mod revision;
mod rule;
mod setting;
mod show;
mod site;
mod site_check;
mod table;
mod template;
mod trade_function;
mod unit;
mod value;

pub use astragal_exact::{Number, measure_text, number};
pub use attribute::{Attribute, Audience, OptionEntry, Standard, Swatch, Validity};
pub use bounds::{Bounds, Refused};
pub use catalog::{Catalog, CatalogError, Declarations, Part};
pub use currency::Currency;
pub use drawing::{
    Arranged, Drawing, DrawingKey, Drawn, DrawnGrille, DrawnPanel, GlassMark, GrilleDrawing, GrillePattern,
    Layout, OnPanels, PanelMotion, ScreenSide, Undrawn, draw,
};
pub use example::{Example, ExpectedTotal, Mismatch};
pub use expression::{
    Comparison, EXPRESSION_DEPTH_MAX, Expression, Function, NUMBER_BITS_MAX, Subject, Unit as MeasuringUnit,
};
pub use fill::{Slot, fill, fill_standards, slots};
pub use id::{
    AttributeIndex, FactIndex, FigureIndex, Id, Indexed, ItemIndex, MeasureIndex, PartIndex, Position,
};
pub use jiff::civil::Date;
pub use judge::{
    FigureFinding, ItemFinding, ItemState, Judgement, NoticeFinding, OpenAttribute, PriceStep, Read,
    RoomFinding, RoomStanding, RoomState, RoomUnit, RoomUnitFinding, RuleFinding, RuleName, RuleState,
    Standing, TailFinding, Total, Verdict, judge, judge_room,
};
pub use money::Money;
pub use order::{Agreement, Extra, Opening, OpeningReadings, Order, Place, Room, UnitRequest, Waiver};
pub use plan::Step;
pub use policy::{Policy, PolicyTerms};
pub use price::{Amount, AmountKind, Axis, Beyond, Book, Class, Grid, PriceItem, SheetRow, TailStep};
pub use revision::Revision;
pub use rule::{Definition, Effect, Figure, Notice, NoticeKind, Requirement, RoomRule, Rule};
pub use setting::{Authorities, Setting};
pub use site::{DeductedBy, Measure, Measured, Scope, Site, SiteFact, TakenFact, TakenSide};
pub use site_check::{Contradiction, SiteCheck, contradictions};
pub use table::{Cell, Interval, LowerEnd, Row, RowMatch, Table};
pub use template::{Piece, Template};
pub use trade_function::{Argument, ArgumentKind, TradeFunction};
pub use unit::{Choice, Origin, Pick, Unit};
pub use value::{Outcome, UndefinedCause, Value, ValueType, Want, Wants};
