//! The changes of items, notices and examples that make another revision.

use jiff::civil::date;

use super::catalog_changes::{Change, edit};
use super::fixture::{GLAZING_LOWER, OPERATION, SCREEN, ids, inches, number};
use crate::catalog::Declarations;
use crate::example::Example;
use crate::expression::Expression;
use crate::id::{FactIndex, FigureIndex, Id, ItemIndex, MeasureIndex};
use crate::price::{AmountKind, Beyond, Class, PriceItem};
use crate::rule::{Notice, NoticeKind};
use crate::site::{DeductedBy, Measured};
use crate::template::Template;
use crate::unit::Pick;
use crate::value::Value;
use astragal_exact::Number;

pub(super) fn item(of: &mut Declarations, which: usize, change: impl FnOnce(&mut PriceItem)) {
    edit(&mut of.items, ItemIndex(which), change);
}

/// Changes the item whose amount is in a grid.
fn grid(of: &mut Declarations, change: impl FnOnce(&mut Id, &mut Vec<FigureIndex>, &mut Beyond)) {
    item(of, 0, |item| match &mut item.amount {
        AmountKind::Grid { grid, axes, beyond } => change(grid, axes, beyond),
        _ => panic!("it is a grid"),
    });
}

pub(super) fn notice(of: &mut Declarations, change: impl FnOnce(&mut Notice)) {
    change(&mut of.notices[0]);
}

fn example(of: &mut Declarations, change: impl FnOnce(&mut Example)) {
    change(&mut of.examples[0]);
}

fn measured(of: &mut Declarations, change: impl FnOnce(&mut Option<Measured>)) {
    edit(&mut of.examples[0].site.measures, MeasureIndex(0), change);
}

pub(super) const ITEMS: &[Change] = &[
    ("id of an item", |d| {
        item(d, 2, |item| item.id = Id::new("fixing"))
    }),
    ("part of an item", |d| item(d, 2, |item| item.part = None)),
    ("label of an item", |d| item(d, 2, |item| item.label.push('!'))),
    ("class: goods", |d| item(d, 2, |item| item.class = Class::Goods)),
    ("class: fee", |d| item(d, 2, |item| item.class = Class::Fee)),
    ("class: credit", |d| item(d, 2, |item| item.class = Class::Credit)),
    ("tax class", |d| {
        item(d, 2, |item| item.tax_class = Some("T2".to_owned()))
    }),
    ("no tax class", |d| item(d, 2, |item| item.tax_class = None)),
    ("an item that is always incurred", |d| {
        item(d, 2, |item| item.when = None)
    }),
    ("condition and quantity exchanged", |d| {
        item(d, 2, |item| std::mem::swap(&mut item.when, &mut item.quantity));
    }),
    ("no quantity", |d| item(d, 2, |item| item.quantity = None)),
    ("another quantity", |d| {
        item(d, 2, |item| {
            item.quantity = Some(Expression::Literal(Value::Number(Number::from(2))))
        });
    }),
    ("items of a percentage", |d| {
        item(d, 3, |item| item.amount = AmountKind::Percent(ids(&["base"])));
    }),
    ("a percentage turned into an amount", |d| {
        item(d, 3, |item| item.amount = AmountKind::Flat)
    }),
    ("order of the attributes of an amount", |d| {
        item(d, 1, |item| item.amount = AmountKind::By(vec![OPERATION, SCREEN]));
    }),
    ("attributes of an amount", |d| {
        item(d, 1, |item| item.amount = AmountKind::By(vec![SCREEN]))
    }),
    ("grid of an item", |d| {
        grid(d, |grid, _, _| *grid = Id::new("areas"))
    }),
    ("order of the axes", |d| grid(d, |_, axes, _| axes.reverse())),
    ("one axis", |d| grid(d, |_, axes, _| axes.truncate(1))),
    ("what is past the end", |d| {
        grid(d, |_, _, beyond| *beyond = Beyond::Break)
    }),
];

pub(super) const NOTICES: &[Change] = &[
    ("id of a notice", |d| {
        notice(d, |notice| notice.id = Id::new("escape"))
    }),
    ("part of a notice", |d| notice(d, |notice| notice.part = None)),
    ("kind of a notice: warranty", |d| {
        notice(d, |notice| notice.kind = NoticeKind::Warranty)
    }),
    ("kind of a notice: caution", |d| {
        notice(d, |notice| notice.kind = NoticeKind::Caution)
    }),
    ("a notice that is always carried", |d| {
        notice(d, |notice| notice.when = None)
    }),
    ("text of a notice", |d| {
        notice(d, |notice| notice.text = Template::text("Check it."))
    }),
    ("basis of a notice", |d| notice(d, |notice| notice.basis = None)),
];

pub(super) const EXAMPLES: &[Change] = &[
    ("id of an example", |d| {
        example(d, |example| example.id = Id::new("big"))
    }),
    ("attribute of a pick", |d| {
        example(d, |example| example.picks[1].attribute = GLAZING_LOWER)
    }),
    ("option of a pick", |d| {
        example(d, |example| example.picks[1].option = Id::new("none"))
    }),
    ("quote of a pick", |d| {
        example(d, |example| example.picks[0].quoted = Some(date(2026, 6, 2)))
    }),
    ("no quote", |d| {
        example(d, |example| example.picks[0].quoted = None)
    }),
    ("a pick less", |d| example(d, |example| drop(example.picks.pop()))),
    ("two picks of one attribute", |d| {
        example(d, |example| example.picks.push(again("single")));
    }),
    ("two picks of one attribute, the other way round", |d| {
        example(d, |example| example.picks.insert(0, again("single")));
    }),
    ("a measure", |d| {
        measured(d, |measured| {
            measured.as_mut().expect("taken").value = inches("40.25")
        })
    }),
    ("who deducted: customer", |d| {
        measured(d, |measured| {
            measured.as_mut().expect("taken").deducted_by = Some(DeductedBy::Customer);
        });
    }),
    ("who deducted: nobody", |d| {
        measured(d, |measured| {
            measured.as_mut().expect("taken").deducted_by = Some(DeductedBy::Nobody);
        });
    }),
    ("nobody said who deducted", |d| {
        measured(d, |measured| measured.as_mut().expect("taken").deducted_by = None);
    }),
    ("a measure that was not taken", |d| {
        measured(d, |measured| *measured = None)
    }),
    ("measures exchanged", |d| {
        let exchanged: Vec<_> = d.examples[0].site.measures.values().rev().cloned().collect();
        d.examples[0].site.measures = exchanged.into();
    }),
    ("a fact of an example", |d| {
        d.examples[0]
            .site
            .facts
            .put(FactIndex(0), Some(Value::Bool(false)));
    }),
    ("a fact that is not known", |d| {
        d.examples[0].site.facts.put(FactIndex(0), None)
    }),
    ("day of an example", |d| {
        example(d, |example| example.date = date(2026, 7, 2))
    }),
    ("what is broken", |d| {
        example(d, |example| example.breaks = ids(&["too-large", "screens"]))
    }),
    ("nothing is broken", |d| {
        example(d, |example| example.breaks.clear())
    }),
    ("what is undecided", |d| {
        example(d, |example| example.undecided = Some(ids(&["too-large"])))
    }),
    ("what is broken of a room", |d| {
        example(d, |example| example.room_breaks = ids(&["light"]))
    }),
    ("what is undecided of a room", |d| {
        example(d, |example| example.room_undecided = Some(ids(&["escape"])))
    }),
    ("what is undecided of a room is not said", |d| {
        example(d, |example| example.room_undecided = None)
    }),
    ("nothing is undecided", |d| {
        example(d, |example| example.undecided = Some(ids(&[])))
    }),
    ("what is undecided is not said", |d| {
        example(d, |example| example.undecided = None)
    }),
    ("what is carried", |d| {
        example(d, |example| example.notices = Some(ids(&["check-escape"])))
    }),
    ("what is carried is not said", |d| {
        example(d, |example| example.notices = None)
    }),
    ("what is undecided is carried", |d| {
        example(d, |example| {
            std::mem::swap(&mut example.undecided, &mut example.notices)
        });
    }),
    ("book of the total", |d| {
        example(d, |example| {
            example.total.as_mut().expect("said").book = Id::new("autumn")
        });
    }),
    ("amount of the total", |d| {
        example(d, |example| {
            example.total.as_mut().expect("said").amount = number("412.51")
        });
    }),
    ("no total", |d| example(d, |example| example.total = None)),
    ("an example less", |d| drop(d.examples.pop())),
];

fn again(option: &str) -> Pick {
    Pick {
        attribute: SCREEN,
        option: Id::new(option),
        quoted: None,
    }
}
