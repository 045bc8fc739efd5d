//! The units of the gallery. All names, sizes and colours are invented.

use astragal_drawing::{
    Along, Arrangement, Colour, Dimension, Divider, Elevation, Frame, Glass, Grille, GrillePattern,
    Operation, Panel, Screen, Side, Swing,
};
use astragal_exact::{LengthUnit, Number, parse_length};

type Problem = Box<dyn std::error::Error>;

/// Every unit with the name of its file.
pub(crate) fn all() -> Result<Vec<(&'static str, Elevation)>, Problem> {
    Ok(vec![
        ("casement-left", casement("K1", Side::Left)?),
        ("casement-right", casement("K2", Side::Right)?),
        ("awning", awning()?),
        ("hopper", hopper()?),
        ("fixed-prairie", fixed()?),
        ("double-hung", double_hung()?),
        ("slider", slider()?),
        ("three-lites", three_lites()?),
        ("tall-thin", tall_thin()?),
        ("wide-flat", wide_flat()?),
        ("metric", metric()?),
    ])
}

fn inches(text: &str) -> Result<Number, Problem> {
    Ok(parse_length(text, Some(LengthUnit::Inch))?)
}

pub(crate) fn white() -> Colour {
    Colour::new("White", 250, 250, 247)
}

fn bronze() -> Colour {
    Colour::new("Bronze", 74, 60, 49)
}

fn black() -> Colour {
    Colour::new("Black", 28, 28, 30)
}

fn unit(
    tag: &str,
    size: (&str, &str),
    frame: Colour,
    arrangement: Arrangement,
) -> Result<Elevation, Problem> {
    let frame = Frame {
        face: inches("1 3/4")?,
        colour: frame,
    };
    let mut unit = Elevation::new(inches(size.0)?, inches(size.1)?, LengthUnit::Inch, frame);
    unit.tag = tag.to_owned();
    unit.arrangement = arrangement;
    Ok(unit)
}

fn sash(operation: Operation) -> Result<Panel, Problem> {
    Ok(Panel {
        sash: Some(inches("1 7/8")?),
        ..Panel::new(operation)
    })
}

pub(crate) fn casement(tag: &str, side: Side) -> Result<Elevation, Problem> {
    let mut panel = sash(Operation::Hinged {
        side,
        swing: Swing::Out,
    })?;
    panel.screen = Some(Screen::Inside);
    panel.handle = Some(if side == Side::Left {
        Side::Right
    } else {
        Side::Left
    });
    panel.tempered = side == Side::Right;
    let mut unit = unit(tag, ("28", "45"), white(), Arrangement::One(panel))?;
    unit.title = vec!["Kitchen, over the sink".to_owned()];
    Ok(unit)
}

pub(crate) fn awning() -> Result<Elevation, Problem> {
    let mut panel = sash(Operation::Hinged {
        side: Side::Top,
        swing: Swing::Out,
    })?;
    panel.glass = Glass::Obscure;
    panel.tempered = true;
    unit("B2", ("36", "24"), bronze(), Arrangement::One(panel))
}

fn hopper() -> Result<Elevation, Problem> {
    let panel = sash(Operation::Hinged {
        side: Side::Bottom,
        swing: Swing::In,
    })?;
    unit(
        "C1",
        ("32", "18 1/2"),
        Colour::new("Sage", 148, 160, 136),
        Arrangement::One(panel),
    )
}

pub(crate) fn fixed() -> Result<Elevation, Problem> {
    let mut panel = Panel::new(Operation::Fixed);
    let pattern = GrillePattern::Prairie { inset: inches("6")? };
    panel.grille = Some(Grille {
        pattern,
        bar: inches("7/8")?,
        colour: white(),
    });
    panel.tempered = true;
    let mut unit = unit(
        "L1",
        ("72", "60"),
        Colour::new("Forest green", 47, 72, 56),
        Arrangement::One(panel),
    )?;
    unit.title = vec!["Living room, street side".to_owned()];
    Ok(unit)
}

pub(crate) fn double_hung() -> Result<Elevation, Problem> {
    let pattern = GrillePattern::Colonial { columns: 3, rows: 2 };
    let grille = Some(Grille {
        pattern,
        bar: inches("7/8")?,
        colour: white(),
    });
    let mut upper = sash(Operation::Slides(Side::Bottom))?;
    let mut lower = sash(Operation::Slides(Side::Top))?;
    upper.grille.clone_from(&grille);
    lower.grille = grille;
    lower.screen = Some(Screen::Outside);
    let meeting = Divider {
        at: inches("29 1/2")?,
        bar: Number::ZERO,
    };
    let arrangement = Arrangement::Stacked {
        panels: vec![upper, lower],
        dividers: vec![meeting],
    };
    let mut unit = unit("D1", ("35 5/8", "59"), white(), arrangement)?;
    unit.title = vec!["Bedroom 2, garden side".to_owned()];
    unit.dimensions.push(Dimension {
        along: Along::Height,
        from: inches("29 1/2")?,
        to: inches("59")?,
        label: "to meeting rail".to_owned(),
    });
    Ok(unit)
}

pub(crate) fn slider() -> Result<Elevation, Problem> {
    let left = Panel {
        screen: Some(Screen::Outside),
        ..sash(Operation::Slides(Side::Right))?
    };
    let right = sash(Operation::Fixed)?;
    let meeting = Divider {
        at: inches("30")?,
        bar: Number::ZERO,
    };
    let arrangement = Arrangement::SideBySide {
        panels: vec![left, right],
        dividers: vec![meeting],
    };
    unit("S1", ("60", "36"), black(), arrangement)
}

/// Two casements beside a fixed lite, with their widths.
pub(crate) fn three_lites() -> Result<Elevation, Problem> {
    let casement = |side| {
        sash(Operation::Hinged {
            side,
            swing: Swing::Out,
        })
    };
    let centre = Panel {
        tempered: true,
        ..Panel::new(Operation::Fixed)
    };
    let panels = vec![casement(Side::Left)?, centre, casement(Side::Right)?];
    let at = [inches("24")?, inches("72")?];
    let dividers = at
        .iter()
        .map(|at| Divider {
            at: at.clone(),
            bar: Number::from(2),
        })
        .collect();
    let mut unit = unit(
        "L2",
        ("96", "54"),
        white(),
        Arrangement::SideBySide { panels, dividers },
    )?;
    unit.sash_colour = bronze();
    for (from, to) in [("0", "24"), ("24", "72"), ("72", "96")] {
        let (from, to) = (inches(from)?, inches(to)?);
        unit.dimensions.push(Dimension {
            along: Along::Width,
            from,
            to,
            label: String::new(),
        });
    }
    Ok(unit)
}

pub(crate) fn tall_thin() -> Result<Elevation, Problem> {
    let mut panel = Panel::new(Operation::Fixed);
    panel.tempered = true;
    unit("H1", ("10", "90"), black(), Arrangement::One(panel))
}

pub(crate) fn wide_flat() -> Result<Elevation, Problem> {
    let panels = vec![
        sash(Operation::Hinged {
            side: Side::Top,
            swing: Swing::Out,
        })?,
        Panel {
            tempered: true,
            ..Panel::new(Operation::Fixed)
        },
        sash(Operation::Hinged {
            side: Side::Top,
            swing: Swing::Out,
        })?,
    ];
    let at = [inches("30")?, inches("90")?];
    let dividers = at
        .iter()
        .map(|at| Divider {
            at: at.clone(),
            bar: Number::from(2),
        })
        .collect();
    unit(
        "H2",
        ("120", "12"),
        bronze(),
        Arrangement::SideBySide { panels, dividers },
    )
}

fn metric() -> Result<Elevation, Problem> {
    let panel = sash(Operation::Hinged {
        side: Side::Left,
        swing: Swing::In,
    })?;
    let mut unit = unit(
        "M1",
        ("0", "0"),
        Colour::new("Slate grey", 84, 92, 100),
        Arrangement::One(panel),
    )?;
    unit.unit = LengthUnit::Millimetre;
    (unit.width, unit.height) = (inches("900 mm")?, inches("1400 mm")?);
    Ok(unit)
}
