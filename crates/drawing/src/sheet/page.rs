//! Writes a sheet as one HTML page: no script, nothing from elsewhere, made for paper of either size.
//!
//! Every unit is drawn at one scale, which is stated, so that sizes compare. Units of one row stand on one line. No opening
//! is split between two pages, and the order is named at the foot of each.
//!
//! Always holds: every text is escaped where it is put in (`maud` does so by construction); every element that is opened is
//! closed; statuses are told apart by their boxes, never by colour alone. Cost: linear in the shapes drawn.

use maud::{DOCTYPE, Markup, PreEscaped, html};

use crate::colour::Colour;
use crate::elevation::{Arrangement, Elevation, Frame};
use crate::error::DrawingError;
use crate::figure::bare;
use crate::layout::{layout, lines, text};
use crate::legend::{Convention, VIEWED, occurring};
use crate::letter::clean;
use crate::limit::{CELLS_MOST, LABEL_MOST, TEXT_MOST};
use crate::scale::Scale;
use crate::shape::covered;
use crate::sheet::rows::{Drawn, Piece, Row, rows};
use crate::sheet::style::style;
use crate::sheet::{Cell, Picture, Sheet, Standing, Status};
use crate::svg::{millimetres, picture};
use crate::words::{description, size_words};
use astragal_exact::{LengthUnit, Number};

/// The largest width and height of a unit on paper.
const UNIT_MOST: (i64, i64) = (10_500, 7_600);
/// The height of the box of an opening without a drawing, and the width of a sample in the legend.
const EMPTY: i64 = 2_000;

/// Writes a sheet as an HTML page that prints on A4 and Letter.
///
/// All units are drawn at one scale, the largest usual one at which none is wider than 105 mm or higher than 76 mm on paper.
///
/// # Errors
/// [`DrawingError`] when there are too many openings, or a text is too long. An opening that cannot be drawn is no error
/// of the sheet: its cell says why.
///
/// # Examples
/// ```
/// use astragal_drawing::{Cell, Floor, Picture, Room, Sheet, sheet_html};
/// use astragal_exact::LengthUnit;
/// let cell = Cell {
///     tag: "B1".into(),
///     quantity: 1,
///     picture: Picture::NotDrawn("the width is not measured yet".into()),
///     status: None,
///     lines: Vec::new(),
///     cautions: Vec::new(),
///     notes: Vec::new(),
/// };
/// let bath = Room { name: "Bath & laundry".into(), cells: vec![cell] };
/// let floors = vec![Floor { name: "Upper floor".into(), rooms: vec![bath] }];
/// let title = "The corner house".into();
/// let sheet = Sheet { title, lines: Vec::new(), unit: LengthUnit::Inch, floors, notes: Vec::new() };
/// let page = sheet_html(&sheet)?;
/// assert!(page.contains("Bath &amp; laundry") && page.contains("the width is not measured yet"));
/// # Ok::<(), astragal_drawing::DrawingError>(())
/// ```
pub fn sheet_html(sheet: &Sheet) -> Result<String, DrawingError> {
    check(sheet)?;
    let drawable = sheet.cells().filter_map(drawable);
    let scale = Scale::fitting(
        sheet.unit,
        drawable.clone().map(|unit| (&unit.width, &unit.height)),
        UNIT_MOST,
    );
    let legend = occurring(drawable.clone());
    let scale_words = drawable.clone().next().map(|_| scale.words(sheet.unit));
    let markup = html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                title { (clean(&sheet.title)) }
                style { (PreEscaped(style(&sheet.title))) }
            }
            body {
                (head(sheet, scale_words))
                (legend_list(&legend))
                @for floor in &sheet.floors {
                    section class="floor" {
                        @if !floor.name.is_empty() { h2 { (clean(&floor.name)) } }
                        @for row in rows(floor, scale) { (one_row(&row)) }
                    }
                }
                (list("sheet-notes", &sheet.notes))
            }
        }
    };
    let mut text = markup.into_string();
    text.push('\n');
    Ok(text)
}

/// The unit of a cell, when it can be drawn.
fn drawable(cell: &Cell) -> Option<&Elevation> {
    match &cell.picture {
        Picture::Drawn(elevation) if layout(elevation).is_ok() => Some(elevation),
        _ => None,
    }
}

fn head(sheet: &Sheet, scale: Option<String>) -> Markup {
    let openings = sheet.cells().count();
    let units: u64 = sheet.cells().map(|cell| u64::from(cell.quantity)).sum();
    html! {
        h1 { (clean(&sheet.title)) }
        @for line in &sheet.lines { p class="line" { (clean(line)) } }
        p class="line" { (counted(openings, "opening")) ", " (counted(units, "unit")) }
        p class="reading" {
            strong { (VIEWED) "." }
            " Sizes are those of the units over their frames, width x height."
            @if let Some(scale) = scale {
                " All units are drawn at one scale: " strong { (scale) } ", when printed at 100 %."
            }
        }
    }
}

fn counted(number: impl std::fmt::Display, of: &str) -> String {
    let number = number.to_string();
    if number == "1" {
        format!("1 {of}")
    } else {
        format!("{number} {of}s")
    }
}

fn legend_list(legend: &[Convention]) -> Markup {
    html! {
        @if !legend.is_empty() {
            ul class="legend" {
                @for convention in legend {
                    li { (sample(*convention)) span { (convention.meaning()) } }
                }
            }
        }
    }
}

/// A small unit that shows one convention.
fn sample(convention: Convention) -> Markup {
    let frame = Frame {
        face: Number::ONE,
        colour: Colour::new("White", 250, 250, 247),
    };
    let mut unit = Elevation::new(Number::from(24), Number::from(17), LengthUnit::Inch, frame);
    let mut panel = convention.sample();
    panel.sash = Some(Number::from(2));
    unit.arrangement = Arrangement::One(panel);
    match (layout(&unit), Scale::one_to(48)) {
        (Ok(layout), Some(scale)) => {
            let mut shapes = bare(&unit, &layout, scale);
            shapes.retain(|shape| convention.shows(shape.part));
            picture(&shapes, covered(&shapes), convention.meaning())
        }
        _ => html! {},
    }
}

fn one_row(row: &Row<'_>) -> Markup {
    let reach = row.reach();
    html! {
        div class="row" {
            @for piece in &row.pieces { (one_piece(piece, reach)) }
        }
    }
}

fn one_piece(piece: &Piece<'_>, reach: (i64, i64)) -> Markup {
    let span = piece.span();
    let grid = format!("grid-column: span {span}; grid-template-columns: repeat({span}, 1fr)");
    html! {
        div class="piece" style=(grid) {
            h3 {
                (clean(piece.room))
                @if piece.continued { span class="continued" { " (continued)" } }
            }
            @for cell in &piece.cells { (one_cell(cell, reach)) }
        }
    }
}

fn one_cell(drawn: &Drawn<'_>, reach: (i64, i64)) -> Markup {
    let Drawn { cell, figure, span } = drawn;
    let column = format!("grid-column: span {span}");
    html! {
        article class="cell" style=(column) {
            (drawing(cell, figure.as_ref().map_err(String::as_str), reach))
            div class="name" {
                strong class="tag" { (clean(&cell.tag)) }
                span class="quantity" { "quantity " (cell.quantity) }
                @if let Some(status) = &cell.status { (badge(status)) }
            }
            @if let Some(elevation) = drawable(cell) {
                p class="size" { (size_words(elevation)) }
                @for line in description(elevation) { p { (clean(&line)) } }
            }
            @for line in &cell.lines { p { (clean(line)) } }
            (list("cautions", &cell.cautions))
            (list("notes", &cell.notes))
        }
    }
}

/// The drawing of a cell, set so that every unit of its row stands on one line.
fn drawing(cell: &Cell, figure: Result<&(crate::figure::Figure, i64), &str>, reach: (i64, i64)) -> Markup {
    let height = millimetres((reach.0 + reach.1).max(EMPTY));
    match figure {
        Ok((figure, bottom)) => {
            let lift = millimetres(reach.1 - (figure.area.bottom - bottom));
            let title = drawable(cell).map(size_words).unwrap_or_default();
            html! {
                div class="drawing" style=(format!("height: {height}; padding-bottom: {lift}")) {
                    (picture(&figure.shapes, figure.area, &format!("{}: {title}", cell.tag)))
                }
            }
        }
        Err(reason) => html! {
            div class="drawing" style=(format!("height: {height}")) {
                p class="missing" { strong { "Not drawn: " } (clean(reason)) }
            }
        },
    }
}

fn badge(status: &Status) -> Markup {
    let class = match status.standing {
        Standing::Holds => "status holds",
        Standing::DoesNotHold => "status fails",
        Standing::Undecided => "status open",
    };
    html! { span class=(class) { (clean(&status.words)) } }
}

fn list(class: &str, lines: &[String]) -> Markup {
    html! {
        @if !lines.is_empty() {
            ul class=(class) { @for line in lines { li { (clean(line)) } } }
        }
    }
}

fn check(sheet: &Sheet) -> Result<(), DrawingError> {
    let found = sheet.cells().count();
    if found > CELLS_MOST {
        return Err(DrawingError::Cells {
            found,
            most: CELLS_MOST,
        });
    }
    text("title of the sheet", &sheet.title, TEXT_MOST)?;
    lines("list of title lines", &sheet.lines)?;
    lines("list of notes of the sheet", &sheet.notes)?;
    for floor in &sheet.floors {
        text("name of a floor", &floor.name, TEXT_MOST)?;
        floor
            .rooms
            .iter()
            .try_for_each(|room| text("name of a room", &room.name, TEXT_MOST))?;
    }
    sheet.cells().try_for_each(check_cell)
}

fn check_cell(cell: &Cell) -> Result<(), DrawingError> {
    text("tag", &cell.tag, LABEL_MOST)?;
    if let Some(status) = &cell.status {
        text("status", &status.words, TEXT_MOST)?;
    }
    if let Picture::NotDrawn(reason) = &cell.picture {
        text("reason for no drawing", reason, TEXT_MOST)?;
    }
    lines("list of lines of an opening", &cell.lines)?;
    lines("list of cautions", &cell.cautions)?;
    lines("list of notes of an opening", &cell.notes)
}
