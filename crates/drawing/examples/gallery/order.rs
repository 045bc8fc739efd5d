//! A sheet of an invented order.

use astragal_drawing::{Cell, Elevation, Floor, Picture, Room, Sheet, Side, Standing, Status};
use astragal_exact::LengthUnit;

use crate::units::{awning, casement, double_hung, fixed, slider, tall_thin, three_lites, wide_flat};

/// A house of two floors.
pub(crate) fn sheet() -> Result<Sheet, Box<dyn std::error::Error>> {
    let mut sink = cell(
        "K1",
        1,
        casement("K1", Side::Left)?,
        &["Interior: White", "Low-e double glass, argon"],
    );
    sink.status = status("holds", Standing::Holds);
    let mut second = cell(
        "K2",
        2,
        casement("K2", Side::Right)?,
        &["Interior: White", "Low-e double glass, argon"],
    );
    second.status = status("does not hold", Standing::DoesNotHold);
    second.cautions = vec!["The sash weighs 61 lb; two people lift it.".to_owned()];
    let bath = Cell {
        picture: Picture::NotDrawn("the width is not measured yet".to_owned()),
        status: status("cannot be decided", Standing::Undecided),
        cautions: vec!["Within reach of the tub? Check for safety glazing.".to_owned()],
        ..cell("B1", 1, awning()?, &["Interior: White"])
    };
    let mut bedroom = cell(
        "D1",
        2,
        double_hung()?,
        &["Interior: Oak grain", "Low-e double glass, argon"],
    );
    bedroom.status = status("holds", Standing::Holds);
    bedroom.cautions =
        vec!["Check escape with the building official: only the lower sash counts.".to_owned()];
    bedroom.notes = vec!["Unit made 3/8 in smaller than the opening was measured.".to_owned()];
    let ground = vec![
        room("Kitchen", vec![sink, second]),
        room("Bath & laundry", vec![bath]),
        room(
            "Living room",
            vec![
                cell("L1", 1, fixed()?, &[]),
                cell("L2", 1, three_lites()?, &["Interior: White"]),
            ],
        ),
        room(
            "Hall <stairs>",
            vec![cell("H1", 1, tall_thin()?, &[]), cell("H2", 1, wide_flat()?, &[])],
        ),
    ];
    let upper = vec![
        room(
            "Bedroom 1",
            vec![bedroom, cell("D2", 1, slider()?, &["Interior: Black"])],
        ),
        room("Bath", vec![cell("B2", 1, awning()?, &["Interior: Bronze"])]),
    ];
    Ok(Sheet {
        title: "The corner house: windows".to_owned(),
        lines: vec!["Order corner-house, as of 2026-11-25".to_owned()],
        unit: LengthUnit::Inch,
        floors: vec![floor("Ground floor", ground), floor("Upper floor", upper)],
        notes: vec!["The local code governs, and a licensed person decides.".to_owned()],
    })
}

fn floor(name: &str, rooms: Vec<Room>) -> Floor {
    Floor {
        name: name.to_owned(),
        rooms,
    }
}

fn room(name: &str, cells: Vec<Cell>) -> Room {
    Room {
        name: name.to_owned(),
        cells,
    }
}

fn status(words: &str, standing: Standing) -> Option<Status> {
    Some(Status {
        words: words.to_owned(),
        standing,
    })
}

fn cell(tag: &str, quantity: u32, unit: Elevation, lines: &[&str]) -> Cell {
    Cell {
        tag: tag.to_owned(),
        quantity,
        picture: Picture::Drawn(Box::new(unit)),
        status: None,
        lines: lines.iter().map(|line| (*line).to_owned()).collect(),
        cautions: Vec::new(),
        notes: Vec::new(),
    }
}
