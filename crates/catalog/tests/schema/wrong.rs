//! Mistakes that people make, each refused by the schema and by the reader.

use astragal_catalog::finding::Finding;
use astragal_catalog::schema::{SchemaKind, schema};

use crate::files::as_json;
use crate::reader::{findings, said};

const LIBRARY: &str = "format = 1\n[library]\nid = \"small\"\nlabel = \"Small\"\n";
const CATALOG: &str = "format = 1\n[catalog]\nid = \"hinged\"\nlabel = \"Hinged\"\nlength = { unit = \"in\", step = \"1/16\" }\n";
const BOOK: &str = "format = 1\n[book]\nid = \"b\"\nlabel = \"B\"\ncatalog = \"hinged\"\ncurrency = \"USD\"\nround_to = \"0.01\"\n";
const POLICY: &str = "format = 1\n[policy]\nid = \"p\"\nlabel = \"P\"\ncatalogs = [\"hinged\"]\n";
const ORDER: &str = "format = 1\n[order]\nid = \"1\"\ndate = 2026-11-25\ncurrency = \"USD\"\n[[catalog]]\nid = \"hinged\"\nfolder = \"hinged\"\nbook = \"book\"\n";
const UNIT: &str = "[[opening.unit]]\ncatalog = \"hinged\"\n";

const RULE: &str = "[[rule]]\nid = \"r\"\nmessage = \"No.\"\n";
const FIGURE: &str = "[[figure]]\nid = \"f\"\nlabel = \"F\"\n";
const PRICE: &str = "[[price]]\nid = \"p\"\nlabel = \"P\"\n";
const ATTRIBUTE: &str = "[[attribute]]\nid = \"a\"\nlabel = \"A\"\nstandard = \"x\"\n";

fn start(kind: SchemaKind) -> &'static str {
    match kind {
        SchemaKind::Library => LIBRARY,
        SchemaKind::Catalog => CATALOG,
        SchemaKind::Book => BOOK,
        SchemaKind::Policy => POLICY,
        SchemaKind::Order => ORDER,
    }
}

/// Which mistake, in which file, and the lines that make it.
#[expect(clippy::too_many_lines, reason = "a table of named rows")]
fn rows() -> Vec<(&'static str, SchemaKind, String)> {
    use SchemaKind::{Book, Catalog, Library, Order, Policy};
    let opening = |lines: &str| format!("[[opening]]\ntag = \"K1\"\n{lines}{UNIT}");
    vec![
        ("an unknown key", Library, "colour = \"red\"".to_owned()),
        ("an unknown table", Library, "[catalogue]".to_owned()),
        ("a misspelt table", Catalog, "[[atribute]]\nid = \"a\"".to_owned()),
        (
            "a table that should be a list",
            Catalog,
            "[rule]\nid = \"r\"".to_owned(),
        ),
        ("a rule without anything to hold", Catalog, RULE.to_owned()),
        (
            "a rule by condition and by table",
            Catalog,
            format!("{RULE}require = \"1 == 1\"\ntable = \"t.csv\"\nrows = \"allowed\""),
        ),
        (
            "a rule's table without rows",
            Catalog,
            format!("{RULE}table = \"t.csv\""),
        ),
        (
            "a matrix without down",
            Catalog,
            format!("{RULE}table = \"t.csv\"\nrows = \"allowed\"\nlayout = \"matrix\"\nacross = \"a\""),
        ),
        (
            "a list with down",
            Catalog,
            format!("{RULE}table = \"t.csv\"\nrows = \"allowed\"\ndown = \"a\""),
        ),
        (
            "a condition with layout",
            Catalog,
            format!("{RULE}require = \"1 == 1\"\nlayout = \"list\""),
        ),
        (
            "an effect that is none",
            Catalog,
            format!("{RULE}require = \"1 == 1\"\neffect = \"forbid\""),
        ),
        (
            "a yes in quotes",
            Catalog,
            format!("{RULE}require = \"1 == 1\"\nwaivable = \"yes\""),
        ),
        (
            "a rule without a message",
            Catalog,
            "[[rule]]\nid = \"r\"\nrequire = \"1 == 1\"".to_owned(),
        ),
        ("a figure by nothing", Catalog, FIGURE.to_owned()),
        (
            "a figure by both",
            Catalog,
            format!("{FIGURE}formula = \"1\"\ntable = \"t.csv\""),
        ),
        (
            "a formula with keys",
            Catalog,
            format!("{FIGURE}formula = \"1\"\nkeys = [\"a\"]"),
        ),
        (
            "a yes or no from a table",
            Catalog,
            format!("{FIGURE}table = \"t.csv\"\ntype = \"bool\""),
        ),
        (
            "a price by two ways",
            Catalog,
            format!("{PRICE}by = [\"a\"]\npercent_of = [\"q\"]"),
        ),
        ("a grid without axes", Catalog, format!("{PRICE}grid = \"g\"")),
        (
            "a grid with three axes",
            Catalog,
            format!("{PRICE}grid = \"g\"\naxes = [\"a\", \"b\", \"c\"]"),
        ),
        ("axes without a grid", Catalog, format!("{PRICE}axes = [\"a\"]")),
        (
            "so many times a percentage",
            Catalog,
            format!("{PRICE}percent_of = [\"q\"]\nquantity = \"2\""),
        ),
        ("a price by no attribute", Catalog, format!("{PRICE}by = []")),
        ("an attribute without options", Catalog, ATTRIBUTE.to_owned()),
        (
            "no options in the list",
            Catalog,
            format!("{ATTRIBUTE}options = []"),
        ),
        (
            "an option with a capital",
            Catalog,
            format!("{ATTRIBUTE}options = [{{ id = \"White\" }}]"),
        ),
        (
            "an option without an id",
            Catalog,
            format!("{ATTRIBUTE}options = [{{ label = \"White\" }}]"),
        ),
        (
            "a month that is none",
            Catalog,
            format!("{ATTRIBUTE}options = [{{ id = \"x\", offered_until = \"2026-13-01\" }}]"),
        ),
        (
            "a hyphen in a name",
            Catalog,
            "[[measure]]\nid = \"opening-width\"\nlabel = \"W\"".to_owned(),
        ),
        (
            "a decimal comma",
            Catalog,
            "[[measure]]\nid = \"w\"\nlabel = \"W\"\nstep = \"0,5\"".to_owned(),
        ),
        (
            "options of a yes or no",
            Catalog,
            "[[site_fact]]\nid = \"s\"\nlabel = \"S\"\nof = \"house\"\ntype = \"bool\"\noptions = [\"x\"]"
                .to_owned(),
        ),
        (
            "an enumeration of nothing",
            Catalog,
            "[[site_fact]]\nid = \"s\"\nlabel = \"S\"\nof = \"house\"\ntype = \"enumeration\"".to_owned(),
        ),
        (
            "an example without a date",
            Catalog,
            "[[example]]\nid = \"e\"".to_owned(),
        ),
        (
            "a sheet without its item",
            Book,
            "[[sheet]]\ntable = \"s.csv\"".to_owned(),
        ),
        (
            "a step of both kinds",
            Book,
            "[[tail]]\nid = \"t\"\nlabel = \"T\"\nflat = \"1\"\npercent = 2".to_owned(),
        ),
        (
            "a step of no kind",
            Book,
            "[[tail]]\nid = \"t\"\nlabel = \"T\"".to_owned(),
        ),
        (
            "money with its sign",
            Book,
            "[[tail]]\nid = \"t\"\nlabel = \"T\"\nflat = \"$12\"".to_owned(),
        ),
        (
            "less than nothing left",
            Book,
            "[[tail]]\nid = \"t\"\nlabel = \"T\"\npercent = -101".to_owned(),
        ),
        (
            "a policy of the plant",
            Policy,
            format!("{RULE}require = \"1 == 1\"\nauthority = \"plant\""),
        ),
        (
            "a mark-up of nothing",
            Policy,
            "mark_ups = [{ percent = 25 }]".to_owned(),
        ),
        (
            "a mark-up in words",
            Policy,
            "mark_ups = [{ class = \"goods\", percent = \"a lot\" }]".to_owned(),
        ),
        (
            "an opening without a unit",
            Order,
            "[[opening]]\ntag = \"K1\"".to_owned(),
        ),
        ("two units in an opening", Order, opening(UNIT)),
        ("none of an opening", Order, opening("quantity = 0\n")),
        ("a blank tag", Order, format!("[[opening]]\ntag = \" \"\n{UNIT}")),
        (
            "a deduction by somebody else",
            Order,
            opening("measures = { w = { size = \"36\", deducted_by = \"me\" } }\n"),
        ),
        (
            "a waiver without a paper",
            Order,
            opening("").replace(
                "catalog = \"hinged\"",
                "catalog = \"hinged\"\nwaivers = [{ rule = \"r\", from = 2026-11-01 }]",
            ),
        ),
        (
            "a list for a fact",
            Order,
            "[house]\nfacts = { year_built = [1964] }".to_owned(),
        ),
    ]
}

#[test]
fn what_starts_each_row_is_accepted_by_the_schema() {
    for kind in SchemaKind::ALL {
        let file = as_json(toml::Value::Table(start(kind).parse().unwrap()));
        assert!(jsonschema::is_valid(&schema(kind), &file), "{kind:?}");
    }
}

#[test]
fn what_people_get_wrong_is_refused_by_the_schema_and_by_the_reader() {
    for (row, kind, lines) in rows() {
        let text = format!("{}{lines}\n", start(kind));
        let file = as_json(toml::Value::Table(
            text.parse().unwrap_or_else(|error| panic!("{row}: {error}")),
        ));
        assert!(
            !jsonschema::is_valid(&schema(kind), &file),
            "the schema accepts {row}"
        );
        let without = as_json(toml::Value::Table(start(kind).parse().unwrap()));
        let errors = |found: Vec<Finding>| found.into_iter().filter(Finding::is_error).collect::<Vec<_>>();
        let (found, before) = (errors(findings(kind, &file)), errors(findings(kind, &without)));
        let lines = |found: &[Finding]| said(found).lines().map(str::to_owned).collect::<Vec<_>>();
        let is_new = lines(&found).iter().any(|line| !lines(&before).contains(line));
        assert!(is_new, "the reader accepts {row}: {}", said(&found));
    }
}
