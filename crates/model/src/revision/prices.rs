//! Encodes price items, price books and dealer policies.
//!
//! The attributes of a `By` item and the axes of a grid item are in order, since the cells of sheets and grids are
//! given in it. So are tail steps. Rows of a sheet, hidden options, standards, rules and mark-ups are not.
//!
//! Always holds: every structure is taken apart field by field, so that a new field does not compile until it is
//! encoded. Cost: 32 bytes of memory a row of a sheet.

use super::encoder::{Encode, Encoder, words};
use crate::currency::Currency;
use crate::policy::PolicyTerms;
use crate::price::{Amount, AmountKind, Axis, Beyond, Book, Class, Grid, PriceItem, SheetRow, TailStep};

impl Encode for PriceItem {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self {
            id,
            part,
            label,
            class,
            tax_class,
            when,
            amount,
            quantity,
        } = self;
        encoder.put(id).put(part).put(label).put(class);
        encoder.put(tax_class).put(when).put(amount).put(quantity);
    }
}

words!(Class {
    Goods => "goods",
    Labour => "labour",
    Fee => "fee",
    Credit => "credit",
});

impl Encode for AmountKind {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        match self {
            Self::Flat => encoder.word("flat"),
            Self::By(attributes) => {
                encoder.word("by");
                encoder.put(attributes);
            }
            Self::Grid { grid, axes, beyond } => {
                encoder.word("grid");
                encoder.put(grid).put(axes).put(beyond);
            }
            Self::Percent(items) => {
                encoder.word("percent");
                encoder.put(items);
            }
        }
    }
}

words!(Beyond {
    Break => "break",
    SignOff => "sign-off",
});

impl Encode for Book {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self {
            id,
            label,
            catalog,
            currency,
            round_to,
            from,
            until,
            amounts,
            sheets,
            grids,
            tail,
        } = self;
        encoder.put(id).put(label).put(catalog).put(currency);
        encoder.put(round_to).put(from).put(until).put(amounts);
        encoder.ordered(sheets.iter().map(|(item, rows)| (item, Sheet(rows))));
        encoder.put(grids).put(tail);
    }
}

/// By its code, which is unique in ISO 4217.
impl Encode for Currency {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        encoder.put(self.code());
    }
}

impl Encode for Amount {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        match self {
            Self::Money(amount) => {
                encoder.word("money");
                encoder.put(amount);
            }
            Self::Percent(percentage) => {
                encoder.word("percent");
                encoder.put(percentage);
            }
        }
    }
}

/// The rows of one item, which have no order.
struct Sheet<'a>(&'a [SheetRow]);

impl Encode for Sheet<'_> {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        encoder.unordered(self.0);
    }
}

impl Encode for SheetRow {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self { options, amount } = self;
        encoder.put(options).put(amount);
    }
}

impl Encode for Grid {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self { axes, cells } = self;
        encoder.put(axes).put(cells);
    }
}

impl Encode for Axis {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self { lower, uppers } = self;
        encoder.put(lower).put(uppers);
    }
}

impl Encode for TailStep {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self {
            id,
            label,
            class,
            tax_class,
            amount,
        } = self;
        encoder.put(id).put(label).put(class).put(tax_class).put(amount);
    }
}

impl Encode for PolicyTerms {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self {
            id,
            label,
            hidden,
            standards,
            rules,
            mark_ups,
            round_to,
            tail,
        } = self;
        encoder.put(id).put(label);
        encoder.unordered(hidden).unordered(standards);
        encoder.unordered(rules).unordered(mark_ups);
        encoder.put(round_to).put(tail);
    }
}
