//! Tables about weights, lifting and screens. Sizes and limits of hardware are invented.

use astragal_exact::Number;
use astragal_trade::Truth;
use astragal_trade::glass::millimetre;
use astragal_trade::glass::{
    Lifting, Nominal, Weight, assumed_frame_pounds_per_foot, frame_weight, glass_weight, lifting as to_lift,
    sash_weight, within_hardware_limit,
};
use astragal_trade::screen::Mesh;
use astragal_trade::{Fact, Missing};

use crate::{Row, inches, number, row, seen};

pub(crate) fn nominal() -> Vec<Row> {
    Nominal::ALL
        .map(|thickness| {
            let weight = thickness.weight();
            row([
                &thickness.to_string(),
                &weight.pounds.to_fixed(2),
                seen(weight.basis.status),
                &format!("{} in", thickness.least_actual_inches()),
            ])
        })
        .to_vec()
}

pub(crate) fn millimetres() -> Vec<Row> {
    [3, 4, 5, 6]
        .map(|thickness: i64| {
            let pounds = millimetre::pounds_per_square_foot(&Number::from(thickness)).unwrap();
            row([&format!("{thickness} mm"), &pounds.to_fixed(3)])
        })
        .to_vec()
}

fn pounds(weight: &Weight) -> String {
    weight.pounds().unwrap().to_fixed(1)
}

fn of(width: &str, height: &str, thickness: Nominal, lites: usize) -> Weight {
    glass_weight(&inches(width), &inches(height), Some(&vec![thickness; lites])).unwrap()
}

pub(crate) fn weights() -> Vec<Row> {
    let rows = [
        ("28", "28", Nominal::OneEighth),
        ("30", "60", Nominal::OneEighth),
        ("48", "72", Nominal::ThreeSixteenths),
        ("60", "72", Nominal::OneQuarter),
    ];
    rows.map(|(width, height, thickness)| {
        row([
            &format!("{width} x {height} in"),
            &thickness.to_string(),
            &pounds(&of(width, height, thickness, 2)),
            &pounds(&of(width, height, thickness, 3)),
        ])
    })
    .to_vec()
}

/// Sash, frame, and hardware that carries 50 lb.
pub(crate) fn sashes() -> Vec<Row> {
    let limit = Number::from(50);
    let rows = [("28", "28", 2), ("28", "28", 3), ("30", "60", 2), ("30", "60", 3)];
    rows.map(|(width, height, lites)| {
        let glass = of(width, height, Nominal::OneEighth, lites);
        let frame = frame_weight(
            &inches(width),
            &inches(height),
            Some(&assumed_frame_pounds_per_foot()),
        )
        .unwrap();
        let sash = sash_weight(&glass, &frame);
        let share = frame
            .pounds()
            .unwrap()
            .checked_div(glass.pounds().unwrap())
            .unwrap();
        let within = match within_hardware_limit(&sash, Some(&limit)).unwrap() {
            Truth::Yes => "within",
            Truth::No => "too heavy",
            Truth::Unknown(_) => "cannot be decided",
        };
        let panes = if lites == 2 { "double" } else { "triple" };
        row([
            &format!("{width} x {height} in, {panes}"),
            &pounds(&glass),
            &pounds(&frame),
            &format!("{} %", (share * Number::from(100)).to_fixed(0)),
            &pounds(&sash),
            within,
        ])
    })
    .to_vec()
}

pub(crate) fn lifting() -> Vec<Row> {
    let known = |pounds: &str| Weight::Known(number(pounds));
    let unknown = Weight::Unknown(Missing::from([Fact::GlassThickness]));
    let rows = [
        ("51 lb", known("51")),
        ("51.1 lb", known("51.1")),
        ("not known", unknown),
    ];
    rows.map(|(name, weight)| {
        let answer = to_lift(&weight);
        let said = answer.text().unwrap_or_else(|| {
            assert_eq!(answer, Lifting::NoCaution);
            "no caution, and no promise".to_owned()
        });
        row([name, &said])
    })
    .to_vec()
}

pub(crate) fn screens() -> Vec<Row> {
    let rows = [
        ("18", "16", "0.011"),
        ("18", "14", "0.011"),
        ("20", "20", "0.013"),
        ("20", "20", "0.009"),
    ];
    rows.map(|(across, down, strand)| {
        let mesh = Mesh {
            across: number(across),
            down: number(down),
            strand: number(strand),
        };
        let open = mesh.open_area().unwrap() * Number::from(100);
        let (one, other) = mesh.gaps_millimetres().unwrap();
        row([
            &format!("{across} x {down}"),
            &format!("{strand} in"),
            &format!("{} %", open.to_fixed(1)),
            &format!("{} x {} mm", one.to_fixed(2), other.to_fixed(2)),
        ])
    })
    .to_vec()
}
