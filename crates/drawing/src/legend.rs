//! What the lines and letters on a drawing mean.
//!
//! Always holds: a convention that other places read the other way round is stated in words; only what occurs is listed.

use crate::elevation::{Elevation, Glass, Operation, Panel, Side, Swing};

/// From where every elevation is seen.
pub(crate) const VIEWED: &str = "Viewed from outside; left and right as seen from there";

/// One convention of the drawings.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub(crate) enum Convention {
    Hinge,
    Slide,
    Fixed,
    Tempered,
    Obscure,
    Screen,
    Handle,
}

const ALL: [Convention; 7] = [
    Convention::Hinge,
    Convention::Slide,
    Convention::Fixed,
    Convention::Tempered,
    Convention::Obscure,
    Convention::Screen,
    Convention::Handle,
];

impl Convention {
    /// What it means.
    pub(crate) fn meaning(self) -> &'static str {
        match self {
            Convention::Hinge => "Dashed lines meet at the hinge side",
            Convention::Slide => "Arrow: the panel slides that way",
            Convention::Fixed => "F: fixed; does not open",
            Convention::Tempered => "T: tempered glass, as ordered",
            Convention::Obscure => "Slanting lines: obscure glass",
            Convention::Screen => "Corner of mesh: insect screen",
            Convention::Handle => "Small bar: handle or lock",
        }
    }

    /// A panel that shows it.
    pub(crate) fn sample(self) -> Panel {
        let mut panel = Panel::new(Operation::Slides(Side::Right));
        match self {
            Convention::Hinge => {
                panel.operation = Operation::Hinged {
                    side: Side::Left,
                    swing: Swing::Out,
                }
            }
            Convention::Slide => {}
            Convention::Fixed => panel.operation = Operation::Fixed,
            Convention::Tempered => {
                // An arrow would leave no room for the letter on so small a sample.
                panel.operation = Operation::Hinged {
                    side: Side::Left,
                    swing: Swing::Out,
                };
                panel.tempered = true;
            }
            Convention::Obscure => panel.glass = Glass::Obscure,
            Convention::Screen => panel.screen = Some(crate::elevation::Screen::Inside),
            Convention::Handle => panel.handle = Some(Side::Right),
        }
        panel
    }

    /// Whether its sample keeps this part of a drawing.
    pub(crate) fn shows(self, part: &str) -> bool {
        let own: &[&str] = match self {
            Convention::Hinge => &["hinge"],
            Convention::Slide => &["arrow-clearance", "arrow-shaft", "arrow-head"],
            Convention::Fixed => &["fixed"],
            Convention::Tempered => &["tempered"],
            Convention::Obscure => &["obscure"],
            Convention::Screen => &["screen", "screen-mesh"],
            Convention::Handle => &["handle"],
        };
        ["frame", "sash", "glass", "glass-edge"].contains(&part) || own.contains(&part)
    }

    fn occurs(self, panel: &Panel) -> bool {
        match self {
            Convention::Hinge => matches!(panel.operation, Operation::Hinged { .. }),
            Convention::Slide => matches!(panel.operation, Operation::Slides(_)),
            Convention::Fixed => panel.operation == Operation::Fixed,
            Convention::Tempered => panel.tempered,
            Convention::Obscure => panel.glass == Glass::Obscure,
            Convention::Screen => panel.screen.is_some(),
            Convention::Handle => panel.handle.is_some(),
        }
    }
}

/// The conventions that occur in any of these units.
pub(crate) fn occurring<'a>(elevations: impl Iterator<Item = &'a Elevation> + Clone) -> Vec<Convention> {
    let panels = elevations.flat_map(|elevation| elevation.arrangement.panels());
    ALL.into_iter()
        .filter(|convention| panels.clone().any(|panel| convention.occurs(panel)))
        .collect()
}
