//! How units are drawn: names and types of `[drawing]`.

use std::collections::BTreeMap;

use astragal_model::{
    AttributeIndex, Drawing, DrawingKey, Expression, GrilleDrawing, GrillePattern, Layout, OnPanels, Subject,
    ValueType,
};

use super::resolver::Resolver;
use crate::declare::{RawDrawing, RawGrille, RawLayoutDrawing, RawOnPanels, RawPattern};
use crate::finding::{Finding, Place};
use crate::typed::{Parsed, PlacedText, Type};

/// The drawing; the outer `None` means that findings say why.
#[expect(
    clippy::option_option,
    reason = "no drawing and an unreadable one are different"
)]
pub(super) fn drawing(raw: Option<&RawDrawing>, resolver: &Resolver<'_>) -> Option<Option<Drawing>> {
    let Some(raw) = raw else { return Some(None) };
    let typed = Typing { resolver };
    let (width, height) = (
        typed.length(raw.width.as_ref()),
        typed.length(raw.height.as_ref()),
    );
    let frame = typed.length(raw.frame.as_ref());
    let frame_colour = raw.frame_colour.as_ref().and_then(|text| typed.attribute(text));
    let layouts = all(&raw.layouts, |layout| typed.layout(layout));
    let grilles = all(&raw.grilles, |grille| typed.grille(grille));
    let screens = all(&raw.screens, |(on, side)| typed.on(on, *side));
    let marks = all(&raw.marks, |(on, mark)| typed.on(on, *mark));
    Some(Some(Drawing {
        width: width?,
        height: height?,
        frame: frame?,
        frame_colour: frame_colour?,
        layouts: layouts?,
        grilles: grilles?,
        screens: screens?,
        marks: marks?,
    }))
}

/// Where each key of the drawing stands.
pub(super) fn keys(raw: &RawDrawing) -> BTreeMap<DrawingKey, Place> {
    let mut keys = BTreeMap::from([(DrawingKey::Whole, raw.place.clone())]);
    let mut add = |key, text: Option<&PlacedText>| {
        keys.extend(text.map(|text| (key, text.place.clone())));
    };
    add(DrawingKey::Width, raw.width.as_ref().map(|it| &it.text));
    add(DrawingKey::Height, raw.height.as_ref().map(|it| &it.text));
    add(DrawingKey::Frame, raw.frame.as_ref().map(|it| &it.text));
    add(DrawingKey::FrameColour, raw.frame_colour.as_ref());
    for (number, layout) in positions(&raw.layouts) {
        add(DrawingKey::LayoutWhen(number), when(layout.when.as_ref()));
        for (divider, at) in layout.divided_at.iter().enumerate() {
            add(DrawingKey::Divider(number, divider), Some(&at.text));
        }
        add(DrawingKey::Sash(number), layout.sash.as_ref().map(|it| &it.text));
    }
    for (number, grille) in positions(&raw.grilles) {
        let (RawPattern::Grid { columns: size, .. }
        | RawPattern::Perimeter(size)
        | RawPattern::TopRow { columns: size, .. }) = &grille.pattern;
        add(DrawingKey::GrilleWhen(number), when(grille.on.when.as_ref()));
        add(DrawingKey::GrillePattern(number), Some(&size.text));
        add(DrawingKey::GrilleBar(number), Some(&grille.bar.text));
        add(DrawingKey::GrilleColour(number), Some(&grille.colour));
    }
    for (number, (on, _)) in positions(&raw.screens) {
        add(DrawingKey::ScreenWhen(number), when(on.when.as_ref()));
    }
    for (number, (on, _)) in positions(&raw.marks) {
        add(DrawingKey::MarkWhen(number), when(on.when.as_ref()));
    }
    keys
}

fn when(condition: Option<&Parsed>) -> Option<&PlacedText> {
    condition.map(|condition| &condition.text)
}

/// What was read, each with its position.
fn positions<R>(raws: &[Option<R>]) -> impl Iterator<Item = (usize, &R)> {
    let numbered = raws.iter().enumerate();
    numbered.filter_map(|(number, raw)| Some((number, raw.as_ref()?)))
}

/// Everything is read, so that the findings of each are made.
fn all<R, T>(raws: &[Option<R>], read: impl Fn(&R) -> Option<T>) -> Option<Vec<T>> {
    let read: Vec<Option<T>> = raws.iter().map(|raw| raw.as_ref().and_then(&read)).collect();
    read.into_iter().collect()
}

struct Typing<'a> {
    resolver: &'a Resolver<'a>,
}

impl Typing<'_> {
    fn length(&self, parsed: Option<&Parsed>) -> Option<Expression> {
        self.of_type(parsed?, ValueType::Length, None)
    }

    fn of_type(&self, parsed: &Parsed, value_type: ValueType, when: Option<&Parsed>) -> Option<Expression> {
        if self.resolver.unreadable.is_in(parsed) {
            return None;
        }
        let scope = self.resolver.scope_when(None, when);
        scope.of_type(parsed, &Type::plain(value_type))
    }

    fn attribute(&self, text: &PlacedText) -> Option<AttributeIndex> {
        if self.resolver.unreadable.is_name(&text.text) {
            return None;
        }
        match self.resolver.scope(None).subject(text)? {
            (Subject::Attribute(attribute), _) => Some(attribute),
            _ => {
                let message = format!("`{}` is no attribute", text.text);
                let finding = Finding::error("UNKNOWN_NAME", message).at(text.place.clone());
                let help = "name the attribute whose option has the colour as its `swatch`";
                self.resolver.findings.push(finding.with_help(help));
                None
            }
        }
    }

    fn layout(&self, raw: &RawLayoutDrawing) -> Option<Layout> {
        let when = self.resolver.when(None, raw.when.as_ref());
        let length = |parsed| self.of_type(parsed, ValueType::Length, raw.when.as_ref());
        let divided_at: Vec<Option<Expression>> = raw.divided_at.iter().map(length).collect();
        let sash = match &raw.sash {
            None => Some(None),
            Some(parsed) => length(parsed).map(Some),
        };
        Some(Layout {
            when: when?,
            panels: raw.panels.clone(),
            arranged: raw.arranged,
            divided_at: divided_at.into_iter().collect::<Option<_>>()?,
            sash: sash?,
        })
    }

    fn on<T>(&self, raw: &RawOnPanels, what: T) -> Option<OnPanels<T>> {
        Some(OnPanels {
            when: self.resolver.when(None, raw.when.as_ref())?,
            panels: raw.panels.clone(),
            what,
        })
    }

    fn grille(&self, raw: &RawGrille) -> Option<OnPanels<GrilleDrawing>> {
        let typed = |parsed, value_type| self.of_type(parsed, value_type, raw.on.when.as_ref());
        let (number, length) = (ValueType::Number, ValueType::Length);
        let pattern = match &raw.pattern {
            RawPattern::Grid { columns, rows } => {
                let (columns, rows) = (typed(columns, number), typed(rows, number));
                columns
                    .zip(rows)
                    .map(|(columns, rows)| GrillePattern::Grid { columns, rows })
            }
            RawPattern::Perimeter(inset) => typed(inset, length).map(GrillePattern::Perimeter),
            RawPattern::TopRow { columns, height } => {
                let (columns, height) = (typed(columns, number), typed(height, length));
                columns
                    .zip(height)
                    .map(|(columns, height)| GrillePattern::TopRow { columns, height })
            }
        };
        let bar = typed(&raw.bar, length);
        let colour = self.attribute(&raw.colour);
        let on = self.on(&raw.on, ());
        let on = on?;
        Some(OnPanels {
            when: on.when,
            panels: on.panels,
            what: GrilleDrawing {
                pattern: pattern?,
                bar: bar?,
                colour: colour?,
            },
        })
    }
}
