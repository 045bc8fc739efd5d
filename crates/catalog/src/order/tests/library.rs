//! A small library for the tests: three catalogs with their books, one policy, and a second library beside it.

use std::path::Path;

const HINGED: &str = r#"format = 1
[catalog]
id = "hinged"
label = "Hinged windows"
length = { unit = "in", step = "1/16" }

[[part]]
id = "upper"
kind = "sash"
label = "upper sash"

[[part]]
id = "lower"
kind = "sash"
label = "lower sash"

[[attribute]]
id = "operation"
label = "Operation"
options = [{ id = "casement", label = "Casement" }, { id = "awning", label = "Awning" }, { id = "fixed", label = "Fixed" }]
standard = "casement"

[[attribute]]
id = "glazing"
label = "Glazing"
options = [{ id = "clear", label = "Clear" }, { id = "obscure", label = "Obscure" }]
standard = "clear"
per = "sash"

[[attribute]]
id = "glue"
label = "Glue"
options = [{ id = "one", label = "One" }, { id = "two", label = "Two" }]
standard = "one"
audience = "plant"

[[measure]]
id = "opening_width"
label = "Opening width"

[[measure]]
id = "panes_wide"
label = "Panes across"
type = "number"
step = "1"

[[site_fact]]
id = "year_built"
label = "Year built"
of = "house"
type = "number"

[[site_fact]]
id = "cladding"
label = "Cladding"
of = "house"
type = "enumeration"
options = ["brick", "wood"]

[[site_fact]]
id = "ceiling"
label = "Ceiling height"
of = "floor"
type = "length"

[[site_fact]]
id = "sleeping_room"
label = "Sleeping room"
of = "room"
type = "bool"

[[site_fact]]
id = "exposed"
label = "Exposed"
of = "face"
type = "bool"

[[site_fact]]
id = "wet_place"
label = "Wet place"
of = "opening"
type = "bool"

[[rule]]
id = "casement-width"
require = 'opening_width <= "36"'
message = "At most 36 in wide."
waivable = true

[[room_rule]]
id = "escape"
label = "An opening to escape by"
when = 'sleeping_room && year_built > 1900'
at_least_one = 'operation == "casement"'
message = "Ceiling {ceiling}: none of its openings is one."

[[rule]]
id = "narrow-width"
require = 'opening_width >= "12"'
message = "At least 12 in wide."

[[price]]
id = "base"
label = "Base"
"#;

const SLIDING: &str = r#"format = 1
[catalog]
id = "sliding"
label = "Sliding windows"
length = { unit = "mm" }

[[attribute]]
id = "panels"
label = "Panels"
options = [{ id = "two", label = "Two" }, { id = "three", label = "Three" }]
standard = "two"

[[measure]]
id = "opening_width"
label = "Opening width"

[[site_fact]]
id = "ceiling"
label = "Ceiling height"
of = "floor"
type = "length"

[[site_fact]]
id = "track_heated"
label = "Heated track"
of = "house"
type = "bool"

[[price]]
id = "base"
label = "Base"
"#;

/// A catalog whose sizes are worked out from raw readings, and some facts with them.
const MEASURED: &str = r#"format = 1
[catalog]
id = "measured"
label = "Measured windows"
length = { unit = "in", step = "1/16" }

[[attribute]]
id = "panels"
label = "Panels"
options = [{ id = "two", label = "Two" }, { id = "three", label = "Three" }]
standard = "two"

[[measure]]
id = "opening_width"
label = "Opening width"
taken_as = "width"

[[measure]]
id = "opening_height"
label = "Opening height"
taken_as = "height"
step = "none"

[[site_fact]]
id = "diagonal_difference"
label = "Difference of the diagonals"
of = "house"
type = "length"
taken_as = "diagonal-difference"

[[site_fact]]
id = "width_spread"
label = "Difference of the widths"
of = "opening"
type = "length"
taken_as = "width-spread"

[[site_fact]]
id = "height_spread"
label = "Difference of the heights"
of = "opening"
type = "length"
taken_as = "height-spread"

[[price]]
id = "base"
label = "Base"
"#;

const POLICY: &str = r#"format = 1
[policy]
id = "north-street"
label = "North Street dealer"
catalogs = ["hinged"]

[[rule]]
id = "no-wide-ones"
require = 'opening_width <= "30"'
message = "At most 30 in wide."
waivable = true
"#;

/// Writes the library to a folder: `library`, and `other`, which holds a copy of a book.
pub(super) fn write(folder: &Path) {
    let put = |path: &str, text: &str| {
        let path = folder.join(path);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(path, text).unwrap();
    };
    let head = |id: &str| format!("format = 1\n[library]\nid = \"{id}\"\nlabel = \"{id}\"\n");
    let book = |id: &str, catalog: &str, currency: &str| {
        format!(
            "format = 1\n[book]\nid = \"{id}\"\nlabel = \"{id}\"\ncatalog = \"{catalog}\"\ncurrency = \"{currency}\"\n\
             round_to = \"0.01\"\namounts = \"amounts.csv\"\n"
        )
    };
    put("library/library.toml", &head("demo"));
    put("library/hinged/catalog.toml", HINGED);
    put("library/sliding/catalog.toml", SLIDING);
    put("library/measured/catalog.toml", MEASURED);
    put("library/policy/policy.toml", POLICY);
    for (name, catalog, currency) in [
        ("hinged-book", "hinged", "USD"),
        ("sliding-book", "sliding", "USD"),
        ("measured-book", "measured", "USD"),
        ("canada-book", "hinged", "CAD"),
    ] {
        put(
            &format!("library/{name}/book.toml"),
            &book(name, catalog, currency),
        );
        put(
            &format!("library/{name}/amounts.csv"),
            "item,amount\nbase,100.00\n",
        );
    }
    put("other/library.toml", &head("other"));
    put(
        "other/hinged-book/book.toml",
        &book("hinged-book", "hinged", "USD"),
    );
    put("other/hinged-book/amounts.csv", "item,amount\nbase,100.00\n");
    put("outside/catalog.toml", HINGED);
    std::fs::create_dir_all(folder.join("library/empty")).unwrap();
}
