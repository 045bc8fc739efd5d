//! One panel, drawn: sash, glass, bars, screen, the way it moves, marks, handle.
//!
//! Always holds: what is nearer to somebody outside is drawn later: a screen inside lies behind the bars, one outside
//! before them. The lines of the frame are heavier than those of the sash, and these heavier than those of the grille.

use astragal_exact::Number;

use crate::colour::{DARK, FROST, GLASS, GREY, Ink, line_on};
use crate::elevation::{Glass, Grille, Operation, Screen, Side};
use crate::geometry::{Area, Region};
use crate::grille::{bars, lites};
use crate::hatch::rising;
use crate::layout::Placed;
use crate::mark::marks;
use crate::motion::motion;
use crate::scale::Scale;
use crate::screen;
use crate::shape::{Pen, Shape};

/// LIMIT: a bar is never drawn thinner than this, or it would be lost in print.
const BAR_LEAST: i64 = 14;

/// The panel at this scale; `sash` is the colour of its sash, `frame` that of the frame around it.
pub(crate) fn panel(placed: &Placed<'_>, sash: Ink, frame: Ink, scale: Scale) -> Vec<Shape> {
    let Placed {
        panel,
        outer,
        glass: region,
    } = placed;
    let (outer, glass) = (outer.on_paper(scale), region.on_paper(scale));
    let mut shapes = Vec::new();
    let around = if panel.sash.is_some() { sash } else { frame };
    if panel.sash.is_some() {
        shapes.push(Shape::rectangle(
            "sash",
            outer,
            Pen::line(line_on(sash), 20).filled(sash),
        ));
    }
    shapes.push(Shape::rectangle("glass", glass, Pen::fill(GLASS)));
    if panel.glass == Glass::Obscure {
        shapes.push(Shape::lines("obscure", rising(&glass, 170), Pen::line(FROST, 14)));
    }
    if panel.screen == Some(Screen::Inside) {
        shapes.extend(screen::mesh(panel.operation, &glass));
    }
    let divided = panel.grille.as_ref().map_or((1, 1), lites);
    if let Some(grille) = &panel.grille {
        shapes.extend(drawn_bars(grille, region, scale));
    }
    if panel.screen == Some(Screen::Outside) {
        shapes.extend(screen::mesh(panel.operation, &glass));
    }
    let edge = Pen::line(line_on(around), 14);
    shapes.push(Shape::rectangle("glass-edge", glass, edge));
    let moving = motion(panel.operation, &glass, divided);
    let is_arrow = matches!(panel.operation, Operation::Slides(_));
    let mut taken = if is_arrow { covers(&moving) } else { Vec::new() };
    let marks = marks(panel, &glass, divided, &taken);
    taken.extend(covers(&marks));
    shapes.extend(moving);
    shapes.extend(marks);
    if panel.screen.is_some() {
        shapes.extend(screen::word(panel.operation, &glass, &taken));
    }
    if let Some(side) = panel.handle {
        shapes.push(handle(side, &outer, &glass, around, scale));
    }
    shapes
}

fn covers(shapes: &[Shape]) -> Vec<Area> {
    shapes.iter().filter_map(Shape::covers).collect()
}

/// Edges first and then all fillings, so that no line crosses a bar where it meets another.
fn drawn_bars(grille: &Grille, glass: &Region, scale: Scale) -> Vec<Shape> {
    let (ink, all) = (grille.colour.ink(), bars(grille, glass));
    let areas: Vec<Area> = all.iter().map(|bar| at_least(bar.on_paper(scale))).collect();
    let edge = if line_on(ink) == DARK { GREY } else { ink };
    let edges = areas
        .iter()
        .map(|area| Shape::rectangle("grille-edge", *area, Pen::line(edge, 14)));
    let bars = areas
        .iter()
        .map(|area| Shape::rectangle("grille", *area, Pen::fill(ink)));
    edges.chain(bars).collect()
}

fn at_least(area: Area) -> Area {
    Area::around(
        area.middle(),
        area.width().max(BAR_LEAST),
        area.height().max(BAR_LEAST),
    )
}

/// A handle about 5 in long on the middle of its side.
fn handle(side: Side, outer: &Area, glass: &Area, on: Ink, scale: Scale) -> Shape {
    let (outside, inside) = (outer.side(side), glass.side(side));
    let middle = ((outside.0 + inside.0) / 2, (outside.1 + inside.1) / 2);
    let face = (outside.0 - inside.0).abs().max((outside.1 - inside.1).abs());
    let across = if face == 0 {
        40
    } else {
        (face * 2 / 5).max(40).min(face)
    };
    let along = scale.hundredths(&Number::from(5)).max(200);
    let area = match side {
        Side::Left | Side::Right => Area::around(middle, across, along.min(outer.height())),
        Side::Top | Side::Bottom => Area::around(middle, along.min(outer.width()), across),
    };
    Shape::rectangle("handle", area, Pen::fill(line_on(on)))
}
