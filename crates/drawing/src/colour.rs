//! Colours as chosen, and which line can be seen on them.
//!
//! A frame in bronze (74, 59, 48) is drawn in just that; the lines inside it are then light, since dark ones would be lost.
//!
//! Always holds: the ink chosen for a colour differs from it by at least 90 of 255 in luma.
//! Source: ITU-R BT.709 weights of luma, from memory.

/// What is drawn with: red, green, blue.
pub(crate) type Ink = [u8; 3];

/// Lines and letters.
pub(crate) const DARK: Ink = [38, 38, 38];
/// Lines on what is dark.
pub(crate) const LIGHT: Ink = [232, 232, 232];
/// Second lines: dimension and extension lines, small print.
pub(crate) const GREY: Ink = [96, 96, 96];
/// The mesh of a screen.
pub(crate) const MESH: Ink = [112, 122, 128];
/// The lines of obscure glass.
pub(crate) const FROST: Ink = [128, 152, 168];
/// Glass.
pub(crate) const GLASS: Ink = [229, 238, 243];
/// Paper.
pub(crate) const PAPER: Ink = [255, 255, 255];

/// A colour with the name it is sold under.
///
/// # Examples
/// ```
/// use astragal_drawing::Colour;
/// let bronze = Colour::new("Bronze", 74, 59, 48);
/// assert_eq!(bronze.name, "Bronze");
/// ```
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Colour {
    /// The name, printed beside the drawing: paper and screen never show a colour truly.
    pub name: String,
    /// Red, 0 to 255.
    pub red: u8,
    /// Green, 0 to 255.
    pub green: u8,
    /// Blue, 0 to 255.
    pub blue: u8,
}

impl Colour {
    /// A colour by its name and its red, green and blue.
    #[must_use]
    pub fn new(name: &str, red: u8, green: u8, blue: u8) -> Colour {
        Colour {
            name: name.to_owned(),
            red,
            green,
            blue,
        }
    }

    pub(crate) fn ink(&self) -> Ink {
        [self.red, self.green, self.blue]
    }
}

/// The ink of lines on a surface of this colour.
pub(crate) fn line_on(surface: Ink) -> Ink {
    if luma(surface) < 128 { LIGHT } else { DARK }
}

fn luma([red, green, blue]: Ink) -> u32 {
    (2126 * u32::from(red) + 7152 * u32::from(green) + 722 * u32::from(blue)) / 10_000
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_can_be_seen_on_every_colour() {
        for red in (0..=255).step_by(5) {
            for green in (0..=255).step_by(5) {
                for blue in (0..=255).step_by(5) {
                    let surface = [red, green, blue];
                    let difference = luma(surface).abs_diff(luma(line_on(surface)));
                    assert!(
                        difference >= 90,
                        "{surface:?} and its lines differ by {difference}"
                    );
                }
            }
        }
    }
}
