//! The schemas of rules, of a catalog and of a policy, and of notices.

use super::shape::Shape;
use super::table::{Choice, Table};
use super::value::{expression, flag, id, label, name_of_part, path, per, template, text, when, word};

/// `[[rule]]` of a catalog.
pub(super) fn rule() -> Table {
    let authority = id(
        "Whose rule it is: `plant`, `code`, `programme`, `dealer`, or an `[[authority]]`. Left out: `plant`.",
        "code",
    );
    any_rule(authority.default("plant"))
}

/// `[[rule]]` of a policy.
pub(super) fn policy_rule() -> Table {
    let dealer = word(
        "Whose rule it is; those of a policy are the dealer's. Left out: `dealer`.",
        &[("dealer", "the dealer")],
    );
    any_rule(dealer.default("dealer")).optional(
        "catalog",
        id(
            "The one catalog that the rule is for. Left out: every catalog of the policy.",
            "hinged",
        ),
    )
}

fn any_rule(authority: Shape) -> Table {
    let table = Table::new("Something that must hold of a unit: a condition, or a row of a table.")
        .required(
            "id",
            id(
                "The id by which findings, waivers and examples name the rule.",
                "casement-width",
            ),
        )
        .optional("authority", authority)
        .optional("effect", effect())
        .optional("when", when("The rule counts", "operation == \"casement\""))
        .optional(
            "require",
            expression(
                "What must hold. Instead of `table`.",
                "unit_width >= \"15\" && unit_width <= \"36\"",
            ),
        );
    of_table(table)
        .required(
            "message",
            template(
                "What is said when it does not hold; `{names}` are filled in.",
                "A casement is 15 to 36 in wide; this one is {unit_width}.",
            ),
        )
        .optional("basis", basis("IRC 2021 R310.2.1"))
        .optional(
            "waivable",
            flag("Whether an order may waive it. Left out: it may not."),
        )
        .optional("per", per("rule"))
        .choices([
            Choice::new("by a condition", &["require"])
                .without(&["table", "rows", "layout", "down", "across"]),
            Choice::new("by a table, one row a line", &["table", "rows"])
                .without(&["require", "down", "across"])
                .word("layout", &["list"]),
            Choice::new(
                "by a matrix, one pair a cell",
                &["table", "rows", "layout", "down", "across"],
            )
            .without(&["require"])
            .word("layout", &["matrix"]),
        ])
}

/// `[[room_rule]]`.
pub(super) fn room_rule() -> Table {
    let authority = id(
        "Whose rule it is: `plant`, `code`, `programme`, `dealer`, or an `[[authority]]`. Left out: `plant`.",
        "code",
    );
    Table::new("Something that at least one opening of a room must meet. `when` and `message` read facts of the house, a floor or a room.")
        .required(
            "id",
            id(
                "The id by which findings and examples name the rule.",
                "escape-opening",
            ),
        )
        .required("label", label("An escape opening"))
        .optional("authority", authority.default("plant"))
        .optional("effect", effect())
        .optional(
            "when",
            when("The rule counts for a room", "room_use == \"sleeping\""),
        )
        .required(
            "at_least_one",
            expression(
                "What one opening of the room at least must meet.",
                "clear_area >= \"5.7 ft2\"",
            ),
        )
        .required(
            "message",
            template(
                "What is said when none does; `{names}` are filled in.",
                "Check the room: none of its openings is large enough to escape by.",
            ),
        )
        .optional("basis", basis("IRC 2021 R310.1"))
}

fn effect() -> Shape {
    word(
        "What follows when it does not hold. Left out: `block`.",
        &[
            ("block", "the unit does not hold"),
            ("warn", "the unit holds, with a warning"),
            ("sign_off", "the unit holds once somebody has signed it off"),
        ],
    )
    .default("block")
}

fn of_table(table: Table) -> Table {
    table
        .optional(
            "table",
            path(
                "The CSV file with the rows, relative to this file. Instead of `require`.",
                "colour-pairs.csv",
            ),
        )
        .optional(
            "rows",
            word(
                "What the rows of the table are. Must be there with `table`.",
                &[
                    ("allowed", "the unit must match one of them"),
                    ("forbidden", "the unit must match none of them"),
                ],
            ),
        )
        .optional(
            "layout",
            word(
                "How the table is laid out. Only with `table`. Left out: `list`.",
                &[
                    ("list", "one row a line, a column for each name"),
                    (
                        "matrix",
                        "`down` in the first column, `across` in the first row, a mark where they meet",
                    ),
                ],
            )
            .default("list"),
        )
        .optional(
            "down",
            name_of_part(
                "What the first column of a matrix holds. Only with `layout = \"matrix\"`.",
                "interior",
            ),
        )
        .optional(
            "across",
            name_of_part(
                "What the first row of a matrix holds. Only with `layout = \"matrix\"`.",
                "exterior",
            ),
        )
}

fn basis(example: &str) -> Shape {
    text(
        "Where it is published; printed beside it. Left out: nowhere.",
        example,
    )
}

/// `[[notice]]`.
pub(super) fn notice() -> Table {
    Table::new("Something that a quote must say.")
        .required("id", id("The id by which examples name the notice.", "lead-safe"))
        .optional(
            "kind",
            word(
                "What it is. Left out: `caution`.",
                &[
                    ("caution", "something to mind"),
                    ("warranty", "something about the warranty"),
                    ("sign_off", "something that the buyer signs"),
                ],
            )
            .default("caution"),
        )
        .optional(
            "when",
            expression(
                "The notice is shown where this condition holds, and where it cannot be decided. Left out: always.",
                "year_built < 1978",
            ),
        )
        .required(
            "text",
            template(
                "What is said; `{names}` are filled in.",
                "Built before 1978? Lead-safe rules apply to every window replacement.",
            ),
        )
        .optional("basis", basis("40 CFR 745.83"))
        .optional("per", per("notice"))
}
