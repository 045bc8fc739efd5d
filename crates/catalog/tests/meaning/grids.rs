//! Grids: brackets, their ends, sizes that have no amount, and items that a book forgot.

use crate::{Case, NONE, attribute, figure, item, measures, table_figure};

const GRID: &str = "upper height\\width,24,36\n40,100.00,110.00\n60,120.00,\n";

fn priced(keys: &str) -> Case {
    Case::new(&measures(&["width", "height"]))
        .and(&figure("unit_width", "width"))
        .and(&figure("unit_height", "height"))
        .and(&item(
            "base",
            &format!("grid = \"sizes\"\naxes = [\"unit_height\", \"unit_width\"]\n{keys}"),
        ))
        .grid("sizes", "[\"20\", \"12\"]", GRID)
}

fn of_size(keys: &str, width: &str, height: &str) -> crate::judged::Judged {
    priced(keys)
        .measure("width", width)
        .measure("height", height)
        .answer()
}

/// Width, height, and the amount.
const EDGES: [(&str, &str, &str); 8] = [
    ("24", "40", "100.00"),
    ("24 1/64", "40", "110.00"),
    ("24", "40 1/64", "120.00"),
    ("36", "40", "110.00"),
    ("12 1/64", "20 1/64", "100.00"),
    ("24", "60", "120.00"),
    ("23 63/64", "39 63/64", "100.00"),
    ("24.0000001", "40", "110.00"),
];

#[test]
fn a_size_lies_in_the_bracket_above_its_lower_end_and_up_to_its_upper_end() {
    for (width, height, amount) in EDGES {
        assert_eq!(of_size("", width, height).total(), amount, "{width} x {height}");
    }
}

#[test]
fn the_lower_end_of_the_first_bracket_is_outside() {
    for (width, height) in [("12", "40"), ("24", "20")] {
        assert_eq!(
            of_size("", width, height).broken(),
            ["has-a-price base"],
            "{width} x {height}"
        );
    }
}

#[test]
fn a_size_past_the_end_breaks_has_a_price() {
    for (width, height) in [("36 1/64", "40"), ("24", "60 1/64"), ("100", "100")] {
        let judged = of_size("", width, height);
        assert_eq!(judged.broken(), ["has-a-price base"], "{width} x {height}");
        assert_eq!(
            (judged.total().as_str(), judged.verdict()),
            ("no price", "broken")
        );
    }
}

#[test]
fn an_empty_cell_breaks_has_a_price() {
    let judged = of_size("", "30", "50");
    assert_eq!(
        (judged.broken(), judged.total()),
        (vec!["has-a-price base".to_owned()], "no price".to_owned())
    );
}

#[test]
fn with_sign_off_beyond_the_end_the_total_is_unknown_and_a_sign_off_is_asked_for() {
    for (width, height) in [("36 1/64", "40"), ("30", "50")] {
        let judged = of_size("beyond = \"sign_off\"", width, height);
        assert_eq!(judged.broken(), NONE, "{width} x {height}");
        assert_eq!(judged.not_binding(), ["has-a-price base wants a sign-off"]);
        assert_eq!(
            (judged.total().as_str(), judged.verdict()),
            ("unknown: the plant's sign-off on base", "undecided")
        );
    }
    assert_eq!(of_size("beyond = \"sign_off\"", "36", "40").total(), "110.00");
}

#[test]
fn with_sign_off_a_size_at_or_below_the_lower_end_breaks_has_a_price() {
    for (width, height) in [("12", "40"), ("10", "40"), ("24", "20"), ("40", "20")] {
        let judged = of_size("beyond = \"sign_off\"", width, height);
        assert_eq!(judged.broken(), ["has-a-price base"], "{width} x {height}");
    }
}

#[test]
fn a_sign_off_says_whether_the_size_is_past_the_end_or_its_cell_is_empty() {
    let message = |width, height| of_size("beyond = \"sign_off\"", width, height).message("has-a-price");
    assert!(message("37", "40").contains("past the end of the price grid"));
    assert!(message("30", "50").contains("its cell in the price grid is empty"));
}

#[test]
fn a_size_that_is_not_known_leaves_the_total_unknown_and_breaks_nothing() {
    let judged = priced("").measure("width", "24").answer();
    assert_eq!(
        (judged.total(), judged.broken()),
        ("unknown: HEIGHT".to_owned(), vec![])
    );
}

#[test]
fn a_size_without_a_value_breaks_has_a_price_without_a_row() {
    let judged = Case::new(&attribute("glass", "double triple", "standard = \"triple\""))
        .and(&table_figure("weight", "keys = [\"glass\"]"))
        .file("catalog/weight.csv", "glass,weight\ndouble,3\n")
        .and(&item("lift", "grid = \"weights\"\naxes = [\"weight\"]"))
        .grid("weights", "[\"0\"]", "upper,amount\n5,10.00\n")
        .answer();
    assert_eq!(judged.broken(), ["has-a-price lift (no row)"]);
}

#[test]
fn bounds_that_do_not_rise_are_a_finding() {
    for headers in ["36,24", "24,24.0"] {
        let case = priced("").file("book/sizes-grid.csv", &format!("h,{headers}\n40,1.00,2.00\n"));
        assert_eq!(case.codes(), ["BOUNDS_DO_NOT_RISE"], "{headers}");
    }
    let below = priced("").file("book/sizes-grid.csv", "h,12,24\n40,1.00,2.00\n");
    assert_eq!(
        below.codes(),
        ["BOUNDS_DO_NOT_RISE"],
        "the first bracket would be empty"
    );
}

#[test]
fn an_item_without_any_entry_in_the_book_is_a_finding_when_the_two_are_read_together() {
    assert_eq!(Case::new(&item("base", "")).codes(), ["ITEM_WITHOUT_AMOUNT"]);
    let case = Case::new(&figure("one", "1")).and(&item("base", "grid = \"sizes\"\naxes = [\"one\"]"));
    assert_eq!(case.codes(), ["ITEM_WITHOUT_AMOUNT"]);
}

#[test]
fn a_grid_states_its_lower_ends() {
    let head = "format = 1\n[book]\nid = \"b\"\nlabel = \"B\"\ncatalog = \"c\"\ncurrency = \"USD\"\nround_to = \"0.01\"\n";
    let grid = "[[grid]]\nid = \"sizes\"\ntable = \"sizes-grid.csv\"\n";
    let with = |lower: &str| priced("").file("book/book.toml", &format!("{head}{grid}{lower}\n"));
    assert_eq!(with("lower = [\"20\", \"12\"]").codes(), NONE);
    assert_eq!(with("").codes(), ["MISSING_KEY"]);
}

#[test]
fn the_rows_of_the_sheet_are_the_first_axis() {
    let judged = of_size("", "30", "30");
    assert_eq!(judged.total(), "110.00", "width runs across");
}

/// One axis over united inches, rounded up each way first, or once at the end.
fn united(formula: &str, width: &str, height: &str) -> (String, String) {
    let judged = Case::new(&measures(&["width", "height"]))
        .and(&figure("united_inches", formula))
        .and(&item("base", "grid = \"united\"\naxes = [\"united_inches\"]"))
        .grid("united", "[\"0\"]", "upper,amount\n95,200.00\n96,210.00\n")
        .measure("width", width)
        .measure("height", height)
        .answer();
    (judged.figure("united_inches"), judged.total())
}

#[test]
fn united_inches_are_a_figure_with_its_own_rounding_up() {
    let each = r#"ceil_to(width, "1") + ceil_to(height, "1")"#;
    let once = r#"ceil_to(width + height, "1")"#;
    assert_eq!(
        united(each, "35.25", "59.25"),
        ("96 in".to_owned(), "210.00".to_owned())
    );
    assert_eq!(
        united(once, "35.25", "59.25"),
        ("95 in".to_owned(), "200.00".to_owned())
    );
}
