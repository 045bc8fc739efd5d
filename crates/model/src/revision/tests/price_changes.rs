//! Every field of a book and of a policy changed, one at a time, and what may change without another revision.

use std::collections::BTreeMap;

use jiff::civil::date;

use super::check_all_differ;
use super::fixture::{GLAZING_LOWER, Layout, OPERATION, SCREEN, declarations, ids, literal, number};
use crate::attribute::Standard;
use crate::catalog::Catalog;
use crate::currency::Currency;
use crate::expression::{Expression, Subject};
use crate::id::{AttributeIndex, Id};
use crate::policy::PolicyTerms;
use crate::price::{Amount, Axis, Book, Class, Grid, SheetRow, TailStep};
use crate::revision::Revision;
use crate::rule::{Effect, Requirement, Rule};
use crate::template::Template;
use crate::value::Value;
use astragal_exact::Number;

fn tail() -> Vec<TailStep> {
    let step = |id: &str, amount| TailStep {
        id: Id::new(id),
        label: format!("The {id}"),
        class: Class::Fee,
        tax_class: Some("T1".to_owned()),
        amount,
    };
    vec![
        step("fuel", Amount::Percent(number("3.5"))),
        step("crate", Amount::Money(number("25"))),
    ]
}

pub(super) fn book() -> Book {
    let row = |screen: Option<&[&str]>, operation: Option<&[&str]>, amount| SheetRow {
        options: vec![screen.map(ids), operation.map(ids)],
        amount: number(amount),
    };
    let axis = |lower, uppers: [i64; 2]| Axis {
        lower: number(lower),
        uppers: uppers.into_iter().map(Number::from).collect(),
    };
    Book {
        id: Id::new("spring"),
        label: "Spring".to_owned(),
        catalog: Id::new("hung"),
        currency: Currency::from_code("USD").expect("a currency"),
        round_to: number("0.01"),
        from: Some(date(2026, 3, 1)),
        until: Some(date(2026, 8, 31)),
        amounts: BTreeMap::from([
            (Id::new("fitting"), Amount::Money(number("40"))),
            (Id::new("rush"), Amount::Percent(number("12.5"))),
        ]),
        sheets: BTreeMap::from([(
            Id::new("screen"),
            vec![
                row(Some(&["half"]), None, "30"),
                row(Some(&["none"]), Some(&["double", "single"]), "0"),
            ],
        )]),
        grids: BTreeMap::from([(
            Id::new("sizes"),
            Grid {
                axes: vec![axis("0", [60, 90]), axis("10", [20, 30])],
                cells: vec![
                    Some(number("300")),
                    Some(number("350")),
                    Some(number("400")),
                    None,
                ],
            },
        )]),
        tail: tail(),
    }
}

pub(super) fn policy() -> PolicyTerms {
    PolicyTerms {
        id: Id::new("north"),
        label: "The north shop".to_owned(),
        hidden: BTreeMap::from([(OPERATION, ids(&["fixed"])), (SCREEN, ids(&["none"]))]),
        standards: BTreeMap::from([
            (OPERATION, Standard::Option(Id::new("double"))),
            (SCREEN, Standard::Ask),
        ]),
        rules: vec![dealer_rule("first"), dealer_rule("second")],
        mark_ups: BTreeMap::from([(Class::Goods, number("25")), (Class::Labour, number("10"))]),
        round_to: Some(number("1")),
        tail: tail(),
    }
}

fn dealer_rule(id: &str) -> Rule {
    Rule {
        id: Id::new(id),
        part: None,
        authority: Id::new("dealer"),
        effect: Effect::Block,
        when: None,
        requirement: Requirement::Expression(Expression::is_option(SCREEN, "half")),
        message: Template::text("We sell no window without a screen."),
        basis: None,
        waivable: false,
    }
}

fn sheet(of: &mut Book, change: impl FnOnce(&mut Vec<SheetRow>)) {
    change(of.sheets.get_mut("screen").expect("it is there"));
}

fn grid(of: &mut Book, change: impl FnOnce(&mut Grid)) {
    change(of.grids.get_mut("sizes").expect("it is there"));
}

/// A change with its name.
type Change<T> = (&'static str, fn(&mut T));

/// Changes of the tail, for book and policy alike.
const TAIL: &[Change<Vec<TailStep>>] = &[
    ("order of the tail", |tail| tail.reverse()),
    ("a step less", |tail| drop(tail.pop())),
    ("id of a step", |tail| tail[0].id = Id::new("energy")),
    ("label of a step", |tail| tail[0].label.push('!')),
    ("class of a step", |tail| tail[0].class = Class::Goods),
    ("tax class of a step", |tail| tail[0].tax_class = None),
    ("amount of a step", |tail| {
        tail[0].amount = Amount::Percent(number("3.6"))
    }),
    ("sort of amount of a step", |tail| {
        tail[0].amount = Amount::Money(number("3.5"))
    }),
];

const BOOK: &[Change<Book>] = &[
    ("id", |book| book.id = Id::new("summer")),
    ("label", |book| book.label.push('!')),
    ("catalog", |book| book.catalog = Id::new("hinged")),
    ("currency", |book| {
        book.currency = Currency::from_code("CAD").expect("a currency")
    }),
    ("unit to round to", |book| book.round_to = number("0.05")),
    ("first day", |book| book.from = Some(date(2026, 3, 2))),
    ("no first day", |book| book.from = None),
    ("last day", |book| book.until = Some(date(2026, 9, 1))),
    ("first day turned into last day", |book| {
        (book.from, book.until) = (None, book.from)
    }),
    ("an amount", |book| {
        drop(
            book.amounts
                .insert(Id::new("fitting"), Amount::Money(number("41"))),
        )
    }),
    ("an amount turned into a percentage", |book| {
        book.amounts
            .insert(Id::new("fitting"), Amount::Percent(number("40")));
    }),
    ("an amount less", |book| drop(book.amounts.pop_last())),
    ("item of a sheet", |book| {
        let rows = book.sheets.remove("screen").expect("it is there");
        book.sheets.insert(Id::new("mesh"), rows);
    }),
    ("amount of a row", |book| {
        sheet(book, |rows| rows[0].amount = number("31"))
    }),
    ("options of a row", |book| {
        sheet(book, |rows| rows[1].options[1] = Some(ids(&["double"])))
    }),
    ("every option turned into none", |book| {
        sheet(book, |rows| rows[0].options[1] = Some(ids(&[])))
    }),
    ("cells of a row exchanged", |book| {
        sheet(book, |rows| rows[0].options.reverse())
    }),
    ("a row less", |book| sheet(book, |rows| drop(rows.pop()))),
    ("a row twice", |book| {
        sheet(book, |rows| rows.push(rows[0].clone()))
    }),
    ("id of a grid", |book| {
        let grid = book.grids.remove("sizes").expect("it is there");
        book.grids.insert(Id::new("areas"), grid);
    }),
    ("lower end of an axis", |book| {
        grid(book, |grid| grid.axes[0].lower = number("1"))
    }),
    ("bound of a bracket", |book| {
        grid(book, |grid| grid.axes[0].uppers[1] = number("91"))
    }),
    ("a bracket less", |book| {
        grid(book, |grid| drop(grid.axes[1].uppers.pop()))
    }),
    ("a bound moved to the other axis", |book| {
        grid(book, |grid| {
            let bound = grid.axes[0].uppers.pop().expect("it is there");
            grid.axes[1].uppers.insert(0, bound);
        });
    }),
    ("order of the axes", |book| grid(book, |grid| grid.axes.reverse())),
    ("a cell", |book| {
        grid(book, |grid| grid.cells[0] = Some(number("301")))
    }),
    ("an empty cell", |book| grid(book, |grid| grid.cells[0] = None)),
    ("an empty cell turned into 0", |book| {
        grid(book, |grid| grid.cells[3] = Some(Number::ZERO))
    }),
    ("order of the cells", |book| {
        grid(book, |grid| grid.cells.swap(0, 1))
    }),
];

const POLICY: &[Change<PolicyTerms>] = &[
    ("id", |policy| policy.id = Id::new("south")),
    ("label", |policy| policy.label.push('!')),
    ("attribute of what is hidden", |policy| {
        let options = policy.hidden.remove(&OPERATION).expect("it is there");
        policy.hidden.insert(GLAZING_LOWER, options);
    }),
    ("options that are hidden", |policy| {
        policy.hidden.insert(OPERATION, ids(&["fixed", "single"]));
    }),
    ("nothing hidden", |policy| policy.hidden.clear()),
    ("a standard", |policy| {
        drop(policy.standards.insert(OPERATION, Standard::Ask))
    }),
    ("attribute of a standard", |policy| {
        let standard = policy.standards.remove(&SCREEN).expect("it is there");
        policy.standards.insert(GLAZING_LOWER, standard);
    }),
    ("standard by formula", |policy| {
        let half = literal(Value::Option(Id::new("half")));
        policy.standards.insert(SCREEN, Standard::Formula(half));
    }),
    ("a rule", |policy| policy.rules[0].waivable = true),
    ("a rule less", |policy| drop(policy.rules.pop())),
    ("what a rule reads", |policy| {
        let reads = Expression::Read(Subject::Fact(Layout::default().sleeping()));
        policy.rules[0].requirement = Requirement::Expression(reads);
    }),
    ("a mark-up", |policy| {
        drop(policy.mark_ups.insert(Class::Goods, number("26")))
    }),
    ("mark-ups exchanged", |policy| {
        policy.mark_ups = BTreeMap::from([(Class::Goods, number("10")), (Class::Labour, number("25"))]);
    }),
    ("a mark-up of nothing", |policy| {
        drop(policy.mark_ups.insert(Class::Fee, Number::ZERO))
    }),
    ("unit to round to", |policy| policy.round_to = Some(number("5"))),
    ("no unit to round to", |policy| policy.round_to = None),
];

fn catalog(layout: Layout) -> Catalog {
    Catalog::new(declarations(layout)).expect("a catalog")
}

pub(super) fn policy_revision(terms: &PolicyTerms, layout: Layout) -> Revision {
    Revision::of_policy(terms, &catalog(layout))
}

#[test]
fn every_change_of_a_book_makes_another_revision() {
    let mut rows = vec![("as it is", book().revision())];
    for (name, change) in BOOK {
        let mut changed = book();
        change(&mut changed);
        rows.push((name, changed.revision()));
    }
    for (name, change) in TAIL {
        let mut changed = book();
        change(&mut changed.tail);
        rows.push((name, changed.revision()));
    }
    check_all_differ(&rows);
}

#[test]
fn every_change_of_a_policy_makes_another_revision() {
    let revision = |terms: &PolicyTerms| policy_revision(terms, Layout::default());
    let mut rows = vec![("as it is", revision(&policy()))];
    for (name, change) in POLICY {
        let mut changed = policy();
        change(&mut changed);
        rows.push((name, revision(&changed)));
    }
    for (name, change) in TAIL {
        let mut changed = policy();
        change(&mut changed.tail);
        rows.push((name, revision(&changed)));
    }
    let mut other = declarations(Layout::default());
    other.id = Id::new("hinged");
    let other = Catalog::new(other).expect("a catalog");
    rows.push(("for another catalog", Revision::of_policy(&policy(), &other)));
    check_all_differ(&rows);
}

#[test]
fn the_order_of_the_rows_of_a_sheet_does_not_count() {
    let mut turned = book();
    sheet(&mut turned, |rows| rows.reverse());
    assert_ne!(turned, book());
    assert_eq!(turned.revision(), book().revision());
}

#[test]
fn the_order_of_the_rules_of_a_policy_does_not_count() {
    let mut turned = policy();
    turned.rules.reverse();
    assert_ne!(turned, policy());
    let layout = Layout::default();
    assert_eq!(
        policy_revision(&turned, layout),
        policy_revision(&policy(), layout)
    );
}

/// The policy names attributes; where they stand in the catalog is the catalog's affair. Two attributes that the policy
/// names change places, and the policy's positions with them.
#[test]
fn a_policy_counts_names_and_not_positions() {
    let mut moved = declarations(Layout::default());
    let (screen, operation) = (
        moved.attributes.at(SCREEN).clone(),
        moved.attributes.at(OPERATION).clone(),
    );
    let swapped: Vec<_> = [screen, operation]
        .into_iter()
        .chain(moved.attributes.values().skip(2).cloned())
        .map(|mut attribute| {
            attribute.applies_when = None;
            attribute
        })
        .collect();
    moved.attributes = swapped.into();
    let moved = Catalog::new(moved).expect("a catalog");
    let (new_screen, new_operation) = (AttributeIndex(0), AttributeIndex(1));
    let mut terms = policy();
    terms.hidden = BTreeMap::from([(new_operation, ids(&["fixed"])), (new_screen, ids(&["none"]))]);
    terms.standards = BTreeMap::from([
        (new_operation, Standard::Option(Id::new("double"))),
        (new_screen, Standard::Ask),
    ]);
    for rule in &mut terms.rules {
        rule.requirement = Requirement::Expression(Expression::is_option(new_screen, "half"));
    }
    let before = policy_revision(&policy(), Layout::default());
    assert_eq!(Revision::of_policy(&terms, &moved), before);
    assert_ne!(Revision::of_policy(&policy(), &moved), before);
}

#[test]
fn a_policy_keeps_its_revision_when_a_label_of_its_catalog_changes() {
    let mut relabelled = declarations(Layout::default());
    relabelled.label.push('!');
    let relabelled = Catalog::new(relabelled).expect("a catalog");
    assert_eq!(
        Revision::of_policy(&policy(), &relabelled),
        policy_revision(&policy(), Layout::default())
    );
}

#[test]
fn a_policy_that_names_what_is_not_there_has_a_revision_too() {
    let at = |position| {
        let mut terms = policy();
        terms.hidden.insert(AttributeIndex(position), ids(&["fixed"]));
        policy_revision(&terms, Layout::default())
    };
    assert_ne!(at(99), at(98));
}
