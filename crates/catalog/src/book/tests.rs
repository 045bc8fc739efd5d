//! Books: what they say, and what is said when they do not go with their catalog.

mod amounts;
mod grids;
mod headers;
mod sheets;
mod worked;

use std::collections::BTreeSet;
use std::fmt::Write;

use astragal_model::{
    Amount, AmountKind, Attribute, AttributeIndex, Audience, Beyond, Bounds, Catalog, Class, Declarations,
    Expression, Figure, FigureIndex, Function, Id, Measure, MeasureIndex, MeasuringUnit, OptionEntry, Part,
    PartIndex, PriceItem, Standard, Subject, ValueType,
};
use expect_test::Expect;

use super::*;
use crate::finding::Finding;

/// A folder `book` in a library of its own.
struct Shelf {
    folder: tempfile::TempDir,
}

impl Shelf {
    fn new(files: &[(&str, &str)]) -> Self {
        let folder = tempfile::tempdir().unwrap();
        std::fs::write(folder.path().join("library.toml"), "format = 1\n").unwrap();
        std::fs::create_dir(folder.path().join("book")).unwrap();
        for (name, text) in files {
            std::fs::write(folder.path().join("book").join(name), text).unwrap();
        }
        Self { folder }
    }

    fn load(&self, catalog: &Catalog) -> (Option<LoadedBook>, Vec<Finding>, Sources) {
        let (mut sources, findings) = (Sources::new(), Findings::new());
        let library = Library::find(self.folder.path(), &findings).unwrap();
        let folder = library.locate(&self.folder.path().join("book")).unwrap();
        let book = load_book(&library, &folder, catalog, &mut sources, &findings);
        let sorted = findings.into_sorted(&sources);
        (book, sorted, sources)
    }
}

/// Reads a book of these files and compares it, or the findings.
fn check(catalog: &Catalog, files: &[(&str, &str)], expected: Expect) {
    let (book, findings, sources) = Shelf::new(files).load(catalog);
    assert_eq!(book.is_none(), findings.iter().any(Finding::is_error));
    let mut out = book
        .as_ref()
        .map_or_else(String::new, |book| shown_book(&book.book));
    for finding in &findings {
        out += &shown_finding(finding, &sources);
    }
    expected.assert_eq(&out);
}

fn shown_book(book: &Book) -> String {
    let mut out = format!(
        "{} `{}` for {} in {}, to {}, {:?} to {:?}\n",
        book.id, book.label, book.catalog, book.currency, book.round_to, book.from, book.until
    );
    for (item, amount) in &book.amounts {
        writeln!(out, "{item}: {}", shown_amount(amount)).unwrap();
    }
    for (item, rows) in &book.sheets {
        for row in rows {
            writeln!(out, "{item}: {:?} {}", row.options, row.amount).unwrap();
        }
    }
    for (id, grid) in &book.grids {
        writeln!(out, "{id}: {:?} {:?}", grid.axes, grid.cells).unwrap();
    }
    for step in &book.tail {
        writeln!(
            out,
            "{} `{}` {:?} {:?}: {}",
            step.id,
            step.label,
            step.class,
            step.tax_class,
            shown_amount(&step.amount)
        )
        .unwrap();
    }
    out
}

fn shown_amount(amount: &Amount) -> String {
    match amount {
        Amount::Money(number) => number.to_string(),
        Amount::Percent(number) => format!("{number} %"),
    }
}

fn shown_finding(finding: &Finding, sources: &Sources) -> String {
    let place = finding.place().expect("a place");
    let position = sources.position(place);
    let mut out = format!(
        "{}:{}:{} [{}] {} {}\n",
        sources.path(place.file),
        position.line,
        position.column,
        sources.text_at(place),
        finding.code(),
        finding.message()
    );
    if let (Some(row), Some(column)) = (place.row, &place.column) {
        writeln!(out, "  row {row}, column {column}").unwrap();
    }
    if let Some(help) = finding.help() {
        writeln!(out, "  help: {help}").unwrap();
    }
    for (place, what) in finding.related() {
        writeln!(out, "  [{}] {what}", sources.text_at(place)).unwrap();
    }
    out
}

const FINISH: AttributeIndex = AttributeIndex(0);

/// A catalog `hinged` with these items: sizes `width` and `height`, figures `wide`, `high`, `area` and `united` (a
/// number of inches), an attribute `finish` with a family `metal`, and `glazing` of the sashes `upper` and `lower`.
fn catalog(items: Vec<PriceItem>) -> Catalog {
    let mut declarations = Declarations::empty("hinged");
    for id in ["upper", "lower"] {
        declarations.parts.push(Part {
            id: Id::new(id),
            kind: Id::new("sash"),
            label: id.to_owned(),
            when: None,
        });
    }
    let metal = |id: &str| OptionEntry {
        families: BTreeSet::from([Id::new("metal")]),
        ..OptionEntry::plain(id)
    };
    let finishes = vec![
        OptionEntry::plain("white"),
        OptionEntry::plain("tan"),
        metal("brass"),
        metal("nickel"),
    ];
    declarations.attributes.push(attribute("finish", None, finishes));
    for part in [PartIndex(0), PartIndex(1)] {
        let glass = vec![OptionEntry::plain("annealed"), OptionEntry::plain("tempered")];
        declarations
            .attributes
            .push(attribute("glazing", Some(part), glass));
    }
    for id in ["width", "height"] {
        declarations.measures.push(Measure {
            id: Id::new(id),
            label: id.to_owned(),
            value_type: ValueType::Length,
            step: None,
            bounds: Bounds::default(),
            taken_as: None,
        });
    }
    let [width, height] = [0, 1].map(|at| Expression::Read(Subject::Measure(MeasureIndex(at))));
    let inches = |of: &Expression| Expression::Call(Function::InUnit(MeasuringUnit::Inch), vec![of.clone()]);
    let united = Expression::Add(vec![inches(&width), inches(&height)]);
    let area = Expression::Multiply(Box::new(width.clone()), Box::new(height.clone()));
    declarations
        .figures
        .push(figure("wide", ValueType::Length, width));
    declarations
        .figures
        .push(figure("high", ValueType::Length, height));
    declarations.figures.push(figure("area", ValueType::Area, area));
    declarations
        .figures
        .push(figure("united", ValueType::Number, united));
    declarations.items = items.into();
    Catalog::new(declarations).unwrap()
}

fn attribute(id: &str, part: Option<PartIndex>, options: Vec<OptionEntry>) -> Attribute {
    let standard = options.first().map(|option| option.id.clone()).unwrap();
    Attribute {
        id: Id::new(id),
        part,
        label: id.to_owned(),
        section: None,
        options,
        applies_when: None,
        standard: Standard::Option(standard),
        audience: Audience::Customer,
    }
}

fn figure(id: &str, value_type: ValueType, formula: Expression) -> Figure {
    Figure {
        id: Id::new(id),
        part: None,
        label: id.to_owned(),
        value_type,
        unit: None,
        shown: false,
        definition: astragal_model::Definition::Formula(formula),
    }
}

fn item(id: &str, amount: AmountKind) -> PriceItem {
    PriceItem {
        id: Id::new(id),
        part: None,
        label: id.to_owned(),
        class: Class::Goods,
        tax_class: None,
        when: None,
        amount,
        quantity: None,
    }
}

fn flat(id: &str) -> PriceItem {
    item(id, AmountKind::Flat)
}

fn grid(id: &str, grid: &str, axes: &[usize]) -> PriceItem {
    let axes = axes.iter().map(|axis| FigureIndex(*axis)).collect();
    let grid = Id::new(grid);
    item(
        id,
        AmountKind::Grid {
            grid,
            axes,
            beyond: Beyond::Break,
        },
    )
}

fn by(id: &str, attributes: &[AttributeIndex]) -> PriceItem {
    item(id, AmountKind::By(attributes.to_vec()))
}

fn percent(id: &str, of: &str) -> PriceItem {
    item(id, AmountKind::Percent(BTreeSet::from([Id::new(of)])))
}

/// `book.toml` with what stands after `[book]`.
fn book_toml(rest: &str) -> String {
    format!(
        "format = 1\n[book]\nid = \"b\"\nlabel = \"B\"\ncatalog = \"hinged\"\ncurrency = \"USD\"\nround_to = \"0.01\"\n{rest}"
    )
}
