//! Tables about the house, the sale, and what is not covered.

use astragal_exact::Number;
use astragal_trade::Date;
use astragal_trade::building_code::Edition;
use astragal_trade::cooling_off::{self, last_day};
use astragal_trade::escape::OwnSection;
use astragal_trade::lead::{
    Building, FACILITY_NOT_DECIDED, FIRST_YEAR_WITHOUT_LEAD_RULE, Work, lead_safe_in,
};
use astragal_trade::not_covered::Topic;
use astragal_trade::operation_terms::{Hinge, HingeSide, PanelTerm, UnitOperation, Viewer};
use astragal_trade::{Fact, Truth};

use crate::page::Page;
use crate::{Row, named, row, seen, standing};

pub(crate) fn lead() -> Vec<Row> {
    use Building::{ChildOccupiedFacility, Housing, Neither};
    let window = Work::window_replacement();
    let little = |room: i64, outside: i64| Work {
        window_replaced: Some(false),
        paint_in_room: Some(Number::from(room * 144)),
        paint_outside: Some(Number::from(outside * 144)),
        demolition: Some(false),
        prohibited_practice: Some(false),
    };
    let one = "one window replaced";
    let both = "no window; 6 sq ft in a room, 20 sq ft outside";
    let rows = [
        (
            Some(Housing),
            Some(1977),
            "one window replaced, however small",
            &window,
        ),
        (Some(Housing), Some(1978), one, &window),
        (Some(Housing), None, one, &window),
        (Some(Housing), Some(1977), both, &little(6, 20)),
        (
            Some(Housing),
            Some(1977),
            "no window; 7 sq ft in a room",
            &little(7, 0),
        ),
        (
            Some(Housing),
            Some(1977),
            "no window; 21 sq ft outside",
            &little(0, 21),
        ),
        (Some(ChildOccupiedFacility), Some(1977), one, &window),
        (Some(ChildOccupiedFacility), Some(1978), one, &window),
        (Some(Neither), Some(1977), one, &window),
        (None, Some(1977), one, &window),
    ];
    rows.map(|(building, year, job, work)| lead_row(building, year, job, work))
        .to_vec()
}

fn lead_row(building: Option<Building>, year: Option<i32>, job: &str, work: &Work) -> Row {
    let kind = match building {
        Some(Building::Housing) => "housing",
        Some(Building::ChildOccupiedFacility) => "a child-occupied facility",
        Some(Building::Neither) => "neither",
        None => "not known",
    };
    let answer = lead_safe_in(building, year, work).unwrap();
    let applies = match &answer.applies {
        Truth::Yes => "apply".to_owned(),
        Truth::No => "do not".to_owned(),
        Truth::Unknown(missing) => {
            assert!(answer.is_treated_as_applying());
            let facts: Vec<String> = missing.iter().map(ToString::to_string).collect();
            format!("treat as if they did; missing: {}", facts.join(", "))
        }
    };
    let year = year.map_or("not known".to_owned(), |year| year.to_string());
    row([kind, &year, job, &applies])
}

/// Work for which a code has a section of its own; only the heading was seen.
pub(crate) fn own_sections() -> Vec<Row> {
    OwnSection::ALL
        .map(|work| {
            let mut cells = vec![work.words().to_owned()];
            cells.extend(
                [Edition::Irc2018, Edition::Irc2021].map(|edition| standing(work.basis(edition).unwrap())),
            );
            let others = [
                Edition::Irc2024,
                Edition::Ibc2018,
                Edition::Ibc2021,
                Edition::Nfpa101,
            ];
            assert!(others.iter().all(|edition| work.basis(*edition).is_none()));
            cells
        })
        .to_vec()
}

#[test]
fn what_makes_a_building_a_facility_is_said_not_to_be_decided() {
    let text = Page::read().text().replace('\n', " ");
    assert!(
        text.contains(FACILITY_NOT_DECIDED.0),
        "{}",
        FACILITY_NOT_DECIDED.0
    );
}

#[test]
fn the_year_that_the_page_names_is_that_of_the_rule() {
    assert_eq!(FIRST_YEAR_WITHOUT_LEAD_RULE, 1978);
}

pub(crate) fn cooling_off() -> Vec<Row> {
    let rows = [
        (2026, 11, 23),
        (2026, 11, 27),
        (2026, 12, 23),
        (2027, 1, 8),
        (2026, 7, 1),
    ];
    rows.map(|(year, month, day)| {
        let signed = Date::new(year, month, day).unwrap();
        let last = last_day(signed).unwrap();
        let shown = |day: Date| day.strftime("%a %Y-%m-%d").to_string();
        row([&shown(signed), &shown(last.day), &shown(last.by_named_days)])
    })
    .to_vec()
}

pub(crate) fn left_out() -> Vec<Row> {
    cooling_off::NOT_COVERED
        .map(|(what, basis)| row([what, &named(basis)]))
        .to_vec()
}

#[test]
fn the_amounts_that_the_page_names_are_those_of_the_rule() {
    let amounts = (
        cooling_off::PRICE_AT_HOME_LEAST,
        cooling_off::PRICE_ELSEWHERE_LEAST,
    );
    assert_eq!(amounts, (25, 130));
}

#[test]
fn an_invitation_takes_no_sale_out_as_the_page_says() {
    let said = format!(
        "The rule applies as well when {} ({}, {})",
        cooling_off::APPLIES_ALSO,
        cooling_off::APPLIES_ALSO_BASIS,
        seen(cooling_off::APPLIES_ALSO_BASIS.status)
    );
    assert!(Page::read().text().contains(&said), "{said}");
}

pub(crate) fn operations() -> Vec<Row> {
    let hinge = Hinge {
        side: HingeSide::Left,
        seen_from: Viewer::Outside,
    };
    let rows = [
        ("casement", UnitOperation::Casement(hinge)),
        ("tilt and turn", UnitOperation::TiltTurn(hinge)),
        ("awning", UnitOperation::Awning),
        ("hopper", UnitOperation::Hopper),
        ("single hung", UnitOperation::SingleHung),
        ("double hung", UnitOperation::DoubleHung),
        ("slider of two lites", UnitOperation::Slider),
        ("fixed", UnitOperation::Fixed),
    ];
    rows.map(|(name, operation)| {
        let panels = operation.panels(None).into_iter().map(|panel| {
            let term = match panel.operation {
                PanelTerm::Named(term) => format!("`{}`", term.literal()),
                PanelTerm::EitherHand(left, right) => {
                    format!("`{}` or `{}`", left.literal(), right.literal())
                }
            };
            match panel.position {
                Some(position) => format!("{term} at `{}`", position.literal()),
                None => term,
            }
        });
        let panels: Vec<String> = panels.collect();
        let division = operation
            .partitioning()
            .map_or("not given".to_owned(), |term| format!("`{}`", term.literal()));
        row([name, &panels.join(", "), &division])
    })
    .to_vec()
}

pub(crate) fn not_covered() -> Vec<Row> {
    Topic::ALL.map(|topic| row([topic.words()])).to_vec()
}

#[test]
fn facts_are_asked_by_the_names_that_the_page_gives_them() {
    assert_eq!(
        Fact::ExposedGlassEdge.to_string(),
        "exposed glass edge above the floor"
    );
}
