//! Openings: their tags, places, measures and facts, and the unit in each.
//!
//! Always holds: tags are unique; an alternate is an alternate to another opening that is none itself; measures and
//! facts are those of the unit's catalog.
//! Cost: O(openings x (facts + measures + picks)).
//! Source: MEANING, "Facts", and docs/reference.md.

use std::collections::BTreeMap;

use astragal_model::measure_text::format_length;
use astragal_model::{DeductedBy, Id, Indexed, MeasureIndex, Measured, Number, Opening, Site, TakenSide};

use super::OpeningPlaces;
use super::facts::{self, HouseFacts, Whereabouts, name_help};
use super::house::{self, House};
use super::raw::{RawOpening, RawPlace, Report};
use super::raw_unit::RawUnit;
use super::readings;
use super::unit;
use super::vocabulary::Vocabulary;
use crate::finding::Finding;
use crate::nearest::{nearest, quoted_list};
use crate::site_values::{RawMeasure, contradictions_of, measured};
use crate::tree::Spanned;

/// One catalog of the order as openings need it.
#[derive(Debug)]
pub(super) struct KnownCatalog<'a> {
    pub(super) words: Vocabulary<'a>,
    pub(super) facts: HouseFacts<'a>,
}

/// The catalogs of the order by id; `None` for one that could not be read.
pub(super) type KnownCatalogs<'a> = BTreeMap<&'a str, Option<KnownCatalog<'a>>>;

/// Reports tags that stand twice and alternates that lead nowhere.
pub(super) fn check_tags(openings: &[RawOpening], report: Report<'_>) {
    let mut first: BTreeMap<&str, &RawOpening> = BTreeMap::new();
    for opening in openings {
        let tag = &opening.tag;
        if let Some(earlier) = first.get(tag.value.as_str()) {
            report.error_after(
                "DUPLICATE_TAG",
                &tag.span,
                format!("two openings have the tag `{}`", tag.value),
                "give one of them another tag, or write equal openings once with a `quantity`",
                (&earlier.tag.span, format!("`{}` stands here first", tag.value)),
            );
            continue;
        }
        first.insert(&tag.value, opening);
    }
    for opening in openings {
        if let Some(of) = &opening.alternate_of {
            check_alternate(&opening.tag.value, of, &first, report);
        }
    }
}

fn check_alternate(tag: &str, of: &Spanned<String>, known: &BTreeMap<&str, &RawOpening>, report: Report<'_>) {
    let others = || known.keys().copied().filter(|other| *other != tag);
    if of.value == tag {
        let message = format!("opening `{tag}` is an alternate to itself");
        let help = "name the opening that it may replace, or leave `alternate_of` out";
        report.error("UNKNOWN_OPENING", &of.span, message, help);
        return;
    }
    match known.get(of.value.as_str()) {
        None => {
            let message = format!(
                "opening `{tag}` is an alternate to `{}`, which is no tag",
                of.value
            );
            let help = match nearest(&of.value, others()) {
                Some(near) => format!("did you mean `{near}`?"),
                None if others().next().is_none() => "the order has no other opening".to_owned(),
                None => format!("tags are {}", quoted_list(others())),
            };
            report.error("UNKNOWN_OPENING", &of.span, message, help);
        }
        Some(RawOpening {
            alternate_of: Some(next),
            ..
        }) => {
            let message = format!(
                "opening `{tag}` is an alternate to `{}`, which is an alternate itself",
                of.value
            );
            let earlier = (
                &next.span,
                format!("`{}` is an alternate to `{}`", of.value, next.value),
            );
            let help = "name the opening that all of them may replace";
            report.error_after("ALTERNATE_OF_ALTERNATE", &of.span, message, help, earlier);
        }
        Some(_) => {}
    }
}

/// The opening with all that is inherited and looked up; `None` when its catalog is not there.
///
/// Findings say what is wrong; with any of them the result is not to be used.
pub(super) fn find(
    raw: &RawOpening,
    house: &House<'_>,
    catalogs: &KnownCatalogs<'_>,
    report: Report<'_>,
) -> Option<(Opening, OpeningPlaces)> {
    let of = format!("opening `{}`", raw.tag.value);
    let room = house::find(raw.room.as_ref(), &house.rooms, "room", &of, report);
    let face = house::find(raw.face.as_ref(), &house.faces, "face", &of, report);
    let mut found = Vec::new();
    for unit in &raw.units {
        if let Some(known) = catalog_of(unit, &of, catalogs, report) {
            found.push((known, unit::find(unit, &known.words, report)));
        }
    }
    let (known, unit) = found.into_iter().next()?;
    let tag_place = report.place(&raw.tag.span);
    let at = Whereabouts {
        tag: &raw.tag.value,
        tag_place: &tag_place,
        room,
        face,
    };
    let own = facts::own_facts(&raw.tag.value, &raw.facts, &known.words, report);
    let mut site = Site {
        measures: measures(raw, &known.words, report),
        facts: known.facts.of_opening(&own, at, &known.words, report),
        ..Site::default()
    };
    let readings = readings::fill_in(raw, &known.words, &mut site, report);
    one_deducts(raw, &known.words, &site, report);
    taken_within_bounds(raw, &known.words, &site, report);
    for finding in contradictions_of(known.words.catalog, &site, &of, &tag_place) {
        report.findings.push(finding);
    }
    let id = |place: &RawPlace| Id::new(&place.id.value);
    let opening = Opening {
        tag: raw.tag.value.clone(),
        quantity: raw.quantity,
        room: room.map(id),
        face: face.map(id),
        site,
        readings,
        units: vec![unit.request],
        note: raw.note.clone(),
        included: raw.included.unwrap_or(raw.alternate_of.is_none()),
        alternate_of: raw.alternate_of.as_ref().map(|tag| tag.value.clone()),
        extra: raw.extra.clone(),
    };
    Some((
        opening,
        OpeningPlaces {
            tag: tag_place,
            picks: unit.picks,
        },
    ))
}

/// Reports a side that was worked out from readings and lies outside what its measure takes.
fn taken_within_bounds(raw: &RawOpening, words: &Vocabulary<'_>, site: &Site, report: Report<'_>) {
    let declared = words.catalog.declarations();
    for (index, measure) in declared.measures.iter() {
        let is_written = |written: &RawMeasure| written.name == measure.id.as_str();
        let Some(found) = site.measures.at(index).as_ref() else {
            continue;
        };
        let Some(number) = found.value.magnitude() else {
            continue;
        };
        if measure.taken_as.is_none() || raw.measures.iter().any(is_written) || measure.bounds.admit(number) {
            continue;
        }
        let show = |number: &Number| format_length(number, declared.length_unit);
        let message = format!(
            "by the readings of opening `{}`, measure `{}` is {}; expected {}",
            raw.tag.value,
            measure.id,
            show(number),
            measure.bounds.words(show).unwrap_or_default()
        );
        let help = "look at the readings again: what was measured, in which unit, from where";
        report.error("OUT_OF_RANGE", &raw.tag.span, message, help);
    }
}

/// Reports a width and a height from which two different people have deducted.
fn one_deducts(raw: &RawOpening, words: &Vocabulary<'_>, site: &Site, report: Report<'_>) {
    let measures = &words.catalog.declarations().measures;
    let by = |side: TakenSide| {
        let mut sides = measures
            .iter()
            .filter(|(_, measure)| measure.taken_as == Some(side));
        let (index, _) = sides.next()?;
        let by = site.measures.at(index).as_ref()?.deducted_by?;
        (by != DeductedBy::Nobody).then_some(by)
    };
    let (Some(width), Some(height)) = (by(TakenSide::Width), by(TakenSide::Height)) else {
        return;
    };
    if width != height {
        let message = format!(
            "of opening `{}` the {} has deducted from the width and the {} from the height",
            raw.tag.value,
            width.word(),
            height.word()
        );
        let help = "one of them measures and deducts; say once who it was";
        report.error("DEDUCTED_BY_TWO", &raw.tag.span, message, help);
    }
}

fn catalog_of<'a, 'b>(
    unit: &RawUnit,
    of: &str,
    catalogs: &'b KnownCatalogs<'a>,
    report: Report<'_>,
) -> Option<&'b KnownCatalog<'a>> {
    let name = unit.catalog.as_ref()?;
    if let Some(known) = catalogs.get(name.value.as_str()) {
        return known.as_ref();
    }
    let message = format!(
        "{of} names catalog `{}`, which the order does not use",
        name.value
    );
    let help = match nearest(&name.value, catalogs.keys().copied()) {
        Some(near) => format!("did you mean `{near}`?"),
        None if catalogs.is_empty() => "add a `[[catalog]]` with this id".to_owned(),
        None => format!("the order uses {}", quoted_list(catalogs.keys().copied())),
    };
    report.error("UNKNOWN_CATALOG", &name.span, message, help);
    None
}

fn measures(
    raw: &RawOpening,
    words: &Vocabulary<'_>,
    report: Report<'_>,
) -> Indexed<MeasureIndex, Option<Measured>> {
    let declared = words.catalog.declarations();
    let mut measures: Indexed<MeasureIndex, Option<Measured>> =
        declared.measures.values().map(|_| None).collect();
    for written in &raw.measures {
        let Some(index) = words.measures.get(written.name.as_str()).copied() else {
            let message = format!(
                "opening `{}` has measure `{}`, which catalog `{}` does not have",
                raw.tag.value,
                written.name,
                words.id()
            );
            let help = name_help(&written.name, words.measures.keys().copied(), "measures");
            let finding = Finding::error("UNKNOWN_MEASURE", message).at(written.name_place.clone());
            report.findings.push(finding.with_help(help));
            continue;
        };
        let measure = declared.measures.at(index);
        measures.put(
            index,
            measured(written, measure, declared.length_unit, report.findings),
        );
    }
    measures
}
