//! Dealer policy: an overlay on one catalog that narrows what may be chosen, never widens it.
//!
//! It may hide options, set standards, add rules of authority `dealer`, mark up by class, round, and add to the tail.
//! A policy is resolved against one catalog: its rules and standards read that catalog's positions.

use std::collections::{BTreeMap, BTreeSet};

use crate::attribute::Standard;
use crate::id::{AttributeIndex, Id};
use crate::plan::Plan;
use crate::price::{Class, TailStep};
use crate::rule::Rule;
use astragal_exact::Number;

/// A dealer policy as it stands for one catalog.
#[derive(Clone, Debug)]
pub struct Policy {
    /// What the policy says.
    pub terms: PolicyTerms,
    /// The order of filling under its standards.
    pub(crate) plan: Plan,
}

/// What a policy says about one catalog.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct PolicyTerms {
    /// The id of the policy.
    pub id: Id,
    /// What a person reads.
    pub label: String,
    /// Options that this dealer does not sell.
    pub hidden: BTreeMap<AttributeIndex, BTreeSet<Id>>,
    /// Standards that replace the plant's before filling.
    pub standards: BTreeMap<AttributeIndex, Standard>,
    /// Rules of authority `dealer`.
    pub rules: Vec<Rule>,
    /// Mark-up by class, as a percentage: 25 for 25 %.
    pub mark_ups: BTreeMap<Class, Number>,
    /// What every item is rounded to instead of the book's unit.
    pub round_to: Option<Number>,
    /// Steps after the book's tail, in order.
    pub tail: Vec<TailStep>,
}
