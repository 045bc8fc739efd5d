//! Encodes how units are drawn. The order of layouts, grilles and screens counts: the first that is meant is drawn.
//!
//! Always holds: every structure is taken apart field by field, so that a new field does not compile until it is
//! encoded.

use super::encoder::{Encode, Encoder, words};
use crate::attribute::Swatch;
use crate::drawing::{
    Arranged, Drawing, GlassMark, GrilleDrawing, GrillePattern, Layout, OnPanels, PanelMotion, ScreenSide,
};

impl Encode for Drawing {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self {
            width,
            height,
            frame,
            frame_colour,
            layouts,
            grilles,
            screens,
            marks,
        } = self;
        encoder.put(width).put(height).put(frame).put(frame_colour);
        encoder.ordered(layouts.iter());
        encoder.ordered(grilles.iter());
        encoder.ordered(screens.iter());
        encoder.unordered(marks);
    }
}

impl Encode for Layout {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self {
            when,
            panels,
            arranged,
            divided_at,
            sash,
        } = self;
        encoder.put(when);
        encoder.ordered(panels.iter());
        encoder.put(arranged);
        encoder.ordered(divided_at.iter());
        encoder.put(sash);
    }
}

impl<T: Encode> Encode for OnPanels<T> {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self { when, panels, what } = self;
        let mut panels = panels.clone();
        panels.sort_unstable();
        panels.dedup();
        encoder.put(when);
        encoder.count(panels.len());
        for panel in panels {
            encoder.count(panel);
        }
        encoder.put(what);
    }
}

impl Encode for GrilleDrawing {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self { pattern, bar, colour } = self;
        match pattern {
            GrillePattern::Grid { columns, rows } => {
                encoder.word("grid");
                encoder.put(columns).put(rows);
            }
            GrillePattern::Perimeter(inset) => {
                encoder.word("perimeter");
                encoder.put(inset);
            }
            GrillePattern::TopRow { columns, height } => {
                encoder.word("top-row");
                encoder.put(columns).put(height);
            }
        }
        encoder.put(bar).put(colour);
    }
}

impl Encode for Swatch {
    fn encode(&self, encoder: &mut Encoder<'_>) {
        let Self { red, green, blue } = self;
        for part in [red, green, blue] {
            encoder.count(usize::from(*part));
        }
    }
}

words!(PanelMotion {
    Fixed => "fixed",
    HingedLeft => "hinged-left",
    HingedRight => "hinged-right",
    HingedTop => "hinged-top",
    HingedBottom => "hinged-bottom",
    SlidesLeft => "slides-left",
    SlidesRight => "slides-right",
    SlidesUp => "slides-up",
    SlidesDown => "slides-down",
});

words!(Arranged {
    SideBySide => "side-by-side",
    Stacked => "stacked",
});

words!(ScreenSide {
    Inside => "inside",
    Outside => "outside",
});

words!(GlassMark {
    Obscure => "obscure",
    Tempered => "tempered",
});
