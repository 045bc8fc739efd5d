//! A unit with its dimensions, drawn at a scale.
//!
//! Always holds: the upper left corner of the unit is at the origin; everything is within [`Figure::area`].

use crate::colour::DARK;
use crate::dimension::dimensions;
use crate::elevation::Elevation;
use crate::geometry::Area;
use crate::layout::Layout;
use crate::panel::panel;
use crate::scale::Scale;
use crate::shape::{Pen, Shape, covered};

/// What is drawn, and the rectangle that it covers.
pub(crate) struct Figure {
    pub(crate) shapes: Vec<Shape>,
    pub(crate) area: Area,
}

/// Draws a unit that has been laid out.
pub(crate) fn figure(elevation: &Elevation, layout: &Layout<'_>, scale: Scale) -> Figure {
    let mut shapes = bare(elevation, layout, scale);
    shapes.extend(dimensions(elevation, &layout.unit.on_paper(scale), scale));
    let area = covered(&shapes);
    Figure { shapes, area }
}

/// The unit without its dimensions.
pub(crate) fn bare(elevation: &Elevation, layout: &Layout<'_>, scale: Scale) -> Vec<Shape> {
    let (frame, sash) = (elevation.frame.colour.ink(), elevation.sash_colour.ink());
    let unit = layout.unit.on_paper(scale);
    let mut shapes = vec![Shape::rectangle("frame", unit, Pen::line(DARK, 44).filled(frame))];
    shapes.extend(
        layout
            .panels
            .iter()
            .flat_map(|placed| panel(placed, sash, frame, scale)),
    );
    shapes
}
