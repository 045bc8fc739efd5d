//! Rows of the price items.

use super::{Row, Shown};

/// Them, in the order of the page.
pub(super) const ROWS: &[Row] = &[
    Row {
        group: "Price items",
        title: "A casement is priced by width and height, up to and including each step",
        shown: &[
            Shown::Totals(["476.00", "496.00"]),
            Shown::Order {
                name: "beyond-the-grid",
                code: 3,
                pieces: &[
                    "cannot be decided yet",
                    "Ask the plant: sign-off on Casement",
                    "Total of one unit not known",
                ],
            },
        ],
    },
    Row {
        group: "Price items",
        title: "A hung window is priced by united inches, and more for each inch over 96",
        shown: &[Shown::Totals(["420.00", "446.10"])],
    },
    Row {
        group: "Price items",
        title: "Tempered glass is charged by the square foot, five at least, for each sash",
        shown: &[
            Shown::Totals(["92.50", "90.00"]),
            Shown::Totals(["90.00", "45.00"]),
        ],
    },
    Row {
        group: "Price items",
        title: "A dark outside costs 15 percent of the base price",
        shown: &[Shown::Totals(["704.20", "612.35"])],
    },
    Row {
        group: "Price items",
        title: "A jamb extension is charged by the foot, all around",
        shown: &[Shown::Totals(["33.60", "0.00"])],
    },
    Row {
        group: "Price items",
        title: "Leaving out the screen of an awning gives something back",
        shown: &[Shown::Totals(["382.00", "390.00"])],
    },
    Row {
        group: "Price items",
        title: "Hardware that matches the interior costs nothing, another finish does",
        shown: &[Shown::Totals(["0.00", "17.50"])],
    },
    Row {
        group: "Price items",
        title: "The dealer marks goods up by a quarter and adds a share of the freight",
        shown: &[Shown::Order {
            name: "quay-side",
            code: 0,
            pieces: &[
                "Crate upcharge 50.00",
                "Freight, share, 3.5 % 1.75",
                "Total of one unit 51.75 USD",
                "Times 3 155.25 USD",
            ],
        }],
    },
];
