//! The same as the drawing, in words: how each panel moves, its glass, its bars, its screen, the colours.
//!
//! A double-hung unit with a half screen reads `Upper: slides down; lower: slides up`, then `Screen: lower, outside`.
//!
//! Always holds: everything that a letter or a line on the glass says is said here as well, since a small unit has no room
//! for every mark.

use astragal_exact::{LengthUnit, format_length};

use crate::elevation::{
    Arrangement, Elevation, Glass, Grille, GrillePattern, Operation, Panel, Screen, Side, Swing,
};

/// Width by height, as ordered.
///
/// # Examples
/// ```
/// use astragal_drawing::{Colour, Elevation, Frame, size_words};
/// use astragal_exact::{LengthUnit, Number};
/// let frame = Frame { face: Number::from(2), colour: Colour::new("White", 255, 255, 255) };
/// let unit = Elevation::new(Number::from(28), Number::from(45), LengthUnit::Inch, frame);
/// assert_eq!(size_words(&unit), "28 in x 45 in");
/// ```
#[must_use]
pub fn size_words(elevation: &Elevation) -> String {
    let length = |inches| format_length(inches, elevation.unit);
    format!("{} x {}", length(&elevation.width), length(&elevation.height))
}

/// What the drawing shows, one line a subject; colours last.
#[must_use]
pub fn description(elevation: &Elevation) -> Vec<String> {
    let panels = elevation.arrangement.panels();
    let named = |of: &dyn Fn(&Panel) -> Option<String>| by_panel(&elevation.arrangement, panels, of);
    let lines = [
        named(&|panel| Some(operation(panel.operation))),
        named(&|panel| (panel.glass == Glass::Obscure).then(|| "obscure glass".to_owned())),
        named(&|panel| panel.tempered.then(|| "tempered glass".to_owned())),
        named(&|panel| panel.grille.as_ref().map(|grille| bars(grille, elevation.unit))),
        named(&|panel| panel.screen.map(screen)),
        Some(colours(elevation)),
    ];
    lines
        .into_iter()
        .flatten()
        .map(|line| capitalised(&line))
        .collect()
}

/// One line of what panels have; without names when all have the same, `None` when no panel has it.
fn by_panel(
    arrangement: &Arrangement,
    panels: &[Panel],
    of: &dyn Fn(&Panel) -> Option<String>,
) -> Option<String> {
    let texts: Vec<Option<String>> = panels.iter().map(of).collect();
    let first = texts.first()?.as_ref();
    if texts.iter().all(|text| text.as_ref() == first) {
        let first = first?;
        return Some(match texts.len() {
            1 => first.clone(),
            2 => format!("both: {first}"),
            _ => format!("all: {first}"),
        });
    }
    let named = texts.iter().enumerate().filter_map(|(position, text)| {
        let text = text.as_ref()?;
        Some(format!("{}: {text}", name(arrangement, position, texts.len())))
    });
    Some(named.collect::<Vec<String>>().join("; "))
}

/// What a panel is called among the others.
fn name(arrangement: &Arrangement, position: usize, count: usize) -> String {
    let stacked = matches!(arrangement, Arrangement::Stacked { .. });
    let word = match (stacked, count, position) {
        (true, 2 | 3, 0) => "upper",
        (true, 3, 1) => "middle",
        (true, 2, 1) | (true, 3, 2) => "lower",
        (false, 2 | 3, 0) => "left",
        (false, 3, 1) => "centre",
        (false, 2, 1) | (false, 3, 2) => "right",
        (true, ..) => return format!("panel {} from the top", position + 1),
        (false, ..) => return format!("panel {} from the left", position + 1),
    };
    word.to_owned()
}

fn operation(operation: Operation) -> String {
    match operation {
        Operation::Fixed => "fixed".to_owned(),
        Operation::Hinged { side, swing } => {
            let place = match side {
                Side::Left | Side::Right => side_word(side).to_owned(),
                Side::Top | Side::Bottom => format!("at the {}", side_word(side)),
            };
            let way = match swing {
                Swing::Out => "out",
                Swing::In => "in",
            };
            format!("hinged {place}, opens {way}")
        }
        Operation::Slides(Side::Top) => "slides up".to_owned(),
        Operation::Slides(Side::Bottom) => "slides down".to_owned(),
        Operation::Slides(side) => format!("slides {}", side_word(side)),
    }
}

fn side_word(side: Side) -> &'static str {
    match side {
        Side::Left => "left",
        Side::Right => "right",
        Side::Top => "top",
        Side::Bottom => "bottom",
    }
}

fn bars(grille: &Grille, unit: LengthUnit) -> String {
    let (bar, colour) = (format_length(&grille.bar, unit), &grille.colour.name);
    match &grille.pattern {
        GrillePattern::Colonial { columns, rows } => {
            format!("grille {columns} wide by {rows} high, bars {bar}, {colour}")
        }
        GrillePattern::TopRow { columns, height } => {
            let height = format_length(height, unit);
            format!("grille of {columns} lites in a row {height} high at the top, bars {bar}, {colour}")
        }
        GrillePattern::Prairie { inset } => {
            format!(
                "prairie grille {} from the edge of the glass, bars {bar}, {colour}",
                format_length(inset, unit)
            )
        }
    }
}

fn screen(screen: Screen) -> String {
    match screen {
        Screen::Inside => "screen inside".to_owned(),
        Screen::Outside => "screen outside".to_owned(),
    }
}

fn colours(elevation: &Elevation) -> String {
    let has_sash = elevation
        .arrangement
        .panels()
        .iter()
        .any(|panel| panel.sash.is_some());
    let (frame, sash) = (&elevation.frame.colour, &elevation.sash_colour);
    match (has_sash, frame == sash) {
        (false, _) => format!("frame: {}", frame.name),
        (true, true) => format!("frame and sash: {}", frame.name),
        (true, false) => format!("frame: {}; sash: {}", frame.name, sash.name),
    }
}

fn capitalised(text: &str) -> String {
    let mut letters = text.chars();
    match letters.next() {
        Some(first) => first.to_uppercase().chain(letters).collect(),
        None => String::new(),
    }
}
