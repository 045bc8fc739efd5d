//! `[drawing]`: how units are drawn.

use astragal_model::{Arranged, GlassMark, PanelMotion, ScreenSide};

use super::Fields;
use crate::finding::{Finding, Place};
use crate::typed::{Parsed, PlacedText};

/// The words for how a panel moves.
pub(crate) const MOTIONS: [(&str, PanelMotion); 9] = [
    ("fixed", PanelMotion::Fixed),
    ("hinged-left", PanelMotion::HingedLeft),
    ("hinged-right", PanelMotion::HingedRight),
    ("hinged-top", PanelMotion::HingedTop),
    ("hinged-bottom", PanelMotion::HingedBottom),
    ("slides-left", PanelMotion::SlidesLeft),
    ("slides-right", PanelMotion::SlidesRight),
    ("slides-up", PanelMotion::SlidesUp),
    ("slides-down", PanelMotion::SlidesDown),
];

/// LIMIT: panels of one unit.
pub(crate) const PANELS_LIMIT: usize = 12;

/// `[drawing]`.
#[derive(Clone, Debug)]
pub(crate) struct RawDrawing {
    pub(crate) place: Place,
    pub(crate) width: Option<Parsed>,
    pub(crate) height: Option<Parsed>,
    pub(crate) frame: Option<Parsed>,
    pub(crate) frame_colour: Option<PlacedText>,
    pub(crate) layouts: Vec<Option<RawLayoutDrawing>>,
    pub(crate) grilles: Vec<Option<RawGrille>>,
    pub(crate) screens: Vec<Option<(RawOnPanels, ScreenSide)>>,
    pub(crate) marks: Vec<Option<(RawOnPanels, GlassMark)>>,
}

/// `[[drawing.layout]]`.
#[derive(Clone, Debug)]
pub(crate) struct RawLayoutDrawing {
    pub(crate) when: Option<Parsed>,
    pub(crate) panels: Vec<PanelMotion>,
    pub(crate) arranged: Arranged,
    pub(crate) divided_at: Vec<Parsed>,
    pub(crate) sash: Option<Parsed>,
}

/// What lies on some panels.
#[derive(Clone, Debug)]
pub(crate) struct RawOnPanels {
    pub(crate) when: Option<Parsed>,
    /// Positions from 0; empty means all.
    pub(crate) panels: Vec<usize>,
}

/// `[[drawing.grille]]`.
#[derive(Clone, Debug)]
pub(crate) struct RawGrille {
    pub(crate) on: RawOnPanels,
    pub(crate) pattern: RawPattern,
    pub(crate) bar: Parsed,
    pub(crate) colour: PlacedText,
}

/// How bars run.
#[derive(Clone, Debug)]
pub(crate) enum RawPattern {
    Grid { columns: Parsed, rows: Parsed },
    Perimeter(Parsed),
    TopRow { columns: Parsed, height: Parsed },
}

pub(super) fn drawing(file: &mut Fields<'_>) -> Option<RawDrawing> {
    let node = file.reader.node("drawing")?;
    let place = file.place_of(&node.span);
    let mut fields = file.inner(node, "`drawing`")?;
    let mut required = |key| {
        if fields.reader.requires(key) {
            fields.expression(key)
        } else {
            None
        }
    };
    let (width, height, frame) = (required("width"), required("height"), required("frame"));
    let frame_colour = fields.required_text("frame_colour");
    let layouts = fields.inner_list("layout", "layout");
    if layouts.is_empty() {
        let finding = Finding::error("MISSING_KEY", "the drawing has no layout").at(place.clone());
        fields
            .findings()
            .push(finding.with_help("add a `[[drawing.layout]]` with its panels"));
    }
    let layouts: Vec<Option<RawLayoutDrawing>> = layouts.into_iter().map(layout).collect();
    let most = most_panels(&layouts);
    let sides = [("inside", ScreenSide::Inside), ("outside", ScreenSide::Outside)];
    let looks = [("obscure", GlassMark::Obscure), ("tempered", GlassMark::Tempered)];
    let read = RawDrawing {
        place,
        width,
        height,
        frame,
        frame_colour,
        layouts,
        grilles: fields
            .inner_list("grille", "grille")
            .into_iter()
            .map(|one| grille(one, most))
            .collect(),
        screens: on_panels(&mut fields, most, "screen", ("side", &sides)),
        marks: on_panels(&mut fields, most, "glass", ("mark", &looks)),
    };
    fields.reader.finish();
    Some(read)
}

/// The panels of the layout that has most; as many as there may be where a layout could not be read.
fn most_panels(layouts: &[Option<RawLayoutDrawing>]) -> usize {
    let known: Option<Vec<usize>> = layouts
        .iter()
        .map(|layout| Some(layout.as_ref()?.panels.len()))
        .collect();
    known
        .and_then(|known| known.into_iter().max())
        .unwrap_or(PANELS_LIMIT)
}

/// Reports a second drawing.
pub(super) fn twice(file: &Fields<'_>, second: &RawDrawing, first: &RawDrawing) {
    let finding = Finding::error("DUPLICATE_ID", "`[drawing]` stands twice").at(second.place.clone());
    let finding = finding.with_help("a catalog is drawn in one way; keep one of the two");
    file.findings()
        .push(finding.with_related(first.place.clone(), "`[drawing]` stands here first"));
}

fn layout(mut fields: Fields<'_>) -> Option<RawLayoutDrawing> {
    let when = fields.expression("when");
    let panels = motions(&mut fields);
    let words = [
        ("side-by-side", Arranged::SideBySide),
        ("stacked", Arranged::Stacked),
    ];
    let arranged = fields.word("arranged", &words);
    let texts = fields.texts("divided_at").unwrap_or_default();
    let written = texts.len();
    let divided_at = texts
        .into_iter()
        .map(|text| Parsed::parse(text, fields.findings()));
    let divided_at: Option<Vec<Parsed>> = divided_at.collect();
    let sash = fields.expression("sash");
    let (place, findings) = (fields.reader.place(), fields.findings());
    fields.reader.finish();
    let panels = panels?;
    if written + 1 != panels.len() {
        let text = format!(
            "a layout of {} panel(s) is divided at {} place(s), not at {written}",
            panels.len(),
            panels.len().saturating_sub(1)
        );
        let help = "write in `divided_at` where each two panels meet, from the left or from the top";
        findings.push(Finding::error("WRONG_DIVIDERS", text).at(place).with_help(help));
        return None;
    }
    Some(RawLayoutDrawing {
        when,
        panels,
        arranged: arranged?,
        divided_at: divided_at?,
        sash,
    })
}

fn motions(fields: &mut Fields<'_>) -> Option<Vec<PanelMotion>> {
    if !fields.reader.requires("panels") {
        return None;
    }
    let texts = fields.texts("panels")?;
    if texts.is_empty() || texts.len() > PANELS_LIMIT {
        let text = format!(
            "{} has {} panels; expected 1 to {PANELS_LIMIT}",
            fields.reader.what(),
            texts.len()
        );
        let finding = Finding::error("LIMIT", text).at(fields.reader.place());
        fields
            .findings()
            .push(finding.with_help("write how each panel moves, from the left or from the top"));
        return None;
    }
    let motions = texts.iter().map(|text| fields.one_of("panels", text, &MOTIONS));
    // All are read, so that each one's findings are made.
    let motions: Vec<Option<PanelMotion>> = motions.collect();
    motions.into_iter().collect()
}

fn grille(mut fields: Fields<'_>, most: usize) -> Option<RawGrille> {
    let on = on(&mut fields, most);
    let pattern = pattern(&mut fields);
    let bar = if fields.reader.requires("bar") {
        fields.expression("bar")
    } else {
        None
    };
    let colour = fields.required_text("colour");
    fields.reader.finish();
    Some(RawGrille {
        on: on?,
        pattern: pattern?,
        bar: bar?,
        colour: colour?,
    })
}

/// `grid` with columns and rows, `perimeter` with an inset, `top-row` with columns and a height.
fn pattern(fields: &mut Fields<'_>) -> Option<RawPattern> {
    const KEYS: [&str; 4] = ["columns", "rows", "inset", "height"];
    let words: [(&str, &[&'static str]); 3] = [
        ("grid", &["columns", "rows"]),
        ("perimeter", &["inset"]),
        ("top-row", &["columns", "height"]),
    ];
    let needed = fields.required_word("pattern", &words);
    let strange: Vec<&'static str> = KEYS
        .into_iter()
        .filter(|key| needed.is_none_or(|needed| !needed.contains(key)))
        .collect();
    let Some(needed) = needed else {
        for key in KEYS {
            let _ = fields.reader.node(key);
        }
        return None;
    };
    fields.without(&strange, "which another pattern has");
    let mut read = Vec::new();
    for key in needed {
        read.push(if fields.reader.requires(key) {
            fields.expression(key)
        } else {
            None
        });
    }
    let mut read = read.into_iter().collect::<Option<Vec<Parsed>>>()?.into_iter();
    let first = read.next()?;
    match (needed, read.next()) {
        (["columns", "rows"], Some(rows)) => Some(RawPattern::Grid { columns: first, rows }),
        (["columns", "height"], Some(height)) => Some(RawPattern::TopRow {
            columns: first,
            height,
        }),
        _ => Some(RawPattern::Perimeter(first)),
    }
}

fn on_panels<T: Copy>(
    fields: &mut Fields<'_>,
    most: usize,
    key: &'static str,
    (word, words): (&'static str, &[(&'static str, T)]),
) -> Vec<Option<(RawOnPanels, T)>> {
    let read = fields.inner_list(key, key).into_iter().map(|mut fields| {
        let on = on(&mut fields, most);
        let what = fields.required_word(word, words);
        fields.reader.finish();
        Some((on?, what?))
    });
    read.collect()
}

/// `when`, and `on`: the numbers of the panels, counted from 1; no layout has more than `most`.
fn on(fields: &mut Fields<'_>, most: usize) -> Option<RawOnPanels> {
    let when = fields.expression("when");
    let mut panels = Vec::new();
    let mut is_whole = true;
    let nodes = fields
        .reader
        .array("on")
        .map_or([].as_slice(), |array| array.value);
    for node in nodes {
        let Some(number) = fields.reader.as_integer(node, "the number of a panel") else {
            is_whole = false;
            continue;
        };
        match usize::try_from(number.value) {
            Ok(number) if (1..=most).contains(&number) => panels.push(number - 1),
            _ => {
                is_whole = false;
                let text = if most == 1 {
                    format!("there is no panel {}; every layout has one", number.value)
                } else {
                    format!("there is no panel {}; expected 1 to {most}", number.value)
                };
                let finding = Finding::error("WRONG_VALUE", text).at(fields.place_of(&node.span));
                let help = "panels are counted from the left or from the top, the first is 1";
                fields.findings().push(finding.with_help(help));
            }
        }
    }
    is_whole.then_some(RawOnPanels { when, panels })
}
