//! Two openings of the demo order, priced by hand from the sheets of the books: a casement (B1) and a hung window (L2).
//!
//! Every step is written out: which bracket and why, quantities as fractions, mark-up, rounding, the steps at the
//! end. Then the quote must say the same, item by item. The policy of the order marks goods up by 25 %, labour by
//! 10 %, fees not at all, and rounds every item to whole dollars, a half away from zero.

#![expect(
    clippy::inconsistent_digit_grouping,
    reason = "amounts are cents, written as dollars_cents"
)]
#![expect(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::panic,
    clippy::expect_used,
    reason = "these are tests"
)]

mod program;

use std::collections::BTreeMap;

use program::json;
use serde_json::Value;

/// What an item of the goods class comes to, in cents: `cents` of the book, `numerator / denominator` times, 25 % on
/// top, to whole dollars, a half away from zero.
fn marked_up(cents: i64, numerator: i64, denominator: i64) -> i64 {
    // One dollar is 100 cents, and the mark-up a factor of 125 / 100.
    let (over, under) = (cents * numerator * 125, denominator * 100 * 100);
    let dollars = (2 * over + under) / (2 * under);
    dollars * 100
}

/// An opening as it was worked out by hand. Amounts are cents.
struct ByHand {
    tag: &'static str,
    /// Every item of which the unit has a line, with its amount.
    items: &'static [(&'static str, i64)],
    /// The brackets of the grid: axis, over, up to, in inches.
    brackets: [(&'static str, &'static str, &'static str); 2],
    /// What the grid says there.
    cell: i64,
    /// Quantities: item, numerator, denominator.
    quantities: &'static [(&'static str, i64, i64)],
    subtotal: i64,
    /// The steps after all items: id, amount, and what there is then.
    tail: &'static [(&'static str, i64, i64)],
    total: i64,
}

#[test]
fn a_casement_costs_what_its_sheets_come_to_by_hand() {
    // The smallest readings are 28 1/2 by 45 5/8 in, with diagonals of 53 7/8 and 53 3/4: (53.875^2 - 53.75^2) / 4 is
    // 3.3633..., over 28.5 a lean of 0.1180..., over 45.625 a slope of 0.0737.... So 28.3819... by 45.5512... stands upright in
    // it either way, down to the sixteenth 28 3/8 by 45 1/2. Nobody has deducted. A pocket takes 3/8 in from the width and
    // 1/2 in from the height (deductions.csv): 28 by 45 in, which are eighths already.
    // In sixteenths of an inch: 456 by 730, 862 and 860.
    let skew: i32 = 862 * 862 - 860 * 860;
    assert_eq!(456 - (skew + 4 * 456 - 1) / (4 * 456), 28 * 16 + 6);
    assert_eq!(730 - (skew + 4 * 730 - 1) / (4 * 730), 45 * 16 + 8);
    // casement.csv: its widths step 18, 24, 28 1/2, 33, 40, so 28 lies over 24 up to 28 1/2; its heights step 24, 36, 42,
    // 48, 60, 72, 80, so 45 lies over 42 up to 48. The cell says 476.00. 476.00 x 1.25 = 595.00.
    let base = marked_up(476_00, 1, 1);
    assert_eq!(base, 595_00);
    // White on both sides: no dark exterior, and white inside costs 0.00 (interior.csv).
    // Glass: the policy makes `double-plus` the standard, 3.15 a sq ft (glass.csv). A casement loses 5 1/4 in each way
    // (pane-lost.csv): 22 3/4 by 39 3/4 in. In quarters of an inch 91 x 159 = 14,469, in square inches 14,469 / 16,
    // in square feet 14,469 / 2,304. 3.15 x 14,469 / 2,304 = 19.7818..., x 1.25 = 24.7273..., so 25.00.
    let glass = marked_up(3_15, 91 * 159, 16 * 144);
    assert_eq!(glass, 25_00);
    // Argon costs 0.00 (gas.csv). The warm-edge spacer costs 8.50 (spacer.csv), x 1.25 = 10.625, so 11.00.
    let spacer = marked_up(8_50, 1, 1);
    assert_eq!(spacer, 11_00);
    // 6.28 sq ft take glass of 1/8 in by standard, 0.00 (thickness.csv). No coating on it, 0.00 a sq ft (coating.csv).
    // No grille: its sheets have no line while it is not asked. The ordinary hinge, the standard, leaves
    // too little to climb out by, so that the hinge that clears the opening is filled in: 23.75 (hinge.csv), x 1.25 =
    // 29.6875, so 30.00,
    // of coated steel, 0.00 (hinge-material.csv). The folding crank: 0.00 (handle.csv).
    let hinge = marked_up(23_75, 1, 1);
    assert_eq!(hinge, 30_00);
    // Satin nickel was picked: 36.00 whatever the inside (finish.csv), x 1.25 = 45.00.
    let finish = marked_up(36_00, 1, 1);
    assert_eq!(finish, 45_00);
    // 45 in lies over 36 up to 60 in: two locks, 0.00 (locks.csv). No control device, 0.00 (control.csv).
    // The policy makes the fine mesh the standard: 16.00 (mesh.csv), x 1.25 = 20.00, in a rolled frame, 0.00
    // (screen-build.csv). Wrapped, 0.00 (packing.csv). Pocket: no fin, casing, sill or jamb.
    let mesh = marked_up(16_00, 1, 1);
    assert_eq!(mesh, 20_00);
    // 595 + 25 + 11 + 30 + 45 + 20 = 726.
    assert_eq!(base + glass + spacer + hinge + finish + mesh, 726_00);
    check(&ByHand {
        tag: "B1",
        items: &[
            ("base-casement", 595_00),
            ("interior-finish", 0),
            ("glass", 25_00),
            ("gas", 0),
            ("spacer", 11_00),
            ("thick-glass", 0),
            ("outside-coating", 0),
            ("hinge", 30_00),
            ("hinge-material", 0),
            ("handle", 0),
            ("hardware-finish", 45_00),
            ("locks", 0),
            ("control-device", 0),
            ("mesh", 20_00),
            ("screen-build", 0),
            ("packing", 0),
        ],
        brackets: [("unit_width", "24", "28.5"), ("unit_height", "42", "48")],
        cell: 476_00,
        quantities: &[
            ("glass", 14_469, 2_304),
            ("thick-glass", 14_469, 2_304),
            ("outside-coating", 14_469, 2_304),
        ],
        subtotal: 726_00,
        // Freight of the book, 14.00, then the policy's share of a visit, 25.00; steps are not marked up.
        tail: &[("freight", 14_00, 740_00), ("site-visit", 25_00, 765_00)],
        total: 765_00,
    });
}

#[test]
fn two_hung_windows_cost_what_their_sheets_come_to_by_hand() {
    // The dealer has deducted: the unit is 36 by 60 in.
    // double-hung.csv, heights down: 60 lies over 54 up to 60, at its upper end; widths across: 36 lies over 32 up
    // to 36, at its upper end. The cell says 398.00. 398.00 x 1.25 = 497.50, a half goes up: 498.00.
    let base = marked_up(398_00, 1, 1);
    assert_eq!(base, 498_00);
    // Even halves, 0.00 (sash-split.csv). A pocket frame, 0.00 (install-type.csv); no fin, jamb or casing is asked.
    // A hung window has a sloped sill, and under it the angle: 1.20 a foot (sill-adapter.csv) of 36 / 12 = 3 ft is
    // 3.60, x 1.25 = 4.50, a half goes up: 5.00. No head expander, 0.00 a foot (head-expander.csv).
    let adapter = marked_up(1_20, 36, 12);
    assert_eq!(adapter, 5_00);
    // White on both sides: 0.00 (interior-finish.csv). Glass by the policy's standard: 3.15 a sq ft (glass.csv).
    // Each sash is 30 in high; beside the glass are 5 in of the width and 4 in of the height: 31 by 26 in, 806 sq in,
    // 1,612 for both, 1,612 / 144 sq ft. 3.15 x 1,612 / 144 = 35.2625, x 1.25 = 44.078125, so 44.00.
    let glass = marked_up(3_15, 2 * 31 * 26, 144);
    assert_eq!(glass, 44_00);
    // Argon, 0.00 for each of two sashes (gas.csv). Warm edge: 8.50 (spacer.csv), x 1.25 = 10.625, so 11.00. Glass of
    // 1/8 in by standard, 0.00 (thick-glass.csv). No breather tubes, 0.00 (breather-tubes.csv).
    let spacer = marked_up(8_50, 1, 1);
    assert_eq!(spacer, 11_00);
    // A flat colonial grille: 26.00 a sash (grille.csv), two sashes are 52.00, x 1.25 = 65.00. White: no coloured grille.
    let grille = marked_up(26_00, 2, 1);
    assert_eq!(grille, 65_00);
    // One cam lock up to 36 in, 0.00 (lock.csv), white with white, 0.00 (hardware-finish.csv). A sash weighs
    // 806 / 144 x 1.64 x 2 = 18.36 lb of glass and 11 ft x 0.6 = 6.6 lb of frame, 25.0 lb: above 22 and not above 30, so
    // rails to lift by, 0.00 (sash-lift.csv), and one coil, which has no line. Surface latches, 0.00 (tilt-latch.csv).
    // No control device, 0.00 (control-device.csv). A half screen with the policy's fine mesh: 11.00 (screen.csv),
    // x 1.25 = 13.75, so 14.00, in a rolled frame, 0.00 (screen-frame.csv). No foam, 0.00 a foot of 16 (foam.csv).
    let screen = marked_up(11_00, 1, 1);
    assert_eq!(screen, 14_00);
    // 498 + 5 + 44 + 11 + 65 + 14 = 637.
    assert_eq!(base + adapter + glass + spacer + grille + screen, 637_00);
    check(&ByHand {
        tag: "L2",
        items: &[
            ("base-double-hung", 498_00),
            ("sash-split", 0),
            ("install-type", 0),
            ("sill-adapter", 5_00),
            ("head-expander", 0),
            ("interior-finish", 0),
            ("glass", 44_00),
            ("gas", 0),
            ("spacer", 11_00),
            ("thick-glass", 0),
            ("breather-tubes", 0),
            ("grille", 65_00),
            ("lock", 0),
            ("hardware-finish", 0),
            ("sash-lift", 0),
            ("tilt-latch", 0),
            ("control-device", 0),
            ("screen", 14_00),
            ("screen-frame", 0),
            ("foam", 0),
        ],
        brackets: [("unit_height", "54", "60"), ("unit_width", "32", "36")],
        cell: 398_00,
        quantities: &[
            ("sill-adapter", 3, 1),
            ("head-expander", 3, 1),
            ("glass", 1_612, 144),
            ("gas", 2, 1),
            ("thick-glass", 1_612, 144),
            ("breather-tubes", 2, 1),
            ("grille", 2, 1),
            ("lock", 1, 1),
            ("foam", 16, 1),
        ],
        subtotal: 637_00,
        tail: &[("freight", 14_00, 651_00), ("site-visit", 25_00, 676_00)],
        // Two of them: 2 x 676.00.
        total: 1_352_00,
    });
}

/// Compares the quote with what was worked out by hand.
fn check(by_hand: &ByHand) {
    let answer = json(&["quote", "examples/corner-house/order.toml", "--format", "json"]);
    let openings = answer["openings"].as_array().unwrap();
    let opening = openings.iter().find(|opening| opening["tag"] == by_hand.tag);
    let opening = opening.unwrap_or_else(|| panic!("no opening {}", by_hand.tag));
    let price = &opening["unit"]["price"];
    let lines: Vec<&Value> = price["items"].as_array().unwrap().iter().collect();
    let amounts = lines
        .iter()
        .map(|line| (line["id"].as_str().unwrap(), cents(&line["amount"])));
    assert_eq!(
        amounts.collect::<BTreeMap<_, _>>(),
        by_hand.items.iter().copied().collect(),
        "{}",
        by_hand.tag
    );
    check_steps(&lines, by_hand);
    assert_eq!(cents(&price["subtotal"]), by_hand.subtotal);
    let tail = price["tail"].as_array().unwrap().iter();
    let tail: Vec<(&str, i64, i64)> = tail
        .map(|step| {
            (
                step["id"].as_str().unwrap(),
                cents(&step["amount"]),
                cents(&step["after"]),
            )
        })
        .collect();
    assert_eq!(tail, by_hand.tail);
    assert_eq!(cents(&opening["total"]), by_hand.total);
}

/// The bracket, the cell and the quantities that the quote gives as its reasons.
fn check_steps(lines: &[&Value], by_hand: &ByHand) {
    let base = steps(lines[0], "bracket");
    let brackets: Vec<(&str, &str, &str)> = base
        .iter()
        .map(|step| {
            (
                step["axis"]["id"].as_str().unwrap(),
                step["over"]["inches"].as_str().unwrap(),
                step["up_to"]["inches"].as_str().unwrap(),
            )
        })
        .collect();
    assert_eq!(brackets, by_hand.brackets);
    assert_eq!(cents(&steps(lines[0], "cell")[0]["amount"]), by_hand.cell);
    let mut quantities = Vec::new();
    for line in lines {
        for step in steps(line, "quantity") {
            let (over, under) = fraction(step["quantity"].as_str().unwrap());
            quantities.push((line["id"].as_str().unwrap(), over, under));
        }
    }
    assert_eq!(quantities.len(), by_hand.quantities.len(), "{quantities:?}");
    for (found, expected) in quantities.iter().zip(by_hand.quantities) {
        assert_eq!(found.0, expected.0);
        assert_eq!(
            found.1 * expected.2,
            expected.1 * found.2,
            "{found:?} {expected:?}"
        );
    }
}

/// The steps of one kind that led to a line.
fn steps<'a>(line: &'a Value, kind: &str) -> Vec<&'a Value> {
    let steps = line["steps"].as_array().unwrap().iter();
    steps.filter(|step| step["kind"] == kind).collect()
}

/// `4823/768` or `3` as a fraction.
fn fraction(text: &str) -> (i64, i64) {
    let (over, under) = text.split_once('/').unwrap_or((text, "1"));
    (over.parse().unwrap(), under.parse().unwrap())
}

/// An amount of money, in cents.
fn cents(money: &Value) -> i64 {
    assert_eq!(money["currency"], "USD", "{money}");
    let (dollars, cents) = money["amount"].as_str().unwrap().split_once('.').unwrap();
    assert_eq!(cents.len(), 2, "{money}");
    format!("{dollars}{cents}").parse().unwrap()
}
