//! The elevation of one quoted unit, and why there is none.

use astragal_catalog::drawn::{self, NotDrawn};
use astragal_drawing::Elevation;
use astragal_model::{Authorities, Catalog, draw};

use crate::quote::work::QuotedUnit;

/// The elevation of a unit with its tag, or why there is none.
pub(super) fn elevation(unit: &QuotedUnit<'_>) -> Result<Elevation, NotDrawn> {
    let authorities = Authorities::default();
    let setting = unit
        .used
        .setting(unit.opening, unit.request, &authorities, unit.date);
    let mut elevation = drawn::elevation(unit.used.catalog, draw(&setting, &unit.filled))?;
    elevation.tag.clone_from(&unit.opening.tag);
    Ok(elevation)
}

/// Why a unit is not drawn, in a sentence.
pub(super) fn because(catalog: &Catalog, why: &NotDrawn) -> String {
    match why {
        NotDrawn::NoDrawing => {
            let id = &catalog.declarations().id;
            format!("catalog `{id}` does not say how its units are drawn")
        }
        NotDrawn::Unknown(wants) => {
            let wants = wants.iter().map(|want| catalog.show_want(want));
            format!("not known yet: {}", wants.collect::<Vec<_>>().join(", "))
        }
        NotDrawn::Wrong(fault) => format!("its catalog cannot draw it: {}", fault.message),
    }
}
