//! Rows of the place: install, escape, energy.

use super::{Row, Shown};

/// Them, in the order of the page.
pub(super) const ROWS: &[Row] = &[
    Row {
        group: "Install",
        title: "The unit is the opening less a deduction, and somebody says who deducts",
        shown: &[Shown::Rule {
            id: "made-width",
            says: "The unit would be made 72 1/4 in wide from an opening of 72 1/4 in; 72 in is the widest.",
        }],
    },
    Row {
        group: "Install",
        title: "A fin cannot go behind brick that stays",
        shown: &[Shown::Rule {
            id: "fin-behind-brick",
            says: "A fin cannot go behind brick that stays; take the frame without it.",
        }],
    },
    Row {
        group: "Install",
        title: "The diagonals of an opening differ by at most a quarter inch",
        shown: &[Shown::Rule {
            id: "square-opening",
            says: "The diagonals are 60 in and 60 5/16 in: the largest upright rectangle that fits governs. Measure again.",
        }],
    },
    Row {
        group: "Install",
        title: "A house built before 1978 gets the lead-safe caution",
        shown: &[Shown::Notice { id: "lead-safe" }],
    },
    Row {
        group: "Install",
        title: "A dealer's installer looks before glass above 20 square feet is ordered",
        shown: &[Shown::Order {
            name: "mill-lane",
            code: 0,
            pieces: &[
                "holds, needs a sign-off",
                "Glass of 20.0260… sq ft: our installer looks",
                "B quantity 1",
                "Needs a sign-off before it is ordered: A",
            ],
        }],
    },
    Row {
        group: "Escape",
        title: "A bedroom has at least one escape opening; a second, smaller window is no error",
        shown: &[Shown::Order {
            name: "two-windows",
            code: 0,
            pieces: &[
                "Rooms",
                "Bedroom holds",
                "An opening to escape by: A meets it; B does not and need not.",
                "2 of 2 openings hold: A, B",
            ],
        }],
    },
    Row {
        group: "Escape",
        title: "An escape opening is 5.7 square feet clear, 5.0 at a grade-floor opening",
        shown: &[Shown::Rule {
            id: "escape-area",
            says: "Check the escape opening: 32 in by 25 5/8 in clear is 5.6944… sq ft; 5.7 sq ft is asked for, 5.0 at a grade-floor opening.",
        }],
    },
    Row {
        group: "Escape",
        title: "An escape opening is 20 inches wide and 24 inches high, both clear",
        shown: &[
            Shown::Rule {
                id: "escape-width",
                says: "Check the escape opening: it is clear to a width of 19 15/16 in; 20 in is asked for.",
            },
            Shown::Rule {
                id: "escape-height",
                says: "Check the escape opening: it is clear to a height of 23 15/16 in; 24 in is asked for.",
            },
        ],
    },
    Row {
        group: "Escape",
        title: "The bottom of an escape opening is at most 44 inches above the floor",
        shown: &[Shown::Rule {
            id: "escape-bottom",
            says: "Check the escape opening: the bottom of its clear opening is 44 1/16 in above the floor; at most 44 in is asked for.",
        }],
    },
    Row {
        group: "Escape",
        title: "A fixed stop never goes on an escape opening",
        shown: &[Shown::Rule {
            id: "escape-stop",
            says: "Check the escape opening: a fixed stop keeps it from opening. Where a device is wanted, one that can be released is meant for such rooms.",
        }],
    },
    Row {
        group: "Escape",
        title: "A low window high above the ground is guarded against falls",
        shown: &[Shown::Rule {
            id: "fall-protection",
            says: "Check for falls: the opening is 72 1/16 in above the ground and begins 23 15/16 in above the floor, which calls for a device that keeps it from opening past 4 in. Local code governs.",
        }],
    },
    Row {
        group: "Escape",
        title: "A replacement below the sizes may be excused, and only the building department can say so",
        shown: &[Shown::Rule {
            id: "escape-exception",
            says: "This escape opening of 5.6944… sq ft is below the sizes for a new one and may be excused as a replacement. Only the building department can say so: ask, and keep the answer with the order.",
        }],
    },
    Row {
        group: "Energy",
        title: "The U-factor is within the limit of the energy code in the zone",
        shown: &[Shown::Rule {
            id: "energy-code-u-factor",
            says: "Check the glass: a U-factor of 0.31 is above the 0.3 of the energy code in zone 5. Local code governs.",
        }],
    },
    Row {
        group: "Energy",
        title: "In the south the glass may let in only so much sun",
        shown: &[Shown::Rule {
            id: "energy-code-shgc",
            says: "Check the glass: a solar heat gain of 0.26 is above what the energy code takes in zone 3. Local code governs.",
        }],
    },
    Row {
        group: "Energy",
        title: "The glass qualifies for the energy label in the programme's zone",
        shown: &[Shown::Rule {
            id: "energy-programme",
            says: "With a U-factor of 0.26 and a solar heat gain of 0.4 this unit does not qualify for the label in the zone North-Central.",
        }],
    },
];
