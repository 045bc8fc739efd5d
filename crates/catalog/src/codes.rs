//! Every code that a finding may have, with what it means in one line.
//!
//! `OFF_STEP` is the code of all findings about a size that is not a multiple of the step. Codes are for programs and for
//! looking something up; the message of a finding says more.
//!
//! Always holds: a code that is in this crate is here once, in order of the alphabet (a test compares both ways).
//! Source: our own.

/// The codes, sorted, each with its meaning.
pub const CODES: [(&str, &str); 166] = [
    (
        "ALTERNATE_OF_ALTERNATE",
        "an opening is an alternate to one that is an alternate itself",
    ),
    (
        "AMBIGUOUS_WORD",
        "a word in a cell is an option and a family at once",
    ),
    ("AMOUNT_GIVEN_TWICE", "a price book gives one item two amounts"),
    (
        "AMOUNT_TOO_LARGE",
        "an amount is larger than any that is read; mostly a decimal point was lost",
    ),
    (
        "AMOUNT_WITHOUT_ITEM",
        "a price book gives an amount, sheet or grid for a price item that the catalog does not have",
    ),
    (
        "BAD_AMOUNT",
        "a cell of a price book is no plain amount or percentage",
    ),
    (
        "BAD_ID",
        "an id has letters that ids may not have, or is kept for something else",
    ),
    (
        "BAD_MARK",
        "a cell inside a matrix is neither `x` or `yes` nor `no`, `-` or nothing",
    ),
    (
        "BAD_ROUNDING",
        "a price book or policy rounds to something that is no whole number of the smallest coins",
    ),
    (
        "BOOK_FOR_OTHER_CATALOG",
        "a price book is read with a catalog that it is not for",
    ),
    (
        "BOUNDS_DO_NOT_RISE",
        "the sizes at the edge of a grid do not rise from one to the next",
    ),
    (
        "BYTE_ORDER_MARK",
        "a file begins with a sign that cannot be seen and that some programs write",
    ),
    (
        "CATALOG_ID_DIFFERS",
        "an order calls a catalog by another id than its own",
    ),
    ("CATALOG_IN_INCLUDE", "`[catalog]` stands in an included file"),
    (
        "CATALOG_NOT_USED",
        "an order names a catalog that no opening uses",
    ),
    (
        "CATALOG_NOT_WHOLE",
        "a catalog cannot be put together; a fault of the program",
    ),
    (
        "CONTRADICTION",
        "what is known of one opening cannot be true together: a site check of the catalog says so",
    ),
    (
        "CURRENCY_DIFFERS",
        "a price book is in another currency than the order",
    ),
    ("CURRENCY_UNKNOWN", "a currency is not one of ISO 4217"),
    ("CYCLE", "a thing is worked out from itself"),
    ("DATES_OUT_OF_ORDER", "a time ends before it begins"),
    (
        "DATE_OUT_OF_RANGE",
        "a date lies outside the years that are known",
    ),
    (
        "DEDUCTED_BY_TWO",
        "one has deducted from the width of an opening, another from its height",
    ),
    (
        "DIVISION",
        "a formula divides by zero, or by something that is no written number",
    ),
    (
        "DUPLICATE_COLUMN",
        "two columns of a sheet have one name, or read the same",
    ),
    ("DUPLICATE_ID", "two things of one kind have one id"),
    (
        "DUPLICATE_KEY",
        "a key or heading of a TOML or JSON file stands twice",
    ),
    ("DUPLICATE_PICK", "an attribute is picked twice"),
    ("DUPLICATE_PIN", "an attribute is pinned twice"),
    ("DUPLICATE_ROW", "a pair of a matrix is marked twice"),
    ("DUPLICATE_TAG", "two openings have one tag"),
    ("EMPTY_CELL", "a cell that must say something is empty"),
    ("EMPTY_COLUMN_NAME", "a column of a sheet has no name"),
    ("EMPTY_FILE", "a file is empty"),
    (
        "EMPTY_LIST",
        "a list in an expression is empty, so that nothing is in it",
    ),
    ("EMPTY_RANGE", "a range begins above its end"),
    ("EMPTY_TEXT", "a text that must say something is empty"),
    ("EXAMPLE_DIFFERS", "an example does not come out as it says"),
    (
        "FACTS_DISAGREE",
        "a room and a face say different things about one opening",
    ),
    ("FACT_SCOPE", "a fact is set at a place higher than it may be"),
    (
        "FILE_NOT_FOLDER",
        "a path names a file where a folder is expected",
    ),
    ("FILE_NOT_READABLE", "a file cannot be read"),
    ("FILE_NOT_THERE", "there is no such file"),
    ("FILE_TOO_LARGE", "a file is longer than any that is read"),
    (
        "FOLDER_NOT_FILE",
        "a path names a folder where a file is expected",
    ),
    ("FOLDER_NOT_READABLE", "a folder cannot be read"),
    ("FOLDER_NOT_THERE", "there is no such folder"),
    ("FOLDER_TOO_DEEP", "folders are nested deeper than is read"),
    (
        "GIVEN_TWICE",
        "a measure or a fact is written, and worked out from readings as well",
    ),
    (
        "GRID_AXES_DIFFER",
        "a sheet of a grid has more or fewer axes than the price item",
    ),
    (
        "HIDDEN_STANDARD",
        "a policy hides an option that may be a standard, without setting another",
    ),
    ("INCLUDE_CYCLE", "files include each other in a circle"),
    ("INCLUDE_LEAVES_LIBRARY", "a path leads out of the library"),
    ("INCLUDE_THROUGH_LINK", "a path leads through a link"),
    (
        "ITEM_WITHOUT_AMOUNT",
        "a price book has no amount for a price item of the catalog",
    ),
    ("JSON_GRAMMAR", "a file is not written as JSON must be"),
    ("KEYS_EXCLUDE", "two keys stand together of which only one may"),
    ("LIMIT", "there is more of something than is read"),
    ("MISSING_COLUMN", "a sheet lacks a column"),
    ("MISSING_KEY", "a key that must be there is not"),
    (
        "MORE_FINDINGS",
        "there are more findings of one sheet than are said",
    ),
    (
        "MULLED_NOT_YET",
        "an opening has several units, which are not read yet",
    ),
    ("NAME_NOT_UTF8", "the name of a file or folder is not UTF-8"),
    (
        "NEVER_EQUAL",
        "two attributes without a common option are compared",
    ),
    (
        "NOTHING_TO_CHECK",
        "a folder holds no catalog, price book or policy",
    ),
    ("NOT_ABOVE_ZERO", "a measured size is zero or less"),
    (
        "NOT_AN_ATTRIBUTE",
        "an attribute is expected and something else is named",
    ),
    ("NOT_AN_ORDER", "a file that should be quoted is not an order"),
    (
        "NOT_A_DATE",
        "a date is not written like 2026-11-25, or has a time of day",
    ),
    ("NOT_A_FIGURE", "a figure is expected and something else is named"),
    ("NOT_A_NAME", "something that is no name stands before a dot"),
    ("NOT_A_NUMBER", "a number is no number"),
    ("NOT_A_VALUE", "a name stands for no value of its own"),
    (
        "NOT_CHECKED",
        "something was not checked because what it needs has errors",
    ),
    (
        "NOT_COMMAS",
        "the cells of a sheet are separated by something else than commas",
    ),
    (
        "NOT_DEALER",
        "a rule of a policy has another authority than the dealer's",
    ),
    (
        "NOT_DRAWN",
        "a unit cannot be drawn as `[drawing]` of its catalog says",
    ),
    (
        "NOT_GUARDED",
        "an attribute that may be not asked is read without looking whether it is",
    ),
    (
        "NOT_OF_A_ROOM",
        "a room rule reads in `when` or `message` what may differ from opening to opening",
    ),
    ("NOT_OF_A_SITE", "a site check reads something that is chosen"),
    ("NOT_THERE", "there is no such file or folder"),
    ("NOT_UTF8", "a file is not saved as UTF-8 text"),
    ("NOT_WAIVABLE", "a waiver is for a rule that is not waivable"),
    ("NO_CATALOGS", "a policy is for no catalog"),
    ("NO_COLUMNS", "a sheet has no column to look anything up by"),
    ("NO_HEADER", "a sheet has no row of column names"),
    ("NO_LIBRARY", "a path is in no library"),
    ("NO_OPENINGS", "an order has no opening"),
    ("NO_OPTIONS", "an attribute or fact has no options"),
    ("NO_PARTS", "parts are counted or added up where there are none"),
    (
        "NO_READINGS_HERE",
        "an opening has readings, and its catalog has no measure that is taken from them",
    ),
    ("NO_ROWS", "a table has no rows"),
    ("NO_UNIT", "an opening has no unit"),
    ("NUMBER_TOO_LARGE", "a number is larger than any that is read"),
    ("NUMBER_WITH_EXPONENT", "a number is written like 1.5e3"),
    ("OFF_STEP", "a size is no multiple of the step"),
    (
        "OPTION_WITHOUT_AMOUNT",
        "a sheet of a price book has no row for an option of its attribute",
    ),
    (
        "OTHER_LIBRARY",
        "a book or policy is in another library than its catalog",
    ),
    (
        "OUT_OF_RANGE",
        "a measure or fact is not between the least and the most that is taken",
    ),
    (
        "PART_NOT_SAID",
        "an attribute that each part has is named without its part",
    ),
    (
        "PATH_IS_ABSOLUTE",
        "a path does not start from the folder of its file",
    ),
    ("PATH_IS_EMPTY", "a path is empty"),
    ("PATH_WITH_BACKSLASH", "a path has a backslash"),
    (
        "PERCENT_BELOW_MINUS_100",
        "a percentage takes away more than everything",
    ),
    ("PERCENT_OF_PERCENT", "a percent item is taken of a percent item"),
    (
        "PICK_ON_PLANT",
        "an attribute that the plant determines is picked",
    ),
    ("PIN_WITHOUT_PICK", "an attribute is pinned and not picked"),
    (
        "PLANT_ASKS",
        "an attribute for the plant has `ask` as its standard",
    ),
    (
        "PLANT_IN_POLICY",
        "a policy changes an attribute that the plant determines",
    ),
    (
        "POLICY_FOR_OTHER_CATALOG",
        "a policy is read with a catalog that it is not for",
    ),
    (
        "POLICY_NOT_WHOLE",
        "a policy cannot be put together; a fault of the program",
    ),
    ("QUANTITY_OUT_OF_RANGE", "a quantity is below one or too large"),
    (
        "RAGGED_ROW",
        "a row of a sheet has more or fewer cells than the header",
    ),
    ("RANGE_WITHOUT_ORDER", "a range of something that has no order"),
    (
        "READINGS_DIFFER",
        "readings of one opening lie further apart than is common, or it is out of plumb or level",
    ),
    (
        "READINGS_IMPOSSIBLE",
        "no opening has these readings: a size that cannot be one, diagonals that do not go with the sides",
    ),
    (
        "ROOM_FACT_DIFFERS",
        "an opening says something else than its room of what a rule over the room reads",
    ),
    (
        "ROWS_MEET",
        "two rows of a table match at once where only one may",
    ),
    (
        "RULE_WITHOUT_EXAMPLE",
        "no example breaks a rule and nothing else",
    ),
    (
        "STANDARD_NOT_USED",
        "a policy sets the standard of a later part, which is what stands at the first",
    ),
    (
        "SYNTAX",
        "a condition, formula, message or cell is not written as it must be",
    ),
    ("TABLE_CONTRADICTS", "a table gives one key two values"),
    (
        "TAKEN_ALONE",
        "a measure is the width of raw readings and none is the height, or the other way round",
    ),
    ("TAKEN_TWICE", "two measures are the same side of raw readings"),
    ("TEXT_AFTER_QUOTE", "a cell goes on after its closing quote"),
    ("TOML_GRAMMAR", "a file is not written as TOML must be"),
    ("TOO_DEEP", "lists and tables are nested too deeply"),
    ("TOO_MANY_FOLDERS", "a library has more folders than are read"),
    (
        "TOO_MANY_READINGS",
        "there are more readings of one thing than are taken",
    ),
    ("TOO_MANY_ROWS", "a sheet has more rows than are read"),
    (
        "UNCLEAR_TEXT",
        "nothing says whether a text is an option, a size or a date",
    ),
    (
        "UNCLOSED_QUOTE",
        "a cell begins with a quote and does not end with one",
    ),
    ("UNKNOWN_ATTRIBUTE", "there is no such attribute"),
    ("UNKNOWN_AUTHORITY", "there is no such authority"),
    (
        "UNKNOWN_BOOK",
        "there is no such price book, or it is for another catalog",
    ),
    ("UNKNOWN_CATALOG", "there is no such catalog"),
    (
        "UNKNOWN_COLUMN",
        "a sheet of a price book has a column that it should not have",
    ),
    ("UNKNOWN_FACE", "an order has no such face"),
    ("UNKNOWN_FACT", "there is no such site fact"),
    ("UNKNOWN_FAMILY", "no option is in such a family"),
    ("UNKNOWN_FLOOR", "an order has no such floor"),
    ("UNKNOWN_FORMAT", "`format` is missing, or is not 1"),
    ("UNKNOWN_FUNCTION", "there is no such function"),
    ("UNKNOWN_ITEM", "there is no such price item"),
    ("UNKNOWN_KEY", "a key is not known here"),
    ("UNKNOWN_MEASURE", "there is no such measure"),
    (
        "UNKNOWN_MEMBER",
        "a name has no such part or property after its dot",
    ),
    ("UNKNOWN_NAME", "nothing in the catalog has this name"),
    ("UNKNOWN_NOTICE", "there is no such notice"),
    ("UNKNOWN_OPENING", "an order has no such opening"),
    ("UNKNOWN_OPTION", "an attribute has no such option"),
    ("UNKNOWN_OPTION_LIST", "there is no such option list"),
    ("UNKNOWN_PART_KIND", "no part is of such a kind"),
    ("UNKNOWN_PROPERTY", "no option has such a property"),
    ("UNKNOWN_ROOM", "an order has no such room"),
    ("UNKNOWN_RULE", "there is no such rule"),
    ("UNKNOWN_WORD", "a word is not one of those that may stand here"),
    ("UNUSED_OPTION_LIST", "no attribute uses an option list"),
    (
        "WAIVABLE_LAW",
        "a rule of the code or a programme is waivable, which no dealer can waive",
    ),
    ("WRONG_ARGUMENTS", "a function is given what it does not take"),
    ("WRONG_COUNT", "the quantity of a price item is not a number"),
    (
        "WRONG_DIVIDERS",
        "a layout of a drawing is divided at more or fewer places than its panels meet",
    ),
    (
        "WRONG_KIND_OF_AMOUNT",
        "a price book gives an amount where the catalog wants a sheet or grid, or the other way round",
    ),
    (
        "WRONG_NUMBER_OF_AXES",
        "a grid has more or fewer lower ends than axes",
    ),
    ("WRONG_TYPE", "a value is of another type than is expected"),
    (
        "WRONG_VALUE",
        "a value is of the right type and cannot be read, or may not be this",
    ),
];

#[cfg(test)]
mod tests;
