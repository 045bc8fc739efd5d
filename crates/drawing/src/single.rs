//! One unit on a drawing of its own: its name and size above, the unit with its dimensions, the words below.
//!
//! Always holds: everything lies within the picture and no text lies on the unit; the scale is stated.

use crate::colour::{DARK, GREY, Ink, PAPER};
use crate::elevation::Elevation;
use crate::error::DrawingError;
use crate::figure::{Figure, figure};
use crate::geometry::Area;
use crate::layout::layout;
use crate::legend::{VIEWED, occurring};
use crate::letter::Face;
use crate::scale::Scale;
use crate::shape::{Pen, Set, Shape, covered};
use crate::svg::picture;
use crate::words::{description, size_words};

/// The largest width and height of a unit on paper, where the scale may be chosen.
const UNIT_MOST: (i64, i64) = (11_000, 11_000);
/// How wide texts run at least before they are broken.
const COLUMN_LEAST: i64 = 8_600;
/// Around everything.
const MARGIN: i64 = 400;
/// Between the texts and the unit.
const GAP: i64 = 520;

const TAG: Face = Face::bold(480);
const SIZE: Face = Face::bold(310);
const TITLE: Face = Face::regular(310);
const NOTE: Face = Face::regular(270);
const SMALL: Face = Face::regular(230);

/// Draws one unit to scale, at the largest usual scale at which it is no larger than 110 mm either way on paper.
///
/// The SVG states its own size in millimetres, so that it prints to the scale that it names. It has no ids, no style sheet
/// and no script, and may stand inside an HTML page. What each shape shows is in its attribute `data-part`.
///
/// # Errors
/// [`DrawingError`] when there is nothing to draw to scale: a size out of range, a divider outside the frame, a frame, sash
/// or grille that leaves no glass, too many panels, a text too long.
///
/// # Examples
/// ```
/// use astragal_drawing::{Colour, Elevation, Frame, elevation_svg};
/// use astragal_exact::{LengthUnit, Number};
/// let frame = Frame { face: Number::from(14), colour: Colour::new("White", 255, 255, 255) };
/// let unit = Elevation::new(Number::from(28), Number::from(45), LengthUnit::Inch, frame);
/// let refused = elevation_svg(&unit).err().map(|error| error.to_string());
/// let expected = "the frame is `14 in` wide on each side, which leaves no opening in a unit of `28 in x 45 in`";
/// assert_eq!(refused.as_deref(), Some(expected));
/// ```
pub fn elevation_svg(elevation: &Elevation) -> Result<String, DrawingError> {
    let size = [(&elevation.width, &elevation.height)];
    let scale = Scale::fitting(elevation.unit, size.into_iter(), UNIT_MOST);
    elevation_svg_at(elevation, scale)
}

/// Draws one unit at a given scale, so that several drawings can be compared.
///
/// # Errors
/// As [`elevation_svg`].
pub fn elevation_svg_at(elevation: &Elevation, scale: Scale) -> Result<String, DrawingError> {
    let layout = layout(elevation)?;
    let Figure { mut shapes, area } = figure(elevation, &layout, scale);
    let width = area.width().max(COLUMN_LEAST);
    let left = area.middle().0 - width / 2;
    let head = Texts::head(elevation, width);
    let top = area.top - GAP - head.height();
    shapes.extend(head.placed(left, top));
    shapes.extend(Texts::foot(elevation, scale, width).placed(left, area.bottom + GAP));
    let everything = covered(&shapes)
        .with(&Area {
            left,
            right: left + width,
            ..area
        })
        .grown(MARGIN);
    shapes.insert(0, Shape::rectangle("paper", everything, Pen::fill(PAPER)));
    let title = format!(
        "{} {}: {}",
        elevation.tag,
        size_words(elevation),
        description(elevation).join("; ")
    );
    let mut text = picture(&shapes, everything, title.trim()).into_string();
    text.push('\n');
    Ok(text)
}

/// Lines of text, one below the other.
struct Texts {
    width: i64,
    lines: Vec<Line>,
}

/// One line: what it is, how it is set, what it says.
type Line = (&'static str, Face, Ink, String);

impl Texts {
    fn head(elevation: &Elevation, width: i64) -> Texts {
        let mut texts = Texts {
            width,
            lines: Vec::new(),
        };
        texts.add("tag", TAG, DARK, &elevation.tag);
        texts.add(
            "size",
            SIZE,
            DARK,
            &format!("{} (width x height)", size_words(elevation)),
        );
        for line in &elevation.title {
            texts.add("title", TITLE, DARK, line);
        }
        texts
    }

    fn foot(elevation: &Elevation, scale: Scale, width: i64) -> Texts {
        let mut texts = Texts {
            width,
            lines: Vec::new(),
        };
        for line in description(elevation) {
            texts.add("description", NOTE, DARK, &line);
        }
        let meanings = occurring(std::iter::once(elevation));
        let meanings: Vec<&str> = meanings
            .into_iter()
            .map(|convention| convention.meaning())
            .collect();
        texts.lines.push(("", SMALL, GREY, String::new()));
        texts.add(
            "viewed",
            SMALL,
            GREY,
            &format!("{VIEWED}. Scale {}.", scale.words(elevation.unit)),
        );
        texts.add("legend", SMALL, GREY, &format!("{}.", meanings.join(". ")));
        texts
    }

    fn add(&mut self, part: &'static str, face: Face, ink: Ink, text: &str) {
        let lines = face.wrapped(&crate::letter::clean(text), self.width);
        self.lines
            .extend(lines.into_iter().map(|line| (part, face, ink, line)));
    }

    fn height(&self) -> i64 {
        self.lines.iter().map(|(_, face, ..)| face.line()).sum()
    }

    fn placed(&self, left: i64, top: i64) -> Vec<Shape> {
        let mut base = top;
        let place = |(part, face, ink, words): &Line| {
            base += face.line();
            Shape::text(part, (left, base - face.below()), Set::Left, *face, words, *ink)
        };
        self.lines
            .iter()
            .map(place)
            .filter(|shape| !shape.part.is_empty())
            .collect()
    }
}
