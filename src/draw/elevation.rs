//! The elevation of one quoted unit: what the catalog says of its panels, in the colours that were chosen.

use astragal_drawing::{
    Along, Arrangement, Colour, Dimension, Divider, Elevation, Frame, Glass, Grille, GrillePattern,
    Operation, Panel, Screen, Side, Swing,
};
use astragal_model::{
    Arranged, AttributeIndex, Authorities, Catalog, Drawn, DrawnGrille, DrawnPanel, GlassMark, Id, Number,
    PanelMotion, ScreenSide, Undrawn, draw,
};

use crate::quote::work::QuotedUnit;

/// The elevation of a unit, or why there is none, in a sentence.
pub(super) fn elevation(unit: &QuotedUnit<'_>) -> Result<Elevation, String> {
    let authorities = Authorities::default();
    let setting = unit
        .used
        .setting(unit.opening, unit.request, &authorities, unit.date);
    let drawn = draw(&setting, &unit.filled).map_err(|why| undrawn(unit, &why))?;
    let catalog = unit.used.catalog;
    let panels = drawn.panels.iter().map(|drawn| panel(catalog, drawn));
    let panels: Vec<Panel> = panels.collect::<Result<_, _>>()?;
    let colour = colour(catalog, &drawn.frame_colour);
    let frame = Frame {
        face: drawn.frame.clone(),
        colour,
    };
    let unit_of_length = catalog.declarations().length_unit;
    let mut elevation = Elevation::new(drawn.width.clone(), drawn.height.clone(), unit_of_length, frame);
    elevation.arrangement = arrangement(drawn.arranged, panels, &drawn);
    elevation.dimensions = dimensions(&drawn);
    elevation.tag.clone_from(&unit.opening.tag);
    elevation.title = vec![catalog.declarations().label.clone()];
    Ok(elevation)
}

fn undrawn(unit: &QuotedUnit<'_>, why: &Undrawn) -> String {
    match why {
        Undrawn::NoDrawing => "its catalog does not say how its units are drawn".to_owned(),
        Undrawn::NoLayout => "its catalog has no drawing for such a unit".to_owned(),
        Undrawn::Unknown(wants) => {
            let wants = wants.iter().map(|want| unit.used.catalog.show_want(want));
            format!("not known yet: {}", wants.collect::<Vec<_>>().join(", "))
        }
    }
}

fn panel(catalog: &Catalog, drawn: &DrawnPanel) -> Result<Panel, String> {
    let mut panel = Panel::new(operation(drawn.motion));
    panel.sash.clone_from(&drawn.sash);
    panel.grille = match &drawn.grille {
        Some(drawn) => Some(grille(catalog, drawn)?),
        None => None,
    };
    if drawn.marks.contains(&GlassMark::Obscure) {
        panel.glass = Glass::Obscure;
    }
    panel.tempered = drawn.marks.contains(&GlassMark::Tempered);
    panel.screen = drawn.screen.map(|side| match side {
        ScreenSide::Inside => Screen::Inside,
        ScreenSide::Outside => Screen::Outside,
    });
    Ok(panel)
}

fn operation(motion: PanelMotion) -> Operation {
    let hinged = |side, swing| Operation::Hinged { side, swing };
    match motion {
        PanelMotion::Fixed => Operation::Fixed,
        PanelMotion::HingedLeft => hinged(Side::Left, Swing::Out),
        PanelMotion::HingedRight => hinged(Side::Right, Swing::Out),
        PanelMotion::HingedTop => hinged(Side::Top, Swing::Out),
        PanelMotion::HingedBottom => hinged(Side::Bottom, Swing::In),
        PanelMotion::SlidesLeft => Operation::Slides(Side::Left),
        PanelMotion::SlidesRight => Operation::Slides(Side::Right),
        PanelMotion::SlidesUp => Operation::Slides(Side::Top),
        PanelMotion::SlidesDown => Operation::Slides(Side::Bottom),
    }
}

fn grille(catalog: &Catalog, drawn: &DrawnGrille) -> Result<Grille, String> {
    let lites = |number: &Number| {
        let whole = number.to_i64().and_then(|whole| u32::try_from(whole).ok());
        whole.ok_or_else(|| format!("a grille of `{number}` lites; expected a whole number of 1 or more"))
    };
    Ok(Grille {
        pattern: match &drawn.pattern {
            astragal_model::GrillePattern::Grid { columns, rows } => GrillePattern::Colonial {
                columns: lites(columns)?,
                rows: lites(rows)?,
            },
            astragal_model::GrillePattern::Perimeter(inset) => {
                GrillePattern::Prairie { inset: inset.clone() }
            }
            astragal_model::GrillePattern::TopRow { columns, height } => GrillePattern::TopRow {
                columns: lites(columns)?,
                height: height.clone(),
            },
        },
        bar: drawn.bar.clone(),
        colour: colour(catalog, &drawn.colour),
    })
}

/// White where the option has no swatch; its name is printed all the same.
fn colour(catalog: &Catalog, (attribute, option): &(AttributeIndex, Id)) -> Colour {
    let declared = catalog.declarations().attributes.at(*attribute);
    let entry = declared.option(option);
    let label = entry.map_or_else(|| option.to_string(), |entry| entry.label.clone());
    match entry.and_then(|entry| entry.swatch) {
        Some(swatch) => Colour::new(&label, swatch.red, swatch.green, swatch.blue),
        None => Colour::new(&label, 255, 255, 255),
    }
}

fn arrangement(arranged: Arranged, mut panels: Vec<Panel>, drawn: &Drawn) -> Arrangement {
    if panels.len() == 1
        && let Some(panel) = panels.pop()
    {
        return Arrangement::One(panel);
    }
    let dividers = drawn.divided_at.iter().map(|at| Divider {
        at: at.clone(),
        bar: Number::ZERO,
    });
    let dividers = dividers.collect();
    match arranged {
        Arranged::SideBySide => Arrangement::SideBySide { panels, dividers },
        Arranged::Stacked => Arrangement::Stacked { panels, dividers },
    }
}

/// From one divider to the next, where there is more than one panel.
fn dimensions(drawn: &Drawn) -> Vec<Dimension> {
    if drawn.divided_at.is_empty() {
        return Vec::new();
    }
    let (along, whole) = match drawn.arranged {
        Arranged::SideBySide => (Along::Width, &drawn.width),
        Arranged::Stacked => (Along::Height, &drawn.height),
    };
    let mut dimensions = Vec::new();
    let mut from = Number::ZERO;
    for to in drawn.divided_at.iter().chain([whole]) {
        dimensions.push(Dimension {
            along,
            from,
            to: to.clone(),
            label: String::new(),
        });
        from = to.clone();
    }
    dimensions
}
