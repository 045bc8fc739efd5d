//! Rows of the unit itself: sizes, glass, structure, hardware, screens, grilles, colours.

use super::{Row, Shown};

/// Them, in the order of the page.
pub(super) const ROWS: &[Row] = &[
    Row {
        group: "Sizes",
        title: "A casement is 15 3/8 to 37 7/8 inches wide",
        shown: &[Shown::Rule {
            id: "casement-width",
            says: "A casement is 15 3/8 to 37 7/8 in wide; this one is 37 15/16 in.",
        }],
    },
    Row {
        group: "Sizes",
        title: "A fixed window has at most 40 square feet, unless the plant waives it",
        shown: &[Shown::Rule {
            id: "fixed-area",
            says: "A fixed unit is made up to 40 sq ft; this one is 40.0260… sq ft. The plant may waive this after looking at it.",
        }],
    },
    Row {
        group: "Sizes",
        title: "An awning is at least three fifths as wide as it is high",
        shown: &[Shown::Rule {
            id: "awning-shape",
            says: "An awning 29 15/16 in wide and 50 in high binds: its width is at least 0.6 of its height.",
        }],
    },
    Row {
        group: "Sizes",
        title: "A hung window has at most 130 united inches, each side rounded up first",
        shown: &[Shown::Rule {
            id: "hung-united-inches",
            says: "A hung unit has at most 130 united inches; 40 1/4 in by 89 1/4 in has 131 in, each side rounded up.",
        }],
    },
    Row {
        group: "Sizes",
        title: "The wider a slider is, the lower it is made",
        shown: &[Shown::Rule {
            id: "slider-size",
            says: "A slider 72 1/16 in wide is not made 60 in high.",
        }],
    },
    Row {
        group: "Glass",
        title: "Glass within 60 inches of a tub must be safety glass",
        shown: &[Shown::Rule {
            id: "safety-wet-place",
            says: "Check the glass: its edge is 59 15/16 in above where one stands and 60 in from a tub, shower or the like, which calls for safety glass in every sash. Local code governs.",
        }],
    },
    Row {
        group: "Glass",
        title: "A large pane near the floor where people walk must be safety glass",
        shown: &[Shown::Rule {
            id: "safety-large-pane",
            says: "Check the glass: a pane of 9.0156… sq ft with its edge 17 15/16 in above the floor, near where people walk, calls for safety glass. Local code governs.",
        }],
    },
    Row {
        group: "Glass",
        title: "Krypton goes into triple glass only",
        shown: &[Shown::Rule {
            id: "gas-and-glass",
            says: "Krypton is not filled into Double, low-e.",
        }],
    },
    Row {
        group: "Glass",
        title: "Bigger panes need thicker glass",
        shown: &[Shown::Rule {
            id: "thickness-for-area",
            says: "A pane of 12.0156… sq ft is made from 3/16 in up, not from 1/8 in.",
        }],
    },
    Row {
        group: "Glass",
        title: "Obscure glass above and clear glass below is probably a slip",
        shown: &[Shown::Rule {
            id: "obscure-above-clear-below",
            says: "The upper sash is obscure and the lower is clear: is that meant?",
        }],
    },
    Row {
        group: "Structure",
        title: "A dark frame above 15 square feet is reinforced, and then takes no foam",
        shown: &[Shown::Rule {
            id: "steel-or-foam",
            says: "A frame of 15.0156… sq ft in Black is reinforced with steel, which leaves no room for foam.",
        }],
    },
    Row {
        group: "Structure",
        title: "The sash weighs no more than its hinges carry",
        shown: &[Shown::Rule {
            id: "hinge-weight",
            says: "Check the weight: the sash weighs 58.7466… lb, more than the hinges (Ordinary) carry.",
        }],
    },
    Row {
        group: "Structure",
        title: "The performance grade at this size is enough for the wind at this house",
        shown: &[Shown::Rule {
            id: "wind-grade",
            says: "Check the wind: at this size the unit is graded 30; at 130 mph the grade to look for is 40. Local code governs.",
        }],
    },
    Row {
        group: "Structure",
        title: "The plant signs off an awning above 25 square feet",
        shown: &[Shown::Rule {
            id: "large-awning",
            says: "An awning of 25.0260… sq ft: the plant signs off how it is hung and shipped.",
        }],
    },
    Row {
        group: "Hardware",
        title: "A casement wider than 30 inches gets two locks",
        shown: &[Shown::Rule {
            id: "locks-by-width",
            says: "A casement wider than 30 in gets two locks; this one is 30 1/16 in wide with One lock.",
        }],
    },
    Row {
        group: "Hardware",
        title: "The folding handle is not made in plated finishes",
        shown: &[Shown::Rule {
            id: "handle-and-finish",
            says: "The handle (Folding crank) is not made in Satin nickel.",
        }],
    },
    Row {
        group: "Hardware",
        title: "The hinge side is asked of a casement only, and always asked",
        shown: &[Shown::Rule {
            id: "hinge_side.applies",
            says: "Hinge side, seen from outside is not asked here, but Left is chosen for it.",
        }],
    },
    Row {
        group: "Hardware",
        title: "A retired sash lift is honoured for quotes given in time",
        shown: &[
            Shown::Rule {
                id: "sash_lift.offered",
                says: "Hook (Sash lift) was offered until 2026-06-30. Rail replaces it.",
            },
            Shown::Order {
                name: "honoured",
                code: 4,
                pieces: &[
                    "A quantity 1",
                    "holds",
                    "is honoured until 2026-12-31",
                    "B quantity 1",
                    "does not hold",
                    "Rail replaces it.",
                ],
            },
        ],
    },
    Row {
        group: "Screens",
        title: "A screen colour follows the exterior",
        shown: &[Shown::Rule {
            id: "screen-colour",
            says: "A screen frame in White does not go with Bronze outside.",
        }],
    },
    Row {
        group: "Screens",
        title: "Screens stand inside where the sash swings out, and outside where it slides",
        shown: &[Shown::Rule {
            id: "screen-side",
            says: "A screen Outside is in the way of this sash (Awning).",
        }],
    },
    Row {
        group: "Screens",
        title: "A screen holds nobody, and the quote says so",
        shown: &[Shown::Notice {
            id: "screen-holds-nobody",
        }],
    },
    Row {
        group: "Grilles",
        title: "Panes between the bars are at least 4 inches wide",
        shown: &[Shown::Rule {
            id: "bar-spacing",
            says: "Colonial on glass 15 15/16 in wide leaves less than 4 in between the bars.",
        }],
    },
    Row {
        group: "Grilles",
        title: "Bars between the panes leave 1/16 inch to the glass",
        shown: &[Shown::Rule {
            id: "bar-in-the-gap",
            says: "A bar (Contour) does not fit between the panes of Triple, low-e.",
        }],
    },
    Row {
        group: "Grilles",
        title: "A grille is not put into a sash of obscure glass",
        shown: &[Shown::Rule {
            id: "grille-and-obscure-glass",
            says: "Prairie does not show in Frosted glass, and is not made.",
        }],
    },
    Row {
        group: "Colours",
        title: "Colours come in pairs, and only the listed pairs are made",
        shown: &[Shown::Rule {
            id: "colour-pairs",
            says: "Almond inside is not made with Bronze outside.",
        }],
    },
    Row {
        group: "Colours",
        title: "Sage is sold at the coast only",
        shown: &[Shown::Rule {
            id: "regional-sage",
            says: "Sage is sold at the coast only; this house is in the region inland.",
        }],
    },
    Row {
        group: "Colours",
        title: "At most two colours on one unit",
        shown: &[Shown::Rule {
            id: "two-colours",
            says: "White inside, Black outside and Satin nickel hardware are 3 colours: is that meant?",
        }],
    },
    Row {
        group: "Colours",
        title: "This dealer does not sell black outside",
        shown: &[Shown::Order {
            name: "hill-street",
            code: 4,
            pieces: &[
                "A quantity 1",
                "does not hold",
                "Black (Exterior colour) is not sold by this dealer.",
                "B quantity 1",
                "holds",
                "Exterior colour: Almond",
            ],
        }],
    },
];
