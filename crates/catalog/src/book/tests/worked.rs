//! Whole prices through a book that was read from files and the judge, against published and worked numbers.
//!
//! Sources. Half away from zero: Streamlined Sales and Use Tax Agreement, section 324 (up when the third decimal is
//! greater than four). That percentages do not add up, that a flat discount and one in percent do not commute, and
//! half-open brackets (lower < size <= upper): common practice in pricing, no source; the numbers were worked by hand.
//! Areas: 144 square inches are a square foot.

use astragal_model::{
    Authorities, Date, Expression, Function, ItemState, Judgement, Measured, MeasuringUnit, Number, Pick,
    Setting, Site, Total, Value, fill, judge,
};

use super::*;

/// Prices a unit of this width and height with this finish by a book of these files.
fn judged(items: Vec<PriceItem>, files: &[(&str, &str)], size: [&str; 2], finish: &str) -> Judgement {
    let catalog = catalog(items);
    let (book, findings, _) = Shelf::new(files).load(&catalog);
    let book = book.unwrap_or_else(|| panic!("{findings:?}")).book;
    let measured = size.map(|inches| {
        let value = Value::Length(Number::from_decimal(inches).unwrap());
        Some(Measured {
            value,
            deducted_by: None,
        })
    });
    let site = Site {
        measures: measured.into_iter().collect(),
        ..Site::default()
    };
    let setting = Setting {
        catalog: &catalog,
        book: Some(&book),
        policy: None,
        site: &site,
        waivers: &[],
        authorities: &Authorities::default(),
        date: Date::constant(2026, 11, 25),
    };
    let picks = [Pick {
        attribute: FINISH,
        option: Id::new(finish),
        quoted: None,
    }];
    let unit = fill(&setting, &picks);
    judge(&setting, &unit)
}

fn total(items: Vec<PriceItem>, files: &[(&str, &str)], size: [&str; 2]) -> String {
    match judged(items, files, size, "white").total {
        Total::Known(money) => money.to_string(),
        other => format!("{other:?}"),
    }
}

fn tail_total(amount: &str, steps: &[&str]) -> String {
    let steps = steps.iter().enumerate();
    let steps: String = steps
        .map(|(at, step)| format!("[[tail]]\nid = \"t{at}\"\nlabel = \"T\"\n{step}\n"))
        .collect();
    let toml = book_toml(&format!("amounts = \"amounts.csv\"\n{steps}"));
    let csv = format!("item,amount\nbase,{amount}\n");
    total(
        vec![flat("base")],
        &[("book.toml", &toml), ("amounts.csv", &csv)],
        ["1", "1"],
    )
}

/// 487.35 less 50, less 10 %: 437.35 x 0.9 = 393.615. The other way round: 438.615 - 50 = 388.615, each step rounded.
#[test]
fn a_flat_discount_and_one_in_percent_keep_their_order() {
    assert_eq!(
        tail_total("487.35", &["flat = -50", "percent = -10"]),
        "393.62 USD"
    );
    assert_eq!(
        tail_total("487.35", &["percent = -10", "flat = -50"]),
        "388.62 USD"
    );
}

#[test]
fn percentages_do_not_add_up() {
    assert_eq!(
        tail_total("1000", &["percent = -10", "percent = -5"]),
        "855.00 USD"
    );
    assert_eq!(tail_total("1000", &["percent = -15"]), "850.00 USD");
}

#[test]
fn an_item_is_rounded_once_half_away_from_zero() {
    for (amount, rounded) in [
        ("1.005", "1.01"),
        ("1.015", "1.02"),
        ("1.025", "1.03"),
        ("0.125", "0.13"),
        ("2.675", "2.68"),
        ("-1.005", "-1.01"),
        ("1.0049", "1.00"),
    ] {
        assert_eq!(tail_total(amount, &[]), format!("{rounded} USD"), "{amount}");
    }
}

/// An item with the quantity `max(in_ft2(area), minimum)`.
fn by_area(minimum: i64) -> PriceItem {
    let area = Expression::Read(Subject::Figure(FigureIndex(2)));
    let feet = Expression::Call(Function::InUnit(MeasuringUnit::SquareFoot), vec![area]);
    let least = Expression::Literal(Value::Number(Number::from(minimum)));
    PriceItem {
        quantity: Some(Expression::Call(Function::Max, vec![feet, least])),
        ..flat("glass")
    }
}

/// 36 x 60 in are 15.000 sq ft; 35.5 x 59.25 in are 14.6068 sq ft; below 5 sq ft 5 are billed.
#[test]
fn area_is_billed_by_the_square_foot_and_never_below_the_minimum() {
    let toml = book_toml("amounts = \"amounts.csv\"\n");
    for (size, amount, expected) in [
        (["36", "60"], "1", "15.00 USD"),
        (["35.5", "59.25"], "10000", "146067.71 USD"),
        (["20", "30"], "1", "5.00 USD"),
        (["24", "30"], "1", "5.00 USD"),
        (["24", "30.06"], "1", "5.01 USD"),
    ] {
        let csv = format!("item,amount\nglass,{amount}\n");
        let files = [("book.toml", toml.as_str()), ("amounts.csv", csv.as_str())];
        assert_eq!(total(vec![by_area(5)], &files, size), expected, "{size:?}");
    }
}

const GRID_CSV: &str = "high \\ wide,24,36\n36,100,110\n48,200,\n";

/// The item's axes are height and width: rows of the sheet first.
fn grid_total(size: [&str; 2]) -> Option<String> {
    let toml = book_toml("[[grid]]\nid = \"casement\"\ntable = \"grid.csv\"\nlower = [\"12\", \"0\"]\n");
    let files = [("book.toml", toml.as_str()), ("grid.csv", GRID_CSV)];
    let judgement = judged(vec![grid("base", "casement", &[1, 0])], &files, size, "white");
    let known = matches!(judgement.total, Total::Known(_));
    let breaks = judgement
        .rules
        .iter()
        .any(|rule| rule.id.as_str() == "has-a-price");
    assert_eq!(known, !breaks, "{judgement:?}");
    match judgement.total {
        Total::Known(money) => Some(money.grouped()),
        _ => None,
    }
}

/// Bracket edges: lower < size <= upper, each way.
#[test]
fn a_size_on_a_bound_lies_below_it() {
    for (size, expected) in [
        (["24", "36"], Some("100.00")),
        (["24.0625", "36"], Some("110.00")),
        (["24", "36.0625"], Some("200.00")),
        (["0.0625", "12.0625"], Some("100.00")),
        (["36", "36"], Some("110.00")),
        // The lower end itself, past the last bound, and an empty cell.
        (["24", "12"], None),
        (["0", "36"], None),
        (["36.0625", "36"], None),
        (["24", "48.0625"], None),
        (["36", "48"], None),
    ] {
        assert_eq!(grid_total(size).as_deref(), expected, "{size:?}");
    }
}

/// United inches: 24 + 48.5 = 72.5 lies on the bound.
#[test]
fn united_inches_are_one_axis() {
    let toml = book_toml("[[grid]]\nid = \"united\"\ntable = \"grid.csv\"\nlower = [0]\n");
    let files = [
        ("book.toml", toml.as_str()),
        ("grid.csv", "upper,amount\n72.5,100\n84,120\n"),
    ];
    let items = || vec![grid("base", "united", &[3])];
    assert_eq!(total(items(), &files, ["24", "48.5"]), "100.00 USD");
    assert_eq!(total(items(), &files, ["24", "48.5001"]), "120.00 USD");
}

/// 12.5 % of 199.99 is 24.99875.
#[test]
fn an_item_in_percent_takes_its_part_of_a_rounded_line() {
    let toml = book_toml("amounts = \"amounts.csv\"\n");
    let files = [
        ("book.toml", toml.as_str()),
        ("amounts.csv", "item,amount\nbase,199.99\ndark,12.5 %\n"),
    ];
    assert_eq!(
        total(vec![flat("base"), percent("dark", "base")], &files, ["1", "1"]),
        "224.99 USD"
    );
}

#[test]
fn a_sheet_gives_the_amount_of_the_option_that_stands() {
    let toml = book_toml("[[sheet]]\nitem = \"finish\"\ntable = \"sheet.csv\"\n");
    let files = [
        ("book.toml", toml.as_str()),
        ("sheet.csv", "finish,amount\nwhite,0\nmetal,24\n"),
    ];
    for (finish, expected) in [
        ("white", Some("0.00 USD")),
        ("nickel", Some("24.00 USD")),
        ("tan", None),
    ] {
        let judgement = judged(vec![by("finish", &[FINISH])], &files, ["1", "1"], finish);
        let line = judgement.items.first().map(|line| line.state.clone());
        match (line, expected) {
            (Some(ItemState::Amount(money)), Some(expected)) => assert_eq!(money.to_string(), expected),
            (_, None) => assert!(
                judgement
                    .rules
                    .iter()
                    .any(|rule| rule.id.as_str() == "has-a-price")
            ),
            (line, _) => panic!("{line:?}"),
        }
    }
}
