//! What `book.toml` says, before the sheets are read and before it is held against its catalog.

use astragal_model::{Id, TailStep};

use super::header::Header;
use super::tail::read_tail;
use crate::declare::{Fields, Head, IdKind};
use crate::finding::{Finding, Place};
use crate::library_files::LibraryPath;
use crate::typed::PlacedText;

/// `book.toml`.
pub(super) struct RawBook {
    pub(super) header: Option<Header>,
    /// Where findings about the whole book stand.
    pub(super) place: Place,
    pub(super) amounts: Option<PlacedText>,
    pub(super) sheets: Vec<RawSheet>,
    pub(super) grids: Vec<RawGrid>,
    pub(super) tail: Option<Vec<TailStep>>,
    /// Items and grids of which a part could not be read; nothing more is said of them.
    pub(super) unread: Vec<Id>,
}

/// `[[sheet]]`.
pub(super) struct RawSheet {
    pub(super) item: PlacedText,
    pub(super) table: PlacedText,
}

/// `[[grid]]`.
pub(super) struct RawGrid {
    pub(super) head: Head,
    pub(super) table: PlacedText,
    /// The lower ends, and where the list stands.
    pub(super) lower: Vec<PlacedText>,
    pub(super) lower_place: Place,
}

impl RawBook {
    pub(super) fn read(mut file: Fields<'_>, home: &LibraryPath) -> Self {
        file.reader.format_is_known();
        let mut amounts = None;
        let mut place = file.reader.place();
        let header = if file.reader.requires("book") {
            file.reader.node("book").and_then(|node| {
                let mut fields = file.inner(node, "book")?;
                place = fields.reader.place();
                let header = Header::read(&mut fields);
                amounts = fields.text("amounts");
                fields.reader.finish();
                header
            })
        } else {
            None
        };
        let mut raw = RawBook {
            header,
            place,
            amounts,
            sheets: Vec::new(),
            grids: Vec::new(),
            tail: None,
            unread: Vec::new(),
        };
        for fields in file.list("sheet", "sheet", home) {
            raw.add_sheet(fields);
        }
        for fields in file.list("grid", "grid", home) {
            raw.add_grid(fields);
        }
        raw.tail = read_tail(&mut file, home);
        file.reader.finish();
        raw
    }

    fn add_sheet(&mut self, mut fields: Fields<'_>) {
        let item = fields.required_text("item");
        if let Some(item) = &item {
            fields.reader.rename(format!("sheet of `{}`", item.text));
        }
        let table = fields.required_text("table");
        let findings = fields.findings();
        fields.reader.finish();
        let Some(item) = item else { return };
        if let Some(first) = self.sheets.iter().find(|sheet| sheet.item.text == item.text) {
            let finding = given_twice(&item.text, item.place, first.item.place.clone());
            return findings.push(finding);
        }
        match table {
            Some(table) => self.sheets.push(RawSheet { item, table }),
            None => self.unread.push(Id::new(&item.text)),
        }
    }

    fn add_grid(&mut self, mut fields: Fields<'_>) {
        let head = fields.head(IdKind::Other);
        let table = fields.required_text("table");
        let lower = if fields.reader.requires("lower") {
            fields.reader.array("lower")
        } else {
            None
        };
        let ends = lower.as_ref().map(|array| {
            let ends = array.value.iter().enumerate();
            let ends = ends.map(|(at, node)| {
                let what = format!("element {} of `lower`", at + 1);
                let text = fields.reader.as_decimal_text(node, &what)?;
                Some(fields.placed(text))
            });
            ends.collect::<Option<Vec<PlacedText>>>()
        });
        let lower_place = lower.map(|array| fields.place_of(&array.span));
        let findings = fields.findings();
        fields.reader.finish();
        let Some(head) = head else { return };
        if let Some(first) = self.grids.iter().find(|grid| grid.head.id == head.id) {
            let message = format!("`{}` stands twice among the grids", head.id);
            let finding = Finding::error("DUPLICATE_ID", message).at(head.place);
            let finding = finding.with_related(first.head.place.clone(), "it stands here first");
            return findings.push(finding.with_help("give one of the two another id"));
        }
        match (table, ends.flatten(), lower_place) {
            (Some(table), Some(lower), Some(lower_place)) => self.grids.push(RawGrid {
                head,
                table,
                lower,
                lower_place,
            }),
            _ => self.unread.push(head.id),
        }
    }
}

/// Says that an item has two amounts.
pub(super) fn given_twice(item: &str, place: Place, first: Place) -> Finding {
    Finding::error("AMOUNT_GIVEN_TWICE", format!("`{item}` is given twice"))
        .at(place)
        .with_related(first, "it is given here first")
        .with_help("keep one of them")
}
