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

/// A catalog with a drawing of these keys and tables.
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
    check_drawing(
        COLOUR,
        expect![[r#"
        no drawing
    "#]],
    );
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
    check_drawing(
        &drawn(SIZES, tables),
        expect![[r#"
        [SlidesUp, Fixed] Stacked at [Divide(Read(Measure(MeasureIndex(0))), 2)] sash Some(Literal(Length(1.75))) when Compare(Equal, Read(Attribute(AttributeIndex(1))), Literal(Option(`grid`)))
        [HingedLeft] SideBySide at [] sash None
        grille on [1] when IsAsked(AttributeIndex(2)): GrilleDrawing { pattern: Grid { columns: Read(Measure(MeasureIndex(1))), rows: Literal(Number(2)) }, bar: Literal(Length(0.875)), colour: AttributeIndex(0) }
        grille on []: GrilleDrawing { pattern: Perimeter(Literal(Length(4))), bar: Literal(Length(0.875)), colour: AttributeIndex(0) }
        grille on []: GrilleDrawing { pattern: TopRow { columns: Literal(Number(3)), height: Literal(Length(9)) }, bar: Literal(Length(0.875)), colour: AttributeIndex(0) }
        screens [OnPanels { when: None, panels: [0], what: Inside }]
        marks [OnPanels { when: Some(Compare(Equal, Read(Attribute(AttributeIndex(0))), Literal(Option(`grey`)))), panels: [], what: Obscure }]
    "#]],
    );
}

#[test]
fn a_drawing_lacks_nothing() {
    check_drawing(
        &drawn("", ""),
        expect![[r#"
        c/catalog.toml:34:1 `[drawing]` MISSING_KEY `drawing` lacks `frame_colour`
          help: add `frame_colour`
        c/catalog.toml:34:1 `[drawing]` MISSING_KEY `drawing` lacks `frame`
          help: add `frame`
        c/catalog.toml:34:1 `[drawing]` MISSING_KEY `drawing` lacks `height`
          help: add `height`
        c/catalog.toml:34:1 `[drawing]` MISSING_KEY `drawing` lacks `width`
          help: add `width`
        c/catalog.toml:34:1 `[drawing]` MISSING_KEY the drawing has no layout
          help: add a `[[drawing.layout]]` with its panels
    "#]],
    );
    check_drawing(
        &drawn(
            SIZES,
            "[[drawing.layout]]\nsash = '\"2\"'\n[[drawing.grille]]\n[[drawing.screen]]\n[[drawing.glass]]\n",
        ),
        expect![[r#"
            c/catalog.toml:39:1 `[[drawing.layout]]` MISSING_KEY layout lacks `panels`
              help: add `panels`
            c/catalog.toml:41:1 `[[drawing.grille]]` MISSING_KEY grille lacks `bar`
              help: add `bar`
            c/catalog.toml:41:1 `[[drawing.grille]]` MISSING_KEY grille lacks `colour`
              help: add `colour`
            c/catalog.toml:41:1 `[[drawing.grille]]` MISSING_KEY grille lacks `pattern`
              help: add `pattern`
            c/catalog.toml:42:1 `[[drawing.screen]]` MISSING_KEY screen lacks `side`
              help: add `side`
            c/catalog.toml:43:1 `[[drawing.glass]]` MISSING_KEY glass lacks `mark`
              help: add `mark`
        "#]],
    );
}

#[test]
fn panels_meet_at_one_place_fewer_than_they_are() {
    let layout = |keys: &str| drawn(SIZES, &format!("[[drawing.layout]]\n{keys}\n"));
    check_drawing(
        &layout("panels = [\"fixed\", \"fixed\"]"),
        expect![[r#"
        c/catalog.toml:39:1 `[[drawing.layout]]` WRONG_DIVIDERS a layout of 2 panel(s) is divided at 1 place(s), not at 0
          help: write in `divided_at` where each two panels meet, from the left or from the top
    "#]],
    );
    check_drawing(
        &layout("panels = [\"fixed\"]\ndivided_at = [\"width / 2\"]"),
        expect![[r#"
            c/catalog.toml:39:1 `[[drawing.layout]]` WRONG_DIVIDERS a layout of 1 panel(s) is divided at 0 place(s), not at 1
              help: write in `divided_at` where each two panels meet, from the left or from the top
        "#]],
    );
    check_drawing(
        &layout("panels = [\"fixed\", \"fixed\", \"fixed\"]\ndivided_at = [\"width / 3\"]"),
        expect![[r#"
            c/catalog.toml:39:1 `[[drawing.layout]]` WRONG_DIVIDERS a layout of 3 panel(s) is divided at 2 place(s), not at 1
              help: write in `divided_at` where each two panels meet, from the left or from the top
        "#]],
    );
    check_drawing(
        &layout("panels = []"),
        expect![[r#"
        c/catalog.toml:39:1 `[[drawing.layout]]` LIMIT layout has 0 panels; expected 1 to 12
          help: write how each panel moves, from the left or from the top
    "#]],
    );
    check_drawing(
        &layout(&format!("panels = [{}]", vec!["\"fixed\""; 13].join(", "))),
        expect![[r#"
            c/catalog.toml:39:1 `[[drawing.layout]]` LIMIT layout has 13 panels; expected 1 to 12
              help: write how each panel moves, from the left or from the top
        "#]],
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
        expect![[r#"
            c/catalog.toml:40:11 `"hinged-lft"` UNKNOWN_WORD `panels` is `hinged-lft`; expected one of `fixed`, `hinged-left`, `hinged-right`, `hinged-top`, `hinged-bottom`, `slides-left`, `slides-right`, `slides-up`, `slides-down`
              help: did you mean `hinged-left`?
            c/catalog.toml:40:25 `"opens"` UNKNOWN_WORD `panels` is `opens`; expected one of `fixed`, `hinged-left`, `hinged-right`, `hinged-top`, `hinged-bottom`, `slides-left`, `slides-right`, `slides-up`, `slides-down`
              help: write one of these words
            c/catalog.toml:41:12 `"beside"` UNKNOWN_WORD `arranged` is `beside`; expected one of `side-by-side`, `stacked`
              help: write one of these words
            c/catalog.toml:44:8 `"outsde"` UNKNOWN_WORD `side` is `outsde`; expected one of `inside`, `outside`
              help: did you mean `outside`?
            c/catalog.toml:46:8 `"laminated"` UNKNOWN_WORD `mark` is `laminated`; expected one of `obscure`, `tempered`
              help: write one of these words
        "#]],
    );
}

#[test]
fn panels_are_counted_from_one() {
    check_drawing(
        &drawn(
            SIZES,
            &format!("{LAYOUT}[[drawing.screen]]\nside = \"inside\"\non = [0, 13, -1, 1.5, \"1\"]\n"),
        ),
        expect![[r#"
            c/catalog.toml:43:7 `0` WRONG_VALUE there is no panel 0; every layout has one
              help: panels are counted from the left or from the top, the first is 1
            c/catalog.toml:43:10 `13` WRONG_VALUE there is no panel 13; every layout has one
              help: panels are counted from the left or from the top, the first is 1
            c/catalog.toml:43:14 `-1` WRONG_VALUE there is no panel -1; every layout has one
              help: panels are counted from the left or from the top, the first is 1
            c/catalog.toml:43:18 `1.5` WRONG_TYPE the number of a panel is a decimal number; expected a whole number
              help: write it like `2`
            c/catalog.toml:43:23 `"1"` WRONG_TYPE the number of a panel is text; expected a whole number
              help: write `1` without quotes
        "#]],
    );
}

#[test]
fn nothing_lies_on_a_panel_that_no_layout_has() {
    let on = "[[drawing.screen]]\nside = \"inside\"\non = [2, 3]\n";
    let two = "[[drawing.layout]]\npanels = [\"slides-down\", \"slides-up\"]\narranged = \"stacked\"\ndivided_at = ['\"20\"']\n";
    check_drawing(
        &drawn(SIZES, &format!("{two}{on}")),
        expect![[r#"
        c/catalog.toml:45:10 `3` WRONG_VALUE there is no panel 3; expected 1 to 2
          help: panels are counted from the left or from the top, the first is 1
    "#]],
    );
    let unreadable = "[[drawing.layout]]\npanels = [\"turns\"]\n";
    check_drawing(
        &drawn(SIZES, &format!("{two}{unreadable}{on}")),
        expect![[r#"
        c/catalog.toml:44:11 `"turns"` UNKNOWN_WORD `panels` is `turns`; expected one of `fixed`, `hinged-left`, `hinged-right`, `hinged-top`, `hinged-bottom`, `slides-left`, `slides-right`, `slides-up`, `slides-down`
          help: write one of these words
    "#]],
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
        expect![[r#"
            c/catalog.toml:35:10 `lites` WRONG_TYPE this is a number; expected a length
              help: a length is written in quotes: "15" or "35 5/8"
            c/catalog.toml:36:11 `48` WRONG_TYPE this is a number; expected a length
              help: a length is written in quotes: "15" or "35 5/8"
            c/catalog.toml:37:10 `width * width` WRONG_TYPE this is an area; expected a length
              help: make both sides one type
            c/catalog.toml:41:16 `lites` WRONG_TYPE this is a number; expected a length
              help: a length is written in quotes: "15" or "35 5/8"
            c/catalog.toml:42:9 `exterior` WRONG_TYPE this is an option; expected a length
              help: make both sides one type
            c/catalog.toml:45:12 `width` WRONG_TYPE this is a length; expected a number
              help: in_inches(...), in_feet(...) or in_mm(...) turns a length into a number
            c/catalog.toml:47:8 `1` WRONG_TYPE this is a number; expected a length
              help: a length is written in quotes: "15" or "35 5/8"
        "#]],
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
        expect![[r#"
            c/catalog.toml:38:16 `"width"` UNKNOWN_NAME `width` is no attribute
              help: name the attribute whose option has the colour as its `swatch`
            c/catalog.toml:45:11 `barz` UNKNOWN_NAME `barz` is not a name of this catalog
              help: did you mean `bars`?
        "#]],
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
        expect![[r#"
            c/catalog.toml:44:11 `"3"` KEYS_EXCLUDE grille has `columns`, which another pattern has
              help: leave `columns` out
            c/catalog.toml:45:10 `'"9"'` KEYS_EXCLUDE grille has `height`, which another pattern has
              help: leave `height` out
        "#]],
    );
    check_drawing(
        &grille("pattern = \"grid\"\ninset = '\"4\"'"),
        expect![[r#"
        c/catalog.toml:41:1 `[[drawing.grille]]` MISSING_KEY grille lacks `columns`
          help: add `columns`
        c/catalog.toml:41:1 `[[drawing.grille]]` MISSING_KEY grille lacks `rows`
          help: add `rows`
        c/catalog.toml:43:9 `'"4"'` KEYS_EXCLUDE grille has `inset`, which another pattern has
          help: leave `inset` out
    "#]],
    );
    check_drawing(
        &grille("pattern = \"top-row\"\nrows = \"2\""),
        expect![[r#"
        c/catalog.toml:41:1 `[[drawing.grille]]` MISSING_KEY grille lacks `columns`
          help: add `columns`
        c/catalog.toml:41:1 `[[drawing.grille]]` MISSING_KEY grille lacks `height`
          help: add `height`
        c/catalog.toml:43:8 `"2"` KEYS_EXCLUDE grille has `rows`, which another pattern has
          help: leave `rows` out
    "#]],
    );
    check_drawing(
        &grille("pattern = \"diamond\"\ncolumns = \"3\""),
        expect![[r#"
        c/catalog.toml:42:11 `"diamond"` UNKNOWN_WORD `pattern` is `diamond`; expected one of `grid`, `perimeter`, `top-row`
          help: write one of these words
    "#]],
    );
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
    check_drawing(
        &grille(""),
        expect![[r#"
        c/catalog.toml:43:12 `bars.bar` NOT_GUARDED `bars` may be not asked here, and then it has no `bar`
          help: write `is_asked(bars) && ...` or `!is_asked(bars) || ...`
    "#]],
    );
    check_drawing(
        &grille("when = 'is_asked(bars)'\n"),
        expect![[r#"
        [Fixed] SideBySide at [] sash None
        grille on [] when IsAsked(AttributeIndex(2)): GrilleDrawing { pattern: Grid { columns: Property(AttributeIndex(2), `bar`), rows: Literal(Number(2)) }, bar: Literal(Length(1)), colour: AttributeIndex(0) }
        screens []
        marks []
    "#]],
    );
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
        expect![[r#"
            c/catalog.toml:35:1 `[drawing]` DUPLICATE_ID `[drawing]` stands twice
              help: a catalog is drawn in one way; keep one of the two
              c/more.toml:2:1 `[drawing]`: `[drawing]` stands here first
        "#]],
    );
}

fn with_swatch(swatch: &str) -> String {
    format!(
        "[[attribute]]\nid = \"a\"\nlabel = \"A\"\noptions = [{{ id = \"x\", swatch = {swatch} }}]\nstandard = \"x\"\n"
    )
}

#[test]
fn a_swatch_is_a_colour_in_six_digits() {
    let text = format!("{HEAD}{}", with_swatch("\"#0af9b1\""));
    let (loaded, ..) = load_files(&[("c/catalog.toml", &text)]);
    let loaded = loaded.unwrap();
    let attribute = loaded.catalog.declarations().attributes.values().next().unwrap();
    let expected = astragal_model::Swatch {
        red: 0x0a,
        green: 0xf9,
        blue: 0xb1,
    };
    assert_eq!(attribute.options[0].swatch, Some(expected));
}

#[test]
fn anything_else_is_no_colour() {
    for swatch in [
        "#0AF9B1", "white", "#fff", "#gggggg", "ffffff", "#+1+1+1", "#ééé", "#0af9b10", "",
    ] {
        let text = format!("{HEAD}{}", with_swatch(&format!("\"{swatch}\"")));
        let (loaded, findings, sources) = load_files(&[("c/catalog.toml", &text)]);
        assert!(loaded.is_none(), "{swatch}");
        let lines = lines_of(&findings, &sources);
        let expected = format!("WRONG_VALUE `{swatch}` is no colour of a drawing");
        assert!(lines.contains(&expected) || swatch.is_empty(), "{lines}");
    }
    check(
        &with_swatch("\"white\""),
        expect![[r#"
        c/catalog.toml:9:33 `"white"` WRONG_VALUE `white` is no colour of a drawing
          help: write `#` and six of the digits 0 to 9 and a to f: `#f4f4f2`
    "#]],
    );
    check(
        &with_swatch("16777215"),
        expect![[r#"
        c/catalog.toml:9:33 `16777215` WRONG_TYPE `swatch` is a whole number; expected text
          help: put it in quotes
    "#]],
    );
}
