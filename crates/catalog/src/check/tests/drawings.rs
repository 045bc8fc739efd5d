//! Examples that cannot be drawn as `[drawing]` says.

use super::*;

/// Two panels in a frame, and a fixed unit; a grille over the fixed one.
const DRAWING: &str = r#"[[attribute]]
id = "operation"
label = "Operation"
options = [{ id = "slider" }, { id = "fixed" }, { id = "small" }]
standard = "slider"
[[attribute]]
id = "bars"
label = "Bars"
options = [{ id = "thin" }]
standard = "thin"
applies_when = 'operation == "fixed"'
[[figure]]
id = "wide"
label = "Width"
formula = 'operation == "small" ? "3 in" : "30 in"'
[[measure]]
id = "tall"
label = "Height"
type = "length"
[drawing]
width = 'wide'
height = '"40"'
frame = '"2"'
frame_colour = "exterior"
[[drawing.layout]]
when = 'operation == "slider"'
panels = ["slides-right", "fixed"]
divided_at = ['wide / 2']
sash = '"1 1/2"'
[[drawing.layout]]
when = 'operation == "fixed" || operation == "small"'
panels = ["fixed"]
[[drawing.grille]]
when = 'operation == "fixed"'
pattern = "grid"
columns = '2'
rows = '3'
bar = '"1"'
colour = "bars"
[[drawing.screen]]
when = 'operation == "slider"'
side = "outside"
[[rule]]
id = "not-small"
require = 'operation != "small"'
message = "It is not made so small."
[[example]]
id = "slider"
picks = [{ attribute = "operation", option = "slider" }]
date = 2026-11-25
[[example]]
id = "slider-again"
picks = [{ attribute = "operation", option = "slider" }]
date = 2026-11-25
[[example]]
id = "fixed"
picks = [{ attribute = "operation", option = "fixed" }]
date = 2026-11-25
[[example]]
id = "small"
picks = [{ attribute = "operation", option = "small" }]
date = 2026-11-25
breaks = ["not-small"]
"#;

/// The findings of a catalog whose drawing has `with` where `find` stands.
fn drawn_with(find: &str, with: &str, expected: Expect) {
    assert!(DRAWING.contains(find), "{find}");
    let text = format!("{GREY}{}", DRAWING.replacen(find, with, 1));
    let files = library(&text);
    let files: Vec<(&str, &str)> = files
        .iter()
        .map(|(path, text)| (path.as_str(), text.as_str()))
        .collect();
    let report = report(&files, "");
    expected.assert_eq(&lines_of(&report.findings, &report.sources));
}

#[test]
fn examples_that_can_be_drawn_are_no_findings_nor_is_one_that_is_not_made() {
    drawn_with("[drawing]", "[drawing]", expect![[""]]);
}

#[test]
fn sizes_that_leave_no_unit_are_found_where_they_are_written() {
    drawn_with(
        "width = 'wide'",
        "width = 'wide * 0'",
        expect![[r#"
        c/catalog.toml:48:9 `'wide * 0'` NOT_DRAWN example `slider` and 2 more cannot be drawn: the width is `0 in`; expected 1 in to 600 in
          help: check the measure and the unit that it is written in
          c/catalog.toml:75:6 `"slider"`: the example stands here
    "#]],
    );
    drawn_with(
        "height = '\"40\"'",
        "height = '\"51 ft\"'",
        expect![[r#"
        c/catalog.toml:49:10 `'"51 ft"'` NOT_DRAWN example `slider` and 2 more cannot be drawn: the height is `612 in`; expected 1 in to 600 in
          help: check the measure and the unit that it is written in
          c/catalog.toml:75:6 `"slider"`: the example stands here
    "#]],
    );
    drawn_with(
        "frame = '\"2\"'",
        "frame = '\"40\"'",
        expect![[r#"
        c/catalog.toml:50:9 `'"40"'` NOT_DRAWN example `slider` and 2 more cannot be drawn: the frame is `40 in` wide on each side, which leaves no opening in a unit of `30 in x 40 in`
          help: check the size of the unit and the face of its frame
          c/catalog.toml:75:6 `"slider"`: the example stands here
    "#]],
    );
    drawn_with(
        "frame = '\"2\"'",
        "frame = '\"0\" - \"4\"'",
        expect![[r#"
        c/catalog.toml:50:9 `'"0" - "4"'` NOT_DRAWN example `slider` and 2 more cannot be drawn: the face of the frame is `-4 in`; expected a length of 0 or more
          help: check the measure and the unit that it is written in
          c/catalog.toml:75:6 `"slider"`: the example stands here
    "#]],
    );
}

#[test]
fn dividers_and_sashes_that_do_not_fit_are_found_where_they_are_written() {
    drawn_with(
        "['wide / 2']",
        "['wide * 3']",
        expect![[r#"
        c/catalog.toml:55:15 `'wide * 3'` NOT_DRAWN example `slider` and 1 more cannot be drawn: divider 1 is at `90 in`; expected it with its bar between 2 in and 28 in
          help: measure dividers from the top or the left of the unit, in order, to the middle of their bar
          c/catalog.toml:75:6 `"slider"`: the example stands here
    "#]],
    );
    drawn_with(
        "['wide / 2']",
        "['\"0\" - wide']",
        expect![[r#"
        c/catalog.toml:55:15 `'"0" - wide'` NOT_DRAWN example `slider` and 1 more cannot be drawn: divider 1 is at `-30 in`; expected it with its bar between 2 in and 28 in
          help: measure dividers from the top or the left of the unit, in order, to the middle of their bar
          c/catalog.toml:75:6 `"slider"`: the example stands here
    "#]],
    );
    drawn_with(
        "sash = '\"1 1/2\"'",
        "sash = '\"30\"'",
        expect![[r#"
        c/catalog.toml:56:8 `'"30"'` NOT_DRAWN example `slider` and 1 more cannot be drawn: the sash of panel 1 is `30 in` wide on each side, which leaves no glass in a panel of `13 in x 36 in`
          help: check the dividers and the face of the sash
          c/catalog.toml:75:6 `"slider"`: the example stands here
    "#]],
    );
}

#[test]
fn grilles_that_do_not_fit_are_found_where_they_are_written() {
    drawn_with(
        "columns = '2'",
        "columns = '2.5'",
        expect![[r#"
        c/catalog.toml:63:11 `'2.5'` NOT_DRAWN example `fixed` cannot be drawn: a grille has `2.5` lites; expected a whole number of 1 or more
          help: round the number of lites, as `round_to(..., 1)` does
          c/catalog.toml:83:6 `"fixed"`: the example stands here
    "#]],
    );
    drawn_with(
        "columns = '2'",
        "columns = '25'",
        expect![[r#"
        c/catalog.toml:63:11 `'25'` NOT_DRAWN example `fixed` cannot be drawn: the grille of panel 1 has `25` lites across and `3` down; expected 1 to 24 each way
          help: give the lites across and down; 1 and 1 has no bar
          c/catalog.toml:83:6 `"fixed"`: the example stands here
    "#]],
    );
    drawn_with(
        "bar = '\"1\"'",
        "bar = '\"30\"'",
        expect![[r#"
        c/catalog.toml:65:7 `'"30"'` NOT_DRAWN example `fixed` cannot be drawn: the grille of panel 1 leaves no glass between its bars; the glass is `26 in x 36 in`
          help: check the width of the bars and how many there are
          c/catalog.toml:83:6 `"fixed"`: the example stands here
    "#]],
    );
}

#[test]
fn a_unit_that_no_layout_is_for_is_found_at_the_drawing() {
    drawn_with(
        "operation == \"fixed\" ||",
        "",
        expect![[r#"
        c/catalog.toml:47:1 `[drawing]` NOT_DRAWN example `fixed` cannot be drawn: no layout of the drawing is for such a unit
          help: add a `[[drawing.layout]]` whose `when` holds for it
          c/catalog.toml:83:6 `"fixed"`: the example stands here
    "#]],
    );
}

#[test]
fn what_has_no_value_is_found_where_it_is_written() {
    drawn_with(
        "frame_colour = \"exterior\"",
        "frame_colour = \"bars\"",
        expect![[r#"
            c/catalog.toml:51:16 `"bars"` NOT_DRAWN example `slider` and 1 more cannot be drawn: the colour of the frame has no value: Bars is not asked
              help: write what has a value for every unit that can be made
              c/catalog.toml:75:6 `"slider"`: the example stands here
        "#]],
    );
}

#[test]
fn what_is_not_known_is_no_finding() {
    drawn_with("height = '\"40\"'", "height = 'tall * 100'", expect![[""]]);
}
