//! What the files of a catalog say, as they say it: declarations with their places, before names and types are looked at.
//!
//! `[[rule]] id = "no-grey" require = 'exterior != "grey"'` becomes a [`RawRule`] with a parsed expression. There is one small
//! struct and one reader function for each kind of declaration; a dealer policy reads its rules with the same one.
//!
//! Always holds: what could not be read is absent and has a finding; every id of a [`Declared`] is there once.
//! Cost: linear in the files. Stops at [`include::FILES_LIMIT`] files.
//! Source: docs/reference.md.

mod attribute;
mod drawing;
mod example;
mod fields;
mod figure;
mod header;
mod ids;
pub(crate) mod include;
mod known;
mod price;
mod room_rule;
mod rule;
mod site_check;
mod unique;

pub(crate) use attribute::{RawAttribute, RawOption, RawOptionList, RawOptions};
pub(crate) use drawing::{
    MOTIONS, PANELS_LIMIT, RawDrawing, RawGrille, RawLayoutDrawing, RawOnPanels, RawPattern,
};
pub(crate) use example::{RawExample, RawPick};
pub(crate) use fields::{Fields, Head};
pub(crate) use figure::{RawDefinition, RawFigure};
pub(crate) use header::{RawAuthority, RawHeader, RawPart, library_header, table};
#[cfg(test)]
pub(crate) use ids::is_name;
pub(crate) use ids::{IMPLICIT_RULES, IdKind, is_id};
pub(crate) use include::declared;
pub(crate) use known::{RawBounds, RawMeasureKind, RawSiteFact};
pub(crate) use price::{CLASSES, RawAmount, RawItem};
pub(crate) use room_rule::RawRoomRule;
pub(crate) use rule::{RawLayout, RawNotice, RawRequirement, RawRule};
pub(crate) use site_check::RawSiteCheck;
pub(crate) use unique::keep_first;

use crate::library_files::LibraryPath;

/// Everything that the files of a catalog declare, included files first.
#[derive(Debug, Default)]
pub(crate) struct Declared {
    pub(crate) header: Option<RawHeader>,
    pub(crate) authorities: Vec<RawAuthority>,
    pub(crate) option_lists: Vec<RawOptionList>,
    pub(crate) parts: Vec<RawPart>,
    pub(crate) attributes: Vec<RawAttribute>,
    pub(crate) measures: Vec<RawMeasureKind>,
    pub(crate) facts: Vec<RawSiteFact>,
    pub(crate) site_checks: Vec<RawSiteCheck>,
    pub(crate) figures: Vec<RawFigure>,
    pub(crate) rules: Vec<RawRule>,
    pub(crate) room_rules: Vec<RawRoomRule>,
    pub(crate) items: Vec<RawItem>,
    pub(crate) notices: Vec<RawNotice>,
    pub(crate) examples: Vec<RawExample>,
    pub(crate) drawing: Option<RawDrawing>,
    /// Whether a file, or part of one, could not be read; what it declares would be missed everywhere.
    pub(crate) has_gaps: bool,
}

impl Declared {
    /// Adds what one file declares. `is_catalog` says that the file is `catalog.toml` itself.
    fn add_file(&mut self, mut file: Fields<'_>, home: &LibraryPath, is_catalog: bool) {
        if !file.reader.format_is_known() {
            self.has_gaps = true;
        }
        let _ = file.reader.node("include");
        if is_catalog {
            self.header = header::catalog_header(&mut file);
        } else {
            header::no_catalog_here(&mut file);
        }
        self.authorities.extend(
            file.list("authority", "authority", home)
                .filter_map(header::authority),
        );
        self.option_lists.extend(
            file.list("option_list", "option list", home)
                .filter_map(attribute::option_list),
        );
        self.parts
            .extend(file.list("part", "part", home).filter_map(header::part));
        self.attributes.extend(
            file.list("attribute", "attribute", home)
                .filter_map(attribute::attribute),
        );
        self.measures
            .extend(file.list("measure", "measure", home).filter_map(known::measure));
        self.facts
            .extend(file.list("site_fact", "site fact", home).filter_map(known::fact));
        self.site_checks.extend(
            file.list("site_check", "site check", home)
                .filter_map(site_check::site_check),
        );
        self.figures
            .extend(file.list("figure", "figure", home).filter_map(figure::figure));
        self.rules
            .extend(file.list("rule", "rule", home).filter_map(rule::rule));
        self.room_rules.extend(
            file.list("room_rule", "room rule", home)
                .filter_map(room_rule::room_rule),
        );
        self.items
            .extend(file.list("price", "price item", home).filter_map(price::item));
        self.notices
            .extend(file.list("notice", "notice", home).filter_map(rule::notice));
        self.examples
            .extend(file.list("example", "example", home).filter_map(example::example));
        if let Some(drawing) = drawing::drawing(&mut file) {
            match &self.drawing {
                None => self.drawing = Some(drawing),
                Some(first) => drawing::twice(&file, &drawing, first),
            }
        }
        // What stands under a misspelt heading would be missed everywhere.
        self.has_gaps |= file.reader.has_strangers();
        file.reader.finish();
    }
}

/// Reads a rule of a dealer policy, which may name the one catalog that it is for.
pub(crate) fn policy_rule(fields: Fields<'_>) -> Option<RawRule> {
    rule::policy_rule(fields)
}
