//! Upright rectangles: exact ones on the unit in inches, rounded ones on paper in hundredths of a millimetre.
//!
//! The glass of a unit 28 by 45 in behind a frame of 2 in is the rectangle from (2, 2) to (26, 43); x grows to the
//! right and y downwards, from the upper left corner of the unit.

use astragal_exact::Number;

use crate::elevation::Side;
use crate::scale::Scale;

/// A place on the paper: x to the right, y downwards.
pub(crate) type Point = (i64, i64);

/// A rectangle on the unit, in inches.
#[derive(Clone, PartialEq, Eq, Debug)]
pub(crate) struct Region {
    pub(crate) left: Number,
    pub(crate) top: Number,
    pub(crate) right: Number,
    pub(crate) bottom: Number,
}

impl Region {
    pub(crate) fn width(&self) -> Number {
        &self.right - &self.left
    }

    pub(crate) fn height(&self) -> Number {
        &self.bottom - &self.top
    }

    /// The same, smaller by `by` on each side; `None` when nothing is left.
    pub(crate) fn inset(&self, by: &Number) -> Option<Region> {
        let region = Region {
            left: &self.left + by,
            top: &self.top + by,
            right: &self.right - by,
            bottom: &self.bottom - by,
        };
        (region.left < region.right && region.top < region.bottom).then_some(region)
    }

    pub(crate) fn on_paper(&self, scale: Scale) -> Area {
        Area {
            left: scale.hundredths(&self.left),
            top: scale.hundredths(&self.top),
            right: scale.hundredths(&self.right),
            bottom: scale.hundredths(&self.bottom),
        }
    }
}

/// A rectangle on paper.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) struct Area {
    pub(crate) left: i64,
    pub(crate) top: i64,
    pub(crate) right: i64,
    pub(crate) bottom: i64,
}

impl Area {
    /// Around its middle.
    pub(crate) fn around(middle: Point, width: i64, height: i64) -> Area {
        let (left, top) = (middle.0 - width / 2, middle.1 - height / 2);
        Area {
            left,
            top,
            right: left + width,
            bottom: top + height,
        }
    }

    pub(crate) fn width(&self) -> i64 {
        self.right - self.left
    }

    pub(crate) fn height(&self) -> i64 {
        self.bottom - self.top
    }

    pub(crate) fn middle(&self) -> Point {
        ((self.left + self.right) / 2, (self.top + self.bottom) / 2)
    }

    /// The middle of one side.
    pub(crate) fn side(&self, side: Side) -> Point {
        let (x, y) = self.middle();
        match side {
            Side::Left => (self.left, y),
            Side::Right => (self.right, y),
            Side::Top => (x, self.top),
            Side::Bottom => (x, self.bottom),
        }
    }

    /// The two corners of one side.
    pub(crate) fn corners(&self, side: Side) -> (Point, Point) {
        let Area {
            left,
            top,
            right,
            bottom,
        } = *self;
        match side {
            Side::Left => ((left, top), (left, bottom)),
            Side::Right => ((right, top), (right, bottom)),
            Side::Top => ((left, top), (right, top)),
            Side::Bottom => ((left, bottom), (right, bottom)),
        }
    }

    pub(crate) fn grown(&self, by: i64) -> Area {
        Area {
            left: self.left - by,
            top: self.top - by,
            right: self.right + by,
            bottom: self.bottom + by,
        }
    }

    pub(crate) fn is_within(&self, outer: &Area) -> bool {
        self.with(outer) == *outer
    }

    /// Whether the two have more in common than an edge.
    pub(crate) fn overlaps(&self, other: &Area) -> bool {
        let across = self.left < other.right && other.left < self.right;
        across && self.top < other.bottom && other.top < self.bottom
    }

    /// The smallest rectangle around both.
    pub(crate) fn with(&self, other: &Area) -> Area {
        Area {
            left: self.left.min(other.left),
            top: self.top.min(other.top),
            right: self.right.max(other.right),
            bottom: self.bottom.max(other.bottom),
        }
    }
}

impl Side {
    pub(crate) fn opposite(self) -> Side {
        match self {
            Side::Left => Side::Right,
            Side::Right => Side::Left,
            Side::Top => Side::Bottom,
            Side::Bottom => Side::Top,
        }
    }

    /// One step towards it.
    pub(crate) fn step(self) -> Point {
        match self {
            Side::Left => (-1, 0),
            Side::Right => (1, 0),
            Side::Top => (0, -1),
            Side::Bottom => (0, 1),
        }
    }
}
