//! The cases: a title in the words of the person, the mistake, the code of the finding, and a word where that is not enough.

/// Cases of one place.
pub(crate) struct Group {
    pub(crate) title: &'static str,
    pub(crate) cases: &'static [Case],
}

/// One mistake in one file.
pub(crate) struct Case {
    pub(crate) title: &'static str,
    pub(crate) file: &'static str,
    pub(crate) edit: Edit,
    /// The code of the one finding.
    pub(crate) code: &'static str,
    /// What to do, where the finding does not say it all; else nothing.
    pub(crate) advice: &'static str,
}

/// How a mistake comes into a file.
pub(crate) enum Edit {
    /// This stands there instead of that.
    Replace(&'static str, &'static str),
    /// The same, wherever it stands.
    All(&'static str, &'static str),
    /// The file begins with a byte-order mark.
    Mark,
    /// The file is saved as UTF-16.
    Utf16,
}

const fn case(
    title: &'static str,
    file: &'static str,
    (find, with): (&'static str, &'static str),
    code: &'static str,
) -> Case {
    Case {
        title,
        file,
        edit: Edit::Replace(find, with),
        code,
        advice: "",
    }
}

impl Case {
    const fn advice(mut self, advice: &'static str) -> Case {
        self.advice = advice;
        self
    }

    const fn edit(mut self, edit: Edit) -> Case {
        self.edit = edit;
        self
    }
}

const CATALOG: &str = "hinged/catalog.toml";
const PAIRS: &str = "hinged/colour-pairs.csv";
const DEDUCTIONS: &str = "hinged/deductions.csv";
const DRAWING: &str = "hinged/drawing.toml";
const EXAMPLES: &str = "hinged/examples.toml";
const BOOK: &str = "books/hinged-2026/book.toml";
const AMOUNTS: &str = "books/hinged-2026/amounts.csv";
const GRID: &str = "books/hinged-2026/base.csv";
const SHEET: &str = "books/hinged-2026/glass.csv";
const POLICY: &str = "policies/corner-shop/policy.toml";
const ORDER: &str = "order.toml";

pub(crate) const GROUPS: &[Group] = &[
    Group {
        title: "How a file is written",
        cases: WRITTEN,
    },
    Group {
        title: "Names and options in a catalog",
        cases: NAMES,
    },
    Group {
        title: "Conditions and formulas",
        cases: CONDITIONS,
    },
    Group {
        title: "Sheets saved by a spreadsheet",
        cases: SHEETS,
    },
    Group {
        title: "What a table says",
        cases: TABLES,
    },
    Group {
        title: "The price book",
        cases: PRICES,
    },
    Group {
        title: "Examples that do not come out",
        cases: PROOFS,
    },
    Group {
        title: "The dealer policy",
        cases: DEALER,
    },
    Group {
        title: "The order",
        cases: ORDERS,
    },
];

const WRITTEN: &[Case] = &[
    case(
        "The file was saved with a byte-order mark",
        CATALOG,
        ("", ""),
        "BYTE_ORDER_MARK",
    )
    .edit(Edit::Mark),
    case(
        "A quote is not closed",
        CATALOG,
        ("label = \"Glass\"", "label = \"Glass"),
        "TOML_GRAMMAR",
    ),
    case(
        "A bracket is not closed",
        CATALOG,
        (
            "{ id = \"triple\", label = \"Triple\" }]",
            "{ id = \"triple\", label = \"Triple\" }",
        ),
        "TOML_GRAMMAR",
    ),
    case(
        "A comma is missing between two options",
        CATALOG,
        ("label = \"Double\" },", "label = \"Double\" }"),
        "TOML_GRAMMAR",
    ),
    case(
        "Yes instead of true",
        CATALOG,
        ("waivable = true", "waivable = yes"),
        "TOML_GRAMMAR",
    ),
    case(
        "A word processor made the quotes curly",
        CATALOG,
        ("label = \"Glass\"", "label = “Glass”"),
        "TOML_GRAMMAR",
    ),
    case(
        "One bracket instead of two",
        CATALOG,
        ("[[attribute]]\nid = \"glass\"", "[attribute]\nid = \"glass\""),
        "DUPLICATE_KEY",
    )
    .advice("One bracket makes one thing, two make one more in a list."),
    case(
        "A key is misspelt",
        CATALOG,
        ("standard = \"white\"", "standart = \"white\""),
        "UNKNOWN_KEY",
    ),
    case(
        "A heading is misspelt",
        CATALOG,
        ("[[attribute]]\nid = \"glass\"", "[[atribute]]\nid = \"glass\""),
        "UNKNOWN_KEY",
    ),
    case(
        "A label is forgotten",
        CATALOG,
        ("id = \"glass\"\nlabel = \"Glass\"\n", "id = \"glass\"\n"),
        "MISSING_KEY",
    ),
    case(
        "A file that is included has another name",
        CATALOG,
        ("common/colours.toml", "common/colors.toml"),
        "FILE_NOT_THERE",
    ),
];

const NAMES: &[Case] = &[
    case(
        "An option is misspelt",
        CATALOG,
        ("glass == \"triple\"", "glass == \"tripel\""),
        "UNKNOWN_OPTION",
    ),
    case(
        "An attribute is misspelt",
        CATALOG,
        ("'glass == \"triple\"'", "'glas == \"triple\"'"),
        "UNKNOWN_NAME",
    ),
    case(
        "A name in a message is misspelt",
        CATALOG,
        ("this one is {unit_width}", "this one is {unit_with}"),
        "UNKNOWN_NAME",
    ),
    case(
        "An id with a space",
        "hinged/prices.toml",
        ("id = \"delivery\"", "id = \"Delivery fee\""),
        "BAD_ID",
    ),
    case(
        "A block was copied and its id left as it was",
        CATALOG,
        (
            "[[measure]]\nid = \"opening_height\"\nlabel = \"Opening height\"\n",
            "[[measure]]\nid = \"opening_height\"\nlabel = \"Opening height\"\n\n[[measure]]\nid = \"opening_height\"\nlabel = \"Sill height\"\n",
        ),
        "DUPLICATE_ID",
    ),
];

const CONDITIONS: &[Case] = &[
    case("One equals sign instead of two", CATALOG, ("glass == \"triple\"", "glass = \"triple\""), "SYNTAX"),
    case("And instead of &&", CATALOG, ("\"15\" && unit_width", "\"15\" and unit_width"), "SYNTAX"),
    case("An option without quotes", CATALOG, ("glass == \"triple\"", "glass == triple"), "UNKNOWN_NAME"),
    case("A size without quotes", CATALOG, ("unit_width <= \"36\"", "unit_width <= 36"), "WRONG_TYPE"),
    case("An area without its unit", CATALOG, ("\"20 ft2\"", "\"20\""), "WRONG_VALUE"),
    case("A comma for a decimal point", CATALOG, ("unit_width <= \"36\"", "unit_width <= \"36,5\""), "WRONG_VALUE"),
    case("Two figures are worked out from each other", CATALOG,
        ("formula = 'opening_width - deduction'", "formula = 'max(unit_height, opening_width - deduction)'"), "CYCLE")
        .edit(Edit::Replace(
            "formula = 'opening_width - deduction'\n\n[[figure]]\nid = \"unit_height\"\nlabel = \"Unit height\"\nformula = 'opening_height - deduction'",
            "formula = 'min(unit_height, opening_width - deduction)'\n\n[[figure]]\nid = \"unit_height\"\nlabel = \"Unit height\"\nformula = 'max(unit_width, opening_height - deduction)'",
        )),
];

const SHEETS: &[Case] = &[
    case(
        "A spreadsheet turned 5/8 into a date",
        DEDUCTIONS,
        ("5/8", "8-May"),
        "WRONG_VALUE",
    )
    .advice("Format the whole column as text before anything is typed into it."),
    case(
        "The sheet was saved with semicolons",
        GRID,
        ("", ""),
        "NOT_COMMAS",
    )
    .edit(Edit::All(",", ";")),
    case(
        "Decimal commas split the cells",
        GRID,
        ("225.00", "225,00"),
        "RAGGED_ROW",
    ),
    case(
        "A comma between thousands",
        GRID,
        ("1200.00", "\"1,200.00\""),
        "BAD_AMOUNT",
    ),
    case("The sheet was saved as UTF-16", PAIRS, ("", ""), "NOT_UTF8").edit(Edit::Utf16),
    case(
        "A formula failed in the spreadsheet",
        GRID,
        ("225.00", "#REF!"),
        "BAD_AMOUNT",
    ),
    case(
        "Merged cells left empty ones",
        PAIRS,
        ("pine,white|grey", "pine,white\n,grey"),
        "EMPTY_CELL",
    ),
];

const TABLES: &[Case] = &[
    case(
        "A column has a label for its name",
        PAIRS,
        ("interior,exterior", "interior,Exterior colour"),
        "UNKNOWN_NAME",
    ),
    case(
        "An option in a cell is misspelt",
        PAIRS,
        ("white|grey", "white|gray"),
        "UNKNOWN_OPTION",
    ),
    case(
        "Several options with a slash between",
        PAIRS,
        ("white|grey", "white/grey"),
        "UNKNOWN_OPTION",
    ),
    case(
        "A range with a hyphen",
        DEDUCTIONS,
        (
            "operation,deduction\ncasement,5/8\nfixed,1/2",
            "operation,opening_width,deduction\ncasement,15-36,5/8\nfixed,*,1/2",
        ),
        "WRONG_VALUE",
    ),
    case(
        "Two ranges meet at their ends",
        DEDUCTIONS,
        (
            "operation,deduction\ncasement,5/8\nfixed,1/2",
            "operation,opening_width,deduction\ncasement,..36,5/8\ncasement,36..,1/2\nfixed,*,1/2",
        ),
        "ROWS_MEET",
    )
    .advice("`36<..` begins above 36."),
    case(
        "One key with two values",
        DEDUCTIONS,
        ("fixed,1/2", "fixed,1/2\nfixed,3/8"),
        "TABLE_CONTRADICTS",
    ),
    case(
        "The column with the values has another name",
        DEDUCTIONS,
        ("operation,deduction", "operation,deductions"),
        "MISSING_COLUMN",
    ),
];

const PRICES: &[Case] = &[
    case(
        "A price item has no amount",
        AMOUNTS,
        ("delivery,13.00\n", ""),
        "ITEM_WITHOUT_AMOUNT",
    ),
    case(
        "A price item is misspelt in the amounts",
        AMOUNTS,
        ("delivery", "delivry"),
        "AMOUNT_WITHOUT_ITEM",
    ),
    case(
        "A price item of the book is not in the catalog",
        AMOUNTS,
        ("delivery,13.00", "delivery,13.00\nscaffold,80.00"),
        "AMOUNT_WITHOUT_ITEM",
    ),
    case(
        "A currency sign in an amount",
        SHEET,
        ("96.00", "$96.00"),
        "BAD_AMOUNT",
    ),
    case(
        "A percentage lost its sign",
        AMOUNTS,
        ("10.5 %", "0.105"),
        "BAD_AMOUNT",
    ),
    case(
        "The sizes of a grid do not rise",
        GRID,
        ("48 1/4,60,72", "48 1/4,72,60"),
        "BOUNDS_DO_NOT_RISE",
    ),
    case(
        "A book for another catalog",
        BOOK,
        ("catalog = \"hinged\"", "catalog = \"hingd\""),
        "UNKNOWN_CATALOG",
    ),
];

const PROOFS: &[Case] = &[
    case("An example breaks something else", EXAMPLES, ("opening_width = \"37\"", "opening_width = \"35\""), "EXAMPLE_DIFFERS"),
    case("A total has changed", EXAMPLES, ("amount = \"225.00\"", "amount = \"224.00\""), "EXAMPLE_DIFFERS")
        .advice("Is the amount in the book right, or the example? The one that is wrong is to be changed."),
    case("A unit cannot be drawn", DRAWING, ("sash = '\"2\"'", "sash = '\"20\"'"), "NOT_DRAWN"),
    case("A rule has no example", EXAMPLES, ("breaks = [\"no-big-triple\"]", ""), "RULE_WITHOUT_EXAMPLE")
        .edit(Edit::Replace(
            "[[example]]\nid = \"big-triple\"\npicks = [{ attribute = \"operation\", option = \"fixed\" }, { attribute = \"glass\", option = \"triple\" }]\nmeasures = { opening_width = \"60\", opening_height = \"60\" }\ndate = 2026-11-25\nbreaks = [\"no-big-triple\"]\n",
            "",
        )),
];

const DEALER: &[Case] = &[
    case(
        "A policy hides the standard",
        POLICY,
        ("option = \"green\"", "option = \"white\""),
        "HIDDEN_STANDARD",
    ),
    case(
        "A mark-up with a percent sign",
        POLICY,
        ("percent = 25", "percent = \"25 %\""),
        "WRONG_VALUE",
    ),
];

const ORDERS: &[Case] = &[
    case(
        "A date is written month first",
        ORDER,
        ("date = 2026-11-25", "date = 11/25/2026"),
        "TOML_GRAMMAR",
    ),
    case(
        "The date is forgotten",
        ORDER,
        ("date = 2026-11-25\n", ""),
        "MISSING_KEY",
    ),
    case(
        "An inch mark in a size",
        ORDER,
        ("size = \"30 5/8\"", "size = \"30 5/8\"\""),
        "TOML_GRAMMAR",
    ),
    case(
        "A size between two steps",
        ORDER,
        ("size = \"30 5/8\"", "size = \"30.6\""),
        "OFF_STEP",
    ),
    case(
        "An option that is not there",
        ORDER,
        ("option = \"grey\"", "option = \"gray\""),
        "UNKNOWN_OPTION",
    ),
    case(
        "Two openings with one tag",
        ORDER,
        (
            "[[opening]]\n",
            "[[opening]]\ntag = \"K1\"\nroom = \"kitchen\"\nface = \"front\"\nmeasures = {}\n\n[[opening.unit]]\ncatalog = \"hinged\"\npicks = []\n\n[[opening]]\n",
        ),
        "DUPLICATE_TAG",
    ),
    case(
        "A waiver for a rule that is not waivable",
        ORDER,
        ("rule = \"casement-width\"", "rule = \"colour-pairs\""),
        "NOT_WAIVABLE",
    ),
    case(
        "A price book in another currency",
        ORDER,
        ("currency = \"USD\"", "currency = \"CAD\""),
        "CURRENCY_DIFFERS",
    ),
];
