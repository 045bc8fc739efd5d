//! One row a recipe: its title, and what a person reads of it.

/// A recipe of the page.
pub(crate) struct Row {
    /// The group that it stands in.
    pub(crate) group: &'static str,
    /// Its title.
    pub(crate) title: &'static str,
    /// What it shows.
    pub(crate) shown: &'static [Shown],
}

/// One thing that a recipe shows.
pub(crate) enum Shown {
    /// A rule that an example breaks, with what is said then; an example beside it holds.
    Rule {
        /// The id, of a declared or an implicit rule.
        id: &'static str,
        /// The whole message.
        says: &'static str,
    },
    /// A notice that an example carries; one beside it does not.
    Notice {
        /// The id.
        id: &'static str,
    },
    /// What two examples that differ in one thing come to.
    Totals([&'static str; 2]),
    /// An order, quoted by the program.
    Order {
        /// Its name on the page.
        name: &'static str,
        /// The exit code.
        code: i32,
        /// Pieces of the answer, in order.
        pieces: &'static [&'static str],
    },
}

impl Shown {
    /// The id of a rule or a notice that the recipe declares; implicit rules have a full stop.
    pub(crate) fn declared(&self) -> Option<&'static str> {
        match *self {
            Self::Rule { id, .. } | Self::Notice { id } if !id.contains('.') => Some(id),
            _ => None,
        }
    }
}

/// The recipes, in the order of the page.
pub(crate) const ROWS: [Row; 50] = [
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
            says: "Check the glass: its edge is 59 15/16 in above the floor and 60 in from a tub, shower or the like, which calls for safety glass in every sash. Local code governs.",
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
            says: "Check the wind: at this size the unit is graded 30; the house asks for 40 lb/ft2. Local code governs.",
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
        title: "An escape opening is 5.7 square feet clear, 5.0 at a grade-floor opening",
        shown: &[Shown::Rule {
            id: "escape-area",
            says: "Check the escape opening: 32 in by 25 5/8 in clear is 5.6944… sq ft; 5.7 sq ft is asked for, 5.0 at a grade-floor opening. A replacement may be excused: ask the building department.",
        }],
    },
    Row {
        group: "Escape",
        title: "An escape opening is 20 inches wide and 24 inches high, both clear",
        shown: &[
            Shown::Rule {
                id: "escape-width",
                says: "Check the escape opening: it is clear to a width of 19 15/16 in; 20 in is asked for. A replacement may be excused: ask the building department.",
            },
            Shown::Rule {
                id: "escape-height",
                says: "Check the escape opening: it is clear to a height of 23 15/16 in; 24 in is asked for. A replacement may be excused: ask the building department.",
            },
        ],
    },
    Row {
        group: "Escape",
        title: "The bottom of an escape opening is at most 44 inches above the floor",
        shown: &[Shown::Rule {
            id: "escape-bottom",
            says: "Check the escape opening: the bottom of its clear opening is 44 1/16 in above the floor; at most 44 in is asked for. A replacement may be excused: ask the building department.",
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
        title: "A replacement that opens less than the old window is a question for the building department",
        shown: &[Shown::Rule {
            id: "opens-less-than-before",
            says: "Ask the building department: this escape opening of 8 sq ft is of another kind than the old one and opens less than its 8.1 sq ft.",
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
        shown: &[Shown::Totals(["92.50", "90.00"]), Shown::Totals(["90.00", "45.00"])],
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
