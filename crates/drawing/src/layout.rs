//! Where the parts of a unit are, exactly; and what of it cannot be drawn.
//!
//! A unit 28 by 45 in with a frame of 2 in and a sash of 1 1/2 in has one panel from (2, 2) to (26, 43) and its glass
//! from (3 1/2, 3 1/2) to (24 1/2, 41 1/2).
//!
//! Always holds: a `Layout` exists only of what can be drawn; every rectangle in it has a width and a height, and the
//! panels lie within the frame without overlap. What comes after cannot fail.

use astragal_exact::{LengthUnit, Number, format_length};

use crate::elevation::{Along, Arrangement, Divider, Elevation, Grille, GrillePattern, Panel};
use crate::error::{DrawingError, LengthOf};
use crate::geometry::Region;
use crate::limit::{
    DIMENSIONS_MOST, LABEL_MOST, LENGTH_BITS_MOST, LINES_MOST, LITES_MOST, PANELS_MOST, SIZE_LEAST,
    SIZE_MOST, TEXT_MOST,
};

/// Where everything is.
#[derive(Debug)]
pub(crate) struct Layout<'a> {
    pub(crate) unit: Region,
    pub(crate) panels: Vec<Placed<'a>>,
}

/// One panel and where it is.
#[derive(Debug)]
pub(crate) struct Placed<'a> {
    pub(crate) panel: &'a Panel,
    /// Its sash; without a sash as large as its glass.
    pub(crate) outer: Region,
    pub(crate) glass: Region,
}

/// Finds out whether a unit can be drawn, without drawing it.
///
/// # Errors
/// As [`crate::elevation_svg`], which draws whatever passes here.
pub fn check_elevation(elevation: &Elevation) -> Result<(), DrawingError> {
    layout(elevation).map(|_| ())
}

/// Places the parts of a unit.
pub(crate) fn layout(elevation: &Elevation) -> Result<Layout<'_>, DrawingError> {
    check_texts(elevation)?;
    let words = Words(elevation.unit);
    let expected = format!(
        "{} to {}",
        words.length(&SIZE_LEAST.into()),
        words.length(&SIZE_MOST.into())
    );
    for (what, length) in [
        (LengthOf::Width, &elevation.width),
        (LengthOf::Height, &elevation.height),
    ] {
        let fits = *length >= Number::from(SIZE_LEAST) && *length <= Number::from(SIZE_MOST);
        words.expect(fits && is_measure(length), what, length, &expected)?;
    }
    let unit = Region {
        left: Number::ZERO,
        top: Number::ZERO,
        right: elevation.width.clone(),
        bottom: elevation.height.clone(),
    };
    let face = &elevation.frame.face;
    words.expect(
        !face.is_negative() && is_measure(face),
        LengthOf::Frame,
        face,
        "a length of 0 or more",
    )?;
    let opening = unit.inset(face).ok_or_else(|| DrawingError::FrameFillsUnit {
        face: words.length(face),
        size: words.size(&unit),
    })?;
    let outers = divided(&elevation.arrangement, &opening, words)?;
    let panels = elevation.arrangement.panels().iter().zip(outers).enumerate();
    let panels = panels.map(|(position, (panel, outer))| placed(panel, outer, position + 1, words));
    let panels = panels.collect::<Result<Vec<Placed<'_>>, DrawingError>>()?;
    check_dimensions(elevation, words)?;
    Ok(Layout { unit, panels })
}

/// The opening of the frame, split at the dividers.
fn divided(arrangement: &Arrangement, opening: &Region, words: Words) -> Result<Vec<Region>, DrawingError> {
    let (count, dividers) = (arrangement.panels().len(), arrangement.dividers());
    if count == 0 || count > PANELS_MOST {
        return Err(DrawingError::Panels {
            found: count,
            most: PANELS_MOST,
        });
    }
    if dividers.len() + 1 != count {
        return Err(DrawingError::Dividers {
            found: dividers.len(),
            panels: count,
        });
    }
    let stacked = matches!(arrangement, Arrangement::Stacked { .. });
    let (mut begin, end) = if stacked {
        (opening.top.clone(), &opening.bottom)
    } else {
        (opening.left.clone(), &opening.right)
    };
    let mut spans = Vec::new();
    for (position, divider) in dividers.iter().enumerate() {
        let (low, high) = bar(divider, position + 1, words)?;
        if low <= begin || high >= *end {
            return Err(DrawingError::DividerPlace {
                number: position + 1,
                found: words.length(&divider.at),
                between: (words.length(&begin), words.length(end)),
            });
        }
        spans.push((std::mem::replace(&mut begin, high), low));
    }
    spans.push((begin, end.clone()));
    Ok(spans
        .into_iter()
        .map(|span| across(opening, stacked, span))
        .collect())
}

fn across(opening: &Region, stacked: bool, (begin, end): (Number, Number)) -> Region {
    let mut region = opening.clone();
    if stacked {
        (region.top, region.bottom) = (begin, end);
    } else {
        (region.left, region.right) = (begin, end);
    }
    region
}

/// Where the bar of a divider begins and ends.
fn bar(divider: &Divider, number: usize, words: Words) -> Result<(Number, Number), DrawingError> {
    let Divider { at, bar } = divider;
    words.expect(is_measure(at), LengthOf::Divider(number), at, "a measure")?;
    words.expect(
        !bar.is_negative() && is_measure(bar),
        LengthOf::DividerBar(number),
        bar,
        "a length of 0 or more",
    )?;
    let half = bar.checked_div(&Number::from(2)).unwrap_or_default();
    Ok((at - &half, at + &half))
}

fn placed(panel: &Panel, outer: Region, number: usize, words: Words) -> Result<Placed<'_>, DrawingError> {
    let glass = match &panel.sash {
        None => outer.clone(),
        Some(face) => {
            words.expect(
                face.is_positive() && is_measure(face),
                LengthOf::Sash(number),
                face,
                "a length above 0",
            )?;
            outer.inset(face).ok_or_else(|| DrawingError::SashFillsPanel {
                panel: number,
                face: words.length(face),
                size: words.size(&outer),
            })?
        }
    };
    if let Some(grille) = &panel.grille {
        check_grille(grille, &glass, number, words)?;
    }
    Ok(Placed { panel, outer, glass })
}

fn check_grille(grille: &Grille, glass: &Region, panel: usize, words: Words) -> Result<(), DrawingError> {
    let bar = &grille.bar;
    words.expect(
        bar.is_positive() && is_measure(bar),
        LengthOf::GrilleBar(panel),
        bar,
        "a length above 0",
    )?;
    text("name of the grille's colour", &grille.colour.name, TEXT_MOST)?;
    let fits = match &grille.pattern {
        GrillePattern::Colonial { columns, rows } => {
            let (columns, rows) = (*columns, *rows);
            let allowed = 1..=LITES_MOST;
            if !allowed.contains(&columns) || !allowed.contains(&rows) {
                return Err(DrawingError::GrilleCount {
                    panel,
                    found: (columns, rows),
                    most: LITES_MOST,
                });
            }
            bar * Number::from(columns - 1) < glass.width() && bar * Number::from(rows - 1) < glass.height()
        }
        GrillePattern::TopRow { columns, height } => {
            if !(1..=LITES_MOST).contains(columns) {
                return Err(DrawingError::GrilleCount {
                    panel,
                    found: (*columns, 2),
                    most: LITES_MOST,
                });
            }
            words.expect(
                height.is_positive() && is_measure(height),
                LengthOf::TopRow(panel),
                height,
                "a length above 0",
            )?;
            bar * Number::from(columns - 1) < glass.width() && bar < height && height + bar < glass.height()
        }
        GrillePattern::Prairie { inset } => {
            words.expect(
                inset.is_positive() && is_measure(inset),
                LengthOf::Inset(panel),
                inset,
                "a length above 0",
            )?;
            let both = inset * Number::from(2);
            *bar < both && &both + bar < glass.width() && both + bar < glass.height()
        }
    };
    if fits {
        Ok(())
    } else {
        Err(DrawingError::GrilleFillsGlass {
            panel,
            size: words.size(glass),
        })
    }
}

fn check_dimensions(elevation: &Elevation, words: Words) -> Result<(), DrawingError> {
    count("list of dimensions", elevation.dimensions.len(), DIMENSIONS_MOST)?;
    for dimension in &elevation.dimensions {
        text("label of a dimension", &dimension.label, LABEL_MOST)?;
        let most = match dimension.along {
            Along::Width => &elevation.width,
            Along::Height => &elevation.height,
        };
        let (from, to) = (&dimension.from, &dimension.to);
        let measures = is_measure(from) && is_measure(to);
        if !measures || from.is_negative() || from >= to || to > most {
            return Err(DrawingError::DimensionPlace {
                found: (words.length(from), words.length(to)),
                most: words.length(most),
            });
        }
    }
    Ok(())
}

fn check_texts(elevation: &Elevation) -> Result<(), DrawingError> {
    text("tag", &elevation.tag, LABEL_MOST)?;
    lines("title", &elevation.title)?;
    text(
        "name of the frame's colour",
        &elevation.frame.colour.name,
        TEXT_MOST,
    )?;
    text(
        "name of the sash's colour",
        &elevation.sash_colour.name,
        TEXT_MOST,
    )
}

/// Takes a list of texts of a person's length.
pub(crate) fn lines(what: &str, lines: &[String]) -> Result<(), DrawingError> {
    count(what, lines.len(), LINES_MOST)?;
    lines.iter().try_for_each(|line| text(what, line, TEXT_MOST))
}

/// Takes a text of a person's length.
pub(crate) fn text(what: &str, text: &str, most: usize) -> Result<(), DrawingError> {
    too_much(what, text.chars().count(), most, "letters")
}

fn count(what: &str, found: usize, most: usize) -> Result<(), DrawingError> {
    too_much(what, found, most, "lines")
}

fn too_much(what: &str, found: usize, most: usize, of: &str) -> Result<(), DrawingError> {
    if found <= most {
        return Ok(());
    }
    Err(DrawingError::Text {
        what: what.to_owned(),
        found,
        most,
        of: of.to_owned(),
    })
}

/// Whether a length is as a tape or a formula gives it; anything finer or larger by far is refused before it is worked with.
fn is_measure(length: &Number) -> bool {
    length.bits() <= LENGTH_BITS_MOST && length.abs() <= Number::from(SIZE_MOST)
}

/// Lengths as the reader writes them.
#[derive(Clone, Copy)]
struct Words(LengthUnit);

impl Words {
    fn length(self, inches: &Number) -> String {
        if inches.bits() > LENGTH_BITS_MOST {
            return format!("a number of {} bits", inches.bits());
        }
        format_length(inches, self.0)
    }

    fn size(self, region: &Region) -> String {
        format!(
            "{} x {}",
            self.length(&region.width()),
            self.length(&region.height())
        )
    }

    fn expect(
        self,
        holds: bool,
        what: LengthOf,
        length: &Number,
        expected: &str,
    ) -> Result<(), DrawingError> {
        if holds {
            return Ok(());
        }
        Err(DrawingError::Length {
            what,
            found: self.length(length),
            expected: expected.to_owned(),
        })
    }
}
