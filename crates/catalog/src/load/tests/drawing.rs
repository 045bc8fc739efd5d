//! How a catalog says that its units are drawn, and colours on screen.

use super::*;

const NAMES: &str = r#"
[[attribute]]
id = "grille"
label = "Grille"
options = [{ id = "none" }, { id = "grid" }]
standard = "none"

[[attribute]]
id = "bars"
label = "Bars"
options = [{ id = "wide", properties = { bar = 2 } }]
standard = "wide"
applies_when = 'grille == "grid"'

[[measure]]
id = "width"
label = "W"

[[measure]]
id = "lites"
label = "L"
type = "number"
"#;

const SIZES: &str = "width = 'width'\nheight = '\"48\"'\nframe = '\"2 1/4\"'\nframe_colour = \"exterior\"\n";
const LAYOUT: &str = "[[drawing.layout]]\npanels = [\"fixed\"]\n";

/// A catalog with a drawing of these tables; its keys begin on line 33.
fn drawn(sizes: &str, tables: &str) -> String {
    format!("{COLOUR}{NAMES}[drawing]\n{sizes}{tables}\n")
}

/// The drawing as it was read, or the findings.
fn check_drawing(text: &str, expected: Expect) {
    let (loaded, findings, sources) = load_files(&[("c/catalog.toml", &format!("{HEAD}{text}"))]);
    let mut out = lines_of(&findings, &sources);
    if let Some(loaded) = loaded {
        match &loaded.catalog.declarations().drawing {
            None => out += "no drawing\n",
            Some(drawing) => {
                for layout in &drawing.layouts {
                    writeln!(
                        out,
                        "{:?} {:?} at {:?} sash {:?}{}",
                        layout.panels,
                        layout.arranged,
                        layout.divided_at,
                        layout.sash,
                        shown_when(&layout.when)
                    )
                    .unwrap();
                }
                for grille in &drawing.grilles {
                    writeln!(
                        out,
                        "grille on {:?}{}: {:?}",
                        grille.panels,
                        shown_when(&grille.when),
                        grille.what
                    )
                    .unwrap();
                }
                writeln!(out, "screens {:?}", drawing.screens).unwrap();
                writeln!(out, "marks {:?}", drawing.marks).unwrap();
            }
        }
    }
    expected.assert_eq(&out);
}

#[test]
fn a_catalog_may_say_nothing_of_drawing() {
    check_drawing(COLOUR, expect![""]);
}

#[test]
fn panels_grilles_screens_and_marks_are_read() {
    let tables = r#"
[[drawing.layout]]
when = 'grille == "grid"'
panels = ["slides-up", "fixed"]
arranged = "stacked"
divided_at = ["width / 2"]
sash = '"1 3/4"'

[[drawing.layout]]
panels = ["hinged-left"]

[[drawing.grille]]
when = 'is_asked(bars)'
on = [2]
pattern = "grid"
columns = "lites"
rows = "2"
bar = '"7/8"'
colour = "exterior"

[[drawing.grille]]
pattern = "perimeter"
inset = '"4"'
bar = '"7/8"'
colour = "exterior"

[[drawing.grille]]
pattern = "top-row"
columns = "3"
height = '"9"'
bar = '"7/8"'
colour = "exterior"

[[drawing.screen]]
on = [1]
side = "inside"

[[drawing.glass]]
when = 'exterior == "grey"'
mark = "obscure"
"#;
    check_drawing(&drawn(SIZES, tables), expect![""]);
}

#[test]
fn a_drawing_lacks_nothing() {
    check_drawing(&drawn("", ""), expect![""]);
    check_drawing(
        &drawn(
            SIZES,
            "[[drawing.layout]]\nsash = '\"2\"'\n[[drawing.grille]]\n[[drawing.screen]]\n[[drawing.glass]]\n",
        ),
        expect![""],
    );
}

#[test]
fn panels_meet_at_one_place_fewer_than_they_are() {
    let layout = |keys: &str| drawn(SIZES, &format!("[[drawing.layout]]\n{keys}\n"));
    check_drawing(&layout("panels = [\"fixed\", \"fixed\"]"), expect![""]);
    check_drawing(
        &layout("panels = [\"fixed\"]\ndivided_at = [\"width / 2\"]"),
        expect![""],
    );
    check_drawing(
        &layout("panels = [\"fixed\", \"fixed\", \"fixed\"]\ndivided_at = [\"width / 3\"]"),
        expect![""],
    );
    check_drawing(&layout("panels = []"), expect![""]);
    check_drawing(
        &layout(&format!("panels = [{}]", vec!["\"fixed\""; 13].join(", "))),
        expect![""],
    );
}

#[test]
fn motions_and_other_words_are_known() {
    check_drawing(
        &drawn(
            SIZES,
            "[[drawing.layout]]\npanels = [\"hinged-lft\", \"opens\"]\narranged = \"beside\"\ndivided_at = [\"width / 2\"]\n\
             [[drawing.screen]]\nside = \"outsde\"\n[[drawing.glass]]\nmark = \"laminated\"\n",
        ),
        expect![""],
    );
}

#[test]
fn panels_are_counted_from_one() {
    check_drawing(
        &drawn(
            SIZES,
            &format!("{LAYOUT}[[drawing.screen]]\nside = \"inside\"\non = [0, 13, -1, 1.5, \"1\"]\n"),
        ),
        expect![""],
    );
}

#[test]
fn sizes_are_lengths_and_counts_are_numbers() {
    check_drawing(
        &drawn(
            "width = 'lites'\nheight = '48'\nframe = 'width * width'\nframe_colour = \"exterior\"\n",
            "[[drawing.layout]]\npanels = [\"fixed\", \"fixed\"]\ndivided_at = [\"lites\"]\nsash = 'exterior'\n\
             [[drawing.grille]]\npattern = \"grid\"\ncolumns = \"width\"\nrows = \"2\"\nbar = '1'\ncolour = \"exterior\"\n",
        ),
        expect![""],
    );
}

#[test]
fn a_colour_is_that_of_an_attribute() {
    check_drawing(
        &drawn(
            &SIZES.replace("\"exterior\"", "\"width\""),
            &format!(
                "{LAYOUT}[[drawing.grille]]\npattern = \"perimeter\"\ninset = '\"4\"'\nbar = '\"1\"'\ncolour = \"barz\"\n"
            ),
        ),
        expect![""],
    );
}

#[test]
fn a_grille_has_the_keys_of_its_pattern_and_no_others() {
    let grille = |keys: &str| {
        drawn(
            SIZES,
            &format!("{LAYOUT}[[drawing.grille]]\n{keys}\nbar = '\"7/8\"'\ncolour = \"exterior\"\n"),
        )
    };
    check_drawing(
        &grille("pattern = \"perimeter\"\ninset = '\"4\"'\ncolumns = \"3\"\nheight = '\"9\"'"),
        expect![""],
    );
    check_drawing(&grille("pattern = \"grid\"\ninset = '\"4\"'"), expect![""]);
    check_drawing(&grille("pattern = \"top-row\"\nrows = \"2\""), expect![""]);
    check_drawing(&grille("pattern = \"diamond\"\ncolumns = \"3\""), expect![""]);
}

#[test]
fn a_property_of_what_may_not_be_asked_is_guarded_by_when() {
    let grille = |when: &str| {
        drawn(
            SIZES,
            &format!(
                "{LAYOUT}[[drawing.grille]]\n{when}pattern = \"grid\"\ncolumns = \"bars.bar\"\nrows = \"2\"\nbar = '\"1\"'\ncolour = \"exterior\"\n"
            ),
        )
    };
    check_drawing(&grille(""), expect![""]);
    check_drawing(&grille("when = 'is_asked(bars)'\n"), expect![""]);
}

#[test]
fn a_catalog_is_drawn_in_one_way() {
    let more = format!("format = 1\n[drawing]\n{SIZES}{LAYOUT}");
    let head = HEAD.replace("[catalog]", "include = [\"more.toml\"]\n[catalog]");
    check_files(
        &[
            ("c/catalog.toml", &format!("{head}{}", drawn(SIZES, LAYOUT))),
            ("c/more.toml", &more),
        ],
        expect![""],
    );
}

#[test]
fn a_swatch_is_a_colour_in_six_digits() {
    let option = |swatch: &str| {
        format!(
            "[[attribute]]\nid = \"a\"\nlabel = \"A\"\noptions = [{{ id = \"x\", swatch = {swatch} }}]\nstandard = \"x\"\n"
        )
    };
    let (loaded, ..) = load_files(&[("c/catalog.toml", &format!("{HEAD}{}", option("\"#0aF9b1\"")))]);
    let swatch = loaded
        .unwrap()
        .catalog
        .declarations()
        .attributes
        .values()
        .next()
        .unwrap()
        .options[0]
        .swatch;
    let expected = astragal_model::Swatch {
        red: 0x0a,
        green: 0xf9,
        blue: 0xb1,
    };
    assert_eq!(swatch, Some(expected));
    check(&option("\"white\""), expect![""]);
    check(&option("\"#fff\""), expect![""]);
    check(&option("\"#gggggg\""), expect![""]);
    check(&option("\"ffffff\""), expect![""]);
    check(&option("\"#+1+1+1\""), expect![""]);
    check(&option("\"#ééé\""), expect![""]);
    check(&option("16777215"), expect![""]);
}
