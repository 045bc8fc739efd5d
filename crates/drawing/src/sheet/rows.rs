//! Which openings stand beside each other: rooms are set one after the other into rows of three columns.
//!
//! A kitchen with one narrow window and a bedroom with two fill one row; a bay 120 in wide takes two columns.
//!
//! Always holds: cells keep their order; no row has more than three columns; a room that goes on in the next row says so.

use crate::figure::{Figure, figure};
use crate::layout::layout;
use crate::scale::Scale;
use crate::sheet::{Cell, Floor, Picture};

/// Columns of a page.
pub(crate) const COLUMNS: usize = 3;
/// The width of a column and the gap between two, in hundredths of a millimetre: three of them are 186 mm.
const COLUMN: i64 = 5_800;
const GAP: i64 = 600;

/// A cell, drawn.
pub(crate) struct Drawn<'a> {
    pub(crate) cell: &'a Cell,
    /// The drawing and where its unit ends at the bottom; or why there is none.
    pub(crate) figure: Result<(Figure, i64), String>,
    /// Columns.
    pub(crate) span: usize,
}

/// What stands side by side.
pub(crate) struct Row<'a> {
    pub(crate) pieces: Vec<Piece<'a>>,
}

/// The cells of one room in one row.
pub(crate) struct Piece<'a> {
    pub(crate) room: &'a str,
    /// Whether the room began in a row before.
    pub(crate) continued: bool,
    pub(crate) cells: Vec<Drawn<'a>>,
}

impl Piece<'_> {
    pub(crate) fn span(&self) -> usize {
        self.cells.iter().map(|cell| cell.span).sum()
    }
}

impl Row<'_> {
    /// The most that a drawing of the row reaches above and below the bottom of its unit, so that all can stand on one line.
    pub(crate) fn reach(&self) -> (i64, i64) {
        let cells = self.pieces.iter().flat_map(|piece| &piece.cells);
        let figures = cells.filter_map(|cell| cell.figure.as_ref().ok());
        let reaches = figures.map(|(figure, bottom)| (bottom - figure.area.top, figure.area.bottom - bottom));
        reaches.fold((0, 0), |most, reach| (most.0.max(reach.0), most.1.max(reach.1)))
    }
}

/// The rows of a floor.
pub(crate) fn rows(floor: &Floor, scale: Scale) -> Vec<Row<'_>> {
    let mut rows: Vec<Row<'_>> = Vec::new();
    let mut free = 0;
    for room in &floor.rooms {
        let mut begun = false;
        for cell in &room.cells {
            let drawn = drawn(cell, scale);
            let fits = drawn.span <= free;
            if !fits {
                rows.push(Row { pieces: Vec::new() });
                free = COLUMNS;
            }
            free = free.saturating_sub(drawn.span);
            let Some(row) = rows.last_mut() else { continue };
            match row.pieces.last_mut() {
                Some(piece) if begun && fits => piece.cells.push(drawn),
                _ => row.pieces.push(Piece {
                    room: &room.name,
                    continued: begun,
                    cells: vec![drawn],
                }),
            }
            begun = true;
        }
    }
    rows
}

fn drawn(cell: &Cell, scale: Scale) -> Drawn<'_> {
    let figure = match &cell.picture {
        Picture::NotDrawn(reason) => Err(reason.clone()),
        Picture::Drawn(elevation) => match layout(elevation) {
            Ok(layout) => {
                let bottom = layout.unit.on_paper(scale).bottom;
                Ok((figure(elevation, &layout, scale), bottom))
            }
            Err(error) => Err(format!("{error}; {}", error.help())),
        },
    };
    let width = figure.as_ref().map_or(0, |(figure, _)| figure.area.width());
    Drawn {
        cell,
        figure,
        span: span(width),
    }
}

/// How many columns a drawing takes.
fn span(width: i64) -> usize {
    let wide = |columns: i64| columns * COLUMN + (columns - 1) * GAP;
    if width <= wide(1) {
        1
    } else if width <= wide(2) {
        2
    } else {
        COLUMNS
    }
}
