//! The changes of figures and rules that make another revision.

use std::sync::Arc;

use super::catalog_changes::{Change, edit};
use super::fixture::{Layout, OPERATION, SCREEN, inches, one_of};
use crate::catalog::Declarations;
use crate::expression::{Expression, Subject};
use crate::id::{FigureIndex, Id, PartIndex};
use crate::rule::{Definition, Effect, Figure, Requirement, RoomRule, Rule};
use crate::table::{Cell, Interval, Row, RowMatch, Table};
use crate::template::Piece;
use crate::value::{Value, ValueType};
use astragal_exact::Number;

/// Changes the third figure, in which every field is filled.
pub(super) fn figure(of: &mut Declarations, change: impl FnOnce(&mut Figure)) {
    edit(&mut of.figures, FigureIndex(2), change);
}

/// Changes the table of the second figure, whose rows have an order.
fn table(of: &mut Declarations, change: impl FnOnce(&mut Table)) {
    edit(&mut of.figures, FigureIndex(1), |figure| {
        match &mut figure.definition {
            Definition::Table(table, _) => change(table),
            Definition::Formula(_) => panic!("it is a table"),
        }
    });
}

/// Changes one cell of that table.
fn cell(of: &mut Declarations, row: usize, column: usize, to: Cell) {
    table(of, |table| Arc::make_mut(&mut table.rows)[row].cells[column] = to);
}

/// Changes the first interval of the first cell of that table.
fn interval(of: &mut Declarations, change: impl FnOnce(&mut Interval)) {
    table(of, |table| {
        let Cell::Within(intervals) = &mut Arc::make_mut(&mut table.rows)[0].cells[0] else {
            panic!("it is a range")
        };
        change(&mut intervals[1]);
    });
}

pub(super) fn rule(of: &mut Declarations, change: impl FnOnce(&mut Rule)) {
    change(&mut of.rules[0]);
}

fn piece(of: &mut Declarations, position: usize, to: Piece) {
    of.rules[0].message.pieces[position] = to;
}

/// Changes the first rule over a room, in which every field is filled.
fn room_rule(of: &mut Declarations, change: impl FnOnce(&mut RoomRule)) {
    change(&mut of.room_rules[0]);
}

pub(super) const ROOM_RULES: &[Change] = &[
    ("id of a room rule", |d| {
        room_rule(d, |rule| rule.id = Id::new("air"))
    }),
    ("label of a room rule", |d| {
        room_rule(d, |rule| rule.label.push('!'))
    }),
    ("authority of a room rule", |d| {
        room_rule(d, |rule| rule.authority = Id::new("plant"))
    }),
    ("effect of a room rule: warn", |d| {
        room_rule(d, |rule| rule.effect = Effect::Warn)
    }),
    ("a room rule that always applies", |d| {
        room_rule(d, |rule| rule.when = None)
    }),
    ("what one opening must meet", |d| {
        room_rule(d, |rule| {
            rule.at_least_one = Expression::is_option(SCREEN, "half");
        })
    }),
    ("message of a room rule", |d| {
        room_rule(d, |rule| rule.message.pieces.clear())
    }),
    ("basis of a room rule", |d| room_rule(d, |rule| rule.basis = None)),
    ("a room rule less", |d| {
        d.room_rules.pop();
    }),
];

pub(super) const FIGURES: &[Change] = &[
    ("id of a figure", |d| {
        figure(d, |figure| figure.id = Id::new("mass"))
    }),
    ("part of a figure", |d| figure(d, |figure| figure.part = None)),
    ("label of a figure", |d| {
        figure(d, |figure| figure.label.push('!'))
    }),
    ("type of a figure", |d| {
        figure(d, |figure| figure.value_type = ValueType::Area)
    }),
    ("unit of a figure", |d| {
        figure(d, |figure| figure.unit = Some("kg".to_owned()))
    }),
    ("no unit", |d| figure(d, |figure| figure.unit = None)),
    ("a figure that is not shown", |d| {
        figure(d, |figure| figure.shown = false)
    }),
    ("formula of a figure", |d| {
        edit(&mut d.figures, FigureIndex(0), |figure| {
            figure.definition = Definition::Formula(Expression::Literal(inches("100")));
        });
    }),
    ("a formula in place of a table", |d| {
        figure(d, |figure| {
            figure.definition = Definition::Formula(Expression::Literal(Value::Number(Number::from(10))));
        });
    }),
    ("only turned into least", |d| {
        figure(d, |figure| match &mut figure.definition {
            Definition::Table(_, row_match) => *row_match = RowMatch::Least,
            Definition::Formula(_) => panic!("it is a table"),
        });
    }),
    ("only turned into greatest", |d| {
        figure(d, |figure| match &mut figure.definition {
            Definition::Table(_, row_match) => *row_match = RowMatch::Greatest,
            Definition::Formula(_) => panic!("it is a table"),
        });
    }),
    ("only turned into first", |d| {
        figure(d, |figure| match &mut figure.definition {
            Definition::Table(_, row_match) => *row_match = RowMatch::First,
            Definition::Formula(_) => panic!("it is a table"),
        });
    }),
    ("order of rows under first", |d| {
        table(d, |table| Arc::make_mut(&mut table.rows).reverse())
    }),
    ("a row less", |d| {
        table(d, |table| drop(Arc::make_mut(&mut table.rows).pop()))
    }),
    ("a row twice", |d| {
        table(d, |table| {
            let again = table.rows[1].clone();
            Arc::make_mut(&mut table.rows).push(again);
        });
    }),
    ("value of a row", |d| {
        table(d, |table| {
            Arc::make_mut(&mut table.rows)[0].value = Some(inches("0.126"))
        });
    }),
    ("a row without value", |d| {
        table(d, |table| Arc::make_mut(&mut table.rows)[0].value = None)
    }),
    ("a cell too many", |d| {
        table(d, |table| Arc::make_mut(&mut table.rows)[0].cells.push(Cell::Any))
    }),
    ("a cell too few", |d| {
        table(d, |table| drop(Arc::make_mut(&mut table.rows)[1].cells.pop()))
    }),
    ("columns without their cells", |d| {
        table(d, |table| table.columns.reverse())
    }),
    ("what a column reads", |d| {
        table(d, |table| {
            table.columns[0] = Subject::Measure(Layout::default().height())
        });
    }),
    ("a set turned into any", |d| cell(d, 1, 2, Cell::Any)),
    ("another member of a set", |d| cell(d, 1, 2, one_of(&["hot"]))),
    ("one more member of a set", |d| {
        cell(d, 1, 2, one_of(&["cold", "hot"]))
    }),
    ("an empty set", |d| cell(d, 1, 2, one_of(&[]))),
    ("no interval", |d| cell(d, 1, 2, Cell::Within(Vec::new()))),
    ("lower end of an interval", |d| {
        interval(d, |interval| {
            interval.lower.as_mut().expect("it has one").value = inches("71")
        });
    }),
    ("an open end closed", |d| {
        interval(d, |interval| {
            interval.lower.as_mut().expect("it has one").open = false
        });
    }),
    ("no lower end", |d| interval(d, |interval| interval.lower = None)),
    ("upper end of an interval", |d| {
        interval(d, |interval| interval.upper = Some(inches("81")))
    }),
    ("no upper end", |d| interval(d, |interval| interval.upper = None)),
];

pub(super) const RULES: &[Change] = &[
    ("id of a rule", |d| rule(d, |rule| rule.id = Id::new("too-big"))),
    ("part of a rule", |d| {
        rule(d, |rule| rule.part = Some(PartIndex(1)))
    }),
    ("a rule for the whole unit", |d| rule(d, |rule| rule.part = None)),
    ("authority of a rule", |d| {
        rule(d, |rule| rule.authority = Id::new("code"))
    }),
    ("effect: block", |d| rule(d, |rule| rule.effect = Effect::Block)),
    ("effect: sign-off", |d| {
        rule(d, |rule| rule.effect = Effect::SignOff)
    }),
    ("a rule that always applies", |d| rule(d, |rule| rule.when = None)),
    ("a rule that applies otherwise", |d| {
        rule(d, |rule| rule.when = Some(Expression::IsAsked(SCREEN)));
    }),
    ("a requirement that always holds", |d| {
        rule(d, |rule| {
            rule.requirement = Requirement::Expression(Expression::And(Vec::new()))
        });
    }),
    ("allowed turned into forbidden", |d| {
        let Requirement::Allowed(table) = d.rules[1].requirement.clone() else {
            panic!("it is a table")
        };
        d.rules[1].requirement = Requirement::Forbidden(table);
    }),
    ("a row of an allowed table", |d| {
        let Requirement::Allowed(table) = &mut d.rules[1].requirement else {
            panic!("it is a table")
        };
        Arc::make_mut(&mut table.rows).push(Row {
            cells: vec![Cell::Any, one_of(&["fixed"])],
            value: None,
        });
    }),
    ("text of a message", |d| {
        piece(d, 0, Piece::Text("Too big: ".to_owned()))
    }),
    ("what a message reads", |d| {
        piece(d, 1, Piece::Value(Subject::Measure(Layout::default().height())));
    }),
    ("a message that reads who deducted", |d| {
        piece(d, 1, Piece::Value(Subject::DeductedBy(Layout::default().width())));
    }),
    ("property in a message", |d| {
        piece(d, 2, Piece::Property(OPERATION, Id::new("deep")))
    }),
    ("attribute of a property in a message", |d| {
        piece(d, 2, Piece::Property(SCREEN, Id::new("sashes")))
    }),
    ("a name in a message turned into text", |d| {
        piece(d, 1, Piece::Text("{width}".to_owned()))
    }),
    ("order of the pieces of a message", |d| {
        rule(d, |rule| rule.message.pieces.swap(1, 2))
    }),
    ("basis of a rule", |d| {
        rule(d, |rule| rule.basis = Some("a letter".to_owned()))
    }),
    ("no basis", |d| rule(d, |rule| rule.basis = None)),
    ("a rule that nobody may waive", |d| {
        rule(d, |rule| rule.waivable = false)
    }),
    ("a rule less", |d| drop(d.rules.pop())),
    ("a rule twice", |d| d.rules.push(d.rules[2].clone())),
];
