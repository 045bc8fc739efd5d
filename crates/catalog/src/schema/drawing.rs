//! The schema of `[drawing]`.

use super::shape::Shape;
use super::table::{Choice, Table};
use super::value::{expression, list, name, text, when, word};
use crate::declare::{MOTIONS, PANELS_LIMIT};

/// `[drawing]`.
pub(super) fn drawing() -> Shape {
    let length = |description: &str, example: &str| expression(description, example);
    Table::new("How units are drawn, seen from outside. Stands once. Left out: they are not drawn.")
        .required(
            "width",
            length("The width over the frame: a length.", "opening_width"),
        )
        .required(
            "height",
            length("The height over the frame: a length.", "unit_height"),
        )
        .required(
            "frame",
            length("How wide the frame is to the eye: a length.", "\"2 1/4\""),
        )
        .required(
            "frame_colour",
            name("The attribute whose option colours frame and sashes.", "exterior"),
        )
        .required("layout", layout().into_list().with("minItems", 1))
        .optional("grille", grille().into_list())
        .optional(
            "screen",
            on(Table::new("An insect screen over panels."))
                .required(
                    "side",
                    word(
                        "On which side of the glass it stands.",
                        &[("inside", "in the room"), ("outside", "in the open air")],
                    ),
                )
                .into_list(),
        )
        .optional(
            "glass",
            on(Table::new("What the glass of panels is marked with."))
                .required(
                    "mark",
                    word(
                        "The mark.",
                        &[
                            ("obscure", "one does not see through it"),
                            ("tempered", "tempered, as ordered"),
                        ],
                    ),
                )
                .into_list(),
        )
        .into_shape()
}

fn layout() -> Table {
    let panel = word(
        "How one panel moves, seen from outside.",
        &MOTIONS.map(|(word, _)| (word, word)),
    );
    let panels = list(
        "How each panel moves, from the left or from the top.",
        panel,
        &["hinged-left"],
    );
    Table::new("The panels of a unit. The first layout whose condition holds is drawn.")
        .optional("when", when("It is this layout", "operation == \"casement\""))
        .required("panels", panels.with("minItems", 1).with("maxItems", PANELS_LIMIT))
        .optional(
            "arranged",
            word(
                "How the panels share the unit. Left out: `side-by-side`.",
                &[
                    ("side-by-side", "from the left"),
                    ("stacked", "from the top"),
                ],
            )
            .default("side-by-side"),
        )
        .optional(
            "divided_at",
            list(
                "Where each two panels meet, from the left or from the top of the unit: lengths. Left out: nowhere.",
                expression("A length.", "unit_height / 2"),
                &["unit_height / 2"],
            ),
        )
        .optional(
            "sash",
            expression(
                "How wide a sash is to the eye: a length. Left out: the glass sits in the frame.",
                "\"1 3/4\"",
            ),
        )
}

fn grille() -> Table {
    on(Table::new("Bars over the glass of panels."))
        .required(
            "pattern",
            word(
                "How the bars run.",
                &[
                    ("grid", "equal lites, `columns` across and `rows` down"),
                    (
                        "perimeter",
                        "two bars each way, `inset` from the edges of the glass",
                    ),
                    ("top-row", "one row of `columns` lites at the top, `height` high"),
                ],
            ),
        )
        .optional("columns", expression("Lites across: a number.", "3"))
        .optional("rows", expression("Lites down: a number.", "2"))
        .optional(
            "inset",
            expression("From the edge of the glass to the bar: a length.", "\"4\""),
        )
        .optional(
            "height",
            expression("How high the row at the top is: a length.", "\"12\""),
        )
        .required("bar", expression("How wide a bar is: a length.", "\"5/8\""))
        .required(
            "colour",
            name("The attribute whose option colours the bars.", "grille_colour"),
        )
        .choices([
            Choice::new("a grid", &["columns", "rows"])
                .without(&["inset", "height"])
                .word("pattern", &["grid"]),
            Choice::new("bars near the edges", &["inset"])
                .without(&["columns", "rows", "height"])
                .word("pattern", &["perimeter"]),
            Choice::new("a row at the top", &["columns", "height"])
                .without(&["inset", "rows"])
                .word("pattern", &["top-row"]),
        ])
}

/// `when` and `on`.
fn on(table: Table) -> Table {
    let number = Shape::new(
        "A panel, counted from the left or from the top; the first is 1.",
        "integer",
    )
    .with("minimum", 1)
    .with("maximum", PANELS_LIMIT)
    .example(1);
    table
        .optional("when", when("It is there", "screen == \"full\""))
        .optional(
            "on",
            Shape::list("The panels on which it is. Left out: all of them.", number).example(vec![1]),
        )
}

/// `swatch` of an option.
pub(super) fn swatch() -> Shape {
    text(
        "Its colour on a drawing, in sRGB; it stands for the finish and is not it. Left out: drawn in white.",
        "#f4f4f2",
    )
    .pattern("^#[0-9a-f]{6}$")
}
