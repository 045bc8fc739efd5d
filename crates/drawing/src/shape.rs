//! What a drawing is made of: rectangles, lines, filled outlines, texts; and how large it is.
//!
//! Always holds: places are whole hundredths of a millimetre. What a shape covers counts the width of its line in, and for a
//! text the widths of [`crate::letter`].

use crate::colour::Ink;
use crate::geometry::{Area, Point};
use crate::letter::{Face, clean};

/// One thing drawn.
#[derive(Clone, Debug)]
pub(crate) struct Shape {
    /// What it shows, kept in the file as `data-part`.
    pub(crate) part: &'static str,
    pub(crate) form: Form,
    pub(crate) pen: Pen,
}

/// What it looks like.
#[derive(Clone, Debug)]
pub(crate) enum Form {
    Rectangle(Area),
    /// Lines from point to point, each list on its own.
    Lines(Vec<Vec<Point>>),
    /// A closed outline.
    Outline(Vec<Point>),
    Text(Text),
}

/// A text around or beside a point on its base line.
#[derive(Clone, Debug)]
pub(crate) struct Text {
    pub(crate) at: Point,
    pub(crate) face: Face,
    pub(crate) words: String,
    pub(crate) set: Set,
}

/// How a text is set to its point.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Set {
    /// It begins there.
    Left,
    /// Its middle is there.
    Centred,
    /// Its middle is there, and it reads upwards.
    Upright,
}

/// With what it is drawn: line and filling.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) struct Pen {
    pub(crate) line: Option<(Ink, i64)>,
    pub(crate) fill: Option<Ink>,
    pub(crate) dashed: bool,
}

impl Pen {
    pub(crate) const fn line(ink: Ink, width: i64) -> Pen {
        Pen {
            line: Some((ink, width)),
            fill: None,
            dashed: false,
        }
    }

    pub(crate) const fn fill(ink: Ink) -> Pen {
        Pen {
            line: None,
            fill: Some(ink),
            dashed: false,
        }
    }

    pub(crate) const fn filled(self, ink: Ink) -> Pen {
        Pen {
            fill: Some(ink),
            ..self
        }
    }

    pub(crate) const fn dashed(self) -> Pen {
        Pen { dashed: true, ..self }
    }
}

impl Shape {
    pub(crate) fn rectangle(part: &'static str, area: Area, pen: Pen) -> Shape {
        Shape {
            part,
            form: Form::Rectangle(area),
            pen,
        }
    }

    pub(crate) fn lines(part: &'static str, lines: Vec<Vec<Point>>, pen: Pen) -> Shape {
        Shape {
            part,
            form: Form::Lines(lines),
            pen,
        }
    }

    pub(crate) fn outline(part: &'static str, points: Vec<Point>, pen: Pen) -> Shape {
        Shape {
            part,
            form: Form::Outline(points),
            pen,
        }
    }

    /// A text; what XML cannot hold is left out of it.
    pub(crate) fn text(part: &'static str, at: Point, set: Set, face: Face, words: &str, ink: Ink) -> Shape {
        let words = clean(words);
        Shape {
            part,
            form: Form::Text(Text { at, face, words, set }),
            pen: Pen::fill(ink),
        }
    }

    /// The rectangle that it covers; `None` of lines without a point.
    pub(crate) fn covers(&self) -> Option<Area> {
        let bare = match &self.form {
            Form::Rectangle(area) => Some(*area),
            Form::Lines(lines) => around(lines.iter().flatten()),
            Form::Outline(points) => around(points.iter()),
            Form::Text(text) => Some(text.covers()),
        };
        let width = self.pen.line.map_or(0, |(_, width)| width);
        bare.map(|area| area.grown((width + 1) / 2))
    }
}

impl Text {
    pub(crate) fn covers(&self) -> Area {
        let (x, y) = self.at;
        let (width, above, below) = (
            self.face.width(&self.words),
            self.face.capital(),
            self.face.below(),
        );
        match self.set {
            Set::Left => Area {
                left: x,
                top: y - above,
                right: x + width,
                bottom: y + below,
            },
            Set::Centred => {
                let left = x - width / 2;
                Area {
                    left,
                    top: y - above,
                    right: left + width,
                    bottom: y + below,
                }
            }
            Set::Upright => {
                let top = y - width / 2;
                Area {
                    left: x - above,
                    top,
                    right: x + below,
                    bottom: top + width,
                }
            }
        }
    }
}

/// The rectangle that all shapes cover together; nothing at the origin when there are none.
pub(crate) fn covered(shapes: &[Shape]) -> Area {
    let areas = shapes.iter().filter_map(Shape::covers);
    let nothing = Area {
        left: 0,
        top: 0,
        right: 0,
        bottom: 0,
    };
    areas.reduce(|all, area| all.with(&area)).unwrap_or(nothing)
}

fn around<'a>(points: impl Iterator<Item = &'a Point>) -> Option<Area> {
    let areas = points.map(|&(x, y)| Area {
        left: x,
        top: y,
        right: x,
        bottom: y,
    });
    areas.reduce(|all, area| all.with(&area))
}
