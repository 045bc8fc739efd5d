//! What the price of an item reads directly.

use crate::expression::Subject;
use crate::id::AttributeIndex;
use crate::judge::find::direct_reads;
use crate::price::{AmountKind, PriceItem};

/// The attributes on which an item depends directly.
pub(super) fn about(item: &PriceItem) -> Vec<AttributeIndex> {
    let mut about = Vec::new();
    let by: &[AttributeIndex] = if let AmountKind::By(attributes) = &item.amount {
        attributes
    } else {
        &[]
    };
    let read = item
        .when
        .iter()
        .flat_map(direct_reads)
        .filter_map(|subject| match subject {
            Subject::Attribute(attribute) => Some(attribute),
            _ => None,
        });
    for attribute in by.iter().copied().chain(read) {
        if !about.contains(&attribute) {
            about.push(attribute);
        }
    }
    about
}

/// Everything that the price of an item reads directly.
pub(super) fn price_reads(item: &PriceItem) -> Vec<Subject> {
    let amount: Vec<Subject> = match &item.amount {
        AmountKind::By(attributes) => attributes.iter().copied().map(Subject::Attribute).collect(),
        AmountKind::Grid { axes, .. } => axes.iter().copied().map(Subject::Figure).collect(),
        AmountKind::Flat | AmountKind::Percent(_) => Vec::new(),
    };
    let mut reads = Vec::new();
    for subject in item
        .when
        .iter()
        .chain(&item.quantity)
        .flat_map(direct_reads)
        .chain(amount)
    {
        if !reads.contains(&subject) {
            reads.push(subject);
        }
    }
    reads
}
