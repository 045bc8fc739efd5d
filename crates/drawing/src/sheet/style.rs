//! The style sheet of a page, with the order named at its foot.
//!
//! Always holds: no text of the caller can end a string or the style sheet, since whatever is not a plain letter, digit or
//! space is written by its number.
//! Source: CSS Paged Media Module Level 3, for the boxes at the foot of a page.

const STYLE: &str = include_str!("style.css");

/// LIMIT: letters of the title at the foot of a page.
const FOOT_MOST: usize = 90;

/// The style sheet of an order with this title.
pub(crate) fn style(title: &str) -> String {
    let mut foot: String = title.chars().take(FOOT_MOST).collect();
    if title.chars().count() > FOOT_MOST {
        foot.push('…');
    }
    let text = "font: 7.5pt Arial, Helvetica, \"Liberation Sans\", sans-serif; vertical-align: top; padding-top: 3mm;";
    format!(
        "\n{STYLE}@page {{ margin: 13mm 12mm 16mm; @bottom-left {{ content: \"{}\"; white-space: nowrap; {text} }} \
         @bottom-right {{ content: counter(page) \" / \" counter(pages); {text} }} }}\n",
        escaped(&foot)
    )
}

/// Text inside a CSS string.
fn escaped(text: &str) -> String {
    let written = text.chars().map(|letter| {
        if letter.is_ascii_alphanumeric() || letter == ' ' {
            letter.to_string()
        } else {
            format!("\\{:x} ", u32::from(letter))
        }
    });
    written.collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_title_ends_a_string_or_the_style_sheet() {
        assert_eq!(
            escaped("a\"b</style>\\\n"),
            "a\\22 b\\3c \\2f style\\3e \\5c \\a "
        );
    }
}
