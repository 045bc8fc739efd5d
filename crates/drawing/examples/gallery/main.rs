//! Draws a gallery of invented units, and a sheet of some of them, into a folder.
//!
//! `cargo run -p astragal-drawing --example gallery -- DIR`

mod order;
mod units;

use std::path::Path;

use astragal_drawing::{elevation_svg, sheet_html};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let folder = std::env::args().nth(1).ok_or("name the folder to write into")?;
    let folder = Path::new(&folder);
    std::fs::create_dir_all(folder)?;
    for (name, unit) in units::all()? {
        std::fs::write(folder.join(format!("{name}.svg")), elevation_svg(&unit)?)?;
    }
    std::fs::write(folder.join("sheet.html"), sheet_html(&order::sheet()?)?)?;
    Ok(())
}
