//! Tables about measuring. Readings are invented.

use astragal_exact::Number;
use astragal_trade::Basis;
use astragal_trade::measuring::{
    DeductedBy, Deduction, Finding, Measured, Ordered, Readings, Side, Size, StatedDeduction, UnitedInches,
    deduct, measure, tolerances as of_practice,
};

use crate::{Row, inches, length, named, row};

pub(crate) fn tolerances() -> Vec<Row> {
    let allowed = of_practice();
    let at = |what: &str, word: &str, value: &Number, finding: &Finding| {
        let seen: Basis = finding.basis().unwrap();
        row([what, &format!("{word} {}", length(value)), &named(seen)])
    };
    let some = Number::ONE;
    vec![
        at(
            "how far three readings of a side lie apart",
            "at most",
            &allowed.spread,
            &Finding::Spread(Side::Width, some.clone()),
        ),
        at(
            "difference of the diagonals",
            "at most",
            &allowed.diagonals,
            &Finding::DiagonalsDiffer(some.clone()),
        ),
        at(
            "jambs out of plumb, over the whole height",
            "at most",
            &allowed.level,
            &Finding::OutOfPlumb(some.clone()),
        ),
        at(
            "head and sill out of level, over the whole width",
            "at most",
            &allowed.level,
            &Finding::OutOfLevel(some.clone()),
        ),
        at(
            "depth of the pocket between its stops",
            "at least",
            &allowed.pocket_depth,
            &Finding::PocketShallow(some),
        ),
    ]
}

/// The worked example.
fn readings() -> Readings {
    let some = |text| Some(inches(text));
    Readings {
        widths: [some("36"), some("35 15/16"), some("36 1/16")],
        heights: [some("60"), some("60 1/16"), some("60")],
        diagonals: [some("70 1/8"), some("69 3/4")],
        ..Readings::default()
    }
}

fn deduction() -> Deduction {
    Deduction {
        width: inches("1/4"),
        height: inches("1/2"),
        step: inches("1/8"),
    }
}

fn ordered(measured: &Size, by: StatedDeduction, deduction: &Deduction) -> String {
    match deduct(measured, by, deduction) {
        Ok(Ordered::Size(size)) => size.to_string(),
        Ok(Ordered::Unknown(missing)) => {
            let facts: Vec<String> = missing.iter().map(ToString::to_string).collect();
            format!("not known; missing: {}", facts.join(", "))
        }
        Err(error) => format!("refused: {error}"),
    }
}

pub(crate) fn measured() -> Vec<Row> {
    let Measured {
        width,
        height,
        lean,
        slope,
        upright,
        ..
    } = measure(&readings()).unwrap();
    let (width, height, upright) = (width.unwrap(), height.unwrap(), upright.unwrap());
    let deduction = deduction();
    let left = Size::new(
        &upright.width - &deduction.width,
        &upright.height - &deduction.height,
    );
    let Ordered::Size(unit) =
        deduct(&upright, StatedDeduction::both(DeductedBy::Nobody), &deduction).unwrap()
    else {
        panic!("a size was expected")
    };
    let sides = |what: &str, width: &Number, height: &Number| row([what, &length(width), &length(height)]);
    vec![
        sides("the smallest of three governs", &width.smallest, &height.smallest),
        sides(
            "less what the sides may lean, or head and sill slope",
            &lean,
            &slope,
        ),
        sides("the largest upright rectangle", &upright.width, &upright.height),
        sides("less the deduction", &deduction.width, &deduction.height),
        sides("leaves", &left.width, &left.height),
        sides("down to the eighth: the unit", &unit.width, &unit.height),
    ]
}

pub(crate) fn findings() -> Vec<Row> {
    let measured = measure(&readings()).unwrap();
    let said = |finding: &Finding| {
        let kind = if finding.is_warning() {
            "look at it"
        } else {
            "not known"
        };
        row([kind, &finding.to_string()])
    };
    measured.findings.iter().map(said).collect()
}

/// The same opening with a level.
pub(crate) fn level() -> Vec<Row> {
    let rows = [
        ("not held", "not held", None, None),
        ("3/8 in", "0 in", Some("3/8"), Some("0")),
        ("0 in", "1/4 in", Some("0"), Some("1/4")),
        ("1/8 in", "not held", Some("1/8"), None),
        ("0 in", "0 in", Some("0"), Some("0")),
    ];
    rows.map(|(plumb, level, out_of_plumb, out_of_level)| {
        let readings = Readings {
            out_of_plumb: out_of_plumb.map(inches),
            out_of_level: out_of_level.map(inches),
            ..readings()
        };
        let measured = measure(&readings).unwrap();
        let size = measured.upright.unwrap();
        let against = measured.findings.contains(&Finding::LevelAgainstDiagonals);
        let said = if against {
            "does not go with the diagonals"
        } else {
            ""
        };
        row([plumb, level, &length(&size.width), &length(&size.height), said])
    })
    .to_vec()
}

pub(crate) fn deducted() -> Vec<Row> {
    let measured = Size::new(inches("35 15/16"), inches("59 13/16"));
    let quarter = Deduction {
        width: inches("1/4"),
        height: inches("1/4"),
        step: inches("1/8"),
    };
    let nothing = Deduction {
        width: Number::ZERO,
        height: Number::ZERO,
        ..quarter.clone()
    };
    let two = StatedDeduction {
        width: Some(DeductedBy::Dealer),
        height: Some(DeductedBy::Customer),
    };
    let both = StatedDeduction::both;
    let rows = [
        ("nobody", "1/4 in", both(DeductedBy::Nobody), &quarter),
        ("the dealer", "nothing", both(DeductedBy::Dealer), &nothing),
        ("the dealer", "1/4 in", both(DeductedBy::Dealer), &quarter),
        (
            "the dealer from the width, the customer from the height",
            "nothing",
            two,
            &nothing,
        ),
        ("nobody has said", "1/4 in", StatedDeduction::default(), &quarter),
    ];
    rows.map(|(who, off, stated, deduction)| row([who, off, &ordered(&measured, stated, deduction)]))
        .to_vec()
}

pub(crate) fn united_inches() -> Vec<Row> {
    let rows = [("32", "54"), ("35 5/8", "59 3/4"), ("35 1/4", "59 1/4")];
    let mut found: Vec<Row> = rows
        .map(|(width, height)| {
            let size = Size::new(inches(width), inches(height));
            let mut cells = vec![size.to_string()];
            cells.extend(UnitedInches::ALL.map(|rule| rule.of(&size).unwrap().to_string()));
            cells
        })
        .to_vec();
    let mut seen = vec!["where it was seen".to_owned()];
    seen.extend(UnitedInches::ALL.map(|rule| named(rule.basis())));
    found.push(seen);
    found
}
