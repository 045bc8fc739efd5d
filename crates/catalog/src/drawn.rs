//! The elevation of a unit: what `[drawing]` of its catalog comes to, as the crate `drawing` takes it; and why there is none.
//!
//! A unit of no layout, a divider outside the frame or a sash that leaves no glass is a mistake in the catalog, and says where it
//! is written. What is not known yet is no mistake.
//!
//! Always holds: an [`Elevation`] that is returned can be drawn.

use astragal_drawing::{
    Along, Arrangement, Colour, Dimension, Divider, DrawingError, Elevation, Frame, Glass, Grille,
    GrillePattern, LengthOf, Operation, Panel, Screen, Side, Swing, check_elevation,
};
use astragal_model::{
    Arranged, AttributeIndex, Catalog, DrawingKey, Drawn, DrawnGrille, DrawnPanel, GlassMark, Id, Number,
    PanelMotion, ScreenSide, Undrawn, Wants,
};

use crate::finding::Finding;
use crate::load::Places;

/// Why a unit is not drawn.
#[derive(Clone, PartialEq, Eq, Debug)]
pub enum NotDrawn {
    /// The catalog does not say how its units are drawn.
    NoDrawing,
    /// It depends on what is not known yet.
    Unknown(Wants),
    /// What the catalog says cannot be drawn for this unit.
    Wrong(Fault),
}

/// What is wrong with a drawing, and where it is written.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Fault {
    /// What was found and what is expected, in lower case.
    pub message: String,
    /// What to do.
    pub help: String,
    /// Where it is written.
    pub key: DrawingKey,
}

impl Fault {
    /// A finding about `whose` unit: `example `tall``, `opening `A1``.
    #[must_use]
    pub fn finding(&self, whose: &str, places: &Places) -> Finding {
        let message = format!("{whose} cannot be drawn: {}", self.message);
        Finding::error("NOT_DRAWN", message)
            .at_if_known(places.of_drawing(self.key).cloned())
            .with_help(&self.help)
    }
}

/// The elevation of a unit, without its tag.
///
/// # Errors
/// [`NotDrawn`] says why there is none.
pub fn elevation(catalog: &Catalog, drawn: Result<Drawn, Undrawn>) -> Result<Elevation, NotDrawn> {
    let drawn = drawn.map_err(|why| undrawn(catalog, why))?;
    let made = made(catalog, &drawn).map_err(NotDrawn::Wrong)?;
    match check_elevation(&made) {
        Ok(()) => Ok(made),
        Err(error) => Err(NotDrawn::Wrong(Fault {
            message: error.to_string(),
            help: error.help().to_owned(),
            key: key(&error, &drawn),
        })),
    }
}

fn made(catalog: &Catalog, drawn: &Drawn) -> Result<Elevation, Fault> {
    let panels = drawn.panels.iter().map(|drawn| panel(catalog, drawn));
    let panels: Vec<Panel> = panels.collect::<Result<_, _>>()?;
    let colour = colour(catalog, &drawn.frame_colour);
    let frame = Frame {
        face: drawn.frame.clone(),
        colour,
    };
    let unit_of_length = catalog.declarations().length_unit;
    let mut elevation = Elevation::new(drawn.width.clone(), drawn.height.clone(), unit_of_length, frame);
    elevation.arrangement = arrangement(drawn.arranged, panels, drawn);
    elevation.dimensions = dimensions(drawn);
    elevation.title = vec![catalog.declarations().label.clone()];
    Ok(elevation)
}

fn undrawn(catalog: &Catalog, why: Undrawn) -> NotDrawn {
    let (message, help, key) = match why {
        Undrawn::NoDrawing => return NotDrawn::NoDrawing,
        Undrawn::Unknown(wants) => return NotDrawn::Unknown(wants),
        Undrawn::NoLayout => (
            "no layout of the drawing is for such a unit".to_owned(),
            "add a `[[drawing.layout]]` whose `when` holds for it",
            DrawingKey::Whole,
        ),
        Undrawn::NoValue(key, cause) => (
            format!("{} has no value: {}", name(key), catalog.show_cause(&cause)),
            "write what has a value for every unit that can be made",
            key,
        ),
    };
    NotDrawn::Wrong(Fault {
        message,
        help: help.to_owned(),
        key,
    })
}

/// A key of the drawing as a sentence names it.
fn name(key: DrawingKey) -> &'static str {
    match key {
        DrawingKey::Whole => "the drawing",
        DrawingKey::Width => "the width of the drawing",
        DrawingKey::Height => "the height of the drawing",
        DrawingKey::Frame => "the frame of the drawing",
        DrawingKey::FrameColour => "the colour of the frame",
        DrawingKey::LayoutWhen(_) => "the condition of a layout",
        DrawingKey::Divider(..) => "the place of a divider",
        DrawingKey::Sash(_) => "the sash of a layout",
        DrawingKey::GrilleWhen(_) => "the condition of a grille",
        DrawingKey::GrillePattern(_) => "a size of a grille",
        DrawingKey::GrilleBar(_) => "the bar of a grille",
        DrawingKey::GrilleColour(_) => "the colour of a grille",
        DrawingKey::ScreenWhen(_) => "the condition of a screen",
        DrawingKey::MarkWhen(_) => "the condition of a mark on the glass",
    }
}

/// What of the catalog an error is about.
fn key(error: &DrawingError, drawn: &Drawn) -> DrawingKey {
    // Errors count dividers and panels from 1.
    let divider = |number: usize| DrawingKey::Divider(drawn.layout, number.saturating_sub(1));
    let grille = |panel: usize, key: fn(usize) -> DrawingKey| {
        let panel = drawn.panels.get(panel.saturating_sub(1));
        let grille = panel.and_then(|panel| panel.grille.as_ref());
        grille.map_or(DrawingKey::Whole, |grille| key(grille.grille))
    };
    match error {
        DrawingError::Length { what, .. } => match what {
            LengthOf::Width => DrawingKey::Width,
            LengthOf::Height => DrawingKey::Height,
            LengthOf::Frame => DrawingKey::Frame,
            LengthOf::Divider(number) => divider(*number),
            LengthOf::Sash(_) => DrawingKey::Sash(drawn.layout),
            LengthOf::GrilleBar(panel) => grille(*panel, DrawingKey::GrilleBar),
            LengthOf::TopRow(panel) | LengthOf::Inset(panel) => grille(*panel, DrawingKey::GrillePattern),
            _ => DrawingKey::Whole,
        },
        DrawingError::FrameFillsUnit { .. } => DrawingKey::Frame,
        DrawingError::DividerPlace { number, .. } => divider(*number),
        DrawingError::SashFillsPanel { .. } => DrawingKey::Sash(drawn.layout),
        DrawingError::GrilleCount { panel, .. } => grille(*panel, DrawingKey::GrillePattern),
        DrawingError::GrilleFillsGlass { panel, .. } => grille(*panel, DrawingKey::GrilleBar),
        _ => DrawingKey::Whole,
    }
}

fn panel(catalog: &Catalog, drawn: &DrawnPanel) -> Result<Panel, Fault> {
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

fn grille(catalog: &Catalog, drawn: &DrawnGrille) -> Result<Grille, Fault> {
    let lites = |number: &Number| {
        let whole = number.to_i64().and_then(|whole| u32::try_from(whole).ok());
        whole.ok_or_else(|| Fault {
            message: format!("a grille has `{number}` lites; expected a whole number of 1 or more"),
            help: "round the number of lites, as `round_to(..., 1)` does".to_owned(),
            key: DrawingKey::GrillePattern(drawn.grille),
        })
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
