//! Values of the trade, each row with its source: brackets, billable areas, halves, percentages, measuring.

use crate::{Case, figure, item, measures};

/// A size in inches and the amount of its bracket. Common practice, no source: half-open brackets, lower < size <= upper.
const BRACKETS: [(&str, &str); 6] = [
    ("24", "200.00"),
    ("24 1/64", "240.00"),
    ("30", "240.00"),
    ("30 1/64", "300.00"),
    ("36", "300.00"),
    ("35 63/64", "300.00"),
];

#[test]
fn a_size_on_the_edge_of_two_brackets_belongs_to_the_lower_one() {
    for (size, amount) in BRACKETS {
        let judged = Case::new(&measures(&["width"]))
            .and(&figure("unit_width", "width"))
            .and(&item("base", "grid = \"g\"\naxes = [\"unit_width\"]"))
            .grid("g", "[\"0\"]", "upper,amount\n24,200.00\n30,240.00\n36,300.00\n")
            .measure("width", size)
            .answer();
        assert_eq!(judged.total(), amount, "{size}");
    }
}

/// Width, height, price of tempered glass at 10.00 a square foot and at least 5 sq ft. The minimum is common practice,
/// no source; the areas are worked by hand.
const BILLABLE: [(&str, &str, &str); 5] = [
    ("20", "24", "50.00"),
    ("30", "24", "50.00"),
    ("30", "24 1/8", "50.26"),
    ("36", "60", "150.00"),
    ("35.5", "59.25", "146.07"),
];

#[test]
fn a_minimum_billable_area_is_billed_below_it_and_the_area_itself_above() {
    for (width, height, amount) in BILLABLE {
        let judged = Case::new(&measures(&["width", "height"]))
            .and(&item("tempered", "quantity = 'max(in_ft2(width * height), 5)'"))
            .amount("tempered", "10.00")
            .measure("width", width)
            .measure("height", height)
            .answer();
        assert_eq!(judged.total(), amount, "{width} x {height}");
    }
}

#[test]
fn areas_and_lengths_around_agree_with_hand_arithmetic() {
    // 36 x 60 in: 2160 / 144 = 15 ft2; 2 (36 + 60) / 12 = 16 ft around.
    let case = Case::new(&measures(&["width", "height"]))
        .measure("width", "36")
        .measure("height", "60");
    assert_eq!(
        case.values(&["in_ft2(width * height)", "in_feet((width + height) * 2)"]),
        ["15", "16"]
    );
    // 35.5 x 59.25 in: 2103.375 / 144 = 14.60677...
    let case = Case::new(&measures(&["width", "height"]))
        .measure("width", "35.5")
        .measure("height", "59.25");
    assert_eq!(
        case.values(&[
            "in_in2(width * height)",
            "round_to(in_ft2(width * height), 0.0001)"
        ]),
        ["2103.375", "14.6068"]
    );
}

/// Amount, quantity, and the product to a cent, a half away from zero. The Streamlined Sales and Use Tax Agreement,
/// section 324, rounds up when the third decimal is greater than four; for prices it is common practice, no source.
/// Half to even would give 1.00 for the first, 1.02 for the third, 0.12 for the fourth and -1.00 for the last; binary
/// fractions would give 2.67 for 2.675.
const HALVES: [(&str, &str, &str); 6] = [
    ("1.00", "1.005", "1.01"),
    ("1.00", "1.015", "1.02"),
    ("1.00", "1.025", "1.03"),
    ("1.00", "0.125", "0.13"),
    ("1.00", "2.675", "2.68"),
    ("-1.00", "1.005", "-1.01"),
];

#[test]
fn half_a_cent_goes_away_from_zero() {
    for (amount, quantity, product) in HALVES {
        let judged = Case::new(&item(
            "line",
            &format!("class = \"credit\"\nquantity = '{quantity}'"),
        ))
        .amount("line", amount)
        .answer();
        assert_eq!(judged.total(), product, "{amount} x {quantity}");
    }
}

fn tail(subtotal: &str, steps: &[(&str, &str)]) -> String {
    let mut case = Case::new(&item("base", "")).amount("base", subtotal);
    for (id, amount) in steps {
        case = case.tail(id, amount);
    }
    case.answer().total()
}

#[test]
fn a_flat_and_a_percentage_step_do_not_change_places() {
    // Worked by hand: (487.35 - 50) x 0.9 = 393.615 and 487.35 x 0.9 - 50 = 388.615, halves away from zero.
    let (flat, percent) = (("flat", "flat = \"-50.00\""), ("percent", "percent = -10"));
    assert_eq!(tail("487.35", &[flat, percent]), "393.62");
    assert_eq!(tail("487.35", &[percent, flat]), "388.62");
}

#[test]
fn percentages_one_after_the_other_do_not_add_up() {
    // Worked by hand: 1000 x 0.9 x 0.95 = 855; 1000 x 0.85 = 850.
    assert_eq!(
        tail("1000.00", &[("a", "percent = -10"), ("b", "percent = -5")]),
        "855.00"
    );
    assert_eq!(tail("1000.00", &[("a", "percent = -15")]), "850.00");
}

/// Width, height, united inches with each rounded up first, and with the sum rounded up. 32 + 54 = 86 is how the trade
/// explains the term; that both ways are in use is common practice, no source; the sums are worked by hand.
const UNITED: [(&str, &str, &str, &str); 3] = [
    ("32", "54", "86 in", "86 in"),
    ("35.625", "59.75", "96 in", "96 in"),
    ("35.25", "59.25", "96 in", "95 in"),
];

#[test]
fn united_inches_say_what_is_rounded_up_first() {
    for (width, height, each, once) in UNITED {
        let case = Case::new(&measures(&["width", "height"]))
            .measure("width", width)
            .measure("height", height);
        let found = case.values(&[
            r#"ceil_to(width, "1") + ceil_to(height, "1")"#,
            r#"ceil_to(width + height, "1")"#,
        ]);
        assert_eq!(found, [each, once], "{width} x {height}");
    }
}

/// Measured size, deduction, step, and what is ordered: rounded down, as measuring guides of the trade say ("nearest
/// lower 1/8 in"). The deductions are common practice, no source; the differences are worked by hand.
const MEASURED: [(&str, &str, &str, &str); 4] = [
    ("35 15/16", "1/4", "1/8", "35 5/8 in"),
    ("35 15/16", "1/4", "1/4", "35 1/2 in"),
    ("35 15/16", "1/2", "1/8", "35 3/8 in"),
    ("59 13/16", "1/4", "1/8", "59 1/2 in"),
];

#[test]
fn a_measured_size_less_the_deduction_is_rounded_down_to_the_step() {
    for (size, deduction, step, ordered) in MEASURED {
        let case = Case::new(&measures(&["width"])).measure("width", size);
        let formula = format!(r#"floor_to(width - "{deduction}", "{step}")"#);
        assert_eq!(
            case.values(&[&formula]),
            [ordered],
            "{size} - {deduction} to {step}"
        );
    }
}
